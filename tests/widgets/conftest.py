"""A lesson opened for a bench code, with the answers in a temporary folder."""

import pytest

from helpers.exercises.store import ANSWERS_VARIABLE
from helpers.widgets import lesson, live


@pytest.fixture
def answers(tmp_path, monkeypatch):
    folder = tmp_path / "lessons" / "answers"
    monkeypatch.setenv(ANSWERS_VARIABLE, str(folder))
    return folder


@pytest.fixture
def session(answers, monkeypatch):
    monkeypatch.setattr(lesson, "_open", {})
    monkeypatch.setattr(live, "_open", {})
    monkeypatch.setattr(live, "_things", {})
    lesson.begin("02", "BENCH-07", "wick", "230 V 50 Hz")
    return lesson.current_session()
