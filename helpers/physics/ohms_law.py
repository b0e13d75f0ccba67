"""Ohm's law on a DC bench supply: current, voltage, resistance, power and the LED dropper.

For steady direct voltages only. Behind the mains the LED conducts for part of the cycle, and
`operating_point` gives the answers. Knows no mains, no dimmer, no notebook.
"""

import numpy as np

from helpers.physics import limits


def current(volts, ohms):
    """Return the current that a voltage drives through a resistance.

    Parameters
    ----------
    volts : float or array
        Voltage across the resistance, either sign [V].
    ohms : float or array
        Resistance [ohm].

    Returns
    -------
    amps : float or ndarray
        Current, with the sign of the voltage [A].

    Raises
    ------
    ValueError
        If the resistance is not above zero, or a value is no number.

    Notes
    -----
    ``amps = volts / ohms``. True for a resistor; an LED or a hot filament does not obey it.

    References
    ----------
    Ohm's law, any textbook of electrical engineering; defined through IEC 60050-131-12-04.

    Examples
    --------
    >>> current(12.0, 4700.0)
    0.002553191489361702
    """
    volts = limits.finite(volts, "volts", "V")
    ohms = limits.positive(ohms, "ohms", "ohm", "A short circuit needs its wiring resistance.")
    return volts / ohms


def voltage(amps, ohms):
    """Return the voltage across a resistance that carries a current.

    Parameters
    ----------
    amps : float or array
        Current, either sign [A].
    ohms : float or array
        Resistance, zero allowed [ohm].

    Returns
    -------
    volts : float or ndarray
        Voltage, with the sign of the current [V].

    Raises
    ------
    ValueError
        If the resistance is negative, or a value is no number.

    Notes
    -----
    ``volts = amps * ohms``.

    References
    ----------
    Ohm's law, any textbook of electrical engineering.

    Examples
    --------
    >>> voltage(0.002, 4700.0)
    9.4
    """
    amps = limits.finite(amps, "amps", "A")
    return amps * limits.not_negative(ohms, "ohms", "ohm", "Leave the sign out.")


def resistance(volts, amps):
    """Return the resistance that lets a current flow at a voltage.

    Parameters
    ----------
    volts : float or array
        Voltage across the part, without sign [V].
    amps : float or array
        Current through it, without sign [A].

    Returns
    -------
    ohms : float or ndarray
        Resistance [ohm].

    Raises
    ------
    ValueError
        If the current is not above zero, or the voltage is negative.

    Notes
    -----
    ``ohms = volts / amps``.

    References
    ----------
    Ohm's law, any textbook of electrical engineering.

    Examples
    --------
    >>> resistance(9.0, 0.002)
    4500.0
    """
    volts = limits.not_negative(volts, "volts", "V", "Give sizes; leave signs out.")
    amps = limits.positive(amps, "amps", "A", "With no current there is no resistance to find.")
    return volts / amps


def power(volts=None, amps=None, ohms=None):
    """Return the power in a part from any two of voltage, current and resistance.

    Parameters
    ----------
    volts : float or array, optional
        Voltage across the part [V].
    amps : float or array, optional
        Current through it [A].
    ohms : float or array, optional
        Its resistance [ohm].

    Returns
    -------
    watts : float or ndarray
        Power turned into heat [W].

    Raises
    ------
    ValueError
        If not exactly two are given, or the resistance is not above zero.

    Notes
    -----
    ``volts * amps``, ``amps**2 * ohms`` or ``volts**2 / ohms``. For steady values, or rms values
    in a resistor. For mean values of a wave that is not steady it is wrong.

    References
    ----------
    Joule's law, any textbook of electrical engineering.

    Examples
    --------
    >>> power(volts=12.0, ohms=480.0)
    0.3
    >>> power(volts=12.0, amps=0.025), power(amps=0.025, ohms=480.0)
    (0.30000000000000004, 0.30000000000000004)
    """
    if (volts is None) + (amps is None) + (ohms is None) != 1:
        raise ValueError("power needs exactly two of volts, amps and ohms; leave out the third.")
    if volts is not None:
        volts = limits.finite(volts, "volts", "V")
    if amps is not None:
        amps = limits.finite(amps, "amps", "A")
    if ohms is None:
        return volts * amps
    ohms = limits.positive(ohms, "ohms", "ohm", "A short circuit needs its wiring resistance.")
    return amps * amps * ohms if volts is None else volts * volts / ohms


def series(*ohms):
    """Return the resistance of parts one after the other.

    Parameters
    ----------
    *ohms : float or array
        Each resistance, zero allowed [ohm].

    Returns
    -------
    ohms : float or ndarray
        The sum [ohm].

    Raises
    ------
    ValueError
        If none is given or one is negative.

    Notes
    -----
    The same current flows through all, so the voltages add.

    References
    ----------
    Kirchhoff's voltage law, any textbook of electrical engineering.

    Examples
    --------
    >>> series(1000.0, 2200.0)
    3200.0
    """
    if not ohms:
        raise ValueError("series was given no resistance; give at least one, in ohm.")
    return sum(limits.not_negative(each, "ohms", "ohm", "Leave the sign out.") for each in ohms)


def parallel(*ohms):
    """Return the resistance of parts side by side.

    Parameters
    ----------
    *ohms : float or array
        Each resistance [ohm].

    Returns
    -------
    ohms : float or ndarray
        Their common resistance, smaller than the smallest [ohm].

    Raises
    ------
    ValueError
        If none is given or one is not above zero.

    Notes
    -----
    The same voltage stands across all, so the currents add: ``1 / sum(1 / each)``.

    References
    ----------
    Kirchhoff's current law, any textbook of electrical engineering.

    Examples
    --------
    >>> parallel(1000.0, 1000.0)
    500.0
    """
    if not ohms:
        raise ValueError("parallel was given no resistance; give at least one, in ohm.")
    slip = "A zero in parallel shorts the others."
    return 1.0 / sum(1.0 / limits.positive(each, "ohms", "ohm", slip) for each in ohms)


def dropper(supply_volts, led_volts, amps):
    """Return the series resistance that gives an LED its current on a DC supply.

    Parameters
    ----------
    supply_volts : float or array
        Steady supply voltage [V].
    led_volts : float or array
        The LED's own drop at that current [V].
    amps : float or array
        Wanted current [A].

    Returns
    -------
    ohms : float or ndarray
        Series resistance [ohm].

    Raises
    ------
    ValueError
        If the supply does not exceed the LED's drop, or the current is not above zero.

    Notes
    -----
    ``ohms = (supply_volts - led_volts) / amps``. On the mains the LED conducts for half of the
    time or less and this sum does not give its mean current.

    References
    ----------
    Kirchhoff's voltage law; the drop taken as constant is common practice.

    Examples
    --------
    >>> dropper(12.0, 2.0, 0.010)
    1000.0
    """
    supply_volts = limits.positive(supply_volts, "supply_volts", "V", "Is the supply reversed?")
    led_volts = limits.not_negative(led_volts, "led_volts", "V", "Leave the sign out.")
    amps = limits.positive(amps, "amps", "A", "For no current, fit no LED.")
    spare_volts = supply_volts - led_volts
    if np.any(spare_volts <= 0.0):
        raise ValueError(
            f"supply_volts was read as {supply_volts} V and led_volts as {led_volts} V; the supply "
            "must be above the LED's drop, or the LED stays dark whatever the resistor."
        )
    return spare_volts / amps


def led_current(supply_volts, led_volts, ohms):
    """Return the current of an LED behind a series resistor on a DC supply.

    Parameters
    ----------
    supply_volts : float or array
        Steady supply voltage, connected the right way round [V].
    led_volts : float or array
        The LED's own drop [V].
    ohms : float or array
        Series resistance [ohm].

    Returns
    -------
    amps : float or ndarray
        Current; zero where the supply does not reach the LED's drop [A].

    Raises
    ------
    ValueError
        If a voltage is negative or the resistance not above zero.

    Notes
    -----
    ``amps = (supply_volts - led_volts) / ohms``. The drop falls a little with the current, so near
    the threshold the true current is small but not zero.

    References
    ----------
    Kirchhoff's voltage law; the drop taken as constant is common practice.

    Examples
    --------
    >>> led_current(12.0, 2.0, 1000.0)
    0.01
    >>> led_current(1.5, 2.0, 1000.0)
    0.0
    """
    supply_volts = limits.not_negative(supply_volts, "supply_volts", "V", "Is it reversed?")
    led_volts = limits.not_negative(led_volts, "led_volts", "V", "Leave the sign out.")
    ohms = limits.positive(ohms, "ohms", "ohm", "An LED without a resistor is destroyed.")
    spare_volts = supply_volts - led_volts
    return limits.as_given(np.maximum(spare_volts, 0.0) / ohms)
