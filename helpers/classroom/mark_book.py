"""The mark book: one row a learner, the slips of the class, and what could not be used.

Knows what stands in it and how it adds up. Must never know how it came about or how it is shown.
"""

from collections import Counter
from dataclasses import dataclass, field
from typing import NamedTuple

from helpers.exercises import bank
from helpers.exercises.refusals import counted, few, plain
from helpers.exercises.standing import PASS_PERCENT, passed

HANDED_IN = "handed in"
ON_PAPER = "on paper"
UNREADABLE = "handed in a file that could not be read"
NOTHING = "nothing handed in"
NOTHING_COUNTS = "handed in, nothing in it counts"
NOT_ON_ROSTER = "not on the roster"
WITHOUT_MARKS = (UNREADABLE, NOTHING, NOTHING_COUNTS)

FULL = "full marks"
PART = "part of the marks"
NONE = "tried, no marks yet"
HELPED = "worked answer shown first"
REPAIRED = "worked answer shown first, then right with fresh numbers"
DANGER = "danger item, not passed"
KEPT = "prediction, kept and not marked"
EARLIER = "answered before the question was changed"
BLANK = "not answered"
BROKEN = "could not be marked"

NO_KNOWN_TURN = "slip not known"
DANGEROUS = "would be dangerous if built"
FEW_CASES = 2
MOST = 10  # learners that one sentence names


@dataclass(frozen=True)
class Lesson:
    """A lesson as the mark book sees it: its questions and what a row has earned on them."""

    number: str
    title: str
    questions: tuple

    @property
    def marked(self):
        return [question for question in self.questions if question.role != "predict"]

    @property
    def out_of(self):
        return sum(question.marks for question in self.marked)

    @property
    def danger_items(self):
        return [question for question in self.questions if question.danger]

    def marks(self, row):
        earned = row.marks
        return round(sum(earned.get(question.id, 0) for question in self.questions), 2)

    def begun(self, row):
        """Say whether a learner has an answer in this lesson that counts."""
        return any(question.id in row.states for question in self.questions)

    def passed(self, row):
        """Say whether a learner passed; None where a lesson has no danger items."""
        return passed((question, row.earned(question)) for question in self.questions)

    def short_by(self, row):
        """Return the marks that are missing on what is no danger item, before it is passed [-]."""
        rest = [question for question in self.marked if not question.danger]
        wanted = PASS_PERCENT / 100 * sum(question.marks for question in rest)
        return max(0.0, round(wanted - sum(map(row.earned, rest)), 2))


class Turn(NamedTuple):
    """A wrong turn of one learner on one question, by its name; `danger` is what was answered.

    That stands there where it could hurt, and is empty where it could not.
    """

    question: str
    name: str
    answers: int
    danger: str


@dataclass(slots=True)
class LearnerMarks:
    """One row: a learner's marks and states by question id, where there is an answer.

    `retried` holds the danger items that took more than `FEW_CASES` cases: perhaps guessed;
    `firsts` the questions that were right at the first try; `paper` those that count by what was
    typed back from paper; `mended` those that were answered dangerously and are right since.
    `replies` holds, where they were asked for, the danger in the newest wrong answer to a question
    and what the card says to it, `typed` the newest answer itself, and `asked` its line where it
    came from paper.
    """

    learner: str
    status: str
    marks: dict = field(default_factory=dict)
    states: dict = field(default_factory=dict)
    answers: int = 0
    last: str = ""
    retried: list = field(default_factory=list)
    turns: list = field(default_factory=list)
    firsts: list = field(default_factory=list)
    paper: list = field(default_factory=list)
    mended: list = field(default_factory=list)
    replies: dict = field(default_factory=dict)
    typed: dict = field(default_factory=dict)
    asked: dict = field(default_factory=dict)

    def earned(self, question):
        return self.marks.get(question.id, 0)

    def state(self, question):
        return self.states.get(question.id, BLANK)


@dataclass(slots=True)
class SlipCount:
    """A wrong turn under its one name in all lessons: how many took it, and where.

    `questions` counts learners by question id; `dangers` holds those where it could hurt.
    """

    name: str
    learners: int = 0
    answers: int = 0
    questions: Counter = field(default_factory=Counter)
    dangers: set = field(default_factory=set)

    def add(self, turns):
        """Count the turns of one learner."""
        self.learners += 1
        for turn in turns:
            self.answers += turn.answers
            self.questions[turn.question] += 1
            self.dangers |= {turn.question} if turn.danger else set()

    def places(self):
        """Return (question id, learners), where it could hurt first, then where most took it."""
        found = self.questions.most_common()
        return sorted(found, key=lambda place: place[0] not in self.dangers)


@dataclass
class MarkBook:
    """What a class has shown, and all that could not be used.

    `class_words` counts the learners who handed in answers under each class word; `handed_in` has
    each `HandIn` that was read, to be compared with the receipt that its learner has.
    """

    class_word: str
    lessons: tuple
    hand_ins: int = 0
    unusable: int = 0
    rows: list = field(default_factory=list)
    problems: list = field(default_factory=list)
    handed_in: list = field(default_factory=list)
    class_words: Counter = field(default_factory=Counter)
    not_begun: tuple = ()

    pass_percent = PASS_PERCENT

    def __post_init__(self):
        self.questions = tuple(q for lesson in self.lessons for q in lesson.questions)

    def narrow(self, wanted=()):
        """Leave out the lessons that are not wanted; with none named, those nobody has begun.

        Parameters
        ----------
        wanted : collection of str
            Numbers of lessons.
        """
        kept = wanted or [n.number for n in self.lessons if any(map(n.begun, self.rows))]
        left_out = [n.number for n in self.lessons if n.number not in kept]
        self.not_begun = () if wanted else tuple(left_out)
        self.lessons = tuple(n for n in self.lessons if n.number in kept)
        self.__post_init__()

    @property
    def out_of(self):
        return sum(lesson.out_of for lesson in self.lessons)

    def total(self, row):
        return round(sum(lesson.marks(row) for lesson in self.lessons), 2)

    def percent(self, row):
        return round(100 * self.total(row) / self.out_of, 1) if self.out_of else 0.0

    def in_state(self, row, *states):
        """Return the questions that stand in one of these states in a row."""
        return [question for question in self.questions if row.state(question) in states]

    def learners(self, question, state):
        """Return the learners with whom a question stands in a state."""
        return [row.learner for row in self.rows if row.state(question) == state]

    def dangerous(self, row):
        """Return the dangerous turns of a row: those not right since, and those that are."""
        ids = {question.id for question in self.questions}
        found = [turn for turn in row.turns if turn.danger and turn.question in ids]
        left = [turn for turn in found if turn.question not in row.mended]
        return left, [turn for turn in found if turn.question in row.mended]

    def dangers_in_words(self):
        """Say how many gave dangerous answers, to whatever question, and who is not right since."""
        found = [(plain(row.learner, 40), *self.dangerous(row)) for row in self.rows]
        given = sum(bool(left or mended) for _, left, mended in found)
        names = [who for who, left, _ in found if left]
        still = f"{len(names)} ({few(names, MOST)})" if names else "nobody"
        return f"Dangerous answers: {counted(given, 'learner')}; not right since: {still}."

    def slips(self, rows=None):
        """Return the wrong turns of a class, each under one name wherever it was taken.

        Parameters
        ----------
        rows : iterable of LearnerMarks or None
            Whose; None takes all.

        Returns
        -------
        slips : list of SlipCount
            Dangers first, then those of most learners and in most answers; the unknown last.
        """
        found, ids = {}, {question.id for question in self.questions}
        for row in self.rows if rows is None else rows:
            named = {}
            for turn in row.turns:
                if turn.question in ids:
                    named.setdefault(turn.name, []).append(turn)
            for name, turns in named.items():
                found.setdefault(name, SlipCount(name)).add(turns)
        return sorted(
            found.values(),
            key=lambda s: (s.name == NO_KNOWN_TURN, not s.dangers, -s.learners, -s.answers, s.name),
        )

    def in_words(self):
        """Say what was read, how many learners stand where, and which lessons are left out."""
        read = f"{counted(self.hand_ins, 'hand-in')} read"
        if self.unusable:
            read += f", {counted(self.unusable, 'file')} not usable"
        statuses = Counter(row.status for row in self.rows)
        parts = ", ".join(f"{count} {status}" for status, count in statuses.items())
        said = f"{read}. {counted(len(self.rows), 'learner')}: {parts or 'none'}."
        if self.not_begun:
            said += f" Lessons not begun by anybody, so left out: {', '.join(self.not_begun)}."
        return said


def danger_open(questions, row):
    """Return the danger items that a learner has not passed: answered wrong, and not answered.

    One that was answered in an earlier edition only counts as not answered.
    """
    left = [q for q in questions if q.danger and row.state(q) != FULL]
    blank = [q for q in left if row.state(q) in (BLANK, EARLIER)]
    return [q for q in left if q not in blank], blank


def lessons_of(bank_files=None):
    """Return the `Lesson` list of a bank's files; None are those of this installation."""
    return tuple(
        Lesson(number, module.TITLE, tuple(module.QUESTIONS))
        for number, module in (bank_files or bank.lessons()).items()
    )
