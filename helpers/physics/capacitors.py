"""Capacitors on the mains: classes, what they may bridge, how long they keep a charge, age.

Discharge through a bleeder and the pins of a plug. Look-up where a standard speaks. Knows no
dropper: that is in `capacitor_dropper`.
"""

from dataclasses import dataclass
from math import inf
from typing import NamedTuple

import numpy as np

from helpers.physics import limits, mains

#: What may be left on the pins of a plug, and when it is measured; below this capacitance it need
#: not be. IEC 60335-1 clause 22.5 (confirmed). Texts before the amendments of the fifth edition
#: left out 0.1 uF itself as well; the stricter reading is taken.
PIN_VOLTS, PIN_SECONDS, PIN_EXEMPT_FARADS = 34.0, 1.0, 0.1e-6
#: The same for audio, video and information equipment: IEC 62368-1 clause 5.5.2.2, limits of ES1
#: from 300 nF up (2 s confirmed, 60 V confirmed; page from memory).
ICT_PIN_VOLTS, ICT_PIN_SECONDS = 60.0, 2.0


class SafetyClass(NamedTuple):
    """What IEC 60384-14 says of one class of capacitors for connection to the mains."""

    impulse_volts: float
    """Peak of the impulse test up to 1 uF, zero where there is none [V]."""
    mains_volts_rms: float
    """Highest rated voltage [V]."""
    to_touchable: str
    """Insulation that it may bridge towards what a hand or the earth may touch."""


#: Values confirmed in public texts, clauses from memory. X capacitors stand only where their short
#: could shock nobody; of Y capacitors one of Y1, or two of Y2 in series, bridge reinforced
#: insulation.
CLASSES = {
    "X1": SafetyClass(4000.0, 1000.0, "none"),
    "X2": SafetyClass(2500.0, 1000.0, "none"),
    "Y1": SafetyClass(8000.0, 500.0, "reinforced"),
    "Y2": SafetyClass(5000.0, 300.0, "basic"),
    "Y4": SafetyClass(2500.0, 150.0, "basic"),
}
#: From where to where a capacitor may be wired, and which insulation it bridges there.
BRIDGES = {
    "line to neutral": "none",
    "in series with an insulated load": "none",
    "line to protective earth": "basic",
    "line to what a hand may touch": "reinforced",
}
_STRONGER = ("none", "basic", "reinforced")


def may_bridge(safety_class, place, volts_rms):
    """Return whether one capacitor of a class may stand in a place.

    Parameters
    ----------
    safety_class : str
        A key of `CLASSES` [-].
    place : str
        A key of `BRIDGES` [-].
    volts_rms : float
        Highest voltage of the supply [V].

    Returns
    -------
    allowed : bool
        False where its short could shock somebody, or the mains is above its rating [-].

    Raises
    ------
    ValueError
        If the class or the place is unknown, or the voltage impossible.

    Notes
    -----
    By class alone. A part must also be certified or conforming for its use and rated for the mains;
    product standards limit the capacitance to earth as well. For whoever decides on a build, a
    competent person under local rules.

    References
    ----------
    IEC 60384-14, definitions of the classes and Tables 1 and 2 (values confirmed, pages from
    memory).

    Examples
    --------
    >>> may_bridge("X2", "line to neutral", 253.0)
    True
    >>> may_bridge("X2", "line to protective earth", 253.0)
    False
    """
    limits.one_of(safety_class, "safety_class", CLASSES)
    limits.one_of(place, "place", BRIDGES)
    volts = limits.positive(volts_rms, "volts_rms", "V")
    rated = CLASSES[safety_class]
    strong = _STRONGER.index(rated.to_touchable) >= _STRONGER.index(BRIDGES[place])
    return bool(strong and np.all(np.asarray(volts) <= rated.mains_volts_rms))


def impulse_volts(safety_class, farads):
    """Return the peak of the impulse that a class is tested with.

    Parameters
    ----------
    safety_class : str
        A key of `CLASSES` [-].
    farads : float or array
        Rated capacitance [F].

    Returns
    -------
    volts : float or ndarray
        Peak of the impulse [V].

    Raises
    ------
    ValueError
        If the class is unknown or the capacitance not above zero.

    Notes
    -----
    Above 1 uF divided by ``sqrt(farads / 1 uF)`` for X1, X2 and Y2: the energy stays the same.

    References
    ----------
    IEC 60384-14, impulse voltage test (values confirmed, page from memory).

    Examples
    --------
    >>> impulse_volts("X2", 330e-9), impulse_volts("X1", 4e-6)
    (2500.0, 2000.0)
    """
    limits.one_of(safety_class, "safety_class", CLASSES)
    farads = limits.positive(farads, "farads", "F", "Nanofarads: multiply by 1e-9.")
    root = np.sqrt(np.maximum(np.asarray(farads) / 1e-6, 1.0))
    scale = root if safety_class in ("X1", "X2", "Y2") else np.ones_like(root)
    return limits.as_given(CLASSES[safety_class].impulse_volts / scale)


def time_constant(farads, ohms):
    """Return the time in which a capacitor falls to 37 per cent of its voltage.

    Parameters
    ----------
    farads : float or array
        Capacitance [F].
    ohms : float or array
        Resistor across it; infinite for none [ohm].

    Returns
    -------
    seconds : float or ndarray
        Time constant [s].

    Raises
    ------
    ValueError
        If a value is not above zero.

    Notes
    -----
    ``ohms * farads``. After five of them less than one per cent is left.

    References
    ----------
    Any textbook of electrical engineering.

    Examples
    --------
    >>> round(time_constant(330e-9, 1e6), 3)
    0.33
    """
    farads = limits.positive(farads, "farads", "F", "Nanofarads: multiply by 1e-9.")
    return limits.as_given(np.asarray(limits.present(ohms, "ohms", "ohm")) * farads)


def bleeder_watts(volts_rms, ohms):
    """Return the heat in a bleeder across a capacitor that takes the whole mains.

    Parameters
    ----------
    volts_rms : float or array
        Voltage of the mains, at its highest for the worst case [V].
    ohms : float or array
        The bleeder; infinite for none [ohm].

    Returns
    -------
    watts : float or ndarray
        Power [W].

    Raises
    ------
    ValueError
        If a value is not above zero.

    Notes
    -----
    ``volts_rms**2 / ohms``: seldom much, so that voltage limits a bleeder before heat does.
    A dropper's takes a little less, see `capacitor_dropper.steady`.

    References
    ----------
    Joule's law.

    Examples
    --------
    >>> round(bleeder_watts(253.0, 1e6), 3)
    0.064
    """
    volts = limits.positive(volts_rms, "volts_rms", "V")
    return limits.as_given(volts * volts / np.asarray(limits.present(ohms, "ohms", "ohm")))


def volts_left(seconds, farads, ohms, start_volts):
    """Return the voltage left on a capacitor that discharges through a resistor.

    Parameters
    ----------
    seconds : float or array
        Time since it was cut off [s].
    farads : float or array
        Capacitance, at its highest for the worst case [F].
    ohms : float or array
        Everything across it; infinite for nothing [ohm].
    start_volts : float or array
        Voltage at the beginning, the crest for the worst case [V].

    Returns
    -------
    volts : float or ndarray
        Voltage left [V].

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    ``start_volts * exp(-seconds / (ohms * farads))``.

    References
    ----------
    Any textbook of electrical engineering.

    Examples
    --------
    >>> round(volts_left(1.0, 330e-9, 1e6, 358.0), 1)
    17.3
    """
    tau = time_constant(farads, ohms)
    late = limits.not_negative(seconds, "seconds", "s")
    return limits.as_given(limits.finite(start_volts, "start_volts", "V") * np.exp(-late / tau))


def seconds_to(volts, farads, ohms, start_volts):
    """Return how long a capacitor takes to fall to a voltage.

    Parameters
    ----------
    volts : float or array
        Voltage to be reached, above zero [V].
    farads, ohms, start_volts : float or array
        As for `volts_left` [F], [ohm], [V].

    Returns
    -------
    seconds : float or ndarray
        Time; zero where it starts below [s].

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    ``ohms * farads * log(start_volts / volts)``; infinite without any resistor.

    Examples
    --------
    >>> round(seconds_to(34.0, 330e-9, 1e6, 358.0), 2)
    0.78
    """
    share = limits.positive(start_volts, "start_volts", "V") / limits.positive(volts, "volts", "V")
    above = np.asarray(share) > 1.0
    time = np.where(above, time_constant(farads, ohms), 1.0) * np.log(np.maximum(share, 1.0))
    return limits.as_given(np.where(above, time, 0.0))


def largest_bleeder(farads, start_volts, volts=PIN_VOLTS, seconds=PIN_SECONDS):
    """Return the most ohms that discharge a capacitor in time.

    Parameters
    ----------
    farads : float or array
        Capacitance, at its highest [F].
    start_volts : float or array
        Voltage at the beginning: the crest of the highest mains [V].
    volts, seconds : float or array
        What may be left, and when [V], [s].

    Returns
    -------
    ohms : float or ndarray
        Largest resistance; infinite where it starts below [ohm].

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    ``seconds / (farads * log(start_volts / volts))``. The resistor's own tolerance and its fall
    with age come off.

    References
    ----------
    IEC 60335-1 clause 22.5 for 34 V and 1 s (confirmed).

    Examples
    --------
    >>> round(largest_bleeder(363e-9, 357.8) / 1e6, 2)
    1.17
    """
    unit = seconds_to(volts, farads, 1.0, start_volts)
    late = limits.positive(seconds, "seconds", "s")
    return limits.as_given(np.where(np.asarray(unit) > 0.0, late / np.where(unit, unit, 1.0), inf))


@dataclass(frozen=True)
class Pins:
    """What the pins of a plug carry after it is pulled at the worst instant."""

    volts_left: float
    """After one second [V]."""
    seconds: float
    """Until 34 V are left [s]."""
    joules: float
    """Energy in the capacitor at the instant of pulling [J]."""
    coulombs: float
    """Charge at that instant [C]."""
    exempt: bool
    """Whether the standard leaves so small a capacitor out; it still stings [-]."""
    holds: bool
    """Whether at most 34 V are left after one second, or the capacitor is exempt [-]."""


def pins(supply, farads, ohms, tolerance_percent=10.0, ohms_tolerance_percent=5.0):
    """Return what is left on the pins of a plug.

    Parameters
    ----------
    supply : mains.Supply
        At its nominal voltage; its highest is taken.
    farads : float
        Rated capacitance that the pins see [F].
    ohms : float
        Bleeder, or all of its resistors in series; infinite for a broken one [ohm].
    tolerance_percent, ohms_tolerance_percent : float
        Tolerance of each [%].

    Returns
    -------
    pins : Pins
        At the highest mains, with both parts at their worst end.

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    Pulled at the crest. A broken bleeder leaves the crest for hours.

    References
    ----------
    IEC 60335-1 clause 22.5 (confirmed).

    Examples
    --------
    >>> left = pins(mains.Supply(230.0, 50.0), 330e-9, 1e6)
    >>> f"{left.volts_left:.1f} V after a second, {left.seconds:.2f} s to 34 V"
    '26.0 V after a second, 0.90 s to 34 V'
    """
    crest = mains.peak(mains.highest(supply).volts_rms)
    rated = limits.positive(farads, "farads", "F", "Nanofarads: multiply by 1e-9.")
    share, other = (
        1.0 + limits.percent(percent, "tolerance") / 100.0
        for percent in (tolerance_percent, ohms_tolerance_percent)
    )
    most, ohms = rated * share, limits.present(ohms, "ohms", "ohm") * other
    left = volts_left(PIN_SECONDS, most, ohms, crest)
    exempt = bool(rated < PIN_EXEMPT_FARADS)
    return Pins(
        left, seconds_to(PIN_VOLTS, most, ohms, crest), 0.5 * most * crest**2, most * crest,
        exempt, bool(exempt or left <= PIN_VOLTS),
    )  # fmt: skip


def aged(farads, loss_percent=20.0):
    """Return the capacitance that is left.

    Parameters
    ----------
    farads : float or array
        Rated capacitance [F].
    loss_percent : float or array
        Loss, 0 to 100 [%].

    Returns
    -------
    farads : float or ndarray
        What is left [F].

    Raises
    ------
    ValueError
        If a value is out of range.

    Notes
    -----
    ``farads * (1 - loss / 100)``. A metallised film heals its small breakdowns by burning its own
    metal away: each surge costs a little capacitance, and the light fades with it.

    References
    ----------
    A loss of 20 % as the end of life: Common practice, no source.

    Examples
    --------
    >>> round(aged(330e-9) * 1e9)
    264
    """
    loss = limits.percent(loss_percent, "loss_percent", 99.9)
    return limits.positive(farads, "farads", "F") * (1.0 - loss / 100.0)
