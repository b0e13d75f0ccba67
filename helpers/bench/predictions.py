"""What each meter should read on a build, and how far off it may be: before anything is powered.

Uncertainties after JCGM 100. Parts and supplies that several readings share make them stray
together, so the covariance of all rows is known as well. Judges no reading.
"""

from dataclasses import dataclass, replace
from math import sqrt
from typing import NamedTuple

import numpy as np

from helpers.bench.rows import ANYONE, COMPETENT, REHEARSAL, asks
from helpers.bench.world import Build, World, inputs
from helpers.physics import circuits, uncertainty
from helpers.physics.uncertainty import Meter

__all__ = ["ANYONE", "COMPETENT", "REHEARSAL", "Build", "Row", "expected", "of_plan", "table"]

#: A plain meter for the bench, range by range: common practice, no source. Its own sheet decides.
BENCH_METERS = {
    "ohms": Meter(1.0, 5.0, least_step=0.1),
    "diode test": Meter(2.0, 5.0, least_step=0.001),
    "DC volts": Meter(0.8, 3.0, least_step=0.01),
    "AC volts, true rms": Meter(1.5, 5.0, "true_rms", "ac", least_step=0.01),
    "AC volts, average": Meter(1.5, 5.0, "average", "ac", least_step=0.01),
    "plug-in volts": Meter(1.5, 3.0, "true_rms", "ac", least_step=0.1),
    "plug-in watts": Meter(2.5, 5.0, least_step=0.1),
    "eye": Meter(0.0, 0.3, least_step=1.0),
}
_SCALES = tuple(name for name in BENCH_METERS if name != "eye")


@dataclass(frozen=True)
class Row:
    """One reading that a bench log asks for, predicted."""

    name: str
    """As it stands in a log."""
    where: str
    """Where the leads go."""
    meter: str
    """A key of `BENCH_METERS`."""
    value: float
    """What it should show, in SI; infinite for OL; a number of LEDs for the eye."""
    unit: str
    """What kind of quantity that is, as in `helpers.quantities`; count for the eye."""
    standard: float
    """Standard uncertainty of the difference between reading and prediction, in SI."""
    limits: tuple
    """Lowest and highest reading that agrees by itself, k = 2, in SI; of a batch, too."""
    by: str
    """Who takes it: anyone, unpowered; rehearsal; or competent person."""
    doubts: tuple = ()
    """Why the limits of the meter's sheet do not hold here; such a row is not judged."""


class Reading(float):
    """A reading in SI that knows its last place, as typed; 0 where nothing was typed.

    Also what was typed, where that had no unit and the row gave it one.
    """

    def __new__(cls, value, place=0.0, bare=""):
        """A number, one step of its last figure, in SI, and what was typed without a unit."""
        self = super().__new__(cls, value)
        self.place, self.bare = place, bare
        return self


def place(reading):
    """Return the last place of a reading.

    Parameters
    ----------
    reading : Reading, float or None

    Returns
    -------
    place : float
        0 where nothing was read, or nothing was typed [SI].

    Examples
    --------
    >>> place(Reading(20.7, 0.1)), place(20.7), place(None)
    (0.1, 0.0, 0.0)
    """
    return getattr(reading, "place", 0.0)


class Expected(NamedTuple):
    """Every reading that is asked for, what it shows, and the covariance of all."""

    asks: list
    values: np.ndarray
    """Infinite for OL."""
    covariance: np.ndarray
    """Zero where a value is infinite."""


def expected(build, state=None, rows=None, readings=None, together=0.0):
    """Return what all meters show on a build in a state, and how that varies.

    Parameters
    ----------
    build : Build
    state : State, optional
        Sound if left out.
    rows : list of Ask, optional
        Which readings; all if left out.
    readings : dict of str to Reading, optional
        What was typed: their last places widen their rows [SI].
    together : float, optional
        Coefficient of correlation of each resistor with each [-].

    Returns
    -------
    expected : Expected

    Notes
    -----
    Each input, such as a resistor, an LED's drop, the mains or the scale of one range of the meter,
    is rectangular between its limits and independent of the others; all rows that it touches move
    with it. The digits of a display are each row's own: so many of its last place, which is that
    of what was typed, never finer than that of `BENCH_METERS` nor coarser than that of a display of
    three figures. What was typed is rounded besides, to half a step of its last figure: as a
    standard uncertainty, step / sqrt(12). Where nobody can say what is read, anything between
    nothing and the whole mains is as likely.

    References
    ----------
    JCGM 100:2008, 4.3.7, 5.2 and F.2.2.1; that no meter has fewer than three figures: common
    practice, no source; JCGM 102:2011 for several results.
    """
    rows, state = rows or asks(build), state or build.sound
    many, string = len(inputs(build)) + len(_SCALES), slice(0, int(build.count))
    alike = np.eye(many)
    alike[string, string] += together * (1.0 - np.eye(int(build.count)))
    found = uncertainty.combined(  # inputs count in half-widths
        lambda cases: _shown(build, state, rows, cases)[0],
        np.zeros(many), np.full(many, 1.0 / sqrt(3.0)), alike,
    )  # fmt: skip
    overload, unsaid = _shown(build, state, rows, np.zeros((many, 1)))[1:]
    # The last place may be that of the next range up, if the reading comes out high.
    high = abs(found.values) + uncertainty.expanded(found.standard)
    own = [
        _display(BENCH_METERS[ask.meter], each, place((readings or {}).get(ask.name)))
        for ask, each in zip(rows, high, strict=True)
    ]
    own = np.where(unsaid, uncertainty.rectangular(0.5 * build.brief.supply_volts), own)
    covariance = found.covariance + np.diag(own * own)
    covariance[overload] = covariance[:, overload] = 0.0
    return Expected(rows, np.where(overload, np.inf, found.values), covariance)


def _display(meter, size, last):
    """Standard uncertainty of the digits of a display, and of rounding to what was typed."""
    coarsest = replace(meter, counts=1000).step(size)
    digits = meter.digits * np.clip(last, meter.step(size), coarsest)
    return float(np.hypot(*uncertainty.rectangular([digits, 0.5 * last])))


def middle(build, state, rows):
    """Return what meters show with nothing astray: quicker than `expected`.

    Parameters
    ----------
    build : Build
    state : State
    rows : list of Ask
        Which readings.

    Returns
    -------
    values : ndarray
        Of each row; infinite for OL [SI].
    """
    cases = np.zeros((len(inputs(build)) + len(_SCALES), 1))
    values, overload, _ = _shown(build, state, rows, cases)
    return np.where(overload, np.inf, values[:, 0])


def _shown(build, state, rows, cases):
    """Rows by cases of inputs; which rows are OL, which nobody can say: as in the first case."""
    names, size = inputs(build), cases.shape[1]
    world = World(build, state, dict(zip(names, cases, strict=False)))
    scale = dict(zip(_SCALES, cases[len(names) :], strict=True)) | {"eye": np.zeros(size)}
    shown = np.array([np.broadcast_to(ask.read(world), size) for ask in rows], float)
    overload, unsaid = np.isinf(shown[:, 0]), np.isnan(shown[:, 0])
    shown[overload], shown[unsaid] = 0.0, 0.5 * build.brief.supply_volts
    shown = np.where(np.isfinite(shown), shown, shown[:, :1])
    percent = np.array([BENCH_METERS[ask.meter].percent * scale[ask.meter] for ask in rows])
    return shown * (1.0 + 0.01 * percent), overload, unsaid


def _doubts(build, world, ask):
    """Why a sheet does not hold on the dimmed mains; that of an average range is in its value."""
    if not ask.name.endswith("true rms"):
        return ()
    at = int(ask.name.split(",")[0].split()[1]) - 1
    return BENCH_METERS[ask.meter].doubts(world.dimmed(at))


def table(build, readings=None):
    """Return what each meter should read on a sound build, and within which limits.

    Parameters
    ----------
    build : Build
    readings : dict of str to Reading, optional
        What was typed, as for `expected`; if left out, limits hold for `BENCH_METERS` [SI].

    Returns
    -------
    rows : list of Row
        In the order in which they are taken: unpowered; the rehearsal on an isolated,
        current-limited supply; and what only a competent person reads, from outside closed covers.

    Notes
    -----
    Resistors of one reel stray together, others each by itself: common practice, no source. What
    is read of several has the wider limits of the two.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> rows = {row.name: row for row in table(Build(Brief(), "series_diode", 120e3, 2))}
    >>> row = rows["24 V, string"]
    >>> f"{row.value:.1f} V, {row.limits[0]:.1f} to {row.limits[1]:.1f} V, {row.by}"
    '21.9 V, 20.9 to 22.9 V, rehearsal'
    """
    found, batch = (expected(build, readings=readings, together=each) for each in (0.0, 1.0))
    variance = np.maximum(np.diagonal(found.covariance), np.diagonal(batch.covariance))
    world = World(build, build.sound, dict.fromkeys(inputs(build), 0.0))
    rows = []
    for at, (ask, value) in enumerate(zip(found.asks, found.values, strict=True)):
        standard = float(np.sqrt(variance[at]))
        within = uncertainty.expanded(standard)
        rows.append(Row(
            ask.name, ask.where, ask.meter, float(value), ask.unit, standard,
            (float(value - within), float(value + within)), ask.by, _doubts(build, world, ask),
        ))  # fmt: skip
    return rows


def of_plan(plan):
    """Return the build that a plan puts first, for `table`.

    Parameters
    ----------
    plan : verdicts.Plan

    Returns
    -------
    build : Build

    Raises
    ------
    ValueError
        If the plan has no candidate.
    """
    if not len(plan.order):
        raise ValueError("The plan has no candidate: what forbids it comes first.")
    best = plan.best(1)[0]
    if best.circuit not in circuits.CIRCUITS:
        raise ValueError(
            "No bench log is made of a neon lamp or a capacitor dropper: they are compared alone. "
            f"There is one of: {', '.join(circuits.CIRCUITS)}."
        )
    return Build(plan.brief, best.circuit, best.ohms_each, best.count)
