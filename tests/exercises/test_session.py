"""A learner at work: what is kept, how the two settings files change it, and what is handed in."""

import json
from datetime import UTC, datetime

import pytest
from learner import BENCH, right_answer, session_of, wrong_answers

from helpers.exercises import answer_log
from helpers.exercises.answer_log import AnswerLog, MemoryLog
from helpers.exercises.bank import bank
from helpers.exercises.session import UnknownQuestion, workshop_session
from helpers.exercises.settings import Settings
from helpers.exercises.store import DiskStore


@pytest.fixture
def path(tmp_path):
    return tmp_path / "lessons" / "answers" / "answers-BENCH-07.jsonl"


@pytest.fixture
def session(path):
    return session_of(store=DiskStore(path.parent))


def refuse(*_):
    raise OSError(28, "No space left on device")


def test_an_answer_is_on_the_disk_before_its_outcome_is_known(session, path):
    session.answer("ohm-2", "7 mA")
    (line,), problems = AnswerLog(path).lines()
    assert problems == []
    assert {k: v for k, v in json.loads(line.text()).items() if k not in ("line", "at")} == {
        "format": 1,
        "learner": "BENCH-07",
        "class_word": "wick",
        "supply": "230 V 50 Hz",
        "question": "ohm-2",
        "edition": bank()["ohm-2"].edition,
        "draw": 0,
        "answer": "7 mA",
        "nudges": 0,
        "follows": "",
    }
    age = (datetime.now(UTC) - datetime.fromisoformat(line.at)).total_seconds()
    assert -0.01 < age < 60
    assert len(line.line) == 16


def test_a_new_kernel_finds_everything_again(session, path):
    for typed in wrong_answers(session, "ohm-3"):
        session.answer("ohm-3", typed)
    session.answer("ohm-3", right_answer(session, "ohm-3", 1), 1)
    again = session_of(store=DiskStore(path.parent))
    assert again.standing("ohm-3") == session.standing("ohm-3")
    assert again.newest_draw("ohm-3") == 1


def test_nudges_come_one_at_a_time_and_are_written_with_the_answer(session, path):
    nudges = bank()["ohm-3"].nudges
    assert session.nudges_seen("ohm-3") == ()
    assert session.nudge("ohm-3") == nudges[:1]
    assert session.nudge("ohm-3") == nudges[:1]  # the second one opens after a try
    session.answer("ohm-3", "1.01 kΩ")
    assert session.nudge("ohm-3") == nudges[:2]
    assert session.nudge("ohm-3") == nudges
    session.answer("ohm-3", "1 kΩ")
    assert [line.nudges for line in AnswerLog(path).lines()[0]] == [1, 2]
    assert session_of(store=DiskStore(path.parent)).nudges_seen("ohm-3") == nudges


def test_a_nudge_costs_no_marks(session):
    session.nudge("ohm-2")
    assert session.answer("ohm-2", right_answer(session, "ohm-2")).verdict.share == 1


def test_an_unknown_question_is_named_with_what_is_near(session):
    with pytest.raises(UnknownQuestion, match=r"no question 'ohm3'.*ohm-3"):
        session.answer("ohm3", "1 kΩ")


@pytest.mark.parametrize("typed", [["a", "c"], ("c", "a"), "a, c", "ac", "A C", "a and c"])
def test_several_letters_may_come_as_text_or_as_a_list(typed):
    session = session_of()
    assert session.answer("ohm-8", typed).answer.understood == "a, c"


@pytest.mark.parametrize("typed", ["1 kΩ; 0.25 W", ["1 kΩ", "0.25 W"], ("1k", "250 mW")])
def test_several_parts_may_come_as_text_or_as_a_list(typed):
    session = session_of()
    assert session.answer("ohm-14", typed).answer.value == (1000.0, 0.25)


@pytest.mark.parametrize("typed", [7, 7.0, 6.875, 0.007e3])
def test_a_number_from_python_is_read_as_typed_bare(typed):
    """Unlike typed text, a number of Python's has no second meaning to be asked back for."""
    outcome = session_of().answer("ohm-2", typed)
    assert outcome.answer.value == pytest.approx(typed / 1000, rel=1e-12)


def test_a_number_from_python_is_read_again_from_the_log(session, path):
    session.answer("ohm-2", 6.875)
    assert session_of(store=DiskStore(path.parent)).standing("ohm-2").tries == 1


def test_an_answer_that_the_disk_refused_stays_and_is_written_later(session, path, monkeypatch):
    with monkeypatch.context() as full:
        full.setattr(answer_log, "add_row", refuse)
        outcome = session.answer("ohm-2", "7 mA")
        assert outcome.answer.understood == "7\u00a0mA" and outcome.verdict is not None
        assert not outcome.kept
        assert "not kept" in outcome.problem and "No space left on device" in outcome.problem
    assert AnswerLog(path).lines() == ([], [])
    again = session.answer("ohm-2", "7 mA")
    assert again.kept and again.problem == ""
    assert [line.answer for line in AnswerLog(path).lines()[0]] == ["7 mA"]
    assert session.standing("ohm-2").tries == 1


def test_several_refused_answers_are_written_in_their_order(session, path, monkeypatch):
    with monkeypatch.context() as full:
        full.setattr(answer_log, "add_row", refuse)
        for typed in ("7 mA", "8 mA"):
            assert not session.answer("ohm-2", typed).kept
    assert session.answer("ohm-3", "1 kΩ").kept
    assert [line.answer for line in AnswerLog(path).lines()[0]] == ["7 mA", "8 mA", "1 kΩ"]


def test_a_hand_in_holds_what_a_full_disk_had_refused(session, monkeypatch):
    session.answer("ohm-3", "1 kΩ")
    with monkeypatch.context() as full:
        full.setattr(answer_log, "add_row", refuse)
        session.answer("ohm-2", "7 mA")
    lines, problems = AnswerLog(session.hand_in().path).lines()
    assert [line.answer for line in lines] == ["1 kΩ", "7 mA"] and problems == []


def test_a_log_that_cannot_be_opened_is_said_and_stops_no_lesson(path):
    path.mkdir(parents=True)  # a folder where the log should be
    session = session_of(store=DiskStore(path.parent))
    assert any("answers-BENCH-07.jsonl" in problem for problem in session.problems)
    outcome = session.answer("ohm-2", "7 mA")
    assert outcome.verdict is not None and not outcome.kept


def test_lines_of_another_learner_in_this_file_are_said_and_do_not_count(session, path):
    other = session_of(Settings("BENCH-08", "wick", BENCH.supply), DiskStore(path.parent))
    other.answer("ohm-2", right_answer(other, "ohm-2"))
    other.log.path.rename(path)
    own = session_of(store=DiskStore(path.parent))
    assert any("1 line" in problem and "another learner's" in problem for problem in own.problems)
    assert own.standing("ohm-2").tries == 0
    assert own.draw("ohm-2").numbers == session.draw("ohm-2").numbers


@pytest.mark.parametrize("typed", ["b" + " " * 5000, " " * 5000 + "b"])
def test_whatever_is_acknowledged_can_be_read_again(session, path, typed):
    outcome = session.answer("ohm-13", typed)
    lines, problems = AnswerLog(path).lines()
    assert problems == []
    assert len(lines) == (outcome.verdict is not None)


def test_blanks_between_two_parts_do_not_make_a_line_that_cannot_be_read(session, path):
    outcome = session.answer("ohm-14", "1 kΩ" + " " * 5000 + "; 0.25 W")
    lines, problems = AnswerLog(path).lines()
    assert problems == []
    assert len(lines) == (outcome.verdict is not None)


UNKEEPABLE = {"half a pair": "\ud800 mA", "digits without end": 10**5000, "a deep list": []}
for _ in range(100_000):
    UNKEEPABLE["a deep list"] = [UNKEEPABLE["a deep list"]]


@pytest.mark.parametrize("typed", UNKEEPABLE.values(), ids=UNKEEPABLE)
def test_an_answer_that_cannot_be_kept_is_refused_in_words(session, path, typed):
    outcome = session.answer("ohm-2", typed)
    assert outcome.verdict is None and outcome.problem
    assert not path.exists()


@pytest.mark.parametrize("question_id", [[], None, 7, {}])
def test_what_is_no_id_at_all_is_an_unknown_question(session, question_id):
    with pytest.raises(UnknownQuestion, match="There is no question"):
        session.answer(question_id, "1")


@pytest.mark.parametrize("draw", [-1, 1.5, "1", None, True, False, 10**9])
def test_a_draw_that_cannot_be_is_refused_in_words(session, draw):
    outcome = session.answer("ohm-2", "7 mA", draw)
    assert outcome.verdict is None and outcome.problem


def test_every_answer_is_told_to_whoever_watches(session):
    told = []
    session.watchers["here"] = lambda *news: told.append(news)
    outcome = session.answer("ohm-2", "7 mA")
    unread = session.answer("ohm-2", "x")
    assert told == [("ohm-2", 0, outcome), ("ohm-2", 0, unread)]


def test_the_workshop_copy_is_always_the_same_and_leaves_no_trace():
    one, other = workshop_session(), workshop_session()
    assert one.settings == other.settings
    assert one.settings.learner == "WORKSHOP" and one.settings.supply == "230 V 50 Hz"
    assert isinstance(one.log, MemoryLog) and one.log.path is None
    for question_id in bank():
        assert one.draw(question_id) == other.draw(question_id)


def test_the_log_holds_no_mark_and_no_right_answer(session, path):
    session.answer("ohm-2", right_answer(session, "ohm-2"))
    line = json.loads(path.read_text(encoding="utf-8"))
    assert set(line) == {"format", *answer_log.NAMES} - set(answer_log.OF_PAPER)
    assert BENCH.learner == line["learner"]
