"""Lesson 03: the mains wave, its three numbers, and what they do to an LED behind a dropper.

Half-wave unless a question says otherwise. Heat is the business of lesson 04, the dimmer of 05.
"""

from math import inf, sqrt

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
from helpers.exercises.roads.steps.general import UNASKED_HIGH, given, knowing, label, over
from helpers.exercises.roads.steps.mains import (
    CREST_ALONE,
    FORM_FOR_CREST,
    HALF_CREST,
    OTHER_FACTORS,
    crest,
    cycle,
    half_cycle,
    half_wave_mean,
    less_cut,
    per_cent_more,
    rms_of_crest,
)
from helpers.exercises.roads.steps.ohms import dc_current, less_drop
from helpers.physics import leds, mains, resistors
from helpers.physics.circuits import SILICON_VOLTS
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import NO_DIMMER, Dimmer
from helpers.quantities.writing import milliamps
from helpers.sizing import rules

LESSON = "03"
TITLE = "The mains is not what the label says"

LED_VOLTS = 2.0  # Common practice, no source: a red LED.
BURSTING = 5  # times an LED's limit at the crest: over 3 W in the dropper on any household mains
ROUNDING = (
    "If in doubt, the next value up: it keeps the current and the heat down. Where the light would "
    "be too dim at the lowest mains, or at a dimmer's lowest setting, the next value down may be "
    "needed. Then check current and heat at the highest mains."
)


def half_wave(n, supply=None):
    """What the LED gets with a dropper and a diode in series."""
    return operating_point("series_diode", supply or n.supply, ohms=n.ohms)


HALF_WAVE_CODE = (
    'operating_point("series_diode", mains.Supply({supply.volts_rms}, {supply.hertz}), '
    "ohms={ohms})."
)


def label_crest(n):
    return mains.peak(n.supply.volts_rms)


def highest_crest(n):
    return mains.peak(mains.highest(n.supply).volts_rms)


# --- look back ---------------------------------------------------------------------------------

ISOLATING_STEPS = {
    "isolate": ("pull the plug", "While it is plugged in, nothing else can make it safe."),
    "lock off": ("lock the plug away", "Somebody else could put it back during the work."),
    "prove the tester": (
        "prove the tester on a proving unit",
        "A broken tester shows zero on a live wire.",
    ),
    "prove dead": ("prove the pot's own terminals dead", "It may have been another plug."),
    "prove the tester again": (
        "prove the tester on that unit once more",
        "It may have failed during the test itself.",
    ),
}


def _isolating_options(n):
    in_plan = "That one is in the plan. Which danger does each step rule out, and which is left?"
    needed = "Without it the other four prove nothing."
    return tuple(
        Option(key, f"To {step}.", key == n.missing, needed if key == n.missing else in_plan)
        for key, (step, _) in ISOLATING_STEPS.items()
    )


DC_CREST = Turn(
    "took the crest of a DC supply", "Does DC rise above its volts?",
    lambda value, volts, n: sqrt(2) * volts,
)  # fmt: skip

RECALL = (
    Question(
        id="wave-recall-1",
        edition=3,
        role="recall",
        outcome="type a quantity with its unit",
        numbers=lambda draw, supply: {
            "ohms": draw.pick((82_000.0, 120_000.0, 330_000.0, 390_000.0, 470_000.0))
        },
        ask="From lesson 00: a drawer is marked {ohms:MΩ}. How much is that in kΩ?",
        kind=Amount("resistance", "kΩ", Road(given("ohms"))),
        nudges=("How many kilo-ohms make one mega-ohm?", "Move the point three places right."),
        working="A mega-ohm is a thousand kilo-ohms: {ohms:MΩ} are {right}.",
        code=lambda n: f"{n.ohms / 1e6} * 1e6",
    ),
    Question(
        id="wave-recall-2",
        edition=2,
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
        edition=3,
        role="recall",
        outcome="find the current of an LED on a bench supply",
        numbers=lambda draw, supply: {
            "volts": draw.pick((9.0, 10.0, 18.0)),
            "led_volts": LED_VOLTS,
            "ohms": draw.pick((1_200.0, 3_300.0, 4_700.0)),
        },
        ask="From lesson 02: a red LED keeps {led_volts}. It sits behind {ohms} on a bench supply "
        "of {volts} DC. What current flows?",
        kind=Amount(
            "current",
            "mA",
            Road(
                knowing(given("volts"), DC_CREST),
                less_drop("led_volts"),
                dc_current("ohms"),
            ),
        ),
        nudges=(
            "What is left for the dropper?",
            "Subtract the LED's drop, then divide by the dropper: volts by kilo-ohms gives mA.",
        ),
    ),
)

PREDICT = Question(
    id="wave-predict",
    role="predict",
    outcome="commit to an expectation",
    ask="A dropper, an LED and a diode stand in series on your mains, {supply}. In one half-cycle "
    "the LED glows. In the other the diode blocks, and nothing flows. How many volts must the "
    "diode hold off then, at the worst instant?",
    kind=Choice("""
        wrong none: Nothing: without current there are no volts
        wrong led: About 5 V, the usual reverse limit of an LED
        wrong label: Exactly what the label says, {supply.volts_rms}
        wrong more: Clearly more than {supply.volts_rms}
    """),
    facts={"crest_volts": label_crest, "high_volts": highest_crest},
    working="without current the dropper takes no volts, so the diode has to hold off all of the "
    "crest: {crest_volts}, and {high_volts} when the supply is at its highest. The LED may keep a "
    "few volts of it; nobody relies on that.",
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
    share = draw.pick((0.93, 0.95, 0.94, 1.06, 1.05, 1.07))  # its crest is not the label's
    return {"volts": float(round(supply.volts_rms * share))}


FIRST_CREST = knowing(crest(), *CREST_ALONE)  # where nothing follows that they would be mixed with
LABEL_FOR_TODAY = Turn(
    "took the label, not today's volts", "Where does your mains stand today?",
    lambda value, volts, n: n.supply.volts_rms,
)  # fmt: skip
OWN_HERTZ = Turn(
    "took the hertz of your own mains", "How many cycles a second does the generator make?",
    lambda value, hertz, n: n.supply.hertz,
)  # fmt: skip


def _generator(draw, supply):
    return {"hertz": supply.hertz * draw.pick((0.88, 0.92, 1.08, 1.12))}


def _read_supply(n):
    return mains.Supply(n.volts_peak / sqrt(2), n.supply.hertz)


def _division(n):
    """Return what the grid shows as one division [V]."""
    return 50.0 if n.volts_peak <= 200 else 100.0


READ_CREST = given("volts_peak", called="the crest", turns=(
    Turn("took the wave from trough to crest", "From where to where is a crest measured?",
         lambda value, volts, n: 2 * volts),
    Turn("counted divisions for volts", "How many volts is one division?",
         lambda value, volts, n: volts / _division(n)),
    Turn("took a division for half its volts", "How many volts is one division?",
         lambda value, volts, n: volts / 2),
    Turn("took a small mark for a tenth of a division", "How many small marks has a division?",
         lambda value, volts, n: volts - volts % _division(n) / 2),
))  # fmt: skip


WAVE = (
    Question(
        id="wave-1",
        edition=3,
        outcome="find the peak of a supply from its rms value",
        numbers=_first_volts,
        ask="Today your mains stands at {volts} rms. How high is the crest of the wave, from zero?",
        kind=Amount(
            "voltage",
            "V",
            Road(
                given("volts", turns=(LABEL_FOR_TODAY, UNASKED_HIGH)),
                knowing(FIRST_CREST, *OTHER_FACTORS),
            ),
            measure="peak",
        ),
        nudges=(
            "Is the crest higher or lower than the rms value?",
            "Multiply by the square root of two.",
        ),
    ),
    Question(
        id="wave-2",
        edition=2,
        outcome="find how long a cycle and a half-cycle last",
        numbers=_generator,
        ask="At a candle fair the stall runs on an old generator at {hertz} instead of "
        "{supply.hertz}. How long does one half-cycle last?",
        kind=Amount(
            "time",
            "ms",
            Road(given("hertz", turns=(OWN_HERTZ,)), cycle(), half_cycle()),
            slips=(
                Slip(
                    "let more hertz mean more time",
                    lambda n: n.hertz / n.supply.hertz**2 / 2,
                    "If more cycles fit into a second, is each longer or shorter?",
                ),
            ),
        ),
        nudges=(
            "How many cycles fit into one second, and so how long is one?",
            "Divide one second by the hertz; then take half.",
        ),
    ),
    Question(
        id="wave-3",
        edition=3,
        outcome="say why the peak decides what a diode must hold off",
        ask="Why this step? In the worked example the highest mains was multiplied by 1.414 before "
        "the diode was chosen. Why not choose it by the label?",
        kind=Choice("""
            right worst instant: A diode has to block at every instant, and the crest is the worst
              one.
              reply: It breaks down within microseconds; no average can help it.
            wrong heat: The crest makes more heat than the rms value, and heat is what wears a diode
                out.
              reply: Which number was made so that heat comes out right?
            wrong label is wrong: The label states the mean, which is too low.
              reply: What does the label state: peak, rms or mean?
            wrong tolerance: The supply may stand 41 % above its label.
              reply: How far may it stand above its label? Look for the tolerance.
        """),
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
        edition=3,
        level=2,
        outcome="read a waveform and find its rms value",
        numbers=lambda draw, supply: {
            "volts_peak": draw.pick((120.0, 140.0, 180.0, 240.0, 280.0, 340.0))
        },
        picture=lambda n: Picture("waveform", {"supply": _read_supply(n), "dimmer": NO_DIMMER}),
        ask="Read the grid. The picture shows a clean sine, and not that of your own mains. What "
        "rms value does it have?",
        kind=Amount("voltage", "V", Road(READ_CREST, rms_of_crest()), measure="rms"),
        nudges=(
            "How high does the wave rise above the zero line?",
            "Read the crest from zero, then divide by the square root of two.",
        ),
        working="The crest, read off the grid, over √2: {sum}.",
    ),
)

# --- what the LED gets -------------------------------------------------------------------------


def _dropper(draw, supply):
    return {
        "ohms": draw.pick((47_000.0, 56_000.0, 68_000.0, 82_000.0)),
        "led_volts": LED_VOLTS,
        "diode_volts": SILICON_VOLTS,
    }


def _wanted_dropper(n):
    return leds.dropper_for_mean("series_diode", n.supply, n.amps)


MEAN_AMPS = tuple(step / 20_000 for step in range(10, 37))


def _mean_amps(draw, supply):
    """Draw a current whose dropper lies well below the next value that is made."""

    def rounding_shows(amps):
        exact = leds.dropper_for_mean("series_diode", supply, amps)
        return resistors.next_up(exact, "E12") > 1.155 * exact

    return {"amps": draw.pick([amps for amps in MEAN_AMPS if rounding_shows(amps)])}


def _dropper_danger(value, n):
    amps = highest_crest(n) / value if value > 0 else inf
    if amps > BURSTING * leds.LIMIT_AMPS:
        return "on the mains this resistor would burst or burn, and the LED with it."
    if amps > leds.LIMIT_AMPS:
        return (
            "on the mains this resistor would let more through than a small LED is made for. The "
            "LED can fail, and the resistor gets hot enough to burn."
        )
    return None


CYCLE = options("""
    wrong rising: The voltage rises through zero.
    wrong starts: It passes the drops of LED and diode: the current starts.
      reply: Can the current start before the voltage has risen from zero?
    wrong crest: The current is at its highest, the LED at its brightest.
      reply: The brightest instant is at the crest. What happens on the way up to it?
    wrong stops: It falls below both drops again: the LED goes dark.
      reply: Does the LED go dark on the way to the crest or after it?
    wrong falling: The voltage falls through zero: the diode begins to block.
      reply: Just before zero the drops are already larger than the voltage. What follows?
    wrong trough: The diode holds off the most.
      reply: Where is the wave furthest below zero: before or after it crosses?
""")

# On the marks of the grid, which stand 0.4 ms apart.
CUT_STARTS = (0.0024, 0.0028, 0.0036, 0.0044, 0.0052, 0.006)
LIT = Road(
    given(lambda n: 0.5 / n.supply.hertz, "time", "the end of the piece"), less_cut("starts")
)


def _cut_wave(n):
    return Dimmer("leading", 360 * n.supply.hertz * n.starts)


def _cut_seconds(n):
    point = operating_point("series_diode", n.supply, _cut_wave(n), ohms=100_000.0)
    return point.led_conduction_fraction / n.supply.hertz


CREST_AMPS = "the current at the crest"


def _quick(wrong):
    """The quick sum with the drops taken off first, as for DC."""
    asks = "That is right for DC. What share is left as a mean in one half-cycle of two?"
    return Slip("used the quick sum, volts over ohms", wrong, asks, share=0.5)


def _drop_alone(wrong):
    return Slip("took the LED's drop alone", wrong, "Which voltage stands across the resistor?",
                share=0.5)  # fmt: skip


CURRENT = (
    Question(
        id="wave-6",
        edition=3,
        outcome="find the peak current of an LED on the mains",
        numbers=_dropper,
        ask="An LED ({led_volts}), a diode ({diode_volts:V}) and {ohms} stand in series on your "
        "mains, {supply}. What current flows at the crest?",
        kind=Amount(
            "current",
            "mA",
            Road(label(), FIRST_CREST, over("ohms", called=CREST_AMPS)),
            exact=lambda n: half_wave(n).led_amps_peak,
            measure="peak",
            crest=2,
            slips=(
                Slip(
                    "took the label for the crest",
                    lambda n: (n.supply.volts_rms - LED_VOLTS - SILICON_VOLTS) / n.ohms,
                    "How high does the wave rise above its label?",
                    share=0.5,
                ),
                _drop_alone(lambda n: (LED_VOLTS + SILICON_VOLTS) / n.ohms),
            ),
        ),
        nudges=(
            "How many volts push at the crest, and how many are left for the dropper?",
            "Crest, less the two drops, divided by the dropper. Volts by kilo-ohms gives mA.",
        ),
        working="{sum}. With the drops of LED and diode taken off the crest first, it is {right}.",
        code=HALF_WAVE_CODE + "led_amps_peak",
    ),
    Question(
        id="wave-7",
        edition=3,
        level=2,
        marks=2,
        outcome="find the mean current of an LED on the mains",
        numbers=_dropper,
        facts={"quick_amps": lambda n: n.supply.volts_rms / n.ohms},
        ask="Now the mean. LED, diode and {ohms} stand in series on {supply}. What is the mean "
        "current of the LED over a whole cycle? This is what its light follows.",
        kind=Amount(
            "current",
            "mA",
            Road(label(), crest(), over("ohms", called=CREST_AMPS), half_wave_mean()),
            exact=lambda n: half_wave(n).led_amps_mean,
            measure="mean",
            slips=(
                _quick(lambda n: (n.supply.volts_rms - LED_VOLTS - SILICON_VOLTS) / n.ohms),
                Slip(
                    "took what an LED may carry",
                    lambda n: leds.LIMIT_AMPS,
                    "What decides the current here: the LED's sheet, or volts and ohms?",
                ),
            ),
        ),
        nudges=(
            "How much of a cycle does the LED conduct, and how far below the crest is the mean?",
            "Current at the crest, divided by π. Or the quick sum times the share that the worked "
            "example found.",
        ),
        working="{sum}. The drops take a little more: {right}. The quick sum says {quick_amps:mA}.",
        code=HALF_WAVE_CODE + "led_amps_mean",
    ),
    Question(
        id="wave-8",
        edition=2,
        outcome="say why the mean of a half-wave is 0.45 of the rms value",
        ask="Why this step? One half-cycle of two gets through. Yet the quick sum was multiplied "
        "by 0.45, not by 0.5. Where does the rest go?",
        kind=Choice("""
            right mean below rms: The label is an rms value, and the mean of a sine is only 0.9 of
                its rms.
              reply: Half of the time, and 0.9 of the rms while it lasts: 0.45.
            wrong drops: LED and diode keep a tenth of the voltage, so a tenth of the current is
                missing.
              reply: What share of your mains is 2.7 V? Is it as much as a tenth?
            wrong tolerance: The mains stands 10 % below its label.
              reply: It may, some days. Does a sum for the label's own value include that?
            wrong off time: The LED is on for 0.45 of the cycle.
              reply: For what share of the cycle is the wave above the drops? Look at the picture.
        """),
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
        edition=3,
        level=2,
        marks=2,
        outcome="find the dropper for a wanted mean current on the mains",
        numbers=_mean_amps,
        ask="The pilot light should get a mean current of {amps:mA} on your mains, {supply}, "
        "through a diode in series. What resistance does its dropper need? (On paper only: ratings "
        "and heat come in lesson 04.)",
        kind=Amount(
            "resistance",
            "kΩ",
            Road(
                label(),
                crest(),
                half_wave_mean("voltage", "the mean of the half-wave"),
                over("amps", "resistance", "the dropper"),
            ),
            exact=_wanted_dropper,
            slips=(
                _drop_alone(lambda n: LED_VOLTS / n.amps),
                _quick(lambda n: (n.supply.volts_rms - LED_VOLTS) / n.amps),
                Slip(
                    "rounded up to a value of the series",
                    lambda n: resistors.next_up(_wanted_dropper(n), "E12"),
                    "Is it the sum that is asked for, or already a part that can be bought?",
                    share=0.5,
                ),
            ),
            danger=_dropper_danger,
        ),
        nudges=(
            "Which voltage, levelled out over a whole cycle, drives the mean current?",
            "Crest over π is the mean of the half-wave; divide it by the wanted current.",
        ),
        working="{sum}; with the drops, {right}. " + ROUNDING,
        code='leds.dropper_for_mean("series_diode", '
        "mains.Supply({supply.volts_rms}, {supply.hertz}), {amps})",
    ),
    Question(
        id="wave-10",
        level=2,
        marks=2,
        outcome="put the instants of a mains cycle in order",
        ask="Put the instants of one cycle in order, for an LED with a dropper and a diode in "
        "series. Begin as the wave leaves zero on its way up.",
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
        edition=3,
        level=3,
        marks=2,
        outcome="read from a waveform how long an LED conducts",
        numbers=lambda draw, supply: {
            "starts": draw.pick(clear(LIT, supply, "starts", CUT_STARTS))
        },
        picture=lambda n: Picture(
            "waveform", {"supply": n.supply, "dimmer": _cut_wave(n), "across": "ms"}
        ),
        ask="A new picture: something cuts a piece out of each half-cycle. An LED with a dropper "
        "and a series diode runs on this wave. For how long does it glow in each whole cycle?",
        kind=Amount(
            "time",
            "ms",
            LIT,
            exact=_cut_seconds,
        ),
        nudges=(
            "Which pieces of the wave push the way that the diode lets through?",
            "End of the upper piece, less its beginning.",
        ),
        working="The upper piece ends with its half-cycle: {sum}. The drops take a moment more: "
        "{right}. The lower piece does nothing.",
        code='operating_point("series_diode", mains.Supply({supply.volts_rms}, {supply.hertz}), '
        'phase_cut.Dimmer("leading", 360 * {supply.hertz} * {starts}), '
        "ohms=100_000.0).led_conduction_fraction / {supply.hertz}",
    ),
)

# --- what has to be held off -------------------------------------------------------------------


ABROAD = (mains.Supply(127.0, 60.0), mains.Supply(230.0, 50.0))
ABROAD += (mains.Supply(100.0, 60.0), mains.Supply(100.0, 50.0))
# Beside these ratios of two labels one wrong turn hides another, or the right answer; how near.
HIDING_RATIOS = {0.5: 0.04, 1.0: 0.08, 2.0: 0.04}
HERTZ_ASKS = "Behind a resistor, what do the hertz change: how much flows, or how often it comes?"
OTHER_LABEL = given(
    lambda n: n.other.volts_rms, "voltage", called="the volts of the other mains", turns=(
        Turn("let more hertz mean less current", HERTZ_ASKS,
             lambda value, volts, n: volts * n.supply.hertz / n.other.hertz),
        Turn("let more hertz mean more current", HERTZ_ASKS,
             lambda value, volts, n: volts * n.other.hertz / n.supply.hertz),
    ),
)  # fmt: skip


def _scaled(power):
    """Return the mean at home, scaled by a power of the ratio of both labels."""
    return lambda n: half_wave(n).led_amps_mean * (n.other.volts_rms / n.supply.volts_rms) ** power


def _abroad(supply):
    """Return a mains of other hertz, at volts that keep the wrong turns apart."""
    return next(
        other
        for other in ABROAD
        if other.hertz != supply.hertz
        and all(
            abs(other.volts_rms / supply.volts_rms / ratio - 1) > near
            for ratio, near in HIDING_RATIOS.items()
        )
    )


RATIO_SLIPS = (
    Slip("turned the ratio round", _scaled(-1), "Do more volts push more current or less?"),
    Slip("left the other mains out", _scaled(0), "The dropper stays; what happens to the volts?"),
    Slip("squared the ratio", _scaled(2), "Which goes with a square: heat, or current?", share=0.5),
    Slip("took the root of the ratio", _scaled(0.5), "Where does a root come from?", share=0.5),
)
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


def _breaks_down(value, n):
    tonight = mains.peak(n.supply.volts_rms) * (1 + n.percent / 100)
    return BREAKS_DOWN if value < tonight else None


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


_best_parts = first_that_passes(
    _judge_parts,
    ((rating, each) for each in reversed(BIN_OHMS) for rating in BIN_VOLTS),
)


REVERSE = (
    Question(
        id="wave-12",
        edition=5,
        level=2,
        outcome="find what a diode must hold off when the supply stands high",
        # Two numbers that are not right: the usual 10 %, and the per cent added twice.
        numbers=lambda draw, supply: {"percent": draw.pick((4.0, 5.0, 6.0))},
        ask="Tonight your mains, {supply}, stands {percent} above its label. How many volts must "
        "the series diode of a pilot light hold off at the worst instant?",
        kind=Amount(
            "voltage",
            "V",
            Road(
                label(),
                per_cent_more("percent", "tonight's rms value"),
                knowing(crest(), HALF_CREST, FORM_FOR_CREST),
            ),
            slips=(
                Slip(
                    "took what an LED stands in reverse",
                    lambda n: leds.REVERSE_RATING_VOLTS,
                    "The diode is there to take the rest: how much is that?",
                ),
            ),
            danger=_breaks_down,
            measure="peak",
            below=0.005,  # three digits, and 1.41 for the root of two
        ),
        nudges=(
            "While nothing flows, how many volts does the dropper take, and what is left?",
            "All of the crest is left: raise the label by the percentage, then multiply by root "
            "two.",
        ),
        working="{sum}. The dropper takes nothing, because nothing flows.",
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
        edition=2,
        level=2,
        outcome="find the wrong step in an argument about reverse voltage",
        numbers=lambda draw, supply: {"rating": draw.pick((50.0, 75.0, 100.0))},
        facts={"crest_volts": label_crest, "rated_volts": lambda n: n.rating},
        ask="Find the mistake. “First: in the dark half-cycle no current flows. Second: without "
        "current the dropper takes no volts. Third: where nothing flows there are no volts for the "
        "diode either, so one made for {rated_volts} will do.”",
        kind=Choice(
            options(f"""
                right third: The third: what the dropper does not take stands across the diode, all
                    of it.
                  reply: Blocking means exactly that: no current, and all of the volts.
                wrong second: The second: a dropper always takes most of the volts.
                  reply: Volts across a resistor are current times ohms. What if the current is
                    zero?
                wrong first: The first: current flows in both half-cycles.
                  reply: Which way does the diode let current through, and which way not?
                wrong none: No step is wrong: the argument holds.
                  reply: The supply's crest has to stand across something. Across which part?
                  danger: {BREAKS_DOWN}
            """)
        ),
        nudges=(
            "If the volts of the supply are not across the dropper, where are they?",
            "In a loop all volts add up to the supply's. Write down each part's share at the "
            "trough.",
        ),
        working="In a loop the volts of all parts add up to the supply's. The dropper's share is "
        "zero, so the diode's is the whole crest, {crest_volts}. A diode for {rated_volts} breaks "
        "down.",
    ),
    Question(
        id="wave-15",
        edition=2,
        level=2,
        outcome="find the wrong step in a sum about half-waves",
        numbers=lambda draw, supply: {"ohms": draw.pick((39_000.0, 68_000.0, 120_000.0))},
        facts={
            "half_volts": lambda n: n.supply.volts_rms / 2,
            "half_amps": lambda n: n.supply.volts_rms / 2 / n.ohms,
            "crest_volts": label_crest,
            "mean_volts": lambda n: mains.mean(n.supply.volts_rms) / 2,
            "rms_volts": lambda n: n.supply.volts_rms / sqrt(2),
            "led_amps": lambda n: half_wave(n).led_amps_mean,
        },
        ask="Find the mistake. “First: my label says {supply.volts_rms}, an rms value. Second: the "
        "diode lets every other half-cycle through. Third: so half of the volts, {half_volts}, are "
        "left. Fourth: over {ohms} that gives the LED a mean of {half_amps:mA}.”",
        kind=Choice("""
            right third: The third: the label is an rms value. Half of the time does not halve that.
              reply: The crest stays whole, the mean is 0.45 of the label, and the rms 0.71.
            wrong second: The second: the diode lets both half-cycles through.
              reply: Which way does a diode conduct? What is the wave's sign in each half?
            wrong first: The first: the label states the crest.
              reply: Compare with the picture of the wave: where does the label's value lie?
            wrong fourth: The fourth: kilo-ohms must not be divided into volts.
              reply: Volts by kilo-ohms gives milliamperes. Which voltage was divided?
        """),
        nudges=(
            "After the diode, how high is the crest of what is left?",
            "Work out crest, rms and mean of the half-wave one by one. Is any of them half of the "
            "label?",
        ),
        working="After the diode the crest is still {crest_volts}. The mean is {mean_volts}, the "
        "rms {rms_volts}. Not one of them is half of the label. The LED gets {led_amps:mA}.",
    ),
    Question(
        id="wave-16",
        edition=4,
        level=3,
        marks=2,
        outcome="work out what another mains does to a pilot light",
        numbers=lambda draw, supply: {
            "ohms": draw.pick((82_000.0, 100_000.0, 120_000.0, 330_000.0)),
            "other": _abroad(supply),
        },
        facts={"home_amps": lambda n: half_wave(n).led_amps_mean},
        ask="A pilot light for {supply} holds a dropper of {ohms}, an LED and a diode. Its LED "
        "gets a mean of {home_amps:mA} there. Somebody takes it to a country with {other}. What "
        "mean current would the LED get? (On paper only: never plug in what was made for another "
        "mains.)",
        kind=Amount(
            "current",
            "mA",
            Road(OTHER_LABEL, crest(), over("ohms", called=CREST_AMPS), half_wave_mean()),
            exact=lambda n: half_wave(n, n.other).led_amps_mean,
            measure="mean",
            slips=RATIO_SLIPS,
        ),
        nudges=(
            "Behind a resistor, do the hertz change how much of a cycle is lit, or how often it "
            "comes?",
            "The current goes with the volts; scale it by the ratio of the two labels.",
        ),
        working="{home_amps:mA} × {other.volts_rms} / {supply.volts_rms}, give or take a little "
        "for the drops: {right}. Behind a resistor the hertz change only how often the pulses "
        "come; a capacitor as dropper would let more through at more hertz. Heat goes with the "
        "square: a part sized for the lower mains must never be plugged into the higher.",
        code=HALF_WAVE_CODE.replace("supply.", "other.") + "led_amps_mean",
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
        facts={
            "low_volts": lambda n: mains.lowest(n.supply).volts_rms,
            "most_volts": lambda n: mains.highest(n.supply).volts_rms,
            "high_volts": highest_crest,
            "diode_volts": lambda n: _best_parts(n)[0],
            "each_ohms": lambda n: _best_parts(n)[1],
            "low_amps": lambda n: _mean(mains.lowest, n, _best_parts(n)[1]),
            "high_amps": lambda n: _mean(mains.highest, n, _best_parts(n)[1]),
        },
        ask="Your mains, {supply}, may stand as low as {low_volts} or as high as {most_volts}. The "
        "LED needs a mean of at least {least_amps:mA} when it stands low, and at most "
        "{most_amps:mA} when it stands high. The dropper is two equal resistors in series: one "
        "alone, shorted, would put the LED straight on the mains. Pick a series diode and one "
        "value for both. The diode must be made for at least twice the highest crest. (On paper "
        "only: what the resistors must be rated for comes in lesson 04.)",
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
        working="At the highest mains the crest is {high_volts}; twice that asks for a diode of "
        "{diode_volts}. With two of {each_ohms} the LED gets {low_amps:mA} when the supply is low "
        "and {high_amps:mA} when it is high. Behind a dimmer nearly twice the crest can stand at "
        "the diode, and surges come on top: take 1000 V there (lesson 05).",
    ),
)

QUESTIONS = (*RECALL, PREDICT, *WAVE, *CURRENT, *REVERSE)
