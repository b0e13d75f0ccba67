"""What a meter shows on a string of resistors on a low DC supply, and how far that may stray.

A dry run of an indicator at a few volts. Knows no mains, no heat and no verdict.
"""

from typing import NamedTuple

import numpy as np

from helpers.physics import joints, limits, uncertainty
from helpers.physics.parts import Part


class Predicted(NamedTuple):
    """A prediction and its standard uncertainty, both in one unit."""

    value: float
    standard: float


def volts_on_one(
    volts, ohms_each, count=2, *, supply_percent=1.0, ohms_percent=5.0, drop_volts=2.2,
    drop_stray_volts=0.3,
):  # fmt: skip
    """Return the volts that a meter shows across one of several equal resistors in series.

    Parameters
    ----------
    volts : float
        The rehearsal supply [V].
    ohms_each : float
        Each resistor, as printed [ohm].
    count : int
        How many of them, two or more [-].
    supply_percent, ohms_percent : float
        Limits of the supply and of each resistor, to either side [%].
    drop_volts, drop_stray_volts : float
        What LED and diode keep together at so little current, and its limits to either side [V].

    Returns
    -------
    predicted : Predicted
        [V].

    Raises
    ------
    ValueError
        If the supply does not exceed the drops, or a value is impossible.

    Notes
    -----
    The circuit is that of `joints.string_volts`, which a bench log asks as well: the resistor with
    the meter beside it has its share of the volts that the drops leave. Each resistor strays by
    itself; limits are rectangular.

    References
    ----------
    Kirchhoff's laws; JCGM 100:2008, 4.3.7 and 5.1. Drops and their limits: common practice, no
    source.

    Examples
    --------
    >>> predicted = volts_on_one(24.0, 100e3)
    >>> round(predicted.value, 2), round(predicted.standard, 2)
    (10.85, 0.25)
    """
    stray = supply_percent, ohms_percent, drop_stray_volts
    shown, middle, half = _string(volts, ohms_each, count, drop_volts, *stray)
    found = uncertainty.combined(shown, middle, uncertainty.rectangular(half))
    return Predicted(float(found.values[0]), float(found.standard[0]))


def volts_on_one_of_many(
    volts, ohms_each, count=2, *, supply_percent=1.0, ohms_percent=5.0, drop_volts=2.2,
    drop_stray_volts=0.3, boards=10_000,
):  # fmt: skip
    """Return what the meter of `volts_on_one` shows on many boards, each astray at random.

    Parameters
    ----------
    volts, ohms_each, count, supply_percent, ohms_percent, drop_volts, drop_stray_volts
        As for `volts_on_one`.
    boards : int
        How many [-].

    Returns
    -------
    volts : ndarray
        One for each board, the same at each call [V].

    Raises
    ------
    ValueError
        As `volts_on_one`, or if the number of boards is not above zero.

    References
    ----------
    JCGM 101:2008, as `uncertainty.sampled`.

    Examples
    --------
    >>> volts = volts_on_one_of_many(24.0, 100e3)
    >>> round(float(volts.mean()), 2), round(float(volts.std()), 2)
    (10.85, 0.25)
    """
    stray = supply_percent, ohms_percent, drop_stray_volts
    string = _string(volts, ohms_each, count, drop_volts, *stray)
    return uncertainty.sampled(*string, count=boards)[0]


def _string(volts, ohms_each, count, drop_volts, supply_percent, ohms_percent, drop_stray_volts):
    """Return what a meter shows as a function of inputs, the inputs and their limits."""
    ohms = limits.positive(ohms_each, "ohms_each", "ohm")
    count = int(limits.between(count, "count", "resistors", 2, 100))
    drops = limits.not_negative(drop_volts, "drop_volts", "V")
    limits.between(volts, "volts", "V", drops, 1e3, "Below the drops nothing flows.")
    middle = np.array([volts, drops] + [ohms] * count)
    half = np.array([0.01 * supply_percent * volts, drop_stray_volts]
                    + [0.01 * ohms_percent * ohms] * count)  # fmt: skip

    def shown(inputs):
        supply, kept, first, *others = inputs
        laws = {"led": Part(kept), "diode": Part(0.0)}
        held = joints.JOINTS["series_diode"], laws, sum(others), first
        return joints.string_volts(*held, supply)[None]

    return shown, middle, half
