"""Where wrong turns of a question end on the right answer or on each other, and numbers without.

For who writes questions: a slip that is marked right, or a number with three meanings, teaches
nothing.
"""

from dataclasses import dataclass
from types import SimpleNamespace

from helpers import quantities
from helpers.authoring.every_numbers import every_numbers
from helpers.exercises.refusals import Unusable, counted, plain
from helpers.exercises.templates import quantity_of
from helpers.physics.mains import SUPPLIES

TYPED_DIGITS, ALL_DIGITS = 3, 15
MOST_NAMES = 2  # so many are told on a card, with the question that parts them
MOST_SHOWN = 24


@dataclass(frozen=True)
class Clash:
    """Wrong turns that end where they should not, with one set of numbers.

    Parameters
    ----------
    names : tuple of str
        The turns.
    value : float
        Where they end [the glossary's unit].
    right : str
        How it is right: "", where it is not; "as it is"; "in two digits".
    numbers : SimpleNamespace
        The personal numbers.
    """

    names: tuple
    value: float
    right: str
    numbers: SimpleNamespace


def clashes(question):
    """Return every clash of a question, over all numbers that it can draw on all supplies.

    Parameters
    ----------
    question : Question
        Its kind is Amount.

    Returns
    -------
    found : list of Clash
        First those that are right as they are, then those in two digits, then shared ends.
    """
    found = [clash for n in every_numbers(question) for clash in clashes_with(question.kind, n)]
    return sorted(found, key=lambda clash: ("as it is", "in two digits", "").index(clash.right))


def clashes_with(kind, n):
    """Return the clashes of one set of personal numbers.

    Parameters
    ----------
    kind : Amount
    n : SimpleNamespace

    Returns
    -------
    found : list of Clash
    """
    found = {}
    for name, value in kind.wrong_ends(n):
        if right := _how_right(kind, n, value):
            found[name, right] = Clash((name,), value, right, n)
            continue
        typed = float(f"{value:.{TYPED_DIGITS - 1}e}")
        names = kind.meanings(typed, TYPED_DIGITS, n)
        if len(names) > MOST_NAMES:
            found.setdefault(frozenset(names), Clash(names, value, "", n))
    return list(found.values())


def _how_right(kind, n, value):
    if kind.is_right(value, ALL_DIGITS, n):
        return "as it is"
    return "in two digits" if kind.is_right(float(f"{value:.1e}"), 2, n) else ""


def free_numbers(question, found):
    """Return the numbers that never clash.

    Parameters
    ----------
    question : Question
    found : list of Clash
        What `clashes` returned for it.

    Returns
    -------
    free : dict
        From the name of each supply to the sets of numbers, as text, that do not clash on it.
    """
    clashing = {(clash.numbers.supply.name, as_text(clash.numbers)) for clash in found}
    free = {}
    for n in every_numbers(question):
        sets, text = free.setdefault(n.supply.name, []), as_text(n)
        if (n.supply.name, text) not in clashing and text not in sets:
            sets.append(text)
    return free


def as_text(n):
    """Return the personal numbers, without supply and order, as people read them.

    Parameters
    ----------
    n : SimpleNamespace

    Returns
    -------
    text : str
    """
    drawn = {name: value for name, value in vars(n).items() if name not in ("supply", "shown")}
    return ", ".join(f"{name.replace('_', ' ')} {_written(name, drawn[name])}" for name in drawn)


def _written(name, value):
    if hasattr(value, "name"):
        return value.name
    quantity = quantity_of(name)
    if isinstance(value, (int, float)) and quantity:
        return quantities.write(value, quantity, 3)
    return str(value)


def find(question_id, questions):
    """Return the question of an id, if it has a road.

    Parameters
    ----------
    question_id : str
    questions : dict
        Questions by id.

    Returns
    -------
    question : Question

    Raises
    ------
    Unusable
        If there is none, or it is no sum.
    """
    sums = [name for name, one in questions.items() if one.kind.road]
    there = f"Questions with a sum are: {', '.join(sums)}."
    if question_id not in questions:
        raise Unusable(f'"{plain(question_id)}" was read, and no question has that id. {there}')
    if question_id not in sums:
        raise Unusable(
            f'"{question_id}" was read. Its answer is not a sum, so no wrong turn leads to a '
            f"number. {there}"
        )
    return questions[question_id]


def report(question):
    """Return what there is to say about the clashes of a question, line by line.

    Parameters
    ----------
    question : Question
        Its kind is Amount.

    Returns
    -------
    lines : list of str
    """
    count, found = len(every_numbers(question)), clashes(question)
    lines = [f"{question.id}: {counted(count, 'set')} of numbers tried, all that it can draw."]
    if not found:
        return [*lines, "No clash: no wrong turn is marked right, no number has three meanings."]
    for right, heading in HEADINGS.items():
        some = [clash for clash in found if clash.right == right]
        lines += ["", f"{heading} ({counted(len(some), 'set')} of numbers):"] if some else []
        lines += _shortened(_cases(question.kind, some))
    return [*lines, "", *_proposal(free_numbers(question, found))]


HEADINGS = {
    "as it is": "Marked right though a wrong turn was taken",
    "in two digits": "Marked right when typed with two digits",
    "": "More than two wrong turns on one number",
}


def _cases(kind, some):
    """Tell each clash once, with all supplies on which it is the same."""
    supplies = {}
    for clash in some:
        n = clash.numbers
        end, right = (quantities.write_as(x, kind.unit, 4) for x in (clash.value, kind.right(n)))
        text = f"{' / '.join(clash.names)}: {end}, right is {right}, with {as_text(n)}"
        supplies.setdefault(text, []).append(n.supply.name)
    return [f"{text}, on {_listed(names)}" for text, names in supplies.items()]


def _listed(supplies):
    return "every supply" if len(supplies) == len(SUPPLIES) else ", ".join(supplies)


def _proposal(free):
    first, *others = free.values()
    if everywhere := [text for text in first if all(text in sets for sets in others)]:
        return ["Free of a clash on every supply:", *_shortened(everywhere)]
    lines = ["No set of numbers is free of a clash on every supply."]
    for supply, sets in free.items():
        lines.append(f"Free of a clash on {supply}: {'none' if not sets else ''}".rstrip())
        lines += _shortened(sets)
    return lines


def _shortened(lines):
    more = len(lines) - MOST_SHOWN
    rest = [f"... and {more} more"] if more > 0 else []
    return [f"  {line}" for line in [*lines[:MOST_SHOWN], *rest]]
