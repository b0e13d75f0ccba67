"""A bank of twenty-three questions of every kind, for tests and benches of the classroom.

Made up, so that the tests do not change with the lessons; the sums are those of Ohm's law.
"""

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
)
from helpers.exercises.question import Question
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps.general import given, over

NUDGES = ("Which rule joins the two?", "Write the rule down, then put the numbers in.")
VOLTS = (5.0, 9.0, 12.0, 15.0, 24.0)
OHMS = (330.0, 470.0, 680.0, 1000.0, 1800.0, 2700.0, 3900.0)


def _bench(draw, supply):
    return {"volts": draw.pick(VOLTS), "ohms": draw.pick(OHMS)}


def current_question(number):
    """A current from volts and ohms, with three slips, one of them dangerous."""
    kind = Amount(
        "current",
        "mA",
        Road(given("volts"), over("ohms")),
        slips=(
            Slip("multiplied volts and ohms", lambda n: n.volts * n.ohms, "Multiplied?"),
            Slip("turned it upside down", lambda n: n.ohms / n.volts, "Upside down?"),
            Slip("halved it", lambda n: n.volts / n.ohms / 2, "Half?", "It burns."),
        ),
    )
    return _question(f"current-{number}", kind)


def choice_question(name, danger=False, role="exercise"):
    """One of four, the second one dangerous."""
    options = (
        Option("unplug", "Unplug it and test it.", right=True),
        Option("dark", "It is dark, so touch it.", reply="Dark?", danger="A shock." * danger),
        Option("wait", "Wait a while.", reply="For what?"),
        Option("ask", "Ask a neighbour.", reply="Who is entitled?"),
    )
    return _question(name, Choice(options), danger=danger, role=role)


def choose_all_question(name, danger=False):
    """Three of five."""
    keys = ("gloves", "tester", "lock", "ladder", "music")
    options = tuple(Option(k, k.capitalize(), right=i < 3, reply=k) for i, k in enumerate(keys))
    return _question(name, ChooseAll(options), danger=danger, marks=3)


def order_question(name, danger=False):
    """Four steps."""
    steps = ("isolate", "prove", "lock", "work")
    options = tuple(Option(key, key.capitalize(), reply=f"{key}?") for key in steps)
    return _question(name, Order(options), danger=danger, marks=2)


def parts_question(name):
    """A resistor and a rating from two bins."""

    def judge(values, n):
        ohms, watts = values
        cool = watts >= 2 * n.volts**2 / ohms
        return [
            Criterion("current", n.volts / ohms <= 0.02, 0.5, "Current."),
            Criterion("rating", cool, 0.5, "Rating.", "" if cool else "It burns."),
        ]

    kind = Parts(
        fields=(
            Field("the resistor", "resistance", (330.0, 1000.0, 3300.0)),
            Field("the rating", "power", (0.25, 0.5, 1.0, 2.0)),
        ),
        judge=judge,
        best=lambda n: (3300.0, 2.0),
    )
    return _question(name, kind, marks=2)


def _question(name, kind, **more):
    more.setdefault("numbers", _bench)
    return Question(
        id=name,
        outcome=f"answer {name}",
        ask=lambda n: name,
        kind=kind,
        working=lambda n: "I = V / R",
        nudges=NUDGES,
        **more,
    )


SAFETY = SimpleNamespace(
    LESSON="01",
    TITLE="Safe first",
    QUESTIONS=(
        choice_question("guess", role="predict"),
        choice_question("touch", danger=True),
        choose_all_question("ready", danger=True),
        order_question("steps", danger=True),
        current_question(1),
        current_question(2),
    ),
)
SUMS = SimpleNamespace(
    LESSON="02",
    TITLE="Sums",
    QUESTIONS=(
        *(current_question(number) for number in range(3, 11)),
        *(choice_question(f"choice-{number}") for number in range(1, 4)),
        *(choose_all_question(f"all-{number}") for number in range(1, 3)),
        order_question("order-1"),
        parts_question("parts-1"),
        parts_question("parts-2"),
        parts_question("parts-3"),
    ),
)
BANK_FILES = {"01": SAFETY, "02": SUMS}
