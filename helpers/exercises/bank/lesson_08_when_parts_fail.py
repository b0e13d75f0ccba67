"""Lesson 08: one fault at a time, what the light then says, and what protects when parts fail.

Most examples stand behind a diode in series. Danger first: no answer here is a permission, and no
part that is judged sound here may be touched.
"""

from functools import cache
from math import ceil, sqrt

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
    judged,
    options,
)
from helpers.exercises.question import Picture, Question
from helpers.exercises.roads import Road, Turn, clear
from helpers.exercises.roads.steps.dimmer import full_amps
from helpers.exercises.roads.steps.faults import heat_in_joint, one_fewer, times_its_rating
from helpers.exercises.roads.steps.general import given, knowing, label, over
from helpers.exercises.roads.steps.heat import (
    alike_in_series,
    halved,
    of_rating,
    shared_heat,
    slope_left,
    squared_over,
)
from helpers.exercises.roads.steps.mains import (
    MEAN_FOR_CREST,
    SUPPLY,
    crest,
    half_wave_mean,
    per_cent_more,
    percent_up,
)
from helpers.exercises.roads.steps.ohms import current_through
from helpers.exercises.roads.steps.safety import (
    NETWORK_LEFT_OUT,
    name_of_mains,
    ohms_of_part,
    one_left,
    trusted_too_far,
    with_network,
)
from helpers.physics import (
    capacitor_dropper,
    dropper_faults,
    faults,
    fuses,
    hazards,
    mains,
    ratings,
    resistors,
)
from helpers.physics.operating_point import operating_point
from helpers.quantities import write, write_as
from helpers.quantities.writing import midway, milliamps, ohms, volts
from helpers.sizing import rules

LESSON = "08"
TITLE = "When parts fail"

CIRCUIT = "series_diode"
NETWORK_OHMS = hazards.TOUCH_NETWORK_OHMS
LET_GO_MOST_AMPS = hazards.LET_GO_AMPS_RMS[1]


def highest(n):
    """The learner's supply at the top of its range."""
    return mains.highest(n.supply)


def highest_volts(n):
    return highest(n).volts_rms


# --- look back, predict ------------------------------------------------------------------------


RECALL = (
    Question(
        id="fail-recall-1",
        role="recall",
        outcome="find the mean current of an LED behind three resistors",
        numbers=lambda draw, supply: {"ohms": draw.pick((22e3, 27e3, 33e3))},
        ask="From lessons 02 and 03: three resistors of {ohms} each, a diode and a red LED stand "
        "in series on your mains, {supply}. What mean current does the LED get?",
        kind=Amount(
            "current",
            "mA",
            Road(
                label(),
                crest(),
                over(Road(given("ohms"), alike_in_series(3)), called="the current at the crest"),
                half_wave_mean(),
            ),
            exact=lambda n: operating_point(CIRCUIT, n.supply, ohms=3 * n.ohms).led_amps_mean,
        ),
        nudges=("How many ohms stand in the way? 0.45 of the label, divided by them.",),
        working="{sum}. With the drops of LED and diode it is {right}.",
        code=f'operating_point("{CIRCUIT}", {SUPPLY}, ohms=3 * {{ohms}}).led_amps_mean',
    ),
    Question(
        id="fail-recall-2",
        role="recall",
        outcome="derate a resistor for a warm place",
        numbers=lambda draw, supply: {
            "rated_watts": draw.pick((0.25, 0.6, 1.0)),
            "air_celsius": draw.pick((104.0, 129.5, 138.0)),
        },
        facts={
            "knee_celsius": lambda n: ratings.KNEE_CELSIUS,
            "zero_celsius": lambda n: ratings.ZERO_CELSIUS,
        },
        ask="From lesson 04: a resistor rated {rated_watts:W} has its full rating up to "
        "{knee_celsius} and nothing left at {zero_celsius}. The air around it has {air_celsius}. "
        "What may it turn into heat there?",
        kind=Amount(
            "power",
            "W",
            Road(given("air_celsius"), slope_left(), of_rating("rated_watts")),
            danger=trusted_too_far,
            within=0.005,
        ),
        nudges=("How much of the slope is still ahead? That share of the rating is left.",),
        working="{sum}. That is the most it may take; the rule of this course uses half of it.",
    ),
    Question(
        id="fail-recall-3",
        role="recall",
        outcome="say what a dark light at off can hide",
        ask="From lesson 05: the dimmer is at off, the pilot light has a diode in series and is "
        "dark. What may stand at the pot's terminals?",
        kind=Choice("""
            right twice: Nearly twice the crest of the mains, if the element is broken.
              reply: The dimmer's capacitor has charged, and nothing takes the charge away.
            wrong nothing: Nothing: a dark light behind an open dimmer means no voltage.
              reply: What bridges the open switch inside many dimmers?
              danger: a dark light is no proof. Touching live terminals can kill.
            wrong a little: A few volts at most, whatever has happened to the element.
              reply: A few volts are left if what is sound?
              danger: with a broken element far more than the mains can stand there. It can kill.
            wrong crest: The crest of the mains, and never more than that.
              reply: What does a capacitor that has charged to the crest add to the mains?
              danger: a tester whose upper limit is too low can fail or mislead. What stands there
                can kill.
        """),
        nudges=("What pulls the leaked voltage down, and what if it is broken?",),
        working="With a broken element and a diode in series it is nearly twice the crest, and the "
        "light is dark. Dark never means dead.",
    ),
)

PREDICT = Question(
    id="fail-predict",
    role="predict",
    outcome="commit to an expectation",
    ask="A dropper of two equal resistors in series feeds the LED. One of them fails short: it now "
    "acts like a piece of wire. What happens to the heat in the other one?",
    kind=Choice("""
        wrong same: It stays as it was: each resistor minds its own business.
        wrong half: It falls to a half: only one resistor is left to make heat.
        wrong double: It doubles: one now has what two had.
        wrong four: It becomes four times as much.
    """),
    working="four times as much. The ohms are halved, so the current doubles, and heat goes with "
    "its square. The light gets brighter, and nobody thinks of a fault.",
)

# --- one fault at a time -----------------------------------------------------------------------


def _one_short(n, count=2):
    return faults.after(CIRCUIT, "dropper", "short", n.supply, ohms_each=n.ohms, count=count)


def _weak(right):
    """Warn of a heat that is far too small: a part chosen for it burns."""

    def danger(value, n):
        if value < 0.6 * right(n):
            return "a part that is chosen for so little heat burns after this fault."
        return None

    return danger


def _left_watts(n):
    return _one_short(n, 4).watts_each


# From the most heat in the hottest resistor to the least: four times, twice, once, 0.75 and none.
BY_HEAT = options("""
    wrong one shorted: One of the two resistors has failed short.
    wrong diode shorted: The diode has failed short.
      reply: In how many half-cycles does each resistor work now, and with how many ohms in all?
    wrong sound: All parts are sound.
      reply: A diode that is a piece of wire stops nothing. Do the resistors then work less?
    wrong drifted: One of the two has drifted to three times its ohms.
      reply: What becomes of the current when the string has twice its ohms?
    wrong led open: The LED has failed open.
      reply: How much current flows past a gap?
""")

DROPS_VOLTS = 2.7  # Common practice, no source: a red LED and a silicon diode.
STRING_SHOWS = {"short": 1.01, "open": None, "drift": 2.7, "sound": 2.02}
STRING_MEANS = {
    "short": "One of the two has failed short.",
    "open": "One of the two is open, or a joint between them is broken.",
    "drift": "It has been too hot: its ohms have risen.",
    "sound": "Both have what is printed on them.",
}


def _string_reading(n):
    times = STRING_SHOWS[n.case]
    shown = "OL" if times is None else f"{times * n.ohms / 1e3:.1f}"
    words = "multimeter, set to ohms; OL is beyond its range"
    return Picture("meter", {"text": shown, "unit": "kΩ", "words": words})


@cache
def _string_options(case):
    asks = {
        "short": "What would be left of the two, and does the display show that?",
        "open": "What does a meter show across a gap?",
        "drift": "What do the two together have when they are new?",
        "sound": "What do the two together have by their print, and what does the display show?",
    }
    return tuple(
        Option(
            key,
            text,
            right=key == case,
            reply="" if key == case else asks[key],
            danger="a string that has changed and is called sound overheats, and can burn."
            if key == "sound" != case
            else "",
        )
        for key, text in STRING_MEANS.items()
    )


STRING_NOTES = {
    "short": "The display shows one resistor, so the other is a piece of wire. Both are replaced: "
    "the one that is left had four times its heat.",
    "open": "OL means more than the meter can show: a gap. Sound ones would show their sum.",
    "drift": "The display shows more than the sum that is printed. Film that was too hot drifts "
    "upwards, and what it can stand has gone down: replace the string, and find out why.",
    "sound": "The display shows the sum of both, within their tolerance. That says nothing of what "
    "they went through: parts that smoked are replaced all the same.",
}


JOINT = Road(given("watts"), full_amps(), heat_in_joint("joint_ohms"))
JOINT_WATTS = (150.0, 300.0, 350.0)


FAULTS = (
    Question(
        id="fail-1",
        edition=2,
        outcome="find the current after one of two resistors has failed short",
        numbers=lambda draw, supply: {"ohms": draw.pick((39e3, 47e3, 56e3, 68e3))},
        ask="The first step is yours. Two resistors of {ohms} each stand in series with a diode "
        "and a red LED on your mains, {supply}. One of them has failed short. What current does "
        "the LED get at the crest now?",
        kind=Amount(
            "current",
            "mA",
            Road(
                label(),
                knowing(crest(), MEAN_FOR_CREST),
                over(Road(one_left("ohms")), called="the current at the crest"),
            ),
            exact=lambda n: _one_short(n).led_amps_peak,
            slips=(
                Slip(
                    "took the label for the crest",
                    lambda n: (n.supply.volts_rms - DROPS_VOLTS) / n.ohms,
                    "How high does the wave rise above its label?",
                    share=0.5,
                ),
            ),
            measure="peak",
            crest=2,
        ),
        nudges=(
            "How many ohms are left in the way?",
            "The crest is 1.414 times the label. Divide it by the ohms of the one that is left.",
        ),
        working="One resistor is left. {sum}. With the drops of LED and diode it is {right}: twice "
        "what it was.",
        code=f'faults.after("{CIRCUIT}", "dropper", "short", {SUPPLY}, ohms_each={{ohms}}, '
        "count=2).led_amps_peak",
    ),
    Question(
        id="fail-2",
        outcome="say why a fault is judged at the highest mains and for good",
        ask="Why this step? In the worked example the resistor that is left was judged at the "
        "highest mains, as if it had to bear its heat for good. Why not for a minute, on an "
        "ordinary day?",
        kind=Choice("""
            right stays: A fault that nobody notices stays, and meets the highest mains one day.
              reply: The light only got brighter. Who would look?
            wrong fuse: Within a minute the fuse has opened anyway.
              reply: How many milliamperes flow, and how many does a fuse carry all day?
              danger: no fuse notices a few milliamperes. The resistor that is left can burn.
            wrong short raises: A shorted resistor raises the mains in the house.
              reply: How many milliamperes does this circuit draw, and how many a kettle?
            wrong warmup: A resistor needs hours to warm up.
              reply: Lesson 04 gives the time constant of a small part. Is it hours?
        """),
        nudges=(
            "What would somebody in the room see of this fault?",
            "Ask how long the fault lasts before anybody acts, and what the mains does meanwhile.",
        ),
        working="The light glows, brighter than before. So the fault stays, perhaps for years, and "
        "what is left has to bear it at the highest mains in the air of its box.",
    ),
    Question(
        id="fail-3",
        level=2,
        marks=2,
        outcome="find the heat in what is left of a string",
        numbers=lambda draw, supply: {"ohms": draw.pick((12e3, 13e3, 18e3, 24e3))},
        ask="All steps: four resistors of {ohms} each stand in series with a diode and a red LED "
        "on your mains, {supply}. One of them has failed short. How much heat does each of the "
        "three that are left give?",
        kind=Amount(
            "power",
            "W",
            Road(
                label(),
                squared_over(Road(given("ohms"), one_fewer(4))),
                halved(),
                shared_heat(3),
            ),
            exact=_left_watts,
            slips=(
                Slip(
                    "counted the shorted one as well",
                    lambda n: n.supply.volts_rms**2 / 2 / n.ohms / 16,
                    "How many ohms has a part that failed short, and how many are left?",
                    share=0.5,
                ),
            ),
            danger=_weak(_left_watts),
            measure="each",
        ),
        nudges=(
            "How many ohms does the string have now, and how many half-cycles pass?",
            "Volts squared over the ohms that are left, half of that, shared among those that are "
            "left.",
        ),
        working="{sum}. With the drops of LED and diode it is {right}, 1.78 times what each had "
        "before.",
        code=f'faults.after("{CIRCUIT}", "dropper", "short", {SUPPLY}, ohms_each={{ohms}}, '
        "count=4).watts_each",
    ),
    Question(
        id="fail-4",
        level=2,
        marks=2,
        outcome="order faults by the heat in the dropper",
        ask="Two equal resistors, a diode and a red LED stand in series on the mains. Put these "
        "states in order of the heat in the hottest resistor, the most on top.",
        kind=Order(BY_HEAT),
        nudges=(
            "Which of these change the ohms, and which change the number of half-cycles?",
            "Find the current of each against the sound one, square it, and multiply by the ohms "
            "of the hottest part and by how often it works.",
        ),
        working="One resistor shorted: twice the current, four times the heat. Diode shorted: both "
        "half-cycles, so twice the heat. Sound: once. One drifted to three times its ohms: half "
        "the current, a quarter as a square, times three, so 0.75. LED open: none, and the whole "
        "mains stands across the gap.",
    ),
    Question(
        id="fail-5",
        level=2,
        outcome="tell from a reading what has happened to a string",
        numbers=lambda draw, supply: {
            "ohms": draw.pick((39e3, 47e3, 82e3)),
            "case": draw.pick(tuple(STRING_SHOWS)),
        },
        picture=_string_reading,
        ask="Plug out, proved dead, and the dropper taken out of its circuit by a skilled "
        "colleague: two resistors in series, ±\u00a05\u00a0%, on each of which {ohms} is printed. "
        "This meter lies across both. What has happened?",
        kind=Choice(lambda n: _string_options(n.case)),
        nudges=(
            "What should the two together have?",
            "Hold the reading against one of them, and against twice that.",
        ),
        facts={"note": lambda n: STRING_NOTES[n.case]},
        working="{note}",
    ),
)

# --- the light as a message --------------------------------------------------------------------

# What is seen, and what of it can be the reason; behind every one of them something is live.
SEEN = {
    "The plug is in and the dimmer stands at full. The pilot light, two resistors, a diode and an "
    "LED in series across the pot, is dark.": options("""
        right led open: The LED has failed open.
          reply: How much light does a gap make, and what stands across it?
          danger: the pot is live and hot, and the whole mains stands across the gap.
        right led short: The LED has failed short.
          reply: Does current through a piece of wire make light?
          danger: all is live as before, and only the light is missing.
        right resistor open: One of the two resistors has failed open.
          reply: What does a break in a chain do to the current, and to the volts across it?
          danger: the pot is live and hot, and so is each end of the break.
        right neutral gone: The neutral wire is broken before the pot.
          reply: Does a broken neutral take the volts off the live wire?
          danger: the pot is cold and everything behind the live wire is at the full mains.
        wrong resistor short: One of the two resistors has failed short.
          reply: With half of the ohms, does the LED get less current, or more?
        wrong diode short: The diode has failed short.
          reply: What does the LED get in its own half-cycle when the diode is a wire?
    """),
    "The dimmer is at off. The pilot light, with a diode across its LED, is about as bright as at "
    "full.": options("""
        right element broken: The element is broken, and the dimmer leaks.
          reply: What pulls the leaked voltage down when the element is sound?
          danger: the pot's terminals stand at nearly the whole mains, although it is off.
        right cut-out open: The pot's thermal cut-out has opened, and the dimmer leaks.
          reply: What does an open cut-out do to the way through the pot?
          danger: the terminals stand at nearly the whole mains, although pot and dimmer are off.
        right dimmer shorted: The dimmer has failed and passes everything.
          reply: What does the light get when the dimmer is a piece of wire?
          danger: the pot is at full heat while its knob says off. Wax can boil and burn.
        wrong led shorted: The LED has failed short.
          reply: Does current through a piece of wire make light?
        wrong lead broken: The neutral wire is broken before pot and light.
          reply: Which way back is left for the light's current?
    """),
    "The pot stays cold with the dimmer at full. The pilot light across its terminals is as bright "
    "as ever.": options("""
        right element broken: The element is broken.
          reply: Does a light across the terminals know what flows in the element?
          danger: the terminals are at the full mains, and the pot looks merely cold.
        right cut-out open: The thermal cut-out in the pot has opened.
          reply: Where does the cut-out sit: before the light's tap, or behind it?
          danger: the terminals are live, and when the cut-out closes the heat comes back by itself.
        right loose wire: A wire between the light's tap and the element has come off.
          reply: Which of the two still gets its voltage?
          danger: a loose live wire can touch the case.
        wrong neutral broken: The neutral wire is broken before pot and light.
          reply: Which way back is left for the light's current?
        wrong light shorted: The LED has failed short.
          reply: Does current through a piece of wire make light?
    """),
}


def _reasons(n):
    return " ".join(option.text for option in SEEN[n.seen] if option.right)


MESSAGE = (
    Question(
        id="fail-6",
        edition=2,
        level=2,
        marks=2,
        danger=True,
        outcome="say which faults can stand behind what the light says",
        numbers=lambda draw, supply: {"seen": draw.pick(tuple(SEEN))},
        ask="{seen} Something has failed, and only one thing. Which of these can it be? Whatever "
        "it is, something here is live.",
        kind=ChooseAll(lambda n: SEEN[n.seen]),
        nudges=(
            "Follow the current of the light: which break stops it, and which short goes past it?",
            "Take each fault alone, and ask what the light would then do at this setting.",
        ),
        facts={"reasons": _reasons},
        working="It can be each of these: {reasons} The light cannot tell them apart, and behind "
        "each of them something is live. Pull the plug and keep it, prove the tester, prove dead, "
        "prove the tester again.",
    ),
    Question(
        id="fail-7",
        edition=2,
        level=2,
        marks=2,
        outcome="find the heat in a loose joint",
        numbers=lambda draw, supply: {
            "watts": draw.pick(clear(JOINT, supply, "watts", JOINT_WATTS, joint_ohms=0.8)),
            "joint_ohms": draw.pick((0.6, 0.8, 1.3)),
        },
        picture=lambda n: Picture(
            "meter",
            {
                "text": f"{n.joint_ohms:.2f}",
                "unit": "Ω",
                "words": "low-ohms meter across the joint, leads already taken off",
            },
        ),
        ask="A light that flickers led a skilled colleague to a loose screw joint. Plug out and "
        "proved dead, the joint alone is measured; a sound one has a few thousandths of an ohm. "
        "The pot takes {watts} on your mains, {supply}, and all of its current passes this joint. "
        "How much heat arises in the joint at full?",
        kind=Amount(
            "power",
            "W",
            JOINT,
            danger=lambda value, n: (
                "a joint that is called cool is left as it is. It gets hotter with the years, and "
                "can start a fire."
                if value < 0.3 * JOINT.value(n)
                else None
            ),
        ),
        nudges=(
            "Which current passes the joint, and which ohms belong to it?",
            "Watts over volts gives the current. Square it and multiply by the ohms of the joint.",
        ),
        working="{sum}, in a spot as small as a match head. As it chars, its ohms rise, and the "
        "heat with them. Neither fuse nor RCD sees it.",
        code="({watts} / {supply.volts_rms})**2 * {joint_ohms}",
    ),
)

# --- one resistor is no barrier ----------------------------------------------------------------

STRING_OHMS = (330e3, 390e3, 470e3, 560e3)


def _exact_ohms(n):
    return highest_volts(n) / n.amps - NETWORK_OHMS


def _least_ohms(n):
    """The least, rounded up to whole kilo-ohms: rounded down it would let too much through."""
    return 1e3 * ceil(_exact_ohms(n) / 1e3)


def _limit_amps(draw, supply):
    """Draw a limit whose part lies clearly below the next value that is made."""

    def rounding_shows(amps):
        exact = mains.highest(supply).volts_rms / amps
        return resistors.next_up(exact, "E12") > 1.012 * exact

    clear = [amps for amps in (0.46e-3, 0.43e-3, 0.42e-3, 0.41e-3) if rounding_shows(amps)]
    return {"amps": draw.pick(clear[:3])}


def _part_danger(value, n):
    """A part that lets more through, once its neighbour is shorted, than may be touched."""
    if value <= 0 or highest_volts(n) / (value + NETWORK_OHMS) > hazards.FELT_AMPS_RMS:
        return (
            "with one part shorted, this lets more through than a part that may be touched is "
            "allowed."
        )
    return None


def _seems_safe(value, n):
    """A touch current far below the real one, or within the limits where that is beyond them."""
    sound = hazards.protective_impedance(highest(n), (n.ohms, n.ohms)).holds
    within = value <= hazards.FELT_AMPS_RMS and not sound
    if within or value < 0.6 * highest_volts(n) / (n.ohms + NETWORK_OHMS):
        return "more than this flows, so that a barrier which fails would be taken for a sound one."
    return None


HIGHEST = (name_of_mains(), per_cent_more(percent_up, "the highest mains"))
# The network is less than one per cent of a part: leaving it out of a sum is not told from it.
BARRIER_FACTS = {
    "up_percent": percent_up,
    "highest_volts": highest_volts,
    "network_ohms": lambda n: NETWORK_OHMS,
}

FOR_RMS = (
    Turn("took the crest for the label", "A fuse is rated in rms amperes: which volts go with "
         "them?", lambda value, volts, n: sqrt(2) * volts),
    Turn("counted one half-cycle only", "Which part would still stop the other half-cycle?",
         lambda value, volts, n: volts / 2),
    Turn("took ten per cent off the mains unasked", "On the lowest mains a fuse gets least: does "
         "the question name it?", lambda value, volts, n: 0.9 * volts),
)  # fmt: skip
NETWORK_OFF = Turn(
    "took the network off", "Does the network make the way easier, or harder?",
    lambda value, network, n: value - network, share=0.0)  # fmt: skip
WHICH_LIMIT = "At that current a hand cannot let go. Which limit does the question give?"
OTHER_LIMITS = (
    Slip(
        "took the RCD's current as the limit",
        lambda n: highest_volts(n) / hazards.RESIDUAL_AMPS_RMS - NETWORK_OHMS,
        WHICH_LIMIT,
    ),
    Slip(
        "took the let-go current as the limit",
        lambda n: highest_volts(n) / LET_GO_MOST_AMPS - NETWORK_OHMS,
        WHICH_LIMIT,
    ),
)

PARTS_OHMS = (100e3, 220e3, 270e3, 330e3, 470e3, 560e3, 680e3, 1e6)
PARTS_VOLTS = (100.0, 150.0, 200.0, 250.0, 300.0, 500.0)
PARTS_WATTS = (0.125, 0.25, 0.5, 1.0)
PARTS_TOLERANCE = 0.05
PARTS_CELSIUS = 70.0  # The air that the question states.
# So many times the least that will do may both together have: the LED is to be seen in the dark.
ROOM_FOR_OHMS = (1.03, 1.16, 1.3)


def _most_ohms(draw, supply):
    least = next(
        each
        for each in PARTS_OHMS
        if hazards.protective_impedance(
            mains.highest(supply), [each * (1 - PARTS_TOLERANCE)] * 2
        ).holds
    )
    return {"most_ohms": 1e4 * round(2 * least * draw.pick(ROOM_FOR_OHMS) / 1e4)}


def _judge_parts(picked, n):
    first, second, rated_volts, rated_watts = picked
    supply = highest(n)
    low = [ohms_ * (1 - PARTS_TOLERANCE) for ohms_ in (first, second)]
    barrier = hazards.protective_impedance(supply, low)
    alone = supply.volts_rms**2 / min(low)
    worst = milliamps(barrier.amps_rms_worst)
    return [
        Criterion(
            "each part holds alone",
            barrier.holds,
            0.4,
            f"With one part shorted, a touch takes {worst} at the most; the limit is "
            f"{milliamps(hazards.FELT_AMPS_RMS)}, or 0.7 mA peak.",
            f"with one part shorted, a touch takes {worst}, more than the limit for a part that "
            "may be touched.",
        ),
        judged(
            "one part left stands the whole mains",
            0.2,
            [rules.volts(supply.volts_rms, rated_volts, "dropper")],
            "How many volts does one part see when the other is a piece of wire?",
        ),
        judged(
            "one part left is within its rating",
            0.2,
            [rules.heat(alone, rated_watts, PARTS_CELSIUS, "dropper")],
            "What are the volts squared over the ohms of the one that is left?",
        ),
        Criterion(
            "light can be seen",
            first + second <= n.most_ohms,
            0.2,
            f"Together they have {ohms(first + second)}; at most {ohms(n.most_ohms)} was allowed.",
        ),
    ]


_best_parts = first_that_passes(
    _judge_parts,
    (
        (each, each, rated_volts, rated_watts)
        for each in PARTS_OHMS
        for rated_volts in PARTS_VOLTS
        for rated_watts in PARTS_WATTS
    ),
)


def _parts_working(n):
    each, _, rated_volts, rated_watts = _best_parts(n)
    low = each * (1 - PARTS_TOLERANCE)
    amps = hazards.touch_amps_rms(highest(n), low, body_ohms=NETWORK_OHMS)
    return (
        f"Alone, {ohms(each)} at its low end has {midway(low, 'resistance')}: "
        f"{midway(highest_volts(n), 'voltage')} drives {milliamps(amps)} through it and "
        f"the network of {ohms(NETWORK_OHMS)}. "
        f"Twice {ohms(each)} stays below {ohms(n.most_ohms)}, {volts(rated_volts)} is enough for "
        f"the whole mains, and {write_as(rated_watts, 'W')} for the "
        f"{write(highest_volts(n) ** 2 / low, 'power')} that it then takes. The two in the other "
        "wire have to pass the same test, since a turned plug makes that wire live. No sum makes "
        "this a part that may be touched: that takes types made for mains surges, and the tests of "
        "the standard."
    )


BARRIER = (
    Question(
        id="safe-11",
        edition=3,
        outcome="find what is left of a barrier after one fault",
        numbers=lambda draw, supply: {"ohms": draw.pick(STRING_OHMS)},
        facts=BARRIER_FACTS,
        ask="The first step. Two parts of {ohms} stand in series between the live wire and an "
        "LED's leg. One part has failed short. How many ohms are left in the way, with the "
        "network of {network_ohms} that is put between the leg and earth?",
        kind=Amount(
            "resistance",
            "kΩ",
            Road(one_left("ohms"), knowing(with_network(), NETWORK_LEFT_OUT, NETWORK_OFF)),
            within=0.005,
            below=0,  # a little less is the network left out
        ),
        nudges=(
            "What is a part that has failed short: many ohms, or none?",
            "Add up what the current still has to pass: the sound part, and the network.",
        ),
        working="The shorted part has none, so the other and the network are left: {sum}.",
    ),
    Question(
        id="safe-12",
        edition=4,
        level=2,
        marks=2,
        outcome="find the touch current behind a barrier with one fault",
        numbers=lambda draw, supply: {"ohms": draw.pick(STRING_OHMS)},
        facts=BARRIER_FACTS,
        ask="All steps. Two parts of {ohms} stand between live wire and LED leg on {supply}. The "
        "mains is at its highest, {up_percent} up, and one part has failed short. What touch "
        "current flows through the network of {network_ohms}?",
        kind=Amount(
            "current",
            "mA",
            Road(*HIGHEST, over(Road(one_left("ohms"), with_network()))),
            danger=_seems_safe,
            within=0.01,  # ten volts for ten per cent is less than 2 % off on 120 V
        ),
        nudges=(
            "Which voltage is the worst, and which ohms are left?",
            "Take the highest mains, divide it by the sound part and the network together.",
        ),
        working="{sum}, or {right}.",
    ),
    Question(
        id="safe-13",
        edition=2,
        level=2,
        outcome="say why a barrier is tried with one part shorted",
        ask="Why this step? In the worked example one of two sound parts was taken as shorted "
        "before the current was worked out. Why?",
        kind=Choice("""
            right single fault: A barrier has to protect while one thing is broken and nobody knows
                it yet.
              reply: That is why one part alone can never be a barrier.
            wrong usual failure: Good film resistors nearly always fail short.
              reply: Most fail open. Which way is dangerous for a person, and does “most” protect
                them?
            wrong rcd needs it: The fault sends so much current to earth that the RCD is sure to
                open at once.
              reply: Compare the touch current of the example with 30 mA.
              danger: the RCD does not see a current this small: it cannot be the second barrier.
            wrong mains is high: It stands in for a mains that is higher than its name.
              reply: Which step of the example looked after a high mains already?
        """),
        nudges=(
            "What would the light look like after the fault: would anybody notice?",
            "Ask who is protected, and by what, on the day after the first fault.",
        ),
        working="After the first fault the light still glows, brighter than before, and nobody "
        "looks twice. From then on the other part is all that protects, so it has to hold the "
        "limit alone.",
    ),
    Question(
        id="safe-14",
        edition=4,
        level=3,
        marks=2,
        outcome="find the ohms that each part of a barrier needs",
        numbers=_limit_amps,
        facts={**BARRIER_FACTS, "exact_ohms": _exact_ohms},
        ask="A new situation. On {supply} at its highest ({up_percent} up), with one of two equal "
        "parts shorted, the network of {network_ohms} may take {amps:mA} at most. How many ohms "
        "does each part need at least? Round up to whole kilo-ohms.",
        kind=Amount(
            "resistance",
            "kΩ",
            Road(*HIGHEST, ohms_of_part("amps")),
            exact=_least_ohms,
            slips=OTHER_LIMITS,
            danger=_part_danger,
            within=0.005,
            below=0,
            measure="each",
        ),
        nudges=(
            "Which parts are left in the way when one is shorted?",
            "Highest voltage divided by the allowed current, minus the network.",
        ),
        working="{highest_volts:4} / {amps:mA} − {network_ohms} = {exact_ohms:5}, so {right} for "
        "each part. Whoever leaves the network out gets hardly more, and is on the safe side.",
        code=lambda n: (
            f'1e3 * ceil((mains.highest(mains.SUPPLIES["{n.supply.name}"]).volts_rms / {n.amps} '
            f"- {NETWORK_OHMS}) / 1e3)"
        ),
    ),
    Question(
        id="safe-15",
        edition=3,
        level=3,
        marks=3,
        outcome="choose two parts of which each holds alone",
        numbers=_most_ohms,
        facts={
            "limit_amps": lambda n: hazards.FELT_AMPS_RMS,
            "network_ohms": lambda n: NETWORK_OHMS,
            "air_celsius": lambda n: PARTS_CELSIUS,
        },
        ask="A pilot light for {supply} has two droppers in each of its two wires. Pick the two "
        "for one wire, ±\u00a05\u00a0% each, and what each is rated for. With either one shorted, "
        "on the highest mains, the other must hold the touch limit alone ({limit_amps:mA} rms, "
        "0.7\u00a0mA peak through {network_ohms}), stand all the rms volts, and take no more heat "
        "than it is rated for; the air around them stays below {air_celsius}. Together they may "
        "have {most_ohms} at most, or nobody sees the light.",
        kind=Parts(
            (
                Field("first dropper", "resistance", PARTS_OHMS),
                Field("second dropper", "resistance", PARTS_OHMS),
                Field("voltage rating of each", "voltage", PARTS_VOLTS, "V"),
                Field("power rating of each", "power", PARTS_WATTS, "W"),
            ),
            _judge_parts,
            _best_parts,
        ),
        nudges=(
            "What does each part have to do on the day when the other is shorted?",
            "Highest volts over the limit gives the ohms of one part, and its low end has to "
            "reach them. Then volts squared over ohms gives its heat.",
        ),
        working=_parts_working,
    ),
)

# --- what protects, and what does not -----------------------------------------------------------

# What somebody hopes for, why it does not hold, and the hope that belongs to it.
BARRIERS = {
    "One resistor of 1\u00a0MΩ, of the best make, stands between the live wire and an LED.": (
        "No: when this one resistor fails short, nothing is left in the way.",
        """
        wrong many ohms: Yes: 1\u00a0MΩ keeps the current below what a body feels.
          reply: And on the day when it has failed short, how many ohms has it then?
          danger: one fault that nobody notices puts the whole mains on the LED's legs.
        """,
    ),
    "Two resistors of 1\u00a0MΩ stand between one pin of the plug and an LED; its other leg goes "
    "straight to the other pin.": (
        "No: with the plug turned, the leg without resistors is joined to the live wire.",
        """
        wrong two parts: Yes: two parts in series, and each of them holds alone.
          reply: Which pin is the live one when the plug is turned?
          danger: with the plug one way round, the bare leg is at the full mains.
        """,
    ),
    "Two flameproof resistors of 33\u00a0kΩ stand in each wire of an LED.": (
        "No: with one of two shorted, the other lets far more through than the limit.",
        """
        wrong flameproof: Yes: flameproof parts do not fail, so they hold back the mains.
          reply: What does flameproof speak of: failing, or flames?
          danger: one short is enough, and then several milliamperes flow. A hand jerks, and may
            not be able to let go.
        """,
    ),
}


@cache
def _barrier_options(case):
    why, hope = BARRIERS[case]
    return options(f"""
        right no: {why}
        {hope.strip()}
        wrong led volts: Yes: there are only about 2\u00a0V on the LED.
          reply: Between its legs. And from a leg to earth?
          danger: each leg can be at the full mains against earth. Touching it can kill.
        wrong rcd: Yes, as long as an RCD guards the socket, since it opens in time.
          reply: Does an RCD hold the current down? And what does it see from hand to hand?
          danger: an RCD is what helps when all else has failed. It is no barrier, and from line to
            neutral it sees nothing.
    """)


FUSE_AMPS = (0.125, 0.16, 0.2)


def _short_amps(n):
    return n.supply.volts_rms / n.ohms


BIN_AMPS = (0.032, 0.05, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.4, 0.63, 1.0, 2.0)
BIN_BREAKING = (35.0, 150.0, 1500.0)
BREAKING = {35.0: "L", 150.0: "E", 1500.0: "H"}
CLEARS_SECONDS = 1.0  # what this workshop asks; common practice, no source


@cache
def _line_amps(supply, farads, surge_ohms):
    """What the fuse has to carry and to clear: sound on high mains; capacitor shorted on low."""
    parts = capacitor_dropper.Parts(farads, surge_ohms, 1e6)
    carried = capacitor_dropper.steady(parts, mains.highest(supply)).line_amps_rms
    shorted = dropper_faults.outcome("capacitor short", parts, mains.lowest(supply))
    return carried, shorted.line_amps_rms


def _fuse_numbers(draw, supply):
    farads, surge_ohms = draw.pick(((820e-9, 120.0), (1.8e-6, 120.0), (820e-9, 82.0)))
    carried, cleared = _line_amps(supply, farads, surge_ohms)
    return {
        "farads": farads,
        "surge_ohms": surge_ohms,
        "carried_amps": float(f"{carried:.3g}"),
        "cleared_amps": float(f"{cleared:.3g}"),
        "socket_amps": draw.pick((200.0, 400.0, 900.0)),
    }


def _judge_fuse(picked, n):
    rated, breaking = picked
    fuse = fuses.Fuse(rated, "F", BREAKING[breaking])
    longest = fuses.longest_seconds(fuse, n.cleared_amps)
    carried = milliamps(n.carried_amps)
    soon = "may never open" if longest == float("inf") else f"may take {write(longest, 'time')}"
    return [
        Criterion(
            "carries the sound light",
            rated >= n.carried_amps,
            0.3,
            f"While all is sound {carried} flow, and it is rated {milliamps(rated)}. One that "
            "blows for nothing is soon replaced by a bigger one.",
        ),
        Criterion(
            "clears the shorted capacitor",
            longest <= CLEARS_SECONDS,
            0.4,
            f"With the capacitor shorted, {write(n.cleared_amps, 'current')} flow, and it {soon}.",
            "until the fuse opens, the whole mains heats the one small resistor. It burns.",
        ),
        Criterion(
            "can break what the socket drives",
            fuses.can_break(fuse, n.socket_amps),
            0.3,
            f"It can break {write(fuse.breaking_amps, 'current')}; the socket can drive "
            f"{write(n.socket_amps, 'current')}.",
            "a fuse that has to break more than it can bursts, and the arc in it burns on.",
        ),
    ]


_best_fuse = first_that_passes(
    _judge_fuse, ((rated, breaking) for rated in BIN_AMPS for breaking in BIN_BREAKING)
)


# What is trusted to save a hand on the LED's legs, and why it does not.
TRUSTED = {
    "a time-lag fuse of 100\u00a0mA in the live wire": (
        "What flows through a hand can kill, and this fuse may carry it for a minute or for ever.",
        """
        wrong opens: 100\u00a0mA is little, so it opens before a heart is harmed.
          reply: At which current may a heart stop, and how fast is a fuse at two or three times its
            rating?
          danger: half of its rating, for a second, can stop a heart.
        """,
    ),
    "the fuse in the plug, the smallest that its maker sells": (
        "It carries the current of a heater all day, many times more than what kills.",
        """
        wrong plug fuse: A fuse in the plug opens whenever current takes a wrong way.
          reply: What does a fuse look at: the way of a current, or its size?
          danger: no hand draws enough to open it. The current flows until somebody pulls the plug.
        """,
    ),
    "a fusible resistor of 22\u00a0Ω and 1\u00a0W in the live wire": (
        "It opens at many times its watts, and a hand's current heats it far less than that.",
        """
        wrong fusible: It is a resistor and a fuse at once, so it holds back or opens.
          reply: How many watts does it take to open it, and how many ohms has it before?
          danger: it has few ohms and opens late. The hand gets nearly the whole mains.
        """,
    ),
}


@cache
def _trusted_options(case):
    why, hope = TRUSTED[case]
    return options(f"""
        right does not: {why}
        {hope.strip()}
        wrong with rcd: Together with an RCD it makes a touch harmless.
          reply: Which of the two holds the current down until it has opened?
          danger: neither holds the current down. From line to neutral not even the RCD sees it.
        wrong dry: With dry hands it is enough, since they let hardly any current through.
          reply: What did lesson 01 find for dry hands on your supply?
          danger: dry hands let through what can stop a heart, on every supply of this course.
    """)


# What happened, and what is done before the pot is used again.
SMOKED = {
    "One of two resistors smoked once. It still measures what is printed on it.": options("""
        right itself: Replace it, although its ohms are right.
          reply: Are the ohms all that heat changes in a resistor?
          danger: what it can stand has gone down. It fails sooner, and hotter.
        right twin: Replace the other one of the pair as well.
          reply: Which current went through the other one?
          danger: the other one had the same current and can fail next.
        right reason: Find out why, before new parts are put in.
          reply: Would the new part be treated any better than the old one?
          danger: what burnt the old part burns the new one.
        wrong keep: Keep it in use, since a resistor with the right ohms is sound.
          reply: What has the heat done to film, coating and leads?
          danger: a part that has smoked can burn the next time.
        wrong bigger fuse: Put in a bigger fuse, so that it does not happen again.
          reply: What would the bigger fuse do to a few milliamperes?
          danger: a bigger fuse protects less.
    """),
    "The diode has failed short, and both resistors ran hot for weeks. The board under them is "
    "brown.": options("""
        right diode: Replace the diode by one that is rated for twice the crest or more.
          reply: What made the resistors hot?
          danger: with the old diode they run hot again.
        right resistors: Replace both resistors.
          reply: What do weeks of double heat do to film and coating?
          danger: parts that were too hot for weeks fail sooner and can burn.
        right board: Replace the board, or cut it out of use.
          reply: Does charred board still insulate?
          danger: char conducts. A current creeps along it, and it burns.
        wrong wash: Wash the brown off the board, then use it as before.
          reply: How deep does char go?
          danger: char conducts even when it looks clean.
        wrong wait: Use it until the light goes out, then repair it.
          reply: Which goes first, the light or the board?
          danger: a charred board can burn while the light still glows.
    """),
    "In a capacitor dropper the capacitor failed short, and the fuse blew.": options("""
        right capacitor: Replace the capacitor by a safety type made for this place.
          reply: Which part began it?
          danger: an ordinary capacitor fails short again.
        right resistor: Replace the resistor in series with it.
          reply: How much heat did it take until the fuse had opened?
          danger: it had hundreds of times its usual heat, and can burn next time.
        right fuse: Put in a fuse of the same rating, speed and breaking capacity.
          reply: Which fuse was chosen for this fault?
          danger: another fuse may carry the fault until the resistor burns.
        wrong wire: Bridge the fuse for a moment, to see whether all is well.
          reply: What limits the current if it is not?
          danger: without the fuse the whole mains heats one small resistor.
        wrong next size: Take the next bigger fuse, since this one was too weak.
          reply: Did it blow for nothing?
          danger: a bigger fuse opens later, or not at all.
    """),
}


def _done(n):
    return " ".join(option.text for option in SMOKED[n.happened] if option.right)


def _sentences(n):
    each = ohms(n.ohms)
    return options(f"""
        wrong twice the current: “Two resistors of {each} feed the LED. If one fails short, the LED
            gets about twice its current.”
          reply: What do half of the ohms do to the current?
        right twice the heat: “So the one that is left gets twice its heat.”
          reply: Heat goes with the square of what?
          danger: it gets four times its heat. A part chosen for twice burns.
        wrong no fuse: “A usual fuse does not notice this.”
          reply: How many milliamperes flow, and how many does the smallest fuse carry?
        right flameproof opens: “They are flameproof, so they open when they get too hot.”
          reply: What does the word promise: that it opens, or that it does not burn with a flame?
          danger: a flameproof part can stay hot for as long as the fault lasts, and char what it
            touches.
        right brighter is well: “The light is brighter than ever, so nothing has failed.”
          reply: Which fault makes it brighter?
          danger: a brighter light is a sign of a fault. Pull the plug.
        wrong full power: “The pot has to be safe at full heat even if nobody sees the light.”
          reply: What does a light do when nobody looks?
        right reminds: “A thermal cut-out only reminds, just as a light does.”
          reply: Which of the two ends the heat by itself?
          danger: a light ends no heat. Whoever leaves the cut-out away lets the pot burn.
    """)


PROTECTION = (
    Question(
        id="fail-8",
        level=2,
        danger=True,
        outcome="say why resistors in the way are not yet a barrier",
        numbers=lambda draw, supply: {"case": draw.pick(tuple(BARRIERS))},
        ask="{case} Somebody wants to let the LED's legs stick out of the box, where a hand can "
        "touch them. On {supply}, is that safe?",
        kind=Choice(lambda n: _barrier_options(n.case)),
        nudges=(
            "What is left in the way after one fault, and with the plug turned?",
            "Short one part, turn the plug, and ask each time what stands between a hand and the "
            "mains.",
        ),
        facts={"reason": lambda n: BARRIERS[n.case][0].removeprefix("No: ")},
        working="No. Look: {reason} And even where the sums hold, a part that may be touched "
        "takes types made for mains surges and the tests of its standard. Live parts stay behind a "
        "cover.",
    ),
    Question(
        id="fail-9",
        edition=3,
        level=2,
        outcome="find how many times its rating a fuse gets in a fault",
        numbers=lambda draw, supply: {
            "ohms": draw.pick((68.0, 82.0, 91.0)),
            "fuse_amps": draw.pick(FUSE_AMPS),
        },
        facts={
            "seconds": lambda n: fuses.longest_seconds(
                fuses.Fuse(n.fuse_amps, "F", "H"), _short_amps(n)
            )
        },
        ask="In a capacitor dropper on {supply} the capacitor has failed short. Only the resistor "
        "of {ohms} in series with it is left in the way. Before it stands a quick-acting fuse of "
        "{fuse_amps:mA}. How many times its rating flows?",
        kind=Amount(
            "ratio",
            "",
            Road(
                knowing(label(), *FOR_RMS), current_through("ohms"), times_its_rating("fuse_amps")
            ),
        ),
        nudges=(
            "What current does the mains drive through the resistor alone?",
            "Volts over ohms, and that over the rating of the fuse.",
        ),
        working="{sum}. A quick-acting fuse may take up to {seconds} at that, by IEC 60127. The "
        "LED is saved by no fuse.",
    ),
    Question(
        id="fail-10",
        edition=3,
        level=3,
        marks=3,
        outcome="choose a fuse for a capacitor dropper",
        numbers=_fuse_numbers,
        facts={"clears_seconds": lambda n: CLEARS_SECONDS},
        ask="Choose the quick-acting fuse, at the line, of a capacitor dropper of {farads} with "
        "{surge_ohms} in series, for a row of LEDs on {supply}. No dimmer is before it. On the "
        "highest mains {carried_amps:mA} flow for good. With the capacitor shorted, on the lowest "
        "mains, {cleared_amps:A} flow, and within {clears_seconds} the fuse has to open, as the "
        "lesson's table has it. Through a wire in its place the socket could drive "
        "{socket_amps:A}.",
        kind=Parts(
            (
                Field("rated current", "current", BIN_AMPS),
                Field("breaking capacity", "current", BIN_BREAKING, "A"),
            ),
            _judge_fuse,
            _best_fuse,
        ),
        nudges=(
            "What must it carry for good, what must it clear, and what must it be able to break?",
            "Its rating is no less than what flows for good. From the table take how many times "
            "its rating opens it in time, and compare that with the fault.",
        ),
        working=lambda n: (
            f"{milliamps(_best_fuse(n)[0])} with {write_as(_best_fuse(n)[1], 'A')}: "
            + " ".join(
                criterion.reply.partition(" One that")[0]
                for criterion in _judge_fuse(_best_fuse(n), n)
            )
            + " Its maker's curve and melting integral decide in the end: it has to outlive the "
            "switching-on, too."
        ),
    ),
    Question(
        id="fail-11",
        level=2,
        danger=True,
        outcome="say why no fuse protects a person",
        numbers=lambda draw, supply: {"trusted": draw.pick(tuple(TRUSTED))},
        ask="Somebody wants to touch the LED's legs on {supply}, and trusts {trusted}. What is "
        "true?",
        kind=Choice(lambda n: _trusted_options(n.trusted)),
        nudges=(
            "What flows through a hand, and what does it take to open this part?",
            "Hold the current through dry hands against what the part carries all day.",
        ),
        facts={
            "reason": lambda n: TRUSTED[n.trusted][0],
            "dry_amps": lambda n: hazards.touch_amps_rms(n.supply),
        },
        working="{reason} On {supply} dry hands let {dry_amps:mA} through, and about 50 mA for a "
        "second can stop a heart. A fuse keeps wiring from burning; covers and earth keep people "
        "alive.",
    ),
    Question(
        id="fail-12",
        level=2,
        marks=2,
        danger=True,
        outcome="say what is replaced after something has smoked",
        numbers=lambda draw, supply: {"happened": draw.pick(tuple(SMOKED))},
        ask="{happened} The plug is out, and it is work for an electrically skilled or instructed "
        "person. What has to be done before the pot may be used again?",
        kind=ChooseAll(lambda n: SMOKED[n.happened]),
        nudges=(
            "Which parts had more heat or current than they are made for, and what began it?",
            "Go along the way of the current and ask of each part what it went through.",
        ),
        facts={"done": _done},
        working="{done} Whatever was too hot or carried too much current is replaced, and so is "
        "what began it. Then all is tested by a competent person, before the plug goes in.",
    ),
    Question(
        id="fail-13",
        level=3,
        marks=3,
        outcome="find the wrong steps in an argument about faults",
        numbers=lambda draw, supply: {"ohms": draw.pick((47e3, 56e3, 68e3))},
        ask="Find the mistakes. Somebody explains what a pilot light on {supply} does when parts "
        "fail; it has a diode in series. Choose every sentence that is wrong.",
        kind=ChooseAll(_sentences),
        nudges=(
            "Which sentence speaks of current, which of heat, and which of what ends the heat?",
            "Short one resistor and follow it: current, heat, light, fuse.",
        ),
        facts={"left_watts": lambda n: _one_short(n).watts_each},
        working="Half of the ohms, twice the current, four times the heat: {left_watts} in the one "
        "that is left. Flameproof means without flames, and fusible means that it opens, late. A "
        "brighter light tells of a fault. A light reminds; a cut-out ends the heat.",
    ),
)

QUESTIONS = (*RECALL, PREDICT, *FAULTS, *MESSAGE, *BARRIER, *PROTECTION)
