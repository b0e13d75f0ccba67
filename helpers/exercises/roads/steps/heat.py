"""Steps from volts and ohms to heat, and to a rating."""

from math import pi, sqrt

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.roads.steps.general import factor


def squared_over(ohms, called="the heat of a whole wave"):
    """Volts squared over ohms."""
    return Step(
        called, "power", lambda value, below, n: value * value / below, "{value}² / {operand}",
        "{value}**2 / {operand}", operand=ohms, operand_of="resistance",
        turns=(
            Turn("forgot to square the volts", "Volts over ohms is a current. What makes watts?",
                 lambda value, below, n: value / below, share=0.0),
            Turn("squared the crest", "Which voltage decides heat: crest, rms or mean?",
                 lambda value, below, n: 2 * value * value / below, usual=True),
            Turn("squared the mean", "Which voltage decides heat: crest, rms or mean?",
                 lambda value, below, n: (2 * sqrt(2) / pi * value) ** 2 / below),
            Turn("multiplied by the ohms", "Volts over ohms is a current. What makes watts?",
                 lambda value, below, n: value * value * below, share=0.0, any_decade=True),
            Turn("multiplied volts by ohms", "What do volts over ohms give? And times volts again?",
                 lambda value, below, n: value * below, share=0.0, any_decade=True),
            Turn("squared the ohms too", "Which of the two is squared?",
                 lambda value, below, n: (value / below) ** 2, share=0.0),
        ),
    )  # fmt: skip


def halved(called="the heat of a half-wave", of="power"):
    """One half-cycle of two."""
    return Step(
        called, of, factor(0.5), "{value} / 2", "{value} / 2",
        turns=(
            Turn("counted both half-cycles", "What does the diode do in the second half-cycle?",
                 factor(1.0), usual=True),
            Turn("halved the volts before squaring", "Half the time, or half the volts?",
                 factor(0.25)),
            Turn("took 0.707 for the half", "Does heat halve with the time, or with its root?",
                 factor(1 / sqrt(2))),
            Turn("took 0.45 for the half", "0.45 is the mean. What share of the heat is left?",
                 factor(0.45)),
        ),
    )  # fmt: skip


def doubled(called="twice the heat"):
    """The margin of a rating."""
    return Step(
        called, "power", factor(2.0), "2 × {value}", "2 * {value}",
        turns=(
            Turn("left out the margin", "How much may a part run at, compared with its rating?",
                 factor(1.0), usual=True),
            Turn("halved instead of doubling", "Has the rating to be higher than the heat, or "
                 "lower?", factor(0.5)),
        ),
    )  # fmt: skip
