"""A question: its wording, personal numbers, kind, nudges and model answer, in one place.

Knows no learner and no screen. The bank is made of these.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from types import SimpleNamespace

from helpers.exercises.draws import Draw, Turns
from helpers.exercises.templates import fill

ROLES = ("exercise", "recall", "predict")
FRESH_TRIES = 100  # with three cases or more, one of these is other than both neighbours


@dataclass(frozen=True)
class Picture:
    """A plain description of a picture: which drawing, and with what values."""

    drawing: str
    values: dict = field(default_factory=dict)


def no_numbers(draw, supply):
    return {}


@dataclass(frozen=True)
class Question:
    """One question of the bank.

    Parameters
    ----------
    id : str
        Short and stable; it is also the id of the answer cell in the lesson.
    outcome : str
        What answering it shows that the learner can do.
    ask : str or callable
        The wording: a template (`helpers.exercises.templates`), or from the numbers to the text.
    kind : object
        One of the kinds in `helpers.exercises.kinds`; it reads and marks answers.
    nudges : tuple of str
        From a question to a method, never the number.
    working : str or callable
        The model answer in words: a template in which `{sum}` is the worked sum of the road.
    numbers : callable
        From a `Draw` and a supply to the personal numbers, a dict.
    code : str, callable or None
        The model answer as a line of Python, in SI units, where it is not that of the road.
    facts : dict
        Numbers that texts speak of and that follow from the personal ones: functions by name.
    level, marks : int
        1 guided, 2 on your own, 3 stretch; and what the question is worth.
    role : str
        exercise, recall (from an earlier lesson) or predict (kept, not marked).
    danger : bool
        Only the first answer of a draw counts, and the lesson is passed only with it right.
    picture : callable or None
        From the personal numbers to the `Picture` that has to be read.
    edition : int
        1 first; one more whenever its numbers, options or rule of marking change. Answers to an
        earlier edition are never marked by a later one.

    Raises
    ------
    ValueError
        If the role is unknown, an exercise has fewer than two nudges, or a danger item has no
        other cases to draw.
    """

    id: str
    outcome: str
    ask: str | Callable
    kind: object
    working: str | Callable = "{sum}."
    nudges: tuple = ()
    numbers: Callable = no_numbers
    code: str | Callable | None = None
    facts: dict = field(default_factory=dict, hash=False)
    level: int = 1
    marks: int = 1
    role: str = "exercise"
    danger: bool = False
    picture: Callable | None = None
    edition: int = 1

    def __post_init__(self):
        if self.role not in ROLES:
            raise ValueError(f"question {self.id}: role {self.role!r} is not one of {ROLES}")
        if self.role == "exercise" and len(self.nudges) < 2:
            raise ValueError(f"question {self.id}: {len(self.nudges)} nudges; two are the least")
        if self.danger and not self.has_fresh_numbers:
            raise ValueError(f"question {self.id}: a danger item needs other cases to draw")

    def asked(self, n):
        """Return the wording with the personal numbers."""
        return self._text(self.ask, n)

    def worked(self, n):
        """Return the model answer in words."""
        return self._text(self.working, n, **self.kind.workings(n))

    def line_of_code(self, n):
        """Return the model answer as a line of Python; '' where there is nothing to compute."""
        if self.code:
            return self.code(n) if callable(self.code) else self.code.format(**vars(n))
        return self.kind.code(n)

    def _text(self, text, n, **more):
        if callable(text):
            return text(n)
        facts = {name: fact(n) for name, fact in self.facts.items() if f"{{{name}" in text}
        return fill(text, n, **facts, **more)

    @property
    def has_fresh_numbers(self):
        """Whether another draw asks something else."""
        return self.numbers is not no_numbers

    def numbers_for(self, learner, class_word, supply, draw):
        """Return the personal numbers of one draw, with the order in which options are shown.

        Parameters
        ----------
        learner, class_word : str
            Whose numbers.
        supply : Supply
            The learner's mains; its name is part of what the numbers depend on.
        draw : int
            0 first, then fresh draws.

        Returns
        -------
        numbers : SimpleNamespace
            What the question's own functions take, and `shown`, the order of the options.

        Notes
        -----
        Fresh numbers are other numbers: an odd draw gives way to the draws on both its sides, and a
        danger item goes through all its cases before one comes again. No draw needs more than two
        others, so a forged line with draw 9999 costs no time.
        """

        def streamed(number):
            stream = Draw(learner, class_word, self.id, str(number), supply.name)
            if not self.danger:
                return stream, self.numbers(stream, supply)
            cases = Draw(learner, class_word, self.id, supply.name)
            return stream, self.numbers(Turns(cases, number), supply)

        stream, drawn = streamed(draw)
        if draw % 2:
            beside = [streamed(draw - 1)[1], streamed(draw + 1)[1]]
            for _ in range(FRESH_TRIES):
                if drawn in beside:
                    drawn = self.numbers(stream, supply)
        numbers = SimpleNamespace(supply=supply, **drawn)
        numbers.shown = self.kind.arrange(numbers, stream)
        return numbers
