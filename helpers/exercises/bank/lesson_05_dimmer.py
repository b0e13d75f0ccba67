"""Lesson 05: what a phase-cut dimmer does to heat, light, meters, and to the word "off".

Heat follows the rms, light and the plain meter follow the mean, diodes the peak.

No question draws an angle whose answer the lesson's own pictures show: 70 and 120 degrees and what
the explorers open with. And none draws one where a wrong turn lands within 3 % of the right answer.
"""

from functools import cache
from itertools import product
from math import pi, sqrt

from helpers.exercises.bank import two_resistors
from helpers.exercises.kinds import (
    Amount,
    Choice,
    ChooseAll,
    Criterion,
    Field,
    Option,
    Order,
    Parts,
    Slip,
    first_that_passes,
    options,
)
from helpers.exercises.question import Picture, Question
from helpers.exercises.roads import Road, Turn, clear
from helpers.exercises.roads.steps import dimmer as steps
from helpers.exercises.roads.steps.general import given, knowing, label, times
from helpers.exercises.roads.steps.heat import HALVED_TWICE, MEAN_BY_RMS, halved, squared_over
from helpers.exercises.roads.steps.mains import (
    FORM_FOR_CREST,
    SUPPLY,
    crest,
    per_cent_more,
    percent_up,
)
from helpers.exercises.roads.steps.safety import WEAK_DROPPER, called_too_low
from helpers.physics import (
    clamped,
    heater,
    leakage,
    leds,
    mains,
    meters,
    phase_cut,
    phase_cut_inverse,
)
from helpers.physics.operating_point import operating_point
from helpers.quantities import write, write_as
from helpers.quantities.writing import volts
from helpers.sizing import rules

LESSON = "05"
TITLE = "The dimmer"

INDICATOR_OHMS = 100_000.0
SNUBBER_FARADS, SNUBBER_OHMS = leakage.USUAL_SNUBBER

# Lines of code, to be filled with the personal numbers.
DIMMER = 'phase_cut.Dimmer("leading", {degrees})'
POT_OHMS = "heater.resistance({supply.volts_rms}, {watts})"


def percent(share):
    return write(100 * share, "percent")


def leading(angle):
    return phase_cut.Dimmer("leading", angle)


def power_share(angle):
    return phase_cut.wave(mains.Supply(1.0, 50.0), leading(angle)).power_fraction


def mean_share(angle):
    return phase_cut.wave(mains.Supply(1.0, 50.0), leading(angle)).volts_mean / mains.mean(1.0)


def _indicator(n, dimmer=phase_cut.NO_DIMMER, ohms=INDICATOR_OHMS, supply=None):
    return operating_point("series_diode", supply or n.supply, dimmer, ohms=ohms)


# --- look back ---------------------------------------------------------------------------------

HIGH_PEAK = Road(
    label(),
    per_cent_more("percent", "the mains today"),
    knowing(
        crest(),
        Turn(
            "halved the crest",
            "Has one half-cycle a lower crest than the other?",
            lambda value, operand, n: value / sqrt(2),
        ),
        FORM_FOR_CREST,
    ),
)
FULL_HEAT = Road(
    label(),
    squared_over("ohms"),
    knowing(
        halved(),
        Turn(
            "squared the mean",
            "Which voltage decides heat: crest, rms or mean?",
            lambda value, operand, n: 2 / pi**2 * value,
        ),
    ),
)
HEAT_BY_SUM = Road(
    label(),
    knowing(squared_over("ohms"), MEAN_BY_RMS),
    knowing(FULL_HEAT.steps[-1], HALVED_TWICE),
)
RECALLED_OHMS = (33e3, 39e3, 56e3, 68e3, 47e3, 82e3)  # the first four that are clear


def _full_heat(n):
    return _indicator(n, ohms=n.ohms).resistor_watts


RECALL = (
    Question(
        id="dim-recall-1",
        edition=2,
        role="recall",
        outcome="say what makes a dead reading count",
        ask="From lesson 01: the plug is out, and the tester shows nothing at the pot's terminals. "
        "What makes this reading count?",
        kind=Choice("""
            right prove again: The tester is proved once more on a proving unit.
              reply: A tester that died in between shows nothing anywhere.
            wrong look twice: The terminals are tested a second time.
              reply: What would a dead tester show the second time?
              danger: a dead tester calls every live wire dead, and touching one can kill.
            wrong light dark: The pilot light is dark as well.
              reply: For how many reasons can a light be dark?
              danger: a dark light can be a broken light. Touching live parts can kill.
            wrong dimmer off: The dimmer stands at off as well.
              reply: Does a dimmer part the pot from the mains?
              danger: a dimmer is no isolator. Touching live parts can kill.
        """),
        nudges=("What would you see if the tester had died on the way?",),
        working="Prove the tester, prove dead, prove the tester again.",
    ),
    Question(
        id="dim-recall-2",
        edition=4,
        role="recall",
        outcome="find the peak of a mains that lies high",
        numbers=lambda draw, supply: {"percent": draw.pick((4.0, 5.0, 6.0))},
        ask="From lesson 03: your mains, {supply.volts_rms}, lies {percent} high today. No dimmer. "
        "What peak must the series diode of a pilot light hold off?",
        kind=Amount(
            "voltage",
            "V",
            HIGH_PEAK,
            measure="peak",
            slips=(
                Slip(
                    "added the per cent as volts",
                    lambda n: mains.peak(n.supply.volts_rms) + n.percent,
                    "So many per cent of what?",
                    share=0.5,
                ),
                Slip(
                    "took the rise alone",
                    lambda n: n.supply.volts_rms * n.percent / 100,
                    "What does the rise come on top of?",
                    share=0.5,
                ),
            ),
            danger=called_too_low(
                HIGH_PEAK.value,
                1.0,
                "a diode that is chosen for less than the peak can break down. The dropper then "
                "gives twice its heat, and can burn.",
            ),
            below=0.005,
        ),
        nudges=(
            "Is the number on the socket a crest or an rms value?",
            "Raise the rms value by the percentage, then multiply by the root of two.",
        ),
        working="{sum}. Behind a dimmer it can be nearly twice that, as this lesson shows. What "
        "insulation has to stand is another matter, and more: lesson 01.",
    ),
    Question(
        id="dim-recall-3",
        edition=3,
        role="recall",
        outcome="find the heat in a dropper that works half of the time",
        numbers=lambda draw, supply: {
            "ohms": draw.pick(clear(HEAT_BY_SUM, supply, "ohms", RECALLED_OHMS, _full_heat)[:4])
        },
        ask="From lesson 04: a dropper of {ohms}, a diode and a red LED stand in series on your "
        "mains, {supply}. No dimmer. How much heat does the dropper give?",
        kind=Amount(
            "power",
            "W",
            HEAT_BY_SUM,
            exact=_full_heat,
            slips=(
                Slip(
                    "forgot to square the volts",
                    lambda n: n.supply.volts_rms / n.ohms,
                    "Volts over ohms is a current. What makes watts?",
                ),
                Slip(
                    "took 0.45 on top",
                    lambda n: 0.45 * FULL_HEAT.value(n),
                    "0.45 belongs to the mean. What belongs to heat?",
                    share=0.5,
                ),
                Slip(
                    "worked out the rating",
                    lambda n: 2 * (1 + percent_up(n) / 100) ** 2 * FULL_HEAT.value(n),
                    "Is a rating asked for, or the heat on an ordinary day?",
                ),
            ),
            danger=called_too_low(_full_heat, 0.6, WEAK_DROPPER),
        ),
        nudges=(
            "How much of the time does current flow?",
            "Rms volts squared over ohms, and half of that.",
        ),
        working="{sum}; with the small drops of LED and diode taken off, {right}.",
        code=f'operating_point("series_diode", {SUPPLY}, ohms={{ohms}}).resistor_watts',
    ),
)

PREDICT = Question(
    id="dim-predict",
    role="predict",
    outcome="commit to an expectation",
    ask="The dimmer lets the last third of each half-cycle through to the pot. How much of its "
    "full heat does the pot still give?",
    kind=Choice("""
        wrong third: A third of it
        wrong half: About half of it
        wrong fifth: About a fifth of it
        wrong thirtieth: About a thirtieth of it
    """),
    facts={
        "heat_percent": lambda n: 100 * power_share(120.0),
        "light_percent": lambda n: 100 * mean_share(120.0),
    },
    working="a third of each half-cycle gives {heat_percent} of the heat. Its light is "
    "{light_percent} of the full light. The last third of a half-cycle is its weak end, and heat "
    "goes with the square of the voltage.",
)

# --- one angle, three percentages --------------------------------------------------------------

SHARE_OF_HEAT = Road(
    given("degrees"), knowing(steps.heat_share(), *steps.IN_THE_FORMULA), steps.in_percent()
)
HEATER_AMPS = Road(given("watts"), steps.full_amps(), steps.dimmed_amps("degrees"))

PERCENTAGES = (
    Question(
        id="dim-1",
        edition=3,
        outcome="read the firing angle off a chopped wave",
        numbers=lambda draw, supply: {
            "degrees": draw.pick((42.0, 54.0, 66.0, 72.0, 108.0, 126.0, 132.0, 138.0))
        },
        picture=lambda n: Picture("waveform", {"supply": n.supply, "dimmer": leading(n.degrees)}),
        ask="This is your mains behind a leading-edge dimmer. What is its firing angle?",
        kind=Amount("angle", "°", Road(steps.read_angle("degrees"))),
        nudges=(
            "Where does the half-cycle begin, and where does the trace jump?",
            "Count the divisions from the one to the other. The line under the grid says what a "
            "division is worth; each small mark is a fifth of it.",
        ),
        facts={"divisions": lambda n: n.degrees / 30},
        working="The trace jumps {divisions:g} divisions after the zero crossing; at 30° each that "
        "is {right}.",
        code=lambda n: "",
    ),
    Question(
        id="dim-2",
        edition=2,
        marks=2,
        outcome="find the share of the heat from the firing angle",
        numbers=lambda draw, supply: {"degrees": draw.pick((130.0, 140.0, 145.0))},
        ask="Your turn with the second step of the example: a leading edge fires at {degrees}. "
        "What share of its full heat does the pot give?",
        kind=Amount("percent", "%", SHARE_OF_HEAT),
        nudges=(
            "Which part of each half-cycle is let through, its strong middle or its weak end?",
            "Take the share that is let through, and add the sine of twice the angle over two pi. "
            "Beyond 90 degrees that sine is negative.",
        ),
        code=f"phase_cut_inverse.percentages({DIMMER}).power_percent",
    ),
    Question(
        id="dim-3",
        edition=3,
        level=2,
        marks=2,
        outcome="find the true rms volts from the firing angle",
        numbers=lambda draw, supply: {"degrees": draw.pick((105.0, 115.0, 130.0, 140.0))},
        ask="All steps now: a leading edge fires at {degrees} on your mains, {supply.volts_rms}. "
        "What does a true-rms meter show across the pot?",
        kind=Amount(
            "voltage",
            "V",
            Road(*steps.volts_left("degrees").steps, steps.of_mains()),
            measure="rms",
            crest=None,
        ),
        nudges=(
            "Which share of the heat is left, and how are heat and volts related?",
            "Find the share of the heat, take its square root, and multiply by the mains.",
        ),
        code=f"phase_cut.wave({SUPPLY}, {DIMMER}).volts_rms",
    ),
    Question(
        id="dim-4",
        edition=2,
        outcome="say why heat and volts differ by a square root",
        ask="Why this step? In the worked example a root was taken between the share of the heat "
        "and the volts.",
        kind=Choice("""
            right square: Heat goes with the square of the volts, so the way back is a root.
              reply: Half of the volts is a quarter of the heat.
            wrong peak: Rms is the peak divided by the root of two.
              reply: That root is a number for a whole sine. Is a chopped wave a whole sine?
            wrong meter: A plain meter reads low on a chopped wave, and the root makes up for what
                it misses.
              reply: No meter stands in the sum. Which two quantities does the step join?
            wrong half: The dimmer works in both half-cycles.
              reply: Both are cut alike. Would the step be missing with one half-cycle?
        """),
        nudges=(
            "What does the heat do when the volts are halved?",
            "Write the heat of a resistor with volts and ohms, then solve it for the volts.",
        ),
        working="P = V² / R with the same R, so the share of the heat is the square of the share "
        "of the rms volts.",
    ),
    Question(
        id="dim-5",
        edition=4,
        level=2,
        marks=2,
        outcome="find the heater's current behind the dimmer",
        numbers=lambda draw, supply: {
            "degrees": draw.pick((105.0, 110.0, 115.0, 130.0, 140.0)),
            "watts": draw.pick((60.0, 75.0, 90.0, 150.0)),
        },
        ask="A new case: a pot of {watts}, made for your mains of {supply.volts_rms}, behind a "
        "leading edge at {degrees}. What rms current does it take?",
        kind=Amount(
            "current",
            "mA",
            HEATER_AMPS,
            measure="rms",
            crest=None,
            slips=(
                Slip(
                    "divided by the volts twice",
                    lambda n: n.watts / n.supply.volts_rms**2,
                    "Watts are volts times what?",
                ),
            ),
            danger=called_too_low(
                HEATER_AMPS.value,
                0.1,
                "a dimmer or a wire that is chosen for so small a current overheats, and can burn.",
            ),
        ),
        nudges=(
            "What stays the same when the dimmer is turned: the pot's power, or its ohms?",
            "Find the full current from watts and volts. Then multiply by the share of the rms.",
        ),
        code=f"heater.amps_rms({SUPPLY}, {DIMMER}, {POT_OHMS})",
    ),
)

# --- light, heat in the dropper, and the two ends of the knob ----------------------------------

HEAT_AT_SETTING = Road(
    *FULL_HEAT.steps,
    times(steps.heat_left("degrees"), "power", "the heat at this setting"),
)


def _light_percent(n):
    full = _indicator(n).led_amps_mean
    return 100 * _indicator(n, leading(n.degrees)).led_amps_mean / full


def _heat_at_setting(n):
    return _indicator(n, leading(n.degrees), n.ohms).resistor_watts


def _angle_of_mean(share):
    one_volt = mains.Supply(1.0, 50.0)
    return phase_cut_inverse.for_mean(share * mains.mean(1.0), one_volt).angle_degrees


# Heat falls from step to step for every draw: at least 72, then 56 to 63, 31 to 37, 15 to 20 and
# at most 9 per cent of the full heat.
SETTINGS = options("""
    wrong true rms high: A true-rms meter shows {high} % of the mains.
    wrong light: The light behind the dimmer has {light} % of its full mean current.
      reply: Which firing angle leaves {light} % of the mean, and how much heat is that?
    wrong mean: The mean of the wave is {mean} % of what it is at full.
      reply: This is a mean, like the light. Which angle is that, and how much heat?
    wrong knob: The knob lets the last {knob} % of each half-cycle through.
      reply: The last part of a half-cycle is its weak end. How much heat is in it?
    wrong true rms low: A true-rms meter shows {low} % of the mains.
      reply: Rms has to be squared to give heat. What comes out?
""")


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
BOX_BORDER = (22_000.0, 33_000.0)  # two of the one are too warm for the box, of the other not
PARTS_WATTS = (0.125, 0.25, 0.5, 1.0, 2.0)
# What the question states of their type, their air and their tolerance.
PARTS_VOLTS, PARTS_CELSIUS, PARTS_PERCENT = 300.0, 70.0, 5.0


def _box_watts(supply):
    """What this workshop allows in its small closed box, midway between two values of the bin."""
    each = sqrt(BOX_BORDER[0] * BOX_BORDER[1])
    high = mains.highest(supply)
    watts = operating_point("series_diode", high, ohms=2 * each).resistor_watts
    return round(watts, 2)


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
        "box_watts": _box_watts(supply),
    }


def _judge_parts(picked, n):
    each, rating = picked
    least, most = (each * (1 + sign * PARTS_PERCENT / 100) for sign in (-1, 1))
    highest = _indicator(n, ohms=2 * least, supply=mains.highest(n.supply))
    lowest = _indicator(n, leading(n.angle), ohms=2 * most, supply=mains.lowest(n.supply))
    found = rules.dropper("series_diode", n.supply, least, 2, rating, PARTS_VOLTS, PARTS_CELSIUS)
    light = Criterion(
        "bright enough at the lowest setting",
        lowest.led_amps_mean >= n.least_amps,
        0.2,
        f"At the lowest setting and low mains its mean is "
        f"{write_as(lowest.led_amps_mean, 'mA')}; {write_as(n.least_amps, 'mA')} is wanted.",
    )
    return two_resistors.criteria(light, 0.3, highest, found, n.box_watts)


_best_parts = first_that_passes(
    _judge_parts,
    product(reversed(PARTS_OHMS), PARTS_WATTS),
)


def _parts_worked(n):
    """Say how the parts are found; what they come to stands in the verdict."""
    each, rating = _best_parts(n)
    low, high = mains.lowest(n.supply), mains.highest(n.supply)
    most = leds.dropper_for_mean("series_diode", low, n.least_amps, leading(n.angle))
    alone = each * (1 - PARTS_PERCENT / 100)
    watts = _indicator(n, ohms=alone, supply=high).resistor_watts
    return (
        f"Two of {write(each, 'resistance')}, rated for {write_as(rating, 'W')} each. For the "
        f"light, both together may have {write(most, 'resistance')} at the most, also when they "
        "are 5 % high: the largest value of the bin that keeps this gives the least heat. With "
        f"one shorted, the other alone, 5 % low, turns {write(watts, 'power')} into heat at full "
        "and high mains: so much it is rated for at least. Sound, each gives a quarter of that."
    )


LIGHT = (
    Question(
        id="dim-6",
        edition=2,
        outcome="find the share of the light from the firing angle",
        numbers=lambda draw, supply: {"degrees": draw.pick((60.0, 75.0, 115.0, 125.0, 135.0))},
        ask="The first step is yours: a leading edge fires at {degrees}. Which share of its full "
        "mean current, and so of its full light, does an LED with dropper and diode get on your "
        "mains?",
        kind=Amount(
            "percent",
            "%",
            Road(*steps.light_left("degrees").steps, steps.in_percent()),
            exact=_light_percent,
        ),
        nudges=(
            "Which of peak, rms and mean does light follow?",
            "Add the cosine of the angle to one, and halve the sum.",
        ),
        working="{sum}; with the drops of LED and diode, {right}.",
        code=f'(100 * operating_point("series_diode", {SUPPLY}, {DIMMER}, '
        f"ohms={INDICATOR_OHMS}).led_amps_mean\n"
        f' / operating_point("series_diode", {SUPPLY}, ohms={INDICATOR_OHMS}).led_amps_mean)',
    ),
    Question(
        id="dim-7",
        edition=3,
        level=2,
        marks=2,
        outcome="find the heat in the dropper behind the dimmer",
        numbers=lambda draw, supply: {
            "degrees": draw.pick((100.0, 110.0, 115.0, 130.0)),
            "ohms": draw.pick((33e3, 47e3, 56e3, 68e3)),
        },
        ask="All steps: a dropper of {ohms} with diode and red LED, your mains of "
        "{supply.volts_rms}, a leading edge at {degrees}. How much heat does the dropper give at "
        "this setting?",
        kind=Amount(
            "power",
            "mW",
            HEAT_AT_SETTING,
            exact=_heat_at_setting,
            danger=called_too_low(_heat_at_setting, 0.6, WEAK_DROPPER),
        ),
        nudges=(
            "How much heat is it at the full setting, and which share of heat is left here?",
            "Volts squared over twice the ohms, times the share of the heat at this angle.",
        ),
        working="{sum}. With the drops of LED and diode it is {right}. The rating follows from the "
        "full setting, which anybody can turn to.",
        code=f'operating_point("series_diode", {SUPPLY}, {DIMMER}, ohms={{ohms}}).resistor_watts',
    ),
    Question(
        id="dim-8",
        edition=2,
        outcome="say why a dropper is chosen and rated at different settings",
        ask="Why this step? In the worked example the ohms came from the lowest setting and the "
        "rating from the highest. Why not both from the setting that is used most?",
        kind=Choice("""
            right two ends: Light is scarcest at the low end, heat is greatest at the high end.
              reply: And anybody can turn the knob to either end.
            wrong average: It makes no difference: low and high settings even out over a day of use.
              reply: A part that has burnt at the highest setting: what evens that out?
              danger: a part that is rated for the usual setting can burn at full.
            wrong peak: The peak is highest at the lowest setting.
              reply: Look at the picture of the wave: where is the peak highest?
            wrong ohms change: The dropper's ohms are smaller at the lowest setting.
              reply: Does turning a knob change the part?
        """),
        nudges=(
            "At which setting would you complain of the light, and at which of a burnt smell?",
            "Look at each wish alone: at which setting is it hardest to fulfil?",
        ),
        working="Each wish is checked where it is hardest: light at the lowest setting on low "
        "mains, heat and peak at the highest setting on high mains.",
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
        ask="Five settings of one leading-edge dimmer, each told in another way. Put them in order "
        "of the heat in the pot, the most on top.",
        kind=Order(SETTINGS),
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
        edition=5,
        level=3,
        marks=3,
        outcome="choose a dropper for the lowest setting and rate it for the highest",
        numbers=_parts_numbers,
        facts={
            "limit_amps": lambda n: leds.LIMIT_AMPS,
            "air_celsius": lambda n: PARTS_CELSIUS,
            "part_volts": lambda n: PARTS_VOLTS,
            "part_percent": lambda n: PARTS_PERCENT,
            "low_volts": lambda n: mains.lowest(n.supply).volts_rms,
            "high_volts": lambda n: mains.highest(n.supply).volts_rms,
        },
        ask="Pick two equal resistors in series, the dropper of a red LED and a diode. Each stands "
        "{part_volts} rms, in air below {air_celsius}, and may be {part_percent} off its value: "
        "count the bad end.\n\n"
        "At {angle:g}° and the lowest mains, {low_volts}, the LED needs a mean of "
        "{least_amps:mA}. At full and the highest mains, {high_volts}, its peak may be "
        "{limit_amps:mA}, and both resistors together may give {box_watts}. Sound, each takes at "
        "most half of its rating; after any one short (a resistor, the LED, the diode), at most "
        "all of it.",
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
        working=_parts_worked,
    ),
)

# --- meters ------------------------------------------------------------------------------------


def _setting_of_reading(n):
    return phase_cut_inverse.for_mean(n.reading_volts / meters.SINE_FORM_FACTOR, n.supply)


def _angle_of_reading(n):
    return _setting_of_reading(n).angle_degrees


def _reading_numbers(draw, supply):
    angle = draw.pick((110.0, 130.0, 135.0, 140.0))
    return {"reading_volts": round(supply.volts_rms * mean_share(angle), 1)}


def _reading(name, by, asks):
    """Return what comes out when the reading is multiplied by a number, and no more."""
    return Slip(name, lambda n: by * n.reading_volts, asks)


TRUE_VOLTS = Road(
    given("reading_volts"),
    steps.share_shown(),
    steps.angle_of_light(),
    steps.heat_share(),
    steps.root(_angle_of_reading),
    steps.of_mains(),
)
FACTOR_OF_A_SINE = "This factor belongs to a whole sine. Is the wave behind a dimmer one?"

METERS = (
    Question(
        id="dim-11",
        edition=2,
        level=2,
        outcome="say what a plain meter shows behind the dimmer",
        numbers=lambda draw, supply: {"degrees": draw.pick((100.0, 115.0, 125.0, 130.0, 140.0))},
        ask="A leading edge fires at {degrees} on your {supply.volts_rms} mains. What does a plain "
        "meter show across the pot?",
        kind=Amount("voltage", "V", Road(label(), steps.on_plain_meter("degrees"))),
        nudges=(
            "Which of peak, rms and mean does a plain meter follow?",
            "Its scale is made so that a whole sine reads right: the mains times the share of the "
            "mean.",
        ),
        facts={"true_volts": lambda n: phase_cut.wave(n.supply, leading(n.degrees)).volts_rms},
        working="{sum}. The true rms is {true_volts}.",
        code=f'meters.reading(signals.dimmed_mains({SUPPLY}, {DIMMER}), "average")',
    ),
    Question(
        id="dim-12",
        edition=3,
        level=3,
        marks=3,
        outcome="find the true rms behind a plain meter's reading",
        numbers=_reading_numbers,
        picture=lambda n: Picture(
            "meter",
            {"text": f"{n.reading_volts:.1f}", "unit": "V", "words": "plain meter, AC volts"},
        ),
        ask="This plain meter stands across the pot, behind a leading-edge dimmer on your mains of "
        "{supply.volts_rms}. What is the true rms voltage there?",
        kind=Amount(
            "voltage",
            "V",
            TRUE_VOLTS,
            measure="rms",
            crest=None,
            slips=(
                _reading("believed the meter", 1.0, "On what kind of wave would that be the rms?"),
                _reading(
                    "multiplied the reading by 1.11", meters.SINE_FORM_FACTOR, FACTOR_OF_A_SINE
                ),
                _reading(
                    "divided the reading by 1.11", 1 / meters.SINE_FORM_FACTOR, FACTOR_OF_A_SINE
                ),
                _reading("multiplied the reading by 1.414", sqrt(2), FACTOR_OF_A_SINE),
                _reading(
                    "multiplied the reading by 1.57",
                    sqrt(2) * meters.SINE_FORM_FACTOR,
                    FACTOR_OF_A_SINE,
                ),
                Slip(
                    "took the reading from the mains",
                    lambda n: n.supply.volts_rms - n.reading_volts,
                    "Which share of the mains does the display show?",
                ),
                Slip(
                    "took the share shown for the share of the heat",
                    lambda n: sqrt(n.supply.volts_rms * n.reading_volts),
                    "Which share does a plain meter follow: mean, rms or heat?",
                ),
            ),
        ),
        nudges=(
            "Which share of the mains does the display show, and which share is that: mean, rms "
            "or heat?",
            "The cosine of the angle is twice that share, less one. From the angle find the share "
            "of the heat, then take its root and multiply by the mains.",
        ),
        code=f"phase_cut.wave({SUPPLY}, phase_cut_inverse.for_mean({{reading_volts}} / "
        f"meters.SINE_FORM_FACTOR, {SUPPLY})).volts_rms",
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
        *options("""
            wrong across switch: From the dimmer's input to its output.
              reply: When is there a voltage across a switch: when it is closed, or open? Think of
                what the light would say then.
            wrong in series: In series with the pot, so that the pot's current flows through it.
              reply: How many times more current than a small LED stands does the pot take?
              danger: the LED would have to carry all of the pot's current. It bursts at once.
        """),
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
    return leakage.off_state(
        n.supply, SNUBBER_FARADS, SNUBBER_OHMS, heater.resistance(n.supply.volts_rms, n.watts)
    )


def _leak_amps(n):
    return _off(n).leak_amps_rms


POT_VOLTS = Road(
    given(_leak_amps, of="current", called="the leak"),
    steps.across_pot(Road(label(), steps.pot_ohms("watts")), INDICATOR_OHMS),
)


OTHER_POTS_WATTS = (60.0, 75.0, 80.0, 110.0, 150.0)  # the lesson prints that of 90 W


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
    heat, heater_watts = power_share(n.angle), MISTAKE_WATTS[n.angle]
    return options(f"""
        wrong same peak: “The peak behind it is still {volts(mains.peak(n.supply.volts_rms))}.”
          reply: At which angle does the crest of a half-cycle lie: has it been cut away here?
        wrong plain low: “A plain meter shows less here than a true-rms meter.”
          reply: Compare the shares of mean and of rms at this angle. Which is smaller?
        right weaker diode: “The rms is lower now, so a diode with a lower voltage rating will do.”
          reply: Which of peak, rms and mean does a diode have to stand?
          danger: the diode sees the peak, which has not fallen. A weak one breaks down, and the
            dropper carries twice its heat.
        right light as heat: “The pot gives {percent(heat)} of its heat, so the LED gives
            {percent(heat)} of its light.”
          reply: Does light follow the rms squared, or the mean?
        right overload: “A heater of {write(heater_watts, "power")} gives only
            {write(heat * heater_watts, "power")} at this setting, so a dimmer for
            {write(DIMMER_WATTS, "power")} can carry it for hours.”
          reply: Who keeps the knob from being turned up? And does the current fall as fast as the
            heat?
          danger: at full the dimmer would carry more than it stands for hours. It overheats and can
            burn.
        wrong trailing edge: “A trailing edge that lets as much of each half-cycle through heats the
            pot just as much.”
          reply: It cuts the other end of each half-cycle. Is what is left the mirror image of this,
            and can a plain heater tell?
        right sound element: “The dimmer is off and the light is nearly at full, so the element must
            be sound.”
          reply: A sound element pulls the leaked voltage down to a few volts or less. What lets it
            rise to the mains? And what if the dimmer itself has failed?
          danger: with an open path through the pot, the terminals stand at full mains or more while
            the dimmer is off. Touching them can kill.
    """)


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
FIRST_STEPS = options("""
    right plug: Pull the plug, and keep it where nobody can put it back.
      reply: Which of the steps parts both wires from the mains?
      danger: without this everything may be live: a dimmer opens one wire at most, and that one
        leaks. Touching it can kill.
    right prove tester: Prove the tester on a proving unit.
      reply: How do you know that a tester which shows nothing still works?
      danger: a dead tester calls every live wire dead. Touching one can kill.
    right prove dead: Prove the terminals dead with the tester, between the wires and from each to
        earth.
      reply: Which step shows that the right plug was pulled?
      danger: what has not been proved dead may be live. Touching it can kill.
    right prove again: Prove the tester once more after the test.
      reply: What if the tester died while it was used?
      danger: a tester that died in between calls live wires dead. Touching one can kill.
""")
_IN_PLACE = options("""
    wrong prove again: Skip the second proof: a tester that worked a minute ago works.
      reply: In which minute did a tester that has died stop working?
      danger: a tester that died in between calls live wires dead. Touching one can kill.
    wrong prove dead: Test from line to neutral; if that is dead, everything is.
      reply: What does a test between two wires say about each of them and earth?
      danger: a broken neutral shows nothing between the wires, and the live one can kill.
    wrong prove tester: Look whether the tester bears this year's date; that proves it.
      reply: Can a tester that was checked in spring be broken today?
      danger: a dead tester calls every live wire dead. Touching one can kill.
""")
TEMPTING = dict(zip((DARK, FAINT, BRIGHT), _IN_PLACE, strict=True))


@cache
def _before_touching(look):
    tempting = TEMPTING[look]
    return (
        *(tempting if step.key == tempting.key else step for step in FIRST_STEPS),
        *options(f"""
            wrong dimmer isolates: Count the dimmer's off as parting the pot from the mains.
              reply: How many wires does a dimmer open, and does it open even one completely?
              danger: a dimmer is no isolator: off, it still passes current, and one wire is never
                opened. Touching either can kill.
            wrong light: {LAZY[look]}
              reply: What does this light look like with a broken LED, with a broken element, with
                the wires the other way round?
              danger: no look of the light proves anything dead. Touching live parts can kill.
        """),
    )


OFF = (
    Question(
        id="dim-13",
        edition=2,
        level=2,
        outcome="choose where a pilot light is connected",
        numbers=lambda draw, supply: {"wish": draw.pick(tuple(WISHES))},
        facts={"wanted": lambda n: WISHES[n.wish]},
        ask="The workshop wants its light to {wanted}. Where does it belong?",
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
        edition=4,
        level=2,
        marks=2,
        outcome="find the voltage that an off dimmer leaves on a sound heater",
        numbers=lambda draw, supply: {
            "watts": draw.pick(clear(POT_VOLTS, supply, "watts", OTHER_POTS_WATTS))
        },
        facts={
            "snubber_farads": lambda n: SNUBBER_FARADS,
            "leak_amps": _leak_amps,
            "dropper_ohms": lambda n: INDICATOR_OHMS,
            "off_volts": lambda n: _off(n).volts_peak,
            "follows": _what_follows,
        },
        ask="The dimmer is off. The snubber across its switch, with a capacitor of "
        "{snubber_farads}, still lets {leak_amps:mA} through to a pot of {watts}, made for your "
        "mains of {supply.volts_rms} and sound. The dropper of its pilot light has {dropper_ohms}. "
        "What rms voltage stands across the pot?",
        kind=Amount(
            "voltage",
            "V",
            POT_VOLTS,
            measure="rms",
            danger=called_too_low(
                POT_VOLTS.value,
                0.1,
                "a pot that is off is not dead: with a broken element its terminals can stand at "
                "the full mains. Touching them can kill.",
            ),
        ),
        nudges=(
            "Through which part does nearly all of the leak flow: the pot, or the pilot light?",
            "The pot's ohms are volts squared over watts. Multiply them by the leak.",
        ),
        working="{sum}, with a peak of {off_volts}. {follows}",
        code=f"leakage.off_state({SUPPLY}, {SNUBBER_FARADS}, {SNUBBER_OHMS}, {POT_OHMS}).volts_rms",
    ),
    Question(
        id="dim-15",
        level=3,
        marks=3,
        edition=2,
        outcome="find the wrong steps in an argument about the dimmer",
        numbers=lambda draw, supply: {"angle": draw.pick(tuple(MISTAKE_WATTS))},
        facts={
            "loaded_percent": lambda n: LOADED_PERCENT,
            "light_percent": lambda n: 100 * mean_share(n.angle),
            "heat_percent": lambda n: 100 * power_share(n.angle),
            "allowed_watts": lambda n: LOADED_PERCENT / 100 * DIMMER_WATTS,
            "like_watts": lambda n: MISTAKE_WATTS[n.angle] * sqrt(power_share(n.angle)),
        },
        ask="Find the mistakes. Somebody explains a leading-edge dimmer that fires at {angle:g}° "
        "on your mains. For hours, the workshop loads a dimmer to {loaded_percent} of its printed "
        "watts at most. Choose every sentence that is wrong.",
        kind=ChooseAll(_sentences),
        nudges=(
            "What does each sentence speak of: the peak, the rms, the mean, or off?",
            "Peak for what a diode holds off, rms for heat and current, mean for light and the "
            "plain meter. Test each sentence on that.",
        ),
        working="The diode needs the full peak, and nearly twice that with a broken element at "
        "off. The light is {light_percent}, not {heat_percent}. {loaded_percent} of the dimmer's "
        "watts are {allowed_watts}: the heater is above that as soon as the knob is turned up, and "
        "even here its rms current is that of {like_watts}. A light nearly at full at off tells of "
        "an open path through the pot: a broken element, an open cut-out, a loose wire, an "
        "unplugged pot. Or the dimmer has failed, and the pot is hot.",
    ),
    Question(
        id="dim-16",
        level=2,
        marks=2,
        danger=True,
        outcome="say what is needed before a dimmed pot may be touched",
        numbers=lambda draw, supply: {"look": draw.pick(tuple(JOBS))},
        facts={
            "job": lambda n: JOBS[n.look],
            "tempting": lambda n: TEMPTING[n.look].text,
            "most_volts": _most_at_off,
        },
        ask="The dimmer is off and the pilot light is {look}. Somebody wants to {job}. Which of "
        "these come first?",
        kind=ChooseAll(lambda n: _before_touching(n.look)),
        nudges=(
            "Which of these would still protect you if dimmer, light and tester were all faulty?",
            "Take only what parts the wires from the mains or proves that they are parted.",
        ),
        working="Pull the plug and guard it, prove the tester, prove dead, prove the tester again. "
        "In place of one of the four stood: “{tempting}” Off is not isolated, and no look of the "
        "light is a proof: with a broken element it can be dark while up to {most_volts} stand at "
        "the terminals. The tester's upper limit must lie above that. It is work for an "
        "electrically skilled or instructed person, under local rules.",
    ),
)

QUESTIONS = (*RECALL, PREDICT, *PERCENTAGES, *LIGHT, *METERS, *OFF)
