"""Steps along the mains wave: each wrong turn leads where a sum by hand says.

Sources: a sine's crest is √2 of its rms, its mean 2/π of its crest; half of one wave has 1/π as its
mean and 1/2 as its rms, seen from the crest (the integrals of a sine). Hertz: cycles in a second.
"""

from math import pi, sqrt
from types import SimpleNamespace

import pytest

from helpers.exercises.roads import Road
from helpers.exercises.roads.steps.general import given, knowing
from helpers.exercises.roads.steps.mains import (
    CREST_ALONE,
    OTHER_FACTORS,
    crest,
    cycle,
    half_cycle,
    half_wave_mean,
    less_cut,
    per_cent_more,
    rms_of_crest,
)

N = SimpleNamespace(volts=100.0, volts_peak=100.0, percent=5.0, hertz=50.0, seconds=0.01, cut=0.002)
CRESTS = {
    "took the label for the crest": 100.0,
    "took the mean for the crest": 100 * sqrt(2) * 2 / pi,
    "divided by 1.414": 100 / sqrt(2),
    "took the wave from trough to crest": 2 * 100 * sqrt(2),
}
STEPS = {
    "crest": (Road(given("volts"), crest()), 100 * sqrt(2), CRESTS),
    "crest alone": (
        Road(given("volts"), knowing(crest(), *CREST_ALONE, *OTHER_FACTORS)),
        100 * sqrt(2),
        CRESTS
        | {
            "multiplied by 1.5": 150.0,
            "doubled the label": 200.0,
            "took 1.11 for 1.414": 100 * pi / sqrt(8),
            "took ten per cent more for the crest": 110.0,
            "took the mean over a whole cycle": 100 * sqrt(2) / pi,
            "multiplied by root three": 100 * sqrt(3),
            "took the factor that leads from mean to crest": 50 * pi,
            "halved the crest": 100 / sqrt(2),
        },
    ),
    "rms of the crest": (
        Road(given("volts_peak"), rms_of_crest()),
        100 / sqrt(2),
        {
            "took the crest as it stands": 100.0,
            "multiplied by 1.414": 100 * sqrt(2),
            "took the mean for the rms": 100 * 2 / pi,
            "halved the crest": 50.0,
            "divided by root three": 100 / sqrt(3),
            "halved once too often": 50 / sqrt(2),
            "multiplied by 0.9": 100 * (2 / pi) / (1 / sqrt(2)),
            "took the wave from trough to crest": 200.0,
        },
    ),
    "per cent more": (
        Road(given("volts"), per_cent_more("percent")),
        105.0,
        {
            "left the per cent out": 100.0,
            "took the per cent off": 95.0,
            "added the per cent as volts": 105.0,
            "took the per cent for tenths": 150.0,
            "took ten per cent for it": 110.0,
            "added the per cent twice": 110.25,
            "took the rise alone": 5.0,
        },
    ),
    "mean of a half-wave": (
        Road(given("volts_peak"), half_wave_mean("voltage")),
        100 / pi,
        {
            "counted both half-cycles": 200 / pi,
            "took the crest for the mean": 100.0,
            "took the rms of the half-wave for its mean": 50.0,
            "halved once too often": 50 / pi,
            "used the quick sum, volts over ohms": 100 / sqrt(2),
            "halved the quick sum": 100 / sqrt(2) / 2,
            "took 0.45 of the crest": 45.0,
            "took 0.45 of the half-wave's rms": 0.45 * 50.0,
            "took 0.45 once too often": 0.45 * 100 / pi,
        },
    ),
    "times of a cycle": (
        Road(given("hertz"), cycle(), half_cycle()),
        0.01,
        {
            "took the hertz for a time": 25.0,
            "divided degrees by the hertz": 360 / 50 / 2,
            "took the whole cycle": 0.02,
            "halved once too often": 0.005,
            "doubled instead of halving": 0.04,
        },
    ),
    "a piece cut out, on a grid of 2 ms a division with five small marks each": (
        Road(given("seconds"), less_cut("cut")),
        0.008,
        {
            "counted both half-cycles": 0.016,
            "took the piece that is cut out": 0.002,
            "took both pieces that are cut out": 0.004,
            "took the dark time": 0.02 - 0.008,
            "took the whole cycle": 0.02 - 0.002,
            "left the cut out": 0.01,
            "halved the lit time": 0.004,
            "counted divisions for milliseconds": 0.004,
            "took each division for a small mark": 4 * 0.0004,
            "took the division where the piece ends for its time": 0.005,
            "took the division where the piece begins for its time": 0.001,
        },
    ),
}


@pytest.mark.parametrize("name", STEPS, ids=lambda name: f"second way: {name}")
def test_a_step_and_each_of_its_wrong_turns_lead_where_a_sum_by_hand_leads(name):
    road, right, wrong = STEPS[name]
    assert road.value(N) == pytest.approx(right)
    assert {end.names[0]: end.value for end in road.wrong(N)} == pytest.approx(wrong)
