"""Stretches of a charging capacitor: roots, closed integrals, cycles that close on themselves."""

from math import pi

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from helpers.physics import relaxing
from helpers.physics.relaxing import NEVER, Load, Mode, Stretch

STRETCH = Stretch(Mode(300.0, 0.7, 4.0), 0.3, 2.9, -20.0)


def volts(angle):
    return relaxing.at(STRETCH.mode, angle, STRETCH.start, STRETCH.volts)[0]


def test_second_way_areas_are_those_of_quadrature():
    once, twice = relaxing.areas(STRETCH)
    assert once == pytest.approx(quad(volts, 0.3, 2.9, epsrel=1e-12)[0], rel=1e-10)
    assert twice == pytest.approx(quad(lambda a: volts(a) ** 2, 0.3, 2.9)[0], rel=1e-10)


def test_second_way_the_voltage_obeys_its_equation():
    step = 1e-6
    slope = (volts(1.2 + step) - volts(1.2 - step)) / (2.0 * step)
    there, said = relaxing.at(STRETCH.mode, 1.2, STRETCH.start, STRETCH.volts)
    assert volts(STRETCH.start) == pytest.approx(STRETCH.volts)
    assert said == pytest.approx(slope, rel=1e-8)
    assert said == pytest.approx(300.0 * np.cos(1.2) - 0.7 * (there - 4.0))


def test_second_way_the_highest_of_many_instants():
    assert relaxing.extreme(STRETCH, 1.0) == pytest.approx(
        volts(np.linspace(0.3, 2.9, 200_001)).max(), rel=1e-9
    )


@settings(max_examples=100, deadline=None, derandomize=True)
@given(zero=st.floats(-3.0, 3.0), steep=st.floats(0.01, 100.0), sign=st.sampled_from([1.0, -1.0]))
def test_property_a_root_is_found_between_its_bounds(zero, steep, sign):
    def function(at):
        turn = np.tanh(steep * (at - zero))
        return -sign * turn, -sign * steep * (1.0 - turn * turn)

    assert relaxing.root(function, -4.0, 4.0, sign) == pytest.approx(zero, abs=1e-9)


@settings(max_examples=40, deadline=None, derandomize=True)
@given(
    crest=st.floats(10.0, 400.0), dropper=st.floats(1e4, 1e6), shunt=st.floats(300.0, 1e7),
    snubber=st.floats(0.0, 1e3), reactance=st.floats(5e3, 2e6), forward=st.floats(0.0, 8.0),
    backward=st.one_of(st.floats(0.0, 40.0), st.just(NEVER)),
)  # fmt: skip
def test_property_a_cycle_closes_on_itself_and_runs_through_its_stretches(
    crest, dropper, shunt, snubber, reactance, forward, backward
):
    values = crest, 1 / dropper, 1 / shunt, snubber, 1 / reactance, forward, backward
    stretches = relaxing.cycle(Load(*(np.array([value]) for value in values)))
    first, last = stretches[0], stretches[-1]
    assert last.stop - first.start == pytest.approx(2.0 * pi)
    for one, after in zip(stretches, (*stretches[1:], first), strict=True):
        assert one.stop >= one.start - 1e-12
        end = relaxing.at(one.mode, one.stop, one.start, one.volts)[0]
        assert end == pytest.approx(after.volts, rel=1e-6, abs=1e-7 * crest)
    charge = sum(relaxing.areas(each)[0] for each in stretches) / shunt
    for place, drop in ((0, -backward), (2, forward), (4, -backward)):
        each = stretches[place]
        charge += (relaxing.areas(each)[0] - drop * (each.stop - each.start)) / dropper
    assert charge == pytest.approx(0.0, abs=1e-6 * crest / min(shunt, dropper))
