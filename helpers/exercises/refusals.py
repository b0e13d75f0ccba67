"""What cannot be done, told so that somebody can act; text from outside made fit to be told.

Knows nothing of learners or marks.
"""

from contextlib import contextmanager

from helpers.exercises.whole_files import write_whole

MAKE_ROOM = "Close it in other programs, make room on the disk, or give another folder."


class Unusable(ValueError):
    """What was asked for cannot be done. The text says why, and what to do."""


def plain(text, most=80, kept=""):
    """Return text that shows all it holds, on one line.

    Parameters
    ----------
    text : str
        From outside: a file name, an id, an answer.
    most : int
        Longest text that is shown whole [characters].
    kept : str
        Characters without a shape that stay as they are.

    Returns
    -------
    shown : str
        With characters that have no shape of their own (control, direction, half a pair) spelt out;
        a no-break space, which stands before each unit, is a space where it is not kept.

    Examples
    --------
    >>> plain("BENCH-07\\x00")
    'BENCH-07\\\\x00'
    """
    text = text if "\xa0" in kept else text.replace("\xa0", " ")
    if len(text) > most:
        text = text[:most] + "…"
    if text.isprintable():
        return text
    return "".join(
        c if c.isprintable() or c in kept else c.encode("unicode_escape").decode("ascii")
        for c in text
    )


def counted(count, what):
    """Return a count with its noun.

    Examples
    --------
    >>> counted(1, "answer"), counted(2, "answer")
    ('1 answer', '2 answers')
    """
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def few(texts, most, between=", ", unsaid=0):
    """Return the first texts of many in one, and how many more there are.

    Examples
    --------
    >>> few(["a", "b", "c"], 2)
    'a, b; and 1 more'
    """
    more = len(texts) - most + unsaid
    return between.join(texts[:most]) + (f"; and {more} more" if more > 0 else "")


@contextmanager
def refused(what, advice):
    """Turn a refusal of the disk into `Unusable`, with what to do."""
    try:
        yield
    except OSError as error:
        raise Unusable(f"{what} ({error.strerror or error}). {advice}") from error


def write_text(path, pieces):
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
        write_whole(path, (piece.encode("utf-8") for piece in pieces))


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
