"""The marker: every hand-in of a folder marked afresh by the bank at hand, into a mark book.

Never trusts a recorded mark and never runs a learner's code. Must never know how a book is shown.
"""

from collections import Counter
from datetime import datetime
from textwrap import shorten

from helpers.classroom import mark_book as states
from helpers.classroom.files import ASK, Problem, counted, plain
from helpers.classroom.hand_ins import (
    find_files,
    group_by_learner,
    learners_named,
    read_learner,
)
from helpers.classroom.mark_book import LearnerMarks, MarkBook, SlipCount
from helpers.exercises.standing import replay
from helpers.physics.mains import SUPPLIES

DANGEROUS = "would be dangerous if built"
LONGEST_TURN = 70


def mark_room(folder, learners, class_word, lessons, apart=(), progress=iter):
    """Mark every hand-in in a folder.

    Parameters
    ----------
    folder : Path
        Where the hand-ins are; folders inside it are read too.
    learners : list of str
        The roster.
    class_word : str
        Answers given under another one are named, and not counted.
    lessons : tuple of Lesson
        The bank at hand.
    apart : collection of Path
        Files in the folder that are no hand-ins.
    progress : callable
        Takes the list of learners and yields them, perhaps showing how far it is.

    Returns
    -------
    book : MarkBook
        One row a learner: the roster first, then learners who are not on it.

    Raises
    ------
    Unusable
        If the folder cannot be read.

    Notes
    -----
    One learner's lines are held at a time; only marks and states are kept.
    """
    book = MarkBook(class_word, lessons)
    files, book.problems = find_files(folder, apart)
    groups, problems = group_by_learner(files, folder)
    book.problems += problems
    book.unusable, book.hand_ins = len(book.problems), len(files) - len(problems)
    unreadable = learners_named(book.problems, learners)
    on_roster = set(learners)
    strangers = sorted(learner for learner in groups if learner not in on_roster)
    marker = _Marker(book)
    for learner in progress([*learners, *strangers]):
        lines, problems = read_learner(learner, groups.get(learner, []), folder)
        book.problems += problems
        status = states.UNREADABLE if learner in unreadable else states.NOTHING
        if learner in groups:
            status = states.HANDED_IN
        if learner not in on_roster:
            status = states.NOT_ON_ROSTER
            book.problems.append(_stranger(learner))
        book.rows.append(marker.row(learner, status, lines))
    return book


class _Marker:
    """Marks one learner after another into a book."""

    def __init__(self, book):
        self.book = book
        self.known = {question.id for question in book.questions}

    def row(self, learner, status, lines):
        by_question = self._sorted_out(learner, lines)
        counting = {
            name: own for name, lines in by_question.items() if (own := self._under_the_word(lines))
        }
        if status == states.HANDED_IN and not counting:
            status = states.NOTHING_COUNTS
        marks, stands, times, retried, earlier = {}, {}, [], [], []
        for question in self.book.questions:
            if not (own := counting.get(question.id)):
                continue
            standing = self._standing(question, learner, by_question[question.id])
            state = _state(question, standing) if standing else states.BROKEN
            if state == states.BLANK:
                continue
            if state == states.EARLIER:
                earlier.append(question.id)
            stands[question.id] = state
            if standing and state != states.KEPT:
                marks[question.id] = standing.marks
            times.append(own[-1]["at"])
            if question.danger and state == states.FULL and _cases(standing) > states.FEW_CASES:
                retried.append(question.id)
        if earlier:
            found = f"answered in an earlier edition, so without marks: {', '.join(earlier)}"
            self._problem(learner, found, "Ask for these again: the questions have changed since.")
        answers = sum(map(len, counting.values()))
        last = _day(max(times, default=""))
        return LearnerMarks(learner, status, marks, stands, answers, last, tuple(retried))

    def _under_the_word(self, lines):
        return [line for line in lines if line["class_word"] == self.book.class_word]

    def _sorted_out(self, learner, lines):
        by_question, left_out = {}, Counter()
        word, known = self.book.class_word, self.known
        self.book.class_words.update(sorted({line["class_word"] for line in lines}))
        for line in lines:
            if line["class_word"] != word:
                left_out[_OTHER_CLASS, line["class_word"]] += 1
            elif line["question"] not in known:
                left_out[_UNKNOWN, line["question"]] += 1
            elif line["supply"] not in SUPPLIES:
                left_out[_NO_SUPPLY, line["supply"]] += 1
            if line["question"] in known and line["supply"] in SUPPLIES:
                by_question.setdefault(line["question"], []).append(line)
        for ((words, advice), name), count in left_out.items():
            self._problem(
                learner, f"{counted(count, 'answer')} {words} “{plain(name, 40)}”", advice
            )
        return by_question

    def _standing(self, question, learner, lines):
        try:
            standing = replay(question, lines, SUPPLIES, self.book.class_word)
        except (ArithmeticError, LookupError, TypeError, ValueError) as error:
            kind = f"{type(error).__name__}: {plain(str(error))}"
            found = f"{counted(len(lines), 'answer')} to {question.id} could not be marked ({kind})"
            self._problem(learner, found, "The question is at fault: tell who keeps the bank.")
            return None
        if standing.later:
            found = f"{counted(standing.later, 'answer')} to {question.id} in a later edition of it"
            self._problem(learner, found, "Mark with the edition of the lessons that they have.")
        if standing.unread:
            found = f"{counted(standing.unread, 'answer')} to {question.id} could not be read"
            advice = "They count as nothing. Was the log written by another edition of the lessons?"
            self._problem(learner, found, advice)
        if question.role != "predict":
            self._count_slips(question, standing)
        return standing

    def _count_slips(self, question, standing):
        seen = set()
        draws = [d for d in standing.draws.values() if d.class_word == standing.class_word]
        for draw in draws:
            for _, verdict in draw.tried.values():
                if verdict.right:
                    continue
                key = (
                    question.id,
                    verdict.slip or (verdict.danger and DANGEROUS) or states.NO_KNOWN_TURN,
                )
                count = self.book.slips.get(key)
                if count is None:
                    text = _in_words(question.kind, verdict.slip, draw.numbers) or key[1]
                    count = self.book.slips[key] = SlipCount(text)
                count.answers += 1
                count.learners += key not in seen
                count.danger = count.danger or bool(verdict.danger)
                seen.add(key)
        first = next((draw.first for draw in draws if draw.first), None)
        self.book.first_right[question.id] += bool(first and first[1].right)

    def _problem(self, learner, found, advice):
        self.book.problems.append(Problem(plain(learner, 40), found, advice))


_OTHER_CLASS = (
    "under the class word",
    "They earn marks in that class only; what a worked answer told there counts as told. If it was "
    "mistyped, ask the learner to set the right one and to answer again: the numbers follow from "
    "it.",
)
_UNKNOWN = (
    "to a question that this bank does not hold:",
    "Mark with the edition of the lessons that the learners have.",
)
_NO_SUPPLY = (
    "on a supply that this bank does not know:",
    "Mark with the edition of the lessons that the learners have.",
)


def _in_words(kind, slip, numbers):
    return slip and shorten(kind.slip_in_words(slip, numbers), LONGEST_TURN, placeholder=" …")


def _cases(standing):
    """Return how many cases of a danger item were answered until the first that earned all."""
    right = [
        bool(draw.earned) and draw.first[1].right
        for draw in standing.draws.values()
        if draw.tried and draw.class_word == standing.class_word
    ]
    return right.index(True) + 1


def _day(at):
    """Return the day of a time in a log, on this machine's calendar; '' if it is no time."""
    try:
        return datetime.fromisoformat(at).astimezone().date().isoformat()
    except (ValueError, OverflowError, OSError):
        return ""


def _state(question, standing):
    if not standing.tries:
        return states.EARLIER if standing.earlier else states.BLANK
    if question.role == "predict":
        return states.KEPT
    if standing.share == 1.0:
        return states.FULL
    if question.danger:
        return states.DANGER
    if standing.helped:
        return states.REPAIRED if standing.right_after_help else states.HELPED
    return states.PART if standing.share else states.NONE


def _stranger(learner):
    return Problem(
        plain(learner, 40),
        "this learner is not on the roster; the answers are marked all the same",
        "Add the id to the roster if it belongs to the class, or ask who used it.",
        ASK,
    )
