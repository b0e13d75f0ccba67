"""A question for a number with a unit."""

from collections.abc import Callable
from dataclasses import dataclass

from helpers import quantities
from helpers.exercises.kinds.answers import Answer, NotRead, Tries, Verdict
from helpers.exercises.slips import recognise, size_check

EXAMPLES = (4.7, 33)  # no band holds both
ROUNDING = 1e-9  # what a number may lose on its way through a computer [-]


@dataclass(frozen=True)
class Quantity(Tries):
    """A number with a unit, typed freely.

    Parameters
    ----------
    of : str
        Name of the quantity in the glossary.
    unit : str
        Unit in which the question asks; a number typed bare is read in it.
    right : callable
        From the personal numbers to the right answer in SI units.
    simple : callable or None
        The usual simple result where it differs from the exact one: all between both is right.
    slips : tuple of Slip
        Wrong turns, as values in SI units.
    danger : callable or None
        From value and numbers to what would happen if it were built; None where nothing would.
    check : str
        An intermediate step to look at, for an answer that no slip explains.
    within : float
        How far beside the right answer is still right; narrow where a value is read or picked [-].
    below : float or None
        The same on the lower side only; 0 where the right answer is the least that is safe [-].
    """

    of: str
    unit: str
    right: Callable
    simple: Callable | None = None
    slips: tuple = ()
    danger: Callable | None = None
    check: str = ""
    within: float = 0.03
    below: float | None = None
    name = "quantity"
    between = " "

    def arrange(self, numbers, stream):
        return ()

    def read(self, typed, numbers):
        try:
            reading = quantities.read(typed, self.of, self.unit)
        except quantities.QuantityError as error:
            raise NotRead(str(error)) from None
        return Answer(reading.value, self._understood(reading))

    def _understood(self, reading):
        """Say what was read in the unit of the question, as long as that reads well."""
        text = quantities.write_as(reading.value, self.unit, 6)
        return text if len(text) <= 9 + len(self.unit) and "e" not in text else reading.understood

    def band(self, numbers):
        """Return the lowest and the highest value that is accepted."""
        right = self.right(numbers)
        simple = self.simple(numbers) if self.simple else right
        low, high = min(right, simple), max(right, simple)
        below = self.within if self.below is None else max(self.below, ROUNDING)
        return low - below * abs(low), high + self.within * abs(high)

    def verdict_on(self, answer, numbers):
        return self.mark(answer.value, numbers)

    def mark(self, value, numbers):
        low, high = self.band(numbers)
        if low <= value <= high:
            return Verdict(1.0, "Right.")
        right = self.right(numbers)
        found = recognise(self.slips, value, right, numbers)
        danger = (self.danger and self.danger(value, numbers)) or (found.danger if found else "")
        if not found:
            return Verdict(0.0, f"{size_check(value, right)} {self.check}".strip(), "", danger)
        return Verdict.partly(found.share, found.reply, found.name, danger)

    def slip_in_words(self, slip, numbers):
        return slip

    def model(self, numbers):
        return quantities.write_as(self.right(numbers), self.unit, 3)

    def hint(self, numbers):
        return f"Answer in {self.unit}, or type another unit after the number."

    def example(self, numbers):
        """Return how an answer may look: never one that would be right with these numbers."""
        low, high = self.band(numbers)
        shown = (f"{figure} {self.unit}" for figure in EXAMPLES)
        return next(text for text in shown if not low <= self.read(text, numbers).value <= high)
