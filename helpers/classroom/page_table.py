"""Tables of the mark book's page: cells, row heads, and a box that scrolls by keyboard.

Knows HTML and questions only. `row_head`, `question_head`, `ids` and `legend` escape what they are
given; the others take HTML.
"""

from helpers.classroom.files import for_page


def table(name, heads, rows):
    """Yield a table; `rows` gives the inside of each row, its first cell a row header."""
    yield f'<div class="scroll" role="region" tabindex="0" aria-label="{name}"><table>'
    cells = "".join(f'<th scope="col">{head}</th>' for head in heads)
    yield f"<thead><tr>{cells}</tr></thead>\n<tbody>\n"
    for row in rows:
        yield f"<tr>{row}</tr>\n"
    yield "</tbody></table></div>\n"


def row_head(text):
    return f'<th scope="row">{for_page(text, 40)}</th>'


def question_head(question):
    """Return a row header with what the question asks for below its id."""
    return f'<th scope="row">{_name(question)}<small>{for_page(question.outcome)}</small></th>'


def short(text):
    return f'<td class="short">{text}</td>'


def number(value):
    return f'<td class="number">{value:g}</td>'


def words(text):
    return f'<td class="words">{text}</td>'


def ids(names):
    """Return ids of questions or learners, none broken at its hyphen."""
    return ", ".join(f'<span class="id">{for_page(name, 40)}</span>' for name in names)


def legend(questions):
    """Return what each question asks for, as one small paragraph."""
    told = "; ".join(f"<b>{_name(q)}</b> {for_page(q.outcome)}" for q in questions)
    return f'<p class="legend">{told}.</p>\n'


def _name(question):
    return f"{'▲ ' if question.danger else ''}{for_page(question.id)}"
