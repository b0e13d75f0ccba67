"""One entry point for the five indicator circuits behind a supply and a dimmer.

Everything that a lesson, a candidate or a bench log asks of a circuit comes from `operating_point`:
currents, power in every part, reverse voltage, conduction, flicker and energy. Closed forms from
`pulses`; every argument may be an array. Constant drops only. Knows no ratings and no limits.
"""

from dataclasses import dataclass, fields

import numpy as np

from helpers.physics import circuits, limits, one_cycle
from helpers.physics.phase_cut import NO_DIMMER

# Points worked on at a time, so that a few dozen arrays of them stay in the processor's cache.
_CHUNK = 8192


@dataclass(frozen=True)
class OperatingPoint:
    """What a circuit does over one mains cycle; every field is a float or an array."""

    led_amps_mean: float
    """Mean forward current of the LED: what makes light [A]."""
    led_amps_net_mean: float
    """Mean current of the LED with its sign: what a DC meter in series shows [A]."""
    led_amps_rms_forward: float
    """Rms of the forward current of the LED [A]."""
    led_amps_rms: float
    """Rms of its whole current, reverse breakdown included [A]."""
    led_amps_peak: float
    """Highest forward current of the LED [A]."""
    led_reverse_amps_peak: float
    """Highest breakdown current of the LED [A]."""
    led_reverse_volts_peak: float
    """Highest reverse voltage of the LED if diodes block ideally [V]."""
    led_reverse_volts_bound: float
    """The same at most, if the diode leaks more than the LED [V]."""
    led_conduction_fraction: float
    """Share of the cycle in which the LED carries forward current [-]."""
    led_bright_fraction: float
    """Share of the cycle in which it carries over 1 % of its peak current [-]."""
    second_led_amps_mean: float
    """Mean forward current of the second LED, zero if there is none [A]."""
    second_led_amps_peak: float
    """Highest forward current of the second LED, zero if there is none [A]."""
    branch_amps_rms: float
    """Rms of the current in the resistor [A]."""
    branch_amps_peak: float
    """Highest current in the resistor, in either direction [A]."""
    resistor_watts: float
    """Mean power in the resistor [W]."""
    led_watts: float
    """Mean power in all LEDs, breakdown included [W]."""
    diode_watts: float
    """Mean power in all silicon diodes [W]."""
    branch_watts: float
    """Mean power that the indicator takes from its terminals [W]."""
    branch_watt_hours_per_day: float
    """Energy that it takes in 24 hours [Wh]."""
    diode_reverse_volts_peak: float
    """Highest reverse voltage of any silicon diode, zero if there is none [V]."""
    light_percent_flicker: float
    """Highest less lowest light over their sum; zero if dark [%]."""
    light_flicker_index: float
    """Light above the mean over all light; zero if dark [-]."""
    light_modulation_at_line_percent: float
    """Amplitude of the light at line frequency over its mean; zero if dark [%]."""
    light_modulation_at_twice_line_percent: float
    """The same at twice line frequency [%]."""
    light_fundamental_hertz: float
    """Rate at which the light repeats; zero if dark [Hz]."""
    light_dominant_hertz: float
    """Frequency of the larger of the two modulations; zero if dark [Hz]."""


_FIELDS = tuple(field.name for field in fields(OperatingPoint))


def operating_point(circuit, supply, dimmer=NO_DIMMER, *, ohms, resistor_side="ac", **drops):
    """Return everything that one of the five circuits does on a supply behind a dimmer.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        Volts and frequency.
    dimmer : phase_cut.Dimmer
        Edge and angle.
    ohms : float or array
        Series resistance, the whole string [ohm].
    resistor_side : str
        'ac' or 'dc' side of a bridge; only the reverse voltage of the diodes depends on it [-].
    **drops : float or array
        led_volts (2 unless given), second_led_volts (as led_volts), diode_volts (0.7) and
        breakdown_volts (5), as `circuits.fill_in` explains them [V].

    Returns
    -------
    point : OperatingPoint
        Floats, or arrays of the broadcast shape of all arguments.

    Raises
    ------
    ValueError
        If the circuit or the side is unknown, a drop is negative, the resistance is not above zero,
        or the LED would break down before the part beside it conducts.

    Notes
    -----
    Current flows while the voltage exceeds the drops D of its half-cycle:
    ``(sqrt(2) V sin(angle) - D) / ohms``, between the angles where the sine passes D and where the
    dimmer blocks. Means are over the whole cycle. Light follows the forward current at once.
    True while the drops may be taken as constant: at microamps an LED drops about a quarter less,
    and a leaking dimmer or a long cable lights it where this says dark.

    References
    ----------
    Derived here from Kirchhoff's laws; the tests compare every field with adaptive quadrature.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> point = operating_point("series_diode", mains.Supply(230.0, 50.0), ohms=120e3)
    >>> f"{point.led_amps_mean * 1e3:.3f} mA mean, {point.resistor_watts:.3f} W in the resistor"
    '0.852 mA mean, 0.216 W in the resistor'
    """
    limits.one_of(resistor_side, "resistor_side", ("ac", "dc"))
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    volts = circuits.fill_in(circuit, **drops)
    inputs = (supply.volts_rms, supply.hertz, dimmer.conduction_degrees, ohms, *volts)
    shape = np.broadcast_shapes(*map(np.shape, inputs))
    if shape == ():
        solved = one_cycle.solve(circuit, resistor_side, *map(float, inputs))
        return OperatingPoint(**{name: float(value) for name, value in solved.items()})
    return OperatingPoint(**_solve_in_chunks(circuit, resistor_side, inputs, shape))


def _solve_in_chunks(circuit, resistor_side, inputs, shape):
    count = int(np.prod(shape))
    flat = [
        np.broadcast_to(value, shape).reshape(-1) if value.size != 1 else np.float64(value.item())
        for value in (np.asarray(value, dtype=float) for value in inputs)
    ]
    results = {name: np.empty(count) for name in _FIELDS}
    for start in range(0, count, _CHUNK):
        piece = slice(start, start + _CHUNK)
        solved = one_cycle.solve(
            circuit, resistor_side, *(value[piece] if value.ndim else value for value in flat)
        )
        for name, values in results.items():
            values[piece] = solved[name]
    return {name: values.reshape(shape) for name, values in results.items()}
