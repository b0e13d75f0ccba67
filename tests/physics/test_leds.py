"""Colours, photons and the dropper for a wanted mean current."""

import numpy as np
import pytest

from helpers.physics import leds
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import Dimmer


@pytest.mark.parametrize("circuit", CIRCUITS)
@pytest.mark.parametrize("dimmer", [Dimmer(), Dimmer("leading", 110.0)], ids=str)
def test_second_way_the_dropper_put_back_gives_the_wanted_mean(circuit, dimmer):
    supply = Supply(127.0, 60.0)
    ohms = leds.dropper_for_mean(circuit, supply, 0.7e-3, dimmer, led_volts=1.9)
    point = operating_point(circuit, supply, dimmer, ohms=ohms, led_volts=1.9)
    assert point.led_amps_mean == pytest.approx(0.7e-3, rel=1e-12)


@pytest.mark.parametrize("colour", leds.TYPICAL_VOLTS)
def test_common_practice_the_drop_is_near_the_photon_energy(colour):
    # Common practice, no source: within 0.6 V, as heat and series resistance add or take.
    energy = leds.photon_electron_volts(leds.TYPICAL_METRES[colour])
    assert leds.typical_volts(colour) == pytest.approx(energy, abs=0.75)


def test_limit_a_shorter_wave_has_more_energy():
    colours = ("infrared", "red", "yellow", "green", "blue")
    metres = np.array([leds.TYPICAL_METRES[colour] for colour in colours])
    assert np.all(np.diff(leds.photon_electron_volts(metres)) > 0.0)


def test_property_shape():
    assert leds.photon_electron_volts(np.full((2, 3), 6e-7)).shape == (2, 3)
    wanted = np.array([[1e-3], [2e-3]])
    ohms = leds.dropper_for_mean(
        "bridge", Supply(np.array([120.0, 230.0, 240.0]), 50.0), wanted, led_volts=2.0
    )
    assert ohms.shape == (2, 3)
    assert ohms[0] == pytest.approx(2.0 * ohms[1])


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: leds.typical_volts("mauve"), "colour was read as 'mauve'; it must be one of"),
        (lambda: leds.photon_electron_volts(630.0), "Was it in nanometres"),
        (
            lambda: leds.dropper_for_mean("bridge", Supply(230.0, 50.0), 0.0),
            "led_amps_mean was read as 0 A",
        ),
        (
            lambda: leds.dropper_for_mean(
                "bridge", Supply(230.0, 50.0), 1e-3, Dimmer("leading", 179.9)
            ),
            "the mains never reaches the drops",
        ),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()


@pytest.mark.parametrize("colour", leds.REAL)
def test_common_practice_a_real_led_drops_about_what_is_typical_at_a_few_milliamperes(colour):
    """Sheets give 2 mA to 5 mA between the taught drop and 0.35 V less. Common practice."""
    volts = leds.real(colour).volts_at(3e-3)
    assert leds.TYPICAL_VOLTS[colour] - 0.35 < volts < leds.TYPICAL_VOLTS[colour] + 0.1


def test_published_a_red_led_glows_at_off_more_than_its_constant_drop_says():
    """An independent program: 3.92 and 5.86 uA behind 529 ohm of heater, 100 nF and 100 ohm."""
    ohms = 2.0 * 75e3 + 529.0
    at_off = Supply(3.82, 50.0)
    real = operating_point("series_diode", at_off, ohms=ohms, led=leds.real("red"))
    taught = operating_point("series_diode", at_off, ohms=ohms)
    assert real.led_amps_mean == pytest.approx(5.86e-6, rel=0.01)
    assert taught.led_amps_mean == pytest.approx(3.92e-6, rel=0.01)


def test_second_way_constant_drops_hold_on_the_mains_and_fail_at_a_few_volts():
    volts = np.array([230.0, 120.0, 8.0, 4.0, 1.5])
    given = {"supply": Supply(volts, 50.0), "ohms": 82e3}
    taught = operating_point("diode_across", **given).led_amps_mean
    law = operating_point("diode_across", led=leds.real("red"), **given).led_amps_mean
    percent = 100.0 * (taught / law - 1.0)
    # The course takes a sum as right within 3 %.
    assert (abs(percent) > 3.0).tolist() == [False, False, True, True, True]
    assert np.all(np.diff(percent) < 0.0)
    assert percent[-1] == pytest.approx(-93.0, abs=5.0)


def test_a_colour_without_a_law_is_refused():
    with pytest.raises(ValueError, match="colour was read as 'pink'"):
        leds.real("pink")
