"""What an honest log never does: counted for each learner, asked about kindly, never judged.

Knows lines, ids and what a replay tells; takes away no marks.
"""

from collections import Counter
from datetime import UTC, datetime, timedelta
from hashlib import blake2b

from helpers.classroom.problems import ASK, Problem
from helpers.exercises.refusals import few, plain

MOST_A_SECOND = 30  # answers: more than a lesson asks, since all its cells may run at once
CLOCK_SLACK = timedelta(hours=1)  # for a clock that is put right, or runs ahead
MOST_NAMED = 3  # other learners in one remark
ASK_HOW = "All of it counts. Ask how it came about."

GAPS, BACK, AHEAD, UNDATED, PACE, NUDGES, SKIPPED = range(7)
WORDS = {  # for one, for more, and what may explain it
    GAPS: ("line does", "lines do", "not follow from the line before: some may be missing", ""),
    BACK: ("time", "times", "the clock went back by more than an hour", "Was it set? "),
    AHEAD: ("answer is", "answers are", "dated in the future", "Was a clock wrong? "),
    UNDATED: ("answer has", "answers have", "no date that can be read", ""),
    PACE: ("second holds", "seconds hold", f"more than {MOST_A_SECOND} answers", ""),
    NUDGES: ("answer was", "answers were", "given after more nudges than the question has", ""),
    SKIPPED: ("draw was", "draws were", "answered before the one before it was finished", ""),
}


def of_times(logs, now):
    """Count what is odd about the times of logs.

    Parameters
    ----------
    logs : iterable of list of LogLine
        Lines in the order of their log.
    now : datetime
        When they are marked, with its zone.

    Returns
    -------
    odd : Counter
        By kind: BACK, AHEAD, UNDATED and PACE.
    """
    odd = Counter()
    latest = now + CLOCK_SLACK
    for lines in logs:
        before = None
        for line in lines:
            at = _time(line.at)
            if at is None:
                odd[UNDATED] += 1
                continue
            if at > latest:
                odd[AHEAD] += 1
            if before is not None and before - at > CLOCK_SLACK:
                odd[BACK] += 1
            before = at
        if len(lines) > MOST_A_SECOND:
            seconds = Counter(line.at[:19] for line in lines)
            odd[PACE] += sum(count > MOST_A_SECOND for count in seconds.values())
    return odd


def _time(text):
    try:
        at = datetime.fromisoformat(text)
    except ValueError:
        return None
    return at if at.tzinfo else at.replace(tzinfo=UTC)


def in_words(learner, odd):
    """Yield one problem for each kind of oddity of a learner, with its count."""
    for kind, count in odd.items():
        if count:
            one, more, said, perhaps = WORDS[kind]
            found = f"{count} {one if count == 1 else more} {said}"
            yield Problem(plain(learner, 40), found, perhaps + ASK_HOW, ASK)


def marks_of(lines):
    """Return 64 bits of the id of each line, so that long ones take no room."""
    return [
        blake2b(line.line.encode("utf-8", "surrogatepass"), digest_size=8).digest()
        for line in lines
    ]


def of_shared_lines(marks):
    """Yield one problem for each learner whose line ids stand under others too.

    Parameters
    ----------
    marks : dict
        From each learner to the marks of their lines, by `marks_of`.
    """
    whose, shared = {}, {}
    for learner, own in marks.items():
        for mark in own:
            first = whose.setdefault(mark, learner)
            if first != learner:
                shared.setdefault(first, Counter())[learner] += 1
                shared.setdefault(learner, Counter())[first] += 1
    for learner, others in shared.items():
        count, names = others.total(), few([plain(name, 40) for name in others], MOST_NAMED)
        found = f"{count} {'line stands' if count == 1 else 'lines stand'} under {names} too"
        yield Problem(plain(learner, 40), found, "Do two use one file? " + ASK_HOW, ASK)
