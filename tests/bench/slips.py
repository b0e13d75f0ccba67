"""Is every single wrong turn told by its name, and how long does a wrong number take to explain?

Run `python tests/bench/slips.py [--learners N]`: every turn of every road for N learners on every
supply, by the check of the tests. It ends with code 1 on a turn that is marked right or not named
without being declared, and where explaining takes too long. Times are those of the process, so
that what else runs on the machine does not count.
"""

import argparse
import sys
from collections import Counter
from pathlib import Path
from random import Random
from statistics import median
from time import process_time

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2]), str(HERE.parent), str(HERE.parents[1] / "exercises")]

from measured import heading, verdict  # noqa: E402
from single_turns import AS_DECLARED, DECLARED, MISSES, outcomes  # noqa: E402

from helpers.exercises.bank import bank  # noqa: E402
from helpers.exercises.kinds import Amount  # noqa: E402
from helpers.exercises.roads import explain  # noqa: E402
from helpers.physics.mains import SUPPLIES  # noqa: E402

CLASS_WORD = "wick"
MEDIAN_MS, MOST_MS = 0.2, 5.0
TIMED_LEARNERS, TRIES = 3, 3
MOST_PRINTED = 20


def sums():
    return [question for question in bank().values() if isinstance(question.kind, Amount)]


def drawn(learners):
    """Yield each sum of the bank with the first numbers of so many learners on every supply."""
    for question in sums():
        for supply in SUPPLIES.values():
            for learner in range(learners):
                name = f"BENCH-{learner:03d}"
                yield question, name, question.numbers_for(name, CLASS_WORD, supply, 0)


def every_turn(learners):
    """Return how many turns end how, those missed, and the declared ones that were met."""
    counts, missed, met, tried = Counter(), [], set(), {}
    for question, learner, numbers in drawn(learners):
        key = question.id, repr(numbers)  # many learners draw the same numbers
        if key not in tried:
            tried[key] = list(outcomes(question, numbers))
        for wrong, outcome in tried[key]:
            counts[outcome] += 1
            if outcome in MISSES:
                place = f"{question.id}, {numbers.supply.name}, {learner}"
                missed.append(f"{place}: {' and '.join(wrong.names)} is {outcome}")
            elif outcome == AS_DECLARED:
                met.add((question.id, *wrong.names))
    return counts, missed, met


def times(learners):
    """Return how long explaining wrong numbers takes, each the best of a few tries [ms].

    Ends of single turns, of two turns, and as many numbers that no turn leads to: these are
    compared with everything, and take longest.
    """
    taken = []
    for question, learner, numbers in drawn(learners):
        kind, chance = question.kind, Random(f"{learner} {question.id}")
        ends = [one.value for one in kind.road.wrong(numbers) + kind.road.wrong_twice(numbers)]
        ends += [kind.right(numbers) * 10 ** chance.uniform(-1, 1) for _ in ends]
        for end in ends:
            taken.append(min(_explained_in(kind, end, numbers) for _ in range(TRIES)))
    return taken


def _explained_in(kind, value, numbers):
    exact = kind.exact(numbers) if kind.exact else None
    own = [(slip, slip.wrong(numbers)) for slip in kind.slips]
    start = process_time()
    explain(value, 3, kind.road, numbers, exact, own)
    return 1000 * (process_time() - start)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--learners", type=int, default=200)
    learners = parser.parse_args().learners
    print(heading(f"python tests/bench/slips.py --learners {learners}"), flush=True)
    counts, missed, met = every_turn(learners)
    print(", ".join(f"{count} {outcome}" for outcome, count in counts.most_common()))
    print("\n".join(missed[:MOST_PRINTED]))
    if unmet := [f"{question_id}: {name}" for question_id, name in DECLARED.keys() - met]:
        print(f"declared, but named in every draw that was tried: {'; '.join(sorted(unmet))}")
    code = verdict(
        not missed,
        f"{len(missed)} of {counts.total()} wrong turns of {len(sums())} sums, {learners} learners "
        f"on {len(SUPPLIES)} supplies, marked right or not named (bar: 0)",
    )
    taken = times(min(learners, TIMED_LEARNERS))
    middle, most = median(taken), max(taken)
    return code | verdict(
        middle <= MEDIAN_MS and most <= MOST_MS,
        f"a wrong number is explained in {middle:.3f} ms at the median, {most:.2f} ms at most, of "
        f"{len(taken)} numbers (bars: {MEDIAN_MS} and {MOST_MS} ms of the process's own time)",
    )


if __name__ == "__main__":
    sys.exit(main())
