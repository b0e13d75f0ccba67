"""Lesson 03: peak, mean and dark time of a half-wave, from the integral of a sine, by hand.

The mean of what is left of one half-cycle above the drops D of LED and diode, with the angle a at
which the wave passes them (peak × sin a = D), is the integral of peak × sin x − D from a to π − a
over 2π: (2 × peak × cos a − D × (π − 2a)) / 2π.

Sources: LED 2 V and diode 0.7 V, 5 V that an LED stands in reverse, 20 mA that it may carry: common
practice, no source.
"""

from math import asin, cos, pi, sqrt

WITHIN = 1e-9
DROPS = 2.7
E12 = (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82)  # IEC 60063
MADE = [figure * 10.0**power for power in range(3, 6) for figure in E12]


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


def abroad(n):
    return n.other.volts_rms


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
    "wave-16": lambda n: mean_above_drops(abroad(n)) / n.ohms,
}

SIMPLE = {
    "wave-6": lambda n: peak(n.supply.volts_rms) / n.ohms,
    "wave-7": lambda n: mean(n.supply.volts_rms) / n.ohms,
    "wave-9": lambda n: mean(n.supply.volts_rms) / n.amps,
    "wave-11": lambda n: half_cycle(n) - n.starts,
    "wave-16": lambda n: mean(abroad(n)) / n.ohms,
}

SLIPS = {
    "wave-2": {
        "let more hertz mean more time": lambda n: (
            0.5 / n.supply.hertz * (n.hertz / n.supply.hertz)
        ),
    },
    "wave-6": {
        "took the label for the crest": lambda n: (n.supply.volts_rms - DROPS) / n.ohms,
        "took the LED's drop alone": lambda n: DROPS / n.ohms,
    },
    "wave-7": {
        "used the quick sum, volts over ohms": lambda n: (n.supply.volts_rms - DROPS) / n.ohms,
        "took what an LED may carry": lambda n: 0.020,
    },
    "wave-9": {
        "took the LED's drop alone": lambda n: 2.0 / n.amps,
        "used the quick sum, volts over ohms": lambda n: (n.supply.volts_rms - 2.0) / n.amps,
        "rounded up to a value of the series": lambda n: min(
            ohms for ohms in MADE if ohms >= mean_above_drops(n.supply.volts_rms) / n.amps
        ),
    },
    "wave-12": {"took what an LED stands in reverse": lambda n: 5.0},
    "wave-16": {
        "squared the ratio": lambda n: at_home(n) * (abroad(n) / n.supply.volts_rms) ** 2,
        "turned the ratio round": lambda n: at_home(n) * n.supply.volts_rms / abroad(n),
        "left the other mains out": at_home,
        "took the root of the ratio": lambda n: at_home(n) * sqrt(abroad(n) / n.supply.volts_rms),
    },
}
