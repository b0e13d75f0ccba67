"""Answer at random and compare card and mark book: `python tests/bench/card_and_book.py`.

Each of 20,000 sequences is one log: right, wrong, unread and repeated answers to questions of every
kind, under several class words and supplies, with fresh draws, nudges, sessions opened again and
questions whose edition is raised, or taken back as on a machine with older lessons. Under each
class word the card's session and the mark book of that log must say the same, and the book must
find nothing to ask. One in fifty goes through files and the whole of a run. Ends with code 1 if a
bar is missed; tests/classroom/test_card_and_book.py runs 600.
"""

import argparse
import random
import sys
import tempfile
import time
from collections import Counter
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parent), str(HERE.parents[2])]

from measured import heading, verdict  # noqa: E402

from helpers.classroom import mark_book as states  # noqa: E402
from helpers.classroom.hand_ins import HandIn  # noqa: E402
from helpers.classroom.learner_rows import Marker  # noqa: E402
from helpers.classroom.mark_book import MarkBook, lessons_of  # noqa: E402
from helpers.classroom.marking import mark_folder  # noqa: E402
from helpers.classroom.room import Gathered  # noqa: E402
from helpers.classroom.wanted import Wanted  # noqa: E402
from helpers.exercises import session as sessions  # noqa: E402
from helpers.exercises.bank import bank  # noqa: E402
from helpers.exercises.session import Session  # noqa: E402
from helpers.exercises.settings import Settings  # noqa: E402
from helpers.exercises.store import DiskStore, MemoryStore  # noqa: E402
from helpers.physics.mains import SUPPLIES  # noqa: E402
from helpers.quantities import GLOSSARY  # noqa: E402

SEQUENCES, ONE_IN_FILES = 20_000, 50
WORDS = ("wick", "wax", "home")
UNREAD = ("seven", "1,000", "?", "A A A", "12 kg", "🕯", "none; none")
NOT_RIGHT = (states.PART, states.NONE, states.DANGER)


class Sequence:
    """One learner's log as it comes about, and the bank as it stands at each moment."""

    def __init__(self, seed, store=None):
        self.chance = random.Random(seed)
        self.store = store or MemoryStore()
        kinds = Counter(question.kind.name for question in bank().values())
        rare = [name for name, question in bank().items() if kinds[question.kind.name] == 1]
        names = [*bank(), *rare * 4]
        self.names = self.chance.sample(names, self.chance.randint(1, 3))
        self.questions = {name: bank()[name] for name in self.names}
        code = f"BENCH-{self.chance.randint(1, 999)}"
        self.settings = Settings(code, WORDS[0], self.chance.choice(list(SUPPLIES)))
        self.typed, self.met = {}, Counter()
        self.session = self.open()

    def open(self):
        return Session(self.settings, self.store)

    def step(self):
        """Do one thing that a learner may do."""
        way = self.chance.choices((self.answer, self.change, self.edit, self.nudge), (14, 3, 1, 2))
        way[0]()

    def answer(self):
        name = self.chance.choice(self.names)
        number = self.session.newest_draw(name)
        if self.session.draw(name, number).finished(self.questions[name]):
            number += self.chance.choice((0, 1, 1))
        elif self.chance.random() < 0.2:
            number = max(0, number + self.chance.choice((-1, 1, 2)))
        numbers = self.session.draw(name, number).numbers
        before = self.typed.setdefault((name, number), [])
        way = self.chance.choice(("right", "any", "any", "unread", "again"))
        if way == "right":
            typed = self.questions[name].kind.model(numbers)
        elif way == "unread":
            typed = self.chance.choice(UNREAD)
        elif way == "again" and before:
            typed = self.chance.choice(before)
        else:
            typed = self.any(self.questions[name].kind, numbers)
        before.append(typed)
        outcome = self.session.answer(name, typed, number)
        self.met[way if outcome.verdict else "refused"] += 1
        if outcome.verdict:
            question = self.questions[name]
            self.met.update([question.kind.name, *["picture"] * bool(question.picture)])

    def any(self, kind, numbers):
        """Return an answer of any worth that can be read."""
        pick = self.chance.choice
        if kind.name == "quantity":
            value = kind.right(numbers) * pick((1.0, 1.01, 1.2, 2.0, 0.5, 1000.0))
            return f"{value:.5e} {GLOSSARY[kind.of].unit}"
        if kind.name == "parts":
            return [part.text(pick(part.bin)) for part in kind.fields]
        if not hasattr(kind, "shown"):
            return pick([kind.model(numbers), *kind.guesses(numbers)])
        letters = list(kind.shown(numbers))
        self.chance.shuffle(letters)
        return {"choice": letters[:1], "order": letters}.get(
            kind.name, letters[: self.chance.randint(1, len(letters))]
        )

    def change(self):
        """Change class word or supply, or only close the lesson, and open it again."""
        what = self.chance.choice(("class_word", "supply", None))
        if what:
            value = self.chance.choice(WORDS if what == "class_word" else list(SUPPLIES))
            self.settings = replace(self.settings, **{what: value})
        self.session = self.open()

    def edit(self):
        """Raise the edition of a question, or go on with lessons that have an older one."""
        name = self.chance.choice(self.names)
        question = self.questions[name]
        edition = max(bank()[name].edition, question.edition + self.chance.choice((1, 1, -1)))
        self.questions[name] = replace(question, edition=edition)
        self.session = self.open()

    def nudge(self):
        name = self.chance.choice(self.names)
        self.session.nudge(name, self.session.newest_draw(name))


@contextmanager
def bank_of(sequence):
    """Let sessions ask the bank of a sequence."""
    before = sessions.bank
    sessions.bank = lambda: sequence.questions
    try:
        yield
    finally:
        sessions.bank = before


def on_card(session, name):
    """Return what the card and the progress of a session say of a question."""
    standing = session.standing(name)
    tried, marked = standing.tries > 0, standing.question.role != "predict"
    return {
        "marks": standing.marks,
        "open": not tried and not standing.earlier,
        "earlier": not tried and standing.earlier > 0,
        "right": tried and marked and standing.share == 1,
        "not right yet": tried and marked and standing.share < 1 and not standing.helped,
        "with help": tried and marked and standing.helped,
        "right after help": standing.right_after_help,
    }


def in_book(row, question):
    """Return the same of a row of the mark book."""
    state = row.state(question)
    return {
        "marks": row.earned(question),
        "open": state == states.BLANK,
        "earlier": state == states.EARLIER,
        "right": state == states.FULL,
        "not right yet": state in NOT_RIGHT,
        "with help": state in (states.HELPED, states.REPAIRED),
        "right after help": state == states.REPAIRED,
    }


def marked_in_memory(sequence, word):
    """Return the row of a log under a class word, marked without a disk."""
    questions = tuple(sequence.questions.values())
    module = SimpleNamespace(TITLE="Random", QUESTIONS=questions)
    content = "".join(line.text() + "\n" for line in sequence.session.log.lines()[0]).encode()
    learner = sequence.settings.learner
    hand_ins, lessons = [HandIn("", "", learner, "", content)], lessons_of({"00": module})
    shown, book = (
        Marker(word, lessons)(learner, states.HANDED_IN, [learner], [hand_ins]),
        MarkBook(word, lessons),
    )
    Gathered(book).add(shown)
    return book.rows[0], book


def marked_through_files(sequence, word, folder):
    """Return the row of the hand-in that a session writes, marked as the command does."""
    learner = sequence.settings.learner
    path = sequence.open().hand_in().path
    roster, module = folder / "roster.csv", SimpleNamespace(TITLE="Random", QUESTIONS=())
    module.QUESTIONS = tuple(sequence.questions.values())
    neighbour = replace(sequence.settings, learner="OTHER", class_word=word)
    other = Session(neighbour, DiskStore(folder / "other" / "answers"))
    for name in sequence.names:  # so that something counts, whatever the learner has done
        first = other.question(name).kind
        other.answer(name, first.model(other.draw(name).numbers) or ["A"])
    other.hand_in().path.rename(path.parent / "other.jsonl")
    roster.write_text(f"learner\n{learner}\nOTHER\n")
    wanted = Wanted(path.parent, roster, word, folder / "out")
    book = mark_folder(wanted, bank_files={"00": module}).book
    return book.rows[0], book


def differences(sequence, mark):
    """Return where card and book of a finished sequence differ, under every class word."""
    found = []
    lines, _ = sequence.session.log.lines()
    if not lines:
        return found
    for word in WORDS:
        fresh = Session(replace(sequence.settings, class_word=word), sequence.store)
        live = [sequence.session] if word == sequence.settings.class_word else []
        row, book = mark(sequence, word)
        for name, question in sequence.questions.items():
            booked = in_book(row, question)
            for session in (fresh, *live):
                if on_card(session, name) != booked:
                    found.append((word, name, on_card(session, name), booked))
        remarks = [p.found for p in book.problems if "All of it counts" in p.advice]
        if remarks:
            found.append((word, remarks))
    return found


def run(sequences, seed=7):
    """Run so many sequences; return their differences, each with its seed, and what was met."""
    found, met = [], Counter()
    for number in range(seed, seed + sequences):
        through_files = number % ONE_IN_FILES == 0
        with tempfile.TemporaryDirectory() if through_files else _nowhere() as name:
            store, mark = None, marked_in_memory
            if through_files:
                folder = Path(name)
                store = DiskStore(folder / "lessons" / "answers")
                mark = _through(folder)
            sequence = Sequence(number, store)
            with bank_of(sequence):
                for _ in range(sequence.chance.randint(4, 16)):
                    sequence.step()
                found += [(number, *one) for one in differences(sequence, mark)]
            met += sequence.met
    return found, met


def _through(folder):
    return lambda sequence, word: marked_through_files(sequence, word, folder)


@contextmanager
def _nowhere():
    yield None


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--sequences", type=int, default=SEQUENCES)
    arguments = parser.parse_args()
    print(heading(f"python tests/bench/card_and_book.py --sequences {arguments.sequences}"))
    start = time.perf_counter()
    found, met = run(arguments.sequences)
    told = ", ".join(f"{count} {what}" for what, count in met.most_common())
    print(
        f"{arguments.sequences} sequences, one in {ONE_IN_FILES} through files, in "
        f"{time.perf_counter() - start:.0f} s; answers: {told}"
    )
    return verdict(not found, f"{len(found)} differences of card and book (bar: 0) {found[:2]}")


if __name__ == "__main__":
    sys.exit(main())
