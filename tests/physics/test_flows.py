"""Real parts in layers of current, against brentq and adaptive quadrature; and their properties."""

from itertools import product
from math import cos, sin

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from real_parts_by_quadrature import Real, saturation

from helpers.physics import flows, leds, parts
from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point
from helpers.physics.parts import Part
from helpers.physics.phase_cut import Dimmer

RED = parts.junction(2.0, 0.020, 2.0, 5.0)
AS_TUPLES = {
    "led": (0.0, 5.0, 2.0, saturation(2.0, 0.02, 2.0, 5.0)),
    "second_led": (0.0, 12.0, 2.8, saturation(3.2, 0.02, 2.8, 12.0)),
    "diode": (0.0, 0.05, 1.9, 5e-9),
    "breakdown": (5.0, 20.0, 0.0, None),
}
SETTINGS = (
    ("none", 0.0), ("leading", 90.0), ("leading", 89.0), ("trailing", 31.0), ("trailing", 4.0),
)  # fmt: skip


def real_point(circuit, volts, setting, ohms):
    return operating_point(
        circuit, Supply(volts, 50.0), Dimmer(*setting), ohms=ohms, led=RED,
        second_led=leds.real("white"), breakdown_ohms=20.0,
    )  # fmt: skip


@pytest.mark.parametrize("circuit", CIRCUITS)
@pytest.mark.parametrize("setting", SETTINGS, ids=lambda s: f"{s[0]} {s[1]:g}")
@pytest.mark.parametrize("volts", [230.0, 4.0], ids=lambda v: f"second way: {v:g} V")
def test_every_sum_agrees_with_quadrature(circuit, setting, volts):
    found = real_point(circuit, volts, setting, 82e3)
    wiring = CIRCUITS[circuit].sound
    halves = [
        (way, Real(volts, 82e3, *setting, [AS_TUPLES[name] for name in way]))
        for way in wiring[:2] if way is not None
    ]  # fmt: skip

    def total(of, *names):
        return sum(half.mean(of) for way, half in halves if set(names) & set(way))

    close = {"rel": 1e-6, "abs": 1e-16}
    assert found.led_amps_mean == pytest.approx(total(lambda i, x: i, "led"), **close)
    square = sum(half.mean(lambda i, x: i * i) for _, half in halves)
    assert found.resistor_watts == pytest.approx(82e3 * square, **close)
    delivered = sum(half.mean(lambda i, x, h=half: h.crest * sin(x) * i) for _, half in halves)
    assert found.branch_watts == pytest.approx(delivered, **close)
    heat = {
        name: sum(
            half.mean(lambda i, x, h=half, p=AS_TUPLES[name]: i * h.drop(p, i)) * way.count(name)
            for way, half in halves
        )
        for name in AS_TUPLES
    }
    in_leds = heat["led"] + heat["second_led"] + heat["breakdown"]
    assert found.led_watts == pytest.approx(in_leds, **close)
    assert found.diode_watts == pytest.approx(heat["diode"], **close)


@pytest.mark.parametrize("setting", SETTINGS, ids=lambda s: f"second way: {s[0]} {s[1]:g}")
def test_light_of_the_series_circuit_agrees_with_quadrature(setting):
    found = real_point("series_diode", 127.0, setting, 47e3)
    half = Real(127.0, 47e3, *setting, [AS_TUPLES["led"], AS_TUPLES["diode"]])
    mean = half.mean(lambda i, x: i)
    for order, field in ((1, "line"), (2, "twice_line")):
        parts_of = (half.mean(lambda i, x, f=f, k=order: i * f(k * x)) for f in (cos, sin))
        expected = 200.0 * np.hypot(*parts_of) / mean
        got = getattr(found, f"light_modulation_at_{field}_percent")
        assert got == pytest.approx(expected, rel=1e-6)
    above = half.mean(lambda i, x: max(i - mean, 0.0)) / mean
    assert found.light_flicker_index == pytest.approx(above, rel=1e-5)


def test_limit_a_junction_that_is_almost_a_step_is_a_constant_drop():
    """A steep junction and the constant drop that it has at the mean current."""
    steep = parts.junction(2.0, 1e-3, 0.15)
    real = operating_point("resistor_only", Supply(230.0, 50.0), ohms=82e3, led=steep)
    constant = operating_point("resistor_only", Supply(230.0, 50.0), ohms=82e3, led_volts=2.0)
    assert real.led_amps_mean == pytest.approx(constant.led_amps_mean, rel=2e-5)
    assert real.resistor_watts == pytest.approx(constant.resistor_watts, rel=2e-5)


REAL = {
    "circuit": st.sampled_from(list(CIRCUITS)),
    "volts": st.floats(1.0, 260.0),
    "edge": st.sampled_from(["none", "leading", "trailing"]),
    "degrees": st.floats(1.0, 179.0),
    "ohms": st.floats(1e3, 1e6),
}
many = settings(max_examples=100, deadline=None, derandomize=True)


@many
@given(**REAL)
def test_property_energy_in_is_energy_out(circuit, volts, edge, degrees, ohms):
    found = real_point(circuit, volts, (edge, degrees), ohms)
    spent = found.resistor_watts + found.led_watts + found.diode_watts
    assert found.branch_watts == pytest.approx(spent, rel=1e-6, abs=1e-20)


def test_property_energy_balances_to_1e_9_on_the_mains():
    angles = np.linspace(0.0, 150.0, 60)
    for circuit, volts in product(CIRCUITS, (230.0, 100.0)):
        found = real_point(circuit, volts, ("leading", angles), 82e3)
        spent = found.resistor_watts + found.led_watts + found.diode_watts
        assert found.branch_watts == pytest.approx(spent, rel=1e-9)


@many
@given(more=st.floats(1.01, 3.0), **REAL)
def test_property_more_volts_more_light_and_more_ohms_less(
    more, circuit, volts, edge, degrees, ohms
):
    once = real_point(circuit, volts, (edge, degrees), ohms).led_amps_mean
    assert real_point(circuit, more * volts, (edge, degrees), ohms).led_amps_mean > once > 0.0
    assert real_point(circuit, volts, (edge, degrees), more * ohms).led_amps_mean < once


@many
@given(factor=st.floats(0.5, 10.0), **REAL)
def test_property_volts_scaled_with_all_drops_scale_the_current(
    factor, circuit, volts, edge, degrees, ohms
):
    once = real_point(circuit, volts, (edge, degrees), ohms)
    led, second, diode = RED, leds.real("white"), parts.SILICON
    scaled = [
        Part(0.0, p.ohms, factor * p.slope_volts, factor * p.saturation_amps)
        for p in (led, second, diode)
    ]
    found = operating_point(
        circuit, Supply(factor * volts, 50.0), Dimmer(edge, degrees), ohms=ohms, led=scaled[0],
        second_led=scaled[1], diode=scaled[2], breakdown_volts=factor * 5.0, breakdown_ohms=20.0,
    )  # fmt: skip
    assert found.led_amps_mean == pytest.approx(factor * once.led_amps_mean, rel=1e-9)
    assert found.branch_watts == pytest.approx(factor**2 * once.branch_watts, rel=1e-9)


def test_property_scalar_and_array_agree_across_chunks():
    angles = np.linspace(0.0, 180.0, 601)
    table = real_point("two_leds", 230.0, ("leading", angles), 82e3)
    for place in (0, 255, 256, 300, 599, 600):
        single = real_point("two_leds", 230.0, ("leading", angles[place]), 82e3)
        for name in ("led_amps_mean", "led_watts", "light_flicker_index", "led_bright_fraction"):
            one, among = getattr(single, name), getattr(table, name)[place]
            assert type(one) is float and among == pytest.approx(one, rel=1e-9, abs=1e-20)


def test_limit_a_blocked_half_cycle_is_nothing():
    nothing = flows.flow(325.0, np.pi, None)
    assert nothing.mean == nothing.square == nothing.peak == nothing.delivered == 0.0
    assert nothing.mean_above(0.0) == 0.0
