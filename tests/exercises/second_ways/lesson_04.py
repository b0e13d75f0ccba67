"""Lesson 04: heat, from first principles.

The means over a cycle are added up from 20 000 instants; nothing here asks `operating_point`.

Sources: drops of LED 2 V, diode 0.7 V, breakdown 5 V: common practice, no source. Nothing left of a
rating at 155 °C, all of it up to 70 °C: IEC 60115-1. The highest mains: this package. 8 W/m² K
for each face of a wall in still air, the low end: Incropera, about 10, quoted from memory.
"""

from functools import cache
from math import pi, sqrt

import numpy as np

from second_ways import highest_volts

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


def heat(n, circuit="series_diode", volts=None, ohms=None):
    return cycle(circuit, volts or n.supply.volts_rms, ohms or n.ohms)[2]


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


def own_rise(n):
    return n.watts * n.each_watt_kelvin


RIGHT = {
    "heat-recall-2": lambda n: (n.volts - 2.0) / n.ohms,
    "heat-recall-3": lambda n: cycle("series_diode", n.supply.volts_rms, n.ohms)[0],
    "heat-1": lambda n: cycle("series_diode", n.supply.volts_rms, n.ohms)[1],
    "heat-3": heat,
    "heat-5": lambda n: heat(n, n.circuit),
    "heat-6": lambda n: n.watts * n.after_amps / n.before_amps * 8760,
    "heat-7": lambda n: percent(heat(n), n),
    "heat-8": lambda n: 2 * heat(n, volts=highest_volts(n.supply)),
    "heat-9": lambda n: n.rated_watts * left(n.air_celsius),
    "heat-10": lambda n: sqrt(2) * highest_volts(n.supply) / n.count,
    "heat-11": lambda n: heat(n, ohms=3 * n.ohms) / 3,
    "heat-12": lambda n: n.room_celsius + box_rise(n) + own_rise(n),
}

SIMPLE = {
    "heat-recall-3": lambda n: sqrt(2) / pi * n.supply.volts_rms / n.ohms,
    "heat-1": lambda n: sqrt(0.5) * n.supply.volts_rms / n.ohms,
    "heat-3": lambda n: full(n) / 2,
    "heat-5": full,
    "heat-7": lambda n: percent(full(n) / 2, n),
    "heat-8": lambda n: highest_volts(n.supply) ** 2 / n.ohms,
    "heat-11": lambda n: full(n) / 18,
}

SLIPS = {
    "heat-1": {"halved once too often": lambda n: n.supply.volts_rms / sqrt(8) / n.ohms},
    "heat-3": {
        "multiplied a crest by an rms value": lambda n: sqrt(2) * full(n),
        "gave the heat of the LED": lambda n: 2.0 * sqrt(2) / pi * n.supply.volts_rms / n.ohms,
    },
    "heat-7": {
        "compared the watts alone": lambda n: 100 * full(n) / 2 / 90,
        "compared the hours alone": lambda n: 100 * n.hours / 8760,
    },
    "heat-12": {
        "doubled the heat": lambda n: n.room_celsius + 2 * (box_rise(n) + own_rise(n)),
        "took 63 % of the rise": lambda n: n.room_celsius + 0.63 * (box_rise(n) + own_rise(n)),
        "gave the rise of the box alone": lambda n: box_rise(n),
    },
}
