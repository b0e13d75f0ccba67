"""Kill a learner's Python in the middle of answering, and look whether an answer was lost.

Run `python tests/bench/killed_kernel.py` for 200 kills; it ends with code 1 if a bar is missed.
tests/exercises/test_killed_and_two_writers.py runs a hundredth of it. Writes to a temporary folder.
"""

import argparse
import os
import random
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
KILLS = 200
LONGEST_LIFE = 0.08  # seconds of answering before the kill; an answer takes about a thousandth


def answer_for_ever(first):
    """Be the learner: answer, show the feedback, and only then say that it was acknowledged."""
    from helpers.exercises.session import learner_session
    from helpers.exercises.store import here
    from helpers.exercises.wording import feedback_lines

    session, _ = learner_session(here(), LEARNER, "wick", "230 V 50 Hz")
    question = session.question(QUESTION)
    number = first
    while True:
        outcome = session.answer(QUESTION, f"{number} µA")
        lines = feedback_lines(question, session.draw(QUESTION), 0, outcome)
        kept = outcome.kept and any("Read as " in line.text for line in lines)
        print(f"{number} {'acknowledged' if kept else 'refused'}", flush=True)
        number += 1


def killed_once(folder, first, life):
    """Start a learner, kill it after `life` seconds of answering; return what it acknowledged.

    Parameters
    ----------
    folder : Path
        Where the answers are kept.
    first : int
        The first answer; those that follow count up, so that no answer comes twice.
    life : float
        How long to let it answer [s].

    Returns
    -------
    acknowledged : list of int
    """
    learner = subprocess.Popen(
        [sys.executable, str(HERE), "--answer", str(first)],
        env={**os.environ, ANSWERS_VARIABLE: str(folder), "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        text=True,
    )
    said = learner.stdout.readline()  # it answers now; the kill can hit any point of the loop
    time.sleep(life)
    learner.kill()
    said += learner.stdout.read()
    learner.wait()
    rows = [row.split() for row in said.split("\n")[:-1]]  # what comes after is cut short
    if any(word != "acknowledged" for _, word in rows) or not rows:
        raise RuntimeError(f"the learner did not answer as it should; it said {said[:200]!r}")
    return [int(number) for number, _ in rows]


def lost(folder, acknowledged):
    """Return the acknowledged answers that the log does not hold, and its damaged lines."""
    lines, problems = AnswerLog(DiskStore(folder).log_path(LEARNER)).lines()
    held = {line.answer for line in lines}
    return [number for number in acknowledged if f"{number} µA" not in held], problems


def run(kills, seed=7):
    """Kill so many learners that share one log; return what was acknowledged and what is amiss."""
    lives, acknowledged = random.Random(seed), []
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for _ in range(kills):
            first = (acknowledged[-1] + 2) if acknowledged else 1  # one more may be in the log
            acknowledged += killed_once(folder, first, lives.uniform(0, LONGEST_LIFE))
        missing, problems = lost(folder, acknowledged)
    return acknowledged, missing, problems


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--answer", type=int, metavar="FIRST", help="be the learner")
    parser.add_argument("--kills", type=int, default=KILLS)
    arguments = parser.parse_args()
    if arguments.answer is not None:
        return answer_for_ever(arguments.answer)
    print(heading(f"python tests/bench/killed_kernel.py --kills {arguments.kills}"))
    start = time.perf_counter()
    acknowledged, missing, problems = run(arguments.kills)
    print(
        f"{arguments.kills} kills in {time.perf_counter() - start:.0f} s; {len(acknowledged)} "
        f"answers acknowledged; {len(problems)} lines cut short, each named by the reader"
    )
    return verdict(not missing, f"{len(missing)} acknowledged answers lost (bar: 0) {missing[:5]}")


if __name__ == "__main__":
    sys.exit(main())
