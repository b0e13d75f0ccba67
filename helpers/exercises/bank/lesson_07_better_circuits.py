"""Lesson 07: seven ways to light a pilot light, what each asks of its parts, and what hurts.

A bridge has twice the light for twice the heat; a capacitor drops volts without heat and passes
every edge; a bleeder empties it; a neon lamp goes out at once. A ready-made one needs no building.

No draw asks for the numbers of a worked example or for what an explorer can be set to, and none
leaves a wrong turn within the band.
"""

from dataclasses import replace
from functools import cache
from math import asin, degrees, pi

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
from helpers.exercises.roads import Road, Turn
from helpers.exercises.roads.steps import circuits as steps
from helpers.exercises.roads.steps.general import factor, given, knowing, label, over
from helpers.exercises.roads.steps.heat import MEAN_BY_RMS, squared_over, whole_year
from helpers.exercises.roads.steps.mains import CREST, HALF_CREST, SUPPLY, crest
from helpers.exercises.roads.steps.safety import WEAK_DROPPER, called_too_low
from helpers.physics import (
    capacitor_dropper,
    capacitors,
    compared,
    energy,
    heater,
    leds,
    mains,
    phase_cut,
    ratings,
)
from helpers.physics.operating_point import operating_point
from helpers.quantities import write, write_as

LESSON = "07"
TITLE = "Better circuits"

# Lines of code, to be filled with the personal numbers.
AT_EDGE = f"phase_cut.volts_at({SUPPLY}, phase_cut.NO_DIMMER, {{degrees}})"


def _pot_ohms(n):
    return n.supply.volts_rms**2 / heater.POT_WATTS


def _dropper(n, dimmer=phase_cut.NO_DIMMER, surge_ohms=1_000.0):
    parts = capacitor_dropper.Parts(n.farads, getattr(n, "surge_ohms", surge_ohms))
    return capacitor_dropper.steady(parts, n.supply, dimmer, heater_ohms=_pot_ohms(n))


def _leading(n):
    return phase_cut.Dimmer("leading", n.degrees)


# --- look back ---------------------------------------------------------------------------------

BOTH_WAYS_HEAT = Road(
    label(),
    knowing(
        squared_over("ohms"),
        MEAN_BY_RMS,
        Turn("halved the volts", "Half the time, or half the volts?",
             lambda value, ohms, n: value * value / 4 / ohms),
    ),
)  # fmt: skip

DECIDES = {
    "how much light an LED gives": "mean",
    "how hot a resistor gets": "rms",
    "what a diode must hold off": "peak",
}


def _measures(n):
    replies = {
        "peak": "The peak lasts an instant. What does a part that is too weak for an instant do?",
        "rms": "Rms is the value of heat. Is heat asked for?",
        "mean": "The mean is the value of light. Is light asked for?",
    }
    spoken = {
        "peak": "The peak of the wave.",
        "rms": "The rms value.",
        "mean": "The mean of its size.",
    }
    return tuple(
        Option(
            key,
            text,
            right=DECIDES[n.what] == key,
            reply="" if DECIDES[n.what] == key else replies[key],
        )
        for key, text in spoken.items()
    )


RECALL = (
    Question(
        id="better-recall-1",
        edition=2,
        role="recall",
        outcome="find the heat in a dropper that carries both half-cycles",
        numbers=lambda draw, supply: {"ohms": draw.pick((33e3, 39e3, 68e3, 82e3))},
        ask="From lesson 04: an LED with a diode across it stands behind a dropper of {ohms}, on "
        "your mains, {supply}. Both half-cycles pass the dropper. Leave the small drops out: how "
        "much heat does the dropper give?",
        kind=Amount(
            "power",
            "W",
            BOTH_WAYS_HEAT,
            slips=(
                Slip(
                    "counted one half-cycle only",
                    lambda n: n.supply.volts_rms**2 / n.ohms / 2,
                    "Which way does the current go in the half-cycle in which the LED is dark?",
                    share=0.5,
                ),
            ),
            danger=called_too_low(BOTH_WAYS_HEAT.value, 0.6, WEAK_DROPPER),
        ),
        nudges=(
            "In how many of two half-cycles does the dropper get current?",
            "Square the label and divide by the ohms.",
        ),
    ),
    Question(
        id="better-recall-2",
        role="recall",
        outcome="say which part can shock with the plug out",
        ask="From lesson 01: the plug is out and lies on the bench. What of a pilot light can "
        "still shock whoever touches the pins?",
        kind=Choice("""
            right capacitor: A capacitor that nothing empties.
              reply: It keeps the volts of the instant at which the plug was pulled.
            wrong nothing: Nothing: with the plug out there is no mains.
              reply: Is there a part that keeps volts by itself?
              danger: a capacitor without a bleeder holds up to the crest of the mains for hours.
                Touching the pins can shock badly.
            wrong dropper: The dropper, until it has cooled.
              reply: Does a resistor keep volts, or warmth?
            wrong led: The LED, for as long as it still glows.
              reply: Where would its current come from?
        """),
        nudges=("Which kind of part stores charge?",),
        working="A capacitor keeps its charge. A resistor across it, the bleeder, empties it; "
        "whoever opens a device still proves it dead.",
    ),
    Question(
        id="better-recall-3",
        role="recall",
        outcome="say which value of a wave decides what",
        numbers=lambda draw, supply: {"what": draw.pick(tuple(DECIDES))},
        ask="From lesson 05: a dimmer pulls three values of the wave apart. Which one decides "
        "{what}?",
        kind=Choice(_measures),
        nudges=("Does it build up over time, or does one instant settle it?",),
        working="Mean for light, rms for heat, peak for what has to be held off and for the "
        "highest current.",
    ),
)


def _pulse_ratio(n):
    parts, pot = compared.DROPPER, n.supply.volts_rms**2 / heater.POT_WATTS
    cut = phase_cut.Dimmer("leading", 90.0)
    pulse, sine = (
        capacitor_dropper.steady(parts, n.supply, dimmer, heater_ohms=pot).led_amps_peak
        for dimmer in (cut, phase_cut.NO_DIMMER)
    )
    return pulse / sine


PREDICT = Question(
    id="better-predict",
    role="predict",
    outcome="commit to an expectation",
    ask="A capacitor of 100 nF takes the place of the dropper, with 1 kΩ in series. On the plain "
    "mains it works well and stays cool. Now a dimmer cuts in at the crest, at 90°. What becomes "
    "of the LED's highest current?",
    kind=Choice("""
        wrong half: It halves
        wrong alike: It stays about the same
        wrong double: It doubles
        wrong many: It grows more than twenty times
    """),
    facts={"times_ratio": _pulse_ratio},
    working="it grows {times_ratio:2} times. A capacitor passes every steep edge, and only the "
    "small resistor beside it holds the current back.",
)

# --- five circuits with a resistor ----------------------------------------------------------------

BRIDGE_MEAN = Road(label(), crest(), over("ohms", called="the current at the crest"),
                   steps.full_wave_mean())  # fmt: skip
SAME_LIGHT_HEAT = Road(
    label(),
    knowing(
        squared_over(Road(given("ohms"), steps.for_both_halves()), called="the heat"),
        MEAN_BY_RMS,
        Turn("halved it as for a half-wave", "How many half-cycles pass a bridge?",
             lambda value, ohms, n: value * value / ohms / 2),
    ),
)  # fmt: skip

# From the most heat down, on every supply: V² over 33, 66, 100 and 200 kilo-ohms, then a capacitor.
BY_HEAT = options("""
    wrong across: A diode across the LED, behind {low_ohms}.
    wrong series low: A diode in series with the LED, behind {low_ohms}.
      reply: The diode in series behind {low_ohms}: how many half-cycles pass there, and how many
        with the diode across?
    wrong bridge: A bridge with the LED inside, behind {high_ohms}.
      reply: The bridge behind {high_ohms} against the diode in series behind {low_ohms}: what does
        V² over the ohms come to for each, halved where a diode blocks?
    wrong series high: A diode in series with the LED, behind {high_ohms}.
      reply: The diode in series behind {high_ohms} has the same ohms as the bridge. How many
        half-cycles fewer pass?
    wrong capacitor: A capacitor of {farads} and 470 Ω, with bridge and LED, no dimmer.
      reply: The capacitor against the diode in series behind {high_ohms}. Which parts of the
        capacitor's row turn current into heat, and which gives it back?
""")

RESISTORS = (
    Question(
        id="better-1",
        edition=2,
        outcome="find the mean current of an LED in a bridge",
        numbers=lambda draw, supply: {"ohms": draw.pick((27e3, 39e3, 56e3, 82e3))},
        ask="Your turn with the second step of the example: a bridge with one LED stands behind a "
        "dropper of {ohms} on your mains, {supply.volts_rms}. No dimmer. What mean current does "
        "the LED get?",
        kind=Amount(
            "current",
            "mA",
            BRIDGE_MEAN,
            exact=lambda n: operating_point("bridge", n.supply, ohms=n.ohms).led_amps_mean,
            measure="mean",
            crest=None,
        ),
        nudges=(
            "How many of two half-cycles does the LED get, and what is the mean of each?",
            "Multiply the label by 0.9 and divide by the ohms.",
        ),
        working="{sum}; with the drops of two diodes and the LED taken off, {right}.",
        code=f'operating_point("bridge", {SUPPLY}, ohms={{ohms}}).led_amps_mean',
    ),
    Question(
        id="better-2",
        edition=2,
        level=2,
        marks=2,
        outcome="exchange a diode for a bridge at the same light",
        numbers=lambda draw, supply: {"ohms": draw.pick((33e3, 39e3, 56e3, 68e3))},
        ask="An LED with a diode in series is bright enough behind {ohms}, but its flicker annoys. "
        "A bridge takes the diode's place, with a new dropper for the same mean current. Leave the "
        "small drops out: how much heat does the new dropper give on your mains, "
        "{supply.volts_rms}?",
        kind=Amount(
            "power", "W", SAME_LIGHT_HEAT,
            danger=called_too_low(SAME_LIGHT_HEAT.value, 0.6, WEAK_DROPPER),
        ),
        nudges=(
            "The bridge brings a second half-cycle. Which ohms give the same mean?",
            "Double the ohms. Both half-cycles pass them, so it is the square of the label over "
            "those ohms.",
        ),
        working="{sum}. It is the heat of the old dropper as well: same light, same heat, twice "
        "the flashes in a second.",
    ),
    Question(
        id="better-3",
        level=2,
        marks=2,
        outcome="order circuits by their heat",
        numbers=lambda draw, supply: {
            "low_ohms": draw.pick((22e3, 27e3, 33e3)),
            "high_ohms": draw.pick((100e3, 120e3)),
            "farads": draw.pick((33e-9, 47e-9)),
        },
        ask="Five circuits on your mains, {supply}. Put them in order of the heat of all their "
        "parts together, the most on top.",
        kind=Order(BY_HEAT),
        nudges=(
            "Which of them use both half-cycles, and which has hardly any resistance?",
            "Work out the square of the label over the ohms, and halve it where a diode blocks "
            "one half-cycle.",
        ),
        working=lambda n: (
            "From top to bottom: "
            + ", ".join(write(watts, "power") for watts in _by_heat_watts(n))
            + "."
        ),
    ),
)  # fmt: skip


def _by_heat_watts(n):
    of = [("diode_across", n.low_ohms), ("series_diode", n.low_ohms),
          ("bridge", n.high_ohms), ("series_diode", n.high_ohms)]  # fmt: skip
    point = _dropper(n, surge_ohms=470.0)
    return (
        *(operating_point(circuit, n.supply, ohms=ohms).branch_watts for circuit, ohms in of),
        point.surge_watts + point.led_watts + point.bridge_watts,
    )


# --- the capacitor -------------------------------------------------------------------------------

# Over 1.414 is half of the crest here, and two turns of this road halve as well.
CHARGING_CREST = replace(crest(), turns=tuple(t for t in CREST if t.name != "divided by 1.414"))
DROPPER_MEAN = Road(label(), CHARGING_CREST, steps.charge_turned("farads"), steps.each_half_cycle())
SURGE_HEAT = Road(
    label(),
    over(Road(given("farads"), steps.reactance()), called="the current", operand_of="resistance"),
    steps.heat_of("surge_ohms"),
)
PIN_VOLTS = Road(
    given(lambda n: mains.highest(n.supply).volts_rms, of="voltage", called="the highest mains"),
    crest(),
    steps.left_after_a_second("ohms", "farads"),
)
# On no supply does one leave so nearly 34 V that the band lies on both sides of it.
BLEEDERS = ((100e-9, 3.3e6), (100e-9, 3.9e6), (330e-9, 1.5e6), (470e-9, 1e6), (330e-9, 1.2e6))


def _pins_called_safe(value, n):
    if value <= capacitors.PIN_VOLTS < PIN_VOLTS.value(n):
        return (
            "more than this is left, and it can shock. Whoever takes the pins for safe can be "
            "hurt, or drop what they hold."
        )
    return None


BIN_OHMS = (47e3, 330e3, 470e3, 1e6, 2.2e6, 4.7e6, 10e6)
BIN_COUNTS = (1, 2, 3, 4)
BIN_VOLTS = (75.0, 150.0, 200.0, 350.0)
BLEEDER_WATTS = 0.25


def _judge_bleeder(picked, n):
    each, count, stands = picked
    count = int(count)
    left = capacitors.pins(n.supply, n.farads, count * each)
    high = mains.highest(n.supply).volts_rms
    whole = ratings.share_of_string(high, count, 5.0)
    alone = ratings.share_of_string(high, count - 1, 5.0) if count > 1 else high
    heat = capacitors.bleeder_watts(high, count * each) / count
    heat_after = (
        capacitors.bleeder_watts(high, (count - 1) * each) / (count - 1) if count > 1 else 0.0
    )
    return [
        Criterion(
            "at most 34 V after one second",
            left.volts_left <= capacitors.PIN_VOLTS,
            0.3,
            f"After one second {write(left.volts_left, 'voltage')} are left at the worst.",
            f"{write(left.volts_left, 'voltage')} are left on the pins after one second, and they "
            "can shock.",
        ),
        Criterion(
            "no single short bridges the capacitor",
            count > 1,
            0.2,
            "With one of them shorted, others still stand between the ends of the capacitor.",
            "when the only one fails short, the surge resistor stands alone against the mains. It "
            "burns.",
        ),
        Criterion(
            "each stands its volts, also after one short",
            max(whole, alone) <= stands,
            0.3,
            f"Each has {write(whole, 'voltage')} rms at the most, {write(alone, 'voltage')} after "
            "one short.",
            "one with more volts than it stands can arc over, and the others after it. Then the "
            "surge resistor stands alone against the mains, and burns.",
        ),
        Criterion(
            "cool, also after one short",
            heat <= BLEEDER_WATTS / 2 and heat_after <= BLEEDER_WATTS,
            0.2,
            f"Each gives {write(heat, 'power')}, and {write(heat_after, 'power')} after one short.",
        ),
    ]


_best_bleeder = first_that_passes(
    _judge_bleeder,
    (
        (each, count, stands)
        for count in BIN_COUNTS
        for stands in BIN_VOLTS
        for each in reversed(BIN_OHMS)
    ),
)


CAPACITOR = (
    Question(
        id="better-4",
        edition=2,
        outcome="find the mean current that a capacitor lets through",
        numbers=lambda draw, supply: {"farads": draw.pick((39e-9, 56e-9, 82e-9, 120e-9))},
        ask="The capacitor of the example, but with {farads}, and your mains, {supply}. Bridge and "
        "LED as before, no dimmer. Leave the small drops out: what mean current does the LED get?",
        kind=Amount(
            "current",
            "mA",
            DROPPER_MEAN,
            exact=lambda n: _dropper(n).led_amps_mean,
            measure="mean",
            crest=None,
            slips=(
                Slip(
                    "took the rms current for the mean",
                    lambda n: 2 * pi * n.supply.hertz * n.farads * n.supply.volts_rms,
                    "Volts over the capacitor's ohms is an rms value. Does light follow that?",
                    share=0.5,
                ),
            ),
        ),
        nudges=(
            "How much charge moves when the capacitor goes from one crest to the other, and how "
            "often does it do so in a second?",
            "Twice the farads times the crest is one half-cycle's charge. Two half-cycles make a "
            "cycle, and the hertz count the cycles.",
        ),
        working="{sum}; with the drops of bridge and LED taken off, {right}.",
        code="capacitor_dropper.steady(capacitor_dropper.Parts({farads}, 1000.0), " + SUPPLY
        + ", heater_ohms={supply.volts_rms}**2 / 90).led_amps_mean",
    ),
    Question(
        id="better-5",
        outcome="say why a capacitor drops volts without heat",
        ask="Why this step? In the example the heat was worked out with the surge resistor's ohms "
        "alone, and the capacitor's volts times its amps were left out.",
        kind=Choice("""
            right gives back: It gives back in one quarter of the cycle what it took in another.
              reply: Its current runs a quarter of a cycle ahead of its volts.
            wrong small: Its current is so small that its heat may be left out.
              reply: The surge resistor has the same current. Was its heat left out?
            wrong blocks: It blocks alternating current, so none flows through it.
              reply: What would light the LED then?
            wrong outside: Its heat goes into the wires of the house.
              reply: What would the wires have to be made of to take it?
        """),
        nudges=(
            "When the capacitor's volts are at their highest, is it still taking in current?",
            "Follow one cycle: in which quarters do volts and current have the same sign, and in "
            "which not?",
        ),
        working="Volts and current of a capacitor lie a quarter of a cycle apart. Over a cycle it "
        "returns what it took, so the product is no heat. What a power meter calls volt-amperes "
        "is larger than the watts.",
    ),
    Question(
        id="better-6",
        edition=2,
        level=2,
        marks=2,
        outcome="find the heat in the surge resistor on a plain sine",
        numbers=lambda draw, supply: {
            "farads": draw.pick((43e-9, 82e-9, 91e-9)),
            "surge_ohms": draw.pick((560.0, 680.0, 820.0)),
        },
        ask="A capacitor dropper of {farads} with a surge resistor of {surge_ohms}, bridge and LED "
        "stands on your mains, {supply}. No dimmer. Leave the small drops out: how much heat does "
        "the surge resistor give?",
        kind=Amount(
            "power",
            "mW",
            SURGE_HEAT,
            exact=lambda n: _dropper(n).surge_watts,
        ),
        nudges=(
            "Which part decides the current here, and which one turns it into heat?",
            "The capacitor's ohms are one over 2π times hertz times farads. Volts over them is the "
            "current; its square times the surge ohms is the heat.",
        ),
        working="{sum}; with the small drops taken off, {right}.",
        code="capacitor_dropper.steady(capacitor_dropper.Parts({farads}, {surge_ohms}), " + SUPPLY
        + ", heater_ohms={supply.volts_rms}**2 / 90).surge_watts",
    ),
    Question(
        id="better-7",
        edition=2,
        level=2,
        marks=2,
        outcome="find what is left on the pins after one second",
        numbers=lambda draw, supply: dict(
            zip(("farads", "ohms"), draw.pick(BLEEDERS), strict=True)
        ),
        facts={"high_volts": lambda n: mains.highest(n.supply).volts_rms},
        ask="A capacitor dropper with {farads} and a bleeder of {ohms} in all. The plug is pulled "
        "at the crest, with the mains at its highest, {high_volts}. How many volts are left on the "
        "pins one second later?",
        kind=Amount(
            "voltage",
            "V",
            PIN_VOLTS,
            slips=(
                Slip(
                    "took the label for the highest mains",
                    lambda n: PIN_VOLTS.value(n) * n.supply.volts_rms
                    / mains.highest(n.supply).volts_rms,
                    "Which of the two numbers of the mains does the question give?",
                    share=0.5,
                ),
            ),
            danger=_pins_called_safe,
        ),
        nudges=(
            "How many time constants, farads times ohms, go by in one second?",
            "Find the crest of the highest mains. Divide one second by the time constant, and take "
            "e to minus that power times the crest.",
        ),
        code=f"capacitors.volts_left(1.0, {{farads}}, {{ohms}}, "
        f"mains.peak(mains.highest({SUPPLY}).volts_rms))",
        working="{sum}. At most 34 V is what IEC 60335-1 allows after one second.",
    ),
    Question(
        id="better-8",
        edition=2,
        level=3,
        marks=3,
        outcome="choose a bleeder that empties in time and survives one short",
        numbers=lambda draw, supply: {"farads": draw.pick((100e-9, 330e-9, 470e-9))},
        facts={
            "high_volts": lambda n: mains.highest(n.supply).volts_rms,
            "bleeder_watts": lambda n: BLEEDER_WATTS,
            "pin_volts": lambda n: capacitors.PIN_VOLTS,
        },
        ask="On paper: a bleeder for a capacitor of {farads}, made of equal resistors in series, "
        "each rated {bleeder_watts:W}. The mains reaches {high_volts} at its highest. The "
        "capacitor may be 10 % above its value, the resistors 5 %.\n\n"
        "After one second at most {pin_volts} may be left on the pins. No single short may bridge "
        "the capacitor. Each resistor stands its share of the rms volts, also after one of them "
        "fails short. While all is sound each takes at most half of its rating, and after one "
        "short no more than its rating.\n\n"
        "Pick the value of each, how many, and the rms volts that their type stands.",
        kind=Parts(
            (
                Field("value of each", "resistance", BIN_OHMS),
                Field("how many in series", "ratio", BIN_COUNTS),
                Field("volts that the type stands", "voltage", BIN_VOLTS, "V"),
            ),
            _judge_bleeder,
            _best_bleeder,
        ),
        nudges=(
            "Which wish sets the most ohms in all, and which the least?",
            "Try a total: e to minus one second over ohms times farads, both at their highest, "
            "times the crest. Then count those that are left after one short, and share the volts "
            "among them.",
        ),
        working=lambda n: (
            f"{_best_bleeder(n)[1]} of {write(_best_bleeder(n)[0], 'resistance')}, a type for "
            f"{write_as(_best_bleeder(n)[2], 'V')}. "
            + " ".join(c.reply for c in _judge_bleeder(_best_bleeder(n), n))
        ),
    ),
)  # fmt: skip

# --- the pulse -----------------------------------------------------------------------------------


def _division_volts(supply):
    """What a division of the grid is worth: 1, 2 or 5 times ten, the crest within four of them."""
    return 100.0 if mains.peak(supply.volts_rms) > 200.0 else 50.0


# Five a division: none ends on a whole one. A jump beside the label of the mains is left out.
JUMP_MARKS = (7, 8, 9, 6, 12, 13)


def _jump_numbers(draw, supply):
    mark, top = _division_volts(supply) / 5, mains.peak(supply.volts_rms)
    jumps = [mark * count for count in JUMP_MARKS if mark * count < 0.95 * top]
    jump = draw.pick(tuple(v for v in jumps if abs(v / supply.volts_rms - 1) > 0.05))
    return {"jump_volts": jump, "degrees": 180 - degrees(asin(jump / top))}


JUMP = Road(steps.read_jump("jump_volts", lambda n: _division_volts(n.supply)))
PULSE = Road(
    label(),
    knowing(crest(), HALF_CREST),
    steps.at_edge("degrees"),
    over("surge_ohms", called="the pulse"),
)
JUMPS_HEAT = Road(
    label(),
    knowing(crest(), HALF_CREST),
    steps.at_edge("degrees"),
    steps.heat_of_jumps("farads"),
)
PULSE_KILLS = (
    "the pulse is far higher, and comes twice in every cycle. An LED and a bridge that are chosen "
    "for so little fail, and can burst."
)
SURGE_BURNS = (
    "a surge resistor that is rated for so little gets far too hot behind this dimmer, and can "
    "burn."
)

EDGE = (
    Question(
        id="better-9",
        edition=3,
        outcome="read the jump at the edge off a chopped wave",
        numbers=_jump_numbers,
        picture=lambda n: Picture("waveform", {"supply": n.supply, "dimmer": _leading(n)}),
        ask="This is your mains behind a leading edge. To how many volts does it jump at the edge?",
        kind=Amount("voltage", "V", JUMP, crest=None),
        nudges=(
            "Where does the trace stand just before the edge, and where just after it?",
            "Count the divisions from the middle line up to the top of the jump. The line under "
            "the grid says what a division is worth; each small mark is a fifth of it.",
        ),
        facts={
            "divisions": lambda n: n.jump_volts / _division_volts(n.supply),
            "division_volts": lambda n: _division_volts(n.supply),
        },
        working="The trace jumps up by {divisions:g} divisions of {division_volts}: {right}.",
        code=lambda n: "",
    ),
    Question(
        id="better-10",
        edition=3,
        level=2,
        marks=2,
        outcome="find the pulse of a capacitor dropper behind a leading edge",
        numbers=lambda draw, supply: {
            "degrees": draw.pick((55.0, 110.0, 120.0, 130.0, 140.0)),
            "surge_ohms": draw.pick((330.0, 560.0, 680.0, 820.0)),
        },
        ask="The first step is yours: a leading edge fires at {degrees} on your mains, "
        "{supply.volts_rms}. A capacitor dropper with a surge resistor of {surge_ohms} stands "
        "behind it, beside the pot; its capacitor is empty when the dimmer fires. How high is the "
        "pulse through the LED?",
        kind=Amount(
            "current",
            "mA",
            PULSE,
            measure="peak",
            crest=None,
            danger=called_too_low(PULSE.value, 0.2, PULSE_KILLS),
        ),
        nudges=(
            "To how many volts does the wave jump, and what alone holds the current back then?",
            "The crest times the sine of the angle is the jump. Divide it by the surge ohms.",
        ),
        facts={
            "limit_amps": lambda n: leds.LIMIT_AMPS,
            "times_ratio": lambda n: PULSE.value(n) / leds.LIMIT_AMPS,
        },
        code=f"{AT_EDGE} / {{surge_ohms}}",
        working="{sum}. A small LED stands {limit_amps:mA} for long. This is {times_ratio:2} times "
        "that, twice in every cycle.",
    ),
    Question(
        id="better-11",
        edition=2,
        level=3,
        marks=3,
        outcome="find the heat in the surge resistor behind a dimmer",
        numbers=lambda draw, supply: {
            "degrees": draw.pick((110.0, 115.0, 120.0)),
            "farads": draw.pick((56e-9, 82e-9, 120e-9)),
        },
        ask="All steps: a capacitor dropper of {farads} with a surge resistor stands behind a "
        "leading edge at {degrees}, on your mains, {supply}, beside the pot. How much heat do the "
        "jumps leave in the surge resistor?",
        kind=Amount(
            "power",
            "mW",
            JUMPS_HEAT,
            danger=called_too_low(JUMPS_HEAT.value, 0.6, SURGE_BURNS),
        ),
        nudges=(
            "How high is each jump, and how many of them are there in a second?",
            "Half of farads times the square of the jump is the energy that each one leaves. Take "
            "it twice for every cycle.",
        ),
        facts={"jumps": lambda n: f"{2 * n.supply.hertz:.0f}"},
        working="{sum}; there are {jumps} jumps in a second. The ohms of the surge resistor do "
        "not matter: fewer ohms make each pulse shorter and fiercer.",
        code=f"{{farads}} * {AT_EDGE}**2 * {{supply.hertz}}",
    ),
)  # fmt: skip

# --- neon, ready-made, and which one -----------------------------------------------------------

# Ten per cent more mains moves this angle by less than the band.
GOES_OUT = Road(
    given(lambda n: n.supply.volts_rms, of="voltage"), crest(), steps.goes_out("strike_volts")
)
NEON_YEAR = Road(
    given("lamp_watts"),
    knowing(
        whole_year(),
        Turn("counted half of the day", "For how long is the lamp on each day?",
             factor(energy.HOURS_PER_YEAR / 2), share=0.0),
    ),
)  # fmt: skip

WISHES = {
    "dimmed": "sit behind a cutting dimmer and fade with it, down to the lowest setting used",
    "plain": "sit on plain mains, never dimmed, be lit for years, and give the least heat",
    "heats": "prove that current really flows in the pot's element",
}
FIRE = "behind a dimmer it gets a pulse in every half-cycle: it fails, and can burn."
NO_PROOF = (
    "a light that shows volts is taken for a proof of heat, and a broken pot for a sound one."
)


def _circuit_options(n):
    texts = {
        "dimmed": "Two resistors, a diode and an LED in series.",
        "plain": "An LED indicator as sold, certified or conforming for plain mains.",
        "heats": "A current sensor as sold, certified or conforming for this use.",
        "neon": "A neon lamp behind its resistors.",
        "own": "A capacitor dropper of one's own, built into the cord.",
    }
    replies = {
        "dimmed": {
            "plain": "Which of these gives less heat for years on end?",
            "heats": "It shows volts. What would it show with a broken element?",
        },
        "plain": {
            "dimmed": "What is inside it, and what does a cut wave do to that?",
            "heats": "It shows volts. What would it show with a broken element?",
        },
        "heats": {
            "dimmed": "Is current asked for, or a light that follows the volts?",
            "plain": "Is current asked for, or a light that is always on?",
        },
        "neon": {
            "dimmed": "At a low setting, does it fade, or go out all at once?",
            "plain": "What happens to a neon lamp's glass over the years?",
            "heats": "It shows volts. What would it show with a broken element?",
        },
        "own": {
            "dimmed": "What does its capacitor do at every edge?",
            "plain": "Who may build into a cord, and what stays charged when the plug is out?",
            "heats": "It shows volts. What would it show with a broken element?",
        },
    }
    dangers = {
        ("plain", "dimmed"): FIRE,
        ("own", "dimmed"): FIRE,
        ("own", "plain"): "a charged plug can shock, and what is built into a cord can burn.",
    }
    return tuple(
        Option(
            key,
            text,
            right=key == n.wish,
            reply=replies[key].get(n.wish, "It does what is asked, and no more."),
            danger="" if key == n.wish else dangers.get(
                (key, n.wish), NO_PROOF if n.wish == "heats" else ""
            ),
        )
        for key, text in texts.items()
    )  # fmt: skip


WHICH = (
    Question(
        id="better-12",
        level=2,
        marks=2,
        outcome="find the firing angle at which a neon lamp goes out",
        numbers=lambda draw, supply: {"strike_volts": draw.pick((80.0, 84.0, 95.0, 98.0))},
        ask="A neon lamp strikes at {strike_volts}. Beyond which firing angle of a leading edge "
        "does it stay dark on your mains, {supply.volts_rms}?",
        kind=Amount("angle", "°", GOES_OUT, within=0.01),
        nudges=(
            "Late in a half-cycle, how high has the wave still to be at the edge for the lamp to "
            "strike?",
            "Divide the striking volts by the crest and press sin⁻¹. The way down is 180° less "
            "that.",
        ),
        working="{sum}. Beyond it the pot still gets some volts, and its wires kill: dark never "
        "means dead.",
        code=f'neon.goes_out_degrees({SUPPLY}, "leading", {{strike_volts}})',
    ),
    Question(
        id="better-13",
        outcome="find what a light that is always on takes in a year",
        numbers=lambda draw, supply: {"lamp_watts": draw.pick((0.04, 0.09, 0.16, 0.21))},
        ask="A neon lamp with its resistors takes {lamp_watts:mW} and is on day and night. How "
        "much energy is that in a year?",
        kind=Amount("energy", "kWh", NEON_YEAR),
        nudges=(
            "How many hours has a year?",
            "Multiply the watts by the hours of a year, and see how many thousand watt-hours "
            "come out.",
        ),
    ),
    Question(
        id="better-14",
        level=2,
        outcome="choose a circuit for a wish",
        numbers=lambda draw, supply: {"wish": draw.pick(tuple(WISHES))},
        facts={"wanted": lambda n: WISHES[n.wish]},
        ask="The workshop wants a light that is to {wanted}. Which of these fits?",
        kind=Choice(_circuit_options),
        nudges=(
            "Is a cut wave in play, is it volts or current that is to be shown, and for how long?",
            "Strike out whatever holds a capacitor if there is a dimmer, and whatever shows only "
            "volts if current is asked for.",
        ),
        working=lambda n: {
            "dimmed": "Resistors, diode and LED: nothing in them minds an edge, and the light "
            "fades instead of going out. One as sold, certified or conforming for use behind a "
            "dimmer, would come before it. A competent person checks it first, under local rules.",
            "plain": "An indicator as sold for plain mains. It often holds a capacitor dropper "
            "and so stays cool. Behind a dimmer it goes only if its maker says so.",
            "heats": "A current sensor that is certified or conforming for this use. Every light "
            "across the wires shows volts: with the dimmer on it looks the same over a broken "
            "element.",
        }[n.wish],
    ),
)

# --- mistakes and dangers ----------------------------------------------------------------------


def _sentences(n):
    light = operating_point("series_diode", n.supply, _leading(n), ohms=100e3).led_amps_mean
    full = operating_point("series_diode", n.supply, ohms=100e3).led_amps_mean
    share = write(100 * light / full, "percent", 2)
    return options(f"""
        wrong twice: “A bridge gives the LED both half-cycles, so its light repeats at
            {write(2 * n.supply.hertz, "frequency")} here.”
          reply: How many half-cycles has a cycle, and how many does a bridge let through?
        right cool so dimmer: “A capacitor drops volts without heat, so behind a leading edge at
            {write(n.degrees, "angle")} it stays just as cool.”
          reply: Without heat on which wave: a sine, or one with an edge?
          danger: each edge drives a pulse through the surge resistor and the LED. They fail, and
            can burn.
        right small bleeder: “With only {write(n.farads, "capacitance")} the bleeder can be left
            out.”
          reply: What stands on the pins of the plug when nothing empties the capacitor?
          danger: the pins keep up to the crest for hours, and touching them can shock.
        wrong no dimming: “Behind a leading edge at {write(n.degrees, "angle")} a capacitor dropper
            hardly dims at all.”
          reply: What does its mean follow: the peak of the cut wave, or its rms?
        right neon dark: “The neon lamp has gone out at a low setting, so the pot's wires are dead.”
          reply: Below how many volts does a neon lamp stay dark?
          danger: the wires are live at every setting. Touching them can kill.
        right x to case: “Class X2 is a safety class, so such a capacitor may join live and the
            metal case.”
          reply: If a capacitor of class X fails short, where may that shock nobody?
          danger: when it fails short, the case is live. Touching it can kill.
        wrong share: “An LED with a dropper and a diode in series still gets {share} of its light at
            that setting.”
          reply: Work it out: one and the cosine of the angle, halved.
    """)


# What each plan leaves out, and what then hurts.
FLAWS = {
    "bleeder": (
        "A capacitor dropper on plain mains, on a plug: class X2, surge resistor, bridge, LED, "
        "fuse, all enclosed. No resistor lies across the capacitor.",
        "Its plug can shock after it has been pulled.",
        "nothing empties the capacitor, and the pins keep up to the crest for hours.",
    ),
    "edge": (
        "A capacitor dropper with bleeder, class X2, surge resistor, bridge, LED and fuse, all "
        "enclosed. It stands behind a trailing edge, since that is gentle.",
        "The LED gets a pulse in every half-cycle.",
        "the capacitor empties through the pot at every edge, and the pulse destroys the LED.",
    ),
    "bare": (
        "One resistor and an LED on plain mains, all enclosed.",
        "A single short leaves nothing between the LED and the mains.",
        "one resistor that fails short puts the LED straight on the mains.",
    ),
    "case": (
        "Two resistors, diode and LED, all enclosed. A capacitor of class X2 joins live and the "
        "pot's metal case, against radio noise.",
        "The metal case can become live.",
        "a capacitor of class X may fail short, and then the case has the mains and can kill.",
    ),
    "dark": (
        "A neon lamp with two resistors behind the dimmer, all enclosed. The notice beside it "
        "says: dark, so it may be opened.",
        "Somebody can open it live, trusting its light.",
        "a neon lamp is dark at low settings, at off and when it is old, over wires that can kill.",
    ),
}  # fmt: skip


def _flaw_options(n):
    _, _, hurts = FLAWS[n.flaw]
    return tuple(
        Option(
            key,
            text,
            right=key == n.flaw,
            reply="" if key == n.flaw else "Which words of this plan would lead to that?",
            danger="" if key == n.flaw else f"in this plan {hurts} That was overlooked.",
        )
        for key, (_, text, _) in FLAWS.items()
    )


PLANS = options("""
    right leading: Put a capacitor dropper behind a leading edge, as it gives so little heat.
      reply: What does a capacitor do at a steep edge?
      danger: a pulse in every half-cycle destroys the LED, and the surge resistor can burn.
    right trailing: Put a capacitor dropper behind a trailing edge, as that edge is gentler.
      reply: When the dimmer opens, through what does the capacitor empty?
      danger: the pulse at the edge is lower, and still far more than a small LED stands.
    right bleeder: Leave the bleeder out, as the capacitor is small.
      reply: What is on the pins when the plug has been pulled?
      danger: the pins keep up to the crest of the mains for hours, and can shock.
    right bare: Take one resistor and an LED, and nothing else.
      reply: What is left when the one resistor fails short?
      danger: one short puts the LED straight on the mains. It bursts.
    right case: Join live and the metal case by a capacitor of class X2, against noise.
      reply: What is the case when that capacitor fails short?
      danger: a capacitor of class X may fail short. Then the case is live and can kill.
    right dark: Open the pot as soon as its neon lamp is dark.
      reply: For how many reasons can it be dark?
      danger: a neon lamp is dark over live wires. Touching them can kill.
""")
FINE = options("""
    wrong ready: Have a ready-made indicator, certified or conforming for this use,
        fitted by somebody entitled to.
      reply: Who has tested it, and who fits it?
    wrong two: Plan two resistors, each enough alone, a diode and an LED, on paper. A competent
        person checks it before anything is built.
      reply: What is left when one of the two fails short, and who looks at the plan?
    wrong prove: Whoever may open it pulls the plug and keeps it, waits, proves the tester, proves
        dead and proves the tester again.
      reply: Which of these steps would leave somebody in front of live wires?
""")
SETS = (
    ("leading", "bleeder", "case", "ready", "two"),
    ("trailing", "bare", "dark", "ready", "prove"),
    ("leading", "bare", "dark", "two", "prove"),
    ("trailing", "bleeder", "case", "two", "ready"),
    ("bleeder", "bare", "case", "prove", "ready"),
)


@cache
def _plans(number):
    named = {option.key: option for option in (*PLANS, *FINE)}
    return tuple(named[key] for key in SETS[number])


HURTS = (
    Question(
        id="better-15",
        level=3,
        marks=3,
        outcome="find the wrong steps in an argument about circuits",
        numbers=lambda draw, supply: {
            "degrees": draw.pick((60.0, 75.0, 80.0)),
            "farads": draw.pick((33e-9, 68e-9)),
        },
        ask="Find the mistakes. Somebody explains pilot lights on your mains, {supply}. Choose "
        "every sentence that is wrong.",
        kind=ChooseAll(_sentences),
        nudges=(
            "Which sentences speak of a sine, which of a wave with an edge, and which of the plug "
            "out?",
            "Ask of each part what it does at an edge, with the plug out, and when it fails short.",
        ),
        working="Behind an edge a capacitor dropper neither stays cool nor spares its LED. Without "
        "a bleeder the pins can shock, however small the capacitor. A dark neon lamp proves "
        "nothing. A short of class X can put the "
        "mains on a case, so it stands only where that shocks nobody.",
    ),
    Question(
        id="better-16",
        edition=2,
        level=2,
        marks=2,
        danger=True,
        outcome="find what hurts in a plan for a pilot light",
        numbers=lambda draw, supply: {"flaw": draw.pick(tuple(FLAWS))},
        facts={"plan": lambda n: FLAWS[n.flaw][0], "hurts": lambda n: FLAWS[n.flaw][2]},
        ask="A plan for a pilot light, on paper: {plan}\n\nOne thing in it can hurt. What?",
        kind=Choice(_flaw_options),
        nudges=(
            "Which part or which word of the plan stands where it should not, or is missing?",
            "Go through the parts: what does each do at an edge, with the plug out, and when it "
            "fails short?",
        ),
        working="In this plan {hurts} Plan only: a competent person checks it first, under local "
        "rules.",
    ),
    Question(
        id="better-17",
        edition=2,
        level=2,
        marks=2,
        danger=True,
        outcome="tell plans that can hurt from those that do not",
        numbers=lambda draw, supply: {"number": draw.pick(tuple(range(len(SETS))))},
        ask="Five proposals on the workshop's board. Which of them can hurt somebody?",
        kind=ChooseAll(lambda n: _plans(n.number)),
        nudges=(
            "What does each of them do at an edge, with the plug out, and after one short?",
            "Tick what leaves somebody in front of live wires, a charge, or a fire.",
        ),
        working="What hurts, here and elsewhere: a capacitor behind any cutting dimmer, a charge "
        "that nothing empties, one part as the only barrier, class X towards a case, and a dark "
        "light taken for a proof. The others are plans, and a competent person checks each first, "
        "under local rules.",
    ),
)

QUESTIONS = (*RECALL, PREDICT, *RESISTORS, *CAPACITOR, *EDGE, *WHICH, *HURTS)
