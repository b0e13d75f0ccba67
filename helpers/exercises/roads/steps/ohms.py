"""Steps of Ohm's law with an LED in the way, and of resistors together."""

from math import sqrt

from helpers.exercises.roads.road import Step, Turn

DROP_LEFT_OUT = Turn(
    "left out the LED's own drop", "What does the LED keep for itself?",
    lambda value, drop, n: value, usual=True,
)  # fmt: skip


def less_drop(drop, called="the volts left for the dropper"):
    """What is left of the volts when the drops have taken theirs."""
    return Step(
        called, "voltage", lambda value, drop, n: value - drop, "{value} − {operand}",
        "({value} - {operand})", operand=drop, operand_of="voltage",
        turns=(
            DROP_LEFT_OUT,
            Turn("added the LED's drop", "Does the LED push, or does it take?",
                 lambda value, drop, n: value + drop),
            Turn("took the LED's drop twice", "How many LEDs stand in the chain?",
                 lambda value, drop, n: value - 2 * drop),
            Turn("took the LED's drop alone", "Which voltage stands across the resistor?",
                 lambda value, drop, n: drop),
            Turn("took off a diode's 0.7 V as well", "Does a diode stand in this chain?",
                 lambda value, drop, n: value - drop - 0.7),
        ),
    )  # fmt: skip


def smallest(percent, called="the smallest of the batch"):
    """The low end of a tolerance."""
    return Step(
        called, "resistance", lambda value, less, n: value * (1 - less / 100),
        "{value} − {operand}", "{value} * (1 - {operand} / 100)", operand=percent,
        operand_of="percent",
        turns=(
            Turn("left the tolerance out", "Which resistor of the batch lets the most through?",
                 lambda value, less, n: value, usual=True),
            Turn("took the largest of the batch", "Which end of the tolerance is asked for?",
                 lambda value, less, n: value * (1 + less / 100)),
        ),
    )  # fmt: skip


def series(pair, called="both together"):
    """Start from two resistors one after the other."""
    return _of_pair(pair, called, sum, "+", "ohms_law.series(*{operand})", (
        Turn("took them as side by side", "One after the other: more in the way, or less?",
             lambda value, pair, n: _side_by_side(pair)),
        Turn("left out the second one", "What does the second one add?",
             lambda value, pair, n: pair[0]),
        Turn("left out the first one", "What does the first one add?",
             lambda value, pair, n: pair[1]),
        Turn("took the mean of the two", "Does a second obstacle make the way easier?",
             lambda value, pair, n: sum(pair) / 2),
    ))  # fmt: skip


def parallel(pair, called="both together"):
    """Start from two resistors side by side."""
    return _of_pair(pair, called, _side_by_side, "beside", "ohms_law.parallel(*{operand})", (
        Turn("added them as one after the other", "Does a second path make the way harder?",
             lambda value, pair, n: sum(pair)),
        Turn("took the difference", "Does a second path make the way harder?",
             lambda value, pair, n: abs(pair[0] - pair[1])),
        Turn("halved the smaller one", "That is right for two of the same. Are these the same?",
             lambda value, pair, n: min(pair) / 2),
        Turn("divided the product by the difference", "The product over what?",
             lambda value, pair, n: pair[0] * pair[1] / abs(pair[0] - pair[1])),
        Turn("doubled the product over the sum", "Where does the two come from?",
             lambda value, pair, n: 2 * _side_by_side(pair)),
        Turn("halved the product over the sum", "Where does the half come from?",
             lambda value, pair, n: _side_by_side(pair) / 2),
        Turn("took the mean of the two", "Is one path of two easier than the easier one?",
             lambda value, pair, n: sum(pair) / 2),
        Turn("took the root of the product", "The product over what?",
             lambda value, pair, n: sqrt(pair[0] * pair[1])),
        Turn("left the sum of 1/R upside down", "1/R was added. What is still to be done?",
             lambda value, pair, n: 1 / _side_by_side(pair)),
    ))  # fmt: skip


def _side_by_side(pair):
    return 1 / sum(1 / one for one in pair)


def _of_pair(name, called, take, sign, code, turns):
    return Step(called, "resistance", lambda value, pair, n: take(pair), sign, code, operand=name,
                turns=turns)  # fmt: skip
