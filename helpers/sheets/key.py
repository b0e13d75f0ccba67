"""The key to packs on paper: what is right with each learner's numbers, why, and usual slips.

For who marks by hand; what is typed in is marked by `exercises.standing` alone.
"""

from textwrap import shorten
from typing import NamedTuple

from helpers.exercises.mistakes import explained
from helpers.exercises.templates import fill, quantity_of
from helpers.sheets import paper

LONGEST_WORDS = 60  # characters of a case that is told in words
MOST = 3  # slips of one question


class Row(NamedTuple):
    """One question of the key, all escaped; `slips` are (whether a danger, answers, its words)."""

    question: object
    numbers: str
    right: str
    accepted: str
    working: str
    slips: list


def row(question, settings, draw=0):
    """Return what the key says of one question of one learner.

    Parameters
    ----------
    question : Question
    settings : Settings
        Whose numbers: learner, class word and supply.
    draw : int
        Which draw of it.

    Returns
    -------
    row : Row
    """
    from markupsafe import escape

    kind, n = question.kind, paper.numbers_of(question, settings, draw)
    worked = question.worked(n)
    if question.role == "predict":
        told = drawn(n), "kept, not marked", "", worked
        return Row(question, *map(escape, told), [])
    told = drawn(n), kind.said(kind.read(kind.model(n), n), n), kind.accepted(n), worked
    slips = {}
    for answer, verdict in explained(question, n, MOST):
        words = verdict.reply if verdict.turn else verdict.slip
        key = bool(verdict.danger), verdict.danger or words
        slips.setdefault(key, []).append(answer.understood)
    return Row(
        question,
        *map(escape, told),
        [
            (danger, escape(" or ".join(typed)), escape(said))
            for (danger, said), typed in slips.items()
        ],
    )


def drawn(numbers):
    """Write the personal numbers of a draw, each behind its name; '' where there are none."""
    return "; ".join(
        f"{name.replace('_', ' ')} {_written(name, value, numbers)}"
        for name, value in vars(numbers).items()
        if name not in ("supply", "shown")
    )


def _written(name, value, numbers):
    if isinstance(value, str):
        return shorten(value, LONGEST_WORDS, placeholder=" …")
    if isinstance(value, tuple):
        return ", ".join(_written("", each, numbers) for each in value)
    if quantity_of(name) or hasattr(value, "name"):
        return fill(f"{{{name}}}", numbers)
    return f"{value:.4g}"


def pieces(people, wanted, draw=0):
    """Yield the key to the packs of some learners as one page to print, piece by piece.

    Parameters
    ----------
    people, wanted, draw
        As for `paper.pieces`, which makes the packs.

    Returns
    -------
    pieces : iterator of str
        One self-contained document.

    Raises
    ------
    ValueError
        As `paper.chosen`.
    """
    return paper.pieces(people, wanted, draw, "key", row, ())
