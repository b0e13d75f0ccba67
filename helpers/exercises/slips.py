"""Slips: wrong turns that a formula can retrace, and how one is recognised in a wrong answer.

Knows numbers only; must never know how a question is shown or kept.
"""

from collections.abc import Callable
from dataclasses import dataclass

CLOSE = 0.03
POWERS_OF_TEN = {1e3: "1000 times too large", 1e-3: "1000 times too small"} | {
    1e6: "a million times too large",
    1e-6: "a million times too small",
}
UNIT_SLIP = "power of ten"


@dataclass(frozen=True)
class Slip:
    """One wrong turn.

    Parameters
    ----------
    name : str
        Short name in plain words, as the mark book shows it.
    wrong : callable
        From the personal numbers to the answer that this turn gives, in the unit of the question.
    reply : str
        What was probably done, then one question that lets the learner repair it.
    danger : str
        What would happen if the value were built; empty where it would hurt nobody.
    share : float
        Part of the marks that this answer still earns [-].
    """

    name: str
    wrong: Callable
    reply: str
    danger: str = ""
    share: float = 0.0


@dataclass(frozen=True)
class Recognised:
    """What a wrong answer was taken for: a name, a reply, its danger and its share of marks."""

    name: str
    reply: str
    danger: str = ""
    share: float = 0.0


def close(value, other):
    """Whether two numbers lie within three per cent of the second."""
    return abs(value - other) <= CLOSE * abs(other)


def recognise(slips, value, right, numbers):
    """Find the wrong turn that leads to `value`: dangers first, then one turn, a prefix, a pair.

    Parameters
    ----------
    slips : sequence of Slip
        The turns that the question knows, most likely first.
    value, right : float
        The learner's answer and the right one, in the same unit.
    numbers : object
        The personal numbers of this draw.

    Returns
    -------
    found : Recognised or None
        None when no turn fits: two unnamed turns together would be guesswork.

    Notes
    -----
    A turn of the question's own comes before a bare power of ten: its reply says more. A pair is
    one such turn and a power of ten (milli for micro, kilo for ohm). The danger of a turn belongs
    to its value alone: a thousand times the ohms is not the same danger.
    """
    taken = [
        (slip, slip.wrong(numbers)) for slip in sorted(slips, key=lambda slip: not slip.danger)
    ]
    for slip, wrong in taken:
        if close(value, wrong):
            return Recognised(slip.name, slip.reply, slip.danger, slip.share)
    for factor, size in POWERS_OF_TEN.items():
        if close(value, right * factor):
            return Recognised(UNIT_SLIP, _unit_reply(size), share=0.5)
    for slip, wrong in taken:
        for factor in POWERS_OF_TEN:
            if close(value, wrong * factor):
                reply = f"Two things at once. {slip.reply} Besides, look at the prefix of the unit."
                return Recognised(f"{slip.name}, and {UNIT_SLIP}", reply)
    return None


def _unit_reply(size):
    return (
        f"The digits are right and the size is not: this is {size}. "
        "Which prefix did you mean: milli, kilo, or none?"
    )


def size_check(value, right):
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
    return f"Much too {way}: more than ten times. Look at the prefixes first."
