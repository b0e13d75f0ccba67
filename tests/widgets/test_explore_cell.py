"""What the cell `explore(...)` shows."""

import pytest
from page_words import words
from shown import screen

from helpers import explore
from helpers.pages.explorer import first_state
from helpers.pages.explorers import EXPLORERS
from helpers.physics.mains import SUPPLIES
from helpers.widgets import lesson
from helpers.widgets.explorers import Panel

SUPPLY = SUPPLIES["230 V 50 Hz"]


def first_sentence(name):
    draw, controls = EXPLORERS[name].open_on(SUPPLY)
    return draw(**first_state(controls)).finding


def test_moving_a_control_redraws_the_picture_and_says_so_again():
    panel = Panel(EXPLORERS["dropper"], SUPPLY)
    before = panel.picture.value
    assert "Too much" not in panel.said.value
    panel.inputs["ohms"].value = 220.0
    assert panel.picture.value != before and "Too much" in panel.said.value
    panel.inputs["volts"].value = 5.0
    assert "Too much" not in panel.said.value and "5\u00a0V" in panel.said.value


@pytest.mark.parametrize("name", EXPLORERS)
def test_the_page_says_in_words_what_the_picture_shows(session, name):
    with screen() as shown:
        explore(name)
    said = first_sentence(name)
    assert shown.has_controls
    assert said in shown.plain and words(said.replace("<", "&lt;")) in words(shown.html)
    assert "not a measurement" in shown.plain


@pytest.mark.parametrize("name", EXPLORERS)
def test_the_workshop_copy_shows_the_start_without_controls(session, name):
    lesson.begin("02", workshop_copy=True)
    with screen() as shown:
        explore(name)
    assert not shown.has_controls
    assert first_sentence(name) in shown.plain


def test_an_unknown_explorer_is_named_with_those_there_are(session):
    with screen() as shown:
        explore("droper")
    assert "There is no explorer 'droper'" in shown.plain and "dropper" in shown.plain
