"""Lesson 04: heat in the dropper, the part that stands it, and what it costs.

One dropper on the learner's own mains, no dimmer: that is the business of lesson 05. Several
circuits appear, because whether the dropper works on one half of the wave or on both decides.
"""

from functools import cache
from itertools import pairwise, product
from math import sqrt
from types import SimpleNamespace

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
from helpers.exercises.roads.steps.general import given, knowing, label, over
from helpers.exercises.roads.steps.heat import (
    HALVED_TWICE,
    MEAN_BY_RMS,
    alike_in_series,
    box_rise,
    doubled,
    half_wave_rms,
    halved,
    in_step_with,
    of_rating,
    own_rise,
    per_cent_of,
    shared_heat,
    shared_volts,
    slope_left,
    squared_over,
    warmer_than,
    whole_year,
)
from helpers.exercises.roads.steps.mains import (
    HALF_CREST,
    crest,
    half_wave_mean,
    per_cent_more,
    percent_up,
)
from helpers.exercises.roads.steps.ohms import bands, dc_current, less_drop
from helpers.exercises.roads.steps.safety import trusted_too_far
from helpers.physics import energy, faults, heat, heater, leds, mains, ohms_law, ratings, resistors
from helpers.physics.operating_point import operating_point
from helpers.quantities.writing import milliamps, ohms
from helpers.sizing import rules

LESSON = "04"
TITLE = "Where the heat goes"

MARGIN = 1 / rules.HEALTHY_SHARE
KNEE_CELSIUS, ZERO_CELSIUS = ratings.KNEE_CELSIUS, ratings.ZERO_CELSIUS
DROPPER_OHMS = (33e3, 39e3, 47e3, 56e3, 68e3, 82e3, 100e3, 120e3)
UNTOLD_OHMS = (33e3, 39e3, 43e3, 56e3, 68e3, 82e3, 100e3, 120e3)  # the lesson prints that of 47 k
HALF_WAVE = "series_diode"
SUPPLY = "mains.Supply({supply.volts_rms:g}, {supply.hertz:g})"
HIGHEST = 'mains.highest(mains.SUPPLIES["{supply.name}"])'


def working_point(n, circuit=HALF_WAVE):
    return operating_point(circuit, n.supply, ohms=n.ohms)


def point_code(field, circuit=HALF_WAVE, built=SUPPLY, times=""):
    return f'operating_point("{circuit}", {built}, ohms={times}{{ohms:g}}).{field}'


# Without the turn of `label`: these questions do ask for some per cent more.
MAINS_VOLTS = given(lambda n: n.supply.volts_rms, "voltage", "the volts of the mains")


def burns(right, share=0.55):
    """A part chosen by the rule for half of its heat has nothing left to spare."""
    return lambda value, n: (
        "a part chosen for so little heat gets too hot. It browns, drifts, and can set fire to "
        "what touches it."
        if value < share * right(n)
        else None
    )


def both_halves_watts(n):
    """The quick sum for a dropper that works all the time."""
    return ohms_law.power(volts=n.supply.volts_rms, ohms=n.ohms)


def told_apart(resistances, supply):
    """Leave out as many kilo-ohms as volts: there every slip has the same digits."""
    return [value for value in resistances if abs(value / (1e3 * supply.volts_rms) - 1) > 0.01]


def dropper_numbers(draw, supply):
    return {"ohms": draw.pick(told_apart(DROPPER_OHMS, supply))}


def untold_numbers(draw, supply):
    return {"ohms": draw.pick(told_apart(UNTOLD_OHMS, supply))}


# --- look back ---------------------------------------------------------------------------------

DONE = {
    "isolated": "The pot is unplugged and its lead cannot be plugged in by anybody else.",
    "tester proved": "The pot is isolated, and the tester has just shown voltage on a proving "
    "unit.",
    "proved dead": "The pot is isolated, the tester was tried on a proving unit, and then it "
    "showed nothing at the pot's terminals.",
}


def _next_step_options(n):
    unproved = "nothing is proved yet: a broken tester shows nothing, too. Touching now can kill."
    try_it, test_it = n.done in ("isolated", "proved dead"), n.done == "tester proved"
    return (
        Option(
            "try the tester",
            "Try the tester on a proving unit.",
            right=try_it,
            reply="Before and after: a tester that shows nothing counts only between two tries."
            if try_it
            else "It has just been tried. What is it for now?",
        ),
        Option(
            "test the terminals",
            "Test at the pot's terminals, and between each of them and earth.",
            right=test_it,
            reply="Just now the tester is known to work."
            if test_it
            else "Is it known, at this moment, that the tester itself works?",
            danger="" if n.done == "proved dead" else unproved,
        ),
        *options(f"""
            wrong open and touch: Open the cover and start work.
              reply: What has been proved so far, and with a tester that works for certain?
              danger: {unproved}
            wrong watch the light: See whether the pilot light stays dark for a minute.
              reply: Which faults make a light dark while the wires are live?
              danger: a dark light may be a broken light. Touching then can kill.
        """),
    )


RECALL = (
    Question(
        id="heat-recall-1",
        edition=2,
        role="recall",
        outcome="name the next step of proving dead",
        numbers=lambda draw, supply: {"done": draw.pick(tuple(DONE))},
        facts={"situation": lambda n: DONE[n.done]},
        ask="From lesson 01: {situation} What comes next?",
        kind=Choice(_next_step_options),
        nudges=(
            "Could the tester be broken without anybody knowing?",
            "Prove the tester, prove dead, prove the tester again.",
        ),
        working="Isolate and keep it so, prove the tester, prove dead, prove the tester again. "
        "Only then is a tester that shows nothing worth anything.",
    ),
    Question(
        id="heat-recall-2",
        edition=3,
        role="recall",
        outcome="find the current behind a dropper on a bench supply",
        numbers=lambda draw, supply: {
            "volts": draw.pick((9.0, 12.0, 24.0)),
            "led_volts": 2.0,
            "ohms": draw.pick((1_800.0, 2_200.0, 3_300.0)),
        },
        ask="From lesson 02: a red LED ({led_volts}) sits behind {ohms} on a bench supply of "
        "{volts} DC. What current flows?",
        kind=Amount(
            "current", "mA", Road(given("volts"), less_drop("led_volts"), dc_current("ohms"))
        ),
        nudges=("What voltage is left for the resistor? Divide it by the kilo-ohms.",),
    ),
    Question(
        id="heat-recall-3",
        edition=2,
        role="recall",
        outcome="find the mean current of an LED on the mains",
        numbers=dropper_numbers,
        ask="From lesson 03: on your mains, {supply}, an LED sits behind a diode and {ohms}. What "
        "current does it get, averaged over the whole cycle?",
        kind=Amount(
            "current",
            "mA",
            Road(
                label(),
                crest(),
                over("ohms", called="the current at the crest"),
                half_wave_mean(),
            ),
            exact=lambda n: working_point(n).led_amps_mean,
        ),
        nudges=(
            "Which of the three numbers of a wave makes light?",
            "The mean of a half-wave is 0.45 of the rms on the label. Divide by the ohms.",
        ),
        working="{sum}. With the drops of LED and diode it is {right}.",
        code=point_code("led_amps_mean"),
    ),
)

PREDICT = Question(
    id="heat-predict",
    role="predict",
    outcome="commit to an expectation",
    ask="The workshop first planned a light whose LED gets 10\u00a0mA. Now it wants 1\u00a0mA, a "
    "tenth, and takes a dropper of ten times the ohms. The mains stays {supply}. What happens to "
    "the heat in the dropper?",
    kind=Choice("""
        wrong hundredth: It falls to a hundredth: heat goes with the current squared.
        wrong tenth: It falls to a tenth.
        wrong same: It stays about the same: more ohms make up for less current.
        wrong more: It rises: more ohms, more heat.
    """),
    working="it falls to a tenth. The current squared is a hundredth, but it now flows through ten "
    "times the ohms. Or with volts: the mains is the same, and V² is divided by ten times R.",
)

# --- power, and which volts --------------------------------------------------------------------

POWER = (
    Question(
        id="heat-1",
        edition=3,
        outcome="find the rms current of a half-wave",
        numbers=dropper_numbers,
        ask="Your dropper: {ohms} behind a diode on {supply}. The first step is yours: what rms "
        "current flows through it?",
        kind=Amount(
            "current",
            "mA",
            Road(label(), half_wave_rms(), over("ohms")),
            exact=lambda n: working_point(n).branch_amps_rms,
            slips=(
                Slip(
                    "halved once too often",
                    lambda n: n.supply.volts_rms / sqrt(2) / n.ohms / 2,
                    "How many half-cycles of two get through?",
                ),
            ),
            measure="rms",
            crest=2,
        ),
        nudges=(
            "What is the rms of a wave that flows only half of the time?",
            "Take 0.707 of the rms on the label, then divide by the kilo-ohms.",
        ),
        working="{sum}. With the drops of LED and diode it is {right}.",
        code=point_code("branch_amps_rms"),
    ),
    Question(
        id="heat-2",
        edition=2,
        outcome="say why heat needs the rms value",
        ask="Why this step? In the worked example the rms of the half-wave was squared, not its "
        "mean, although the mean is right for the light. Why?",
        kind=Choice("""
            right mean of squares: Heat goes with the voltage squared, and rms is made from squares.
            wrong average voltage: The rms is the average voltage of the wave, and the mean is not.
              reply: Which of the two is the plain average? What is averaged for the other?
            wrong light: The LED's light goes with the rms as well, so everything agrees.
              reply: What did lesson 03 say about light: mean or rms?
            wrong safety: It is only a safety margin: the rms is the larger of the two, and larger
                is safer.
              reply: Is the heat itself larger than the sum with the mean says, or only our guess of
                it?
        """),
        nudges=(
            "If the voltage is doubled for an instant, how much more heat is that?",
            "Square first, then average: which of the three numbers is made in that order?",
        ),
        working="Twice the voltage is four times the heat at that instant. So squares have to be "
        "averaged, and the rms is the root of that average. Light goes with the current itself, "
        "so there the plain mean is right.",
    ),
    Question(
        id="heat-3",
        edition=3,
        marks=2,
        outcome="find the heat in a dropper on a half-wave",
        numbers=untold_numbers,
        ask="All steps are yours: how much heat does a dropper of {ohms} make behind a diode on "
        "{supply}?",
        kind=Amount(
            "power",
            "W",
            Road(
                label(), knowing(squared_over("ohms"), MEAN_BY_RMS), knowing(halved(), HALVED_TWICE)
            ),
            exact=lambda n: working_point(n).resistor_watts,
            slips=(
                Slip(
                    "multiplied a crest by an rms value",
                    lambda n: mains.peak(n.supply.volts_rms) / n.ohms * n.supply.volts_rms,
                    "How long does the crest last?",
                ),
                Slip(
                    "gave the heat of the LED",
                    lambda n: 2.0 * mains.mean(n.supply.volts_rms) / 2 / n.ohms,
                    "Which part has nearly all of the volts?",
                ),
            ),
            danger=burns(lambda n: working_point(n).resistor_watts),
        ),
        nudges=(
            "Which voltage, squared and divided by the ohms, gives heat?",
            "Take the rms of the half-wave, square it, divide by the ohms.",
        ),
        working="0.707 of the label, squared, is half of the label squared. {sum}. With the drops "
        "of LED and diode it is {right}.",
        code=point_code("resistor_watts"),
    ),
)

# --- half a wave, and a tenth of the current -----------------------------------------------------

BOTH_HALVES = {
    "diode_across": "a dropper and an LED, with a silicon diode across the LED the other way round",
    "bridge": "a dropper in front of a bridge of four diodes, which feeds the LED",
    "resistor_only": "a dropper and a bare LED, no diode at all",
}

CIRCUIT_OPTIONS = options("""
    wrong series diode: Dropper, LED and a diode, all in series.
      reply: What flows in the half-cycle that the diode stops?
    wrong plug turned: Dropper, LED and a diode in series, and the plug turned round in its socket.
      reply: Which half-cycle passes now, and how many of them?
    right bare LED: Dropper and LED, no diode at all.
      reply: In reverse a bare LED breaks down at a few volts. Does the dropper rest then?
      danger: a dropper rated for half the heat overheats when the LED breaks down in reverse.
    right diode across: Dropper and LED, with a diode across the LED the other way round.
      reply: Where does the current go in the half-cycle in which the LED is dark?
      danger: a dropper rated for half the heat overheats here: the diode across the LED gives the
        other half-cycle a way.
    right bridge: Dropper, and a bridge of four diodes that feeds the LED.
      reply: For how many half-cycles of each cycle does current flow into a bridge?
      danger: a dropper rated for half the heat overheats in front of a bridge.
    right two LEDs: Dropper and two LEDs side by side, back to back.
      reply: When one LED is dark, does the other one let current through?
      danger: a dropper rated for half the heat overheats here: one LED always conducts.
""")

CURRENT_CHANGES = (
    (0.010, 0.001),
    (0.012, 0.0015),
    (0.008, 0.002),
    (0.005, 0.0005),
    (0.010, 0.0025),
)


def _change_numbers(draw, supply):
    before, after = draw.pick(CURRENT_CHANGES)
    resistance = leds.dropper_for_mean(HALF_WAVE, supply, before)
    loss = operating_point(HALF_WAVE, supply, ohms=resistance).resistor_watts
    return {"before_amps": before, "after_amps": after, "watts": float(f"{loss:.3g}")}


def _percent_of_pot(light_watts, hours):
    """What a light takes in a year, beside a pot that is forgotten for some hours."""
    return 100 * light_watts * energy.HOURS_PER_YEAR / (heater.POT_WATTS * hours)


# Here a ratio turned round, or taken from a hundred, comes back to itself or to its double.
CROSSINGS = (100 / 3, 50.0, 100 / 2**0.5, 100.0, 100 * 2**0.5)


YEAR_BY_POT = Road(
    label(),
    squared_over("ohms"),
    knowing(halved(), HALVED_TWICE),
    whole_year(),
    per_cent_of(lambda n: n.pot_watts * n.hours),
)


COST_OHMS = tuple(ohms for ohms in DROPPER_OHMS if ohms != 100e3)  # a one hides its own slips
HOURS_LEFT_ON = (20.0, 40.0, 70.0)


def _exact_per_cent(n):
    return _percent_of_pot(working_point(n).resistor_watts, n.hours)


def _cost_numbers(draw, supply):
    """Draw a light that costs enough to be told from its share of both together."""
    told = []
    for resistance in told_apart(COST_OHMS, supply):
        fixed = {"ohms": resistance, "pot_watts": heater.POT_WATTS}
        for hours in clear(YEAR_BY_POT, supply, "hours", HOURS_LEFT_ON, _exact_per_cent, **fixed):
            share = _percent_of_pot(supply.volts_rms**2 / resistance / 2, hours)
            if share > 10 and all(abs(share / crossing - 1) > 0.12 for crossing in CROSSINGS):
                told.append({**fixed, "hours": hours})
    return draw.pick(told)


# What this circuit alone makes people do: nothing in it gives the dropper a rest.
NO_REST = tuple(
    Turn(name, asks, lambda value, below, n, part=part: part * value * value / below)
    for name, asks, part in (
        ("halved it as behind a series diode", "Which part blocks a half-cycle here?", 0.5),
        ("took 0.707 for the half", "Does the dropper rest for a half-cycle here?", 0.5**0.5),
        ("halved the volts", "Is there anything in this circuit that halves them?", 0.25),
        ("doubled for the two half-cycles", "Is the rms of a whole wave that of one half?", 2),
        ("multiplied by the four diodes", "Which part makes the heat that is asked for?", 4),
    )
)


HALF_OR_WHOLE = (
    Question(
        id="heat-4",
        edition=2,
        level=2,
        marks=2,
        outcome="say in which circuits the dropper works on both half-cycles",
        numbers=dropper_numbers,
        facts={"full_watts": both_halves_watts},
        ask="On {supply}, V² / R for {ohms} is {full_watts:W}. In which of these circuits does the "
        "dropper make nearly all of that, not half?",
        kind=ChooseAll(CIRCUIT_OPTIONS),
        nudges=(
            "In each circuit, is there a way for the current in the other half-cycle?",
            "Only a part that blocks for a whole half-cycle gives the dropper a rest. An LED alone "
            "does not block: it breaks down.",
        ),
        working="Only a diode in series blocks a half-cycle; turning the plug only changes which. "
        "A bare LED breaks down, a diode across it conducts, a bridge and two LEDs back to back "
        "use both half-cycles: the dropper never rests.",
    ),
    Question(
        id="heat-5",
        edition=3,
        level=2,
        marks=2,
        outcome="find the heat in a dropper that works on both half-cycles",
        numbers=lambda draw, supply: {
            "circuit": draw.pick(tuple(BOTH_HALVES)),
            **untold_numbers(draw, supply),
        },
        facts={"built": lambda n: BOTH_HALVES[n.circuit]},
        ask="Another circuit: {built}. The dropper has {ohms}, the mains is {supply}. How much "
        "heat does the dropper make?",
        kind=Amount(
            "power",
            "W",
            Road(label(), knowing(squared_over("ohms"), MEAN_BY_RMS, *NO_REST)),
            exact=lambda n: working_point(n, n.circuit).resistor_watts,
            danger=burns(lambda n: working_point(n, n.circuit).resistor_watts),
        ),
        nudges=(
            "Does the dropper ever rest in this circuit?",
            "It works on both half-cycles, so it sees the whole rms of the mains: square it and "
            "divide by the ohms.",
        ),
        working="Current flows in both half-cycles: {sum}. With the drops taken off it is {right}.",
        code=point_code("resistor_watts", "{circuit}"),
    ),
    Question(
        id="heat-6",
        edition=2,
        level=2,
        marks=2,
        outcome="work out the energy of a light in a year, after a change of current",
        numbers=_change_numbers,
        ask="A light gives its LED {before_amps:mA}, and its dropper makes {watts} of heat. A "
        "larger dropper brings the LED down to {after_amps:mA} on the same mains. It is on all "
        "year, 8760 h. How much energy does the new dropper use in the year?",
        kind=Amount(
            "energy",
            "kWh",
            Road(
                given("watts"),
                in_step_with(lambda n: n.after_amps / n.before_amps),
                whole_year(),
            ),
        ),
        nudges=(
            "The volts stay the same and the current falls: how does volts times amperes change?",
            "On the same mains heat falls in step with the current. Multiply by the hours, then "
            "divide by 1000.",
        ),
        working="The heat falls in step with the current: {sum}.",
    ),
    Question(
        id="heat-7",
        edition=3,
        level=3,
        marks=2,
        outcome="weigh the cost of the forgotten pot against that of the pilot light",
        numbers=_cost_numbers,
        ask="The pot takes {pot_watts} and was forgotten for {hours:.0f} h. A pilot light, {ohms} "
        "behind a diode on {supply}, is on all year, 8760 h. A kilowatt-hour costs the same for "
        "both. What does the light's whole year cost, in per cent of what that one forgetting "
        "cost? Count the dropper's heat only.",
        kind=Amount(
            "percent",
            "%",
            YEAR_BY_POT,
            exact=_exact_per_cent,
            slips=(
                Slip(
                    "compared the watts alone",
                    lambda n: _percent_of_pot(both_halves_watts(n) / 2, energy.HOURS_PER_YEAR),
                    "For how many hours is each of them on?",
                    share=0.5,
                ),
                Slip(
                    "compared the hours alone",
                    lambda n: 100 * n.hours / energy.HOURS_PER_YEAR,
                    "How many watts does each of them take?",
                ),
            ),
        ),
        nudges=(
            "If a kilowatt-hour costs the same for both, what decides the cost?",
            "Power times hours for each of the two. Divide the light's by the pot's, and take it "
            "in percent.",
        ),
        working="The pot: {pot_watts} × {hours:.0f} h. The light: {sum} of it; with the drops of "
        "LED and diode {right}.",
        code="100 * energy.kilowatt_hours(" + point_code("resistor_watts") + ", "
        "energy.HOURS_PER_YEAR) / energy.kilowatt_hours({pot_watts:g}, {hours:g})",
    ),
)

# --- a part that stands it -----------------------------------------------------------------------


def _worst_watts(n):
    return operating_point(HALF_WAVE, mains.highest(n.supply), ohms=n.ohms).resistor_watts


ADDED_TO_WATTS = Turn(
    "added the per cent to the watts",
    "If the volts rise by so many per cent, by how much does their square?",
    lambda value, more, n: value * (1 + more / 100) ** 0.5,
)


# With these, two digits hold the whole answer: none can be rounded up to more than is left.
DERATING_CELSIUS = (95.5, 104.0, 121.0)

RATING = (
    Question(
        id="heat-8",
        edition=3,
        level=2,
        marks=2,
        outcome="find the rating that a dropper needs",
        numbers=untold_numbers,
        ask="A dropper of {ohms} sits behind a diode on {supply}, which at its highest stands "
        "{up_percent} above its label. By the rule of this course, what must it be rated for at "
        "least? Give the sum, before you look for a size that is sold.",
        kind=Amount(
            "power",
            "W",
            Road(
                MAINS_VOLTS,
                knowing(per_cent_more(percent_up), ADDED_TO_WATTS),
                squared_over("ohms"),
                halved(),
                doubled(),
            ),
            exact=lambda n: MARGIN * _worst_watts(n),
            danger=burns(_worst_watts, share=1.0),
            below=0.005,
        ),
        facts={
            "up_percent": percent_up,
            "sold_watts": lambda n: rules.rating_for(_worst_watts(n)),
        },
        nudges=(
            "What is the highest voltage that the mains may have?",
            "Add the per cent to the volts, work out the heat, then take the rule's factor.",
        ),
        working="{sum}. With the drops of LED and diode it is {right}. Round up, never down. The "
        "next size up of those sold is {sold_watts}. This is the sum for one part. One alone "
        "is no barrier: further down several share it.",
        code="2 * " + point_code("resistor_watts", built=HIGHEST),
    ),
    Question(
        id="heat-9",
        edition=3,
        level=2,
        outcome="derate a resistor for a warm place",
        numbers=lambda draw, supply: {
            "rated_watts": draw.pick((0.5, 1.0, 2.0)),
            "air_celsius": draw.pick(DERATING_CELSIUS),
            "knee_celsius": KNEE_CELSIUS,
            "zero_celsius": ZERO_CELSIUS,
        },
        ask="Beside the heating plate the air reaches {air_celsius}. By its sheet a resistor rated "
        "{rated_watts:W} has its full rating up to {knee_celsius} and nothing left at "
        "{zero_celsius}. What may it turn into heat there?",
        kind=Amount(
            "power",
            "W",
            Road(given("air_celsius"), slope_left(), of_rating("rated_watts")),
            danger=trusted_too_far,
            within=0.005,
        ),
        nudges=(
            "How far is the air from the point where nothing is left?",
            "Divide that distance by the whole length of the slope, and multiply by the rating.",
        ),
        working="{sum}. That is the most it may take; the rule of this course uses half of it. "
        "Many wires and plastics stand no such air: a cooler place is the better answer.",
    ),
)

# --- volts along the body ------------------------------------------------------------------------

STRING_OHMS = (39e3, 47e3, 56e3, 68e3)


def _each_of_three(n):
    return operating_point(HALF_WAVE, n.supply, ohms=3 * n.ohms).resistor_watts / 3


SERIES = (
    Question(
        id="heat-10",
        edition=3,
        outcome="find the crest voltage on each resistor of a string",
        numbers=lambda draw, supply: {"count": draw.pick((3, 4, 5))},
        ask="A dropper is made of {count} equal resistors in series. The mains is {supply}, and at "
        "times {up_percent} higher. What does each of them see at the crest?",
        kind=Amount(
            "voltage",
            "V",
            Road(
                MAINS_VOLTS,
                per_cent_more(percent_up),
                knowing(crest(), HALF_CREST),
                shared_volts("count"),
            ),
            within=0.01,
            measure="peak",
        ),
        facts={"up_percent": percent_up},
        nudges=(
            "What is the crest of the mains when it stands highest?",
            "Add the per cent to the label, multiply by 1.414, and share it equally.",
        ),
        working="{sum} each.",
        code=f"ratings.share_of_string(mains.peak({HIGHEST}.volts_rms), {{count}})",
    ),
    Question(
        id="heat-11",
        edition=3,
        level=2,
        marks=2,
        outcome="read a resistor's bands and find the heat in each of three",
        numbers=lambda draw, supply: {"ohms": draw.pick(STRING_OHMS)},
        picture=lambda n: Picture(
            "resistor bands", {"bands": resistors.bands(n.ohms, tolerance_percent=5.0)}
        ),
        ask="Read the bands, from the left. Three of these stand in series as the dropper, behind "
        "a diode on {supply}. How much heat does each of the three make?",
        kind=Amount(
            "power",
            "W",
            Road(
                label(),
                squared_over(Road(bands("ohms"), alike_in_series(3))),
                halved(),
                shared_heat(3),
            ),
            exact=_each_of_three,
            danger=burns(_each_of_three),
            measure="each",
        ),
        nudges=(
            "What does one resistor have, and what have all together?",
            "Work out the heat of the whole string on a half-wave, then share it equally.",
        ),
        working="{sum} each; with the drops of LED and diode it is {right} each.",
        code=point_code("resistor_watts", times="3 * ") + " / 3",
    ),
)

# --- how warm, how soon --------------------------------------------------------------------------

# Watts, kelvin per watt of the part, outer surface of the closed box in square metres.
BOXES = ((0.2, 80.0, 0.005), (0.4, 110.0, 0.003), (0.5, 80.0, 0.004), (0.5, 90.0, 0.004))
ROOM_CELSIUS = (18.0, 22.0, 26.0)

# Watts, kelvin per watt, time constant in seconds.
WARMING = ((0.30, 160.0, 240.0), (0.40, 140.0, 180.0), (0.50, 130.0, 300.0))


def _box_numbers(draw, supply):
    power, kelvin_per_watt, square_metres = draw.pick(BOXES)
    return {
        "watts": power,
        "each_watt_kelvin": kelvin_per_watt,
        "square_metres": square_metres,
        "room_celsius": draw.pick(ROOM_CELSIUS),
    }


def _settled(n):
    air = n.room_celsius + heat.box_rise_kelvin(n.watts, n.square_metres)
    return heat.final_celsius(n.watts, n.each_watt_kelvin, air)


def _warming_numbers(draw, supply):
    power, kelvin_per_watt, constant = draw.pick(WARMING)
    room = draw.pick(ROOM_CELSIUS)
    first = heat.celsius_after(constant, power, kelvin_per_watt, constant, room)
    final = heat.final_celsius(power, kelvin_per_watt, room)
    return {
        "room": room,
        "constant": constant,
        "first": round(first),
        "allowed": round((first + final) / 2),
        "final": final,
    }


WARM = (
    Question(
        id="heat-12",
        edition=3,
        level=2,
        marks=2,
        outcome="find how warm a part gets in a closed box",
        numbers=_box_numbers,
        facts={"cm2": lambda n: n.square_metres * 1e4, "passed": lambda n: heat.CLOSED_BOX},
        ask="In a closed box with {cm2:.0f} cm² of outer surface a dropper makes {watts:W}, and "
        "nothing else in it gets warm. From the air inside to the room its walls pass {passed:.0f} "
        "W for each square metre and kelvin. The dropper itself gets {each_watt_kelvin} warmer "
        "than its air for each watt. The room is at {room_celsius}. At what temperature does the "
        "dropper settle?",
        kind=Amount(
            "temperature",
            "°C",
            Road(
                given("watts"),
                box_rise("square_metres"),
                warmer_than("room_celsius"),
                own_rise("watts", "each_watt_kelvin"),
            ),
            slips=(
                Slip(
                    "doubled the heat",
                    lambda n: 2 * _settled(n) - n.room_celsius,
                    "The heat of a rating, or the heat that is made?",
                    share=0.5,
                ),
                Slip(
                    "took 63 % of the rise",
                    lambda n: n.room_celsius + 0.63 * (_settled(n) - n.room_celsius),
                    "After one time constant, or when it has settled?",
                    share=0.5,
                ),
                Slip(
                    "gave the rise of the box alone",
                    lambda n: heat.box_rise_kelvin(n.watts, n.square_metres),
                    "Where does the rise start, and how much warmer is the dropper?",
                ),
            ),
        ),
        nudges=(
            "Which air does the dropper feel, and how warm is it?",
            "Room, plus the rise of the box, plus the rise of the part. The box: watts over "
            f"{heat.CLOSED_BOX:.0f} times its surface in square metres.",
        ),
        working="The box, then the room, then the dropper: {sum}.",
        code="heat.final_celsius({watts}, {each_watt_kelvin}, {room_celsius} + "
        "heat.box_rise_kelvin({watts}, {square_metres}))",
    ),
    Question(
        id="heat-13",
        edition=3,
        level=2,
        outcome="judge a temperature that was read while a part still warms up",
        numbers=_warming_numbers,
        facts={
            "room_celsius": lambda n: n.room,
            "minutes": lambda n: n.constant / 60,
            "first_celsius": lambda n: n.first,
            "allowed_celsius": lambda n: n.allowed,
            "early_kelvin": lambda n: n.first - n.room,
            "whole_kelvin": lambda n: round(n.final - n.room),
            "settled_celsius": lambda n: round(n.final),
        },
        ask="Find the mistake. “The room is at {room_celsius}. With the pot unplugged and proved "
        "dead, an electrically skilled person fixed a probe with reinforced insulation to the "
        "dropper and closed the box. Only then was it switched on. The dropper's time constant is "
        "{minutes:.0f} min. After {minutes:.0f} min the probe, read outside the closed box, shows "
        "{first_celsius}. The plastic beside the dropper can stand {allowed_celsius}. So the "
        "plastic is safe.” Which step is wrong?",
        kind=Choice("""
            right not settled: The dropper is still warming up: only 63 % of the rise is there.
            wrong sensor: The probe is too slow: open the box and feel the dropper instead.
              reply: Is the dropper live now? And what would a finger tell about the end of the
                warm-up?
              danger: the dropper is live from end to end. A box is never open while it is live:
                whoever opens this one and feels inside can be killed.
            wrong subtract room: The room has to be taken off the reading before it is compared.
              reply: What does the plastic stand: a temperature, or a rise?
              danger: plastic that is too hot goes soft, and live parts can come loose.
            wrong nothing: No step: it stays below what the plastic can stand.
              reply: Will the reading be the same in half an hour?
              danger: plastic that is too hot goes soft, and live parts can come loose.
        """),
        nudges=(
            "What will the probe show much later?",
            "Take the room off the reading: that is 63 % of the whole rise. Work out all of it.",
        ),
        working="After one time constant 63 % of the rise is there: {early_kelvin}. The whole "
        "rise is about {whole_kelvin}, so the dropper goes to {settled_celsius}, above the "
        "{allowed_celsius} that the plastic can stand. The air in the box warms up more slowly "
        "and lifts it further. Wait until the reading has stood still, with the box closed all "
        "the time.",
    ),
)

# --- the whole choice ----------------------------------------------------------------------------

SIZING_STEPS = options("""
    wrong highest mains: Find the highest voltage that the mains may have.
    wrong rms across: Find the rms of that across the dropper.
      reply: The rms of which voltage? It has to be known first.
    wrong heat: Square it and divide by the ohms: the heat.
      reply: Which voltage is squared? It has to be worked out first.
    wrong margin: Double the heat.
      reply: The heat has to be known before it can be doubled. From which sum?
    wrong size: Take the next rating up that is sold.
      reply: Above which number is the next rating? It has to be worked out first.
      danger: a size taken before the heat is doubled has nothing to spare, and the part can burn in
        a warm box.
    wrong derate: Check what the warm air leaves of that rating.
      reply: Which rating is checked? It has to be chosen first.
    wrong one short: Let each part fail short in turn, and check what that leaves the others.
      reply: What may the others take in the warm air? That has to be known first.
""")

PART_WATTS = (0.125, 0.25, 0.5, 1.0, 2.0, 3.0)
PART_VOLTS = 200.0  # Limiting element voltage of small film resistors: common practice, no source.
COUNTS = (1, 2, 3, 4)
EACH_OHMS = (15e3, 22e3, 33e3, 47e3, 68e3)
AIR_CELSIUS = (70.0, 85.0, 100.0)
DRAWER_OHMS = (22e3, 27e3, 33e3)


def _wish_between(circuit, supply, enough_ohms, dim_ohms):
    """Return a wish for light midway between two strings; None where the drops would decide."""
    low = mains.lowest(supply)
    enough, dim = (
        operating_point(circuit, low, ohms=each).led_amps_mean for each in (enough_ohms, dim_ohms)
    )
    wish = round(sqrt(enough * dim), 5)
    without_drops = mains.mean(low.volts_rms) / dim_ohms / (1 if circuit == "bridge" else 2)
    return wish if 1.01 * without_drops < wish < enough / 1.01 else None


@cache
def _wishes(circuit, supply, air):
    """Three wishes for light, from bright to dim, that the rules let somebody fulfil."""
    strings = list(product(EACH_OHMS, COUNTS))
    totals = sorted({each * count for each, count in strings})
    found = []
    for enough, dim in pairwise(totals):
        if wish := _wish_between(circuit, supply, enough, dim):
            n = SimpleNamespace(supply=supply, circuit=circuit, air=air, least_amps=wish)
            parts = product([s for s in strings if s[0] * s[1] == enough], PART_WATTS)
            if any(_all_passed(_judge_three((*string, size), n)) for string, size in parts):
                found.append(wish)
    return found[0], found[len(found) // 2], found[-1]


def _any_string_numbers(draw, supply):
    circuit, air = draw.pick(("diode_across", "bridge")), draw.pick(AIR_CELSIUS)
    return {
        "circuit": circuit,
        "air": air,
        "least_amps": draw.pick(_wishes(circuit, supply, air)),
    }


STRING_RULES = (
    "The rules: bright enough at the lowest mains, {low_volts}, and at the highest, {high_volts}, "
    "in that air: while all is sound each takes at most half of what its rating allows; after any "
    "one short (a resistor, the LED, a diode) none takes more than its rating allows, and those "
    "that are left stand the whole mains. A single resistor never does. At most one size larger "
    "than needed."
)


def _rules_of_string(circuit, n, each_ohms, count, rating):
    """Ask the rules about a string; as lists: what stands the mains, heat sound, after a short."""
    found = rules.dropper(circuit, n.supply, each_ohms, count, rating, PART_VOLTS, n.air)
    mains_ = [f for f in found if f.rule in ("count", "volts")]
    heats = [f for f in found if f not in mains_]
    sound = [f for f in heats if f.after == faults.SOUND]
    return mains_, sound, [f for f in heats if f not in sound]


def _judge_string(circuit, n, each_ohms, count, rating):
    """Judge a string of equal resistors by what it would do, sound and after one short."""
    stands, sound, after = _rules_of_string(circuit, n, each_ohms, count, rating)
    light = operating_point(circuit, mains.lowest(n.supply), ohms=each_ohms * count).led_amps_mean
    return [
        Criterion(
            "bright enough",
            light >= n.least_amps,
            0.2,
            f"At the lowest mains the LED gets {milliamps(light)}; at least "
            f"{milliamps(n.least_amps)} is wanted.",
        ),
        judged(
            "what one short leaves stands the whole mains",
            0.3,
            stands,
            "How many are left when one is a piece of wire, and how do they share the mains?",
        ),
        judged(
            "at most half of the rating while all is sound",
            0.15,
            sound,
            "What would a larger rating allow in this air, or one more resistor take away?",
        ),
        judged(
            "within the rating after any one short",
            0.25,
            after,
            "What does the heat in each do when the string gets shorter, or both half-cycles pass?",
        ),
        Criterion(
            "no larger than needed",
            not _oversized(rating, sound + after),
            0.1,
            "Small boxes have little room: of the sizes that will do, take the smallest or the "
            "next one.",
        ),
    ]


STRING_FACTS = {
    "built": lambda n: BOTH_HALVES[n.circuit],
    "each_ohms": lambda n: n.each,
    "air_celsius": lambda n: n.air,
    "part_volts": lambda n: PART_VOLTS,
    "low_volts": lambda n: mains.lowest(n.supply).volts_rms,
    "high_volts": lambda n: mains.highest(n.supply).volts_rms,
}


def _oversized(rating, heats):
    """Whether more than one size lies between the rating and the least that will do."""
    needed = rating / min(finding.margin for finding in heats if finding.rule == "heat")
    enough = [size for size in PART_WATTS if size >= needed]
    return bool(enough) and rating > (enough + enough[-1:])[1]


def _judge_two(picked, n):
    return _judge_string(HALF_WAVE, n, n.each, *picked)


def _judge_three(picked, n):
    return _judge_string(n.circuit, n, *picked)


def _all_passed(criteria):
    return all(criterion.passed for criterion in criteria)


# As little heat as the wanted light allows, then the smallest rating.
_best_two = first_that_passes(
    _judge_two,
    product(reversed(COUNTS), PART_WATTS),
)


# As little heat as the wanted light allows, from as few parts as the rules allow.
_best_three = first_that_passes(
    _judge_three,
    sorted(product(EACH_OHMS, COUNTS, PART_WATTS), key=lambda s: (-s[0] * s[1], *s[1:])),
)


def _string_working(judge, picked, n):
    said = {criterion.name: criterion.reply for criterion in judge(picked, n)}
    each, count = picked[:2] if len(picked) == 3 else (n.each, picked[0])
    return (
        f"{count} of {ohms(each)} make {ohms(each * count)}. "
        f"{said['bright enough']} {said['at most half of the rating while all is sound']} "
        f"{said['within the rating after any one short']} "
        f"{said['what one short leaves stands the whole mains']}"
    )


WHOLE = (
    Question(
        id="heat-14",
        edition=2,
        level=2,
        marks=2,
        outcome="put the steps of rating a dropper in order",
        ask="Put the steps of choosing a dropper's power rating in order.",
        kind=Order(SIZING_STEPS),
        nudges=(
            "What has to be known before each step can be done?",
            "Volts first, then heat, then the margin, then a part that is sold, then its place, "
            "then the day when one part fails.",
        ),
        working="Highest mains, rms across the dropper, its square over the ohms, twice that, the "
        "next rating that is sold, what is left of it in the warm box, and last one fault: who "
        "gets the heat and the volts of a part that fails short?",
    ),
    Question(
        id="heat-15",
        edition=3,
        level=2,
        marks=2,
        outcome="choose how many resistors and which rating",
        numbers=lambda draw, supply: {
            "each": draw.pick(DRAWER_OHMS),
            "air": draw.pick(AIR_CELSIUS),
            # four of the largest are too many
            "least_amps": _wish_between(HALF_WAVE, supply, *(4 * o for o in DRAWER_OHMS[1:])),
        },
        facts=STRING_FACTS,
        ask="The drawer holds {each_ohms} only, in several sizes, each type good for {part_volts} "
        "rms. The dropper sits behind a diode on {supply}, in a box whose air reaches "
        "{air_celsius}. The LED needs {least_amps:mA} on average. How many in series, and of which "
        "rating? " + STRING_RULES,
        kind=Parts(
            (
                Field("how many in series", "ratio", COUNTS),
                Field("rating of each", "power", PART_WATTS, "W"),
            ),
            _judge_two,
            _best_two,
        ),
        nudges=(
            "What changes for the light, and what for the heat in each, with each resistor you "
            "add?",
            "Count those that are left after one short: do they stand the mains? Then work out the "
            "heat in each of them at the highest mains, and divide by the share of the rating that "
            "the warm air leaves.",
        ),
        working=lambda n: _string_working(_judge_two, _best_two(n), n),
    ),
    Question(
        id="heat-16",
        edition=3,
        level=3,
        marks=3,
        outcome="choose value, number and rating of a dropper's resistors",
        numbers=_any_string_numbers,
        facts=STRING_FACTS,
        ask="A new circuit: {built}. The mains is {supply}, the air in the box reaches "
        "{air_celsius}, and the LED needs {least_amps:mA} on average. Make the dropper of equal "
        "resistors, each type good for {part_volts} rms. Pick value, number and rating. "
        + STRING_RULES,
        kind=Parts(
            (
                Field("value of each", "resistance", EACH_OHMS),
                Field("how many in series", "ratio", COUNTS),
                Field("rating of each", "power", PART_WATTS, "W"),
            ),
            _judge_three,
            _best_three,
        ),
        nudges=(
            "How many half-cycles feed the dropper here, and how many the LED?",
            "Find the largest total that is bright enough, split it, and take one resistor away. "
            "Work out the heat in each that is left at the highest mains, then derate.",
        ),
        working=lambda n: _string_working(_judge_three, _best_three(n), n),
    ),
)

QUESTIONS = (*RECALL, PREDICT, *POWER, *HALF_OR_WHOLE, *RATING, *SERIES, *WARM, *WHOLE)
