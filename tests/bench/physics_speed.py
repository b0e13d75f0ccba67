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

from helpers.physics import faults, leds, off_states, tolerance
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.operating_point import FIELDS, operating_point
from helpers.physics.phase_cut import Dimmer

POINTS = 1_000_000


def best_seconds(run, repeats):
    """Least of some runs after one that warms up, in seconds of the processor.

    One thread does it all, so this is what it takes when left alone, whoever else is busy.
    """
    run()
    times = []
    for _ in range(repeats):
        start = time.process_time()
        run()
        times.append(time.process_time() - start)
    return min(times)


def everything(point):
    """Ask an operating point for all that it knows."""
    return [getattr(point, name) for name in FIELDS]


def many_points(circuit, count, ask=everything, **real):
    random = np.random.default_rng(11)
    supply = Supply(random.uniform(90.0, 264.0, count), 50.0)
    dimmer = Dimmer("leading", random.uniform(0.0, 180.0, count))
    ohms, led = random.uniform(2e4, 3e5, count), random.uniform(1.7, 3.4, count)
    drops = real or {"led_volts": led, "second_led_volts": led[::-1]}
    return lambda: ask(operating_point(circuit, supply, dimmer, ohms=ohms, **drops))


def the_mean(point):
    return point.led_amps_mean


def single_faults():
    """Every single fault of every circuit over 20 settings and three supplies."""
    supply = Supply(np.array([[230.0], [120.0], [100.0]]), 50.0)
    dimmer = Dimmer("leading", np.linspace(0.0, 175.0, 20))
    for circuit in CIRCUITS:
        for fault in faults.singles(circuit):
            faults.after(
                circuit, *fault, supply, dimmer, ohms_each=68e3, count=2, heater_ohms=588.0
            )


def states_at_off(circuit, count):
    """Run for a sound element by the diode law, and for an open one exactly."""
    random = np.random.default_rng(12)
    supply = Supply(random.uniform(90.0, 264.0, count), 50.0)
    farads, ohms = random.uniform(1e-9, 3e-7, count), random.uniform(2e4, 3e5, count)
    heaters = random.uniform(200.0, 1000.0, count)
    bleeders = np.where(random.uniform(size=count) < 0.5, np.inf, 470e3)
    return (
        lambda: the_mean(off_states.by_diode_law(circuit, supply, farads, 100.0, ohms, heaters)),
        lambda: off_states.past_a_capacitor(circuit, supply, farads, 100.0, ohms, bleeders),
    )


def measure():
    """Yield what was measured, the figure, its unit and the bar."""
    supply, dimmer = Supply(230.0, 50.0), Dimmer("leading", 60.0)
    for circuit in CIRCUITS:

        def single(circuit=circuit):
            for _ in range(200):
                the_mean(operating_point(circuit, supply, dimmer, ohms=120e3))

        large = best_seconds(many_points(circuit, POINTS), 3)
        small = best_seconds(many_points(circuit, POINTS // 10), 10)
        yield f"{circuit}: 1e6 points", large, "s", 1.0
        yield f"{circuit}: time per point, 1e6 over 1e5", large / (10.0 * small), "", 1.5
        mean = best_seconds(many_points(circuit, POINTS, the_mean), 3)
        yield f"{circuit}: mean alone, share of everything", mean / large, "", 1.0 / 3.0
        yield (
            f"{circuit}: one call for the mean",
            best_seconds(single, 5) / 200.0 * 1e6,
            "us",
            150.0,
        )
        sweep = Dimmer("leading", np.linspace(0.0, 178.0, 90))
        yield (
            f"{circuit}: sweep of 90 angles",
            best_seconds(
                lambda c=circuit, s=sweep: everything(operating_point(c, supply, s, ohms=120e3)), 50
            )
            * 1e3,
            "ms",
            5.0,
        )
        real = {"led": leds.real("red"), "second_led": leds.real("white")}
        by_law = best_seconds(many_points(circuit, POINTS // 10, **real), 2)
        bar = 1.0 if circuit == "series_diode" else 3.0
        yield f"{circuit}: 1e5 points by diode law, everything", by_law, "s", bar
        law_mean = best_seconds(many_points(circuit, POINTS // 10, the_mean, **real), 2)
        yield f"{circuit}: 1e5 points by diode law, the mean", law_mean, "s", bar / 3.0
        sound, broken = (best_seconds(run, 2) for run in states_at_off(circuit, 10_000))
        yield f"{circuit}: 5e4 off states, sound element", 5.0 * sound, "s", 1.0
        yield f"{circuit}: 5e3 off states, open element", 0.5 * broken, "s", 1.0

    yield "all single faults, 20 settings, 3 supplies", best_seconds(single_faults, 3), "s", 0.5

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
