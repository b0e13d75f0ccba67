"""The answer log: one file a learner, one JSON line an attempt, only ever added to.

Knows lines and files; never what an answer is worth.
"""

import errno
import json
import os
import secrets
from contextlib import suppress
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path

from helpers.exercises.whole_files import as_utf_8

FORMAT = 1
FIELDS = (
    "line", "learner", "class_word", "supply", "question", "edition", "draw", "answer", "nudges",
    "at",
)  # fmt: skip
TEXT_FIELDS = ("line", "learner", "class_word", "supply", "question", "answer", "at")
LONGEST_LINE = 4_000


class LogError(OSError):
    """An answer could not be kept. The text says why and what to do."""


class OtherFormat(ValueError):
    """A line of an answer log that another edition of these lessons wrote."""


def new_line(learner, class_word, supply, question, draw, answer, nudges, at=None, edition=1):
    """Return the fields of one attempt, with a random id of its own and the time in UTC."""
    at = at or datetime.now(UTC)
    return {
        "format": FORMAT,
        "line": secrets.token_hex(8),
        "learner": learner,
        "class_word": class_word,
        "supply": supply,
        "question": question,
        "edition": edition,
        "draw": draw,
        "answer": answer,
        "nudges": nudges,
        "at": at.isoformat(timespec="milliseconds"),
    }


def parse_line(text):
    """Return the fields of one line of a log.

    Parameters
    ----------
    text : str
        The line, without its end.

    Returns
    -------
    fields : dict
        As `new_line` makes them; a line that names no edition is of the first.

    Raises
    ------
    ValueError
        If the line is not whole, or is not a line of an answer log that this version reads
        (`OtherFormat`, where another edition wrote it).

    Examples
    --------
    >>> parse_line('{"format": 1, "line": "ab')
    Traceback (most recent call last):
    ValueError: the line is cut short or damaged
    """
    if len(text) > LONGEST_LINE:
        raise ValueError(f"the line is {len(text)} characters long; {LONGEST_LINE} is the most")
    try:
        fields = json.loads(text)
    except (json.JSONDecodeError, RecursionError):
        raise ValueError("the line is cut short or damaged") from None
    if not isinstance(fields, dict) or "format" not in fields:
        raise ValueError("the line is not from an answer log")
    if fields["format"] != FORMAT:
        given = str(fields["format"])[:12]
        raise OtherFormat(f"the line has format {given}; this version reads {FORMAT}")
    for name in TEXT_FIELDS:
        if not isinstance(fields.get(name), str):
            raise ValueError(f"the line has no readable field {name!r}")
    fields.setdefault("edition", 1)
    for name in ("edition", "draw", "nudges"):
        value = fields.get(name)
        if not isinstance(value, int) or isinstance(value, bool) or not 0 <= value < 10_000:
            raise ValueError(f"the line has no readable field {name!r}")
    return fields


def read_log(path):
    """Read a log, leaving out what is damaged and saying so.

    Parameters
    ----------
    path : Path
        The file; one that does not exist is an empty log.

    Returns
    -------
    lines : list of dict
        The attempts in the order of the file.
    problems : list of str
        One sentence for each line that could not be read.
    """
    try:
        content = as_utf_8(Path(path).read_bytes())
    except FileNotFoundError:
        return [], []
    lines, problems = [], []
    rows = content.split(b"\n")
    for number, row in enumerate(rows, start=1):
        if not row.strip():
            continue
        try:
            lines.append(parse_line(row.decode("utf-8")))
        except ValueError as error:
            reason = "it is not text" if isinstance(error, UnicodeDecodeError) else str(error)
            if number == len(rows):
                reason += " (the last one: perhaps the power went while it was written)"
            problems.append(f"line {number} was left out: {reason}")
    return lines, problems


def hand_in_name(class_word, learner, day, content):
    """Return the name of the file that hands a log in.

    Parameters
    ----------
    class_word, learner : str
        Of the settings.
    day : date
        When it is handed in.
    content : bytes
        The log.

    Returns
    -------
    name : str
        The same log keeps its name all day; another log, of the same id on another machine, has
        another name, so that neither takes the other's place in the instructor's folder.

    Notes
    -----
    The last part follows from the first line, which stays as lines are only ever added.

    Examples
    --------
    >>> from datetime import date
    >>> hand_in_name("wick", "BENCH-07", date(2026, 1, 13), b"first line\\nsecond line")
    'wick_BENCH-07_2026-01-13_1de24a.jsonl'
    """
    own = sha256(content.partition(b"\n")[0]).hexdigest()[:6]
    return f"{class_word}_{learner}_{day.isoformat()}_{own}.jsonl"


class AnswerLog:
    """One learner's log on disk.

    Parameters
    ----------
    path : Path
        The file; it and its folder are made when the first answer comes.
    """

    def __init__(self, path):
        self.path = Path(path)

    def lines(self):
        try:
            return read_log(self.path)
        except OSError as error:
            reason = error.strerror or error
            return [], [f"{self.path} could not be read ({reason}): earlier answers do not show."]

    def add(self, fields):
        """Write one line and flush it to the disk before returning.

        Raises
        ------
        LogError
            If the line could not be written whole; what was there before is left as it was.
        """
        row = json.dumps(fields, ensure_ascii=False).encode("utf-8") + b"\n"
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            write_row(self.path, row)
        except OSError as error:
            raise LogError(
                f"This answer is not kept: {self.path} could not be written "
                f"({error.strerror or error}). It is still on the screen. Make room on the disk, "
                "or make the folder writable, and run the cell again."
            ) from error


def write_row(path, row):
    """Add one whole row to a file, or leave the file as it was; two writers never mix."""
    flags = os.O_RDWR | os.O_APPEND | os.O_CREAT | getattr(os, "O_BINARY", 0)
    handle = os.open(path, flags, 0o644)
    try:
        _lock_until_closed(handle)
        before = os.fstat(handle).st_size
        if before and _last_byte(handle, before) != b"\n":
            row = b"\n" + row
        written = os.write(handle, row)
        if written < len(row):
            os.ftruncate(handle, before)
            raise OSError(errno.ENOSPC, f"the disk took {written} of {len(row)} bytes")
        os.fsync(handle)
    finally:
        os.close(handle)


def _last_byte(handle, size):
    os.lseek(handle, size - 1, os.SEEK_SET)
    return os.read(handle, 1)


def _lock_until_closed(handle):
    """Hold the file against other writers, where the system has a way to do so."""
    with suppress(ImportError):
        import fcntl

        with suppress(OSError):  # a network disk may have no locks; an append is still one write
            fcntl.flock(handle, fcntl.LOCK_EX)
        return
    with suppress(ImportError):
        import msvcrt

        os.lseek(handle, 2**30, os.SEEK_SET)  # far past the end: nobody's reading is held up
        msvcrt.locking(handle, msvcrt.LK_LOCK, 1)


class MemoryLog:
    """A log that leaves no trace: for tests and for the workshop copy."""

    path = None

    def __init__(self):
        self._lines = []

    def lines(self):
        return list(self._lines), []

    def add(self, fields):
        self._lines.append(fields)
