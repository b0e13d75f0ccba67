"""An invented class: hand-ins of bench codes, with typical right and wrong answers from the bank.

For trying the marking, and for tests. The same at every run. Must never stand among real hand-ins.
"""

import os
import shlex
import subprocess
import sys
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from itertools import islice
from pathlib import Path

from helpers.exercises.answer_log import new_line
from helpers.exercises.bank import bank
from helpers.exercises.draws import Draw
from helpers.exercises.hand_in import name_of
from helpers.exercises.mistakes import wrong_answers
from helpers.exercises.refusals import Unusable, make_folder, plain, write_text
from helpers.exercises.settings import Settings
from helpers.exercises.wording import CAUTION
from helpers.pages import templates
from helpers.physics.mains import SUPPLIES

CLASS_WORD = "wick"
LEARNERS = tuple(f"BENCH-{number:02d}" for number in range(1, 25))
SILENT, TWO_FILES, CUT_SHORT, STRANGER = "BENCH-24", "BENCH-05", "BENCH-09", "BENCH-77"
ABROAD = {"BENCH-12": "120 V 60 Hz", "BENCH-18": "120 V 60 Hz", "BENCH-21": "100 V 50 Hz"}
FIRST_EVENING = datetime(2026, 1, 13, 18, 0, tzinfo=UTC)

# How a learner meets a question: how many wrong answers come first, and whether a right one
# follows. After three wrong ones the worked answer is shown, so the right one has fresh numbers.
LEFT_OUT = None
STEADY = ((0, True),) * 7 + ((1, True),) * 2 + (LEFT_OUT,)
LEARNING = ((0, True),) * 4 + ((1, True),) * 3 + ((2, True), (3, True), (1, False))
STUCK = ((0, True), (1, True), (2, True), (3, True), (3, False), (1, False), (2, False), LEFT_OUT)
MANNERS = (STEADY, STEADY, LEARNING, LEARNING, LEARNING, STUCK)


def write_demo_room(folder):
    """Write an invented class into a new or empty folder.

    Parameters
    ----------
    folder : str or Path
        Where it goes.

    Returns
    -------
    command : str
        The command line that marks it.

    Raises
    ------
    Unusable
        If the folder holds something already, or cannot be written.
    """
    folder = Path(folder)
    if folder.exists() and not (folder.is_dir() and not any(folder.iterdir())):
        raise Unusable(
            f"{plain(str(folder), 300)} is there already and is not an empty folder. Give a new "
            "one, so that invented answers never mix with real ones."
        )
    hand_ins, roster = folder / "hand-ins", folder / "roster.csv"
    make_folder(hand_ins)
    command = _command(hand_ins, roster, folder / "marked")
    about = {"learners": len(LEARNERS), "word": CLASS_WORD, "silent": SILENT, "stranger": STRANGER}
    about |= {"two_files": TWO_FILES, "cut_short": CUT_SHORT, "caution": CAUTION}
    write_text(folder / "README.txt", [templates.text("demo-room.txt", **about, command=command)])
    write_text(roster, ["learner\n", *(f"{learner}\n" for learner in LEARNERS)])
    for name, content in hand_in_files():
        write_text(hand_ins / name, [content])
    return command


def hand_in_files():
    """Yield the name and the content of every hand-in of the invented class."""
    for learner in (*LEARNERS, STRANGER):
        if learner == SILENT:
            continue
        evening = FIRST_EVENING + timedelta(days=Draw("evening", learner).pick((0, 0, 1, 3)))
        rows = [line.text() + "\n" for line in lines_of(learner, evening)]
        content = "".join(rows)
        if learner == CUT_SHORT:
            content = content[: -len(rows[-1]) // 2]
        if learner == TWO_FILES:
            yield _named(learner, evening, "".join(rows[: max(1, len(rows) // 2)]))
            evening += timedelta(days=7)
        yield _named(learner, evening, content)


def _named(learner, evening, content):
    return name_of(CLASS_WORD, learner, evening.date(), content.encode("utf-8")), content


def lines_of(learner, at, questions=None):
    """Return the invented log of one learner.

    Parameters
    ----------
    learner : str
        Whose.
    at : datetime
        When the first question was met.
    questions : iterable of Question or None
        None takes the whole bank.

    Returns
    -------
    lines : list of LogLine
        With ids that follow from the learner.
    """
    supply = SUPPLIES[ABROAD.get(learner, Settings.supply)]
    stream = Draw("demo room", learner)
    manner = stream.pick(MANNERS)
    lines = []
    for question in questions or bank().values():
        way = stream.pick(manner)
        if way is LEFT_OUT and lines:  # nobody hands in an empty log: the first one is answered
            continue
        for draw, typed, nudges in _attempts(question, learner, supply, stream, way or (0, True)):
            at += timedelta(seconds=stream.pick(range(20, 240)))
            fields = (learner, CLASS_WORD, supply.name, question.id, draw, typed, nudges, at)
            mark = sha256(f"{learner} {len(lines)}".encode()).hexdigest()[:16]
            lines.append(replace(new_line(*fields, question.edition), line=mark))
    return lines


def _attempts(question, learner, supply, stream, way):
    """Return (draw, answer, nudges seen) of each try of one learner at one question."""
    slips, ends_right = way
    numbers = question.numbers_for(learner, CLASS_WORD, supply, 0)
    wrong = wrong_answers(question, numbers, stream.shuffle)
    if question.role == "predict":  # which need not have a right answer
        return [(0, next(wrong, None) or question.kind.model(numbers), 0)]
    most = 1 if question.danger else question.kind.tries
    tried = islice(wrong, min(slips, most))
    tries = [(0, typed, min(seen, len(question.nudges))) for seen, typed in enumerate(tried)]
    if len(tries) < most and (ends_right or not tries):
        tries.append((0, question.kind.model(numbers), min(len(tries), len(question.nudges))))
    elif ends_right and question.has_fresh_numbers:
        numbers = question.numbers_for(learner, CLASS_WORD, supply, 1)
        tries.append((1, question.kind.model(numbers), 0))
    return tries


def _command(hand_ins, roster, out):
    python = Path(sys.executable)
    if python.is_relative_to(Path.cwd()):
        python = python.relative_to(Path.cwd())
    words = [str(python), "-m", "helpers", "mark", str(hand_ins), "--roster", str(roster)]
    words += ["--class-word", CLASS_WORD, "--out", str(out)]
    return subprocess.list2cmdline(words) if os.name == "nt" else shlex.join(words)
