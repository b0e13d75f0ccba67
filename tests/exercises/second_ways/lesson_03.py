"""Lesson 03: peak, mean and dark time of a half-wave, from the integral of a sine, by hand.

The mean of what is left of one half-cycle above the drops D of LED and diode, with the angle a at
which the wave passes them (peak × sin a = D), is the integral of peak × sin x − D from a to π − a
over 2π: (2 × peak × cos a − D × (π − 2a)) / 2π.

Sources: LED 2 V and diode 0.7 V, and 5 V that an LED stands in reverse: common practice, no source.
"""

from math import asin, cos, pi, sqrt

WITHIN = 1e-9
DROPS = 2.7
ABROAD = {240.0: 127.0, 230.0: 127.0, 220.0: 127.0, 127.0: 230.0, 120.0: 230.0, 110.0: 127.0}
ABROAD[100.0] = 240.0


def peak(volts_rms):
    return sqrt(2) * volts_rms


def mean(volts_rms):
    """The mean of a half-wave without drops, over the whole cycle."""
    return sqrt(2) * volts_rms / pi


def mean_above_drops(volts_rms):
    begin = asin(DROPS / peak(volts_rms))
    return (2 * peak(volts_rms) * cos(begin) - DROPS * (pi - 2 * begin)) / (2 * pi)


def seconds_below_drops(supply):
    """How long before the zero crossing the wave falls below the drops."""
    return asin(DROPS / peak(supply.volts_rms)) / (2 * pi * supply.hertz)


def half_cycle(n):
    return 0.5 / n.supply.hertz


def at_home(n):
    return mean_above_drops(n.supply.volts_rms) / n.ohms


RIGHT = {
    "wave-recall-1": lambda n: n.ohms,
    "wave-recall-3": lambda n: (n.volts - 2.0) / n.ohms,
    "wave-1": lambda n: n.volts * 2**0.5,
    "wave-2": lambda n: 0.5 / n.hertz,
    "wave-5": lambda n: n.volts_peak * 0.5**0.5,
    "wave-6": lambda n: (peak(n.supply.volts_rms) - DROPS) / n.ohms,
    "wave-7": at_home,
    "wave-9": lambda n: mean_above_drops(n.supply.volts_rms) / n.amps,
    "wave-11": lambda n: half_cycle(n) - n.starts - seconds_below_drops(n.supply),
    "wave-12": lambda n: peak(n.supply.volts_rms) * (1 + n.percent / 100),
    "wave-16": lambda n: mean_above_drops(ABROAD[n.supply.volts_rms]) / n.ohms,
}

SIMPLE = {
    "wave-6": lambda n: peak(n.supply.volts_rms) / n.ohms,
    "wave-7": lambda n: mean(n.supply.volts_rms) / n.ohms,
    "wave-9": lambda n: mean(n.supply.volts_rms) / n.amps,
    "wave-11": lambda n: half_cycle(n) - n.starts,
    "wave-16": lambda n: mean(ABROAD[n.supply.volts_rms]) / n.ohms,
}

SLIPS = {
    "wave-recall-1": {
        "one place too few": lambda n: n.ohms / 10,
        "one place too many": lambda n: n.ohms * 10,
    },
    "wave-recall-3": {
        "left out the LED's own drop": lambda n: n.volts / n.ohms,
        "added the LED's drop": lambda n: (n.volts + 2.0) / n.ohms,
        "LED's drop over the dropper": lambda n: 2.0 / n.ohms,
    },
    "wave-1": {
        "took rms as peak": lambda n: n.volts,
        "divided by root 2": lambda n: n.volts * 0.5**0.5,
        "peak to peak": lambda n: n.volts * 8**0.5,
        "mean for peak": lambda n: n.volts * 8**0.5 / pi,
        "form factor for peak factor": lambda n: n.volts * pi / 8**0.5,
        "doubled": lambda n: n.volts + n.volts,
    },
    "wave-2": {
        "whole cycle": lambda n: 1 / n.hertz,
        "quarter of a cycle": lambda n: 0.25 / n.hertz,
        "two cycles": lambda n: 2 / n.hertz,
        "frequency of the supply at home": half_cycle,
    },
    "wave-5": {
        "took the crest as rms": lambda n: n.volts_peak,
        "twice too much": lambda n: n.volts_peak * 2**0.5,
        "mean for rms": lambda n: n.volts_peak * 2 / pi,
        "half of the crest": lambda n: n.volts_peak / 2,
    },
    "wave-6": {
        "rms instead of peak": lambda n: (n.supply.volts_rms - DROPS) / n.ohms,
        "peak to peak": lambda n: 2 * peak(n.supply.volts_rms) / n.ohms,
        "divided by root 2": lambda n: n.supply.volts_rms * 0.5**0.5 / n.ohms,
        "mean instead of peak": lambda n: mean(n.supply.volts_rms) / n.ohms,
        "drops over the dropper": lambda n: DROPS / n.ohms,
    },
    "wave-7": {
        "forgot half-wave": lambda n: 2 * mean(n.supply.volts_rms) / n.ohms,
        "volts over ohms": lambda n: n.supply.volts_rms / n.ohms,
        "half of the rms": lambda n: 0.5 * n.supply.volts_rms / n.ohms,
        "peak instead of mean": lambda n: peak(n.supply.volts_rms) / n.ohms,
        "half of the peak, or rms": lambda n: n.supply.volts_rms * 0.5**0.5 / n.ohms,
    },
    "wave-9": {
        "milliamperes as amperes": lambda n: mean(n.supply.volts_rms) / n.amps / 1000,
        "LED's drop over current": lambda n: 2.0 / n.amps,
        "bench supply of 12 V": lambda n: (12.0 - 2.0) / n.amps,
        "volts over amps": lambda n: (n.supply.volts_rms - 2.0) / n.amps,
        "forgot half-wave": lambda n: 2 * mean(n.supply.volts_rms) / n.amps,
        "peak over amps": lambda n: peak(n.supply.volts_rms) / n.amps,
        "half of the rms": lambda n: 0.5 * n.supply.volts_rms / n.amps,
    },
    "wave-11": {
        "both half-cycles": lambda n: 2 * (half_cycle(n) - n.starts),
        "the piece that is cut out": lambda n: n.starts,
        "the whole dark time": lambda n: half_cycle(n) + n.starts,
        "a whole half-cycle": half_cycle,
    },
    "wave-12": {
        "tolerance left out": lambda n: peak(n.supply.volts_rms),
        "rms instead of peak": lambda n: n.supply.volts_rms * (1 + n.percent / 100),
        "took the label": lambda n: n.supply.volts_rms,
        "percent taken off": lambda n: peak(n.supply.volts_rms) * (1 - n.percent / 100),
        "LED's reverse limit": lambda n: 5.0,
        "peak to peak": lambda n: 2 * peak(n.supply.volts_rms) * (1 + n.percent / 100),
    },
    "wave-16": {
        "squared the ratio of the volts": lambda n: (
            at_home(n) * (ABROAD[n.supply.volts_rms] / n.supply.volts_rms) ** 2
        ),
        "turned the ratio round": lambda n: (
            at_home(n) * n.supply.volts_rms / ABROAD[n.supply.volts_rms]
        ),
        "unchanged": at_home,
        "volts over ohms": lambda n: ABROAD[n.supply.volts_rms] / n.ohms,
        "forgot half-wave": lambda n: 2 * mean(ABROAD[n.supply.volts_rms]) / n.ohms,
    },
}
