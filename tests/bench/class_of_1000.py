"""How long a large class takes on the whole bank: `python tests/bench/class_of_1000.py`.

Builds a hand-in of every question of the bank for each learner, parts included, a third of the
answers wrong, half of those repaired; marks and reports it in a fresh process as the command does,
feedback included. Exits with 1 when a bar is missed.

By the clock on two cores. Whoever shares the machine makes clocks run long: so the load is said,
before and after, and the processor's own time.
"""

import argparse
import json
import os
import resource
import subprocess
import sys
import tempfile
import time
from datetime import UTC, datetime
from pathlib import Path

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2]), str(HERE.parent)]

from marking import CLASS_WORD, SUPPLY, _line, machine, typed_wrong  # noqa: E402

from helpers.exercises.bank import bank  # noqa: E402
from helpers.exercises.draws import Draw  # noqa: E402
from helpers.physics.mains import SUPPLIES  # noqa: E402

SECONDS, MEGABYTES, CORES = 75, 600, 2
WRONG = 3  # one in so many


def build_room(folder, learners):
    """Write so many hand-ins and their roster."""
    names = [f"BENCH-{number:05d}" for number in range(learners)]
    (folder / "hand-ins").mkdir()
    (folder / "roster.csv").write_text("learner\n" + "\n".join(names) + "\n", encoding="utf-8")
    for name in names:
        write_hand_in(folder / "hand-ins", name)


def write_hand_in(folder, name):
    stream, rows = Draw("large class", name), []
    for question in bank().values():
        numbers = question.numbers_for(name, CLASS_WORD, SUPPLIES[SUPPLY], 0)
        for text in typed_by(question, numbers, stream):
            rows.append(_line(name, question, text, len(rows)).text())
    path = folder / f"{CLASS_WORD}_{name}_2026-01-13.jsonl"
    path.write_text("\n".join(rows) + "\n", encoding="utf-8")


def typed_by(question, numbers, stream):
    """Return one answer or two; parts are picked blindly: a search takes long."""
    kind = question.kind
    if kind.name == "parts":
        picks = [[f.text(stream.pick(f.bin)) for f in kind.fields] for _ in range(2)]
        return list(map("; ".join, picks))[: stream.pick((1, 2))]
    if question.role == "predict":
        return kind.guesses(numbers)[:1]
    right = [kind.model(numbers)]
    if stream.pick(range(WRONG)):
        return right
    return [
        stream.pick(typed_wrong(question, numbers, stream) or right),
        *right[: stream.pick((0, 1))],
    ]


def mark_once(folder):
    """Mark a room as the command does; return what it took and what became of it."""
    from helpers.classroom.marking import mark_folder
    from helpers.classroom.wanted import Wanted

    start, busy = time.perf_counter(), sum(os.times()[:4])
    where = folder / "hand-ins", folder / "roster.csv", CLASS_WORD, folder / "out"
    book = mark_folder(Wanted(*where), feedback=folder / "out" / "feedback").book
    return {
        "seconds": time.perf_counter() - start,
        "busy": sum(os.times()[:4]) - busy,
        "megabytes": sum(map(_peak, (resource.RUSAGE_SELF, *[resource.RUSAGE_CHILDREN] * CORES))),
        "answers": sum(row.answers for row in book.rows),
        "questions": len(book.questions),
        "problems": len(book.problems),
        "percent": sum(map(book.percent, book.rows)) / len(book.rows),
    }


def _peak(whose):
    """Return the peak of this process, or of the largest of those it started [MB]."""
    return resource.getrusage(whose).ru_maxrss / 1024


def report(learners):
    """Measure, print what was found and return the exit code."""
    with tempfile.TemporaryDirectory() as name:
        build_room(Path(name), learners)
        before = os.getloadavg()[0]
        command = [sys.executable, str(HERE), "--mark", name]
        done = subprocess.run(command, check=True, capture_output=True, text=True)
    took = json.loads(done.stdout)
    print(f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC, {machine()}")
    print(f"command: python tests/bench/class_of_1000.py --learners {learners}")
    print(
        f"{learners} hand-ins, {took['questions']} questions, {took['answers']} answers, "
        f"{took['percent']:.1f} % of the marks on average, {took['problems']} problems"
    )
    load = os.getloadavg()[0]
    seconds = SECONDS * learners / 1000
    bars = (
        (
            took["seconds"] <= seconds,
            f"{took['seconds']:.1f} s by the clock for marks, page, table and feedback (bar: "
            f"{seconds:g} or less), at a load of {before:.1f} before and {load:.1f} after; "
            f"{took['busy']:.1f} s of all cores' own time",
        ),
        (
            took["megabytes"] <= MEGABYTES,
            f"{took['megabytes']:.0f} MB at the peak (bar: {MEGABYTES} or less)",
        ),
    )
    for held, text in bars:
        print(f"{'held  ' if held else 'MISSED'} {text}")
    return 0 if all(held for held, _ in bars) else 1


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--learners", type=int, default=1000)
    parser.add_argument("--mark", type=Path, help="mark this room once and print what it took")
    arguments = parser.parse_args()
    if arguments.mark:
        print(json.dumps(mark_once(arguments.mark)))
        return 0
    return report(arguments.learners)


if __name__ == "__main__":
    sys.exit(main())
