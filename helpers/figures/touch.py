"""Picture of a current through the body against the zones of IEC 60479-1."""

from functools import cache

import numpy as np

from helpers.figures.chart import Axis, Chart, picture
from helpers.figures.words import duration
from helpers.physics import hazards
from helpers.quantities import write

_AMPS = Axis(
    1e-4, 10.0, "across: current through the body in mA, rms; upwards: how long it flows",
    {mA / 1000.0: f"{mA:g}" for mA in (0.1, 1, 10, 100, 1_000, 10_000)}, True,
)  # fmt: skip
_SECONDS = Axis(0.01, 10.0, "", {t: duration(t) for t in (0.01, 0.1, 1.0, 10.0)}, True)
_TINTS = ("limit", 0.04), ("limit", 0.14), ("limit", 0.28), ("limit", 0.46)


#: What a zone does, inside its area: words, and where they begin [A] and [s].
_EFFECTS = (
    (("nothing", "is felt"), 1.2e-4, 1.0), (("felt, muscles", "may jerk"), 7e-4, 0.08),
    (("cramp, breathing", "is hard"), 8e-3, 2.2), (("the heart", "may stop"), 0.6, 0.5),
)  # fmt: skip
_NARROW, _HIGH = 250.0, 262
"""Width at which words are kept from each other, and height of the drawing [px]."""


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
    said = f"{finding}. {_when_worse(amps_rms, seconds, name)}{survival}".strip()
    details = (
        "In full: the zones, from less to more current: "
        + "; ".join(f"{zone}, {effect}" for zone, effect in hazards.ZONES.items())
        + "."
    )
    chart = Chart(_HIGH, _AMPS, _SECONDS)
    times, borders = _borders()
    edges = [np.full_like(times, _AMPS.low), *borders, np.full_like(times, _AMPS.high)]
    for zone, tint, low, high in zip(hazards.ZONES, _TINTS, edges, edges[1:], strict=False):
        chart.fill([*low, *high[::-1]], [*times, *times[::-1]], *tint)
        middle = (low[-1] * high[-1]) ** 0.5
        chart.note(middle, times[-1], zone, "middle", (0, -4))
    for border in borders:
        chart.line(border, times, "limit")
    amps, time = np.clip(amps_rms, _AMPS.low, _AMPS.high), min(seconds, _SECONDS.high)
    for words, *place in _EFFECTS:
        for line, text in enumerate(words):
            if not _near(*place, amps, time):
                chart.tell(*place, text, (0, 16 * line))
    ticks = [(hazards.RESIDUAL_AMPS_RMS, "RCD")] + [(pot_amps, "pot")] * bool(pot_amps)
    for at, text in ticks:
        chart.line((at, at), (0.01, 0.02), "held")
        if not _near(at, 0.022, amps, time):
            chart.tell(at, 0.022, text, (-12, 0))
    if before:
        chart.ghost(np.clip(before[0], _AMPS.low, _AMPS.high), min(before[1], _SECONDS.high))
    chart.mark(amps, time, "led")
    here = "here" if (amps, time) == (amps_rms, seconds) else "here, beyond"
    shift = (14 if amps < 0.05 else -14, -12 if time < 0.02 else 22)
    chart.note(amps, time, here, "start" if amps < 0.05 else "end", shift)
    name = "Zones of current and time, with a point"
    return picture(name, said, chart.html(), details=details)


def _near(at, when, amps, time):
    """Whether words that begin at a place could lie over those of the mark, in a narrow window."""
    across = _NARROW * float(_AMPS.share(at) - _AMPS.share(amps))
    up = _HIGH * float(_SECONDS.share(when) - _SECONDS.share(time))
    return -130 < across < 110 and abs(up) < 46


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
