"""A capacitor dropper in the moment of switching on, at any instant and with any charge left.

What the first pulse does to the surge resistor, the bridge and the LED. Exact exponentials; the
steady cycle is in `capacitor_dropper`. Knows no rating: what a part stands is for its sheet.
"""

from dataclasses import dataclass
from math import inf, pi

import numpy as np

from helpers.physics import decays, limits, mains
from helpers.physics.capacitor_dropper import circuit_of, pointwise


@dataclass(frozen=True)
class Inrush:
    """What happens after contact is made; every field is a float or an array."""

    amps_peak: float
    """Highest current in the half-cycle after switching on [A]."""
    coulombs: float
    """Charge of the first pulse [C]."""
    ampere_squared_seconds: float
    """Integral of its squared current, what a fuse or a bond wire feels [A2 s]."""
    surge_joules: float
    """Energy of the first pulse in the surge resistor [J]."""
    seconds: float
    """From making contact until the current first returns to zero [s]."""


def inrush(parts, supply, switch_on_degrees=90.0, charge_volts=0.0):
    """Return the first pulse of a capacitor dropper on a whole sine.

    Parameters
    ----------
    parts : capacitor_dropper.Parts
        The dropper, without smoothing and without clamp: the worst case for the surge resistor.
    supply : mains.Supply
        Volts and frequency.
    switch_on_degrees : float or array
        Angle from the rising zero crossing at which contact is made, 0 to 360 [deg].
    charge_volts : float or array
        Voltage left on the capacitor, with its sign: opposite to the mains is the worst [V].

    Returns
    -------
    inrush : Inrush
        Floats, or arrays of the broadcast shape of all arguments; all zero but the time, which is
        infinite, where no current flows within a cycle.

    Raises
    ------
    ValueError
        If a value is impossible, or the parts hold a smoothing capacitor or a clamp.

    Notes
    -----
    At the crest and discharged the peak is ``(Vp - drops) / ohms``, and the surge resistor takes
    ``C (Vp - drops)**2 / 2`` whatever its ohms are. With the charge of the other half-cycle left,
    the current doubles and the energy is four times as great. The wiring's own ohms and henries,
    left out here, make a bare short a little milder.

    References
    ----------
    Kirchhoff's laws with constant drops, solved exactly; derived here, compared with adaptive
    integration in the tests.

    Examples
    --------
    >>> from helpers.physics import capacitor_dropper, mains
    >>> supply = mains.Supply(230.0, 50.0)
    >>> parts = capacitor_dropper.Parts(330e-9, 120.0)
    >>> first = inrush(parts, supply)
    >>> f"{first.amps_peak:.2f} A, {first.surge_joules * 1e3:.1f} mJ"
    '2.68 A, 17.1 mJ'
    >>> again = inrush(parts, supply, charge_volts=-(mains.peak(230.0) - 3.4))
    >>> f"{again.amps_peak:.2f} A, {again.surge_joules * 1e3:.1f} mJ"
    '5.36 A, 68.4 mJ'
    """
    if np.any(np.asarray(parts.smoothing_farads) > 0.0) or np.any(
        np.asarray(parts.clamp_volts) < inf
    ):
        raise ValueError(
            "parts hold a smoothing capacitor or a clamp; give Parts without them, as the first "
            "pulse is worked out for the bare bridge and LED."
        )
    degrees = limits.between(
        switch_on_degrees, "switch_on_degrees", "deg", 0.0, 360.0, "Was it in radians?"
    )
    charge = limits.finite(charge_volts, "charge_volts", "V")
    return pointwise(
        Inrush, _point, supply.volts_rms, supply.hertz, degrees, charge, parts.farads,
        parts.surge_ohms, parts.bleeder_ohms, parts.led_volts, parts.led_ohms, parts.diode_volts,
    )  # fmt: skip


def _point(volts_rms, hertz, degrees, charge, farads, surge, *others):
    circuit = circuit_of("sound", volts_rms, hertz, inf, 0.0, 1.0, farads, surge, *others)
    start, turns = degrees * pi / 180.0, 2.0 * pi * hertz
    stretches, state = circuit.march([charge], [(start, start + pi, True)])
    pulses = [(each.wave(each.mode.line_amps), each.end) for each in stretches if each.mode.way]
    peak = max([0.0, *(decays.highest([*decays.pieces(*each)]) for each in pulses)])
    more, _ = circuit.march(state, [(start + pi, start + 2.0 * pi, True)])
    coulombs = square = 0.0
    way = 0
    for stretch in [*stretches, *more]:
        if way and stretch.mode.way != way:
            break
        way = stretch.mode.way
        if way:
            line = stretch.wave(stretch.mode.line_amps)
            products = decays.Products(stretch.start, stretch.end, stretch.mode.rates)
            coulombs += line.area(stretch.start, stretch.end) / turns
            square += products.of(line, line) / turns
    end = stretch.start if way else inf
    return peak, coulombs, square, surge * square, (end - start) / turns


def worst(parts, supply):
    """Return the first pulse at the worst instant, discharged and plugged in again.

    Parameters
    ----------
    parts : capacitor_dropper.Parts
        As for `inrush`.
    supply : mains.Supply
        The supply, at its highest for a rating.

    Returns
    -------
    discharged, charged : tuple of Inrush
        At the crest without charge, and with the whole charge of the other half-cycle, which a
        missing or broken bleeder leaves for hours.

    Raises
    ------
    ValueError
        As `inrush`.

    Notes
    -----
    The charge left is the crest less the drops.

    Examples
    --------
    >>> from helpers.physics import capacitor_dropper, mains
    >>> cold, again = worst(capacitor_dropper.Parts(100e-9, 470.0), mains.Supply(253.0, 50.0))
    >>> round(again.amps_peak / cold.amps_peak, 9)
    2.0
    """
    crest = mains.peak(supply.volts_rms)
    left = limits.as_given(crest - parts.led_volts - 2.0 * np.asarray(parts.diode_volts))
    return inrush(parts, supply), inrush(parts, supply, 90.0, -left)
