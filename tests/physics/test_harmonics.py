"""The harmonics of one pulse against quadrature."""

import numpy as np
import pytest
from pulse_by_quadrature import GRID, integral

from helpers.physics import harmonics, pulses


@pytest.mark.parametrize(("threshold", "window"), GRID)
@pytest.mark.parametrize("order", [1, 2])
def test_second_way_harmonics_by_quadrature(threshold, window, order):
    pulse = pulses.pulse(threshold, window)
    found = (harmonics.first_harmonic, harmonics.second_harmonic)[order - 1](pulse)
    # Some of these integrals vanish, so the area sets the scale.
    scale = float(pulses.area(pulse))
    expected = (
        integral(lambda y, x: y * np.cos(order * x), threshold, window, 1e-11 * scale),
        integral(lambda y, x: y * np.sin(order * x), threshold, window, 1e-11 * scale),
    )
    assert found == pytest.approx(expected, abs=1e-10 * scale)


def test_limit_a_narrow_pulse_has_its_whole_area_in_every_harmonic():
    pulse = pulses.pulse(0.5, np.arcsin(0.5) + 1e-5)
    for cosine, _ in (harmonics.first_harmonic(pulse), harmonics.second_harmonic(pulse)):
        assert cosine == pytest.approx(pulses.area(pulse), rel=1e-9)


def test_limit_an_empty_pulse_has_none():
    pulse = pulses.pulse(1.0, np.pi)
    assert harmonics.first_harmonic(pulse) == harmonics.second_harmonic(pulse) == (0.0, 0.0)


def test_property_shape():
    pulse = pulses.pulse(np.linspace(0.0, 1.2, 4)[:, None], np.linspace(0.0, np.pi, 5))
    assert harmonics.first_harmonic(pulse)[0].shape == (4, 5)
    assert harmonics.second_harmonic(pulse)[1].shape == (4, 5)
