"""The sums behind `operating_point`: that it reports them all, and works out what is asked for."""

import numpy as np
import pytest

from helpers.physics import circuits
from helpers.physics.mains import Supply
from helpers.physics.one_cycle import Cycle
from helpers.physics.operating_point import FIELDS, operating_point


def cycle(circuit, volts):
    wiring, laws = circuits.named(circuit).sound, circuits.laws(circuit)
    return Cycle(wiring, laws, np.sqrt(2.0) * volts, np.pi, 50.0, 68e3)


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
def test_property_every_field_is_a_sum_over_the_cycle(circuit):
    point, sums = operating_point(circuit, Supply(230.0, 50.0), ohms=68e3), cycle(circuit, 230.0)
    found = {name: getattr(sums, name)() for name in FIELDS}
    assert found == {name: getattr(point, name) for name in FIELDS}


def test_limit_a_supply_below_the_drops_gives_nothing():
    sums = cycle("bridge", 2.0)
    assert sums.branch_watts() == sums.led_amps_mean() == sums.light_flicker_index() == 0.0


def test_property_what_is_not_asked_for_is_not_worked_out(monkeypatch):
    def refuse(_):
        raise AssertionError("nobody asked for it")

    monkeypatch.setattr(Cycle, "light_flicker_index", refuse)
    point = operating_point("series_diode", Supply(230.0, 50.0), ohms=np.array([68e3, 82e3]))
    assert point.led_amps_mean.shape == (2,)
    with pytest.raises(AssertionError, match="nobody asked"):
        _ = point.light_flicker_index


def test_a_field_that_is_not_there_is_refused_with_those_that_are():
    point = operating_point("series_diode", Supply(230.0, 50.0), ohms=68e3)
    with pytest.raises(AttributeError, match="no brightness; it has led_amps_mean, led_amps_net"):
        _ = point.brightness
