"""The seven side by side: each against the module that owns it, and against sums by hand."""

from math import exp, inf, isnan, pi, sqrt

import numpy as np
import pytest

from helpers.physics import capacitor_dropper, compared, mains
from helpers.physics.phase_cut import NO_DIMMER, Dimmer

SUPPLY = mains.SUPPLIES["230 V 50 Hz"]
every_supply = pytest.mark.parametrize("supply", mains.SUPPLIES.values(), ids=mains.SUPPLIES)


def given(supply, heater_ohms=None):
    pot = supply.volts_rms**2 / 90.0 if heater_ohms is None else heater_ohms
    return {"ohms": 100e3, "lamp_ohms": compared.neon_ohms(supply), "heater_ohms": pot}


@every_supply
def test_second_way_a_series_diode_gives_a_crest_over_pi_and_half_of_the_heat(supply):
    """Half-wave rectifier, any textbook; drops of 2.7 V taken off to first order."""
    found = compared.does("series_diode", supply, **given(supply))
    crest = sqrt(2.0) * supply.volts_rms
    assert found.light_amps_mean == pytest.approx((crest / pi - 1.35) / 100e3, rel=2e-3)
    assert found.heat_watts == pytest.approx(supply.volts_rms**2 / 2e5, rel=0.03)
    assert found.light_hertz == supply.hertz


@every_supply
def test_second_way_the_neon_lamp_is_lit_from_90_to_60_volts(supply):
    """A sum over instants; striking at 90 V, maintaining 60 V: common practice, no source."""
    crest, ohms = sqrt(2.0) * supply.volts_rms, compared.neon_ohms(supply)
    angle = (np.arange(400_000) + 0.5) * pi / 400_000
    volts = crest * np.sin(angle)
    lit = np.where(angle < pi / 2, volts >= 90.0, volts >= 60.0)
    amps = np.where(lit, volts - 60.0, 0.0) / ohms
    found = compared.does("neon", supply, **given(supply))
    assert found.light_amps_mean == pytest.approx(amps.mean(), rel=1e-4)
    assert found.heat_watts == pytest.approx((volts * amps).mean(), rel=1e-4)


@every_supply
@pytest.mark.parametrize("edge", ["leading", "trailing"])
def test_property_a_dropper_at_90_degrees_hardly_dims_and_passes_what_a_small_led_stands(
    supply, edge
):
    cut = compared.does("capacitor_dropper", supply, Dimmer(edge, 90.0), **given(supply))
    sine = compared.does("capacitor_dropper", supply, **given(supply))
    assert cut.light_amps_mean == pytest.approx(sine.light_amps_mean, rel=0.03)
    assert cut.light_amps_peak > 5 * 0.020 > 5 * sine.light_amps_peak


@every_supply
def test_limit_only_the_resistor_alone_drives_its_led_backwards(supply):
    back = {kind: compared.does(kind, supply, **given(supply))[2] for kind in compared.KINDS}
    assert [kind for kind, amps in back.items() if amps > 0.0] == ["resistor_only"]


def test_limit_nothing_let_through_makes_no_light():
    for kind in compared.KINDS:
        found = compared.does(kind, SUPPLY, Dimmer("leading", 180.0), **given(SUPPLY))
        assert found.light_amps_mean == 0.0 and found.light_hertz == 0.0


@every_supply
def test_second_way_of_two_resistors_the_one_that_is_left_gets_four_times_the_heat(supply):
    high = mains.highest(supply)
    for kind in ("series_diode", "diode_across", "bridge", "two_leds", "resistor_only"):
        found = compared.stands(kind, high, ohms=100e3)
        assert found.fault == "one resistor short"
        assert found.watts_after == pytest.approx(4 * found.watts_sound, rel=0.01)


@every_supply
def test_second_way_a_shorted_capacitor_leaves_the_surge_resistor_alone_with_the_mains(supply):
    found = compared.stands("capacitor_dropper", supply, ohms=100e3)
    assert found.fault == "capacitor short"
    volts, drops = supply.volts_rms, 3.4  # the mean square of a sine less what the bridge takes
    square = volts**2 - 2 * drops * 2 * sqrt(2.0) / pi * volts + drops**2
    assert found.watts_after == pytest.approx(square / 1e3, rel=2e-3)
    assert found.watts_after > 100 * found.watts_sound


def test_second_way_a_shorted_resistor_of_the_neon_lamp_doubles_its_current():
    found = compared.stands("neon", SUPPLY, ohms=100e3, lamp_ohms=330e3)
    assert found.fault == "one resistor short"
    assert found.watts_after == pytest.approx(4 * found.watts_sound)


@every_supply
def test_property_with_a_broken_element_all_but_the_series_diode_are_lit_at_off(supply):
    lit = {k: compared.at_off(k, supply, **given(supply, inf)) for k in compared.KINDS}
    assert lit.pop("series_diode") == 0.0
    assert min(lit.values()) > 0.3e-3
    sound = compared.at_off("neon", supply, **given(supply))
    assert sound == 0.0


def test_second_way_the_trace_has_the_mean_and_the_peak_of_the_steady_cycle():
    parts, pot = compared.DROPPER, 588.0
    for dimmer in (NO_DIMMER, Dimmer("leading", 75.0), Dimmer("trailing", 110.0)):
        point = capacitor_dropper.steady(parts, SUPPLY, dimmer, heater_ohms=pot)
        degrees, volts, amps = capacitor_dropper.trace(
            parts, SUPPLY, dimmer, heater_ohms=pot, samples=4000
        )
        mean = np.trapezoid(np.abs(amps), degrees) / 360.0
        assert mean == pytest.approx(point.led_amps_mean, rel=1e-3)
        assert np.abs(amps).max() == pytest.approx(point.led_amps_peak, rel=1e-3)
        assert np.abs(volts).max() <= mains.peak(230.0) * (1 + 1e-9)
        assert degrees[0] == 0.0 and degrees[-1] == pytest.approx(360.0)


def test_second_way_behind_a_leading_edge_the_pulse_dies_away_with_r_times_c():
    parts = capacitor_dropper.Parts(100e-9, 1e3)
    cut = Dimmer("leading", 90.0)
    degrees, _, amps = capacitor_dropper.trace(parts, SUPPLY, cut, heater_ohms=588.0, samples=2000)
    after = 90.0 + 360.0 * SUPPLY.hertz * 100e-6  # one time constant later
    left = float(np.interp(after, degrees[degrees > 90.0], amps[degrees > 90.0]))
    assert left == pytest.approx(amps.max() * exp(-1.0), rel=0.03)


@pytest.mark.parametrize("function", [compared.does, compared.stands, compared.at_off])
def test_an_unknown_kind_is_refused_in_words(function):
    with pytest.raises(ValueError, match="kind was read as 'ring'"):
        function("ring", SUPPLY, ohms=100e3)


def test_limit_no_ohms_are_refused_in_words():
    with pytest.raises(ValueError, match="ohms was read as 0"):
        compared.does("bridge", SUPPLY, ohms=0.0)
    assert not isnan(compared.does("bridge", SUPPLY, ohms=1e9).light_amps_mean)
