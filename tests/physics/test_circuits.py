"""Drops of each circuit, and the current at an instant."""

import numpy as np
import pytest

from helpers.physics import circuits, mains, phase_cut
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import Dimmer

SUPPLY = Supply(120.0, 60.0)


@pytest.mark.parametrize(
    ("circuit", "expected"),
    [
        ("resistor_only", (2.0, 5.0)),
        ("series_diode", (2.7, None)),
        ("diode_across", (2.0, 0.7)),
        ("two_leds", (2.0, 3.1)),
        ("bridge", (3.4, 3.4)),
    ],
    ids=lambda value: f"second way: {value}",
)
def test_kirchhoff_by_hand(circuit, expected):
    laws = circuits.laws(circuit, led_volts=2.0, second_led_volts=3.1)
    sums = [
        way and sum(laws[name].volts for name in way) for way in circuits.named(circuit).sound[:2]
    ]
    assert sums == pytest.approx(list(expected))


def test_property_a_circuit_passes_through_and_reads_as_what_is_wired():
    for name, circuit in circuits.CIRCUITS.items():
        assert circuits.named(name) is circuits.named(circuit) is circuit
        assert str(circuit).startswith("resistor") and "LED" in str(circuit)
        by_name, by_value = (operating_point(c, SUPPLY, ohms=47e3) for c in (name, circuit))
        assert repr(by_name) == repr(by_value)


def test_property_every_part_has_a_law_and_every_fault_names_a_part_of_its_circuit():
    for name, circuit in circuits.CIRCUITS.items():
        laws = circuits.laws(name)
        for wiring in (circuit.sound, *circuit.faulty.values()):
            assert {part for way in wiring for part in way or ()} <= set(laws)
        passed = {part for way in circuit.sound[:2] for part in way or ()} - {"breakdown"}
        assert set(circuit.faulty) == {(p, how) for p in passed for how in ("short", "open")}


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
@pytest.mark.parametrize(
    "dimmer", [Dimmer(), Dimmer("leading", 100.0), Dimmer("trailing", 50.0)], ids=str
)
def test_second_way_many_instants_add_up_to_the_operating_point(circuit, dimmer):
    at = (np.arange(360000) + 0.5) / 1000.0
    amps = circuits.amps_at(circuit, SUPPLY, dimmer, at, ohms=47e3, second_led_volts=3.1)
    point = operating_point(circuit, SUPPLY, dimmer, ohms=47e3, second_led_volts=3.1)
    assert np.sqrt(np.mean(amps**2)) == pytest.approx(point.branch_amps_rms, rel=1e-5)
    assert np.max(np.abs(amps)) == pytest.approx(point.branch_amps_peak, rel=1e-4)


def test_limit_nothing_flows_at_the_crossing_or_backwards_through_a_diode():
    for circuit in circuits.CIRCUITS:
        assert circuits.amps_at(circuit, SUPPLY, Dimmer(), 0.0, ohms=47e3) == 0.0
    assert circuits.amps_at("series_diode", SUPPLY, Dimmer(), 270.0, ohms=47e3) == 0.0
    assert circuits.amps_at("diode_across", SUPPLY, Dimmer(), 270.0, ohms=47e3) < 0.0


def test_property_a_second_led_equals_the_first_unless_told():
    assert circuits.fill_in("two_leds", 3.0) == (3.0, 3.0, 0.7, 5.0)
    assert circuits.fill_in("two_leds", 3.0, 2.0) == (3.0, 2.0, 0.7, 5.0)


def test_property_shape():
    at = np.linspace(0.0, 360.0, 7)
    amps = circuits.amps_at("bridge", SUPPLY, Dimmer(), at, ohms=np.array([[1e4], [2e4]]))
    assert amps.shape == (2, 7)
    assert type(circuits.amps_at("bridge", SUPPLY, Dimmer(), 90.0, ohms=1e4)) is float
    assert circuits.fill_in("bridge", np.array([1.9, 3.1]))[1].shape == (2,)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: circuits.fill_in("ladder"), "circuit was read as 'ladder'; it must be one of"),
        (lambda: circuits.fill_in("bridge", -2.0), "Give the drop without sign"),
        (lambda: circuits.fill_in("two_leds", 2.0, 5.0), "The LED would break down first"),
        (
            lambda: circuits.amps_at("bridge", SUPPLY, Dimmer(), 90.0, ohms=-1.0),
            "ohms was read as -1 ohm",
        ),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()


@pytest.mark.parametrize(
    ("circuit", "degrees", "volts"),
    # By hand: drops of 2 V, 0.7 V and 5 V in reverse; the crest of 230 V where all is blocked.
    [("series_diode", 90.0, 2.7), ("series_diode", 270.0, -230.0 * 2.0**0.5),
     ("diode_across", 270.0, -0.7), ("resistor_only", 270.0, -5.0), ("bridge", 90.0, 3.4),
     ("bridge", 270.0, -3.4), ("two_leds", 270.0, -2.0)],
)  # fmt: skip
def test_second_way_the_volts_behind_the_dropper(circuit, degrees, volts):
    at = mains.SUPPLIES["230 V 50 Hz"], phase_cut.NO_DIMMER, degrees
    found = circuits.volts_behind_dropper_at(circuit, *at, ohms=100e3)
    assert found == pytest.approx(volts, rel=1e-9)


def test_limit_and_shape_below_the_drops_nothing_is_left_for_the_dropper():
    at = mains.SUPPLIES["230 V 50 Hz"], phase_cut.NO_DIMMER, np.array([0.0, 0.3])
    found = circuits.volts_behind_dropper_at("bridge", *at, ohms=100e3)
    assert found == pytest.approx(phase_cut.volts_at(*at), abs=1e-12)


def test_without_a_dropper_there_is_nothing_behind_it():
    at = mains.SUPPLIES["230 V 50 Hz"], phase_cut.NO_DIMMER, 90.0
    with pytest.raises(ValueError, match="Without a resistor the LED is destroyed"):
        circuits.volts_behind_dropper_at("bridge", *at, ohms=0.0)
