"""Measure the bars that sizing has to meet, on one core, and print a dated result.

Run from the repository's root: python tests/bench/sizing_speed.py
Ends with status 1 if a bar is missed. Ratios are taken within this one run.
"""

import os

# Before numpy is imported, so that it starts no second thread.
os.environ.update(dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"), "1"))

import resource
import sys
import time
from dataclasses import replace

from measured import heading, verdict

from helpers.sizing import verdicts
from helpers.sizing.brief import Brief

STRINGS, CONDITIONS, SECONDS, MEGABYTES = 400, 1000, 1.0, 500


def seconds_for(brief, repeats=3):
    """Least seconds of the processor for a plan and its best, after one run that warms up."""
    times = []
    for _ in range(repeats + 1):
        start = time.process_time()
        plan = verdicts.plan(brief)
        plan.best()
        times.append(time.process_time() - start)
    return min(times[1:]), plan


def main():
    print(heading("python tests/bench/sizing_speed.py"))
    took, plan = seconds_for(Brief())
    strings = {
        (j.circuit, ohms, count)
        for j in plan.judged
        for ohms, count in zip(j.worst.ohms_each, j.worst.count, strict=True)
    }
    evaluated = f"{plan.points:,} points of {len(strings)} electrically distinct strings"
    missed = verdict(
        len(strings) >= STRINGS and plan.conditions >= CONDITIONS,
        f"default bin: {evaluated}, {plan.conditions:,} conditions each or more",
    )
    missed |= verdict(took <= SECONDS, f"default bin in {took:.2f} s, at most {SECONDS} s")
    sizes = {}
    for series in ("E12", "E24", "E48", "E96"):
        seconds, plan = seconds_for(replace(Brief(), bin_series=series), 2)
        sizes[series] = seconds / plan.points
        each = f"{1e9 * sizes[series]:.0f} ns a point"
        print(f"  {series}: {plan.listed} strings, {plan.points:,} points, {seconds:.2f} s, {each}")
    ratio = max(sizes.values()) / sizes["E12"]
    missed |= verdict(ratio <= 1.3, f"linear in the bin: at most {ratio:.2f} times as long a point")
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    missed |= verdict(most < MEGABYTES, f"{most:.0f} MB at most, under {MEGABYTES} MB")
    return missed


if __name__ == "__main__":
    sys.exit(main())
