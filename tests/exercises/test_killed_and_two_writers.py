"""A hundredth of the killing, a tenth of the two writers; the whole is in tests/bench."""

import pytest

from helpers.exercises.answer_log import new_line
from helpers.exercises.store import DiskStore


@pytest.fixture(scope="module")
def killed(bench_script):
    return bench_script("killed_kernel")


@pytest.fixture(scope="module")
def two_writers(bench_script):
    return bench_script("two_writers")


def test_a_killed_kernel_loses_no_acknowledged_answer(killed):
    acknowledged, missing, problems = killed.run(kills=2)
    assert len(acknowledged) >= 2 and len(set(acknowledged)) == len(acknowledged)
    assert missing == []
    assert len(problems) <= 2


def test_a_lost_answer_would_be_noticed(killed, tmp_path):
    log = DiskStore(tmp_path).log(killed.LEARNER)
    for number in (1, 3):
        log.add(
            new_line(killed.LEARNER, "wick", "230 V 50 Hz", killed.QUESTION, 0, f"{number} µA", 0)
        )
    assert killed.lost(tmp_path, [1, 2, 3]) == ([2], [])


def test_two_kernels_that_answer_at_once_lose_nothing(two_writers):
    held, ids, problems, _ = two_writers.run(answers=100)
    assert problems == []
    assert sorted(held) == two_writers.wanted(100)
    assert len(held) == len(ids) == 200
