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
    LearnerMarks,
    danger_open,
)
from helpers.exercises.refusals import plain

NUMBER = re.compile(r"\A(\d+)[.,](\d+)\Z")
QUESTION = re.compile(r"(?!lesson )(\S+) \((?:of \d+|not marked)\)")  # a column's name
FORMULA_STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r")


def columns(book):
    """Return the names of the columns, danger first.

    Examples
    --------
    >>> from helpers.classroom.mark_book import MarkBook
    >>> columns(MarkBook("wick", ()))[:4]
    ['learner', 'status', 'danger items answered wrong', 'danger items not answered']
    """
    return list(cells(book, LearnerMarks("", "")))


def cells(book, row):
    """Return the values of one learner's row by the names of their columns."""
    wrong, blank = map(_listed, danger_open(book.questions, row))
    held = {"learner": row.learner, "status": row.status}
    held |= {"danger items answered wrong": wrong, "danger items not answered": blank}
    for since, turns in zip(("not right since", "right since"), book.dangerous(row), strict=True):
        held[f"dangerous answers, {since}"] = ", ".join(dict.fromkeys(t.question for t in turns))
    held |= {"marks": f"{book.total(row):g}", "out of": book.out_of}
    held["percent"] = f"{book.percent(row):g}"
    for lesson in book.lessons:
        held[f"lesson {lesson.number} (of {lesson.out_of})"] = f"{lesson.marks(row):g}"
        if lesson.danger_items:
            passed = "yes" if lesson.passed(row) else "no"
            held[f"lesson {lesson.number} passed"] = passed if lesson.begun(row) else "not begun"
    for said, state in (
        ("helped, still open", HELPED),
        ("helped, then right with fresh numbers", REPAIRED),
        ("no marks after tries", NONE),
    ):
        held[said] = _listed(book.in_state(row, state))
    held[f"danger items after more than {FEW_CASES} cases"] = ", ".join(row.retried)
    held |= {"from paper": ", ".join(row.paper), "answers": row.answers, "last answer": row.last}
    words = {BLANK: "", KEPT: "answered", BROKEN: BROKEN, EARLIER: EARLIER}
    for question in book.questions:
        worth = "not marked" if question.role == "predict" else f"of {question.marks}"
        marks = words.get(row.state(question), f"{row.earned(question):g}")
        held[f"{question.id} ({worth})"] = marks
    return held


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
    table = columns(book), *(cells(book, row).values() for row in book.rows)
    rows = [list(map(for_cell, values)) for values in table]
    if decimal_comma:
        text.write("\ufeff")
        rows = [[NUMBER.sub(r"\1,\2", str(value)) for value in values] for values in rows]
    csv.writer(text, delimiter=";" if decimal_comma else ",").writerows(rows)
    return text.getvalue()


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


def fallen(before, now, shared=False, owners=None):
    """Return who has lower marks on the questions than before.

    Parameters
    ----------
    before, now : str
        Two mark-book.csv. One that a spreadsheet has changed past reading tells nothing.
    shared : bool
        Whether only the questions count that both hold, as where lessons were named.
    owners : dict or None
        From other ids to the learners whose they have turned out to be.

    Returns
    -------
    learners : list of (str, float, float)
        Each with the marks before and now [-].
    """
    before, now = _marks(before), _marks(now)
    held = {name for _, marks in now.values() for name in marks}
    found = []
    for learner, (_, was) in before.items():
        _, stands = now.get((owners or {}).get(learner, learner), ("", {}))
        kept = [name for name in was if name in held or not shared]
        sums = [sum(map(_number, map(marks.get, kept))) for marks in (was, stands)]
        found += [(learner, *sums)] if sums[1] < sums[0] - 0.005 else []
    return found


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
    before, now = _marks(before), _marks(now)
    found = []
    for learner in sorted(before.keys() & now.keys()):
        (answers, was), (answers_now, stands) = before[learner], now[learner]
        same = answers == answers_now
        cells = [(name, cell, stands[name]) for name, cell in was.items() if name in stands]
        cells = [c for c in cells if c[1] not in ("", c[2]) and (same or c[2] == EARLIER)]
        found += [(learner, cells)] if cells else []
    return found


def _marks(text):
    """Return how many answers a mark-book.csv counts, and the cells of questions, by learner."""
    text = text.removeprefix("\ufeff")
    parted_by = max(",;", key=text.partition("\n")[0].count)
    lines = io.StringIO(text, newline="")
    try:
        rows = list(csv.DictReader(lines, restkey="", restval="", delimiter=parted_by))
    except csv.Error:
        return {}
    return {
        row["learner"]: (
            row.get("answers"),
            {found[1]: NUMBER.sub(r"\1.\2", cell) for name, cell in row.items()
             if (found := QUESTION.fullmatch(name))},
        )
        for row in rows
        if row.get("learner")
    }  # fmt: skip


def _number(cell):
    return float(cell) if re.fullmatch(r"\d+(\.\d+)?", cell or "") else 0.0


def _listed(questions):
    return ", ".join(question.id for question in questions)
