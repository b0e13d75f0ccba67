"""Pictures to be read: what a reader takes off the grid is what the physics says."""

import re
from math import radians, sin, sqrt
from xml.etree import ElementTree

import numpy as np
import pytest

from helpers.figures import plain
from helpers.pages.pictures import DRAWINGS
from helpers.physics.mains import SUPPLIES
from helpers.physics.phase_cut import NO_DIMMER, Dimmer

ANGLES = (0.0, 5.0, 70.0, 90.0, 135.0, 175.0, 180.0)


def read_off(svg):
    """Points of the trace in divisions, and volts and the other unit a division as written."""
    root = ElementTree.fromstring(svg)
    points = root.find(".//polyline").get("points").split()
    middle = 4 * plain.DIVISION
    trace = [tuple(map(float, point.split(","))) for point in points]
    scale = root[-1].text.replace("\u00a0", " ")
    volts, step = re.match(r"(\d+) V and (\d+)", scale).groups()
    across = [x / plain.DIVISION for x, _ in trace]
    up = [(middle - y) / plain.DIVISION for _, y in trace]
    return across, up, float(volts), float(step)


@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=SUPPLIES)
@pytest.mark.parametrize("degrees", (40.0, 70.0, 110.0, 135.0))
@pytest.mark.parametrize("across_in", ["degrees", "ms"])
def test_firing_angle_and_jump_can_be_read_off(supply, degrees, across_in):
    svg, words, _ = plain.waveform(supply, Dimmer("leading", degrees), across_in)
    across, up, volts, step = read_off(svg)
    jump = next(i for i in range(len(up) - 1) if up[i + 1] - up[i] > 0.3)
    size = across[jump] * step
    angle = size if across_in == "degrees" else size * 1e-3 * supply.hertz * 360.0
    assert angle == pytest.approx(degrees, abs=0.2)
    height = sqrt(2.0) * supply.volts_rms * sin(radians(degrees))
    assert up[jump + 1] * volts == pytest.approx(height, abs=0.01 * volts)
    assert f"flat for {across[jump]:.2f} divisions" in words


@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=SUPPLIES)
def test_the_peak_can_be_read_off_and_fills_the_grid(supply):
    _, up, volts, _ = read_off(plain.waveform(supply)[0])
    assert max(up) * volts == pytest.approx(sqrt(2.0) * supply.volts_rms, abs=0.01 * volts)
    # 1-2-5 steps leave at least 1.6 of four divisions in use.
    assert 1.6 <= max(up) <= 4.0 and min(up) == pytest.approx(-max(up), abs=0.01)


@pytest.mark.parametrize("degrees", ANGLES)
@pytest.mark.parametrize("edge", ["leading", "trailing"])
@pytest.mark.parametrize("across_in", ["degrees", "ms"])
def test_at_both_ends_it_is_drawn_inside_and_told_without_the_answer(degrees, edge, across_in):
    supply = SUPPLIES["127 V 60 Hz"]
    svg, words, _ = plain.waveform(supply, Dimmer(edge, degrees), across_in)
    root = ElementTree.fromstring(svg)
    assert root.get("role") == "img" and root.get("aria-label") == words
    assert " id=" not in svg and "max-width:100%" in svg
    across, up, _, _ = read_off(svg)
    width = float(root[0].get("width")) / plain.DIVISION
    assert across[0] == 0.0 and across[-1] <= width and max(map(abs, up)) <= 4.0
    told = words.replace("\u00a0", " ").partition(". ")[2]
    assert "V" not in told and "°" not in told and "ms" not in told
    assert plain.waveform(supply, Dimmer(edge, degrees), across_in) == (svg, words, "")


def test_a_dark_setting_lies_on_the_middle_line():
    words = plain.waveform(SUPPLIES["230 V 50 Hz"], Dimmer("trailing", 0.0))[1]
    assert words.endswith("It lies on the middle line all along.")


def test_an_unknown_scale_is_refused():
    with pytest.raises(ValueError, match="across was read as 'seconds'"):
        plain.waveform(SUPPLIES["230 V 50 Hz"], NO_DIMMER, "seconds")


def test_a_meter_shows_its_digits_and_nothing_unescaped():
    svg, words, _ = plain.meter("<1.5", "V & A", "AC <b>")
    assert "".join(ElementTree.fromstring(svg).itertext()) == "<1.5 V & AAC <b>"
    assert words == "A meter (AC <b>) shows <1.5\u00a0V & A."


@pytest.mark.parametrize("text", ["", "123456789"])
def test_a_meter_refuses_what_no_display_shows(text):
    with pytest.raises(ValueError, match="1 to 8 characters"):
        plain.meter(text, "V", "DC volts")


def test_questions_find_both_pictures_by_name():
    assert DRAWINGS["waveform"] is plain.waveform
    assert DRAWINGS["meter"] is plain.meter


@pytest.mark.parametrize("seconds", [30.0, 90.0, 170.0], ids=lambda s: f"second way: {s:g} s")
def test_the_warm_up_curve_passes_three_divisions_after_one_time_constant(seconds):
    """A first-order step of 4.75 divisions, 1 - 1/e of it is 3.00; a minute a division."""
    svg, words, _ = plain.warm_up_curve(seconds)
    line = ElementTree.fromstring(svg).find(".//polyline").get("points").split()
    places = np.array([point.split(",") for point in line], float)
    across, up = places[:, 0] / plain.DIVISION, 5 - places[:, 1] / plain.BEAM_DIVISION
    assert up == pytest.approx(4.75 * (1 - np.exp(-across * 60 / seconds)), abs=2e-3)
    assert np.interp(seconds / 60, across, up) == pytest.approx(3.0, abs=0.01)
    read = [float(number) for number in re.findall(r"\d\.\d\d(?=[,.])", words)][:8]
    assert read == pytest.approx(np.interp(np.arange(0.5, 4.5, 0.5), across, up), abs=0.006)
    assert f"{5 * seconds / 60:g} " not in words


def test_a_time_constant_that_would_not_settle_in_the_picture_is_refused():
    with pytest.raises(ValueError, match="time_constant_seconds"):
        plain.warm_up_curve(171.0)


def test_limit_a_difference_beyond_the_picture_stands_at_its_edge_with_its_number():
    svg, words, _ = plain.residuals(("volts", "current"), (-53.0, 1.5))
    assert words == "Differences in combined uncertainties: volts \u221253; current 1.5."
    ends = re.findall(r'd="M([0-9.]+),[0-9.]+ ([0-9.]+),[0-9.]+" fill="none" stroke="#', svg)
    middle, *_ = {float(start) for start, _ in ends}
    far, near = (float(end) - middle for _, end in ends)
    assert far / near == pytest.approx(-10.4 / 1.5, rel=0.01)
    assert "\u221253</text>" in svg and "1.5</text>" in svg
