"""The row of one learner in the mark book: what was handed in, marked afresh by the bank at hand.

Never trusts a recorded mark and never runs a learner's code. Must never know how a book is shown.
"""

from collections import Counter
from dataclasses import dataclass, field
from datetime import UTC, datetime

from helpers.classroom import mark_book as states
from helpers.classroom import remarks
from helpers.classroom.mark_book import HandedIn, LearnerMarks, installed
from helpers.classroom.one_log import merge, put_together
from helpers.classroom.paper_log import Paper
from helpers.classroom.problems import Problem, capped, counted, plain
from helpers.exercises.standing import replay
from helpers.physics.mains import SUPPLIES

MOST_PROBLEMS = 20  # of one learner that are told one by one
MOST_TO_ONE = 1000  # answers to one question that are marked


@dataclass
class Shown:
    """What the hand-ins of one learner came to; it knows of nobody else.

    `turns` has (question, slip, name, danger) for each wrong answer, `line_ids` a mark of each
    line, `doubles` the questions that screen and paper both answer where paper was accepted.
    """

    learner: str
    row: LearnerMarks | None = None
    turns: list = field(default_factory=list)
    problems: list = field(default_factory=list)
    odd: Counter = field(default_factory=Counter)
    handed_in: list = field(default_factory=list)
    words: set = field(default_factory=set)
    line_ids: list = field(default_factory=list)
    doubles: set = field(default_factory=set)


class Marker:
    """Marks one learner after another, as `helpers.classroom.room.mark_room` is told to."""

    def __init__(self, class_word, lessons=None, typed=None, accepted=(), replies=False):
        self.class_word, self.accepted, self.replies = class_word, accepted, replies
        self.typed = typed or Paper(None)
        self.questions = [q for lesson in lessons or installed() for q in lesson.questions]
        self.known = {question.id for question in self.questions}
        self.now = datetime.now(UTC)

    def __call__(self, learner, status, ids, logs):
        """Return what a learner has shown, of the hand-ins of each of their ids."""
        self.shown = Shown(learner)
        lines = self._lines(learner, ids, logs)
        self.shown.row = self._marked(learner, status, lines)
        problems = [*self.shown.problems, *remarks.in_words(learner, self.shown.odd)]
        problems.sort(key=lambda problem: problem.rank)
        self.shown.problems = capped(problems, MOST_PROBLEMS, plain(learner, 40))
        return self.shown

    def _lines(self, learner, ids, groups):
        shown, logs = self.shown, []
        for hand_ins in groups:
            log = put_together(hand_ins, self.accepted, ids)
            logs.append(log.lines)
            shown.problems += log.problems
            shown.odd += remarks.of_times(log.logs, self.now)
            shown.odd[remarks.GAPS] += log.gaps
            read = [h for h in hand_ins if h.answers]
            shown.handed_in += [HandedIn(h.name, learner, h.digest, h.answers) for h in read]
        lines, _, _ = merge(logs)
        shown.line_ids = remarks.marks_of(lines)
        lines, doubles = self.typed.joined(learner, ids, lines, self.class_word, shown.problems)
        shown.doubles = doubles
        return lines

    def _marked(self, learner, status, lines):
        by_question, word = self._sorted_out(learner, lines), self.class_word
        counting = {
            name: own
            for name, lines in by_question.items()
            if (own := [line for line in lines if line.class_word == word])
        }
        if status in (states.HANDED_IN, states.ON_PAPER) and not counting:
            status = states.NOTHING_COUNTS
        marks, stands, replies = {}, {}, {}
        firsts, times, retried, earlier = [], [], [], []
        for question in self.questions:
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
                self.shown.turns += _turns(question, standing)
            if standing and standing.tries:
                first, newest = _first_and_newest(standing)
                firsts += [question.id] if first.right else []
                if self.replies and not newest.right:
                    replies[question.id] = newest.danger, newest.reply
            times.append(own[-1].at)
            if question.danger and state == states.FULL and _cases(standing) > states.FEW_CASES:
                retried.append(question.id)
        if earlier:
            found = f"answered in an earlier edition, so without marks: {', '.join(earlier)}"
            self._problem(learner, found, "Ask for these again: the questions have changed since.")
        answers = sum(map(len, counting.values()))
        last, retried = _day(max(times, default="")), tuple(retried)
        paper = tuple(name for name in stands if counting[name][-1].by_hand)
        told = status, marks, stands, answers, last, retried
        return LearnerMarks(learner, *told, firsts=tuple(firsts), paper=paper, replies=replies)

    def _sorted_out(self, learner, lines):
        by_question, left_out = {}, Counter()
        word, known = self.class_word, self.known
        self.shown.words = {line.class_word for line in lines}
        for line in lines:
            if line.class_word != word:
                left_out[_OTHER_CLASS, line.class_word] += 1
            elif line.question not in known:
                left_out[_UNKNOWN, line.question] += 1
            elif line.supply not in SUPPLIES:
                left_out[_NO_SUPPLY, line.supply] += 1
            if line.question in known and line.supply in SUPPLIES:
                own = by_question.setdefault(line.question, [])
                if len(own) < MOST_TO_ONE:
                    own.append(line)
                else:
                    left_out[_TOO_MANY, line.question] += 1
        for ((words, advice), name), count in left_out.items():
            found = f"{counted(count, 'answer')} {words} “{plain(name, 40)}”"
            self._problem(learner, found, advice)
        return by_question

    def _standing(self, question, learner, lines):
        try:
            standing = replay(question, lines, SUPPLIES, self.class_word)
        except (ArithmeticError, LookupError, TypeError, ValueError) as error:
            kind = f"{type(error).__name__}: {plain(str(error))}"
            found = f"{counted(len(lines), 'answer')} to {question.id} could not be marked ({kind})"
            self._problem(learner, found, "The question is at fault: tell who keeps the bank.")
            return None
        self.shown.odd[remarks.SKIPPED] += 0 if lines[-1].by_hand else standing.skipped
        if over := [line for line in lines if line.nudges > len(question.nudges)]:
            self.shown.odd[remarks.NUDGES] += sum(line.edition == question.edition for line in over)
        if standing.later:
            found = f"{counted(standing.later, 'answer')} to {question.id} in a later edition of it"
            self._problem(learner, found, "Mark with the edition of the lessons that they have.")
        if standing.unread:
            found = f"{counted(standing.unread, 'answer')} to {question.id} could not be read"
            advice = "They count as nothing. Was the log written by another edition of the lessons?"
            self._problem(learner, found, advice)
        return standing

    def _problem(self, learner, found, advice):
        self.shown.problems.append(Problem(plain(learner, 40), found, advice))


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


def _turns(question, standing):
    """Yield the wrong turns that count here: question, slip, name and whether it could hurt.

    The name is that of the slip, or an option's text.
    """
    draws = [draw for draw in standing.draws.values() if draw.class_word == standing.class_word]
    for _, verdict in [tried for draw in draws for tried in draw.tried.values()]:
        if not verdict.right:
            unnamed = states.DANGEROUS if verdict.danger else states.NO_KNOWN_TURN
            name = (verdict.turn or verdict.slip) if verdict.slip else unnamed
            yield question.id, verdict.slip, name, bool(verdict.danger)


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
