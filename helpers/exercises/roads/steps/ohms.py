"""Steps of Ohm's law with an LED in the way, of resistors together and of values to be bought."""

from math import ceil, inf, sqrt

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.roads.steps.general import factor, given, knowing, over
from helpers.physics import resistors

RED_VOLTS, LIKE_RED_VOLTS = 2.0, 2.5  # a drop below the second is not told from the first [V]
BLUE_VOLTS = (3.0, 3.1)  # as people say it, and as lesson 02 has it [V]
DROP_LEFT_OUT = Turn(
    "left out the LED's own drop", "What does the LED keep for itself?",
    lambda value, drop, n: value, usual=True,
)  # fmt: skip


def _blue(volts):
    return Turn(
        "took the drop of a blue LED",
        "Which LED does the question name?",
        lambda value, drop, n: (
            inf if drop > LIKE_RED_VOLTS or value == volts + drop else value - volts
        ),
        share=0.0,
    )


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
            Turn("took the drop of a red LED", "Which LED does the question name?",
                 lambda value, drop, n: value - RED_VOLTS if drop > LIKE_RED_VOLTS else inf,
                 share=0.0),
            *map(_blue, BLUE_VOLTS),
        ),
    )  # fmt: skip


def current_through(ohms, called="the current"):
    """Volts over ohms, asked for as a current."""
    return knowing(
        over(ohms, called=called),
        Turn("squared the volts", "Volts squared over ohms are watts. What are volts over ohms?",
             lambda value, ohms, n: value * value / ohms, share=0.0),
    )  # fmt: skip


def dc_current(ohms, called="the current"):
    """Volts over ohms on a bench supply, where nothing of the mains belongs."""
    return knowing(
        current_through(ohms, called),
        Turn("took the crest of a DC supply", "Does DC rise above its volts?",
             lambda value, ohms, n: sqrt(2) * value / ohms),
        Turn("halved it as on the mains", "Does DC come in half-cycles?",
             lambda value, ohms, n: value / ohms / 2),
        Turn("took 0.45 as on the mains", "Does DC come in half-cycles?",
             lambda value, ohms, n: 0.45 * value / ohms),
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
                 lambda value, less, n: value * (1 + less / 100), usual=True),
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
        Turn("took the difference", "Does the second one take ohms away?",
             lambda value, pair, n: abs(pair[0] - pair[1])),
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
             lambda value, pair, n: 1 / _side_by_side(pair), any_decade=True),
        Turn("left the product undivided", "The product over what?",
             lambda value, pair, n: pair[0] * pair[1], share=0.0, any_decade=True),
        Turn("took the smaller one alone", "What does the other path let through?",
             lambda value, pair, n: min(pair), share=0.0),
    ))  # fmt: skip


def _side_by_side(pair):
    return 1 / sum(1 / one for one in pair)


def _of_pair(name, called, take, sign, code, turns):
    return Step(called, "resistance", lambda value, pair, n: take(pair), sign, code, operand=name,
                turns=turns)  # fmt: skip


def _read(change):
    """Return what reads the bands wrong: from both digits and the zeros to other figures."""

    def take(value, ohms, n):
        figures = f"{ohms:.0f}"
        return float(change(figures[0], figures[1], figures[2:]))

    return take


def _one_off(place, by):
    def take(value, ohms, n):
        figures = list(f"{ohms:.0f}")
        digit = int(figures[place]) + by
        if not (place == 0) <= digit <= 9:  # no value begins with black
            raise ValueError(f"no colour of this band stands for {digit}")
        figures[place] = str(digit)
        return float("".join(figures))

    return take


FIRST_OFF = ("read the first band one colour off", "Which digits belong to the colours around it?")
SECOND_OFF = ("read the second band one colour off", FIRST_OFF[1])
HOW_MANY_ZEROS = "How many zeros does the third band stand for?"


def bands(ohms, called="what the bands say"):
    """Start from the bands of a resistor: two digits, and how many zeros follow."""
    return given(
        ohms, called=called,
        turns=(
            Turn("counted one zero too many", HOW_MANY_ZEROS, lambda value, ohms, n: 10 * ohms),
            Turn("counted one zero too few", HOW_MANY_ZEROS, lambda value, ohms, n: ohms / 10),
            Turn("swapped the first two bands", "From which end do you read?",
                 _read(lambda one, two, zeros: two + one + zeros)),
            Turn("read the third band as a digit", HOW_MANY_ZEROS,
                 _read(lambda one, two, zeros: f"{one}{two}{len(zeros)}"), share=0.0),
            Turn("took the third band as a plain factor", HOW_MANY_ZEROS,
                 _read(lambda one, two, zeros: int(one + two) * len(zeros)), share=0.0),
            Turn(*FIRST_OFF, _one_off(0, 1)), Turn(*FIRST_OFF, _one_off(0, -1)),
            Turn(*SECOND_OFF, _one_off(1, 1)), Turn(*SECOND_OFF, _one_off(1, -1)),
        ),
    )  # fmt: skip


def next_up(series, called="the next value up"):
    """The least value of a series that is no smaller than the sum."""
    return Step(
        called, "resistance", lambda value, operand, n: resistors.next_up(value, series),
        f"{{value}}, up to the next of {series},", f'resistors.next_up({{value}}, "{series}")',
        turns=(
            Turn("took the next value down", "Do fewer ohms mean more current, or less?",
                 lambda value, operand, n: resistors.next_down(value, series)),
            Turn("went one value too far", "Is there no value between the sum and this one?",
                 lambda value, operand, n: resistors.next_up(
                     1.001 * resistors.next_up(value, series), series), share=0.0),
            Turn("kept the sum as it came out", "Is this value in the series?", factor(1.0)),
            Turn("rounded up to a whole kilo-ohm", "Which values does the series have around it?",
                 lambda value, operand, n: 1e3 * ceil(value / 1e3)),
        ),
    )  # fmt: skip
