"""What all tests share: proof that a run leaves the project as it was, and the bench scripts."""

from importlib import util
from pathlib import Path

import pytest
from untouched import kept_state, touched

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="session", autouse=True)
def nothing_is_touched():
    before = kept_state(ROOT)
    yield
    after = kept_state(ROOT)
    assert touched(before, after) == [], "this test run has changed files of the project"


@pytest.fixture(scope="session")
def root():
    return ROOT


@pytest.fixture(scope="session")
def bench_script():
    """Load a script of tests/bench by its name, without running it."""

    def load(name):
        spec = util.spec_from_file_location(f"bench_{name}", ROOT / "tests/bench" / f"{name}.py")
        module = util.module_from_spec(spec)
        spec.loader.exec_module(module)
        return module

    return load
