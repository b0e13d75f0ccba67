"""Hand-ins: find the files in a folder, read each one once, and say whose it is.

Knows files; must never know what an answer is worth, nor which of several logs counts.
"""

import os
import re
import stat
from dataclasses import dataclass, field

from helpers.classroom.problems import Problem
from helpers.exercises.answer_log import ROWS, OtherFormat, parse_row
from helpers.exercises.hand_in import LARGEST_FILE, MOST_LINES, digest
from helpers.exercises.refusals import Unusable, plain
from helpers.exercises.whole_files import as_utf_8

ASK_AGAIN = "Ask for the file that hand_in() writes in the lesson: class word, id and date, .jsonl."
UNLOCK = "Make it readable, or copy it here again, and mark once more."
LEFT_ASIDE = "Take it out of the folder if it is nobody's answers. " + ASK_AGAIN
OTHER_EDITION = "Mark with the edition of these lessons that wrote it, probably a newer one."
NEARER = "Put the hand-ins into a folder nearer to the one that is marked."
PACKED = (".zip", ".7z", ".gz", ".tar", ".rar", ".xz")
PASSED_OVER = re.compile(  # what systems leave behind, and mark books of ours
    r"\.ds_store|\._.*|thumbs\.db|desktop\.ini|mark-book.*\.(csv|html)", re.IGNORECASE
)
MOST_DEEP = 20  # folders inside folders
MOST_LOGS = 500  # hand-ins of one id: one on every day of a long course
HELD = 16_000_000  # bytes of hand-ins in all that wait in memory; what is above is read again


@dataclass(slots=True)
class HandIn:
    """One file that holds an answer log, and whose it is by its first readable line.

    `content` is empty where it has to be read again, and `answers` is counted when it is.
    """

    path: str
    name: str
    learner: str
    digest: str
    content: bytes = field(repr=False, default=b"")
    answers: int = 0

    def read(self):
        """Return what the file holds, letting go of it.

        Raises
        ------
        OSError
            If it cannot be read again, or has changed since.
        """
        content, self.content = self.content, b""
        if not content:
            content = _content(self.path)
            if digest(content) != self.digest:
                raise OSError("it changed while it was marked")
        return content


def find_files(folder, apart=()):
    """List the hand-ins in a folder and in the folders inside it.

    Parameters
    ----------
    folder : Path
        Where the hand-ins are.
    apart : iterable of Path
        Files that belong to the marking itself (the roster): passed over, as mark books are.

    Returns
    -------
    files : list of str
        What may be an answer log, whatever its ending, by name.
    problems : list of Problem
        Everything else, each with what to do.

    Raises
    ------
    Unusable
        If the folder cannot be read.
    """
    if not folder.is_dir():
        found = "is a file" if folder.exists() else "is not there"
        raise Unusable(f"{plain(str(folder), 300)} {found}. Give the folder with the hand-ins.")
    apart = {os.path.abspath(path) for path in apart}
    top = os.path.abspath(folder)
    files, problems = [], []

    def unreadable(error):
        place = _name(error.filename, top)
        problems.append(Problem(place, f"the folder could not be read ({error.strerror})", UNLOCK))

    for here, subfolders, names in os.walk(top, onerror=unreadable):
        subfolders.sort()
        links = [name for name in subfolders if os.path.islink(os.path.join(here, name))]
        if subfolders and here.count(os.sep) - top.count(os.sep) >= MOST_DEEP:
            found = f"it lies {MOST_DEEP} folders deep; the folders inside it were not read"
            problems.append(Problem(_name(here, top), found, NEARER))
            subfolders.clear()
        for name in sorted(names + links):
            path = os.path.join(here, name)
            if path in apart or PASSED_OVER.fullmatch(name):
                continue
            if reason := _refusal(path):
                problems.append(Problem(_name(path, top), *reason))
            else:
                files.append(path)
    return files, problems


def _refusal(path):
    """Say what was found and what to do, where a file cannot be a hand-in; else None."""
    try:
        about = os.stat(path)
    except OSError as error:
        return f"it could not be read ({error.strerror})", UNLOCK
    ending = os.path.splitext(path)[1].lower()
    if not stat.S_ISREG(about.st_mode):
        return "it is a link to a folder, or no file at all", "Copy the hand-ins themselves here."
    if ending == ".ipynb":
        return "it is a notebook; answers are read from the answer log", ASK_AGAIN
    if ending in PACKED:
        return "it is packed", "Unpack it into this folder and mark once more."
    if about.st_size > LARGEST_FILE:
        size = about.st_size / 1e6
        return f"it has {size:.0f} MB (20 MB is the most), so it was not read", ASK_AGAIN
    return None


def _name(path, top):
    return plain(path[len(top) :].lstrip(os.sep) or ".", 200)


def group_by_id(files, folder):
    """Read the files and group them by the id of their first readable line.

    Parameters
    ----------
    files : iterable of str
    folder : Path
        Where they are, for their names in problems.

    Returns
    -------
    groups : dict
        From an id, spelt as it stands in the line, to a list of HandIn.
    problems : list of Problem
        Files without any readable line.
    """
    groups, problems, held = {}, [], 0
    top = os.path.abspath(folder)
    for path in files:
        name = _name(path, top)
        try:
            content = _content(path)
        except OSError as error:
            found = f"it could not be read ({error.strerror or error})"
            problems.append(Problem(name, found, UNLOCK))
            continue
        learner, refusal = _first_learner(content)
        if learner is None:
            problems.append(Problem(name, *refusal))
            continue
        hand_in = HandIn(path, name, learner, digest(content))
        if held + len(content) <= HELD:
            hand_in.content = content
            held += len(content)
        groups.setdefault(learner, []).append(hand_in)
    return groups, problems


def _content(path):
    with open(path, "rb") as handle:
        return handle.read()


def _first_learner(content):
    """Return the learner, or None with what was found instead and what to do."""
    refusal = None
    for number, row in enumerate(ROWS.finditer(as_utf_8(content))):
        if number == MOST_LINES:
            break
        try:
            return parse_row(row[0].strip()).learner, None
        except OtherFormat as error:
            refusal = f"no line in it could be read: {error}", OTHER_EDITION
        except ValueError:
            refusal = refusal or ("no line in it is from an answer log", LEFT_ASIDE)
    return None, refusal or ("it is empty", ASK_AGAIN)


def learners_named(problems, learners):
    """Return the learners whose ids stand in the names of files that could not be used."""
    ids = "|".join(sorted(map(re.escape, learners), key=len, reverse=True))
    whole_id = re.compile(rf"(?<![A-Z0-9])(?:{ids})(?![A-Z0-9])")
    found = (whole_id.search(problem.place.upper()) for problem in problems)
    return {match[0] for match in found if match}
