"""Wherever marks are made, shown or handed in, the same caution stands."""

import pytest

from helpers.__main__ import main
from helpers.classroom.demo_room import write_demo_room
from helpers.exercises.wording import CAUTION


def unwrapped(text):
    return " ".join(text.split())


def test_it_licenses_nobody_and_names_who_checks():
    for words in (
        "license nobody", "Local codes and licensed practice come first",
        "electrically skilled or instructed person", "licensed where the law asks for it",
    ):  # fmt: skip
        assert words in CAUTION


@pytest.mark.parametrize("words", [[], ["mark"], ["demo-room"], ["build"]], ids=" ".join)
def test_the_help_of_each_command_says_it(words, capsys):
    with pytest.raises(SystemExit):
        main([*words, "--help"])
    assert CAUTION in unwrapped(capsys.readouterr().out)


def test_the_demo_room_says_it_before_its_command(tmp_path, short_demo):
    command = write_demo_room(tmp_path / "room")
    text = (tmp_path / "room" / "README.txt").read_text(encoding="utf-8")
    assert 0 < text.index(CAUTION) < text.index(command)
