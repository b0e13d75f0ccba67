"""Lesson 01: the current through a body, and the width of a gap.

Source of the highest mains: this package.
"""

from second_ways import highest_volts

WITHIN = 1e-12

# Rated impulse of the category, IEC 60664-1 Table F.1, and its clearance in an inhomogeneous field,
# Table F.2: 1.5 mm at 2.5 kV and 3 mm for its reinforced insulation seen in a public text; the
# others are quoted from memory. Reinforced takes the next impulse up. By whether above 150 V.
CLEARANCE_METRES = {
    ("plugged in", True): 3.0e-3, ("built in", True): 5.5e-3, ("at the origin", True): 8.0e-3,
    ("plugged in", False): 1.5e-3, ("built in", False): 3.0e-3, ("at the origin", False): 5.5e-3,
}  # fmt: skip
# Table F.4, pollution degree 2, seen in a public excerpt: row, millimetres for group III and for a
# printed board. Reinforced is twice that.
CREEPAGE = ((125, 1.5, 0.25), (160, 1.6, 0.40), (200, 2.0, 0.63), (250, 2.5, 1.0), (320, 3.2, 1.6))


def both_metres(n):
    """Clearance, and creepage in the first row that the highest mains does not pass."""
    row = next(row for row in CREEPAGE if row[0] >= most(n))
    creepage = 2e-3 * row[2 if n.place == "built in" else 1]
    return CLEARANCE_METRES[n.place, n.supply.volts_rms > 150.0], creepage


def most(n):
    return highest_volts(n.supply)


RIGHT = {
    "safe-recall-1": lambda n: n.amps,
    "safe-1": lambda n: n.supply.volts_rms / n.ohms,
    "safe-16": lambda n: max(both_metres(n)),
}

SIMPLE = {}

SLIPS = {}
