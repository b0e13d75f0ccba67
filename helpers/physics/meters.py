"""What a meter shows on a wave that is not a sine.

A wave is summed up by five numbers (`Signal`); a reading needs no more. Cheap meters measure the
mean and multiply by the form factor of a sine. Knows no brand and no display.
"""

from math import pi, sqrt
from typing import NamedTuple

import numpy as np

from helpers.physics import circuits, limits, mains, phase_cut, pulses

SINE_FORM_FACTOR = pi / (2.0 * sqrt(2.0))
RESPONSES = ("mean", "average", "true_rms")
COUPLINGS = ("ac", "dc")


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
    Both half cycles are alike, so the mean is zero.

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
    One half cycle is left: half the mean, rms divided by the square root of two. The current of
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


def reading(signal, response="true_rms", coupling="ac"):
    """Return what a meter shows.

    Parameters
    ----------
    signal : Signal
        What it is connected to [V] or [A].
    response : str
        'mean' (a DC range), 'average' (a cheap AC range: mean of the size, scaled for a sine) or
        'true_rms' [-].
    coupling : str
        'ac' takes the mean off first, 'dc' leaves it; a 'mean' reading needs 'dc' [-].

    Returns
    -------
    reading : float or ndarray
        Shown value, in the unit of the signal [V] or [A].

    Raises
    ------
    ValueError
        If a word is unknown, or a mean is asked for behind AC coupling.

    Notes
    -----
    Average: mean size (or mean deviation) times pi / (2 sqrt(2)) = 1.1107, right for a sine only.
    True rms behind AC coupling: ``sqrt(rms**2 - mean**2)``.

    References
    ----------
    True-rms meter user manuals print these factors for common waves; the formulas follow from the
    definitions.

    Examples
    --------
    >>> dimmed = dimmed_mains(mains.Supply(100.0, 50.0), phase_cut.Dimmer("leading", 120.0))
    >>> round(reading(dimmed), 1), round(reading(dimmed, "average"), 1)
    (44.2, 25.0)
    """
    limits.one_of(response, "response", RESPONSES)
    limits.one_of(coupling, "coupling", COUPLINGS)
    if response == "mean":
        if coupling == "ac":
            raise ValueError(
                "coupling was read as 'ac' with response 'mean'; AC coupling takes the mean off, "
                "so the meter shows zero. Use coupling 'dc'."
            )
        return signal.mean
    if response == "average":
        size = signal.mean_deviation if coupling == "ac" else signal.mean_size
        return SINE_FORM_FACTOR * size
    if coupling == "dc":
        return signal.rms
    alternating = np.sqrt(np.maximum(signal.rms * signal.rms - signal.mean * signal.mean, 0.0))
    return alternating if np.ndim(alternating) else float(alternating)


def error_percent(signal, response="average", coupling="ac"):
    """Return how far a reading is off the true rms value.

    Parameters
    ----------
    signal : Signal
        What the meter is connected to [V] or [A].
    response, coupling : str
        As for `reading` [-].

    Returns
    -------
    percent : float or ndarray
        Negative where the meter reads low; not a number where there is no signal [%].

    Raises
    ------
    ValueError
        As `reading`.

    Notes
    -----
    ``100 (reading / rms - 1)``. On a dimmed mains the average-responding reading is
    ``(1 + cos(angle)) / 2`` of the supply, which is always too low.

    References
    ----------
    Definitions.

    Examples
    --------
    >>> dimmed = dimmed_mains(mains.Supply(100.0, 50.0), phase_cut.Dimmer("leading", 120.0))
    >>> round(error_percent(dimmed), 1)
    -43.5
    """
    shown, true = np.asarray(reading(signal, response, coupling)), np.asarray(signal.rms)
    percent = 100.0 * (shown / np.where(true > 0.0, true, np.nan) - 1.0)
    return percent if percent.ndim else float(percent)


def within_crest_limit(signal, crest_limit=3.0):
    """Return whether a true-rms meter can follow the peaks of a signal.

    Parameters
    ----------
    signal : Signal
        What it is connected to [V] or [A].
    crest_limit : float or array
        Highest peak over rms that its sheet allows at full scale [-].

    Returns
    -------
    within : bool or ndarray
        False where the reading is not to be trusted, and where there is no signal [-].

    Raises
    ------
    ValueError
        If the limit is below that of a sine.

    Notes
    -----
    Far below full scale many meters allow more: the limit times full scale over reading.

    References
    ----------
    A limit of 3 at full scale is common practice, no source.

    Examples
    --------
    >>> low = phase_cut.Dimmer("leading", 150.0)
    >>> within_crest_limit(dimmed_mains(mains.Supply(100.0, 50.0), low))
    False
    """
    crest_limit = limits.between(
        crest_limit, "crest_limit", "", 1.4142, 100.0, "A sine already has 1.414."
    )
    within = (np.asarray(signal.rms) > 0.0) & (signal.peak <= crest_limit * signal.rms)
    return within if within.ndim else bool(within)


def loaded_volts(open_volts, source_ohms, meter_ohms=10e6):
    """Return the voltage that is left when a meter loads what it measures.

    Parameters
    ----------
    open_volts : float or array
        Voltage without the meter [V].
    source_ohms : float or array
        Resistance seen from the meter's leads [ohm].
    meter_ohms : float or array
        Input resistance of the meter [ohm].

    Returns
    -------
    volts : float or ndarray
        Voltage with the meter [V].

    Raises
    ------
    ValueError
        If a resistance is impossible.

    Notes
    -----
    ``open_volts * meter / (meter + source)``. The capacitance of the leads is left out.

    References
    ----------
    Voltage divider; 10 megohm input is common practice, no source.

    Examples
    --------
    >>> loaded_volts(100.0, 10e6)
    50.0
    """
    meter = limits.positive(meter_ohms, "meter_ohms", "ohm")
    source = limits.not_negative(source_ohms, "source_ohms", "ohm")
    return limits.finite(open_volts, "open_volts", "V") * meter / (meter + source)


def _pulses_of(circuit, supply, dimmer, ohms, drops):
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    volts = circuits.fill_in(circuit, **drops)
    forward_drop, backward_drop = circuits.drops(circuit, *volts)
    crest = mains.peak(supply.volts_rms)
    window = np.radians(dimmer.conduction_degrees)
    forward = pulses.pulse(forward_drop / crest, window)
    backward = None if backward_drop is None else pulses.pulse(backward_drop / crest, window)
    return forward, backward, window, crest / ohms


def _one_sided(pulse, window, scale, halves):
    """Signal of one pulse a half cycle (or in both, the second turned up), never negative."""
    turn = 2.0 * np.pi
    level = halves * pulses.area(pulse) / turn
    above = halves * pulses.area(pulses.pulse(pulse.threshold + level, window)) / turn
    rms = np.sqrt(halves * pulses.square_area(pulse) / turn)
    peak = pulses.height(pulse.threshold, window)
    return _scaled(scale, level, level, 2.0 * above, rms, peak)


def _two_sided(forward, backward, window, scale):
    """Signal of a pulse up in one half cycle and another pulse down in the next."""
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
