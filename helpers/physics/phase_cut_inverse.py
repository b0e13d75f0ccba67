"""Which dimmer setting gives a wanted result, and the three percentages a setting has.

A knob at half, half the volts and half the heat are three settings. The inverse of `phase_cut`;
knows nothing else.
"""

from typing import NamedTuple

import numpy as np

from helpers.physics import limits, mains, phase_cut, pulses


class Percentages(NamedTuple):
    """The three ways to say how far a dimmer is turned up."""

    conduction_percent: float
    """Share of each half-cycle that is let through [%]."""
    volts_percent: float
    """Rms voltage against the supply [%]."""
    power_percent: float
    """Heat in a plain resistance against full mains [%]."""


def percentages(dimmer):
    """Return the conduction, voltage and power percentages of a setting.

    Parameters
    ----------
    dimmer : phase_cut.Dimmer
        Edge and angle.

    Returns
    -------
    percentages : Percentages
        Floats or arrays [%].

    Notes
    -----
    Conduction angle over 180 degrees; square root of the power share; power share.

    Examples
    --------
    >>> [round(each, 1) for each in percentages(phase_cut.Dimmer("leading", 120.0))]
    [33.3, 44.2, 19.6]
    """
    wave = phase_cut.wave(mains.Supply(1.0, 50.0), dimmer)
    return Percentages(
        100.0 * wave.conduction_fraction, 100.0 * wave.volts_rms, 100.0 * wave.power_fraction
    )


def for_conduction(conduction_fraction, edge="leading"):
    """Return the setting that lets a share of each half-cycle through.

    Parameters
    ----------
    conduction_fraction : float or array
        Wanted share of each half-cycle, 0 to 1 [-].
    edge : str
        'leading' or 'trailing' [-].

    Returns
    -------
    dimmer : phase_cut.Dimmer
        The setting.

    Raises
    ------
    ValueError
        If the share is out of range or the edge has no angle.

    Notes
    -----
    ``180 * share`` degrees of each half-cycle.

    References
    ----------
    Definition of the conduction angle.

    Examples
    --------
    >>> for_conduction(0.25).angle_degrees
    135.0
    """
    share = limits.share(conduction_fraction, "conduction_fraction")
    return _dimmer(180.0 * share, edge)


def for_power(power_fraction, edge="leading"):
    """Return the setting that leaves a share of the full heat.

    Parameters
    ----------
    power_fraction : float or array
        Wanted share of the power at full mains, 0 to 1 [-].
    edge : str
        'leading' or 'trailing' [-].

    Returns
    -------
    dimmer : phase_cut.Dimmer
        The setting.

    Raises
    ------
    ValueError
        If the share is out of range or the edge has no angle.

    Notes
    -----
    Solves ``(g - sin(g) cos(g)) / pi = share`` for the conduction angle g by Newton's method, from
    the side where every step stays on course.

    References
    ----------
    Derived here; checked by putting the answer back into `phase_cut.wave`.

    Examples
    --------
    >>> round(for_power(0.5).angle_degrees, 6)
    90.0
    """
    share = np.asarray(limits.share(power_fraction, "power_fraction"))
    # Up to a half directly; above, the blocked part is found and the result mirrored.
    small = np.minimum(share, 1.0 - share)
    target = 2.0 * np.pi * small
    double_angle = np.cbrt(6.0 * target)
    for _ in range(7):
        surplus = pulses.excess(double_angle, np.sin(double_angle)) - target
        slope = 2.0 * np.sin(0.5 * double_angle) ** 2
        double_angle = double_angle - surplus / np.where(slope > 0.0, slope, 1.0)
    part = np.degrees(0.5 * double_angle)
    return _dimmer(np.where(share > 0.5, 180.0 - part, part), edge)


def for_rms(wanted_volts_rms, supply, edge="leading"):
    """Return the setting that leaves a wanted true rms voltage.

    Parameters
    ----------
    wanted_volts_rms : float or array
        Wanted rms voltage, from zero to that of the supply [V].
    supply : mains.Supply
    edge : str
        'leading' or 'trailing' [-].

    Returns
    -------
    dimmer : phase_cut.Dimmer
        The setting.

    Raises
    ------
    ValueError
        If the voltage is negative or above the supply.

    Notes
    -----
    `for_power` of the squared ratio of the voltages.

    Examples
    --------
    >>> round(for_rms(50.0, mains.Supply(100.0, 50.0)).angle_degrees, 2)
    113.83
    """
    ratio = _of_full(wanted_volts_rms, "wanted_volts_rms", supply.volts_rms)
    return for_power(ratio * ratio, edge)


def for_mean(wanted_volts_mean, supply, edge="leading"):
    """Return the setting that leaves a wanted rectified mean voltage.

    Parameters
    ----------
    wanted_volts_mean : float or array
        Wanted mean of the size of the voltage, from zero to that of the supply [V].
    supply : mains.Supply
    edge : str
        'leading' or 'trailing' [-].

    Returns
    -------
    dimmer : phase_cut.Dimmer
        The setting.

    Raises
    ------
    ValueError
        If the voltage is negative or above the mean of the supply.

    Notes
    -----
    ``(1 - cos(g)) / 2 = sin(g / 2)**2`` is the share of the supply's mean. An average-responding
    meter, and the light of an indicator, follow this mean.

    Examples
    --------
    >>> supply = mains.Supply(100.0, 50.0)
    >>> round(for_mean(0.25 * mains.mean(100.0), supply).angle_degrees, 6)
    120.0
    """
    ratio = _of_full(
        wanted_volts_mean, "wanted_volts_mean", mains.mean(supply.volts_rms),
        " Was an rms value meant?",
    )  # fmt: skip
    return _dimmer(2.0 * np.degrees(np.arcsin(np.sqrt(ratio))), edge)


def mean_fraction(power_fraction):
    """Return the share of the mean that is left where a share of the heat is.

    Parameters
    ----------
    power_fraction : float or array
        Share of the power at full mains, 0 to 1 [-].

    Returns
    -------
    mean_fraction : float or ndarray
        Share of the rectified mean, and so of an indicator's light [-].

    Raises
    ------
    ValueError
        If the share is out of range.

    Notes
    -----
    By way of the angle, ``(1 + cos(angle)) / 2``; the same for both edges and every supply.

    References
    ----------
    As `for_power`; checked by putting the answer back into `phase_cut.wave`.

    Examples
    --------
    >>> round(mean_fraction(0.5), 6), round(mean_fraction(0.1), 3)
    (0.5, 0.156)
    """
    angle = for_power(power_fraction).angle_degrees
    return limits.as_given((1.0 + np.cos(np.radians(angle))) / 2.0)


def _of_full(wanted, name, full_volts, slip=""):
    wanted = limits.not_negative(wanted, name, "V", "Leave the sign out.")
    slip = f"A dimmer cannot give more than it gets.{slip}"
    return limits.between(wanted / full_volts, f"{name} over the supply's", "", 0.0, 1.0, slip)


def _dimmer(conduction_degrees, edge):
    limits.one_of(edge, "edge", ("leading", "trailing"))
    conduction = np.clip(conduction_degrees, 0.0, 180.0)
    angle = 180.0 - conduction if edge == "leading" else conduction
    return phase_cut.Dimmer(edge, angle if np.ndim(angle) else float(angle))
