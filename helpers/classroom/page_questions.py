"""The part of the mark book's page about questions: difficulty, who is stuck, slips and marks.

Knows the mark book; must never mark anything itself, nor put a learner's text in unescaped.
"""

from functools import cache

from helpers.classroom import mark_book as states
from helpers.classroom.files import for_page
from helpers.classroom.mark_book import HELPED, NO_KNOWN_TURN, NONE
from helpers.classroom.page_table import (
    ids,
    legend,
    number,
    question_head,
    row_head,
    short,
    table,
    words,
)

# Each state has a name for its shade and a sign of its own, so that it reads in black and white.
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


def difficulty(book, title):
    """Yield the questions, hardest first, each with its most common wrong turn."""
    tried = {question.id: book.tried(question) for question in book.questions}
    marked = [q for lesson in book.lessons for q in lesson.marked if tried[q.id]]
    marked.sort(key=lambda q: (book.first_right[q.id] / tried[q.id], -tried[q.id]))
    heads = ("Question", "Tried by", "Right at the first try", "Most common wrong turn")
    heads += (f"{NO_KNOWN_TURN.capitalize()}<small>learners</small>", "Still open with")
    rows = (_difficulty_row(book, question, tried[question.id]) for question in marked)
    yield "<p>The hardest comes first. ▲ is a danger item.</p>\n"
    yield from table(title, heads, rows)


def _difficulty_row(book, question, tried):
    counts = dict(book.turns(question))
    unknown = counts.pop(NO_KNOWN_TURN, None)
    common = sorted(counts.values(), key=lambda count: -count.learners)[:1]
    return (
        f"{question_head(question)}{short(f'{tried} of {len(book.rows)}')}"
        f"{short(f'{book.first_right[question.id]} of {tried}')}"
        f"{words(_turns(common, tried) or 'none')}"
        f"{number(unknown.learners if unknown else 0)}{words(_open_with(book, question))}"
    )


def _open_with(book, question):
    """Return who has tried a question and is still without a right answer."""
    lists = {"worked answer shown": HELPED, "tried, no marks yet": NONE}
    found = {said: book.learners(question, state) for said, state in lists.items()}
    told = (f"{said}: {ids(names)}" for said, names in found.items() if names)
    return "<br>".join(told) or "nobody"


def _turns(counts, tried):
    """Return wrong turns, a line each, with how many took them of those who tried."""
    alarm = '<span class="alarm">▲</span> '
    return "<br>".join(
        f"{alarm if count.danger else ''}{for_page(count.text)} ({count.learners} of {tried})"
        for count in counts
    )


def slips(book, title):
    """Yield the wrong turns of the class by question, dangers first, then the most frequent."""
    found = ((q, [count for _, count in book.turns(q)]) for q in book.questions)
    wrong = [(question, counts) for question, counts in found if counts]
    if not wrong:
        yield "<p>Nobody answered anything wrong.</p>\n"
        return
    wrong.sort(key=lambda pair: (-pair[1][0].danger, -pair[1][0].learners))
    yield (
        "<p>▲ before a wrong turn: it would be dangerous if built or done. These come first, then "
        "the most frequent. In brackets: learners of those who tried. Where an option holds "
        "numbers, they are those of one learner.</p>\n"
    )
    rows = (question_head(q) + words(_turns(counts, book.tried(q))) for q, counts in wrong)
    yield from table(title, ("Question", "What was done"), rows)


def marks(book, title):
    """Yield a grid of learners and questions for each lesson."""
    signs = ((f"s-{name}", sign, state) for state, (name, sign) in LOOKS.items())
    items = "".join(f'<li><b class="{c}">{sign}</b> {state}</li>' for c, sign, state in signs)
    yield f'<ul class="key">{items}</ul>'
    for lesson in book.lessons:
        name = f"Lesson {for_page(lesson.number)}: {for_page(lesson.title)}"
        yield f'<div class="marks"><h3>{name}</h3>\n{legend(lesson.questions)}'
        heads = ["Learner", *map(_column_head, lesson.questions), "Marks"]
        rows = (_marks_row(lesson, row) for row in book.rows)
        yield from table(f"{title}, {name}", heads, rows)
        yield "</div>\n"


def _column_head(question):
    worth = "not marked" if question.role == "predict" else f"of {question.marks}"
    return f"{'▲ ' if question.danger else ''}{for_page(question.id)}<small>{worth}</small>"


def _marks_row(lesson, row):
    cells = "".join(_marks_cell(row.state(q), row.earned(q)) for q in lesson.questions)
    return f"{row_head(row.learner)}{cells}{number(lesson.marks(row))}"


@cache
def _marks_cell(state, earned):
    name, sign = LOOKS[state]
    value = f" {earned:g}" if earned and state != states.FULL else ""
    return f'<td class="number s-{name}">{sign}{value}</td>'
