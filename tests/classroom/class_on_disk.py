"""A class on disk, as small as a test needs it: a folder, a roster and the lines put into it."""

import csv
import json
from dataclasses import replace
from datetime import UTC, datetime

from invented_bank import BANK_FILES

from helpers.classroom.marking import mark_folder
from helpers.classroom.paper_log import PaperLog
from helpers.classroom.wanted import Wanted
from helpers.exercises.answer_log import new_line
from helpers.physics.mains import SUPPLIES

SUPPLY = "230 V 50 Hz"


class Room:
    """A folder of hand-ins, its roster, and the mark book that comes of them."""

    def __init__(self, folder):
        self.folder = folder
        self.hand_ins = folder / "hand-ins"
        self.hand_ins.mkdir()
        self.roster = folder / "roster.csv"
        self.out = folder / "out"
        self.paper = PaperLog(folder / "paper" / "paper-wick.jsonl")
        self.write_roster("learner\nBENCH-01\nBENCH-02\n")

    def write_roster(self, text):
        self.roster.write_bytes(text if isinstance(text, bytes) else text.encode())

    def line(self, answer, question="current-1", learner="BENCH-01", draw=0, second=0, **changes):
        """Return the fields of a line; the time follows from `second`, the id from all of it."""
        at = datetime(2026, 1, 13, 18, 0, second, tzinfo=UTC)
        line = new_line(learner, "wick", SUPPLY, question, draw, answer, 0, at)
        held = json.loads(line.text()) | {"line": f"{learner}-{question}-{draw}-{second}"}
        return held | changes

    def right(self, question_id, learner="BENCH-01", draw=0):
        question = self.question(question_id)
        numbers = question.numbers_for(learner, "wick", SUPPLIES[SUPPLY], draw)
        return question.kind.model(numbers)

    question_list = [question for module in BANK_FILES.values() for question in module.QUESTIONS]

    def question(self, question_id):
        return next(q for q in self.question_list if q.id == question_id)

    def numbers(self, question_id, learner="BENCH-01", draw=0):
        question = self.question(question_id)
        return question.numbers_for(learner, "wick", SUPPLIES[SUPPLY], draw)

    def hand_in(self, *lines, name="wick_BENCH-01_2026-01-13.jsonl", end=""):
        path = self.hand_ins / name
        path.parent.mkdir(parents=True, exist_ok=True)
        text = "".join(json.dumps(line) + "\n" for line in lines) + end
        path.write_text(text, encoding="utf-8")
        return path

    def neighbour(self, *ids, learner="BENCH-02"):
        """Hand in right answers of somebody else, one to each lesson if no question is named."""
        ids = ids or ("current-1", "current-3")
        lines = [self.line(self.right(name, learner), name, learner) for name in ids]
        return self.hand_in(*lines, name=f"neighbour-{learner}.jsonl")

    def type_back(self, answer, question="current-1", learner="BENCH-01", draw=0, **changes):
        """Keep a line in the paper log, as typed by hand; return it."""
        line = new_line(learner, "wick", SUPPLY, question, draw, answer, 0)
        line = replace(line, by_hand=True, **changes)
        self.paper.keep(line)
        return line

    def mark(self, class_word="wick", only=(), accept=()):
        return self.run(class_word, only, accept).book

    def run(self, class_word="wick", only=(), accept=(), decided=(), **more):
        where = self.hand_ins, self.roster, class_word, self.out
        wanted = Wanted(*where, only, accept, decided, self.paper.path)
        return mark_folder(wanted, bank_files=BANK_FILES, **more)

    def table(self):
        with open(self.out / "mark-book.csv", encoding="utf-8", newline="") as handle:
            return {row["learner"]: row for row in csv.DictReader(handle)}

    def page(self):
        return (self.out / "mark-book.html").read_text(encoding="utf-8")


def found_in(book):
    """Return all that a book says of its problems, as one text."""
    return "\n".join(f"{p.place}: {p.found} {p.advice}" for p in book.problems)
