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
EVERY = 99  # more than any question has
FARTHEST = 1000  # times too large or too small: nobody writes down what is farther off


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
    given = drawn(n), worked[:1].upper() + worked[1:]
    if question.role == "predict":
        return Row(question, *map(escape, (given[0], "Kept, not marked", "", given[1])), [])
    right = kind.read(kind.model(n), n)
    told = given[0], kind.said(right, n), kind.accepted(n), given[1]
    slips, usual = {}, explained(question, n, EVERY)
    near = [(answer, verdict) for answer, verdict in usual if not _far(answer.value, right.value)]
    for answer, verdict in near[:MOST]:
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


def _far(value, right):
    if not isinstance(value, float) or not right or not value:
        return False
    return not 0.999 / FARTHEST < abs(value / right) < 1.001 * FARTHEST


def drawn(numbers):
    """Write what was drawn as people read it: what has a unit, and cases told in a sentence.

    Before each stands what its name says beside its quantity, which its unit says already.
    """
    told = [
        f"“{shorten(value, LONGEST_WORDS, placeholder=' …')}”"
        if isinstance(value, str)
        else " ".join([*_called(name), _written(name, numbers)])
        for name, value in vars(numbers).items()
        if name != "supply" and _says_something(name, value)
    ]
    return f"Given: {', '.join(told)}." if told else ""


def _says_something(name, value):
    if isinstance(value, str):
        return value[:1].isupper() and value[-1:] in ".?!"
    return "square" in name or quantity_of(name) or hasattr(value, "name")


def _called(name):
    words = name.split("_")
    return words if "square" in words else [word for word in words if word not in QUANTITY_OF]


def _written(name, numbers):
    return f"{getattr(numbers, name):.4g}" if "square" in name else fill(f"{{{name}}}", numbers)


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
