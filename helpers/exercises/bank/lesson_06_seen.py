"""Lesson 06: whether anybody sees the light, what its colour says, and what its flicker does.

Light follows the mean, the look lags behind it, and a bright room asks for more of it.

Distances and intensities rest on a rule for signal lights, with a margin of a hundred: a guide. No
draw asks for the numbers of a worked example, and none leaves a wrong turn within the band.
"""

from functools import cache
from itertools import pairwise
from math import sqrt

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
    first_that_passes,
    options,
)
from helpers.exercises.question import Picture, Question
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import dimmer, light
from helpers.exercises.roads.steps.general import given, label, over, times
from helpers.exercises.roads.steps.mains import crest, half_wave_mean
from helpers.physics import glow, leds, mains, phase_cut, visibility
from helpers.physics import light as eye
from helpers.physics.operating_point import operating_point
from helpers.quantities import write, write_as
from helpers.sizing import rules

LESSON = "06"
TITLE = "Will you see it?"

SHEET_AMPS = glow.SHEET_AMPS
UNSEEN = (
    "a light that nobody notices leaves a live, hot pot looking off. It can be touched, opened or "
    "left on, and wax that overheats can burn."
)


def _too_faint(right):
    """Say a danger where less than half of what is needed was answered."""
    return lambda value, n: UNSEEN if value < 0.5 * right(n) else None


def _too_much(value, n):
    """Say a danger where the half-waves of a mean pass what a small LED stands."""
    if value <= leds.LIMIT_HALF_WAVE_AMPS:
        return None
    return (
        f"behind a diode, such a mean comes in pulses above the {write_as(leds.LIMIT_AMPS, 'mA')} "
        "that a small LED stands. It can burst, and a dropper for it can burn."
    )


def _needed_lux(n):
    return visibility.needed_lux(n.room_lux)


# --- look back ---------------------------------------------------------------------------------

MEAN_AMPS = Road(label(), crest(), over("ohms", called="the current at the crest"),
                 half_wave_mean())  # fmt: skip

RECALL = (
    Question(
        id="see-recall-1",
        role="recall",
        outcome="find the mean current of an LED on the mains",
        numbers=lambda draw, supply: {"ohms": draw.pick((39e3, 47e3, 56e3, 68e3))},
        ask="From lesson 03: LED, diode and {ohms} stand in series on your mains, {supply}. No "
        "dimmer. Leave the small drops out: what is the mean current of the LED over a whole "
        "cycle?",
        kind=Amount("current", "mA", MEAN_AMPS),
        nudges=(
            "In how many of two half-cycles does the LED get current?",
            "Multiply the label by 1.414, divide by the ohms, and then by π.",
        ),
        working="{sum}. The drops would take one to a few per cent more.",
        code="mains.mean({supply.volts_rms}) / 2 / {ohms}",
    ),
    Question(
        id="see-recall-2",
        role="recall",
        outcome="find the share of the light from the firing angle",
        numbers=lambda draw, supply: {"degrees": draw.pick((65.0, 100.0, 110.0, 130.0, 140.0))},
        ask="From lesson 05: a leading edge fires at {degrees}. Which share of its full mean does "
        "the wave keep, and so the LED of its light?",
        kind=Amount("percent", "%", Road(*dimmer.light_left("degrees").steps, dimmer.in_percent())),
        nudges=(
            "Which of peak, rms and mean does light follow?",
            "Add the cosine of the angle to one, and halve the sum.",
        ),
        code='(100 * phase_cut.wave(mains.Supply(1.0, 50.0), phase_cut.Dimmer("leading", '
        "{degrees})).volts_mean / mains.mean(1.0))",
    ),
    Question(
        id="see-recall-3",
        role="recall",
        outcome="say what may stand at the terminals behind a dark light",
        ask="From lesson 05: the dimmer is off, and the pilot light, with a diode in series, is "
        "dark. What is the most that may stand at the pot's terminals?",
        kind=Choice("""
            right twice: Nearly twice the crest of the mains.
              reply: With a broken element, the dimmer's capacitor shifts the whole wave.
            wrong leak: A few volts at most: a leak is all that an off dimmer lets through.
              reply: Who pulls the leaked voltage down, and what if the element is broken?
              danger: with a broken element it is more than the mains. Touching it can kill.
            wrong nothing: Nothing, for a light across live terminals would glow.
              reply: For how many reasons can a light be dark?
              danger: a dark light never means dead. Touching live parts can kill.
            wrong label: The volts on the label, no more.
              reply: Is the label the highest point of the wave? And what does the capacitor do?
              danger: a tester chosen for the label can be overrun, fail and call a live wire dead.
        """),
        nudges=("What does a capacitor do that can be charged and not discharged?",),
        working="With a broken element and a diode in series, the terminals can swing to nearly "
        "twice the crest, while the light is dark. Dark never means dead.",
    ),
)

PREDICT = Question(
    id="see-predict",
    role="predict",
    outcome="commit to an expectation",
    ask="The LED's mean current is cut to a quarter, and you look at its glowing lens from close "
    "by. How bright does it look, against before?",
    kind=Choice("""
        wrong quarter: A quarter as bright
        wrong third: About a third as bright
        wrong three fifths: About three fifths as bright
        wrong alike: Hardly any different
    """),
    facts={
        "patch_percent": lambda n: 100 * eye.stevens(0.25),
        "point_percent": lambda n: 100 * eye.stevens(0.25, eye.STEVENS_EXPONENTS["point"]),
    },
    working="a quarter of the light looks {patch_percent} as bright from close by, and "
    "{point_percent} from across a hall. The eye makes large steps of light small.",
)

# --- light, and what the eye makes of it -------------------------------------------------------

LOOK = (
    Question(
        id="see-1",
        edition=2,
        outcome="find how bright a share of the light looks",
        numbers=lambda draw, supply: {"light_percent": draw.pick((15.0, 35.0, 30.0, 40.0))},
        ask="Your turn with the first example: a glowing lens, seen from close by in a dim room, "
        "gets {light_percent} of its earlier light. How bright does it look, in per cent of "
        "before?",
        kind=Amount(
            "percent",
            "%",
            Road(given("light_percent"), light.as_share(), light.cube_root(), dimmer.in_percent()),
        ),
        nudges=(
            "Does the look fall as fast as the light, or more slowly?",
            "Make the per cent a share of one, take its third root, and make that per cent again.",
        ),
        code="100 * light.stevens({light_percent} / 100)",
    ),
    Question(
        id="see-2",
        outcome="say why near and far take different roots",
        ask="Why this step? In the example the third root was taken for somebody close by, and the "
        "square root for somebody across the hall. Why not the same?",
        kind=Choice("""
            right size: From afar the lens is a point to the eye, close by it is a patch.
              reply: Both were measured: a half as exponent for a point, a third for a patch.
            wrong spread: Light thins out with the square of the distance, and the root takes that
                back.
              reply: That is how much arrives. Which step says how it looks?
            wrong current: Close by the light follows the mean current, and from afar the rms.
              reply: Does the LED know where you stand?
            wrong colour: Colours fade with distance, and the eye needs a larger root for grey.
              reply: Is a colour named anywhere in the sum?
        """),
        nudges=(
            "What does the lens look like from one step away, and what from across a hall?",
            "Ask of each root what was looked at when it was measured.",
        ),
        working="The exponents were measured for two kinds of light: a third for a patch with an "
        "extent, a half for a point. How much light arrives is another matter.",
    ),
    Question(
        id="see-3",
        edition=2,
        level=2,
        marks=2,
        outcome="find the current for a wanted look",
        numbers=lambda draw, supply: {
            "amps": draw.pick((0.1e-3, 0.2e-3, 0.3e-3)),
            "look_ratio": draw.pick((1.5, 2.5, 3.0)),
        },
        ask="A new case: from across the hall an LED with a mean of {amps:mA} is a point of light. "
        "It should look {look_ratio} times as bright. What mean current does that take?",
        kind=Amount(
            "current",
            "mA",
            Road(given("amps"), light.for_point_look("look_ratio")),
            danger=_too_much,
        ),
        nudges=(
            "Which root leads from light to look for a point, and what is the way back?",
            "Square the wanted look and multiply the current by that.",
        ),
    ),
)

# --- how much current is enough ----------------------------------------------------------------

# Intensities towards the eye: from 40, 20, 10, 4 and 1 mcd upwards, each twice the next or more.
LIGHTS = options("""
    wrong strong: Sheet 2 cd at 20 mA, it gets {strong_amps:mA}, seen on its axis.
    wrong plain: Sheet 400 mcd at 20 mA, it gets {plain_amps:mA}, seen on its axis.
      reply: What is its intensity, worked out from the sheet?
    wrong side: Sheet 1 cd at 20 mA, it gets {side_amps:mA}, seen at its half angle.
      reply: How much of the intensity is left at the half angle?
    wrong pulses: Sheet 100 mcd at 20 mA, {pulse_amps:mA} a tenth of the time, on its axis.
      reply: Which steady current do the pulses look like?
    wrong outside: Sheet 1 cd at 20 mA, it gets {outside_amps:mA}, seen where a tenth is left.
      reply: What is a tenth of its intensity on the axis?
""")


def _lights_candelas(n):
    share = 1 / SHEET_AMPS
    return (
        2.0 * n.strong_amps * share, 0.4 * n.plain_amps * share, 0.5 * n.side_amps * share,
        0.1 * 0.1 * n.pulse_amps * share, 0.1 * n.outside_amps * share,
    )  # fmt: skip


NEEDED_AMPS = Road(
    given("metres"), light.candelas_at(_needed_lux), light.amps_for("rated_candelas")
)
NOTICED_FROM = Road(given("candelas"), light.noticed_from(_needed_lux))


def _too_far(value, n):
    return UNSEEN if value > 2 * NOTICED_FROM.value(n) else None


def _too_little_or_too_much(value, n):
    return _too_much(value, n) or _too_faint(NEEDED_AMPS.value)(value, n)


ENOUGH = (
    Question(
        id="see-4",
        outcome="find an LED's intensity at the current it gets",
        numbers=lambda draw, supply: {
            "rated_candelas": draw.pick((0.12, 0.4, 0.6)),
            "amps": draw.pick((0.3e-3, 0.5e-3, 0.8e-3)),
        },
        ask="The first step is yours: the sheet of an LED states {rated_candelas:mcd} at 20 mA. It "
        "gets a mean of {amps:mA}. What is its intensity on the axis?",
        kind=Amount(
            "luminous intensity", "mcd", Road(given("rated_candelas"), light.intensity("amps"))
        ),
        nudges=(
            "What does light follow, and which share of the sheet's current does the LED get?",
            "Multiply the sheet's intensity by the current that it gets, over the sheet's current.",
        ),
    ),
    Question(
        id="see-5",
        outcome="read the viewing angle off the picture of a beam",
        numbers=lambda draw, supply: {
            "half_degrees": draw.pick((14.0, 18.0, 24.0, 26.0, 32.0, 36.0, 44.0))
        },
        picture=lambda n: Picture("beam", {"half_angle_degrees": n.half_degrees}),
        ask="This is the beam of an LED. Its sheet prints the viewing angle from half to half, "
        "over both sides. Which angle is that?",
        kind=Amount("angle", "°", Road(light.read_beam("half_degrees"), light.both_sides())),
        nudges=(
            "Which line of the grid is half of the top, and where does the curve cross it?",
            "Read the angle of a crossing with its small marks, each a fifth of a division, and "
            "count both sides.",
        ),
        working="The curve crosses the half line at {half_degrees} on either side: {sum}.",
    ),
    Question(
        id="see-6",
        level=2,
        marks=2,
        outcome="find from how far a light is noticed",
        numbers=lambda draw, supply: {
            "candelas": draw.pick((5e-3, 8e-3, 12e-3, 20e-3)),
            "room_lux": draw.pick((100.0, 300.0, 500.0)),
        },
        facts={"needed_lux": _needed_lux},
        ask="A light sends {candelas:mcd} towards you. In this room, with {room_lux} on the wall "
        "behind it, the eye must get {needed_lux:µlx}. From how far is it still noticed?",
        kind=Amount("length", "m", NOTICED_FROM, danger=_too_far),
        nudges=(
            "Twice as far off, how much of the light still arrives?",
            "Divide the intensity by what the eye must get. The root of that is the distance.",
        ),
    ),
    Question(
        id="see-7",
        edition=2,
        level=3,
        marks=3,
        outcome="find the current that a distance and a room ask for",
        numbers=lambda draw, supply: {
            "metres": draw.pick((4.5, 6.0, 7.5)),
            "room_lux": draw.pick((100.0, 300.0, 500.0)),
            "rated_candelas": draw.pick((0.5, 0.8, 1.2)),
        },
        facts={"needed_lux": _needed_lux},
        ask="All steps: a light is to be noticed from {metres}, straight on. There is {room_lux} "
        "on the wall behind it, so the eye must get {needed_lux:µlx}. The sheet of the LED states "
        "{rated_candelas:mcd} at 20 mA. Which mean current does it need at the least?",
        kind=Amount("current", "mA", NEEDED_AMPS, danger=_too_little_or_too_much),
        nudges=(
            "How much intensity does this distance ask for, and which share of the sheet's is it?",
            "Square the distance and multiply by what the eye must get. Divide by the sheet's "
            "intensity and multiply by the sheet's current.",
        ),
    ),
    Question(
        id="see-8",
        level=2,
        marks=2,
        outcome="order lights by how far they are noticed",
        numbers=lambda draw, supply: {
            "strong_amps": draw.pick((0.4e-3, 0.5e-3)),
            "plain_amps": draw.pick((1e-3, 1.2e-3)),
            "side_amps": draw.pick((0.35e-3, 0.4e-3)),
            "pulse_amps": draw.pick((8e-3, 9e-3)),
            "outside_amps": draw.pick((0.2e-3, 0.3e-3)),
        },
        ask="Five lights in one room, all on the same wall. Put them in order of the distance from "
        "which they are noticed, the farthest on top.",
        kind=Order(LIGHTS),
        nudges=(
            "Which one number of each decides, if the room is the same for all?",
            "Work out the intensity towards the eye: sheet, times mean current over 20 mA, times "
            "what is left at that angle.",
        ),
        working=lambda n: (
            "Towards the eye, from top to bottom: "
            + ", ".join(write_as(candelas, "mcd") for candelas in _lights_candelas(n))
            + "."
        ),
    ),
)

# --- the lowest setting ------------------------------------------------------------------------

AT_LOWEST = Road(
    given("low_watts"),
    light.share_of_full("full_watts"),
    light.table_of_light(),
    times("amps", "current", "the mean at the lowest setting"),
)

# With each share of the heat one reading at full: another would change no answer.
READINGS = ((3.0, 84.0), (5.0, 88.0), (10.0, 82.0), (20.0, 84.0))

FIND_LOWEST = options("""
    wrong look over: Look over pot, cords and plug-in meter: whole, closed, each rated for the pot.
    wrong between: With the plug out, put the meter between wall socket and dimmer.
      reply: What has to be looked at before anything goes into a socket?
      danger: a damaged cord or a meter that is rated for less can burn or kill.
    wrong on: Switch on, with somebody staying, and turn the dimmer to full.
      reply: What must be in its place before the pot is live?
      danger: a pot that goes live before it was looked over can burn or kill.
    wrong full: Wait until the reading rests, and write down the watts at full.
      reply: At which setting are the full watts read?
    wrong lowest: Turn to the lowest setting that is ever used, and write down the watts.
      reply: Which reading will it be divided by, and is it written down yet?
    wrong out: Turn to off, and pull the plug.
      reply: Which reading is then still missing?
    wrong divide: Divide, look up the share of the light, and work out the LED's current.
      reply: Does this need a live pot?
""")

BIN_CANDELAS = (0.02, 0.05, 0.2, 0.5, 1.0, 2.0)
BIN_OHMS = (2_200.0, 10_000.0, 22_000.0, 47_000.0, 100_000.0, 330_000.0)
BIN_WATTS = (0.125, 0.25, 0.5, 1.0, 2.0)
COOL_OHMS = 22_000.0  # two of these are cool enough for the box, two of the next less are not
BOX_BORDER = (10_000.0, COOL_OHMS)
PARTS_VOLTS, PARTS_CELSIUS = 300.0, 70.0
CLEAR = 1.6  # between the pairs of LED and dropper just above and just below what is needed [-]
NEAREST_METRES, FARTHEST_METRES = 1.5, 10.0


@cache
def _lowest_amps(supply, angle):
    """What the LED gets at a setting on the lowest mains, with each dropper of the bin."""
    dimmed = phase_cut.Dimmer("leading", angle)
    low = mains.lowest(supply)
    return {
        each: operating_point("series_diode", low, dimmed, ohms=2 * each).led_amps_mean
        for each in BIN_OHMS
    }


@cache
def _clear_metres(supply, angle, room_lux):
    """Distances midway between two pairs, of which some cool one is still noticed."""
    amps = _lowest_amps(supply, angle)
    sent = sorted(rated * amps[each] / SHEET_AMPS for rated in BIN_CANDELAS for each in BIN_OHMS)
    most = BIN_CANDELAS[-1] * amps[COOL_OHMS] / SHEET_AMPS
    lux = visibility.needed_lux(room_lux)
    midway = [
        round(sqrt(sqrt(less * more) / lux), 1)
        for less, more in pairwise(sent)
        if more > CLEAR * less and more <= 1.01 * most
    ]
    return tuple(d for d in midway if NEAREST_METRES <= d <= FARTHEST_METRES)


@cache
def _box_watts(supply):
    """What this workshop allows in its small closed box, between two values of the bin."""
    each = sqrt(BOX_BORDER[0] * BOX_BORDER[1])
    high = mains.highest(supply)
    return round(operating_point("series_diode", high, ohms=2 * each).resistor_watts, 2)


def _parts_numbers(draw, supply):
    angle, room_lux = draw.pick((130.0, 135.0, 140.0)), draw.pick((100.0, 300.0))
    metres = draw.pick(_clear_metres(supply, angle, room_lux))
    return {
        "angle": angle,
        "room_lux": room_lux,
        "metres": metres,
        "box_watts": _box_watts(supply),
    }


def _needed_candelas(n):
    return visibility.needed_candelas(n.metres, n.room_lux)


def _judge_parts(picked, n):
    rated, each, watts = picked
    highest = operating_point("series_diode", mains.highest(n.supply), ohms=2 * each)
    sent = rated * _lowest_amps(n.supply, n.angle)[each] / SHEET_AMPS
    needed = _needed_candelas(n)
    found = rules.dropper("series_diode", n.supply, each, 2, watts, PARTS_VOLTS, PARTS_CELSIUS)
    light = Criterion(
        "noticed at the lowest setting",
        sent >= needed,
        0.3,
        f"At the lowest setting and low mains it sends {write_as(sent, 'mcd')}; "
        f"{write_as(needed, 'mcd')} is needed.",
        UNSEEN if sent < 0.5 * needed else "",
    )
    return two_resistors.criteria(light, 0.2, highest, found, n.box_watts)


_best_parts = first_that_passes(
    _judge_parts,
    (
        (rated, each, watts)
        for each in reversed(BIN_OHMS)
        for rated in BIN_CANDELAS
        for watts in BIN_WATTS
    ),
)


LOWEST = (
    Question(
        id="see-9",
        marks=2,
        outcome="find the lowest setting without opening anything",
        ask="The workshop wants to know what its pot gets at the lowest setting. Pot and dimmer "
        "are as bought, the dimmer has a plug, a plug-in power meter is at hand, and all covers "
        "stay closed. Put the steps in order.",
        kind=Order(FIND_LOWEST),
        nudges=(
            "What has to be sure before anything goes into a socket, and what before it is live?",
            "First what is looked over, then what is plugged, then both readings, then the plug "
            "out. The sum can wait.",
        ),
        working="Look over, plug the meter in before the dimmer, switch on with somebody staying, "
        "read at full, read at the lowest setting, plug out, and then the sum. No cover comes off.",
    ),
    Question(
        id="see-10",
        level=2,
        marks=2,
        outcome="find what the LED gets at the lowest setting from two readings",
        numbers=lambda draw, supply: {
            **dict(zip(("heat_percent", "full_watts"), draw.pick(READINGS), strict=True)),
            "amps": draw.pick((0.4e-3, 0.6e-3)),
        },
        facts={"low_watts": lambda n: n.full_watts * n.heat_percent / 100},
        ask="A plug-in power meter shows {full_watts} at full and {low_watts} at the lowest "
        "setting. At full the LED gets a mean of {amps:mA}. What does it get at the lowest? Use "
        "the table above.",
        kind=Amount(
            "current",
            "µA",
            Road(
                given(lambda n: n.full_watts * n.heat_percent / 100, of="power"),
                *AT_LOWEST.steps[1:],
            ),
        ),
        nudges=(
            "Which share of the heat is left, and does the light keep the same share?",
            "Divide the two readings, find the share of the light in the table, and multiply the "
            "full mean by it.",
        ),
    ),
    Question(
        id="see-11",
        level=3,
        marks=3,
        outcome="choose LED and dropper so that the light is seen at the lowest setting",
        numbers=_parts_numbers,
        facts={
            "limit_amps": lambda n: leds.LIMIT_AMPS,
            "air_celsius": lambda n: PARTS_CELSIUS,
            "part_volts": lambda n: PARTS_VOLTS,
            "low_volts": lambda n: mains.lowest(n.supply).volts_rms,
            "high_volts": lambda n: mains.highest(n.supply).volts_rms,
            "needed_candelas": _needed_candelas,
        },
        ask="A red LED and a diode stand behind a dropper of two equal resistors in series.\n\n"
        "The light has to be noticed from {metres}, straight on, with {room_lux} on the wall "
        "behind it: that takes {needed_candelas:mcd}. It has to be so at the lowest setting that "
        "is used, {angle:g}°, also with your mains of {supply.volts_rms} at its lowest, "
        "{low_volts}. The sheet states its intensity at 20 mA.\n\n"
        "At the highest setting, with the mains at its highest, {high_volts}, the LED's peak may "
        "be {limit_amps:mA}, and both resistors together may give {box_watts} in their small box. "
        "Its air stays below {air_celsius}, and their type stands {part_volts} rms.\n\n"
        "While all is sound, each resistor takes at most half of its rating. After any one short "
        "(a resistor, the LED, the diode), none that is left takes more than its rating.\n\n"
        "Pick the LED's intensity, and one value and one rating for both resistors.",
        kind=Parts(
            (
                Field("intensity on the LED's sheet", "luminous intensity", BIN_CANDELAS, "mcd"),
                Field("each resistor", "resistance", BIN_OHMS),
                Field("power rating of each", "power", BIN_WATTS, "W"),
            ),
            _judge_parts,
            _best_parts,
        ),
        nudges=(
            "What can be had without any heat: a brighter LED, or more current?",
            "For a pair of resistors, work out the mean at the lowest setting: 0.45 times the low "
            "mains over the ohms, times the share of the light. Then see which LED is enough.",
        ),
        working=lambda n: (
            f"An LED of {write_as(_best_parts(n)[0], 'mcd')} behind two of "
            f"{write(_best_parts(n)[1], 'resistance')}. "
            + " ".join(criterion.reply for criterion in _judge_parts(_best_parts(n), n))
        ),
    ),
)

# --- colour ------------------------------------------------------------------------------------

# What is to be said, and the colour of IEC 60073 that says it.
MESSAGES = {
    "that the pot is supplied, and nothing more": "white",
    "that the pot has been on for longer than planned, and somebody should have a look": "yellow",
    "that the pot has got too hot and its cut-out has opened: act at once": "red",
    "that wax has to be topped up before the pot may go on": "blue",
}
COLOURS = {
    "white": (
        "White, with a label.",
        "White says that something is so. Which colour asks for more than that here?",
    ),
    "yellow": (
        "Yellow, with a label.",
        "Yellow asks for caution: something is not as usual. Is that the message?",
    ),
    "red": (
        "Red, with a label.",
        "Red is for danger: act at once. Who still runs if it glows every day?",
    ),
    "blue": (
        "Blue, with a label.",
        "Blue says that something has to be done before it can go on. Is that the message?",
    ),
    "green": (
        "Green, with a label.",
        "Green says safe. Which light can know that?",
    ),
}
GREEN_LIES = (
    "green says safe, and a supplied pot is live and hot. Who trusts the colour can be burnt or "
    "killed."
)
TOO_CALM = "who is not called to act at once leaves a pot alone whose wax can catch fire."


def _colour_danger(colour, wanted):
    if colour == "green":
        return GREEN_LIES
    return TOO_CALM if wanted == "red" and colour != "red" else ""


def _colour_options(n):
    wanted = MESSAGES[n.message]
    return tuple(
        Option(
            colour,
            text,
            right=colour == wanted,
            reply="" if colour == wanted else reply,
            danger=_colour_danger(colour, wanted),
        )
        for colour, (text, reply) in COLOURS.items()
    )


COLOUR = (
    Question(
        id="see-12",
        outcome="find the drop to expect from the colour",
        numbers=lambda draw, supply: {
            "wave_metres": draw.pick((455e-9, 505e-9, 540e-9, 605e-9, 660e-9))
        },
        ask="An LED glows at {wave_metres}. About which drop do its photons ask for?",
        kind=Amount("voltage", "V", Road(given("wave_metres"), light.photon_volts())),
        nudges=(
            "Which colour has the stronger photons: red with its long waves, or blue?",
            "Divide 1240 by the wavelength in nanometres.",
        ),
        working="{sum}. Its real drop lies near or above that; a little lower at microamps.",
    ),
    Question(
        id="see-13",
        edition=2,
        danger=True,
        level=2,
        marks=2,
        outcome="choose the colour that says what is meant",
        numbers=lambda draw, supply: {"message": draw.pick(tuple(MESSAGES))},
        ask="A light beside the pot is to say {message}. Which colour does IEC 60073 give it?",
        kind=Choice(_colour_options),
        nudges=(
            "Does the message tell of a state, of something unusual, of a danger, or of a duty?",
            "Go through the colours: white for a state, yellow for caution, red for danger, blue "
            "for what must be done, green for safe.",
        ),
        working=lambda n: (
            f"{MESSAGES[n.message].capitalize()}. White states, yellow asks for caution, red calls "
            "to act at once, blue asks for a duty. Green says safe, which no pilot light can know. "
            "A label and a fixed place say the same to who sees no colours."
        ),
    ),
)

# --- flicker -----------------------------------------------------------------------------------

UNNOTICED = {
    "the sun shines on the lens, and nothing glows in it": "sun",
    "the dimmer stands at its lowest setting, and the light cannot be made out from the door":
        "lowest",
    "somebody who sees no red says that the red light is dark": "colour",
    "the light flashes a few times a second, and somebody has hung a cloth over it": "flashes",
}  # fmt: skip
HOLDS = options("""
    right treat live: Treat the pot as live and hot, whatever the light seems to say.
      reply: For how many reasons can a light be dark that is not off?
      danger: a light that is not seen leaves a live, hot pot looking off. It can burn or kill.
    right plug: Pull the plug before everybody leaves, and keep it.
      reply: What does the pot do all night, if nobody saw that it was on?
      danger: a pot that is left on can set wax on fire.
    right prove: Leave any cover to a skilled person, who proves dead with a proved tester.
      reply: What shows that a part is dead, if the light cannot?
      danger: left out, so that somebody opens it who cannot prove it dead. Touching it can kill.
    right cut-out: Have a thermal cut-out or timer, certified or conforming for this use, fitted.
      reply: Who ends the heat when no light is noticed?
      danger: no light ends a forgotten heat. Wax that overheats can burn.
""")
_INSTEAD = options("""
    wrong treat live: Take the pot as off, since nothing glows in the lens.
      reply: Can you tell a dark light from one that the sun outshines?
      danger: a light that is outshone looks off while the pot is live. It can burn or kill.
    wrong plug: Leave the dimmer at its lowest for the night: what cannot be seen hardly heats.
      reply: Do heat and what you see go together? And who keeps the knob where it is?
      danger: a pot that is left on can set wax on fire.
    wrong prove: Ask somebody with other eyes whether it is dark, and open the cover then.
      reply: What does a dark light prove, whoever looks at it?
      danger: a dark light never means dead. Touching live parts can kill.
    wrong cut-out: Leave the cloth in place, and let everybody remember that the pot is on.
      reply: Was it not this that the light was wanted for?
      danger: a covered light tells nobody that the pot is on. Wax that overheats can burn.
""")
INSTEAD = dict(zip(UNNOTICED.values(), _INSTEAD, strict=True))
MORE_CURRENT = options("""
    wrong more current: Fit a dropper of half the ohms, and leave its rating as it is.
      reply: What do half the ohms do to the heat?
      danger: half the ohms give twice the heat. A dropper that was just right can burn.
""")


def _holds(n):
    instead = INSTEAD[UNNOTICED[n.scene]]
    kept = (instead if one.key == instead.key else one for one in HOLDS)
    return (*kept, *MORE_CURRENT)


MISTAKES = options("""
    right half: “The current is halved, so the light looks half as bright.”
      reply: What is the third root of a half, and what is its square root?
    right noon: “It is easily seen in the evening, so it is seen beside the window at noon.”
      reply: What does a brighter wall ask of a light?
      danger: a light that daylight outshines leaves a live, hot pot looking off.
    right troubles nobody: “I see no flicker, so it can trouble nobody.”
      reply: Are all eyes alike, and does yours always rest?
    right dark: “From the door the light is dark, so the pot is off.”
      reply: For how many reasons can a light look dark?
      danger: dark never means dead, and never means cold. A live, hot pot can burn or kill.
    wrong four times: “To be noticed from twice as far, it needs four times the light.”
      reply: How does light thin out with distance?
    wrong fused: “Pulses that fuse look like a steady light with their mean.”
      reply: Which of peak, rms and mean does the eye follow when pulses fuse?
    wrong side: “From the side the same LED can be a tenth as strong as from the front.”
      reply: What does a lens do with the light?
""")


def _both_hertz(n):
    return 2 * n.supply.hertz


FLICKER = (
    Question(
        id="see-14",
        outcome="find the steady light that fused pulses look like",
        numbers=lambda draw, supply: {
            "pulse_amps": draw.pick((3e-3, 5e-3, 8e-3)),
            "lit_percent": draw.pick((10.0, 20.0, 30.0)),
        },
        ask="An LED gets even pulses of {pulse_amps:mA} for {lit_percent} of the time, so fast "
        "that they fuse. Which steady current looks as bright?",
        kind=Amount(
            "current", "mA", Road(given("pulse_amps"), light.mean_of_pulses("lit_percent"))
        ),
        nudges=(
            "Which of peak, rms and mean does the eye follow when pulses fuse?",
            "Multiply the pulse by the share of the time that it lasts.",
        ),
    ),
    Question(
        id="see-15",
        level=2,
        outcome="find the percent flicker of a light and hold it against the rule for rooms",
        numbers=lambda draw, supply: dict(
            zip(
                ("high_amps", "low_amps"),
                draw.pick(((2e-3, 1.2e-3), (2.4e-3, 1.6e-3), (3e-3, 0.5e-3), (1e-3, 0.8e-3))),
                strict=True,
            )
        ),
        facts={
            "flicker_hertz": _both_hertz,
            "rule_percent": lambda n: eye.low_risk_percent(_both_hertz(n)),
        },
        ask="A light is smoothed: its current swings between {low_amps:mA} and {high_amps:mA}, at "
        "twice the frequency of your mains. How many per cent is its flicker?",
        kind=Amount(
            "percent",
            "%",
            Road(given("high_amps"), light.swing("low_amps"), dimmer.in_percent()),
        ),
        nudges=(
            "Against what is the swing counted: against one of the two, or against their sum?",
            "Divide their difference by their sum, and make it per cent.",
        ),
        working="{sum}. At {flicker_hertz} IEEE 1789 counts {rule_percent} as low risk in the "
        "lighting of a room.",
    ),
    Question(
        id="see-16",
        level=2,
        outcome="find how often a controller of whole cycles flashes the light",
        numbers=lambda draw, supply: dict(
            zip(
                ("cycles", "on_cycles"),
                draw.pick(((10, 4), (20, 6), (25, 10), (40, 12))),
                strict=True,
            )
        ),
        ask="A controller lets {on_cycles} whole cycles of your {supply.hertz} mains through, then "
        "holds back the rest of {cycles}, over and over. How many bursts begin in a second?",
        kind=Amount(
            "frequency",
            "Hz",
            Road(
                given(lambda n: n.supply.hertz, of="frequency", called="the hertz of the mains"),
                light.bursts_a_second("cycles"),
            ),
        ),
        nudges=(
            "How many cycles go by from one switching-on to the next?",
            "Divide the cycles in a second by the cycles of one round.",
        ),
        working="{sum}. Everybody sees that, and from 3 flashes a second on it can harm somebody.",
    ),
    Question(
        id="see-17",
        level=3,
        marks=2,
        outcome="find the wrong steps in an argument about what is seen",
        ask="Find the mistakes. Somebody explains a pilot light. Choose every sentence that is "
        "wrong.",
        kind=ChooseAll(MISTAKES),
        nudges=(
            "Which sentence speaks of the light, which of the look, and which of the pot?",
            "Test each: the look lags behind the light, a bright wall asks for more, eyes differ, "
            "and dark proves nothing.",
        ),
        working="Half the light looks about four fifths as bright from close by. Daylight asks for "
        "many times the light of an evening. Flicker that one person does not see troubles "
        "another. And a dark light proves nothing about the pot.",
    ),
    Question(
        id="see-18",
        edition=2,
        level=2,
        marks=2,
        danger=True,
        outcome="say what holds while a light is not noticed",
        numbers=lambda draw, supply: {"scene": draw.pick(tuple(UNNOTICED))},
        facts={"instead": lambda n: INSTEAD[UNNOTICED[n.scene]].text},
        ask="In the workshop {scene}. Which of these are right?",
        kind=ChooseAll(_holds),
        nudges=(
            "Which of these would still protect somebody if the light were broken?",
            "Take only what treats the pot as live and hot, ends the heat, or proves it dead.",
        ),
        working="Treat the pot as live and hot, pull the plug, leave covers to an electrically "
        "skilled or instructed person who proves dead, and let a cut-out or timer end a forgotten "
        "heat. The wrong one among them was: "
        "“{instead}” A light that nobody notices tells nothing, and a brighter one is a change of "
        "the whole sum, checked by a competent person under local rules.",
    ),
)

QUESTIONS = (*RECALL, PREDICT, *LOOK, *ENOUGH, *LOWEST, *COLOUR, *FLICKER)
