"""A real LED behind a dropper a second way: brentq at each instant, adaptive quadrature over them.

Shares nothing with helpers: Shockley's equation is solved for the node between dropper and LED.
"""

from functools import cache
from math import expm1, log1p, pi, radians, sin, sqrt

from scipy.integrate import quad
from scipy.optimize import brentq

THERMAL = 1.380649e-23 * 298.15 / 1.602176634e-19


class Real:
    """Parts in series as (constant volts, ohms, ideality, saturation amps or None)."""

    def __init__(self, volts_rms, ohms, edge, degrees, chain):
        self.crest, self.ohms, self.chain = sqrt(2.0) * volts_rms, ohms, chain
        opens = radians(degrees) if edge == "leading" else 0.0
        shuts = radians(degrees) if edge == "trailing" else pi
        marks = {opens, shuts, *(each for each in (0.02, 0.3, pi / 2, pi - 0.3, pi - 0.02)
                                 if opens < each < shuts)}  # fmt: skip
        self.marks = sorted(marks)
        self.amps = cache(self.amps_anew)  # every sum of a half-cycle asks at the same angles

    def drop(self, part, amps):
        constant, ohms, ideality, saturation = part
        junction = ideality * THERMAL * log1p(amps / saturation) if saturation else 0.0
        return constant + ohms * amps + junction

    def amps_anew(self, angle):
        push = self.crest * sin(angle)

        def lack(amps):
            return self.ohms * amps + sum(self.drop(each, amps) for each in self.chain) - push

        return 0.0 if lack(0.0) >= 0.0 else brentq(lack, 0.0, push / self.ohms, xtol=1e-22)

    def mean(self, of):
        """Mean over the whole cycle of something of current and angle."""
        pieces = zip(self.marks, self.marks[1:], strict=False)
        total = sum(
            quad(lambda x: of(self.amps(x), x), a, b, epsabs=0.0, epsrel=1e-8, limit=400)[0]
            for a, b in pieces
        )
        return total / (2.0 * pi)


def saturation(volts, amps, ideality, ohms):
    """Saturation current of a junction that passes through a point of its sheet."""
    return amps / expm1((volts - amps * ohms) / (ideality * THERMAL))
