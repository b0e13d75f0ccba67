"""Ohm's law: worked examples stand in tests/published; here limits, shapes and refusals."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.physics import ohms_law

positive = st.floats(1e-6, 1e6)


@settings(deadline=None, derandomize=True)
@given(volts=positive, ohms=positive)
def test_property_the_three_forms_undo_each_other(volts, ohms):
    amps = ohms_law.current(volts, ohms)
    assert ohms_law.voltage(amps, ohms) == pytest.approx(volts, rel=1e-14)
    assert ohms_law.resistance(volts, amps) == pytest.approx(ohms, rel=1e-14)
    by_all = [
        ohms_law.power(volts=volts, amps=amps),
        ohms_law.power(amps=amps, ohms=ohms),
        ohms_law.power(volts=volts, ohms=ohms),
    ]
    assert by_all == pytest.approx([by_all[0]] * 3, rel=1e-13)


@settings(deadline=None, derandomize=True)
@given(volts=st.floats(5.0, 50.0), amps=st.floats(1e-4, 1.0))
def test_property_the_dropper_gives_the_wanted_current(volts, amps):
    ohms = ohms_law.dropper(volts, 2.0, amps)
    assert ohms_law.led_current(volts, 2.0, ohms) == pytest.approx(amps, rel=1e-12)


def test_limit_no_current_no_drop_and_a_dark_led():
    assert ohms_law.current(0.0, 100.0) == 0.0
    assert ohms_law.voltage(0.5, 0.0) == 0.0
    assert ohms_law.resistance(0.0, 0.5) == 0.0
    assert ohms_law.led_current(2.0, 2.0, 100.0) == 0.0
    assert ohms_law.led_current([1.0, 3.0], 2.0, 100.0).tolist() == [0.0, 0.01]


def test_property_a_part_in_series_adds_and_in_parallel_takes_away():
    assert ohms_law.series(470.0) == ohms_law.parallel(470.0) == 470.0
    assert ohms_law.series(470.0, 330.0) > 470.0 > ohms_law.parallel(470.0, 330.0)
    assert ohms_law.parallel(*[300.0] * 3) == pytest.approx(100.0)


def test_property_a_voltage_keeps_its_sign():
    assert ohms_law.current(-9.0, 450.0) == -0.02
    assert ohms_law.voltage(-0.02, 450.0) == -9.0


def test_property_shape_arrays_broadcast_and_floats_stay_floats():
    volts, ohms = np.array([[5.0], [9.0]]), np.array([100.0, 200.0, 300.0])
    for found in (
        ohms_law.current(volts, ohms),
        ohms_law.voltage(volts, ohms),
        ohms_law.resistance(volts, ohms),
        ohms_law.power(volts=volts, ohms=ohms),
        ohms_law.series(volts, ohms),
        ohms_law.parallel(volts, ohms),
        ohms_law.dropper(volts, 2.0, ohms),
        ohms_law.led_current(volts, 2.0, ohms),
    ):
        assert found.shape == (2, 3)
    assert type(ohms_law.current(5, 100)) is float
    assert type(ohms_law.dropper(5, 2, 1)) is float


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: ohms_law.current(5.0, 0.0), "ohms was read as 0 ohm; it must be above 0 ohm"),
        (lambda: ohms_law.voltage(1.0, -5.0), "ohms was read as -5 ohm"),
        (lambda: ohms_law.resistance(5.0, 0.0), "amps was read as 0 A"),
        (lambda: ohms_law.resistance(-5.0, 1.0), "volts was read as -5 V"),
        (lambda: ohms_law.power(volts=5.0), "exactly two of volts, amps and ohms"),
        (lambda: ohms_law.power(5.0, 1.0, 5.0), "exactly two of volts, amps and ohms"),
        (lambda: ohms_law.series(), "no resistance"),
        (lambda: ohms_law.parallel(), "no resistance"),
        (lambda: ohms_law.parallel(100.0, 0.0), "A zero in parallel shorts the others"),
        (lambda: ohms_law.dropper(1.5, 2.0, 0.01), "the supply must be above the LED's drop"),
        (lambda: ohms_law.dropper([5.0, 1.5], 2.0, 0.01), "the supply must be above"),
        (lambda: ohms_law.dropper(5.0, 2.0, 0.0), "amps was read as 0 A"),
        (lambda: ohms_law.led_current(5.0, 2.0, 0.0), "An LED without a resistor is destroyed"),
        (lambda: ohms_law.led_current(-5.0, 2.0, 100.0), "supply_volts was read as -5 V"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
