"""Waves summed up in the five numbers that any meter can know of them.

A `Signal` is all that `meters` needs for a reading. Closed forms from `pulses`, for the dimmed
mains, its half wave, and the currents of the indicator circuits. Knows no meter.
"""

from typing import NamedTuple

import numpy as np

from helpers.physics import circuits, limits, mains, phase_cut, pulses


class Signal(NamedTuple):
    """What a meter can know of a voltage or current over a whole cycle, in V or A."""

    mean: float
    """Mean with its sign."""
    mean_size: float
    """Mean of the size."""
    mean_deviation: float
    """Mean distance from the mean."""
    rms: float
    """True rms, mean included."""
    peak: float
    """Highest size."""


def dimmed_mains(supply, dimmer=phase_cut.NO_DIMMER):
    """Return the signal of the voltage across a heater behind a dimmer.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.

    Returns
    -------
    signal : Signal
        Floats or arrays [V].

    Notes
    -----
    Both half-cycles are alike, so the mean is zero.

    References
    ----------
    As `phase_cut.wave`.

    Examples
    --------
    >>> round(dimmed_mains(mains.Supply(100.0, 50.0)).mean_size, 3)
    90.032
    """
    wave = phase_cut.wave(supply, dimmer)
    return Signal(
        0.0 * wave.volts_rms, wave.volts_mean, wave.volts_mean, wave.volts_rms, wave.volts_peak
    )


def half_wave(supply, dimmer=phase_cut.NO_DIMMER):
    """Return the signal of the same voltage after an ideal diode.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.

    Returns
    -------
    signal : Signal
        Floats or arrays [V].

    Notes
    -----
    One half-cycle is left: half the mean, rms divided by the square root of two. The current of
    an LED with a series diode has this shape but for the drops.

    References
    ----------
    Derived here; the reading of each meter on it is checked by quadrature.

    Examples
    --------
    >>> round(half_wave(mains.Supply(100.0, 50.0)).rms, 3)
    70.711
    """
    window = np.radians(dimmer.conduction_degrees)
    peak = mains.peak(supply.volts_rms)
    return _one_sided(pulses.pulse(0.0, window), window, peak, halves=1.0)


def led_current(circuit, supply, dimmer=phase_cut.NO_DIMMER, *, ohms, **drops):
    """Return the signal of the current in the LED.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float or array
        Series resistance [ohm].
    **drops : float or array
        led_volts, second_led_volts, diode_volts, breakdown_volts as for `operating_point` [V].

    Returns
    -------
    signal : Signal
        Floats or arrays [A].

    Raises
    ------
    ValueError
        As `operating_point`.

    Notes
    -----
    With 'resistor_only' the breakdown current is part of it and almost cancels the mean.

    References
    ----------
    Derived here; compared with quadrature in the tests.

    Examples
    --------
    >>> signal = led_current("bridge", mains.Supply(230.0, 50.0), ohms=120e3)
    >>> round(signal.mean * 1e3, 3)
    1.697
    """
    forward, backward, window, amps = _pulses_of(circuit, supply, dimmer, ohms, drops)
    if circuit == "resistor_only":
        return _two_sided(forward, backward, window, amps)
    return _one_sided(forward, window, amps, halves=2.0 if circuit == "bridge" else 1.0)


def branch_current(circuit, supply, dimmer=phase_cut.NO_DIMMER, *, ohms, **drops):
    """Return the signal of the current in the resistor.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float or array
        Series resistance [ohm].
    **drops : float or array
        led_volts, second_led_volts, diode_volts, breakdown_volts as for `operating_point` [V].

    Returns
    -------
    signal : Signal
        Floats or arrays [A].

    Raises
    ------
    ValueError
        As `operating_point`.

    Notes
    -----
    The resistor of a bridge is taken on the AC side.

    References
    ----------
    Derived here; compared with quadrature in the tests.

    Examples
    --------
    >>> signal = branch_current("series_diode", mains.Supply(230.0, 50.0), ohms=120e3)
    >>> round(signal.mean * 1e3, 3), round(signal.rms * 1e3, 3)
    (0.852, 1.341)
    """
    forward, backward, window, amps = _pulses_of(circuit, supply, dimmer, ohms, drops)
    if backward is None:
        return _one_sided(forward, window, amps, halves=1.0)
    return _two_sided(forward, backward, window, amps)


def _pulses_of(circuit, supply, dimmer, ohms, drops):
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    volts = circuits.fill_in(circuit, **drops)
    crest = mains.peak(supply.volts_rms)
    window = np.radians(dimmer.conduction_degrees)
    return *circuits.half_cycle_pulses(circuit, crest, window, volts), window, crest / ohms


def _one_sided(pulse, window, scale, halves):
    """Signal of one pulse a half-cycle (or in both, the second turned up), never negative."""
    turn = 2.0 * np.pi
    level = halves * pulses.area(pulse) / turn
    above = halves * pulses.area(pulses.pulse(pulse.threshold + level, window)) / turn
    rms = np.sqrt(halves * pulses.square_area(pulse) / turn)
    peak = pulses.height(pulse.threshold, window)
    return _scaled(scale, level, level, 2.0 * above, rms, peak)


def _two_sided(forward, backward, window, scale):
    """Signal of a pulse up in one half-cycle and another pulse down in the next."""
    turn = 2.0 * np.pi
    up, down = pulses.area(forward) / turn, pulses.area(backward) / turn
    level = up - down
    # As much lies above the mean as below; on the far side of zero only one pulse takes part.
    beyond = np.where(
        level >= 0.0,
        pulses.area(pulses.pulse(forward.threshold + np.maximum(level, 0.0), window)),
        pulses.area(pulses.pulse(backward.threshold + np.maximum(-level, 0.0), window)),
    )
    rms = np.sqrt((pulses.square_area(forward) + pulses.square_area(backward)) / turn)
    peak = np.maximum(
        pulses.height(forward.threshold, window), pulses.height(backward.threshold, window)
    )
    return _scaled(scale, level, up + down, 2.0 * beyond / turn, rms, peak)


def _scaled(scale, *numbers):
    values = [scale * number for number in numbers]
    return Signal(*(value if np.ndim(value) else float(value) for value in values))
