"""Lesson 02: Ohm's law on a bench supply, by hand.

Sources: E12 from IEC 60063. LED drops: common practice, no source.
"""

WITHIN = 1e-12
E12 = (1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10.0)
LED = {"red": 2.0, "yellow": 2.1, "blue": 3.1}

RIGHT = {
    "ohm-recall-1": lambda n: n.supply.volts_rms / n.ohms,
    "ohm-1": lambda n: n.amps,
    "ohm-2": lambda n: n.volts / n.ohms,
    "ohm-3": lambda n: (n.volts - LED[n.led]) / n.amps,
    "ohm-5": lambda n: n.ohms,
    "ohm-6": lambda n: 1000 * min(value for value in E12 if value >= n.ohms / 1000),
    "ohm-7": lambda n: (n.volts - 2.0) / (n.ohms * 0.9),
    "ohm-10": lambda n: n.volts / (n.pair[0] + n.pair[1]),
    "ohm-11": lambda n: n.pair[0] * n.pair[1] / (n.pair[0] + n.pair[1]),
    "ohm-12": lambda n: (24.0 - LED[n.led]) / n.ohms,
}

SIMPLE = {}

SLIPS = {
    "ohm-1": {"took one over the number": lambda n: 0.001 / n.amps},
    "ohm-2": {"took off an LED's drop": lambda n: (n.volts - 2.0) / n.ohms},
    "ohm-7": {
        "took the rise alone": lambda n: 0.1 * (n.volts - 2.0) / n.ohms,
        "raised the supply as well": lambda n: (1.1 * n.volts - 2.0) / (0.9 * n.ohms),
        "took the tolerance off the current": lambda n: 0.9 * (n.volts - 2.0) / n.ohms,
    },
    "ohm-10": {"took off an LED's drop": lambda n: (n.volts - 2.0) / (n.pair[0] + n.pair[1])},
}
