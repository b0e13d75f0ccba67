"""Lesson 02: Ohm's law, on a bench supply of 5 to 24 V DC.

The mains appears once, in the prediction; what the LED gets there is the business of lesson 03.
"""

from itertools import product

from helpers.exercises.kinds import (
    Amount,
    Bands,
    Choice,
    ChooseAll,
    Criterion,
    Field,
    Order,
    Parts,
    Slip,
    first_that_passes,
    judged,
    options,
)
from helpers.exercises.question import Picture, Question
from helpers.exercises.roads import Road, Turn
from helpers.exercises.roads.steps.general import given, knowing, over
from helpers.exercises.roads.steps.ohms import (
    bands,
    dc_current,
    less_drop,
    next_up,
    parallel,
    series,
    smallest,
)
from helpers.exercises.roads.steps.safety import through_body, touch_volts, understated_touch
from helpers.physics import leds, ohms_law, resistors
from helpers.quantities import write
from helpers.quantities.writing import milliamps
from helpers.sizing import rules

LESSON = "02"
TITLE = "Ohm's law"

LED_COLOURS = {"red": 2.0, "yellow": 2.1, "blue": 3.1}
QUICK_SUM_OHMS = 100_000.0


# --- look back ---------------------------------------------------------------------------------

RECALL = (
    Question(
        id="ohm-recall-1",
        edition=3,
        role="recall",
        outcome="find the current through a body",
        numbers=lambda draw, supply: {"ohms": draw.pick((520.0, 580.0, 620.0, 680.0))},
        ask="From lesson 01: a wet hand touches a live wire of {supply}. The way through the "
        "body to earth has {ohms}. What current flows?",
        kind=Amount(
            "current", "mA", Road(touch_volts(), through_body("ohms")), danger=understated_touch
        ),
        nudges=("Which one pushes, and which holds back?", "Volts by kilo-ohms gives mA."),
        working="{sum}: enough to stop a heart.",
    ),
    Question(
        id="ohm-recall-2",
        edition=2,
        role="recall",
        outcome="say what a dark pilot light proves",
        ask="From lessons 00 and 01: what does a dark pilot light prove?",
        kind=Choice("""
            right nothing: Nothing that may be relied on.
            wrong no voltage: That there is no voltage at the pot.
              reply: What does the light show when it is itself broken?
              danger: whoever trusts a dark light may touch a live part.
            wrong heater off: That the heater takes no current.
              reply: Does the light measure current, or voltage? And what if it is broken?
              danger: whoever trusts a dark light may touch a live part.
        """),
        nudges=("Which faults make a light dark?",),
        working="A dark light can be a broken light. Dark never means dead.",
    ),
    Question(
        id="ohm-recall-3",
        edition=2,
        role="recall",
        outcome="know where answers are kept",
        ask="From lesson 00: you close the notebook without saving. What happens to the answers "
        "that were checked?",
        kind=Choice("""
            right kept: They are kept: each went into your log at once.
            wrong lost: They are lost.
              reply: What did the set-up cell say about where?
            wrong sent: They were sent to the instructor, who can send them back.
              reply: Nothing leaves your machine. How does the instructor get your answers?
        """),
        nudges=("Look at the third line of the set-up cell's output.",),
        working="Each checked answer is a line in your log, written before you see marks.",
    ),
)

PREDICT = Question(
    id="ohm-predict",
    role="predict",
    outcome="commit to an expectation",
    facts={
        "quick_ohms": lambda n: QUICK_SUM_OHMS,
        "quick_amps": lambda n: n.supply.volts_rms / QUICK_SUM_OHMS,
    },
    ask="An LED sits behind {quick_ohms} and a diode, which lets current through one way only, on "
    "your mains of {supply}. The quick sum, {supply.volts_rms} divided by {quick_ohms}, gives "
    "{quick_amps:mA}. How much of that, averaged over time, do you expect in the LED?",
    kind=Choice("""
        wrong all: All of it
        wrong nearly half: A little less than half of it
        wrong tenth: About a tenth of it
        wrong more: More than that, because the mains peaks higher
    """),
    working="a little less than half of it. The quick sum is right for a DC supply. On the mains "
    "it gives only the rms current of the resistor alone, which is good for one thing, its heat. "
    "Lesson 03 works out what the LED itself gets.",
)

# --- prefixes and Ohm's law --------------------------------------------------------------------


def _fate(amps):
    if amps > 2 * leds.LIMIT_AMPS:
        return "That is far outside its sheet: it gets too hot, ages fast and may soon fail."
    return "That is outside its sheet: it runs hot, and nobody promises its life."


def _dropper_danger(value, n):
    if value <= 0 or ohms_law.led_current(n.volts, n.led_volts, value) > leds.LIMIT_AMPS * 1.1:
        return (
            "this resistor would let more through than a small LED is made for. The LED gets too "
            "hot and can fail, and a small resistor can burn your fingers."
        )
    return None


def _far_too_few(value, n):
    if value < n.ohms / 10:
        return "so few ohms hold next to nothing back: LED and dropper get far too hot."
    return None


LAW = (
    Question(
        id="ohm-1",
        edition=2,
        outcome="change between amperes and milliamperes",
        numbers=lambda draw, supply: {"amps": draw.pick((0.002, 0.004, 0.008, 0.012, 0.018))},
        ask="A meter shows {amps:A}. How many milliamperes is that?",
        kind=Amount(
            "current",
            "mA",
            Road(given("amps")),
            slips=(
                Slip(
                    "took one over the number",
                    lambda n: 1e-3 / n.amps,
                    "How many thousandths are in one, and does that need a division?",
                ),
            ),
        ),
        nudges=(
            "Milli means a thousandth: how many thousandths are there in it?",
            "Move the point three places to the right.",
        ),
        working="Three places to the right: {amps:A} is {right}.",
    ),
    Question(
        id="ohm-2",
        edition=4,
        outcome="find the current from voltage and resistance",
        numbers=lambda draw, supply: {
            "volts": draw.pick((5.0, 9.0, 12.0, 15.0, 24.0)),
            "ohms": draw.pick((1_800.0, 2_700.0, 3_900.0, 6_800.0)),
        },
        ask="A bench supply is set to {volts} DC, with {ohms} across it and no LED. What current "
        "flows?",
        kind=Amount(
            "current",
            "mA",
            Road(given("volts"), dc_current("ohms")),
            slips=(
                Slip(
                    "took off an LED's drop",
                    lambda n: (n.volts - LED_COLOURS["red"]) / n.ohms,
                    "Does an LED stand in this circuit?",
                    share=0.5,
                ),
            ),
        ),
        nudges=(
            "Which one pushes, and which one holds back?",
            "Current is the push divided by what holds it back; volts by kilo-ohms gives mA.",
        ),
        working="I = V / R: {sum}.",
    ),
    Question(
        id="ohm-3",
        edition=2,
        outcome="find the dropper for a wanted current",
        marks=2,
        numbers=lambda draw, supply: {
            "volts": draw.pick((9.0, 12.0, 15.0, 24.0)),
            "led": (led := draw.pick(tuple(LED_COLOURS))),
            "led_volts": LED_COLOURS[led],
            "amps": draw.pick((0.002, 0.004, 0.008)),
        },
        ask="A {led} LED drops {led_volts}. It should get {amps:mA} from a bench supply of "
        "{volts} DC. What resistance does its dropper need?",
        kind=Amount(
            "resistance",
            "kΩ",
            Road(given("volts"), less_drop("led_volts"), over("amps", "resistance", "the dropper")),
            danger=_dropper_danger,
        ),
        nudges=(
            "How much of the supply voltage does the LED keep for itself?",
            "What is left stands across the resistor: divide it by the current. Volts by "
            "milliamperes gives kilo-ohms.",
        ),
    ),
    Question(
        id="ohm-4",
        edition=2,
        outcome="say when the LED's own drop matters",
        ask="Why this step? In the worked example the LED's drop was subtracted first. On which "
        "bench supply would leaving that out spoil the answer most?",
        kind=Choice("""
            right 5 V: 5 V
              reply: A red LED keeps 2 V of 5 V: two fifths of the whole.
            wrong 12 V: 12 V
              reply: What share of 12 V does the LED keep? And of 5 V?
            wrong 24 V: 24 V
              reply: Is 2 V a larger or a smaller share of 24 V?
            wrong same: The same on all
              reply: The volts are the same. Is the share?
        """),
        nudges=(
            "What share of each supply is 2 V?",
            "The larger the share that the LED keeps, the larger the error.",
        ),
        working="2 V is 40 % of 5 V, 17 % of 12 V and 8 % of 24 V.",
    ),
)

# --- values that can be bought -----------------------------------------------------------------

# With brown as the third band, 391 would pass for 390: beside 120 it does not.
BAND_OHMS = (120.0, 1_800.0, 2_700.0, 3_900.0, 5_600.0, 12_000.0, 47_000.0, 82_000.0, 470_000.0)


# Zeros of a kind and digits of another, so that no two wrong turns give the same bands.
PICKED_OHMS = (1_800.0, 2_700.0, 3_900.0, 5_600.0, 8_200.0, 120_000.0, 390_000.0, 470_000.0)


def _bands_worked(n):
    first, second, third, _ = resistors.bands(n.ohms, 5.0)
    digits = f"{n.ohms:.0f}"
    return (
        f"{write(n.ohms, 'resistance')} is {digits} Ω. The digits {digits[0]} and {digits[1]} are "
        f"{first} and {second}; {len(digits) - 2} zeros follow, which is {third}. Gold, set apart, "
        "says ± 5 %."
    )


def _ways_to_write(one, two):
    return options(f"""
        right letter code: {one}K{two}
          reply: The letter stands where the point would be. What does K mean?
        right plain ohms: {one}{two}00 Ω
          reply: How many ohms are one kilo-ohm?
        right megaohms: 0.00{one}{two} MΩ
          reply: How many kilo-ohms are in a mega-ohm? Move the point.
        wrong R for the point: {one}R{two}
          reply: R stands for the point, too, but with which unit?
          danger: a thousand times fewer ohms: whatever it protects would burn.
        wrong lost the point: {one}{two} kΩ
          reply: Where did the point go?
        wrong milli for mega: 0.00{one}{two} mΩ
          reply: Small m is milli, a thousandth. Which letter is a million?
    """)


VALUES = (
    Question(
        id="ohm-5",
        edition=3,
        outcome="read a resistor's colour bands",
        numbers=lambda draw, supply: {"ohms": draw.pick(BAND_OHMS)},
        picture=lambda n: Picture(
            "resistor bands", {"bands": resistors.bands(n.ohms, tolerance_percent=5.0)}
        ),
        ask="Read the bands, from the left. What is the resistance?",
        kind=Amount("resistance", "Ω", Road(bands("ohms")), within=0.005),
        nudges=(
            "Which digit does each of the first two colours stand for?",
            "Two digits, then as many zeros as the third band says. The last band is tolerance.",
        ),
        facts={
            "first": lambda n: f"{n.ohms:.0f}"[0],
            "second": lambda n: f"{n.ohms:.0f}"[1],
            "third": lambda n: resistors.bands(n.ohms, 5.0)[2],
            "zeros": lambda n: len(f"{n.ohms:.0f}") - 2,
        },
        working="The first two bands are the digits {first} and {second}, and the third, {third}, "
        "says how many zeros follow, {zeros}: {ohms}; gold means 5 %.",
        code=lambda n: f"resistors.read_bands({resistors.bands(n.ohms, 5.0)})[0]",
    ),
    Question(
        id="ohm-15",
        level=2,
        outcome="find the colour bands of a resistor",
        numbers=lambda draw, supply: {"ohms": draw.pick(PICKED_OHMS)},
        ask="You look for a resistor of {ohms} ± 5 % in a box of old parts. Which colours do its "
        "four bands have, from the left?",
        kind=Bands(),
        nudges=(
            "How many ohms are that, written out without a prefix? Which two digits come first?",
            "Two digits, then how many zeros follow them. The last band, apart, is the tolerance.",
        ),
        working=_bands_worked,
    ),
    Question(
        id="ohm-6",
        edition=2,
        level=2,
        outcome="choose a preferred value on the safe side",
        numbers=lambda draw, supply: {
            "ohms": draw.pick((1_350.0, 2_450.0, 3_600.0, 4_300.0, 5_100.0, 7_500.0))
        },
        ask="A dropper sum gives {ohms}. The shop has the E12 series only. Which value do you "
        "take, if the LED must not get more current than planned?",
        kind=Amount(
            "resistance",
            "kΩ",
            Road(given("ohms", called="the sum"), next_up("E12")),
            danger=_far_too_few,
            within=0.005,
        ),
        nudges=(
            "Which two values of the series lie around the sum?",
            "More ohms, less current: take the upper one.",
        ),
        facts={"lower_ohms": lambda n: resistors.next_down(n.ohms, "E12")},
        working="Around it lie {lower_ohms} and {right}. The upper one keeps the current below "
        "the plan.",
    ),
    Question(
        id="ohm-7",
        edition=3,
        level=2,
        outcome="work out what tolerance does to the current",
        numbers=lambda draw, supply: {
            # on 12 V the largest of the batch without the drop would end at the right current
            "volts": draw.pick((9.0, 5.0, 15.0)),
            "led_volts": LED_COLOURS["red"],
            "ohms": draw.pick((1_000.0, 1_500.0, 2_200.0, 3_300.0)),
            "percent": resistors.tolerance_percent("E12"),
        },
        ask="A red LED ({led_volts}) sits behind {ohms} ± {percent} on {volts} DC. What is the "
        "largest current that it can get?",
        kind=Amount(
            "current",
            "mA",
            Road(
                given("volts"),
                less_drop("led_volts"),
                over(Road(given("ohms"), smallest("percent"))),
            ),
            slips=(
                Slip(
                    "took the rise alone",
                    lambda n: (n.volts - n.led_volts) / n.ohms * n.percent / 100,
                    "What does the rise come on top of?",
                    share=0.5,
                ),
                Slip(
                    "took the tolerance off the current",
                    lambda n: (n.volts - n.led_volts) / n.ohms * (1 - n.percent / 100),
                    "Does a smaller resistor let more through, or less?",
                ),
                Slip(
                    "raised the supply as well",
                    lambda n: (1.1 * n.volts - n.led_volts) / (n.ohms * (1 - n.percent / 100)),
                    "Which of the parts is marked with a tolerance?",
                    share=0.5,
                ),
            ),
        ),
        nudges=(
            "Which resistor of the batch lets the most current through?",
            "Take the smallest one, and the voltage that the LED leaves.",
        ),
    ),
    Question(
        id="ohm-8",
        level=2,
        marks=2,
        outcome="recognise the ways to write a resistance",
        numbers=lambda draw, supply: {"digits": draw.pick(("27", "39", "47", "56", "68"))},
        facts={"one": lambda n: n.digits[0], "two": lambda n: n.digits[1]},
        ask="Which of these are {one}.{two} kilo-ohms? Letter codes are those printed on parts.",
        kind=ChooseAll(lambda n: _ways_to_write(*n.digits)),
        nudges=(
            "How many plain ohms is each of them?",
            "K and k are a thousand, M a million, m a thousandth; R is the point with plain ohms.",
        ),
        working="{one}K{two}, {digits}00 Ω and 0.00{digits} MΩ are all {digits}00 Ω. {one}R{two} "
        "is {one}.{two} Ω.",
    ),
)

# --- several parts, several supplies -----------------------------------------------------------

SIZING_STEPS = options("""
    wrong supply: Write down the supply voltage.
    wrong subtract: Subtract the LED's own drop.
      reply: From what has it to be taken?
    wrong divide: Divide by the wanted current.
      reply: Which voltage has to be divided?
    wrong round up: Take the next preferred value up.
      reply: A value can be rounded only after it has been calculated. From which sum?
    wrong heat: Work out the heat in the part that you really take.
      reply: The heat depends on the part that is really taken. What has to be chosen before?
    wrong rating: Choose a power rating of at least twice that heat.
      reply: Twice which heat? A rating chosen before it is known can be too small, and the part
        burns.
""")

PARTS_OHMS = (220.0, 470.0, 1_000.0, 2_200.0, 4_700.0, 10_000.0)
PARTS_WATTS = (0.125, 0.25, 0.5, 1.0, 2.0)
BENCH_CELSIUS = 25.0  # In the open: the full rating holds.


def _judge_parts(picked, n):
    resistance, rating = picked
    amps = ohms_law.led_current(n.volts, n.led_volts, resistance)
    watts = ohms_law.power(amps=amps, ohms=resistance)
    return [
        Criterion(
            "LED within its limit",
            rules.passes([rules.led(amps)]),
            0.4,
            f"The LED gets {milliamps(amps)}.",
            f"{milliamps(amps)} is more than the {milliamps(leds.LIMIT_AMPS)} that a small LED is "
            f"made for. {_fate(amps)}",
        ),
        Criterion(
            "bright enough",
            amps >= n.least_amps,
            0.2,
            f"Asked for: {milliamps(n.least_amps)} or more. With this dropper: {milliamps(amps)}.",
        ),
        judged(
            "rating at least twice the heat",
            0.4,
            [rules.heat(watts, rating, BENCH_CELSIUS)],
            "Work out the heat in the dropper. Which rating is at least twice that heat?",
        ),
    ]


_best_parts = first_that_passes(
    _judge_parts,
    product(reversed(PARTS_OHMS), PARTS_WATTS),
)


OF_THE_PAIR = {"first_ohms": lambda n: n.pair[0], "second_ohms": lambda n: n.pair[1]}
OLD_VOLTS, NEW_VOLTS = 12.0, 24.0
AS_BEFORE = (
    Turn(
        "doubled the old current",
        "True for a resistor alone. Does the LED's drop double, too?",
        lambda value, drop, n: 2 * (OLD_VOLTS - drop),
    ),
    Turn(
        "took the old supply",
        "Which voltage is across both now?",
        lambda value, drop, n: OLD_VOLTS - drop,
    ),
)

SEVERAL = (
    Question(
        id="ohm-9",
        edition=2,
        level=2,
        marks=2,
        outcome="put the steps of sizing a dropper in order",
        ask="Put the steps of sizing an LED's dropper in order.",
        kind=Order(SIZING_STEPS),
        nudges=(
            "What has to be known before each step can be done?",
            "Voltages first, then the sum, then a part that exists, then its heat.",
        ),
        working="Supply voltage, minus the LED's drop, divided by the current, next preferred "
        "value up, its heat, and a rating of at least twice that.",
    ),
    Question(
        id="ohm-10",
        edition=3,
        level=2,
        outcome="add resistors in series",
        numbers=lambda draw, supply: {
            "pair": tuple(sorted(draw.some((1_000.0, 2_200.0, 3_300.0, 4_700.0), 2))),
            "volts": draw.pick((9.0, 12.0, 24.0)),
        },
        facts=OF_THE_PAIR,
        ask="{first_ohms} and {second_ohms} are connected one after the other across {volts} DC. "
        "What current flows?",
        kind=Amount(
            "current",
            "mA",
            Road(given("volts"), dc_current(Road(series("pair")))),
            slips=(
                Slip(
                    "took off an LED's drop",
                    lambda n: (n.volts - LED_COLOURS["red"]) / sum(n.pair),
                    "Does an LED stand in this circuit?",
                    share=0.5,
                ),
            ),
        ),
        nudges=(
            "Does the same current pass through both?",
            "In series the ohms add; then divide the volts by the sum.",
        ),
    ),
    Question(
        id="ohm-11",
        edition=2,
        level=2,
        outcome="combine resistors in parallel",
        numbers=lambda draw, supply: {
            "pair": tuple(sorted(draw.some((1_000.0, 2_200.0, 4_700.0), 2)))
        },
        facts=OF_THE_PAIR,
        ask="{first_ohms} and {second_ohms} stand side by side. What single resistance would do "
        "the same?",
        kind=Amount("resistance", "kΩ", Road(parallel("pair"))),
        nudges=(
            "Is it easier or harder for the current with a second path?",
            "Currents add: add one over each, then take one over that.",
        ),
        working="1 / (1/{first_ohms} + 1/{second_ohms}) = {right}.",
    ),
    Question(
        id="ohm-12",
        edition=4,
        level=3,
        marks=2,
        outcome="work out what another supply does to the current",
        numbers=lambda draw, supply: {
            "led": (led := draw.pick(("red", "blue"))),
            "led_volts": LED_COLOURS[led],
            "ohms": draw.pick((1_500.0, 2_700.0, 4_700.0)),
        },
        facts={"old_volts": lambda n: OLD_VOLTS, "new_volts": lambda n: NEW_VOLTS},
        ask="A {led} LED ({led_volts}) and its {ohms} dropper are moved from {old_volts} to "
        "{new_volts} DC. What current flows now?",
        kind=Amount(
            "current",
            "mA",
            Road(
                given(NEW_VOLTS, "voltage", "the new supply"),
                knowing(less_drop("led_volts"), *AS_BEFORE),
                knowing(
                    dc_current("ohms"),
                    Turn(
                        "doubled the ohms as well",
                        "What has been changed: supply, LED or dropper?",
                        lambda value, ohms, n: value / ohms / 2,
                    ),
                ),
            ),
        ),
        nudges=(
            "Which of the two voltages changes: the supply's, the LED's, or both?",
            "Subtract the same drop from the new supply, then divide.",
        ),
        working="{sum}: more than double, because the LED's drop stays the same.",
    ),
    Question(
        id="ohm-13",
        edition=2,
        level=2,
        outcome="find the wrong step in a sum",
        numbers=lambda draw, supply: {"ohms": draw.pick((2_200.0, 2_700.0, 3_300.0))},
        facts={
            "label_volts": lambda n: ohms_law.voltage(leds.LIMIT_AMPS, n.ohms),
            "amps": lambda n: ohms_law.led_current(12.0, LED_COLOURS["red"], n.ohms),
        },
        ask="Find the mistake. “The supply gives 12 V. The LED is a 20 mA type. Its dropper is "
        "{ohms}. So the dropper takes {ohms} × 20 mA = {label_volts}.” That is more than the "
        "supply gives. Which step is wrong?",
        kind=Choice("""
            right current from the label: 20 mA is taken as the current that flows, but it is only
                the LED's limit.
              reply: Supply, drop and resistor set the current; the label only limits it.
            wrong multiplying: Ohms and amperes must not be multiplied.
              reply: What do ohms times amperes give? Try it with 1 Ω and 1 A.
            wrong no LED drop: The LED's own drop was left out; with it the dropper would take far
                less than that.
              reply: It was not needed for this step. Would it bring the result below 12 V?
            wrong supply: The supply must have been set higher.
              reply: The supply is what it says. Which number was never measured?
        """),
        nudges=(
            "Which of the numbers is a limit, and which is what really happens?",
            "Work out the current from the supply, the LED's drop and the resistor.",
        ),
        working="The current is (12 V − 2 V) / {ohms} = {amps:mA}, not 20 mA.",
    ),
    Question(
        id="ohm-14",
        level=3,
        marks=3,
        outcome="choose a dropper's value and rating",
        numbers=lambda draw, supply: {
            "volts": draw.pick((9.0, 12.0, 15.0, 24.0)),
            "led_volts": LED_COLOURS["red"],
            "least_amps": draw.pick((0.003, 0.006)),
        },
        facts={
            "most_amps": lambda n: leds.LIMIT_AMPS,
            "best_ohms": lambda n: _best_parts(n)[0],
            "best_watts": lambda n: _best_parts(n)[1],
            "best_amps": lambda n: ohms_law.led_current(n.volts, n.led_volts, _best_parts(n)[0]),
        },
        ask="A red LED ({led_volts}) on the bench is to get at least {least_amps:mA}, brighter "
        "than a pilot light has to be, and is made for {most_amps:mA} at most. The supply is "
        "{volts} DC. Pick its dropper from the two bins. The rating must be at least twice the "
        "heat.",
        kind=Parts(
            (
                Field("dropper", "resistance", PARTS_OHMS),
                Field("power rating", "power", PARTS_WATTS, "W"),
            ),
            _judge_parts,
            _best_parts,
        ),
        nudges=(
            "Between which two resistances must the dropper lie?",
            "Pick a value in between, work out its heat from I² × R, and double that.",
        ),
        working="{best_ohms} lets {best_amps:mA} through; {best_watts} is at least twice its heat.",
    ),
)

QUESTIONS = (*RECALL, PREDICT, *LAW, *VALUES, *SEVERAL)
