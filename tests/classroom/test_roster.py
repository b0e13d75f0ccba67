"""The roster is read from what spreadsheets save; every row is used or named."""

import pytest

from helpers.classroom.roster import Roster, read_roster
from helpers.exercises.refusals import Unusable

TWO = ["BENCH-01", "BENCH-02"]


@pytest.mark.parametrize(
    "content",
    [
        pytest.param(b"learner\nBENCH-01\nBENCH-02\n", id="plain"),
        pytest.param(b"\xef\xbb\xbflearner\nBENCH-01\nBENCH-02\n", id="byte order mark"),
        pytest.param(b"group;learner\r\nA;BENCH-01\r\nB;BENCH-02\r\n", id="semicolons, CRLF"),
        pytest.param(b"learner\tgroup\nBENCH-01\tA\nBENCH-02\tB\n", id="tabs"),
        pytest.param(b" Learner \n bench-01 \nBench-02\n", id="spaces and lower case"),
        pytest.param(b"learner\n\nBENCH-01\n ,\nBENCH-02", id="blank rows, no last line end"),
        pytest.param(b'"learner","group"\n"BENCH-01","A, b"\nBENCH-02,\n', id="quotes"),
        pytest.param("learner\nBENCH-01\nBENCH-02\n".encode("utf-16"), id="UTF-16"),
    ],
)
def test_the_same_class_however_it_was_saved(tmp_path, content):
    path = tmp_path / "roster.csv"
    path.write_bytes(content)
    assert read_roster(path) == (Roster(TWO), [])


@pytest.mark.parametrize(
    ("row", "says"),
    [
        pytest.param("BENCH-01", "BENCH-01 stands there again (first in row 2)", id="twice"),
        pytest.param("bench 7", "“BENCH 7” is not a learner id", id="space inside"),
        pytest.param("A", "“A” is not a learner id", id="one character"),
        pytest.param("=1+1", "“=1+1” is not a learner id", id="formula"),
        pytest.param(",group A", "the cell is empty", id="empty cell"),
        pytest.param("WORKSHOP", "WORKSHOP belongs to the workshop copy", id="workshop copy"),
    ],
)
def test_a_row_that_cannot_be_used_is_named(tmp_path, row, says):
    path = tmp_path / "roster.csv"
    path.write_text(f"learner,group\nBENCH-01\n{row}\nBENCH-02\n", encoding="utf-8")
    roster, problems = read_roster(path)
    assert roster == Roster(TWO)
    assert [(p.place, says in p.found, bool(p.advice)) for p in problems] == [
        ("roster, row 3", True, True)
    ]


@pytest.mark.parametrize(
    ("content", "says"),
    [
        pytest.param(
            b"id,group\n7,A\n", r"first row holds: id, group\..*`learner`", id="no column"
        ),
        pytest.param(b"", r"first row holds: nothing", id="empty file"),
        pytest.param(b"learner\n\n", r"names no usable learner id", id="nobody"),
        pytest.param(
            b"learner\nB\xe9NCH\n", r"line 2 holds letters that are not UTF-8", id="not UTF-8"
        ),
        pytest.param(b"learner\n" + b"x" * 200_000, r"not be read as a table", id="endless cell"),
    ],
)
def test_a_roster_that_cannot_be_used_says_what_to_do(tmp_path, content, says):
    path = tmp_path / "roster.csv"
    path.write_bytes(content)
    with pytest.raises(Unusable, match=says):
        read_roster(path)


def test_a_missing_roster_says_where_it_was_looked_for(tmp_path):
    with pytest.raises(Unusable, match=r"nowhere\.csv could not be read"):
        read_roster(tmp_path / "nowhere.csv")


def test_another_id_of_a_learner_is_on_the_mains_of_that_learner():
    roster = Roster(TWO, {"BENCH-02": ["BENCH-2"]}, {"BENCH-02": "120v 60hz"})
    ids = ("BENCH-02", "BENCH-2", "BENCH-01", "BENCH-09")
    assert [roster.supply_of(one) for one in ids] == ["120v 60hz", "120v 60hz", None, None]


def test_a_supply_of_ones_own_is_kept_as_typed(tmp_path):
    path = tmp_path / "roster.csv"
    path.write_text("learner;Supply\nBENCH-01;\nBENCH-02; 120 V 60 Hz \n", encoding="utf-8")
    roster, problems = read_roster(path)
    assert (roster.supplies, problems) == ({"BENCH-02": "120 V 60 Hz"}, [])
