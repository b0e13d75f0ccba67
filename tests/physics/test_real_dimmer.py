"""The real switch of a dimmer: published shifts of a reading, integration, limits and refusals."""

from math import pi, sqrt

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from helpers.physics import meters, phase_cut, real_dimmer, signals
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import NO_DIMMER, Dimmer
from helpers.physics.real_dimmer import Switch

EUROPE, AMERICA = Supply(230.0, 50.0), Supply(120.0, 60.0)
LOW = Dimmer("leading", 143.0)


def shown(supply, switch, response):
    wave = real_dimmer.wave(supply, LOW, switch, supply.volts_rms**2 / 90.0)
    ideal = meters.reading(signals.dimmed_mains(supply, LOW), response)
    return 100.0 * (meters.reading(real_dimmer.signal(wave), response) / ideal - 1.0)


@pytest.mark.parametrize(
    ("supply", "switch", "percent"),
    [
        (EUROPE, Switch(1.2, 0.0, 100e-9), 11.5), (AMERICA, Switch(1.2, 0.0, 100e-9), 1.9),
        (EUROPE, Switch(1.2), -1.2), (AMERICA, Switch(1.2), -2.3),
    ],
    ids=lambda value: f"published: {value}",
)  # fmt: skip
def test_published_shift_of_a_plain_reading_at_a_low_setting(supply, switch, percent):
    """An independent simulation: 143 degrees, 90 W, average-responding against an ideal switch."""
    assert shown(supply, switch, "average") == pytest.approx(percent, abs=0.05)


def test_property_the_capacitor_fools_the_plain_meter_more_than_the_true_one():
    switch = Switch(1.2, 0.0, 100e-9)
    assert abs(shown(EUROPE, switch, "true_rms")) < 1.0 < shown(EUROPE, switch, "average")


@pytest.mark.parametrize("edge", ["leading", "trailing"])
@pytest.mark.parametrize("failure", ["none", "half wave"])
def test_second_way_integration_of_the_capacitor(edge, failure):
    supply, heater, farads, drop, holding = EUROPE, 588.0, 220e-9, 1.2, 0.030
    dimmer, turns, crest = Dimmer(edge, 110.0), 2 * pi * 50.0, sqrt(2.0) * 230.0
    switch = Switch(drop, holding, farads, failure)
    found = real_dimmer.signal(real_dimmer.wave(supply, dimmer, switch, heater))
    lets_go = pi - np.arcsin((drop + holding * heater) / crest)
    opens = np.arcsin(drop / crest)
    opens, shuts = {
        "leading": (110.0 / 180.0 * pi, lets_go), "trailing": (opens, 110.0 / 180.0 * pi)
    }[edge]  # fmt: skip
    period = pi if failure == "none" else 2 * pi
    on = np.linspace(opens, shuts, 20_001)
    off = np.linspace(shuts, opens + period, 200_001)
    run = solve_ivp(
        lambda a, v: [(crest * np.sin(a) - v[0]) / (heater * farads * turns)],
        (off[0], off[-1]), [drop], "LSODA", t_eval=off, rtol=1e-10, atol=1e-10,
    )  # fmt: skip
    on_volts, off_volts = crest * np.sin(on) - drop, crest * np.sin(off) - run.y[0]

    def mean(of):
        return (np.trapezoid(of(on_volts), on) + np.trapezoid(of(off_volts), off)) / period

    assert found.mean_size == pytest.approx(mean(abs), rel=2e-5)
    assert found.rms == pytest.approx(sqrt(mean(np.square)), rel=2e-5)
    expected = 0.0 if failure == "none" else mean(lambda v: v)
    assert found.mean == pytest.approx(expected, abs=1e-3)
    led = mean(lambda v: np.maximum(v - 2.7, 0.0)) / 82e3
    if failure == "half wave":
        wave = real_dimmer.wave(supply, dimmer, switch, heater)
        assert real_dimmer.light("series_diode", wave, ohms=82e3) == pytest.approx(led, rel=1e-4)


@pytest.mark.parametrize("circuit", CIRCUITS)
@pytest.mark.parametrize(
    "dimmer", [NO_DIMMER, LOW, Dimmer("trailing", 60.0), Dimmer("leading", 180.0)], ids=str
)
def test_limit_a_switch_without_drop_or_capacitor_is_ideal(circuit, dimmer):
    wave = real_dimmer.wave(AMERICA, dimmer, Switch(0.0), 160.0)
    ideal = signals.dimmed_mains(AMERICA, dimmer)
    assert tuple(real_dimmer.signal(wave)) == pytest.approx(tuple(ideal), rel=1e-9, abs=1e-12)
    point = operating_point(circuit, AMERICA, dimmer, ohms=47e3)
    lit = point.led_amps_mean + point.second_led_amps_mean
    assert real_dimmer.light(circuit, wave, ohms=47e3) == pytest.approx(lit, rel=1e-4, abs=1e-12)


def test_second_way_a_drop_in_the_switch_is_one_more_drop_of_the_indicator():
    wave = real_dimmer.wave(EUROPE, LOW, Switch(1.2), 588.0)
    point = operating_point("diode_across", EUROPE, LOW, ohms=82e3, led_volts=3.2)
    assert real_dimmer.light("diode_across", wave, ohms=82e3, led_volts=2.0) == pytest.approx(
        point.led_amps_mean, rel=1e-5
    )


def test_limit_a_switch_that_fails_short_leaves_the_whole_mains():
    wave = real_dimmer.wave(EUROPE, LOW, Switch(1.2, 0.03, 100e-9, "short"), 588.0)
    assert real_dimmer.signal(wave).rms == pytest.approx(230.0, rel=1e-9)


def test_property_half_waves_add_up_and_a_series_diode_sees_one_of_them():
    halves = [
        real_dimmer.wave(EUROPE, LOW, Switch(1.2, failure=how), 588.0)
        for how in ("half wave", "other half wave")
    ]
    first, second = (real_dimmer.signal(half) for half in halves)
    assert first.mean == pytest.approx(-second.mean) and first.mean > 0.0
    whole = real_dimmer.signal(real_dimmer.wave(EUROPE, LOW, Switch(1.2), 588.0))
    assert whole.rms == pytest.approx(sqrt(first.rms**2 + second.rms**2))
    lit = [real_dimmer.light("series_diode", half, ohms=82e3) for half in halves]
    assert lit[0] > 0.0 == lit[1]


def test_limit_a_holding_current_that_is_never_passed_leaves_only_the_capacitor():
    never = Switch(1.2, 1.0, 100e-9)
    found = real_dimmer.signal(real_dimmer.wave(EUROPE, LOW, never, 588.0))
    ratio = 588.0 / abs(588.0 - 1j / (2 * pi * 50.0 * 100e-9))
    assert found.rms == pytest.approx(230.0 * ratio, rel=1e-6)
    assert real_dimmer.signal(real_dimmer.wave(EUROPE, LOW, Switch(1.2, 1.0), 588.0)).rms == 0.0


def test_property_shape():
    dimmer = Dimmer("leading", np.array([30.0, 90.0, 143.0]))
    heaters = np.array([[588.0], [160.0]])
    wave = real_dimmer.wave(EUROPE, dimmer, Switch(1.2, 0.02, 47e-9), heaters)
    assert wave.volts.shape[:2] == wave.shares.shape[:2] == (2, 3)
    assert wave.shares.sum(-1) == pytest.approx(np.ones((2, 3)))
    found = real_dimmer.signal(wave)
    assert found.rms.shape == real_dimmer.light("bridge", wave, ohms=82e3).shape == (2, 3)
    one = real_dimmer.signal(real_dimmer.wave(EUROPE, LOW, Switch(1.2, 0.02, 47e-9), 588.0))
    assert type(one.rms) is float and one.rms == pytest.approx(found.rms[0, 2])
    assert one.rms < phase_cut.wave(EUROPE, LOW).volts_rms


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: Switch(-1.0), "volts was read as -1 V"),
        (lambda: Switch(1.2, -0.1), "Milliamps. Divide by 1000"),
        (lambda: Switch(1.2, 0.0, -1e-9), "Nanofarads. Multiply by 1e-9"),
        (lambda: Switch(failure="stuck"), "failure was read as 'stuck'"),
        (lambda: real_dimmer.wave(EUROPE, LOW, Switch(), 0.0), "heater_ohms was read as 0 ohm"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
