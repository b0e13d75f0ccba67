"""Steps along the mains wave: its times, its crest, its range, what a half-wave leaves."""

from math import inf, pi, sqrt

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.roads.steps.general import factor
from helpers.physics import mains

SUPPLY = "mains.Supply({supply.volts_rms}, {supply.hertz})"  # in a line of code
DIVISION_SECONDS = 0.002  # of the grid on which a wave is to be read over time

CREST = (
    Turn("took the label for the crest", "How high does the wave rise above its label?",
         factor(1.0), usual=True),
    Turn("took the mean for the crest", "Is the mean of the wave its highest point?",
         factor(2 * sqrt(2) / pi)),
    Turn("divided by 1.414", "Is the crest lower than the label, or higher?",
         factor(1 / sqrt(2))),
    Turn("took the wave from trough to crest", "From where to where is a crest measured?",
         factor(2 * sqrt(2))),
)  # fmt: skip


MEAN_FOR_CREST = Turn(
    "took the mean over a whole cycle", "What is there at the single highest instant?",
    factor(sqrt(2) / pi),
)  # fmt: skip
HALF_CREST = Turn(
    "halved the crest", "Is the wave only half as high where a half-cycle is missing?",
    factor(1 / sqrt(2)),
)  # fmt: skip
FORM_FOR_CREST = Turn(
    "took 1.11 for 1.414", "1.11 leads from mean to rms. What leads from rms to crest?",
    factor(pi / (2 * sqrt(2))),
)  # fmt: skip
CREST_ALONE = (
    Turn("multiplied by 1.5", "What exactly is the square root of two?", factor(1.5)),
    Turn("doubled the label", "Which factor belongs to a sine?", factor(2.0)),
    FORM_FOR_CREST,
    Turn("took ten per cent more for the crest", "Does the crest come from the range of the mains, "
         "or from the shape of its wave?", factor(1.1)),
    MEAN_FOR_CREST,
    HALF_CREST,
)  # fmt: skip


OTHER_FACTORS = (  # where nothing at all follows
    Turn("multiplied by root three", "Root three belongs to three phases. Which root belongs to "
         "the crest of a sine?", factor(sqrt(3)), share=0.0),
    Turn("took the factor that leads from mean to crest", "Is the label of the mains a mean, or "
         "rms?", factor(pi / 2), share=0.0),
)  # fmt: skip


def crest(called="the crest"):
    """From rms to crest of a sine."""
    return Step(called, "voltage", factor(sqrt(2)), "{value} × √2", "{value} * 2**0.5",
                turns=CREST)  # fmt: skip


RMS_OF_CREST = (
    Turn("took the crest as it stands", "Does a sine stand at its crest all the time?",
         factor(1.0)),
    Turn("multiplied by 1.414", "Is the rms value of a sine higher or lower than its crest?",
         factor(sqrt(2))),
    Turn("took the mean for the rms", "Which factor leads from crest to rms, which to the mean?",
         factor(2 / pi)),
    Turn("halved the crest", "Half of the crest is the rms of what: a whole wave, or a half-wave?",
         factor(0.5)),
    Turn("multiplied by 0.9", "0.9 leads from rms to mean. What leads from crest to rms?",
         factor(2 * sqrt(2) / pi)),
    Turn("took the wave from trough to crest", "From where to where is a crest measured?",
         factor(2.0)),
    Turn("divided by root three", "Which root leads from the crest of a sine to its rms value?",
         factor(1 / sqrt(3)), share=0.0),
    Turn("halved once too often", "Half of the crest is the rms of what: a whole wave, or a "
         "half-wave?", factor(0.5 / sqrt(2))),
)  # fmt: skip


def rms_of_crest(called="the rms value"):
    """From the crest of a sine to its rms value."""
    return Step(called, "voltage", factor(1 / sqrt(2)), "{value} / √2", "{value} / 2**0.5",
                turns=RMS_OF_CREST)  # fmt: skip


TOO_NEAR = 2.5  # to ten per cent, for the one to be told from the other [%]


def percent_up(n):
    """How far the highest mains stands above its label."""
    highest = mains.highest(n.supply).volts_rms
    return round(100 * (highest / n.supply.volts_rms - 1), 12)


def per_cent_more(percent, called="the highest"):
    """A value with some per cent added."""
    return Step(
        called, "voltage", lambda value, more, n: value * (1 + more / 100),
        "{value} and {operand} more", "{value} * (1 + {operand} / 100)",
        operand=percent, operand_of="percent",
        turns=(
            Turn("left the per cent out", "How far above its label does this mains stand?",
                 lambda value, more, n: value, usual=True),
            Turn("took the per cent off", "Does this mains stand above its label, or below?",
                 lambda value, more, n: value * (1 - more / 100)),
            Turn("added the per cent as volts", "So many per cent of what?",
                 lambda value, more, n: value + more),
            Turn("took the per cent for tenths", "How many hundredths are one per cent?",
                 lambda value, more, n: value * (1 + more / 10)),
            Turn("took ten per cent for it", "How far does this mains stand above its label?",
                 lambda value, more, n: inf if abs(more - 10) < TOO_NEAR else 1.1 * value),
            Turn("added the per cent twice", "How often does the range have to be counted?",
                 lambda value, more, n: value * (1 + more / 100) ** 2),
            Turn("took the rise alone", "What does the rise come on top of?",
                 lambda value, more, n: value * more / 100),
        ),
    )  # fmt: skip


HALF_WAVE_MEAN = (
    Turn("counted both half-cycles", "What does the diode do in the second half-cycle?",
         factor(2 / pi), usual=True),
    Turn("took the crest for the mean", "The crest lasts an instant. What is left as a mean?",
         factor(1.0), usual=True),
    Turn("took the rms of the half-wave for its mean", "Light follows the mean: what divides the "
         "crest then?", factor(0.5)),
    Turn("halved once too often", "How many half-cycles of two get through?",
         factor(0.5 / pi)),
    Turn("used the quick sum, volts over ohms", "That is right for DC. What share is left as a "
         "mean in one half-cycle of two?", factor(1 / sqrt(2))),
    Turn("halved the quick sum", "Half the time is right. Is the mean of a half-cycle as large as "
         "its rms?", factor(0.5 / sqrt(2))),
    Turn("took 0.45 of the crest", "0.45 belongs to the label. What belongs to the crest?",
         factor(0.45)),
    Turn("took 0.45 of the half-wave's rms", "0.45 belongs to the label. What had become of the "
         "label before?", factor(0.45 / 2)),
    Turn("took 0.45 once too often", "How often does the half-wave have to be counted?",
         factor(0.45 / pi)),
)  # fmt: skip


def half_wave_mean(of="current", called="the mean over a whole cycle"):
    """From the crest of a half-wave to its mean over the whole cycle."""
    return Step(called, of, factor(1 / pi), "{value} / π", "{value} / pi", turns=HALF_WAVE_MEAN)


def cycle(called="one cycle"):
    """From the hertz to how long one cycle lasts."""
    return Step(
        called, "time", lambda value, operand, n: 1 / value, "1 s / {value}", "1 / {value}",
        turns=(
            Turn("took the hertz for a time", "If so many fit into one second, how long is one?",
                 lambda value, operand, n: value, share=0.0, any_decade=True),
            Turn("divided degrees by the hertz", "How many seconds hold that many cycles?",
                 lambda value, operand, n: 360 / value, share=0.0, any_decade=True),
        ),
    )  # fmt: skip


def half_cycle(called="one half-cycle"):
    """Half of a cycle's time."""
    return Step(
        called, "time", factor(0.5), "{value} / 2", "{value} / 2",
        turns=(
            Turn("took the whole cycle", "How many half-cycles are in one cycle?", factor(1.0)),
            Turn("halved once too often", "How far does a half-cycle reach: to the crest, or to "
                 "zero again?", factor(0.25)),
            Turn("doubled instead of halving", "Does a half-cycle last longer or shorter than one?",
                 factor(2.0)),
        ),
    )  # fmt: skip


def less_cut(cut, called="the piece that is left"):
    """What is left of a half-cycle when its beginning is cut out, read off a grid over time."""
    fifth = "A division has five small marks. How long is one division?"
    scale = "How many milliseconds is one division?"
    return Step(
        called, "time", lambda value, cut, n: value - cut, "{value} − {operand}",
        "{value} - {operand}", operand=cut, operand_of="time",
        turns=(
            Turn("counted both half-cycles", "In which half-cycle does the diode let current "
                 "through?", lambda value, cut, n: 2 * (value - cut)),
            Turn("took the piece that is cut out", "When does the wave come back, and when does it "
                 "reach zero?", lambda value, cut, n: cut),
            Turn("took both pieces that are cut out", "Is it the dark time that is asked for?",
                 lambda value, cut, n: 2 * cut),
            Turn("took the dark time", "Which part of the cycle is asked for: lit or dark?",
                 lambda value, cut, n: value + cut),
            Turn("took the whole cycle", "How many half-cycles are in one cycle?",
                 lambda value, cut, n: 2 * value - cut),
            Turn("left the cut out", "From when on is there any voltage in the half-cycle?",
                 lambda value, cut, n: value),
            Turn("halved the lit time", "Which pieces does the diode stop? Is a part of this one "
                 "among them?", lambda value, cut, n: (value - cut) / 2),
            Turn("counted divisions for milliseconds", scale,
                 lambda value, cut, n: (value - cut) / DIVISION_SECONDS / 1000),
            Turn("took each division for a small mark", fifth,
                 lambda value, cut, n: (value - cut) / 5),
            Turn("took the division where the piece ends for its time", scale,
                 lambda value, cut, n: value / DIVISION_SECONDS / 1000),
            Turn("took the division where the piece begins for its time", scale,
                 lambda value, cut, n: cut / DIVISION_SECONDS / 1000),
        ),
    )  # fmt: skip
