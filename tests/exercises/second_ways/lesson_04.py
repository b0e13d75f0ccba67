"""Lesson 04: heat, from first principles.

The means over a cycle are added up from 20 000 instants; nothing here asks `operating_point`.

Sources: drops of LED 2 V, diode 0.7 V, breakdown 5 V: common practice, no source. Nothing left of a
rating at 155 °C, all of it up to 70 °C: IEC 60115-1. Mains 10 % high: IEC 60038. 8 W/m² K
for each face of a wall in still air, the low end: Incropera, about 10, quoted from memory.
"""

from functools import cache
from math import pi, sqrt

import numpy as np

WITHIN = 1e-5  # the sum over instants is that good
ANGLES = (np.arange(20_000) + 0.5) * 2 * pi / 20_000
DROPS = {
    "series_diode": (2.7, None),
    "diode_across": (2.0, 0.7),
    "bridge": (3.4, 3.4),
    "resistor_only": (2.0, 5.0),
    # With the LED or a diode shorted, by hand along the path that the current then takes.
    "diode alone": (0.7, None),
    "nothing but resistors": (0.0, 0.0),
    "two diodes": (1.4, 1.4),
    "bridge with one diode shorted": (2.7, 0.7),
}


@cache
def cycle(circuit, volts_rms, ohms):
    """Return the LED's mean current, the dropper's rms current and its heat."""
    forward, backward = DROPS[circuit]
    volts = sqrt(2) * volts_rms * np.sin(ANGLES)
    one = np.maximum(volts - forward, 0) / ohms
    other = 0 * volts if backward is None else np.maximum(-volts - backward, 0) / ohms
    led = one + other if circuit == "bridge" else one
    square = (one**2 + other**2).mean()
    return led.mean(), sqrt(square), square * ohms


def heat(n, circuit="series_diode", high=1.0, ohms=None):
    return cycle(circuit, high * n.supply.volts_rms, ohms or n.ohms)[2]


def full(n, ohms=None):
    return n.supply.volts_rms**2 / (ohms or n.ohms)


def percent(watts, n):
    return 100 * watts * 8760 / (90 * n.hours)


def left(air):
    """The share of a rating that is left in warm air."""
    return min(1.0, (155 - air) / 85)


def box_rise(n):
    """Two films of still air, one behind the other, as two resistances for heat."""
    return n.watts * (1 / 8 + 1 / 8) / n.square_metres


def swapped(ohms):
    return float(f"{ohms:.0f}"[1] + f"{ohms:.0f}"[0] + f"{ohms:.0f}"[2:])


RIGHT = {
    "heat-recall-2": lambda n: (n.volts - 2.0) / n.ohms,
    "heat-recall-3": lambda n: cycle("series_diode", n.supply.volts_rms, n.ohms)[0],
    "heat-1": lambda n: cycle("series_diode", n.supply.volts_rms, n.ohms)[1],
    "heat-3": heat,
    "heat-5": lambda n: heat(n, n.circuit),
    "heat-6": lambda n: n.watts * n.after / n.before * 8760,
    "heat-7": lambda n: percent(heat(n), n),
    "heat-8": lambda n: 2 * heat(n, high=1.1),
    "heat-9": lambda n: n.rated * left(n.air),
    "heat-10": lambda n: 1.1 * sqrt(2) * n.supply.volts_rms / n.count,
    "heat-11": lambda n: heat(n, ohms=2 * n.ohms) / 2,
    "heat-12": lambda n: n.room + box_rise(n) + n.watts * n.kelvin_per_watt,
}

SIMPLE = {
    "heat-recall-3": lambda n: sqrt(2) / pi * n.supply.volts_rms / n.ohms,
    "heat-1": lambda n: sqrt(0.5) * n.supply.volts_rms / n.ohms,
    "heat-3": lambda n: full(n) / 2,
    "heat-5": full,
    "heat-7": lambda n: percent(full(n) / 2, n),
    "heat-8": lambda n: 1.21 * full(n),
    "heat-11": lambda n: full(n) / 8,
}

SLIPS = {
    "heat-recall-2": {
        "left out the LED's own drop": lambda n: n.volts / n.ohms,
        "added the LED's drop": lambda n: (n.volts + 2.0) / n.ohms,
    },
    "heat-recall-3": {
        "rms over resistance": lambda n: n.supply.volts_rms / n.ohms,
        "forgot half-wave": lambda n: 2 * sqrt(2) / pi * n.supply.volts_rms / n.ohms,
        "half of rms over resistance": lambda n: 0.5 * n.supply.volts_rms / n.ohms,
        "peak over resistance": lambda n: sqrt(2) * n.supply.volts_rms / n.ohms,
    },
    "heat-1": {
        "forgot half-wave": lambda n: n.supply.volts_rms / n.ohms,
        "halved the rms voltage": lambda n: 0.5 * n.supply.volts_rms / n.ohms,
        "took the mean": lambda n: sqrt(2) / pi * n.supply.volts_rms / n.ohms,
        "took the peak": lambda n: sqrt(2) * n.supply.volts_rms / n.ohms,
    },
    "heat-3": {
        "forgot half-wave, or squared the peak": full,
        "peak volts and no half-wave": lambda n: 2 * full(n),
        "halved the voltage, then squared": lambda n: full(n) / 4,
        "squared the mean": lambda n: 2 / pi**2 * full(n),
        "mean current times rms volts": lambda n: sqrt(2) / pi * full(n),
        "peak current times rms volts": lambda n: sqrt(2) * full(n),
        "heat in the LED": lambda n: 2.0 * sqrt(2) / pi * n.supply.volts_rms / n.ohms,
    },
    "heat-5": {
        "halved it as behind a series diode": lambda n: full(n) / 2,
        "squared the peak": lambda n: 2 * full(n),
        "squared the mean": lambda n: 8 / pi**2 * full(n),
        "halved the voltage, then squared": lambda n: full(n) / 4,
    },
    "heat-6": {
        "scaled the heat by the square of the current": lambda n: (
            n.watts * (n.after / n.before) ** 2 * 8760
        ),
        "kept the old heat": lambda n: n.watts * 8760,
        "one day": lambda n: n.watts * n.after / n.before * 24,
        "watt-hours": lambda n: n.watts * n.after / n.before * 8760 * 1000,
    },
    "heat-7": {
        "forgot half-wave": lambda n: percent(full(n), n),
        "halved the voltage, then squared": lambda n: percent(full(n) / 4, n),
        "one month of the light": lambda n: percent(full(n) / 2, n) / 12,
        "the same hours for both": lambda n: 100 * full(n) / 2 / 90,
        "gave the fraction": lambda n: percent(full(n) / 2, n) / 100,
    },
    "heat-8": {
        "mains tolerance forgotten": full,
        "ten per cent added to the watts": lambda n: 1.1 * full(n),
        "no margin": lambda n: 0.605 * full(n),
        "rating equal to the heat on the label's voltage": lambda n: full(n) / 2,
        "rating half of the heat": lambda n: full(n) / 4,
        "forgot half-wave": lambda n: 2.42 * full(n),
    },
    "heat-9": {
        "not derated": lambda n: n.rated,
        "line drawn from zero degrees": lambda n: n.rated * (155 - n.air) / 155,
        "took the share that is lost": lambda n: n.rated * (n.air - 70) / 85,
        "divided by seventy": lambda n: n.rated * (140 - n.air) / 70,
    },
    "heat-10": {
        "each sees all": lambda n: 1.1 * sqrt(2) * n.supply.volts_rms,
        "rms instead of crest": lambda n: 1.1 * n.supply.volts_rms / n.count,
        "mains tolerance forgotten": lambda n: sqrt(2) * n.supply.volts_rms / n.count,
        "rms, and mains tolerance forgotten": lambda n: n.supply.volts_rms / n.count,
    },
    "heat-11": {
        "heat of both together, or both half-cycles": lambda n: full(n) / 4,
        "each alone on the mains": lambda n: full(n) / 2,
        "divided once too often": lambda n: full(n) / 16,
        "one zero too many in the bands": lambda n: full(n) / 80,
        "one zero too few in the bands": lambda n: full(n) * 10 / 8,
        "swapped the first two bands": lambda n: full(n, swapped(n.ohms)) / 8,
    },
    "heat-12": {
        "forgot the box": lambda n: n.room + n.watts * n.kelvin_per_watt,
        "gave the rise": lambda n: box_rise(n) + n.watts * n.kelvin_per_watt,
        "gave the air in the box": lambda n: n.room + box_rise(n),
        "gave the dropper's own rise": lambda n: n.watts * n.kelvin_per_watt,
    },
}
