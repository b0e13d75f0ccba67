"""The mark book: one row a learner, the slips of the class, and what could not be used.

Knows what stands in it and how it adds up. Must never know how it came about or how it is shown.
"""

from dataclasses import dataclass, field

from helpers.exercises.standing import passed

HANDED_IN = "handed in"
NOTHING = "nothing handed in"
NOTHING_COUNTS = "handed in, nothing in it counts"
NOT_ON_ROSTER = "not on the roster"

FULL = "full marks"
PART = "part of the marks"
NONE = "tried, no marks yet"
HELPED = "worked answer shown first"
DANGER = "danger item, not passed"
KEPT = "prediction, kept and not marked"
BLANK = "not answered"
BROKEN = "could not be marked"


@dataclass(frozen=True)
class Lesson:
    """A lesson as the mark book sees it: its questions, and where they stand in each row."""

    number: str
    title: str
    questions: tuple
    first: int

    @property
    def columns(self):
        return slice(self.first, self.first + len(self.questions))

    @property
    def out_of(self):
        return sum(question.marks for question in self.questions if question.role != "predict")

    @property
    def danger_items(self):
        return [question for question in self.questions if question.danger]

    def marks(self, row):
        return round(sum(row.marks[self.columns]), 2)

    def passed(self, row):
        """Say whether a learner passed; None where a lesson has no danger items.

        Notes
        -----
        Passed by full marks on the danger items and 80 % of the rest.
        """
        return passed(zip(self.questions, row.marks[self.columns], strict=True))


@dataclass(frozen=True, slots=True)
class LearnerMarks:
    """One row: a learner's marks and states, in the order of the bank's questions."""

    learner: str
    status: str
    marks: tuple
    states: tuple
    answers: int = 0
    repaired: tuple = ()


@dataclass(slots=True)
class SlipCount:
    """How many learners took a wrong turn, how many answers it gave, whether it could hurt."""

    learners: int = 0
    answers: int = 0
    danger: bool = False


@dataclass
class MarkBook:
    """What a class has shown, and all that could not be used."""

    class_word: str
    lessons: tuple
    hand_ins: int = 0
    rows: list = field(default_factory=list)
    slips: dict = field(default_factory=dict)
    problems: list = field(default_factory=list)

    def __post_init__(self):
        self.questions = tuple(q for lesson in self.lessons for q in lesson.questions)

    @property
    def out_of(self):
        return sum(lesson.out_of for lesson in self.lessons)

    def total(self, row):
        return round(sum(row.marks), 2)

    def percent(self, row):
        return round(100 * self.total(row) / self.out_of, 1) if self.out_of else 0.0

    def in_state(self, row, *states):
        """Return the questions that stand in one of these states in a row."""
        pairs = zip(self.questions, row.states, strict=True)
        return [question for question, state in pairs if state in states]

    def danger_open(self, row):
        """Return the danger items that a learner has not passed yet, tried or not."""
        pairs = zip(self.questions, row.states, strict=True)
        return [question for question, state in pairs if question.danger and state != FULL]


def lessons_of(bank_files):
    """Return the `Lesson` list of the bank's files (`helpers.exercises.bank.lessons()`)."""
    lessons, first = [], 0
    for number, module in bank_files.items():
        lessons.append(Lesson(number, module.TITLE, tuple(module.QUESTIONS), first))
        first += len(module.QUESTIONS)
    return tuple(lessons)
