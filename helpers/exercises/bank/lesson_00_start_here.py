"""Lesson 00: two questions to practise with, and the first word on safety."""

from functools import cache

from helpers.exercises.kinds import Choice, Option, Quantity
from helpers.exercises.question import Question
from helpers.exercises.slips import Slip
from helpers.physics import light
from helpers.quantities import write

LESSON = "00"
TITLE = "Start here"

IN_WORDS = {
    2_200.0: "two thousand two hundred ohms",
    3_300.0: "three thousand three hundred ohms",
    4_700.0: "four thousand seven hundred ohms",
    6_800.0: "six thousand eight hundred ohms",
}

# What somebody wants to do beside a dark light, and what comes before it.
DARK_CASES = {
    "The pilot light on the wax pot is dark. Somebody wants to open the pot's cover.": (
        "Nothing yet: pull the plug, then prove it dead with a tester that is proved just "
        "before and just after."
    ),
    "The pilot light went out while the pot was in use. Somebody wants to feel for a loose wire.": (
        "Keep out: the plug comes first, and no wire is dead until a tester, proved before "
        "and after, says so."
    ),
    "The dimmer is turned to off and the pilot light is dark. Somebody wants to undo a "
    "terminal of the pot.": (
        "Leave it. Unplug the pot, see that the tester works, test, and see that the tester "
        "still works."
    ),
}


@cache
def _dark_options(case):
    return (
        Option(
            "isolate",
            DARK_CASES[case],
            right=True,
            reply="The light only reminds. A tester that works is what proves.",
        ),
        Option(
            "dark means dead",
            "Go ahead: a dark light means that no voltage is left.",
            reply="What else could make a light dark, apart from no voltage?",
            danger="a dark light may be a broken light. The parts behind it can be live, and "
            "touching them can kill.",
        ),
        Option(
            "dimmer as isolator",
            "Turn the dimmer fully down once more, see that the light stays dark and the pot "
            "cools, and go ahead then.",
            reply="Does a dimmer open both wires, and does it open any wire completely?",
            danger="a dimmer is no isolator. Parts can stay live when it is turned off, and "
            "touching them can kill.",
        ),
        Option(
            "wait",
            "Wait until the pot has gone cold and the light has stayed dark for a quarter of an "
            "hour, then go ahead with dry hands.",
            reply="What does a cold pot say about the wires that lead to it?",
            danger="cold does not mean dead. The wires can be live, and touching them can kill.",
        ),
    )


QUESTIONS = (
    Question(
        id="start-predict",
        role="predict",
        outcome="commit to an expectation",
        ask=lambda n: (
            "The dimmer is set so that the pot gets half of its heat. How bright will a simple "
            "pilot light behind the same dimmer look, compared with full?"
        ),
        kind=Choice(
            (
                Option("quarter", "About a quarter as bright"),
                Option("half", "About half as bright"),
                Option("more", "Clearly more than half as bright"),
                Option("dark", "It will be dark"),
            )
        ),
        working=lambda n: (
            "clearly more than half. With half the heat the light is half, too, and of that the "
            f"eye makes about {light.lightness(0.5):.0f} parts of 100. Lesson 05 shows the first "
            "step, lesson 06 the second."
        ),
    ),
    Question(
        id="start-1",
        outcome="type a quantity with its unit",
        numbers=lambda draw, supply: {"ohms": draw.pick(tuple(IN_WORDS))},
        ask=lambda n: (
            f"Practise typing. Write {IN_WORDS[n.ohms]} in figures, with a unit, any way you like."
        ),
        kind=Quantity(
            of="resistance",
            unit="kΩ",
            right=lambda n: n.ohms,
            slips=(
                Slip(
                    "wrote ohms, read as kilo-ohms",
                    lambda n: n.ohms * 1000,
                    "This was read as a thousand times more. A number without a unit is taken in "
                    "the unit of the question, here kΩ. Which unit or prefix goes with yours?",
                    share=0.5,
                ),
            ),
            check="Compare the line “Read as” with the words of the question.",
        ),
        nudges=(
            "How many thousands are there in it?",
            "A thousand ohms is one kilo-ohm: write the number of thousands, then kΩ.",
        ),
        working=lambda n: (
            f"{IN_WORDS[n.ohms]} is {n.ohms:.0f} Ω, or {write(n.ohms, 'resistance')}."
        ),
    ),
    Question(
        id="start-2",
        edition=2,
        outcome="say what a dark pilot light proves",
        danger=True,
        numbers=lambda draw, supply: {"case": draw.pick(tuple(DARK_CASES))},
        ask=lambda n: f"{n.case} What may they do now?",
        kind=Choice(lambda n: _dark_options(n.case)),
        nudges=(
            "What are all the reasons for which a light can be dark?",
            "Ask of each answer: would it still be safe if the light were broken?",
        ),
        working=lambda n: (
            "Dark never means dead. The light can fail, a dimmer does not isolate, and a cold pot "
            "can be live. Pull the plug and keep it, prove the tester, prove dead, prove the "
            "tester again. Any cover is left to an electrically skilled or instructed person."
        ),
    ),
)
