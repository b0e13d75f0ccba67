"""A neon lamp against quadrature over a marched half-cycle; limits, properties, refusals."""

from dataclasses import fields
from math import isnan, pi, sqrt

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from helpers.physics import neon
from helpers.physics.mains import Supply
from helpers.physics.phase_cut import Dimmer

EUROPE, AMERICA, JAPAN = Supply(230.0, 50.0), Supply(120.0, 60.0), Supply(100.0, 50.0)


def by_quadrature(supply, dimmer, ohms, strike, maintain):
    """Start and end by looking along the half-cycle; the rest by adaptive quadrature."""
    crest = sqrt(2.0) * supply.volts_rms
    low, high = {"none": (0.0, 180.0), "leading": (dimmer.angle_degrees, 180.0),
                 "trailing": (0.0, dimmer.angle_degrees)}[dimmer.edge]  # fmt: skip
    degrees = np.linspace(low, high, 2001)
    volts = crest * np.sin(np.radians(degrees))
    struck = np.flatnonzero(volts >= strike)
    if not struck.size or high <= low:
        return None

    def crossing(level, place):
        """The angle at which the wave passes a level, between a look and the one before."""
        if place in (0, degrees.size):
            return np.radians(degrees[min(place, degrees.size - 1)])
        look = np.radians(degrees[place - 1 : place + 1])
        return brentq(lambda a: crest * np.sin(a) - level, *look, xtol=1e-14)

    start = crossing(strike, struck[0])
    after = np.flatnonzero(volts[struck[0] :] < maintain)
    end = crossing(maintain, struck[0] + after[0] if after.size else degrees.size)

    def amps(angle, above=0.0):
        return max((crest * np.sin(angle) - maintain) / ohms - above, 0.0)

    def mean(of):
        return quad(of, start, end, epsabs=1e-14, epsrel=1e-10, limit=400)[0] / pi

    average = mean(amps)
    return {
        "amps_mean": average,
        "amps_rms": sqrt(mean(lambda a: amps(a) ** 2)),
        "amps_peak": max(amps(a) for a in np.linspace(start, end, 2001)),
        "conduction_fraction": (end - start) / pi,
        "resistor_watts": ohms * mean(lambda a: amps(a) ** 2),
        "lamp_watts": maintain * average,
        "strike_degrees": np.degrees(start),
        "end_degrees": np.degrees(end),
        "light_flicker_index": mean(lambda a: amps(a, average)) / average,
    }


@pytest.mark.parametrize("supply", [EUROPE, AMERICA, JAPAN], ids=lambda s: s.name)
@pytest.mark.parametrize(
    "setting",
    [("none", 0.0), ("leading", 10.0), ("leading", 60.0), ("leading", 130.0), ("leading", 155.0),
     ("trailing", 170.0), ("trailing", 100.0), ("trailing", 45.0), ("trailing", 20.0)],
    ids=str,
)  # fmt: skip
@pytest.mark.parametrize("volts", [(90.0, 60.0), (110.0, 70.0), (65.0, 65.0)], ids=str)
def test_second_way_every_field_agrees_with_quadrature(supply, setting, volts):
    dimmer = Dimmer(*setting)
    found = neon.glow(supply, dimmer, ohms=330e3, strike_volts=volts[0], maintain_volts=volts[1])
    expected = by_quadrature(supply, dimmer, 330e3, *volts)
    assert found.lit == (expected is not None)
    for name, value in (expected or {}).items():
        # The peak of the second way is the highest of 2001 looks.
        close = 1e-6 if name == "amps_peak" else 1e-9
        assert getattr(found, name) == pytest.approx(value, rel=close, abs=1e-12), name
    assert found.branch_watts == pytest.approx(found.resistor_watts + found.lamp_watts)
    assert found.branch_watt_hours_per_day == pytest.approx(24.0 * found.branch_watts)
    assert found.light_fundamental_hertz == (2.0 * supply.hertz if expected else 0.0)


@pytest.mark.parametrize(
    ("supply", "degrees"),
    [(EUROPE, 163.9), (AMERICA, 148.0), (JAPAN, 140.5)],
    ids=lambda value: f"second way: {value}",
)
def test_an_independent_program_finds_the_same_end(supply, degrees):
    assert neon.goes_out_degrees(supply, "leading") == pytest.approx(degrees, abs=0.06)
    assert neon.goes_out_degrees(supply, "trailing") == pytest.approx(180.0 - degrees, abs=0.06)


@pytest.mark.parametrize("edge", ["leading", "trailing"])
@pytest.mark.parametrize("strike", [80.0, 108.0])
def test_limit_it_goes_out_at_once_at_the_stated_angle(edge, strike):
    end = neon.goes_out_degrees(AMERICA, edge, strike)
    step = 1e-6 if edge == "leading" else -1e-6
    inside, beyond = (
        neon.glow(AMERICA, Dimmer(edge, end + side), ohms=120e3, strike_volts=strike)
        for side in (-step, step)
    )
    assert inside.lit is True and beyond.lit is False
    assert beyond.amps_mean == beyond.light_flicker_index == beyond.branch_watts == 0.0
    assert isnan(beyond.strike_degrees) and isnan(beyond.end_degrees)
    if edge == "leading":
        assert inside.amps_peak == pytest.approx((strike - 60.0) / 120e3, rel=1e-4)


def test_limit_a_crest_below_striking_never_lights():
    lamp = neon.glow(Supply(50.0, 50.0), ohms=100e3)
    assert lamp.lit is False and lamp.amps_peak == 0.0
    assert isnan(neon.goes_out_degrees(Supply(50.0, 50.0), "leading"))


def test_property_the_window_is_not_symmetric():
    lamp = neon.glow(EUROPE, ohms=330e3)
    assert 180.0 - lamp.end_degrees < lamp.strike_degrees


def test_property_an_aged_lamp_goes_out_earlier():
    ends = neon.goes_out_degrees(AMERICA, "leading", neon.aged(90.0, np.array([0.0, 10.0, 30.0])))
    assert np.all(np.diff(ends) < 0.0)
    assert neon.aged(90.0, 0.0) == 90.0


@settings(max_examples=200, deadline=None, derandomize=True)
@given(
    volts=st.floats(60.0, 264.0), edge=st.sampled_from(["none", "leading", "trailing"]),
    degrees=st.floats(0.0, 180.0), strike=st.floats(61.0, 140.0), factor=st.floats(1.1, 10.0),
)  # fmt: skip
def test_property_ohms_scale_the_current_and_a_higher_strike_never_helps(
    volts, edge, degrees, strike, factor
):
    supply, dimmer = Supply(volts, 60.0), Dimmer(edge, degrees)
    once = neon.glow(supply, dimmer, ohms=100e3, strike_volts=strike)
    less = neon.glow(supply, dimmer, ohms=factor * 100e3, strike_volts=strike)
    assert factor * less.amps_mean == pytest.approx(once.amps_mean, rel=1e-12)
    assert less.light_flicker_index == pytest.approx(once.light_flicker_index, rel=1e-9)
    harder = neon.glow(supply, dimmer, ohms=100e3, strike_volts=1.2 * strike)
    assert harder.amps_mean <= once.amps_mean and not (harder.lit and not once.lit)


def test_property_shape():
    angles = np.array([[10.0], [150.0]])
    found = neon.glow(AMERICA, Dimmer("leading", angles), ohms=np.array([82e3, 120e3, 330e3]))
    assert {np.shape(getattr(found, f.name)) for f in fields(found)} == {(2, 3)}
    one = neon.glow(AMERICA, Dimmer("leading", 10.0), ohms=120e3)
    assert type(one.lit) is bool and type(one.amps_mean) is float
    assert found.amps_mean[0, 1] == pytest.approx(one.amps_mean, rel=1e-14)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: neon.glow(EUROPE, ohms=0.0), "Without a resistor the lamp bursts"),
        (lambda: neon.glow(EUROPE, ohms=1e5, strike_volts=50.0), "Were the two exchanged"),
        (lambda: neon.glow(EUROPE, ohms=1e5, maintain_volts=0.0), "maintain_volts was read as 0"),
        (lambda: neon.goes_out_degrees(EUROPE, "none"), "edge was read as 'none'"),
        (lambda: neon.aged(90.0, 200.0), "Ten per cent is 10, not 0.1"),
    ],
)
def test_refusal(call, words):
    with pytest.raises(ValueError, match=words):
        call()
