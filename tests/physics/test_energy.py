"""Kilowatt hours."""

import numpy as np
import pytest

from helpers.physics import energy


def test_second_way_a_kilowatt_hour_is_3_6_megajoules():
    seconds = 3600.0 * 7.5
    assert energy.kilowatt_hours(90.0, 7.5) * 3.6e6 == pytest.approx(90.0 * seconds)


def test_limit_no_watts_use_nothing():
    assert energy.kilowatt_hours(0.0, 24.0) == energy.kilowatt_hours(90.0, 0.0) == 0.0
    assert energy.HOURS_PER_YEAR == 365 * 24


def test_property_shape():
    assert energy.kilowatt_hours(np.ones((2, 1)), np.arange(3.0)).shape == (2, 3)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: energy.kilowatt_hours(-1.0, 1.0), "watts was read as -1 W"),
        (lambda: energy.kilowatt_hours(1.0, -1.0), "hours was read as -1 h"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
