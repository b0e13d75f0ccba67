"""Steps that every lesson takes: what is given, dividing, multiplying."""

from dataclasses import replace
from math import inf

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.templates import quantity_of


def factor(by):
    """Return what multiplies by a fixed number."""
    return lambda value, operand, n: value * by


UNASKED_HIGH = Turn(
    "added ten per cent to the mains unasked",
    "Which mains does the question name: its label, or its highest?",
    lambda value, given, n: 1.1 * given,
)


OTHER_VOLTS = (230.0, 120.0)  # which the books are full of


def _other(volts):
    for other in OTHER_VOLTS:
        if 1.3 < max(other / volts, volts / other) < 1.95:  # where few other turns end
            return other
    raise ValueError(f"no other mains is told from {volts} V")


OTHER_MAINS = Turn(
    "took the volts of another mains", "Which mains does the question name?",
    lambda value, given, n: _other(given), share=0.0,
)  # fmt: skip


def given(name, of="", called="what is given", turns=()):
    """Start from a personal number, a constant or a function of the numbers."""
    return Step(called, of or quantity_of(name), lambda value, given, n: given, "", "{operand}",
                operand=name, turns=turns)  # fmt: skip


def label():
    """Start from the volts on the label of the learner's mains."""
    return given(
        lambda n: n.supply.volts_rms, of="voltage", called="the volts of the mains",
        turns=(UNASKED_HIGH, OTHER_MAINS),
    )  # fmt: skip


def over(ohms, of="current", called="the current", operand_of=""):
    """Divide: volts over ohms, or volts over amps."""
    return Step(
        called, of, lambda value, below, n: value / below, "{value} / {operand}",
        "{value} / {operand}", operand=ohms, operand_of=operand_of,
        turns=(
            Turn("divided the wrong way round", "Which of the two pushes, and which holds back?",
                 lambda value, below, n: below / value if value else inf, share=0.0,
                 any_decade=True),
            Turn("multiplied instead of dividing", "Should more ohms let more current through?",
                 lambda value, below, n: value * below, share=0.0, any_decade=True),
        ),
    )  # fmt: skip


def times(operand, of, called, operand_of="", turns=()):
    """Multiply by something given."""
    return Step(
        called, of, lambda value, by, n: value * by, "{value} × {operand}", "{value} * {operand}",
        operand=operand, operand_of=operand_of, turns=turns,
    )  # fmt: skip


def knowing(step, *turns):
    """Return a step that knows more wrong turns, for one question alone; these go first."""
    return replace(step, turns=(*turns, *step.turns))
