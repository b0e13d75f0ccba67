"""Lesson 09: limits and uncertainties, a loaded divider, a warm-up, two readings, a guard band.

Sources: limits over the root of three, squares added, k = 2: JCGM 100:2008, 4.3.7, 5.1.2 and 6.2.
Guard band as wide as the expanded uncertainty: JCGM 106:2012, 8.3. Input of 10 MΩ, five time
constants: common practice, no source.
"""

from math import sqrt

import numpy as np

WITHIN = 1e-6


def quadrature(*parts):
    return float(np.linalg.norm(parts))


def divided(n):
    """Two resistors in series, the meter across the lower one, by the currents at the node."""
    lower = n.ohms * 10e6 / (n.ohms + 10e6)
    return n.volts * lower / (n.ohms + lower)


def apart(n):
    return max(n.predicted_volts, n.reading_volts) - min(n.predicted_volts, n.reading_volts)


RIGHT = {
    "meter-recall-1": lambda n: (n.volts - n.led_volts) / (n.ohms + n.ohms),
    "meter-2": lambda n: 0.01 * n.percent * n.reading_volts + 0.01 * n.digits,
    "meter-4": lambda n: sqrt((n.ohms * n.percent / 100) ** 2 / 3),
    "meter-5": lambda n: 2 * quadrature(n.supply_volts, n.parts_volts),
    "meter-6": divided,
    "meter-11": lambda n: 5 * n.tau_seconds,
    "meter-13": lambda n: (
        abs(n.predicted_volts - n.reading_volts)
        / quadrature(n.predicted_u_volts, n.reading_u_volts)
    ),
    "meter-15": lambda n: n.printed_ohms * n.second_volts / n.first_volts,
    "meter-17": lambda n: n.least_ohms + 2 * sqrt(n.limits_ohms**2 / 3),
}
SIMPLE = {}
SLIPS = {"meter-11": {"gave one time constant": lambda n: n.tau_seconds}}
