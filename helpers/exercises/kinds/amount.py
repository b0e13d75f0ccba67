"""A question for a number with a unit."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import sqrt

from helpers import quantities
from helpers.exercises.kinds.answers import Answer, NotRead, Verdict
from helpers.exercises.kinds.kind import ByHand, Kind
from helpers.exercises.roads import Road, explain, meanings
from helpers.exercises.roads.explained import ASK_PREFIX
from helpers.exercises.templates import fill
from helpers.quantities.units import NEVER_PREFIXED

EXAMPLES = (4.7, 33)  # no band holds both
EXAMPLE_ANGLES = (45, 120)
ROUNDING = 1e-9  # what a number may lose on its way through a computer [-]
FEW_DIGITS = 2  # a number typed with so many is right if the right one rounds to it
SPOKEN = {
    "peak": "the peak",
    "rms": "the rms value",
    "mean": "the mean",
    "each": "the value of each one",
    "total": "the total",
}
RIVALS = ({"peak", "rms", "mean"}, {"each", "total"})  # of one set, only one can be meant


@dataclass(frozen=True)
class Slip:
    """A wrong turn that this question alone knows, as the number it leads to.

    Parameters
    ----------
    name : str
        What was done, to be read behind "you".
    wrong : callable
        From the personal numbers to the wrong answer [the glossary's unit].
    asks : str
        One question that lets the learner find it: a template.
    danger : str
        What would happen if it were built; empty where it would hurt nobody.
    share : float
        Part of the marks that it still earns [-].
    misread : float
        How far beside its number it is looked for, as it is read off [the glossary's unit].
    """

    name: str
    wrong: Callable
    asks: str
    danger: str = ""
    share: float = 0.0
    misread: float = 0.0


@dataclass(frozen=True)
class Amount(Kind):
    """A number with a unit, typed freely, and the road that leads to it.

    Parameters
    ----------
    of : str
        Name of the quantity in the glossary.
    unit : str
        Unit in which the question asks; a number typed bare is read in it.
    road : Road
        How the right number comes about from what is given.
    exact : callable or None
        The exact result where the road is the usual simple sum; all between both is right.
    slips : tuple of Slip
        Wrong turns that no step of the road knows.
    danger : callable or None
        From value and numbers to what would happen if it were built; None where nothing would.
    within : float
        How far beside the right answer is still right; narrow where a value is read or picked [-].
    below : float or None
        The same on the lower side only; 0 where the right answer is the least that is safe [-].
    misread : float
        The same for what is read off a picture, where that is wider [the glossary's unit].
    measure : str
        What the question asks for by name: peak, rms, mean, each, total; empty if by none.
    crest : float or None
        Peak over rms value, by default that of a sine, 2 for its half-wave; None if not known [-].
    """

    of: str
    unit: str
    road: Road
    exact: Callable | None = None
    slips: tuple = ()
    danger: Callable | None = None
    within: float = 0.03
    below: float | None = None
    misread: float = 0.0
    measure: str = ""
    crest: float | None = sqrt(2)
    name = "quantity"
    between = " "

    @property
    def prefixed(self):
        """Whether milli, kilo and the like stand before the unit that is asked for."""
        return quantities.GLOSSARY[self.of].prefixed and self.unit not in NEVER_PREFIXED

    def right(self, numbers):
        """Return the right answer, exact where the road is a simple sum [the glossary's unit]."""
        return self.exact(numbers) if self.exact else self.road.value(numbers)

    def read(self, typed, numbers):
        try:
            reading = quantities.read(typed, self.of, self.unit, lambda: self.example(numbers))
        except quantities.QuantityError as error:
            raise NotRead(str(error)) from None
        two = {self.measure, reading.said}
        misnamed = reading.said if len(two) > 1 and any(two <= rivals for rivals in RIVALS) else ""
        return Answer(reading.value, self._understood(reading), reading.digits, misnamed)

    def _understood(self, reading):
        """Say what was read in the unit of the question, as long as that reads well."""
        text = quantities.write_as(reading.value, self.unit, 6)
        reads_well = len(text) <= 9 + len(self.unit) and "e" not in text
        return reading.around(text) if reads_well else reading.understood

    def band(self, numbers, right=None):
        """Return the lowest and the highest value that is accepted however it is typed."""
        low, high = sorted(self._ends(numbers, right))
        below = self.within if self.below is None else max(self.below, ROUNDING)
        return (
            low - max(below * abs(low), self.misread),
            high + max(self.within * abs(high), self.misread),
        )

    def _ends(self, numbers, right):
        return self.right(numbers) if right is None else right, self.road.value(numbers)

    def is_right(self, value, digits, numbers, right=None):
        """Say whether a number is accepted, typed with so many significant digits.

        `right` is the right answer, where it is known already: an exact one takes long to find.
        """
        right = self.right(numbers) if right is None else right
        low, high = self.band(numbers, right)
        if low <= value <= high:
            return True
        if digits != FEW_DIGITS or (self.below is not None and value < low):
            return False
        return any(f"{value:.1e}" == f"{end:.1e}" for end in self._ends(numbers, right))

    def verdict_on(self, answer, numbers):
        if answer.misnamed:
            return self._misnamed(answer, numbers)
        return self.mark(answer.value, numbers, answer.digits)

    def _misnamed(self, answer, numbers):
        """Mark a number that was called by another measure than the question asks for."""
        given, asked = SPOKEN[answer.misnamed], SPOKEN[self.measure]
        said = f"You gave {given}; the question asks for {asked}."
        slip = f"gave {given}, not {asked}"
        verdict = self.mark(answer.value, numbers, answer.digits)
        if verdict.right:
            reply = f"{said} The number itself fits {asked}. Which of the two did you mean?"
            return Verdict.partly(0.5, reply, slip, "")
        if self._fits(answer, numbers):
            reply = f"{said} How do you get from one to the other?"
            return Verdict.partly(0.5, reply, slip, verdict.danger)
        return replace(verdict, reply=f"{said} {verdict.reply}")

    def _fits(self, answer, numbers):
        """Whether a peak belongs to the right rms value, or an rms value to the right peak."""
        if self.crest is None or {answer.misnamed, self.measure} != {"peak", "rms"}:
            return False
        factor = self.crest if self.measure == "peak" else 1 / self.crest
        return self.is_right(answer.value * factor, answer.digits, numbers)

    def mark(self, value, numbers, digits=15):
        right = self.right(numbers)  # once: an exact result is a search for zeros of its own
        if self.is_right(value, digits, numbers, right):
            return Verdict(1.0, "Right.")
        danger = (self.danger and self.danger(value, numbers)) or ""
        exact = right if self.exact else None
        own = self._own_ends(numbers)
        found = explain(value, digits, self.road, numbers, exact, own, self.prefixed)
        if not found:
            size = size_check(value, right, self.prefixed)
            return Verdict(0.0, f"{size} {self.road.way_back()}".strip(), "", danger)
        said = danger or fill(found.danger, numbers)
        ask = self._ask_prefix(value, digits, numbers, right) if ASK_PREFIX in found.reply else ""
        return Verdict.partly(found.share, found.reply.replace(ASK_PREFIX, ask), found.name, said)

    def _ask_prefix(self, value, digits, numbers, right):
        """Return what to ask about a prefix: 0.24 beside a box for mA most likely were amperes."""
        scale = quantities.read("1", self.of, self.unit).value
        if scale == 1 or not self.is_right(value / scale, digits, numbers, right):
            return ASK_PREFIX
        shown = quantities.write_as(value / scale, quantities.GLOSSARY[self.of].unit, 6)
        return (
            f"The digits are right. A number without a unit is read in {self.unit}: how many "
            f"{self.unit} are {shown}?"
        )

    def _own_ends(self, numbers):
        return [(slip, slip.wrong(numbers)) for slip in self.slips]

    def wrong_ends(self, numbers):
        """Return (name, value) of each single wrong turn, the question's own slips first."""
        ends = [(slip.name, value) for slip, value in self._own_ends(numbers)]
        return ends + [(" and ".join(one.names), one.value) for one in self.road.wrong(numbers)]

    def meanings(self, value, digits, numbers):
        """Return the names of all single wrong turns that a number may come from."""
        exact = self.exact(numbers) if self.exact else None
        own = self._own_ends(numbers)
        return meanings(value, digits, self.road, numbers, exact, own, self.prefixed)

    def guesses(self, numbers):
        right = self.right(numbers)
        values = [value for _, value in self.wrong_ends(numbers)]
        values += [right * 1000, right * 1.4, right / 3]
        return [quantities.write_as(value, self.unit, 3) for value in values]

    def workings(self, numbers):
        return {"sum": self.road.sum(numbers), "right": self.model(numbers)}

    def code(self, numbers):
        """Return the road as an expression; '' where it is only the usual simple sum."""
        return "" if self.exact else self.road.code(numbers)

    def code_that_writes(self, code):
        return f'write({code}, "{self.of}")'

    def model(self, numbers):
        return quantities.write_as(self.right(numbers), self.unit, 3)

    def hint(self, numbers):
        if not self.unit:
            return "Answer with a plain number."
        return f"Answer in {self.unit}, or type another unit after the number."

    def by_hand(self, numbers):
        how = f"Answer in {self.unit}, or write another unit." if self.unit else self.hint(numbers)
        return ByHand(how, places=[("", self.unit)])

    def accepted(self, numbers):
        low, high = (quantities.write_as(end, self.unit, 4) for end in self.band(numbers))
        return f"right from {low} to {high}"

    def example(self, numbers):
        """Return how an answer may look: never one that would be right with these numbers."""
        figures = EXAMPLE_ANGLES if self.unit == "°" else EXAMPLES
        shown = [f"{figure} {self.unit}".strip() for figure in figures]
        read = [quantities.read(text, self.of, self.unit) for text in shown]
        right = [self.is_right(reading.value, reading.digits, numbers) for reading in read]
        return shown[right.index(False)]


def size_check(value, right, prefixed=True):
    """Say in words how far off a wrong answer is, without giving the right one away."""
    if value == 0 or right == 0 or (value < 0) != (right < 0):
        return "Look at the sign, and whether the answer can be zero."
    ratio = abs(value / right)
    way = "large" if ratio > 1 else "small"
    times = max(ratio, 1 / ratio)
    if times < 1.15:
        return f"Close, but a little too {way}: more than rounding explains."
    if times < 2:
        return f"Too {way}, but by less than a factor of two."
    if times < 10:
        return f"Too {way}: more than twice, less than ten times."
    look = " Look at the prefixes first." if prefixed else ""
    return f"Much too {way}: more than ten times.{look}"
