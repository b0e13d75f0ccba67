"""Lesson 03: the mains wave, its three numbers, and what they do to an LED behind a dropper.

Half-wave unless a question says otherwise. Heat is the business of lesson 04, the dimmer of 05.
"""

from math import inf, pi, sqrt

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
from helpers.physics import leds, mains, ohms_law
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import NO_DIMMER, Dimmer
from helpers.quantities import write, write_as
from helpers.quantities.written import midway, milliamps, ohms, volts
from helpers.sizing import rules

LESSON = "03"
TITLE = "The mains is not what the label says"

LED_VOLTS = 2.0  # Common practice, no source: a red LED.
DIODE_VOLTS = 0.7  # Common practice, no source: a silicon diode.
BURSTING = 5  # times an LED's limit at the crest: over 3 W in the dropper on any household mains
ROUNDING = (
    "If in doubt, the next value up: it keeps the current and the heat down. Where the light would "
    "be too dim at the lowest mains, or at a dimmer's lowest setting, the next value down may be "
    "needed. Then check current and heat at the highest mains."
)


def milliseconds(seconds):
    return write_as(seconds, "ms")


def half_wave(n, supply=None, resistance=None):
    """What the LED gets with a dropper and a diode in series."""
    return operating_point("series_diode", supply or n.supply, ohms=resistance or n.ohms)


def half_wave_code(n, field):
    supply = f"mains.Supply({n.supply.volts_rms}, {n.supply.hertz})"
    return f'operating_point("series_diode", {supply}, ohms={n.ohms}).{field}'


def crest_when_high(n, percent=None):
    """Return tonight's crest, so many per cent up; without a number, that of the highest mains."""
    if percent is None:
        return mains.peak(mains.highest(n.supply).volts_rms)
    return mains.peak(n.supply.volts_rms) * (1 + percent / 100)


# --- look back ---------------------------------------------------------------------------------

ISOLATING_STEPS = {
    "isolate": ("pull the plug", "While it is plugged in, nothing else can make it safe."),
    "lock off": (
        "lock the plug away",
        "Somebody else could put it back during the work.",
    ),
    "prove the tester": (
        "prove the tester on a known live source",
        "A broken tester shows zero on a live wire.",
    ),
    "prove dead": (
        "prove the pot's own terminals dead",
        "It may have been another plug.",
    ),
    "prove the tester again": (
        "prove the tester on that source once more",
        "It may have failed during the test itself.",
    ),
}


def _isolating_options(n):
    return tuple(
        Option(
            key,
            f"To {step}.",
            right=key == n.missing,
            reply="Without it the other four prove nothing."
            if key == n.missing
            else "That one is in the plan. Which danger does each step in it rule out, and which "
            "danger is left?",
        )
        for key, (step, _) in ISOLATING_STEPS.items()
    )


RECALL = (
    Question(
        id="wave-recall-1",
        role="recall",
        outcome="type a quantity with its unit",
        numbers=lambda draw, supply: {
            "ohms": draw.pick((82_000.0, 120_000.0, 330_000.0, 390_000.0, 470_000.0))
        },
        edition=2,
        ask=lambda n: (
            f"From lesson 00: a drawer is marked {write_as(n.ohms, 'MΩ')}. How much is that in kΩ?"
        ),
        kind=Quantity(
            of="resistance",
            unit="kΩ",
            right=lambda n: n.ohms,
            slips=(
                Slip(
                    "one place too few",
                    lambda n: n.ohms / 10,
                    "One place went missing. How many kilo-ohms make one mega-ohm?",
                    share=0.5,
                ),
                Slip(
                    "one place too many",
                    lambda n: n.ohms * 10,
                    "One place too many. How many kilo-ohms make one mega-ohm?",
                    share=0.5,
                ),
            ),
            check="Move the point three places.",
        ),
        nudges=("How many kilo-ohms make one mega-ohm?", "Move the point three places right."),
        working=lambda n: f"{n.ohms / 1e6:g} × 1000 = {n.ohms / 1e3:g}, so {ohms(n.ohms)}.",
    ),
    Question(
        id="wave-recall-2",
        role="recall",
        outcome="put the steps of safe isolation in order",
        numbers=lambda draw, supply: {"missing": draw.pick(tuple(ISOLATING_STEPS))},
        ask=lambda n: (
            "From lesson 01: before anybody reaches into the pot, somebody plans to "
            + ", then to ".join(s for key, (s, _) in ISOLATING_STEPS.items() if key != n.missing)
            + ". Which step is missing?"
        ),
        kind=Choice(_isolating_options),
        nudges=(
            "What could go wrong at each step without anyone noticing?",
            "Plug, lock, tester, pot, tester: which of the five is not in the plan?",
        ),
        working=lambda n: (
            f"Missing: to {ISOLATING_STEPS[n.missing][0]}. {ISOLATING_STEPS[n.missing][1]}"
        ),
    ),
    Question(
        id="wave-recall-3",
        role="recall",
        outcome="find the current of an LED on a bench supply",
        numbers=lambda draw, supply: {
            "volts": draw.pick((6.0, 10.0, 18.0)),
            "ohms": draw.pick((1_200.0, 3_300.0, 4_700.0)),
        },
        ask=lambda n: (
            f"From lesson 02: a red LED keeps {volts(LED_VOLTS)}. It sits behind {ohms(n.ohms)} "
            f"on a bench supply of {volts(n.volts)} DC. What current flows?"
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=lambda n: ohms_law.led_current(n.volts, LED_VOLTS, n.ohms),
            slips=(
                Slip(
                    "left out the LED's own drop",
                    lambda n: n.volts / n.ohms,
                    "This is the whole supply over the dropper. What does the LED keep for itself?",
                    share=0.5,
                ),
                Slip(
                    "added the LED's drop",
                    lambda n: (n.volts + LED_VOLTS) / n.ohms,
                    "The LED's drop seems to have been added. Does the LED push, or does it take?",
                ),
                Slip(
                    "LED's drop over the dropper",
                    lambda n: LED_VOLTS / n.ohms,
                    "This is the LED's own voltage over the dropper. Which voltage stands there?",
                ),
            ),
            check="First work out the voltage across the dropper.",
        ),
        nudges=(
            "What is left for the dropper?",
            "Subtract the LED's drop, then divide by the dropper: volts by kilo-ohms gives mA.",
        ),
        working=lambda n: (
            f"({volts(n.volts)} − {volts(LED_VOLTS)}) / {ohms(n.ohms)} = "
            f"{milliamps(ohms_law.led_current(n.volts, LED_VOLTS, n.ohms))}."
        ),
        code=lambda n: f"ohms_law.led_current({n.volts}, {LED_VOLTS}, {n.ohms})",
    ),
)

PREDICT = Question(
    id="wave-predict",
    role="predict",
    outcome="commit to an expectation",
    ask=lambda n: (
        f"A dropper, an LED and a diode stand in series on your mains, {n.supply.name}. In one "
        "half-cycle the LED glows. In the other the diode blocks, and nothing flows. How many "
        "volts must the diode hold off then, at the worst instant?"
    ),
    kind=Choice(
        lambda n: (
            Option("none", "Nothing: without current there are no volts"),
            Option("led", "About 5 V, the usual reverse limit of an LED"),
            Option("label", f"Exactly what the label says, {volts(n.supply.volts_rms)}"),
            Option("more", f"Clearly more than {volts(n.supply.volts_rms)}"),
        )
    ),
    working=lambda n: (
        "without current the dropper takes no volts, so the diode has to hold off all of the "
        f"crest: {volts(mains.peak(n.supply.volts_rms))}, and {volts(crest_when_high(n))} when the "
        "supply is at its highest. The LED may keep a few volts of it; nobody relies on that."
    ),
)

# --- the wave and its three numbers ------------------------------------------------------------

DECIDED_BY = {
    "peak": "the peak of the wave",
    "rms": "the rms value of the wave",
    "mean": "the mean of the wave's size",
}
CONSEQUENCES = (
    ("diode", "what a diode must hold off in reverse", "peak",
     "A diode gives way in an instant. Which number knows the worst instant?"),
    ("led peak", "the most that the LED has to carry at one instant", "peak",
     "One instant is asked for, and it is the worst one. Which number knows it?"),
    ("pot", "the heat of the wax pot", "rms",
     "Heat grows with the square of the volts. Which number comes from squares?"),
    ("resistor", "how far a resistor may be driven by a whole sine", "rms",
     "A resistor's limit is about its heat and long wear, as with DC. Which number equals a DC?"),
    ("class X", "which mains rating, in volts AC, a class X capacitor needs", "rms",
     "A rating in volts AC is compared with the label and its tolerance. Which number is that?"),
    ("light", "how much light the LED gives", "mean",
     "Light follows the current at every instant, in proportion. Which number adds that up?"),
    ("plain meter", "what moves a plain meter (one that is not “true rms”)", "mean",
     "A plain meter rectifies and levels out. Which number is left?"),
)  # fmt: skip


def _consequence_options(n):
    return tuple(
        Option(key, text, right=number == n.number, reply=reply)
        for key, text, number, reply in CONSEQUENCES
    )


def _first_volts(draw, supply):
    share = draw.pick((0.93, 0.95, 0.97, 1.03, 1.05, 1.07))
    return {"volts": float(round(supply.volts_rms * share))}


def _generator(draw, supply):
    return {"hertz": supply.hertz * draw.pick((0.88, 0.92, 1.08, 1.12))}


def _read_supply(n):
    return mains.Supply(n.volts_peak / sqrt(2), n.supply.hertz)


WAVE = (
    Question(
        id="wave-1",
        outcome="find the peak of a supply from its rms value",
        numbers=_first_volts,
        ask=lambda n: (
            f"Today your mains stands at {volts(n.volts)} rms. How high is the crest of the wave, "
            "from zero?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=lambda n: mains.peak(n.volts),
            slips=(
                Slip(
                    "took rms as peak",
                    lambda n: n.volts,
                    "This is the rms value itself. Does the wave ever rise above its rms?",
                ),
                Slip(
                    "divided by root 2",
                    lambda n: n.volts / sqrt(2),
                    "This goes from peak to rms. Which of the two do you know, and which is asked?",
                ),
                Slip(
                    "peak to peak",
                    lambda n: 2 * sqrt(2) * n.volts,
                    "This reaches from the lowest point to the highest. From where is the crest "
                    "counted here?",
                    share=0.5,
                ),
                Slip(
                    "mean for peak",
                    lambda n: mains.mean(n.volts),
                    "This is the mean of the wave's size. Can a mean be the highest value?",
                ),
                Slip(
                    "form factor for peak factor",
                    lambda n: pi / (2 * sqrt(2)) * n.volts,
                    "1.11 leads from mean to rms. Which factor leads from rms to the crest?",
                ),
                Slip(
                    "doubled",
                    lambda n: 2 * n.volts,
                    "This is twice the rms. Which factor belongs to a sine?",
                ),
            ),
            check="The crest is higher than the rms, but less than twice as high.",
        ),
        nudges=(
            "Is the crest higher or lower than the rms value?",
            "Multiply by the square root of two.",
        ),
        working=lambda n: f"{volts(n.volts)} × √2 = {volts(mains.peak(n.volts))}.",
        code=lambda n: f"mains.peak({n.volts})",
    ),
    Question(
        id="wave-2",
        outcome="find how long a cycle and a half-cycle last",
        numbers=_generator,
        ask=lambda n: (
            f"At a candle fair the stall runs on an old generator at {write(n.hertz, 'frequency')} "
            f"instead of {write(n.supply.hertz, 'frequency')}. How long does one half-cycle last?"
        ),
        kind=Quantity(
            of="time",
            unit="ms",
            right=lambda n: 1 / (2 * n.hertz),
            slips=(
                Slip(
                    "whole cycle",
                    lambda n: 1 / n.hertz,
                    "This is a whole cycle. How many half-cycles are in it?",
                    share=0.5,
                ),
                Slip(
                    "quarter of a cycle",
                    lambda n: 1 / (4 * n.hertz),
                    "This is the time from zero to crest. How far does a half-cycle reach?",
                ),
                Slip(
                    "two cycles",
                    lambda n: 2 / n.hertz,
                    "This is two whole cycles. Does a half-cycle last longer or shorter than one?",
                ),
                Slip(
                    "frequency of the supply at home",
                    lambda n: 1 / (2 * n.supply.hertz),
                    "This is the half-cycle at home. How many cycles a second does the generator "
                    "make?",
                    share=0.5,
                ),
            ),
            check="First work out how long a whole cycle lasts.",
        ),
        nudges=(
            "How many cycles fit into one second, and so how long is one?",
            "Divide one second by the hertz; then take half.",
        ),
        working=lambda n: (
            f"One cycle lasts 1 s / {n.hertz:g} = {milliseconds(1 / n.hertz)}; half of it is "
            f"{milliseconds(1 / (2 * n.hertz))}."
        ),
        code=lambda n: f"1 / (2 * {n.hertz})",
    ),
    Question(
        id="wave-3",
        edition=2,
        outcome="say why the peak decides what a diode must hold off",
        ask=lambda n: (
            "Why this step? In the worked example the highest mains was multiplied by 1.414 before "
            "the diode was chosen. Why not choose it by the label?"
        ),
        kind=Choice(
            (
                Option(
                    "worst instant",
                    "A diode has to block at every instant, and the crest is the worst one.",
                    right=True,
                    reply="It breaks down within microseconds; no average can help it.",
                ),
                Option(
                    "heat",
                    "The crest makes more heat than the rms value, and heat is what wears a "
                    "diode out.",
                    reply="Which number was made so that heat comes out right?",
                ),
                Option(
                    "label is wrong",
                    "The label states the mean, which is too low.",
                    reply="What does the label state: peak, rms or mean?",
                ),
                Option(
                    "tolerance",
                    "The supply may stand 41 % above its label.",
                    reply="How far may it stand above its label? Look for the tolerance.",
                ),
            )
        ),
        nudges=(
            "How long does it take a diode to break down: a cycle, or an instant?",
            "Ask of each number what it averages over. Which one averages over nothing?",
        ),
        working=lambda n: (
            "A diode breaks down in an instant. The crest comes in every cycle, so the crest is "
            "what it must hold off, with room for surges. Insulation goes by rules of its own: air "
            "gaps by surges, the way along a surface by the rms value, a solid layer by a test."
        ),
    ),
    Question(
        id="wave-4",
        edition=2,
        level=2,
        marks=2,
        outcome="say which number of the wave decides what",
        numbers=lambda draw, supply: {"number": draw.pick(tuple(DECIDED_BY))},
        ask=lambda n: f"Which of these are decided by {DECIDED_BY[n.number]}?",
        kind=ChooseAll(_consequence_options),
        nudges=(
            "Does each of them care about an instant, about heat, or about a long-run average?",
            "Peak knows the worst instant, rms is made from squares, mean levels out. Which of "
            "these does each one need?",
        ),
        working=lambda n: (
            f"By {DECIDED_BY[n.number]}: "
            + "; ".join(text for _, text, number, _ in CONSEQUENCES if number == n.number)
            + "."
        ),
    ),
    Question(
        id="wave-5",
        level=2,
        outcome="read a waveform and find its rms value",
        numbers=lambda draw, supply: {
            "volts_peak": draw.pick((120.0, 160.0, 180.0, 240.0, 280.0, 340.0))
        },
        picture=lambda n: Picture("waveform", {"supply": _read_supply(n), "dimmer": NO_DIMMER}),
        ask=lambda n: (
            "Read the grid. The picture shows a clean sine, and not that of your own mains. What "
            "rms value does it have?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=lambda n: n.volts_peak / sqrt(2),
            slips=(
                Slip(
                    "took the crest as rms",
                    lambda n: n.volts_peak,
                    "This is the crest. Is the rms value of a sine higher or lower?",
                ),
                Slip(
                    "twice too much",
                    lambda n: n.volts_peak * sqrt(2),
                    "Twice the right size: either the crest was multiplied instead of divided, or "
                    "the whole height of the wave was taken. From where to where is the crest?",
                ),
                Slip(
                    "mean for rms",
                    lambda n: n.volts_peak * 2 / pi,
                    "This is the mean of the wave's size. Which factor leads from crest to rms?",
                    share=0.5,
                ),
                Slip(
                    "half of the crest",
                    lambda n: n.volts_peak / 2,
                    "This is half of the crest, the rms of a half-wave. How many half-cycles does "
                    "the picture show in each cycle?",
                ),
            ),
            check="First read how high the crest stands above zero.",
        ),
        nudges=(
            "How high does the wave rise above the zero line?",
            "Read the crest from zero, then divide by the square root of two.",
        ),
        working=lambda n: (
            f"The crest is {volts(n.volts_peak)}; divided by 1.414 that is "
            f"{volts(n.volts_peak / sqrt(2))}."
        ),
        code=lambda n: f"{n.volts_peak} / 2**0.5",
    ),
)

# --- what the LED gets -------------------------------------------------------------------------


def _dropper(draw, supply):
    return {"ohms": draw.pick((47_000.0, 56_000.0, 68_000.0, 82_000.0))}


def _simple_mean(volts_rms, resistance):
    return sqrt(2) * volts_rms / (pi * resistance)


def _wanted_dropper(n):
    return leds.dropper_for_mean("series_diode", n.supply, n.amps)


def _dropper_danger(value, n):
    amps = crest_when_high(n) / value if value > 0 else inf
    if amps > BURSTING * leds.LIMIT_AMPS:
        return "on the mains this resistor would burst or burn, and the LED with it."
    if amps > leds.LIMIT_AMPS:
        return (
            "on the mains this resistor would let more through than a small LED is made for. The "
            "LED can fail, and the resistor gets hot enough to burn."
        )
    return None


CYCLE = (
    Option("rising", "The voltage rises through zero."),
    Option(
        "starts",
        "It passes the drops of LED and diode: the current starts.",
        reply="Can the current start before the voltage has risen from zero?",
    ),
    Option(
        "crest",
        "The current is at its highest, the LED at its brightest.",
        reply="The brightest instant is at the crest. What happens on the way up to it?",
    ),
    Option(
        "stops",
        "It falls below both drops again: the LED goes dark.",
        reply="Does the LED go dark on the way to the crest or after it?",
    ),
    Option(
        "falling",
        "The voltage falls through zero: the diode begins to block.",
        reply="Just before zero the drops are already larger than the voltage. What follows?",
    ),
    Option(
        "trough",
        "The diode holds off the most.",
        reply="Where is the wave furthest below zero: before or after it crosses?",
    ),
)

# On the marks of the grid, which stand 0.4 ms apart. 2.8 ms at 60 Hz is left out: there the dark
# time and twice the lit time are the same.
CUT_STARTS = {50.0: (0.002, 0.0028, 0.0036, 0.006), 60.0: (0.002, 0.0036, 0.0044, 0.0052)}


def _cut_wave(n):
    return Dimmer("leading", 360 * n.supply.hertz * n.starts)


def _cut_seconds(n):
    point = operating_point("series_diode", n.supply, _cut_wave(n), ohms=100_000.0)
    return point.led_conduction_fraction / n.supply.hertz


def _half_cycle(n):
    return 1 / (2 * n.supply.hertz)


CURRENT = (
    Question(
        id="wave-6",
        outcome="find the peak current of an LED on the mains",
        numbers=_dropper,
        ask=lambda n: (
            f"An LED ({volts(LED_VOLTS)}), a diode ({write_as(DIODE_VOLTS, 'V')}) and "
            f"{ohms(n.ohms)} stand in series on your mains, {n.supply.name}. What current flows at "
            "the crest?"
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=lambda n: half_wave(n).led_amps_peak,
            simple=lambda n: mains.peak(n.supply.volts_rms) / n.ohms,
            slips=(
                Slip(
                    "rms instead of peak",
                    lambda n: (n.supply.volts_rms - LED_VOLTS - DIODE_VOLTS) / n.ohms,
                    "The right recipe with the volts of the label. How high is the wave at its "
                    "crest?",
                    share=0.5,
                ),
                Slip(
                    "peak to peak",
                    lambda n: 2 * mains.peak(n.supply.volts_rms) / n.ohms,
                    "This takes the wave from its lowest to its highest point. How much of that "
                    "pushes at one crest?",
                ),
                Slip(
                    "divided by root 2",
                    lambda n: n.supply.volts_rms / sqrt(2) / n.ohms,
                    "The label was divided by 1.414. Is the crest lower than the label, or higher?",
                ),
                Slip(
                    "mean instead of peak",
                    lambda n: _simple_mean(n.supply.volts_rms, n.ohms),
                    "This is the mean over a whole cycle. What flows at the single best instant?",
                ),
                Slip(
                    "drops over the dropper",
                    lambda n: (LED_VOLTS + DIODE_VOLTS) / n.ohms,
                    "This is the drop of LED and diode over the dropper. Which voltage stands "
                    "across the dropper?",
                ),
            ),
            check="First work out the crest of the supply.",
        ),
        nudges=(
            "How many volts push at the crest, and how many are left for the dropper?",
            "Crest, less the two drops, divided by the dropper. Volts by kilo-ohms gives mA.",
        ),
        working=lambda n: (
            f"Crest: √2 × {volts(n.supply.volts_rms)} = "
            f"{midway(mains.peak(n.supply.volts_rms), 'voltage')}. Less "
            f"{volts(LED_VOLTS + DIODE_VOLTS)}, over {ohms(n.ohms)}: "
            f"{milliamps(half_wave(n).led_amps_peak)}."
        ),
        code=lambda n: half_wave_code(n, "led_amps_peak"),
    ),
    Question(
        id="wave-7",
        level=2,
        marks=2,
        outcome="find the mean current of an LED on the mains",
        numbers=_dropper,
        ask=lambda n: (
            f"Now the mean. LED, diode and {ohms(n.ohms)} stand in series on {n.supply.name}. What "
            "is the mean current of the LED over a whole cycle? This is what its light follows."
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=lambda n: half_wave(n).led_amps_mean,
            simple=lambda n: _simple_mean(n.supply.volts_rms, n.ohms),
            slips=(
                Slip(
                    "forgot half-wave",
                    lambda n: 2 * _simple_mean(n.supply.volts_rms, n.ohms),
                    "This is the mean if the LED glowed in both half-cycles. What does the diode "
                    "do in the second?",
                    share=0.5,
                ),
                Slip(
                    "volts over ohms",
                    lambda n: n.supply.volts_rms / n.ohms,
                    "This is the quick sum, right for DC and for the rms of a lone resistor. What "
                    "share of it is left as a mean in one half-cycle of two?",
                ),
                Slip(
                    "half of the rms",
                    lambda n: n.supply.volts_rms / (2 * n.ohms),
                    "Half of the label over the dropper. Half the time is right; but is the mean "
                    "of a half-cycle as large as its rms?",
                    share=0.5,
                ),
                Slip(
                    "peak instead of mean",
                    lambda n: mains.peak(n.supply.volts_rms) / n.ohms,
                    "This is the current at the crest, which lasts an instant. What is its mean "
                    "over the whole cycle?",
                ),
                Slip(
                    "half of the peak, or rms",
                    lambda n: mains.peak(n.supply.volts_rms) / (2 * n.ohms),
                    "Half of the crest. For a half-wave that is also the rms value, which decides "
                    "the dropper's heat. Light follows the mean: what divides the crest then?",
                ),
            ),
            check="First work out the current at the crest.",
        ),
        nudges=(
            "How much of a cycle does the LED conduct, and how far below the crest is the mean?",
            "Current at the crest, divided by π. Or the quick sum times the share that the worked "
            "example found.",
        ),
        working=lambda n: (
            f"At the crest {milliamps(half_wave(n).led_amps_peak)}; over π that is nearly the "
            f"mean. The drops take a little more: {milliamps(half_wave(n).led_amps_mean)}. "
            f"The quick sum says {milliamps(n.supply.volts_rms / n.ohms)}."
        ),
        code=lambda n: half_wave_code(n, "led_amps_mean"),
    ),
    Question(
        id="wave-8",
        outcome="say why the mean of a half-wave is 0.45 of the rms value",
        ask=lambda n: (
            "Why this step? One half-cycle of two gets through. Yet the quick sum was multiplied "
            "by 0.45, not by 0.5. Where does the rest go?"
        ),
        kind=Choice(
            (
                Option(
                    "mean below rms",
                    "The label is an rms value, and the mean of a sine is only 0.9 of its rms.",
                    right=True,
                    reply="Half of the time, and 0.9 of the rms while it lasts: 0.45.",
                ),
                Option(
                    "drops",
                    "LED and diode keep a tenth of the voltage, so a tenth of the current "
                    "is missing.",
                    reply="What share of your mains is 2.7 V? Is it as much as a tenth?",
                ),
                Option(
                    "tolerance",
                    "The mains stands 10 % below its label.",
                    reply="It may, some days. Does a sum for the label's own value include that?",
                ),
                Option(
                    "off time",
                    "The LED is on for 0.45 of the cycle.",
                    reply="For what share of the cycle is the wave above the drops? Look at the "
                    "picture.",
                ),
            )
        ),
        nudges=(
            "Which kind of average is on the label, and which kind is asked for?",
            "Work out mean over rms for a whole sine, then take half.",
        ),
        working=lambda n: (
            "The mean of a sine is 0.9 of its rms value, and one half-cycle of two is left: "
            "0.9 / 2 = 0.45. The drops take one to three per cent more, depending on the supply."
        ),
    ),
    Question(
        id="wave-9",
        level=2,
        marks=2,
        outcome="find the dropper for a wanted mean current on the mains",
        numbers=lambda draw, supply: {"amps": draw.pick((0.0005, 0.0008, 0.0012, 0.0016))},
        edition=2,
        ask=lambda n: (
            f"The pilot light should get a mean current of {milliamps(n.amps)} on your mains, "
            f"{n.supply.name}, through a diode in series. What resistance does its dropper need? "
            "(On paper only: ratings and heat come in lesson 04.)"
        ),
        kind=Quantity(
            of="resistance",
            unit="kΩ",
            right=_wanted_dropper,
            simple=lambda n: _simple_mean(n.supply.volts_rms, n.amps),
            slips=(
                Slip(
                    "milliamperes as amperes",
                    lambda n: _simple_mean(n.supply.volts_rms, n.amps * 1000),
                    "Milliamperes seem to have been taken for amperes. How many kilo-ohms let "
                    "one milliampere through for each volt?",
                    "this resistor is a thousand times too small. On the mains it would burst or "
                    "burn at once.",
                ),
                Slip(
                    "LED's drop over current",
                    lambda n: LED_VOLTS / n.amps,
                    "This is the LED's own voltage over the current. Which voltage stands across "
                    "the dropper?",
                    "this resistor is far too small for the mains. The LED can burst and the "
                    "resistor burn.",
                ),
                Slip(
                    "bench supply of 12 V",
                    lambda n: (12.0 - LED_VOLTS) / n.amps,
                    "This is the sum for a bench supply of 12 V. Which supply is asked about?",
                    "this resistor is far too small for the mains. It can overheat and burn.",
                ),
                Slip(
                    "volts over amps",
                    lambda n: (n.supply.volts_rms - LED_VOLTS) / n.amps,
                    "This is the recipe for DC. It burns nothing, but a dim light warns nobody: "
                    "what share of the quick sum does the LED get?",
                ),
                Slip(
                    "forgot half-wave",
                    lambda n: 2 * _simple_mean(n.supply.volts_rms, n.amps),
                    "Twice too large: right if the LED glowed in both half-cycles. In how many "
                    "does it?",
                    share=0.5,
                ),
                Slip(
                    "peak over amps",
                    lambda n: mains.peak(n.supply.volts_rms) / n.amps,
                    "It burns nothing, but a light so dim warns nobody: this makes the wanted "
                    "current the crest. What is a half-wave's mean, seen from its crest?",
                ),
                Slip(
                    "half of the rms",
                    lambda n: n.supply.volts_rms / 2 / n.amps,
                    "Half of the label is close by luck. What is the mean of a half-wave, as a "
                    "share of the label?",
                    share=0.5,
                ),
            ),
            danger=_dropper_danger,
            check="First work out the mean voltage of one half-cycle in two.",
        ),
        nudges=(
            "Which voltage, levelled out over a whole cycle, drives the mean current?",
            "Crest over π is the mean of the half-wave; divide it by the wanted current.",
        ),
        working=lambda n: (
            f"Crest over π: {midway(mains.peak(n.supply.volts_rms) / pi, 'voltage')}. Over "
            f"{milliamps(n.amps)} that is {ohms(_simple_mean(n.supply.volts_rms, n.amps))}; with "
            f"the drops, {ohms(_wanted_dropper(n))}. {ROUNDING}"
        ),
        code=lambda n: (
            'leds.dropper_for_mean("series_diode", '
            f"mains.Supply({n.supply.volts_rms}, {n.supply.hertz}), {n.amps})"
        ),
    ),
    Question(
        id="wave-10",
        level=2,
        marks=2,
        outcome="put the instants of a mains cycle in order",
        ask=lambda n: (
            "Put the instants of one cycle in order, for an LED with a dropper and a diode in "
            "series. Begin as the wave leaves zero on its way up."
        ),
        kind=Order(CYCLE),
        nudges=(
            "Where is the wave at each of these instants: on the way up, at the top, below zero?",
            "Sketch one cycle. Draw a line a little above zero for the drops, and mark where the "
            "wave crosses it.",
        ),
        working=lambda n: (
            "Up through zero, over the drops, crest, below the drops, down through zero, trough."
        ),
    ),
    Question(
        id="wave-11",
        level=3,
        marks=2,
        outcome="read from a waveform how long an LED conducts",
        numbers=lambda draw, supply: {"starts": draw.pick(CUT_STARTS[supply.hertz])},
        picture=lambda n: Picture(
            "waveform", {"supply": n.supply, "dimmer": _cut_wave(n), "across": "ms"}
        ),
        ask=lambda n: (
            "A new picture: something cuts a piece out of each half-cycle. An LED with a dropper "
            "and a series diode runs on this wave. For how long does it glow in each whole cycle?"
        ),
        kind=Quantity(
            of="time",
            unit="ms",
            right=_cut_seconds,
            simple=lambda n: _half_cycle(n) - n.starts,
            slips=(
                Slip(
                    "both half-cycles",
                    lambda n: 2 * (_half_cycle(n) - n.starts),
                    "Both half-cycles are counted. In which of them does the diode let current "
                    "through?",
                    share=0.5,
                ),
                Slip(
                    "the piece that is cut out",
                    lambda n: n.starts,
                    "This is the piece that is missing. When does the wave come back, and when "
                    "does it reach zero?",
                ),
                Slip(
                    "the whole dark time",
                    lambda n: 2 * _half_cycle(n) - (_half_cycle(n) - n.starts),
                    "This is the time for which the LED is dark. How long is it lit?",
                ),
                Slip(
                    "a whole half-cycle",
                    _half_cycle,
                    "This is a full half-cycle. From when on is there any voltage in it?",
                ),
            ),
            check="Read when the upper piece begins and when it ends.",
        ),
        nudges=(
            "Which pieces of the wave push the way that the diode lets through?",
            "End of the upper piece, less its beginning.",
        ),
        working=lambda n: (
            f"The upper piece begins after {milliseconds(n.starts)} and ends at "
            f"{milliseconds(_half_cycle(n))}, a moment earlier for the drops: "
            f"{milliseconds(_cut_seconds(n))}. The lower piece does nothing."
        ),
        code=lambda n: (
            f'operating_point("series_diode", mains.Supply({n.supply.volts_rms}, '
            f'{n.supply.hertz}), phase_cut.Dimmer("leading", 360 * {n.supply.hertz} * {n.starts}), '
            f"ohms=100_000.0).led_conduction_fraction / {n.supply.hertz}"
        ),
    ),
)

# --- what has to be held off -------------------------------------------------------------------


# Pairs whose ratio keeps the wrong turns apart; twice the volts would hide a forgotten half-cycle.
ABROAD = dict.fromkeys((240.0, 230.0, 220.0, 110.0), mains.SUPPLIES["127 V 60 Hz"])
ABROAD |= dict.fromkeys((127.0, 120.0), mains.SUPPLIES["230 V 50 Hz"])
ABROAD[100.0] = mains.SUPPLIES["240 V 50 Hz"]
FACTS = (
    ("both halves", "The dropper carries current in both half-cycles.",
     ("diode_across", "resistor_only"),
     "Follow the current when the wave is below zero: is there any way round for it?"),
    ("diode holds off", "A diode must be made to hold off the crest of the mains.",
     ("series_diode",),
     "When the wave is below zero, which part blocks, and is there a diode at all?"),
    ("breakdown", "In every cycle the LED breaks down, and about as much current flows backwards "
     "as forwards.", ("resistor_only",),
     "Where do the volts of the lower half-cycle go? Which part lets a current through then, and "
     "which only a leak?"),
    ("held down", "The LED's reverse voltage is held down to about 0.7 V for certain.",
     ("diode_across",),
     "Which part could keep the LED's reverse voltage small, by conducting beside it?"),
    ("one half", "The LED glows in one half-cycle of two.",
     ("series_diode", "diode_across", "resistor_only"),
     "Which way must the current flow for an LED to glow?"),
    ("two halves", "The LED glows in both half-cycles.", (),
     "Which way must the current flow for an LED to glow?"),
)  # fmt: skip
CIRCUIT_WORDS = {
    "series_diode": "an LED, a dropper and a diode, all three in series",
    "diode_across": "an LED and a dropper in series, and a diode across the LED, the other way "
    "round",
    "resistor_only": "an LED and a dropper in series, and no diode at all",
}


LEAKS = {
    "series_diode": " An ideal diode leaves the LED 0 V in reverse. Real ones leak: the part that "
    "leaks less takes the volts, and that can be the LED, up to its breakdown. Usually only "
    "microamperes flow then."
}


def _fact_options(n):
    return tuple(
        Option(key, text, right=n.circuit in true_for, reply=reply)
        for key, text, true_for, reply in FACTS
    )


BREAKS_DOWN = (
    "a diode made for this can break down at the crests and fail. Then the LED is pushed backwards "
    "and the dropper gets twice its heat."
)
BIN_VOLTS = (50.0, 100.0, 200.0, 400.0, 600.0, 1000.0)
BIN_OHMS = (3_900.0, 5_600.0, 8_200.0, 12_000.0, 18_000.0, 27_000.0, 39_000.0, 56_000.0, 82_000.0)
BIN_OHMS += (120_000.0,)


def _mean(end, n, each):
    """Return the mean current of two resistors on the lowest or the highest mains."""
    return operating_point("series_diode", end(n.supply), ohms=2 * each).led_amps_mean


def _judge_parts(picked, n):
    rating, each = picked
    low, high = (
        operating_point("series_diode", end(n.supply), ohms=2 * each)
        for end in (mains.lowest, mains.highest)
    )
    return [
        judged(
            "diode made for twice the highest crest",
            0.4,
            [rules.diode(high.diode_reverse_volts_peak, rating)],
            "Which rating is at least twice that crest?",
        ),
        Criterion(
            "not too much current",
            high.led_amps_mean <= n.most_amps,
            0.3,
            f"When the supply stands high, the LED gets {milliamps(high.led_amps_mean)} on "
            f"average and {milliamps(high.led_amps_peak)} at the crest. At most "
            f"{milliamps(n.most_amps)} on average is wanted.",
            "the LED gets more than a small one is made for and can fail, and the dropper gets hot "
            "enough to burn."
            if not rules.passes([rules.led(high.led_amps_peak)])
            else "",
        ),
        Criterion(
            "bright enough",
            low.led_amps_mean >= n.least_amps,
            0.3,
            f"When the supply stands low, the LED gets {milliamps(low.led_amps_mean)} on average. "
            f"At least {milliamps(n.least_amps)} is wanted.",
        ),
    ]


def _best_parts(n):
    return next(
        (rating, each)
        for each in reversed(BIN_OHMS)
        for rating in BIN_VOLTS
        if all(criterion.passed for criterion in _judge_parts((rating, each), n))
    )


REVERSE = (
    Question(
        id="wave-12",
        edition=2,
        level=2,
        outcome="find what a diode must hold off when the supply stands high",
        numbers=lambda draw, supply: {"percent": draw.pick((7.0, 8.0, 9.0, 7.5))},
        ask=lambda n: (
            f"Tonight your mains, {n.supply.name}, stands {n.percent:g} % above its label. How "
            "many volts must the series diode of a pilot light hold off at the worst instant?"
        ),
        kind=Quantity(
            of="voltage",
            unit="V",
            right=lambda n: crest_when_high(n, n.percent),
            slips=(
                Slip(
                    "tolerance left out",
                    lambda n: mains.peak(n.supply.volts_rms),
                    "This is the crest of the label's own value. Where does the supply stand "
                    "tonight?",
                    BREAKS_DOWN,
                ),
                Slip(
                    "rms instead of peak",
                    lambda n: n.supply.volts_rms * (1 + n.percent / 100),
                    "This is tonight's rms value. Does the diode meet an average, or each crest?",
                    BREAKS_DOWN,
                ),
                Slip(
                    "took the label",
                    lambda n: n.supply.volts_rms,
                    "This is the label. How high is the crest above it, and how high does the "
                    "supply stand tonight?",
                    BREAKS_DOWN,
                ),
                Slip(
                    "percent taken off",
                    lambda n: crest_when_high(n, -n.percent),
                    "The percentage was taken off. Which end of the tolerance is the hard one for "
                    "a diode?",
                    BREAKS_DOWN,
                ),
                Slip(
                    "LED's reverse limit",
                    lambda n: leds.REVERSE_RATING_VOLTS,
                    "This is what an LED may stand in reverse. The diode is there to take the "
                    "rest: how much is that?",
                    BREAKS_DOWN,
                ),
                Slip(
                    "peak to peak",
                    lambda n: 2 * crest_when_high(n, n.percent),
                    "This reaches from the lowest point to the highest. Does the dropper keep any "
                    "volts from the half-cycle before?",
                    share=0.5,
                ),
            ),
            check="First work out tonight's rms value, then its crest.",
        ),
        nudges=(
            "While nothing flows, how many volts does the dropper take, and what is left?",
            "All of the crest is left: raise the label by the percentage, then multiply by root "
            "two.",
        ),
        working=lambda n: (
            f"Tonight {midway(n.supply.volts_rms * (1 + n.percent / 100), 'voltage')} rms; times "
            f"√2 that is {volts(crest_when_high(n, n.percent))}. The dropper takes nothing, "
            "because nothing flows."
        ),
        code=lambda n: f"mains.peak({n.supply.volts_rms} * (1 + {n.percent} / 100))",
    ),
    Question(
        id="wave-13",
        edition=2,
        level=2,
        marks=2,
        outcome="say what each place of a diode does for LED and dropper",
        numbers=lambda draw, supply: {"circuit": draw.pick(tuple(CIRCUIT_WORDS))},
        ask=lambda n: (
            f"On the mains stand {CIRCUIT_WORDS[n.circuit]}. Which of these are true of this "
            "circuit?"
        ),
        kind=ChooseAll(_fact_options),
        nudges=(
            "What does each part do while the wave is below zero?",
            "Draw the lower half-cycle: mark what conducts, and write the volts across the rest.",
        ),
        working=lambda n: (
            "True here: "
            + " ".join(text for _, text, true_for, _ in FACTS if n.circuit in true_for)
            + LEAKS.get(n.circuit, "")
        ),
    ),
    Question(
        id="wave-14",
        level=2,
        outcome="find the wrong step in an argument about reverse voltage",
        numbers=lambda draw, supply: {"rating": draw.pick((50.0, 75.0, 100.0))},
        ask=lambda n: (
            "Find the mistake. “First: in the dark half-cycle no current flows. Second: without "
            "current the dropper takes no volts. Third: where nothing flows there are no volts for "
            f"the diode either, so one made for {volts(n.rating)} will do.”"
        ),
        kind=Choice(
            (
                Option(
                    "third",
                    "The third: what the dropper does not take stands across the diode, all of it.",
                    right=True,
                    reply="Blocking means exactly that: no current, and all of the volts.",
                ),
                Option(
                    "second",
                    "The second: a dropper always takes most of the volts.",
                    reply="Volts across a resistor are current times ohms. What if the current is "
                    "zero?",
                ),
                Option(
                    "first",
                    "The first: current flows in both half-cycles.",
                    reply="Which way does the diode let current through, and which way not?",
                ),
                Option(
                    "none",
                    "No step is wrong: the argument holds.",
                    reply="The supply's crest has to stand across something. Across which part?",
                    danger=BREAKS_DOWN,
                ),
            )
        ),
        nudges=(
            "If the volts of the supply are not across the dropper, where are they?",
            "In a loop all volts add up to the supply's. Write down each part's share at the "
            "trough.",
        ),
        working=lambda n: (
            "In a loop the volts of all parts add up to the supply's. The dropper's share is zero, "
            f"so the diode's is the whole crest, {volts(mains.peak(n.supply.volts_rms))}. A diode "
            f"for {volts(n.rating)} breaks down."
        ),
    ),
    Question(
        id="wave-15",
        level=2,
        outcome="find the wrong step in a sum about half-waves",
        numbers=lambda draw, supply: {"ohms": draw.pick((39_000.0, 68_000.0, 120_000.0))},
        ask=lambda n: (
            f"Find the mistake. “First: my label says {volts(n.supply.volts_rms)}, an rms value. "
            "Second: the diode lets every other half-cycle through. Third: so half of the volts, "
            f"{volts(n.supply.volts_rms / 2)}, are left. Fourth: over {ohms(n.ohms)} that gives "
            f"the LED a mean of {milliamps(n.supply.volts_rms / 2 / n.ohms)}.”"
        ),
        kind=Choice(
            (
                Option(
                    "third",
                    "The third: the label is an rms value. Half of the time does not halve that.",
                    right=True,
                    reply="The crest stays whole, the mean is 0.45 of the label, and the rms 0.71.",
                ),
                Option(
                    "second",
                    "The second: the diode lets both half-cycles through.",
                    reply="Which way does a diode conduct? What is the wave's sign in each half?",
                ),
                Option(
                    "first",
                    "The first: the label states the crest.",
                    reply="Compare with the picture of the wave: where does the label's value lie?",
                ),
                Option(
                    "fourth",
                    "The fourth: kilo-ohms must not be divided into volts.",
                    reply="Volts by kilo-ohms gives milliamperes. Which voltage was divided?",
                ),
            )
        ),
        nudges=(
            "After the diode, how high is the crest of what is left?",
            "Work out crest, rms and mean of the half-wave one by one. Is any of them half of the "
            "label?",
        ),
        working=lambda n: (
            f"After the diode the crest is still {volts(mains.peak(n.supply.volts_rms))}. The mean "
            f"is {volts(mains.mean(n.supply.volts_rms) / 2)}, the rms "
            f"{volts(n.supply.volts_rms / sqrt(2))}. Not one of them is half of the label. "
            f"The LED gets {milliamps(half_wave(n).led_amps_mean)}."
        ),
    ),
    Question(
        id="wave-16",
        level=3,
        marks=2,
        outcome="work out what another mains does to a pilot light",
        numbers=lambda draw, supply: {
            "ohms": draw.pick((82_000.0, 100_000.0, 120_000.0, 330_000.0)),
            "other": ABROAD[supply.volts_rms],
        },
        edition=2,
        ask=lambda n: (
            f"A pilot light for {n.supply.name} holds a dropper of {ohms(n.ohms)}, an LED and a "
            "diode. Its LED "
            f"gets a mean of {milliamps(half_wave(n).led_amps_mean)} there. Somebody takes it to a "
            f"country with {n.other.name}. What mean current would the LED get? (On paper only: "
            "never plug in what was made for another mains.)"
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=lambda n: half_wave(n, n.other).led_amps_mean,
            simple=lambda n: _simple_mean(n.other.volts_rms, n.ohms),
            slips=(
                Slip(
                    "squared the ratio of the volts",
                    lambda n: (
                        half_wave(n).led_amps_mean * (n.other.volts_rms / n.supply.volts_rms) ** 2
                    ),
                    "The ratio of the volts was squared. That fits heat. What does a current do?",
                    share=0.5,
                ),
                Slip(
                    "turned the ratio round",
                    lambda n: half_wave(n).led_amps_mean * n.supply.volts_rms / n.other.volts_rms,
                    "The ratio stands upside down. Do more volts push more current or less?",
                ),
                Slip(
                    "unchanged",
                    lambda n: half_wave(n).led_amps_mean,
                    "This is the current at home. The dropper stays; what happens to the volts?",
                ),
                Slip(
                    "volts over ohms",
                    lambda n: n.other.volts_rms / n.ohms,
                    "This is the quick sum on the other supply. What share of it does the LED get?",
                ),
                Slip(
                    "forgot half-wave",
                    lambda n: 2 * _simple_mean(n.other.volts_rms, n.ohms),
                    "This is the mean if both half-cycles lit the LED. In how many does it glow?",
                    share=0.5,
                ),
            ),
            check="Compare the two supplies: volts, and hertz. Which of them matters here?",
        ),
        nudges=(
            "Behind a resistor, do the hertz change how much of a cycle is lit, or how often it "
            "comes?",
            "The current goes with the volts; scale it by the ratio of the two labels.",
        ),
        working=lambda n: (
            f"{milliamps(half_wave(n).led_amps_mean)} × {n.other.volts_rms:g} / "
            f"{n.supply.volts_rms:g}, give or take a little for the drops: "
            f"{milliamps(half_wave(n, n.other).led_amps_mean)}. Behind a resistor the hertz change "
            "only how often the pulses come; a capacitor as dropper would let more through at "
            "more hertz. Heat goes with the square: a part sized for the lower mains must never be "
            "plugged into the higher."
        ),
        code=lambda n: (
            f'operating_point("series_diode", mains.Supply({n.other.volts_rms}, '
            f"{n.other.hertz}), ohms={n.ohms}).led_amps_mean"
        ),
    ),
    Question(
        id="wave-17",
        edition=2,
        level=3,
        marks=3,
        outcome="choose a series diode and a dropper for a supply with its tolerance",
        numbers=lambda draw, supply: {
            "least_amps": (least := draw.pick((0.0003, 0.0006, 0.0009))),
            "most_amps": 2.2 * least,
        },
        ask=lambda n: (
            f"Your mains, {n.supply.name}, may stand lower or higher than its label. The LED needs "
            f"a mean of at least {milliamps(n.least_amps)} when it stands low, and at most "
            f"{milliamps(n.most_amps)} when it stands high. The dropper is two equal resistors in "
            "series: one alone, shorted, would put the LED straight on the mains. Pick a series "
            "diode and one value for both. The diode must be made for at least twice the highest "
            "crest. (On paper only: what the resistors must be rated for comes in lesson 04.)"
        ),
        kind=Parts(
            (
                Field("diode, reverse voltage", "voltage", BIN_VOLTS, "V"),
                Field("each of the two resistors", "resistance", BIN_OHMS),
            ),
            _judge_parts,
            _best_parts,
        ),
        nudges=(
            "Between which two resistances must both together lie? And what is the highest crest?",
            "0.45 of the low supply over the least current, 0.45 of the high supply over the most: "
            "pick a value of which two lie in between. Then twice the crest at the highest mains.",
        ),
        working=lambda n: (
            f"At the highest mains the crest is {volts(crest_when_high(n))}; twice that asks for a "
            f"diode of {volts(_best_parts(n)[0])}. With two of {ohms(_best_parts(n)[1])} the LED "
            f"gets {milliamps(_mean(mains.lowest, n, _best_parts(n)[1]))} when "
            "the supply is low and "
            f"{milliamps(_mean(mains.highest, n, _best_parts(n)[1]))} when "
            "it is high. Behind a dimmer nearly twice the crest can stand at the diode, and surges "
            "come on top: take 1000 V there (lesson 05)."
        ),
    ),
)

QUESTIONS = (*RECALL, PREDICT, *WAVE, *CURRENT, *REVERSE)
