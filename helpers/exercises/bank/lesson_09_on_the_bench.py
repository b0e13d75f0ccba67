"""Lesson 09: predict before power, choose a meter, rehearse at low voltage, wait, compare, decide.

Danger first: every reading here is given, or belongs to a rehearsal on an isolated,
current-limited supply. No question asks anybody to measure on the mains.
"""

from functools import cache

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
    options,
)
from helpers.exercises.question import Picture, Question
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps.bench import (
    K_UNDER_THE_ROOT,
    PER_CENT_OF_RANGE,
    apart_from,
    combined_with,
    expanded,
    from_the_middle,
    guarded,
    half_each,
    in_uncertainties,
    loaded_by_meter,
    ohms_at,
    per_cent_of,
    plus_digits,
    read_time_constant,
    settled,
    standard_of_limits,
)
from helpers.exercises.roads.steps.general import given, knowing, over
from helpers.exercises.roads.steps.heat import alike_in_series
from helpers.exercises.roads.steps.ohms import dc_current, less_drop
from helpers.physics import heat, leds, ohms_law, uncertainty
from helpers.physics.meters import INPUT_OHMS
from helpers.quantities import write
from helpers.quantities.writing import milliamps, volts

LESSON = "09"
TITLE = "On the bench"

LED_VOLTS = 2.0

# --- look back, predict ------------------------------------------------------------------------

RECALL = (
    Question(
        id="meter-recall-1",
        edition=2,
        role="recall",
        outcome="find the current of an LED behind two resistors on a bench supply",
        numbers=lambda draw, supply: {
            "volts": draw.pick((9.0, 12.0, 15.0)),
            "ohms": draw.pick((3.3e3, 3.9e3, 4.7e3, 5.6e3)),
            "led_volts": LED_VOLTS,
        },
        ask="From lesson 02: two resistors of {ohms} each and a red LED, which keeps {led_volts}, "
        "stand in series on a bench supply of {volts} DC. What current flows?",
        kind=Amount(
            "current",
            "mA",
            Road(
                given("volts"),
                less_drop("led_volts"),
                dc_current(Road(given("ohms"), alike_in_series(2))),
            ),
        ),
        nudges=("What is left for the two resistors, and how many ohms are they together?",),
    ),
    Question(
        id="meter-recall-2",
        role="recall",
        outcome="say what one dead reading is worth",
        ask="From lesson 01: the tester was proved, and then it showed nothing between line and "
        "neutral. What comes before a hand goes near?",
        kind=Choice("""
            right rest: Line to earth, neutral to earth, and then the tester is proved again.
              reply: A tester can fail in between, and a broken wire can hide the third pair.
            wrong hand: Nothing more: line to neutral is what feeds the pot.
              reply: Which wire does a switch in the neutral leave live?
              danger: a live wire can be left. It can kill.
            wrong light: A look at the pilot light, which would glow as long as anything is live.
              reply: What does a dark light prove?
              danger: dark never means dead. A live wire can kill.
            wrong twice: The same two points once more, to be sure.
              reply: What does a broken tester show the second time?
              danger: a tester that has failed shows nothing twice. What is live can kill.
        """),
        nudges=("Which pairs are left, and what can have happened to the tester?",),
        working="Line to earth, neutral to earth, and the tester proved again.",
    ),
    Question(
        id="meter-recall-3",
        role="recall",
        outcome="say what a plain meter shows behind a dimmer",
        ask="From lesson 05: an average-responding (plain) AC range and a true-rms range both show "
        "the volts across a pot, behind a dimmer that cuts each half-cycle at 110°. Which is true?",
        kind=Choice("""
            right less: The plain one shows less, since it is right on a whole sine only.
            wrong same: Both show the same, as they do in the shop on a whole sine.
              reply: By what does a plain meter multiply the mean, and for which wave is that right?
            wrong more: The plain one shows more, since its scale is stretched by 1.11 for that.
              reply: On a whole sine both show the same. What does cutting do to the mean?
            wrong peak: Both show the crest, since the dimmer does not lower it.
              reply: Which of crest, rms and mean does each of the two measure?
        """),
        nudges=("What does each of the two measure, and what has the dimmer cut away?",),
        working="The plain one shows less. It measures the mean and multiplies by 1.11.",
    ),
)

PREDICT = Question(
    id="meter-predict",
    role="predict",
    outcome="commit to an expectation",
    ask="On a rehearsal at low voltage you expected 10.85 V across a resistor. The meter shows "
    "11.2 V. What does that tell you?",
    kind=Choice("""
        wrong part: A part is wrong: the two numbers differ.
        wrong meter: The meter is wrong: it ought to show what was worked out.
        wrong fine: All is well: 11.2 is nearly 10.85.
        wrong nothing: Nothing yet.
    """),
    working="nothing yet. First it has to be known how far off each of the two may be. Only then "
    "can a difference be large or small.",
)

# --- plan, predict, limits ---------------------------------------------------------------------

SHEETS = ((0.8, 3), (1.2, 4), (1.5, 5))
STEP_VOLTS = 0.01


def _sheet_numbers(draw, supply):
    percent, digits = draw.pick(SHEETS)
    reading = draw.pick((8.37, 10.42, 12.86))
    return {
        "reading_volts": reading,
        "percent": percent,
        "digits": digits,
        "step_volts": STEP_VOLTS,
    }


PLAN = (
    Question(
        id="meter-1",
        outcome="put the way from a plan to a decision in order",
        ask="A pilot light has been planned on paper, and its parts lie on the bench. Put the way "
        "from there in order, the first on top.",
        kind=Order("""
            right predict: Write down what each meter should show, and how far off it may be.
            right unpowered: With no supply at all, measure the ohms and test the diodes both ways.
              reply: With what would you compare these readings?
            right rehearse: Rehearse on an isolated, current-limited supply of 24 V at most.
              reply: Which faults can be found with no supply at all?
            right compare: Compare each reading with its prediction; stop where one disagrees.
              reply: Which readings are there to compare by then?
            right hand over: Close the covers, and hand the log to a competent person.
              reply: What would that person read in a log that has not been compared?
            right decide: The competent person checks it and decides about the mains, by local
                rules.
              reply: On what would that person decide?
              danger: the mains kills, and what nobody has checked can burn.
        """),
        nudges=(
            "What has to stand on paper before the first reading, and which step can hurt?",
            "Go from what needs no supply to what needs a little. The mains comes last.",
        ),
        working="Predict, measure without a supply, rehearse, compare, hand over. Somebody else "
        "decides. A prediction that is made after the reading agrees with anything.",
    ),
    Question(
        id="meter-2",
        edition=2,
        outcome="find the limits of a reading from the meter's sheet",
        numbers=_sheet_numbers,
        picture=lambda n: Picture(
            "meter",
            {
                "text": f"{n.reading_volts:.2f}",
                "unit": "V",
                "words": "multimeter, DC volts, range of 20 V",
            },
        ),
        ask="The first step is yours. In the sheet of this meter stands, for its range of 20 V: "
        "± ({percent} of the reading + {digits} digits). How far off, to either side, may this "
        "reading be?",
        kind=Amount(
            "voltage",
            "V",
            Road(
                given("reading_volts", called="the reading"),
                per_cent_of("percent", "voltage", "the per cent of the reading", PER_CENT_OF_RANGE),
                plus_digits(),
            ),
            within=0.015,
        ),
        nudges=(
            "What is one digit worth: one step of which place?",
            "Take the per cent of the reading, and add so many steps of the last place.",
        ),
        working="One digit is one step of the last place, here {step_volts:V}. {sum}. All this "
        "holds on DC, in the range that is named.",
    ),
    Question(
        id="meter-3",
        level=2,
        outcome="say why limits are divided by the root of three",
        ask="Why this step? The limits of the sheet are divided by √3 before they are combined "
        "with others. Why?",
        kind=Choice("""
            right even: Anywhere between limits is as likely, and that spread is a √3rd of them.
            wrong three: Three readings are taken, and their mean strays less.
              reply: How many readings were taken here?
            wrong smaller: It makes the uncertainty smaller, so that more of the readings agree.
              reply: Is the aim that readings agree, or that it is known when they do not?
            wrong sigma: The limits on a sheet are always three standard deviations wide.
              reply: Does the sheet say how often a meter lies beyond its limits?
            wrong wave: A mains wave has a factor of √3 between its phases.
              reply: Is there any mains in a rehearsal on DC?
        """),
        nudges=(
            "What does a sheet say of a value between its limits?",
            "Think of all values between the limits as equally likely. How wide do they spread?",
        ),
        working="A sheet says “between these limits” and no more. Then no value between them is "
        "likelier than another, and the standard deviation of that is the half-width over √3, "
        "0.58 of it (JCGM 100, 4.3.7).",
    ),
    Question(
        id="meter-4",
        edition=2,
        level=1,
        outcome="find the standard uncertainty of a marked part",
        numbers=lambda draw, supply: {
            "ohms": draw.pick((82e3, 68e3, 120e3)),
            "percent": draw.pick((1.0, 2.0, 5.0)),
        },
        ask="A resistor is marked {ohms} ± {percent}. What is its standard uncertainty?",
        kind=Amount(
            "resistance",
            "kΩ",
            Road(
                given("ohms"),
                per_cent_of("percent", "resistance", "the limits to either side"),
                standard_of_limits("resistance"),
            ),
            within=0.015,
        ),
        nudges=(
            "How many ohms lie between the printed value and either limit?",
            "Take the per cent of the ohms. Then divide by the root that belongs to limits.",
        ),
        working="{sum}.",
    ),
    Question(
        id="meter-5",
        level=2,
        marks=2,
        outcome="combine two uncertainties and widen them",
        numbers=lambda draw, supply: dict(
            zip(
                ("supply_volts", "parts_volts"),
                draw.pick(((0.07, 0.17), (0.06, 0.14), (0.08, 0.15))),
                strict=True,
            )
        ),
        ask="A prediction of the volts on a resistor has two standard uncertainties: "
        "{supply_volts:V} from the supply, {parts_volts:V} from the parts. They know nothing "
        "of each other. What is its expanded uncertainty, with k = 2?",
        kind=Amount(
            "voltage",
            "V",
            Road(
                given("supply_volts", called="the first one"),
                combined_with(Road(given("parts_volts")), "voltage"),
                knowing(expanded("voltage"), K_UNDER_THE_ROOT),
            ),
            within=0.015,
        ),
        nudges=(
            "Do both stray to the same side each time, or does one often take from the other?",
            "Square each, add, take the root; then widen by k.",
        ),
        working="{sum}. About 95 of 100 such predictions lie within it (JCGM 100, 6.2 and annex "
        "G).",
    ),
)

# --- choose the meter --------------------------------------------------------------------------

# Where a meter is to be taken by a competent person, and what it and its leads have to bear.
PLACES = {
    "volts at a socket, which the pot is plugged into": options("""
        right two: A meter, leads and clips that all bear CAT II 300 V.
        wrong none: A meter with 600 V printed on it and no category.
          reply: What does a category say that the volts do not?
          danger: a surge can jump inside it and start an arc in the hand.
        wrong leads: A meter with CAT III 600 V, on leads that bear no mark.
          reply: Which part of the set is the weakest?
          danger: the leads are all that is between the hand and the mains.
        wrong nicked: A meter and leads with CAT II 300 V, one sleeve of them nicked.
          reply: What stands under the nick?
          danger: the wire below the nick is live while it is held. It can kill.
    """),
    "volts in the fixed wiring, behind a dimmer in the wall": options("""
        right three: A meter, leads and clips that all bear CAT III 300 V.
        wrong two: A meter and leads that bear CAT II 600 V, since more volts are safer.
          reply: What else grows towards the fixed wiring, besides the volts?
          danger: CAT II is for what is plugged in. An arc in the fixed wiring is fed by far more
            current.
        wrong mixed: A meter that bears CAT III 300 V, on leads that bear CAT II 300 V.
          reply: Which part of the set is the weakest?
          danger: the set is worth what its weakest part is worth. An arc can burn the hand.
        wrong none: A meter with 1000 V printed on it and no category.
          reply: What does a category say that the volts do not?
          danger: a surge can jump inside it and start an arc in the hand.
    """),
    "volts where the mains enters the building, before the first breaker": options("""
        right four: A meter, leads and clips that all bear CAT IV 300 V.
        wrong three: A meter and leads that bear CAT III 600 V, as for the wiring behind it.
          reply: What stands between this place and the street?
          danger: the surges are higher here, and no breaker of the house ends an arc.
        wrong two: A meter and leads that bear CAT II 300 V, as for a socket.
          reply: What stands between this place and the street?
          danger: an arc here is fed by the street, and burns until that is cut.
        wrong mixed: A meter that bears CAT IV 300 V, on leads that bear CAT II 300 V.
          reply: Which part of the set is the weakest?
          danger: the set is worth what its weakest part is worth. An arc can burn the hand.
    """),
}


def _instrument(n):
    return next(option.text for option in PLACES[n.place] if option.right)


# What somebody is about to do with a meter on the mains, and what is true of it.
SHORTS = {
    "Somebody wants to know how many amperes a socket gives. They set the meter to 10 A and take "
    "its two leads towards the two poles of the socket.": (
        "An ampere range is nearly a piece of wire: it shorts the mains.",
        """
        wrong pot: It shows the amperes that the pot will take.
          reply: Does the pot stand in the way at all?
          danger: nothing is in the way. It is a short of the mains, and an arc can burn hand and
            eyes.
        wrong nothing: It shows nothing, since no load is plugged into that socket yet.
          reply: How many ohms has a meter between its leads on amperes?
          danger: the meter is the load, and shorts the mains. It can burst in the hand.
        wrong fused: The fuse in the meter makes it harmless.
          reply: What can that fuse break, and what burns until it has opened?
          danger: many such fuses cannot break what a socket drives. The meter can burst.
        """,
    ),
    "The red lead still stands in the ampere jack, after the rehearsal. The knob is now on AC "
    "volts, and somebody takes the leads towards a live socket.": (
        "The jack decides, not the knob: the leads are joined by a shunt, and short it.",
        """
        wrong knob: The knob stands on volts, and on volts a meter takes next to nothing at all.
          reply: Where does the current go that enters by the ampere jack?
          danger: it goes through the shunt, whatever the knob says. It is a short of the mains.
        wrong beep: A meter would not let that happen; it would warn.
          reply: Do all meters warn, and is a warning a barrier?
          danger: most meters stay silent. It is a short of the mains, and can burn hand and eyes.
        wrong reads zero: It shows zero, and that proves the socket dead.
          reply: What has the short just done to the meter's fuse?
          danger: with its fuse blown it shows zero on anything live. That zero can kill.
        """,
    ),
    "The knob stands on ohms. Somebody wants to see whether the element is sound, and takes the "
    "leads to the pot while it is plugged in.": (
        "The mains drives its current through a range that is made for a battery.",
        """
        wrong ohms: It shows the ohms of the element, since that is all an ohms range ever does.
          reply: Whose voltage does an ohms range reckon with: its own, or the mains?
          danger: the mains passes through the meter, which can burst; and the probes are live.
        wrong off: With the dimmer at off there is nothing that could hurt the meter.
          reply: What does a dimmer at off let through?
          danger: off is not off. Everything counts as live until it is proved dead.
        wrong overload: It shows OL and takes no harm, as on any high resistance.
          reply: What does OL mean, and does the mains ask first?
          danger: the mains passes through the meter, which can burst; and the probes are live.
        """,
    ),
}


@cache
def _short_options(case):
    truth, wrong = SHORTS[case]
    return options(f"""
        right short: {truth}
        {wrong.strip()}
    """)


def _truth(n):
    return SHORTS[n.plan][0]


METERS = (
    Question(
        id="meter-6",
        level=2,
        marks=2,
        outcome="find what a meter shows when it loads what it measures",
        numbers=lambda draw, supply: {
            "volts": draw.pick((12.0, 15.0, 24.0)),
            "ohms": draw.pick((3.3e6, 1.5e6, 1.8e6, 2.7e6)),
        },
        facts={"meter_ohms": lambda n: INPUT_OHMS},
        ask="Two equal resistors of {ohms} stand in series on {volts} DC, as a bleeder does. A "
        "meter of {meter_ohms} lies across one of them. What does it show, if it is exact?",
        kind=Amount(
            "voltage",
            "V",
            Road(
                given("volts"),
                half_each(),
                loaded_by_meter(Road(given("ohms"), from_the_middle())),
            ),
            within=0.01,
        ),
        nudges=(
            "What would stand there without the meter, and which ohms do its leads look into?",
            "Halve the volts. The leads look into both resistors side by side; the meter and these "
            "share what is there.",
        ),
        working="{sum}. The sheet of the meter knows nothing of this: it is worked out and taken "
        "into the prediction.",
    ),
    Question(
        id="meter-7",
        level=2,
        marks=2,
        outcome="say where the limits on a meter's sheet do not hold",
        ask="The sheet says ± (1 % + 3 digits). In which of these cases is the reading further off "
        "than that, although the meter is sound? Whatever is on the mains here was read by a "
        "competent person.",
        kind=ChooseAll("""
            right average: An average-responding AC range, behind a dimmer that cuts at 100°.
              reply: On which wave alone is its scale right?
            right coupled: A true-rms AC range, on the current of an LED that rests every second
                half-cycle.
              reply: What does AC coupling take off before it measures?
            right crest: A true-rms range that follows 3 times the rms, on a wave whose crest is 4
                times its rms.
              reply: How high may the peaks of the wave be for this range?
            right loading: A range of 10 MΩ, across one of two equal resistors of 4.7 MΩ in series.
              reply: How do the meter and what its leads look into share the volts?
            wrong rehearsal: A DC range, on the 24 V of the rehearsal supply.
              reply: Which of wave form, crest and loading could spoil this one?
            wrong loose: An ohms range, on a resistor that has been taken out of its circuit.
              reply: What else could the ohms range see there?
        """),
        nudges=(
            "For which wave, and into which ohms, is a sheet written?",
            "Ask of each: is it the wave that the range is made for, do its peaks fit, and "
            "does the meter leave what it measures as it was?",
        ),
        working="Four of them. A scale for sines on a cut wave, coupling that takes the mean off, "
        "peaks beyond the range, and a meter that is a part of the circuit.",
    ),
    Question(
        id="meter-8",
        level=2,
        danger=True,
        outcome="say which meter and leads are made for a place",
        numbers=lambda draw, supply: {"place": draw.pick(tuple(PLACES))},
        ask="A competent person is to read {place}, on {supply}. Which set may be taken?",
        kind=Choice(lambda n: PLACES[n.place]),
        facts={"instrument": _instrument},
        nudges=(
            "Which category belongs to this place, and which part of a set decides?",
            "II is plugged in, III is built in, IV is where the mains enters. Then look at the "
            "weakest part of each set.",
        ),
        working="{instrument} A category says how high the surges and how strong an arc a set is "
        "made for (IEC 61010-1, IEC 61010-2-030). The weakest part decides: meter, lead, clip or "
        "fuse.",
    ),
    Question(
        id="meter-9",
        level=1,
        danger=True,
        outcome="say what an ampere or ohms range does across the mains",
        numbers=lambda draw, supply: {"plan": draw.pick(tuple(SHORTS))},
        ask="{plan} What is true, on {supply}?",
        kind=Choice(lambda n: _short_options(n.plan)),
        facts={"truth": _truth},
        nudges=(
            "How many ohms lie between the two leads of the meter then?",
            "Follow the current from one pole through the meter to the other, jack by jack.",
        ),
        working="{truth} Stop, and say so aloud. Neither range ever meets the mains. Ohms are for "
        "what is unplugged and proved dead. Amperes are read by a plug-in instrument made for it, "
        "with all covers closed, where a competent person wants it.",
    ),
)

# --- rehearse, wait ----------------------------------------------------------------------------

MOST_VOLTS = 24.0  # rule of this course; IEC 60364-4-41 draws its own limits
BIN_VOLTS = (5.0, 12.0, 24.0, 48.0, 110.0)
BIN_LIMITS = (100e-6, 5e-3, 15e-3, 100e-3, 1.0)
BIN_RANGES = (0.2, 2.0, 20.0, 200.0, 600.0)
DROPS, DROPS_STRAY = 2.2, 0.3  # at a tenth of a milliampere: common practice, no source [V]
COUNTS, DIGITS = 2000, 3  # of the display, and what its sheet adds
MOST_OF_DROPS, MOST_OF_DIGITS = 0.05, 0.01  # of a reading that they may hide


def _rehearsal_amps(picked_volts, n):
    return ohms_law.led_current(picked_volts, DROPS, 2 * n.ohms)


def _judge_rehearsal(picked, n):
    supply, most_amps, span = picked
    amps = _rehearsal_amps(supply, n)
    hidden = DROPS_STRAY / (supply - DROPS)
    reading = amps * n.ohms
    digits = DIGITS * span / COUNTS / reading
    return [
        Criterion(
            "no more than the rehearsal's volts",
            supply <= MOST_VOLTS,
            0.3,
            f"{volts(supply)} is within the {volts(MOST_VOLTS)} of this course.",
            "on so many volts a wet hand on a bare joint is no rehearsal any more.",
            "Which volts does this course rehearse on at the most?",
        ),
        Criterion(
            "a bridged dropper spares the LED",
            most_amps <= leds.LIMIT_AMPS,
            0.2,
            f"With the dropper bridged {milliamps(most_amps)} flow at most; the LED stands "
            f"{milliamps(leds.LIMIT_AMPS)}.",
            "",
            "What flows through the LED if both resistors are bridged by a slip?",
        ),
        Criterion(
            "the limit leaves the sound circuit alone",
            most_amps >= 2 * amps,
            0.1,
            f"The sound circuit takes {write(amps, 'current')}, under half of that limit.",
            "",
            "What should flow, and does the limit step in before that?",
        ),
        Criterion(
            "the drops hide no fault",
            hidden <= MOST_OF_DROPS,
            0.2,
            f"The drops of LED and diode are known to {volts(DROPS_STRAY)}, and "
            f"{volts(supply - DROPS)} are left for the resistors.",
            "",
            "How many volts are left for the resistors, and how well are the drops known?",
        ),
        Criterion(
            "the range holds the reading and shows it well",
            reading <= span and digits <= MOST_OF_DIGITS,
            0.2,
            f"{volts(reading)} stand across one resistor; {DIGITS} digits of the range of "
            f"{volts(span)} are "
            f"{write(100 * digits, 'percent', 2)} of the reading.",
            "",
            "Does the reading fit the range, and how much of it are the digits of the sheet?",
        ),
    ]


def _best_rehearsal(n):
    return next(
        (supply, most_amps, span)
        for supply in reversed(BIN_VOLTS)
        for most_amps in BIN_LIMITS
        for span in BIN_RANGES
        if all(criterion.passed for criterion in _judge_rehearsal((supply, most_amps, span), n))
    )


def _rehearsal_working(n):
    best = _best_rehearsal(n)
    said = " ".join(criterion.reply for criterion in _judge_rehearsal(best, n))
    chosen = ", ".join((volts(best[0]), milliamps(best[1]), volts(best[2])))
    return f"{chosen}. {said} A rehearsal shows wiring and values; it shows no heat, no insulation."


SHOWN_SECONDS = 14 * 60.0
# The small ticks are 0.2 min apart, and a point between two is seen to half of one.
READ_SECONDS = 6.0
CURVE_KELVIN, CURVE_AIR_CELSIUS = 40.0, 20.0


def _curve(n):
    return Picture("warm-up", {"time_constant_seconds": n.tau_seconds})


# A closed box that warms slowly: two readings a minute apart, two time constants after the start.
BOX_RISE_KELVIN = 32.0


def _to_come(n):
    """Kelvin that are still to come after so many time constants."""
    left = 1 - heat.celsius_after(2 * n.tau_seconds, 1.0, 1.0, n.tau_seconds, 0.0)
    return BOX_RISE_KELVIN * left / (1 - left)


def _settled_options(n):
    return options(f"""
        right more: No. About {_to_come(n):.0f} K are still to come.
        wrong equal: Yes: two equal readings say that nothing moves any more.
          reply: How much can it move in a minute, and what is one step of the display worth?
          danger: it goes on getting hotter, and nobody looks any more.
        wrong one: Yes: after one time constant a part has settled.
          reply: What share of the rise is there after one of them?
          danger: it goes on getting hotter, and nobody looks any more.
        wrong never: Nobody can say: a warm-up never ends.
          reply: After how many time constants is less than a hundredth still to come?
        wrong third: It takes a third equal reading a minute later, and then it has settled.
          reply: What would a third minute add, beside so long a time constant?
          danger: it goes on getting hotter, and nobody looks any more.
    """)


REHEARSAL = (
    Question(
        id="meter-10",
        level=3,
        marks=3,
        outcome="choose supply, current limit and range for a rehearsal",
        numbers=lambda draw, supply: {"ohms": draw.pick((39e3, 82e3, 120e3))},
        facts={
            "drops_volts": lambda n: DROPS,
            "stray_volts": lambda n: DROPS_STRAY,
            "most_volts": lambda n: MOST_VOLTS,
            "drops_percent": lambda n: 100 * MOST_OF_DROPS,
            "digits_percent": lambda n: 100 * MOST_OF_DIGITS,
            "led_amps": lambda n: leds.LIMIT_AMPS,
        },
        ask="Two resistors of {ohms} each, a diode and a red LED are to be rehearsed in series on "
        "DC. LED and diode together keep {drops_volts}, known to ± {stray_volts:V}; the LED stands "
        "{led_amps:mA}. The meter has 2000 counts and ± 3 "
        "digits, and lies across one resistor. Choose the volts, the current limit of the supply, "
        "at least twice what should flow, and the meter's range, so that the drops hide no more "
        "than {drops_percent} and the three digits no more than {digits_percent}.",
        kind=Parts(
            (
                Field("supply", "voltage", BIN_VOLTS),
                Field("current limit", "current", BIN_LIMITS, "mA"),
                Field("range of the meter", "voltage", BIN_RANGES, "V"),
            ),
            _judge_rehearsal,
            _best_rehearsal,
        ),
        nudges=(
            "Which volts are allowed, what flows then, and what stands across one resistor?",
            "Work out the current of the sound circuit and the volts it makes on one resistor. "
            "Compare the limit with the current and the LED, the ranges with the volts.",
        ),
        working=_rehearsal_working,
    ),
    Question(
        id="meter-11",
        edition=3,
        level=2,
        marks=2,
        outcome="read off a curve when a part has settled",
        numbers=lambda draw, supply: {"tau_seconds": draw.pick((90.0, 120.0, 60.0))},
        picture=_curve,
        ask="This curve was taken on a closed box, from outside. One division across is one "
        "minute, one division up is 10 K. After how many minutes does it count as settled, which "
        "in this course is five time constants?",
        kind=Amount(
            "time",
            "min",
            Road(read_time_constant("tau_seconds", SHOWN_SECONDS), settled()),
            slips=(
                Slip(
                    "gave one time constant",
                    lambda n: n.tau_seconds,
                    "After how many of them is less than a hundredth still to come?",
                    share=0.5,
                    misread=READ_SECONDS,
                ),
            ),
            misread=heat.SETTLED_AFTER * READ_SECONDS,
        ),
        nudges=(
            "Which share of the whole rise is there after one time constant?",
            "Find the height of the whole rise, take 63 % of it, go across to the curve and down. "
            "That is one time constant.",
        ),
        working="The whole rise is 4.75 divisions, and 63 % of it is 3. There the curve "
        "stands after one time constant. {sum}, which is {right}.",
    ),
    Question(
        id="meter-12",
        level=2,
        outcome="say whether two equal readings show that a part has settled",
        numbers=lambda draw, supply: {"tau_seconds": draw.pick((1200.0, 1800.0, 2400.0))},
        facts={
            "rise_kelvin": lambda n: BOX_RISE_KELVIN,
            "first_minutes": lambda n: f"{2 * n.tau_seconds / 60:.0f}",
            "next_minutes": lambda n: f"{2 * n.tau_seconds / 60 + 1:.0f}",
            "tau_minutes": lambda n: f"{n.tau_seconds / 60:.0f}",
        },
        ask="A closed box with a time constant of {tau_minutes} min is warming up. After "
        "{first_minutes} min the display says {rise_kelvin} above the room, after {next_minutes} "
        "min the same, in whole kelvin. Has it settled?",
        kind=Choice(_settled_options),
        nudges=(
            "How many time constants have passed, and what share of the rise is there by then?",
            "After two time constants 86 % of the rise is there. Work out the whole of it.",
        ),
        working="Two time constants have passed, so 86 % of the rise is there and the rest is "
        "still to come. In one minute it moves less than the display can show. Five time "
        "constants, or readings a time constant apart, decide.",
    ),
)

# --- compare, find the part --------------------------------------------------------------------

APART = (
    # predicted, read, and the standard uncertainty of each [V]
    (10.85, 11.41, 0.18, 0.07),
    (8.40, 7.62, 0.14, 0.06),
    (12.90, 13.20, 0.15, 0.08),
)


def _apart_numbers(draw, supply):
    names = ("predicted_volts", "reading_volts", "predicted_u_volts", "reading_u_volts")
    return dict(zip(names, draw.pick(APART), strict=True))


APART_ROAD = Road(
    given("reading_volts", called="the reading"),
    apart_from("predicted_volts"),
    in_uncertainties(
        Road(given("predicted_u_volts"), combined_with(Road(given("reading_u_volts")), "voltage"))
    ),
)


def _called_agreement(value, n):
    if value <= uncertainty.COVERAGE < APART_ROAD.value(n):
        return "who takes this for agreement goes on with a circuit in which something is wrong."
    return None


def _verdict(n):
    beyond = APART_ROAD.value(n) > uncertainty.COVERAGE
    if beyond:
        return "That is more than 2: something is wrong. Stop, and look for it."
    return "That is within 2: reading and prediction agree."


# What the rows of a log say of each build, in combined uncertainties: 24 V, two of 100 kΩ.
ROWS = (
    "volts on the first resistor",
    "volts on the second resistor",
    "volts on LED and diode",
    "current",
    "volts of the supply",
)
PATTERNS = {
    "short": (-53.0, 53.0, 0.4, 33.0, -0.3),
    "decade": (-43.0, 43.0, -0.6, -27.0, 0.5),
    "turned": (-53.0, -53.0, 125.0, -33.0, 0.2),
    "supply": (-5.6, -6.1, -0.2, -3.8, -17.0),
    "one row": (0.3, -0.9, 0.5, -33.0, 0.1),
}
CAUSES = {
    "short": ("The first resistor is short.", "What would the current do then?"),
    "decade": ("The second resistor has ten times its printed ohms.", "What would the current do?"),
    "turned": ("The diode stands the other way round.", "Where would all of the volts be?"),
    "supply": ("The supply stands lower than was planned.", "Which row would show that by itself?"),
    "one row": (
        "The current range does not read: its fuse or its jack.",
        "Which rows would agree all the same?",
    ),
}
EXPLAINED = {
    "short": "No volts on the first, all of them on the second, and twice the current: the first "
    "one is a piece of wire.",
    "decade": "The volts have moved from the first to the second, and the current is far too low: "
    "the second has many more ohms than it should.",
    "turned": "All of the volts stand on LED and diode, none on the resistors, and nothing flows: "
    "one of the two blocks.",
    "supply": "Every row that depends on the supply is low, and so is the supply itself.",
    "one row": "Four rows agree, and a sound circuit with these volts on its resistors cannot have "
    "no current. So it is the meter: repeat this row with another one.",
}


@cache
def _cause_options(case):
    return tuple(
        Option(key, text, right=key == case, reply="" if key == case else asks)
        for key, (text, asks) in CAUSES.items()
    )


# Two resistors that bear one print, and the volts that are read on each.
READ_ON_BOTH = ((82e3, 19.8, 1.96), (100e3, 19.8, 2.02), (120e3, 5.13, 16.7))


def _both_numbers(draw, supply):
    names = ("printed_ohms", "first_volts", "second_volts")
    return dict(zip(names, draw.pick(READ_ON_BOTH), strict=True))


COMPARE = (
    Question(
        id="meter-13",
        level=2,
        marks=2,
        outcome="say how many combined uncertainties lie between reading and prediction",
        numbers=_apart_numbers,
        facts={"verdict": _verdict},
        ask="On the rehearsal {predicted_volts:4} was predicted, with a standard uncertainty of "
        "{predicted_u_volts:V}. The meter shows {reading_volts:4}; its own standard uncertainty is "
        "{reading_u_volts:V}. How many combined standard uncertainties lie between the two?",
        kind=Amount("ratio", "", APART_ROAD, danger=_called_agreement),
        nudges=(
            "How far do they lie apart, and how uncertain are both together?",
            "Combine the two uncertainties by their squares. Divide the difference by that.",
        ),
        working="{sum}. {verdict}",
    ),
    Question(
        id="meter-14",
        level=3,
        marks=2,
        outcome="find the likeliest cause from a chart of differences",
        numbers=lambda draw, supply: {"case": draw.pick(tuple(PATTERNS))},
        picture=lambda n: Picture("residuals", {"rows": ROWS, "values": PATTERNS[n.case]}),
        ask="A rehearsal on 24 V DC: two resistors of 100 kΩ, a diode and an LED in series. The "
        "chart has a row for each reading: how many combined uncertainties it lies below or above "
        "its prediction. Which cause fits all rows?",
        kind=Choice(lambda n: _cause_options(n.case)),
        facts={"explained": lambda n: EXPLAINED[n.case]},
        nudges=(
            "Which rows lie within two, and which of the others go up, and which down?",
            "Take each cause and ask of every row: up, down, or as it was? One cause fits all.",
        ),
        working="{explained}",
    ),
    Question(
        id="meter-15",
        level=2,
        marks=2,
        outcome="work back from two readings to the ohms of a part",
        numbers=_both_numbers,
        ask="Two resistors in series, on both of which {printed_ohms} is printed. On the rehearsal "
        "{first_volts} is read on the first and {second_volts} on the second. Take the first as it "
        "is printed. How many ohms has the second?",
        kind=Amount(
            "resistance",
            "kΩ",
            Road(
                given("second_volts", called="the volts on the second"),
                ohms_at(Road(given("first_volts"), over("printed_ohms", called="the current"))),
            ),
        ),
        nudges=(
            "What do the two have in common, one after the other?",
            "The first gives the current: volts over ohms. The volts of the second over that are "
            "its ohms.",
        ),
        working="The current is the same in both. {sum}. On the part stands something else: a "
        "wrong part, or one that was read wrong.",
    ),
    Question(
        id="meter-16",
        level=2,
        outcome="put in order what is done when one reading disagrees",
        ask="One reading of the rehearsal disagrees, all others agree. Put what is done now in "
        "order, the first on top.",
        kind=Order("""
            right stop: Switch the rehearsal supply off, and write the reading down as it is.
            right look: Look at leads, jack, knob and range.
              reply: Is the supply off, and is the odd reading on paper, before anybody moves a
                lead?
            right repeat: Take the same reading once more.
              reply: What might have been wrong with leads or knob the first time?
            right swap: Take it with another meter.
              reply: Would the first meter say the same twice?
            right believe: Believe it, and look for the part that explains every row.
              reply: Can it still be the meter?
            right anew: After the repair, take all readings anew.
              reply: What has been found by then?
        """),
        nudges=(
            "What costs nothing, and what can no longer be undone?",
            "Go from the hand to the meter, from there to the part; the new log comes last.",
        ),
        working="Stop, look at leads and knob, repeat, swap the meter, then believe what it says. "
        "Nobody takes the mean of a right and a wrong reading, and none is struck out.",
    ),
)

# --- decide ------------------------------------------------------------------------------------

# Least ohms by the plan, and the limits of the meter there; the band comes out just below a tenth
# of a kilo-ohm, so that nobody who rounds falls below it.
LEAST_AND_LIMITS = ((313e3, 10.3e3), (377e3, 12.9e3), (446e3, 15.5e3))


def _least_numbers(draw, supply):
    return dict(zip(("least_ohms", "limits_ohms"), draw.pick(LEAST_AND_LIMITS), strict=True))


GUARD_ROAD = Road(
    given("least_ohms"),
    guarded(Road(given("limits_ohms"), standard_of_limits("resistance"), expanded("resistance"))),
)


def _too_low(value, n):
    if value < GUARD_ROAD.value(n):
        return "a string that is accepted so low may have fewer ohms than the plan asks for."
    return None


# What the rehearsal showed, and what has to be done before anything else.
FAILED = {
    "On the rehearsal twice the predicted current flowed, and the LED was bright.": options("""
        right not on: Nothing goes on the mains: the supply is switched off first.
          reply: What would the mains drive through what is left?
          danger: on the mains what is left has four times its heat, and it can burn.
        right both: Find which resistor is short, and replace both.
          reply: Which of the two carried the current of the other?
          danger: with one resistor short the other one burns on the mains.
        right again: Take all readings of the rehearsal anew.
          reply: What did the old log prove of the new part?
          danger: a second fault stays hidden, and meets the mains.
        wrong brighter: Keep it so, since the LED is brighter than planned.
          reply: Which resistor has all of the volts now?
          danger: a brighter light is the sign of a fault, and on the mains it burns.
        wrong moment: Put it on the mains for a moment, to see whether it really gets hot.
          reply: How long does it take to touch a live part?
          danger: it is live at once and can kill, and what is left of the string can burn.
    """),
    "On the rehearsal the LED stayed dark, and all of the volts stood on LED and "
    "diode.": options("""
        right not on: Nothing goes on the mains: it stays dark there and is live.
          reply: What does a dark light say of the wires behind it?
          danger: it would be dark and live. Whoever touches it can be killed.
        right turn: Test LED and diode both ways, with no supply, and turn what stands wrong.
          reply: Which parts let current pass one way only?
          danger: in reverse a part meets the whole crest of the mains.
        right again: Take all readings of the rehearsal anew.
          reply: What did the old log prove of the circuit as it is now?
          danger: a second fault stays hidden, and meets the mains.
        wrong more: Turn the supply up beyond the 24 V until it glows.
          reply: How many volts stand a reverse LED, and a wet hand?
          danger: it takes away what makes a rehearsal harmless.
        wrong mains: Try it on the mains, which has both half-cycles.
          reply: In which half-cycle would the LED be pushed backwards?
          danger: it is live and can kill, and the LED can burst.
    """),
    "On the rehearsal one resistor had a third of the volts it should have, and a colleague wants "
    "the pot tonight.": options("""
        right not on: Nothing goes on the mains tonight, whoever waits for it.
          reply: What does haste change about the readings?
          danger: on the mains it can kill or burn, and haste is how faults get there.
        right ohms: With no supply, measure both resistors one by one.
          reply: How is a resistor with too few ohms found?
          danger: a part with too few ohms takes the others' share, and they burn.
        right again: After the repair, take all readings of the rehearsal anew.
          reply: What did the old log prove of the new part?
          danger: a second fault stays hidden, and meets the mains.
        wrong note: Write “agrees, nearly” in the log, and tell the colleague.
          reply: How many combined uncertainties is that?
          danger: the next person trusts the log, and connects it.
        wrong fuse: Fit a smaller fuse, so that a fault cannot hurt.
          reply: How many milliamperes flow in this fault, and what opens at that?
          danger: no fuse sees it, and it saves nobody who touches it.
    """),
}


def _to_do(n):
    return " ".join(option.text for option in FAILED[n.shown_by] if option.right)


# A reading that seems to say dead, and what has to follow.
DEAD = {
    "A two-pole tester was proved, and then it shows nothing between all pairs of pins of the "
    "pulled plug.": options("""
        right again: The tester is proved once more, before a hand goes to the pins.
        wrong hand: The hand may go there: the plug is out, and the tester agrees.
          reply: What can have happened to the tester since it was proved?
          danger: a capacitor behind the pins can hold its charge, and the tester may have failed.
        wrong light: A look at the pilot light, which is dark, settles it.
          reply: What can a dark light hide?
          danger: dark never means dead. It can kill.
        wrong short: A screwdriver across the pins lets off what may be left.
          reply: With what is a charge let off?
          danger: a spark throws metal into hand and eyes. A resistor or tool made for it is used.
    """),
    "A multimeter on AC volts shows 0.0 V at a pot, and the plug is in. Its dimmer is at off.": (
        options("""
        right plug: The plug is pulled first: this reading proves nothing.
        wrong off: The hand may go there: the dimmer is off and the meter agrees.
          reply: What does a dimmer at off let through, and which wires count as live?
          danger: off is not off, and both wires count as live. It can kill.
        wrong range: The next lower range is taken, and if that shows 0.0 V too, all is well.
          reply: Which faults show zero on every range?
          danger: a blown fuse, a flat battery or a wrong jack shows zero on anything live.
        wrong dc: DC volts are taken as well, and if both show zero, all is well.
          reply: Which faults of a meter show zero on AC and on DC?
          danger: a meter that has failed shows zero twice. What is live can kill.
    """)
    ),
    "A two-pole tester was proved, and shows nothing between line and neutral of a wired-in "
    "heater, which is locked off.": options("""
        right others: Line to earth and neutral to earth come next, and then the tester again.
        wrong hand: The hand may go there: line to neutral is where the volts are.
          reply: With a broken neutral, what does that pair show?
          danger: with a broken neutral this pair shows nothing while line is live. It can kill.
        wrong pen: A pen with one pole, held to the line, settles it.
          reply: When does such a pen stay dark on a live wire?
          danger: it can stay dark on a live wire. It can kill.
        wrong lock: The lock is on, so that no more tests are needed.
          reply: Who says that the right isolator was locked?
          danger: the wrong circuit may have been locked off. It can kill.
    """),
}


def _follows(n):
    return next(option.text for option in DEAD[n.read] if option.right)


DECIDE = (
    Question(
        id="meter-17",
        level=3,
        marks=2,
        outcome="accept or reject with a guard band",
        numbers=_least_numbers,
        ask="The plan asks for a string of no fewer than {least_ohms}. The limits of the ohms "
        "range there are ± {limits_ohms}. It is accepted only if its reading lies above the least "
        "by a guard band as wide as the reading's expanded uncertainty, k = 2. What is the lowest "
        "reading that is accepted?",
        kind=Amount(
            "resistance",
            "kΩ",
            GUARD_ROAD,
            danger=_too_low,
            within=0.005,
            below=0,
        ),
        nudges=(
            "How uncertain is one reading, and on which side of the least is it safe?",
            "From the limits to the standard uncertainty, widen that by k, and put it on the safe "
            "side of the least.",
        ),
        working="{sum}. A reading between the least and this one is not accepted, although it may "
        "be sound: then a better meter decides, or another part (JCGM 106, 8.3).",
    ),
    Question(
        id="meter-18",
        level=3,
        marks=3,
        outcome="find what is wrong in an argument about readings",
        ask="Find the mistakes. Somebody reports from the bench. Choose every sentence that is "
        "wrong.",
        kind=ChooseAll("""
            wrong digits: “Three digits of a display that ends in hundredths of a volt are 0.03 V.”
              reply: What is one step of the last place worth?
            right sum: “Two uncertainties of 0.1 V that know nothing of each other make 0.2 V.”
              reply: Do both stray to the same side each time?
            right after: “I work the prediction out after the reading. That saves time, for then
                they agree.”
              reply: What can such a prediction still find?
              danger: it finds no fault at all, and the fault meets the mains.
            wrong twenty: “With k = 2 about one of 20 sound readings lies outside, so I repeat it.”
              reply: How many of a hundred lie within two standard uncertainties?
            right equal: “Two readings a minute apart were equal, so the box had settled.”
              reply: How far can it move in a minute when its time constant is half an hour?
              danger: it went on getting hotter, and nobody looked any more.
            right allowed: “All rows of the rehearsal agree, so it may be connected.”
              reply: What does a rehearsal show of heat, insulation and distances?
              danger: it shows none of them. A competent person checks it first, under local rules.
            wrong border: “A reading that lies on the limit itself is not accepted.”
              reply: How often does the truth lie beyond, if the reading lies on the limit?
        """),
        nudges=(
            "Which sentence claims more than its reading can show?",
            "Take each alone: combine, widen, wait, compare, decide. What does this lesson ask for "
            "there?",
        ),
        working="Squares add, so 0.1 V and 0.1 V make 0.14 V. A prediction comes first. Settled is "
        "five time constants. And agreement allows nothing: plan only, not permission to build or "
        "connect.",
    ),
    Question(
        id="meter-19",
        level=2,
        marks=2,
        danger=True,
        outcome="say what follows when a rehearsal has failed",
        numbers=lambda draw, supply: {"shown_by": draw.pick(tuple(FAILED))},
        ask="{shown_by} What has to be done? Later it may meet {supply}.",
        kind=ChooseAll(lambda n: FAILED[n.shown_by]),
        facts={"to_do": _to_do},
        nudges=(
            "Which of these could go wrong on the mains, and which find the fault?",
            "First what must not happen, then the part, then the whole log.",
        ),
        working="{to_do} A failed rehearsal is a success: the fault was found where it hurts "
        "nobody.",
    ),
    Question(
        id="meter-20",
        edition=2,
        level=2,
        danger=True,
        outcome="say what has to follow one dead reading",
        numbers=lambda draw, supply: {"read": draw.pick(tuple(DEAD))},
        ask="{read} The supply is {supply}. What comes next?",
        kind=Choice(lambda n: DEAD[n.read]),
        facts={"follows": _follows},
        nudges=(
            "Which step of lesson 01 has not been done yet?",
            "Isolate, lock off, prove the tester, prove dead in all pairs, prove the tester again. "
            "Where in this order are they?",
        ),
        working="{follows} The order is: isolate, lock off, prove the tester, prove dead between "
        "all pairs, prove the tester again. One reading is one step of it, and no more.",
    ),
)

QUESTIONS = (*RECALL, PREDICT, *PLAN, *METERS, *REHEARSAL, *COMPARE, *DECIDE)
