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
import warnings
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
            peak = max(peak, *(abs(amps(t, v, on)) for t, v in zip(run.t, run.y[0], strict=True)))
    mean, square = state[1:] * supply.hertz
    return mean, sqrt(square), peak, state[0]


def seconds(run):
    """Return what the process itself spent, as others may be at work on the machine."""
    start = time.process_time()
    run()
    return time.process_time() - start


def compare(case, repeats):
    """Return the best time of either, taken in turns, and how far their results lie apart."""
    parts, supply, dimmer, heater = case
    start = 0.0
    for _ in range(3):
        mean, rms, peak, start = stepped(*case, start)
    theirs, ours = [], []
    for _ in range(repeats):
        theirs.append(seconds(lambda: stepped(*case, start)))
        ours += [
            seconds(lambda: steady(parts, supply, dimmer, heater_ohms=heater)) for _ in range(20)
        ]
    found = steady(parts, supply, dimmer, heater_ohms=heater)
    apart = abs(found.led_amps_mean / mean - 1.0), abs(found.line_amps_rms / rms - 1.0)
    return min(theirs), min(ours), max(apart), abs(found.line_amps_peak / peak - 1.0)


def main(repeats=8):
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    warnings.simplefilter("ignore")  # a step of the integrator without any error divides by it
    print(measured.heading("python tests/bench/dropper_speed.py"))
    results = [compare(case, repeats) for case in CASES]
    for (_, supply, dimmer, _), (theirs, ours, apart, peak) in zip(CASES, results, strict=True):
        print(
            f"{dimmer.edge} {dimmer.angle_degrees:g} on {supply.name}: {1e3 * ours:.2f} ms against "
            f"{1e3 * theirs:.0f}, {theirs / ours:.0f} times; mean and rms {apart:.0e}, peak "
            f"{peak:.0e} apart"
        )
    theirs, ours, apart, peak = zip(*results, strict=True)
    times = sum(theirs) / sum(ours)
    missed = measured.verdict(
        times >= TIMES_AS_FAST, f"{times:.0f} times as fast over all cases, bar {TIMES_AS_FAST:g}"
    )
    missed |= measured.verdict(
        max(apart) <= CLOSE, f"mean and rms within {max(apart):.0e}, bar {CLOSE:g}"
    )
    return missed | measured.verdict(
        max(peak) <= PEAK_CLOSE, f"peak within {max(peak):.0e}, bar {PEAK_CLOSE:g}"
    )


if __name__ == "__main__":
    sys.exit(main())
