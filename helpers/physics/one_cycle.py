"""The sums over one mains cycle for each circuit, as `operating_point` reports them.

Takes checked numbers and returns a dictionary of them; who may pass what is decided in
`operating_point`. Works on floats and on arrays of one length alike. Knows no ratings.
"""

import numpy as np

from helpers.physics import circuits, harmonics, pulses

_TURN = 2.0 * np.pi


def solve(
    circuit, resistor_side, volts_rms, hertz, conduction_degrees, ohms,
    led_volts, second_led_volts, diode_volts, breakdown_volts,
):  # fmt: skip
    """Return every field of `OperatingPoint` by name.

    Parameters
    ----------
    circuit, resistor_side : str
        As for `operating_point` [-].
    volts_rms, hertz, conduction_degrees, ohms : float or array
        Supply, part of the half-cycle let through, series resistance [V], [Hz], [deg], [ohm].
    led_volts, second_led_volts, diode_volts, breakdown_volts : float or array
        The drops [V].

    Returns
    -------
    results : dict
        Floats or arrays, some broadcastable rather than full.

    Notes
    -----
    See `operating_point`. Forward is the half-cycle of the (first) LED, backward the other.

    References
    ----------
    Derived here; every result is compared with adaptive quadrature in the tests.

    Examples
    --------
    >>> results = solve("bridge", "ac", 230.0, 50.0, 180.0, 120e3, 2.0, 2.0, 0.7, 5.0)
    >>> round(float(results["led_amps_mean"]) * 1e3, 3)
    1.697
    """
    crest = np.sqrt(2.0) * volts_rms
    window = np.radians(conduction_degrees)
    drops = led_volts, second_led_volts, diode_volts, breakdown_volts
    forward, backward = circuits.half_cycle_pulses(circuit, crest, window, drops)
    amps = crest / ohms
    flow = _current(forward, amps, window)
    back_flow = flow if backward is forward else _current(backward, amps, window)
    return (
        _led(circuit, flow, back_flow, forward, window)
        | _reverse_volts(circuit, resistor_side, crest * pulses.height(0.0, window), *drops)
        | _powers(circuit, flow, back_flow, crest, ohms, *drops)
        | _light(circuit, forward, backward, window, hertz)
    )


def _current(pulse, amps, window):
    """Mean, mean square, peak and delivered part of one half-cycle's current."""
    if pulse is None:
        return 0.0, 0.0, 0.0, 0.0
    per_turn = amps / _TURN
    return (
        per_turn * pulses.area(pulse),
        amps * per_turn * pulses.square_area(pulse),
        amps * pulses.height(pulse.threshold, window),
        per_turn * pulses.delivered_area(pulse),
    )


def _led(circuit, flow, back_flow, forward, window):
    mean, square, peak, _ = flow
    back_mean, back_square, back_peak, _ = back_flow
    halves = 2.0 if circuit == "bridge" else 1.0
    breaks_down = circuit == "resistor_only"
    second = circuit == "two_leds"
    bright_level = np.minimum(
        forward.threshold + 0.01 * pulses.height(forward.threshold, window), 1.0
    )
    bright_width = np.where(forward.width > 0.0, pulses.width(bright_level, window), 0.0)
    rms_forward = np.sqrt(halves * square)
    return {
        "led_amps_mean": halves * mean,
        "led_amps_net_mean": mean - back_mean if breaks_down else halves * mean,
        "led_amps_rms_forward": rms_forward,
        "led_amps_rms": np.sqrt(square + back_square) if breaks_down else rms_forward,
        "led_amps_peak": peak,
        "led_reverse_amps_peak": back_peak if breaks_down else 0.0,
        "led_conduction_fraction": halves / _TURN * forward.width,
        "led_bright_fraction": halves / _TURN * bright_width,
        "second_led_amps_mean": back_mean if second else 0.0,
        "second_led_amps_peak": back_peak if second else 0.0,
        "branch_amps_rms": np.sqrt(square + back_square),
        "branch_amps_peak": np.maximum(peak, back_peak),
    }


def _reverse_volts(
    circuit, resistor_side, volts_peak, led_volts, second_led_volts, diode_volts, breakdown_volts
):
    """What LED and diodes hold off, never more than the wave's own peak."""
    led, diode = {
        "resistor_only": (breakdown_volts, 0.0),
        "series_diode": (0.0, np.inf),
        "diode_across": (diode_volts, led_volts),
        "two_leds": (second_led_volts, 0.0),
        "bridge": (0.0, led_volts + diode_volts if resistor_side == "ac" else np.inf),
    }[circuit]
    bound = breakdown_volts if circuit == "series_diode" else led
    return {
        "led_reverse_volts_peak": np.minimum(led, volts_peak),
        "led_reverse_volts_bound": np.minimum(bound, volts_peak),
        "diode_reverse_volts_peak": np.minimum(diode, volts_peak),
    }


def _powers(circuit, flow, back_flow, crest, ohms, *drops):
    mean, square, _, delivered = flow
    back_mean, back_square, _, back_delivered = back_flow
    led_volts, second_led_volts, diode_volts, breakdown_volts = drops
    led_watts = led_volts * mean
    diode_watts = 0.0
    if circuit == "resistor_only":
        led_watts = led_watts + breakdown_volts * back_mean
    elif circuit == "two_leds":
        led_watts = led_watts + second_led_volts * back_mean
    elif circuit == "series_diode":
        diode_watts = diode_volts * mean
    elif circuit == "diode_across":
        diode_watts = diode_volts * back_mean
    else:
        led_watts = 2.0 * led_watts
        diode_watts = 4.0 * diode_volts * mean
    branch_watts = crest * (delivered + back_delivered)
    return {
        "resistor_watts": ohms * (square + back_square),
        "led_watts": led_watts,
        "diode_watts": diode_watts,
        "branch_watts": branch_watts,
        "branch_watt_hours_per_day": 24.0 * branch_watts,
    }


def _light(circuit, forward, backward, window, hertz):
    """Flicker of the light, which is in proportion to the forward current of every LED."""
    area = pulses.area(forward)
    if circuit == "bridge":
        shape = _same_twice(forward, area, window)
    elif circuit == "two_leds":
        shape = _two_pulses(forward, area, backward, window)
    else:
        shape = _one_pulse(forward, area, window)
    total, above, at_line, at_twice, halves_differ = shape
    lit = total > 0.0
    # A dark light has no flicker; dividing by one instead keeps the zeros.
    divisor = np.where(lit, total, 1.0)
    at_line, at_twice = 200.0 * at_line / divisor, 200.0 * at_twice / divisor
    return {
        "light_percent_flicker": 100.0 * lit,
        "light_flicker_index": above / divisor,
        "light_modulation_at_line_percent": at_line,
        "light_modulation_at_twice_line_percent": at_twice,
        "light_fundamental_hertz": lit * np.where(halves_differ, hertz, 2.0 * hertz),
        "light_dominant_hertz": lit * np.where(at_line >= at_twice, hertz, 2.0 * hertz),
    }


def _one_pulse(pulse, area, window):
    above = pulses.area(pulses.pulse(pulse.threshold + area / _TURN, window))
    at_line = _length(*harmonics.first_harmonic(pulse))
    at_twice = _length(*harmonics.second_harmonic(pulse))
    return area, above, at_line, at_twice, True


def _same_twice(pulse, area, window):
    above = pulses.area(pulses.pulse(pulse.threshold + 2.0 * area / _TURN, window))
    at_twice = _length(*harmonics.second_harmonic(pulse))
    return 2.0 * area, 2.0 * above, 0.0, 2.0 * at_twice, False


def _two_pulses(forward, area, backward, window):
    back_area = pulses.area(backward)
    total = area + back_area
    level = total / _TURN
    above = pulses.area(pulses.pulse(forward.threshold + level, window)) + pulses.area(
        pulses.pulse(backward.threshold + level, window)
    )
    # The backward half comes half a turn later: it subtracts at line frequency, adds at twice it.
    cosine, sine = _from_crossing(forward, harmonics.first_harmonic(forward), 1)
    back_cosine, back_sine = _from_crossing(backward, harmonics.first_harmonic(backward), 1)
    at_line = _length(cosine - back_cosine, sine - back_sine)
    cosine, sine = _from_crossing(forward, harmonics.second_harmonic(forward), 2)
    back_cosine, back_sine = _from_crossing(backward, harmonics.second_harmonic(backward), 2)
    at_twice = _length(cosine + back_cosine, sine + back_sine)
    return total, above, at_line, at_twice, np.abs(area - back_area) > 1e-9 * total


def _from_crossing(pulse, parts, order):
    """Turn a harmonic counted from the start of its pulse to count from the zero crossing."""
    cosine, sine = parts
    for _ in range(order):
        cosine, sine = (
            cosine * pulse.cos_start - sine * pulse.threshold,
            cosine * pulse.threshold + sine * pulse.cos_start,
        )
    return cosine, sine


def _length(cosine, sine):
    return np.sqrt(cosine * cosine + sine * sine)
