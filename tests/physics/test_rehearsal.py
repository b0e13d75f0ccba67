"""A rehearsal at low voltage: one resistor of a string, with the meter beside it."""

from math import hypot, sqrt

import numpy as np
import pytest

from helpers.physics.rehearsal import volts_on_one, volts_on_one_of_many


@pytest.mark.parametrize(
    ("volts", "ohms", "count"), [(12.0, 39e3, 2), (24.0, 1e6, 2), (24.0, 3.3e6, 3)],
    ids=lambda value: f"second way: {value:g}",
)  # fmt: skip
def test_the_volts_are_those_of_a_divider_with_the_meter_beside_one(volts, ohms, count):
    """Conductances add side by side: any textbook; 10 megohms: common practice, no source."""
    beside = 1.0 / (1.0 / ohms + 1.0 / 10e6)
    amps = (volts - 2.2) / (beside + (count - 1) * ohms)
    assert volts_on_one(volts, ohms, count).value == pytest.approx(amps * beside)


def test_second_way_each_input_has_its_share_of_the_uncertainty():
    """By hand: half of the volts and of the drops, a quarter of each resistor's share.

    Limits over root 3, squares added: JCGM 100:2008, 4.3.7 and 5.1.2. Resistors so small that the
    meter takes nothing.
    """
    found = volts_on_one(24.0, 100.0)
    shares = 0.5 * 0.24, 0.5 * 0.3, 0.25 * 21.8 * 0.05, 0.25 * 21.8 * 0.05
    assert found.standard == pytest.approx(hypot(*shares) / sqrt(3), rel=1e-3)


def test_second_way_many_drawn_boards_spread_as_much():
    """Monte Carlo, JCGM 101:2008; 200,000 boards, seed 9."""
    draw = np.random.default_rng(9)
    volts, drops = draw.uniform(23.76, 24.24, 200_000), draw.uniform(1.9, 2.5, 200_000)
    first, second = draw.uniform(95e3, 105e3, (2, 200_000))
    beside = first * 10e6 / (first + 10e6)
    shown = (volts - drops) * beside / (beside + second)
    assert volts_on_one(24.0, 100e3).standard == pytest.approx(shown.std(), rel=0.01)


def test_the_boards_of_the_lesson_are_drawn_from_the_same_string():
    """Corners of all limits hold every board: the lowest and the highest by Kirchhoff's laws."""
    boards = volts_on_one_of_many(24.0, 100.0, boards=2_000)
    low, high = 21.26 * 95 / (95 + 105), 22.34 * 105 / (105 + 95)
    assert low < boards.min() < boards.max() < high
    assert boards.std() == pytest.approx(volts_on_one(24.0, 100.0).standard, rel=0.05)


def test_limit_without_any_stray_there_is_no_uncertainty():
    sure = {"supply_percent": 0.0, "ohms_percent": 0.0, "drop_stray_volts": 0.0}
    assert volts_on_one(24.0, 100e3, **sure).standard == 0.0


@pytest.mark.parametrize(
    ("arguments", "words"),
    [((2.0, 100e3), "Below the drops"), ((24.0, 0.0), "ohms_each"), ((24.0, 1e5, 1), "count")],
)
def test_what_cannot_be_is_refused(arguments, words):
    with pytest.raises(ValueError, match=words):
        volts_on_one(*arguments)
