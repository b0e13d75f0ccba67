"""Readings; printed multipliers stand in tests/published, the waves in test_signals."""

import numpy as np
import pytest

from helpers.physics import meters, signals
from helpers.physics.mains import Supply
from helpers.physics.phase_cut import Dimmer

SUPPLY = Supply(230.0, 50.0)


@pytest.mark.parametrize("angle", [0.0, 33.0, 90.0, 140.0])
def test_second_way_the_cheap_reading_is_a_plain_function_of_the_angle(angle):
    signal = signals.dimmed_mains(SUPPLY, Dimmer("leading", angle))
    share = 0.5 * (1.0 + np.cos(np.radians(angle)))
    assert meters.reading(signal, "average") == pytest.approx(230.0 * share, rel=1e-12)
    true = meters.reading(signal, "true_rms")
    error = 100.0 * (230.0 * share / true - 1.0)
    assert meters.error_percent(signal) == pytest.approx(error, abs=1e-9)
    assert meters.error_percent(signal, "true_rms", "dc") == 0.0


def test_limit_every_meter_agrees_on_a_sine_and_a_dc_meter_shows_nothing():
    signal = signals.dimmed_mains(SUPPLY)
    for response in ("average", "true_rms"):
        for coupling in ("ac", "dc"):
            assert meters.reading(signal, response, coupling) == pytest.approx(230.0)
    assert meters.reading(signal, "mean", "dc") == 0.0


def test_limit_no_signal():
    signal = signals.dimmed_mains(SUPPLY, Dimmer("leading", 180.0))
    assert meters.reading(signal) == meters.reading(signal, "average") == 0.0
    assert np.isnan(meters.error_percent(signal))
    assert meters.within_crest_limit(signal) is False


def test_second_way_the_crest_factor_passes_three_near_127_degrees():
    below, above = (signals.dimmed_mains(SUPPLY, Dimmer("leading", a)) for a in (126.8, 127.0))
    assert meters.within_crest_limit(below) is True
    assert meters.within_crest_limit(above) is False


def test_limit_loading():
    assert meters.loaded_volts(230.0, 0.0) == 230.0
    assert meters.loaded_volts(230.0, 1e6, 1e6) == 115.0
    assert meters.loaded_volts(230.0, 1e12) < 0.01


def test_property_shape():
    dimmer = Dimmer("leading", np.linspace(0.0, 180.0, 4))
    for signal in (
        signals.dimmed_mains(SUPPLY, dimmer),
        signals.half_wave(SUPPLY, dimmer),
        signals.led_amps("bridge", SUPPLY, dimmer, ohms=1e5),
        signals.branch_amps("two_leds", SUPPLY, dimmer, ohms=1e5),
    ):
        assert {np.shape(value) for value in signal} == {(4,)}
        assert meters.reading(signal, "average").shape == meters.reading(signal).shape == (4,)
        assert meters.within_crest_limit(signal).shape == meters.error_percent(signal).shape == (4,)
    for signal in (
        signals.half_wave(SUPPLY),
        signals.branch_amps("resistor_only", SUPPLY, ohms=1e5),
    ):
        assert {type(value) for value in signal} == {float}
        assert type(meters.reading(signal)) is float
    assert meters.loaded_volts(np.ones(3), 1e6).shape == (3,)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda s: meters.reading(s, "peak"), "response was read as 'peak'"),
        (lambda s: meters.reading(s, "average", "no"), "coupling was read as 'no'"),
        (lambda s: meters.reading(s, "mean", "ac"), "AC coupling takes the mean off"),
        (lambda s: meters.error_percent(s, "peak"), "response was read as 'peak'"),
        (lambda s: meters.within_crest_limit(s, 1.0), "A sine already has 1.414"),
        (lambda s: meters.loaded_volts(1.0, 1.0, 0.0), "meter_ohms was read as 0 ohm"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call(signals.dimmed_mains(SUPPLY))
