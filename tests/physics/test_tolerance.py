"""Corners by hand, populations by integrals."""

from itertools import product

import numpy as np
import pytest
from scipy.integrate import dblquad

from helpers.physics import tolerance
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import Dimmer
from helpers.physics.tolerance import Tolerances

SUPPLY = Supply(230.0, 50.0)
STRAY = Tolerances(ohms_percent=5.0, supply_percent=10.0, led_volts=0.2, angle_degrees=4.0)


@pytest.mark.parametrize("circuit", CIRCUITS)
def test_second_way_the_corners_one_by_one(circuit):
    dimmer = Dimmer("leading", 75.0)
    quantities = ("led_amps_mean", "resistor_watts", "led_reverse_volts_peak")
    found = tolerance.worst_corners(
        circuit, SUPPLY, dimmer, STRAY, ohms=82e3, quantities=quantities, second_led_volts=3.1
    )
    points = [
        operating_point(
            circuit, Supply(230.0 * v, 50.0), Dimmer("leading", 75.0 + a), ohms=82e3 * r,
            led_volts=2.0 + d, second_led_volts=3.1 + d,
        )
        for r, v, d, a in product((0.95, 1.05), (0.9, 1.1), (-0.2, 0.2), (-4.0, 4.0))
    ]  # fmt: skip
    for name in quantities:
        values = [getattr(point, name) for point in points]
        assert found[name] == pytest.approx((min(values), max(values)), rel=1e-12)


def test_limit_no_tolerance_is_the_nominal_point():
    none = Tolerances(0.0, 0.0, 0.0, 0.0)
    nominal = operating_point("bridge", SUPPLY, ohms=82e3).led_amps_mean
    found = tolerance.worst_corners("bridge", SUPPLY, tolerances=none, ohms=82e3)
    assert found["led_amps_mean"] == pytest.approx((nominal, nominal))
    boards = tolerance.random_boards("bridge", SUPPLY, tolerances=none, ohms=82e3, count=3)
    assert boards["led_amps_mean"] == pytest.approx([nominal] * 3)


def test_second_way_mean_and_spread_by_integrating_over_the_tolerances():
    only_two = Tolerances(ohms_percent=5.0, supply_percent=10.0, led_volts=0.0)
    count = 200_000
    boards = tolerance.random_boards(
        "series_diode", SUPPLY, tolerances=only_two, ohms=82e3, count=count, seed=7
    )
    found = tolerance.spread(boards["led_amps_mean"])

    def moment(power):
        def at(v, r):
            point = operating_point("series_diode", Supply(230.0 * v, 50.0), ohms=82e3 * r)
            return point.led_amps_mean**power

        return dblquad(at, 0.95, 1.05, 0.9, 1.1, epsrel=1e-6, epsabs=0.0)[0] / (0.1 * 0.2)

    mean = moment(1)
    deviation = np.sqrt(moment(2) - mean**2)
    # Five standard errors of the mean and of the deviation.
    assert found.mean == pytest.approx(mean, abs=5.0 * deviation / count**0.5)
    assert found.standard_deviation == pytest.approx(deviation, rel=5.0 / (2.0 * count) ** 0.5)


def test_property_every_board_lies_between_the_corners_and_seeds_repeat():
    arguments = ("two_leds", SUPPLY, Dimmer("trailing", 60.0), STRAY)
    corners = tolerance.worst_corners(*arguments, ohms=82e3)
    boards = tolerance.random_boards(*arguments, ohms=82e3, count=70_000, seed=3)
    again = tolerance.random_boards(*arguments, ohms=82e3, count=70_000, seed=3)
    other = tolerance.random_boards(*arguments, ohms=82e3, count=70_000, seed=4)
    for name, values in boards.items():
        assert corners[name].lowest <= values.min() and values.max() <= corners[name].highest
        assert np.array_equal(values, again[name])
        assert not np.array_equal(values, other[name])


def test_second_way_chances_and_percentiles_of_a_known_population():
    values = np.arange(1, 1001) / 1000.0
    assert tolerance.chance_above(values, 0.9) == pytest.approx(0.1)
    assert tolerance.chance_above(values, 2.0) == 0.0
    found = tolerance.spread(values)
    assert found.mean == pytest.approx(0.5005)
    assert found.standard_deviation == pytest.approx(np.sqrt((1000**2 - 1) / 12.0) / 1000.0)
    assert found.percentiles[50] == pytest.approx(0.5005)
    assert list(found.percentiles) == [1, 5, 50, 95, 99]


def test_property_shape():
    boards = tolerance.random_boards("bridge", SUPPLY, ohms=82e3, count=10)
    assert {name: values.shape for name, values in boards.items()} == {
        "led_amps_mean": (10,),
        "resistor_watts": (10,),
    }


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: Tolerances(ohms_percent=-5.0), "ohms_percent was read as -5 %"),
        (lambda: Tolerances(supply_percent=90.0), "supply_percent was read as 90 %"),
        (lambda: Tolerances(led_volts=-0.1), "led_volts tolerance was read as -0.1 V"),
        (lambda: Tolerances(angle_degrees=100.0), "angle_degrees tolerance was read as 100"),
        (
            lambda: tolerance.random_boards("bridge", SUPPLY, ohms=82e3, count=0),
            "count was read as 0 boards",
        ),
        (lambda: tolerance.worst_corners("bridge", SUPPLY, ohms=0.0), "ohms was read as 0 ohm"),
        (lambda: tolerance.spread([]), "values holds no board"),
        (lambda: tolerance.chance_above([], 1.0), "values holds no board"),
        (lambda: tolerance.chance_above([1.0], None), "limit was read as nan"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
