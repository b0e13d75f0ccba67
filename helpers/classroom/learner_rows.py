"""The row of one learner in the mark book: what was handed in, marked afresh by the bank at hand.

Never trusts a recorded mark and never runs a learner's code. Must never know how a book is shown.
"""

from collections import Counter
from contextlib import suppress
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime

from helpers.classroom import mark_book as states
from helpers.classroom import remarks
from helpers.classroom.mark_book import LearnerMarks, lessons_of
from helpers.classroom.one_log import merge, put_together
from helpers.classroom.paper_log import Paper
from helpers.classroom.problems import Problem, capped
from helpers.exercises.refusals import counted, plain
from helpers.exercises.standing import replay
from helpers.physics.mains import SUPPLIES

MOST_PROBLEMS = 20  # of one learner that are told one by one
MOST_TO_ONE = 1000  # answers to one question that are marked


@dataclass
class Shown:
    """What the hand-ins of one learner came to; it knows of nobody else.

    `turns` has (question, slip, name, what was answered if it could hurt) for each wrong answer,
    `line_ids` a mark of each line, `doubles` what was decided where screen and paper both answer.
    """

    row: LearnerMarks
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
        self.questions = [q for lesson in lessons or lessons_of() for q in lesson.questions]
        self.known = {question.id: question for question in self.questions}
        self.now = datetime.now(UTC)

    def __call__(self, learner, status, ids, logs):
        """Return what a learner has shown, of the hand-ins of each of their ids."""
        self.shown = shown = Shown(LearnerMarks(learner, status))
        self._mark(self._lines(learner, ids, logs))
        problems = [*shown.problems, *remarks.in_words(learner, shown.odd)]
        problems.sort(key=lambda problem: problem.rank)
        shown.problems = capped(problems, MOST_PROBLEMS, plain(learner, 40))
        return shown

    def _lines(self, learner, ids, groups):
        shown, logs = self.shown, []
        for hand_ins in groups:
            log = put_together(hand_ins, self.accepted, ids)
            logs.append(log.lines)
            shown.problems += log.problems
            shown.odd += remarks.of_times(log.logs, self.now)
            shown.odd[remarks.GAPS] += log.gaps
            shown.handed_in += [replace(one, learner=learner) for one in hand_ins if one.answers]
        lines, _, _ = merge(logs)
        shown.line_ids = remarks.marks_of(lines)
        lines, shown.doubles = self.typed.joined(
            learner, ids, lines, self.class_word, shown.problems, self._worth
        )
        return lines

    def _mark(self, lines):
        """Fill in the row of a learner, question by question."""
        row, by_question, last = self.shown.row, self._sorted_out(lines), ""
        for question in self.questions:
            lines = by_question.get(question.id, ())
            if not (own := [line for line in lines if line.class_word == self.class_word]):
                continue
            row.answers += len(own)
            standing = self._standing(question, lines)
            state = _state(question, standing)
            if state == states.BLANK:
                continue
            row.states[question.id] = state
            last = max(last, own[-1].at)
            if self.replies:
                row.typed[question.id] = own[-1].answer
            if own[-1].by_hand:
                row.paper.append(question.id)
                row.asked |= {question.id: own[-1]} if self.replies else {}
            if standing and state != states.KEPT:
                row.marks[question.id] = standing.marks
                self.shown.turns += _turns(question, standing)
            if standing and standing.tries:
                self._told(question, state, standing)
        if row.status in (states.HANDED_IN, states.ON_PAPER) and not row.answers:
            row.status = states.NOTHING_COUNTS
        if earlier := [name for name, state in row.states.items() if state == states.EARLIER]:
            found = f"{states.EARLIER}, so without marks: {', '.join(earlier)}"
            self._problem(found, "Ask for these again: the questions have changed since.")
        row.last = _day(last)

    def _told(self, question, state, standing):
        """Note what is told of the first answer, the newest, and how many cases it took."""
        row, draws = self.shown.row, _tried(standing)
        draw = next((one for one in draws if one is standing.last_tried), draws[-1])
        answer, newest = draw.last
        if draws[0].first[1].right:
            row.firsts.append(question.id)
        if self.replies:
            row.typed[question.id] = _as_given(question, draw, answer)
        if self.replies and not newest.right:
            row.replies[question.id] = newest.danger, newest.reply
        if question.danger and state == states.FULL and _cases(draws) > states.FEW_CASES:
            row.retried.append(question.id)
        hurt = any(verdict.danger for one in draws for _, verdict in one.tried.values())
        if hurt and newest.right and state not in (states.DANGER, states.HELPED):
            row.mended.append(question.id)

    def _sorted_out(self, lines):
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
            self._problem(found, advice)
        return by_question

    def _standing(self, question, lines):
        try:
            standing = replay(question, lines, SUPPLIES, self.class_word)
        except (ArithmeticError, LookupError, TypeError, ValueError) as error:
            kind = f"{type(error).__name__}: {plain(str(error))}"
            found = f"{counted(len(lines), 'answer')} to {question.id} could not be marked ({kind})"
            self._problem(found, "The question is at fault: tell who keeps the bank.")
            return None
        self.shown.odd[remarks.SKIPPED] += 0 if lines[-1].by_hand else standing.skipped
        if over := [line for line in lines if line.nudges > len(question.nudges)]:
            self.shown.odd[remarks.NUDGES] += sum(line.edition == question.edition for line in over)
        if standing.later:
            found = f"{counted(standing.later, 'answer')} to {question.id} in a later edition of it"
            self._problem(found, "Mark with the edition of the lessons that they have.")
        if standing.unread:
            found = f"{counted(standing.unread, 'answer')} to {question.id} could not be read"
            advice = "They count as nothing. Was the log written by another edition of the lessons?"
            self._problem(found, advice)
        return standing

    def _worth(self, name, lines):
        """Return what lines to one question come to: marks, and what in them could hurt."""
        question = self.known.get(name)
        if not question or question.role == "predict":
            return None
        with suppress(ArithmeticError, LookupError, TypeError, ValueError):  # named when marked
            standing = replay(question, lines[:MOST_TO_ONE], SUPPLIES, self.class_word)
            return standing.marks, {danger for *_, danger in _turns(question, standing)}

    def _problem(self, found, advice):
        self.shown.problems.append(Problem(plain(self.shown.row.learner, 40), found, advice))


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


def _tried(standing):
    """Return the draws under the class word that have an answer, in their order."""
    draws = standing.draws.values()
    return [draw for draw in draws if draw.tried and draw.class_word == standing.class_word]


def _cases(draws):
    """Return how many cases of a danger item were answered until the first that earned all."""
    right = [bool(draw.earned) and draw.first[1].right for draw in draws]
    return right.index(True) + 1


def _turns(question, standing):
    """Yield the wrong turns that count here: question, slip, name, and the answer if it could hurt.

    The name is that of the slip, or an option's text.
    """
    for draw in _tried(standing):
        for answer, verdict in draw.tried.values():
            if verdict.right:
                continue
            unnamed = states.DANGEROUS if verdict.danger else states.NO_KNOWN_TURN
            name = (verdict.turn or verdict.slip) if verdict.slip else unnamed
            danger = verdict.danger and _answered(question, draw.numbers, answer, name)
            yield question.id, verdict.slip, name, danger


def _as_given(question, draw, answer):
    """Return the newest answer as typed, a letter with the words of its option."""
    listed = question.kind.listed(draw.numbers)
    return question.kind.said(answer, draw.numbers) if listed else draw.typed[-1]


def _answered(question, numbers, answer, name):
    """Say what was answered: an option's words, or a value and its slip if that is known."""
    if question.kind.listed(numbers):
        return name
    said = question.kind.said(answer, numbers)
    return said if name == states.DANGEROUS else f"{said}: {name}"


def _day(at):
    """Return the day of a time in a log, on this machine's calendar; '' if it is no time."""
    try:
        return datetime.fromisoformat(at).astimezone().date().isoformat()
    except (ValueError, OverflowError, OSError):
        return ""


def _state(question, standing):
    if not standing:
        return states.BROKEN
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
