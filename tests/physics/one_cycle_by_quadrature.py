"""The five circuits worked out a second way: instant by instant, then adaptive quadrature.

Shares nothing with helpers: the current at an instant follows from the circuit by cases, and scipy
integrates it between the angles where something switches. For the tests of `operating_point` and
`meters`.
"""

from math import asin, cos, pi, radians, sin, sqrt

from scipy.integrate import quad
from scipy.optimize import brentq


class Cycle:
    """One mains cycle of one circuit at one dimmer setting."""

    def __init__(self, circuit, volts, hertz, edge, degrees, ohms, led, second, diode, breakdown):
        self.circuit, self.ohms, self.hertz = circuit, ohms, hertz
        self.crest = sqrt(2.0) * volts
        self.led, self.second, self.diode, self.breakdown = led, second, diode, breakdown
        opens, shuts = {
            "none": (0.0, pi),
            "leading": (radians(degrees), pi),
            "trailing": (0.0, radians(degrees)),
        }[edge]
        self.pieces = []
        for start in (0.0, pi):
            marks = {start + opens, start + shuts, start + 0.5 * pi}
            for drop in (led, second, diode, breakdown, led + diode, led + 2.0 * diode):
                if drop < self.crest:
                    angle = asin(drop / self.crest)
                    marks |= {start + angle, start + pi - angle}
            inside = sorted(m for m in marks if start + opens <= m <= start + shuts)
            self.pieces += [(a, b) for a, b in zip(inside, inside[1:], strict=False) if b > a]

    def volts(self, angle):
        return self.crest * sin(angle)

    def branch(self, angle):
        """Current in the resistor, positive in the LED's half-cycle."""
        volts = self.volts(angle)
        forward, backward = {
            "resistor_only": (self.led, self.breakdown),
            "series_diode": (self.led + self.diode, None),
            "diode_across": (self.led, self.diode),
            "two_leds": (self.led, self.second),
            "bridge": (self.led + 2.0 * self.diode, self.led + 2.0 * self.diode),
        }[self.circuit]
        if volts > forward:
            return (volts - forward) / self.ohms
        if backward is not None and volts < -backward:
            return (volts + backward) / self.ohms
        return 0.0

    def in_led(self, angle):
        current = self.branch(angle)
        if self.circuit == "bridge":
            return abs(current)
        return current if self.circuit == "resistor_only" else max(current, 0.0)

    def forward(self, angle):
        return max(self.in_led(angle), 0.0)

    def in_second(self, angle):
        return max(-self.branch(angle), 0.0) if self.circuit == "two_leds" else 0.0

    def light(self, angle):
        return self.forward(angle) + self.in_second(angle)

    def led_watts(self, angle):
        current = self.in_led(angle)
        volts = self.led if current > 0.0 else -self.breakdown
        return volts * current + self.second * self.in_second(angle)

    def diode_watts(self, angle):
        current = abs(self.branch(angle))
        if self.circuit == "bridge":
            return 2.0 * self.diode * current
        if self.circuit == "diode_across":
            return self.diode * max(-self.branch(angle), 0.0)
        return self.diode * current if self.circuit == "series_diode" else 0.0

    def mean(self, of):
        """Mean over the whole cycle."""
        total = sum(quad(of, a, b, epsabs=0.0, epsrel=1e-12, limit=100)[0] for a, b in self.pieces)
        return total / (2.0 * pi)

    def highest(self, of):
        """Highest value; every piece rises or falls steadily, so it stands at an end."""
        inward = 1e-12
        ends = [x for a, b in self.pieces for x in (a + inward * (b - a), b - inward * (b - a))]
        return max([of(x) for x in ends], default=0.0)

    def above(self, of, level):
        """Fraction of the cycle above a level, and the mean of what lies above it."""
        share = area = 0.0
        for a, b in self.pieces:
            low, high = of(a + 1e-13 * (b - a)) - level, of(b - 1e-13 * (b - a)) - level
            if low <= 0.0 and high <= 0.0:
                continue
            if low < 0.0 or high < 0.0:
                crossing = brentq(lambda x: of(x) - level, a, b, xtol=1e-15, rtol=1e-14)
                a, b = (crossing, b) if low < 0.0 else (a, crossing)
            share += (b - a) / (2.0 * pi)
            area += quad(lambda x: of(x) - level, a, b, epsabs=0.0, epsrel=1e-12)[0] / (2.0 * pi)
        return share, area

    def conducting(self):
        """Fraction of the cycle with forward current; no piece is lit in part."""
        lit = (b - a for a, b in self.pieces if self.forward(0.5 * (a + b)) > 0.0)
        return sum(lit) / (2.0 * pi)

    def modulation(self, order):
        cosine = self.mean(lambda x: self.light(x) * cos(order * x))
        sine = self.mean(lambda x: self.light(x) * sin(order * x))
        return 200.0 * sqrt(cosine**2 + sine**2) / self.mean(self.light)

    def results(self):
        """Every field of an operating point but the ones that are mere cases."""
        mean = self.mean
        peak = self.highest(self.forward)
        light = mean(self.light)
        found = {
            "led_amps_mean": mean(self.forward),
            "led_amps_net_mean": mean(self.in_led),
            "led_amps_rms_forward": sqrt(mean(lambda x: self.forward(x) ** 2)),
            "led_amps_rms": sqrt(mean(lambda x: self.in_led(x) ** 2)),
            "led_amps_peak": peak,
            "led_reverse_amps_peak": self.highest(lambda x: max(-self.in_led(x), 0.0)),
            "led_conduction_fraction": self.conducting(),
            "led_bright_fraction": self.above(self.forward, 0.01 * peak)[0] if peak else 0.0,
            "second_led_amps_mean": mean(self.in_second),
            "second_led_amps_peak": self.highest(self.in_second),
            "branch_amps_rms": sqrt(mean(lambda x: self.branch(x) ** 2)),
            "branch_amps_peak": self.highest(lambda x: abs(self.branch(x))),
            "resistor_watts": mean(lambda x: self.ohms * self.branch(x) ** 2),
            "led_watts": mean(self.led_watts),
            "diode_watts": mean(self.diode_watts),
            "branch_watts": mean(lambda x: self.volts(x) * self.branch(x)),
            "light_flicker_index": self.above(self.light, light)[1] / light if light else 0.0,
        }
        for order, name in ((1, "line"), (2, "twice_line")):
            found[f"light_modulation_at_{name}_percent"] = self.modulation(order) if light else 0.0
        return found
