"""Lesson 05: shares of heat, light and readings behind a leading edge.

Heat: 1 − a/π + sin 2a / 2π of full, Rashid, Power Electronics, AC voltage controllers. Mean:
(1 + cos a) / 2 of full, the integral of a sine from a to π. What an LED gets above its drops is
added up from 36 000 instants, which stand so that every edge falls between two of them.

Sources: LED 2 V, diode 0.7 V, capacitor 100 nF with 100 Ω: common practice, no source. The highest
mains: this package. Form factor π / √8 of a sine: any book on alternating currents.
"""

from functools import cache
from math import acos, cos, degrees, hypot, pi, radians, sin, sqrt

import numpy as np

from second_ways import highest_volts

WITHIN = 1e-5  # the sum over instants is that good
DROPS = 2.7
FORM_FACTOR = pi / sqrt(8)
TURN = (np.arange(36_000) + 0.5) / 100  # degrees


def heat(angle):
    return 1 - angle / 180 + sin(2 * radians(angle)) / (2 * pi)


def mean(angle):
    return (1 + cos(radians(angle))) / 2


def rms(angle):
    return sqrt(heat(angle))


def knob(angle):
    return (180 - angle) / 180


@cache
def led_amps(volts_rms, angle, ohms):
    """The current of LED and dropper over one cycle, behind a diode in series."""
    volts = np.where(angle <= TURN % 180, sqrt(2) * volts_rms * np.sin(np.radians(TURN)), 0.0)
    return np.maximum(volts - DROPS, 0) / ohms


def dropper_watts(n, angle):
    return n.ohms * (led_amps(n.supply.volts_rms, angle, n.ohms) ** 2).mean()


def full_heat(n):
    """The heat of a dropper behind a diode, drops left out."""
    return n.supply.volts_rms**2 / n.ohms / 2


def light(n):
    chopped, full = (led_amps(n.supply.volts_rms, angle, 1e5).mean() for angle in (n.degrees, 0.0))
    return 100 * chopped / full


def angle_of_reading(n):
    return degrees(acos(2 * n.reading_volts / n.supply.volts_rms - 1))


def true_volts(n):
    return n.supply.volts_rms * rms(angle_of_reading(n))


def leak_amps(n):
    """Capacitor, its resistor and the pot, one after the other."""
    reactance = 1 / (2 * pi * n.supply.hertz * 100e-9)
    return n.supply.volts_rms / hypot(n.supply.volts_rms**2 / n.watts + 100, reactance)


def pot_volts(n):
    return leak_amps(n) * n.supply.volts_rms**2 / n.watts


RIGHT = {
    "dim-recall-2": lambda n: n.supply.volts_rms * (1 + n.percent / 100) * sqrt(2),
    "dim-recall-3": lambda n: dropper_watts(n, 0.0),
    "dim-1": lambda n: n.degrees,
    "dim-2": lambda n: 100 * heat(n.degrees),
    "dim-3": lambda n: n.supply.volts_rms * rms(n.degrees),
    "dim-5": lambda n: n.watts / n.supply.volts_rms * rms(n.degrees),
    "dim-6": light,
    "dim-7": lambda n: dropper_watts(n, n.degrees),
    "dim-11": lambda n: n.supply.volts_rms * mean(n.degrees),
    "dim-12": true_volts,
    "dim-14": pot_volts,
}

SIMPLE = {
    "dim-recall-3": full_heat,
    "dim-6": lambda n: 100 * mean(n.degrees),
    "dim-7": lambda n: full_heat(n) * heat(n.degrees),
}

SLIPS = {
    "dim-recall-2": {
        "added the per cent as volts": lambda n: n.supply.volts_rms * sqrt(2) + n.percent,
        "took the rise alone": lambda n: n.supply.volts_rms * n.percent / 100,
    },
    "dim-recall-3": {
        "forgot to square the volts": lambda n: n.supply.volts_rms / n.ohms,
        "took 0.45 on top": lambda n: 0.225 * n.supply.volts_rms**2 / n.ohms,
        "worked out the rating": lambda n: highest_volts(n.supply) ** 2 / n.ohms,
    },
    "dim-5": {"divided by the volts twice": lambda n: n.watts / n.supply.volts_rms**2},
    "dim-12": {
        "believed the meter": lambda n: n.reading_volts,
        "multiplied the reading by 1.11": lambda n: n.reading_volts * FORM_FACTOR,
        "divided the reading by 1.11": lambda n: n.reading_volts / FORM_FACTOR,
        "multiplied the reading by 1.414": lambda n: n.reading_volts * sqrt(2),
        "multiplied the reading by 1.57": lambda n: n.reading_volts * pi / 2,
        "took the reading from the mains": lambda n: n.supply.volts_rms - n.reading_volts,
        "took the share shown for the share of the heat": lambda n: sqrt(
            n.supply.volts_rms * n.reading_volts
        ),
    },
}
