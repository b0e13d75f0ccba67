"""Kilowatt hours and what they cost."""

import numpy as np
import pytest

from helpers.physics import energy


def test_second_way_a_kilowatt_hour_is_3_6_megajoules():
    seconds = 3600.0 * 7.5
    assert energy.kilowatt_hours(90.0, 7.5) * 3.6e6 == pytest.approx(90.0 * seconds)


def test_limit_nothing_used_nothing_paid():
    assert energy.kilowatt_hours(0.0, 24.0) == energy.cost(90.0, 0.0, 0.3) == 0.0
    assert energy.HOURS_PER_YEAR == 365 * 24


def test_second_way_the_forgotten_pot_costs_as_its_watts_over_the_lights():
    pot, pilot = energy.cost(90.0, 14.0, 0.31), energy.cost(0.2, 14.0, 0.31)
    assert pot / pilot == pytest.approx(450.0)


def test_property_shape():
    assert energy.cost(np.ones((2, 1)), np.arange(3.0), 0.3).shape == (2, 3)
    assert energy.kilowatt_hours(np.ones(4), 1.0).shape == (4,)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: energy.kilowatt_hours(-1.0, 1.0), "watts was read as -1 W"),
        (lambda: energy.kilowatt_hours(1.0, -1.0), "hours was read as -1 h"),
        (lambda: energy.cost(1.0, 1.0, -0.3), "price_per_kilowatt_hour was read as -0.3"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
