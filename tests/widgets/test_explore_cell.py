"""What the cell `explore(...)` shows."""

import pytest
from page_words import words
from shown import screen

from helpers import explore
from helpers.pages.explorer import first_state
from helpers.pages.explorers import EXPLORERS
from helpers.pages.own_build import explorer_state
from helpers.pages.pictures import below
from helpers.physics.mains import SUPPLIES
from helpers.sizing.own import with_typed
from helpers.widgets import lesson
from helpers.widgets.explorers import Panel

SUPPLY = SUPPLIES["230 V 50 Hz"]


def first_words(name):
    """What its first picture says in its title, if it has one, and below it."""
    draw, controls = EXPLORERS[name].open_on(SUPPLY)
    drawn = draw(**first_state(controls))
    return [line.text for line in below(drawn._replace(details=""))]


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
    assert shown.has_controls
    for said in first_words(name):
        assert said in shown.plain and words(said.replace("<", "&lt;")) in words(shown.html)
    assert "not a measurement" in shown.plain


@pytest.mark.parametrize("name", EXPLORERS)
def test_the_workshop_copy_shows_the_start_without_controls(session, name):
    lesson.begin("02", workshop_copy=True)
    with screen() as shown:
        explore(name)
    assert not shown.has_controls
    assert all(said in shown.plain for said in first_words(name))


def test_an_unknown_explorer_is_named_with_those_there_are(session):
    with screen() as shown:
        explore("droper")
    assert "There is no explorer 'droper'" in shown.plain and "dropper" in shown.plain


def offers(panel):
    return [row for row in panel.laid_out if "cw-whose" in row._dom_classes]


@pytest.mark.parametrize("name", EXPLORERS)
def test_without_a_build_of_ones_own_no_explorer_offers_one(session, name):
    assert explorer_state(session, EXPLORERS[name].takes) == {}
    assert not [
        row for row in Panel(EXPLORERS[name], SUPPLY).laid_out if "cw-whose" in row._dom_classes
    ]


def test_a_build_of_ones_own_can_be_taken_and_left_again(session):
    """A trailing edge that lets 54° through is one of 54°; 75 W is no pot of the list."""
    typed = {"dimmer_edge": "trailing", "dimmer_lowest": "54°", "dimmer_highest": "180°"}
    typed |= {"heater_power": "75 W"}
    session.store.keep_own_brief("BENCH-07", with_typed("", typed, SUPPLY))
    mine = explorer_state(session, EXPLORERS["dimmer"].takes)
    assert mine == {"edge": "trailing", "angle_degrees": pytest.approx(54.0), "heater_watts": 75.0}
    panel = Panel(EXPLORERS["dimmer"], SUPPLY, mine)
    before, (offer,) = (
        panel.picture.value,
        [r for r in panel.laid_out if "cw-whose" in r._dom_classes],
    )
    offer.label = "my build"
    assert "Trailing edge at 54°" in panel.picture.value and "75\u00a0W" in panel.said.value
    offer.label = "the workshop"
    assert panel.picture.value == before
    assert explorer_state(session, ("angle_degrees",)) == {"angle_degrees": pytest.approx(126.0)}
    assert explorer_state(session, ("colour", "room_lux")) == {}


def test_every_control_that_a_build_sets_is_one_of_its_explorer(session):
    for explorer in EXPLORERS.values():
        assert set(explorer.takes) <= first_state(explorer.controls(SUPPLY)).keys()
