"""How fast a class is marked, and with how much memory: `python tests/bench/marking.py`.

Builds hand-ins of many learners, each with their own numbers, and marks them in fresh processes on
one core through the function that the command line calls. Exits with 1 when a bar is missed.
"""

import argparse
import json
import os
import platform
import subprocess
import sys
import tempfile
import time
from datetime import UTC, datetime, timedelta
from hashlib import sha256
from itertools import chain
from pathlib import Path
from types import SimpleNamespace

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2]), str(HERE.parents[1] / "classroom")]

from invented_bank import BANK_FILES  # noqa: E402

from helpers.classroom.demo_room import wrong_answers  # noqa: E402
from helpers.exercises.answer_log import new_line  # noqa: E402
from helpers.exercises.bank import lessons  # noqa: E402
from helpers.exercises.draws import Draw  # noqa: E402
from helpers.exercises.standing import replay  # noqa: E402
from helpers.physics.mains import SUPPLIES  # noqa: E402

QUESTIONS = 20
HAND_INS_PER_SECOND, BYTES_PER_LEARNER, PARTS_SECONDS = 1000, 20_000, 0.010
CLASS_WORD, SUPPLY = "wick", "230 V 50 Hz"
RUNS = NOTEBOOKS = 3


def all_questions():
    """Return the bank's questions, and after them those made up for the tests."""
    modules = [*lessons().values(), *BANK_FILES.values()]
    return list(chain.from_iterable(module.QUESTIONS for module in modules))


def bench_bank():
    """Return a bank of twenty questions; those judged by what parts do are timed apart."""
    quick = [question for question in all_questions() if question.kind.name != "parts"]
    module = SimpleNamespace(LESSON="99", TITLE="Bench", QUESTIONS=tuple(quick[:QUESTIONS]))
    return {module.LESSON: module}


def build_room(folder, learners):
    """Write so many hand-ins and their roster; return the share of answers that are wrong."""
    (folder / "hand-ins").mkdir()
    names = [f"BENCH-{number:05d}" for number in range(learners)]
    (folder / "roster.csv").write_text("learner\n" + "\n".join(names) + "\n", encoding="utf-8")
    questions = bench_bank()["99"].QUESTIONS
    wrong = 0
    for name in names:
        stream = Draw("bench", name)
        rows = []
        for number, question in enumerate(questions):
            is_wrong = stream.pick(range(3)) == 0
            wrong += is_wrong
            rows.append(json.dumps(_line(name, question, is_wrong, number, stream)))
        path = folder / "hand-ins" / f"{CLASS_WORD}_{name}_2026-01-13.jsonl"
        path.write_text("\n".join(rows) + "\n", encoding="utf-8")
    return wrong / (learners * len(questions))


def _line(learner, question, is_wrong, number, stream):
    numbers = question.numbers_for(learner, CLASS_WORD, SUPPLIES[SUPPLY], 0)
    any_will_do = is_wrong or question.role == "predict"
    choices = wrong_answers(question, numbers) if any_will_do else []
    choices = choices or [question.kind.model(numbers)]
    at = datetime(2026, 1, 13, 18, tzinfo=UTC) + timedelta(minutes=number)
    fields = (learner, CLASS_WORD, SUPPLY, question.id, 0, stream.pick(choices), 0, at)
    mark = sha256(f"{learner}{number}".encode()).hexdigest()[:16]
    return new_line(*fields, question.edition) | {"line": mark}


def mark_once(folder, with_memory):
    """Mark a room as the command does; return seconds, peak bytes and what became of it."""
    import tracemalloc

    from helpers.classroom.marking import mark_folder

    bank_files = bench_bank()
    if with_memory:
        tracemalloc.start()
    out = folder / "out"
    start, start_busy = time.perf_counter(), time.process_time()
    marked = mark_folder(folder / "hand-ins", folder / "roster.csv", CLASS_WORD, out, bank_files)
    seconds, busy = time.perf_counter() - start, time.process_time() - start_busy
    peak = tracemalloc.get_traced_memory()[1] if with_memory else 0
    book = marked.book
    return {
        "seconds": seconds,
        "busy": busy,
        "peak": peak,
        "hand_ins": book.hand_ins,
        "problems": len(book.problems),
        "answers": sum(row.answers for row in book.rows),
        "percent": sum(map(book.percent, book.rows)) / len(book.rows),
    }


def in_fresh_process(folder, *more):
    """Run `mark_once` in a new process, so that nothing is left from an earlier run."""
    command = [sys.executable, str(HERE), "--mark", str(folder), *more]
    done = subprocess.run(command, check=True, capture_output=True, text=True)
    return json.loads(done.stdout)


def parts_seconds(learners):
    """Return the longest and the mean time to mark one answer of kind parts, fresh numbers each."""
    questions = [question for question in all_questions() if question.kind.name == "parts"]
    taken = []
    for number in range(learners):
        for question in questions:
            name = f"BENCH-{number:05d}"
            stream = Draw("parts", name, question.id)
            line = _line(name, question, stream.pick(range(3)) == 0, 0, stream)
            start = time.perf_counter()
            replay(question, [line], SUPPLIES, CLASS_WORD)
            taken.append(time.perf_counter() - start)
    return max(taken), sum(taken) / len(taken)


def notebook_seconds(count):
    """Return the mean time that running a notebook of as many answers takes: what this replaces."""
    import nbformat
    from nbclient import NotebookClient

    cells = [f"volts, ohms = 12.0, {100 * n + 330}.0\nvolts / ohms" for n in range(QUESTIONS)]
    taken = []
    for _ in range(count):
        notebook = nbformat.v4.new_notebook(cells=list(map(nbformat.v4.new_code_cell, cells)))
        start = time.perf_counter()
        NotebookClient(notebook, kernel_name="python3").execute()
        taken.append(time.perf_counter() - start)
    return sum(taken) / count


def machine():
    return f"{platform.system()} {platform.machine()}, {os.cpu_count()} cores, Python " + (
        platform.python_version()
    )


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--learners", type=int, default=2000)
    parser.add_argument("--mark", type=Path, help="mark this room once and print what it took")
    parser.add_argument("--memory", action="store_true", help="with --mark: trace memory")
    arguments = parser.parse_args()
    if arguments.mark:
        if hasattr(os, "sched_setaffinity"):
            os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
        print(json.dumps(mark_once(arguments.mark, arguments.memory)))
        return 0
    return report(arguments.learners)


def report(learners):
    """Measure, print what was found and return the exit code."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        share = build_room(folder, learners)
        runs = [in_fresh_process(folder) for _ in range(RUNS)]
        fast = min(runs, key=lambda run: run["seconds"])
        large = in_fresh_process(folder, "--memory")
    rate, memory = fast["hand_ins"] / fast["seconds"], large["peak"] / learners
    slowest, mean = parts_seconds(100)
    notebook = notebook_seconds(NOTEBOOKS)
    print(f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC, {machine()}")
    print(f"command: python tests/bench/marking.py --learners {learners}")
    print(
        f"{learners} hand-ins of {QUESTIONS} questions, {100 * share:.0f} % of the answers wrong; "
        f"{fast['answers']} answers marked, {fast['percent']:.1f} % of the marks on average, "
        f"{fast['problems']} problems"
    )
    bars = (
        (
            rate >= HAND_INS_PER_SECOND,
            f"{rate:.0f} hand-ins/s on one core by the clock, reading and writing included, the "
            f"best of {RUNS} fresh processes (bar: {HAND_INS_PER_SECOND} or more); "
            f"{fast['hand_ins'] / fast['busy']:.0f} a second of the core's own time",
        ),
        (
            memory <= BYTES_PER_LEARNER,
            f"{memory / 1000:.1f} kB a learner at the peak "
            f"(bar: {BYTES_PER_LEARNER / 1000:.0f} or less)",
        ),
        (
            slowest <= PARTS_SECONDS,
            f"questions judged by what parts do: {1000 * mean:.2f} ms each, "
            f"{1000 * slowest:.2f} at most (bar: {1000 * PARTS_SECONDS:.0f} or less)",
        ),
    )
    for held, text in bars:
        print(f"{'held  ' if held else 'MISSED'} {text}")
    print(
        f"running one notebook of {QUESTIONS} cells with nbclient instead: {notebook:.2f} s, "
        f"{notebook * rate:.0f} times as long"
    )
    return 0 if all(held for held, _ in bars) else 1


if __name__ == "__main__":
    sys.exit(main())
