"""Readings on every wave against quadrature; printed multipliers stand in tests/published."""

from math import pi, sqrt

import numpy as np
import pytest
from one_cycle_by_quadrature import Cycle

from helpers.physics import meters
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.meters import Signal
from helpers.physics.phase_cut import Dimmer

SUPPLY = Supply(230.0, 50.0)
DROPS = {"led_volts": 2.1, "second_led_volts": 3.2, "diode_volts": 0.7, "breakdown_volts": 60.0}


def by_quadrature(cycle, of):
    mean = cycle.mean(of)
    up, down = cycle.above(of, mean)[1], cycle.above(lambda x: -of(x), -mean)[1]
    # Where the dimmer is off there is no piece, yet the distance to the mean counts.
    dark = 1.0 - sum(b - a for a, b in cycle.pieces) / (2.0 * pi)
    return Signal(
        mean=mean,
        mean_size=cycle.mean(lambda x: abs(of(x))),
        mean_deviation=up + down + dark * abs(mean),
        rms=sqrt(cycle.mean(lambda x: of(x) ** 2)),
        peak=cycle.highest(lambda x: abs(of(x))),
    )


@pytest.mark.parametrize("circuit", CIRCUITS)
@pytest.mark.parametrize(
    "setting", [("none", 0.0), ("leading", 70.0), ("trailing", 40.0), ("leading", 165.0)], ids=str
)
def test_second_way_currents_by_quadrature(circuit, setting):
    cycle = Cycle(circuit, 230.0, 50.0, *setting, 47e3, *DROPS.values())
    dimmer = Dimmer(*setting)
    for found, of in (
        (meters.branch_current(circuit, SUPPLY, dimmer, ohms=47e3, **DROPS), cycle.branch),
        (meters.led_current(circuit, SUPPLY, dimmer, ohms=47e3, **DROPS), cycle.in_led),
    ):
        expected = by_quadrature(cycle, of)
        assert found == pytest.approx(expected, rel=1e-8, abs=1e-8 * expected.rms)


@pytest.mark.parametrize("angle", [0.0, 33.0, 90.0, 140.0])
def test_second_way_a_half_wave_is_a_circuit_without_drops(angle):
    found = meters.half_wave(SUPPLY, Dimmer("leading", angle))
    cycle = Cycle("series_diode", 230.0, 50.0, "leading", angle, 1.0, 0.0, 0.0, 0.0, 5.0)
    assert found == pytest.approx(by_quadrature(cycle, cycle.branch), rel=1e-9)


@pytest.mark.parametrize("angle", [0.0, 33.0, 90.0, 140.0])
def test_second_way_the_cheap_reading_is_a_plain_function_of_the_angle(angle):
    signal = meters.dimmed_mains(SUPPLY, Dimmer("leading", angle))
    share = 0.5 * (1.0 + np.cos(np.radians(angle)))
    assert meters.reading(signal, "average") == pytest.approx(230.0 * share, rel=1e-12)
    true = meters.reading(signal, "true_rms")
    error = 100.0 * (230.0 * share / true - 1.0)
    assert meters.error_percent(signal) == pytest.approx(error, abs=1e-9)
    assert meters.error_percent(signal, "true_rms", "dc") == 0.0


def test_limit_every_meter_agrees_on_a_sine_and_a_dc_meter_shows_nothing():
    signal = meters.dimmed_mains(SUPPLY)
    for response in ("average", "true_rms"):
        for coupling in ("ac", "dc"):
            assert meters.reading(signal, response, coupling) == pytest.approx(230.0)
    assert meters.reading(signal, "mean", "dc") == 0.0


def test_limit_no_signal():
    signal = meters.dimmed_mains(SUPPLY, Dimmer("leading", 180.0))
    assert meters.reading(signal) == meters.reading(signal, "average") == 0.0
    assert np.isnan(meters.error_percent(signal))
    assert meters.within_crest_limit(signal) is False


def test_second_way_the_crest_factor_passes_three_near_127_degrees():
    below, above = (meters.dimmed_mains(SUPPLY, Dimmer("leading", a)) for a in (126.8, 127.0))
    assert meters.within_crest_limit(below) is True
    assert meters.within_crest_limit(above) is False


def test_limit_loading():
    assert meters.loaded_volts(230.0, 0.0) == 230.0
    assert meters.loaded_volts(230.0, 1e6, 1e6) == 115.0
    assert meters.loaded_volts(230.0, 1e12) < 0.01


def test_property_shape():
    dimmer = Dimmer("leading", np.linspace(0.0, 180.0, 4))
    for signal in (
        meters.dimmed_mains(SUPPLY, dimmer),
        meters.half_wave(SUPPLY, dimmer),
        meters.led_current("bridge", SUPPLY, dimmer, ohms=1e5),
        meters.branch_current("two_leds", SUPPLY, dimmer, ohms=1e5),
    ):
        assert {np.shape(value) for value in signal} == {(4,)}
        assert meters.reading(signal, "average").shape == meters.reading(signal).shape == (4,)
        assert meters.within_crest_limit(signal).shape == meters.error_percent(signal).shape == (4,)
    for signal in (
        meters.half_wave(SUPPLY),
        meters.branch_current("resistor_only", SUPPLY, ohms=1e5),
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
        (lambda s: meters.led_current("bridge", SUPPLY, ohms=0.0), "ohms was read as 0 ohm"),
        (lambda s: meters.branch_current("x", SUPPLY, ohms=1.0), "circuit was read as 'x'"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call(meters.dimmed_mains(SUPPLY))
