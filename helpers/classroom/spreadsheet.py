"""The mark book for spreadsheets: one row a learner, as CSV that no program runs.

Knows the mark book; must never mark anything itself.
"""

import csv
import io
import re

from helpers.classroom.mark_book import (
    BLANK,
    BROKEN,
    EARLIER,
    FEW_CASES,
    HELPED,
    KEPT,
    NONE,
    REPAIRED,
    danger_open,
)
from helpers.pages.templates import plain

NUMBER = re.compile(r"(\d+)[.,](\d+)")
FORMULA_STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r")


def columns(book):
    """Return the names of the columns, danger first.

    Examples
    --------
    >>> from helpers.classroom.mark_book import MarkBook
    >>> columns(MarkBook("wick", ()))[:4]
    ['learner', 'status', 'danger items answered wrong', 'danger items not answered']
    """
    names = ["learner", "status", "danger items answered wrong", "danger items not answered"]
    names += ["marks", "out of", "percent"]
    for lesson in book.lessons:
        names.append(f"lesson {lesson.number} (of {lesson.out_of})")
        if lesson.danger_items:
            names.append(f"lesson {lesson.number} passed")
    names += ["helped, still open", "helped, then right with fresh numbers", "no marks after tries"]
    names += [f"danger items after more than {FEW_CASES} cases", "from paper"]
    names += ["answers", "last answer"]
    for question in book.questions:
        predict = question.role == "predict"
        names.append(f"{question.id} ({'not marked' if predict else f'of {question.marks}'})")
    return names


def cells(book, row):
    """Return the values of one learner's row, in the order of `columns`."""
    values = [row.learner, row.status, *map(_listed, danger_open(book.questions, row))]
    values += [_number(book.total(row)), book.out_of, _number(book.percent(row))]
    for lesson in book.lessons:
        values.append(_number(lesson.marks(row)))
        if lesson.danger_items:
            passed = "yes" if lesson.passed(row) else "no"
            values.append(passed if lesson.begun(row) else "not begun")
    values += [_listed(book.in_state(row, state)) for state in (HELPED, REPAIRED, NONE)]
    values += [", ".join(row.retried), ", ".join(row.paper), row.answers, row.last]
    words = {BLANK: "", KEPT: "answered", BROKEN: BROKEN, EARLIER: EARLIER}
    return values + [words.get(row.state(q), _number(row.earned(q))) for q in book.questions]


def csv_text(book, decimal_comma=False):
    """Return mark-book.csv.

    Parameters
    ----------
    book : MarkBook
    decimal_comma : bool
        Write it as a spreadsheet opens it that is set to a decimal comma: cells parted by
        semicolons, and a byte-order mark, by which such a program knows UTF-8.

    References
    ----------
    RFC 4180: lines end with CR LF, quotes are doubled.
    """
    text = io.StringIO(newline="")
    rows = [list(map(for_cell, values)) for values in (columns(book), *_all_cells(book))]
    if decimal_comma:
        text.write("\ufeff")
        rows = [[_with_comma(str(value)) for value in values] for values in rows]
    csv.writer(text, delimiter=";" if decimal_comma else ",").writerows(rows)
    return text.getvalue()


def _all_cells(book):
    return (cells(book, row) for row in book.rows)


def _with_comma(value):
    return value.replace(".", ",") if NUMBER.fullmatch(value) else value


def for_cell(value):
    """Return a value as it may stand in a CSV file that a spreadsheet opens.

    Notes
    -----
    A spreadsheet runs a cell that begins with one of `= + - @`, a tab or a return as a formula,
    some also where the sign is full-width or follows blanks; a leading apostrophe stops that. A
    semicolon becomes a comma, because spreadsheets that part cells at semicolons would let the
    rest begin a cell of its own.

    References
    ----------
    The list of first characters: OWASP, "CSV Injection" (from memory).

    Examples
    --------
    >>> for_cell("=1+1"), for_cell(7.5)
    ("'=1+1", 7.5)
    """
    if not isinstance(value, str):
        return value
    guard = "'" if value.lstrip(" ").startswith(FORMULA_STARTS) else ""
    return guard + plain(value, 300).replace(";", ",")


def fallen(before, now, shared=False):
    """Return who has lower marks on the questions than before.

    Parameters
    ----------
    before, now : str
        Two mark-book.csv. One that a spreadsheet has changed past reading tells nothing.
    shared : bool
        Whether only the questions count that both hold, as where lessons were named.

    Returns
    -------
    learners : list of (str, float, float)
        Each with the marks before and now [-].
    """
    before, now = _rows(before), _rows(now)
    was, stands = _questions(_header(before)), _questions(_header(now))
    kept = [name for name in was if name in stands or not shared]
    places = [was[name] for name in kept], [stands.get(name) for name in kept]
    sums = [(n, _sum(row, places[0]), _sum(now.get(n, {}), places[1])) for n, row in before.items()]
    return [found for found in sums if found[2] < found[1] - 0.005]


def moved(before, now):
    """Return whose marks on which questions are others than before, from the same answers.

    Parameters
    ----------
    before, now : str
        Two mark-book.csv, as for `fallen`.

    Returns
    -------
    learners : list of (str, list of (str, str, str))
        Each with questions, and the cells before and now. Where more was answered since, only
        what is now of an earlier edition.
    """
    before, now = _rows(before), _rows(now)
    was, stands = _questions(_header(before)), _questions(_header(now))
    found = []
    for learner in before.keys() & now.keys():
        row, after = before[learner], now[learner]
        same = row.get("answers") == after.get("answers")
        cells = [(name, row[was[name]], after[stands[name]]) for name in was if name in stands]
        cells = [c for c in cells if c[1] not in ("", c[2]) and (same or c[2] == EARLIER)]
        found += [(learner, cells)] if cells else []
    return sorted(found)


def _questions(header):
    """Return the columns of questions by the questions' ids."""
    names = [
        name for name in header if re.fullmatch(r"(?!lesson )\S+ \((of \d+|not marked)\)", name)
    ]
    return {name.partition(" ")[0]: name for name in names}


def _rows(text):
    """Return the rows of a mark-book.csv by learner, numbers with a decimal point."""
    text = text.removeprefix("\ufeff")
    parted_by = max(",;", key=text.partition("\n")[0].count)
    lines = io.StringIO(text, newline="")
    try:
        rows = list(csv.DictReader(lines, restkey="", restval="", delimiter=parted_by))
    except csv.Error:
        return {}
    return {row["learner"]: _with_point(row) for row in rows if row.get("learner")}


def _with_point(row):
    cells = {name: cell for name, cell in row.items() if isinstance(cell, str)}
    return {name: c.replace(",", ".") if NUMBER.fullmatch(c) else c for name, c in cells.items()}


def _header(rows):
    return next(iter(rows.values()), {})


def _sum(row, names):
    cells = [row.get(name, "") for name in names]
    return sum(float(cell) for cell in cells if re.fullmatch(r"\d+(\.\d+)?", cell))


def _listed(questions):
    return ", ".join(question.id for question in questions)


def _number(value):
    return f"{value:g}"
