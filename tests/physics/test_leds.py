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
