"""Numbers that stand in the prose of a worked example, because they hold on every supply."""

from math import sqrt

import pytest
from notebook import ROOT, prose, read

from helpers.physics import light, phase_cut_inverse, visibility
from helpers.quantities import write, write_as

TEXT = prose(read(ROOT / "lessons/06-will-you-see-it.ipynb")).replace("\u00a0", " ")
NEEDED = visibility.needed_candelas(4.0, 300.0)
LUX = visibility.needed_lux(300.0)
LEFT = phase_cut_inverse.mean_fraction(9.0 / 90.0)


@pytest.mark.parametrize(
    "said",
    [
        f"∛0.25 is {write(light.stevens(0.25), 'ratio', 2)}",
        f"4² × {write_as(LUX, 'µlx')} is {write(NEEDED, 'luminous intensity')}",
        f"÷ 400 mcd × 20 mA is {write_as(NEEDED / 0.4 * 0.020, 'mA', 2)}",
        f"that is {write(0.4 * 0.1e-3 / 0.020, 'luminous intensity')}",
        f"noticed from {write_as(sqrt(0.002 / LUX), 'm', 2)}",
        f"√(0.002 ÷ {LUX:.3g}), or {write_as(sqrt(0.002 / LUX), 'm', 2)}",
        f"{4**2} × {LUX:.3g} is {NEEDED:.3g} cd",
        f"still {write(LEFT, 'ratio')} of the light",
        f"{write(LEFT * 0.5e-3, 'current', 2)} are left",
        f"goes on {write(50 / 30, 'ratio', 2)} times a second",
        f"steady {write_as(6e-3 / 4, 'mA')}",
    ],
)
def test_the_prose_of_lesson_06_says_what_the_sum_gives(said):
    assert said.replace("\u00a0", " ") in TEXT


def test_limit_two_candelas_reach_nearly_four_metres_with_a_tenth_of_a_milliamp():
    assert 3.7 < sqrt(2.0 * 0.1e-3 / 0.020 / LUX) < 4.0
