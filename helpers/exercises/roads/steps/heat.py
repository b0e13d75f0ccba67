"""Steps from volts and ohms to heat, to a rating, to warmth and to the bill."""

from math import pi, sqrt

from helpers.exercises.roads.road import Road, Step, Turn
from helpers.exercises.roads.steps.general import factor, given, times
from helpers.physics import energy, heat, ratings

SECOND_HALF = "What does the diode do in the second half-cycle?"
MEAN_BY_RMS = Turn(
    "multiplied a mean by an rms value", "Of which kind do volts and amperes both have to be?",
    lambda value, below, n: 2 * sqrt(2) / pi * value * value / below,
)  # fmt: skip


HALVED_TWICE = Turn(  # for heat that nothing else halves or doubles
    "halved once too often", "How many half-cycles of two get through?", factor(0.25)
)


def half_wave_rms(called="the rms of the half-wave"):
    """From the rms of a whole wave to that of one half-cycle of two."""
    return Step(
        called, "voltage", factor(1 / sqrt(2)), "0.707 × {value}", "{value} / 2**0.5",
        turns=(
            Turn("counted both half-cycles", SECOND_HALF, factor(1.0), usual=True),
            Turn("halved the volts", "Half the time, or half the volts?", factor(0.5)),
            Turn("multiplied the mean by 1.11", "1.11 belongs to a whole sine. Is this one whole?",
                 factor(0.5)),
            Turn("took the mean for the rms", "The mean makes light. Which one makes heat?",
                 factor(sqrt(2) / pi)),
            Turn("took the mean of the whole wave", "Which makes heat, mean or rms, and which half "
                 "of the wave gets through?", factor(2 * sqrt(2) / pi)),
            Turn("took the crest for the rms", "How long does the crest last?", factor(sqrt(2))),
            Turn("halved once too often", "How many half-cycles of two get through?",
                 factor(0.25)),
        ),
    )  # fmt: skip


def squared_over(ohms, called="the heat of a whole wave"):
    """Volts squared over ohms."""
    return Step(
        called, "power", lambda value, below, n: value * value / below, "{value}² / {operand}",
        "{value}**2 / {operand}", operand=ohms, operand_of="resistance",
        turns=(
            Turn("forgot to square the volts", "Volts over ohms is a current. What makes watts?",
                 lambda value, below, n: value / below, share=0.0, usual=True, any_decade=True),
            Turn("squared the crest", "Which voltage decides heat: crest, rms or mean?",
                 lambda value, below, n: 2 * value * value / below, usual=True),
            Turn("squared the mean", "Which voltage decides heat: crest, rms or mean?",
                 lambda value, below, n: (2 * sqrt(2) / pi * value) ** 2 / below),
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
            Turn("counted both half-cycles", SECOND_HALF, factor(1.0), usual=True),
            Turn("halved the volts", "Half the time, or half the volts?", factor(0.25)),
            Turn("squared the mean of the half-wave", "Which voltage decides heat: crest, rms or "
                 "mean?", factor(2 / pi**2)),
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


def in_step_with(ratio, called="the new heat"):
    """On the same mains heat follows the current."""
    return Step(
        called, "power", lambda value, ratio, n: value * ratio, "{value} × {operand}",
        "{value} * {operand}", operand=ratio, operand_of="ratio",
        turns=(
            Turn("squared the ratio of the currents", "The mains is the same: what happened to the "
                 "ohms?", lambda value, ratio, n: value * ratio**2),
            Turn("kept the old heat", "What does less current do to the heat?",
                 lambda value, ratio, n: value),
            Turn("turned the ratio upside down", "Does less current make more heat, or less?",
                 lambda value, ratio, n: value / ratio, share=0.0),
            Turn("took what is saved", "Is it the heat that is gone, or the heat that is left?",
                 lambda value, ratio, n: value * (1 - ratio)),
        ),
    )  # fmt: skip


def whole_year(called="the energy of the year"):
    """All the hours of a year."""
    hours = energy.HOURS_PER_YEAR
    return Step(
        called, "energy", factor(hours), f"{{value}} × {hours:.0f} h", f"{{value}} * {hours}",
        turns=(
            Turn("took a day for the year", "For how long is the light on?", factor(24.0)),
            Turn("took a month for the year", "For how long is the light on?", factor(hours / 12)),
            Turn("left out the hours of a day", "How many hours has a year?", factor(365.0),
                 share=0.0),
        ),
    )  # fmt: skip


def per_cent_of(whole, called="the share"):
    """One energy in per cent of another."""
    return Step(
        called, "percent", lambda value, whole, n: 100 * value / whole, "{value} / {operand}",
        "100 * {value} / {operand}", operand=whole, operand_of="energy",
        turns=(
            Turn("gave a fraction, not per cent", "How is a fraction of one written in per "
                 "cent?", lambda value, whole, n: value / whole),
            Turn("took the share of both together", "Per cent of what: of one, or of the sum?",
                 lambda value, whole, n: 100 * value / (value + whole)),
            Turn("took what is left to a hundred", "Which of the two is asked for: what it costs, "
                 "or what it costs less?", lambda value, whole, n: 100 - 100 * value / whole),
            Turn("turned the ratio upside down", "Per cent of which of the two?",
                 lambda value, whole, n: 100 * whole / value, share=0.0),
        ),
    )  # fmt: skip


def slope_left(called="the part of the slope that is left"):
    """From the air around a part to what of the derating line is still ahead."""
    knee, zero = ratings.KNEE_CELSIUS, ratings.ZERO_CELSIUS
    slope = zero - knee
    return Step(
        called, "ratio", lambda air, operand, n: (zero - air) / slope,
        f"({zero:.0f} °C − {{value}}) / {slope:.0f} K", f"({zero} - {{value}}) / {slope}",
        turns=(
            Turn("left the warm air out", "Up to which temperature does the printed rating hold?",
                 lambda air, operand, n: 1.0),
            Turn("took the share that is lost", "That is gone. What is left?",
                 lambda air, operand, n: (air - knee) / slope),
            Turn("drew the line from zero degrees", "Where does the full rating end?",
                 lambda air, operand, n: (zero - air) / zero),
            Turn("took the air's share of the whole scale", "Is more left in warmer air, or less?",
                 lambda air, operand, n: air / zero, share=0.0),
            Turn("divided by the degrees up to the bend", "How many degrees long is the slope?",
                 lambda air, operand, n: 1 - (air - knee) / knee),
            Turn("divided the bend by the air", "Where is nothing left?",
                 lambda air, operand, n: knee / air, share=0.0),
            Turn("divided the lost degrees by the air's", "How many degrees long is the slope?",
                 lambda air, operand, n: (air - knee) / air, share=0.0),
            Turn("divided the lost degrees by the bend's", "How many degrees long is the slope?",
                 lambda air, operand, n: (air - knee) / knee, share=0.0),
            Turn("divided what is left by the air", "How many degrees long is the slope?",
                 lambda air, operand, n: (zero - air) / air, share=0.0),
            Turn("left nothing behind the bend", "The line bends there. Where does it end?",
                 lambda air, operand, n: 0.0),
        ),
    )  # fmt: skip


def of_rating(rated, called="what it may take"):
    """What is left of a rating."""
    return times(rated, "power", called, turns=(
        Turn("halved what is left", "What it may take, or what the course lets it take?",
             lambda value, rated, n: value * rated / 2),
    ))  # fmt: skip


def alike_in_series(count, called="the ohms of all together"):
    """Equal resistors one after the other."""
    return Step(
        called, "resistance", lambda value, count, n: value * count, "{operand} × {value}",
        "{operand} * {value}", operand=count, operand_of="ratio",
        turns=(
            Turn("took them as side by side", "One after the other: more in the way, or less?",
                 lambda value, count, n: value / count),
            Turn("took one for all", "What stands in the way: one of them, or all?",
                 lambda value, count, n: value),
        ),
    )  # fmt: skip


def shared(count, of, *turns, called="what each of them has"):
    """Equal resistors in series share volts and heat equally."""
    return Step(called, of, lambda value, count, n: value / count, "{value} / {operand}",
                "{value} / {operand}", operand=count, operand_of="ratio", turns=turns)  # fmt: skip


def shared_volts(count):
    """The volts on each of a string."""
    return shared(
        count, "voltage",
        Turn("gave each the whole voltage", "In series, how do equal resistors share it?",
             lambda value, count, n: value),
        Turn("left one of them out", "Is one of them a piece of wire here?",
             lambda value, count, n: value / (count - 1)),
    )  # fmt: skip


def shared_heat(count):
    """The heat of each of a string."""
    return shared(
        count, "power",
        Turn("gave the heat of all together", "All of them, or each?",
             lambda value, count, n: value),
        Turn("took each as alone on the mains", "What do several in series do to the current?",
             lambda value, count, n: value * count),
        Turn("shared once too often", "How often does the heat have to be shared out?",
             lambda value, count, n: value / count**2),
    )  # fmt: skip


def box_rise(surface, called="how much warmer the box is"):
    """From the heat in a closed box to the rise of its air."""
    passed = heat.CLOSED_BOX
    return Step(
        called, "temperature rise", lambda value, surface, n: value / (passed * surface),
        f"{{value}} / ({passed:.0f} × {{operand}})", f"{{value}} / ({passed} * {{operand}})",
        operand=surface, operand_of="ratio",
        turns=(
            Turn("left out the box", "How warm is the air in the box?",
                 lambda value, surface, n: 0.0),
            Turn("took 100 cm² for a square metre", "How many square centimetres make a square "
                 "metre?", lambda value, surface, n: value / (passed * 100 * surface)),
            Turn("left out what the walls pass", "How much passes each square metre for a kelvin?",
                 lambda value, surface, n: value / surface),
            Turn("took 6 W for what the walls pass", "From 4 to 6: which is the safer one?",
                 lambda value, surface, n: value / (6.0 * surface), share=0.0),
            Turn("counted one film of air only", "How many films of air are in the way?",
                 lambda value, surface, n: value / (2 * passed * surface)),
            Turn("took the figure of a surface in open air", "Is there one film of air in the way, "
                 "or two?", lambda value, surface, n: value / (10.0 * surface)),
        ),
    )  # fmt: skip


def warmer_than(room, called="the air in the box"):
    """A rise on top of the room."""
    return Step(
        called, "temperature", lambda value, room, n: room + value, "{value} + {operand}",
        "({value} + {operand})", operand=room, operand_of="temperature",
        turns=(
            Turn("left out the room", "Where does the rise start?", lambda value, room, n: value),
            Turn("took the room off", "Where does the rise start?",
                 lambda value, room, n: value - room, share=0.0),
        ),
    )  # fmt: skip


def own_rise(power, kelvin_per_watt, called="the dropper's temperature"):
    """A part's own rise on top of its air."""
    rise = Road(
        given(power),
        times(kelvin_per_watt, "temperature rise", "the dropper's own rise", "thermal resistance"),
    )
    return Step(
        called, "temperature", lambda value, rise, n: value + rise, "{value} + {operand}",
        "{value} + {operand}", operand=rise, operand_of="temperature rise",
        turns=(
            Turn("left out the dropper's own rise", "How much warmer than its air is the dropper?",
                 lambda value, rise, n: value),
            Turn("forgot to multiply by the watts", "Kelvin for each watt: for how many watts?",
                 lambda value, rise, n: value + rise / n.watts, share=0.0),
            Turn("gave the dropper's own rise alone", "How warm is the air around it?",
                 lambda value, rise, n: rise, share=0.0),
        ),
    )  # fmt: skip
