"""Questions with lettered options: one of them, all that fit, or all in order."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import combinations, pairwise

from helpers.exercises.kinds.answers import Answer, NotRead, Verdict
from helpers.exercises.kinds.kind import ByHand, Kind
from helpers.exercises.templates import fill

LETTERS = "abcdefgh"


@dataclass(frozen=True)
class Option:
    """One option to choose or tick; `reply` is what to say to who took it (or left it out).

    Its texts are templates (`helpers.exercises.templates`).
    """

    key: str
    text: str
    right: bool = False
    reply: str = ""
    danger: str = ""

    def filled(self, n):
        """Return the option with the personal numbers in its texts."""
        if "{" not in self.text + self.reply + self.danger:
            return self
        texts = {name: fill(getattr(self, name), n) for name in ("text", "reply", "danger")}
        return replace(self, **texts)


OPTION = re.compile(r"(right|wrong) ([^:]+): (.+)")
ABOUT_IT = re.compile(r"(reply|danger): (.+)")


def options(text):
    """Return options that are written one below the other.

    Parameters
    ----------
    text : str
        `right KEY: text` or `wrong KEY: text` begins an option; below it stand `reply: …` and
        `danger: …`, where it has them. Other lines go on with the one above.

    Returns
    -------
    options : tuple of Option

    Raises
    ------
    ValueError
        If the first line begins no option.

    Examples
    --------
    >>> first, second = options('''
    ...     right series: The ohms add.
    ...     wrong parallel: The currents
    ...       add.
    ...       reply: How many ways are there?
    ... ''')
    >>> first
    Option(key='series', text='The ohms add.', right=True, reply='', danger='')
    >>> second.text, second.reply
    ('The currents add.', 'How many ways are there?')
    """
    found = []
    for line in map(str.strip, text.strip().splitlines()):
        if begins := OPTION.fullmatch(line):
            found.append({"key": begins[2], "right": begins[1] == "right", "text": begins[3]})
            piece = "text"
        elif not found:
            raise ValueError(f"{line!r}: an option begins as in “wrong key: its text”")
        elif about := ABOUT_IT.fullmatch(line):
            piece, found[-1][about[1]] = about[1], about[2]
        else:
            found[-1][piece] += f" {line}"
    return tuple(Option(**pieces) for pieces in found)


@dataclass(frozen=True)
class _Lettered(Kind):
    """What kinds with lettered options share.

    `options` is a tuple of `Option`, or from the numbers to one, or text as `options` reads it.
    """

    options: tuple | str | Callable

    def __post_init__(self):
        if isinstance(self.options, str):
            object.__setattr__(self, "options", options(self.options))

    def arrange(self, numbers, stream):
        return tuple(stream.shuffle(range(len(self.listed(numbers)))))

    def listed(self, numbers):
        listed = self.options(numbers) if callable(self.options) else self.options
        return tuple(option.filled(numbers) for option in listed)

    def shown(self, numbers):
        """Return the options in the order of this draw, each behind its letter."""
        listed = self.listed(numbers)
        return dict(zip(LETTERS, (listed[index] for index in numbers.shown), strict=False))

    def letters_read(self, typed, shown):
        text = typed.strip() if isinstance(typed, str) else " ".join(map(str, typed))
        letters = re.sub(r"\band\b|[\s,;.>()]+", " ", text[:60].lower()).split()
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

    def model(self, numbers):
        return ", ".join(letter for letter, o in self.shown(numbers).items() if o.right)

    def example_in_code(self, numbers):
        """Leave the letters open: any would seem to give them away."""
        return "…"

    def hint(self, numbers):
        return self.to_do

    def choices(self, numbers):
        return [f"{letter}) {o.text}" for letter, o in self.shown(numbers).items()]


class Choice(_Lettered):
    """One option of several is right: in full at the first try, half at the second, then shown."""

    name = "choice"
    to_do = "Choose one."
    how = "Choose one letter."
    tries = 2

    def worth(self, used):
        return 0.5**used

    def read(self, typed, numbers):
        shown = self.shown(numbers)
        letters = self.letters_read(typed, shown)
        if len(letters) != 1:
            raise NotRead(f"{len(letters)} letters were read. {self.how}")
        return Answer(shown[letters[0]].key, letters[0])

    def mark(self, value, numbers):
        option = next(option for option in self.listed(numbers) if option.key == value)
        if option.right:
            return Verdict(1.0, f"Right. {option.reply}".strip())
        return Verdict(0.0, option.reply, option.key, option.danger, f"chose: {option.text}")

    def by_hand(self, numbers):
        return ByHand("Tick one.", self.choices(numbers))

    def guesses(self, numbers):
        return list(self.shown(numbers))

    def said(self, answer, numbers):
        """Return the letter with its option: a letter alone says nothing later."""
        return f"{answer.understood}) {self.shown(numbers)[answer.understood].text}"

    def example(self, numbers):
        return "b"


class ChooseAll(_Lettered):
    """Any number of options is right; each wrong tick takes back what a right one earned."""

    name = "choose-all"
    to_do = "Choose all that fit; it may be none of them."
    how = "Choose every letter that fits, or type none."

    def read(self, typed, numbers):
        if isinstance(typed, str) and typed.strip().lower() == "none":
            return Answer((), "none")
        shown = self.shown(numbers)
        letters = sorted(self.letters_read(typed, shown))
        if not letters:
            raise NotRead(f"No letter was read. {self.how}")
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
        wrong = sorted(added + missed, key=lambda option: not option.danger)
        way = "ticked" if wrong[0] in added else "left out"
        slip, turn = f"{way}: {wrong[0].key}", f"{way}: {wrong[0].text}"
        replies = " ".join(dict.fromkeys(option.reply for option in wrong if option.reply))
        first, *more = dict.fromkeys(option.danger for option in wrong)
        dangers = " ".join([first, *(each[:1].upper() + each[1:] for each in more if each)])
        return Verdict.partly(share, replies, slip, dangers, turn)

    def by_hand(self, numbers):
        return ByHand(
            "Tick all that fit; it may be none of them.", [*self.choices(numbers), "none of them"]
        )

    def guesses(self, numbers):
        """Return the right letters with one more or one less."""
        right = {letter for letter, o in self.shown(numbers).items() if o.right}
        return [", ".join(sorted(right ^ {letter})) or "none" for letter in self.shown(numbers)]

    def example(self, numbers):
        return "a, c"

    def model(self, numbers):
        return super().model(numbers) or "none"


class Order(_Lettered):
    """Steps to be put in order; `options` are listed in the right one.

    `reply` of a step says why it cannot come where it was put before its forerunner.
    """

    name = "order"
    to_do = "Put them in order, the first on top."
    how = "Give every letter once, the first one first."

    def arrange(self, numbers, stream):
        """Deal the steps in any order but the right one."""
        dealt = super().arrange(numbers, stream)
        return dealt if list(dealt) != sorted(dealt) else (*dealt[1:], dealt[0])

    def read(self, typed, numbers):
        shown = self.shown(numbers)
        letters = self.letters_read(typed, shown)
        if len(letters) != len(shown):
            raise NotRead(f"{len(letters)} of {len(shown)} letters read. {self.how}")
        return Answer(tuple(shown[letter].key for letter in letters), ", ".join(letters))

    def mark(self, value, numbers):
        listed = self.listed(numbers)
        right = [option.key for option in listed]
        if list(value) == right:
            return Verdict(1.0, "Right, step by step.")
        place = {key: index for index, key in enumerate(value)}
        kept = sum(place[a] < place[b] for a, b in pairwise(right))
        # a dangerous step that comes too early is named before any other
        after = [b for a, b in pairwise(listed) if place[a.key] > place[b.key]]
        later = [b for a, b in combinations(listed, 2) if place[a.key] > place[b.key]]
        early = next((step for step in after + later if step.danger), after[0])
        slip, turn = f"too early: {early.key}", f"too early: {early.text}"
        return Verdict.partly(kept / len(right), early.reply, slip, early.danger, turn)

    def by_hand(self, numbers):
        places = [(f"{place}.", "") for place, _ in enumerate(self.choices(numbers), start=1)]
        return ByHand("Write one letter in each place, the first in the first.", places=places)

    def guesses(self, numbers):
        """Return the right order with two neighbours exchanged."""
        right = self.model(numbers).split(", ")
        return [
            ", ".join([*right[:at], right[at + 1], right[at], *right[at + 2 :]])
            for at in range(len(right) - 1)
        ]

    def example(self, numbers):
        """Return the letters backwards, or as dealt where backwards is right: never the answer."""
        as_dealt = self.between.join(self.shown(numbers))
        backwards = self.between.join(reversed(self.shown(numbers)))
        return as_dealt if backwards == self.model(numbers) else backwards

    example_in_code = example  # every letter stands in it anyway

    def model(self, numbers):
        return self.letters_of([option.key for option in self.listed(numbers)], numbers)
