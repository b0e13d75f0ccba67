"""Lesson 04: heat in the dropper, the part that stands it, and what it costs.

One dropper on the learner's own mains, no dimmer: that is the business of lesson 05. Several
circuits appear, because whether the dropper works on one half of the wave or on both decides.
"""

from math import sqrt

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
from helpers.physics import energy, faults, heat, leds, mains, ohms_law, ratings, resistors
from helpers.physics.operating_point import operating_point
from helpers.quantities import write, write_as
from helpers.quantities.written import midway, milliamps, ohms, volts
from helpers.sizing import rules

LESSON = "04"
TITLE = "Where the heat goes"

POT_WATTS = 90.0
MARGIN = 1 / rules.HEALTHY_SHARE
KNEE_CELSIUS, ZERO_CELSIUS = ratings.KNEE_CELSIUS, ratings.ZERO_CELSIUS
DROPPER_OHMS = (33e3, 39e3, 47e3, 56e3, 68e3, 82e3, 100e3, 120e3)
UNTOLD_OHMS = (33e3, 39e3, 43e3, 56e3, 68e3, 82e3, 100e3, 120e3)  # the lesson prints that of 47 k
HALF_WAVE = "series_diode"


def watts(value):
    return write_as(value, "W", 3)


def celsius(value):
    return write(value, "temperature")


def working_point(n, circuit=HALF_WAVE):
    return operating_point(circuit, n.supply, ohms=n.ohms)


def point_code(n, field, circuit=HALF_WAVE, supply=None, resistance=None):
    supply, resistance = supply or n.supply, resistance or n.ohms
    built = f"mains.Supply({supply.volts_rms:.6g}, {supply.hertz:g})"
    return f'operating_point("{circuit}", {built}, ohms={resistance:.6g}).{field}'


def both_halves_watts(n):
    """The quick sum for a dropper that works all the time."""
    return ohms_law.power(volts=n.supply.volts_rms, ohms=n.ohms)


def dropper_numbers(draw, supply):
    return {"ohms": draw.pick(DROPPER_OHMS)}


def untold_numbers(draw, supply):
    return {"ohms": draw.pick(UNTOLD_OHMS)}


# --- look back ---------------------------------------------------------------------------------

DONE = {
    "isolated": "The pot is unplugged and its lead cannot be plugged in by anybody else.",
    "tester proved": "The pot is isolated, and the tester has just shown that a source known to be "
    "live is live.",
    "proved dead": "The pot is isolated, the tester was tried on a source known to be live, and "
    "then it showed nothing at the pot's terminals.",
}


def _next_step_options(n):
    unproved = "nothing is proved yet: a broken tester shows nothing, too. Touching now can kill."
    try_it, test_it = n.done in ("isolated", "proved dead"), n.done == "tester proved"
    return (
        Option(
            "try the tester",
            "Try the tester on a source that is known to be live.",
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
        Option(
            "open and touch",
            "Open the cover and start work.",
            reply="What has been proved so far, and with a tester that works for certain?",
            danger=unproved,
        ),
        Option(
            "watch the light",
            "See whether the pilot light stays dark for a minute.",
            reply="Which faults make a light dark while the wires are live?",
            danger="a dark light may be a broken light. Touching then can kill.",
        ),
    )


RECALL = (
    Question(
        id="heat-recall-1",
        role="recall",
        outcome="name the next step of proving dead",
        numbers=lambda draw, supply: {"done": draw.pick(tuple(DONE))},
        ask=lambda n: f"From lesson 01: {DONE[n.done]} What comes next?",
        kind=Choice(_next_step_options),
        nudges=(
            "Could the tester be broken without anybody knowing?",
            "Prove the tester, prove dead, prove the tester again.",
        ),
        working=lambda n: (
            "Isolate and keep it so, prove the tester, prove dead, prove the tester again. Only "
            "then is a tester that shows nothing worth anything."
        ),
    ),
    Question(
        id="heat-recall-2",
        role="recall",
        outcome="find the current behind a dropper on a bench supply",
        numbers=lambda draw, supply: {
            "volts": draw.pick((9.0, 12.0, 24.0)),
            "ohms": draw.pick((1_800.0, 2_200.0, 3_300.0)),
        },
        ask=lambda n: (
            f"From lesson 02: a red LED ({volts(2.0)}) sits behind {ohms(n.ohms)} on a bench "
            f"supply of {volts(n.volts)} DC. What current flows?"
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=lambda n: ohms_law.led_current(n.volts, 2.0, n.ohms),
            slips=(
                Slip(
                    "left out the LED's own drop",
                    lambda n: ohms_law.current(n.volts, n.ohms),
                    "This is the current without the LED. What does the LED keep for itself?",
                    share=0.5,
                ),
                Slip(
                    "added the LED's drop",
                    lambda n: ohms_law.current(n.volts + 2.0, n.ohms),
                    "The LED's drop seems to have been added. Does the LED push, or does it take?",
                ),
            ),
            check="First work out the voltage that is left for the resistor.",
        ),
        nudges=("What voltage is left for the resistor? Divide it by the kilo-ohms.",),
        working=lambda n: (
            f"({volts(n.volts)} − {volts(2.0)}) / {ohms(n.ohms)} = "
            f"{milliamps(ohms_law.led_current(n.volts, 2.0, n.ohms))}."
        ),
        code=lambda n: f"ohms_law.led_current({n.volts}, 2.0, {n.ohms})",
    ),
    Question(
        id="heat-recall-3",
        role="recall",
        outcome="find the mean current of an LED on the mains",
        numbers=dropper_numbers,
        ask=lambda n: (
            f"From lesson 03: on your mains, {n.supply.name}, an LED sits behind a diode and "
            f"{ohms(n.ohms)}. What current does it get, averaged over the whole cycle?"
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=lambda n: working_point(n).led_amps_mean,
            simple=lambda n: mains.mean(n.supply.volts_rms) / 2 / n.ohms,
            slips=(
                Slip(
                    "rms over resistance",
                    lambda n: n.supply.volts_rms / n.ohms,
                    "This is the quick sum V / R. For which kind of wave does the LED's mean equal "
                    "that?",
                ),
                Slip(
                    "forgot half-wave",
                    lambda n: mains.mean(n.supply.volts_rms) / n.ohms,
                    "This is the mean if both halves of the wave passed. What does the diode do?",
                    share=0.5,
                ),
                Slip(
                    "half of rms over resistance",
                    lambda n: n.supply.volts_rms / 2 / n.ohms,
                    "Half of the rms value is close, but is the mean of a half-wave 0.5 of it?",
                ),
                Slip(
                    "peak over resistance",
                    lambda n: mains.peak(n.supply.volts_rms) / n.ohms,
                    "This is the crest, which lasts an instant. What is its mean over the cycle?",
                ),
            ),
            check="First work out the mean voltage of a half-wave.",
        ),
        nudges=(
            "Which of the three numbers of a wave makes light?",
            "The mean of a half-wave is 0.45 of the rms on the label. Divide by the ohms.",
        ),
        working=lambda n: (
            f"0.45 × {volts(n.supply.volts_rms)} / {ohms(n.ohms)} is about "
            f"{milliamps(mains.mean(n.supply.volts_rms) / 2 / n.ohms)}; with the drops of LED and "
            f"diode it is {write_as(working_point(n).led_amps_mean, 'mA', 3)}."
        ),
        code=lambda n: point_code(n, "led_amps_mean"),
    ),
)

PREDICT = Question(
    id="heat-predict",
    role="predict",
    outcome="commit to an expectation",
    ask=lambda n: (
        f"The workshop first planned a light whose LED gets {milliamps(0.010)}. Now it wants "
        f"{milliamps(0.001)}, a tenth, and takes a dropper of ten times the ohms. The mains stays "
        f"{n.supply.name}. What happens to the heat in the dropper?"
    ),
    kind=Choice(
        (
            Option("hundredth", "It falls to a hundredth: heat goes with the current squared."),
            Option("tenth", "It falls to a tenth."),
            Option("same", "It stays about the same: more ohms make up for less current."),
            Option("more", "It rises: more ohms, more heat."),
        )
    ),
    working=lambda n: (
        "it falls to a tenth. The current squared is a hundredth, but it now flows through ten "
        "times the ohms. Or with volts: the mains is the same, and V² is divided by ten times R."
    ),
)

# --- power, and which volts --------------------------------------------------------------------

POWER = (
    Question(
        id="heat-1",
        outcome="find the rms current of a half-wave",
        numbers=dropper_numbers,
        ask=lambda n: (
            f"Your dropper: {ohms(n.ohms)} behind a diode on {n.supply.name}. The first step is "
            "yours: what rms current flows through it?"
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=lambda n: working_point(n).branch_amps_rms,
            simple=lambda n: n.supply.volts_rms / sqrt(2.0) / n.ohms,
            slips=(
                Slip(
                    "forgot half-wave",
                    lambda n: n.supply.volts_rms / n.ohms,
                    "This is the rms current if both halves of the wave passed. Which half does "
                    "the diode stop?",
                    share=0.5,
                ),
                Slip(
                    "halved the rms voltage",
                    lambda n: n.supply.volts_rms / 2 / n.ohms,
                    "This is half of V / R. Half the time means half the heat: what happens to "
                    "the rms then, which is a root?",
                ),
                Slip(
                    "took the mean",
                    lambda n: mains.mean(n.supply.volts_rms) / 2 / n.ohms,
                    "This is the mean current, which makes light. Which of the three makes heat?",
                ),
                Slip(
                    "took the peak",
                    lambda n: mains.peak(n.supply.volts_rms) / n.ohms,
                    "This is the crest of the current. How long does it last?",
                ),
            ),
            check="First work out the rms voltage of the half-wave.",
        ),
        nudges=(
            "What is the rms of a wave that flows only half of the time?",
            "Take 0.707 of the rms on the label, then divide by the kilo-ohms.",
        ),
        working=lambda n: (
            f"0.707 × {volts(n.supply.volts_rms)} / {ohms(n.ohms)} is about "
            f"{milliamps(n.supply.volts_rms / sqrt(2.0) / n.ohms)}; with the drops of LED and "
            f"diode it is {write_as(working_point(n).branch_amps_rms, 'mA', 3)}."
        ),
        code=lambda n: point_code(n, "branch_amps_rms"),
    ),
    Question(
        id="heat-2",
        outcome="say why heat needs the rms value",
        ask=lambda n: (
            "Why this step? In the worked example the rms of the half-wave was squared, not its "
            "mean, although the mean is right for the light. Why?"
        ),
        kind=Choice(
            (
                Option(
                    "mean of squares",
                    "Heat goes with the voltage squared, and rms is made from squares.",
                    right=True,
                ),
                Option(
                    "average voltage",
                    "The rms is the average voltage of the wave, and the mean is not.",
                    reply="Which of the two is the plain average? What is averaged for the other?",
                ),
                Option(
                    "light",
                    "The LED's light goes with the rms as well, so everything agrees.",
                    reply="What did lesson 03 say about light: mean or rms?",
                ),
                Option(
                    "safety",
                    "It is only a safety margin: the rms is the larger of the two, and "
                    "larger is safer.",
                    reply="Is the heat itself larger than the sum with the mean says, or only our "
                    "guess of it?",
                ),
            )
        ),
        nudges=(
            "If the voltage is doubled for an instant, how much more heat is that?",
            "Square first, then average: which of the three numbers is made in that order?",
        ),
        working=lambda n: (
            "Twice the voltage is four times the heat at that instant. So squares have to be "
            "averaged, and the rms is the root of that average. Light goes with the current "
            "itself, so there the plain mean is right."
        ),
    ),
    Question(
        id="heat-3",
        edition=2,
        marks=2,
        outcome="find the heat in a dropper on a half-wave",
        numbers=untold_numbers,
        ask=lambda n: (
            f"All steps are yours: how much heat does a dropper of {ohms(n.ohms)} make behind a "
            f"diode on {n.supply.name}?"
        ),
        kind=Quantity(
            of="power",
            unit="W",
            right=lambda n: working_point(n).resistor_watts,
            simple=lambda n: both_halves_watts(n) / 2,
            slips=(
                Slip(
                    "forgot half-wave, or squared the peak",
                    both_halves_watts,
                    "Twice too high. Either the diode was forgotten, or the peak was squared: "
                    "which voltage did you square?",
                    share=0.5,
                ),
                Slip(
                    "peak volts and no half-wave",
                    lambda n: 2 * both_halves_watts(n),
                    "Four times too high. Which voltage did you square, and how much of the time "
                    "does it act?",
                ),
                Slip(
                    "halved the voltage, then squared",
                    lambda n: both_halves_watts(n) / 4,
                    "This is a quarter of V² / R. Half the time means half the heat: what does "
                    "halving the voltage do after squaring?",
                    share=0.5,
                ),
                Slip(
                    "squared the mean",
                    lambda n: (mains.mean(n.supply.volts_rms) / 2) ** 2 / n.ohms,
                    "This is the mean squared. The mean makes light: which number makes heat?",
                ),
                Slip(
                    "mean current times rms volts",
                    lambda n: mains.mean(n.supply.volts_rms) / 2 / n.ohms * n.supply.volts_rms,
                    "This is a mean current times an rms voltage: near by luck. Of which kind "
                    "must both be?",
                ),
                Slip(
                    "peak current times rms volts",
                    lambda n: mains.peak(n.supply.volts_rms) / n.ohms * n.supply.volts_rms,
                    "This is a crest times an rms voltage. How long does the crest last?",
                ),
                Slip(
                    "heat in the LED",
                    lambda n: 2.0 * mains.mean(n.supply.volts_rms) / 2 / n.ohms,
                    "This is what the LED takes. Which part has nearly all of the volts?",
                ),
            ),
            check="First work out the rms voltage across the dropper.",
        ),
        nudges=(
            "Which voltage, squared and divided by the ohms, gives heat?",
            "Take the rms of the half-wave, square it, divide by the ohms.",
        ),
        working=lambda n: (
            f"0.707 × {volts(n.supply.volts_rms)}, squared, is half of "
            f"{volts(n.supply.volts_rms)} squared. Over {ohms(n.ohms)}: "
            f"{watts(both_halves_watts(n) / 2)}. With the drops of "
            f"LED and diode it is {watts(working_point(n).resistor_watts)}."
        ),
        code=lambda n: point_code(n, "resistor_watts"),
    ),
)

# --- half a wave, and a tenth of the current -----------------------------------------------------

BOTH_HALVES = {
    "diode_across": "a dropper and an LED, with a silicon diode across the LED the other way round",
    "bridge": "a dropper in front of a bridge of four diodes, which feeds the LED",
    "resistor_only": "a dropper and a bare LED, no diode at all",
}

CIRCUIT_OPTIONS = (
    Option(
        "series diode",
        "Dropper, LED and a diode, all in series.",
        reply="What flows in the half-cycle that the diode stops?",
    ),
    Option(
        "plug turned",
        "Dropper, LED and a diode in series, and the plug turned round in its socket.",
        reply="Which half-cycle passes now, and how many of them?",
    ),
    Option(
        "bare LED",
        "Dropper and LED, no diode at all.",
        right=True,
        reply="In reverse a bare LED breaks down at a few volts. Does the dropper rest then?",
        danger="a dropper rated for half the heat overheats when the LED breaks down in reverse.",
    ),
    Option(
        "diode across",
        "Dropper and LED, with a diode across the LED the other way round.",
        right=True,
        reply="Where does the current go in the half-cycle in which the LED is dark?",
        danger="a dropper rated for half the heat overheats here: the diode across the LED gives "
        "the other half-cycle a way.",
    ),
    Option(
        "bridge",
        "Dropper, and a bridge of four diodes that feeds the LED.",
        right=True,
        reply="For how many half-cycles of each cycle does current flow into a bridge?",
        danger="a dropper rated for half the heat overheats in front of a bridge.",
    ),
    Option(
        "two LEDs",
        "Dropper and two LEDs side by side, back to back.",
        right=True,
        reply="When one LED is dark, does the other one let current through?",
        danger="a dropper rated for half the heat overheats here: one LED always conducts.",
    ),
)

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
    return {"before": before, "after": after, "watts": float(f"{loss:.3g}")}


def _watts_after(n):
    return n.watts * n.after / n.before


def _watt_hours(power, hours=energy.HOURS_PER_YEAR):
    return 1000 * energy.kilowatt_hours(power, hours)


def _percent_of_pot(light_watts, hours):
    """What a light takes in a year, beside a pot that is forgotten for some hours."""
    return 100 * _watt_hours(light_watts) / _watt_hours(POT_WATTS, hours)


HALF_OR_WHOLE = (
    Question(
        id="heat-4",
        level=2,
        marks=2,
        outcome="say in which circuits the dropper works on both half-cycles",
        numbers=dropper_numbers,
        ask=lambda n: (
            f"On {n.supply.name}, V² / R for {ohms(n.ohms)} is {watts(both_halves_watts(n))}. In "
            "which of these circuits does the dropper make nearly all of that, not half?"
        ),
        kind=ChooseAll(CIRCUIT_OPTIONS),
        nudges=(
            "In each circuit, is there a way for the current in the other half-cycle?",
            "Only a part that blocks for a whole half-cycle gives the dropper a rest. An LED alone "
            "does not block: it breaks down.",
        ),
        working=lambda n: (
            "Only a diode in series blocks a half-cycle; turning the plug only changes which. A "
            "bare LED breaks down, a diode across it conducts, a bridge and two LEDs back to back "
            "use both half-cycles: the dropper never rests."
        ),
    ),
    Question(
        id="heat-5",
        edition=2,
        level=2,
        marks=2,
        outcome="find the heat in a dropper that works on both half-cycles",
        numbers=lambda draw, supply: {
            "circuit": draw.pick(tuple(BOTH_HALVES)),
            **untold_numbers(draw, supply),
        },
        ask=lambda n: (
            f"Another circuit: {BOTH_HALVES[n.circuit]}. The dropper has {ohms(n.ohms)}, the mains "
            f"is {n.supply.name}. How much heat does the dropper make?"
        ),
        kind=Quantity(
            of="power",
            unit="W",
            right=lambda n: working_point(n, n.circuit).resistor_watts,
            simple=both_halves_watts,
            slips=(
                Slip(
                    "halved it as behind a series diode",
                    lambda n: both_halves_watts(n) / 2,
                    "This is the heat behind a diode in series. Which part blocks a half-cycle "
                    "here?",
                    "a part rated for half the heat overheats in this circuit.",
                ),
                Slip(
                    "squared the peak",
                    lambda n: 2 * both_halves_watts(n),
                    "The peak seems to have been squared. Which of the three numbers makes heat?",
                    share=0.5,
                ),
                Slip(
                    "squared the mean",
                    lambda n: mains.mean(n.supply.volts_rms) ** 2 / n.ohms,
                    "This is the mean squared. The mean makes light: which number makes heat?",
                ),
                Slip(
                    "halved the voltage, then squared",
                    lambda n: both_halves_watts(n) / 4,
                    "This is a quarter of V² / R. Is there anything in this circuit that halves "
                    "the voltage?",
                    "a part rated for a quarter of the heat overheats in this circuit.",
                ),
            ),
            check="First say for how much of the cycle current flows.",
        ),
        nudges=(
            "Does the dropper ever rest in this circuit?",
            "It works on both half-cycles, so it sees the whole rms of the mains: square it and "
            "divide by the ohms.",
        ),
        working=lambda n: (
            f"Current flows in both half-cycles, so {volts(n.supply.volts_rms)} squared, over "
            f"{ohms(n.ohms)}: {watts(both_halves_watts(n))}. With the drops taken off it is "
            f"{watts(working_point(n, n.circuit).resistor_watts)}."
        ),
        code=lambda n: point_code(n, "resistor_watts", n.circuit),
    ),
    Question(
        id="heat-6",
        level=2,
        marks=2,
        outcome="work out the energy of a light in a year, after a change of current",
        numbers=_change_numbers,
        ask=lambda n: (
            f"A light gives its LED {milliamps(n.before)}, and its dropper makes {watts(n.watts)} "
            f"of heat. A larger dropper brings the LED down to {milliamps(n.after)} on the same "
            "mains. It is on all year, 8760 h. How much energy does the new dropper use in the "
            "year?"
        ),
        kind=Quantity(
            of="energy",
            unit="kWh",
            right=lambda n: _watt_hours(_watts_after(n)),
            slips=(
                Slip(
                    "scaled the heat by the square of the current",
                    lambda n: _watt_hours(_watts_after(n) * n.after / n.before),
                    "The heat seems to have been scaled by the current squared. The mains is the "
                    "same: what happened to the ohms?",
                    share=0.5,
                ),
                Slip(
                    "kept the old heat",
                    lambda n: _watt_hours(n.watts),
                    "This is the year of the old dropper. What does less current do to the heat?",
                    share=0.5,
                ),
                Slip(
                    "one day",
                    lambda n: _watt_hours(_watts_after(n), hours=24.0),
                    "This is one day. For how long is the light on?",
                    share=0.5,
                ),
                Slip(
                    "watt-hours",
                    lambda n: 1000 * _watt_hours(_watts_after(n)),
                    "These are watt-hours. How many of them make one kilowatt-hour?",
                    share=0.5,
                ),
            ),
            check="First work out the heat in the new dropper.",
        ),
        nudges=(
            "The volts stay the same and the current falls: how does volts times amperes change?",
            "On the same mains heat falls in step with the current. Multiply by the hours, then "
            "divide by 1000.",
        ),
        working=lambda n: (
            f"The heat falls in step with the current: {watts(n.watts)} × "
            f"{n.after / n.before:.3g} = {midway(_watts_after(n), 'power')}. Times 8760 h, over "
            f"1000: {write_as(_watt_hours(_watts_after(n)), 'kWh', 3)}."
        ),
        code=lambda n: (
            f"1000 * energy.kilowatt_hours({n.watts} * {n.after} / {n.before}, "
            "energy.HOURS_PER_YEAR)"
        ),
    ),
    Question(
        id="heat-7",
        level=3,
        marks=2,
        outcome="weigh the cost of the forgotten pot against that of the pilot light",
        numbers=lambda draw, supply: {
            **dropper_numbers(draw, supply),
            "hours": draw.pick((40.0, 50.0, 70.0)),
        },
        ask=lambda n: (
            f"The pot takes {watts(POT_WATTS)} and was forgotten for {n.hours:.0f} h. A pilot "
            f"light, {ohms(n.ohms)} behind a diode on {n.supply.name}, is on all year, 8760 h. A "
            "kilowatt-hour costs the same for both. What does the light's whole year cost, in per "
            "cent of what that one forgetting cost? Count the dropper's heat only."
        ),
        kind=Quantity(
            of="percent",
            unit="%",
            right=lambda n: _percent_of_pot(working_point(n).resistor_watts, n.hours),
            simple=lambda n: _percent_of_pot(both_halves_watts(n) / 2, n.hours),
            slips=(
                Slip(
                    "forgot half-wave",
                    lambda n: _percent_of_pot(both_halves_watts(n), n.hours),
                    "Twice too much. Does the dropper work on both half-cycles?",
                    share=0.5,
                ),
                Slip(
                    "halved the voltage, then squared",
                    lambda n: _percent_of_pot(both_halves_watts(n) / 4, n.hours),
                    "Half of what it is. What does halving the voltage do to its square?",
                    share=0.5,
                ),
                Slip(
                    "one month of the light",
                    lambda n: _percent_of_pot(both_halves_watts(n) / 2, n.hours) / 12,
                    "This is one month of the light. For how long is it on?",
                    share=0.5,
                ),
                Slip(
                    "the same hours for both",
                    lambda n: _percent_of_pot(both_halves_watts(n) / 2, energy.HOURS_PER_YEAR),
                    "This compares the watts alone. For how many hours is each of them on?",
                    share=0.5,
                ),
                Slip(
                    "gave the fraction",
                    lambda n: _percent_of_pot(both_halves_watts(n) / 2, n.hours) / 100,
                    "This is the share as a fraction of one. How is it written in percent?",
                    share=0.5,
                ),
            ),
            check="First work out the energy of each of the two.",
        ),
        nudges=(
            "If a kilowatt-hour costs the same for both, what decides the cost?",
            "Power times hours for each of the two. Divide the light's by the pot's, and take it "
            "in percent.",
        ),
        working=lambda n: (
            f"The dropper makes {midway(working_point(n).resistor_watts, 'power')}: in 8760 h "
            f"{write_as(_watt_hours(working_point(n).resistor_watts), 'kWh', 4)}. The pot: "
            f"{write_as(_watt_hours(POT_WATTS, n.hours), 'kWh', 3)}. So the light's year costs "
            f"{write_as(_percent_of_pot(working_point(n).resistor_watts, n.hours), '%', 3)} of it."
        ),
        code=lambda n: (
            f"100 * energy.kilowatt_hours({point_code(n, 'resistor_watts')}, "
            f"energy.HOURS_PER_YEAR) / energy.kilowatt_hours({POT_WATTS:g}, {n.hours:g})"
        ),
    ),
)

# --- a part that stands it -----------------------------------------------------------------------


def _worst_watts(n):
    return operating_point(HALF_WAVE, mains.highest(n.supply), ohms=n.ohms).resistor_watts


def _rating_danger(value, n):
    if value < 0.97 * _worst_watts(n):
        return (
            "a part rated for less than it turns into heat gets too hot. It browns, drifts, and "
            "can set fire to what touches it."
        )
    return None


# Not 85 °C: there the air over the knee is the right share, by luck.
DERATING_CELSIUS = (90.0, 95.0, 105.0, 110.0)

RATING = (
    Question(
        id="heat-8",
        edition=2,
        level=2,
        marks=2,
        outcome="find the rating that a dropper needs",
        numbers=untold_numbers,
        ask=lambda n: (
            f"A dropper of {ohms(n.ohms)} sits behind a diode on {n.supply.name}. By the rule of "
            "this course, what must it be rated for at least? Give the sum, before you look for a "
            "size that is sold."
        ),
        kind=Quantity(
            of="power",
            unit="W",
            right=lambda n: MARGIN * _worst_watts(n),
            simple=lambda n: 1.21 * both_halves_watts(n),
            slips=(
                Slip(
                    "mains tolerance forgotten",
                    both_halves_watts,
                    "This is twice the heat on the voltage of the label. How high may the mains "
                    "be?",
                    share=0.5,
                ),
                Slip(
                    "ten per cent added to the watts",
                    lambda n: 1.1 * both_halves_watts(n),
                    "Ten per cent seems to have been added to the watts. If the volts rise by ten "
                    "per cent, by how much does their square?",
                    share=0.5,
                ),
                Slip(
                    "no margin",
                    lambda n: 1.21 * both_halves_watts(n) / 2,
                    "This is the heat at the highest mains, with nothing to spare. What does the "
                    "second step of the rule do?",
                    share=0.5,
                ),
                Slip(
                    "rating equal to the heat on the label's voltage",
                    lambda n: both_halves_watts(n) / 2,
                    "This is the heat on the voltage of the label. Which two things does the rule "
                    "add?",
                ),
                Slip(
                    "rating half of the heat",
                    lambda n: both_halves_watts(n) / 4,
                    "The factor went the other way. Should a part be rated for more than it has to "
                    "stand, or for less?",
                ),
                Slip(
                    "forgot half-wave",
                    lambda n: 2.42 * both_halves_watts(n),
                    "This would be right if both half-cycles passed: safe, but twice the size. "
                    "What does the diode do?",
                    share=0.5,
                ),
            ),
            danger=_rating_danger,
            check="First work out the heat at the highest mains. Is yours the sum, or a size?",
        ),
        nudges=(
            "What is the highest voltage that the mains may have?",
            "Add ten per cent to the volts, work out the heat, then take the rule's factor.",
        ),
        working=lambda n: (
            f"The highest mains is {midway(mains.highest(n.supply).volts_rms, 'voltage')}. Half "
            f"of its square over {ohms(n.ohms)} is "
            f"{midway(1.21 * both_halves_watts(n) / 2, 'power')}, and twice that is "
            f"{watts(1.21 * both_halves_watts(n))}; with the drops of LED and diode it is "
            f"{watts(MARGIN * _worst_watts(n))}. The next size up of those sold is "
            f"{watts(rules.rating_for(_worst_watts(n)))}. This is the sum for one part. One "
            "alone is no barrier: further down several share it."
        ),
        code=lambda n: f"2 * {point_code(n, 'resistor_watts', supply=mains.highest(n.supply))}",
    ),
    Question(
        id="heat-9",
        edition=2,
        level=2,
        outcome="derate a resistor for a warm place",
        numbers=lambda draw, supply: {
            "rated": draw.pick((0.25, 0.5, 1.0, 2.0)),
            "air": draw.pick(DERATING_CELSIUS),
        },
        ask=lambda n: (
            f"Beside the heating plate the air reaches {celsius(n.air)}. By its sheet a resistor "
            f"rated {watts(n.rated)} has its full rating up to {celsius(KNEE_CELSIUS)} and nothing "
            f"left at {celsius(ZERO_CELSIUS)}. What may it turn into heat there?"
        ),
        kind=Quantity(
            of="power",
            unit="W",
            right=lambda n: ratings.derated_watts(n.rated, n.air),
            slips=(
                Slip(
                    "not derated",
                    lambda n: n.rated,
                    "This is the printed rating. Up to which temperature does it hold?",
                    "a part that is trusted with its printed rating in hot air overheats.",
                ),
                Slip(
                    "line drawn from zero degrees",
                    lambda n: n.rated * (1 - n.air / ZERO_CELSIUS),
                    "The line seems to start at zero degrees. Where does the full rating end?",
                    share=0.5,
                ),
                Slip(
                    "took the share that is lost",
                    lambda n: n.rated * (n.air - KNEE_CELSIUS) / (ZERO_CELSIUS - KNEE_CELSIUS),
                    "This is the part of the rating that is lost. What is left?",
                    share=0.5,
                ),
                Slip(
                    "divided by seventy",
                    lambda n: n.rated * (1 - (n.air - KNEE_CELSIUS) / KNEE_CELSIUS),
                    "The degrees above 70 seem to have been divided by 70. How many degrees long "
                    "is the slope?",
                    share=0.5,
                ),
            ),
            check="First work out which part of the slope is still ahead.",
        ),
        nudges=(
            "How far is the air from the point where nothing is left?",
            "Divide that distance by the whole length of the slope, and multiply by the rating.",
        ),
        working=lambda n: (
            f"The slope is {ZERO_CELSIUS - KNEE_CELSIUS:.0f} K long, and "
            f"{ZERO_CELSIUS - n.air:.0f} K of it are ahead: {ZERO_CELSIUS - n.air:.0f} / "
            f"{ZERO_CELSIUS - KNEE_CELSIUS:.0f} × {watts(n.rated)} = "
            f"{watts(ratings.derated_watts(n.rated, n.air))}. That is the most it may take; the "
            "rule of this course uses half of it. Many wires and plastics stand no such air: a "
            "cooler place is the better answer."
        ),
        code=lambda n: f"ratings.derated_watts({n.rated}, {n.air})",
    ),
)

# --- volts along the body ------------------------------------------------------------------------

PAIR_OHMS = (39e3, 47e3, 56e3, 68e3, 82e3)


def _swapped(value):
    first, second = f"{value:.0f}"[:2]
    return float(second + first) * value / float(first + second)


def _each_of_pair(n, resistance=None):
    """The quick sum for each of two equal resistors behind a diode."""
    return ohms_law.power(volts=n.supply.volts_rms, ohms=2 * (resistance or n.ohms)) / 2 / 2


def _each_of_pair_exact(n):
    return operating_point(HALF_WAVE, n.supply, ohms=2 * n.ohms).resistor_watts / 2


SERIES = (
    Question(
        id="heat-10",
        outcome="find the crest voltage on each resistor of a string",
        numbers=lambda draw, supply: {"count": draw.pick((2, 3, 4))},
        ask=lambda n: (
            f"A dropper is made of {n.count} equal resistors in series. The mains is "
            f"{n.supply.name}, and at times 10 % higher. What does each of them see at the crest?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=lambda n: ratings.share_of_string(
                mains.peak(mains.highest(n.supply).volts_rms), n.count
            ),
            slips=(
                Slip(
                    "each sees all",
                    lambda n: mains.peak(mains.highest(n.supply).volts_rms),
                    "This is the crest of the mains. In series, how do equal resistors share it? "
                    "(When one fails short, the others do get more.)",
                ),
                Slip(
                    "rms instead of crest",
                    lambda n: mains.highest(n.supply).volts_rms / n.count,
                    "This is an rms value. How far above it does the crest reach?",
                    share=0.5,
                ),
                Slip(
                    "mains tolerance forgotten",
                    lambda n: mains.peak(n.supply.volts_rms) / n.count,
                    "This is the share of the crest on the label's voltage. How high may the mains "
                    "be?",
                    share=0.5,
                ),
                Slip(
                    "rms, and mains tolerance forgotten",
                    lambda n: n.supply.volts_rms / n.count,
                    "This is the share of the voltage on the label. Which two things lift it?",
                ),
            ),
            check="First work out the crest of the highest mains.",
        ),
        nudges=(
            "What is the crest of the mains when it is ten per cent high?",
            "Take 1.1 times the label, times 1.414, and share it equally.",
        ),
        working=lambda n: (
            f"1.1 × √2 × {volts(n.supply.volts_rms)} is "
            f"{midway(mains.peak(mains.highest(n.supply).volts_rms), 'voltage')}. Shared by "
            f"{n.count} equal resistors: "
            f"{write_as(mains.peak(mains.highest(n.supply).volts_rms) / n.count, 'V', 3)} each."
        ),
        code=lambda n: (
            f"ratings.share_of_string(mains.peak(1.1 * {n.supply.volts_rms:g}), {n.count})"
        ),
    ),
    Question(
        id="heat-11",
        level=2,
        marks=2,
        outcome="read a resistor's bands and find the heat in each of two",
        numbers=lambda draw, supply: {"ohms": draw.pick(PAIR_OHMS)},
        picture=lambda n: Picture(
            "resistor bands", {"bands": resistors.bands(n.ohms, tolerance_percent=5.0)}
        ),
        ask=lambda n: (
            "Read the bands, from the left. Two of these stand in series as the dropper, behind a "
            f"diode on {n.supply.name}. How much heat does each of the two make?"
        ),
        kind=Quantity(
            of="power",
            unit="W",
            right=_each_of_pair_exact,
            simple=_each_of_pair,
            slips=(
                Slip(
                    "heat of both together, or both half-cycles",
                    lambda n: 2 * _each_of_pair(n),
                    "Twice too high: either this is both resistors together, or both half-cycles "
                    "were counted. Which of the two did you do?",
                    share=0.5,
                ),
                Slip(
                    "each alone on the mains",
                    lambda n: 4 * _each_of_pair(n),
                    "This is the heat if one of them stood alone behind the diode. What do two in "
                    "series do to the current?",
                    share=0.5,
                ),
                Slip(
                    "divided once too often",
                    lambda n: _each_of_pair(n) / 2,
                    "Half of what each makes. Each has half of the volts and half of the ohms: "
                    "how often does that divide the heat?",
                    share=0.5,
                ),
                Slip(
                    "one zero too many in the bands",
                    lambda n: _each_of_pair(n, 10 * n.ohms),
                    "Ten times too low. How many zeros does the third band stand for?",
                    share=0.5,
                ),
                Slip(
                    "one zero too few in the bands",
                    lambda n: _each_of_pair(n, n.ohms / 10),
                    "Ten times too high. How many zeros does the third band stand for?",
                    share=0.5,
                ),
                Slip(
                    "swapped the first two bands",
                    lambda n: _each_of_pair(n, _swapped(n.ohms)),
                    "The first two bands seem to have changed places. From which end do you read?",
                    share=0.5,
                ),
            ),
            check="First write down the resistance of one, then of both together.",
        ),
        nudges=(
            "What does one resistor have, and what have both together?",
            "Work out the heat of the whole string on a half-wave, then share it equally.",
        ),
        working=lambda n: (
            f"Each has {ohms(n.ohms)}, both together {ohms(2 * n.ohms)}. On a half-wave that "
            f"makes {midway(2 * _each_of_pair(n), 'power')}, or {watts(_each_of_pair(n))} each; "
            f"with the drops of LED and diode it is {watts(_each_of_pair_exact(n))} each."
        ),
        code=lambda n: f"{point_code(n, 'resistor_watts', resistance=2 * n.ohms)} / 2",
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
        "kelvin_per_watt": kelvin_per_watt,
        "square_metres": square_metres,
        "room": draw.pick(ROOM_CELSIUS),
    }


def _box_rise(n):
    return heat.box_rise_kelvin(n.watts, n.square_metres)


def _settled(n):
    return heat.final_celsius(n.watts, n.kelvin_per_watt, n.room + _box_rise(n))


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
        edition=2,
        level=2,
        marks=2,
        outcome="find how warm a part gets in a closed box",
        numbers=_box_numbers,
        ask=lambda n: (
            f"In a closed box with {n.square_metres * 1e4:.0f} cm² of outer surface a dropper "
            f"makes {watts(n.watts)}, and nothing else in it gets warm. From the air inside to the "
            f"room its walls pass {heat.CLOSED_BOX:.0f} W for each square metre and kelvin. The "
            f"dropper itself gets {n.kelvin_per_watt:.0f} K warmer than its air for each watt. The "
            f"room is at {celsius(n.room)}. At what temperature does the dropper settle?"
        ),
        kind=Quantity(
            of="temperature",
            unit="°C",
            right=_settled,
            slips=(
                Slip(
                    "forgot the box",
                    lambda n: heat.final_celsius(n.watts, n.kelvin_per_watt, n.room),
                    "This would be right in the open room. How warm is the air in the box?",
                    share=0.5,
                ),
                Slip(
                    "gave the rise",
                    lambda n: _settled(n) - n.room,
                    "This is how much warmer than the room it gets. Where does it start?",
                    share=0.5,
                ),
                Slip(
                    "gave the air in the box",
                    lambda n: n.room + _box_rise(n),
                    "This is the air in the box. How much warmer than its air is the dropper?",
                    share=0.5,
                ),
                Slip(
                    "gave the dropper's own rise",
                    lambda n: n.watts * n.kelvin_per_watt,
                    "This is the dropper's rise above its air. How warm is that air?",
                ),
            ),
            check="First work out how much warmer than the room the air in the box gets.",
        ),
        nudges=(
            "Which air does the dropper feel, and how warm is it?",
            "Room, plus the rise of the box, plus the rise of the part. The box: watts over "
            f"{heat.CLOSED_BOX:.0f} times its surface in square metres.",
        ),
        working=lambda n: (
            f"The box: {watts(n.watts)} / ({heat.CLOSED_BOX:.0f} × {n.square_metres:.3g} m²) = "
            f"{_box_rise(n):.3g} K. "
            f"The part: {watts(n.watts)} × {n.kelvin_per_watt:.0f} K/W = "
            f"{n.watts * n.kelvin_per_watt:.3g} K. With the room's {celsius(n.room)} that makes "
            f"{write_as(_settled(n), '°C', 3)}."
        ),
        code=lambda n: (
            f"heat.final_celsius({n.watts}, {n.kelvin_per_watt}, "
            f"{n.room} + heat.box_rise_kelvin({n.watts}, {n.square_metres}))"
        ),
    ),
    Question(
        id="heat-13",
        edition=2,
        level=2,
        outcome="judge a temperature that was read while a part still warms up",
        numbers=_warming_numbers,
        ask=lambda n: (
            f"Find the mistake. “The room is at {celsius(n.room)}. With the pot unplugged and "
            "proved dead, an electrically skilled person fixed a probe with reinforced insulation "
            "to the dropper and closed the box. Only then was it switched on. The dropper's time "
            f"constant is {n.constant / 60:.0f} min. After {n.constant / 60:.0f} min the probe, "
            f"read outside the closed box, shows {celsius(n.first)}. The plastic beside the "
            f"dropper can stand {celsius(n.allowed)}. So the plastic is safe.” Which step is wrong?"
        ),
        kind=Choice(
            (
                Option(
                    "not settled",
                    "The dropper is still warming up: only 63 % of the rise is there.",
                    right=True,
                ),
                Option(
                    "sensor",
                    "The probe is too slow: open the box and feel the dropper instead.",
                    reply="Is the dropper live now? And what would a finger tell about the end of "
                    "the warm-up?",
                    danger="the dropper is live from end to end. A box is never open while it is "
                    "live: whoever opens this one and feels inside can be killed.",
                ),
                Option(
                    "subtract room",
                    "The room has to be taken off the reading before it is compared.",
                    reply="What does the plastic stand: a temperature, or a rise?",
                    danger="plastic that is too hot goes soft, and live parts can come loose.",
                ),
                Option(
                    "nothing",
                    "No step: it stays below what the plastic can stand.",
                    reply="Will the reading be the same in half an hour?",
                    danger="plastic that is too hot goes soft, and live parts can come loose.",
                ),
            )
        ),
        nudges=(
            "What will the probe show much later?",
            "Take the room off the reading: that is 63 % of the whole rise. Work out all of it.",
        ),
        working=lambda n: (
            f"After one time constant 63 % of the rise is there: {n.first - n.room:.0f} K. The "
            f"whole rise is about {n.final - n.room:.0f} K, so the dropper goes to "
            f"{write_as(round(n.final), '°C')}, above the {celsius(n.allowed)} that the plastic "
            "can stand. The air in the box warms up more slowly and lifts it further. Wait until "
            "the reading has stood still, with the box closed all the time."
        ),
    ),
)

# --- the whole choice ----------------------------------------------------------------------------

SIZING_STEPS = (
    Option("highest mains", "Take the voltage on the label and add 10 %."),
    Option(
        "rms across",
        "Find the rms of that across the dropper.",
        reply="The rms of which voltage? It has to be known first.",
    ),
    Option(
        "heat",
        "Square it and divide by the ohms: the heat.",
        reply="Which voltage is squared? It has to be worked out first.",
    ),
    Option(
        "margin",
        "Double the heat.",
        reply="The heat has to be known before it can be doubled. From which sum?",
    ),
    Option(
        "size",
        "Take the next rating up that is sold.",
        reply="Above which number is the next rating? It has to be worked out first.",
        danger="a size taken before the heat is doubled has nothing to spare, and the part can "
        "burn in a warm box.",
    ),
    Option(
        "derate",
        "Check what the warm air leaves of that rating.",
        reply="Which rating is checked? It has to be chosen first.",
    ),
    Option(
        "one short",
        "Let each part fail short in turn, and check what that leaves the others.",
        reply="What may the others take in the warm air? That has to be known first.",
    ),
)

PART_WATTS = (0.125, 0.25, 0.5, 1.0, 2.0, 3.0)
PART_VOLTS = 200.0  # Limiting element voltage of small film resistors: common practice, no source.
COUNTS = (1, 2, 3, 4)
EACH_OHMS = (15e3, 22e3, 33e3, 47e3, 68e3)
AIR_CELSIUS = (70.0, 85.0, 100.0)
# So much light that on every supply four of the largest are too many; no string lies within 3 %.
LEAST_AMPS = {"above 200 V": 0.78e-3, "below": 0.42e-3}
LIT_HALVES = {"diode_across": 1, "bridge": 2}
# Wishes, for an LED lit in one half, from which no string lies so near that the drops decide.
CLEAR_AMPS = {
    230.0: (0.56e-3, 0.81e-3, 1.15e-3),
    120.0: (0.60e-3, 0.87e-3, 1.17e-3),
    240.0: (0.56e-3, 0.85e-3, 1.17e-3),
    127.0: (0.63e-3, 0.80e-3, 0.99e-3),
    100.0: (0.52e-3, 0.76e-3, 1.08e-3),
}
STRING_RULES = (
    "The rules: bright enough at 10\u00a0% low mains, and at 10\u00a0% high mains, in "
    "that air: while all is sound each takes at most half of what its rating allows; after any one "
    "short (a resistor, the LED, a diode) none takes more than its rating allows, and those that "
    "are left stand the whole mains. A single resistor never does. At most one size larger than "
    "needed."
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


def _best_two(n):
    """As little heat as the wanted light allows, then the smallest rating."""
    return next(
        (count, rating)
        for count in reversed(COUNTS)
        for rating in PART_WATTS
        if _all_passed(_judge_two((count, rating), n))
    )


def _best_three(n):
    """As little heat as the wanted light allows, from as few parts as the rules allow."""
    strings = sorted(
        ((each, count) for each in EACH_OHMS for count in COUNTS),
        key=lambda string: (-string[0] * string[1], string[1]),
    )
    return next(
        (each, count, rating)
        for each, count in strings
        for rating in PART_WATTS
        if _all_passed(_judge_three((each, count, rating), n))
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
        ask=lambda n: "Put the steps of choosing a dropper's power rating in order.",
        kind=Order(SIZING_STEPS),
        nudges=(
            "What has to be known before each step can be done?",
            "Volts first, then heat, then the margin, then a part that is sold, then its place, "
            "then the day when one part fails.",
        ),
        working=lambda n: (
            "Highest mains, rms across the dropper, its square over the ohms, twice that, the next "
            "rating that is sold, what is left of it in the warm box, and last one fault: who gets "
            "the heat and the volts of a part that fails short?"
        ),
    ),
    Question(
        id="heat-15",
        edition=2,
        level=2,
        marks=2,
        outcome="choose how many resistors and which rating",
        numbers=lambda draw, supply: {
            "each": draw.pick((22e3, 27e3, 33e3)),
            "air": draw.pick(AIR_CELSIUS),
            "least_amps": LEAST_AMPS["above 200 V" if supply.volts_rms > 200.0 else "below"],
        },
        ask=lambda n: (
            f"The drawer holds {ohms(n.each)} only, in several sizes, each type good for "
            f"{volts(PART_VOLTS)} rms. The dropper sits behind a diode on {n.supply.name}, in a "
            f"box whose air reaches {celsius(n.air)}. The LED needs {milliamps(n.least_amps)} on "
            f"average. How many in series, and of which rating? {STRING_RULES}"
        ),
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
            "heat in each of them at 10 % high mains, and divide by the share of the rating that "
            "the warm air leaves.",
        ),
        working=lambda n: _string_working(_judge_two, _best_two(n), n),
    ),
    Question(
        id="heat-16",
        edition=2,
        level=3,
        marks=3,
        outcome="choose value, number and rating of a dropper's resistors",
        numbers=lambda draw, supply: {
            "circuit": (circuit := draw.pick(("diode_across", "bridge"))),
            "air": draw.pick(AIR_CELSIUS),
            "least_amps": draw.pick(CLEAR_AMPS[supply.volts_rms])
            * (2 if circuit == "bridge" else 1),
        },
        ask=lambda n: (
            f"A new circuit: {BOTH_HALVES[n.circuit]}. The mains is {n.supply.name}, the air in "
            f"the box reaches {celsius(n.air)}, and the LED needs {milliamps(n.least_amps)} on "
            f"average. Make the dropper of equal resistors, each type good for "
            f"{volts(PART_VOLTS)} rms. Pick value, number and rating. {STRING_RULES}"
        ),
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
            "Work out the heat in each that is left at 10 % high mains, then derate.",
        ),
        working=lambda n: _string_working(_judge_three, _best_three(n), n),
    ),
)

QUESTIONS = (*RECALL, PREDICT, *POWER, *HALF_OR_WHOLE, *RATING, *SERIES, *WARM, *WHOLE)
