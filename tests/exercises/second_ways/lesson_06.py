"""Lesson 06: light, what the eye makes of it, and from how far it is noticed.

Look: a third and a half as exponents, Stevens. Mean of a half-wave: 1/π of its crest. What the eye
needs: 0.242 µlx times (1 + √(0.4 L))², IALA E-200-2 (from memory), with L = half of the lux over π
(Lambert) and a margin of a hundred, common practice, no source. Photons: 1239.84 eV nm, CODATA. The
angle of a share of the heat: by halving an interval.
"""

from math import cos, exp, log, pi, radians, sqrt

from second_ways import lesson_05

WITHIN = 1e-5
SHEET_AMPS = 0.020


def root(value, degree):
    return exp(log(value) / degree)


def eye_lux(room_lux):
    luminance = 0.5 * room_lux / pi
    return 100 * 0.242e-6 * (1 + sqrt(0.4 * luminance)) ** 2


def candelas(metres, room_lux):
    return eye_lux(room_lux) * metres**2


def angle_of_heat(share):
    low, high = 0.0, 180.0
    for _ in range(60):
        middle = (low + high) / 2
        if lesson_05.heat(middle) > share:
            low = middle
        else:
            high = middle
    return low


def at_lowest(n):
    return n.amps * lesson_05.mean(angle_of_heat(n.heat_percent / 100))


RIGHT = {
    "see-recall-1": lambda n: 2 * n.supply.volts_rms / sqrt(2) / pi / n.ohms,
    "see-recall-2": lambda n: 50 * (1 + cos(radians(n.degrees))),
    "see-1": lambda n: 100 * root(n.light_percent / 100, 3),
    "see-3": lambda n: n.amps * n.look_ratio**2,
    "see-4": lambda n: n.rated_candelas / 20 * 1000 * n.amps,
    "see-5": lambda n: n.half_degrees + n.half_degrees,
    "see-6": lambda n: sqrt(n.candelas / eye_lux(n.room_lux)),
    "see-7": lambda n: SHEET_AMPS * candelas(n.metres, n.room_lux) / n.rated_candelas,
    "see-10": at_lowest,
    "see-12": lambda n: 1239.84198 / (n.wave_metres * 1e9),
    "see-14": lambda n: n.pulse_amps / 100 * n.lit_percent,
    "see-15": lambda n: 100 * (1 - 2 * n.low_amps / (n.high_amps + n.low_amps)),
    "see-16": lambda n: 1 / (n.cycles / n.supply.hertz),
}

SIMPLE = {}

SLIPS = {}
