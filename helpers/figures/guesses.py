"""Picture to predict on: a mark where somebody expects the answer, then the curve through or past.

What is asked is a row among the explorers; the curves stand here, the one that is asked first.
"""

from typing import NamedTuple

import numpy as np

from helpers.figures.chart import Axis, Chart, picture
from helpers.physics import heat, light, mains, ohms_law, phase_cut, phase_cut_inverse

_NEAR = 0.025
"""A mark so near to the curve is on it, as a share of the axis; rule of this course [-]."""


class Guess(NamedTuple):
    """What is asked of a curve.

    Parameters
    ----------
    asks : str
        The question, with its mark.
    across, up : Axis
        The axes, their numbers as people read them.
    at : float
        The place on the first that is asked about.
    unit : str
        Of the second, as it is written.
    curves : callable
        To (places, heights, meaning, name) of each curve, the one that is asked first.
    learned : str
        What the curve teaches; true on every supply.
    """

    asks: str
    across: Axis
    up: Axis
    at: float
    unit: str
    curves: object
    learned: str


def led_milliamps():
    """Return the current behind 2 kohm over a bench supply, with a red LED and without [mA]."""
    volts, ohms = np.linspace(0.0, 12.0, 49), ohms_law.dropper(12.0, 2.0, 0.005)
    led = 1e3 * ohms_law.led_current(volts, 2.0, ohms)
    return (volts, led, "led", "LED"), (
        volts, 1e3 * ohms_law.current(volts, ohms), "mains", "no LED in the way"
    )  # fmt: skip


def sine():
    """Return a half-cycle of a sine, of its crest [%]."""
    degrees = np.linspace(0.0, 180.0, 91)
    volts = mains.volts_at(100.0, degrees)
    return ((degrees, 100.0 * volts / mains.peak(100.0), "volts", "the wave"),)


def warm_up():
    """Return the rise of a part of 3 min, of the whole, over the minutes [%]."""
    minutes = np.linspace(0.0, 15.0, 91)
    return ((minutes, heat.celsius_after(60.0 * minutes, 100.0, 1.0, 180.0, 0.0), "heat", "there"),)


def shares_left():
    """Return heat, time and volts that a leading edge leaves, over its angle [%]."""
    degrees = np.linspace(0.0, 180.0, 181)
    time, volts, power = phase_cut_inverse.percentages(phase_cut.Dimmer("leading", degrees))
    return (
        (degrees, power, "heat", "heat of the heater"),
        (degrees, time, "mains", "time let through"), (degrees, volts, "rms", "rms volts"),
    )  # fmt: skip


def looks():
    """Return how bright a share of the light looks, as a patch, a point and a surface [%]."""
    share = np.linspace(0.0, 1.0, 101) ** 2  # closer together where the curves are steep
    point = light.stevens(share, light.STEVENS_EXPONENTS["point"])
    looks = (
        (light.stevens(share), "eye", "patch, close by"),
        (point, "eye from afar", "point, from afar"),
        (light.lightness(share) / 100.0, "eye by day", "surface, by day"),
    )  # fmt: skip
    return [(100.0 * share, 100.0 * look, *rest) for look, *rest in looks]


def guess(asked, mark, shown):
    """Draw a mark where an answer is expected, and once asked for, the curves.

    Parameters
    ----------
    asked : Guess
        The question.
    mark : float
        Where the mark stands, in the unit of the row: the grip of a control of this name.
    shown : bool
        Whether the curves are drawn [-].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    References
    ----------
    As `ohms_law.led_current`, `heat.celsius_after`, `phase_cut_inverse.percentages` and
    `light.stevens`.

    Examples
    --------
    >>> from helpers.figures.chart import axis
    >>> places, shares = axis("minutes", 0, 15, 3), axis("%", 0, 100, 20)
    >>> asked = Guess("How much is there?", places, shares, 6.0, "%", warm_up, "It slows down.")
    >>> guess(asked, 95.0, True).finding.replace("\\xa0", " ")
    'Your mark is too high: you put 95 %, the curve is at 86.5 %. It slows down.'
    """

    def write(number):
        return f"{number:.3g}\u00a0{asked.unit}"

    put, at = write(mark), asked.at
    finding = f"{asked.asks} You put {put}."
    chart = Chart(230, asked.across, asked.up)
    chart.line(at, (asked.up.low, asked.up.high), "limit")
    if shown:
        (there, _), *others = chart.read_at(at, *asked.curves())
        off = (mark - there) / (asked.up.high - asked.up.low)
        verdict = "The curve goes through your mark"
        if abs(off) >= _NEAR:
            verdict = f"Your mark is too {'high' if off > 0.0 else 'low'}"
        besides = "; ".join(f"{label} {write(up)}" for up, label in others)
        finding = (
            f"{verdict}: you put {put}, the curve is at {write(there)}. "
            f"{asked.learned}{f' Beside it: {besides}.' if besides else ''}"
        )
    chart.grip("mark", at, mark, way="up", label=f"you: {mark:.3g}")
    return picture("A mark on an empty pair of axes, then curves", finding, chart.html())
