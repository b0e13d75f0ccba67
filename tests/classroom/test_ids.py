"""An id that is not spelt as ids are counts for nobody until the roster settles whose it is."""

import pytest
from class_on_disk import found_in

from helpers.classroom.problems import ASK
from helpers.classroom.roster import Roster, read_roster


@pytest.mark.parametrize(
    ("spelt", "near"),
    [
        ("bench-02", "; the nearest on the roster is BENCH-02"),
        ("Bench 02", "; the nearest on the roster is BENCH-02"),
        ("x", ""),
        ("b" * 180, ""),
        ("", ""),
    ],
)
def test_another_spelling_is_asked_about_and_counts_for_nobody(room, spelt, near):
    room.neighbour(learner="BENCH-01")
    room.hand_in(room.line(room.right("current-1", spelt), learner=spelt), name="theirs.jsonl")
    (problem,) = room.mark().problems
    assert (problem.place, problem.rank) == ("theirs.jsonl", ASK)
    assert f"the id “{spelt[:40]}" in problem.found
    assert problem.found.endswith(f"counts for nobody yet{near}")
    assert "column `also`" in problem.advice
    assert set(room.table()) == {"BENCH-01", "BENCH-02"}
    assert room.table()["BENCH-02"]["marks"] == "0"


@pytest.mark.parametrize("other", ["bench-02", "BENCH-99"])
def test_the_roster_settles_whose_an_id_is_and_the_numbers_stay_those_of_that_id(room, other):
    """One question is answered under each id, and one under both: first wrong, then right."""
    numbers = {n: room.numbers("current-1", n).volts / room.numbers("current-1", n).ohms for n in
               ("BENCH-02", other)}  # fmt: skip
    assert numbers["BENCH-02"] != numbers[other], "the two ids have other numbers"
    room.write_roster(f"learner,also\nBENCH-01,\nBENCH-02,{other} BENCH-98\n")
    room.hand_in(
        room.line(room.right("current-1", other), learner=other),
        room.line(room.right("current-3", other), "current-3", other, second=9),
        name="a.jsonl",
    )
    own = [room.line(room.right("current-1", "BENCH-02"), learner="BENCH-02", second=4)]
    own += [room.line(room.right("current-2", "BENCH-02"), "current-2", "BENCH-02", second=5)]
    room.hand_in(*own, name="b.jsonl")
    book = room.mark()
    assert book.problems == []
    row = room.table()["BENCH-02"]
    assert (row["marks"], row["answers"], row["status"]) == ("3", "4", "handed in")
    assert {(h.name, h.learner) for h in book.handed_in} == {
        ("a.jsonl", "BENCH-02"),
        ("b.jsonl", "BENCH-02"),
    }


def test_what_was_explained_under_one_id_is_not_new_under_the_other(room):
    """Three wrong answers show the worked answer; right with other numbers is right after help."""
    room.write_roster("learner,also\nBENCH-01,bench-01\n")
    tries = [room.line(f"{n} A", learner="bench-01", second=n) for n in (1, 2, 3)]
    room.hand_in(*tries, name="a.jsonl")
    room.hand_in(room.line(room.right("current-1"), second=9), name="b.jsonl")
    room.mark()
    row = room.table()["BENCH-01"]
    assert (row["marks"], row["helped, then right with fresh numbers"]) == ("0", "current-1")


@pytest.mark.parametrize(
    ("content", "also"),
    [
        ("learner,also\nB-1,\nB-2,b-2\n", {"B-2": ["b-2"]}),
        ('also,learner\n"b-2,  B2",B-2\n,B-1\n', {"B-2": ["b-2", "B2"]}),
        ("learner;also\nB-1\nB-2;b-2,B2 b-2 B-2\n", {"B-2": ["b-2", "B2"]}),
    ],
)
def test_the_column_also(tmp_path, content, also):
    path = tmp_path / "roster.csv"
    path.write_text(content)
    roster, problems = read_roster(path)
    assert sorted(roster.learners) == ["B-1", "B-2"]
    assert (roster.also, problems) == (also, [])
    assert roster.ids("B-2") == ["B-2", *also["B-2"]]


@pytest.mark.parametrize("other", ["B-1", "WORKSHOP", "b-3"])
def test_one_id_is_never_two_learners(tmp_path, other):
    path = tmp_path / "roster.csv"
    path.write_text(f"learner,also\nB-1,\nB-3,b-3\nB-2,{other}\n")
    roster, problems = read_roster(path)
    assert roster == Roster(["B-1", "B-3", "B-2"], {"B-3": ["b-3"]})
    assert [(p.place, f"{other} stands for B-2, and for" in p.found) for p in problems] == [
        ("roster, row 4", True)
    ]


def test_an_id_of_another_learner_of_the_class_is_still_theirs(room):
    room.write_roster("learner,also\nBENCH-01,BENCH-02\nBENCH-02,\n")
    room.neighbour(learner="BENCH-02")
    book = room.mark()
    assert "BENCH-02 stands for BENCH-01, and for BENCH-02 before that" in found_in(book)
    assert [room.table()[name]["marks"] for name in ("BENCH-01", "BENCH-02")] == ["0", "2"]


@pytest.mark.parametrize("first", ["bench-02", "BENCH-02"])
def test_two_settled_ids_may_stand_in_one_file(room, first):
    """Where a disk makes no difference between capital and small letters, both have one log."""
    room.write_roster("learner,also\nBENCH-01,\nBENCH-02,bench-02\n")
    ids = sorted(["bench-02", "BENCH-02"], key=lambda one: one != first)
    names = ("current-1", "current-2")
    room.hand_in(
        *(room.line(room.right(name, one), name, one) for name, one in zip(names, ids, strict=True))
    )
    assert room.mark().problems == []
    assert room.table()["BENCH-02"]["marks"] == "2"
