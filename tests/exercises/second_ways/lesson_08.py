"""Lesson 08: what is left after a short, a bad joint, a fuse in a fault, and a barrier.

Sources: LED 2 V, diode 0.7 V: common practice, no source. Full rating up to 70 °C, none left at
155 °C: IEC 60115-1. 2 kΩ where touch current is measured, IEC 60990. 10 mA, which most men can
still let go of: IEC 60479-1, quoted from memory. 30 mA: IEC 60364-4-41, 415.1. The highest mains:
this package.
"""

from functools import cache
from math import pi, sqrt

import numpy as np

from second_ways import highest_volts

WITHIN = 1e-5  # the sum over instants is that good
DROPS, NETWORK = 2.7, 2000.0
TURN = (np.arange(36_000) + 0.5) * 2 * pi / 36_000


@cache
def amps(volts_rms, ohms):
    """The current of LED, diode and dropper over one cycle."""
    return np.maximum(sqrt(2) * volts_rms * np.sin(TURN) - DROPS, 0.0) / ohms


def left_of_four(n):
    return n.ohms * (amps(n.supply.volts_rms, 3 * n.ohms) ** 2).mean()


def least(n):
    """Ohms of a part that holds alone, in whole kilo-ohms, never below."""
    exact = most(n) / n.amps - NETWORK
    return -(-round(exact, 6) // 1000) * 1000


def most(n):
    return highest_volts(n.supply)


RIGHT = {
    "fail-recall-1": lambda n: amps(n.supply.volts_rms, 3 * n.ohms).mean(),
    "fail-recall-2": lambda n: n.rated_watts * (155 - n.air_celsius) / 85,
    "fail-1": lambda n: (sqrt(2) * n.supply.volts_rms - DROPS) / n.ohms,
    "fail-3": left_of_four,
    "fail-7": lambda n: (n.watts / n.supply.volts_rms) ** 2 * n.joint_ohms,
    "safe-11": lambda n: n.ohms + NETWORK,
    "safe-12": lambda n: most(n) / (n.ohms + NETWORK),
    "safe-14": least,
    "fail-9": lambda n: n.supply.volts_rms / n.ohms / n.fuse_amps,
}

SIMPLE = {
    "fail-recall-1": lambda n: sqrt(2) / pi * n.supply.volts_rms / (3 * n.ohms),
    "fail-1": lambda n: sqrt(2) * n.supply.volts_rms / n.ohms,
    "fail-3": lambda n: n.supply.volts_rms**2 / (3 * n.ohms) / 2 / 3,
    "safe-14": lambda n: most(n) / n.amps,  # the network left out of the sum
}

SLIPS = {
    "safe-14": {
        "took the RCD's current as the limit": lambda n: most(n) / 0.030 - NETWORK,
        "took the let-go current as the limit": lambda n: most(n) / 0.010 - NETWORK,
    },
    "fail-1": {"took the label for the crest": lambda n: (n.supply.volts_rms - 2.7) / n.ohms},
    "fail-3": {  # the heat of four alike, a quarter of it in each
        "counted the shorted one as well": lambda n: n.supply.volts_rms**2 / (4 * n.ohms) / 2 / 4,
    },
}
