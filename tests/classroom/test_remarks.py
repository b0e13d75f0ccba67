"""What an honest log never does is asked about, once a learner and kind, and takes no mark away."""

import json
from datetime import UTC, datetime, timedelta

import pytest

from helpers.classroom.problems import ASK
from helpers.classroom.remarks import MOST_A_SECOND
from helpers.exercises.answer_log import AnswerLog, parse_row
from helpers.exercises.bank import lessons

IDS = ("current-1", "current-2", "current-3")
NOON = "2026-01-13T12:00:00.000+00:00"


def remarks(room, *lines):
    """Hand in lines and return what is asked, each by its learner; all of it must count."""
    room.hand_in(*lines)
    book = room.mark()
    assert {p.rank for p in book.problems} <= {ASK}
    assert all("All of it counts. Ask how it came about." in p.advice for p in book.problems)
    return [(p.place, p.found) for p in book.problems]


def at(room, *times):
    """Return one line for each time, to questions in turn."""
    names = [question.id for question in room.question_list if "current" in question.id]
    return [
        room.line(room.right(name), name, second=n) | {"at": time}
        for n, (name, time) in enumerate(zip(names, times, strict=False))
    ]


@pytest.mark.parametrize(
    ("times", "said"),
    [
        ((NOON, "2026-01-13T11:00:00.000+00:00"), None),
        ((NOON, "2026-01-13T11:59:00.000+01:00"), "1 time the clock went back by more than"),
        ((NOON, "2026-01-12T12:00:00.000+00:00", NOON, "2026-01-13T10:00"), "2 times the clock"),
        ((NOON, "9999-12-31T23:59:59.999-23:59"), "1 answer is dated in the future"),
        ((NOON, "<b>"), "1 answer has no date that can be read"),
        ((NOON, "", "x"), "2 answers have no date that can be read"),
    ],
)
def test_times_that_cannot_be(room, times, said):
    found = remarks(room, *at(room, *times))
    assert [who for who, _ in found] == ["BENCH-01"] * bool(said)
    assert said is None or found[0][1].startswith(said)
    assert room.table()["BENCH-01"]["marks"] == str(len(times))


def test_a_clock_that_runs_ahead_by_less_than_an_hour_is_no_matter(room):
    soon = datetime.now(UTC) + timedelta(minutes=50)
    assert remarks(room, *at(room, NOON, soon.isoformat())) == []


@pytest.mark.parametrize(("count", "asked"), [(MOST_A_SECOND, False), (MOST_A_SECOND + 1, True)])
def test_more_answers_in_a_second_than_a_lesson_asks(room, count, asked):
    lines = [room.line(f"{n} mA") | {"line": str(n)} for n in range(count)]
    found = remarks(room, *lines)
    assert found == [("BENCH-01", f"1 second holds more than {MOST_A_SECOND} answers")] * asked


def test_no_lesson_asks_more_than_may_be_answered_in_a_second():
    assert max(len(module.QUESTIONS) for module in lessons().values()) < MOST_A_SECOND


def test_more_nudges_than_there_are(room):
    right = room.right("current-1")
    lines = [room.line(right, nudges=2), room.line("1 A", second=1, nudges=3)]
    found = remarks(room, *lines, room.line("2 A", second=2, nudges=9))
    assert found == [("BENCH-01", "2 answers were given after more nudges than the question has")]


@pytest.mark.parametrize(
    ("draws", "skipped"),
    [((0, 1, 2), 0), ((1,), 1), ((0, 2, 1), 1), ((3, 2, 1, 0), 3)],
)
def test_a_draw_that_was_answered_before_it_was_opened(room, draws, skipped):
    lines = [
        room.line(room.right("current-1", draw=draw), draw=draw, second=n)
        for n, draw in enumerate(draws)
    ]
    found = remarks(room, *lines)
    words = "draw was" if skipped == 1 else "draws were"
    said = f"{skipped} {words} answered before the one before it was finished"
    assert found == ([("BENCH-01", said)] if skipped else [])


def test_an_unfinished_draw_before_is_asked_about_even_if_it_is_finished_later(room):
    first = room.line("1 A", second=0)
    fresh = room.line(room.right("current-1", draw=1), draw=1, second=1)
    after = room.line(room.right("current-1"), second=2)
    assert len(remarks(room, first, fresh, after)) == 1


def test_missing_and_changed_lines_are_counted(room, tmp_path):
    """A line is missing before one, and what another one follows was changed."""
    log = AnswerLog(tmp_path / "answers.jsonl")
    for n in range(5):
        log.add(parse_row(json.dumps(room.line(f"{n} mA", second=n)).encode()))
    rows = log.path.read_bytes().splitlines(keepends=True)
    (room.hand_ins / "a.jsonl").write_bytes(b"".join(rows))
    assert room.mark().problems == []
    del rows[1]
    rows[2] = rows[2].replace(b"3 mA", b"9 mA")
    (room.hand_ins / "a.jsonl").write_bytes(b"".join(rows))
    (problem,) = room.mark().problems
    assert problem.found == "2 lines do not follow from the line before: some may be missing"


def test_a_line_id_under_two_learners_is_told_to_both(room):
    lines = [room.line(room.right(name), name, second=n) for n, name in enumerate(IDS)]
    theirs = [
        room.line(room.right(name, "BENCH-02"), name, "BENCH-02", second=n)
        for n, name in enumerate(IDS)
    ]
    theirs[0]["line"], theirs[2]["line"] = lines[0]["line"], lines[2]["line"]
    room.hand_in(*theirs, name="b.jsonl")
    assert remarks(room, *lines) == [
        ("BENCH-01", "2 lines stand under BENCH-02 too"),
        ("BENCH-02", "2 lines stand under BENCH-01 too"),
    ]
    assert [row["marks"] for row in room.table().values()] == ["3", "3"]
