"""The answer log: whole lines, nothing lost, nothing mixed, and a clear word when it cannot be."""

import errno
import json
import os
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.exercises import answer_log
from helpers.exercises.answer_log import (
    FORMAT,
    LONGEST_LINE,
    AnswerLog,
    LogError,
    MemoryLog,
    new_line,
    parse_line,
    write_row,
)


def attempt(answer="7 mA"):
    return new_line("BENCH-07", "wick", "230 V 50 Hz", "ohm-2", 0, answer, 0)


@pytest.fixture
def path(tmp_path):
    return tmp_path / "a folder with spaces, é and 灯" / "answers-BENCH-07.jsonl"


@pytest.fixture
def log(path):
    return AnswerLog(path)


def test_a_log_that_does_not_exist_is_empty(log):
    assert log.lines() == ([], [])
    assert not log.path.parent.exists()


def test_lines_come_back_whole_and_in_order(log):
    added = [attempt(f"{number} µA") for number in range(20)]
    for fields in added:
        log.add(fields)
    assert log.lines() == (added, [])
    content = log.path.read_bytes()
    assert content.endswith(b"\n") and content.count(b"\n") == 20


def test_memory_keeps_the_same_lines_and_writes_nothing(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    log = MemoryLog()
    fields = attempt()
    log.add(fields)
    assert log.lines() == ([fields], [])
    assert list(tmp_path.iterdir()) == []


def test_every_line_has_an_id_of_its_own():
    assert len({attempt()["line"] for _ in range(1000)}) == 1000


@settings(deadline=None, max_examples=60)
@given(st.text(max_size=300))
def test_any_text_survives_the_log(tmp_path_factory, typed):
    typed = typed.encode("utf-8", "replace").decode("utf-8")  # lone surrogates are no text
    log = AnswerLog(tmp_path_factory.mktemp("log") / "answers-BENCH-07.jsonl")
    log.add(attempt(typed))
    log.add(attempt("after it"))
    lines, problems = log.lines()
    assert [line["answer"] for line in lines] == [typed, "after it"] and problems == []


@pytest.mark.parametrize("share", [0.05, 0.5, 0.99], ids=lambda share: f"limit: {share} of it")
def test_a_half_written_last_line_costs_only_itself(log, share):
    first, second, third = attempt("1 mA"), attempt("2 mA"), attempt("3 mA")
    log.add(first)
    log.add(second)
    row = json.dumps(third).encode()
    with log.path.open("ab") as file:
        file.write(row[: int(share * len(row))])
    lines, problems = log.lines()
    assert lines == [first, second]
    (problem,) = problems
    assert problem.startswith("line 3 was left out") and "power" in problem


def test_the_next_answer_begins_a_new_line_after_a_half_written_one(log):
    first, last = attempt("1 mA"), attempt("2 mA")
    log.add(first)
    with log.path.open("ab") as file:
        file.write(b'{"format": 1, "line": "ab')
    log.add(last)
    lines, problems = log.lines()
    assert lines == [first, last]
    assert len(problems) == 1 and problems[0].startswith("line 2 was left out")


DAMAGED = {
    "half a line": b'{"format": 1, "line": "ab',
    "no JSON": b"hello",
    "a list": b"[1, 2]",
    "a number": b"17",
    "bytes that are no text": b"\xff\xfe\x00{",
    "another format": json.dumps({**attempt(), "format": FORMAT + 1}).encode(),
    "no format": json.dumps({"line": "ab"}).encode(),
    "answer is a number": json.dumps({**attempt(), "answer": 7}).encode(),
    "draw is text": json.dumps({**attempt(), "draw": "0"}).encode(),
    "draw is true": json.dumps({**attempt(), "draw": True}).encode(),
    "draw below zero": json.dumps({**attempt(), "draw": -1}).encode(),
    "draw without end": json.dumps({**attempt(), "draw": 10**9}).encode(),
    "nudges missing": json.dumps({k: v for k, v in attempt().items() if k != "nudges"}).encode(),
    "much too long": json.dumps(attempt("x" * LONGEST_LINE)).encode(),
    "brackets without end": b"[" * (LONGEST_LINE - 1),
    "digits without end": b'{"format": ' + b"9" * (LONGEST_LINE - 20) + b"}",
}


@pytest.mark.parametrize("row", DAMAGED.values(), ids=DAMAGED)
def test_a_damaged_line_is_named_and_stops_nothing(log, row):
    first, last = attempt("1 mA"), attempt("2 mA")
    log.add(first)
    with log.path.open("ab") as file:
        file.write(row + b"\n")
    log.add(last)
    lines, problems = log.lines()
    assert lines == [first, last]
    assert len(problems) == 1 and problems[0].startswith("line 2 was left out: ")
    assert len(problems[0]) < 200


def test_blank_lines_and_windows_line_ends_are_read(log):
    first = attempt()
    log.path.parent.mkdir(parents=True)
    log.path.write_bytes(json.dumps(first).encode() + b"\r\n\r\n\n")
    assert log.lines() == ([first], [])


@settings(deadline=None, max_examples=100)
@given(st.text(max_size=200) | st.binary(max_size=200).map(lambda b: b.decode("latin-1")))
def test_any_line_is_read_or_refused_with_its_own_error(text):
    try:
        fields = parse_line(text)
    except ValueError as error:
        assert str(error).startswith("the line ")
    else:
        assert fields["format"] == FORMAT


def test_a_write_that_fails_is_said_with_file_reason_and_what_to_do(log, monkeypatch):
    def refuse(*_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(answer_log, "write_row", refuse)
    with pytest.raises(LogError, match="not kept.*answers-BENCH-07.*No space left.*Make room"):
        log.add(attempt())


@pytest.mark.parametrize("full", [p for p in [Path("/dev/full")] if p.exists()], ids=str)
def test_a_full_device_is_said(tmp_path, full):
    path = tmp_path / "answers-BENCH-07.jsonl"
    path.symlink_to(full)
    with pytest.raises(LogError, match="No space left on device"):
        AnswerLog(path).add(attempt())


def test_a_folder_that_cannot_be_made_is_said(tmp_path):
    (tmp_path / "answers").write_text("a file in the way")
    with pytest.raises(LogError, match="could not be written"):
        AnswerLog(tmp_path / "answers" / "answers-BENCH-07.jsonl").add(attempt())


@pytest.mark.parametrize("taken", [0, 1, 40], ids=lambda n: f"limit: {n} bytes taken")
def test_a_short_write_leaves_the_log_as_it_was(log, monkeypatch, taken):
    log.add(attempt("1 mA"))
    before = log.path.read_bytes()
    whole = os.write
    with monkeypatch.context() as nearly_full:
        nearly_full.setattr(os, "write", lambda handle, row: whole(handle, row[:taken]))
        with pytest.raises(LogError, match=f"the disk took {taken} of"):
            log.add(attempt("2 mA"))
    assert log.path.read_bytes() == before
    log.add(attempt("3 mA"))
    assert [line["answer"] for line in log.lines()[0]] == ["1 mA", "3 mA"]


def test_a_line_is_flushed_to_the_disk_before_the_writer_returns(log, monkeypatch):
    flushed = []
    whole = os.fsync
    monkeypatch.setattr(os, "fsync", lambda handle: flushed.append(whole(handle)))
    log.add(attempt())
    assert flushed == [None]


def test_where_there_are_no_locks_a_row_still_goes_behind_another_writers(log, monkeypatch):
    """A second writer adds its row between our look at the end of the file and our write."""
    log.add(attempt("1 mA"))
    other = json.dumps(attempt("2 mA")).encode() + b"\n"
    look = answer_log._last_byte

    def overtaken(handle, size):
        seen = look(handle, size)
        with log.path.open("ab") as file:
            file.write(other)
        return seen

    monkeypatch.setattr(answer_log, "_lock_until_closed", lambda handle: None)
    monkeypatch.setattr(answer_log, "_last_byte", overtaken)
    log.add(attempt("3 mA"))
    assert [line["answer"] for line in log.lines()[0]] == ["1 mA", "2 mA", "3 mA"]


def test_a_row_goes_to_the_disk_in_one_write(tmp_path, monkeypatch):
    """Two writers that append can mix their rows only where a row takes two writes."""
    path = tmp_path / "log"
    path.write_bytes(b"half a line")
    writes = []
    whole = os.write
    monkeypatch.setattr(os, "write", lambda h, row: writes.append(row) or whole(h, row))
    write_row(path, b"a whole line\n")
    assert writes == [b"\na whole line\n"]
