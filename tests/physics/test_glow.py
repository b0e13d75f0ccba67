"""Light of a small LED by colour, lens and current; printed values stand in tests/published."""

import numpy as np
import pytest

from helpers.physics import glow, leds, visibility


def test_second_way_one_photon_for_each_electron_is_the_photon_energy_in_lumens():
    # 1239.84 eV nm over the wavelength, times 683 lm/W and the eye's share for that wavelength.
    for colour, nanometres, share in (("red", 630, 0.265), ("green", 525, 0.7932)):
        expected = 1239.84 / nanometres * 683 * share
        assert glow.lumens_per_amp(colour, 1.0) == pytest.approx(expected, rel=1e-5)
    assert glow.lumens_per_amp("white", 1.0) == pytest.approx(1239.84 / 450 * 250, rel=1e-5)


def test_second_way_the_beam_holds_the_lumens_that_its_axis_is_worked_out_from():
    """Intensity summed over rings of half a sphere."""
    degrees = (np.arange(90_000) + 0.5) / 1000
    for half in (10.0, 30.0, 60.0):
        seen = visibility.candelas(1.0, glow.axis_candelas(2.5, half), 1.0, degrees, half)
        rings = 2 * np.pi * np.sin(np.radians(degrees)) * np.radians(1e-3)
        assert (seen * rings).sum() == pytest.approx(2.5, rel=1e-6)


def test_second_way_what_is_useful_and_what_is_lost_make_the_whole_current():
    # Loss = A n, light = B n²; at the current of half loss both are equal.
    half = 20e-6
    for amps in (1e-7, 20e-6, 1e-3):
        useful = glow.useful_amps(amps, half)
        assert useful + np.sqrt(useful * half / 2) == pytest.approx(amps, rel=1e-12)
    assert glow.useful_amps(half, half) == pytest.approx(half / 2)


def test_limit_a_part_without_defects_wastes_nothing_and_at_full_nothing_matters():
    assert glow.useful_amps(1e-6, 0.0) == pytest.approx(1e-6)
    assert glow.useful_amps(0.0) == 0.0
    assert glow.useful_amps(0.02) == pytest.approx(0.02, rel=0.03)


def test_property_every_colour_that_glows_has_its_light():
    for colour in leds.TYPICAL_METRES.keys() - {"infrared"}:
        assert glow.typical_candelas(colour) > 0.0


def test_property_shape():
    grid = np.linspace(0.1, 0.9, 6).reshape(2, 3)
    for found in (
        glow.lumens_per_amp("red", grid),
        glow.axis_candelas(grid),
        glow.useful_amps(grid),
    ):
        assert found.shape == (2, 3)
    assert type(glow.useful_amps(1e-5)) is type(glow.typical_candelas("red")) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: glow.lumens_per_amp("infrared"), "colour was read as 'infrared'"),
        (lambda: glow.lumens_per_amp("red", 5.0), "Half is 0.5, not 50"),
        (lambda: glow.axis_candelas(-1.0), "lumens was read as -1 lm"),
        (lambda: glow.axis_candelas(1.0, 90.0), "half_angle_degrees was read as 90"),
        (lambda: glow.typical_candelas("mauve"), "colour was read as 'mauve'"),
        (lambda: glow.useful_amps(-1e-6), "amps was read as -1e-06 A"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
