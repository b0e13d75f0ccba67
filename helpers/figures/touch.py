"""Picture of a current through the body against the zones of IEC 60479-1."""

from functools import cache

import numpy as np

from helpers.figures.chart import Axis, Chart, picture
from helpers.figures.words import BEYOND, duration
from helpers.physics import hazards
from helpers.quantities import write

_AMPS = Axis(
    3e-5, 10.0, "current through the body in mA, rms",
    {mA / 1000.0: f"{mA:g}" for mA in (0.1, 1, 10, 100, 1_000, 10_000)}, True,
)  # fmt: skip
_SECONDS = Axis(0.01, 10.0, "how long", {t: duration(t) for t in (0.01, 0.1, 1.0, 10.0)}, True)
_TINTS = ("limit", 0.04), ("limit", 0.12), ("limit", 0.22), ("limit", 0.34)
_TOP = 55
"""Number of the longest time, of the 61 of the borders, below which a zone's name stands."""


_HIGH = 262
"""Height of the drawing [px]."""


def zones(amps_rms, seconds, before=None, pot_amps=None):
    """Draw a touch current and its time among the zones of what it does to a body.

    Parameters
    ----------
    amps_rms : float
        Rms current through the body [A].
    seconds : float
        How long it flows, 10 ms or longer [s].
    before : tuple of float, optional
        Current and time of a moment ago, to be drawn hollow [A], [s].
    pot_amps : float, optional
        What the pot draws, for comparison [A].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        As `hazards.zone`.

    Notes
    -----
    For 15 to 100 Hz, left hand to both feet. A point beyond the drawing stands at its edge.

    References
    ----------
    As `hazards.zone`: IEC 60479-1:2018 figure 20.

    Examples
    --------
    >>> zones(0.030, 0.1).finding.replace("\\xa0", " ").partition(".")[0]
    'Zone AC-2, felt, muscles may jerk, usually no harm: 30 mA for 100 ms'
    """
    name = hazards.zone(amps_rms, seconds)
    finding = (
        f"Zone {name}, {hazards.ZONES[name]}: {write(amps_rms, 'current')} for {duration(seconds)}"
    )
    survival = "Nobody is promised to survive zone AC-3." if name == "AC-3" else ""
    told = f"{finding}. {_when_worse(amps_rms, seconds, name)}{survival}".strip()
    chart = Chart(_HIGH, _AMPS, _SECONDS)
    times, borders = _borders()
    edges = [np.full_like(times, _AMPS.low), *borders, np.full_like(times, _AMPS.high)]
    for zone, tint, low, high in zip(hazards.ZONES, _TINTS, edges, edges[1:], strict=False):
        chart.fill([*low, *high[::-1]], [*times, *times[::-1]], *tint)
        chart.label(zone, at=((low * high)[_TOP:0:-4] ** 0.5, times[_TOP:0:-4]))
    for border in borders:
        chart.line(border, times, "limit")
    amps, time = np.clip(amps_rms, _AMPS.low, _AMPS.high), min(seconds, _SECONDS.high)
    for at, text, look in ((hazards.RESIDUAL_AMPS_RMS, "RCD", "held"), (pot_amps, "pot", "limit")):
        if at:
            chart.line((at, at), (0.01, 0.02), look, label=f"{text}: {write(at, 'current')}")
    if before:
        chart.ghost(np.clip(before[0], _AMPS.low, _AMPS.high), min(before[1], _SECONDS.high))
    chart.mark(amps, time, "led", "this touch")
    effects = "".join(f"<div><b>{zone}</b> {said}</div>" for zone, said in hazards.ZONES.items())
    told += BEYOND * ((amps, time) != (amps_rms, seconds))
    name = "Zones of current and time, with a point"
    return picture(name, told, chart.html(), effects)


@cache
def _borders():
    """Times, and for each where the second, third and fourth zone begin, asked on a fine grid."""
    times = np.geomspace(_SECONDS.low, _SECONDS.high, 61)
    amps = np.geomspace(_AMPS.low, _AMPS.high, 1501)
    ranks = np.searchsorted(list(hazards.ZONES), hazards.zone(amps[:, None], times))
    return times, [amps[np.argmax(ranks >= rank, axis=0)] for rank in (1, 2, 3)]


def _when_worse(amps_rms, seconds, name):
    """From when on the same current falls into each worse zone, in words: rather early than late.

    A time is told as the last of the grid before the border, and never before `seconds`.
    """
    times, _ = _borders()
    reached = hazards.zone(amps_rms, times)
    worse = [
        f"{zone} from about {duration(max(times[max(np.argmax(reached == zone) - 1, 0)], seconds))}"
        for zone in hazards.ZONES
        if zone > name and zone in reached
    ]
    return f"If it flows for longer, it is zone {' on and zone '.join(worse)} on. " if worse else ""
