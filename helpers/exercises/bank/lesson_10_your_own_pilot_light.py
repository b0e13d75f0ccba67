"""Lesson 10: a brief of one's own, sized and judged by six criteria, or not built for a reason.

Whatever is answered here is a plan on paper. No answer is a permission.
"""

from functools import lru_cache

from helpers.exercises.kinds import Choice, ChooseAll, Design, Order
from helpers.exercises.question import Question
from helpers.sizing import verdicts
from helpers.sizing.brief import Brief

LESSON = "10"
TITLE = "Your own pilot light"


@lru_cache(maxsize=32)
def workshops(supply):
    """The plan of the workshop's own brief on a supply."""
    return verdicts.plan(Brief(supply_volts=supply.volts_rms, supply_hertz=supply.hertz))


LOOKING_BACK = (
    Question(
        id="own-recall-1",
        role="recall",
        outcome="say at which end of mains and knob each thing is judged",
        ask="From lesson 05: a dropper has to give light enough and must not overheat. At which "
        "ends of mains and dimmer is each judged?",
        kind=Choice("""
            right both ends: Light at the lowest of both, heat at the highest of both.
              reply: Each is judged where it is worst.
            wrong label: Both at the label's volts, with the dimmer half way up.
              reply: The mains moves, and so does the knob. Where is each of the two worst?
              danger: at full on the highest mains it gets far hotter, and can burn.
            wrong swapped: Light at the highest of both, heat at the lowest of both.
              reply: Where is the light scarcest, and where is the dropper hottest?
              danger: a dropper rated for the lowest setting burns when somebody turns it up.
            wrong lowest: Both at the lowest setting, since that one is used most.
              reply: Who stops somebody from turning the knob up?
              danger: a dropper rated for the lowest setting burns when somebody turns it up.
        """),
        nudges=("What is scarce at one end of the knob, and too much at the other?",),
        working="Light is scarcest at the lowest setting on the lowest mains. Heat is greatest at "
        "full on the highest mains.",
    ),
    Question(
        id="own-recall-2",
        role="recall",
        outcome="say what can be true under a dark light",
        ask="From lesson 08: the light on the pot is dark. Which of these can be true?",
        kind=ChooseAll("""
            right led: The LED has failed open, and the pot is hot.
              reply: A dead LED is dark over live wires.
            right neutral: A wire is broken, and what looks dead is at mains.
              reply: With the neutral open nothing lights, and the terminals are live.
            right off: The dimmer is at off, and the terminals are still live.
              reply: A dimmer opens one wire, and not even that wholly.
            wrong sure: It is proved that nothing live can be touched.
              reply: What did lesson 01 ask for before anything counts as dead?
              danger: dark never means dead. Touching live terminals can kill.
        """),
        nudges=("Which faults stop the current through the LED and leave the mains where it is?",),
        working="A failed LED, a broken wire and an open dimmer all leave it dark over live "
        "wires. Only a tester that is proved before and after shows that something is dead.",
    ),
    Question(
        id="own-recall-3",
        role="recall",
        outcome="put the proof that something is dead in order",
        ask="From lesson 01: a competent person is about to look into the pot. Put the steps in "
        "order.",
        kind=Order("""
            right unplug: Pull the plug and keep it where nobody else plugs it in.
            right prove: Prove the tester on a proving unit.
              reply: What would you test, before the plug is out and kept?
            right dead: Prove dead at the terminals, between all pairs.
              reply: Who says that the tester works, when it shows nothing?
            right again: Prove the tester on the proving unit again.
              reply: This closes the test. What has been tested by then?
        """),
        nudges=("How would you know that the tester itself has not failed?",),
        working="The plug comes first. The tester is proved before it is used, and again after: "
        "only then was its silence worth something.",
    ),
)

PREDICT = Question(
    id="own-predict",
    role="predict",
    outcome="guess how many of the bin keep every rule",
    ask="For the workshop's brief on your supply every resistor of the bin, one to four in series, "
    "in every circuit, was held against every rule. How many of them break none?",
    kind=Choice("""
        wrong some: Fewer than half, but many.
        wrong none: Next to none of them.
        wrong most: More than half.
        wrong all: Nearly all: resistors are resistors.
    """),
    facts={
        "kept": lambda n: str(workshops(n.supply).kept),
        "judged": lambda n: str(workshops(n.supply).size),
    },
    working="Of {judged}, each string with each rating, {kept} break no rule. Keeping the rules is "
    "a plan, no permission.",
)

EXERCISES = (
    Question(
        id="own-1",
        edition=4,
        outcome="choose circuit and parts for a brief, or say why nothing is built",
        ask="Design a pilot light for your own build, or say what forbids it. Six things are "
        "marked, by the rules of sizing on your numbers, one mark each: no stop is ignored; it is "
        "seen at the lowest setting; LED and diodes stay within limits; each resistor stands its "
        "heat and its volts, also after a fault; nothing live can be touched; and you say rightly "
        "what the light tells. Whoever has begun no build answers for the workshop's pot.",
        kind=Design(),
        nudges=(
            "Does something stop this brief before any part is chosen?",
            "Under a stop, answer “do not build” with that stop. Else begin with the circuit that "
            "needs least heat for its light, and let one resistor short in your mind.",
        ),
        working="For the workshop's pot the first of the ranking breaks no rule. Under a stop "
        "nothing is built, and the stop is the reason.",
        level=3,
        marks=6,
    ),
)

QUESTIONS = (*LOOKING_BACK, PREDICT, *EXERCISES)
