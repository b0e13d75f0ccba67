"""Currents and voltages in five numbers, each against quadrature."""

from math import pi, sqrt

import numpy as np
import pytest
from one_cycle_by_quadrature import Cycle

from helpers.physics import mains, phase_cut, signals
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.phase_cut import Dimmer
from helpers.physics.signals import Signal

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
        (signals.branch_amps(circuit, SUPPLY, dimmer, ohms=47e3, **DROPS), cycle.branch),
        (signals.led_amps(circuit, SUPPLY, dimmer, ohms=47e3, **DROPS), cycle.in_led),
    ):
        expected = by_quadrature(cycle, of)
        assert found == pytest.approx(expected, rel=1e-8, abs=1e-8 * expected.rms)


@pytest.mark.parametrize("angle", [0.0, 33.0, 90.0, 140.0])
def test_second_way_a_half_wave_is_a_circuit_without_drops(angle):
    found = signals.half_wave(SUPPLY, Dimmer("leading", angle))
    cycle = Cycle("series_diode", 230.0, 50.0, "leading", angle, 1.0, 0.0, 0.0, 0.0, 5.0)
    assert found == pytest.approx(by_quadrature(cycle, cycle.branch), rel=1e-9)


@pytest.mark.parametrize("angle", [0.0, 33.0, 90.0, 140.0])
def test_second_way_the_dimmed_mains_has_no_mean_and_the_numbers_of_its_wave(angle):
    dimmer = Dimmer("trailing", angle)
    wave = phase_cut.wave(SUPPLY, dimmer)
    expected = Signal(0.0, wave.volts_mean, wave.volts_mean, wave.volts_rms, wave.volts_peak)
    assert signals.dimmed_mains(SUPPLY, dimmer) == expected


def test_limit_a_sine_and_nothing_at_all():
    sine = signals.dimmed_mains(SUPPLY)
    assert (sine.mean, sine.rms) == (0.0, 230.0)
    assert sine.mean_size == sine.mean_deviation == pytest.approx(mains.mean(230.0))
    assert signals.half_wave(SUPPLY, Dimmer("leading", 180.0)) == Signal(0.0, 0.0, 0.0, 0.0, 0.0)


def test_property_shape():
    dimmer = Dimmer("leading", np.linspace(0.0, 180.0, 4))
    for signal in (
        signals.dimmed_mains(SUPPLY, dimmer),
        signals.half_wave(SUPPLY, dimmer),
        signals.led_amps("bridge", SUPPLY, dimmer, ohms=1e5),
        signals.branch_amps("two_leds", SUPPLY, dimmer, ohms=1e5),
    ):
        assert {np.shape(value) for value in signal} == {(4,)}
    single = signals.branch_amps("resistor_only", SUPPLY, ohms=1e5)
    assert {type(value) for value in single} == {float}


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: signals.led_amps("bridge", SUPPLY, ohms=0.0), "ohms was read as 0 ohm"),
        (lambda: signals.branch_amps("x", SUPPLY, ohms=1.0), "circuit was read as 'x'"),
        (lambda: signals.led_amps("bridge", SUPPLY, ohms=1.0, led_volts=-1.0), "without sign"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
