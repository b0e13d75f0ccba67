"""What goes wrong outside, told so that somebody can act: problems, refusals, files written whole.

Knows nothing of learners or marks.
"""

from contextlib import contextmanager
from dataclasses import dataclass

from helpers.exercises import whole_files
from helpers.pages.templates import plain

LOST, ASK, FINE = range(3)  # how urgent a problem is: answers lost, something to ask, nothing
MAKE_ROOM = "Close it in other programs, make room on the disk, or give another folder."


class Unusable(ValueError):
    """Something without which no mark book can be made. The text says what to do."""


@dataclass(frozen=True, slots=True)
class Problem:
    """Something to look at: where it was, what was found there, what to do, how urgent it is."""

    place: str
    found: str
    advice: str
    rank: int = LOST


def capped(problems, most, place):
    """Return at most so many problems, the rest as one that counts them.

    Parameters
    ----------
    problems : list of Problem
        The most urgent first, where that matters.
    most : int
        How many are told [-].
    place : str
        Where the rest is.

    Returns
    -------
    problems : list of Problem
    """
    rest = problems[most:]
    if not rest:
        return problems
    found = f"{counted(len(rest), 'more thing')} like these"
    return [*problems[:most], Problem(place, found, "Settle these first.", rest[0].rank)]


def few(texts, most, between=", ", unsaid=0):
    """Return the first texts of many in one, and how many more there are.

    Examples
    --------
    >>> few(["a", "b", "c"], 2)
    'a, b; and 1 more'
    """
    more = len(texts) - most + unsaid
    return between.join(texts[:most]) + (f"; and {more} more" if more > 0 else "")


def counted(count, what):
    """Return a count with its noun.

    Examples
    --------
    >>> counted(1, "answer"), counted(2, "answer")
    ('1 answer', '2 answers')
    """
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


@contextmanager
def refused(what, advice):
    """Turn a refusal of the disk into `Unusable`, with what to do."""
    try:
        yield
    except OSError as error:
        raise Unusable(f"{what} ({error.strerror or error}). {advice}") from error


def write_whole(path, pieces):
    """Write a text file whole, or leave what was there before as it was.

    Parameters
    ----------
    path : Path
        The file; its folder is there already.
    pieces : iterable of str
        What to write.

    Raises
    ------
    Unusable
        If it cannot be written.
    """
    with refused(f"{plain(str(path), 300)} could not be written", MAKE_ROOM):
        whole_files.write_whole(path, (piece.encode("utf-8") for piece in pieces))


def make_folder(path):
    """Make a folder to write into, unless it is there.

    Raises
    ------
    Unusable
        If that is not possible.
    """
    advice = "Give one that can be written to, and that is not the name of a file."
    with refused(f"The folder {plain(str(path), 300)} could not be made", advice):
        path.mkdir(parents=True, exist_ok=True)
