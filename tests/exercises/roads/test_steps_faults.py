"""What each wrong turn after a fault leads to, by hand: series and side by side, P = I² R."""

from types import SimpleNamespace

import pytest

from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import faults as steps
from helpers.exercises.roads.steps.general import given
from helpers.physics.mains import SUPPLIES

N = SimpleNamespace(
    supply=SUPPLIES["120 V 60 Hz"], ohms=10e3, amps=1.5, joint_ohms=0.4, fault_amps=2.0,
    fuse_amps=0.25,
)  # fmt: skip


@pytest.mark.parametrize(
    "steps, right, wrong",
    [
        ((given("ohms"), steps.one_fewer(4)), 30e3, {
            "counted the shorted one as well": 40e3, "took one for all": 10e3,
            "took them as side by side": 3333.33}),
        ((given("amps"), steps.heat_in_joint("joint_ohms")), 0.9, {
            "forgot to square the amps": 0.6, "doubled instead of squaring": 1.2,
            "gave the amps": 1.5, "squared the amps alone": 2.25,
            "divided by the ohms": 5.625, "gave the joint the volts of the mains": 36_000.0,
            "gave the heat of the pot": 180.0, "multiplied the watts by the ohms": 72.0}),
        ((given("fault_amps"), steps.times_its_rating("fuse_amps")), 8.0, {
            "divided the wrong way round": 0.125, "multiplied instead of dividing": 0.5,
            "took the rise above the rating": 7.0, "gave the amps": 2.0}),
    ],
    ids=["one fewer", "joint", "fuse"],
)  # fmt: skip
def test_second_way_each_wrong_turn_is_the_sum_by_hand(steps, right, wrong):
    road = Road(*steps)
    assert road.value(N) == pytest.approx(right)
    ends = {found.names[0]: found.value for found in road.wrong(N)}
    assert ends == pytest.approx(wrong, rel=1e-4)
