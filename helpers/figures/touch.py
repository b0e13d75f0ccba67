"""Picture of a current through the body against the zones of IEC 60479-1."""

from functools import cache

import numpy as np

from helpers.figures import style
from helpers.figures.words import duration
from helpers.physics import hazards
from helpers.quantities import write

_AMPS = (1e-4, 10.0)
_SECONDS = (0.010, 10.0)
_SHADES = {"AC-1": "#ffffff", "AC-2": "#e8f0f6", "AC-3": "#f6d9b8", "AC-4": "#e0a08c"}
_HATCHES = {"AC-1": "", "AC-2": "..", "AC-3": "//", "AC-4": "xx"}


def zones(amps_rms, seconds):
    """Draw a touch current and its time among the zones of what it does to a body.

    Parameters
    ----------
    amps_rms : float
        Rms current through the body [A].
    seconds : float
        How long it flows, 10 ms or longer [s].

    Returns
    -------
    figure : matplotlib.figure.Figure
    alternative : str
        The finding with its numbers.

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
    >>> zones(0.030, 0.1)[1].replace("\\xa0", " ").partition(".")[0]
    '30 mA for 100 ms is zone AC-2: felt, muscles may jerk, usually no harm'
    """
    name = hazards.zone(amps_rms, seconds)
    current, time = write(amps_rms, "current"), duration(seconds)
    finding = f"{current} for {time} is zone {name}: {hazards.ZONES[name]}"
    longer = _longest_in_zone(amps_rms, name)
    alternative = (
        f"{finding}. {longer}The zones, from less to more current: "
        + "; ".join(f"{zone}, {effect}" for zone, effect in hazards.ZONES.items())
        + ". Nobody is promised to survive zone AC-3."
    )
    figure, axes = style.blank(finding, height=4.4, left=1.0)
    axes.set(xscale="log", yscale="log", xlim=_AMPS, ylim=_SECONDS)
    times, borders = _borders()
    edges = [np.full_like(times, _AMPS[0]), *borders, np.full_like(times, _AMPS[1])]
    for zone, left, right in zip(hazards.ZONES, edges[:-1], edges[1:], strict=True):
        axes.fill_betweenx(
            times, left, right, facecolor=_SHADES[zone], edgecolor="#b5b5b5",
            hatch=_HATCHES[zone], linewidth=0,
        )  # fmt: skip
    for border in borders:
        axes.plot(border, times, color=style.INK, linewidth=1.4)
    for zone, place in zip(hazards.ZONES, (2.2e-4, 2.6e-3, 3.5e-2, 1.5), strict=True):
        style.note(axes, place, 0.0145, zone, ha="center", weight="bold", size=style.TEXT_SIZE + 1)
    _mark(axes, amps_rms, seconds)
    axes.xaxis.set_major_formatter(lambda value, _: write(value, "current"))
    axes.yaxis.set_major_formatter(lambda value, _: duration(value))
    style.name_axes(axes, ("current through the body, rms", ""), ("how long it flows", ""))
    return figure, alternative


def _mark(axes, amps_rms, seconds):
    """A cross in a ring at the point, or an arrowhead at the edge if it lies beyond."""
    place = float(np.clip(amps_rms, *_AMPS)), float(np.clip(seconds, *_SECONDS))
    marker = "X"
    if amps_rms != place[0]:
        marker = "<" if amps_rms < place[0] else ">"
    elif seconds != place[1]:
        marker = "^"
    axes.plot(
        *place, marker, markersize=15, color=style.INK, markeredgecolor=style.FACE,
        markeredgewidth=2, clip_on=False, zorder=6,
    )  # fmt: skip


@cache
def _borders():
    """Times, and for each where the second, third and fourth zone begin, asked on a fine grid."""
    times = np.geomspace(*_SECONDS, 121)
    amps = np.geomspace(*_AMPS, 1501)
    names = np.array(list(hazards.ZONES))
    found = hazards.zone(amps[:, np.newaxis], times[np.newaxis])
    ranks = np.searchsorted(names, found)
    return times, [amps[np.argmax(ranks >= rank, axis=0)] for rank in (1, 2, 3)]


def _longest_in_zone(amps_rms, name):
    """When the same current would fall into a worse zone, in words."""
    times, _ = _borders()
    worse = hazards.zone(amps_rms, times)
    later = [t for t, zone in zip(times, worse, strict=True) if zone > name]
    if not later:
        return ""
    reached = str(hazards.zone(amps_rms, later[-1]))
    return f"If it flows for {duration(later[-1])} it is zone {reached}. "
