"""Touch current, zones and barriers; the printed borders stand in tests/published."""

import numpy as np
import pytest

from helpers.physics import hazards
from helpers.physics.mains import Supply

HIGH = Supply(253.0, 50.0)


def test_second_way_touch_current_through_a_resistor_is_ohms_law():
    assert hazards.touch_amps_rms(HIGH, 330e3) == pytest.approx(253.0 / 330_775, rel=1e-14)
    assert hazards.touch_amps_rms(HIGH, body_ohms=1000.0) == pytest.approx(0.253)


def test_published_from_memory_a_shock_is_judged_with_the_lowest_dry_body():
    """IEC 60479-1, from memory: 775 ohm at 225 V. The network of IEC 60990 would flatter it."""
    assert hazards.SHOCK_BODY_OHMS == 775.0 < hazards.TOUCH_NETWORK_OHMS
    assert hazards.touch_amps_rms(HIGH) == pytest.approx(253.0 / 775.0)


def test_second_way_touch_current_through_a_capacitor_in_real_numbers():
    farads, bleeder, series = 220e-9, 1e6, 1000.0
    conductance, susceptance = 1.0 / bleeder, 2.0 * np.pi * 50.0 * farads
    size = conductance**2 + susceptance**2
    resistance = series + 775.0 + conductance / size
    expected = 253.0 / np.hypot(resistance, susceptance / size)
    found = hazards.touch_amps_rms(HIGH, series, farads, bleeder)
    assert found == pytest.approx(expected, rel=1e-12)


def test_limit_a_bleeder_that_is_not_there_and_a_vast_capacitor():
    bare = hazards.touch_amps_rms(HIGH, 1000.0, 100e-9)
    assert hazards.touch_amps_rms(HIGH, 1000.0, 100e-9, 1e15) == pytest.approx(bare)
    assert hazards.touch_amps_rms(HIGH, 1000.0, 1.0) == pytest.approx(253.0 / 1775.0)


def test_property_zones_never_ease_with_more_current_or_time():
    names = list(hazards.ZONES)
    amps, seconds = np.geomspace(1e-4, 1.0, 60), np.geomspace(0.01, 100.0, 40)[:, None]
    ranks = np.vectorize(names.index)(hazards.zone(amps, seconds))
    assert np.all(np.diff(ranks, axis=0) >= 0) and np.all(np.diff(ranks, axis=1) >= 0)
    assert set(ranks.ravel()) == {0, 1, 2, 3}


def test_second_way_bare_contact_kills_and_one_resistor_is_no_barrier():
    assert hazards.zone(hazards.touch_amps_rms(HIGH), 1.0) == "AC-4"
    single = hazards.protective_impedance(HIGH, [10e6])
    assert not single.holds
    assert single.amps_rms_worst == pytest.approx(253.0 / 2000.0)


def test_second_way_each_part_of_a_pair_must_hold_alone():
    barrier = hazards.protective_impedance(HIGH, [510e3, 390e3])
    assert barrier.amps_rms == pytest.approx(253.0 / 902e3)
    assert barrier.amps_rms_worst == pytest.approx(253.0 / 392e3)
    assert not barrier.holds
    assert hazards.protective_impedance(HIGH, [510e3, 510e3]).holds


@pytest.mark.parametrize(("ohms", "holds"), [(508.0e3, False), (510.0e3, True)])
def test_limit_the_peak_limit_is_the_stricter_one(ohms, holds):
    # 0.7 mA peak is 0.495 mA rms: 253 V need 509.1 kohm besides the body.
    assert hazards.protective_impedance(HIGH, [ohms, ohms]).holds is holds


def test_property_shape():
    ohms = np.array([1e4, 1e5, 1e6])
    assert hazards.touch_amps_rms(HIGH, ohms).shape == (3,)
    farads = np.array([[47e-9], [100e-9]])
    assert hazards.touch_amps_rms(HIGH, ohms, farads, 1e6).shape == (2, 3)
    assert hazards.zone(ohms / 1e6, 1.0).shape == (3,)
    assert type(hazards.touch_amps_rms(HIGH, 1e5, 1e-7)) is float
    assert type(hazards.zone(0.1, 1.0)) is str


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: hazards.touch_amps_rms(HIGH, -1.0), "ohms was read as -1 ohm"),
        (lambda: hazards.touch_amps_rms(HIGH, 0.0, body_ohms=0.0), "No body has no resistance"),
        (lambda: hazards.touch_amps_rms(HIGH, 0.0, 0.0), "farads was read as 0 F"),
        (lambda: hazards.touch_amps_rms(HIGH, 0.0, 1e-7, 0.0), "bleeder_ohms was read as 0"),
        (lambda: hazards.touch_amps_rms(HIGH, 0.0, None, 1e6), "farads is missing"),
        (lambda: hazards.zone(-0.1, 1.0), "amps_rms was read as -0.1 A"),
        (lambda: hazards.zone(0.1, 0.005), "The curves begin at 10 ms"),
        (lambda: hazards.protective_impedance(HIGH, []), "a bare contact is no barrier"),
        (lambda: hazards.protective_impedance(HIGH, [1e5, 0.0]), "part_ohms was read as 0 ohm"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
