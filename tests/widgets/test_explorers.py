"""The panel of an explorer: linked controls, a picture at once, a sentence when the hand rests."""

import asyncio
import html

import ipywidgets as widgets
import pytest
from page_words import words

from helpers.pages.explorers import EXPLORERS
from helpers.physics.mains import SUPPLIES
from helpers.widgets.explorers import REST_SECONDS, Panel

SUPPLY = SUPPLIES["120 V 60 Hz"]


@pytest.fixture
def panel():
    return Panel(EXPLORERS["dimmer"], SUPPLY)


def slider_of(panel, key):
    box = panel.inputs[key]
    row = next(row for row in panel.laid_out if box in getattr(row, "children", ()))
    return next(child for child in row.children if isinstance(child, widgets.FloatSlider))


def test_slider_and_box_move_together_and_the_picture_follows(panel):
    slider_of(panel, "angle_degrees").value = 30.0
    assert panel.inputs["angle_degrees"].value == 30.0
    assert "edge at 30°" in panel.picture.value
    panel.inputs["angle_degrees"].value = 45.0
    assert slider_of(panel, "angle_degrees").value == 45.0
    assert "edge at 45°" in panel.picture.value and "edge at 45°" in panel.said.value


def test_a_number_beyond_the_ends_stops_at_the_end(panel):
    panel.inputs["angle_degrees"].value = 900.0
    assert panel.inputs["angle_degrees"].value == 180.0


def test_during_a_drag_the_picture_follows_and_the_sentence_is_said_once_at_rest(panel):
    said = []
    panel.said.observe(lambda change: said.append(change["new"]), "value")

    async def drag():
        for degrees in range(20, 50):
            panel.inputs["angle_degrees"].value = degrees
            assert f"edge at {degrees}°" in panel.picture.value
            await asyncio.sleep(0.005)
        assert said == []
        await asyncio.sleep(REST_SECONDS + 0.2)

    asyncio.run(drag())
    assert len(said) == 1 and "edge at 49°" in said[0]


def test_a_ghost_stays_where_the_hand_last_rested():
    panel, hollow = Panel(EXPLORERS["touch current"], SUPPLY), 'stroke-dasharray="3 2"'

    async def move():
        assert hollow not in panel.picture.value
        panel.inputs["seconds"].value = 0.02
        assert hollow in panel.picture.value
        first = panel.picture.value.partition(hollow)[0][-60:]
        panel.inputs["seconds"].value = 0.01
        assert first == panel.picture.value.partition(hollow)[0][-60:]
        await asyncio.sleep(REST_SECONDS + 0.2)
        panel.inputs["seconds"].value = 5.0
        assert first != panel.picture.value.partition(hollow)[0][-60:]

    asyncio.run(move())


def test_a_typed_value_sets_all_bands_at_once_and_a_bad_one_says_why():
    panel = Panel(EXPLORERS["bands"], SUPPLY)
    entry = panel.laid_out[-1]
    drawn = []
    panel.picture.observe(lambda change: drawn.append(change["new"]), "value")
    entry.value = "68k"
    assert [control.value for control in panel.inputs.values()] == [
        "blue", "grey", "orange", "gold",
    ]  # fmt: skip
    assert len(drawn) == 1
    entry.value = "a lot"
    assert "has no number" in html.unescape(panel.said.value)
    assert len(drawn) == 1


@pytest.mark.parametrize("name", EXPLORERS)
def test_every_slider_has_a_labelled_box_and_every_control_a_label(name):
    panel = Panel(EXPLORERS[name], SUPPLY)
    for control in panel.inputs.values():
        assert control.description.endswith(":")
    for caution in filter(None, [EXPLORERS[name].caution]):
        assert caution in words(panel.children()[0].value)
