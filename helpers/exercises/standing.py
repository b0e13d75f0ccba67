"""What a learner's recorded attempts amount to: marked afresh, in order, by the bank at hand.

The card and the mark book both ask here, so that they can never disagree.
"""

from dataclasses import dataclass, field

from helpers.exercises.kinds import NotRead

PASS_PERCENT = 80  # of the marks that no danger item earns; with all of those [-]


@dataclass
class DrawStanding:
    """One draw of one question: what was tried with these numbers, and what of it counted.

    `opens_edition` says that the learner answered an earlier edition, and has to begin again here.
    `earned` holds what each answer that counted is worth, `used` the tries used up, also in other
    draws where a question has no numbers of its own, and `most` those before the worked answer.
    """

    numbers: object
    class_word: str = ""
    opens_edition: bool = False
    tried: dict = field(default_factory=dict)
    typed: list = field(default_factory=list)
    nudges: int = 0
    earned: dict = field(default_factory=dict)
    used: int = 0
    most: int = 3
    right: bool = False

    @property
    def case(self):
        """What the question is about in this draw, whatever the supply and the order shown."""
        return {k: v for k, v in vars(self.numbers).items() if k not in ("supply", "shown")}

    @property
    def first(self):
        """The oldest (answer, verdict), or None."""
        return next(iter(self.tried.values()), None)

    @property
    def last(self):
        """The newest (answer, verdict), or None."""
        return next(reversed(self.tried.values()), None)

    @property
    def working_shown(self):
        return self.used >= self.most or self.right

    def finished(self, question):
        """Whether nothing more counts in this draw, and a fresh one may be opened."""
        return self.working_shown or bool(
            self.tried and (question.danger or question.role == "predict")
        )


@dataclass
class Standing:
    """One question over all its draws.

    `share` is the best part of the marks earned under the class word that counts, before a worked
    answer was shown under any; for a danger item, by the first answer of a draw, unless its case
    is the one explained just before, on another supply or under another class word. `helped` says
    that a worked answer was shown first, and `right_after_help` that the learner then got fresh
    numbers right. `values` holds what each answer to a question without numbers of its own was
    worth when it was first given, on whatever supply. `tries` are those under the class word that
    counts. `earlier` counts answers under it to an earlier edition, and `later` those to a later
    one: they are never marked here, and `first_draw` is the first one after all of theirs;
    `renewed` says that an earlier edition was answered under any class word. `skipped` counts
    draws that were answered before they could be opened.
    """

    question: object
    class_word: str
    draws: dict = field(default_factory=dict)
    share: float = 0.0
    tries: int = 0
    slips: list = field(default_factory=list)
    helped: bool = False
    right_after_help: bool = False
    unread: int = 0
    values: dict = field(default_factory=dict)
    earlier: int = 0
    later: int = 0
    renewed: bool = False
    skipped: int = 0
    first_draw: int = 0
    last_tried: DrawStanding | None = None

    @property
    def marks(self):
        """Marks earned, to two decimals [-]."""
        return round(self.share * self.question.marks, 2)

    @property
    def short_of_all(self):
        """What stands between what was answered and all the marks; '' where nothing does."""
        if not self.tries or self.share == 1.0 or self.question.role == "predict":
            return ""
        if self.helped:
            return "With help, and right since then" if self.right_after_help else "With help"
        own = (draw for draw in self.draws.values() if draw.class_word == self.class_word)
        if not any(draw.right for draw in own):
            return "Not right yet"
        worth = "for part of the marks" if self.share else "without marks"
        return f"Right at a later try, {worth}"

    def draw(self, learner, class_word, supply, number):
        """Return the standing of one draw, opening it if it is new."""
        key = (learner, class_word, supply.name, number)
        if key not in self.draws:
            numbers = self.question.numbers_for(learner, class_word, supply, number)
            opens = number == self.first_draw and self.renewed
            most = self.question.kind.tries
            self.draws[key] = DrawStanding(numbers, class_word, opens, most=most)
        return self.draws[key]

    def newest_draw(self, class_word, supply):
        """Return the number of the newest draw tried under these settings, or the first one's."""
        return max(
            (
                number
                for (_, word, name, number), draw in self.draws.items()
                if draw.tried and (word, name) == (class_word, supply.name)
            ),
            default=self.first_draw,
        )

    def may_open(self, learner, class_word, supply, number):
        """Say whether a draw is the first one, or follows one that is finished."""
        if number <= self.first_draw:
            return number == self.first_draw
        before = self.draws.get((learner, class_word, supply.name, number - 1))
        return self.question.has_fresh_numbers and bool(before and before.finished(self.question))

    def leave_to_its_edition(self, line, supply):
        """Take note of an answer to another edition: its draw is finished, its case explained."""
        if line.edition < self.question.edition:
            self.renewed = True
            self.earlier += line.class_word == self.class_word
        else:
            self.later += 1
        self.first_draw = max(self.first_draw, line.draw + 1)
        numbers = self.question.numbers_for(line.learner, line.class_word, supply, line.draw)
        self.last_tried = DrawStanding(numbers, line.class_word)

    def take(self, draw, typed, nudges=0):
        """Mark one attempt and count it.

        Parameters
        ----------
        draw : DrawStanding
            One of `self.draws`.
        typed : str
            The answer as typed.
        nudges : int
            How many nudges had been seen.

        Returns
        -------
        answer, verdict : Answer, Verdict
            As read and as marked.
        new : bool
            False if the same answer was given before in this draw: it counts as nothing.

        Raises
        ------
        NotRead
            If the answer could not be read; it counts as nothing.
        """
        question = self.question
        most, marked = question.kind.most_answers, sum(len(d.tried) for d in self.draws.values())
        if marked >= most and typed not in draw.typed:  # before it is read: that takes time, too
            raise NotRead(f"{most} different answers to this were marked; no more are.")
        answer = question.kind.read(typed, draw.numbers)
        if answer.given in draw.tried:
            return *draw.tried[answer.given], False
        verdict = question.kind.verdict_on(answer, draw.numbers)
        known = self.values.get(answer.given)
        draw.used = len(draw.tried) if question.has_fresh_numbers else len(self.values)
        closed = known is None and (draw.finished(question) or draw.used >= draw.most)
        closed = closed or (question.danger and self._just_explained(draw))
        worth = known if known is not None else verdict.share * question.kind.worth(draw.used)
        draw.used += known is None
        if not question.has_fresh_numbers:
            self.values.setdefault(answer.given, 0.0 if closed else worth)
        draw.tried[answer.given] = (answer, verdict)
        draw.typed.append(typed)
        draw.right = draw.right or verdict.right
        draw.nudges = max(draw.nudges, nudges)
        self.tries += draw.class_word == self.class_word
        self.last_tried = draw
        if not closed and question.role != "predict":
            self._count(draw, answer.given, verdict, worth)
        return answer, verdict, True

    def _just_explained(self, draw):
        before = self.last_tried
        return before is not None and before is not draw and before.case == draw.case

    def _count(self, draw, given, verdict, worth):
        counts = draw.class_word == self.class_word
        if verdict.slip:
            self.slips.append(verdict.slip)
        if not self.helped or self.question.danger:
            draw.earned[given] = worth
            if counts:
                self.share = max(self.share, worth)
        elif verdict.right and counts:
            self.right_after_help = True
        if draw.working_shown and not draw.right and self.share < 1:
            self.helped = True


def replay(question, lines, supplies, class_word):
    """Mark recorded lines of one question in order.

    Parameters
    ----------
    question : Question
        From the bank at hand; a mark in the lines is not looked for.
    lines : iterable of LogLine
        Lines of one learner on this question, under any id and class word, oldest first.
    supplies : mapping
        From the names of supplies to the supplies.
    class_word : str
        The one that earns marks; what was explained under another one is explained all the same.

    Returns
    -------
    standing : Standing
        With lines that could not be read counted in `unread`.
    """
    standing = Standing(question, class_word)
    for line in lines:
        supply = supplies.get(line.supply)
        if supply is None:
            standing.unread += 1
            continue
        if line.edition != question.edition:
            standing.leave_to_its_edition(line, supply)
            continue
        which = (line.learner, line.class_word, supply, line.draw)
        draw = standing.draw(*which)
        standing.skipped += not draw.tried and not standing.may_open(*which)
        try:
            standing.take(draw, line.answer, line.nudges)
        except NotRead:
            standing.unread += 1
    return standing


def passed(earned):
    """Say whether a lesson is passed: full marks on its danger items, `PASS_PERCENT` of the rest.

    Parameters
    ----------
    earned : iterable of (Question, float)
        Every question of the lesson with the marks earned on it [-].

    Returns
    -------
    passed : bool or None
        None where the lesson has no danger items, and so nothing to pass.
    """
    counted = [(q, marks) for q, marks in earned if q.role != "predict"]
    dangers = [marks >= q.marks for q, marks in counted if q.danger]
    rest = [(marks, q.marks) for q, marks in counted if not q.danger]
    if not dangers:
        return None
    enough = sum(m for m, _ in rest) >= PASS_PERCENT / 100 * sum(most for _, most in rest) - 1e-9
    return all(dangers) and enough
