"""Waves summed up in the five numbers that any meter can know of them.

A `Signal` is all that `meters` needs for a reading. For the dimmed mains, its half wave, and the
currents of the indicator circuits. Derived here; the tests compare with adaptive quadrature. Knows
no meter.
"""

from typing import NamedTuple

import numpy as np

from helpers.physics import circuits, limits, mains, phase_cut
from helpers.physics.flows import flow
from helpers.physics.one_cycle import Cycle
from helpers.physics.parts import Part


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
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.

    Returns
    -------
    signal : Signal
        Floats or arrays [V].

    Notes
    -----
    Both half-cycles are alike, so the mean is zero.

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
    return _signal([flow(mains.peak(supply.volts_rms), window, [Part(ohms=1.0)])])


def led_amps(circuit, supply, dimmer=phase_cut.NO_DIMMER, *, ohms, **drops):
    """Return the signal of the current in the LED.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
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

    Examples
    --------
    >>> signal = led_amps("bridge", mains.Supply(230.0, 50.0), ohms=120e3)
    >>> round(signal.mean * 1e3, 3)
    1.697
    """
    cycle = _cycle(circuit, supply, dimmer, ohms, drops)
    return _signal(cycle.flows("led"), cycle.flows("breakdown"))


def branch_amps(circuit, supply, dimmer=phase_cut.NO_DIMMER, *, ohms, **drops):
    """Return the signal of the current in the resistor.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
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

    Examples
    --------
    >>> signal = branch_amps("series_diode", mains.Supply(230.0, 50.0), ohms=120e3)
    >>> round(signal.mean * 1e3, 3), round(signal.rms * 1e3, 3)
    (0.852, 1.341)
    """
    cycle = _cycle(circuit, supply, dimmer, ohms, drops)
    return _signal([cycle.forward], [cycle.backward])


def _cycle(circuit, supply, dimmer, ohms, drops):
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    laws, wiring = circuits.laws(circuit, **drops), circuits.named(circuit).sound
    crest, window = mains.peak(supply.volts_rms), np.radians(dimmer.conduction_degrees)
    return Cycle(wiring, laws, crest, window, supply.hertz, ohms)


def _signal(ups, downs=()):
    """Signal of pulses that go up and of pulses that go down, never two at a time."""
    up, down = (sum(each.mean for each in flows) for flows in (ups, downs))
    level = up - down
    # As much lies above the mean as below; on the far side of zero only one kind takes part.
    beyond = np.where(
        level >= 0.0,
        sum(each.mean_above(np.maximum(level, 0.0)) for each in ups),
        sum(each.mean_above(np.maximum(-level, 0.0)) for each in downs),
    )
    rms = np.sqrt(sum(each.square for each in (*ups, *downs)))
    peak = np.max(np.broadcast_arrays(*(each.peak for each in (*ups, *downs))), axis=0)
    return Signal(*map(limits.as_given, (level, up + down, 2.0 * beyond, rms, peak)))
