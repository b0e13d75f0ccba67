"""What was answered on paper, typed back by hand: a log of its own beside the hand-ins of a class.

Each line names its bench code, question, draw and edition, so that an old pack counts as what it
was. Knows lines and how a kind reads; must never know what an answer is worth.
"""

import re
from collections import Counter
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from difflib import get_close_matches
from itertools import combinations, pairwise
from operator import attrgetter

from helpers.classroom.problems import ASK, FINE, Problem
from helpers.exercises.answer_log import MOST_DRAWS, LogLine, add_row, new_line, parse_log
from helpers.exercises.kinds import NotRead
from helpers.exercises.refusals import MAKE_ROOM, Unusable, make_folder, plain, refused
from helpers.exercises.session import PLAIN_BLANKS
from helpers.exercises.settings import LEARNER_ID
from helpers.exercises.wording import title
from helpers.physics.mains import SUPPLIES

MOST_WORDS = 12  # of a row that is parted at its blanks
LONGEST_ANSWER = 200  # characters: one line; a whole design is no line of paper
place_of = attrgetter("learner", "class_word", "question", "draw", "edition")
ID = r"[a-z]+(?:-[a-z0-9]+)*"
CALLED = r"(?:exercise|danger item|look back)\s+\d+|predict first"
# Before an answer may go, up to a colon, what a question of a pack is called or its small print.
NAMED = re.compile(
    rf"(?:[A-Z0-9-]{{2,12}}\s*·\s*)?(?P<question>{CALLED}|{ID})"
    r"(?:\W+(?:set|draw|fresh numbers|another case)\W*(?P<draw>\d+))?"
    r"(?:\W+edition\W*(?P<edition>\d+))?\s*:\s*(?P<answer>.*)",
    re.IGNORECASE,
)
SCREEN = ":screen"  # behind what is decided for the screen
DECIDED = re.compile(rf"[A-Z0-9-]{{2,12}}:{ID}(?:{SCREEN})?")
EARLIER = (
    "The pack is of another edition of this question, so it is kept as typed and earns no marks: "
    "ask it again."
)


class NotUnderstood(ValueError):
    """A typed row that cannot be kept. The text says what was read and what to type instead."""


@dataclass(frozen=True)
class Typed:
    """A row as it was understood, not kept yet: its line, what it says in words, what it is worth.

    `judged` is the card's word on it, for after it is kept; '' for an earlier edition.
    """

    line: LogLine
    said: str
    judged: str = ""


class PaperLog:
    """The paper log of one class, on the disk.

    Parameters
    ----------
    path : Path
        The file; it is made when the first line is kept.
    """

    def __init__(self, path):
        self.path = path

    def lines(self):
        """Return the lines that stand, oldest first, and problems: one for what has to be asked.

        Raises
        ------
        Unusable
            If the file is there and cannot be read.
        """
        with refused(f"{plain(str(self.path), 300)} could not be read", MAKE_ROOM):
            content = self.path.read_bytes() if self.path.exists() else b""
        log = parse_log(content)
        place, again = self.path.name, "Type that answer back once more."
        problems = [Problem(place, found, again) for found in log.problems]
        gone = {line.takes_back for line in log.lines}
        standing, foreign = {}, Counter()
        for line in log.lines:
            if not line.by_hand or not LEARNER_ID.fullmatch(line.learner):
                foreign[plain(line.learner, 40)] += 1
            elif not line.takes_back and line.line not in gone:
                first = standing.setdefault(place_of(line), line)
                if first.answer != line.answer:
                    found = f"{named(line)} of {line.learner} was typed twice, differently"
                    advice = "The first counts. Take one back where paper is typed."
                    problems.append(Problem(place, found, advice, ASK))
        for learner, count in foreign.items():
            found = f"{count} lines of {learner} were not typed back here"
            problems.append(Problem(place, found, "They count for nobody. Take them out."))
        return list(standing.values()), problems

    def keep(self, line):
        """Write one line to the disk and read it back.

        Raises
        ------
        Unusable
            If that is not possible; the log is as before then.
        """
        make_folder(self.path.parent)
        with refused(f"It was not kept: {plain(str(self.path), 300)}", MAKE_ROOM):
            add_row(self.path, line)

    def take_back(self, line):
        """Let a line stand no longer; what was typed stays readable in the file."""
        now = datetime.now(UTC).isoformat(timespec="milliseconds")
        self.keep(replace(line, at=now, takes_back=line.line))


class Paper:
    """What was typed back for a class, beside what was handed in.

    Parameters
    ----------
    log : PaperLog or None
        None is a class without paper.
    accept : iterable of str
        `BENCH-07:ohm-3` says that paper counts there, `BENCH-07:ohm-3:screen` that the screen does;
        what else stands there is not looked at.

    Raises
    ------
    Unusable
        If both were decided for one question, or the log cannot be read.
    """

    def __init__(self, log, accept=()):
        found, self.problems = log.lines() if log else ([], [])
        self.decided = {name for name in accept if DECIDED.fullmatch(name)}
        for name in sorted(self.decided):
            if name + SCREEN in self.decided:
                raise Unusable(
                    f"{name} and {name}{SCREEN} are both decided. Delete the one that is not to "
                    "count, in the file of the class if it stands there. Nothing was marked."
                )
        self.lines = {}
        for line in found:
            self.lines.setdefault(line.learner, []).append(line)

    def joined(self, learner, ids, screen, class_word, problems, worth):
        """Return the lines of a learner that count, of screen and paper.

        Parameters
        ----------
        learner : str
        ids : sequence of str
            All the ids of the learner.
        screen : list of LogLine
            What was handed in.
        class_word : str
            The one that earns marks.
        problems : list of Problem
            Where both have answers to a question that come to something else, one is added that
            lists these.
        worth : callable
            From the id of a question and lines to what these come to.

        Returns
        -------
        lines : list of LogLine
        doubles : set of str
            What was decided where both have an answer, such as `BENCH-07:ohm-3`.

        Notes
        -----
        Paper counts where the screen has no line. Where both have one, the screen counts until
        somebody says `BENCH-07:ohm-3`. Where the screen began with what stands on paper, or both
        come to the same, there is nothing to ask.
        """
        # no hand-in says of itself that it was paper
        screen = [replace(line, by_hand=False) if line.by_hand else line for line in screen]
        paper = [line for one in ids for line in self.lines.get(one, ())]
        if not paper:
            return screen, set()
        seen = {line.question for line in screen if line.class_word == class_word}
        both = seen & {line.question for line in paper if line.class_word == class_word}
        said = {name: f"{learner}:{name}" for name in both}
        instead = {name for name in both if said[name] in self.decided}
        settled = {name for name in both if said[name] + SCREEN in self.decided}
        asked = [
            name
            for name in sorted(both - instead - settled - _same(paper, screen, both))
            if worth(name, _of(name, screen)) != worth(name, _of(name, paper))
        ]
        if asked:
            problems.append(
                Problem(
                    learner,
                    f"screen and paper differ in {', '.join(asked)}; the screen counts",
                    "Ask which came first: a screen may have shown the worked answer. Then paste "
                    "one line of each pair into the box Decided, and mark again. The first is for "
                    "paper, the second for the screen.",
                    ASK,
                    tuple(said[name] + end for name in asked for end in ("", SCREEN)),
                )
            )
        screen = [
            line for line in screen if line.question not in instead or line.class_word != class_word
        ]
        paper = [line for line in paper if line.question not in both - instead]
        decided = {said[name] for name in instead} | {said[name] + SCREEN for name in settled}
        return screen + paper, decided

    def refuse_no_double(self, decided, doubles, roster, known):
        """Refuse what was decided just now where there is nothing to decide.

        Parameters
        ----------
        decided : iterable of str
        doubles : set of str
            What was decided and is a double.
        roster : Roster
        known : collection of str
            Ids of questions.

        Raises
        ------
        Unusable
            With the first one and the reason.
        """
        for name in sorted(self.decided.intersection(decided) - doubles):
            learner, question = name.removesuffix(SCREEN).split(":")
            paper = [one for n in roster.ids(learner) for one in self.lines.get(n, ())]
            if learner not in roster.learners and not paper:
                why = f"this class has no bench {learner}"
            elif question not in known:
                why = f"there is no question {question}"
            elif not any(line.question == question for line in paper):
                why = f"no answer of {learner} to {question} was typed back from paper"
            else:
                why = f"{learner} has no answer to {question} on the screen: paper counts as it is"
            raise Unusable(f"{name} cannot be decided: {why}. Nothing was marked.")

    def in_words(self, doubles):
        """Yield what to look at: the log itself, and what was accepted and is no double."""
        yield from self.problems
        for name in sorted(self.decided - doubles):
            found = "this was decided; screen and paper do not both have an answer"
            yield Problem(plain(name, 40), found, "Is it misspelt? Else nothing to do.", FINE)


def _of(name, lines):
    return [line for line in lines if line.question == name]


def _same(paper, screen, questions):
    """Return the questions to which a screen gave first what stands on paper."""
    firsts = {}
    for line in screen:
        firsts.setdefault((place_of(line), line.supply), _typed(line))
    other = {
        one.question for one in paper if firsts.get((place_of(one), one.supply)) != _typed(one)
    }
    return questions - other


def _typed(line):
    return "".join(line.answer.split())


def named(line):
    """Return the small print of a question: what a typed row may begin with.

    Examples
    --------
    >>> named(new_line("BENCH-07", "wick", "230 V 50 Hz", "ohm-3", 0, "4.7 mA", 0, edition=2))
    'ohm-3 · set 0 · edition 2'
    """
    return f"{line.question} · set {line.draw} · edition {line.edition}"


def learner_in(typed, roster):
    """Return the bench code that was typed, its spelling forgiven; `6` may be BENCH-06.

    Raises
    ------
    NotUnderstood
        If the roster has no such learner; the text names those that are near.
    """
    learner = typed.strip().upper()
    known = [one for owner in roster.learners for one in roster.ids(owner)]
    short = re.fullmatch(r"([A-Z]*)[\s-]*0*(\d+)", learner)
    meant = short and re.compile(rf"{short[1] or '[A-Z]+'}-?0*{short[2]}")
    fits = [one for one in known if meant and meant.fullmatch(one)]
    if learner not in known and len(fits) == 1:
        return fits[0]
    if learner not in known:
        near = fits[:3] or get_close_matches(learner, roster.learners, n=3) or roster.learners[:3]
        raise NotUnderstood(
            f"The bench code {plain(learner) or '(none)'} was read, and the roster does not hold "
            f"it. Near it: {', '.join(near)}."
        )
    return learner


def understand(typed, learner, class_word, supply, bank, expected="", draw=0, pack=()):
    """Read one typed row, as the card would read it; nothing is kept.

    Parameters
    ----------
    typed : str
        The answer as it stands on paper; before it, up to a colon, perhaps the small print of its
        question: `ohm-3 · set 1 · edition 2: 4.7 mA`, of which `ohm-3:` is enough; or what stands
        above it, such as `Exercise 3:`.
    learner, class_word, supply : str
        Whose pack it is.
    bank : mapping
        Questions by id.
    expected : str
        The question that is next, where the row names none.
    draw : int
        The draw of the pack, where the row names none.
    pack : sequence of str
        Ids of what the pack asks, for a row that names a question as it is called there.

    Returns
    -------
    understood : Typed

    Raises
    ------
    NotUnderstood
        If there is no such question, or its kind cannot read the answer.
    """
    found = NAMED.fullmatch(typed.strip())
    name, text = (found["question"].lower(), found["answer"]) if found else (expected, typed)
    called = [one for one in pack if title(bank[one]).lower() == " ".join(name.split())]
    if len(called) > 1:
        raise NotUnderstood(f"“{name}” stands on this pack as {' and as '.join(called)}. Type one.")
    name = called[0] if called else name
    if name not in bank:
        near = get_close_matches(name, bank, n=3)
        hint = f" Near it: {', '.join(near)}." if near else " It stands in small print."
        raise NotUnderstood(f"The question {plain(name) or '(none)'} was read.{hint}")
    question, text = bank[name], text.translate(PLAIN_BLANKS).strip()
    draw = int(found["draw"]) if found and found["draw"] else draw
    edition = int(found["edition"]) if found and found["edition"] else question.edition
    if not 0 <= draw < MOST_DRAWS or not 0 < edition < MOST_DRAWS:
        raise NotUnderstood(f"set {draw}, edition {edition} was read. Both stand in small print.")
    if not text or len(text) > LONGEST_ANSWER:
        raise NotUnderstood(
            f"An answer of {len(text)} characters was read; 1 to {LONGEST_ANSWER} can be kept."
        )
    line = new_line(learner, class_word, supply, name, draw, text, 0, edition=edition)
    line, about = replace(line, by_hand=True), f"{learner}, {named(line)}: read as "
    if edition != question.edition:
        return Typed(line, f"{about}{plain(text)}. {EARLIER}")
    numbers = question.numbers_for(learner, class_word, SUPPLIES[supply], draw)
    text, answer = _read(question.kind, text, numbers)
    line = replace(line, answer=text)
    said = about + question.kind.said(answer, numbers)
    if question.role == "predict":
        return Typed(line, said, "A prediction: kept, not marked.")
    return Typed(line, said, _judged(question.kind.verdict_on(answer, numbers)))


def _read(kind, text, numbers):
    """Return a row as it is kept, and as it is read; its blanks part it where one way fits alone.

    Raise `NotUnderstood` where there is none, or where two would fit.
    """
    try:
        return text, kind.read(text, numbers)
    except NotRead as error:
        many = len(kind.by_hand(numbers).places)
        lines = f"Paper has {many} lines for it: type them on one. " if many > 1 else ""
        problem = NotUnderstood(f"{lines}{error}")
    words, found = re.split(r",?\s+", text), {}
    if 1 < many <= len(words) <= MOST_WORDS:
        for cuts in combinations(range(1, len(words)), many - 1):
            parts = (" ".join(words[at:to]) for at, to in pairwise((0, *cuts, len(words))))
            row = kind.between.join(parts)
            with suppress(NotRead):
                found[row] = kind.read(row, numbers)
    if len({answer.value for answer in found.values()}) != 1:
        raise problem from None
    return next(iter(found.items()))


def _judged(verdict):
    if verdict.right:
        return "✓ Right."
    word = "◐ Partly right." if verdict.share else "✗ Not yet."
    danger = f"⚠ Danger first, talk it through: {verdict.danger} " if verdict.danger else ""
    return f"{danger}{word} {verdict.reply}"


def refuse_twice(lines, typed):
    """Raise `NotUnderstood` where a row is typed whose place is taken already."""
    for before in (line for line in lines if place_of(line) == place_of(typed.line)):
        raise NotUnderstood(
            f"{named(before)} of {before.learner} is there already, as “{before.answer}”. "
            "Take that back first, or name the set of this pack."
        )
