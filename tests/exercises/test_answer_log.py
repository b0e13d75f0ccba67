"""The answer log: whole lines, nothing lost, nothing mixed, and a clear word when it cannot be."""

import errno
import json
import os
import time
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.exercises import answer_log
from helpers.exercises.answer_log import (
    FORMAT,
    LONGEST_LINE,
    MOST_SENTENCES,
    AnswerLog,
    LogError,
    LogLine,
    MemoryLog,
    add_row,
    mark_of,
    new_line,
    parse_log,
    parse_row,
)


def attempt(answer="7 mA"):
    return new_line("BENCH-07", "wick", "230 V 50 Hz", "ohm-2", 0, answer, 0)


def on_disk(line, **changes):
    """Return the fields of a line as a file holds them, some of them changed."""
    return json.loads(line.text()) | changes


def marks_aside(lines):
    """Return lines without the marks by which they follow each other."""
    return [replace(line, follows="") for line in lines]


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
    lines, problems = log.lines()
    assert (marks_aside(lines), problems) == (added, [])
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
    assert len({attempt().line for _ in range(1000)}) == 1000


@settings(deadline=None, max_examples=60)
@given(st.text(max_size=300))
def test_any_text_survives_the_log(tmp_path_factory, typed):
    typed = typed.encode("utf-8", "replace").decode("utf-8")  # lone surrogates are no text
    log = AnswerLog(tmp_path_factory.mktemp("log") / "answers-BENCH-07.jsonl")
    log.add(attempt(typed))
    log.add(attempt("after it"))
    lines, problems = log.lines()
    assert [line.answer for line in lines] == [typed, "after it"] and problems == []


@pytest.mark.parametrize("share", [0.05, 0.5, 0.99], ids=lambda share: f"limit: {share} of it")
def test_a_half_written_last_line_costs_only_itself(log, share):
    first, second, third = attempt("1 mA"), attempt("2 mA"), attempt("3 mA")
    log.add(first)
    log.add(second)
    row = third.text().encode()
    with log.path.open("ab") as file:
        file.write(row[: int(share * len(row))])
    lines, problems = log.lines()
    assert marks_aside(lines) == [first, second]
    (problem,) = problems
    assert problem.startswith("line 3 was left out") and "power" in problem


def test_the_next_answer_begins_a_new_line_after_a_half_written_one(log):
    first, last = attempt("1 mA"), attempt("2 mA")
    log.add(first)
    with log.path.open("ab") as file:
        file.write(b'{"format": 1, "line": "ab')
    log.add(last)
    lines, problems = log.lines()
    assert marks_aside(lines) == [first, last]
    assert len(problems) == 1 and problems[0].startswith("line 2 was left out")


DAMAGED = {
    "half a line": b'{"format": 1, "line": "ab',
    "no JSON": b"hello",
    "a list": b"[1, 2]",
    "a number": b"17",
    "bytes that are no text": b"\xff\xfe\x00{",
    "another format": json.dumps(on_disk(attempt(), format=FORMAT + 1)).encode(),
    "no format": json.dumps({"line": "ab"}).encode(),
    "answer is a number": json.dumps(on_disk(attempt(), answer=7)).encode(),
    "draw is text": json.dumps(on_disk(attempt(), draw="0")).encode(),
    "draw is true": json.dumps(on_disk(attempt(), draw=True)).encode(),
    "draw below zero": json.dumps(on_disk(attempt(), draw=-1)).encode(),
    "draw without end": json.dumps(on_disk(attempt(), draw=10**9)).encode(),
    "nudges missing": json.dumps(
        {k: v for k, v in on_disk(attempt()).items() if k != "nudges"}
    ).encode(),
    "much too long": attempt("x" * LONGEST_LINE).text().encode(),
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
    assert marks_aside(lines) == [first, last]
    assert len(problems) == 1 and problems[0].startswith("line 2 was left out: ")
    assert len(problems[0]) < 200


def test_blank_lines_and_windows_line_ends_are_read(log):
    first = attempt()
    log.path.parent.mkdir(parents=True)
    log.path.write_bytes(first.text().encode() + b"\r\n\r\n\n")
    assert log.lines() == ([first], [])


@settings(deadline=None, max_examples=100)
@given(st.text(max_size=200) | st.binary(max_size=200).map(lambda b: b.decode("latin-1")))
def test_any_line_is_read_or_refused_with_its_own_error(text):
    try:
        line = parse_row(text.encode("utf-8", "surrogatepass"))
    except ValueError as error:
        assert str(error).startswith("the line ")
    else:
        assert json.loads(text)["format"] == FORMAT and parse_row(line.text().encode()) == line


def test_a_write_that_fails_is_said_with_file_reason_and_what_to_do(log, monkeypatch):
    def refuse(*_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(answer_log, "add_row", refuse)
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
    assert [line.answer for line in log.lines()[0]] == ["1 mA", "3 mA"]


def test_a_line_is_flushed_to_the_disk_before_the_writer_returns(log, monkeypatch):
    flushed = []
    whole = os.fsync
    monkeypatch.setattr(os, "fsync", lambda handle: flushed.append(whole(handle)))
    log.add(attempt())
    assert flushed == [None]


def test_where_there_are_no_locks_a_row_still_goes_behind_another_writers(log, monkeypatch):
    """A second writer adds its row between our look at the end of the file and our write."""
    log.add(attempt("1 mA"))
    other = attempt("2 mA").text().encode() + b"\n"
    look = answer_log._last_row

    def overtaken(handle, size):
        seen = look(handle, size)
        with log.path.open("ab") as file:
            file.write(other)
        return seen

    monkeypatch.setattr(answer_log, "_lock_until_closed", lambda handle: None)
    monkeypatch.setattr(answer_log, "_last_row", overtaken)
    log.add(attempt("3 mA"))
    assert [line.answer for line in log.lines()[0]] == ["1 mA", "2 mA", "3 mA"]


def test_a_row_goes_to_the_disk_in_one_write(tmp_path, monkeypatch):
    """Two writers that append can mix their rows only where a row takes two writes."""
    path = tmp_path / "log"
    path.write_bytes(b"half a line")
    writes = []
    whole = os.write
    monkeypatch.setattr(os, "write", lambda h, row: writes.append(row) or whole(h, row))
    line = attempt()
    add_row(path, line)
    follows = mark_of(b"half a line")
    assert writes == [f"\n{replace(line, follows=follows).text()}\n".encode()]


class TestFollowing:
    """Each line names the one before it, so that a missing or changed line can be asked about."""

    @pytest.fixture
    def rows(self, log):
        for number in range(1, 5):
            log.add(attempt(f"{number} mA"))
        return log.path.read_bytes().splitlines()

    def test_an_untouched_log_has_no_gap(self, rows):
        assert parse_log(b"\n".join(rows)).gaps == []

    def test_saving_it_anew_in_an_editor_makes_none(self, rows):
        text = b"\r\n".join(rows)
        for saved in (text, text.decode().encode("utf-8-sig"), text.decode().encode("utf-16")):
            log = parse_log(saved)
            assert (len(log.lines), log.problems, log.gaps) == (4, [], [])

    def test_a_line_that_is_taken_out_changed_or_moved_leaves_one(self, rows):
        one, two, three, four = rows
        for changed in ([one, three, four], [one, two.replace(b"2 mA", b"9 mA"), three, four]):
            assert len(parse_log(b"\n".join(changed)).gaps) == 1
        assert len(parse_log(b"\n".join([one, three, two, four])).gaps) == 3

    def test_a_log_from_before_there_were_marks_is_read_without_one(self, log):
        old = [{k: v for k, v in on_disk(attempt()).items() if k != "follows"} for _ in range(3)]
        parsed = parse_log(b"\n".join(json.dumps(line).encode() for line in old))
        assert (len(parsed.lines), parsed.gaps) == (3, [])

    def test_a_half_written_line_between_leaves_none(self, log):
        log.add(attempt())
        with log.path.open("ab") as file:
            file.write(b'{"format": 1, "li')
        log.add(attempt())
        assert parse_log(log.path.read_bytes()).gaps == []


@pytest.mark.parametrize("encoding", ["utf-16", "utf-8-sig"])
def test_a_log_that_an_editor_has_saved_anew_goes_on_and_keeps_what_was_found(log, encoding):
    log.add(attempt("1 mA"))
    found = log.path.read_text(encoding="utf-8").encode(encoding)
    log.path.write_bytes(found)
    log.add(attempt("2 mA"))
    lines, problems = log.lines()
    assert [line.answer for line in lines] == ["1 mA", "2 mA"]
    assert problems == []
    kept = [path.read_bytes() for path in log.path.parent.glob("*-as-found-*")]
    assert kept == ([found] if encoding == "utf-16" else [])


def test_what_cannot_be_read_back_is_not_acknowledged(log, monkeypatch):
    log.add(attempt())
    monkeypatch.setattr(os, "read", lambda handle, size: b"")
    with pytest.raises(LogError, match="could not be read back"):
        log.add(attempt())


def test_answers_are_for_their_owner_only(log):
    log.add(attempt())
    others = 0o077 if os.name == "posix" else 0  # elsewhere the owner's rights are kept otherwise
    assert log.path.stat().st_mode & others == 0
    assert log.path.parent.stat().st_mode & others == 0


def test_a_log_that_another_program_holds_is_said_after_a_second(log):
    log.add(attempt())
    held = answer_log._open_locked(log.path)
    began = time.monotonic()
    with pytest.raises(LogError, match="another program has held it"):
        log.add(attempt())
    assert time.monotonic() - began < 3
    os.close(held)
    log.add(attempt())
    assert len(log.lines()[0]) == 2


def test_a_log_of_nothing_but_trouble_is_read_in_time_and_told_in_few_words():
    for content in (b"\n" * 5_000_000, b"x\n" * 100_000, b"{}\n" * 100_000):
        log = parse_log(content, most=10_000)
        assert log.lines == [] and len(log.problems) <= MOST_SENTENCES + 1
    assert log.unsaid == 10_000 - MOST_SENTENCES
    assert "were not read" in log.problems[-1]


def test_pinned_a_line_stands_in_a_file_as_it_always_did():
    """Logs of earlier editions and of paper go on: same fields, same order, to the byte."""
    line = LogLine("1a", "BENCH-07", "wick", "230 V 50 Hz", "ohm-2", 2, 0, "7 µA", 1, "T", "f")
    text = (
        '{"format": 1, "line": "1a", "learner": "BENCH-07", "class_word": "wick", '
        '"supply": "230 V 50 Hz", "question": "ohm-2", "edition": 2, "draw": 0, '
        '"answer": "7 µA", "nudges": 1, "at": "T", "follows": "f"'
    )
    assert line.text() == text + "}"
    gone = replace(line, by_hand=True, takes_back="0b")
    assert gone.text() == text + ', "by_hand": true, "takes_back": "0b"}'
    assert parse_row(gone.text().encode()) == gone


def test_a_stuffed_line_is_read_without_what_no_log_holds():
    line = new_line("BENCH-07", "wick", "230 V 50 Hz", "ohm-2", 0, "7 mA", 0)
    assert parse_row(json.dumps(on_disk(line, more="x" * 3000)).encode()) == line
    with pytest.raises(ValueError, match="no readable field 'answer'"):
        parse_row(json.dumps(on_disk(line, answer="x" * 3000)).encode())


def test_a_row_of_more_bytes_than_a_line_can_have_is_not_decoded():
    log = parse_log(b"\xff" * 16_001 + b"\n\xff")
    assert "line 1 was left out: the line is longer than 4000 characters" in log.problems[0]
    assert "line 2 was left out: the line is not text" in log.problems[1]
