"""Hand-ins: find the files in a folder, group them by learner, read and merge their lines.

Knows files and lines; must never know what an answer is worth.
"""

import os
import re
import stat
from collections import Counter
from heapq import merge as merge_sorted
from io import BytesIO
from operator import itemgetter
from pathlib import Path

from helpers.classroom.files import ASK, FINE, LARGEST_FILE, Problem, Unusable, counted, plain
from helpers.exercises.answer_log import FIELDS, OtherFormat, parse_line, read_log
from helpers.exercises.whole_files import as_utf_8

ASK_AGAIN = "Ask for the file that hand_in() writes in the lesson: class word, id and date, .jsonl."
UNLOCK = "Make it readable, or copy it here again, and mark once more."
LEFT_ASIDE = "Take it out of the folder if it is nobody's answers. " + ASK_AGAIN
OTHER_EDITION = "Mark with the edition of these lessons that wrote it, probably a newer one."
PACKED = (".zip", ".7z", ".gz", ".tar", ".rar", ".xz")
PASSED_OVER = re.compile(  # what systems leave behind, and mark books of ours
    r"\.ds_store|\._.*|thumbs\.db|desktop\.ini|mark-book.*\.(csv|html)", re.IGNORECASE
)


def find_files(folder, apart=()):
    """List the hand-ins in a folder and in the folders inside it.

    Parameters
    ----------
    folder : Path
        Where the hand-ins are.
    apart : collection of Path
        Files that belong to the marking itself (the roster): passed over, as mark books are.

    Returns
    -------
    files : list of Path
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
    files, problems = [], []

    def unreadable(error):
        place = _name(Path(error.filename), folder)
        problems.append(Problem(place, f"the folder could not be read ({error.strerror})", UNLOCK))

    for here, subfolders, names in os.walk(folder, onerror=unreadable):
        subfolders.sort()
        links = [name for name in subfolders if os.path.islink(os.path.join(here, name))]
        for name in sorted(names + links):
            path = Path(here, name)
            if os.path.abspath(path) in apart or PASSED_OVER.fullmatch(name):
                continue
            if reason := _refusal(path):
                problems.append(Problem(_name(path, folder), *reason))
            else:
                files.append(path)
    return files, problems


def _refusal(path):
    """Say what was found and what to do, where a file cannot be a hand-in; else None."""
    try:
        about = os.stat(path)
    except OSError as error:
        return f"it could not be read ({error.strerror})", UNLOCK
    ending = path.suffix.lower()
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


def _name(path, folder):
    return plain(str(path.relative_to(folder)), 200)


def group_by_learner(files, folder):
    """Group files by the learner of their first readable line, in upper case.

    Parameters
    ----------
    files : iterable of Path
    folder : Path
        Where they are, for their names in problems.

    Returns
    -------
    groups : dict
        From learner id to a list of files.
    problems : list of Problem
        Files without any readable line.
    """
    groups, problems = {}, []
    for path in files:
        try:
            learner, refusal = _first_learner(path)
        except OSError as error:
            learner, refusal = None, (f"it could not be read ({error.strerror or error})", UNLOCK)
        if learner is None:
            problems.append(Problem(_name(path, folder), *refusal))
        else:
            groups.setdefault(learner, []).append(path)
    return groups, problems


def _first_learner(path):
    """Return the learner, or None with what was found instead and what to do."""
    refusal = None
    for row in BytesIO(as_utf_8(path.read_bytes())):
        try:
            return parse_line(row.decode("utf-8").strip())["learner"].upper(), None
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


def read_learner(learner, paths, folder):
    """Read all the hand-ins of one learner and merge them.

    Parameters
    ----------
    learner : str
        Whose lines are wanted; lines of somebody else are named and left out.
    paths : list of Path
        The files.
    folder : Path
        Where they are, for their names in problems.

    Returns
    -------
    lines : list of dict
        Each attempt once, oldest first.
    problems : list of Problem
        What could not be read, and how hand-ins were merged.
    """
    logs, problems = {}, []
    for path in paths:
        name = _name(path, folder)
        try:
            lines, damage = read_log(path)
        except OSError as error:
            found = f"it could not be read ({error.strerror or error})"
            problems.append(Problem(name, found, UNLOCK))
            continue
        if damage or not lines:
            found = _shortened(damage) or "nothing is left in it"
            problems.append(Problem(name, found, ASK_AGAIN))
        own = [line for line in lines if line["learner"].upper() == learner]
        if len(own) < len(lines):
            problems.append(Problem(name, *_of_others(lines, learner)))
        logs[name] = own
    lines, repeated, clashes = merge(list(logs.values()))
    problems += _about_merging(learner, logs, len(lines), repeated, clashes)
    return lines, problems


def merge(logs):
    """Merge logs of one learner by line id; the order of the logs makes no difference.

    Parameters
    ----------
    logs : list of list of dict
        Lines of each log, in the order of its file, which is kept.

    Returns
    -------
    lines : list of dict
        Each line id once.
    repeated : int
        How many lines were left out because they stand elsewhere too [-].
    clashes : int
        How many of these say something else than the line that was kept [-].

    Notes
    -----
    Between two logs the earlier time goes first. Within one the order of the file stands, even
    where a clock was set back, because the learner's own card counted in that order.
    """
    if len(logs) > 1:
        in_full = itemgetter(*FIELDS)
        logs = sorted(logs, key=lambda lines: [in_full(line) for line in lines])
        ordered = merge_sorted(*logs, key=itemgetter("at", "line"))
    else:
        ordered = logs[0] if logs else []
    kept, repeated, clashes = {}, 0, 0
    for line in ordered:
        first = kept.setdefault(line["line"], line)
        if first is not line:
            repeated += 1
            clashes += first != line
    return list(kept.values()), repeated, clashes


def _about_merging(learner, logs, lines, repeated, clashes):
    who, files = plain(learner, 40), len(logs)
    strangers = _sharing_no_line(logs) if files > 1 else []
    if len(strangers) > 1:
        found = f"{len(strangers)} hand-ins have no line in common: {' and '.join(strangers)}"
        advice = "Is that one learner on two machines, or two learners with one id? Ask."
        yield Problem(who, found, advice, ASK)
    elif files > 1 or repeated:
        what = f"{files} hand-ins were merged" if files > 1 else "lines stand there twice"
        found = f"{what}: {counted(lines, 'line')}, and {repeated} repeated left out"
        yield Problem(who, found, "Nothing to do; each answer counts once.", FINE)
    if clashes:
        found = f"one line id stands for different answers ({clashes} left out); the first counts"
        advice = "The log was changed by hand or by a fault: ask how it came about."
        yield Problem(who, found, advice, ASK)


def _sharing_no_line(logs):
    """Return the name of one log of each group whose lines stand in no other group."""
    groups = []
    for name, lines in logs.items():
        ids = {line["line"] for line in lines}
        joined = [group for group in groups if group[1] & ids]
        groups = [group for group in groups if group not in joined]
        if ids:
            groups.append((name, ids.union(*(others for _, others in joined))))
    return [name for name, _ in groups]


def _shortened(sentences, most=3):
    rest = len(sentences) - most
    return "; ".join(sentences[:most]) + (f"; and {rest} more like this" if rest > 0 else "")


def _of_others(lines, learner):
    others = Counter(line["learner"] for line in lines if line["learner"] != learner)
    names = _shortened([f"{count} of {plain(other, 40)}" for other, count in others.items()])
    found = f"between the lines of {plain(learner, 40)} are {others.total()} of others: {names}"
    return found, "They count for nobody. Ask each learner for a file of their own."
