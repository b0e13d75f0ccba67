"""Brightness and flicker limits; printed values stand in tests/published."""

import numpy as np
import pytest

from helpers.physics import light


def test_limit_the_two_branches_of_lightness_meet_with_one_slope():
    border = (6.0 / 29.0) ** 3
    below, at, above = light.lightness(border * np.array([1 - 1e-6, 1.0, 1 + 1e-6]))
    assert at == pytest.approx(8.0, rel=1e-12)
    assert above - at == pytest.approx(at - below, rel=1e-5)
    assert light.lightness(0.0) == 0.0


def test_second_way_lightness_is_undone_by_the_inverse_of_the_standard():
    # ISO/CIE 11664-4: Y / Yn = ((L* + 16) / 116)**3 above L* = 8.
    for ratio in (0.01, 0.2, 0.5, 1.0, 2.0):
        assert ((light.lightness(ratio) + 16.0) / 116.0) ** 3 == pytest.approx(ratio, rel=1e-12)


def test_property_the_eye_compresses():
    ratios = np.linspace(0.01, 1.0, 50)
    assert np.all(light.stevens(ratios) >= ratios)
    assert np.all(light.lightness(ratios) >= 100.0 * ratios - 1e-9)
    assert np.all(np.diff(light.stevens(ratios)) > 0.0)
    assert light.stevens(0.0) == 0.0 and light.stevens(1.0) == 1.0


def test_second_way_the_light_for_a_look_gives_that_look():
    for exponent in light.STEVENS_EXPONENTS.values():
        for look in (0.1, 0.5, 1.0, 3.0):
            share = light.share_for_look(look, exponent)
            assert light.stevens(share, exponent) == pytest.approx(look, rel=1e-12)
    assert light.share_for_look(0.0) == 0.0


def test_second_way_percent_flicker_is_the_swing_over_twice_the_middle():
    assert light.percent_flicker(1.2, 0.8) == pytest.approx(100 * 0.2 / 1.0)
    assert light.percent_flicker(5.0, 5.0) == 0.0
    assert light.percent_flicker(5.0, 0.0) == 100.0


def test_limit_flicker_limits_step_at_90_hertz_and_end_at_all():
    assert light.low_risk_percent(89.999) == pytest.approx(2.25, rel=1e-4)
    assert light.low_risk_percent(90.0) == pytest.approx(7.2)
    assert light.low_risk_percent(2000.0) == light.no_effect_percent(5000.0) == 100.0
    hertz = np.geomspace(1.0, 1e4, 200)
    assert np.all(light.no_effect_percent(hertz) <= light.low_risk_percent(hertz))


def test_property_shape():
    grid = np.linspace(0.1, 0.9, 6).reshape(2, 3)
    for found in (
        light.lightness(grid),
        light.stevens(grid),
        light.share_for_look(grid),
        light.percent_flicker(1.0, grid),
        light.low_risk_percent(100.0 * grid),
        light.no_effect_percent(100.0 * grid),
    ):
        assert found.shape == (2, 3)
    assert type(light.lightness(0.5)) is type(light.low_risk_percent(50)) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: light.lightness(-0.1), "relative_light was read as -0.1"),
        (lambda: light.stevens(0.5, 3.0), "A third is 0.333"),
        (lambda: light.share_for_look(-1.0), "brightness was read as -1"),
        (lambda: light.percent_flicker(0.0, 0.0), "A dark light does not flicker"),
        (lambda: light.percent_flicker(1.0, 2.0), "were they exchanged"),
        (lambda: light.low_risk_percent(0.0), "Steady light has no flicker to judge"),
        (lambda: light.no_effect_percent(-1.0), "hertz was read as -1 Hz"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
