"""The sums behind `operating_point`: that it reports them all, float for float."""

from dataclasses import asdict

import pytest

from helpers.physics import one_cycle
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point


@pytest.mark.parametrize("circuit", CIRCUITS)
def test_property_every_result_is_a_field_and_every_field_a_result(circuit):
    found = one_cycle.solve(circuit, "ac", 230.0, 50.0, 180.0, 68e3, 2.0, 2.0, 0.7, 5.0)
    assert found == asdict(operating_point(circuit, Supply(230.0, 50.0), ohms=68e3))


def test_limit_a_supply_below_the_drops_gives_nothing():
    found = one_cycle.solve("bridge", "dc", 2.0, 50.0, 180.0, 68e3, 2.0, 2.0, 0.7, 5.0)
    assert found["branch_watts"] == found["led_amps_mean"] == found["light_flicker_index"] == 0.0
