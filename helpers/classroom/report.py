"""The mark book as one page to read and to print: danger first, no script, nothing from outside.

Knows the mark book; must never mark anything itself, nor put a learner's text in unescaped.
"""

from base64 import b64encode
from datetime import UTC, datetime
from functools import cache
from hashlib import sha256

from helpers.classroom import picture
from helpers.classroom.files import for_page
from helpers.classroom.mark_book import BLANK, HELPED, KEPT, NONE, NOTHING, NOTHING_COUNTS
from helpers.classroom.page_style import STYLE
from helpers.classroom.page_table import ids, number, row_head, table, words

SECTIONS = {
    "danger": "Danger items not passed yet",
    "lessons": "The class, lesson by lesson",
    "learners": "Learners",
    "exercises": "Marks by learner and exercise",
    "slips": "Slips of the class",
    "help": "Who needs help with what",
    "problems": "What was left out or needs a look",
}
CAUTION = (
    "Marks are no licence to work on mains. They show who has understood the sums and the safe "
    "order of work on paper. Local rules and licensed practice come first: before anything is "
    "built, opened or connected, a competent person has to check it under those rules."
)


def page(book, at=None):
    """Yield mark-book.html piece by piece.

    Parameters
    ----------
    book : MarkBook
        What to show.
    at : datetime or None
        When it was marked; None is now.

    Returns
    -------
    pieces : iterator of str
        One self-contained document.
    """
    yield from _head(book, at or datetime.now(UTC))
    bodies = (_danger, _lessons, _learners, _exercises, _slips, _help, _problems)
    for (name, title), body in zip(SECTIONS.items(), bodies, strict=True):
        yield f'<section aria-labelledby="{name}"><h2 id="{name}">{title}</h2>\n'
        yield from body(book)
        yield "</section>\n"
    yield "</main>\n</body>\n</html>\n"


def _head(book, at):
    fingerprint = b64encode(sha256(STYLE.encode()).digest()).decode()
    policy = f"default-src 'none'; style-src 'sha256-{fingerprint}'"
    links = "".join(f'<li><a href="#{name}">{title}</a></li>' for name, title in SECTIONS.items())
    word = for_page(book.class_word)
    silent = sum(row.status in (NOTHING, NOTHING_COUNTS) for row in book.rows)
    yield (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{policy}; base-uri \'none\'; '
        "form-action 'none'\">\n"
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>Mark book, class {word}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n"
        f'<a class="skip" href="#danger">Go to the mark book</a>\n{picture.shapes()}\n'
        f"<header><h1>Mark book, class {word}</h1>\n"
        f"<p>Marked on {at:%Y-%m-%d %H:%M} UTC: {len(book.rows)} learners, {book.hand_ins} "
        f"hand-ins; learners with nothing to mark: {silent}.</p>\n"
        f'<div class="caution" role="note"><p><strong>Caution.</strong> {CAUTION}</p></div>\n'
        f'<nav aria-label="On this page"><ul>{links}</ul></nav></header>\n<main>\n'
    )


def _danger(book):
    if not any(question.danger for question in book.questions):
        yield "<p>This bank holds no danger items.</p>\n"
        return
    left = [_danger_items(book, row) for row in book.rows if book.danger_open(row)]
    if not left:
        yield "<p>Every learner has passed every danger item.</p>\n"
        return
    yield (
        f"<p><strong>{len(left)} of {len(book.rows)} learners</strong> have danger items that are "
        "not passed; wrong answers come first. Only the first answer to a draw counts there.</p>\n"
    )
    left.sort(key=lambda found: (-len(found[1]), -len(found[2])))
    rows = (_danger_row(*found) for found in left)
    yield from table(SECTIONS["danger"], ("Learner", "Answered wrong", "Not answered yet"), rows)


def _danger_items(book, row):
    """Return a row with its danger items that were answered wrong, and those not answered."""
    blank = [question for question in book.in_state(row, BLANK) if question.danger]
    return row, [question for question in book.danger_open(row) if question not in blank], blank


def _danger_row(row, tried, blank):
    alarm = f'<span class="alarm">▲ {ids(tried)}</span>' if tried else "none"
    return row_head(row.learner) + words(alarm) + words(ids(blank) or "none")


def _lessons(book):
    heads = ("Lesson", "Title", "Out of", "Average", "Passed")
    yield (
        "<p>Averages are over the learners who answered something in the lesson. A lesson with "
        "danger items is passed by full marks on these and 80 % of the rest.</p>\n"
    )
    rows = (_lesson_row(book, lesson) for lesson in book.lessons)
    yield from table(SECTIONS["lessons"], heads, rows)


def _lesson_row(book, lesson):
    began = [r for r in book.rows if any(s != BLANK for s in r.states[lesson.columns])]
    average = round(sum(map(lesson.marks, began)) / len(began), 1) if began else 0
    passed = f"{sum(map(bool, map(lesson.passed, book.rows)))} of {len(book.rows)}"
    return (
        f"{row_head(lesson.number)}<td>{for_page(lesson.title)}</td>{number(lesson.out_of)}"
        f"{number(average)}<td>{passed if lesson.danger_items else 'no danger items'}</td>"
    )


def _learners(book):
    heads = ["Learner", "Status", f"Marks<small>of {book.out_of}</small>", "Percent", "Answers"]
    heads += [
        f"Lesson {for_page(lesson.number)}<small>of {lesson.out_of}</small>"
        for lesson in book.lessons
    ]
    yield from table(SECTIONS["learners"], heads, (_learner_row(book, row) for row in book.rows))


def _learner_row(book, row):
    lessons = "".join(_lesson_cell(lesson, row) for lesson in book.lessons)
    return (
        f"{row_head(row.learner)}<td>{row.status}</td>{number(book.total(row))}"
        f"{number(book.percent(row))}{number(row.answers)}{lessons}"
    )


def _lesson_cell(lesson, row):
    passed = {True: " passed", False: " not yet", None: ""}[lesson.passed(row)]
    return f'<td class="number">{lesson.marks(row):g}{passed}</td>'


def _exercises(book):
    yield "<p>▲ before the name of a question says that it is a danger item.</p>\n"
    yield picture.key()
    for lesson in book.lessons:
        name = f"Lesson {for_page(lesson.number)}: {for_page(lesson.title)}"
        yield f'<h3>{name}</h3>\n<div class="scroll" role="region" tabindex="0" '
        yield f'aria-label="Picture of {name}">'
        yield from picture.grid(book, lesson)
        yield "</div>\n"
        heads = ["Learner", *map(_question_head, lesson.questions), "Marks"]
        rows = (_marks_row(lesson, row) for row in book.rows)
        yield from table(f"Marks of {name}", heads, rows)


def _question_head(question):
    sign = "▲ " if question.danger else ""
    worth = "not marked" if question.role == "predict" else f"of {question.marks}"
    return f"{sign}{for_page(question.id)}<small>{worth}</small>"


def _marks_row(lesson, row):
    pairs = zip(row.states[lesson.columns], row.marks[lesson.columns], strict=True)
    cells = "".join(_marks_cell(state, marks) for state, marks in pairs)
    return f"{row_head(row.learner)}{cells}{number(lesson.marks(row))}"


@cache
def _marks_cell(state, marks):
    name, sign, _ = picture.LOOKS[state]
    number = "" if state in (BLANK, KEPT) else f" {marks:g}"
    return f'<td class="number s-{name}"><span class="sign">{sign}</span>{number}</td>'


def _slips(book):
    if not book.slips:
        yield "<p>No wrong turn was recognised.</p>\n"
        return
    kinds = {question.id: question.kind.name for question in book.questions}
    slips = sorted(
        book.slips.items(), key=lambda slip: (-slip[1].danger, -slip[1].learners, slip[0])
    )
    most = max(count.learners for _, count in slips)
    heads = ("Question", "What was done", "Learners", "Answers", "How often")
    caption = "▲ would be dangerous if built or done; these come first, then the most frequent."
    rows = (_slip_row(kinds[key[0]], key, count, most) for key, count in slips)
    yield from table(SECTIONS["slips"], heads, rows, caption)


def _slip_row(kind, key, count, most):
    question, slip = key
    chosen = {"choice": "chose: ", "parts": "missed: "}.get(kind, "")
    sign = '<span class="alarm">▲</span> ' if count.danger else ""
    width = max(2, round(120 * count.learners / most))
    bar = f'<rect class="bar" width="{width}" height="12" y="3"/></svg>'
    return (
        f"{row_head(question)}{words(sign + chosen + for_page(slip))}{number(count.learners)}"
        f'{number(count.answers)}<td><svg width="120" height="18" aria-hidden="true">{bar}</td>'
    )


def _help(book):
    heads = ("Question", "What it asks for", "Worked answer shown first", "Tried, no marks yet")
    heads += ("Of the first: right since, with fresh numbers",)
    helped, stuck, repaired = {}, {}, {}
    for row in book.rows:
        for state, lists in ((HELPED, helped), (NONE, stuck)):
            for question in book.in_state(row, state):
                lists.setdefault(question.id, []).append(row.learner)
        for name in row.repaired:
            repaired.setdefault(name, []).append(row.learner)
    lists = (helped, stuck, repaired)
    wanted = [q for q in book.questions if q.id in helped or q.id in stuck]
    if not wanted:
        yield "<p>Nobody is stuck: every question that was tried has earned marks.</p>\n"
        return
    wanted.sort(key=lambda q: -len(helped.get(q.id, [])) - len(stuck.get(q.id, [])))
    rows = (_help_row(question, [found.get(question.id) for found in lists]) for question in wanted)
    yield from table(SECTIONS["help"], heads, rows, "The question with most learners comes first.")


def _help_row(question, lists):
    names = "".join(words(", ".join(for_page(n, 40) for n in found or ["–"])) for found in lists)
    return f"{row_head(question.id)}{words(for_page(question.outcome))}{names}"


def _problems(book):
    if not book.problems:
        yield "<p>Everything in the folder was used.</p>\n"
        return
    heads = ("Where", "What was found", "What to do")
    rows = (
        row_head(p.place) + words(for_page(p.found, 600)) + words(for_page(p.advice, 600))
        for p in book.problems
    )
    yield from table(SECTIONS["problems"], heads, rows)
