"""The answer log: one file a learner, one JSON line an attempt, only ever added to.

Knows lines and files; never what an answer is worth.
"""

import codecs
import errno
import json
import os
import re
import secrets
import time
from contextlib import suppress
from dataclasses import asdict, dataclass, field, fields, replace
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path

from helpers.exercises.whole_files import as_utf_8, write_whole

FORMAT = 1
LONGEST_LINE, LONGEST_FIELD = 4_000, 200  # characters
LONGEST_ANSWER = 2_500  # characters, as a line escapes them: a design brings its brief along
MOST_DRAWS = 10_000  # of one question; a larger number is no learner's
MOST_SENTENCES = 20  # about one log; the rest is counted
FILE_MODE, FOLDER_MODE = 0o600, 0o700  # answers are for their owner only
ROWS = re.compile(rb"[^\n]+")


class LogError(OSError):
    """An answer could not be kept. The text says why and what to do."""


class OtherFormat(ValueError):
    """A line of an answer log that another edition of these lessons wrote."""


@dataclass(frozen=True, slots=True, order=True)
class LogLine:
    """One attempt: a line of an answer log, its fields in the order in which they are written.

    `line` is an id of its own, `at` the time in UTC, and `follows` the mark of the row before it.
    What was typed from paper is `by_hand`; `takes_back` is the id of such a line that stands no
    longer.
    """

    line: str
    learner: str
    class_word: str
    supply: str
    question: str
    edition: int
    draw: int
    answer: str
    nudges: int
    at: str
    follows: str = ""
    by_hand: bool = False
    takes_back: str = ""

    def text(self):
        """Return the line as it stands in a file, without its end."""
        held = {
            name: value for name, value in asdict(self).items() if value or name not in OF_PAPER
        }
        return json.dumps({"format": FORMAT} | held, ensure_ascii=False)


OF_PAPER = ("by_hand", "takes_back")  # stand only where they say something
NAMES = tuple(each.name for each in fields(LogLine))
TEXTS = {each.name: LONGEST_FIELD for each in fields(LogLine) if each.type is str}
TEXTS["answer"] = LONGEST_ANSWER
NUMBERS = tuple(each.name for each in fields(LogLine) if each.type is int)
UNSAID = {"edition": 1, "follows": "", "takes_back": ""}


def new_line(learner, class_word, supply, question, draw, answer, nudges, at=None, edition=1):
    """Return one attempt, with a random id of its own and the time in UTC."""
    time_of_it = (at or datetime.now(UTC)).isoformat(timespec="milliseconds")
    place = secrets.token_hex(8), learner, class_word, supply, question
    return LogLine(*place, edition, draw, answer, nudges, time_of_it)


def parse_row(row):
    """Return one line of a log.

    Parameters
    ----------
    row : bytes
        The line, without its end.

    Returns
    -------
    line : LogLine
        One that names no edition is of the first; what no line holds is left out.

    Raises
    ------
    ValueError
        If the line is not whole, or is not a line of an answer log that this version reads
        (`OtherFormat`, where another edition wrote it).

    Examples
    --------
    >>> parse_row(b'{"format": 1, "line": "ab')
    Traceback (most recent call last):
    ValueError: the line is cut short or damaged
    """
    try:  # a character has four bytes at most: no giant is decoded
        if len(row) > 4 * LONGEST_LINE or len(text := row.decode("utf-8")) > LONGEST_LINE:
            raise ValueError(f"the line is longer than {LONGEST_LINE} characters")
        held = json.loads(text)
    except UnicodeDecodeError:
        raise ValueError("the line is not text") from None
    except (json.JSONDecodeError, RecursionError):
        raise ValueError("the line is cut short or damaged") from None
    if not isinstance(held, dict) or "format" not in held:
        raise ValueError("the line is not from an answer log")
    if held["format"] != FORMAT:
        given = str(held["format"])[:12]
        raise OtherFormat(f"the line has format {given}; this version reads {FORMAT}")
    held = UNSAID | held | {"by_hand": bool(held.get("by_hand"))}
    for name, longest in TEXTS.items():
        if not isinstance(held.get(name), str) or len(held[name]) > longest:
            raise ValueError(f"the line has no readable field {name!r}")
    for name in NUMBERS:
        value = held.get(name)
        if not isinstance(value, int) or isinstance(value, bool) or not 0 <= value < MOST_DRAWS:
            raise ValueError(f"the line has no readable field {name!r}")
    return LogLine(*map(held.__getitem__, NAMES))


@dataclass
class ParsedLog:
    """What a log holds: its lines, what could not be read, and where something may be missing.

    Sentences beyond `MOST_SENTENCES` are only counted, in `unsaid`.
    """

    lines: list = field(default_factory=list)
    problems: list = field(default_factory=list)
    gaps: list = field(default_factory=list)
    unsaid: int = 0

    def say(self, sentences, text):
        """Add one sentence to a list of them, or count it where there are many."""
        if len(sentences) < MOST_SENTENCES:
            sentences.append(text)
        else:
            self.unsaid += 1


def parse_log(content, most=None):
    """Return what a log holds, leaving out what is damaged and saying so.

    Parameters
    ----------
    content : bytes
        The file, in UTF-8, or in UTF-16 with its byte-order mark.
    most : int or None
        Lines, whole or damaged, after which the rest is named and not read; None reads all.

    Returns
    -------
    log : ParsedLog
        The attempts in the order of the file, with one sentence for each line that could not be
        read, and one for each that does not follow from the line before it.
    """
    content, log = as_utf_8(content), ParsedLog()
    number, read, end, before = 1, 0, 0, b""
    for row in ROWS.finditer(content):
        number += content.count(b"\n", end, row.start())
        end = row.start()
        if most is not None and read >= most:
            log.problems.append(
                f"line {number} and all after it were not read: {most} are the most"
            )
            break
        text, read = row[0].strip(), read + 1
        if not text:
            continue
        try:
            line = parse_row(text)
        except ValueError as error:
            reason = str(error)
            if row.end() == len(content):
                reason += " (the last one: perhaps the power went while it was written)"
            log.say(log.problems, f"line {number} was left out: {reason}")
        else:
            log.lines.append(line)
            if line.follows and line.follows != mark_of(before):
                log.say(log.gaps, f"line {number} does not follow from the line before it")
        before = text
    return log


def mark_of(row):
    """Return the mark by which the next line of a log names this one; '' for none.

    Examples
    --------
    >>> mark_of(b""), mark_of(b'{"format": 1}')
    ('', '5e5fbf8b2105e97e')
    """
    return sha256(row).hexdigest()[:16] if row else ""


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
        """Return the attempts in the order of the file, and a sentence for each unread line."""
        try:
            log = parse_log(self.path.read_bytes())
        except FileNotFoundError:
            return [], []
        except OSError as error:
            reason = error.strerror or error
            return [], [f"{self.path} could not be read ({reason}): earlier answers do not show."]
        if log.unsaid:
            log.problems.append(f"and {log.unsaid} more like these")
        return log.lines, log.problems

    def add(self, line):
        """Write one line, flush it to the disk and read it back before returning.

        Raises
        ------
        LogError
            If the line could not be written whole; what was there before is left as it was.
        """
        try:
            self.path.parent.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
            add_row(self.path, line)
        except OSError as error:
            raise LogError(
                f"This answer is not kept: {self.path} could not be written "
                f"({error.strerror or error}). It is still on the screen. Make room on the disk, "
                "or make the folder writable, and run the cell again."
            ) from error


def add_row(path, line):
    """Add one whole row to a log, or leave the file as it was; two writers never mix.

    Parameters
    ----------
    path : Path
        The log; made if it is not there, readable by its owner only.
    line : LogLine
        The mark of the row that it follows is put in.

    Raises
    ------
    OSError
        If it could not be written, or read back as it was written.
    """
    handle = _open_locked(path)
    try:
        before = os.fstat(handle).st_size
        last, ends = _last_row(handle, before)
        row = replace(line, follows=mark_of(last)).text().encode() + b"\n"
        if not ends:
            row = b"\n" + row
        written = os.write(handle, row)
        if written < len(row):
            os.ftruncate(handle, before)
            raise OSError(errno.ENOSPC, f"the disk took {written} of {len(row)} bytes")
        os.fsync(handle)
        os.lseek(handle, before, os.SEEK_SET)
        if row not in os.read(handle, os.fstat(handle).st_size - before):
            raise OSError(errno.EIO, "what was written could not be read back")
    finally:
        os.close(handle)


def _open_locked(path):
    """Open a log for one writer at a time, in UTF-8 whatever an editor has made of it."""
    flags = os.O_RDWR | os.O_APPEND | os.O_CREAT | getattr(os, "O_BINARY", 0)
    while True:
        handle = os.open(path, flags, FILE_MODE)
        try:
            _lock_until_closed(handle)
            if not os.path.samestat(os.fstat(handle), os.stat(path)):
                os.close(handle)  # another writer has just put it into UTF-8
                continue
            if os.read(handle, 2) not in (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE):
                return handle
            _put_into_utf_8(path)
            os.close(handle)
        except OSError:
            os.close(handle)
            raise


def _put_into_utf_8(path):
    """Write a log anew in UTF-8, keeping what was found beside it."""
    found = path.read_bytes()
    write_whole(path.with_name(f"{path.stem}-as-found-{mark_of(found)[:6]}.txt"), [found])
    write_whole(path, [as_utf_8(found)])
    os.chmod(path, FILE_MODE)


def _last_row(handle, size):
    """Return the last row that holds something, without its end, and whether it has an end."""
    tail, start = b"", size
    while start and b"\n" not in tail.strip():
        step = min(start, 2 * LONGEST_LINE)
        start -= step
        os.lseek(handle, start, os.SEEK_SET)
        tail = os.read(handle, step) + tail
    last = tail.strip().rpartition(b"\n")[2].strip()
    return last.removeprefix(codecs.BOM_UTF8), not tail or tail.endswith(b"\n")


def _lock_until_closed(handle):
    """Hold the file against other writers, where the system has a way to do so.

    Raises
    ------
    OSError
        If another program has held it for a second.
    """
    with suppress(ImportError):
        import fcntl

        _within_a_second(lambda: fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB))
        return
    with suppress(ImportError):
        import msvcrt

        os.lseek(handle, 2**30, os.SEEK_SET)  # far past the end: nobody's reading is held up
        _within_a_second(lambda: msvcrt.locking(handle, msvcrt.LK_NBLCK, 1))
        os.lseek(handle, 0, os.SEEK_SET)


def _within_a_second(lock):
    """Lock, waiting for another writer; a network disk may have no locks, and needs none."""
    until = time.monotonic() + 1.0
    while True:
        try:
            return lock()
        except OSError as error:
            if error.errno not in (errno.EAGAIN, errno.EACCES, errno.EWOULDBLOCK, errno.EDEADLK):
                return None
            if time.monotonic() > until:
                raise OSError(errno.EAGAIN, "another program has held it for a second") from None
            time.sleep(0.01)


class MemoryLog:
    """A log that leaves no trace: for tests and for the workshop copy."""

    path = None

    def __init__(self):
        self._lines = []

    def lines(self):
        return list(self._lines), []

    def add(self, line):
        self._lines.append(line)
