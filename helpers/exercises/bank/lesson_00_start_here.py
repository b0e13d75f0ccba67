"""Lesson 00: two questions to practise with, and the first word on safety."""

from functools import cache

from helpers.exercises.kinds import Amount, Choice, Slip, options
from helpers.exercises.question import Question
from helpers.exercises.roads import Road
from helpers.exercises.roads.explained import PREFIX
from helpers.exercises.roads.steps.general import given
from helpers.physics import light

LESSON = "00"
TITLE = "Start here"

IN_WORDS = {
    2_200.0: "two thousand two hundred ohms",
    3_300.0: "three thousand three hundred ohms",
    4_700.0: "four thousand seven hundred ohms",
    6_800.0: "six thousand eight hundred ohms",
}

BARE_NUMBER = Slip(
    PREFIX,
    lambda n: n.ohms * 1000,
    "A number without a unit is read in kΩ. Which unit or prefix goes with yours?",
    share=0.5,
)

# What somebody wants to do beside a dark light; what comes before it, and three ways to get hurt.
DARK_CASES = {
    "The pilot light on the wax pot is dark. Somebody wants to open the pot's cover.": (
        "Nothing yet: plug out, then prove it dead with a tester, proved just before and after.",
        "Go ahead: a dark light means that no voltage is left.",
        "Turn the dimmer fully down once more, see that the light stays dark and the pot cools, "
        "and go ahead then.",
        "Wait until the pot has gone cold and the light has stayed dark for a quarter of an hour, "
        "then go ahead with dry hands.",
    ),
    "The pilot light went out while the pot was in use. Somebody wants to feel for a loose wire.": (
        "Keep out: the plug comes first, and a tester, proved before and after, says what is dead.",
        "Feel for it straight away, before the light comes on again: while it is out, nothing in "
        "there is live.",
        "Turn the knob down until it clicks, then feel for the wire.",
        "Let everything cool down, put on dry gloves, and feel for the wire with one hand only.",
    ),
    "The dimmer is turned to off and the pilot light is dark. Somebody wants to undo a "
    "terminal of the pot.": (
        "Leave it. Unplug the pot, see that the tester works, test, and see that it still works.",
        "Undo it: the knob and the light both say off, and two signs that agree are proof enough.",
        "Tape the knob where it stands, so that nobody turns it up again, and undo the terminal.",
        "Lay a hand on the pot. If it is cold, undo the terminal with an insulated screwdriver.",
    ),
}


@cache
def _dark_options(case):
    isolate, dark, dimmer, cold = DARK_CASES[case]
    return options(f"""
        right isolate: {isolate}
          reply: The light reminds. A working tester proves.
        wrong dark means dead: {dark}
          reply: What else could make a light dark, apart from no voltage?
          danger: a dark light may be broken. What is behind it can be live, and can kill.
        wrong dimmer as isolator: {dimmer}
          reply: Does a dimmer open both wires, and does it open any wire completely?
          danger: a dimmer is no isolator. Parts stay live when it is off, and they can kill.
        wrong wait: {cold}
          reply: What does a cold pot say about the wires that lead to it?
          danger: cold does not mean dead. The wires can be live, and touching them can kill.
    """)


QUESTIONS = (
    Question(
        id="start-predict",
        role="predict",
        outcome="commit to an expectation",
        ask="The dimmer is set so that the pot gets half of its heat. How bright will a simple "
        "pilot light behind the same dimmer look, compared with full?",
        kind=Choice("""
            wrong quarter: About a quarter as bright
            wrong half: About half as bright
            wrong more: Clearly more than half as bright
            wrong dark: It will be dark
        """),
        facts={"of_hundred": lambda n: round(light.lightness(0.5))},
        working="clearly more than half. With half the heat the light is half, too, and of that "
        "the eye makes about {of_hundred} parts of 100. Lesson 05 shows the first step, lesson 06 "
        "the second.",
    ),
    Question(
        id="start-1",
        edition=2,
        outcome="type a quantity with its unit",
        numbers=lambda draw, supply: {"ohms": draw.pick(tuple(IN_WORDS))},
        facts={"words": lambda n: IN_WORDS[n.ohms], "plain": lambda n: f"{n.ohms:.0f} Ω"},
        ask="Practise typing. Write {words} in figures, with a unit, any way you like.",
        kind=Amount("resistance", "kΩ", Road(given("ohms")), slips=(BARE_NUMBER,)),
        nudges=(
            "How many thousands are there in it?",
            "A thousand ohms is one kilo-ohm: write the number of thousands, then kΩ.",
        ),
        working="{words} is {plain}, or {right}.",
    ),
    Question(
        id="start-2",
        edition=3,
        outcome="say what a dark pilot light proves",
        danger=True,
        numbers=lambda draw, supply: {"case": draw.pick(tuple(DARK_CASES))},
        ask="{case} What may they do now?",
        kind=Choice(lambda n: _dark_options(n.case)),
        nudges=(
            "What are all the reasons for which a light can be dark?",
            "Ask of each answer: would it still be safe if the light were broken?",
        ),
        working="Dark never means dead. The light can fail, a dimmer does not isolate, and a cold "
        "pot can be live. Pull the plug and keep it, prove the tester, prove dead, prove the "
        "tester again. Any cover is left to an electrically skilled or instructed person.",
    ),
)
