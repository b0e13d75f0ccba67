"""The mark book as a page to act on: danger first, then who needs what, then the questions.

Knows what the page says of a mark book; must never mark anything itself. How it is set stands in
`helpers/pages/templates`.
"""

from collections import defaultdict
from datetime import UTC, datetime
from functools import cache
from textwrap import shorten

from helpers.classroom import mark_book as states
from helpers.classroom.items import FEWEST, by_chance, items
from helpers.classroom.mark_book import FEW_CASES, HELPED, NO_KNOWN_TURN, NONE, danger_open
from helpers.exercises.wording import CAUTION
from helpers.pages import templates

MOST = 3  # slips that come back to one learner
LONG = 60  # characters of a slip

# Each state has a name for its shade and a sign of its own, so that it reads in grey.
LOOKS = {
    states.FULL: ("full", "✓"),
    states.PART: ("part", "◐"),
    states.NONE: ("none", "○"),
    states.HELPED: ("helped", "H"),
    states.REPAIRED: ("helped", "R"),
    states.DANGER: ("danger", "▲"),
    states.KEPT: ("kept", "◇"),
    states.EARLIER: ("earlier", "E"),
    states.BLANK: ("blank", "·"),
    states.BROKEN: ("broken", "×"),
}
# On the first page a word stands beside each sign, and nothing where all is well.
DANGER_LOOKS = {
    states.FULL: ("", "", ""),
    states.DANGER: ("danger", "▲", "wrong"),
    states.EARLIER: ("earlier", "E", "ask again"),
    states.BLANK: ("blank", "□", "open"),
    states.BROKEN: ("broken", "×", "unmarked"),
}
MANY_CASES = ("retried", "?", "ask why")
NOT_BEGUN = ("blank", "–", "not begun")
STILL_OPEN = {HELPED: ("H", "worked answer shown"), NONE: ("○", "tried, no marks yet")}


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
    at = at or datetime.now(UTC)
    rows = sorted(book.rows, key=lambda row: -len(_hurts(book, row)))
    lessons = [lesson for lesson in book.lessons if lesson.danger_items]
    passed = {row.learner: [n.number for n in lessons if n.passed(row)] for row in rows}
    slips, numbers = book.slips(), items(book)
    return templates.page(
        "mark-book",
        book=book,
        rows=rows,
        marked=f"{at.astimezone():%Y-%m-%d at %H:%M} local time ({at:%Y-%m-%d %H:%M} UTC)",
        caution=CAUTION,
        looks=LOOKS,
        danger_lessons=lessons,
        passed=passed,
        passed_all=sum(len(numbers) == len(lessons) for numbers in passed.values()),
        marks_cells=_marks_cells,
        danger_cells=lambda row: _danger_cells(lessons, row),
        needs=lambda row: _needs(book, row, passed[row.learner]),
        states=states,
        difficulty=list(_difficulty(book, slips, numbers)),
        numbers=numbers,
        told_apart=any(item.apart is not None for item in numbers.values()),
        fewest=FEWEST,
        chance=by_chance(max(1, sum(bool(row.states) for row in rows))),
        lessons=[_lesson(lesson, rows, passed) for lesson in book.lessons],
        dangers=[slip for slip in slips if slip.dangers],
        other_slips=[slip for slip in slips if not slip.dangers],
        cut=_cut,
        out_of=book.out_of,
        few=FEW_CASES,
    )


@cache
def _cut(name, most=LONG):
    return shorten(name, most, placeholder=" …")


def _known(slips):
    return [slip for slip in slips if slip.name != NO_KNOWN_TURN]


def _hurts(book, row):
    """Return what to talk through first: danger items wrong, other dangers not right since."""
    left = {turn.question for turn in book.dangerous(row)[0]}
    left |= {question.id for question in danger_open(book.questions, row)[0]}
    return [question for question in book.questions if question.id in left]


def _danger_cells(lessons, row):
    """Yield how many columns a cell takes, its shade, sign and word; nothing where all is well."""
    if row.status in states.WITHOUT_MARKS:
        yield sum(len(lesson.danger_items) for lesson in lessons), "blank", "–", row.status
        return
    for lesson in lessons:
        if not lesson.begun(row):
            yield len(lesson.danger_items), *NOT_BEGUN
            continue
        for question in lesson.danger_items:
            retried = question.id in row.retried
            yield 1, *(MANY_CASES if retried else DANGER_LOOKS[row.state(question)])


def _marks_cells(lesson, row):
    """Return the cells of one learner in the grid of a lesson."""
    cells = (_marks_cell(row.state(q), row.earned(q)) for q in lesson.questions)
    return templates.piece("").join(cells)


@cache
def _marks_cell(state, earned):
    shown = earned and state != states.FULL
    value = templates.piece('<span class="who"> {:g}</span>', earned) if shown else ""
    return templates.piece('<td class="s-{}">{}{}</td>', *LOOKS[state], value)


def _missed(turn, question):
    """Say whether a turn kept a danger item from being passed and is named nowhere else."""
    return question.danger and turn.question == question.id and not turn.danger


def _needs(book, row, passed):
    """Return what there is to talk about with a learner; the template has the words for it."""
    begun = [lesson for lesson in book.lessons if lesson.begun(row)]
    _, blank = danger_open([q for lesson in begun for q in lesson.questions], row)
    left = [lesson for lesson in begun if lesson.danger_items and lesson.number not in passed]
    back = [slip for slip in _known(book.slips([row])) if len(slip.questions) > 1]
    back.sort(key=lambda slip: (not slip.dangers, -len(slip.questions)))
    return {
        "wrong": [
            (question.id, [turn.name for turn in row.turns if _missed(turn, question)])
            for question in _hurts(book, row)
            if row.state(question) != states.BROKEN
        ],
        "blank": [q for q in blank if row.state(q) == states.BLANK],
        "short": [(lesson.number, by) for lesson in left if (by := lesson.short_by(row))],
        "back": back[:MOST],
        "later": [lesson.number for lesson in book.lessons if lesson not in begun],
    }


def _difficulty(book, slips, numbers):
    """Yield each marked question, the hardest first, with what is known of it.

    That is its `Item`, its known turns as (whether it could hurt, its name, how many took it), how
    many took no known turn, and with whom it is still open.
    """
    turns = defaultdict(list)
    for slip in slips:
        for name, learners in slip.questions.items():
            turns[name].append((name in slip.dangers, slip.name, learners))
    marked = [q for lesson in book.lessons for q in lesson.marked if q.id in numbers]
    marked.sort(key=lambda q: (numbers[q.id].facility, -numbers[q.id].tried))
    for question in marked:
        taken = sorted(turns[question.id], key=lambda turn: (-turn[2], not turn[0]))
        known = [turn for turn in taken if turn[1] != NO_KNOWN_TURN]
        unknown = sum(turn[2] for turn in taken if turn not in known)
        left = [
            (*said, who)
            for state, said in STILL_OPEN.items()
            if (who := book.learners(question, state))
        ]
        yield question, numbers[question.id], known, unknown, left


def _lesson(lesson, rows, passed):
    """Return a lesson, how many have begun it, their average, and how many have passed."""
    begun = [row for row in rows if lesson.begun(row)]
    average = sum(map(lesson.marks, begun)) / max(1, len(begun))
    return lesson, len(begun), f"{average:.1f}", sum(lesson.number in p for p in passed.values())
