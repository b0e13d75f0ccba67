"""What the cell `explore(...)` shows, and the bench dropper at its ends and at the LED's limit."""

import re
from xml.etree import ElementTree

import pytest
from page_words import words
from shown import screen

from helpers import explore
from helpers.physics.mains import SUPPLIES
from helpers.widgets import lesson
from helpers.widgets.explorers import EXPLORERS
from helpers.widgets.explorers.dropper import dropper
from helpers.widgets.explorers.panel import Panel, first_state

SUPPLY = SUPPLIES["230 V 50 Hz"]


def amounts(text, unit):
    """Read amounts such as "12.5 mA" out of a sentence [unit]."""
    found = re.findall(rf"([0-9.]+)\xa0(µ|m|k|)({unit})\b", text)
    return [float(number) * {"µ": 1e-6, "m": 1e-3, "k": 1e3, "": 1}[p] for number, p, _ in found]


def first_sentence(name):
    draw, knobs = EXPLORERS[name].open_on(SUPPLY)
    return draw(**first_state(knobs))[1]


@pytest.mark.parametrize("ohms", [220.0, 1500.0, 8200.0], ids=lambda r: f"second way: {r:g} ohm")
@pytest.mark.parametrize("volts", [5.0, 14.5, 24.0], ids=lambda v: f"{v:g} V")
def test_the_dropper_says_what_flows(volts, ohms):
    """(V - 2 V) / R, V / R and the square of the first times R, worked out here by hand.

    A rating of twice the heat: common practice, no source.
    """
    svg, said = dropper(volts, ohms)
    amps = (volts - 2.0) / ohms
    assert amounts(said, "A")[:2] == pytest.approx([amps, volts / ohms], rel=5.1e-3)
    heat = amps**2 * ohms
    assert amounts(said, "W") == pytest.approx([heat, 2 * heat], rel=5.1e-3)
    assert ("Too much" in said) == (amps > 0.020)
    ElementTree.fromstring(svg)


@pytest.mark.parametrize(
    ("volts", "too_much"), [(11.4, False), (11.5, True)], ids=["limit: 20 mA", "limit: 20.2 mA"]
)
def test_the_dropper_warns_from_the_limit_of_a_small_led_on(volts, too_much):
    """20 mA for a small LED: common practice, no source. (11.4 V - 2 V) / 470 ohm = 20 mA."""
    assert ("Too much" in dropper(volts, 470.0)[1]) == too_much


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
