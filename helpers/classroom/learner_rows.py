"""The rows of the mark book: every hand-in of a folder marked afresh by the bank at hand.

Never trusts a recorded mark and never runs a learner's code. Must never know how a book is shown.
"""

from collections import Counter
from datetime import UTC, datetime
from pathlib import Path

from helpers.classroom import mark_book as states
from helpers.classroom import remarks
from helpers.classroom.hand_ins import find_files, group_by_id, learners_named
from helpers.classroom.ids import strangers_in
from helpers.classroom.mark_book import HandedIn, LearnerMarks, MarkBook, Turn
from helpers.classroom.one_log import Accepted, merge, put_together
from helpers.classroom.paper_log import BY_HAND, Paper
from helpers.classroom.problems import Problem, capped, counted, plain
from helpers.exercises.settings import CLASS_WORD
from helpers.exercises.standing import replay
from helpers.exercises.traces import CHECKPOINTS
from helpers.physics.mains import SUPPLIES

MOST_PROBLEMS = 20  # of one learner that are told one by one
MOST_TO_ONE = 1000  # answers to one question that are marked
MOST_CLASS_WORDS = 1000


def mark_room(
    folder,
    roster,
    class_word,
    lessons,
    apart=(),
    progress=iter,
    accept=(),
    paper=None,
    replies=False,
):
    """Mark every hand-in in a folder.

    Parameters
    ----------
    folder : Path
        Where the hand-ins are; folders inside it are read too.
    roster : Roster
        Who is in the class.
    class_word : str
        Answers given under another one are named, and not counted.
    lessons : tuple of Lesson
        The bank at hand.
    apart : collection of Path
        Files in the folder that are no hand-ins.
    progress : callable
        Takes the list of learners and yields them, perhaps showing how far it is.
    accept : sequence of str
        Hand-ins that count where several logs of one id have parted; and `BENCH-07:ohm-3` where
        paper counts instead of the screen.
    paper : PaperLog or None
        What was typed back from paper.
    replies : bool
        Whether the rows hold what the card says to the newest wrong answers.

    Returns
    -------
    book : MarkBook
        One row a learner: the roster first, then learners who are not on it.

    Raises
    ------
    Unusable
        If the folder cannot be read, or there is no such hand-in to accept.

    Notes
    -----
    One learner's lines are held at a time; only marks and states are kept.
    """
    book = MarkBook(class_word, lessons)
    files, unusable = find_files(folder, apart)
    # What JupyterLab copies when a file is opened there: hidden, and perhaps older than the file.
    files = [path for path in files if Path(path).parent.name != CHECKPOINTS]
    groups, problems = group_by_id(files, folder)
    unusable += problems
    typed = Paper(paper, accept)
    accepted = Accepted([name for name in accept if name not in typed.instead], groups)
    for learner in typed.lines:
        groups.setdefault(learner, [])
    strangers, problems = strangers_in(groups, roster)
    unusable += problems
    book.problems += unusable
    book.unusable, book.hand_ins = len(unusable), sum(map(len, groups.values()))
    unreadable = learners_named(unusable, roster.learners)
    marker = Marker(book, typed, replies)
    for learner in progress([*roster.learners, *strangers]):
        status = states.UNREADABLE if learner in unreadable else states.NOTHING
        ids = roster.ids(learner)
        if any(map(typed.lines.get, ids)):
            status = states.ON_PAPER
        if any(map(groups.get, ids)):
            status = states.HANDED_IN
        if learner in strangers:
            status = states.NOT_ON_ROSTER
        book.rows.append(marker.row(learner, status, ids, groups, accepted))
    book.problems += [*strangers.values(), *typed.in_words()]
    book.problems += marker.line_ids.in_words()
    return book


class Marker:
    """Marks one learner after another into a book."""

    def __init__(self, book, typed=None, replies=False):
        self.book, self.typed, self.replies = book, typed or Paper(None), replies
        self.known = {question.id for question in book.questions}
        self.names = {}
        self.line_ids = remarks.LineIds()
        self.now = datetime.now(UTC)

    def row(self, learner, status, ids, groups, accepted):
        """Return the row of a learner, whose hand-ins are taken out of the groups."""
        self.problems, self.odd = [], Counter()
        lines = self._lines(learner, ids, groups, accepted)
        row = self._marked(learner, status, lines)
        self.problems += remarks.in_words(learner, self.odd)
        self.problems.sort(key=lambda problem: problem.rank)
        self.book.problems += capped(self.problems, MOST_PROBLEMS, plain(learner, 40))
        return row

    def _lines(self, learner, ids, groups, accepted):
        logs = []
        for hand_ins in filter(None, [groups.pop(one, None) for one in ids]):
            log = put_together(hand_ins, accepted, ids)
            logs.append(log.lines)
            self.problems += log.problems
            self.odd += remarks.of_times(log.logs, self.now)
            self.odd[remarks.GAPS] += log.gaps
            read = [h for h in hand_ins if h.answers]
            self.book.handed_in += [HandedIn(h.name, learner, h.digest, h.answers) for h in read]
        lines, _, _ = merge(logs)
        self.line_ids.add(learner, lines)
        return self.typed.joined(learner, ids, lines, self.book.class_word, self.problems)

    def _marked(self, learner, status, lines):
        by_question, word = self._sorted_out(learner, lines), self.book.class_word
        counting = {
            name: own
            for name, lines in by_question.items()
            if (own := [line for line in lines if line["class_word"] == word])
        }
        if status in (states.HANDED_IN, states.ON_PAPER) and not counting:
            status = states.NOTHING_COUNTS
        marks, stands, replies = {}, {}, {}
        firsts, times, retried, earlier, turns = [], [], [], [], []
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
                turns += self._turns(question, standing)
            if standing and standing.tries:
                first, newest = _first_and_newest(standing)
                firsts += [question.id] if first.right else []
                if self.replies and not newest.right:
                    replies[question.id] = newest.danger, newest.reply
            times.append(own[-1]["at"])
            if question.danger and state == states.FULL and _cases(standing) > states.FEW_CASES:
                retried.append(question.id)
        if earlier:
            found = f"answered in an earlier edition, so without marks: {', '.join(earlier)}"
            self._problem(learner, found, "Ask for these again: the questions have changed since.")
        answers = sum(map(len, counting.values()))
        last, retried, turns = _day(max(times, default="")), tuple(retried), tuple(turns)
        paper = tuple(name for name in stands if BY_HAND in counting[name][-1])
        return LearnerMarks(
            learner,
            status,
            marks,
            stands,
            answers,
            last,
            retried,
            turns,
            tuple(firsts),
            paper,
            replies,
        )

    def _sorted_out(self, learner, lines):
        by_question, left_out = {}, Counter()
        word, known = self.book.class_word, self.known
        self._count_words({line["class_word"] for line in lines})
        for line in lines:
            if line["class_word"] != word:
                left_out[_OTHER_CLASS, line["class_word"]] += 1
            elif line["question"] not in known:
                left_out[_UNKNOWN, line["question"]] += 1
            elif line["supply"] not in SUPPLIES:
                left_out[_NO_SUPPLY, line["supply"]] += 1
            if line["question"] in known and line["supply"] in SUPPLIES:
                own = by_question.setdefault(line["question"], [])
                if len(own) < MOST_TO_ONE:
                    own.append(line)
                else:
                    left_out[_TOO_MANY, line["question"]] += 1
        for ((words, advice), name), count in left_out.items():
            found = f"{counted(count, 'answer')} {words} “{plain(name, 40)}”"
            self._problem(learner, found, advice)
        return by_question

    def _count_words(self, words):
        held = self.book.class_words
        for word in sorted(filter(CLASS_WORD.fullmatch, words)):
            if word in held or len(held) < MOST_CLASS_WORDS:
                held[word] += 1

    def _standing(self, question, learner, lines):
        try:
            standing = replay(question, lines, SUPPLIES, self.book.class_word)
        except (ArithmeticError, LookupError, TypeError, ValueError) as error:
            kind = f"{type(error).__name__}: {plain(str(error))}"
            found = f"{counted(len(lines), 'answer')} to {question.id} could not be marked ({kind})"
            self._problem(learner, found, "The question is at fault: tell who keeps the bank.")
            return None
        self.odd[remarks.SKIPPED] += 0 if BY_HAND in lines[-1] else standing.skipped
        if over := [line for line in lines if line["nudges"] > len(question.nudges)]:
            self.odd[remarks.NUDGES] += sum(line["edition"] == question.edition for line in over)
        if standing.later:
            found = f"{counted(standing.later, 'answer')} to {question.id} in a later edition of it"
            self._problem(learner, found, "Mark with the edition of the lessons that they have.")
        if standing.unread:
            found = f"{counted(standing.unread, 'answer')} to {question.id} could not be read"
            advice = "They count as nothing. Was the log written by another edition of the lessons?"
            self._problem(learner, found, advice)
        return standing

    def _turns(self, question, standing):
        """Return the wrong turns that count here."""
        draws = [draw for draw in standing.draws.values() if draw.class_word == standing.class_word]
        found = {}
        for draw in draws:
            for _, verdict in draw.tried.values():
                if not verdict.right:
                    name = self._name(question, verdict)
                    answers, danger = found.get(name, (0, False))
                    found[name] = answers + 1, danger or bool(verdict.danger)
        return [Turn(question.id, name, *count) for name, count in found.items()]

    def _name(self, question, verdict):
        """Return the name of a wrong turn: the slip's, or an option's text as first met."""
        if not verdict.slip:
            return states.DANGEROUS if verdict.danger else states.NO_KNOWN_TURN
        key = question.id, verdict.slip
        if key not in self.names:
            self.names[key] = verdict.turn or verdict.slip
        return self.names[key]

    def _problem(self, learner, found, advice):
        self.problems.append(Problem(plain(learner, 40), found, advice))


_OTHER_CLASS = (
    "under the class word",
    "They earn marks in that class only; what a worked answer told there counts as told. If it was "
    "mistyped, ask the learner to set the right one and to answer again: the numbers follow from "
    "it.",
)
_THEIR_EDITION = "Mark with the edition of the lessons that the learners have."
_UNKNOWN = ("to a question that this bank does not hold:", _THEIR_EDITION)
_NO_SUPPLY = ("on a supply that this bank does not know:", _THEIR_EDITION)
_TOO_MANY = (
    f"beyond the first {MOST_TO_ONE} to",
    "They are not marked. Ask how there came to be so many.",
)


def _cases(standing):
    """Return how many cases of a danger item were answered until the first that earned all."""
    right = [
        bool(draw.earned) and draw.first[1].right
        for draw in standing.draws.values()
        if draw.tried and draw.class_word == standing.class_word
    ]
    return right.index(True) + 1


def _first_and_newest(standing):
    """Return the verdicts on the first and on the newest answer under the class word."""
    draws = [draw for draw in standing.draws.values() if draw.class_word == standing.class_word]
    tried = [draw for draw in draws if draw.tried]
    return tried[0].first[1], tried[-1].last[1]


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
