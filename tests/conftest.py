"""What all tests share: proof that a run leaves the project as it was, the bench scripts,
and the first command."""

import re
import shutil
import signal
import subprocess
import sys
import time
from contextlib import contextmanager
from functools import cached_property
from importlib import util
from pathlib import Path

import lookups
import pytest
from hypothesis import HealthCheck, settings
from untouched import kept_state, touched

ROOT = Path(__file__).resolve().parents[1]

# On a machine with more work than cores, drawing examples waits as well: that says nothing of us.
settings.register_profile("any machine", suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("any machine")


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


class Opened:
    """`python -m helpers open` while it runs: its address, what it said, and how to close it."""

    def __init__(self, words, project, folder):
        self._said = folder / "said.txt"
        with open(self._said, "wb") as said:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "helpers", "open", *words],
                cwd=project,
                env=lookups.environment(folder, project),
                stdin=subprocess.DEVNULL,
                stdout=said,
                stderr=subprocess.STDOUT,
            )

    def said(self):
        return self._said.read_text(encoding="utf-8")

    @cached_property
    def address(self):
        """The address it prints once it can be reached."""
        end = time.monotonic() + 60
        while time.monotonic() < end and self.process.poll() is None:
            if found := re.search(r"http://\S+token=\w+\n", self.said()):
                return found[0].strip()
            time.sleep(0.1)
        raise AssertionError(self.said())

    def close(self):
        """Press Ctrl-C, and wait."""
        self.process.send_signal(signal.SIGINT)
        self.process.wait(timeout=30)


@pytest.fixture
def open_lessons(tmp_path):
    """Run `python -m helpers open`, watched, on a copy of the lessons and as on a new machine."""
    project = tmp_path / "workshop, à côté"
    left = shutil.ignore_patterns("answers", "hand-in", ".ipynb*", "__pycache__")
    for name in ("helpers", "lessons"):
        shutil.copytree(ROOT / name, project / name, ignore=left)

    @contextmanager
    def run(*words):
        opened = Opened(words, project, tmp_path)
        try:
            yield opened
        finally:
            if opened.process.poll() is None:
                opened.process.kill()
                opened.process.wait()

    return run
