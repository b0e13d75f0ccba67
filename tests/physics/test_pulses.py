"""The integrals of one pulse against quadrature, down to slivers and grazing crests."""

import numpy as np
import pytest
from pulse_by_quadrature import GRID, integral

from helpers.physics import pulses


@pytest.mark.parametrize(("threshold", "window"), GRID)
def test_second_way_areas_by_quadrature(threshold, window):
    pulse = pulses.pulse(threshold, window)
    start = np.arcsin(threshold)
    near = pytest.approx
    assert pulses.area(pulse) == near(integral(lambda y, x: y, threshold, window), rel=1e-10)
    sines = integral(lambda y, x: np.sin(x) ** 2, threshold, window)
    assert pulses.sine_square_area(pulse) == near(sines, rel=1e-10)
    square = integral(lambda y, x: y * y, threshold, window)
    assert pulses.square_area(pulse) == near(square, rel=1e-9)
    delivered = integral(lambda y, x: y * np.sin(start + x), threshold, window)
    assert pulses.delivered_area(pulse) == near(delivered, rel=1e-10)


@pytest.mark.parametrize(("threshold", "window"), GRID)
def test_second_way_height_is_the_greatest_of_many_samples(threshold, window):
    angles = np.linspace(0.0, window, 100001)
    greatest = np.max(np.sin(angles)) - threshold
    # The finest sample misses the crest by up to an eighth of the squared step.
    assert pulses.height(threshold, window) == pytest.approx(greatest, abs=2e-10)


def test_limit_an_empty_pulse_is_zero_in_every_integral():
    for pulse in (pulses.pulse(1.0, np.pi), pulses.pulse(7.0, np.pi), pulses.pulse(0.5, 0.1)):
        assert pulse.width == 0.0
        assert pulses.area(pulse) == pulses.square_area(pulse) == pulses.delivered_area(pulse) == 0
    assert pulses.height(7.0, np.pi) == pulses.width(1.0, np.pi) == 0.0


def test_limit_excess_is_a_sixth_of_the_cube_and_joins_smoothly():
    assert pulses.excess(1e-5, np.sin(1e-5)) == pytest.approx(1e-15 / 6.0, rel=1e-10)
    assert pulses.excess(np.pi, np.sin(np.pi)) == pytest.approx(np.pi, rel=1e-15)
    for angle in (np.nextafter(0.7, 0.0), 0.7):
        series = sum((-1) ** k * angle ** (2 * k + 3) / fact for k, fact in enumerate(FACTORIALS))
        assert pulses.excess(angle, np.sin(angle)) == pytest.approx(series, rel=4e-15)


FACTORIALS = (6, 120, 5040, 362880, 39916800, 6227020800, 1307674368000, 355687428096000)


def test_property_shape():
    pulse = pulses.pulse(np.linspace(0.0, 1.2, 4)[:, None], np.linspace(0.0, np.pi, 5))
    for of in (pulses.area, pulses.square_area, pulses.delivered_area, pulses.sine_square_area):
        assert of(pulse).shape == (4, 5)
        assert np.all(of(pulse) >= 0.0)
