"""The mark book as a table for spreadsheets: one row a learner, as CSV.

Knows the mark book; must never mark anything itself.
"""

import csv
import io

from helpers.classroom.files import for_cell
from helpers.classroom.mark_book import BLANK, BROKEN, HELPED, KEPT, NONE


def columns(book):
    """Return the names of the columns, danger first.

    Examples
    --------
    >>> from helpers.classroom.mark_book import MarkBook
    >>> columns(MarkBook("wick", ()))[:3]
    ['learner', 'status', 'danger items not yet passed']
    """
    names = ["learner", "status", "danger items not yet passed", "marks", "out of", "percent"]
    for lesson in book.lessons:
        names.append(f"lesson {lesson.number} (of {lesson.out_of})")
        if lesson.danger_items:
            names.append(f"lesson {lesson.number} passed")
    names += ["helped", "helped, then right with fresh numbers", "no marks after tries", "answers"]
    for question in book.questions:
        predict = question.role == "predict"
        names.append(f"{question.id} ({'not marked' if predict else f'of {question.marks}'})")
    return names


def cells(book, row):
    """Return the values of one learner's row, in the order of `columns`."""
    values = [row.learner, row.status, _listed(book.danger_open(row))]
    values += [_number(book.total(row)), book.out_of, _number(book.percent(row))]
    for lesson in book.lessons:
        values.append(_number(lesson.marks(row)))
        if lesson.danger_items:
            values.append("yes" if lesson.passed(row) else "not yet")
    values += [_listed(book.in_state(row, HELPED)), ", ".join(row.repaired)]
    values += [_listed(book.in_state(row, NONE)), row.answers]
    words = {BLANK: "", KEPT: "answered", BROKEN: BROKEN}
    pairs = zip(row.marks, row.states, strict=True)
    return values + [words.get(state, _number(marks)) for marks, state in pairs]


def csv_lines(book):
    """Yield the lines of mark-book.csv.

    References
    ----------
    RFC 4180: lines end with CR LF, quotes are doubled.
    """
    line = io.StringIO(newline="")
    writer = csv.writer(line)
    for values in _all_rows(book):
        line.seek(0)
        line.truncate()
        writer.writerow([for_cell(value) for value in values])
        yield line.getvalue()


def _all_rows(book):
    yield columns(book)
    for row in book.rows:
        yield cells(book, row)


def _listed(questions):
    return ", ".join(question.id for question in questions)


def _number(value):
    return f"{value:g}"
