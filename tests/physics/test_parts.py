"""Laws of parts: points of a data sheet, their inverse, limits and refusals."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.physics import parts
from helpers.physics.parts import Part

RED = parts.junction(2.0, 0.020, 2.0, 5.0)


def test_common_practice_a_red_led_at_three_currents():
    """2 V at 20 mA, about 1.75 V at 1 mA and 1.51 V at 10 uA. Common practice, no source."""
    found = RED.volts_at(np.array([20e-3, 1e-3, 10e-6]))
    assert found == pytest.approx([2.0, 1.75, 1.51], abs=0.005)


def test_common_practice_led_and_diode_drop_about_2_2_volts_below_a_milliampere():
    both = RED.volts_at(0.3e-3) + parts.SILICON.volts_at(0.3e-3)
    assert both == pytest.approx(2.2, abs=0.05)


@settings(max_examples=200, deadline=None, derandomize=True)
@given(
    volts=st.floats(1e-3, 400.0), ohms=st.floats(1.0, 1e7), ideality=st.floats(1.0, 4.0),
    drop=st.floats(0.5, 4.0), constant=st.floats(0.0, 5.0),
)  # fmt: skip
def test_property_the_current_put_back_gives_the_volts(volts, ohms, ideality, drop, constant):
    chain = [Part(constant, ohms), parts.junction(drop, 0.02, ideality), parts.SILICON]
    amps = parts.amps_through(chain, volts)
    if volts <= constant:
        assert amps == 0.0
    else:
        assert amps > 0.0
        assert sum(part.volts_at(amps) for part in chain) == pytest.approx(volts, rel=1e-11)


def test_limit_constant_drops_need_no_steps():
    assert parts.amps_through([Part(2.0, 1e3), Part(1.0)], 5.0) == pytest.approx(2e-3)
    assert parts.amps_through([Part(2.0, 1e3)], 1.0) == 0.0


@pytest.mark.filterwarnings("error")
def test_limit_neither_a_huge_voltage_nor_a_steep_junction_overflows():
    steep = parts.junction(15.0, 0.02, 1.0)
    volts = np.array([-10.0, 0.0, 1e-30, 1.0, 1e6])
    for chain in ([Part(ohms=1.0), RED], [Part(ohms=1e9), steep]):
        amps = parts.amps_through(chain, volts)
        assert np.all(np.isfinite(amps)) and amps[0] == amps[1] == 0.0
        assert np.all(np.diff(amps) >= 0.0)


def test_second_way_the_slope_is_the_difference_of_volts():
    amps, step = 1e-3, 1e-9
    rise = (RED.volts_at(amps + step) - RED.volts_at(amps - step)) / (2 * step)
    assert RED.slope_at(amps) == pytest.approx(rise, rel=1e-6)


def test_property_shape():
    chain = [Part(ohms=np.array([[1e3], [1e4]])), RED]
    assert parts.amps_through(chain, np.array([1.0, 5.0, 9.0])).shape == (2, 3)
    assert type(parts.amps_through([Part(ohms=1e3), RED], 5.0)) is float
    assert parts.amps_through(chain, np.empty((2, 0))).shape == (2, 0)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: parts.junction(2.0, 0.0, 2.0), "amps was read as 0 A"),
        (lambda: parts.junction(2.0, 0.02, 0.0), "ideality was read as 0"),
        (lambda: parts.junction(2.0, 0.02, 2.0, -1.0), "ohms was read as -1 ohm"),
        (lambda: parts.junction(30.0, 0.02, 1.0), "is the ideality at least 1"),
        (lambda: parts.junction(2.0, 0.02, 2.0, 200.0), "volts less those of the resistance"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
