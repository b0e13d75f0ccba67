"""Several hand-ins of one id: what goes on is one log, what has parted is asked about."""

import json
import os

import pytest
from class_on_disk import found_in
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from helpers.classroom import one_log
from helpers.classroom.hand_ins import MOST_LOGS
from helpers.classroom.problems import ASK, FINE
from helpers.exercises.refusals import Unusable

IDS = ("current-1", "current-2", "current-3", "current-4", "current-5")


@pytest.fixture
def lines(room):
    """Five right answers, one mark each."""
    return [room.line(room.right(name), name, second=n) for n, name in enumerate(IDS)]


def marks(room):
    return room.table()["BENCH-01"]["marks"]


@pytest.mark.parametrize("order", ["ab", "ba"])
def test_a_log_that_goes_on_from_another_is_one_log_and_nothing_is_said(room, lines, order):
    room.hand_in(*lines[:2], name=f"{order[0]}.jsonl")
    room.hand_in(*lines, name=f"{order[1]}.jsonl")
    book = room.mark()
    assert book.problems == []
    assert (marks(room), room.table()["BENCH-01"]["answers"]) == ("5", "5")
    assert {h.name: h.answers for h in book.handed_in} == {
        f"{order[0]}.jsonl": 2,
        f"{order[1]}.jsonl": 5,
    }


@pytest.mark.parametrize("coding", ["utf-8-sig", "utf-16"])
def test_however_the_longer_one_was_saved(room, lines, coding):
    room.hand_in(*lines[:2], name="a.jsonl")
    text = "\r\n \r\n".join(json.dumps(line) for line in lines)
    (room.hand_ins / "b.jsonl").write_bytes(text.encode(coding))
    assert room.mark().problems == []
    assert marks(room) == "5"


def test_a_copy_that_was_cut_short_is_the_beginning_of_the_whole_one(room, lines):
    path = room.hand_in(*lines, name="b.jsonl")
    (room.hand_ins / "a.jsonl").write_bytes(path.read_bytes()[:-30])
    assert room.mark().problems == []
    assert marks(room) == "5"


@pytest.fixture
def parted(room, lines):
    """Two common lines; then one more at home, two more in the room."""
    room.hand_in(*lines[:3], name="home.jsonl")
    room.hand_in(*lines[:2], *lines[3:], name="in the room.jsonl")
    return room


def test_after_a_fork_only_the_beginning_counts_until_something_is_accepted(parted):
    (problem,) = parted.mark().problems
    assert (problem.place, problem.rank) == ("BENCH-01", ASK)
    assert problem.found == (
        "2 hand-ins are the same for 2 lines and then part: home.jsonl and in the room.jsonl; what "
        "follows does not count yet"
    )
    assert "paste each file that is to count into the box Decided" in problem.advice
    assert problem.copied == ("home.jsonl", "'in the room.jsonl'")
    code = "<code>home.jsonl</code><code>&#39;in the room.jsonl&#39;</code></td>"
    assert code in parted.page(), "nothing stands behind what is copied"
    assert marks(parted) == "2"


@pytest.mark.parametrize(
    ("accepted", "earned"),
    [
        (["home.jsonl"], "3"),
        (["in the room.jsonl"], "4"),
        (["home.jsonl", "in the room.jsonl"], "5"),
    ],
)
@pytest.mark.parametrize("by", ["name", "path"])
def test_what_is_accepted_counts(parted, accepted, earned, by):
    if by == "path":
        accepted = [str(parted.hand_ins / name) for name in accepted]
    (problem,) = parted.mark(accept=accepted).problems
    assert problem.rank == FINE
    assert "accepted: " in problem.found
    assert marks(parted) == earned


def test_what_goes_on_from_an_accepted_log_is_accepted(parted, lines, room):
    more = room.line(room.right("current-6"), "current-6", second=9)
    room.hand_in(*lines[:3], more, name="home later.jsonl")
    parted.mark(accept=["home.jsonl"])
    assert marks(parted) == "4"


def test_a_hand_in_to_accept_that_is_not_there_is_said_and_nothing_is_written(parted):
    with pytest.raises(Unusable, match=r"no hand-in hme\.jsonl to accept"):
        parted.mark(accept=["hme.jsonl"])
    assert not parted.out.exists()


@pytest.mark.parametrize(
    ("of_b", "how"),
    [
        ((3, 4), "have no line in common"),
        ((1, 2, 3), "share lines, but not their beginning"),
        ((2, 1, 0), "share lines, but not their beginning"),
    ],
)
def test_logs_without_a_common_beginning_are_asked_about(room, lines, of_b, how):
    """One learner on two machines, or two people with one id: the files cannot tell."""
    room.neighbour()
    room.hand_in(*lines[:3], name="a.jsonl")
    room.hand_in(*(lines[n] for n in of_b), name="b.jsonl")
    (problem,) = room.mark().problems
    assert problem.found == f"2 hand-ins {how}: a.jsonl and b.jsonl; they do not count yet"
    assert "two learners with one id? Ask." in problem.advice
    assert marks(room) == "0"
    room.mark(accept=["a.jsonl", "b.jsonl"])
    assert marks(room) == str(len({0, 1, 2, *of_b}))


def test_what_is_odd_in_a_log_that_counts_names_its_file(room, lines):
    room.hand_in(*lines[:2], name="a.jsonl", end="damaged\n")
    room.hand_in(*lines[:2], lines[4], name="b.jsonl")
    text = found_in(room.mark(accept=["a.jsonl"]))
    assert "a.jsonl: line 3 was left out" in text
    assert "b.jsonl:" not in text


def test_a_line_that_stands_twice_counts_once(room, lines):
    room.hand_in(*lines, lines[0])
    (problem,) = room.mark().problems
    assert problem.found == "1 line stands there twice; each counts once"
    assert room.table()["BENCH-01"]["answers"] == "5"


def test_ten_thousand_logs_of_one_id_end_in_one_named_line(room, lines):
    room.neighbour()
    for number in range(MOST_LOGS + 1):
        room.hand_in(lines[0] | {"line": str(number)}, name=f"{number}.jsonl")
    (problem,) = room.mark().problems
    assert (problem.place, problem.found) == (
        "BENCH-01",
        f"{MOST_LOGS + 1} hand-ins have this id ({MOST_LOGS} are the most); none was read",
    )
    assert room.table()["BENCH-01"]["status"] == "handed in, nothing in it counts"


def test_logs_of_one_id_that_are_too_large_together_are_named(room, lines, monkeypatch):
    size = room.hand_in(*lines[:3], name="a.jsonl").stat().st_size
    room.hand_in(*lines[:2], *lines[3:], name="b.jsonl")
    monkeypatch.setattr(one_log, "LARGEST_FILE", size)
    (problem,) = room.mark().problems
    assert problem.place == "b.jsonl"
    assert "more than 20 MB" in problem.found
    assert marks(room) == "3"


@given(
    st.lists(st.lists(st.integers(0, 4), min_size=1, max_size=5, unique=True), min_size=1,
             max_size=4),
    st.randoms(),
)  # fmt: skip
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
def test_property_the_names_of_hand_ins_change_no_mark(room, lines, logs, shuffler):
    def marked(logs):
        for path in room.hand_ins.iterdir():
            path.unlink()
        for number, log in enumerate(logs):
            room.hand_in(*(lines[n] for n in log), name=f"{number}.jsonl")
        room.neighbour()
        room.mark()
        return marks(room)

    last = [log for log in logs if not any(log != b and log == b[: len(log)] for b in logs)]
    found = marked(logs)
    assert found == str(len(os.path.commonprefix(last)))
    shuffler.shuffle(logs)
    assert marked(logs) == found
