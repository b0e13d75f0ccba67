"""Fuses: the steps of the standard from both sides, and what the dropper asks of them."""

from math import inf, sqrt

import numpy as np
import pytest

from helpers.physics import capacitor_dropper, dropper_faults, fuses, switch_on
from helpers.physics.fuses import Fuse
from helpers.physics.mains import Supply
from helpers.physics.phase_cut import Dimmer

EUROPE = Supply(230.0, 50.0)
PARTS = capacitor_dropper.Parts(330e-9, 120.0, 1e6)


@pytest.mark.parametrize(
    ("speed", "times", "seconds"),
    [
        ("F", 2.0, inf), ("F", 2.1, 1800.0), ("F", 2.75, 2.0), ("F", 3.9, 2.0), ("F", 4.0, 0.3),
        ("F", 10.0, 0.02), ("T", 2.09, inf), ("T", 2.1, 1800.0), ("T", 2.75, 80.0),
        ("T", 4.0, 5.0), ("T", 9.9, 5.0), ("T", 50.0, 0.3),
    ],
    ids=lambda value: f"published: {value}",
)  # fmt: skip
@pytest.mark.parametrize("rated", [0.063, 0.1, 2.0])
def test_longest_time_steps_down_where_the_standard_says(speed, times, seconds, rated):
    assert fuses.longest_seconds(Fuse(rated, speed), times * rated) == seconds


def test_limit_breaking_capacity_of_a_small_and_of_a_large_fuse():
    assert Fuse(0.1, "F", "L").breaking_amps == 35.0
    assert Fuse(6.3, "F", "L").breaking_amps == 63.0
    assert Fuse(0.1, "F", "E").breaking_amps == 150.0
    assert fuses.can_break(Fuse(0.1), 1500.0) is True
    assert fuses.can_break(Fuse(0.1), 1501.0) is False


def test_second_way_behind_a_dimmer_a_fuse_for_the_sine_is_too_small():
    """On a sine a 63 mA fuse carries the dropper; a leading edge asks for nearly twice that."""
    sine = capacitor_dropper.steady(PARTS, EUROPE).line_amps_rms
    cut = capacitor_dropper.steady(PARTS, EUROPE, Dimmer("leading", 90.0), heater_ohms=529.0)
    assert sine < 0.063 < 1.5 * 0.063 < cut.line_amps_rms


def test_second_way_a_shorted_capacitor_clears_a_small_fuse_and_never_the_dimmer_s():
    shorted = dropper_faults.outcome("capacitor short", PARTS, EUROPE)
    assert fuses.longest_seconds(Fuse(0.16, "T"), shorted.line_amps_rms) <= 0.3
    assert fuses.longest_seconds(Fuse(2.0, "T"), shorted.line_amps_rms) == inf
    assert fuses.fusible_opens(shorted.surge_watts, 1.0, 25.0) is True


def test_second_way_no_fuse_sees_an_indicator_behind_a_resistor():
    assert fuses.longest_seconds(Fuse(0.032, "F"), 1.5e-3) == inf


@pytest.mark.parametrize(
    ("pulses", "share"),
    [(1.0, 0.48), (100.0, 0.48), (101.0, 0.38), (1e3, 0.38), (1e4, 0.29), (1e5, 0.22)],
    ids=lambda value: f"published: {value}",
)
def test_a_life_of_pulses_asks_for_a_larger_melting_integral(pulses, share):
    again = switch_on.worst(PARTS, EUROPE)[1].ampere_squared_seconds
    assert fuses.least_melting_integral(again, pulses) == pytest.approx(again / share, rel=1e-12)


def test_property_shape():
    amps = np.array([0.05, 0.25, 2.0])
    assert fuses.longest_seconds(Fuse(0.1), amps).tolist() == [inf, 1800.0, 0.3]
    assert fuses.can_break(Fuse(0.1, "F", "L"), np.array([10.0, 100.0])).tolist() == [True, False]
    assert fuses.least_melting_integral(amps, np.array([[10.0], [1e5]])).shape == (2, 3)
    assert fuses.fusible_opens(np.array([1.0, 50.0]), 1.0, 20.0).tolist() == [False, True]
    assert type(fuses.longest_seconds(Fuse(0.1), 0.3)) is float


def test_property_more_current_never_takes_longer():
    amps = np.linspace(0.0, 2.0, 400)
    for speed in "FT":
        longest = fuses.longest_seconds(Fuse(0.1, speed), amps)
        assert np.all(longest[1:] <= longest[:-1])


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: Fuse(0.0), "Milliamps. Divide by 1000"),
        (lambda: Fuse(0.1, "M"), "speed was read as 'M'"),
        (lambda: Fuse(0.1, "T", "X"), "breaking was read as 'X'"),
        (lambda: fuses.longest_seconds(Fuse(0.1), -1.0), "amps_rms was read as -1 A"),
        (lambda: fuses.can_break(Fuse(0.1), -1.0), "prospective_amps was read as -1 A"),
        (lambda: fuses.least_melting_integral(1e-4, 1e7), "the rms current counts"),
        (lambda: fuses.fusible_opens(10.0, 1.0, 0.5), "It is not a share of the rating"),
        (lambda: fuses.fusible_opens(10.0, 0.0, 20.0), "rated_watts was read as 0 W"),
    ],
)
def test_refusal(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def test_second_way_the_surge_resistor_limits_what_a_shorted_capacitor_draws():
    shorted = dropper_faults.outcome("capacitor short", PARTS, EUROPE)
    assert shorted.line_amps_rms < 230.0 / 120.0
    assert shorted.line_amps_rms > (230.0 - 3.4 * sqrt(2.0)) / 120.0
