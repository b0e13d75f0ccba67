"""The picture of a lesson in the mark book: a grid of learners and questions, as inline SVG.

Each state has a shade and a shape of its own, so that it reads in black and white too. Knows states
and ids; must never know how an answer was marked.
"""

from helpers.classroom import mark_book as states
from helpers.classroom.files import for_page

CELL, ROW, LEFT, RIGHT = 30, 22, 108, 60
LONGEST_ID = 16

# state: (id in the picture, sign in tables, shape inside a cell of 26 by 18)
LOOKS = {
    states.FULL: ("full", "✓", '<path class="line" d="M7 9.5l4 4 8-9"/>'),
    states.PART: ("part", "◐", '<path class="solid" d="M13 3a6 6 0 0 0 0 12z"/>'),
    states.NONE: ("none", "○", '<circle class="line" cx="13" cy="9" r="5"/>'),
    states.HELPED: ("helped", "H", '<path class="line" d="M9 4v10M17 4v10M9 9h8"/>'),
    states.DANGER: (
        "danger",
        "▲",
        '<path class="solid" d="M13 1.5l9 15h-18z"/><path class="cut" d="M13 6.5v5M13 13v1.6"/>',
    ),
    states.KEPT: ("kept", "◇", '<path class="line" d="M13 4l5 5-5 5-5-5z"/>'),
    states.BLANK: ("blank", "·", '<circle class="solid" cx="13" cy="9" r="1.2"/>'),
    states.BROKEN: ("broken", "×", '<path class="line" d="M8 4l10 10M18 4l-10 10"/>'),
}
_IDS = {state: look[0] for state, look in LOOKS.items()}


def shapes():
    """Return the shapes of all states, for the grids of the page to point at."""
    cells = "".join(
        f'<g id="c-{name}" class="cell c-{name}"><rect width="26" height="18" rx="3"/>{shape}</g>'
        for name, _, shape in LOOKS.values()
    )
    return f'<svg class="store" width="0" height="0" aria-hidden="true"><defs>{cells}</defs></svg>'


def key():
    """Return the key to the shapes, as a list of pictures with words."""
    items = "".join(
        f'<li><svg width="26" height="18" aria-hidden="true"><use href="#c-{name}"/></svg>'
        f'<span><span class="sign">{sign}</span> {state}</span></li>'
        for state, (name, sign, _) in LOOKS.items()
    )
    return f'<ul class="key">{items}</ul>'


def grid(book, lesson):
    """Yield the picture of one lesson, with its title and description.

    Parameters
    ----------
    book : MarkBook
        Whose rows are drawn, in their order.
    lesson : Lesson
        Whose questions are the columns.

    Returns
    -------
    pieces : iterator of str
        SVG; it points at `shapes`, which must stand earlier on the page.
    """
    top = 40 + 6 * max((min(len(q.id), LONGEST_ID) for q in lesson.questions), default=0)
    width = LEFT + CELL * len(lesson.questions) + RIGHT
    height = top + ROW * len(book.rows) + 6
    own = f"picture-{for_page(lesson.number)}"
    yield (
        f'<svg class="grid" role="img" aria-labelledby="{own}-title {own}-text" '
        f'viewBox="0 0 {width} {height}" width="{width}" height="{height}">'
        f'<title id="{own}-title">Marks in lesson {for_page(lesson.number)}</title>'
        f'<desc id="{own}-text">{_described(book, lesson)}</desc>'
    )
    for column, question in enumerate(lesson.questions):
        at = LEFT + CELL * column + 15
        name = for_page(question.id, LONGEST_ID)
        yield f'<text transform="translate({at} {top - 19}) rotate(-55)">{name}</text>'
        if question.danger:
            yield f'<text class="middle" x="{at - 2}" y="{top - 6}">▲</text>'
    yield f'<text class="end" x="{width - 6}" y="{top - 8}">marks</text>'
    for number, row in enumerate(book.rows):
        yield f'<g transform="translate({LEFT} {top + ROW * number})">'
        yield f'<text class="end" x="-8" y="13">{for_page(row.learner, 13)}</text>'
        yield from (
            f'<use href="#c-{_IDS[state]}" x="{CELL * column}"/>'
            for column, state in enumerate(row.states[lesson.columns])
        )
        yield f'<text class="end" x="{width - LEFT - 6}" y="13">{lesson.marks(row):g}</text></g>'
    yield "</svg>"


def _described(book, lesson):
    counts = dict.fromkeys(LOOKS, 0)
    for row in book.rows:
        for state in row.states[lesson.columns]:
            counts[state] += 1
    total = ", ".join(f"{state} {count}" for state, count in counts.items() if count)
    return (
        f"A grid of {len(book.rows)} learners and {len(lesson.questions)} questions. Cells: "
        f"{total or 'none'}. The table below holds the same."
    )
