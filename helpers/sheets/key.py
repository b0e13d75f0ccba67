"""The key to packs on paper: what is right with each learner's numbers, why, and usual slips.

For who marks by hand; what is typed in is marked by `exercises.standing` alone.
"""

from textwrap import shorten
from typing import NamedTuple

from helpers.exercises.mistakes import explained
from helpers.exercises.templates import QUANTITY_OF, fill, quantity_of
from helpers.sheets import paper

LONGEST_WORDS = 60  # characters of a case that is told in words
MOST = 3  # slips of one question
FARTHEST = 1000  # times too large or too small: nobody needs the reason of what is farther off


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
    right = kind.read(kind.model(n), n)
    told = drawn(n), kind.said(right, n), kind.accepted(n), worked
    slips = {}
    for answer, verdict in explained(question, n, MOST):
        words = verdict.reply if verdict.turn else verdict.slip
        key = bool(verdict.danger), verdict.danger or words
        slips.setdefault(key, []).append(answer)
    return Row(
        question,
        *map(escape, told),
        [
            (danger, escape(" or ".join(answer.understood for answer in near)), escape(said))
            for (danger, said), answers in slips.items()
            if (near := [a for a in answers if not _far(a.value, right.value)] or answers * danger)
        ],
    )


def _far(value, right):
    if not isinstance(value, float) or not right:
        return False
    return not 0.999 / FARTHEST < abs(value / right) < 1.001 * FARTHEST


def drawn(numbers):
    """Write the personal numbers of a draw; '' where there are none.

    Before each stands what its name says beside its quantity, which its unit says already.
    """
    return "; ".join(
        " ".join([*_called(name, value), _written(name, value, numbers)])
        for name, value in vars(numbers).items()
        if name not in ("supply", "shown")
    )


def _called(name, value):
    if isinstance(value, str):
        return []
    words = name.split("_")
    return words if "square" in words else [word for word in words if word not in QUANTITY_OF]


def _written(name, value, numbers):
    if isinstance(value, str):
        return shorten(value.replace("_", " "), LONGEST_WORDS, placeholder=" …")
    if isinstance(value, tuple):
        return ", ".join(_written("", each, numbers) for each in value)
    measured = "square" not in name and quantity_of(name)
    if measured or hasattr(value, "name"):
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
    return paper.pieces(people, wanted, draw, "key", row)
