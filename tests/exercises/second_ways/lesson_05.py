"""Lesson 05: shares of heat, light and readings behind a leading edge.

Heat: 1 − a/π + sin 2a / 2π of full, Rashid, Power Electronics, AC voltage controllers. Mean:
(1 + cos a) / 2 of full, the integral of a sine from a to π. What an LED gets above its drops is
added up from 36 000 instants, which stand so that every edge falls between two of them.

Sources: LED 2 V, diode 0.7 V, capacitor 100 nF with 100 Ω: common practice, no source. Mains 10 %
high: IEC 60038. Form factor π / √8 of a sine: any book on alternating currents.
"""

from functools import cache
from math import acos, cos, degrees, hypot, pi, radians, sin, sqrt

import numpy as np

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
    chopped, full = (led_amps(n.supply.volts_rms, angle, 1e5).mean() for angle in (n.angle, 0.0))
    return 100 * chopped / full


def angle_of_reading(n):
    return degrees(acos(2 * n.reading / n.supply.volts_rms - 1))


def true_volts(n):
    return n.supply.volts_rms * rms(angle_of_reading(n))


def leak_amps(n):
    """Capacitor, its resistor and the pot, one after the other."""
    reactance = 1 / (2 * pi * n.supply.hertz * 100e-9)
    return n.supply.volts_rms / hypot(n.supply.volts_rms**2 / n.watts + 100, reactance)


def pot_volts(n):
    return leak_amps(n) * n.supply.volts_rms**2 / n.watts


RIGHT = {
    "dim-recall-2": lambda n: n.supply.volts_rms * (1 + n.high / 100) * sqrt(2),
    "dim-recall-3": lambda n: dropper_watts(n, 0.0),
    "dim-1": lambda n: n.angle,
    "dim-2": lambda n: 100 * heat(n.angle),
    "dim-3": lambda n: n.supply.volts_rms * rms(n.angle),
    "dim-5": lambda n: n.watts / n.supply.volts_rms * rms(n.angle),
    "dim-6": light,
    "dim-7": lambda n: dropper_watts(n, n.angle),
    "dim-11": lambda n: n.supply.volts_rms * mean(n.angle),
    "dim-12": true_volts,
    "dim-14": pot_volts,
}

SIMPLE = {
    "dim-recall-3": full_heat,
    "dim-6": lambda n: 100 * mean(n.angle),
    "dim-7": lambda n: full_heat(n) * heat(n.angle),
}

SLIPS = {
    "dim-recall-2": {
        "took rms for peak": lambda n: n.supply.volts_rms * (1 + n.high / 100),
        "forgot that the mains is high": lambda n: n.supply.volts_rms * sqrt(2),
        "peak to peak": lambda n: n.supply.volts_rms * (1 + n.high / 100) * sqrt(8),
        "mean for peak": lambda n: n.supply.volts_rms * (1 + n.high / 100) / FORM_FACTOR,
    },
    "dim-recall-3": {
        "forgot the half-wave, or took the peak": lambda n: n.supply.volts_rms**2 / n.ohms,
        "peak, and both half-cycles": lambda n: 2 * n.supply.volts_rms**2 / n.ohms,
        "halved the voltage, then squared": lambda n: (n.supply.volts_rms / 2) ** 2 / n.ohms,
        "squared the mean current": lambda n: (
            n.ohms * (n.supply.volts_rms * sqrt(2) / pi / n.ohms) ** 2
        ),
    },
    "dim-1": {
        "read the part that is let through": lambda n: 180 - n.angle,
        "counted from the start of the cycle": lambda n: 180 + n.angle,
        "gave divisions": lambda n: n.angle / 30,
        "took a division for ten degrees": lambda n: n.angle / 30 * 10,
    },
    "dim-2": {
        "share of the angle": lambda n: 100 * knob(n.angle),
        "share of the mean": lambda n: 100 * mean(n.angle),
        "squared the share of the mean": lambda n: 100 * mean(n.angle) ** 2,
        "gave the share of the rms": lambda n: 100 * rms(n.angle),
        "squared once too often": lambda n: 100 * heat(n.angle) ** 2,
        "took what is let through for what is held back": lambda n: 100 * (1 - heat(n.angle)),
        "minus for plus": lambda n: 100 * (knob(n.angle) - sin(2 * radians(n.angle)) / (2 * pi)),
        "sine of the angle for sine of twice the angle": lambda n: (
            100 * (knob(n.angle) + sin(radians(n.angle)) / (2 * pi))
        ),
        "divided by pi": lambda n: 100 * (knob(n.angle) + sin(2 * radians(n.angle)) / pi),
        "calculator in radians": lambda n: 100 * (knob(n.angle) + sin(2 * n.angle) / (2 * pi)),
        "squared the share of the angle": lambda n: 100 * knob(n.angle) ** 2,
        "left the dimmer out": lambda n: 100.0,
        "typed a fraction": lambda n: heat(n.angle),
    },
    "dim-3": {
        "forgot the root": lambda n: n.supply.volts_rms * heat(n.angle),
        "plain meter": lambda n: n.supply.volts_rms * mean(n.angle),
        "share of the angle": lambda n: n.supply.volts_rms * knob(n.angle),
        "started from the peak": lambda n: n.supply.volts_rms * sqrt(2 * heat(n.angle)),
        "value at the edge": lambda n: n.supply.volts_rms * sqrt(2) * sin(radians(n.angle)),
        "left the dimmer out": lambda n: n.supply.volts_rms,
    },
    "dim-5": {
        "times the share of the heat": lambda n: n.watts / n.supply.volts_rms * heat(n.angle),
        "left the dimmer out": lambda n: n.watts / n.supply.volts_rms,
        "less volts, more current": lambda n: n.watts / n.supply.volts_rms / rms(n.angle),
        "share of the mean": lambda n: n.watts / n.supply.volts_rms * mean(n.angle),
        "share of the angle": lambda n: n.watts / n.supply.volts_rms * knob(n.angle),
    },
    "dim-6": {
        "share of the heat": lambda n: 100 * heat(n.angle),
        "share of the angle": lambda n: 100 * knob(n.angle),
        "share of the rms": lambda n: 100 * rms(n.angle),
        "took what is let through for what is held back": lambda n: 100 * (1 - mean(n.angle)),
        "typed a fraction": lambda n: mean(n.angle),
    },
    "dim-7": {
        "left the dimmer out": full_heat,
        "share of the mean": lambda n: full_heat(n) * mean(n.angle),
        "forgot the half-wave": lambda n: n.supply.volts_rms**2 / n.ohms * heat(n.angle),
        "share of the rms": lambda n: full_heat(n) * rms(n.angle),
        "share of the angle": lambda n: full_heat(n) * knob(n.angle),
    },
    "dim-11": {
        "true rms": lambda n: n.supply.volts_rms * rms(n.angle),
        "mean without its scale": lambda n: n.supply.volts_rms * mean(n.angle) / FORM_FACTOR,
        "share of the angle": lambda n: n.supply.volts_rms * knob(n.angle),
        "share of the heat": lambda n: n.supply.volts_rms * heat(n.angle),
        "took what is let through for what is held back": lambda n: (
            n.supply.volts_rms * (1 - mean(n.angle))
        ),
    },
    "dim-12": {
        "believed the meter": lambda n: n.reading,
        "times 1.11": lambda n: n.reading * FORM_FACTOR,
        "forgot the root": lambda n: n.supply.volts_rms * heat(angle_of_reading(n)),
        "took the reading for a share of the heat": lambda n: sqrt(n.supply.volts_rms * n.reading),
        "took the reading for a share of the angle": lambda n: (
            n.supply.volts_rms * rms(180 - 180 * n.reading / n.supply.volts_rms)
        ),
    },
    "dim-14": {
        "leak through the dropper": lambda n: leak_amps(n) * 1e5,
        "full mains": lambda n: n.supply.volts_rms,
        "volts over watts": lambda n: leak_amps(n) * n.supply.volts_rms / n.watts,
        "watts over volts": lambda n: leak_amps(n) * n.watts / n.supply.volts_rms,
        "gave the peak": lambda n: pot_volts(n) * sqrt(2),
    },
}
