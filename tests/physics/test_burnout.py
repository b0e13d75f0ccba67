"""An LED on the mains: the heating wire and the pulse, each integrated a second way."""

from math import pi

import numpy as np
import pytest
from scipy.integrate import quad

from helpers.physics import burnout
from helpers.physics.mains import Supply


def test_second_way_the_melting_integral_by_heating_the_wire_degree_by_degree():
    def per_kelvin(celsius):
        resistivity = 2.44e-8 * (1.0 + 0.0034 * (celsius - 20.0))
        return 19300.0 * 129.0 / resistivity

    area = 0.25 * pi * 30e-6**2
    expected = area**2 * quad(per_kelvin, 40.0, 1064.0)[0]
    assert burnout.melting_integral(30e-6, 40.0) == pytest.approx(expected, rel=1e-10)


def test_second_way_copper_by_the_same_law_agrees_with_onderdonk():
    # Onderdonk 1928: 33 (I / A)**2 t = log10((Tm - Ta) / (234 + Ta) + 1), A in circular mils. The
    # same adiabatic law with copper (CRC Handbook, from memory) gives his 33 to two per cent.
    circular_mil = 0.25 * pi * 25.4e-6**2
    coefficient = 1.0 / 254.5
    law = 8960.0 * 385.0 / (1.724e-8 * coefficient) * np.log(10.0) * circular_mil**2
    assert 1.0 / law == pytest.approx(33.0, rel=0.05)


@pytest.mark.parametrize("volts", [230.0, 120.0])
@pytest.mark.parametrize("start", [0.0, 20.0, 90.0, 135.0])
def test_second_way_the_current_squared_until_then_by_quadrature(volts, start):
    found = burnout.led_on_mains(Supply(volts, 50.0), start, loop_ohms=8.0, led_volts=2.2)

    def amps(seconds):
        angle = np.radians(start) + 100.0 * pi * seconds
        return max((2.0**0.5 * volts * np.sin(angle) - 2.2) / 8.0, 0.0)

    squared = quad(lambda t: amps(t) ** 2, 0.0, found.seconds, epsrel=1e-11)[0]
    charge = quad(amps, 0.0, found.seconds, epsrel=1e-11)[0]
    assert found.melts_in_first_half_cycle
    assert squared == pytest.approx(found.melting_integral, rel=1e-6)
    assert amps(found.seconds) == pytest.approx(found.amps, rel=1e-9)
    assert found.led_joules == pytest.approx(2.2 * charge, rel=1e-6)
    assert found.loop_joules == pytest.approx(8.0 * squared, rel=1e-6)
    assert found.mains_joules == found.led_joules + found.loop_joules


def test_limit_a_large_loop_resistance_saves_the_wire_for_this_half_cycle():
    found = burnout.led_on_mains(Supply(230.0, 50.0), 0.0, loop_ohms=500.0)
    assert not found.melts_in_first_half_cycle
    assert found.seconds == np.inf and found.amps == 0.0
    assert 0.0 < found.led_joules < found.mains_joules
    late = burnout.led_on_mains(Supply(230.0, 50.0), 180.0)
    assert late.mains_joules == 0.0 and not late.melts_in_first_half_cycle


def test_property_the_given_time_lies_in_its_own_range():
    for angle in (0.0, 45.0, 90.0):
        found = burnout.led_on_mains(Supply(230.0, 50.0), angle)
        assert found.seconds_range[0] < found.seconds < found.seconds_range[1]


def test_property_shape_and_latent_heat_adds():
    wires = np.array([20e-6, 25e-6, 30e-6])
    begins, through = burnout.melting_integral(wires), burnout.melting_integral(wires, 25.0, True)
    assert begins.shape == (3,) and np.all(through > begins)
    # The integral grows with the square of the area, the fourth power of the diameter.
    assert begins[2] / begins[0] == pytest.approx(1.5**4)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: burnout.melting_integral(25.0), "Was it in micrometres"),
        (lambda: burnout.melting_integral(25e-6, 1100.0), "start_celsius was read as 1100"),
        (lambda: burnout.led_on_mains(Supply(230.0, 50.0), 200.0), "switch_on_degrees was read"),
        (lambda: burnout.led_on_mains(Supply(230.0, 50.0), 0.0, 0.0), "No mains loop has no"),
        (lambda: burnout.led_on_mains(Supply(230.0, 50.0), 0.0, 10.0, -2.0), "led_volts was read"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
