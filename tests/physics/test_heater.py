"""The heater's ohms, amps and watts."""

import numpy as np
import pytest

from helpers.physics import heater
from helpers.physics.mains import Supply
from helpers.physics.phase_cut import NO_DIMMER, Dimmer


def test_second_way_power_is_volts_times_amps_at_full():
    supply, ohms = Supply(230.0, 50.0), heater.resistance(230.0, 90.0)
    assert heater.watts(supply, NO_DIMMER, ohms) == pytest.approx(90.0, rel=1e-14)
    assert 230.0 * heater.amps_rms(supply, NO_DIMMER, ohms) == pytest.approx(90.0, rel=1e-14)


def test_second_way_a_high_supply_heats_by_the_square():
    ohms = heater.resistance(230.0, 90.0)
    assert heater.watts(Supply(253.0, 50.0), NO_DIMMER, ohms) == pytest.approx(90.0 * 1.21)


def test_limit_turned_down_it_is_cold():
    assert heater.watts(Supply(230.0, 50.0), Dimmer("leading", 180.0), 588.0) == 0.0
    assert heater.amps_rms(Supply(230.0, 50.0), Dimmer("trailing", 0.0), 588.0) == 0.0


def test_property_shape():
    angles = Dimmer("leading", np.linspace(0.0, 180.0, 4))
    ohms = heater.resistance(np.array([[120.0], [230.0]]), 90.0)
    assert heater.watts(Supply(230.0, 50.0), angles, ohms).shape == (2, 4)
    assert heater.amps_rms(Supply(230.0, 50.0), angles, ohms).shape == (2, 4)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: heater.resistance(0.0, 90.0), "rated_volts was read as 0 V"),
        (lambda: heater.resistance(230.0, -90.0), "rated_watts was read as -90 W"),
        (lambda: heater.watts(Supply(230.0, 50.0), NO_DIMMER, 0.0), "A shorted heater is a fault"),
        (lambda: heater.amps_rms(Supply(230.0, 50.0), NO_DIMMER, -1.0), "ohms was read as -1"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
