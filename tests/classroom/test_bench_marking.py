"""A hundredth of the marking bench, through the same functions: it runs, and loses nothing."""

import importlib.util
from pathlib import Path

import pytest

BENCH = Path(__file__).resolve().parents[1] / "bench" / "marking.py"
LEARNERS = 20


@pytest.fixture(scope="module")
def bench():
    specification = importlib.util.spec_from_file_location("bench_marking", BENCH)
    module = importlib.util.module_from_spec(specification)
    specification.loader.exec_module(module)
    return module


@pytest.fixture(scope="module")
def room(bench, tmp_path_factory):
    folder = tmp_path_factory.mktemp("room")
    return folder, bench.build_room(folder, LEARNERS)


def test_every_answer_of_every_learner_is_marked(bench, room):
    folder, _ = room
    found = bench.mark_once(folder, with_memory=False)
    assert found["hand_ins"] == LEARNERS
    assert found["answers"] == LEARNERS * bench.QUESTIONS
    assert found["problems"] == 0


def test_about_a_third_of_the_answers_are_wrong(room):
    """Limit: of 400 drawn with one in three, 0.25 to 0.42 is more than three deviations wide."""
    assert 0.25 < room[1] < 0.42


def test_the_bars_hold_on_a_hundredth(bench, room, tmp_path):
    """Best of five fresh processes, in the core's own time; half the speed will do, as twenty
    files do not outweigh what is done once a run, and other tests run beside it. The bench itself
    asks for all of it. Memory by what forty learners more take.
    """
    folder, _ = room
    seconds = min(bench.in_fresh_process(folder)["busy"] for _ in range(5))
    assert LEARNERS / seconds >= bench.HAND_INS_PER_SECOND / 2
    found = bench.in_fresh_process(folder, "--memory")
    assert found["once"] <= bench.ONCE_SECONDS
    bench.build_room(tmp_path, 3 * LEARNERS)
    grown = bench.in_fresh_process(tmp_path, "--memory")["peak"] - found["peak"]
    assert grown / (2 * LEARNERS) < bench.BYTES_PER_LEARNER


def test_the_bench_has_twenty_questions_many_of_them_sums_none_of_them_parts(bench):
    (module,) = bench.bench_bank().values()
    kinds = [question.kind.name for question in module.QUESTIONS]
    assert len({question.id for question in module.QUESTIONS}) == bench.QUESTIONS
    assert kinds.count("quantity") >= 7 and "parts" not in kinds


def test_an_answer_of_kind_parts_is_marked_in_time(bench):
    slowest, mean = bench.parts_seconds(3)
    assert mean <= slowest
    assert mean < bench.PARTS_SECONDS
