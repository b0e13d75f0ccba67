"""The kinds of question: how each reads a typed answer, marks it and states its model answer.

An answer is text and is only ever compared. Knows no learner, no log and no screen.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass

from helpers import quantities
from helpers.exercises.slips import recognise, size_check

LETTERS = "abcdefgh"


class NotRead(ValueError):
    """An answer that could not be read; it does not count as a try. The text says what to do."""


@dataclass(frozen=True)
class Answer:
    """An answer as read: a value that can be compared, and how it was understood."""

    value: object
    understood: str


@dataclass(frozen=True)
class Verdict:
    """What an answer earned (share of the marks), the slip behind it, and what to say."""

    share: float
    reply: str
    slip: str = ""
    danger: str = ""

    @property
    def right(self):
        return self.share == 1.0


@dataclass(frozen=True)
class Quantity:
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
    """

    of: str
    unit: str
    right: Callable
    simple: Callable | None = None
    slips: tuple = ()
    danger: Callable | None = None
    check: str = ""
    within: float = 0.03
    name = "quantity"
    between = " "

    def arrange(self, numbers, stream):
        return ()

    def read(self, typed, numbers):
        try:
            reading = quantities.read(typed, self.of, self.unit)
        except quantities.QuantityError as error:
            raise NotRead(str(error)) from None
        return Answer(reading.value, reading.understood)

    def band(self, numbers):
        """Return the lowest and the highest value that is accepted."""
        right = self.right(numbers)
        simple = self.simple(numbers) if self.simple else right
        low, high = min(right, simple), max(right, simple)
        return low - self.within * abs(low), high + self.within * abs(high)

    def mark(self, value, numbers):
        low, high = self.band(numbers)
        if low <= value <= high:
            return Verdict(1.0, "Right.")
        right = self.right(numbers)
        found = recognise(self.slips, value, right, numbers)
        danger = (self.danger and self.danger(value, numbers)) or (found.danger if found else "")
        if not found:
            return Verdict(0.0, f"{size_check(value, right)} {self.check}".strip(), "", danger)
        share = 0.0 if danger else found.share
        return Verdict(share, found.reply, found.name, danger)

    def model(self, numbers):
        return quantities.write_as(self.right(numbers), self.unit, 3)

    def hint(self, numbers):
        return f"Answer in {self.unit}, or type another unit after the number."

    def example(self, numbers):
        return f"4.7 {self.unit}"


@dataclass(frozen=True)
class Option:
    """One option to choose or tick; `reply` is what to say to who took it (or left it out)."""

    key: str
    text: str
    right: bool = False
    reply: str = ""
    danger: str = ""


class _Lettered:
    """What kinds with lettered options share. `options` is a tuple, or numbers -> tuple."""

    between = ", "

    def arrange(self, numbers, stream):
        return tuple(stream.shuffle(range(len(self.listed(numbers)))))

    def listed(self, numbers):
        return self.options(numbers) if callable(self.options) else self.options

    def shown(self, numbers):
        """Return the options in the order of this draw, each behind its letter."""
        listed = self.listed(numbers)
        return {
            letter: listed[index] for letter, index in zip(LETTERS, numbers.shown, strict=False)
        }

    def letters_read(self, typed, numbers):
        shown = self.shown(numbers)
        text = typed.strip().lower() if isinstance(typed, str) else " ".join(map(str, typed))
        letters = re.sub(r"\band\b|[\s,;.>()]+", " ", text[:60]).split()
        if len(letters) == 1:
            letters = list(letters[0])
        wrong = [letter for letter in letters if letter not in shown]
        if wrong or len(text) > 60:
            raise NotRead(
                f"“{text[:40]}” was read, and the options here are {', '.join(shown)}. {self.how}"
            )
        if len(set(letters)) < len(letters):
            raise NotRead(f"“{text[:40]}” names an option twice. {self.how}")
        return letters

    def letters_of(self, keys, numbers):
        by_key = {option.key: letter for letter, option in self.shown(numbers).items()}
        return ", ".join(by_key[key] for key in keys)

    def hint(self, numbers):
        return self.to_do


@dataclass(frozen=True)
class Choice(_Lettered):
    """One option of several is right."""

    options: tuple | Callable
    name = "choice"
    to_do = "Choose one."
    how = "Choose one letter."

    def read(self, typed, numbers):
        letters = self.letters_read(typed, numbers)
        if len(letters) != 1:
            raise NotRead(f"{len(letters)} letters were read. {self.how}")
        return Answer(self.shown(numbers)[letters[0]].key, letters[0])

    def mark(self, value, numbers):
        option = next(option for option in self.listed(numbers) if option.key == value)
        if option.right:
            return Verdict(1.0, f"Right. {option.reply}".strip())
        return Verdict(0.0, option.reply, option.key, option.danger)

    def example(self, numbers):
        return "b"

    def model(self, numbers):
        return self.letters_of([o.key for o in self.listed(numbers) if o.right], numbers)


@dataclass(frozen=True)
class ChooseAll(_Lettered):
    """Any number of options is right; each wrong tick takes back what a right one earned."""

    options: tuple | Callable
    name = "choose-all"
    to_do = "Choose all that fit; it may be none of them."
    how = "Choose every letter that fits, or type none."

    def read(self, typed, numbers):
        if isinstance(typed, str) and typed.strip().lower() == "none":
            return Answer((), "none")
        letters = sorted(self.letters_read(typed, numbers))
        if not letters:
            raise NotRead(f"No letter was read. {self.how}")
        shown = self.shown(numbers)
        keys = sorted(shown[letter].key for letter in letters)
        return Answer(tuple(keys), ", ".join(letters))

    def mark(self, value, numbers):
        listed = self.listed(numbers)
        wanted = {option.key for option in listed if option.right}
        if set(value) == wanted:
            return Verdict(1.0, "Right, all of them and no other.")
        added = [o for o in listed if o.key in value and not o.right]
        missed = [o for o in listed if o.key not in value and o.right]
        share = max(0.0, (len(wanted) - len(missed) - len(added)) / max(len(wanted), 1))
        first = next((o for o in added + missed if o.danger), (added + missed)[0])
        slip = f"{'ticked' if first in added else 'left out'}: {first.key}"
        return Verdict(min(share, 0.99), first.reply, slip, first.danger)

    def example(self, numbers):
        return "a, c"

    def model(self, numbers):
        keys = [o.key for o in self.listed(numbers) if o.right]
        return ", ".join(sorted(self.letters_of(keys, numbers).split(", "))) if keys else "none"


@dataclass(frozen=True)
class Order(_Lettered):
    """Steps to be put in order; `options` are listed in the right one.

    `reply` of a step says why it cannot come where it was put before its forerunner.
    """

    options: tuple | Callable
    name = "order"
    to_do = "Put the first step on top."
    how = "Give every letter once, first step first."

    def arrange(self, numbers, stream):
        """Deal the steps in any order but the right one."""
        dealt = super().arrange(numbers, stream)
        return dealt if list(dealt) != sorted(dealt) else (*dealt[1:], dealt[0])

    def read(self, typed, numbers):
        letters = self.letters_read(typed, numbers)
        shown = self.shown(numbers)
        if len(letters) != len(shown):
            raise NotRead(f"{len(letters)} of {len(shown)} letters were read. {self.how}")
        return Answer(tuple(shown[letter].key for letter in letters), ", ".join(letters))

    def mark(self, value, numbers):
        listed = self.listed(numbers)
        right = [option.key for option in listed]
        if list(value) == right:
            return Verdict(1.0, "Right, step by step.")
        place = {key: index for index, key in enumerate(value)}
        kept = sum(place[a] < place[b] for a, b in zip(right, right[1:], strict=False))
        late = next(
            b for a, b in zip(listed, listed[1:], strict=False) if place[a.key] > place[b.key]
        )
        share = kept / len(right)
        return Verdict(share, late.reply, f"too early: {late.key}", late.danger)

    def example(self, numbers):
        return self.between.join(reversed(self.shown(numbers)))

    def model(self, numbers):
        return self.letters_of([option.key for option in self.listed(numbers)], numbers)


@dataclass(frozen=True)
class Field:
    """One part to be picked from a bin: its label, quantity, values, and the unit on the bin."""

    label: str
    of: str
    bin: tuple
    unit: str = ""

    def text(self, value):
        """Write a value as the bin is labelled."""
        if self.unit:
            return quantities.write_as(value, self.unit)
        return quantities.write(value, self.of)


@dataclass(frozen=True)
class Criterion:
    """One thing that a set of parts is judged by, its share of the marks and what to say."""

    name: str
    passed: bool
    share: float
    reply: str
    danger: str = ""


@dataclass(frozen=True)
class Parts:
    """Parts picked from a bin, judged by what they would do.

    Parameters
    ----------
    fields : tuple of Field
        What has to be picked.
    judge : callable
        From the picked values (a tuple) and the numbers to a list of `Criterion`.
    best : callable
        From the numbers to the values that a careful builder would pick.
    """

    fields: tuple
    judge: Callable
    best: Callable
    name = "parts"
    between = "; "

    def arrange(self, numbers, stream):
        return ()

    def read(self, typed, numbers):
        pieces = [piece.strip() for piece in str(typed).split(";")]
        if len(pieces) != len(self.fields):
            raise NotRead(
                f"“{str(typed)[:40]}” was read as {len(pieces)} of {len(self.fields)} parts. "
                f"{self.hint(numbers)} "
                f"Put a semicolon between them, such as: {self.example(numbers)}"
            )
        values = []
        for part, piece in zip(self.fields, pieces, strict=True):
            try:
                value = quantities.read(piece, part.of).value
            except quantities.QuantityError as error:
                raise NotRead(f"{part.label}: {error}") from None
            held = next((v for v in part.bin if abs(v - value) <= 1e-6 * v), None)
            if held is None:
                raise NotRead(
                    f"{part.label}: {part.text(value)} is not in the bin. "
                    f"The bin holds {self.bin_text(part)}."
                )
            values.append(held)
        return Answer(tuple(values), self._typed(values))

    def bin_text(self, part):
        return ", ".join(part.text(value) for value in part.bin)

    def mark(self, value, numbers):
        criteria = self.judge(value, numbers)
        missed = sorted((c for c in criteria if not c.passed), key=lambda c: not c.danger)
        if not missed:
            return Verdict(1.0, "Right. " + " ".join(c.reply for c in criteria))
        share = sum(c.share for c in criteria if c.passed)
        return Verdict(min(share, 0.99), missed[0].reply, missed[0].name, missed[0].danger)

    def model(self, numbers):
        return self._typed(self.best(numbers))

    def example(self, numbers):
        return self._typed([part.bin[0] for part in self.fields])

    def _typed(self, values):
        texts = (part.text(v) for v, part in zip(values, self.fields, strict=True))
        return self.between.join(texts)

    def hint(self, numbers):
        labels = "; ".join(part.label for part in self.fields)
        return f"Pick from the bins, in this order: {labels}."
