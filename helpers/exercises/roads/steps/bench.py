"""Steps on the bench: limits of a reading, uncertainties, loading, warming up, a guard band."""

from math import hypot, log, sqrt

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.roads.steps.general import factor
from helpers.exercises.roads.steps.heat import shared, shared_volts
from helpers.physics import heat
from helpers.physics.meters import INPUT_OHMS

FULL_SCALE = 20.0  # of the range that the questions read volts on [V]


def per_cent_of(percent, of, called, *turns):
    """So many per cent of a value: of a reading, or of what is printed."""
    return Step(
        called, of, lambda value, percent, n: value * percent / 100, "{operand} of {value}",
        "{value} * {operand} / 100", operand=percent, operand_of="percent",
        turns=(
            Turn("gave the whole width, from end to end", "How far is it to one side?",
                 lambda value, percent, n: 2 * value * percent / 100),
            *turns,
        ),
    )  # fmt: skip


PER_CENT_OF_RANGE = Turn(
    "took the per cent of the whole range", "Per cent of what: of the range, or of the reading?",
    lambda value, percent, n: FULL_SCALE * percent / 100,
)  # fmt: skip


def plus_digits(of="voltage", called="the limits to either side"):
    """Add the digits of a sheet, each worth one step of the display's last place."""

    def own(n):
        return n.digits * n.step_volts

    return Step(
        called, of, lambda value, own, n: value + own, "{value} + {operand}",
        "({value} + {operand})", operand=own, operand_of=of,
        turns=(
            Turn("left out the digits", "What does the sheet add to the per cent?",
                 lambda value, own, n: value),
            Turn("left out the per cent", "Which of the two grows with the reading?",
                 lambda value, own, n: own),
            Turn("took the digits for per cent", "Digits of what: of the last place, or of a "
                 "hundred?", lambda value, own, n: n.reading_volts * (n.percent + n.digits) / 100),
            Turn("counted a digit one place too far left", "Which place of the display is the last "
                 "one?", lambda value, own, n: value + 10 * own),
            Turn("took the digits for whole units", "What is one step of the last place worth?",
                 lambda value, own, n: value + n.digits),
            Turn("divided by root three as well", "Are the limits asked for, or the standard "
                 "uncertainty?", lambda value, own, n: (value + own) / sqrt(3), share=0.0),
            Turn("added the limits to the reading", "Is it asked how far off it may be, or where "
                 "the truth may lie?", lambda value, own, n: n.reading_volts + value + own,
                 share=0.0),
            Turn("took the limits off the reading", "Is it asked how far off it may be, or where "
                 "the truth may lie?", lambda value, own, n: n.reading_volts - value - own,
                 share=0.0),
            Turn("took the digits off", "Do per cent and digits help each other, or add up?",
                 lambda value, own, n: abs(value - own), share=0.0),
            Turn("gave the whole width, from end to end", "How far is it to one side?",
                 lambda value, own, n: 2 * (value + own)),
            Turn("counted one digit only", "How many digits does the sheet name?",
                 lambda value, own, n: value + n.step_volts),
        ),
    )  # fmt: skip


def standard_of_limits(of, called="the standard uncertainty"):
    """From limits, between which nothing is likelier, to the standard uncertainty: over root 3."""
    asks = "Which root belongs to limits between which all is equally likely?"
    return Step(
        called, of, factor(1 / sqrt(3)), "{value} / √3", "uncertainty.rectangular({value})",
        turns=(
            Turn("took the limits as they are", "Is a standard uncertainty as wide as the limits?",
                 factor(1.0)),
            Turn("divided by three, not by its root", asks, factor(1 / 3)),
            Turn("divided by two, not by root three", asks, factor(0.5)),
            Turn("divided by root two", asks, factor(1 / sqrt(2))),
            Turn("multiplied by root three", "Is it wider than the limits, or narrower?",
                 factor(sqrt(3)), share=0.0),
        ),
    )  # fmt: skip


def combined_with(other, of, called="both together"):
    """Two independent uncertainties: their squares are added."""
    return Step(
        called, of, lambda one, two, n: hypot(one, two), "√({value}² + {operand}²)",
        "({value}**2 + {operand}**2)**0.5", operand=other, operand_of=of,
        turns=(
            Turn("added the two as they are", "Do both stray to the same side each time?",
                 lambda one, two, n: one + two),
            Turn("took the larger one alone", "What does the smaller one add, as a square?",
                 lambda one, two, n: max(one, two)),
            Turn("took the smaller one alone", "Which of the two counts for more?",
                 lambda one, two, n: min(one, two), share=0.0),
            Turn("forgot the root of the sum of squares", "The squares are added. What then?",
                 lambda one, two, n: one * one + two * two, share=0.0),
            Turn("took the difference of the two", "Can one uncertainty take the other away?",
                 lambda one, two, n: abs(one - two), share=0.0),
            Turn("added the two and left k out", "Do both stray to the same side each time?",
                 lambda one, two, n: (one + two) / 2, share=0.0),
            Turn("took the mean of the two uncertainties", "Can both together be less than one?",
                 lambda one, two, n: (one + two) / 2, share=0.0),
        ),
    )  # fmt: skip


K_UNDER_THE_ROOT = Turn(
    "put k under the root", "What is multiplied by k: the root, or what is under it?",
    factor(sqrt(2)), share=0.0,
)  # fmt: skip


def expanded(of, called="the expanded uncertainty"):
    """Widen to k = 2, within which about 95 of 100 lie."""
    return Step(
        called, of, factor(2.0), "2 × {value}", "2 * {value}",
        turns=(
            Turn("left k out", "By which factor is a standard uncertainty widened?", factor(1.0)),
            Turn("took k = 3", "Which k does the question name?", factor(3.0)),
            Turn("halved instead of doubling", "Is the expanded one wider, or narrower?",
                 factor(0.5)),
        ),
    )  # fmt: skip


def half_each():
    """Two equal resistors share the volts."""
    whole, *_ = shared_volts(2).turns
    return shared(2, "voltage", whole, called="the volts on each without the meter")


def from_the_middle(called="the ohms that the meter looks into"):
    """From each of two equal resistors to what the leads across one of them look into."""
    return Step(
        called, "resistance", factor(0.5), "{value} / 2", "({value} / 2)",
        turns=(
            Turn("took one resistor for what the leads see",
                 "How many ways lead from one lead to the other?", factor(1.0)),
            Turn("took the two one after the other", "Seen from the leads across one of them, are "
                 "there one way or two?", factor(2.0)),
        ),
    )  # fmt: skip


def loaded_by_meter(source, called="what the meter shows"):
    """What is left of a voltage when a meter of ten megohms loads it."""
    return Step(
        called, "voltage", lambda volts, source, n: volts * INPUT_OHMS / (INPUT_OHMS + source),
        "{value} × 10 MΩ / (10 MΩ + {operand})", "meters.loaded_volts({value}, {operand})",
        operand=source, operand_of="resistance",
        turns=(
            Turn("left the meter out", "What does the meter itself take?",
                 lambda volts, source, n: volts),
            Turn("gave what the meter takes away", "What is left on the display?",
                 lambda volts, source, n: volts * source / (INPUT_OHMS + source), share=0.0),
            Turn("gave the volts on the other one", "Across which of the two does the meter lie?",
                 lambda volts, source, n: volts * (2 - INPUT_OHMS / (INPUT_OHMS + source)),
                 share=0.0),
            Turn("left out one of the two resistors", "What stands in series, and what beside the "
                 "meter?", lambda volts, source, n: (
                     2 * volts * INPUT_OHMS / (INPUT_OHMS + 2 * source)), share=0.0),
            Turn("added what the meter takes away", "Does a meter load push the volts up?",
                 lambda volts, source, n: volts * (INPUT_OHMS + source) / INPUT_OHMS, share=0.0),
        ),
    )  # fmt: skip


def read_time_constant(name, shown, called="the time constant"):
    """Start from a time constant that is read off a curve: where 63 % of the rise is there."""

    def reads(name, asks, times):
        return Turn(name, asks, lambda value, given, n: given * times)

    return Step(
        called, "time", lambda value, given, n: given, "", "{operand}", operand=name,
        turns=(
            reads("read where half of the rise is there", "What share of the rise is there after "
                  "one time constant?", log(2)),
            reads("read where the curve looks level", "What share of the rise is there after one "
                  "time constant?", 3.0),
            Turn("took the whole time that is drawn", "At what height is the time constant read?",
                 lambda value, given, n: shown),
        ),
    )  # fmt: skip


def settled(called="when it counts as settled"):
    """Five time constants: less than 1 % of the rise is still to come."""
    asks = "After how many of them is less than a hundredth still to come?"
    return Step(
        called, "time", factor(heat.SETTLED_AFTER), "5 × {value}", "5 * {value}",
        turns=(
            Turn("gave one time constant", asks, factor(1.0)),
            Turn("took three time constants", asks, factor(3.0)),
            Turn("took four time constants", asks, factor(4.0)),
            Turn("took two time constants", asks, factor(2.0)),
            Turn("took ten time constants", asks, factor(10.0)),
        ),
    )  # fmt: skip


def apart_from(predicted, of="voltage", called="how far they lie apart"):
    """From a reading to its distance from what was predicted."""
    return Step(
        called, of, lambda reading, predicted, n: abs(reading - predicted),
        "|{value} − {operand}|", "abs({value} - {operand})", operand=predicted, operand_of=of,
        turns=(
            Turn("took the reading itself", "How far does it lie from the prediction?",
                 lambda reading, predicted, n: reading, share=0.0),
            Turn("took the share of the prediction", "Is a share asked for, or volts?",
                 lambda reading, predicted, n: abs(reading / predicted - 1), share=0.0),
        ),
    )  # fmt: skip


def in_uncertainties(combined, called="how many combined uncertainties that is"):
    """From a difference to how often the combined standard uncertainty fits into it."""
    return Step(
        called, "ratio", lambda apart, u, n: apart / u, "{value} / {operand}",
        "{value} / {operand}", operand=combined, operand_of="voltage",
        turns=(
            Turn("divided the wrong way round", "How often does the one fit into the other?",
                 lambda apart, u, n: u / apart, share=0.0),
            Turn("multiplied instead of dividing", "How often does the one fit into the other?",
                 lambda apart, u, n: apart * u, share=0.0),
            Turn("gave the difference itself", "How often does one uncertainty fit into it?",
                 lambda apart, u, n: apart, share=0.0),
            Turn("divided by the expanded uncertainty", "Standard uncertainty, or k times it?",
                 lambda apart, u, n: apart / (2 * u)),
        ),
    )  # fmt: skip


def ohms_at(current, called="the ohms of the other one"):
    """From the volts on a part, and the one current of the chain, to its ohms."""
    return Step(
        called, "resistance", lambda volts, amps, n: volts / amps, "{value} / {operand}",
        "{value} / {operand}", operand=current, operand_of="current",
        turns=(
            Turn("multiplied instead of dividing", "Amps times ohms are volts. What makes ohms?",
                 lambda volts, amps, n: volts * amps, share=0.0),
            Turn("divided the wrong way round", "Do more volts at one current mean more ohms?",
                 lambda volts, amps, n: amps / volts, share=0.0),
            Turn("gave the ohms that are printed", "What do the readings say of this part?",
                 lambda volts, amps, n: n.printed_ohms, share=0.0),
            Turn("shared the volts of both", "Volts on which of them make the current?",
                 lambda volts, amps, n: (
                     n.printed_ohms * volts / (volts + amps * n.printed_ohms)), share=0.0),
            Turn("gave the ohms of both together", "Which of the two is asked for?",
                 lambda volts, amps, n: n.printed_ohms + volts / amps),
            Turn("shared the volts the wrong way round", "The part with fewer volts: has it fewer "
                 "ohms, or more?", lambda volts, amps, n: n.printed_ohms**2 * amps / volts,
                 share=0.0),
        ),
    )  # fmt: skip


def guarded(band, called="the lowest reading that is accepted"):
    """From a least value to the lowest reading that is sure to be above it: a band more."""
    return Step(
        called, "resistance", lambda least, band, n: least + band, "{value} + {operand}",
        "{value} + {operand}", operand=band, operand_of="resistance",
        turns=(
            Turn("left the guard band out", "A reading at the limit: how sure is it to be above?",
                 lambda least, band, n: least),
            Turn("added the limits themselves", "What becomes of limits before they are widened?",
                 lambda least, band, n: least + n.limits_ohms),
            Turn("took the guard band off", "Which side is the safe one?",
                 lambda least, band, n: least - band, share=0.0),
            Turn("took the limits off", "Which side is the safe one?",
                 lambda least, band, n: least - n.limits_ohms, share=0.0),
            Turn("gave the guard band alone", "What does the band come on top of?",
                 lambda least, band, n: band, share=0.0),
        ),
    )  # fmt: skip
