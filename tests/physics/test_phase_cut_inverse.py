"""Settings for wanted results, put back into the forward sums."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from helpers.physics import mains, phase_cut
from helpers.physics import phase_cut_inverse as inverse

SUPPLY = mains.Supply(230.0, 50.0)
edges = st.sampled_from(["leading", "trailing"])
many = settings(deadline=None, derandomize=True, max_examples=200)


@many
@given(share=st.floats(1e-9, 1.0), edge=edges)
def test_property_each_setting_gives_what_was_wanted(share, edge):
    def wave(dimmer):
        assert dimmer.edge == edge
        return phase_cut.wave(SUPPLY, dimmer)

    near = pytest.approx
    assert wave(inverse.for_power(share, edge)).power_fraction == near(share, rel=1e-8)
    volts = 230.0 * share
    assert wave(inverse.for_rms(volts, SUPPLY, edge)).volts_rms == near(volts, rel=1e-8)
    mean = share * mains.mean(230.0)
    assert wave(inverse.for_mean(mean, SUPPLY, edge)).volts_mean == near(mean, rel=1e-8)
    assert wave(inverse.for_conduction(share, edge)).conduction_fraction == near(share, rel=1e-6)


@pytest.mark.parametrize("share", [0.001, 0.1, 0.37, 0.5, 0.9, 0.999])
def test_second_way_the_angle_for_a_power_by_root_finding(share):
    def surplus(angle):
        dimmer = phase_cut.Dimmer("leading", angle)
        return phase_cut.wave(SUPPLY, dimmer).power_fraction - share

    expected = brentq(surplus, 0.0, 180.0, xtol=1e-12)
    assert inverse.for_power(share).angle_degrees == pytest.approx(expected, abs=1e-9)


def test_limit_all_and_nothing():
    for find in (
        inverse.for_power,
        inverse.for_conduction,
        lambda share: inverse.for_rms(230.0 * share, SUPPLY),
        lambda share: inverse.for_mean(mains.mean(230.0) * share, SUPPLY),
    ):
        assert find(0.0).angle_degrees == 180.0
        assert find(1.0).angle_degrees == pytest.approx(0.0, abs=1e-6)


def test_second_way_half_the_knob_is_seventy_per_cent_of_the_volts():
    half = inverse.percentages(phase_cut.Dimmer("trailing", 90.0))
    assert half == pytest.approx((50.0, 100.0 * 0.5**0.5, 50.0))


@pytest.mark.parametrize("share", [0.0, 0.03, 0.5, 0.9, 1.0])
def test_second_way_the_mean_that_goes_with_a_heat_is_that_of_the_wave(share):
    for edge in ("leading", "trailing"):
        mean = phase_cut.wave(SUPPLY, inverse.for_power(share, edge)).volts_mean
        assert inverse.mean_fraction(share) == pytest.approx(mean / mains.mean(230.0), abs=1e-12)


def test_property_shape():
    shares = np.linspace(0.0, 1.0, 6).reshape(2, 3)
    assert inverse.for_power(shares).angle_degrees.shape == (2, 3)
    assert inverse.for_rms(230.0 * shares, SUPPLY).angle_degrees.shape == (2, 3)
    assert inverse.for_mean(200.0 * shares, SUPPLY).angle_degrees.shape == (2, 3)
    assert inverse.for_conduction(shares).angle_degrees.shape == (2, 3)
    assert inverse.percentages(inverse.for_power(shares)).power_percent.shape == (2, 3)
    assert type(inverse.for_power(0.3).angle_degrees) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: inverse.for_power(50.0), "Half is 0.5, not 50"),
        (lambda: inverse.for_conduction(-0.1), "conduction_fraction was read as -0.1"),
        (lambda: inverse.for_rms(240.0, SUPPLY), "A dimmer cannot give more than it gets"),
        (lambda: inverse.for_rms(-1.0, SUPPLY), "wanted_volts_rms was read as -1 V"),
        (lambda: inverse.for_mean(225.0, SUPPLY), "Was an rms value meant"),
        (lambda: inverse.for_power(0.5, "none"), "edge was read as 'none'"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
