"""The plain sine; printed factors stand in tests/published."""

import numpy as np
import pytest
from scipy.integrate import quad

from helpers.physics import mains


def test_second_way_mean_and_rms_by_quadrature():
    def wave(degrees):
        return mains.volts_at(230.0, degrees)

    half_cycle = quad(wave, 0.0, 180.0)[0] / 180.0
    squares = quad(lambda degrees: wave(degrees) ** 2, 0.0, 360.0)[0] / 360.0
    assert mains.mean(230.0) == pytest.approx(half_cycle, rel=1e-12)
    assert squares**0.5 == pytest.approx(230.0, rel=1e-12)
    assert mains.peak(230.0) == pytest.approx(wave(90.0), rel=1e-15)


def test_limit_crossings_and_crest():
    assert mains.volts_at(100.0, 0.0) == 0.0
    assert mains.volts_at(100.0, 270.0) == pytest.approx(-mains.peak(100.0))
    assert mains.range_of(120.0, 0.0) == (120.0, 120.0)


@pytest.mark.parametrize("name", mains.SUPPLIES)
def test_property_a_supply_is_found_by_its_own_name(name):
    assert mains.SUPPLIES[name].name == name


def test_published_the_odd_voltage_is_one_leg_of_220_volts():
    # 127 V: 220 V between lines over the square root of three (national system, from memory).
    assert mains.SUPPLIES["127 V 60 Hz"].volts_rms == round(220.0 / 3.0**0.5)


def test_property_shape():
    volts = np.array([[100.0], [230.0]])
    assert mains.peak(volts).shape == mains.mean(volts).shape == (2, 1)
    assert mains.volts_at(volts, np.arange(3.0)).shape == (2, 3)
    assert [each.shape for each in mains.range_of(volts, np.array([5.0, 10.0]))] == [(2, 2)] * 2
    assert mains.Supply(volts, 50).volts_rms.shape == (2, 1)
    assert type(mains.Supply(230, 50).hertz) is type(mains.volts_at(100, 45)) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: mains.Supply(0.0, 50.0), "volts_rms was read as 0 V; it must be above 0 V"),
        (lambda: mains.Supply(230.0, 0.0), "hertz was read as 0 Hz.*Direct current"),
        (lambda: mains.peak(-230.0), "Give the rms value, without sign"),
        (lambda: mains.mean(float("inf")), "volts_rms was read as inf V"),
        (lambda: mains.range_of(230.0, -1.0), "tolerance_percent was read as -1 %"),
        (lambda: mains.volts_at(230.0, "noon"), "degrees was read as 'noon'"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()


@pytest.mark.parametrize(
    ("supply", "volts"),
    [(mains.Supply(230.0, 50.0), 253.0), (mains.Supply(120.0, 60.0), 132.0)],
    ids=["published: IEC 60038, 230 V", "published: IEC 60038, 120 V"],
)
def test_the_highest_supply_is_ten_per_cent_up_at_the_same_frequency(supply, volts):
    """IEC 60038, supply range +-10 %."""
    found = mains.highest(supply)
    assert found.volts_rms == pytest.approx(volts) and found.hertz == supply.hertz


RANGES = {
    "230 V 50 Hz": (230 - 23, 230 + 23),  # EN 50160, 10 %
    "120 V 60 Hz": (110, 127),  # ANSI C84.1 range B, service
    "240 V 50 Hz": (240 * 0.94, 240 * 1.06),  # 6 %
    "127 V 60 Hz": (117, 133),  # PRODIST module 8
    "100 V 50 Hz": (101 - 6, 101 + 6),  # Japan, 101 V and 6 V
    "100 V 60 Hz": (101 - 6, 101 + 6),
    "110 V 60 Hz": (110 * 0.95, 110 * 1.05),  # Taiwan, 5 %
    "220 V 50 Hz": (220 * 0.9, 220 * 1.07),  # GB/T 12325
    "220 V 60 Hz": (220 - 13, 220 + 13),  # Korea, 13 V
}


@pytest.mark.parametrize("name", mains.SUPPLIES)
def test_published_national_range(name):
    """National rules, all from memory; a supply that is added has its row in RANGES."""
    found = mains.national_range(mains.SUPPLIES[name])
    assert found[:2] == pytest.approx(RANGES[name])
    assert found.source


@pytest.mark.parametrize("supply", mains.SUPPLIES.values(), ids=mains.SUPPLIES)
def test_property_lowest_and_highest_reach_as_far_as_either_rule(supply):
    national = mains.national_range(supply)
    low, high = mains.lowest(supply), mains.highest(supply)
    assert low.volts_rms <= min(0.9 * supply.volts_rms * (1 + 1e-12), national.lowest)
    assert high.volts_rms >= max(1.1 * supply.volts_rms * (1 - 1e-12), national.highest)
    assert low.hertz == high.hertz == supply.hertz


def test_property_a_wider_national_rule_wins(monkeypatch):
    wide = mains.NationalRange(195.0, 260.0, "invented")
    monkeypatch.setitem(mains.NATIONAL, "230 V 50 Hz", wide)
    supply = mains.SUPPLIES["230 V 50 Hz"]
    assert (mains.lowest(supply).volts_rms, mains.highest(supply).volts_rms) == (195.0, 260.0)


def test_limit_a_supply_without_a_national_rule_has_ten_per_cent():
    odd = mains.Supply(48.0, 400.0)
    assert mains.national_range(odd) is None
    found = mains.lowest(odd).volts_rms, mains.highest(odd).volts_rms
    assert found == pytest.approx((43.2, 52.8))


def test_shape_lowest_and_highest_broadcast():
    both = mains.Supply(np.array([230.0, 120.0]), 50.0)
    assert mains.lowest(both).volts_rms == pytest.approx([207.0, 108.0])
    assert mains.highest(both).volts_rms == pytest.approx([253.0, 132.0])
