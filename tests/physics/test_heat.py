"""Temperatures: an integrated heat balance as the second way."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from helpers.physics import heat


def test_second_way_warm_up_by_integrating_the_heat_balance():
    watts, resistance, constant, ambient = 0.18, 210.0, 95.0, 27.0
    capacity = constant / resistance

    def balance(_, celsius):
        return (watts - (celsius - ambient) / resistance) / capacity

    times = np.array([10.0, 95.0, 400.0])
    solved = solve_ivp(balance, (0.0, 400.0), [ambient], t_eval=times, rtol=1e-10, atol=1e-10)
    found = heat.celsius_after(times, watts, resistance, constant, ambient)
    assert found == pytest.approx(solved.y[0], rel=1e-7)


def test_property_the_time_to_a_temperature_undoes_the_warm_up():
    for seconds in (1.0, 60.0, 600.0):
        celsius = heat.celsius_after(seconds, 0.2, 180.0, 120.0, 22.0)
        assert heat.seconds_to(celsius, 0.2, 180.0, 120.0, 22.0) == pytest.approx(seconds)


def test_limit_start_end_and_never():
    assert heat.celsius_after(0.0, 0.2, 180.0, 120.0, 22.0) == 22.0
    final = heat.final_celsius(0.2, 180.0, 22.0)
    assert heat.celsius_after(1e5, 0.2, 180.0, 120.0, 22.0) == pytest.approx(final)
    assert heat.seconds_to(22.0, 0.0, 180.0, 120.0, 22.0) == 0.0
    assert heat.seconds_to(final, 0.2, 180.0, 120.0, 22.0) == np.inf
    assert heat.seconds_to(30.0, 0.0, 180.0, 120.0, 22.0) == np.inf
    assert heat.final_celsius(0.0, 180.0, -10.0) == -10.0


def test_second_way_a_part_at_its_rating_and_knee_reaches_the_film_limit():
    resistance = heat.kelvin_per_watt_of(0.4, 70.0, 125.0)
    assert heat.final_celsius(0.4, resistance, 70.0) == pytest.approx(125.0)


def test_second_way_two_films_are_two_resistances_one_behind_the_other():
    """The wall settles between them: what one film brings, the other takes away."""
    inner, outer, inside, room = 8.0, 11.0, 60.0, 20.0
    wall = (inner * inside + outer * room) / (inner + outer)
    through = inner * (inside - wall)
    assert through == pytest.approx(outer * (wall - room))
    assert heat.films_in_series(inner, outer) == pytest.approx(through / (inside - room))


def test_second_way_a_box_takes_the_safer_end_of_4_to_6():
    """Films of 8 to 12 W/(m2 K) in still air, Incropera (from memory: about 10 for one)."""
    assert heat.films_in_series() == pytest.approx(1 / (1 / 8 + 1 / 8)) == 4.0
    assert heat.films_in_series(12.0, 12.0) == pytest.approx(1 / (1 / 12 + 1 / 12)) == 6.0
    assert heat.box_rise_kelvin(0.5, 0.005) == pytest.approx(0.5 / 0.005 * (1 / 8 + 1 / 8))


def test_limit_a_film_that_lets_all_through_leaves_the_other():
    assert heat.films_in_series(8.0, 1e12) == pytest.approx(8.0)


def test_second_way_box_heat_leaves_through_the_wall():
    rise = heat.box_rise_kelvin(1.2, 0.03, 8.0)
    assert rise * 0.03 * 8.0 == pytest.approx(1.2)
    assert heat.box_rise_kelvin(0.0, 0.03) == 0.0


def test_property_shape():
    seconds, watts = np.arange(4.0), np.array([[0.1], [0.2]])
    assert heat.celsius_after(seconds, watts, 200.0, 90.0, 25.0).shape == (2, 4)
    assert heat.seconds_to(25.0 + seconds, watts, 200.0, 90.0, 25.0).shape == (2, 4)
    assert heat.final_celsius(watts, 200.0, seconds).shape == (2, 4)
    assert heat.kelvin_per_watt_of(watts).shape == (2, 1)
    assert heat.box_rise_kelvin(watts, 0.1 + seconds).shape == (2, 4)
    assert heat.films_in_series(1.0 + watts, 1.0 + seconds).shape == (2, 4)
    assert type(heat.seconds_to(30, 0.2, 200, 90, 25)) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: heat.final_celsius(-0.1, 200.0, 25.0), "watts was read as -0.1 W"),
        (lambda: heat.celsius_after(-1.0, 0.1, 200.0, 90.0, 25.0), "seconds was read as -1 s"),
        (lambda: heat.celsius_after(1.0, 0.1, 200.0, 0.0, 25.0), "time_constant_seconds was"),
        (lambda: heat.seconds_to(20.0, 0.1, 200.0, 90.0, 25.0), "does not cool below its air"),
        (lambda: heat.kelvin_per_watt_of(0.25, 155.0, 70.0), "Were the two swapped"),
        (lambda: heat.films_in_series(0.0), "inner was read as 0 W"),
        (lambda: heat.films_in_series(8.0, -1.0), "outer was read as -1 W"),
        (lambda: heat.box_rise_kelvin(1.0, 0.0), "square_metres was read as 0 m2"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
