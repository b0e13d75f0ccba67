"""From a roster to one new file: who gets what, and what is refused before anything is written."""

import pytest

from helpers.classroom.problems import Unusable
from helpers.printing import print_for


def people_of(people):
    return [f"{one.learner} {one.class_word} {one.supply}\n" for one in people]


@pytest.fixture
def roster(tmp_path):
    path = tmp_path / "roster.csv"
    path.write_text("learner,supply\nBENCH-01,\nbench-02,120V/60Hz\nbench 3,\n", encoding="utf-8")
    return path


def test_each_learner_of_the_roster_gets_a_part_on_their_own_supply(tmp_path, roster):
    out = tmp_path / "out.html"
    said = print_for(people_of, out, " WICK ", roster)
    assert out.read_text("utf-8") == "BENCH-01 wick 230 V 50 Hz\nBENCH-02 wick 120 V 60 Hz\n"
    assert said[0] == f"2 learners, on 230 V 50 Hz, 120 V 60 Hz: {out}"
    assert said[1].startswith("roster, row 4: “BENCH 3” is not a learner id")


def test_one_learner_may_be_picked_from_the_roster_or_named_without_one(tmp_path, roster):
    print_for(people_of, tmp_path / "a", "wick", roster, "bench-02", "100 V 50 Hz")
    print_for(people_of, tmp_path / "b", "wick", None, "bench-02", "100 V 50 Hz")
    assert (tmp_path / "a").read_text("utf-8") == "BENCH-02 wick 120 V 60 Hz\n"
    assert (tmp_path / "b").read_text("utf-8") == "BENCH-02 wick 100 V 50 Hz\n"


@pytest.mark.parametrize(
    ("given", "says"),
    [
        ({}, "Whose"),
        ({"roster": "roster.csv", "learner": "BENCH-09"}, "BENCH-09 is not on the roster"),
        ({"learner": "BENCH-09", "supply": "23 V"}, "The supply '23 V' was read. Choose one of"),
        ({"learner": "B"}, "The learner id 'B' was read"),
        ({"learner": "WORKSHOP"}, "belongs to the workshop copy"),
        ({"learner": "BENCH-09", "class_word": "a b"}, "The class word 'a b' was read"),
        ({"learner": "BENCH-09", "out": "roster.csv"}, "roster.csv is there already"),
        ({"learner": "BENCH-09", "out": "no/such"}, "could not be written"),
    ],
)
def test_what_cannot_be_used_is_refused_and_nothing_is_written(
    tmp_path, monkeypatch, roster, given, says
):
    monkeypatch.chdir(tmp_path)
    before = roster.read_bytes()
    with pytest.raises(Unusable, match=says):
        print_for(people_of, **{"out": "new.html", "class_word": "wick"} | given)
    assert [path.name for path in tmp_path.iterdir()] == ["roster.csv"]
    assert roster.read_bytes() == before
