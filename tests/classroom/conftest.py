"""What every test of the classroom may ask for."""

import pytest
from class_on_disk import Room

from helpers.classroom import demo_room


@pytest.fixture
def room(tmp_path):
    return Room(tmp_path)


@pytest.fixture
def short_demo(monkeypatch):
    """Let the invented class answer every tenth question only."""
    questions = dict(list(demo_room.bank().items())[::10])
    monkeypatch.setattr(demo_room, "bank", lambda: questions)
