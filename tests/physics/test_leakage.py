"""The dimmer switched off: the phasor sum taken apart again."""

import numpy as np
import pytest

from helpers.physics import leakage
from helpers.physics.mains import Supply

SUPPLY = Supply(230.0, 50.0)


@pytest.mark.parametrize("heater", [160.0, 588.0, 1e5])
@pytest.mark.parametrize("dropper", [np.inf, 82e3])
def test_second_way_the_voltages_close_the_triangle(heater, dropper):
    state = leakage.off_state(SUPPLY, 68e-9, 120.0, heater, dropper)
    across_capacitor = state.leak_amps_rms / (2.0 * np.pi * 50.0 * 68e-9)
    in_phase = state.volts_rms + state.leak_amps_rms * 120.0
    assert np.hypot(in_phase, across_capacitor) == pytest.approx(230.0, rel=1e-12)
    load = 1.0 / (1.0 / heater + 1.0 / dropper)
    assert state.leak_amps_rms == pytest.approx(state.volts_rms / load, rel=1e-12)
    assert state.volts_peak == pytest.approx(2.0**0.5 * state.volts_rms, rel=1e-15)


def test_limit_a_broken_element_leaves_the_whole_mains_and_nearly_so_with_a_dropper():
    state = leakage.off_state(SUPPLY, 100e-9, 100.0)
    assert state.volts_rms == 230.0 and state.leak_amps_rms == 0.0
    assert 0.95 < leakage.off_state(SUPPLY, 100e-9, 100.0, np.inf, 120e3).volts_rms / 230.0 < 1.0


def test_property_a_larger_capacitor_or_heater_resistance_leaks_more_volts():
    farads = np.geomspace(1e-9, 1e-6, 20)
    assert np.all(np.diff(leakage.off_state(SUPPLY, farads, 100.0, 588.0).volts_rms) > 0.0)
    heaters = np.geomspace(50.0, 1e6, 20)
    assert np.all(np.diff(leakage.off_state(SUPPLY, 1e-7, 100.0, heaters).volts_rms) > 0.0)


def test_second_way_the_threshold_counts_every_drop_of_the_half_cycle():
    state = leakage.OffState(volts_rms=2.0, volts_peak=2.828, leak_amps_rms=0.007)
    reached = {c: leakage.reaches_led(c, state) for c in ("diode_across", "series_diode", "bridge")}
    assert reached == {"diode_across": True, "series_diode": True, "bridge": False}
    assert leakage.reaches_led("series_diode", state, led_volts=2.2) is False


def test_property_shape():
    heaters = np.array([[160.0], [np.inf]])
    state = leakage.off_state(SUPPLY, np.array([47e-9, 100e-9, 150e-9]), 100.0, heaters)
    assert state.volts_rms.shape == state.volts_peak.shape == state.leak_amps_rms.shape == (2, 3)
    assert leakage.reaches_led("bridge", state).shape == (2, 3)
    assert type(leakage.off_state(SUPPLY, 1e-7, 100.0).leak_amps_rms) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: leakage.off_state(SUPPLY, 0.0, 100.0), "Nanofarads. Multiply by 1e-9"),
        (lambda: leakage.off_state(SUPPLY, 1e-7, -1.0), "snubber_ohms was read as -1 ohm"),
        (lambda: leakage.off_state(SUPPLY, 1e-7, 1.0, 0.0), "A short circuit is a fault"),
        (lambda: leakage.off_state(SUPPLY, 1e-7, 1.0, [np.inf, -5.0]), "heater_ohms was read as"),
        (lambda: leakage.off_state(SUPPLY, 1e-7, 1.0, -np.inf), "heater_ohms was read as"),
        (lambda: leakage.off_state(SUPPLY, 1e-7, 1.0, 588.0, 0.0), "dropper_ohms was read as 0"),
        (
            lambda: leakage.reaches_led("x", leakage.off_state(SUPPLY, 1e-7, 1.0)),
            "circuit was read as 'x'",
        ),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()


def test_limit_what_is_not_there_conducts_nothing():
    found = leakage.conductance(np.array([np.inf, 250.0]), "load_ohms")
    assert found.tolist() == [0.0, 0.004]
    with pytest.raises(ValueError, match="give inf for a part that is not there"):
        leakage.conductance(0.0, "load_ohms")
