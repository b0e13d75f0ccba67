"""Live pictures of a cycle: the voltage, what a dimmer leaves of it, and the current of the LED.

Gets curves and numbers; computes no physics.
"""

from typing import NamedTuple

import numpy as np

from helpers.figures.live.chart import Axis, Chart, bar, number_box, picture, words
from helpers.quantities import write, write_as

REMOVED, LIT, BROKEN_DOWN = "#e2e2e2", "#fbe3d2", "#eadfe8"
DEGREES = {0: "0°", 90: "90°", 180: "180°", 270: "270°", 360: "360°"}
_NO_WORDS = dict.fromkeys(DEGREES, "")


class Cycle(NamedTuple):
    """The curves of one cycle, point by point."""

    degrees: np.ndarray
    """Angle from the rising zero crossing [deg]."""
    sine: np.ndarray
    """Voltage of the supply [V]."""
    volts: np.ndarray
    """What is left of it behind the dimmer [V]."""
    amps: np.ndarray
    """Current of the LED; negative in breakdown [A]."""
    second_amps: np.ndarray
    """Current of the second LED, zero where there is none [A]."""
    amps_peak: float
    """Highest current that the scale has to hold [A]."""


class Setting(NamedTuple):
    """What the dimmer picture says beside its curves."""

    title: str
    heater_share: float
    """Heat of the heater, share of full [-]."""
    light_share: float
    """Light of the LED, share of full [-]."""
    look_share: float
    """How bright it looks, share of full [-]."""
    average_volts: float
    """What an average-responding meter shows [V]."""
    true_rms_volts: float
    """What a true-rms meter shows [V]."""


def conduction(cycle, title):
    """Return the picture of a voltage and of the LED current that it drives.

    Parameters
    ----------
    cycle : Cycle
        The curves.
    title : str
        The answer that the picture gives.

    Returns
    -------
    svg : str
    """
    name = "Two curves over one cycle: the voltage, and the current of the LED"
    return picture(392, name, title, *_two_charts(cycle, 84, 806))


def dimmed(cycle, setting):
    """Return the picture of a dimmer setting: both curves, three shares and two meters.

    Parameters
    ----------
    cycle : Cycle
        The curves.
    setting : Setting
        The numbers beside them.

    Returns
    -------
    svg : str
    """
    name = (
        "Two curves over one cycle, the voltage and the current of the LED; beside them heat, "
        "light and look in per cent of full, and what two meters show"
    )
    parts = list(_two_charts(cycle, 84, 506))
    rows = (
        ("Heat of the heater", setting.heater_share, "heat"),
        ("Light of the LED", setting.light_share, "light"),
        ("How bright it looks", setting.look_share, "eye"),
    )
    for place, (label, share, meaning) in enumerate(rows):
        y = 76 + 46 * place
        parts.append(words(640, y - 6, label))
        parts.append(bar(640, y, 190, 20, share, meaning))
        parts.append(words(838, y + 16, write(100 * share, "percent", 2), bold=True))
    shown = (
        ("Plain meter, AC volts", setting.average_volts, "shows a mean, scaled for a sine"),
        ("True-rms meter, AC volts", setting.true_rms_volts, "shows what heats"),
    )
    for place, (label, volts, remark) in enumerate(shown):
        parts.append(number_box(640, 220 + 100 * place, 200, label, _volts(volts), remark))
    return picture(402, name, setting.title, *parts)


def _volts(volts):
    return write_as(volts, "V", 3 if volts >= 1 else 2)


def _two_charts(cycle, left, width):
    crest = float(np.max(cycle.sine))
    upper = Chart(
        (left, 66, width, 132),
        Axis(0, 360, "", _NO_WORDS),
        Axis(-1.12 * crest, 1.12 * crest, "voltage", _volt_ticks(crest)),
    )
    upper.fill(*_closed(cycle.degrees, cycle.sine), REMOVED)
    upper.fill(*_closed(cycle.degrees, cycle.volts), "#ffffff")
    upper.line(cycle.degrees, cycle.sine, "mains")
    upper.line(cycle.degrees, cycle.volts, "dimmed")
    top = 1000 * cycle.amps_peak
    low = -1.1 * top if cycle.amps.min() < 0 else 0.0
    lower = Chart(
        (left, 236, width, 106),
        Axis(0, 360, "angle in the cycle", DEGREES),
        Axis(low, 1.15 * top, "current of the LED", _milliamp_ticks(top, low < 0)),
    )
    first, second = 1000 * cycle.amps, 1000 * cycle.second_amps
    lower.fill(*_closed(cycle.degrees, np.maximum(first, 0)), LIT)
    lower.fill(*_closed(cycle.degrees, np.minimum(first, 0)), BROKEN_DOWN)
    if second.any():
        lower.line(cycle.degrees, second, "volts")
        lower.note(270, 0.5 * top, "second LED", "middle")
    if low < 0:
        lower.note(90, 0.55 * low, "backwards: breakdown", "middle")
    lower.line(cycle.degrees, first, "led")
    return upper.svg(), lower.svg()


def _closed(across, up):
    """Close a curve along its zero line, so that it can be filled."""
    ends = across[[-1, 0]]
    return np.concatenate([across, ends]), np.concatenate([up, np.zeros(2)])


def _volt_ticks(crest):
    return {value: write_as(value, "V") for value in (-crest, 0.0, crest)}


def _milliamp_ticks(top, both):
    """Ticks at zero and at the end of the scale; the numbers are in mA already."""
    text = write(top / 1000, "current")
    return {0.0: "0", top: text} | ({-top: "\u2212" + text} if both else {})
