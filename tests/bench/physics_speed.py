"""Measure the bars that physics has to meet, on one core, and print a dated result.

Run from the repository's root: python tests/bench/physics_speed.py
Ends with status 1 if a bar is missed. Ratios are taken within this one run.
"""

import os

# Before numpy is imported, so that it starts no second thread.
os.environ.update(dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"), "1"))

import platform
import resource
import sys
import time
from datetime import UTC, datetime

import numpy as np

from helpers.physics import tolerance
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import Dimmer

POINTS = 1_000_000


def best_seconds(run, repeats):
    """Least of some runs after one that warms up: what the work takes when left alone."""
    run()
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        run()
        times.append(time.perf_counter() - start)
    return min(times)


def many_points(circuit, count):
    random = np.random.default_rng(11)
    supply = Supply(random.uniform(90.0, 264.0, count), 50.0)
    dimmer = Dimmer("leading", random.uniform(0.0, 180.0, count))
    ohms, led = random.uniform(2e4, 3e5, count), random.uniform(1.7, 3.4, count)
    return lambda: operating_point(
        circuit, supply, dimmer, ohms=ohms, led_volts=led, second_led_volts=led[::-1]
    )


def measure():
    """Yield what was measured, the figure, its unit and the bar."""
    supply, dimmer = Supply(230.0, 50.0), Dimmer("leading", 60.0)
    for circuit in CIRCUITS:

        def single(circuit=circuit):
            for _ in range(200):
                operating_point(circuit, supply, dimmer, ohms=120e3)

        large = best_seconds(many_points(circuit, POINTS), 3)
        small = best_seconds(many_points(circuit, POINTS // 10), 10)
        yield f"{circuit}: 1e6 points", large, "s", 1.0
        yield f"{circuit}: time per point, 1e6 over 1e5", large / (10.0 * small), "", 1.5
        yield f"{circuit}: one call", best_seconds(single, 5) / 200.0 * 1e6, "us", 150.0
        sweep = Dimmer("leading", np.linspace(0.0, 178.0, 90))
        yield (
            f"{circuit}: sweep of 90 angles",
            best_seconds(lambda c=circuit, s=sweep: operating_point(c, supply, s, ohms=120e3), 50)
            * 1e3,
            "ms",
            5.0,
        )

    def boards():
        drawn = tolerance.random_boards("series_diode", supply, dimmer, ohms=120e3, count=POINTS)
        for values in drawn.values():
            tolerance.spread(values)
        tolerance.chance_above(drawn["resistor_watts"], 0.125)

    yield "1e6 boards with quantiles and chance", best_seconds(boards, 2), "s", 2.0
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 2**20
    yield "peak memory of all this", peak, "GiB", 1.0


def main():
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    print(
        f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC, python {platform.python_version()}, "
        f"numpy {np.__version__}, {platform.machine()}, one of {os.cpu_count()} cores"
    )
    print(f"command: python {' '.join(sys.argv)}")
    missed = 0
    for what, figure, unit, bar in measure():
        verdict = "ok" if figure <= bar else "MISSED"
        missed += figure > bar
        print(f"{what:50} {figure:9.3f} {unit:3} (bar {bar:g}) {verdict}")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
