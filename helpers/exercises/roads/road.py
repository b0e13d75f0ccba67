"""A road: the named steps that lead from what is given to the right number.

Right value, worked sum, line of code and wrong turns all come from the one chain. Knows numbers
only; must never know how a question is shown or kept.
"""

from collections.abc import Callable
from dataclasses import dataclass
from itertools import islice
from math import isfinite
from typing import NamedTuple

from helpers import quantities
from helpers.exercises.templates import quantity_of

MOST_PAIRS = 12


@dataclass(frozen=True)
class Turn:
    """A wrong turn at a step; the same one under the same name all over the course.

    Parameters
    ----------
    name : str
        What was done, to be read behind "you": "left out the drops".
    asks : str
        One question that lets the learner find it.
    take : callable
        From the value before the step, its operand and the numbers to the value after it.
    share : float
        Part of the marks that an answer with this turn alone still earns [-].
    usual : bool
        Whether it is also looked for together with another one.
    any_decade : bool
        Whether its prefix says nothing: volts times kilo-ohms is no current at all.
    """

    name: str
    asks: str
    take: Callable
    share: float = 0.5
    usual: bool = False
    any_decade: bool = False


@dataclass(frozen=True)
class Step:
    """One step of a road.

    Parameters
    ----------
    called : str
        What its result is: "the crest", "the volts left for the dropper".
    of : str
        Quantity of its result, a name of the glossary.
    take : callable
        From the value before it, its operand and the numbers to its result.
    sign, code : str
        How it is written in a worked sum, and in Python: templates with `{value}`, `{operand}`.
    operand : str, float, callable, Road or None
        Name of a personal number, a constant, a function of the numbers, or a road of its own.
    operand_of : str
        Quantity of the operand, where it is written.
    turns : tuple of Turn
    """

    called: str
    of: str
    take: Callable
    sign: str
    code: str
    operand: object = None
    operand_of: str = ""
    turns: tuple = ()


class Wrong(NamedTuple):
    """A number at the end of a wrong road: the turns that lead there, and where they were taken."""

    turns: tuple
    places: tuple
    value: float

    @property
    def names(self):
        return tuple(turn.name for turn in self.turns)


class Road:
    """A chain of steps.

    Parameters
    ----------
    *steps : Step
        The first one starts from what is given.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> from helpers.exercises.roads.steps import general as steps
    >>> road = Road(steps.given("volts"), steps.over("ohms", called="the current"))
    >>> n = SimpleNamespace(volts=12.0, ohms=2400.0)
    >>> road.value(n), road.sum(n).replace(chr(160), " "), road.code(n)
    (0.005, '12 V / 2.4 kΩ = 5 mA', '12.0 / 2400.0')
    """

    def __init__(self, *steps):
        self.steps = steps

    def value(self, n):
        """Return the right number [the glossary's unit]."""
        return self.walk(n)[-1]

    def walk(self, n):
        """Return the result of every step [the glossary's unit]."""
        return _on(self._with_operands(n), n, None)

    def _with_operands(self, n):
        """Return each step with its operand, which no wrong turn before it changes."""
        return [(step, _operand(step, n)) for step in self.steps]

    def sum(self, n):
        """Return the worked sum, a piece for each step."""
        return "; ".join(self._pieces(n)) or _written(self.steps[0], self.value(n), last=True)

    def _pieces(self, n):
        pieces, before = [], ""
        for step, value in zip(self.steps, self.walk(n), strict=True):
            operand, result = _operand(step, n), _written(step, value, step is self.steps[-1])
            if isinstance(step.operand, Road):
                pieces += step.operand._pieces(n)
            if isinstance(operand, tuple):
                both = f" {step.sign} ".join(quantities.write(one, step.of) for one in operand)
                pieces.append(f"{both} = {result}")
            elif before:
                shown = _shown_operand(step, operand)
                pieces.append(f"{step.sign.format(value=before, operand=shown)} = {result}")
            before = result
        return pieces

    def code(self, n):
        """Return one line of Python that computes the right number."""
        text = ""
        for step in self.steps:
            operand = step.operand.code(n) if isinstance(step.operand, Road) else None
            if operand is None and step.operand is not None:
                operand = repr(_operand(step, n))
            elif operand and not operand.replace(".", "").isalnum():
                operand = f"({operand})"
            text = step.code.format(value=text, operand=operand)
        return text.removeprefix("(").removesuffix(")") if _wrapped(text) else text

    def wrong(self, n):
        """Return the end of each road with a single wrong turn.

        Returns
        -------
        ends : list of Wrong
            Turns that lead nowhere (over zero, beyond all numbers) are left out.
        """
        steps = self._with_operands(n)
        return list(_ends(_turned(steps, n, None), steps, n))

    def wrong_twice(self, n):
        """Return the ends of roads with two usual wrong turns, a dozen at the most."""
        return list(islice(self._with_two_turns(n), MOST_PAIRS))

    def _with_two_turns(self, n):
        steps = self._with_operands(n)
        for first in _turned(steps, n, None, usual=True):
            if first.value is None:
                continue
            later = _turned(steps, n, first.value, usual=True, start=first.places[0] + 1)
            for second in _ends(later, steps, n):
                places = first.places + second.places
                yield Wrong(first.turns + second.turns, places, second.value)

    def way_back(self):
        """Return the question that leads back to the first result on the way; '' if there is none.

        A road of one sum has no result on the way.
        """
        on_the_way = self.steps[1:-1]
        return f"What did you get for {on_the_way[0].called}?" if on_the_way else ""


def _on(steps, n, value):
    """Return the result of each step, going on from a value."""
    found = []
    for step, operand in steps:
        value = step.take(value, operand, n)
        found.append(value)
    return found


def _turned(steps, n, value, usual=False, start=0):
    """Yield what each wrong turn from a step on leads to right behind it, if anywhere.

    Those of a road within are taken there, and end at the step that asks for it.
    """
    for index, (step, operand) in enumerate(steps[start:], start):
        for turn in step.turns:
            if turn.usual or not usual:
                yield Wrong((turn,), (index,), _taken(turn.take, value, operand, n))
        if isinstance(step.operand, Road):
            inner = step.operand._with_operands(n)
            for wrong in _ends(_turned(inner, n, None, usual), inner, n):
                yield Wrong(wrong.turns, (index,), _taken(step.take, value, wrong.value, n))
        value = _taken(step.take, value, operand, n)
        if value is None:
            return


def _ends(turned, steps, n):
    """Yield where the rest of a road leads from each wrong turn; those that lead nowhere not."""
    for wrong in turned:
        end = _end(steps[wrong.places[-1] + 1 :], n, wrong.value)
        if end is not None:
            yield Wrong(wrong.turns, wrong.places, end)


def _taken(take, before, operand, n):
    try:
        return take(before, operand, n)
    except (ZeroDivisionError, ValueError, OverflowError):
        return None


def _end(steps, n, value):
    """Return where the rest of a road leads from a value, or None if nowhere."""
    for step, operand in steps:
        if value is None:
            return None
        value = _taken(step.take, value, operand, n)
    return value if isinstance(value, (int, float)) and isfinite(value) else None


def _operand(step, n):
    if isinstance(step.operand, Road):
        return step.operand.value(n)
    if isinstance(step.operand, str):
        return getattr(n, step.operand)
    return step.operand(n) if callable(step.operand) else step.operand


def _written(step, value, last):
    """Write a result: in the middle of a sum with a digit more, so that the sum comes out."""
    return quantities.write(value, step.of, digits=3 if last else 4)


def _shown_operand(step, operand):
    if step.operand is None:
        return ""
    road, name = isinstance(step.operand, Road), isinstance(step.operand, str)
    of = step.operand.steps[-1].of if road else quantity_of(step.operand) if name else None
    return quantities.write(operand, step.operand_of or of or step.of, digits=4)


def _wrapped(text):
    """Whether the first bracket of a text is closed by its last character only."""
    depth = 0
    for place, letter in enumerate(text):
        depth += (letter == "(") - (letter == ")")
        if depth == 0:
            return place > 0 and place == len(text) - 1
    return False
