"""Derating, voltage limits and strings."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.physics import ratings
from helpers.physics.ohms_law import power


def test_second_way_derating_is_a_straight_line_between_knee_and_limit():
    ambient = np.linspace(-40.0, 200.0, 481)
    expected = np.interp(ambient, [70.0, 155.0], [0.25, 0.0])
    assert ratings.derated_watts(0.25, ambient) == pytest.approx(expected, abs=1e-15)


def test_limit_at_and_beyond_the_ends():
    assert ratings.derated_watts(0.25, -55.0) == ratings.derated_watts(0.25, 70.0) == 0.25
    assert ratings.derated_watts(0.25, 155.0) == ratings.derated_watts(0.25, 300.0) == 0.0
    assert ratings.derated_watts(0.25, 125.0, 70.0, 125.0) == 0.0
    assert ratings.volts_rms_limit(1e5, 0.0, 250.0) == 0.0


@settings(deadline=None, derandomize=True)
@given(ohms=st.floats(1e2, 1e7), watts=st.floats(0.05, 5.0), limiting=st.floats(50.0, 700.0))
def test_property_the_voltage_limit_keeps_both_promises(ohms, watts, limiting):
    volts = ratings.volts_rms_limit(ohms, watts, limiting)
    assert volts <= limiting
    assert power(volts=volts, ohms=ohms) <= watts * (1.0 + 1e-12)
    by = ratings.limited_by(ohms, watts, limiting)
    critical = ratings.critical_ohms(watts, limiting)
    if abs(ohms / critical - 1.0) > 1e-9:
        assert by == ("power" if ohms < critical else "voltage")


def test_limit_at_the_critical_resistance_both_limits_meet():
    critical = ratings.critical_ohms(0.25, 350.0)
    assert ratings.volts_rms_limit(critical, 0.25, 350.0) == pytest.approx(350.0)
    assert ratings.limited_by(critical, 0.25, 350.0) == "power"


@pytest.mark.parametrize("count", [1, 2, 3, 5])
@pytest.mark.parametrize("tolerance", [0.0, 1.0, 5.0, 20.0])
def test_second_way_the_worst_share_by_trying_every_string(count, tolerance):
    corners = np.meshgrid(*[(1.0 - tolerance / 100.0, 1.0 + tolerance / 100.0)] * count)
    strings = np.array(corners).reshape(count, -1)
    worst = np.max(strings / strings.sum(axis=0)) * 358.0
    assert ratings.share_of_string(358.0, count, tolerance) == pytest.approx(worst, rel=1e-12)


def test_property_shape():
    ambient, rated = np.linspace(20.0, 160.0, 4), np.array([[0.25], [0.5]])
    watts = ratings.derated_watts(rated, ambient)
    assert watts.shape == ratings.volts_rms_limit(1e5, watts, 250.0).shape == (2, 4)
    assert ratings.critical_ohms(rated, 250.0).shape == (2, 1)
    assert ratings.share_of_string(ambient, 2, rated).shape == (2, 4)
    assert type(ratings.derated_watts(1, 85)) is type(ratings.share_of_string(300, 2)) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: ratings.derated_watts(0.25, 85.0, 155.0, 70.0), "Were the two swapped"),
        (lambda: ratings.derated_watts(0.0, 85.0), "rated_watts was read as 0 W"),
        (lambda: ratings.derated_watts(0.25, -300.0), "ambient_celsius was read as -300 degC"),
        (lambda: ratings.volts_rms_limit(0.0, 0.25, 250.0), "ohms was read as 0 ohm"),
        (lambda: ratings.limited_by(1e5, -0.25, 250.0), "watts was read as -0.25 W"),
        (lambda: ratings.critical_ohms(0.25, 0.0), "limiting_volts was read as 0 V"),
        (lambda: ratings.share_of_string(300.0, 0), "count was read as 0 resistors"),
        (lambda: ratings.share_of_string(300.0, 2, 60.0), "tolerance_percent was read as 60 %"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
