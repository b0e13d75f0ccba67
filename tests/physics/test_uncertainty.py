import numpy as np
import pytest
from scipy import stats

from helpers.physics import mains, phase_cut, signals
from helpers.physics.uncertainty import Meter, chance_above, combined, expanded, rectangular

SINE = signals.dimmed_mains(mains.Supply(120.0, 60.0))
LOW = signals.dimmed_mains(mains.Supply(120.0, 60.0), phase_cut.Dimmer("leading", 120.0))
VERY_LOW = signals.dimmed_mains(mains.Supply(120.0, 60.0), phase_cut.Dimmer("leading", 150.0))
HALF = signals.half_wave(mains.Supply(120.0, 60.0))


def ohms_of(x):
    """Resistance, reactance and impedance from volts, amps and the angle between them."""
    whole = x[0] / x[1]
    return np.array([whole * np.cos(x[2]), whole * np.sin(x[2]), whole])


def test_published_resistance_and_reactance_measured_together():
    # JCGM 100:2008, annex H.2, tables H.2 to H.4; they carry rounding of its own in the last digit.
    found = combined(
        ohms_of,
        [4.9990, 19.6610e-3, 1.04446],
        [0.0032, 0.0095e-3, 0.00075],
        [[1.0, -0.36, 0.86], [-0.36, 1.0, -0.65], [0.86, -0.65, 1.0]],
    )
    assert found.values == pytest.approx([127.732, 219.847, 254.260], abs=0.0006)
    assert found.standard == pytest.approx([0.071, 0.295, 0.236], abs=0.0015)
    coefficients = found.covariance / np.outer(found.standard, found.standard)
    asked = [coefficients[0, 1], coefficients[0, 2], coefficients[1, 2]]
    assert asked == pytest.approx([-0.588, -0.485, 0.993], abs=0.006)


def test_published_limits_of_a_digital_voltmeter():
    # JCGM 100:2008, 4.3.7 example 2 and 5.1.5, from memory: 14e-6 of 0.928571 V and 2e-6 of the
    # range of 1 V give limits of 15 µV, thus 8.7 µV; with 12 µV of scatter 15 µV.
    limit = 14e-6 * 0.928571 + 2e-6 * 1.0
    assert limit == pytest.approx(15e-6, abs=0.5e-6)
    assert rectangular(15e-6) == pytest.approx(8.7e-6, abs=0.05e-6)
    both = combined(lambda x: x[:1] + x[1:], [0.928571, 0.0], [12e-6, rectangular(15e-6)])
    assert both.standard[0] == pytest.approx(15e-6, abs=0.5e-6)


def test_second_way_a_sum_of_two_is_the_root_of_the_squares():
    assert combined(lambda x: x[:1] - x[1:], [5.0, 2.0], [0.3, 0.4]).standard == pytest.approx(0.5)


def test_second_way_a_rectangle_has_the_spread_of_its_draws():
    drawn = np.random.default_rng(2).uniform(-0.05, 0.05, 400_000)
    assert rectangular(0.05) == pytest.approx(drawn.std(), rel=2e-3)


def test_second_way_many_draws_spread_like_the_combination():
    drawn = np.random.default_rng(3).normal([12.0, 100e3], [0.1, 1e3], (200_000, 2)).T
    found = combined(lambda x: x[:1] / x[1:], [12.0, 100e3], [0.1, 1e3])
    assert found.standard[0] == pytest.approx((drawn[0] / drawn[1]).std(), rel=0.01)


def test_property_a_shared_input_makes_results_vary_together():
    found = combined(lambda x: np.array([x[0], 2.0 * x[0]]), [1.0], [0.1])
    assert found.covariance == pytest.approx(np.array([[0.01, 0.02], [0.02, 0.04]]))


def test_limit_what_is_certain_has_no_uncertainty():
    assert combined(lambda x: x**2, [3.0], [0.0]).standard[0] == 0.0


def test_shape_arrays_go_through():
    assert rectangular(np.array([0.0, 3.0])).shape == (2,)
    assert expanded(np.array([0.5, 1.0])).tolist() == [1.0, 2.0]


def test_refused_negative_half_width():
    with pytest.raises(ValueError, match="half_width was read as -1"):
        rectangular(-1.0)


def test_refused_coefficient_beyond_one():
    with pytest.raises(ValueError, match="correlation was read as 1.5"):
        combined(lambda x: x, [1.0, 1.0], [0.1, 0.1], [[1.0, 1.5], [1.5, 1.0]])


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 7, 10, 25, 40, 101])
@pytest.mark.parametrize("chi_squared", [0.0, 0.1, 1.0, 5.0, 20.0, 60.0, 150.0])
def test_second_way_the_chance_of_a_sum_of_squares(freedom, chi_squared):
    assert chance_above(chi_squared, freedom) == pytest.approx(
        stats.chi2.sf(chi_squared, freedom), rel=1e-8, abs=1e-15
    )


# 5 % and 1 % points of chi-squared to three decimals, as every table has them (from memory).
@pytest.mark.parametrize(
    ("freedom", "share", "point"),
    [(1, 0.05, 3.841), (5, 0.05, 11.070), (10, 0.01, 23.209), (20, 0.05, 31.410)],
)
def test_published_points_of_chi_squared(freedom, share, point):
    assert chance_above(point + 0.0005, freedom) < share < chance_above(point - 0.0005, freedom)


def test_refused_no_residual():
    with pytest.raises(ValueError, match="freedom was read as 0"):
        chance_above(1.0, 0)


@pytest.mark.parametrize(
    ("reading", "step"), [(1.999, 0.001), (2.0, 0.001), (2.001, 0.01), (119.0, 0.1), (-12.0, 0.01)]
)
def test_common_practice_last_place_of_2000_counts(reading, step):
    assert Meter().step(reading) == pytest.approx(step)


def test_second_way_per_cent_and_digits_by_hand():
    # 1 % of 12 V and three of 10 mV.
    assert Meter(1.0, 3.0).half_width(12.0) == pytest.approx(0.15)


def test_limit_nought_has_the_digits_of_the_finest_range_used():
    assert Meter(least_step=0.01).half_width(0.0) == pytest.approx(0.03)


PLAIN = Meter(response="average", coupling="ac")
TRUE = Meter(response="true_rms", coupling="ac")


def test_property_a_sine_raises_no_doubt():
    assert PLAIN.doubts(SINE) == TRUE.doubts(SINE) == ()
    assert Meter(response="true_rms", input_ohms=10.0, in_series=True).doubts(SINE) == ()


@pytest.mark.parametrize(
    ("meter", "signal", "source_ohms", "says"),
    [
        (PLAIN, LOW, 0.0, "no sine"),
        (TRUE, VERY_LOW, 0.0, "crest"),
        (TRUE, HALF, 0.0, "AC coupling"),
        (Meter(), HALF, 1e6, "loads what it reads: 9 %"),
        # A shunt of 100 ohm in a loop of 900 ohm.
        (Meter(input_ohms=100.0, in_series=True), HALF, 900.0, "holds back what it reads: 10 %"),
    ],
)
def test_what_a_sheet_does_not_hold_for_is_said(meter, signal, source_ohms, says):
    (doubt,) = meter.doubts(signal, source_ohms)
    assert says in doubt
