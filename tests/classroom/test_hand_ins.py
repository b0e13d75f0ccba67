"""Hand-ins: all that lies in a folder is read or named, and merging keeps every answer once."""

import json
import os
import time
from pathlib import Path

import pytest
from class_on_disk import found_in
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from helpers.classroom import hand_ins
from helpers.classroom.hand_ins import (
    ASK_AGAIN,
    find_files,
    group_by_id,
    learners_named,
)
from helpers.classroom.one_log import merge, put_together
from helpers.classroom.problems import Problem
from helpers.exercises.answer_log import LogLine
from helpers.exercises.refusals import Unusable


def bytes_file(room, name, content):
    path = room.hand_ins / name
    path.write_bytes(content)
    return path


@pytest.mark.parametrize(
    ("name", "content", "says"),
    [
        pytest.param("a.jsonl", b"", "it is empty", id="empty"),
        pytest.param("a.jsonl", b"\x00\xff" * 5000, "no line in it is from", id="binary"),
        pytest.param("a.jsonl", b"\n\n{}\n[]\n7\n", "no line in it is from", id="other JSON"),
        pytest.param("a.ipynb", b"{}", "it is a notebook", id="notebook"),
        pytest.param("a.zip", b"PK", "it is packed", id="packed"),
        pytest.param("a.txt", b"330", "no line in it is from an answer log", id="text"),
        pytest.param(".hidden", b"", "it is empty", id="hidden"),
        pytest.param(
            "a.jsonl",
            b'\n{"format": 2, "line": "x"}\n{"format": 2}\n{}\n',
            "the line has format 2; this version reads 1",
            id="newer format",
        ),
    ],
)
def test_what_is_no_hand_in_is_named_and_stops_nothing(room, name, content, says):
    bytes_file(room, name, content)
    room.hand_in(room.line(room.right("current-1")))
    book = room.mark()
    assert [p.place for p in book.problems] == [name]
    assert says in book.problems[0].found
    assert book.problems[0].advice
    assert room.table()["BENCH-01"]["marks"] == "1"


def test_the_hidden_copy_of_a_hand_in_that_was_opened_in_jupyterlab_is_none(room):
    room.hand_in(room.line(room.right("current-1")), name="one.jsonl")
    copies = room.hand_ins / ".ipynb_checkpoints"
    copies.mkdir()
    (copies / "one-checkpoint.jsonl").write_bytes((room.hand_ins / "one.jsonl").read_bytes())
    (copies / "roster-checkpoint.csv").write_text("learner\nBENCH-01\n")
    book = room.mark()
    assert (book.hand_ins, book.problems) == (1, [])
    (room.hand_ins / "one.jsonl").unlink()
    with pytest.raises(Unusable, match="There is no hand-in"):
        room.mark()


@pytest.mark.parametrize("name", [".DS_Store", "Thumbs.db", "desktop.ini", "._a.jsonl"])
def test_what_systems_leave_behind_is_passed_over(room, name):
    bytes_file(room, name, b"\x00\x01")
    room.neighbour()
    assert room.mark().problems == []


@pytest.mark.parametrize("name", ["a.jsonl.txt", "a.json", "a", "a (1).jsonl"])
def test_a_log_is_known_by_its_lines_whatever_its_name(room, name):
    room.hand_in(room.line(room.right("current-1")), name=name)
    assert room.mark().problems == []
    assert room.table()["BENCH-01"]["marks"] == "1"


@pytest.mark.parametrize("coding", ["utf-8-sig", "utf-16", "utf-16-be"])
def test_a_log_that_an_editor_saved_anew_costs_no_answer(room, coding):
    text = json.dumps(room.line(room.right("current-1")), ensure_ascii=False) + "\r\n"
    mark = "\ufeff" if coding == "utf-16-be" else ""
    bytes_file(room, "a.jsonl", (mark + text).encode(coding))
    assert room.mark().problems == []
    assert room.table()["BENCH-01"]["marks"] == "1"


@pytest.mark.parametrize(
    ("name", "learner"),
    [
        pytest.param("bench-02 lesson.ipynb", "BENCH-02", id="lower case"),
        pytest.param("wick_BENCH-02_2026-01-13.jsonl", "BENCH-02", id="between underscores"),
        pytest.param("BENCH-02/lesson.ipynb", "BENCH-02", id="a folder's name"),
        pytest.param("BENCH-021.ipynb", None, id="a longer id"),
        pytest.param("WORKBENCH-02.ipynb", None, id="the end of a longer word"),
        pytest.param("BENCH-02-A.ipynb", "BENCH-02-A", id="the longest id that fits"),
    ],
)
def test_whose_file_could_not_be_used_follows_from_its_name(name, learner):
    problem = Problem(name, "", "")
    found = learners_named([problem], ["BENCH-02", "BENCH-02-A", "BENCH-01"])
    assert found == ({learner} if learner else set())


def test_who_handed_in_a_file_that_could_not_be_read_did_hand_in(room):
    room.neighbour(learner="BENCH-01")
    bytes_file(room, "BENCH-02.ipynb", b"{}")
    book = room.mark()
    assert room.table()["BENCH-02"]["status"] == "handed in a file that could not be read"
    said = "1 hand-in read, 1 file not usable. 2 learners: 1 handed in, 1 handed in a file that"
    assert said in book.in_words()
    assert said in room.page()


def test_a_notebook_is_answered_with_what_to_ask_for(room):
    bytes_file(room, "lesson.ipynb", b"{}")
    room.neighbour()
    assert room.mark().problems[0].advice == ASK_AGAIN
    assert "hand_in()" in ASK_AGAIN


def test_a_file_of_200_MB_is_named_and_not_read(room):
    """The file is one hole in the disk; reading it would take far more memory than is allowed."""
    import tracemalloc

    with open(room.hand_ins / "large.jsonl", "wb") as handle:
        handle.truncate(200_000_000)
    room.neighbour()
    tracemalloc.start()
    try:
        book = room.mark()
        peak = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert book.problems[0].place == "large.jsonl"
    assert "200 MB (20 MB is the most)" in book.problems[0].found
    assert peak < 5_000_000


def test_folders_inside_are_read(room):
    room.hand_in(room.line(room.right("current-1")), name="group é/first row/a.JSONL")
    assert room.mark().hand_ins == 1
    assert room.table()["BENCH-01"]["marks"] == "1"


@pytest.mark.skipif(os.name == "nt", reason="this system has no pipes among its files")
def test_links_and_pipes_do_not_hold_the_run_up(room):
    os.mkfifo(room.hand_ins / "pipe.jsonl")
    (room.hand_ins / "broken.jsonl").symlink_to(room.folder / "nowhere")
    (room.hand_ins / "round").symlink_to(room.hand_ins)
    room.neighbour()
    places = sorted(p.place for p in room.mark().problems)
    assert places == ["broken.jsonl", "pipe.jsonl", "round"]


def test_the_roster_and_the_mark_book_may_lie_among_the_hand_ins(room):
    room.out = room.hand_ins
    room.roster = room.hand_ins / "roster.csv"
    room.write_roster("learner\nBENCH-02\n")
    room.neighbour()
    room.mark()
    room.neighbour("current-1")
    assert [problem.place for problem in room.mark().problems] == ["mark-book.csv"]
    assert len(list(room.out.glob("mark-book*"))) == 4


@pytest.mark.parametrize(("name", "says"), [("nowhere", "is not there"), ("roster.csv", "a file")])
def test_a_folder_that_cannot_be_read_says_so(room, name, says):
    with pytest.raises(Unusable, match=says):
        find_files(room.folder / name)


def test_a_file_that_vanished_or_cannot_be_opened_is_named(room):
    gone = room.hand_ins / "gone.jsonl"
    groups, problems = group_by_id([str(gone)], room.hand_ins)
    assert groups == {}
    assert problems[0].found.startswith("it could not be read")


@pytest.mark.parametrize("held", [10**9, 0], ids=["read once", "read again"])
@pytest.mark.parametrize("fault", ["gone", "changed", "locked"])
def test_a_file_lost_between_the_first_look_and_reading_is_named(room, monkeypatch, held, fault):
    """One that waits in memory is not asked for again; one that has changed is not taken."""
    monkeypatch.setattr(hand_ins, "HELD", held)
    path = room.hand_in(room.line(room.right("current-1")))
    groups, _ = group_by_id([str(path)], room.hand_ins)
    if fault == "gone":
        path.unlink()
    elif fault == "changed":
        path.write_bytes(path.read_bytes() + b"\n")
    else:
        path.rename(room.folder / "aside")
        path.mkdir()
    log = put_together(groups["BENCH-01"], (), ["BENCH-01"])
    assert len(log.lines) == (1 if held else 0)
    assert [p.place for p in log.problems] == ([] if held else [path.name])


def test_a_file_is_read_once(room, monkeypatch):
    path, content, read = room.hand_in(room.line("1 mA")), hand_ins._content, []
    monkeypatch.setattr(hand_ins, "_content", lambda p: read.append(p) or content(p))
    room.mark()
    assert read == [str(path)]


def test_a_log_stuffed_with_answers_is_marked_in_step_with_its_length(room):
    """Limit: 20,000 different answers to one draw; time that grew as their square took minutes.

    Of one file 10,000 lines are read, of one question 1,000 answers are marked; the rest is named.
    """
    lines = [room.line(f"{n / 1000:.3f} A") | {"line": str(n)} for n in range(20_000)]
    room.hand_in(*lines)
    start = time.perf_counter()
    book = room.mark()
    assert time.perf_counter() - start < 10
    assert room.table()["BENCH-01"]["answers"] == "1000"
    assert "line 10001 and all after it were not read" in found_in(book)
    assert "9000 answers beyond the first 1000 to “current-1”" in found_in(book)


@pytest.fixture(params=[20, 1000])
def deep(request, room, monkeypatch):
    """A hand-in so many folders deep; too many for one path, so they are made and taken one by one.

    None of them stays, as what clears up after a test goes no deeper than Python calls can.
    """
    monkeypatch.chdir(room.hand_ins)
    line = json.dumps(room.line(room.right("current-1")))
    for _ in range(request.param):
        os.mkdir("d")
        os.chdir("d")
    Path("a.jsonl").write_text(line + "\n")
    yield request.param
    os.remove("a.jsonl")
    for _ in range(request.param):
        os.chdir("..")
        os.rmdir("d")


def test_folders_inside_folders_end_in_one_named_line(room, deep):
    room.neighbour()
    problems = room.mark().problems
    assert len(problems) == (deep > 20)
    assert all("20 folders deep" in problem.found for problem in problems)
    assert room.table()["BENCH-01"]["marks"] == ("1" if deep == 20 else "0")


def test_a_damaged_and_a_half_written_line_cost_only_themselves(room):
    good = room.line(room.right("current-1"))
    second = room.line(room.right("current-2"), "current-2")
    path = room.hand_in(good, end='{"format": 1, "damaged\n')
    with open(path, "a", encoding="utf-8") as handle:
        handle.write(json.dumps(second) + "\n" + json.dumps(second)[:40])
    book = room.mark()
    assert "line 2 was left out" in found_in(book)
    assert "perhaps the power went" in found_in(book)
    assert room.table()["BENCH-01"]["marks"] == "2"


def test_lines_of_another_learner_belong_to_nobody(room):
    theirs = room.line(room.right("current-2", "BENCH-02"), "current-2", "BENCH-02")
    room.hand_in(room.line(room.right("current-1")), theirs)
    book = room.mark()
    assert "1 of BENCH-02" in found_in(book)
    assert room.table()["BENCH-01"]["marks"] == "1"
    assert room.table()["BENCH-02"]["status"] == "nothing handed in"


def test_one_line_id_for_two_answers_is_named(room):
    line = room.line("1 mA")
    room.hand_in(line, line | {"answer": "2 mA"})
    assert "one line id stands for different answers (1 left out)" in found_in(room.mark())


def test_one_log_keeps_its_order_even_if_its_clock_was_set_back():
    what = "BENCH-01", "wick", "230 V 50 Hz", "current-1", 1, 0, "1 mA", 0
    log = [LogLine("a", *what, "2026-02"), LogLine("b", *what, "2026-01")]
    assert merge([log]) == (log, 0, 0)


LINES = st.builds(
    LogLine,
    line=st.sampled_from("abcdef"),
    learner=st.just("BENCH-01"),
    class_word=st.just("wick"),
    supply=st.just("230 V 50 Hz"),
    question=st.sampled_from(["current-1", "current-2"]),
    edition=st.just(1),
    draw=st.integers(0, 2),
    answer=st.sampled_from(["1 mA", "2 mA"]),
    nudges=st.just(0),
    at=st.sampled_from(["2026-01-13T18:00", "2026-01-13T18:01", "2026-01-13T18:02"]),
    follows=st.just(""),
    by_hand=st.just(False),
    takes_back=st.just(""),
)


@given(st.lists(st.lists(LINES, max_size=6), min_size=2, max_size=4), st.randoms())
def test_property_merging_commutes_and_keeps_every_id_once(logs, shuffler):
    other_order = list(logs)
    shuffler.shuffle(other_order)
    lines, repeated, clashes = merge(logs)
    assert merge(other_order) == (lines, repeated, clashes)
    ids = [line.line for line in lines]
    assert sorted(ids) == sorted({line.line for log in logs for line in log})
    assert len(ids) + repeated == sum(map(len, logs))


@given(st.binary(max_size=400) | st.text(max_size=200).map(str.encode), st.booleans())
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
def test_property_no_bytes_raise_or_cost_a_good_neighbour(room, content, among_good_lines):
    good = json.dumps(room.line(room.right("current-1"))).encode()
    if among_good_lines:
        content = good + b"\n" + content
        second = json.dumps(room.line(room.right("current-1", "BENCH-02"), learner="BENCH-02"))
        bytes_file(room, "neighbour.jsonl", second.encode())
    else:
        bytes_file(room, "neighbour.jsonl", good)
    bytes_file(room, "strange.jsonl", content)
    room.mark()
    assert room.table()["BENCH-01"]["marks"] == "1"
    if among_good_lines:
        assert room.table()["BENCH-02"]["marks"] == "1"
