"""Steps behind a dimmer: the shares of time, heat, volts and light."""

from math import cos, pi, radians, sin, sqrt

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.roads.steps.general import factor


def _heat(degrees):
    return 1 - degrees / 180 + sin(2 * radians(degrees)) / (2 * pi)


def _light(degrees):
    return (1 + cos(radians(degrees))) / 2


def _share(formula, share=0.5):
    return {"take": lambda value, degrees, n: _before(value) * formula(degrees), "share": share}


def _before(value):
    return 1.0 if value is None else value


TIME_SHARE = Turn(
    "took the share of the time", "Do the start and the end of a half-cycle carry as much as its "
    "middle?", **_share(lambda d: 1 - d / 180),
)  # fmt: skip
RADIANS = "let the calculator take degrees for radians"
ASK_RADIANS = "What does your calculator give for the sine of 30°?"


def heat_share(degrees, called="the share of the heat"):
    """Share of the full heat that a cut wave leaves, from its firing angle."""
    return Step(
        called, "ratio", lambda value, d, n: _before(value) * _heat(d),
        "{value} × (1 − α/180 + sin 2α/6.283)",
        "{value} * phase_cut.power_fraction('leading', {operand})", operand=degrees,
        operand_of="angle",
        turns=(
            TIME_SHARE,
            Turn("took the share of the light", "Heat goes with the square. Does light?",
                 **_share(_light)),
            Turn("took the share of the volts", "How do you get from volts to heat?",
                 **_share(lambda d: sqrt(_heat(d)))),
            Turn("squared once too often", "Is it a share of the volts, or of the heat already?",
                 **_share(lambda d: _heat(d) ** 2)),
            Turn("took the sign of the sine the other way", "Try 0° and 180° in your formula: what "
                 "has to come out?", **_share(lambda d: 1 - d / 180 - sin(2 * radians(d)) / 2 / pi),
            ),
            Turn("took the sine of the angle, not of twice it", "Which angle stands in the sine?",
                 **_share(lambda d: 1 - d / 180 + sin(radians(d)) / 2 / pi)),
            Turn("divided the sine by π, not by 2π", "What is the sine divided by?",
                 **_share(lambda d: 1 - d / 180 + sin(2 * radians(d)) / pi)),
            Turn(RADIANS, ASK_RADIANS, **_share(lambda d: 1 - d / 180 + sin(2 * d) / 2 / pi)),
            Turn("took what is cut away", "Which part of the half-cycle is let through?",
                 **_share(lambda d: 1 - _heat(d))),
            Turn("took the angle let through for the angle cut", "Where is the dimmer fully open: "
                 "at 0° or at 180°?", **_share(lambda d: _heat(180 - d))),
            Turn("left the dimmer out", "What does the dimmer take away?", **_share(lambda d: 1.0)),
        ),
    )  # fmt: skip


def light_share(degrees, called="the share of the light"):
    """Share of the full mean that a cut wave leaves, from its firing angle."""
    return Step(
        called, "ratio", lambda value, d, n: _before(value) * _light(d),
        "{value} × (1 + cos α)/2",
        "{value} * phase_cut.mean_fraction('leading', {operand})", operand=degrees,
        operand_of="angle",
        turns=(
            TIME_SHARE,
            Turn("took the share of the heat", "Light goes with the mean. Does heat?",
                 **_share(_heat)),
            Turn("took the share of the volts", "Light goes with the mean. Do rms volts?",
                 **_share(lambda d: sqrt(_heat(d)))),
            Turn("forgot to halve", "Try 0° in your formula: what has to come out?",
                 **_share(lambda d: 2 * _light(d))),
            Turn(RADIANS, ASK_RADIANS, **_share(lambda d: (1 + cos(d)) / 2)),
            Turn("took the sine for the cosine", "Try 0° in your formula: what has to come out?",
                 **_share(lambda d: (1 + sin(radians(d))) / 2)),
            Turn("took the cosine alone", "Try 180° in your formula: what has to come out?",
                 **_share(lambda d: abs(cos(radians(d))))),
            Turn("took what is cut away", "Which part of the half-cycle is let through?",
                 **_share(lambda d: 1 - _light(d))),
            Turn("left the dimmer out", "What does the dimmer take away?", **_share(lambda d: 1.0)),
        ),
    )  # fmt: skip


def root(called="the share of the volts"):
    """From a share of the heat to the share of the volts or amps."""
    return Step(
        called, "ratio", lambda value, operand, n: sqrt(value), "√{value}", "({value})**0.5",
        turns=(
            Turn("forgot the root", "Heat goes with the square of the volts. What leads back?",
                 factor(1.0)),
            Turn("squared instead of taking the root", "Which way leads from heat back to volts?",
                 lambda value, operand, n: value * value),
        ),
    )  # fmt: skip
