"""How far a light is noticed; printed thresholds stand in tests/published."""

import numpy as np
import pytest

from helpers.physics import visibility


def test_second_way_half_the_intensity_at_the_half_angle():
    for half in (5.0, 15.0, 30.0, 60.0):
        found = visibility.candelas(0.02, 0.3, 0.02, half, half)
        assert found == pytest.approx(0.15, rel=1e-12)
    # A half angle of 60 degrees is Lambert's cosine itself.
    assert visibility.candelas(0.02, 0.3, 0.02, 40.0, 60.0) == pytest.approx(
        0.3 * np.cos(np.radians(40.0))
    )
    assert visibility.candelas(0.02, 0.3, 0.02, 90.0, 30.0) == pytest.approx(0.0, abs=1e-12)


def test_second_way_the_distance_gives_the_threshold_at_the_eye():
    metres = visibility.visible_metres(0.004, 50.0, 40.0)
    assert 0.004 / metres**2 == pytest.approx(40.0 * visibility.threshold_lux(50.0), rel=1e-12)
    assert visibility.visible_metres(0.0, 50.0) == 0.0


def test_second_way_a_matt_white_wall_gives_back_all_its_light():
    # Luminance times pi is the flux a Lambertian square metre sends out.
    assert np.pi * visibility.background_luminance(320.0, 1.0) == pytest.approx(320.0)
    assert visibility.background_luminance(320.0, 0.0) == 0.0


def test_second_way_what_is_needed_is_just_noticed():
    for lux, metres in ((1.0, 20.0), (300.0, 4.0), (50e3, 0.5)):
        needed = visibility.needed_candelas(metres, lux)
        behind = visibility.background_luminance(lux)
        assert visibility.visible_metres(needed, behind) == pytest.approx(metres, rel=1e-12)
        assert needed / metres**2 == pytest.approx(visibility.needed_lux(lux), rel=1e-12)
    assert visibility.needed_lux(0.0, margin=1.0) == visibility.threshold_lux(0.0)


def test_property_rooms_are_listed_from_dark_to_bright():
    rooms = list(visibility.ROOMS_LUX.values())
    assert rooms == sorted(rooms) and min(rooms) > 0.0


def test_property_brighter_rooms_shorten_the_distance():
    metres = visibility.visible_metres(
        0.004, visibility.background_luminance(np.geomspace(1.0, 1e5, 20))
    )
    assert np.all(np.diff(metres) < 0.0)


def test_property_shape():
    grid = np.linspace(0.1, 0.9, 6).reshape(2, 3)
    for found in (
        visibility.candelas(grid, 0.1, 0.02),
        visibility.background_luminance(grid),
        visibility.threshold_lux(grid),
        visibility.visible_metres(grid, 10.0),
        visibility.needed_lux(grid),
        visibility.needed_candelas(grid, 300.0),
    ):
        assert found.shape == (2, 3)
    assert type(visibility.visible_metres(0.1, 1)) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: visibility.candelas(0.01, 0.0, 0.02), "Millicandelas"),
        (lambda: visibility.candelas(0.01, 0.1, 0.02, 0.0, 120.0), "half of the sheet's whole"),
        (lambda: visibility.background_luminance(500.0, 50.0), "Half is 0.5, not 50"),
        (lambda: visibility.threshold_lux(-1.0), "luminance was read as -1 cd/m2"),
        (lambda: visibility.visible_metres(0.01, 1.0, 0.5), "margin was read as 0.5"),
        (lambda: visibility.needed_lux(300.0, margin=0.0), "margin was read as 0"),
        (lambda: visibility.needed_candelas(0.0, 300.0), "Was it in centimetres"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
