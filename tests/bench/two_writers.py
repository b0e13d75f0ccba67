"""Let two processes answer at the same time into one log, and count the whole lines.

Run `python tests/bench/two_writers.py` for 1,000 answers each; it ends with code 1 if a bar is
missed. tests/exercises/test_killed_and_two_writers.py runs a tenth. Writes to a temporary folder.
"""

import argparse
import os
import subprocess
import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).resolve()
ROOT = HERE.parents[2]
sys.path[:0] = [str(HERE.parent), str(ROOT)]

from measured import heading, verdict  # noqa: E402

from helpers.exercises.answer_log import AnswerLog  # noqa: E402
from helpers.exercises.store import ANSWERS_VARIABLE, DiskStore  # noqa: E402

LEARNER, QUESTION = "BENCH-07", "ohm-2"
ANSWERS = 1000


def answer_many(writer, answers):
    """Be one of the two kernels: wait for the word, then answer as fast as can be."""
    from helpers.exercises.session import learner_session
    from helpers.exercises.store import here

    session, _ = learner_session(here(), LEARNER, "wick", "230 V 50 Hz")
    print("ready", flush=True)
    sys.stdin.readline()
    start = time.monotonic()
    for number in range(answers):
        if not session.answer(QUESTION, f"{writer}{number + 10_000} nA").kept:
            return 1
    print(start, time.monotonic(), flush=True)
    return 0


def run(answers):
    """Let two writers loose; return what the log holds and whether they ran at the same time.

    Returns
    -------
    answers : list of str
        As the log holds them.
    ids : set of str
        Of its lines.
    problems : list of str
        What the reader of the log named.
    together : bool
        Whether the second began before the first was done.
    """
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        writers = [
            subprocess.Popen(
                [sys.executable, str(HERE), "--writer", str(writer), "--answers", str(answers)],
                env={**os.environ, ANSWERS_VARIABLE: str(folder), "PYTHONPATH": str(ROOT)},
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                text=True,
            )
            for writer in (1, 2)
        ]
        if [writer.stdout.readline() for writer in writers] != ["ready\n"] * 2:
            raise RuntimeError("a writer did not get ready")
        for writer in writers:
            writer.stdin.write("go\n")
            writer.stdin.flush()
        times = [list(map(float, writer.communicate()[0].split())) for writer in writers]
        if any(writer.returncode for writer in writers):
            raise RuntimeError("a writer could not keep an answer")
        lines, problems = AnswerLog(DiskStore(folder).log_path(LEARNER)).lines()
    together = max(start for start, _ in times) < min(end for _, end in times)
    return [line.answer for line in lines], {line.line for line in lines}, problems, together


def wanted(answers):
    """Return the answers that both writers give, in any order."""
    return sorted(f"{writer}{n + 10_000} nA" for writer in (1, 2) for n in range(answers))


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--writer", type=int, help="be one of the two")
    parser.add_argument("--answers", type=int, default=ANSWERS)
    arguments = parser.parse_args()
    if arguments.writer:
        return answer_many(arguments.writer, arguments.answers)
    print(heading(f"python tests/bench/two_writers.py --answers {arguments.answers}"))
    start = time.perf_counter()
    held, ids, problems, together = run(arguments.answers)
    whole = sorted(held) == wanted(arguments.answers) and len(ids) == len(held) and not problems
    print(f"{time.perf_counter() - start:.1f} s; both at the same time: {together}")
    return verdict(
        whole and together,
        f"{len(held)} whole lines (bar: {2 * arguments.answers}), {len(problems)} damaged",
    )


if __name__ == "__main__":
    sys.exit(main())
