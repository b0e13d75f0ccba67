"""A log that leaves this machine or comes back to it: named, checked, written whole.

Knows logs and files; never what an answer is worth.
"""

from dataclasses import dataclass
from datetime import UTC, datetime
from hashlib import sha256
from os.path import commonprefix
from pathlib import Path

from helpers.exercises.answer_log import FOLDER_MODE, ROWS, LogError, parse_log
from helpers.exercises.settings import WORKSHOP_LEARNER, Settings, SettingsError
from helpers.exercises.whole_files import as_utf_8, write_new, write_whole

LARGEST_FILE = 20_000_000
MOST_LINES = 10_000


class HandInError(ValueError):
    """A hand-in that cannot be written or brought in. The text says why and what to do."""


@dataclass(frozen=True)
class Receipt:
    """What was handed in: the file, how many answers it holds, and its digest in words.

    `refused` says why marking would not take it; '' if it would.
    """

    path: Path
    answers: int
    digest: str
    refused: str = ""


def digest(content):
    """Return a short digest of a file, to be read out and compared.

    Examples
    --------
    >>> digest(b"")
    'e3b0 c442 98fc'
    """
    letters = sha256(content).hexdigest()
    return " ".join(letters[place : place + 4] for place in (0, 4, 8))


def refusal(content, log):
    """Say why marking does not take a hand-in as it is; '' if it does.

    Parameters
    ----------
    content : bytes
        The file.
    log : ParsedLog
        What it holds.
    """
    if len(content) > LARGEST_FILE:
        return f"it has {len(content) / 1e6:.0f} MB (20 MB is the most)"
    if not log.lines:
        return log.problems[0] if log.problems else "it is empty"
    if len(log.lines) > MOST_LINES:
        return f"it has {len(log.lines)} lines ({MOST_LINES} are the most)"
    return ""


def name_of(class_word, learner, day, content):
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
    >>> name_of("wick", "BENCH-07", date(2026, 1, 13), b"first line\\nsecond line")
    'wick_BENCH-07_2026-01-13_1de24a.jsonl'
    """
    own = sha256(content.partition(b"\n")[0]).hexdigest()[:6]
    return f"{class_word}_{learner}_{day.isoformat()}_{own}.jsonl"


def write(store, settings):
    """Write a learner's log into one file for the instructor.

    Parameters
    ----------
    store : DiskStore or MemoryStore
        Where the log is kept.
    settings : Settings
        Whose it is.

    Returns
    -------
    receipt : Receipt

    Raises
    ------
    HandInError
        If nothing has been answered yet, or answers are kept in memory only.
    LogError
        If the file could not be written.
    """
    if store.folder is None:
        raise HandInError("Answers are kept in memory only here, so there is no file to hand in.")
    try:
        content = store.log_path(settings.learner).read_bytes()
    except FileNotFoundError:
        raise HandInError(
            f"{settings.learner} has answered nothing yet: nothing to hand in."
        ) from None
    name = name_of(settings.class_word, settings.learner, datetime.now(UTC).date(), content)
    path = store.hand_ins / name
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, [content])
    except OSError as error:
        raise LogError(f"{path} could not be written ({error.strerror or error}).") from error
    parsed = parse_log(content)
    return Receipt(path, len(parsed.lines), digest(content), refusal(content, parsed))


def bring_in(path, store):
    """Take over a hand-in as the log of its learner, to go on with it on this machine.

    Parameters
    ----------
    path : str or Path
        The file that `hand_in()` wrote on another machine.
    store : DiskStore or MemoryStore
        Where answers are kept here.

    Returns
    -------
    settings : Settings
        The learner, class word and supply of its newest answer.
    brought : int
        Answers that were not here yet.

    Raises
    ------
    HandInError
        If it is no hand-in of one learner, it and the log that is here already have parted, or
        answers are kept in memory only.
    LogError
        If a file could not be read or written.

    Notes
    -----
    Nothing that is here is lost: a log takes the place of one that it begins with, no other.
    """
    if store.folder is None:
        raise HandInError("Answers are kept in memory only here: nothing to bring in.")
    path = Path(path)
    try:
        content = path.read_bytes()
    except OSError as error:
        raise LogError(f"{path} could not be read ({error.strerror or error}).") from error
    log = parse_log(content)
    if reason := refusal(content, log):
        raise HandInError(f"{path} was not brought in: {reason}.")
    settings = _whose(path, log.lines)
    here = store.log_path(settings.learner)
    try:
        store.folder.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
        known = here.read_bytes() if here.exists() else b""
        before, after = _rows(known), _rows(content)
        if before[: len(after)] == after:
            return settings, 0
        if after[: len(before)] != before:
            raise HandInError(_parted(path, here, before, after))
        if known:
            write_whole(here, [as_utf_8(content)])
        else:
            write_new(here, as_utf_8(content))
    except OSError as error:
        raise LogError(f"{here} could not be written ({error.strerror or error}).") from error
    return settings, len(after) - len(before)


def _whose(path, lines):
    learners = sorted({line.learner for line in lines})
    newest = lines[-1]
    if len(learners) > 1 or newest.learner == WORKSHOP_LEARNER:
        raise HandInError(
            f"{path} was not brought in: it holds answers of {', '.join(learners[:5])}. Take the "
            "file that hand_in() wrote for one learner."
        )
    try:
        return Settings(newest.learner, newest.class_word, newest.supply)
    except SettingsError as error:
        raise HandInError(f"{path} was not brought in. {error}") from None


def _rows(content):
    rows = (row[0].strip() for row in ROWS.finditer(as_utf_8(content)))
    return [row for row in rows if row]


def _parted(path, here, before, after):
    same = len(commonprefix([before, after]))
    return (
        f"{path} was not brought in: it and {here} are the same for {same} lines and then go on "
        "differently. Answers were given in two places. Keep both files and ask your instructor "
        "which one counts."
    )
