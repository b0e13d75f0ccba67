"""Charge, discharge, classes and pins: the laws taken apart again, limits, refusals."""

from math import exp, inf, sqrt

import numpy as np
import pytest
from scipy.integrate import quad, solve_ivp

from helpers.physics import capacitors, limits, mains
from helpers.physics.mains import SUPPLIES, Supply

EUROPE = Supply(230.0, 50.0)


def test_second_way_discharge_by_integration():
    run = solve_ivp(lambda _, v: -v / (1e6 * 330e-9), (0.0, 1.0), [358.0], rtol=1e-10, atol=1e-10)
    left = capacitors.volts_left(1.0, 330e-9, 1e6, 358.0)
    assert left == pytest.approx(run.y[0, -1], rel=1e-7)
    assert capacitors.seconds_to(left, 330e-9, 1e6, 358.0) == pytest.approx(1.0, rel=1e-12)
    assert capacitors.largest_bleeder(330e-9, 358.0, left, 1.0) == pytest.approx(1e6, rel=1e-12)
    assert capacitors.time_constant(330e-9, 1e6) == pytest.approx(0.33, rel=1e-12)


def test_second_way_all_of_the_energy_ends_in_the_bleeder():
    heat = quad(lambda t: capacitors.volts_left(t, 100e-9, 1e6, 325.0) ** 2 / 1e6, 0.0, 5.0)[0]
    assert heat == pytest.approx(0.5 * 100e-9 * 325.0**2, rel=1e-9)


@pytest.mark.parametrize(
    ("farads", "ohms"),
    [(47e-9, 8.2e6), (100e-9, 3.86e6), (330e-9, 1.17e6), (470e-9, 822e3)],
    ids=lambda value: f"second way: {value:g}",
)
def test_an_independent_program_finds_the_same_bleeder(farads, ohms):
    """34 V in a second from 253 V and with 10 % more capacitance, as it rounds its results."""
    found = capacitors.largest_bleeder(1.1 * farads, mains.peak(253.0))
    assert found == pytest.approx(ohms, rel=5e-3)


def test_limit_below_the_limit_nothing_is_needed_and_without_a_bleeder_all_stays():
    assert capacitors.largest_bleeder(1e-6, 30.0) == inf
    assert capacitors.seconds_to(34.0, 1e-6, 1e6, 30.0) == 0.0
    assert capacitors.seconds_to(34.0, 1e-6, inf, 358.0) == inf
    assert capacitors.volts_left(3600.0, 1e-6, inf, 358.0) == 358.0
    assert capacitors.bleeder_watts(230.0, inf) == 0.0


@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=lambda s: s.name)
def test_second_way_pins_at_the_highest_mains_with_both_parts_at_their_worst(supply):
    found = capacitors.pins(supply, 220e-9, 1e6)
    crest = sqrt(2.0) * mains.highest(supply).volts_rms
    assert found.volts_left == pytest.approx(crest * exp(-1.0 / (1.05e6 * 242e-9)), rel=1e-12)
    assert found.joules == pytest.approx(0.5 * 242e-9 * crest**2)
    assert found.coulombs == pytest.approx(242e-9 * crest)
    assert found.holds is True and found.exempt is False
    broken = capacitors.pins(supply, 220e-9, inf)
    assert broken.volts_left == crest and broken.seconds == inf and broken.holds is False


@pytest.mark.parametrize(("farads", "exempt"), [(99e-9, True), (100e-9, False), (330e-9, False)])
def test_limit_small_capacitors_are_left_out_by_the_standard(farads, exempt):
    found = capacitors.pins(EUROPE, farads, inf)
    assert found.exempt is exempt and found.holds is exempt
    assert found.volts_left > 300.0


@pytest.mark.parametrize(
    ("safety_class", "allowed"),
    [("X1", 2), ("X2", 2), ("Y4", 0), ("Y2", 3), ("Y1", 4)],
    ids=lambda value: f"limit: {value}",
)
def test_a_class_may_bridge_what_its_short_does_not_make_live(safety_class, allowed):
    places = [p for p in capacitors.BRIDGES if capacitors.may_bridge(safety_class, p, 253.0)]
    assert len(places) == allowed
    assert ("line to what a hand may touch" in places) == (safety_class == "Y1")


def test_limit_y4_serves_low_mains_alone():
    assert capacitors.may_bridge("Y4", "line to protective earth", 132.0)
    assert not capacitors.may_bridge("Y4", "line to protective earth", 253.0)


def test_property_impulses_of_x_classes_keep_the_energy_above_a_microfarad():
    farads = np.array([100e-9, 1e-6, 2.2e-6, 4.7e-6])
    volts = capacitors.impulse_volts("X2", farads)
    assert volts[:2].tolist() == [2500.0, 2500.0]
    assert farads[1:] * volts[1:] ** 2 == pytest.approx(np.full(3, 1e-6 * 2500.0**2))
    assert capacitors.impulse_volts("Y1", 4e-6) == 8000.0


def test_property_shape():
    farads, ohms = np.array([[47e-9], [330e-9]]), np.array([1e6, 2.2e6, inf])
    assert capacitors.volts_left(1.0, farads, ohms, 325.0).shape == (2, 3)
    assert capacitors.seconds_to(34.0, farads, ohms, 325.0).shape == (2, 3)
    assert capacitors.largest_bleeder(farads, np.array([30.0, 325.0])).shape == (2, 2)
    assert capacitors.aged(farads, np.array([0.0, 20.0])).shape == (2, 2)
    alone = (
        capacitors.volts_left(1.0, 1e-7, 1e6, 325.0),
        capacitors.largest_bleeder(1e-7, 325.0),
        capacitors.bleeder_watts(230.0, 1e6),
        capacitors.aged(1e-7),
    )
    assert {type(value) for value in alone} == {float}


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: limits.present(0.0, "ohms", "ohm"), "give inf for a part that is not there"),
        (lambda: capacitors.time_constant(330.0e-9, -1.0), "ohms was read as -1 ohm"),
        (lambda: capacitors.volts_left(-1.0, 1e-7, 1e6, 300.0), "seconds was read as -1 s"),
        (lambda: capacitors.seconds_to(0.0, 1e-7, 1e6, 300.0), "volts was read as 0 V"),
        (lambda: capacitors.largest_bleeder(0.0, 300.0), "Nanofarads: multiply by 1e-9"),
        (lambda: capacitors.bleeder_watts(0.0, 1e6), "volts_rms was read as 0 V"),
        (lambda: capacitors.pins(EUROPE, 1e-7, 1e6, 60.0), "Ten per cent is 10"),
        (lambda: capacitors.may_bridge("X9", "line to neutral", 230.0), "safety_class was read as"),
        (lambda: capacitors.may_bridge("X2", "to earth", 230.0), "place was read as 'to earth'"),
        (lambda: capacitors.impulse_volts("Z", 1e-7), "safety_class was read as 'Z'"),
        (lambda: capacitors.aged(1e-7, -5.0), "Ten per cent is 10, not 0.1"),
    ],
)
def test_refusal(call, words):
    with pytest.raises(ValueError, match=words):
        call()
