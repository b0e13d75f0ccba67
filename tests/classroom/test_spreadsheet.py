"""The table for spreadsheets: decimal points or commas, and what is other than in the last one."""

import csv
import io
import re

import pytest

from helpers.classroom.mark_book import EARLIER
from helpers.classroom.spreadsheet import fallen, moved


def test_second_way_a_table_with_decimal_commas_says_the_same(room):
    room.hand_in(room.line(room.right("current-1")), room.line("9 A", "current-2", second=1))
    points = room.run().table.read_text(encoding="utf-8")
    raw = room.run(decimal_comma=True).table.read_bytes()
    assert raw.startswith(b"\xef\xbb\xbflearner;status;")
    commas = list(csv.reader(io.StringIO(raw.decode("utf-8-sig"), newline=""), delimiter=";"))
    wanted = list(csv.reader(io.StringIO(points, newline="")))
    assert commas != wanted
    back = [[re.sub(r"^(\d+),(\d+)$", r"\1.\2", cell) for cell in row] for row in commas]
    assert back == wanted


@pytest.mark.parametrize("comma", [False, True])
def test_marks_before_are_read_with_points_and_with_commas(room, comma):
    room.hand_in(*(room.line(room.right(f"current-{n}"), f"current-{n}", second=n) for n in (1, 2)))
    room.run(decimal_comma=comma)
    assert room.run().lower == []
    room.run(decimal_comma=comma)
    room.hand_in(room.line(room.right("current-1")))
    assert "BENCH-01 (was 2, is 1)" in room.run(decimal_comma=comma).lower[0].found


@pytest.mark.parametrize(("before", "now"), [("1,5", "1"), ("1.5", "1"), ("2", "1,5")])
def test_second_way_a_fall_by_half_a_mark_in_either_spelling(before, now):
    tables = [f"learner;current-1 (of 2)\r\nBENCH-01;{cell}\r\n" for cell in (before, now)]
    ((learner, was, is_now),) = fallen(*tables)
    assert (learner, was - is_now) == ("BENCH-01", 0.5)
    assert fallen(*reversed(tables)) == []


def table(cell, answers="2"):
    names = ["learner", "answers", "current-1 (of 1)", "guess (not marked)", "lesson 01 (of 9)"]
    rows = [names, ["BENCH-01", answers, cell, "answered", "4"]]
    return "".join(",".join(row) + "\r\n" for row in rows)


@pytest.mark.parametrize(
    ("was", "now", "answers", "cells"),
    [
        ("1", "0.5", "2", [("current-1", "1", "0.5")]),
        ("0", "1", "2", [("current-1", "0", "1")]),
        ("1", EARLIER, "2", [("current-1", "1", EARLIER)]),
        ("1", EARLIER, "3", [("current-1", "1", EARLIER)]),
        ("0", "1", "3", None),
        ("", "1", "2", None),
        ("1", "1", "2", None),
    ],
)
def test_other_marks_for_the_same_answers_are_found(was, now, answers, cells):
    found = moved(table(was), table(now, answers))
    assert found == ([("BENCH-01", cells)] if cells else [])


def test_what_a_changed_bank_did_to_whom_is_said(room):
    room.hand_in(room.line(room.right("current-1")), room.line("9 A", "current-2", second=1))
    first = room.run()
    text = first.table.read_text(encoding="utf-8")
    first.table.write_text(text.replace("current-1 (of 1)", "current-1 (of 2)"), encoding="utf-8")
    assert room.run().lower == [], "what a question is worth is no mark of a learner"
    room.hand_in(
        room.line(room.right("current-1"), edition=0), room.line("9 A", "current-2", second=1)
    )
    lower, other = room.run().lower
    assert "BENCH-01 (was 1, is 0)" in lower.found
    assert other.found == (
        "other marks than before for the same answers: BENCH-01 (current-1 was 1, is answered "
        "before the question was changed)"
    )
    assert "Has the bank changed" in other.advice and "is kept: mark-book_" in other.advice


def test_dangerous_answers_have_columns_of_their_own(room):
    burnt = room.question("current-1").kind.slips[2].wrong(room.numbers("current-1"))
    lines = [room.line(f"{burnt:.4g} A"), room.line(f"{burnt:.4g} A", "current-2", second=1)]
    room.hand_in(*lines, room.line(room.right("current-1"), second=2))
    room.mark()
    row = room.table()["BENCH-01"]
    assert row["dangerous answers, right since"] == "current-1"
    assert row["dangerous answers, not right since"] == "current-2"


def test_a_danger_that_is_still_wrong_is_not_right_since(room):
    for name in ("current-2", "current-1"):
        burnt = room.question(name).kind.slips[2].wrong(room.numbers(name))
        room.type_back(f"{burnt:.4g} A", name)
    room.mark()
    row = room.table()["BENCH-01"]
    assert row["dangerous answers, not right since"] == "current-1, current-2"
    assert row["dangerous answers, right since"] == ""
