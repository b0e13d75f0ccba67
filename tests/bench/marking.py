"""How fast a class is marked, and with how much memory: `python tests/bench/marking.py`.

Builds hand-ins of many learners, each with their own numbers, and marks them in fresh processes on
one core through the function that the command line calls. Exits with 1 when a bar is missed.

Explaining a wrong number by a search over the roads to the right one costs more than a list of
ready-made slips, and so the bar is hundreds of hand-ins a second, no thousand.
"""

import argparse
import json
import os
import platform
import subprocess
import sys
import tempfile
import time
from contextlib import suppress
from dataclasses import replace
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
from helpers.exercises.bank import bank, lessons  # noqa: E402
from helpers.exercises.draws import Draw  # noqa: E402
from helpers.exercises.kinds import Amount, NotRead  # noqa: E402
from helpers.exercises.standing import replay  # noqa: E402
from helpers.physics.mains import SUPPLIES  # noqa: E402
from helpers.quantities import write_as  # noqa: E402

QUESTIONS = 20
HAND_INS_PER_SECOND, TIMES_NOTEBOOK = 300, 250
BYTES_PER_LEARNER, PARTS_SECONDS, ONCE_SECONDS = 20_000, 0.010, 0.5
WAYS_WRONG = ("one turn", "one turn", "two turns", "unlisted")
CLASS_WORD, SUPPLY = "wick", "230 V 50 Hz"
RUNS = NOTEBOOKS = 3


def all_questions():
    """Return the bank's questions, and after them those made up for the tests."""
    modules = [*lessons().values(), *BANK_FILES.values()]
    return list(chain.from_iterable(module.QUESTIONS for module in modules))


def bench_bank():
    """Return a bank of twenty questions from all over the course.

    Those judged by what parts do are timed apart; a prediction is not marked.
    """
    quick = [q for q in bank().values() if q.kind.name != "parts" and q.role != "predict"]
    spread = [quick[number * len(quick) // QUESTIONS] for number in range(QUESTIONS)]
    module = SimpleNamespace(LESSON="99", TITLE="Bench", QUESTIONS=tuple(spread))
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
            numbers = question.numbers_for(name, CLASS_WORD, SUPPLIES[SUPPLY], 0)
            choices = typed_wrong(question, numbers, stream) if is_wrong else []
            typed = stream.pick(choices or [question.kind.model(numbers)])
            rows.append(_line(name, question, typed, number).text())
        path = folder / "hand-ins" / f"{CLASS_WORD}_{name}_2026-01-13.jsonl"
        path.write_text("\n".join(rows) + "\n", encoding="utf-8")
    return wrong / (learners * len(questions))


def typed_wrong(question, numbers, stream):
    """Return wrong answers to pick from: half one wrong turn, a quarter two, a quarter none."""
    kind = question.kind
    if not isinstance(kind, Amount):
        return list(wrong_answers(question, numbers))
    way = stream.pick(WAYS_WRONG)
    ends = []
    if way != "unlisted":
        roads = kind.road.wrong if way == "one turn" else kind.road.wrong_twice
        ends = _readable(kind, numbers, [end.value for end in roads(numbers)])
    right, powers = kind.right(numbers), [stream.pick(range(-1000, 1000)) / 1000 for _ in range(9)]
    return ends or _readable(kind, numbers, [right * 10**power for power in powers])


def _readable(kind, numbers, values):
    """Return values as typed; what only a computer would write is left out, and what is right."""
    typed = []
    for text in (write_as(value, kind.unit, 3) for value in values):
        with suppress(NotRead):
            if not kind.verdict_on(kind.read(text, numbers), numbers).right:
                typed.append(text)
    return typed


def _line(learner, question, typed, number):
    at = datetime(2026, 1, 13, 18, tzinfo=UTC) + timedelta(minutes=number)
    fields = (learner, CLASS_WORD, SUPPLY, question.id, 0, typed, 0, at)
    mark = sha256(f"{learner}{number}".encode()).hexdigest()[:16]
    return replace(new_line(*fields, question.edition), line=mark)


def mark_once(folder, with_memory):
    """Mark a room as the command does; return seconds, peak bytes and what became of it."""
    import tracemalloc

    from helpers.classroom.mark_book import MarkBook
    from helpers.classroom.marking import mark_folder
    from helpers.classroom.page import page
    from helpers.classroom.wanted import Wanted

    bank_files = bench_bank()
    start_busy = time.process_time()
    list(page(MarkBook(CLASS_WORD, ())))  # what is made ready once, however large the class
    once = time.process_time() - start_busy
    if with_memory:
        tracemalloc.start()
    wanted = Wanted(folder / "hand-ins", folder / "roster.csv", CLASS_WORD, folder / "out")
    start, start_busy = time.perf_counter(), time.process_time()
    marked = mark_folder(wanted, bank_files=bank_files)
    seconds, busy = time.perf_counter() - start, time.process_time() - start_busy
    peak = tracemalloc.get_traced_memory()[1] if with_memory else 0
    book = marked.book
    return {
        "seconds": seconds,
        "busy": busy,
        "once": once,
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
            numbers = question.numbers_for(name, CLASS_WORD, SUPPLIES[SUPPLY], 0)
            right = [question.kind.model(numbers)]
            wrong = list(wrong_answers(question, numbers)) if stream.pick(range(3)) == 0 else right
            line = _line(name, question, stream.pick(wrong or right), 0)
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
        fast = min(runs, key=lambda run: run["busy"])
        soon = min(run["seconds"] for run in runs)
        large = in_fresh_process(folder, "--memory")
    rate, by_clock = learners / fast["busy"], learners / soon
    memory = large["peak"] / learners
    slowest, mean = parts_seconds(100)
    notebook = notebook_seconds(NOTEBOOKS)
    times = notebook * by_clock
    print(f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC, {machine()}")
    print(f"command: python tests/bench/marking.py --learners {learners}")
    sums = sum(isinstance(question.kind, Amount) for question in bench_bank()["99"].QUESTIONS)
    print(
        f"{learners} hand-ins of {QUESTIONS} questions, {sums} of them sums, "
        f"{100 * share:.0f} % of the answers wrong; "
        f"{fast['answers']} answers marked, {fast['percent']:.1f} % of the marks on average, "
        f"{fast['problems']} problems"
    )
    bars = (
        (
            rate >= HAND_INS_PER_SECOND,
            f"{rate:.0f} hand-ins a second of one core's own time, reading and writing included, "
            f"the best of {RUNS} fresh processes (bar: {HAND_INS_PER_SECOND} or more); "
            f"{by_clock:.0f} a second by the clock",
        ),
        (
            times >= TIMES_NOTEBOOK,
            f"{times:.0f} times as fast, by the clock, as running one notebook of {QUESTIONS} "
            f"cells with nbclient: {notebook:.2f} s each (bar: {TIMES_NOTEBOOK} or more)",
        ),
        (
            memory <= BYTES_PER_LEARNER,
            f"{memory / 1000:.1f} kB a learner at the peak "
            f"(bar: {BYTES_PER_LEARNER / 1000:.0f} or less)",
        ),
        (
            fast["once"] <= ONCE_SECONDS,
            f"{fast['once']:.2f} s once a run to make the page ready, whatever the class "
            f"(bar: {ONCE_SECONDS} or less)",
        ),
        (
            slowest <= PARTS_SECONDS,
            f"questions judged by what parts do: {1000 * mean:.2f} ms each, "
            f"{1000 * slowest:.2f} at most (bar: {1000 * PARTS_SECONDS:.0f} or less)",
        ),
    )
    for held, text in bars:
        print(f"{'held  ' if held else 'MISSED'} {text}")
    return 0 if all(held for held, _ in bars) else 1


if __name__ == "__main__":
    sys.exit(main())
