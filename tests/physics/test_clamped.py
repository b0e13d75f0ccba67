"""A broken element, a series diode and an off dimmer: the shifted mains, taken apart again."""

from math import pi, sqrt

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from helpers.physics import clamped, leakage, mains, meters
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point

EUROPE, AMERICA = Supply(230.0, 50.0), Supply(120.0, 60.0)
SNUBBER = (100e-9, 100.0)


def by_integration(supply, farads, snubber, dropper, bleeder, drops, cycles):
    """Volts lowest, highest, mean, rms and LED amps of the last cycle, from the two equations.

    Kirchhoff's laws in SI with each half-plane solved by itself; a change of half-plane is an
    event of scipy's integrator. The integrals of v, v squared and the LED's current run along.
    """
    crest, turns = sqrt(2.0) * supply.volts_rms, 2.0 * pi * supply.hertz

    def node(at, held):
        """Voltage between the terminals while the diode blocks, and while it conducts."""
        spare = crest * np.sin(turns * at) - held
        blocked = spare * bleeder / (bleeder + snubber)
        lit = (spare / snubber + drops / dropper) / (1 / snubber + 1 / dropper + 1 / bleeder)
        return blocked, lit

    def rates(at, state, conducts):
        volts = node(at, state[0])[conducts]
        led = (volts - drops) / dropper if conducts else 0.0
        return [(volts / bleeder + led) / farads, volts, volts * volts, led]

    def passes(at, state, conducts):
        return node(at, state[0])[0] - drops

    passes.terminal = True
    at, held, conducts = 0.0, 0.8 * crest, False
    for cycle in range(cycles):
        end, state, seen = (cycle + 1) / supply.hertz, [held, 0.0, 0.0, 0.0], []
        while at < end:
            passes.direction = -1.0 if conducts else 1.0
            run = solve_ivp(
                rates, (at, end), state, "DOP853", events=passes, args=(conducts,),
                rtol=1e-9, atol=1e-11, dense_output=cycle == cycles - 1,
            )  # fmt: skip
            if run.sol:
                times = np.linspace(at, run.t[-1], 2000)
                seen.append(node(times, run.sol(times)[0])[conducts])
            at, state = run.t[-1], run.y[:, -1]
            conducts = conducts != (run.status == 1)
        held = state[0]
    volts = np.concatenate(seen)
    mean, square, led = state[1:] * supply.hertz
    return volts.min(), volts.max(), mean, sqrt(square), led


@pytest.mark.parametrize(
    ("supply", "farads", "snubber", "dropper", "bleeder", "cycles"),
    [
        (EUROPE, 100e-9, 100.0, 100e3, 470e3, 60),
        (EUROPE, 100e-9, 100.0, 82e3, 2.2e6, 150),
        (AMERICA, 47e-9, 1e3, 39e3, 100e3, 30),
        (EUROPE, 220e-9, 10.0, 120e3, 10e3, 30),
    ],
)
def test_second_way_adaptive_integration_through_events(
    supply, farads, snubber, dropper, bleeder, cycles
):
    state = clamped.off_state(supply, farads, snubber, dropper, bleeder)
    found = by_integration(supply, farads, snubber, dropper, bleeder, 2.7, cycles)
    # The extremes of the second way come from 2000 instants a stretch.
    assert (state.volts_lowest, state.volts_highest) == pytest.approx(found[:2], rel=1e-5)
    assert (state.signal.mean, state.volts_rms) == pytest.approx(found[2:4], rel=1e-6)
    assert state.led_amps_mean == pytest.approx(found[4], rel=1e-6)


@pytest.mark.parametrize(
    ("tolerance", "lowest", "rms"), [(0.0, -648.0, 396.0), (10.0, -713.0, 436.0)]
)
def test_published_the_terminals_reach_nearly_twice_the_crest(tolerance, lowest, rms):
    """An independent time-domain simulation of 230 V, 100 nF with 100 ohm, without a bleeder."""
    supply = mains.Supply(mains.range_of(EUROPE.volts_rms, tolerance)[1], EUROPE.hertz)
    state = clamped.off_state(supply, *SNUBBER, 100e3)
    assert state.volts_lowest == pytest.approx(lowest, abs=0.5)
    assert state.volts_rms == pytest.approx(rms, abs=0.5)
    assert state.diode_reverse_volts == -state.volts_lowest == state.signal.peak
    assert state.led_amps_mean == state.led_share == 0.0


def test_published_a_bleeder_keeps_9_to_37_per_cent_of_the_light():
    """The same simulation: bleeders of 2.2 Mohm to 470 kohm, droppers of 82 to 120 kohm."""
    bleeders, droppers = np.array([2.2e6, 470e3]), np.array([[82e3], [120e3]])
    share = clamped.off_state(EUROPE, *SNUBBER, droppers, bleeders).led_share
    assert share.min() == pytest.approx(0.09, abs=0.005)
    assert share.max() == pytest.approx(0.37, abs=0.005)


def test_limit_without_a_bleeder_the_mains_is_shifted_by_crest_less_drops():
    state = clamped.off_state(AMERICA, *SNUBBER, 39e3, led_volts=3.2, diode_volts=0.8)
    shift = 120.0 * sqrt(2.0) - 4.0
    assert state.volts_highest == pytest.approx(4.0, abs=1e-12)
    assert state.signal.mean == -shift
    assert state.volts_rms == pytest.approx(sqrt(120.0**2 + shift**2), rel=1e-12)
    # An AC range leaves the steady part out and shows the plain mains.
    assert meters.reading(state.signal) == pytest.approx(120.0, rel=1e-12)
    assert meters.reading(state.signal, "average") == pytest.approx(120.0, rel=1e-12)


def test_limit_a_bleeder_of_very_many_ohms_is_none():
    none, weak = (clamped.off_state(EUROPE, *SNUBBER, 100e3, b) for b in (np.inf, 1e15))
    assert weak.volts_lowest == pytest.approx(none.volts_lowest, rel=1e-5)
    assert tuple(weak.signal) == pytest.approx(tuple(none.signal), rel=1e-5)
    assert 0.0 < weak.led_share < 1e-8


def test_limit_a_small_bleeder_is_the_sound_element():
    sound = leakage.off_state(EUROPE, *SNUBBER, heater_ohms=588.0)
    state = clamped.off_state(EUROPE, *SNUBBER, 100e3, 588.0)
    assert state.volts_rms == pytest.approx(sound.volts_rms, rel=2e-3)
    assert state.volts_highest == pytest.approx(sound.volts_peak, rel=5e-3)
    assert state.led_amps_mean > 0.0
    dark = clamped.off_state(AMERICA, *SNUBBER, 100e3, 160.0)
    phasor = leakage.off_state(AMERICA, *SNUBBER, heater_ohms=160.0)
    assert dark.volts_rms == pytest.approx(phasor.volts_rms, rel=1e-12)
    assert dark.volts_highest == pytest.approx(phasor.volts_peak, rel=1e-12)
    assert dark.led_amps_mean == 0.0


def test_limit_drops_above_the_crest_never_light():
    state = clamped.off_state(EUROPE, *SNUBBER, 100e3, led_volts=400.0)
    assert state.signal.mean == state.led_share == 0.0
    assert state.volts_rms == pytest.approx(230.0, rel=1e-12)


def test_limit_without_drops_and_without_a_dropper_to_speak_of_the_crest_is_held_at_zero():
    state = clamped.off_state(EUROPE, 100e-9, 0.0, 1e-3, 1e9, led_volts=0.0, diode_volts=0.0)
    assert state.volts_highest == pytest.approx(0.0, abs=1e-3)
    assert state.volts_lowest == pytest.approx(-2.0 * sqrt(2.0) * 230.0, rel=1e-3)


@pytest.mark.parametrize("bleeder", [1e3, 22e3, 470e3, 10e6])
@pytest.mark.parametrize("supply", [EUROPE, AMERICA])
def test_property_no_charge_stays_on_the_capacitor(supply, bleeder):
    state = clamped.off_state(supply, *SNUBBER, 82e3, bleeder)
    assert state.led_amps_mean + state.signal.mean / bleeder == pytest.approx(
        0.0, abs=1e-11 * state.volts_rms / bleeder
    )


@pytest.mark.parametrize("bleeder", [1e3, 470e3, 10e6, np.inf])
def test_second_way_the_trace_has_the_extremes_and_the_means(bleeder):
    circuit = (AMERICA, 68e-9, 330.0, 47e3, bleeder)
    state = clamped.off_state(*circuit)
    degrees = (np.arange(36_000) + 0.5) / 100.0
    volts = clamped.volts_at(degrees, *circuit)
    assert volts.min() == pytest.approx(state.volts_lowest, rel=1e-6)
    assert volts.max() == pytest.approx(state.volts_highest, rel=1e-6)
    mean = volts.mean()
    expected = (
        mean, np.abs(volts).mean(), np.abs(volts - mean).mean(), sqrt((volts**2).mean()),
        np.abs(volts).max(),
    )  # fmt: skip
    assert tuple(state.signal) == pytest.approx(expected, rel=1e-6)
    led = np.maximum(volts - 2.7, 0.0).mean() / 47e3
    assert state.led_amps_mean == pytest.approx(led, rel=1e-5, abs=1e-18)


def test_second_way_energy_from_the_mains_ends_in_the_parts():
    """Over a cycle the capacitor keeps nothing: mains = snubber + bleeder + dropper + drops."""
    snubber, dropper, bleeder = 1e4, 47e3, 100e3
    circuit = (EUROPE, 100e-9, snubber, dropper, bleeder)
    degrees = (np.arange(72_000) + 0.5) / 200.0
    volts = clamped.volts_at(degrees, *circuit)
    led = np.maximum(volts - 2.7, 0.0) / dropper
    amps = volts / bleeder + led
    given = (sqrt(2.0) * 230.0 * np.sin(np.radians(degrees)) * amps).mean()
    square = clamped.off_state(*circuit).volts_rms ** 2
    kept = snubber * (amps**2).mean() + square / bleeder + (dropper * led**2 + 2.7 * led).mean()
    assert given == pytest.approx(kept, rel=1e-6)


def test_property_light_and_lowest_volts_rise_with_a_smaller_bleeder():
    """Down to the dropper's own size; a far smaller one takes the light away again."""
    bleeders = np.geomspace(1e9, 1e5, 30)
    state = clamped.off_state(EUROPE, *SNUBBER, 100e3, bleeders)
    assert np.all(np.diff(state.led_share) > 0.0)
    assert np.all(np.diff(state.volts_lowest) > 0.0)
    assert np.all(state.led_share < 1.0)


def test_second_way_the_share_is_that_of_the_dimmer_at_full():
    state = clamped.off_state(EUROPE, *SNUBBER, 100e3, 470e3, led_volts=3.0)
    full = operating_point("series_diode", EUROPE, ohms=100e3, led_volts=3.0).led_amps_mean
    assert state.led_share == pytest.approx(state.led_amps_mean / full, rel=1e-15)


def test_property_shape():
    bleeders = np.array([[588.0], [470e3], [np.inf]])
    state = clamped.off_state(EUROPE, *SNUBBER, np.array([82e3, 120e3]), bleeders)
    assert state.volts_lowest.shape == state.signal.rms.shape == state.led_share.shape == (3, 2)
    one = clamped.off_state(EUROPE, *SNUBBER, 120e3, 470e3)
    assert type(one.volts_rms) is type(one.led_share) is type(one.diode_reverse_volts) is float
    assert state.volts_rms[1, 1] == pytest.approx(one.volts_rms, rel=1e-12)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: clamped.off_state(EUROPE, 0.0, 1.0, 1e5), "Nanofarads. Multiply by 1e-9"),
        (lambda: clamped.off_state(EUROPE, 1e-7, -1.0, 1e5), "snubber_ohms was read as -1 ohm"),
        (lambda: clamped.off_state(EUROPE, 1e-7, 1.0, 0.0), "An LED needs its dropper"),
        (
            lambda: clamped.off_state(EUROPE, 1e-7, 1.0, 1e5, 0.0),
            "give inf for a part that is not there",
        ),
        (lambda: clamped.off_state(EUROPE, 1e-7, 1.0, 1e5, led_volts=-2.0), "led_volts was read"),
        (lambda: clamped.volts_at("x", EUROPE, 1e-7, 1.0, 1e5), "degrees was read as 'x'"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
