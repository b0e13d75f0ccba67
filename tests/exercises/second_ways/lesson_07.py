"""Lesson 07: bridges, capacitor droppers on a sine and behind an edge, bleeders, neon lamps.

Sums over instants for what passes a bridge; a capacitor dropper on a sine is stepped through the
cycle; a discharge is added up in small steps. Bridge and LED drop 3.4 V: common practice, no
source.
"""

from functools import cache
from math import pi, sqrt

import numpy as np

from second_ways import highest_volts

WITHIN = 2e-4  # the stepped sums are that good
DROPS = 3.4
TURN = (np.arange(200_000) + 0.5) * 2 * pi / 200_000


def bridge_amps(n):
    over = np.maximum(np.abs(sqrt(2) * n.supply.volts_rms * np.sin(TURN)) - DROPS, 0.0)
    return over.mean() / n.ohms


@cache
def stepped(volts_rms, hertz, farads, surge):
    """Mean of the size and mean square of the current of a capacitor dropper on a sine.

    Within each step the capacitor moves by the exact exponential towards the volts of its middle.
    """
    crest, steps = sqrt(2) * volts_rms, 40_000
    step = 1 / hertz / steps
    keep = np.exp(-step / (surge * farads))
    held, size, square = -(crest - DROPS), 0.0, 0.0
    for number in range(2 * steps):
        push = crest * np.sin(2 * pi * (number + 0.5) / steps) - held
        spare = abs(push) - DROPS
        if spare > 0.0:
            moved = farads * spare * (1 - keep)
            held += moved / farads * (1 if push > 0 else -1)
            if number >= steps:
                size += moved
                square += (moved / step) ** 2 * step
    return size * hertz, square * hertz


def dropper_mean(n):
    return stepped(n.supply.volts_rms, n.supply.hertz, n.farads, 1_000.0)[0]


def surge_heat(n):
    amps_square = stepped(n.supply.volts_rms, n.supply.hertz, n.farads, n.surge_ohms)[1]
    return n.surge_ohms * amps_square


def pin_volts(n):
    """Ten thousand steps of a second, each losing its share: (1 - t / RC), to second order."""
    part = 1e-4 / (n.ohms * n.farads)
    return sqrt(2) * highest_volts(n.supply) * (1 - part + part * part / 2) ** 10_000


def jump(n):
    """The height of the wave by the sine's series around its crest."""
    off = (n.degrees - 90) * pi / 180
    series = 1 - off**2 / 2 + off**4 / 24 - off**6 / 720 + off**8 / 40_320
    return sqrt(2) * n.supply.volts_rms * series


def goes_out(n):
    """The last angle of a fine row at which the wave still stands at the striking volts."""
    angles = np.linspace(90, 180, 900_001)
    lit = sqrt(2) * n.supply.volts_rms * np.sin(np.radians(angles)) >= n.strike_volts
    return angles[lit][-1]


RIGHT = {
    "better-recall-1": lambda n: n.supply.volts_rms**2 / n.ohms,
    "better-1": bridge_amps,
    "better-2": lambda n: n.supply.volts_rms**2 / n.ohms / 2,
    "better-4": dropper_mean,
    "better-6": surge_heat,
    "better-7": pin_volts,
    "better-9": lambda n: n.jump_volts,
    "better-10": lambda n: jump(n) / n.surge_ohms,
    "better-11": lambda n: 2 * n.supply.hertz * n.farads * jump(n) ** 2 / 2,
    "better-12": goes_out,
    "better-13": lambda n: n.lamp_watts * 24 * 365,
}

SIMPLE = {
    "better-1": lambda n: 2 * sqrt(2) / pi * n.supply.volts_rms / n.ohms,
    "better-4": lambda n: 4 * sqrt(2) * n.supply.volts_rms * n.supply.hertz * n.farads,
    "better-6": lambda n: (
        n.surge_ohms * (n.supply.volts_rms * 2 * pi * n.supply.hertz * n.farads) ** 2
    ),
}

SLIPS = {
    "better-recall-1": {
        "counted one half-cycle only": lambda n: n.supply.volts_rms**2 / n.ohms / 2,
    },
    "better-4": {
        "took the rms current for the mean": lambda n: (
            n.supply.volts_rms * n.farads * 2 * pi * n.supply.hertz
        ),
    },
    "better-7": {
        # e^-x as the limit of a million small losses
        "took the label for the highest mains": lambda n: (
            n.supply.volts_rms * sqrt(2) * (1 - 1e-6 / (n.ohms * n.farads)) ** 1_000_000
        ),
    },
}
