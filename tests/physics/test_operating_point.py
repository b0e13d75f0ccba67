"""Every field against adaptive quadrature on a grid; properties; refusals."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from one_cycle_by_quadrature import Cycle

from helpers.physics.circuits import CIRCUITS
from helpers.physics.mains import Supply
from helpers.physics.operating_point import FIELDS, operating_point
from helpers.physics.phase_cut import Dimmer

SUPPLIES = ((230.0, 50.0), (127.0, 60.0), (100.0, 50.0))
SETTINGS = (
    ("none", 0.0), ("leading", 0.0), ("leading", 25.0), ("leading", 90.0), ("leading", 150.0),
    ("leading", 177.0), ("trailing", 155.0), ("trailing", 90.0), ("trailing", 31.0),
    ("trailing", 4.0),
)  # fmt: skip
# LED, second LED, silicon diode, breakdown; the third breaks down only on the higher supplies.
DROPS = ((2.0, 2.0, 0.7, 5.0), (1.9, 3.2, 0.65, 30.0), (3.1, 2.1, 0.7, 175.0), (0.0, 0.0, 0.0, 5.0))


def numbers(point):
    """Everything that an operating point knows."""
    return {name: getattr(point, name) for name in FIELDS}


def point(circuit, supply, setting, ohms, drops):
    led, second, diode, breakdown = drops
    return operating_point(
        circuit, Supply(*supply), Dimmer(*setting), ohms=ohms,
        led_volts=led, second_led_volts=second, diode_volts=diode, breakdown_volts=breakdown,
    )  # fmt: skip


@pytest.mark.parametrize("drops", DROPS, ids=lambda d: f"drops {d}")
@pytest.mark.parametrize("supply", SUPPLIES, ids=lambda s: f"{s[0]:g} V")
@pytest.mark.parametrize("setting", SETTINGS, ids=lambda s: f"{s[0]} {s[1]:g}")
@pytest.mark.parametrize("circuit", CIRCUITS)
def test_second_way_every_field_agrees_with_quadrature(circuit, setting, supply, drops):
    found = numbers(point(circuit, supply, setting, 68e3, drops))
    expected = Cycle(circuit, *supply, *setting, 68e3, *drops).results()
    for name, value in expected.items():
        # Modulations that cancel are as far from zero as the quadrature is: 1e-12 of 100 %.
        slack = 1e-10 if name.endswith("percent") else 0.0
        assert found[name] == pytest.approx(value, rel=1e-9, abs=slack), name


@pytest.mark.parametrize("circuit", CIRCUITS)
def test_second_way_random_boards_agree_with_quadrature(circuit):
    random = np.random.default_rng(20)
    for _ in range(60):
        supply = (random.uniform(90.0, 264.0), random.choice([50.0, 60.0]))
        setting = (random.choice(["leading", "trailing"]), random.uniform(0.0, 180.0))
        drops = (*random.uniform(1.2, 3.5, 2), random.uniform(0.3, 1.0), random.uniform(4.0, 400.0))
        ohms = 10.0 ** random.uniform(3.0, 6.0)
        found = numbers(point(circuit, supply, setting, ohms, drops))
        for name, value in Cycle(circuit, *supply, *setting, ohms, *drops).results().items():
            slack = 1e-10 if name.endswith("percent") else 0.0
            assert found[name] == pytest.approx(value, rel=1e-9, abs=slack), (name, setting)


def test_second_way_a_sliver_of_conduction_keeps_its_digits():
    setting, drops = ("leading", 179.4), (2.0, 2.0, 0.7, 5.0)
    found = point("series_diode", (230.0, 50.0), setting, 68e3, drops)
    cycle = Cycle("series_diode", 230.0, 50.0, *setting, 68e3, *drops).results()
    assert 0.0 < found.led_conduction_fraction < 4e-4
    for name in ("led_amps_mean", "led_amps_rms", "resistor_watts", "branch_watts"):
        assert getattr(found, name) == pytest.approx(cycle[name], rel=1e-9)


def test_limit_with_no_drop_the_bridge_passes_the_rectified_sine():
    found = point("bridge", (230.0, 50.0), ("none", 0.0), 1e5, (0.0, 0.0, 0.0, 5.0))
    assert found.led_amps_mean == pytest.approx(230.0 * 2.0**1.5 / np.pi / 1e5, rel=1e-14)
    assert found.resistor_watts == pytest.approx(230.0**2 / 1e5, rel=1e-14)
    assert found.led_conduction_fraction == pytest.approx(1.0, rel=1e-14)


@pytest.mark.parametrize("circuit", CIRCUITS)
@pytest.mark.parametrize("setting", [("leading", 180.0), ("trailing", 0.0), ("leading", 179.9)])
def test_limit_dark_is_all_zeros_and_no_nan(circuit, setting):
    found = numbers(point(circuit, (230.0, 50.0), setting, 68e3, (2.0, 2.0, 0.7, 5.0)))
    lit = {name: value for name, value in found.items() if "amps" in name or "light" in name}
    assert lit == dict.fromkeys(lit, 0.0) or circuit == "diode_across"
    assert found["led_amps_mean"] == found["light_fundamental_hertz"] == 0.0
    assert all(np.isfinite(value) for value in found.values())


@pytest.mark.parametrize(
    ("circuit", "led_holds", "bound", "diode_holds"),
    [
        ("resistor_only", 5.0, 5.0, 0.0),
        ("series_diode", 0.0, 5.0, 325.269119),
        ("diode_across", 0.7, 0.7, 2.0),
        ("two_leds", 3.2, 3.2, 0.0),
        ("bridge", 0.0, 0.0, 2.7),
    ],
    ids=lambda value: f"second way: {value}",
)
def test_reverse_voltages(circuit, led_holds, bound, diode_holds):
    found = point(circuit, (230.0, 50.0), ("none", 0.0), 68e3, (2.0, 3.2, 0.7, 5.0))
    assert found.led_reverse_volts_peak == pytest.approx(led_holds)
    assert found.led_reverse_volts_bound == pytest.approx(bound)
    assert found.diode_reverse_volts_peak == pytest.approx(diode_holds)


def test_limit_a_breakdown_that_is_never_reached_leaves_the_peak_across_the_led():
    found = point("resistor_only", (230.0, 50.0), ("leading", 120.0), 68e3, (2.0, 2.0, 0.7, 400.0))
    assert found.led_reverse_volts_peak == pytest.approx(230.0 * 2.0**0.5 * np.sin(np.pi / 3.0))
    assert found.led_reverse_amps_peak == 0.0
    assert found.led_amps_net_mean == found.led_amps_mean


def test_limit_resistor_on_the_dc_side_leaves_the_peak_to_the_bridge_diodes():
    found = operating_point("bridge", Supply(120.0, 60.0), ohms=68e3, resistor_side="dc")
    assert found.diode_reverse_volts_peak == pytest.approx(120.0 * 2.0**0.5)


@pytest.mark.parametrize(
    ("circuit", "second", "repeats", "dominant"),
    [
        ("series_diode", 2.0, 60.0, 60.0),
        ("bridge", 2.0, 120.0, 120.0),
        ("two_leds", 2.0, 120.0, 120.0),
        ("two_leds", 3.2, 60.0, 120.0),
    ],
    ids=lambda value: f"second way: {value}",
)
def test_flicker_frequencies(circuit, second, repeats, dominant):
    found = point(circuit, (120.0, 60.0), ("none", 0.0), 68e3, (2.0, second, 0.7, 5.0))
    assert found.light_fundamental_hertz == repeats
    assert found.light_dominant_hertz == dominant
    assert found.light_percent_flicker == 100.0


REAL = {
    "circuit": st.sampled_from(list(CIRCUITS)),
    "volts": st.floats(50.0, 260.0),
    "edge": st.sampled_from(["none", "leading", "trailing"]),
    "degrees": st.floats(0.0, 180.0),
    "ohms": st.floats(1e3, 1e6),
    "led": st.floats(0.0, 4.0),
    "second": st.floats(0.0, 4.0),
    "diode": st.floats(0.0, 1.0),
    "breakdown": st.floats(4.5, 500.0),
}
many = settings(max_examples=150, deadline=None, derandomize=True)


@many
@given(**REAL)
def test_property_energy_in_is_energy_out(
    circuit, volts, edge, degrees, ohms, led, second, diode, breakdown
):
    found = point(circuit, (volts, 50.0), (edge, degrees), ohms, (led, second, diode, breakdown))
    spent = found.resistor_watts + found.led_watts + found.diode_watts
    assert found.branch_watts == pytest.approx(spent, rel=1e-9, abs=1e-25)


@many
@given(**REAL)
def test_property_all_volts_doubled_doubles_all_currents(
    circuit, volts, edge, degrees, ohms, led, second, diode, breakdown
):
    drops = (led, second, diode, breakdown)
    once = point(circuit, (volts, 50.0), (edge, degrees), ohms, drops)
    twice = point(
        circuit, (2.0 * volts, 50.0), (edge, degrees), ohms, tuple(2.0 * each for each in drops)
    )
    for name in FIELDS:
        factor = 2.0 if "amps" in name or "volts" in name else 1.0
        factor = 4.0 if "watt" in name else factor
        got, expected = getattr(twice, name), factor * getattr(once, name)
        assert got == pytest.approx(expected, rel=1e-12, abs=1e-25), name


@many
@given(**{name: each for name, each in REAL.items() if name != "edge"})
def test_property_a_leading_edge_is_a_trailing_edge_run_backwards(
    circuit, volts, degrees, ohms, led, second, diode, breakdown
):
    drops = (led, second, diode, breakdown)
    leading = point(circuit, (volts, 50.0), ("leading", degrees), ohms, drops)
    trailing = point(circuit, (volts, 50.0), ("trailing", 180.0 - degrees), ohms, drops)
    assert numbers(leading) == numbers(trailing)


@many
@given(**REAL)
def test_property_rms_is_at_least_the_mean_and_peak_at_least_rms(
    circuit, volts, edge, degrees, ohms, led, second, diode, breakdown
):
    found = point(circuit, (volts, 50.0), (edge, degrees), ohms, (led, second, diode, breakdown))
    slack = 1.0 + 1e-9
    assert abs(found.led_amps_net_mean) <= found.led_amps_rms * slack
    assert found.led_amps_mean <= found.led_amps_rms_forward * slack
    assert found.led_amps_rms_forward <= found.led_amps_peak * slack
    assert 0.0 <= found.light_flicker_index <= 1.0


@many
@given(factor=st.floats(1.001, 10.0), **REAL)
def test_property_more_ohms_less_light(
    factor, circuit, volts, edge, degrees, ohms, led, second, diode, breakdown
):
    drops = (led, second, diode, breakdown)
    less = point(circuit, (volts, 50.0), (edge, degrees), ohms, drops)
    more = point(circuit, (volts, 50.0), (edge, degrees), factor * ohms, drops)
    assert more.led_amps_mean < less.led_amps_mean or less.led_amps_mean == 0.0
    assert more.led_amps_peak < less.led_amps_peak or less.led_amps_peak == 0.0


@pytest.mark.parametrize("circuit", CIRCUITS)
def test_property_scalar_and_array_agree_across_chunks(circuit):
    angles = np.linspace(0.0, 180.0, 20001)
    volts = np.array([[100.0], [253.0]])
    table = operating_point(circuit, Supply(volts, 50.0), Dimmer("leading", angles), ohms=68e3)
    assert table.led_amps_mean.shape == (2, 20001)
    for row, column in ((0, 0), (1, 8191), (0, 8192), (1, 20000), (1, 12345)):
        single = operating_point(
            circuit, Supply(volts[row, 0], 50.0), Dimmer("leading", angles[column]), ohms=68e3
        )
        for name in FIELDS:
            assert type(getattr(single, name)) is float
            assert getattr(table, name)[row, column] == pytest.approx(
                getattr(single, name), rel=1e-12, abs=1e-18
            ), name


@pytest.mark.parametrize("shape", [(0,), (1,), (3, 1), (2, 1, 3)], ids=str)
def test_property_shape_every_argument_broadcasts(shape):
    ohms = np.full(shape, 68e3)
    found = operating_point("bridge", Supply(230.0, 50.0), ohms=ohms, led_volts=2.0)
    assert all(value.shape == shape for value in numbers(found).values())


SUPPLY = Supply(230.0, 50.0)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ({"circuit": "half bridge"}, "circuit was read as 'half bridge'; it must be one of"),
        ({"ohms": 0.0}, "ohms was read as 0 ohm; it must be above 0 ohm. Without a resistor"),
        ({"ohms": float("nan")}, "ohms was read as nan ohm; it must be a finite number"),
        ({"led_volts": -2.0}, "led_volts was read as -2 V; it must be 0 V or more"),
        ({"diode_volts": -0.1}, "diode_volts was read as -0.1 V"),
        ({"breakdown_volts": 0.0}, "breakdown_volts was read as 0 V; it must be above 0 V"),
        ({"circuit": "two_leds", "second_led_volts": 5.5}, "The LED would break down first"),
        ({"circuit": "diode_across", "breakdown_volts": 0.5}, "The LED would break down first"),
        ({"resistor_side": "left"}, "resistor_side was read as 'left'; it must be one of ac, dc"),
    ],
)
def test_refusal(arguments, message):
    arguments = {"circuit": "series_diode", "ohms": 68e3} | arguments
    with pytest.raises(ValueError, match=message):
        operating_point(supply=SUPPLY, **arguments)


def test_refusal_of_a_misspelt_drop():
    with pytest.raises(TypeError, match="led_voltage"):
        operating_point("bridge", SUPPLY, ohms=68e3, led_voltage=2.0)


@pytest.mark.parametrize("volts", [100.0, 120.0, 230.0, 240.0], ids=lambda v: f"property: {v:g} V")
def test_a_bare_led_that_gives_way_at_tens_of_volts_heats_more_in_reverse_than_forwards(volts):
    """10 to 50 V as breakdown: common practice, no source."""
    breakdown = np.array([10.0, 20.0, 30.0, 50.0])
    point = operating_point(
        "resistor_only", Supply(volts, 50.0), ohms=100e3, breakdown_volts=breakdown
    )
    forwards = 2.0 * point.led_amps_mean
    assert np.all(point.led_watts - forwards > forwards)
