"""What the classroom reads and writes safely: strange text made harmless, files written whole.

Knows nothing of learners or marks.
"""

from contextlib import contextmanager
from dataclasses import dataclass
from html import escape

from helpers.exercises import whole_files

LOST, ASK, FINE = range(3)  # how urgent a problem is: answers lost, something to ask, nothing
FORMULA_STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r")
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


def counted(count, what):
    """Return a count with its noun.

    Examples
    --------
    >>> counted(1, "answer"), counted(2, "answer")
    ('1 answer', '2 answers')
    """
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def plain(text, most=80):
    """Return text that shows all it holds, on one line.

    Parameters
    ----------
    text : str
        From outside: a file name, an id, an answer.
    most : int
        Longest text that is shown whole [characters].

    Returns
    -------
    shown : str
        With characters that have no shape of their own (control, direction, half a pair) spelt out.

    Examples
    --------
    >>> plain("BENCH-07\\x00")
    'BENCH-07\\\\x00'
    """
    if len(text) > most:
        text = text[:most] + "…"
    if text.isprintable():
        return text
    return "".join(
        c if c.isprintable() else c.encode("unicode_escape").decode("ascii") for c in text
    )


def for_page(text, most=300):
    """Return text from outside as it may stand in HTML, between tags or in an attribute."""
    return escape(plain(text, most), quote=True)


def for_cell(value):
    """Return a value as it may stand in a CSV file that a spreadsheet opens.

    Notes
    -----
    A spreadsheet runs a cell that begins with one of `= + - @`, a tab or a return as a formula,
    some also where the sign is full-width or follows blanks; a leading apostrophe stops that. A
    semicolon becomes a comma, because spreadsheets that part cells at semicolons would let the
    rest begin a cell of its own.

    References
    ----------
    The list of first characters: OWASP, "CSV Injection" (from memory).

    Examples
    --------
    >>> for_cell("=1+1"), for_cell(7.5)
    ("'=1+1", 7.5)
    """
    if not isinstance(value, str):
        return value
    guard = "'" if value.lstrip(" ").startswith(FORMULA_STARTS) else ""
    return guard + plain(value, 300).replace(";", ",")


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
