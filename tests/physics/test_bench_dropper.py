"""A share of the bench of the capacitor dropper: it runs, agrees, and is not slow."""

import importlib.util
from pathlib import Path

import pytest

BENCH = Path(__file__).resolve().parents[1] / "bench" / "dropper_speed.py"


@pytest.fixture(scope="module")
def bench():
    specification = importlib.util.spec_from_file_location("bench_dropper", BENCH)
    module = importlib.util.module_from_spec(specification)
    specification.loader.exec_module(module)
    return module


@pytest.mark.filterwarnings("ignore:divide by zero:RuntimeWarning")
def test_second_way_the_integrator_agrees_and_takes_far_longer(bench):
    """In the process's own time; half the speed will do, as two runs are no measurement."""
    theirs, ours, apart, peak = bench.compare(bench.CASES[3], 2)
    assert theirs / ours >= 0.5 * bench.TIMES_AS_FAST
    assert apart <= bench.CLOSE and peak <= bench.PEAK_CLOSE
