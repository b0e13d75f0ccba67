"""What every test of the classroom may ask for."""

import pytest
from class_on_disk import Room


@pytest.fixture
def room(tmp_path):
    return Room(tmp_path)
