"""A question for parts from a bin, judged by what they would do."""

from collections.abc import Callable
from dataclasses import dataclass

from helpers import quantities
from helpers.exercises.kinds.answers import Answer, NotRead, Verdict
from helpers.exercises.kinds.kind import ByHand, Kind
from helpers.sizing import rules


@dataclass(frozen=True)
class Field:
    """One part to be picked from a bin: its label, quantity, values, and the unit on the bin.

    What has no quantity is a word.
    """

    label: str
    of: str
    bin: tuple
    unit: str = ""

    def text(self, value):
        """Write a value as the bin is labelled."""
        if not self.of:
            return value
        if self.unit:
            return quantities.write_as(value, self.unit)
        return quantities.write(value, self.of)


@dataclass(frozen=True)
class Criterion:
    """One thing that a set of parts is judged by, and its share of the marks.

    `reply` holds its sums, told once all is right; who missed it hears its name and `ask`.
    """

    name: str
    passed: bool
    share: float
    reply: str
    danger: str = ""
    ask: str = "What would it come to with these parts? Work it out."


def judged(name, share, findings, ask):
    """Return what the rules of a safe dropper say as one criterion.

    Parameters
    ----------
    name : str
        The rule in short, named when it is not kept.
    share : float
        Its share of the marks.
    findings : list of rules.Finding
        All of them have to keep the rule. The one that matters most speaks if it is not kept; else
        of each kind the one nearest to its limit, and every caution.
    ask : str
        A question towards the remedy, for who has missed it.
    """
    if not rules.passes(findings):
        said = rules.worst(findings)
        return Criterion(name, False, share, said.reason, said.danger, ask)
    cautions = [f for f in findings if f.verdict == "caution"]
    kept = [f for f in findings if f.verdict == "pass"]
    nearest = [
        rules.worst(f for f in kept if f.rule == rule)
        for rule in dict.fromkeys(f.rule for f in kept)
    ]
    return Criterion(name, True, share, " ".join(f.reason for f in (*nearest, *cautions)))


def first_that_passes(judge, picks):
    """Return a function from the numbers to the first of `picks` that keeps all criteria.

    Each set of numbers is tried once: the model answer is read many times.

    Parameters
    ----------
    judge : callable
        As for `Parts`.
    picks : iterable of tuple
        What may be picked, what a careful builder would rather have first.
    """
    picks, found = tuple(picks), {}

    def best(numbers):
        key = repr(numbers)
        if key not in found:
            passing = (pick for pick in picks if all(c.passed for c in judge(pick, numbers)))
            found[key] = next(passing)
        return found[key]

    return best


def weighed(criteria):
    """Return the verdict of criteria: the shares of those met, a word on one missed, danger first.

    Parameters
    ----------
    criteria : list of Criterion
    """
    missed = sorted((c for c in criteria if not c.passed), key=lambda c: not c.danger)
    if not missed:
        return Verdict(1.0, "Right. " + " ".join(c.reply for c in criteria))
    share = sum(c.share for c in criteria if c.passed)
    first = missed[0]
    reply = f"The rule “{first.name}” is not kept. {first.ask}"
    if more := [each.name for each in missed[1:]]:
        reply += f" Not kept either: {'; '.join(more)}."
    return Verdict.partly(share, reply, first.name, first.danger, f"missed: {first.name}")


@dataclass(frozen=True)
class Parts(Kind):
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
    other_answers = "Other parts may pass as well; these are one careful choice."

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
        return weighed(self.judge(value, numbers))

    def model(self, numbers):
        return self._typed(self.best(numbers))

    def example(self, numbers):
        return self._typed([part.bin[0] for part in self.fields])

    def choices(self, numbers):
        return [f"{part.label}: {self.bin_text(part)}" for part in self.fields]

    def by_hand(self, numbers):
        return ByHand("Pick one from each bin.", places=[(f"{f.label}:", "") for f in self.fields])

    def guesses(self, numbers):
        """Return the model answer with one part exchanged, each in turn."""
        best = self.best(numbers)
        return [
            self._typed([*best[:at], value, *best[at + 1 :]])
            for at, part in enumerate(self.fields)
            for value in part.bin
        ]

    def _typed(self, values):
        texts = (part.text(v) for v, part in zip(values, self.fields, strict=True))
        return self.between.join(texts)

    def hint(self, numbers):
        labels = "; ".join(part.label for part in self.fields)
        return f"Pick from the bins, in this order: {labels}."
