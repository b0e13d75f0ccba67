"""Single faults of a capacitor dropper: an independent table, other circuits, limits, refusals."""

from dataclasses import asdict, replace
from math import inf, sqrt

import numpy as np
import pytest

from helpers.physics import capacitor_dropper, dropper_faults
from helpers.physics.capacitor_dropper import Parts, steady
from helpers.physics.dropper_faults import FAULTS, outcome
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import Dimmer

EUROPE, AMERICA = Supply(230.0, 50.0), Supply(120.0, 60.0)
BARE = Parts(330e-9, 150.0, 1e6)
FULL = replace(BARE, led_ohms=68.0, smoothing_farads=47e-6, clamp_volts=5.1)
CREST = sqrt(2.0) * 230.0


@pytest.mark.parametrize(
    ("fault", "field", "value", "close"),
    [
        ("capacitor short", "line_amps_rms", 1.513, 1e-3),
        ("capacitor short", "surge_watts", 343.0, 2e-3),
        ("capacitor open", "led_amps_mean", 0.204e-3, 3e-3),
        ("capacitor aged", "led_amps_mean", 16.99e-3, 1e-3),
        ("bleeder short", "line_amps_rms", 1.513, 1e-3),
        ("bridge diode short", "led_amps_mean", 10.7e-3, 5e-3),
        ("bridge diode short", "line_amps_rms", 23.8e-3, 3e-3),
        ("bridge diode open", "led_amps_mean", 0.31e-3, 2e-2),
        ("bridge diode open", "led_amps_peak", 9.8e-3, 5e-3),
        ("bridge diode open", "capacitor_volts_mean", -308.0, 3e-2),
        ("LED open", "output_volts_peak", 325.0, 5e-3),
    ],
)
def test_second_way_an_independent_program_finds_the_same(fault, field, value, close):
    """330 nF, 150 ohm, 1 Mohm on 230 V; it leaves out drops and loading here and there."""
    assert getattr(outcome(fault, BARE, EUROPE), field) == pytest.approx(value, rel=close)


@pytest.mark.parametrize("dimmer", [Dimmer(), Dimmer("leading", 70.0), Dimmer("trailing", 60.0)])
def test_second_way_without_its_capacitor_it_is_a_resistor_circuit(dimmer):
    point = operating_point("bridge", AMERICA, dimmer, ohms=150.0)
    shorted = outcome("capacitor short", BARE, AMERICA, dimmer, heater_ohms=160.0)
    assert shorted.led_amps_mean == pytest.approx(point.led_amps_mean, rel=1e-5)
    assert shorted.surge_watts == pytest.approx(point.resistor_watts, rel=1e-5)
    point = operating_point("bridge", AMERICA, dimmer, ohms=150.0 + 1e6)
    opened = outcome("capacitor open", BARE, AMERICA, dimmer, heater_ohms=160.0)
    assert opened.led_amps_mean == pytest.approx(point.led_amps_mean, rel=1e-5)
    assert opened.led_amps_peak == pytest.approx(point.led_amps_peak, rel=1e-5)
    heat = opened.surge_watts + opened.bleeder_watts
    assert heat == pytest.approx(point.resistor_watts, rel=1e-5)
    assert opened.surge_watts / heat == pytest.approx(150.0 / 1000150.0, rel=1e-9)


@pytest.mark.parametrize("dimmer", [Dimmer(), Dimmer("leading", 90.0)], ids=str)
def test_second_way_no_fault_is_the_steady_cycle(dimmer):
    sound, point = outcome("none", FULL, EUROPE, dimmer), steady(FULL, EUROPE, dimmer)
    shared = asdict(sound).keys() & asdict(point).keys()
    assert len(shared) == 10
    assert all(getattr(sound, name) == getattr(point, name) for name in shared)


DARK = {"surge resistor open", "LED short", "LED open", "LED resistor open", "smoothing short",
        "clamp short"}  # fmt: skip


@pytest.mark.parametrize("fault", FAULTS)
@pytest.mark.parametrize("dimmer", [Dimmer(), Dimmer("leading", 90.0), Dimmer("trailing", 30.0)])
def test_property_every_fault_on_every_edge_is_dark_or_lit_as_its_words_say(fault, dimmer):
    found = outcome(fault, FULL, EUROPE, dimmer, heater_ohms=588.0)
    assert (found.led_amps_mean == 0.0) == (fault in DARK)
    assert ("dark;" in found.words or "dark," in found.words or "open LED" in found.words) == (
        fault in DARK
    )
    assert all(np.isfinite(value) for value in list(asdict(found).values())[1:])


def test_limit_an_open_led_leaves_the_crest_behind_the_bridge_unless_a_clamp_holds_it():
    free, held = outcome("LED open", BARE, EUROPE), outcome("LED open", FULL, EUROPE)
    assert free.output_volts_peak == pytest.approx(CREST - 1.4, rel=1e-12)
    assert free.source_watts == free.line_amps_rms == 0.0
    assert held.output_volts_peak == 5.1
    assert held.clamp_watts == pytest.approx(5.1 * 4 * 50 * 330e-9 * (CREST - 6.5), rel=2e-3)
    late = outcome("LED open", BARE, EUROPE, Dimmer("leading", 150.0))
    assert late.output_volts_peak == pytest.approx(0.5 * CREST - 1.4, rel=1e-12)


def test_limit_an_open_bleeder_leaves_the_crest_on_the_pins():
    assert outcome("bleeder open", BARE, EUROPE).pin_volts == pytest.approx(CREST)
    assert outcome("none", BARE, EUROPE).pin_volts < 34.0
    assert outcome("capacitor short", BARE, EUROPE).pin_volts == 0.0


def test_limit_a_shorted_surge_resistor_tells_only_in_pulses():
    sine = outcome("surge resistor short", BARE, EUROPE)
    assert sine.led_amps_mean == pytest.approx(steady(BARE, EUROPE).led_amps_mean, rel=1e-3)
    cut = outcome("surge resistor short", BARE, EUROPE, Dimmer("leading", 90.0), heater_ohms=588.0)
    assert cut.led_amps_peak > 200.0


def test_property_smoothing_or_clamp_change_little_of_the_current_in_the_line():
    for fault in ("bridge diode short", "capacitor aged", "capacitor short"):
        bare, full = (outcome(fault, parts, EUROPE) for parts in (BARE, FULL))
        assert full.line_amps_rms == pytest.approx(bare.line_amps_rms, rel=0.02)


def test_property_shape():
    angles = np.array([30.0, 90.0])
    for fault in FAULTS:
        found = outcome(fault, FULL, EUROPE, Dimmer("leading", angles), heater_ohms=588.0)
        assert {np.shape(value) for value in list(asdict(found).values())[1:]} == {(2,)}
        alone = outcome(fault, FULL, EUROPE, Dimmer("leading", 90.0), heater_ohms=588.0)
        assert type(alone.surge_watts) is type(alone.pin_volts) is float
        assert alone.surge_watts == pytest.approx(found.surge_watts[1])


@pytest.mark.parametrize(
    ("fault", "parts", "words"),
    [
        ("lamp open", BARE, "fault was read as 'lamp open'"),
        ("bleeder open", replace(BARE, bleeder_ohms=inf), "these parts have no bleeder"),
        ("smoothing short", BARE, "these parts have no smoothing"),
        ("clamp open", BARE, "these parts have no clamp"),
        ("LED resistor open", BARE, "these parts have no LED resistor"),
    ],
)
def test_refusal(fault, parts, words):
    with pytest.raises(ValueError, match=words):
        outcome(fault, parts, EUROPE)


def test_limit_no_bleeder_and_no_capacitor_is_dark():
    dark = outcome("capacitor open", replace(BARE, bleeder_ohms=inf), EUROPE)
    assert dark.led_amps_mean == pytest.approx(0.0, abs=1e-6)
    assert dropper_faults.WIRE_OHMS > 0.0 and capacitor_dropper.BRIDGES["sound"]
