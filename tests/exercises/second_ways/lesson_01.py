"""Lesson 01: the current through a body, one part shorted, and the width of a gap.

Sources: 2 kΩ where touch current is measured, IEC 60990. 775 Ω for dry hands, and 10 mA, which
most men can still let go of: IEC 60479-1, quoted from memory. Mains 10 % high: IEC 60038. 30 mA:
IEC 60364-4-41, 415.1.
"""

WITHIN = 1e-12
NETWORK, DRY_HANDS = 2000.0, 775.0
CREST = 2**0.5

# Rated impulse of the category, IEC 60664-1 Table F.1, and its clearance in an inhomogeneous field,
# Table F.2: 1.5 mm at 2.5 kV and 3 mm for its reinforced insulation seen in a public text; the
# others are quoted from memory. Reinforced takes the next impulse up.
BASIC_METRES = {
    True: {"II": 1.5e-3, "III": 3.0e-3, "IV": 5.5e-3},
    False: {"II": 0.5e-3, "III": 1.5e-3, "IV": 3.0e-3},
}
REINFORCED_METRES = {
    True: {"II": 3.0e-3, "III": 5.5e-3, "IV": 8.0e-3},
    False: {"II": 1.5e-3, "III": 3.0e-3, "IV": 5.5e-3},
}


def least(n):
    """Ohms of a part that holds alone, in whole kilo-ohms, never below."""
    exact = most(n) / n.amps - NETWORK
    return -(-round(exact, 6) // 1000) * 1000


def most(n):
    return 1.1 * n.supply.volts_rms


RIGHT = {
    "safe-recall-1": lambda n: n.amps,
    "safe-1": lambda n: n.supply.volts_rms / n.ohms,
    "safe-11": lambda n: n.ohms + NETWORK,
    "safe-12": lambda n: most(n) / (n.ohms + NETWORK),
    "safe-14": least,
    "safe-16": lambda n: REINFORCED_METRES[n.supply.volts_rms > 150.0][n.category],
}

SIMPLE = {}

SLIPS = {
    "safe-recall-1": {"thousandths written as hundredths": lambda n: n.amps * 10},
    "safe-1": {  # the number, typed bare, is read in milliamperes
        "held down to the RCD's current": lambda n: 0.030,
        "took dry hands": lambda n: n.supply.volts_rms / DRY_HANDS,
        "used the crest": lambda n: CREST * n.supply.volts_rms / n.ohms,
        "multiplied instead of divided": lambda n: n.supply.volts_rms * n.ohms / 1000,
        "ohms over volts": lambda n: n.ohms / n.supply.volts_rms / 1000,
    },
    "safe-11": {
        "counted both parts": lambda n: n.ohms + n.ohms + NETWORK,
        "parallel instead of series": lambda n: 1 / (1 / n.ohms + 1 / n.ohms) + NETWORK,
        "took both as shorted": lambda n: NETWORK,
    },
    "safe-12": {
        "took both as shorted": lambda n: most(n) / NETWORK,
        "counted both parts": lambda n: most(n) / (n.ohms + n.ohms + NETWORK),
        "left out the ten per cent": lambda n: n.supply.volts_rms / (n.ohms + NETWORK),
        "used the crest": lambda n: CREST * most(n) / (n.ohms + NETWORK),
    },
    "safe-14": {
        "shared the ohms between the parts": lambda n: least(n) / 2,
        "took the RCD's current as the limit": lambda n: most(n) / 0.030 - NETWORK,
        "took the let-go current as the limit": lambda n: most(n) / 0.010 - NETWORK,
        "left out the ten per cent": lambda n: n.supply.volts_rms / n.amps - NETWORK,
        "used the crest": lambda n: CREST * most(n) / n.amps - NETWORK,
    },
    "safe-16": {
        "took basic insulation": lambda n: BASIC_METRES[n.supply.volts_rms > 150.0][n.category]
    },
}
