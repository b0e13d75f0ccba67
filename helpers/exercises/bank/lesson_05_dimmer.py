"""Lesson 05: what a phase-cut dimmer does to heat, light, meters, and to the word "off".

Heat follows the rms, light and the plain meter follow the mean, diodes the peak.

No question draws an angle whose answer the lesson's own pictures show: 70 and 120 degrees and what
the explorers open with. And none draws one where a wrong turn lands within 3 % of the right answer.
"""

from functools import cache
from math import pi, radians, sin, sqrt

from helpers.exercises.kinds import (
    Choice,
    ChooseAll,
    Criterion,
    Field,
    Option,
    Order,
    Parts,
    Quantity,
    judged,
)
from helpers.exercises.question import Picture, Question
from helpers.exercises.slips import Slip
from helpers.physics import (
    clamped,
    faults,
    heater,
    leakage,
    leds,
    mains,
    meters,
    phase_cut,
    phase_cut_inverse,
    signals,
)
from helpers.physics.operating_point import operating_point
from helpers.quantities import write, write_as
from helpers.quantities.written import midway, volts
from helpers.sizing import rules

LESSON = "05"
TITLE = "The dimmer"

INDICATOR_OHMS = 100_000.0
SNUBBER_FARADS, SNUBBER_OHMS = 100e-9, 100.0  # Common practice, no source.
# What this workshop allows in its small closed box; no general rule.
BOX_WATTS = {230.0: 0.5, 240.0: 0.5, 127.0: 0.16, 120.0: 0.16, 100.0: 0.11}


def percent(share):
    return write(100 * share, "percent")


def degree(angle):
    return write(angle, "angle")


def leading(angle):
    return phase_cut.Dimmer("leading", angle)


def power_share(angle):
    return phase_cut.wave(mains.Supply(1.0, 50.0), leading(angle)).power_fraction


def mean_share(angle):
    return phase_cut.wave(mains.Supply(1.0, 50.0), leading(angle)).volts_mean / mains.mean(1.0)


def volts_rms(n):
    return phase_cut.wave(n.supply, leading(n.angle)).volts_rms


def _supply_code(n):
    return f"mains.Supply({n.supply.volts_rms}, {n.supply.hertz})"


def _dimmer_code(n):
    return f'phase_cut.Dimmer("leading", {n.angle})'


def _indicator(n, dimmer=phase_cut.NO_DIMMER, ohms=INDICATOR_OHMS, supply=None):
    return operating_point("series_diode", supply or n.supply, dimmer, ohms=ohms)


# --- look back ---------------------------------------------------------------------------------


def _high_peak(n):
    return mains.peak(n.supply.volts_rms * (1 + n.high / 100))


def _diode_danger(value, n):
    if value < 0.97 * _high_peak(n):
        return (
            "a diode that is chosen for less than the peak can break down. The dropper then gives "
            "twice its heat, and can burn."
        )
    return None


def _plain_heat(n):
    return n.supply.volts_rms**2 / (2 * n.ohms)


RECALL = (
    Question(
        id="dim-recall-1",
        role="recall",
        outcome="say what makes a dead reading count",
        ask=lambda n: (
            "From lesson 01: the plug is out, and the tester shows nothing at the pot's terminals. "
            "What makes this reading count?"
        ),
        kind=Choice(
            (
                Option(
                    "prove again",
                    "The tester is proved once more on a known live source.",
                    right=True,
                    reply="A tester that died in between shows nothing anywhere.",
                ),
                Option(
                    "look twice",
                    "The terminals are tested a second time.",
                    reply="What would a dead tester show the second time?",
                    danger="a dead tester calls every live wire dead, and touching one can kill.",
                ),
                Option(
                    "light dark",
                    "The pilot light is dark as well.",
                    reply="For how many reasons can a light be dark?",
                    danger="a dark light can be a broken light. Touching live parts can kill.",
                ),
                Option(
                    "dimmer off",
                    "The dimmer stands at off as well.",
                    reply="Does a dimmer part the pot from the mains?",
                    danger="a dimmer is no isolator. Touching live parts can kill.",
                ),
            )
        ),
        nudges=("What would you see if the tester had died on the way?",),
        working=lambda n: "Prove the tester, prove dead, prove the tester again.",
    ),
    Question(
        id="dim-recall-2",
        role="recall",
        outcome="find the peak of a mains that lies high",
        numbers=lambda draw, supply: {"high": draw.pick((5, 6, 8, 10))},
        ask=lambda n: (
            f"From lesson 03: your mains, {volts(n.supply.volts_rms)}, lies {n.high} % high today. "
            "No dimmer. What peak must the series diode of a pilot light hold off?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=_high_peak,
            slips=(
                Slip(
                    "took rms for peak",
                    lambda n: n.supply.volts_rms * (1 + n.high / 100),
                    "This is the rms value. How much higher is the crest of a sine?",
                ),
                Slip(
                    "forgot that the mains is high",
                    lambda n: mains.peak(n.supply.volts_rms),
                    "This is the crest of the mains on an ordinary day. How high is it today?",
                ),
                Slip(
                    "peak to peak",
                    lambda n: 2 * _high_peak(n),
                    "This is from the lowest to the highest point. Does a diode on plain mains see "
                    "both at once?",
                ),
                Slip(
                    "mean for peak",
                    lambda n: mains.mean(n.supply.volts_rms * (1 + n.high / 100)),
                    "This is the mean of the size. Which is the highest value of all?",
                ),
            ),
            danger=_diode_danger,
            check="First work out today's rms value.",
        ),
        nudges=(
            "Is the number on the socket a crest or an rms value?",
            "Raise the rms value by the percentage, then multiply by the root of two.",
        ),
        working=lambda n: (
            f"{volts(n.supply.volts_rms)} × {1 + n.high / 100:g} × √2 = {volts(_high_peak(n))}. "
            "Behind a dimmer it can be nearly twice that, as this lesson shows. What insulation "
            "has to stand is another matter, and more: lesson 01."
        ),
        code=lambda n: f"mains.peak({n.supply.volts_rms} * {1 + n.high / 100})",
    ),
    Question(
        id="dim-recall-3",
        role="recall",
        outcome="find the heat in a dropper that works half of the time",
        numbers=lambda draw, supply: {"ohms": draw.pick((33e3, 39e3, 56e3, 68e3))},
        ask=lambda n: (
            f"From lesson 04: a dropper of {write(n.ohms, 'resistance')}, a diode and a red LED "
            f"stand in series on your mains, {n.supply.name}. No dimmer. How much heat does the "
            "dropper give?"
        ),
        kind=Quantity(
            of="power",
            unit="W",
            right=lambda n: _indicator(n, ohms=n.ohms).resistor_watts,
            simple=_plain_heat,
            slips=(
                Slip(
                    "forgot the half-wave, or took the peak",
                    lambda n: 2 * _plain_heat(n),
                    "Twice too much: either both half-cycles were counted, or the peak was "
                    "squared. Which voltage did you square, and for how long does it work?",
                ),
                Slip(
                    "peak, and both half-cycles",
                    lambda n: 4 * _plain_heat(n),
                    "Four times too much: the peak was squared and both half-cycles counted. "
                    "Which value of the voltage makes heat?",
                ),
                Slip(
                    "halved the voltage, then squared",
                    lambda n: _plain_heat(n) / 2,
                    "Half of the time means half of the power. What does halving the voltage do?",
                ),
                Slip(
                    "squared the mean current",
                    lambda n: 4 / pi**2 * _plain_heat(n),
                    "This comes from the mean current. Which value of a current makes heat?",
                ),
            ),
            check="First work out the heat if both half-cycles were let through.",
        ),
        nudges=(
            "How much of the time does current flow?",
            "Rms volts squared over ohms, and half of that.",
        ),
        working=lambda n: (
            f"V² / (2 R) = {write(_plain_heat(n), 'power')}; with the small drops of LED and diode "
            f"taken off, {write(_indicator(n, ohms=n.ohms).resistor_watts, 'power')}."
        ),
        code=lambda n: (
            f'operating_point("series_diode", {_supply_code(n)}, ohms={n.ohms}).resistor_watts'
        ),
    ),
)

PREDICT = Question(
    id="dim-predict",
    role="predict",
    outcome="commit to an expectation",
    ask=lambda n: (
        "The dimmer lets the last third of each half-cycle through to the pot. How much of its "
        "full heat does the pot still give?"
    ),
    kind=Choice(
        (
            Option("third", "A third of it"),
            Option("half", "About half of it"),
            Option("fifth", "About a fifth of it"),
            Option("thirtieth", "About a thirtieth of it"),
        )
    ),
    working=lambda n: (
        f"a third of each half-cycle gives {percent(power_share(120.0))} of the heat. Its light is "
        f"{percent(mean_share(120.0))} of the full light. The last third of a half-cycle is its "
        "weak end, and heat goes with the square of the voltage."
    ),
)

# --- one angle, three percentages --------------------------------------------------------------


def _power_percent(n):
    return 100 * power_share(n.angle)


POWER_SLIPS = (
    Slip(
        "share of the angle",
        lambda n: 100 - n.angle / 1.8,
        "This is the share of each half-cycle, which is what the knob says. Is every part of a "
        "half-cycle worth the same heat?",
    ),
    Slip(
        "share of the mean",
        lambda n: 100 * mean_share(n.angle),
        "This is the share of the mean: it belongs to light and to the plain meter. What does "
        "heat follow?",
    ),
    Slip(
        "squared the share of the mean",
        lambda n: 100 * mean_share(n.angle) ** 2,
        "This is the mean squared, as if a plain meter had shown the rms. What does heat follow?",
    ),
    Slip(
        "gave the share of the rms",
        lambda n: 100 * sqrt(power_share(n.angle)),
        "This is the share of the rms volts. What does heat do when the volts are halved?",
        share=0.5,
    ),
    Slip(
        "squared once too often",
        lambda n: 100 * power_share(n.angle) ** 2,
        "The formula gives power already, and it was squared once more. Which share did you want?",
        share=0.5,
    ),
    Slip(
        "took what is let through for what is held back",
        lambda n: 100 * power_share(180 - n.angle),
        "The angle seems to have been taken for the part that is let through. When does a "
        "leading edge begin: at its angle, or does it end there?",
    ),
    Slip(
        "minus for plus",
        lambda n: 200 * (1 - n.angle / 180) - _power_percent(n),
        "The last term seems to have the wrong sign. The calculator brings its sign along: what "
        "sign does the sine have beyond half a turn?",
        share=0.5,
    ),
    Slip(
        "sine of the angle for sine of twice the angle",
        lambda n: 100 * (1 - n.angle / 180 + sin(radians(n.angle)) / (2 * pi)),
        "The sine in the formula is that of twice the angle. Which angle did you type?",
        share=0.5,
    ),
    Slip(
        "divided by pi",
        lambda n: 100 * (1 - n.angle / 180 + sin(radians(2 * n.angle)) / pi),
        "The last term is twice too large. By what is the sine divided?",
        share=0.5,
    ),
    Slip(
        "calculator in radians",
        lambda n: 100 * (1 - n.angle / 180 + sin(2 * n.angle) / (2 * pi)),
        "This comes out when degrees are typed while the calculator works in radians. What does "
        "its display say?",
        share=0.5,
    ),
    Slip(
        "squared the share of the angle",
        lambda n: 100 * (1 - n.angle / 180) ** 2,
        "This is the share of the half-cycle, squared. Is the voltage the same all along it?",
    ),
    Slip(
        "left the dimmer out",
        lambda n: 100.0,
        "This is the pot without a dimmer. What is taken away?",
    ),
    Slip(
        "typed a fraction",
        lambda n: power_share(n.angle),
        "A bare number is read in per cent here. Was a fraction of one meant?",
        share=0.5,
    ),
)


def _heater_amps(n):
    return heater.amps_rms(n.supply, leading(n.angle), _pot_ohms(n))


def _pot_ohms(n):
    return heater.resistance(n.supply.volts_rms, n.watts)


def _full_amps(n):
    return n.watts / n.supply.volts_rms


PERCENTAGES = (
    Question(
        id="dim-1",
        outcome="read the firing angle off a chopped wave",
        numbers=lambda draw, supply: {
            "angle": draw.pick((42.0, 54.0, 66.0, 72.0, 108.0, 126.0, 132.0, 138.0))
        },
        picture=lambda n: Picture("waveform", {"supply": n.supply, "dimmer": leading(n.angle)}),
        ask=lambda n: "This is your mains behind a leading-edge dimmer. What is its firing angle?",
        kind=Quantity(
            of="angle",
            unit="°",
            right=lambda n: n.angle,
            slips=(
                Slip(
                    "read the part that is let through",
                    lambda n: 180 - n.angle,
                    "This is how long the dimmer stays on. From where to where does the angle of "
                    "a leading edge count?",
                    share=0.5,
                ),
                Slip(
                    "counted from the start of the cycle",
                    lambda n: 180 + n.angle,
                    "This is the second edge, counted from the start. Each half-cycle counts anew: "
                    "from where?",
                    share=0.5,
                ),
                Slip(
                    "gave divisions",
                    lambda n: n.angle / 30,
                    "This looks like divisions of the grid. How many degrees is one of them worth?",
                    share=0.5,
                ),
                Slip(
                    "took a division for ten degrees",
                    lambda n: n.angle / 3,
                    "Ten degrees a division, it seems. What does the line under the grid say?",
                    share=0.5,
                ),
            ),
            check="First count the divisions from the zero crossing to the edge.",
        ),
        nudges=(
            "Where does the half-cycle begin, and where does the trace jump?",
            "Count the divisions from the one to the other. The line under the grid says what a "
            "division is worth; each small mark is a fifth of it.",
        ),
        working=lambda n: (
            f"The trace jumps {n.angle / 30:g} divisions after the zero crossing; at 30° each that "
            f"is {degree(n.angle)}."
        ),
    ),
    Question(
        id="dim-2",
        marks=2,
        outcome="find the share of the heat from the firing angle",
        numbers=lambda draw, supply: {"angle": draw.pick((130.0, 140.0, 145.0))},
        ask=lambda n: (
            f"Your turn with the second step of the example: a leading edge fires at "
            f"{degree(n.angle)}. What share of its full heat does the pot give?"
        ),
        kind=Quantity(
            of="percent",
            unit="%",
            right=_power_percent,
            slips=POWER_SLIPS,
            check="First work out the share of each half-cycle that is let through.",
        ),
        nudges=(
            "Which part of each half-cycle is let through, its strong middle or its weak end?",
            "Take the share that is let through, and add the sine of twice the angle over two pi. "
            "Beyond 90 degrees that sine is negative.",
        ),
        working=lambda n: (
            f"1 − {n.angle:g}/180 + sin({2 * n.angle:g}°)/6.283 = {1 - n.angle / 180:.5f} − "
            f"{-sin(radians(2 * n.angle)) / (2 * pi):.5f}, so {percent(power_share(n.angle))}."
        ),
        code=lambda n: f"phase_cut_inverse.percentages({_dimmer_code(n)}).power_percent",
    ),
    Question(
        id="dim-3",
        level=2,
        marks=2,
        outcome="find the true rms volts from the firing angle",
        numbers=lambda draw, supply: {"angle": draw.pick((55.0, 65.0, 125.0, 130.0))},
        ask=lambda n: (
            f"All steps now: a leading edge fires at {degree(n.angle)} on your mains, "
            f"{volts(n.supply.volts_rms)}. What does a true-rms meter show across the pot?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=volts_rms,
            slips=(
                Slip(
                    "forgot the root",
                    lambda n: n.supply.volts_rms * power_share(n.angle),
                    "This is the share of the power times the volts. Power goes with the square of "
                    "the volts: what has to be done on the way back?",
                    share=0.5,
                ),
                Slip(
                    "plain meter",
                    lambda n: n.supply.volts_rms * mean_share(n.angle),
                    "This is what a plain meter shows. Which of the two meters follows the heat?",
                ),
                Slip(
                    "share of the angle",
                    lambda n: n.supply.volts_rms * (1 - n.angle / 180),
                    "This is the share of the half-cycle times the volts. Do volts follow the knob "
                    "in a straight line?",
                ),
                Slip(
                    "started from the peak",
                    lambda n: sqrt(2) * volts_rms(n),
                    "This starts from the peak. Which value of the mains is heat counted in?",
                ),
                Slip(
                    "value at the edge",
                    lambda n: mains.volts_at(n.supply.volts_rms, n.angle),
                    "This is the voltage at the instant of the edge. What happens after it?",
                ),
                Slip(
                    "left the dimmer out",
                    lambda n: n.supply.volts_rms,
                    "This is the mains before the dimmer. What is taken away?",
                ),
            ),
            check="First work out the share of the heat.",
        ),
        nudges=(
            "Which share of the heat is left, and how are heat and volts related?",
            "Find the share of the heat, take its square root, and multiply by the mains.",
        ),
        working=lambda n: (
            f"The share of the heat is {percent(power_share(n.angle))}; its root, "
            f"{sqrt(power_share(n.angle)):.3f}, times {volts(n.supply.volts_rms)} is "
            f"{volts(volts_rms(n))}."
        ),
        code=lambda n: f"phase_cut.wave({_supply_code(n)}, {_dimmer_code(n)}).volts_rms",
    ),
    Question(
        id="dim-4",
        outcome="say why heat and volts differ by a square root",
        ask=lambda n: (
            "Why this step? In the worked example a root was taken between the share of the heat "
            "and the volts."
        ),
        kind=Choice(
            (
                Option(
                    "square",
                    "Heat goes with the square of the volts, so the way back is a root.",
                    right=True,
                    reply="Half of the volts is a quarter of the heat.",
                ),
                Option(
                    "peak",
                    "Rms is the peak divided by the root of two.",
                    reply="That root is a number for a whole sine. Is a chopped wave a whole sine?",
                ),
                Option(
                    "meter",
                    "A plain meter reads low on a chopped wave, and the root makes up for "
                    "what it misses.",
                    reply="No meter stands in the sum. Which two quantities does the step join?",
                ),
                Option(
                    "half",
                    "The dimmer works in both half-cycles.",
                    reply="Both are cut alike. Would the step be missing with one half-cycle?",
                ),
            )
        ),
        nudges=(
            "What does the heat do when the volts are halved?",
            "Write the heat of a resistor with volts and ohms, then solve it for the volts.",
        ),
        working=lambda n: (
            "P = V² / R with the same R, so the share of the heat is the square of the share of "
            "the rms volts."
        ),
    ),
    Question(
        id="dim-5",
        level=2,
        marks=2,
        outcome="find the heater's current behind the dimmer",
        numbers=lambda draw, supply: {
            "angle": draw.pick((50.0, 65.0, 105.0, 115.0, 125.0)),
            "watts": draw.pick((60.0, 90.0, 120.0, 150.0)),
        },
        ask=lambda n: (
            f"A new case: a pot of {write(n.watts, 'power')}, made for your mains of "
            f"{volts(n.supply.volts_rms)}, behind a leading edge at {degree(n.angle)}. What rms "
            "current does it take?"
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=_heater_amps,
            slips=(
                Slip(
                    "times the share of the heat",
                    lambda n: _full_amps(n) * power_share(n.angle),
                    "The full current was multiplied by the share of the heat. Does current follow "
                    "the heat, or the rms volts?",
                    share=0.5,
                ),
                Slip(
                    "left the dimmer out",
                    lambda n: _full_amps(n),
                    "This is the current at the full setting. What is left of the volts here?",
                ),
                Slip(
                    "less volts, more current",
                    lambda n: _full_amps(n) / sqrt(power_share(n.angle)),
                    "The current went up while the volts went down. Does a heating element keep "
                    "its power, or its ohms?",
                ),
                Slip(
                    "share of the mean",
                    lambda n: _full_amps(n) * mean_share(n.angle),
                    "The share of the mean belongs to light. Which share belongs to rms?",
                ),
                Slip(
                    "share of the angle",
                    lambda n: _full_amps(n) * (1 - n.angle / 180),
                    "This follows the knob. Which share belongs to rms?",
                ),
            ),
            check="First work out the current at the full setting.",
        ),
        nudges=(
            "What stays the same when the dimmer is turned: the pot's power, or its ohms?",
            "Find the full current from watts and volts. Then multiply by the share of the rms.",
        ),
        working=lambda n: (
            f"Full current {write(n.watts, 'power')} / {volts(n.supply.volts_rms)} = "
            f"{write_as(_full_amps(n), 'mA', 4)}, times the root of "
            f"{midway(100 * power_share(n.angle), 'percent')} "
            f"is {write_as(_heater_amps(n), 'mA')}."
        ),
        code=lambda n: (
            f"heater.amps_rms({_supply_code(n)}, {_dimmer_code(n)}, "
            f"heater.resistance({n.supply.volts_rms}, {n.watts}))"
        ),
    ),
)

# --- light, heat in the dropper, and the two ends of the knob ----------------------------------


def _light_percent(n):
    full = _indicator(n).led_amps_mean
    return 100 * _indicator(n, leading(n.angle)).led_amps_mean / full


def _dropper_watts(n):
    return _indicator(n, leading(n.angle), n.ohms).resistor_watts


def _simple_dropper_watts(n):
    return _plain_heat(n) * power_share(n.angle)


def _angle_of_mean(share):
    one_volt = mains.Supply(1.0, 50.0)
    return phase_cut_inverse.for_mean(share * mains.mean(1.0), one_volt).angle_degrees


# Heat falls from step to step for every draw: at least 72, then 56 to 63, 31 to 37, 15 to 20 and
# at most 9 per cent of the full heat.
def _settings(n):
    return (
        Option("true rms high", f"A true-rms meter shows {n.high} % of the mains."),
        Option(
            "light",
            f"The light behind the dimmer has {n.light} % of its full mean current.",
            reply=f"Which firing angle leaves {n.light} % of the mean, and how much heat is that?",
        ),
        Option(
            "mean",
            f"The mean of the wave is {n.mean} % of what it is at full.",
            reply="This is a mean, like the light. Which angle is that, and how much heat?",
        ),
        Option(
            "knob",
            f"The knob lets the last {n.knob} % of each half-cycle through.",
            reply="The last part of a half-cycle is its weak end. How much heat is in it?",
        ),
        Option(
            "true rms low",
            f"A true-rms meter shows {n.low} % of the mains.",
            reply="Rms has to be squared to give heat. What comes out?",
        ),
    )


def _settings_heat(n):
    return (
        (n.high / 100) ** 2,
        power_share(_angle_of_mean(n.light / 100)),
        power_share(_angle_of_mean(n.mean / 100)),
        power_share(180 - 1.8 * n.knob),
        (n.low / 100) ** 2,
    )


PARTS_OHMS = (2_200.0, 10_000.0, 22_000.0, 33_000.0, 47_000.0, 68_000.0, 100_000.0)
PARTS_BORDERS = ((47_000.0, 68_000.0), (68_000.0, 100_000.0))
PARTS_WATTS = (0.125, 0.25, 0.5, 1.0, 2.0)
PARTS_VOLTS, PARTS_CELSIUS = 300.0, 70.0  # What the question states of their type and their air.


def _parts_numbers(draw, supply):
    """Draw a wish for light that lies well between two values of the bin, on every supply."""
    angle, (fits, too_much) = draw.pick((130.0, 135.0, 140.0)), draw.pick(PARTS_BORDERS)
    bright, dim = (
        operating_point("series_diode", supply, leading(angle), ohms=2 * each).led_amps_mean
        for each in (fits, too_much)
    )
    return {
        "angle": angle,
        "least_amps": 5e-6 * round(sqrt(bright * dim) / 5e-6),
        "box_watts": BOX_WATTS[supply.volts_rms],
    }


def _judge_parts(picked, n):
    each, rating = picked
    high = mains.highest(n.supply)
    highest = _indicator(n, ohms=2 * each, supply=high)
    lowest = _indicator(n, leading(n.angle), ohms=2 * each, supply=mains.lowest(n.supply))
    found = rules.dropper("series_diode", n.supply, each, 2, rating, PARTS_VOLTS, PARTS_CELSIUS)
    return [
        Criterion(
            "LED within its limit",
            rules.passes([rules.led(highest.led_amps_peak)]),
            0.3,
            f"The LED's peak is {write_as(highest.led_amps_peak, 'mA')} at full and high mains.",
            f"a peak of {write_as(highest.led_amps_peak, 'mA')} is more than the "
            f"{write_as(leds.LIMIT_AMPS, 'mA')} that a small LED can stand. It dies and can burst, "
            "and the dropper can burn.",
        ),
        Criterion(
            "bright enough at the lowest setting",
            lowest.led_amps_mean >= n.least_amps,
            0.2,
            f"At the lowest setting and low mains its mean is "
            f"{write_as(lowest.led_amps_mean, 'mA')}; {write_as(n.least_amps, 'mA')} is wanted.",
        ),
        Criterion(
            "cool enough in the box at the highest setting",
            highest.resistor_watts <= n.box_watts,
            0.2,
            f"Both together give {write(highest.resistor_watts, 'power')} at full and high mains; "
            f"the box takes {write(n.box_watts, 'power')}.",
        ),
        judged(
            "at most half of the rating while all is sound",
            0.1,
            [f for f in found if f.rule == "heat" and f.after == faults.SOUND],
            "Which rating is at least twice the heat of each?",
        ),
        judged(
            "within the rating after any one short",
            0.2,
            [f for f in found if f.after != faults.SOUND],
            "How much heat does the one get that is left when the other is a piece of wire?",
        ),
    ]


def _best_parts(n):
    return next(
        (each, rating)
        for each in reversed(PARTS_OHMS)
        for rating in PARTS_WATTS
        if all(criterion.passed for criterion in _judge_parts((each, rating), n))
    )


LIGHT = (
    Question(
        id="dim-6",
        outcome="find the share of the light from the firing angle",
        numbers=lambda draw, supply: {"angle": draw.pick((60.0, 75.0, 105.0, 125.0, 135.0))},
        ask=lambda n: (
            f"The first step is yours: a leading edge fires at {degree(n.angle)}. Which share of "
            "its full mean current, and so of its full light, does an LED with dropper and diode "
            "get on your mains?"
        ),
        kind=Quantity(
            of="percent",
            unit="%",
            right=_light_percent,
            simple=lambda n: 100 * mean_share(n.angle),
            slips=(
                Slip(
                    "share of the heat",
                    lambda n: 100 * power_share(n.angle),
                    "This is the share of the heat in the pot. Does light follow rms, or mean?",
                ),
                Slip(
                    "share of the angle",
                    lambda n: 100 - n.angle / 1.8,
                    "This is the share of the half-cycle. Is the current the same all along it?",
                ),
                Slip(
                    "share of the rms",
                    lambda n: 100 * sqrt(power_share(n.angle)),
                    "This is the share of the rms. Does light follow rms, or mean?",
                ),
                Slip(
                    "took what is let through for what is held back",
                    lambda n: 100 * mean_share(180 - n.angle),
                    "This is what the dimmer takes away. How much is left?",
                    share=0.5,
                ),
                Slip(
                    "typed a fraction",
                    lambda n: mean_share(n.angle),
                    "A bare number is read in per cent here. Was a fraction of one meant?",
                    share=0.5,
                ),
            ),
            check="First work out the cosine of the angle; beyond 90 degrees it is negative.",
        ),
        nudges=(
            "Which of peak, rms and mean does light follow?",
            "Add the cosine of the angle to one, and halve the sum.",
        ),
        working=lambda n: (
            f"(1 + cos {degree(n.angle)}) / 2 = {percent(mean_share(n.angle))}; with the drops of "
            f"LED and diode, {write(_light_percent(n), 'percent')}."
        ),
        code=lambda n: (
            f'(100 * operating_point("series_diode", {_supply_code(n)}, {_dimmer_code(n)}, '
            f"ohms={INDICATOR_OHMS}).led_amps_mean\n"
            f' / operating_point("series_diode", {_supply_code(n)}, '
            f"ohms={INDICATOR_OHMS}).led_amps_mean)"
        ),
    ),
    Question(
        id="dim-7",
        level=2,
        marks=2,
        outcome="find the heat in the dropper behind the dimmer",
        numbers=lambda draw, supply: {
            "angle": draw.pick((105.0, 110.0, 120.0, 130.0, 140.0)),
            "ohms": draw.pick((33e3, 47e3, 56e3, 68e3)),
        },
        ask=lambda n: (
            f"All steps: a dropper of {write(n.ohms, 'resistance')} with diode and red LED, your "
            f"mains of {volts(n.supply.volts_rms)}, a leading edge at {degree(n.angle)}. How much "
            "heat does the dropper give at this setting?"
        ),
        kind=Quantity(
            of="power",
            unit="mW",
            right=_dropper_watts,
            simple=_simple_dropper_watts,
            slips=(
                Slip(
                    "left the dimmer out",
                    _plain_heat,
                    "This is the heat at the full setting: right for choosing the part. How much "
                    "is left at this setting?",
                    share=0.5,
                ),
                Slip(
                    "share of the mean",
                    lambda n: _plain_heat(n) * mean_share(n.angle),
                    "The share of the mean was used, which belongs to light. What does heat "
                    "follow?",
                ),
                Slip(
                    "forgot the half-wave",
                    lambda n: 2 * _simple_dropper_watts(n),
                    "Twice too much: both half-cycles were counted. What does the diode do?",
                    share=0.5,
                ),
                Slip(
                    "share of the rms",
                    lambda n: _plain_heat(n) * sqrt(power_share(n.angle)),
                    "The share of the rms was used once. How often does heat need it?",
                ),
                Slip(
                    "share of the angle",
                    lambda n: _plain_heat(n) * (1 - n.angle / 180),
                    "The share of the half-cycle was used. What does heat follow?",
                ),
            ),
            check="First work out the heat at the full setting.",
        ),
        nudges=(
            "How much heat is it at the full setting, and which share of heat is left here?",
            "Volts squared over twice the ohms, times the share of the heat at this angle.",
        ),
        working=lambda n: (
            f"V² / (2 R) is {write_as(_plain_heat(n), 'mW', 4)} at full; times "
            f"{midway(100 * power_share(n.angle), 'percent')} it is "
            f"{write_as(_simple_dropper_watts(n), 'mW')}. With the drops of LED and diode it is "
            f"{write_as(_dropper_watts(n), 'mW')}."
        ),
        code=lambda n: (
            f'operating_point("series_diode", {_supply_code(n)}, {_dimmer_code(n)}, '
            f"ohms={n.ohms}).resistor_watts"
        ),
    ),
    Question(
        id="dim-8",
        outcome="say why a dropper is chosen and rated at different settings",
        ask=lambda n: (
            "Why this step? In the worked example the ohms came from the lowest setting and the "
            "rating from the highest. Why not both from the setting that is used most?"
        ),
        kind=Choice(
            (
                Option(
                    "two ends",
                    "Light is scarcest at the low end, heat is greatest at the high end.",
                    right=True,
                    reply="And anybody can turn the knob to either end.",
                ),
                Option(
                    "average",
                    "It makes no difference: low and high settings even out over a day of use.",
                    reply="A part that has burnt at the highest setting: what evens that out?",
                    danger="a part that is rated for the usual setting can burn at full.",
                ),
                Option(
                    "peak",
                    "The peak is highest at the lowest setting.",
                    reply="Look at the picture of the wave: where is the peak highest?",
                ),
                Option(
                    "ohms change",
                    "The dropper's ohms are smaller at the lowest setting.",
                    reply="Does turning a knob change the part?",
                ),
            )
        ),
        nudges=(
            "At which setting would you complain of the light, and at which of a burnt smell?",
            "Look at each wish alone: at which setting is it hardest to fulfil?",
        ),
        working=lambda n: (
            "Each wish is checked where it is hardest: light at the lowest setting on low mains, "
            "heat and peak at the highest setting on high mains."
        ),
    ),
    Question(
        id="dim-9",
        level=3,
        marks=2,
        outcome="order dimmer settings by the heat they give",
        numbers=lambda draw, supply: {
            "high": draw.pick((80, 85)),
            "light": draw.pick((47, 50)),
            "mean": draw.pick((37, 39)),
            "knob": draw.pick((36, 37)),
            "low": draw.pick((40, 42)),
        },
        ask=lambda n: (
            "Five settings of one leading-edge dimmer, each told in another way. Put them in order "
            "of the heat in the pot, the most on top."
        ),
        kind=Order(_settings),
        nudges=(
            "Which of these percentages are rms, which are mean, and which are only the knob's?",
            "Turn each into a share of the heat: square an rms; from a mean find the angle first.",
        ),
        working=lambda n: (
            "The shares of the heat, from top to bottom: "
            + ", ".join(percent(share) for share in _settings_heat(n))
            + "."
        ),
    ),
    Question(
        id="dim-10",
        edition=3,
        level=3,
        marks=3,
        outcome="choose a dropper for the lowest setting and rate it for the highest",
        numbers=_parts_numbers,
        ask=lambda n: (
            "A red LED and a diode stand behind a dropper of two equal resistors in series, so "
            "that they share the peak.\n\n"
            f"At the lowest setting that is used, {degree(n.angle)}, the LED needs a mean of "
            f"{write_as(n.least_amps, 'mA')}, also with your mains of "
            f"{volts(n.supply.volts_rms)} 10 % low. At the highest setting, with it 10 % high, "
            "its peak may be "
            f"{write_as(leds.LIMIT_AMPS, 'mA')}. Both resistors together may give "
            f"{write(n.box_watts, 'power')} in their small box. Its air stays below "
            f"{write(PARTS_CELSIUS, 'temperature')}, and their type stands {volts(PARTS_VOLTS)} "
            "rms.\n\nWhile all is sound, each takes at most half of its rating. After any one "
            "short (a resistor, the LED, the diode), none that is left takes more than its "
            "rating.\n\nPick one value and one rating, the same for both."
        ),
        kind=Parts(
            (
                Field("each resistor", "resistance", PARTS_OHMS),
                Field("power rating of each", "power", PARTS_WATTS, "W"),
            ),
            _judge_parts,
            _best_parts,
        ),
        nudges=(
            "Which wish sets the most ohms that you may take, and which the least?",
            "Divide the wanted mean by the share of the light to get the mean at full. It is 0.45 "
            "times the low mains over the ohms. Then work out the heat at full on high mains, also "
            "in the one that is left when the other is shorted.",
        ),
        working=lambda n: (
            f"Two of {write(_best_parts(n)[0], 'resistance')}. "
            + " ".join(criterion.reply for criterion in _judge_parts(_best_parts(n), n))
        ),
    ),
)

# --- meters ------------------------------------------------------------------------------------


def _plain_reading(n):
    return meters.reading(signals.dimmed_mains(n.supply, leading(n.angle)), "average")


def _shown_share(n):
    return n.reading / n.supply.volts_rms


def _setting_of_reading(n):
    return phase_cut_inverse.for_mean(n.reading / meters.SINE_FORM_FACTOR, n.supply)


def _true_volts(n):
    return phase_cut.wave(n.supply, _setting_of_reading(n)).volts_rms


def _reading_numbers(draw, supply):
    angle = draw.pick((105.0, 115.0, 130.0, 140.0))
    return {"reading": round(supply.volts_rms * mean_share(angle), 1)}


METERS = (
    Question(
        id="dim-11",
        level=2,
        outcome="say what a plain meter shows behind the dimmer",
        numbers=lambda draw, supply: {"angle": draw.pick((100.0, 115.0, 125.0, 130.0, 140.0))},
        ask=lambda n: (
            f"A leading edge fires at {degree(n.angle)} on your {volts(n.supply.volts_rms)} mains. "
            "What does a plain meter show across the pot?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=_plain_reading,
            slips=(
                Slip(
                    "true rms",
                    lambda n: volts_rms(n),
                    "A true-rms meter shows this. Which of rms and mean does a plain meter follow?",
                ),
                Slip(
                    "mean without its scale",
                    lambda n: n.supply.volts_rms * mean_share(n.angle) / meters.SINE_FORM_FACTOR,
                    "This is the mean itself. With what does the meter multiply it, so that a "
                    "whole sine reads right?",
                    share=0.5,
                ),
                Slip(
                    "share of the angle",
                    lambda n: n.supply.volts_rms * (1 - n.angle / 180),
                    "This is the share of the half-cycle. Is the voltage the same all along it?",
                ),
                Slip(
                    "share of the heat",
                    lambda n: n.supply.volts_rms * power_share(n.angle),
                    "This is the share of the heat times the volts. Which share does a plain meter "
                    "follow?",
                ),
                Slip(
                    "took what is let through for what is held back",
                    lambda n: n.supply.volts_rms * mean_share(180 - n.angle),
                    "This is what the dimmer takes away. How much is left?",
                    share=0.5,
                ),
            ),
            check="First work out the share of the mean.",
        ),
        nudges=(
            "Which of peak, rms and mean does a plain meter follow?",
            "Its scale is made so that a whole sine reads right: the mains times the share of the "
            "mean.",
        ),
        working=lambda n: (
            f"(1 + cos {degree(n.angle)}) / 2 = {midway(100 * mean_share(n.angle), 'percent')}; of "
            f"{volts(n.supply.volts_rms)} that is {volts(_plain_reading(n))}. The true rms is "
            f"{volts(volts_rms(n))}."
        ),
        code=lambda n: (
            f'meters.reading(signals.dimmed_mains({_supply_code(n)}, {_dimmer_code(n)}), "average")'
        ),
    ),
    Question(
        id="dim-12",
        level=3,
        marks=3,
        outcome="find the true rms behind a plain meter's reading",
        numbers=_reading_numbers,
        picture=lambda n: Picture(
            "meter",
            {"text": f"{n.reading:.1f}", "unit": "V", "words": "plain meter, AC volts"},
        ),
        ask=lambda n: (
            "This plain meter stands across the pot, behind a leading-edge dimmer on your mains of "
            f"{volts(n.supply.volts_rms)}. What is the true rms voltage there?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=_true_volts,
            slips=(
                Slip(
                    "believed the meter",
                    lambda n: n.reading,
                    "This is what the display says. On what kind of wave would that be the rms?",
                ),
                Slip(
                    "times 1.11",
                    lambda n: n.reading * meters.SINE_FORM_FACTOR,
                    "The reading was stretched by the factor of a sine, and the meter has done "
                    "that already. Which firing angle belongs to its reading?",
                ),
                Slip(
                    "forgot the root",
                    lambda n: _true_volts(n) ** 2 / n.supply.volts_rms,
                    "This is the share of the heat times the volts. What is still to be done to "
                    "come from heat to volts?",
                    share=0.5,
                ),
                Slip(
                    "took the reading for a share of the heat",
                    lambda n: n.supply.volts_rms * sqrt(_shown_share(n)),
                    "The root of the reading's share was taken, as if it were a share of the "
                    "heat. Which share is it?",
                ),
                Slip(
                    "took the reading for a share of the angle",
                    lambda n: n.supply.volts_rms * sqrt(power_share(180 * (1 - _shown_share(n)))),
                    "The angle seems to come from a straight line. Which function joins angle and "
                    "mean?",
                    share=0.5,
                ),
            ),
            check="First work out which share of the mains the display shows, then the angle.",
        ),
        nudges=(
            "Which share of the mains does the display show, and which share is that: mean, rms "
            "or heat?",
            "The cosine of the angle is twice that share, less one. From the angle find the share "
            "of the heat, then take its root and multiply by the mains.",
        ),
        working=lambda n: (
            f"{n.reading:.1f} V is {percent(_shown_share(n))} of the mains, so the cosine is "
            f"{write(2 * _shown_share(n) - 1, 'ratio')} and the angle "
            f"{degree(_setting_of_reading(n).angle_degrees)}. The heat is "
            f"{percent(power_share(_setting_of_reading(n).angle_degrees))} of full, and its root "
            f"times {volts(n.supply.volts_rms)} is {volts(_true_volts(n))}."
        ),
        code=lambda n: (
            f"phase_cut.wave({_supply_code(n)}, phase_cut_inverse.for_mean({n.reading} / "
            f"meters.SINE_FORM_FACTOR, {_supply_code(n)})).volts_rms"
        ),
    ),
)

# --- before or after, and what off means -------------------------------------------------------

WISHES = {
    "supplied": "be lit whenever the pot is being supplied, at any setting of the dimmer",
    "mains": "be lit as long as the plug is in, whatever the dimmer and its switch do",
    "heats": "prove that current really flows in the heating element",
}


def _tap_options(n):
    return (
        Option(
            "after",
            "Across the pot's two wires, after the dimmer.",
            right=n.wish == "supplied",
            reply={
                "supplied": "It shows that the pot gets voltage, and dims with it.",
                "mains": "Does a light across the pot stay lit when the dimmer is at off?",
                "heats": "What would it show if the element were broken?",
            }[n.wish],
        ),
        Option(
            "before",
            "Across the two mains wires, before the dimmer and its switch.",
            right=n.wish == "mains",
            reply={
                "supplied": "Does a light before the switch go out when the switch is opened?",
                "mains": "It shows that the plug is in. It says nothing of the pot.",
                "heats": "What does a light before the switch know of the pot?",
            }[n.wish],
        ),
        Option(
            "across switch",
            "From the dimmer's input to its output.",
            reply="When is there a voltage across a switch: when it is closed, or open? Think of "
            "what the light would say then.",
        ),
        Option(
            "in series",
            "In series with the pot, so that the pot's current flows through it.",
            reply="How many times more current than a small LED stands does the pot take?",
            danger="the LED would have to carry all of the pot's current. It bursts at once.",
        ),
        Option(
            "no tap",
            "Nowhere across the wires: that shows volts. Current needs a sensor that is certified "
            "for it.",
            right=n.wish == "heats",
            reply={
                "supplied": "Is current asked for, or only whether the pot gets voltage?",
                "mains": "Is current asked for, or only whether the plug is in?",
                "heats": "A light across the wires looks the same with a broken element.",
            }[n.wish],
        ),
    )


def _off(n):
    return leakage.off_state(n.supply, SNUBBER_FARADS, SNUBBER_OHMS, _pot_ohms(n))


def _what_follows(n):
    """What the peak that is left means for a red LED, with and without a diode in series."""
    bare, with_diode = (leakage.reaches_led(c, _off(n)) for c in ("diode_across", "series_diode"))
    if with_diode:
        return "A red LED with a diode in series drops 2.7 V, so the light glows faintly at off."
    if bare:
        return (
            "A red LED drops 2 V, so it glows faintly at off, unless a diode in series adds its "
            "own drop."
        )
    return (
        "A red LED drops 2 V, so this capacitor alone does not light it; a larger one can. Dark "
        "does not mean dead."
    )


# A heater for each angle that is within 80 % of the dimmer's watts in its mean heat alone.
MISTAKE_WATTS = {50.0: 530.0, 60.0: 560.0, 70.0: 590.0}
DIMMER_WATTS, LOADED_PERCENT = 600.0, 80.0  # 80 %: common practice, no source.


def _most_at_off(n):
    """What an off pot's terminals can swing to: broken element, series diode, high mains."""
    high = mains.highest(n.supply)
    return -clamped.off_state(high, SNUBBER_FARADS, SNUBBER_OHMS, INDICATOR_OHMS).volts_lowest


def _sentences(n):
    left = MISTAKE_WATTS[n.angle] * power_share(n.angle)
    return (
        Option(
            "same peak",
            f"“The peak behind it is still {volts(mains.peak(n.supply.volts_rms))}.”",
            reply="At which angle does the crest of a half-cycle lie: has it been cut away here?",
        ),
        Option(
            "plain low",
            "“A plain meter shows less here than a true-rms meter.”",
            reply="Compare the shares of mean and of rms at this angle. Which is smaller?",
        ),
        Option(
            "weaker diode",
            "“The rms is lower now, so a diode with a lower voltage rating will do.”",
            right=True,
            reply="Which of peak, rms and mean does a diode have to stand?",
            danger="the diode sees the peak, which has not fallen. A weak one breaks down, and "
            "the dropper carries twice its heat.",
        ),
        Option(
            "light as heat",
            f"“The pot gives {percent(power_share(n.angle))} of its heat, so the LED gives "
            f"{percent(power_share(n.angle))} of its light.”",
            right=True,
            reply="Does light follow the rms squared, or the mean?",
        ),
        Option(
            "overload",
            f"“A heater of {write(MISTAKE_WATTS[n.angle], 'power')} gives only "
            f"{write(left, 'power')} at this setting, so a dimmer for "
            f"{write(DIMMER_WATTS, 'power')} can carry it for hours.”",
            right=True,
            reply="Who keeps the knob from being turned up? And does the current fall as fast as "
            "the heat?",
            danger="at full the dimmer would carry more than it stands for hours. It overheats and "
            "can burn.",
        ),
        Option(
            "trailing edge",
            "“A trailing edge that lets as much of each half-cycle through heats the pot just as "
            "much.”",
            reply="It cuts the other end of each half-cycle. Is what is left the mirror image of "
            "this, and can a plain heater tell?",
        ),
        Option(
            "sound element",
            "“The dimmer is off and the light is nearly at full, so the element must be sound.”",
            right=True,
            reply="A sound element pulls the leaked voltage down to a few volts or less. What lets "
            "it rise to the mains? And what if the dimmer itself has failed?",
            danger="with an open path through the pot, the terminals stand at full mains or more "
            "while the dimmer is off. Touching them can kill.",
        ),
    )


# How the light looks, what somebody wants to do, and what they make of the look. Of the four
# steps that belong first, one has given way to a tempting copy that does not do its work.
DARK, FAINT, BRIGHT = "dark", "glowing faintly", "nearly at full brightness"
JOBS = {
    DARK: "open the pot's cover",
    FAINT: "tighten one of the pot's terminals",
    BRIGHT: "change the pilot light",
}
LAZY = {
    DARK: "Take the dark light as proof that nothing is live.",
    FAINT: "Take the faint glow as a harmless leak, and begin.",
    BRIGHT: "Take the light as faulty, since the dimmer is off, and begin.",
}
FIRST_STEPS = (
    Option(
        "plug",
        "Pull the plug, and keep it where nobody can put it back.",
        right=True,
        reply="Which of the steps parts both wires from the mains?",
        danger="without this everything may be live: a dimmer opens one wire at most, and that "
        "one leaks. Touching it can kill.",
    ),
    Option(
        "prove tester",
        "Prove the tester on a known live source.",
        right=True,
        reply="How do you know that a tester which shows nothing still works?",
        danger="a dead tester calls every live wire dead. Touching one can kill.",
    ),
    Option(
        "prove dead",
        "Prove the terminals dead with the tester, between the wires and from each to earth.",
        right=True,
        reply="Which step shows that the right plug was pulled?",
        danger="what has not been proved dead may be live. Touching it can kill.",
    ),
    Option(
        "prove again",
        "Prove the tester once more after the test.",
        right=True,
        reply="What if the tester died while it was used?",
        danger="a tester that died in between calls live wires dead. Touching one can kill.",
    ),
)
TEMPTING = {
    DARK: Option(
        "prove again",
        "Skip the second proof: a tester that worked a minute ago works.",
        reply="In which minute did a tester that has died stop working?",
        danger="a tester that died in between calls live wires dead. Touching one can kill.",
    ),
    FAINT: Option(
        "prove dead",
        "Test from line to neutral; if that is dead, everything is.",
        reply="What does a test between two wires say about each of them and earth?",
        danger="a broken neutral shows nothing between the wires, and the live one can kill.",
    ),
    BRIGHT: Option(
        "prove tester",
        "Look whether the tester bears this year's date; that proves it.",
        reply="Can a tester that was checked in spring be broken today?",
        danger="a dead tester calls every live wire dead. Touching one can kill.",
    ),
}


@cache
def _before_touching(look):
    tempting = TEMPTING[look]
    return (
        *(tempting if step.key == tempting.key else step for step in FIRST_STEPS),
        Option(
            "dimmer isolates",
            "Count the dimmer's off as parting the pot from the mains.",
            reply="How many wires does a dimmer open, and does it open even one completely?",
            danger="a dimmer is no isolator: off, it still passes current, and one wire is never "
            "opened. Touching either can kill.",
        ),
        Option(
            "light",
            LAZY[look],
            reply="What does this light look like with a broken LED, with a broken element, with "
            "the wires the other way round?",
            danger="no look of the light proves anything dead. Touching live parts can kill.",
        ),
    )


OFF = (
    Question(
        id="dim-13",
        level=2,
        outcome="choose where a pilot light is connected",
        numbers=lambda draw, supply: {"wish": draw.pick(tuple(WISHES))},
        ask=lambda n: f"The workshop wants its light to {WISHES[n.wish]}. Where does it belong?",
        kind=Choice(_tap_options),
        nudges=(
            "What does the wish speak of: volts or current, and before or after the switch?",
            "Go through the places and ask of each: when is there a voltage, and when is there "
            "none?",
        ),
        working=lambda n: {
            "supplied": "After the dimmer, across the pot: lit when the pot is supplied, and "
            "fainter at low settings. It does not say whether the element works, and dark does "
            "not mean dead.",
            "mains": "Before the dimmer: lit as long as the plug is in, always at full mains.",
            "heats": "No place across the wires: with a broken element the light looks the same. "
            "Current has to be sensed, by a part made for it.",
        }[n.wish],
    ),
    Question(
        id="dim-14",
        edition=2,
        level=2,
        marks=2,
        outcome="find the voltage that an off dimmer leaves on a sound heater",
        numbers=lambda draw, supply: {"watts": draw.pick((60.0, 75.0, 80.0, 110.0, 150.0))},
        ask=lambda n: (
            "The dimmer is off. The snubber across its switch, with a capacitor of "
            f"{write(SNUBBER_FARADS, 'capacitance')}, still lets "
            f"{write_as(_off(n).leak_amps_rms, 'mA')} through to a pot of "
            f"{write(n.watts, 'power')}, made for your mains of {volts(n.supply.volts_rms)} and "
            f"sound. The dropper of its pilot light has {write(INDICATOR_OHMS, 'resistance')}. "
            "What rms voltage stands across the pot?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=lambda n: _off(n).volts_rms,
            slips=(
                Slip(
                    "leak through the dropper",
                    lambda n: _off(n).leak_amps_rms * INDICATOR_OHMS,
                    "The leak was sent through the dropper. The pot offers far fewer ohms: which "
                    "way does nearly all of the current go?",
                ),
                Slip(
                    "full mains",
                    lambda n: n.supply.volts_rms,
                    "This or more can stand there with a broken element. What does a sound one do "
                    "to so small a current?",
                ),
                Slip(
                    "volts over watts",
                    lambda n: _off(n).leak_amps_rms * n.supply.volts_rms / n.watts,
                    "Volts over watts is one over a current, not a resistance. How do ohms follow "
                    "from volts and watts?",
                ),
                Slip(
                    "watts over volts",
                    lambda n: _off(n).leak_amps_rms * n.watts / n.supply.volts_rms,
                    "Watts over volts is the pot's working current. How do ohms follow from it?",
                ),
                Slip(
                    "gave the peak",
                    lambda n: _off(n).volts_peak,
                    "This is the peak. It decides whether the LED lights; the question asks rms.",
                    share=0.5,
                ),
            ),
            check="First work out the pot's ohms.",
        ),
        nudges=(
            "Through which part does nearly all of the leak flow: the pot, or the pilot light?",
            "The pot's ohms are volts squared over watts. Multiply them by the leak.",
        ),
        working=lambda n: (
            f"The pot has ({volts(n.supply.volts_rms)})² / {write(n.watts, 'power')} = "
            f"{midway(_pot_ohms(n), 'resistance')}; times "
            f"{write_as(_off(n).leak_amps_rms, 'mA', 4)} "
            f"it is {volts(_off(n).volts_rms)}, with a peak of {volts(_off(n).volts_peak)}. "
            + _what_follows(n)
        ),
        code=lambda n: (
            f"leakage.off_state({_supply_code(n)}, {SNUBBER_FARADS}, {SNUBBER_OHMS}, "
            f"heater.resistance({n.supply.volts_rms}, {n.watts})).volts_rms"
        ),
    ),
    Question(
        id="dim-15",
        level=3,
        marks=3,
        edition=2,
        outcome="find the wrong steps in an argument about the dimmer",
        numbers=lambda draw, supply: {"angle": draw.pick(tuple(MISTAKE_WATTS))},
        ask=lambda n: (
            f"Find the mistakes. Somebody explains a leading-edge dimmer that fires at "
            f"{degree(n.angle)} on your mains. For hours, the workshop loads a dimmer to "
            f"{LOADED_PERCENT:g} % of its printed watts at most. Choose every sentence that is "
            "wrong."
        ),
        kind=ChooseAll(_sentences),
        nudges=(
            "What does each sentence speak of: the peak, the rms, the mean, or off?",
            "Peak for what a diode holds off, rms for heat and current, mean for light and the "
            "plain meter. Test each sentence on that.",
        ),
        working=lambda n: (
            f"The diode needs the full peak, and nearly twice that with a broken element at off. "
            f"The light is {percent(mean_share(n.angle))}, not {percent(power_share(n.angle))}. "
            f"{LOADED_PERCENT:g} % of the dimmer's watts are "
            f"{write(LOADED_PERCENT / 100 * DIMMER_WATTS, 'power')}: the heater is above that as "
            "soon as the knob is turned up, and even here its rms current is that of "
            f"{write(MISTAKE_WATTS[n.angle] * sqrt(power_share(n.angle)), 'power')}. A light "
            "nearly at full at off tells of an open path through the pot: a broken element, an "
            "open cut-out, a loose wire, an unplugged pot. Or the dimmer has failed, and the pot "
            "is hot."
        ),
    ),
    Question(
        id="dim-16",
        level=2,
        marks=2,
        danger=True,
        outcome="say what is needed before a dimmed pot may be touched",
        numbers=lambda draw, supply: {"look": draw.pick(tuple(JOBS))},
        ask=lambda n: (
            f"The dimmer is off and the pilot light is {n.look}. Somebody wants to {JOBS[n.look]}. "
            "Which of these come first?"
        ),
        kind=ChooseAll(lambda n: _before_touching(n.look)),
        nudges=(
            "Which of these would still protect you if dimmer, light and tester were all faulty?",
            "Take only what parts the wires from the mains or proves that they are parted.",
        ),
        working=lambda n: (
            "Pull the plug and guard it, prove the tester, prove dead, prove the tester again. In "
            f"place of one of the four stood: “{TEMPTING[n.look].text}” Off is not isolated, "
            "and no look of the light is a proof: with a broken element it can be dark while "
            f"up to {volts(_most_at_off(n))} stand at the terminals. The tester's upper limit must "
            "lie above that. It is work for an electrically skilled or instructed person, under "
            "local rules."
        ),
    ),
)

QUESTIONS = (*RECALL, PREDICT, *PERCENTAGES, *LIGHT, *METERS, *OFF)
