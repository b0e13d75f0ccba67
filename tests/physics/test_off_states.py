"""Every circuit behind an open switch, against adaptive integration; by diode law; lit switches."""

from math import pi, sqrt

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp

from helpers.physics import circuits, clamped, leakage, leds, off_states
from helpers.physics.mains import Supply

EUROPE, AMERICA = Supply(230.0, 50.0), Supply(120.0, 60.0)
SNUBBER = (100e-9, 100.0)
#: By hand: what each circuit drops forwards and backwards, and for which LEDs that is light.
DROPS = {
    "resistor_only": (2.0, 5.0, ""), "series_diode": (2.7, None, ""),
    "diode_across": (2.0, 0.7, ""), "two_leds": (2.0, 2.0, "second"), "bridge": (3.4, 3.4, "same"),
}  # fmt: skip


def by_integration(circuit, supply, farads, snubber, dropper, load, cycles):
    """Rms, mean, LED mean each way, branch and leak rms of the last cycle, in SI.

    Kirchhoff's laws with each state solved by itself; a change of state is an event of scipy's
    integrator, and the integrals run along.
    """
    forward, backward, _ = DROPS[circuit]
    drops = {0: 0.0, 1: forward, -1: -(backward or 1e9)}
    crest, turns = sqrt(2.0) * supply.volts_rms, 2.0 * pi * supply.hertz
    shunt = 0.0 if load == np.inf else 1.0 / load

    def node(at, held, state):
        spare = crest * np.sin(turns * at) - held
        own = (state != 0) / dropper
        return (spare + snubber * own * drops[state]) / (1.0 + snubber * (shunt + own))

    def rates(at, values, state):
        volts = node(at, values[0], state)
        led = (volts - drops[state]) / dropper * (state != 0)
        amps = volts * shunt + led
        return [
            amps / farads, volts, volts**2, max(led, 0.0), max(-led, 0.0), led**2, amps**2
        ]  # fmt: skip

    def rises(at, values, state):
        return node(at, values[0], 0) - forward

    def falls(at, values, state):
        return node(at, values[0], 0) - drops[-1]

    rises.terminal = falls.terminal = True
    at, held, state = 0.0, 0.0, 0
    for cycle in range(cycles):
        end, values = (cycle + 1) / supply.hertz, [held] + [0.0] * 6
        while at < end:
            rises.direction, falls.direction = (-1.0 if state == 1 else 1.0), 1.0
            falls.direction = 1.0 if state == -1 else -1.0
            run = solve_ivp(
                rates, (at, end), values, "DOP853", events=(rises, falls), args=(state,),
                rtol=1e-9, atol=1e-12, max_step=1.0 / supply.hertz / 40.0,
            )  # fmt: skip
            at, values = run.t[-1], run.y[:, -1]
            if run.status == 1:
                state = 0 if state else (1 if run.t_events[0].size else -1)
        held = values[0]
    mean, square, up, down, branch, leak = values[1:] * supply.hertz
    return sqrt(square), mean, up, down, sqrt(branch), sqrt(leak)


CASES = [
    (EUROPE, 100e-9, 100.0, 100e3, 588.0, 4),
    (EUROPE, 100e-9, 100.0, 82e3, 22e3, 12),
    (AMERICA, 47e-9, 1e3, 39e3, 100e3, 30),
    (EUROPE, 1.5e-9, 0.0, 100e3, 470e3, 12),
    (EUROPE, 68e-9, 10.0, 120e3, np.inf, 40),
]


@pytest.mark.parametrize(
    ("circuit", "supply", "farads", "snubber", "dropper", "load", "cycles"),
    # A diode alone behind an open element never settles: that is the clamped state.
    [(c, *case) for c in DROPS for case in CASES if (c, case[4]) != ("series_diode", np.inf)],
    ids=lambda value: f"second way: {value}",
)
def test_adaptive_integration_through_events(
    circuit, supply, farads, snubber, dropper, load, cycles
):
    found = off_states.past_a_capacitor(circuit, supply, farads, snubber, dropper, load)
    rms, mean, up, down, branch, leak = by_integration(
        circuit, supply, farads, snubber, dropper, load, cycles
    )
    close = {"rel": 2e-5, "abs": 1e-10}
    meant = {"": (up, 0.0), "second": (up, down), "same": (up + down, 0.0)}[DROPS[circuit][2]]
    assert (found.led_amps_mean, found.second_led_amps_mean) == pytest.approx(meant, **close)
    assert (found.volts_rms, found.volts_mean) == pytest.approx((rms, mean), rel=2e-5, abs=1e-4)
    assert (found.branch_amps_rms, found.leak_amps_rms) == pytest.approx((branch, leak), **close)


@pytest.mark.parametrize("load", [588.0, 470e3, 10e6, np.inf])
def test_second_way_a_series_diode_is_what_the_clamped_state_says(load):
    found = off_states.past_a_capacitor("series_diode", EUROPE, *SNUBBER, 100e3, load)
    state = clamped.off_state(EUROPE, *SNUBBER, 100e3, load)
    assert found.volts_rms == pytest.approx(state.volts_rms, rel=1e-9)
    assert found.volts_lowest == pytest.approx(state.volts_lowest, rel=1e-9)
    assert found.volts_highest == pytest.approx(state.volts_highest, rel=1e-9)
    assert (found.led_amps_mean, found.led_share) == pytest.approx(
        (state.led_amps_mean, state.led_share), rel=1e-9, abs=1e-18
    )


@pytest.mark.parametrize(
    ("supply", "heater", "rms", "led"),
    [
        (EUROPE, 882.0, 6.37, 12.8e-6),
        (EUROPE, 529.0, 3.82, 5.58e-6),
        (EUROPE, 441.0, 3.18, 3.84e-6),
        (AMERICA, 240.0, 1.09, 0.0),
        (AMERICA, 144.0, 0.65, 0.0),
    ],
    ids=lambda value: f"published: {value}",
)
def test_published_snubber_and_a_sound_element(supply, heater, rms, led):
    """An independent program: 100 nF and 100 ohm, a diode across the LED; volts without load."""
    found = off_states.past_a_capacitor("diode_across", supply, *SNUBBER, 2 * 75e3, heater)
    assert found.volts_rms == pytest.approx(rms, rel=6e-3)
    assert found.led_amps_mean == pytest.approx(led, rel=6e-3)


def test_published_an_open_element_leaves_nearly_all_the_light():
    """The same program: 0.664 to 0.670 mA, 97 to 98 % of full, about 225 V at the terminals."""
    for circuit in ("resistor_only", "diode_across", "two_leds", "bridge"):
        found = off_states.past_a_capacitor(circuit, EUROPE, *SNUBBER, 2 * 75e3)
        halves = 2.0 if circuit == "bridge" else 1.0
        assert 0.660e-3 < found.led_amps_mean / halves < 0.672e-3
        assert 0.965 < found.led_share < 0.985
        assert found.volts_rms == pytest.approx(225.0, rel=0.01)


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
@pytest.mark.parametrize("load", [588.0, 33e3, np.inf])
def test_property_no_charge_stays_on_the_capacitor(circuit, load):
    found = off_states.past_a_capacitor(circuit, AMERICA, *SNUBBER, 47e3, load)
    if circuit == "resistor_only":
        return  # its backward current is breakdown, which no field reports
    backwards = {"two_leds": found.second_led_amps_mean, "bridge": found.led_amps_mean / 2.0}
    net = found.led_amps_mean / (2.0 if circuit == "bridge" else 1.0) - backwards.get(circuit, 0.0)
    if circuit != "diode_across":
        through_load = found.volts_mean / load
        assert net + through_load == pytest.approx(0.0, abs=1e-10 * found.volts_rms / 47e3)


def test_limit_drops_that_are_never_passed_leave_the_phasor():
    for circuit in circuits.CIRCUITS:
        given = {"led_volts": 150.0, "breakdown_volts": 400.0, "second_led_volts": 150.0}
        found = off_states.past_a_capacitor(circuit, EUROPE, *SNUBBER, 100e3, 10e3, **given)
        phasor = leakage.off_state(EUROPE, *SNUBBER, 10e3)
        lit = found.branch_amps_rms > 0.0
        assert lit == (circuit == "diode_across")
        if not lit:
            assert found.volts_rms == pytest.approx(phasor.volts_rms, rel=1e-9)
            assert found.volts_highest == pytest.approx(phasor.volts_peak, rel=1e-9)
            assert found.volts_lowest == pytest.approx(-phasor.volts_peak, rel=1e-9)
            assert found.leak_amps_rms == pytest.approx(phasor.leak_amps_rms, rel=1e-9)


def test_property_a_bypass_load_takes_light_away_and_a_longer_cable_brings_it():
    loads = np.geomspace(1e6, 300.0, 40)
    found = off_states.past_a_capacitor("diode_across", EUROPE, *SNUBBER, 100e3, loads)
    assert np.all(np.diff(found.led_amps_mean) <= 0.0)
    farads = 100e-12 * np.array([5.0, 20.0, 60.0])  # metres: common practice, no source
    cable = off_states.past_a_capacitor("bridge", EUROPE, farads, 0.0, 100e3)
    assert np.all(np.diff(cable.led_amps_mean) > 0.0)
    assert cable.led_amps_mean[0] > 10e-6


def test_second_way_by_diode_law_is_a_small_sine_behind_the_element():
    """The real LED at each instant of the phasor's sine, added up; constant drops are far off."""
    glow = off_states.by_diode_law("series_diode", EUROPE, *SNUBBER, 2 * 75e3, 529.0)
    taught = off_states.past_a_capacitor("series_diode", EUROPE, *SNUBBER, 2 * 75e3, 529.0)
    assert glow.led_amps_mean == pytest.approx(5.86e-6, rel=5e-3)
    assert taught.led_amps_mean == pytest.approx(3.92e-6, rel=5e-3)
    left = leakage.off_state(EUROPE, *SNUBBER, 529.0).volts_peak
    given = {"ohms": 2 * 75e3 + 529.0, "led": leds.real("red")}

    def amps(angle):
        at = Supply(230.0, 50.0), circuits.phase_cut.NO_DIMMER, 90.0
        scaled = Supply(left * np.sin(angle) / sqrt(2.0), at[0].hertz)
        return circuits.amps_at("series_diode", scaled, at[1], at[2], **given)

    mean = quad(amps, 1e-9, pi - 1e-9, epsrel=1e-9)[0] / (2.0 * pi)
    assert glow.led_amps_mean == pytest.approx(mean, rel=1e-4)


def test_property_shape():
    loads = np.array([[588.0], [470e3], [np.inf]])
    for circuit in circuits.CIRCUITS:
        given = (EUROPE, *SNUBBER, np.array([82e3, 120e3]))
        found = off_states.past_a_capacitor(circuit, *given, loads)
        assert {np.shape(value) for value in vars(found).values()} == {(3, 2)}
        one = off_states.past_a_capacitor(circuit, EUROPE, *SNUBBER, 120e3, 470e3)
        assert {type(value) for value in vars(one).values()} == {float}
        assert one.led_amps_mean == pytest.approx(found.led_amps_mean[1, 1], rel=1e-9)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: off_states.past_a_capacitor("x", EUROPE, 1e-7, 1.0, 1e5), "circuit was read as"),
        (lambda: off_states.past_a_capacitor("bridge", EUROPE, 0.0, 1.0, 1e5), "Nanofarads"),
        (lambda: off_states.past_a_capacitor("bridge", EUROPE, 1e-7, 1.0, 0.0), "its dropper"),
        (
            lambda: off_states.by_diode_law("bridge", EUROPE, 1e-7, 1.0, 1e5, 1e6),
            "no sound element",
        ),
        (lambda: off_states.by_diode_law("bridge", EUROPE, 1e-9, 1.0, 9e9, np.inf), "no sound"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
