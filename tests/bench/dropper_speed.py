"""Measure the capacitor dropper on a cut wave against scipy's stiff integrator, on one core.

Run from the repository's root: python tests/bench/dropper_speed.py
The integrator (Radau, rtol 1e-6) is given the break points, the start of the steady cycle and one
period only; ours finds the steady cycle by itself. Ends with status 1 if a bar is missed.
"""

import os

# Before numpy is imported, so that it starts no second thread.
os.environ.update(dict.fromkeys(("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"), "1"))

import sys
import time
from math import inf, pi, sin, sqrt
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp

sys.path.insert(0, str(Path(__file__).parent))
import measured

from helpers.physics.capacitor_dropper import Parts, steady
from helpers.physics.mains import Supply
from helpers.physics.phase_cut import Dimmer

TIMES_AS_FAST, CLOSE, PEAK_CLOSE = 200.0, 1e-4, 1e-3
PARTS = Parts(330e-9, 120.0, 1e6)
CASES = [
    (PARTS, Supply(230.0, 50.0), Dimmer("leading", 90.0), 588.0),
    (PARTS, Supply(230.0, 50.0), Dimmer("leading", 30.0), 588.0),
    (PARTS, Supply(230.0, 50.0), Dimmer("leading", 150.0), inf),
    (PARTS, Supply(230.0, 50.0), Dimmer("trailing", 90.0), 588.0),
    (Parts(470e-9, 100.0, 470e3), Supply(120.0, 60.0), Dimmer("trailing", 130.0), 160.0),
    (Parts(100e-9, 470.0), Supply(120.0, 60.0), Dimmer("leading", 60.0), 160.0),
]


def stepped(parts, supply, dimmer, heater, start):
    """One period by the integrator: mean, rms, peak of the line current and the last state."""
    crest, turns = sqrt(2.0) * supply.volts_rms, 2.0 * pi * supply.hertz
    drops = parts.led_volts + 2.0 * parts.diode_volts

    def amps(at, held, on):
        if not on and heater == inf:
            return 0.0
        drive = (crest * sin(turns * at) if on else 0.0) - held
        spare = max(abs(drive) - drops, 0.0)
        return (spare if drive > 0.0 else -spare) / (parts.surge_ohms + (not on and heater))

    def rates(at, state, on):
        line = amps(at, state[0], on)
        return [(line - state[0] / parts.bleeder_ohms) / parts.farads, abs(line), line * line]

    state, peak, cut = np.array([start, 0.0, 0.0]), 0.0, dimmer.angle_degrees / 180.0
    for half in (0.0, 1.0):
        for low, high, on in (
            (0.0, cut, dimmer.edge == "trailing"),
            (cut, 1.0, dimmer.edge == "leading"),
        ):
            span = (half + low) / 2.0 / supply.hertz, (half + high) / 2.0 / supply.hertz
            run = solve_ivp(
                rates, span, state, "Radau", rtol=1e-6, atol=[1e-5, 1e-10, 1e-11], args=(on,)
            )
            state = run.y[:, -1]
            peak = max(
                peak, *(abs(amps(t, v, on)) for t, v in zip(run.t, run.y[0], strict=True))
            )
    mean, square = state[1:] * supply.hertz
    return mean, sqrt(square), peak, state[0]


def best_seconds(run, repeats):
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        run()
        times.append(time.perf_counter() - start)
    return min(times)


def compare(case, repeats):
    """Return how many times as fast ours is, and how far mean, rms and peak lie apart."""
    parts, supply, dimmer, heater = case
    found = steady(parts, supply, dimmer, heater_ohms=heater)
    start = 0.0
    for _ in range(3):
        start = stepped(*case, start)[3]
    mean, rms, peak, _ = stepped(*case, start)
    ours = best_seconds(lambda: steady(parts, supply, dimmer, heater_ohms=heater), 20 * repeats)
    theirs = best_seconds(lambda: stepped(*case, start), repeats)
    apart = abs(found.led_amps_mean / mean - 1.0), abs(found.line_amps_rms / rms - 1.0)
    return theirs / ours, ours, max(apart), abs(found.line_amps_peak / peak - 1.0)


def main(repeats=7):
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    print(measured.heading("python tests/bench/dropper_speed.py"))
    missed = 0
    for case in CASES:
        times, seconds, apart, peak_apart = compare(case, repeats)
        missed += measured.verdict(
            times >= TIMES_AS_FAST and apart <= CLOSE and peak_apart <= PEAK_CLOSE,
            f"{case[2].edge} {case[2].angle_degrees:g} on {case[1].name}: {times:.0f} times as fast "
            f"({seconds * 1e3:.2f} ms a point), mean and rms {apart:.0e}, peak {peak_apart:.0e} apart "
            f"(bars {TIMES_AS_FAST:g}, {CLOSE:g}, {PEAK_CLOSE:g})",
        )
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
