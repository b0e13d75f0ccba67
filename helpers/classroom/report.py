"""The mark book as one page to read and to print: danger first, no script, nothing from outside.

Knows the mark book; must never mark anything itself, nor put a learner's text in unescaped.
"""

from base64 import b64encode
from datetime import UTC, datetime
from hashlib import sha256

from helpers.classroom import page_questions
from helpers.classroom.files import for_page
from helpers.classroom.mark_book import EARLIER, FEW_CASES, HELPED, WITHOUT_MARKS, danger_open
from helpers.classroom.page_style import STYLE
from helpers.classroom.page_table import ids, legend, number, row_head, short, table, words
from helpers.exercises.wording import CAUTION


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
    for name, (title, body) in SECTIONS.items():
        yield f'<section aria-labelledby="{name}"><h2 id="{name}">{title}</h2>\n'
        yield from body(book, title)
        yield "</section>\n"
    yield "</main>\n</body>\n</html>\n"


def _head(book, at):
    fingerprint = b64encode(sha256(STYLE.encode()).digest()).decode()
    policy = f"default-src 'none'; style-src 'sha256-{fingerprint}'"
    links = (f'<li><a href="#{name}">{title}</a></li>' for name, (title, _) in SECTIONS.items())
    word = for_page(book.class_word)
    local = at.astimezone()
    yield (
        '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{policy}; base-uri \'none\'; '
        "form-action 'none'\">\n"
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>Mark book, class {word}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n"
        f'<a class="skip" href="#danger">Go to the mark book</a>\n'
        f"<header><h1>Mark book, class {word}</h1>\n"
        f"<p>Marked on {local:%Y-%m-%d at %H:%M} local time ({at:%Y-%m-%d %H:%M} UTC). "
        f"{book.in_words()}</p>\n"
        f'<div class="caution" role="note"><p><strong>Caution.</strong> {CAUTION}</p></div>\n'
        f'<nav aria-label="On this page"><ul>{"".join(links)}</ul></nav></header>\n<main>\n'
    )


def _ready(book, title):
    lessons = [lesson for lesson in book.lessons if lesson.danger_items]
    if not lessons:
        yield "<p>These lessons hold no danger items.</p>\n"
    else:
        passed = sum(all(lesson.passed(row) for lesson in lessons) for row in book.rows)
        yield (
            f"<p><strong>{passed} of {len(book.rows)} learners</strong> have passed every lesson "
            "with danger items: full marks on these, where only the first answer to a draw "
            "counts, and 80 % of the rest. Who answered a danger item wrong comes first.</p>\n"
        )
        yield legend([question for lesson in lessons for question in lesson.danger_items])
    heads = [f"Lesson {for_page(n.number)}<small>of {n.out_of}</small>" for n in book.lessons]
    heads = ["Learner", *heads, "Stuck<small>worked answer shown, not right since</small>"]
    heads += [f"Marks<small>of {book.out_of}</small>", "Percent", "Last answer"]
    rows = sorted(book.rows, key=lambda row: -len(danger_open(book.questions, row)[0]))
    yield from table(title, heads, (_learner_row(book, row) for row in rows))


def _learner_row(book, row):
    stands = "".join(f"<td>{_stands(lesson, row)}</td>" for lesson in book.lessons)
    if row.status in WITHOUT_MARKS:
        stands = f'<td colspan="{len(book.lessons)}">{row.status}</td>'
    numbers = (len(book.in_state(row, HELPED)), book.total(row), book.percent(row))
    numbers = "".join(map(number, numbers))
    return f"{row_head(row.learner)}{stands}{numbers}{short(for_page(row.last))}"


def _stands(lesson, row):
    """Say how far a learner is with a lesson."""
    if not lesson.begun(row):
        return "not begun"
    passed = lesson.passed(row)
    if passed is None:
        return f"{lesson.marks(row):g}"
    often = ids(q.id for q in lesson.danger_items if q.id in row.retried)
    often = f"; after more than {FEW_CASES} cases: {often}" if often else ""
    if passed:
        return f"✓ passed{often}"
    wrong, blank = danger_open(lesson.questions, row)
    earlier = [q for q in blank if row.state(q) == EARLIER]
    blank = [q for q in blank if q not in earlier]
    parts = [f'<span class="alarm">▲ wrong: {ids(q.id for q in wrong)}</span>'] if wrong else []
    parts += [f"{EARLIER}: {ids(q.id for q in earlier)}"] if earlier else []
    parts += [f"not answered: {ids(q.id for q in blank)}"] if blank else []
    parts += [f"short by {short:.3g} marks"] if (short := lesson.short_by(row)) else []
    return "; ".join(parts) + often


def _lessons(book, title):
    heads = ("Lesson", "Title", "Begun by", "Average", "Passed")
    yield "<p>Averages are over the learners who have begun the lesson.</p>\n"
    yield from table(title, heads, (_lesson_row(book, lesson) for lesson in book.lessons))


def _lesson_row(book, lesson):
    begun = [row for row in book.rows if lesson.begun(row)]
    average = sum(map(lesson.marks, begun)) / max(1, len(begun))
    passed = f"{sum(map(bool, map(lesson.passed, book.rows)))} of {len(book.rows)}"
    return (
        f"{row_head(lesson.number)}<td>{for_page(lesson.title)}</td>"
        f"{short(f'{len(begun)} of {len(book.rows)}')}{short(f'{average:.1f} of {lesson.out_of}')}"
        f"{short(passed if lesson.danger_items else 'no danger items')}"
    )


def _problems(book, title):
    if not book.problems:
        yield "<p>Everything in the folder was used.</p>\n"
        return
    heads = ("Where", "What was found", "What to do")
    rows = (
        row_head(p.place) + words(for_page(p.found, 600)) + words(for_page(p.advice, 600))
        for p in book.problems
    )
    yield from table(title, heads, rows)


def _handed_in(book, title):
    if not book.handed_in:
        yield "<p>Nothing was read.</p>\n"
        return
    yield (
        "<p>A learner's receipt shows the same number of answers and the same digest, if this is "
        "the file that was handed in.</p>\n"
    )
    rows = (
        f"{row_head(h.learner)}{words(for_page(h.name))}{number(h.answers)}{short(h.digest)}"
        for h in book.handed_in
    )
    yield from table(title, ("Learner", "File", "Answers", "Digest"), rows)


SECTIONS = {
    "danger": ("Who is ready, danger first", _ready),
    "lessons": ("The class, lesson by lesson", _lessons),
    "difficulty": ("Questions by difficulty, and who needs help", page_questions.difficulty),
    "slips": ("Slips of the class", page_questions.slips),
    "exercises": ("Marks by learner and exercise", page_questions.marks),
    "problems": ("What was left out or needs a look", _problems),
    "handed-in": ("What was handed in, to compare with receipts", _handed_in),
}
