"""Lesson 02: Ohm's law on a bench supply, by hand.

Sources: E12 from IEC 60063. 30 mA: IEC 60364-4-41, 415.1. LED drops: common practice, no source.
"""

WITHIN = 1e-12
E12 = (1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10.0)
LED = {"red": 2.0, "yellow": 2.1, "blue": 3.1}


def other_digits_first(ohms):
    digits = f"{ohms:.0f}"
    return float(digits[1] + digits[0] + digits[2:])


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
    "ohm-recall-1": {
        "held down to the RCD's current": lambda n: 0.030,
        "multiplied instead of divided": lambda n: n.supply.volts_rms * n.ohms / 1000,
    },
    "ohm-1": {
        "one place too few": lambda n: n.amps / 10,
        "one place too many": lambda n: n.amps * 10,
    },
    "ohm-5": {
        "one zero too many": lambda n: n.ohms * 10,
        "one zero too few": lambda n: n.ohms / 10,
        "swapped the first two bands": lambda n: other_digits_first(n.ohms),
    },
    "ohm-6": {
        "next value down": lambda n: 1000 * max(value for value in E12 if value < n.ohms / 1000),
        "kept the calculated value": lambda n: n.ohms,
    },
    "ohm-11": {
        "added as in series": lambda n: n.pair[0] + n.pair[1],
        "took the mean": lambda n: (n.pair[0] + n.pair[1]) / 2,
        "difference": lambda n: abs(n.pair[0] - n.pair[1]),
    },
    "ohm-12": {
        "doubled the old current": lambda n: 2 * (12.0 - LED[n.led]) / n.ohms,
        "left out the LED's own drop": lambda n: 24.0 / n.ohms,
        "current on the old supply": lambda n: (12.0 - LED[n.led]) / n.ohms,
    },
}
