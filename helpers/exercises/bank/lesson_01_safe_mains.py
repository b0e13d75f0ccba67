"""Lesson 01: what the mains does to a body, and how to keep it away from one.

Danger first: where a figure is uncertain, the safer one is taken. No answer here is a permission.
"""

from functools import cache
from itertools import product

from helpers.exercises.kinds import (
    ROUNDING,
    Amount,
    Choice,
    ChooseAll,
    Criterion,
    Field,
    Option,
    Order,
    Parts,
    first_that_passes,
    options,
)
from helpers.exercises.question import Picture, Question
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps.general import given
from helpers.exercises.roads.steps.safety import (
    distance,
    through_body,
    touch_volts,
    understated_touch,
)
from helpers.physics import hazards, insulation, mains
from helpers.quantities import write, write_as

LESSON = "01"
TITLE = "Safe mains practice"

NETWORK_OHMS = hazards.TOUCH_NETWORK_OHMS
LET_GO_MOST_AMPS = hazards.LET_GO_AMPS_RMS[1]


def highest(n):
    """The learner's supply at the top of its range."""
    return mains.highest(n.supply)


def highest_volts(n):
    return highest(n).volts_rms


# --- look back, predict ------------------------------------------------------------------------

AMPS_IN_WORDS = {
    0.002: "two thousandths of an ampere",
    0.003: "three thousandths of an ampere",
    0.006: "six thousandths of an ampere",
    0.008: "eight thousandths of an ampere",
}

RECALL = Question(
    id="safe-recall-1",
    edition=2,
    role="recall",
    outcome="type a quantity with its unit",
    numbers=lambda draw, supply: {"amps": draw.pick(tuple(AMPS_IN_WORDS))},
    facts={"words": lambda n: AMPS_IN_WORDS[n.amps]},
    ask="From lesson 00: write {words} in figures, with a unit, any way you like.",
    kind=Amount("current", "mA", Road(given("amps"))),
    nudges=("What is the prefix for a thousandth?", "Write the number of thousandths, then mA."),
    working="{words} is {amps:A}, or {right}.",
)

PREDICT = Question(
    id="safe-predict",
    role="predict",
    outcome="commit to an expectation",
    facts={"crest_volts": lambda n: mains.peak(n.supply.volts_rms)},
    ask="A pilot light is plugged into a socket of {supply}: a resistor, then a red LED. Between "
    "its two legs the LED has 2 V. How much voltage can stand between one leg and the earth under "
    "your feet?",
    kind=Choice("""
        wrong led volts: About 2 V, the LED's own voltage
        wrong taken: Hardly any: the resistor has taken the mains voltage away
        wrong half: About half of the mains voltage
        wrong all: All of the mains voltage
    """),
    working="all of it: {supply.volts_rms}, and {crest_volts} at the crest. With the plug the "
    "other way round, or a wire swapped or broken, the leg is joined to the live wire. The LED's "
    "own voltage stands between its legs, and says nothing about earth.",
)

# --- what a current does -----------------------------------------------------------------------

WET_OHMS = (500.0, 550.0, 600.0, 700.0)  # fewer than dry hands; common practice, no source

CURRENTS_IN_ORDER = options("""
    wrong felt: What a body may just feel
    wrong let go: What keeps many hands from letting go
      reply: A hand feels a current long before it cramps. Which of the two is smaller?
    wrong rcd: What a 30 mA RCD must open at
      reply: By then a hand is already held fast. What does that say about the two currents?
      danger: whoever thinks that an RCD opens before it hurts will trust it too far.
    wrong heart: What can stop a heart within about a second
      reply: An RCD is chosen to open below what stops a heart. Which is the smaller current?
    wrong pot: What the 90 W pot draws at full power
      reply: Watts divided by volts: is that less or more than what stops a heart?
    wrong fuse: What the fuse or breaker before the pot's cord carries all day
      reply: It has to carry the pot's current for good. So which is larger?
      danger: a fuse or breaker that seems to open before it hurts will be trusted to protect
        people. It carries many times what kills.
""")

SHOCK = (
    Question(
        id="safe-1",
        edition=4,
        outcome="find the current through a body",
        numbers=lambda draw, supply: {"ohms": draw.pick(WET_OHMS)},
        ask="A wet hand touches a live wire of {supply}. The way through the body to earth has "
        "{ohms}: wet skin has fewer than dry. What current flows?",
        kind=Amount(
            "current", "mA", Road(touch_volts(), through_body("ohms")), danger=understated_touch
        ),
        nudges=(
            "What pushes the current, and what holds it back?",
            "Divide the volts by the ohms. Volts by kilo-ohms gives milliamperes.",
        ),
        working="{sum}: far above the current at which a hand can still let go.",
    ),
    Question(
        id="safe-2",
        edition=2,
        outcome="say why volts alone do not tell the harm",
        ask="Why this step? In the worked example the volts were divided by the ohms of a body "
        "before anything was said about harm. Why are the volts alone not enough?",
        kind=Choice("""
            right current and time: Harm depends on the current, its way and its time; skins differ.
              reply: So plan for the worst skin, the wet one, never for a lucky one.
            wrong limit of volts: Volts count only above a limit that sockets in homes do not reach.
              reply: What current did the example find on your own socket?
              danger: on every supply of this course even dry hands can let through what stops a
                heart.
            wrong dry skin: Dry skin keeps every current harmless, so volts need not be known.
              reply: What happens to skin that sweats, or grips hard, or has a cut?
              danger: skin is no insulation. It breaks down as the voltage rises, and nobody can
                know their own in advance.
            wrong appliance current: What counts is the current that the appliance draws.
              reply: Does the current through a hand pass through the appliance?
        """),
        nudges=(
            "What does the table of zones sort by: volts, or something else?",
            "Think of the same socket, touched once with a dry fingertip and once with a wet grip.",
        ),
        working="IEC 60479-1 sorts by current and time. Volts drive that current, and the body's "
        "ohms decide how much: they change with skin, wetness, grip and voltage.",
    ),
    Question(
        id="safe-3",
        outcome="put the currents that matter in order",
        ask="Put these currents in order, from the smallest to the largest.",
        kind=Order(CURRENTS_IN_ORDER),
        nudges=(
            "Which of them does the lesson give in milliamperes, and which are near an ampere?",
            "First what a body feels and does, then what machines draw and fuses carry.",
        ),
        facts={
            "felt_amps": lambda n: hazards.FELT_AMPS_RMS,
            "held_amps": lambda n: LET_GO_MOST_AMPS,
            "rcd_amps": lambda n: hazards.RESIDUAL_AMPS_RMS,
            "pot_amps": lambda n: 90.0 / n.supply.volts_rms,
        },
        working="About {felt_amps:mA}, {held_amps:mA}, {rcd_amps:mA}, 50 mA, {pot_amps:mA} for "
        "the pot on {supply}, and several amperes for fuse or breaker. What the pot draws is far "
        "more than a heart can stand.",
    ),
)

# --- the residual-current device ---------------------------------------------------------------

RCD = (
    Question(
        id="safe-4",
        edition=2,
        level=2,
        outcome="find the mistake in trusting a residual-current device",
        ask="Find the mistake. “(1) Our RCD opens at 30 mA. (2) So never more than 30 mA can flow "
        "through me. (3) And 30 mA for an instant does no lasting harm. (4) So the plug may stay "
        "in while I look for the fault.” Which step breaks first?",
        kind=Choice("""
            right step 2: Step 2: the RCD decides how long, not how much.
              reply: Volts and body decide how much. Repaired: “Until it opens, everything flows
                that the volts can drive. So the plug comes out first.”
            wrong step 1: Step 1: an RCD for sockets opens at several amperes.
              reply: That is a fuse or a breaker. What does the lesson say an RCD compares?
            wrong step 3: Step 3: such a current kills in an instant, always.
              reply: Find 30 mA and 40 ms in the picture of zones. And which step claimed something
                that no RCD does?
            wrong nothing: No step: somebody with an RCD may leave the plug in.
              reply: What flows in the time before it opens? And hand to hand?
              danger: an RCD does not limit the current, does not see a touch from line to neutral,
                and can fail. Working on a live pot can kill.
        """),
        nudges=(
            "What does an RCD change: how much flows, or how long?",
            "Work out the current through dry hands on your supply, and hold it against step 2.",
        ),
        facts={
            "dry_ohms": lambda n: hazards.SHOCK_BODY_OHMS,
            "dry_amps": lambda n: hazards.touch_amps_rms(n.supply),
        },
        working="On {supply}, dry hands of {dry_ohms} let {dry_amps:mA} through until the RCD has "
        "opened. It shortens the time and leaves the current as it is.",
    ),
    Question(
        id="safe-5",
        level=2,
        marks=2,
        outcome="say what a residual-current device does not do",
        ask="A sound RCD of 30 mA, of a type that suits the dimmer's wave, guards the socket. In "
        "which of these cases will it stay on?",
        kind=ChooseAll("""
            right hand to hand: One hand on the live wire, the other on the neutral wire, dry floor
              reply: All that goes out comes back on the other wire. What is there to see?
              danger: whoever counts on the RCD here is alone: it takes the body for a heater.
            right small touch: A finger behind a sound resistor of 330 kΩ, one milliampere or less
              reply: Is a milliampere enough for it to open?
            right hot part: A resistor in the pot that glows and chars its board
              reply: Does any of that current leave the two wires?
              danger: an RCD does not see an overheating part. It can burn for hours.
            right left on: The pot, forgotten at full heat after closing time
              reply: To the RCD, is a forgotten pot different from a wanted one?
            wrong hand to earth: A wet hand on the live wire, bare feet on a damp stone floor
              reply: This current comes back through the earth and not through the neutral wire.
                Does the RCD miss it? (Opening does not mean unharmed.)
            wrong wire on case: A loose live wire that touches the earthed metal case
              reply: The current comes back through the earth wire. Does the RCD see that?
        """),
        nudges=(
            "What does an RCD compare?",
            "Follow each current: does all of it come back on the neutral wire, or does more than "
            "a few milliamperes take another way?",
        ),
        working="It opens when current is missing on the way back. Hand to hand, with a hot part "
        "or a forgotten pot, none is missing; with a touch of one milliampere, too little. Damp "
        "feet and an earthed case send it another way, and it opens.",
    ),
)

# --- an LED straight across the mains ----------------------------------------------------------

# What is to go across the mains: what happens, and the hope that belongs to it.
BARE_LEDS = {
    "One red LED is": (
        "It dies in an instant and can burst into hot pieces.",
        """
        wrong takes its 20 mA: It lights: an LED takes the 20 mA that it is made for.
          reply: The label is a limit. What in this circuit keeps the current below it?
          danger: nothing limits the current. The LED can burst into your face or your hand.
        """,
    ),
    "Five red LEDs, one after the other, are": (
        "They hold back about 10 V, die at once and can burst.",
        """
        wrong share the mains: They share the mains among them, so each gets little enough.
          reply: How many volts does a red LED take for itself, and who takes all the rest?
          danger: LEDs take a few volts each and no more. The rest drives a current that nothing
            limits, and they can burst.
        """,
    ),
    "A red LED and an ordinary diode, one after the other, are": (
        "The diode blocks one direction only: in the other the LED can burst.",
        """
        wrong diode holds back: The diode holds the current back, so the LED lights, only more
          dimly.
          reply: What does a diode do to a current in the direction that it lets through?
          danger: a diode turns one direction back and limits nothing in the other. The LED can
            burst.
        """,
    ),
}


@cache
def _bare_led_options(case):
    ends, hope = BARE_LEDS[case]
    return options(f"""
        right bursts: {ends}
          reply: Nothing but the wiring holds the current back. It must never be tried.
        {hope.strip()}
        wrong dies quietly: Darkness and nothing more: a dead LED is a harmless LED.
          reply: Where does the energy of so large a current go?
          danger: it need not die quietly. It can burst, an arc may stay, and its legs are live.
        wrong rcd saves: An RCD opens before anything can happen.
          reply: All the current comes back on the neutral wire. What does an RCD see?
          danger: an RCD sees nothing of this, and no breaker is as fast as the LED.
    """)


BARE_LED = Question(
    id="safe-6",
    level=2,
    danger=True,
    outcome="say what happens to an LED straight across the mains",
    numbers=lambda draw, supply: {"case": draw.pick(tuple(BARE_LEDS))},
    ask="{case} to go straight across {supply}, with nothing else. What happens?",
    kind=Choice(lambda n: _bare_led_options(n.case)),
    nudges=(
        "What holds the current back in this circuit?",
        "Look at what the lesson's cell computes for your supply: amperes, and how soon.",
    ),
    working="There is no dropper. LEDs and diodes take a few volts and leave all the rest, so "
    "only the wiring limits the current: more than ten amperes at the crest. At the crest the "
    "thread of gold inside melts in less than a thousandth of a second, and the case can burst.",
)

# --- dead is proved ----------------------------------------------------------------------------

# The same six steps, each time in the words of the job, for whoever is skilled or instructed.
ISOLATIONS = {
    "The wax pot, on a plug,": (
        "Switch off, pull the plug out, and give capacitors time to discharge.",
        "Take the plug along, so that nobody can put it back.",
        "Try the tester on a proving unit: it must show voltage.",
        "Hold both probes on the pulled plug's pins, two by two: it must show nothing.",
        "Try it on the proving unit once more: it must show voltage again.",
        "Loosen the pot's cover, and test again inside before a hand goes in.",
    ),
    "The dimmer in the wall, a job for a skilled and licensed electrician,": (
        "Open the isolator of this circuit: every supply wire, never earth.",
        "Lock the isolator and keep its only key.",
        "See the tester light up on a proving unit, made for trying testers.",
        "See it stay dark in the dimmer's box, from each wire to each other and to earth.",
        "See it light up on the proving unit again.",
        "Cover what stays live beside it, then loosen the dimmer's wires.",
    ),
    "The lead that feeds the pot": (
        "Unplug the lead from the wall.",
        "Keep the lead's plug with you, and hang up a note.",
        "Does the tester show voltage on a proving unit?",
        "Does it show nothing at the lead's far end: line, neutral and earth, two by two?",
        "Does it still show voltage on the proving unit?",
        "Unscrew the lead's far end.",
    ),
}


@cache
def _isolation_steps(case):
    isolate, lock_off, prove_tester, prove_dead, prove_again, work = ISOLATIONS[case]
    return options(f"""
        wrong isolate: {isolate}
        wrong lock off: {lock_off}
          reply: What has to be off before it can be kept off?
        wrong prove the tester: {prove_tester}
          reply: A tester can fail at any time, and others can switch on at any time. So which step
            comes before the tests?
          danger: while you test, somebody else can switch on again.
        wrong prove dead: {prove_dead}
          reply: What does zero on a tester mean if the tester may be broken?
          danger: a broken tester shows zero on a live wire. Whoever believes it can be killed.
        wrong prove the tester again: {prove_again}
          reply: Again means after something. After which step could it have failed unseen?
          danger: a tester that fails during the test is believed, and the part may be live.
        wrong work: {work}
          reply: What if the tester failed during the test itself? Which step shows that?
          danger: touching comes last. Before the tester is proved again, nothing is proved.
    """)


# What the display shows, how the meter is set, and why zero then proves nothing.
METER_CASES = {
    "direct current": ("0.0", "V", "multimeter, set to DC volts"),
    "frozen": ("0.0", "V", "multimeter, set to AC volts, HOLD is lit"),
    "low battery": ("0.0", "V", "multimeter, set to AC volts, battery sign is lit"),
    "amperes": ("0.00", "A", "multimeter, set to AC amperes"),
}
METER_REASONS = {
    "direct current": "Nothing: on DC volts a meter shows about zero on live mains, too.",
    "frozen": "Nothing: the display is frozen and shows an old reading.",
    "low battery": "Nothing: its battery is low, so no reading can be trusted.",
    "amperes": "Nothing: on amperes it is nearly a short circuit, and its blown fuse shows zero.",
}


@cache
def _meter_options(case):
    reasons = (
        Option(
            key,
            text,
            right=key == case,
            reply="And the tester for this job is a two-pole voltage tester, proved before and "
            "after."
            if key == case
            else "It proves nothing, that is true. But does this display say what you chose?",
        )
        for key, text in METER_REASONS.items()
    )
    return (
        *reasons,
        *options("""
            wrong dead: The terminals are dead: there is nothing on them.
              reply: Read everything that the display shows. Was this meter able to see the mains?
              danger: this reading would be the same on live terminals. Touching them can kill.
            wrong dead and dark: The terminals are dead, if the pilot light is dark as well.
              reply: Two things that can both be wrong: do they make one that is right?
              danger: a dark light and a meter that cannot see prove nothing together, either.
                Touching the terminals can kill.
        """),
    )


STILL_LIVE = {
    "The plug is in. The dimmer is off, the pot is cold and its light is dark.": options("""
        right led legs: The legs of the LED
          reply: What lies between the legs and the live wire, and is any of it insulation?
          danger: the legs of the LED can be at the full mains voltage. Touching them can kill.
        right far end of dropper: The end of the dropper that is farther from the live wire
          reply: With no current flowing, how much voltage does a resistor take away?
          danger: both ends of a dropper can be at the full mains voltage. Touching them can kill.
        right heater terminals: The terminals of the heater, the neutral one too
          reply: Does a dimmer open both wires, and one of them completely?
          danger: a dimmer leaks and leaves a wire unopened, and neutral counts as live. These
            terminals can kill.
        wrong closed cover: The outside of the closed, unbroken plastic cover
          reply: What is that cover made to be?
        wrong knob: The dimmer's plastic knob
          reply: What is a knob made to be?
        right cracked rim: The plastic cover's rim, where a crack shows the brass of a terminal
          reply: Does the cover still lie between a finger and that terminal?
          danger: a cracked cover is none where it is cracked, and the terminal can kill.
    """),
    "The plug has just been pulled. Nobody has tested anything.": options("""
        right capacitor: A capacitor in the pot, between line and neutral
          reply: What does a capacitor keep when the supply goes away?
          danger: a capacitor can hold a charge up to the crest of the mains.
        right plug pins: The pins of the plug, joined to that capacitor
          reply: Which part is joined to the pins by metal, and what may it still hold?
          danger: a charged capacitor drives a shock through the pins as well.
        right socket: The wires behind the socket's plate in the wall
          reply: What has the plug been parted from, and what has not?
          danger: the socket is as live as before. Its wires can kill.
        right cord grip: The metal end of the plug's cord grip, which a loose strand touches
          reply: What does a charged capacitor do to all metal that is joined to it?
          danger: a loose strand brings the capacitor's charge to the hand.
        wrong plug body: The plastic body of the plug
          reply: What is a plug's body made to be?
        wrong cord: The unbroken sleeve of the cord
          reply: What lies between it and the wires?
    """),
    "A switch in the cord is off, and it opens one wire only. The plug is in.": options("""
        right both heater ends: Both ends of the heater
          reply: What if the switch sits in the neutral wire?
          danger: with the switch in the wrong wire the whole heater is live. Touching it can kill.
        right dark led: The legs of the LED, which is dark
          reply: Does a dark LED say anything about the volts to earth?
          danger: the legs can be at the full mains voltage, and dark. Touching them can kill.
        right switch contacts: The contacts inside the switch
          reply: Which wires come to a switch, and is one of them the live one?
          danger: one contact is joined to the live wire, directly or through the heater. It can
            kill.
        right cut sleeve: The sleeve of the cord, whole but for a cut at the plug
          reply: What lies under the cut?
          danger: a cut sleeve is no insulation: the wire under it may be live and can kill.
        wrong closed case: The switch's plastic case, closed
          reply: What is that case made to be?
        wrong socket face: The plastic face of the wall socket
          reply: What is it made to be?
    """),
}


def _live_parts(n):
    named = [part.text for part in STILL_LIVE[n.scene] if part.right]
    return "; ".join(text[0].lower() + text[1:] for text in named)


# The same four steps, each time in the words of the accident.
RESCUES = {
    "Somebody holds the pot and cannot let go. Its plug is within your reach, clear of them.": (
        "Touch neither them nor the pot: pull its plug, and shout for an emergency call meanwhile.",
        "Go to them: do they answer, and do they breathe normally?",
        "No answer, only gasps: see that the call is made, press the chest hard and fast, and "
        "send for a defibrillator.",
        "Have a doctor see them when they have come round, even if they feel well.",
    ),
    "Somebody lies beside the open dimmer box, and a wire touches them. The breakers are near.": (
        "Stay clear of them and the wire: switch off at the breakers, calling for help as you go.",
        "See that no wire touches them. Is there an answer, and normal breath?",
        "They breathe normally and do not answer: on their side, into the recovery position, and "
        "somebody watches their breath until the ambulance comes.",
        "Let a doctor look at them, also when they wake and say it was nothing.",
    ),
    "Somebody grips a cut extension lead and cannot let go. You stand at its plug.": (
        "Take hold of neither them nor the lead: its plug comes out of the wall first, while you "
        "shout for help.",
        "Kneel beside them: do they react to your voice? Look and listen for normal breath.",
        "Neither: have the emergency number called, press the chest as it tells you, and use a "
        "defibrillator as soon as one is there.",
        "See that their heart is checked by a doctor, however well they look later.",
    ),
}


@cache
def _rescue_steps(case):
    cut_the_supply, look, act, doctor = RESCUES[case]
    return options(f"""
        wrong cut the supply: {cut_the_supply}
        wrong look: {look}
          reply: While they are on the mains, what happens to whoever touches them?
          danger: whoever touches them before the supply is cut becomes the second casualty.
        wrong act: {act}
          reply: What has to be known first, so that the right help is given?
          danger: nobody touches them before the supply is cut; and without a look at answer and
            breath, time goes to the wrong help.
        wrong doctor: {doctor}
          reply: Is there something more urgent than a check of the heart later on?
          danger: what keeps them alive comes first: without breath every minute counts.
    """)


DEAD = (
    Question(
        id="safe-7",
        edition=3,
        level=2,
        marks=2,
        danger=True,
        outcome="prove a circuit dead, step by step",
        numbers=lambda draw, supply: {"case": draw.pick(tuple(ISOLATIONS))},
        ask="{case} is to be made dead before anybody works on it. Put the steps in the order of "
        "this lesson.",
        kind=Order(lambda n: _isolation_steps(n.case)),
        nudges=(
            "What can go wrong between two of these steps, and which step catches it?",
            "Off, kept off; then the test, with a proof of the tester right before and right "
            "after; then, and only then, hands.",
        ),
        working="Isolate, lock off, prove the tester, prove dead, prove the tester again, and "
        "only then work, with what stays live beside it covered. Locking comes at once, since "
        "somebody could switch on during the test. A proving unit beats a socket, which may be "
        "dead and can kill.",
    ),
    Question(
        id="safe-8",
        level=2,
        marks=2,
        danger=True,
        outcome="recognise a meter reading that proves nothing",
        numbers=lambda draw, supply: {"case": draw.pick(tuple(METER_CASES))},
        picture=lambda n: Picture(
            "meter", dict(zip(("text", "unit", "words"), METER_CASES[n.case], strict=True))
        ),
        ask="The plug is said to be out. Somebody holds the probes of this meter on the terminals "
        "of the opened pot. What does the reading prove?",
        kind=Choice(lambda n: _meter_options(n.case)),
        nudges=(
            "What else does the display tell, besides the number?",
            "Ask: would this meter, set like this, show anything else on live terminals?",
        ),
        facts={"reason": lambda n: METER_REASONS[n.case]},
        working="{reason} A two-pole voltage tester has no range to set wrongly, and it is proved "
        "on a proving unit before and after.",
    ),
    Question(
        id="safe-9",
        level=2,
        marks=2,
        danger=True,
        outcome="spot the parts that can still be live",
        numbers=lambda draw, supply: {"scene": draw.pick(tuple(STILL_LIVE))},
        ask="{scene} Which of these can still be dangerous to touch?",
        kind=ChooseAll(lambda n: STILL_LIVE[n.scene]),
        nudges=(
            "Which of these is real insulation between a hand and the mains?",
            "Everything that is joined to a supply wire by metal, by a resistor or by the heater "
            "counts as live; so does what can hold a charge.",
        ),
        facts={"live_parts": _live_parts},
        working="Live, as long as nobody has proved them dead: {live_parts}. The rest is unbroken "
        "insulation, made to be touched.",
    ),
    Question(
        id="safe-10",
        edition=3,
        level=2,
        danger=True,
        outcome="help somebody who hangs on the mains, in the right order",
        numbers=lambda draw, supply: {"case": draw.pick(tuple(RESCUES))},
        ask="{case} Put the steps in order.",
        kind=Order(lambda n: _rescue_steps(n.case)),
        nudges=(
            "Who must not become the second casualty?",
            "Ask of each step: could it hurt you, or come too late, if another came first?",
        ),
        working="Hands off, and the supply cut first where it is within reach, calling for help "
        "meanwhile. Then answer and breath: without both, and gasping is no breath, emergency "
        "call, chest and defibrillator; with normal breath alone, the recovery position. And a "
        "doctor in any case, since a heart can fall out of step later.",
    ),
)

# --- distances, and the rest of good practice --------------------------------------------------

# Category, whether on a printed board, and the place in words.
PLACES = {
    "plugged in": (
        "II",
        False,
        "In the plugged-in pot (category II) a bare joint and a screw sit on one plastic wall.",
    ),
    "built in": (
        "III",
        True,
        "In a dimmer, built into the wall (category III), a bare track and a screw sit on one "
        "clean printed board.",
    ),
    "at the origin": (
        "IV",
        False,
        "Beside the electricity meter (category IV) a bare terminal and a screw sit on one "
        "plastic wall.",
    ),
}


def _where(n):
    return PLACES[n.place][:2]


def _distances(n):
    return insulation.towards_a_hand(n.supply, *_where(n))


def _distance_danger(value, n):
    if value < _distances(n).metres * (1 - ROUNDING):
        return (
            "a surge can jump this way, or a current creep along it over dirt, and reach whoever "
            "touches."
        )
    return None


SCENES = {
    "At the bench, a skilled colleague is about to measure the pot's volts.": options("""
        right leaning hand: One hand rests on the metal sink while the other holds the probe.
          reply: Which way would a current take through the chest?
          danger: a current from hand to hand passes the heart.
        right no category: The meter bears no measurement category, and a lead has a cracked sleeve.
          reply: What is between the fingers and the mains?
          danger: a surge can make such a meter burst, and a cracked lead is a bare wire.
        right alone: It is late and nobody else is in the building.
          reply: Who pulls the plug if a hand cannot let go?
          danger: nobody can help. Nobody works on the mains alone.
        right open while live: The cover is off and the plug is in, so that the parts can be seen.
          reply: When may a box with mains parts in it stand open?
          danger: a box is never open while it is live: one slip of a probe or a hand can kill.
        wrong good meter: The meter and its leads are marked CAT III 300 V.
          reply: Is a higher mark bad?
        wrong plug in sight: The plug is in reach of the second person.
          reply: Who may need it soon?
    """),
    "Somebody closes the pot after a repair.": options("""
        right knot for a clamp: A knot in the cord keeps it from being pulled out.
          reply: What happens to the wires when the knot slips?
          danger: a pulled cord tears a live wire loose, or the earth wire.
        right hot against plastic: The dropper lies against the plastic wall, out of the way.
          reply: What does a warm part do to plastic over a thousand hours?
          danger: plastic softens, chars and burns, and then it insulates no more.
        right joint near lid: A bare joint sits 0.3 mm below the metal lid.
          reply: Compare the gap with the distances for your supply.
          danger: a surge or a knock closes that gap, and the lid is live.
        right soot on the board: Wax and soot reach across the board, from a live joint to the lid's
            screw.
          reply: Which distance runs along a surface, and what does dirt do to it?
          danger: dirt conducts. A current creeps along it and chars it, and the lid is live.
        right no earth: The earth wire was cut short, since the lid is painted.
          reply: Is paint insulation?
          danger: with no earth wire, one loose strand makes the whole case live.
        wrong two layers: Sleeve and cover: two separate layers lie between live parts and a hand.
          reply: What is that called, and is it a fault?
        wrong cord clamp: A clamp holds the cord when it is pulled hard.
          reply: What is it made for?
    """),
    "It is closing time in the candle workshop.": options("""
        right light will remind: The pot stays on: its pilot light will remind whoever comes first.
          reply: Can a light switch anything off?
          danger: a light reminds and protects nobody. Unwatched wax can boil, smoke and burn, and
            nobody is there to pull the plug and put the lid on. Never water on burning wax.
        right bigger fuse: The fuse blew twice, so a bigger one was put in.
          reply: What is that fuse chosen for?
          danger: a bigger fuse lets the cord overheat, and the fault is still there.
        right cloth: A cloth lies over the pot to keep it warm for the morning.
          reply: Where does the heat go now?
          danger: a covered heater gets hotter than it was made for.
        right dimmer as switch: The dimmer is turned to off, and the pot is wiped with a wet rag.
          reply: Does a dimmer isolate?
          danger: behind a dimmer, parts can be live when it is off. Water carries that to the hand.
        wrong plug out: The plug of the other pot is pulled and lies on the table.
          reply: Is that bad?
        wrong cut-out: The pot's own thermal cut-out, fitted by its maker, stays in place.
          reply: What does it do when the dimmer fails at full power?
    """),
}


def _hazards_named(n):
    return " ".join(option.text for option in SCENES[n.scene] if option.right)


PICK_FUSES = (0.1, 0.25, 0.5, 1.0, 2.0, 3.0, 5.0, 6.0, 10.0, 13.0, 16.0)
PICK_RCDS = (0.005, 0.01, 0.03, 0.1, 0.3, 0.5)
PICK_METRES = (1e-3, 2e-3, 3e-3, 4e-3, 5e-3, 6.5e-3, 8e-3)


def _judge_picks(picked, n):
    fuse, residual, metres = picked
    # An element keeps its ohms, so on a high mains it takes more than its label says.
    drawn = 2 * n.watts * highest_volts(n) / n.supply.volts_rms**2
    needed = insulation.towards_a_hand(n.supply, "II", False).metres
    return [
        Criterion(
            "fuse carries both pots",
            fuse >= drawn,
            0.2,
            f"Both pots take {write(drawn, 'current')} at the most; the fuse carries "
            f"{write_as(fuse, 'A')}.",
        ),
        Criterion(
            "fuse protects the cord",
            fuse <= n.cord_amps,
            0.3,
            f"The cord is made for {write_as(n.cord_amps, 'A')}, the fuse for "
            f"{write_as(fuse, 'A')}.",
            "a fuse for more than the cord carries lets it overheat, and it can set fire.",
        ),
        Criterion(
            "RCD opens below what stops a heart",
            residual <= hazards.RESIDUAL_AMPS_RMS,
            0.2,
            f"The RCD opens at {write_as(residual, 'mA')}; as protection for people "
            f"{write_as(hazards.RESIDUAL_AMPS_RMS, 'mA')} is the most; some countries ask for "
            "about 5 mA.",  # UL 943, class A: 4 to 6 mA, from memory
            "such an RCD can stay on while a current flows that stops a heart.",
        ),
        Criterion(
            "live joint is far enough from a hand",
            metres >= needed * (1 - ROUNDING),
            0.3,
            f"The joint keeps {write_as(metres, 'mm')}; {write_as(needed, 'mm')} is the least.",
            "a surge can jump this way, or a current creep along it, and reach whoever touches.",
        ),
    ]


_best_picks = first_that_passes(
    _judge_picks,
    product(PICK_FUSES, (hazards.RESIDUAL_AMPS_RMS,), PICK_METRES),
)


PRACTICE = (
    Question(
        id="safe-16",
        edition=4,
        level=2,
        outcome="find the distance that holds through air and along a surface",
        numbers=lambda draw, supply: {"place": draw.pick(tuple(PLACES))},
        facts={
            "case": lambda n: PLACES[n.place][-1],
            "category": lambda n: PLACES[n.place][0],
            "clearance_metres": lambda n: _distances(n).clearance_metres,
            "creepage_metres": lambda n: _distances(n).creepage_metres,
        },
        ask="Read the table for your supply, {supply}. {case} A hand may touch the screw, and the "
        "shortest way to it runs along the surface. How far apart must the two be, at least?",
        kind=Amount("length", "mm", Road(distance(_where)), danger=_distance_danger, below=0),
        nudges=(
            "Which category is it, and which two distances have to be kept at once?",
            "Take the way through air and the way along this surface from the line of the "
            "category, and use the larger.",
        ),
        working="Category {category} on {supply}, towards a hand: clearance {clearance_metres:mm} "
        "against surges, creepage {creepage_metres:mm} against dirt. The larger counts: {right}. "
        "It is the least that the basic standard asks; the standard of a product may ask for more.",
        code=lambda n: (
            f'insulation.towards_a_hand(mains.SUPPLIES["{n.supply.name}"], *{_where(n)}).metres'
        ),
    ),
    Question(
        id="safe-17",
        edition=2,
        level=2,
        marks=2,
        danger=True,
        outcome="spot the hazards around a mains appliance",
        numbers=lambda draw, supply: {"scene": draw.pick(tuple(SCENES))},
        ask="{scene} Take each line by itself. Which of these are hazards?",
        kind=ChooseAll(lambda n: SCENES[n.scene]),
        nudges=(
            "For each line: what happens if one thing goes wrong now?",
            "A hazard is what one slip, one fault or one forgotten hour turns into a shock or a "
            "fire.",
        ),
        facts={"hazards": _hazards_named},
        working="Hazards: {hazards} The other lines are good practice.",
    ),
    Question(
        id="safe-19",
        level=2,
        outcome="say why the larger of two distances counts",
        ask="Why this step? Of the way through air and the way along the surface, the larger was "
        "taken, and neither the smaller one nor the sum. Why?",
        kind=Choice("""
            right both hold: One and the same way has to be long enough for each of the two dangers.
              reply: A surge jumps it, and a current creeps along it. Neither waits for the other.
            wrong smaller first: The smaller one is where an arc starts, and the larger is a margin.
              reply: Does a way that is long enough for surges keep a creeping current away, too?
              danger: with the smaller one, a surge or a creeping current can reach the hand.
            wrong dirt: Along a surface there is always more dirt than in the air.
              reply: Is the way along the surface the larger one on every supply and material?
            wrong no surges: Surges happen on other supplies only, so the surface decides here.
              reply: What does the category say, and for which supply does the lesson give none?
              danger: surges come on every supply, and jump a gap that is too small.
        """),
        nudges=(
            "Which danger does each of the two distances guard against?",
            "Ask for each danger alone how long the way has to be, then look for a way that does "
            "for both.",
        ),
        working="Clearance is for surges, creepage for the volts that are always there. Where a "
        "surface joins the two, one way has to hold both, so it is as long as the larger asks.",
    ),
    Question(
        id="safe-18",
        edition=2,
        level=3,
        marks=2,
        outcome="choose fuse, residual-current device and distance for a lead with two pots",
        numbers=lambda draw, supply: {
            "watts": draw.pick((60.0, 75.0, 90.0, 110.0)),
            "cord_amps": draw.pick((3.0, 6.0, 10.0)),
        },
        ask="A cord that is marked {cord_amps:A} feeds two pots of {watts} each on {supply}. An "
        "electrician asks what you would pick: the fuse or breaker before the cord, the RCD (or "
        "ground-fault interrupter) before the socket, and how far a bare live joint in the "
        "plugged-in pot stays from a screw that a hand may touch, along one plastic wall, with "
        "neither soot nor damp. Reckon with the highest mains.",
        kind=Parts(
            (
                Field("fuse or breaker", "current", PICK_FUSES, "A"),
                Field("RCD opens at", "current", PICK_RCDS, "mA"),
                Field("distance", "length", PICK_METRES, "mm"),
            ),
            _judge_picks,
            _best_picks,
        ),
        nudges=(
            "What does each of the three keep from harm: the cord, a heart, a hand?",
            "Watts over volts for both pots gives what the fuse carries; the cord sets its upper "
            "end. For the distance use the larger one of the table's first line.",
        ),
        working=lambda n: " ".join(c.reply for c in _judge_picks(_best_picks(n), n)),
    ),
)

QUESTIONS = (RECALL, PREDICT, *SHOCK, *RCD, BARE_LED, *DEAD, *PRACTICE)
