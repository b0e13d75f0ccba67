"""What the classroom reads and writes safely: strange text made harmless, files written whole.

Knows nothing of learners or marks.
"""

from dataclasses import dataclass
from html import escape

from helpers.exercises import whole_files

LARGEST_FILE = 20_000_000
FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


class Unusable(ValueError):
    """Something without which no mark book can be made. The text says what to do."""


@dataclass(frozen=True, slots=True)
class Problem:
    """Something that could not be used: where it was, what was found there, and what to do."""

    place: str
    found: str
    advice: str


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
    A spreadsheet runs a cell that begins with one of `= + - @`, a tab or a return as a formula; a
    leading apostrophe stops that. A semicolon becomes a comma, because spreadsheets that part cells
    at semicolons would let the rest begin a cell of its own.

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
    guard = "'" if value.startswith(FORMULA_STARTS) else ""
    return guard + plain(value, 300).replace(";", ",")


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
    try:
        whole_files.write_whole(path, (piece.encode("utf-8") for piece in pieces))
    except OSError as error:
        raise Unusable(
            f"{plain(str(path), 300)} could not be written ({error.strerror or error}). Close it "
            "in other programs, make room on the disk, or give another folder."
        ) from error


def make_folder(path):
    """Make a folder to write into, unless it is there.

    Raises
    ------
    Unusable
        If that is not possible.
    """
    try:
        path.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Unusable(
            f"The folder {plain(str(path), 300)} could not be made ({error.strerror or error}). "
            "Give one that can be written to, and that is not the name of a file."
        ) from error
