"""Preferred values: the printed series stand in tests/published; here the choice among them."""

from math import log

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.physics import resistors

wanted = st.floats(1e-2, 1e11)
series = st.sampled_from(list(resistors.SERIES))


def every_value(name):
    figures = resistors.SERIES[name]
    digits = len(str(figures[0])) - 1
    return [float(f"{figure}e{power - digits}") for power in range(-3, 12) for figure in figures]


@settings(deadline=None, derandomize=True, max_examples=300)
@given(ohms=wanted, name=series)
def test_second_way_nearest_is_the_least_of_all_ratios(ohms, name):
    by_ratio = min(abs(log(value / ohms)) for value in every_value(name))
    assert abs(log(resistors.nearest(ohms, name) / ohms)) == pytest.approx(by_ratio, abs=1e-12)
    by_difference = min(abs(value - ohms) for value in every_value(name))
    found = resistors.nearest(ohms, name, by="difference")
    assert abs(found - ohms) == pytest.approx(by_difference, rel=1e-9, abs=1e-12 * ohms)


@settings(deadline=None, derandomize=True, max_examples=300)
@given(ohms=wanted, name=series)
def test_second_way_next_up_and_down_are_the_closest_on_their_side(ohms, name):
    values = every_value(name)
    assert resistors.next_up(ohms, name) == min(v for v in values if v >= ohms * (1 - 1e-12))
    assert resistors.next_down(ohms, name) == max(v for v in values if v <= ohms * (1 + 1e-12))


@pytest.mark.parametrize("name", resistors.SERIES)
def test_property_a_value_of_the_series_is_its_own_neighbour_with_and_without_noise(name):
    for value in every_value(name)[1:]:
        for noisy in (value, value * (1 + 2e-16), value * (1 - 2e-16)):
            found = (
                resistors.nearest(noisy, name),
                resistors.next_up(noisy, name),
                resistors.next_down(noisy, name),
            )
            assert found == (value, value, value)


def test_second_way_a_near_tie_goes_by_ratio():
    # sqrt(27 * 30) = 28.46 lies below, (27 + 30) / 2 = 28.5 above.
    assert resistors.nearest(28470.0, "E24") == 30e3
    assert resistors.nearest(28470.0, "E24", by="difference") == 27e3


def test_limit_the_decade_joins_the_next():
    assert resistors.next_up(9.77e5, "E96") == 1e6
    assert resistors.next_down(0.99999, "E6") == 0.68
    assert resistors.nearest(9.5e3, "E24") == 9.1e3
    assert resistors.nearest(9.6e3, "E24") == 10e3


@pytest.mark.parametrize(
    ("name", "count"),
    [("E6", 6), ("E12", 12), ("E24", 24), ("E48", 48), ("E96", 96), ("E192", 192)],
    ids=lambda value: f"published: {value}",
)
def test_the_name_counts_the_values_and_each_coarse_series_lies_in_the_finer(name, count):
    figures = resistors.SERIES[name]
    assert len(figures) == len(set(figures)) == count
    assert list(figures) == sorted(figures)
    finer = {"E6": "E12", "E12": "E24", "E48": "E96", "E96": "E192"}.get(name, name)
    assert set(figures) <= set(resistors.SERIES[finer])


def test_published_tolerances_halve_from_series_to_series():
    # IEC 60063 (partly confirmed): 20, 10, 5, 2, 1 and 0.5 %.
    assert [resistors.tolerance_percent(n) for n in resistors.SERIES] == [20, 10, 5, 2, 1, 0.5]


def test_property_shape_scalar_and_array_agree():
    ohms = np.geomspace(1e-3, 1e12, 1001).reshape(7, 143)
    for choose in (resistors.nearest, resistors.next_up, resistors.next_down):
        table = choose(ohms, "E48")
        assert table.shape == (7, 143)
        assert table.ravel().tolist() == [choose(float(each), "E48") for each in ohms.ravel()]
    assert type(resistors.nearest(28, "E24")) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: resistors.nearest(100.0, "E25"), "series was read as 'E25'"),
        (lambda: resistors.nearest(100.0, "E24", by="ear"), "by was read as 'ear'"),
        (lambda: resistors.next_up(0.0), "ohms was read as 0 ohm; it must lie between 0.001"),
        (lambda: resistors.next_down(2e12), "Was a prefix such as kilo or mega lost"),
        (lambda: resistors.tolerance_percent("E3"), "series was read as 'E3'"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
