"""One learner at work: opens questions, keeps answers, gives nudges; the same for both doors.

Returns what happened as data. Must never know how it is shown.
"""

from dataclasses import dataclass
from difflib import get_close_matches
from math import isfinite

from helpers.exercises import hand_in
from helpers.exercises.answer_log import MOST_DRAWS, LogError, new_line
from helpers.exercises.bank import bank
from helpers.exercises.kinds import NotRead
from helpers.exercises.settings import WORKSHOP_LEARNER, Settings, changed
from helpers.exercises.standing import replay
from helpers.exercises.store import MemoryStore
from helpers.exercises.wording import code_form
from helpers.physics.mains import SUPPLIES

PLAIN_BLANKS = str.maketrans("\u00a0\u2009\u202f", "   ")  # both doors write the same line
CLOSED = (
    "The settings were changed in another notebook, so this is not marked. Run the first cell of "
    "this lesson again, then answer with the settings that hold now."
)


class UnknownQuestion(KeyError):
    """A question id that the bank does not hold."""

    def __str__(self):
        return self.args[0]


@dataclass(frozen=True)
class Outcome:
    """What one answer led to.

    `answer` and `verdict` are None where nothing was marked; then `problem` says why. `kept` is
    False if the line could not be written; `problem` then says that.
    """

    answer: object = None
    verdict: object = None
    problem: str = ""
    kept: bool = True


class Session:
    """A learner, their settings and where their answers are kept.

    Parameters
    ----------
    settings : Settings
        Whose answers.
    store : DiskStore or MemoryStore
        Where they go.
    workshop_copy : bool
        True for the fixed copy whose answers are published.
    """

    def __init__(self, settings, store, workshop_copy=False):
        self.settings, self.store = settings, store
        self.log = store.log(settings.learner)
        self.workshop_copy = workshop_copy
        self.closed = False
        self.watchers = {}
        self._nudges = {}
        self._unsaved = []
        self._read_log()

    def same_as(self, other):
        """Whether another session keeps the same learner's answers in the same place."""
        return (self.settings, self.log.path) == (other.settings, other.log.path)

    @property
    def supply(self):
        return SUPPLIES[self.settings.supply]

    @property
    def answers(self):
        """How many answers of this learner there are, under any class word."""
        return sum(map(len, self._lines.values()))

    def _read_log(self):
        lines, self.problems = self.log.lines()
        own = [line for line in lines if line.learner == self.settings.learner]
        if foreign := len(lines) - len(own):
            what = "1 line was" if foreign == 1 else f"{foreign} lines were"
            self.problems.append(
                f"{what} left out: another learner's, not {self.settings.learner}'s."
            )
        by_question = {}
        for line in [*own, *self._unsaved]:
            by_question.setdefault(line.question, []).append(line)
        self._lines, self._standings = by_question, {}

    def read_again(self):
        """Read the log again; return the ids of questions that another kernel wrote about."""
        self._write()
        before, standings = self._lines, self._standings
        self._read_log()
        changed = {
            question_id
            for question_id in before.keys() | self._lines.keys()
            if _ids(before, question_id) != _ids(self._lines, question_id)
        }
        self._standings = {key: s for key, s in standings.items() if key not in changed}
        return changed

    def question(self, question_id):
        """Return the question with this id.

        Raises
        ------
        UnknownQuestion
            If the bank has none; the text lists what is near.
        """
        try:
            return bank()[question_id]
        except (KeyError, TypeError):
            near = get_close_matches(str(question_id), list(bank()), n=3)
            hint = f" Did you mean {' or '.join(near)}?" if near else ""
            raise UnknownQuestion(f"There is no question {question_id!r}.{hint}") from None

    def standing(self, question_id):
        """Return the `Standing` of a question, from the log the first time it is asked for."""
        if question_id not in self._standings:
            question = self.question(question_id)
            lines = self._lines.get(question_id, [])
            word = self.settings.class_word
            self._standings[question_id] = replay(question, lines, SUPPLIES, word)
        return self._standings[question_id]

    def draw(self, question_id, number=None):
        """Return the `DrawStanding` of one draw under the present settings; None: the first."""
        s, standing = self.settings, self.standing(question_id)
        number = standing.first_draw if number is None else number
        return standing.draw(s.learner, s.class_word, self.supply, number)

    def newest_draw(self, question_id):
        return self.standing(question_id).newest_draw(self.settings.class_word, self.supply)

    def open_draw(self, question_id, number):
        """Say why a draw may not be opened yet; '' if it may."""
        question, standing = self.question(question_id), self.standing(question_id)
        s, first = self.settings, standing.first_draw
        if not isinstance(number, int) or isinstance(number, bool) or number < 0:
            return f"draw={number!r} was read; it is 0, or the number of a fresh draw: 1, 2 …"
        if number >= MOST_DRAWS:
            return f"draw={number} was read; {MOST_DRAWS - 1} is the last that is kept."
        if number < first:
            form = code_form(question, self.draw(question_id).numbers, first)
            return f"Draw {number} was answered in another edition of this question. Type: `{form}`"
        if number > first and not question.has_fresh_numbers:
            return "This question has the same numbers for everybody: there is no fresh draw."
        if standing.may_open(s.learner, s.class_word, self.supply, number):
            return ""
        return f"Fresh numbers come after draw {number - 1} of this question is finished."

    def answer(self, question_id, typed, number=0):
        """Read, mark and keep one answer.

        Parameters
        ----------
        question_id : str
            Which question.
        typed : str, number or list
            The answer as the learner gave it; a list is one of letters or of parts.
        number : int
            Which draw of it.

        Returns
        -------
        outcome : Outcome
            With the line flushed to the disk before it returns.
        """
        between = self.question(question_id).kind.between
        pieces = typed if isinstance(typed, (list, tuple)) else [typed]
        try:
            text = between.join(map(_as_text, pieces))
            text.encode("utf-8")
        except (ValueError, RecursionError):
            outcome = Outcome(problem="This answer cannot be kept as text. Type it as words.")
        else:
            outcome = self._take(question_id, text, number)
        for watcher in list(self.watchers.values()):
            watcher(question_id, number, outcome)
        return outcome

    def _take(self, question_id, typed, number):
        if self.closed:
            return Outcome(problem=CLOSED)
        if problem := self.open_draw(question_id, number):
            return Outcome(problem=problem)
        if not typed:
            return Outcome(
                problem="There is no answer to check yet: choose, type or move something."
            )
        longest = self.question(question_id).kind.longest
        if len(typed) > longest:
            return Outcome(
                problem=f"The answer is {len(typed)} characters long; {longest} is the most."
            )
        standing, draw = self.standing(question_id), self.draw(question_id, number)
        nudges = len(self.nudges_seen(question_id, number))
        try:
            answer, verdict, new = standing.take(draw, typed, nudges)
        except NotRead as error:
            return Outcome(problem=str(error))
        if new:
            s, edition = self.settings, standing.question.edition
            whose = s.learner, s.class_word, s.supply, question_id
            self._unsaved.append(new_line(*whose, number, typed, nudges, edition=edition))
            self._lines.setdefault(question_id, []).append(self._unsaved[-1])
        problem = self._write()
        return Outcome(answer, verdict, problem, kept=not problem)

    def _write(self):
        """Write what is not on the disk yet, also from earlier answers that a full disk refused."""
        try:
            while self._unsaved:
                self.log.add(self._unsaved[0])
                self._unsaved.pop(0)
        except LogError as error:
            return str(error)
        return ""

    def nudge(self, question_id, number=0):
        """Open the next nudge of a draw, the second one after a try; return all that are open."""
        if self.has_nudge(question_id, number):
            seen = len(self.nudges_seen(question_id, number))
            self._nudges[question_id, number] = seen + 1
        return self.nudges_seen(question_id, number)

    def has_nudge(self, question_id, number=0):
        """Say whether a nudge can be opened now."""
        seen = len(self.nudges_seen(question_id, number))
        waits = seen > 0 and not self.draw(question_id, number).tried
        return seen < len(self.question(question_id).nudges) and not waits

    def nudges_seen(self, question_id, number=0):
        """Return the nudges that are open in a draw."""
        recorded = self.draw(question_id, number).nudges
        seen = max(self._nudges.get((question_id, number), 0), recorded)
        return self.question(question_id).nudges[:seen]

    def hand_in(self):
        """Write all of this learner's lines into one file for the instructor.

        Returns
        -------
        receipt : hand_in.Receipt

        Raises
        ------
        HandInError
            If nothing has been answered yet, or answers are kept in memory only.
        LogError
            If the file could not be written, or an answer that a full disk refused still cannot.
        """
        if problem := self._write():
            raise LogError(problem)
        return hand_in.write(self.store, self.settings)


def _ids(lines_by_question, question_id):
    return [line.line for line in lines_by_question.get(question_id, ())]


def _as_text(typed):
    """Write an answer as one would type it; a number of Python's has no second meaning."""
    if isinstance(typed, float) and isfinite(typed):
        text = repr(float(typed))
        return text if "e" in text else f"{text}e0"
    return str(typed).translate(PLAIN_BLANKS).strip()


def workshop_session():
    """Return the session of the workshop copy: fixed learner and supply, nothing on disk."""
    settings = Settings(WORKSHOP_LEARNER, "workshop", "230 V 50 Hz")
    return Session(settings, MemoryStore(), workshop_copy=True)


def learner_session(store, learner=None, class_word=None, supply=None):
    """Return the session of the learner whose settings a store holds.

    Parameters
    ----------
    store : DiskStore or MemoryStore
        Where settings and answers are kept.
    learner, class_word, supply : str or None
        Changes to the settings; None leaves them as they were kept.

    Returns
    -------
    session : Session
    note : str
        What the learner should know about the settings; '' if all is well.

    Raises
    ------
    SettingsError
        If one of the changes cannot be used; nothing is changed then.
    """
    settings, note = store.load()
    wanted = changed(settings, learner, class_word, supply)
    if wanted != settings:
        note = store.save(wanted) or note
    return Session(wanted, store), note
