"""The dimmer is off, yet something flows: the capacitor across its open switch.

Volts across the heater with the element sound and with it broken, and whether an LED's threshold
is passed. Knows the sine only; the capacitor and its resistor stand for all of the dimmer. A series
diode behind a broken element is in `clamped`.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import circuits, limits

#: What bridges the switch of a usual dimmer: common practice, no source [F], [ohm].
USUAL_SNUBBER = (100e-9, 100.0)


@dataclass(frozen=True)
class OffState:
    """What is left at the heater's terminals with the dimmer off."""

    volts_rms: float
    """Rms voltage across heater and indicator [V]."""
    volts_peak: float
    """Its crest [V]."""
    leak_amps_rms: float
    """Rms current through that capacitor [A]."""


def off_state(supply, farads, snubber_ohms, heater_ohms=np.inf, dropper_ohms=np.inf):
    """Return the voltage that a dimmer's capacitor leaves on its load.

    Parameters
    ----------
    supply : mains.Supply
    farads : float or array
        Capacitor across the switch: that of a snubber or of radio suppression [F].
    snubber_ohms : float or array
        Resistance in series with it, zero allowed [ohm].
    heater_ohms : float or array
        The heater; infinite for a broken element [ohm].
    dropper_ohms : float or array
        Resistor of a full-wave indicator beside it; infinite to leave it out [ohm].

    Returns
    -------
    state : OffState
        Floats or arrays.

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    Phasor sum: ``V load / abs(load + snubber + 1 / (j w C))``, load being heater and dropper side
    by side. The LED's drop is left out, which overstates the voltage a little when the element is
    broken. With a broken element and a series diode the capacitor charges, and far higher voltages
    stand at the terminals: see `clamped`.

    The terminals are live in either case: dark, dim or lit, off does not mean safe.

    References
    ----------
    Derived here; the sum of squares of the two voltages is checked against the supply.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> state = off_state(mains.Supply(120.0, 60.0), 100e-9, 100.0, heater_ohms=160.0)
    >>> round(state.volts_rms, 2)
    0.72
    """
    farads = limits.positive(farads, "farads", "F", "Nanofarads? Multiply by 1e-9.")
    snubber = limits.not_negative(snubber_ohms, "snubber_ohms", "ohm")
    shunt = conductance(heater_ohms, "heater_ohms") + conductance(dropper_ohms, "dropper_ohms")
    reactance = 1.0 / (2.0 * np.pi * supply.hertz * farads)
    # Written with the load as a conductance, so that no load at all needs no special case.
    ratio = np.abs(1.0 + (snubber - 1j * reactance) * shunt)
    volts = supply.volts_rms / ratio
    return OffState(*map(limits.as_given, (volts, np.sqrt(2.0) * volts, volts * shunt)))


def reaches_led(circuit, state, **drops):
    """Return whether the leaked voltage passes the LED's threshold.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    state : OffState
        From `off_state`.
    **drops : float or array
        led_volts and the others, as `circuits.fill_in` explains them [V].

    Returns
    -------
    reaches : bool or ndarray
        True where the crest exceeds the drops of the LED's half-cycle [-].

    Raises
    ------
    ValueError
        As `circuits.fill_in`.

    Notes
    -----
    Constant drops. A real LED glows faintly some tenths of a volt earlier, so near the border 'no'
    is not a promise of dark.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> state = off_state(mains.Supply(230.0, 50.0), 100e-9, 100.0, heater_ohms=588.0)
    >>> reaches_led("series_diode", state), reaches_led("bridge", state, led_volts=3.2)
    (True, True)
    """
    laws = circuits.laws(circuit, **drops)
    way = circuits.named(circuit).sound.forward
    return limits.as_given(state.volts_peak > sum(laws[name].volts for name in way))


def conductance(ohms, name):
    """Return one over a resistance, zero for an infinite one; refuse a short.

    Parameters
    ----------
    ohms : float or array
        Resistance, infinite for a part that is not there [ohm].
    name : str
        The word for the message.

    Returns
    -------
    siemens : float or ndarray
        Its conductance [1/ohm].

    Raises
    ------
    ValueError
        If the resistance is not above zero.

    Examples
    --------
    >>> float(conductance(np.inf, "heater_ohms"))
    0.0
    """
    return 1.0 / np.asarray(limits.present(ohms, name, "ohm"))
