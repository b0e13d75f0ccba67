"""The hand-ins of one id put together into one log: what goes on counts, what has parted is asked.

Knows rows and lines; must never know what an answer is worth.
"""

import os
import shlex
from collections import Counter
from dataclasses import dataclass, field
from heapq import merge as merge_sorted
from operator import attrgetter

from helpers.classroom.hand_ins import ASK_AGAIN, MOST_LOGS, UNLOCK
from helpers.classroom.problems import ASK, FINE, Problem
from helpers.exercises.answer_log import ROWS, parse_log
from helpers.exercises.hand_in import LARGEST_FILE, MOST_LINES
from helpers.exercises.refusals import Unusable, counted, few, plain
from helpers.exercises.whole_files import as_utf_8

MOST_NAMED, MOST_TOLD = 5, 3  # hand-ins in one sentence, and what was found in one of them
TOO_MANY = "Leave the newest of each machine in the folder, and mark once more."


@dataclass
class OneLog:
    """What was handed in under one id: the lines that count, and what there is to say of them.

    `logs` holds the lines of each log that counts, in its own order; `lines` all of them, once.
    """

    lines: list = field(default_factory=list)
    logs: list = field(default_factory=list)
    gaps: int = 0
    problems: list = field(default_factory=list)


@dataclass(eq=False)
class _Branch:
    """A log that no other one goes on from, with all the hand-ins that it holds."""

    content: bytes
    parsed: object
    hand_ins: list

    @property
    def name(self):
        return self.hand_ins[0].name


def accepted_paths(names, groups):
    """Return the paths of the hand-ins that count where several logs of one id have parted.

    Parameters
    ----------
    names : iterable of str
        What the instructor accepts: as the page names the files, or their paths.
    groups : dict
        All that was handed in, by id.

    Raises
    ------
    Unusable
        If there is no such hand-in.
    """
    paths = set()
    for name in names:
        named = {os.path.abspath(name), plain(name, 200)}
        hand_ins = [hand_in for group in groups.values() for hand_in in group]
        found = {hand_in.path for hand_in in hand_ins if {hand_in.path, hand_in.name} & named}
        if not found:
            raise Unusable(
                f"There is no hand-in {plain(name, 300)} to accept. Give its name as the page has "
                "it."
            )
        paths |= found
    return paths


def put_together(hand_ins, accepted, ids):
    """Read the hand-ins of one id and find the lines that count.

    Parameters
    ----------
    hand_ins : list of HandIn
        The files; each gets its number of answers.
    accepted : collection of str
        Paths of the hand-ins that the instructor accepts.
    ids : list of str
        All the ids of their learner; lines of somebody else are named and left out.

    Returns
    -------
    log : OneLog

    Notes
    -----
    A log that goes on from another one takes its place. Where several have parted, their common
    beginning counts, and of what follows only what is accepted.
    """
    log, learner = OneLog(), plain(hand_ins[0].learner, 40)
    if len(hand_ins) > MOST_LOGS:
        found = f"{len(hand_ins)} hand-ins have this id ({MOST_LOGS} are the most); none was read"
        log.problems.append(Problem(learner, found, TOO_MANY))
        return log
    branches = _branches(hand_ins, log.problems)
    counting = branches
    if len(branches) > 1:
        counting = [b for b in branches if any(one.path in accepted for one in b.hand_ins)]
        beginning = os.path.commonprefix([branch.content.split(b"\n") for branch in branches])
        log.problems.append(_parted(learner, branches, counting, len(beginning)))
        if not counting:
            parsed = parse_log(b"\n".join(beginning), MOST_LINES)
            counting = [_Branch(b"", parsed, branches[0].hand_ins)]
    for branch in counting:
        if branch.parsed.problems:
            found = few(branch.parsed.problems, MOST_TOLD, "; ", branch.parsed.unsaid)
            log.problems.append(Problem(branch.name, found, ASK_AGAIN))
        log.gaps = max(log.gaps, len(branch.parsed.gaps))
        log.logs.append(_own(ids, branch, log.problems))
    log.lines, repeated, clashes = merge(log.logs)
    log.problems += _about_repeats(learner, len(counting) < 2 and repeated, clashes)
    return log


def _branches(hand_ins, problems):
    """Read the files; return one branch for each log that no other one goes on from."""
    branches = []
    for hand_in in hand_ins:
        try:
            content = hand_in.read()
        except OSError as error:
            found = f"it could not be read ({error.strerror or error})"
            problems.append(Problem(hand_in.name, found, UNLOCK))
            continue
        parsed = parse_log(content, MOST_LINES)
        hand_in.answers = len(parsed.lines)
        if len(hand_ins) > 1:
            rows = (row[0].strip() for row in ROWS.finditer(as_utf_8(content)))
            content = b"\n".join(filter(None, rows))
        longer = [branch for branch in branches if branch.content.startswith(content)]
        if longer:
            if len(longer) == 1:
                longer[0].hand_ins.append(hand_in)
            continue
        shorter = [branch for branch in branches if content.startswith(branch.content)]
        others = [branch for branch in branches if branch not in shorter]
        if sum(len(branch.content) for branch in others) + len(content) > LARGEST_FILE:
            found = "the hand-ins of this id that differ have more than 20 MB; it does not count"
            problems.append(Problem(hand_in.name, found, TOO_MANY))
            continue
        held = [hand_in, *(one for branch in shorter for one in branch.hand_ins)]
        branches = [*others, _Branch(content, parsed, held)]
    return branches


def _parted(learner, branches, counting, same):
    """Say where logs of one id part, and how to count what follows."""
    names = [branch.name for branch in branches]
    shown = few(names, MOST_NAMED, " and ")
    ids = Counter(i for b in branches for i in {line.line for line in b.parsed.lines})
    if same:
        how = f"are the same for {counted(same, 'line')} and then part"
    elif any(count > 1 for count in ids.values()):
        how = "share lines, but not their beginning"
    else:
        how = "have no line in common"
    found = f"{len(branches)} hand-ins {how}: {shown}"
    if counting:
        taken = " and ".join(branch.name for branch in counting[:MOST_NAMED])
        return Problem(learner, f"{found}; accepted: {taken}", "Nothing to do.", FINE)
    rest = "what follows does" if same else "they do"
    advice = (
        "Is that one learner on two machines, or two learners with one id? Ask. Then paste each "
        "file that is to count into the box Decided, and mark again."
    )
    copied = tuple(map(shlex.quote, names))
    return Problem(learner, f"{found}; {rest} not count yet", advice, ASK, copied)


def _own(ids, branch, problems):
    """Return the lines of a learner; name those of others that stand between them."""
    own = [line for line in branch.parsed.lines if line.learner in ids]
    if len(own) < len(branch.parsed.lines):
        others = Counter(line.learner for line in branch.parsed.lines)
        for one in ids:
            del others[one]
        names = few(
            [f"{count} of {plain(other, 40)}" for other, count in others.items()], MOST_TOLD, "; "
        )
        found = f"between the lines of {ids[0]} are {others.total()} of others: {names}"
        advice = "They count for nobody. Ask each learner for a file of their own."
        problems.append(Problem(branch.name, found, advice))
    return own


def merge(logs):
    """Merge logs by line id; the order of the logs makes no difference.

    Parameters
    ----------
    logs : list of list of LogLine
        Lines of each log, in the order of its file, which is kept.

    Returns
    -------
    lines : list of LogLine
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
        ordered = merge_sorted(*sorted(logs), key=attrgetter("at", "line"))
    else:
        ordered = logs[0] if logs else []
    kept, repeated, clashes = {}, 0, 0
    for line in ordered:
        first = kept.setdefault(line.line, line)
        if first is not line:
            repeated += 1
            clashes += first != line
    return list(kept.values()), repeated, clashes


def _about_repeats(learner, repeated, clashes):
    if repeated:
        stands = "line stands" if repeated == 1 else "lines stand"
        found = f"{repeated} {stands} there twice; each counts once"
        yield Problem(learner, found, "Nothing to do.", FINE)
    if clashes:
        found = f"one line id stands for different answers ({clashes} left out); the first counts"
        advice = "A file was changed by hand or by a fault: ask how it came about."
        yield Problem(learner, found, advice, ASK)
