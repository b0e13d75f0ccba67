"""An LED straight across the mains, once: how soon its bond wire melts and with what energy.

An estimate, good to a factor of two, to show why nobody should ever try. Knows no indicator.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import limits, mains

# Gold, CRC Handbook (from memory): ohm m and per K at 20 degC, kg/m3, J/(kg K), degC, J/kg.
_RESISTIVITY, _COEFFICIENT, _DENSITY, _HEAT, _MELTING = 2.44e-8, 0.0034, 19300.0, 129.0, 1064.0
_LATENT_HEAT = 63.7e3


def melting_integral(wire_metres, start_celsius=25.0, through=False):
    """Return the current-squared-time that melts a thin gold wire.

    Parameters
    ----------
    wire_metres : float or array
        Diameter of the wire [m].
    start_celsius : float or array
        Temperature before the pulse [degC].
    through : bool
        True if the wire is to melt through, with its latent heat; False until it begins to [-].

    Returns
    -------
    ampere_squared_seconds : float or ndarray
        Integral of the squared current [A2 s].

    Raises
    ------
    ValueError
        If the diameter is impossible or the start at or above the melting point.

    Notes
    -----
    ``area**2 * density * heat / (resistivity * coefficient) * log(hot / cold)``, with the wire's
    relative resistance at the melting point and at the start. No heat leaves the wire: true below
    some milliseconds, too low for longer pulses.

    References
    ----------
    Adiabatic heating of a conductor, the form that Onderdonk gave for copper in 1928; gold from the
    CRC Handbook (from memory).

    Examples
    --------
    >>> round(melting_integral(25e-6), 4), round(melting_integral(25e-6, through=True), 4)
    (0.0108, 0.0135)
    """
    diameter = limits.between(
        wire_metres, "wire_metres", "m", 1e-6, 1e-3, "Was it in micrometres or millimetres?"
    )
    start = limits.between(start_celsius, "start_celsius", "degC", -55.0, _MELTING - 1.0)
    cold = 1.0 + _COEFFICIENT * (start - 20.0)
    hot = 1.0 + _COEFFICIENT * (_MELTING - 20.0)
    area = 0.25 * np.pi * diameter * diameter
    heating = _DENSITY * _HEAT / (_RESISTIVITY * _COEFFICIENT) * np.log(hot / cold)
    fusing = _DENSITY * _LATENT_HEAT / (_RESISTIVITY * hot) if through else 0.0
    return limits.as_given(area * area * (heating + fusing))


@dataclass(frozen=True)
class Burnout:
    """What happens until the bond wire melts, or until the half-cycle ends."""

    melts_in_first_half_cycle: bool
    """Whether the wire begins to melt before the current returns to zero."""
    seconds: float
    """From switching on until then; infinite if it does not [s]."""
    seconds_range: tuple
    """The same with half and with twice the loop resistance [s]."""
    amps: float
    """Current at that moment, zero at the end of the half-cycle [A]."""
    led_joules: float
    """Energy in the LED until then [J]."""
    loop_joules: float
    """Energy in the loop resistance until then [J]."""
    mains_joules: float
    """Energy taken from the mains until then [J]."""
    melting_integral: float
    """What the wire stands [A2 s]."""


def led_on_mains(
    supply, switch_on_degrees, loop_ohms=10.0, led_volts=2.0, wire_metres=25e-6, start_celsius=25.0
):
    """Return how an LED without a dropper ends on the mains.

    Parameters
    ----------
    supply : mains.Supply
    switch_on_degrees : float
        Angle at which contact is made, 0 to 180, forward half-cycle [deg].
    loop_ohms : float
        Wiring, contacts and the LED's own resistance; a guess [ohm].
    led_volts : float
        Drop of the junction [V].
    wire_metres : float
        Diameter of the gold bond wire [m].
    start_celsius : float
        Temperature before [degC].

    Returns
    -------
    burnout : Burnout
        Time, current and energies.

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    ``(sqrt(2) V sin(angle) - drop) / loop`` until its squared integral reaches `melting_integral`.
    After that an arc may carry on, and the case bursts. The loop resistance is known to a factor of
    two at best, so `seconds_range` is given. Never to be tried.

    References
    ----------
    Derived here; the integral is compared with quadrature in the tests.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> burnout = led_on_mains(mains.Supply(230.0, 50.0), 90.0)
    >>> f"{burnout.seconds * 1e6:.0f} us at {burnout.amps:.0f} A"
    '10 us at 32 A'
    """
    angle = limits.between(switch_on_degrees, "switch_on_degrees", "deg", 0.0, 180.0)
    loop = limits.positive(loop_ohms, "loop_ohms", "ohm", "No mains loop has no resistance.")
    drop = limits.not_negative(led_volts, "led_volts", "V")
    wire = melting_integral(wire_metres, start_celsius)
    at_half, at_given, at_twice = (
        _until_melting(supply, np.radians(angle), ohms, drop, wire)
        for ohms in (0.5 * loop, loop, 2.0 * loop)
    )
    seconds, amps, charge, integral = at_given
    led_joules, loop_joules = drop * charge, loop * integral
    return Burnout(
        bool(np.isfinite(seconds)), seconds, (at_half[0], at_twice[0]), amps,
        led_joules, loop_joules, led_joules + loop_joules, wire,
    )  # fmt: skip


def _until_melting(supply, switch_on, ohms, drop, wire):
    """Seconds, amps, charge and squared-current integral at melting or at the end of the pulse."""
    crest = mains.peak(supply.volts_rms)
    threshold = min(drop / crest, 1.0)
    first = np.arcsin(threshold)
    start, end = max(switch_on, first), np.pi - first
    if start >= end:
        return np.inf, 0.0, 0.0, 0.0
    amps, speed = crest / ohms, 2.0 * np.pi * supply.hertz

    def squared_until(angle):
        return amps * amps / speed * (_squares(angle, threshold) - _squares(start, threshold))

    def charge_until(angle):
        return amps / speed * (np.cos(start) - np.cos(angle) - threshold * (angle - start))

    if squared_until(end) < wire:
        return np.inf, 0.0, float(charge_until(end)), float(squared_until(end))
    low, high = start, end
    for _ in range(60):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if squared_until(middle) < wire else (low, middle)
    return (
        float((high - switch_on) / speed),
        float(amps * (np.sin(high) - threshold)),
        float(charge_until(high)),
        float(squared_until(high)),
    )


def _squares(angle, threshold):
    """Antiderivative of (sin(angle) - threshold)**2."""
    return (
        (0.5 + threshold * threshold) * angle
        - 0.25 * np.sin(2.0 * angle)
        + 2.0 * threshold * np.cos(angle)
    )
