"""Is what can be seen on a card what the log says, whatever was done before?

Run `python tests/bench/card_truth.py [--steps N] [--seeds A B …]`: random walks of N steps each
over every kind of card, in a real JupyterLab in a real Chromium, with two kernels on one log and
two tabs on one kernel. It ends with code 1 on any difference, and prints each. That a busy browser
did not restore a page, so that dated copies stood there alone, is counted beside.
"""

import argparse
import sys
import tempfile
from pathlib import Path
from time import perf_counter

HERE = Path(__file__).resolve()
sys.path += [str(HERE.parent), str(HERE.parents[1] / "browser"), str(HERE.parents[1] / "exercises")]

import truth  # noqa: E402
from measured import heading, verdict  # noqa: E402


def take_steps(seed, steps):
    """Walk for a number of steps and print differences as they come; return the walk."""
    with tempfile.TemporaryDirectory() as folder, truth.walk(seed, folder) as walked:
        walked.compare("start")
        said = 0
        for _ in range(steps):
            walked.step()
            for difference in walked.differences[said:]:
                print(difference, flush=True)
            said = len(walked.differences)
            if len(walked.steps) % 50 == 0:
                found = f"{said} differences, controls not restored {len(walked.lost)} times"
                print(f"seed {seed}: {len(walked.steps)} steps, {found}", flush=True)
    return walked


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--steps", type=int, default=300)
    parser.add_argument("--seeds", type=int, nargs="+", default=[1, 2])
    arguments = parser.parse_args()
    differences = []
    print(heading(f"python tests/bench/card_truth.py {' '.join(sys.argv[1:])}".strip()))
    for seed in arguments.seeds:
        start = perf_counter()
        walked = take_steps(seed, arguments.steps)
        taken = ", ".join(f"{count} {kind}" for kind, count in walked.taken.most_common())
        print(f"seed {seed}: {len(walked.steps)} steps in {perf_counter() - start:.0f} s: {taken}")
        differences += walked.differences
    steps = arguments.steps * len(arguments.seeds)
    return verdict(not differences, f"{len(differences)} differences in {steps} steps")


if __name__ == "__main__":
    sys.exit(main())
