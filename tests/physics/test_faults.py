"""One fault at a time, a second way: by quadrature along the path, and as a network of switches."""

from dataclasses import fields
from itertools import product
from math import asin, pi, sin, sqrt

import numpy as np
import pytest
from scipy.integrate import quad

from helpers.physics import circuits, faults
from helpers.physics.mains import Supply
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import Dimmer

LED, SECOND, DIODE, BREAKDOWN = 2.0, 3.1, 0.7, 5.0
DROPS = {
    "led_volts": LED, "second_led_volts": SECOND, "diode_volts": DIODE, "breakdown_volts": BREAKDOWN
}  # fmt: skip
#: By hand, along the path: volts lost forwards and backwards, and whether an LED lies on each path.
PATHS = {
    ("resistor_only", "none"): (LED, BREAKDOWN, "led", "breakdown"),
    ("resistor_only", "led"): (0.0, 0.0, "", ""),
    ("series_diode", "none"): (LED + DIODE, None, "led", ""),
    ("series_diode", "led"): (DIODE, None, "", ""),
    ("series_diode", "diode"): (LED, BREAKDOWN, "led", "breakdown"),
    ("diode_across", "none"): (LED, DIODE, "led", ""),
    ("diode_across", "led"): (0.0, 0.0, "", ""),
    ("diode_across", "diode"): (0.0, 0.0, "", ""),
    ("two_leds", "none"): (LED, SECOND, "led", "led"),
    ("two_leds", "led"): (0.0, 0.0, "", ""),
    ("bridge", "none"): (LED + 2 * DIODE, LED + 2 * DIODE, "led", "led"),
    ("bridge", "led"): (2 * DIODE, 2 * DIODE, "", ""),
    # Through the short, the LED and one diode; back through one diode and the short, past the LED.
    ("bridge", "diode"): (LED + DIODE, DIODE, "led", ""),
}
CASES = [
    (circuit, fault, fault) for circuit, fault in PATHS
] + [(circuit, "dropper", "none") for circuit in circuits.CIRCUITS]  # fmt: skip


def mean_square_volts(crest, drop):
    """Mean over a whole cycle of the square of what is left of one half-cycle above a drop."""
    if drop is None:
        return 0.0
    start = asin(drop / crest)
    square = quad(lambda x: (crest * sin(x) - drop) ** 2, start, pi - start, epsrel=1e-12)[0]
    return square / (2 * pi)


@pytest.mark.parametrize("volts", [110.0, 264.0])
@pytest.mark.parametrize("count", [2, 5])
@pytest.mark.parametrize(
    ("circuit", "fault", "path"), CASES, ids=[f"second way: {c} {f}" for c, f, _ in CASES]
)
def test_every_short_of_every_circuit_by_quadrature(circuit, fault, path, count, volts):
    forward, backward, lit, back_lit = PATHS[circuit, path]
    crest, left = sqrt(2) * volts, count - (fault == "dropper")
    square = mean_square_volts(crest, forward) + mean_square_volts(crest, backward)
    peaks = {"": 0.0, "led": 0.0, "breakdown": 0.0}
    for name, drop in ((lit, forward), (back_lit, backward)):
        peaks[name] = max(peaks[name], (crest - (drop or 0.0)) / (left * 33e3))
    string = {"ohms_each": 33e3, "count": count}
    found = faults.state(circuit, Supply(volts, 50.0), fault=fault, **string, **DROPS)
    assert found.watts_each == pytest.approx(square / (left**2 * 33e3), rel=1e-9)
    assert found.volts_rms_each == pytest.approx(volts / left)
    assert found.led_amps_peak == pytest.approx(peaks["led"], rel=1e-9)
    assert found.led_reverse_amps_peak == pytest.approx(peaks["breakdown"], rel=1e-9)


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
@pytest.mark.parametrize("dimmer", [Dimmer(), Dimmer("leading", 100.0)], ids=str)
def test_second_way_a_sound_circuit_is_its_operating_point(circuit, dimmer):
    supply = Supply(127.0, 60.0)
    found = faults.state(circuit, supply, dimmer, ohms_each=39e3, count=3, **DROPS)
    point = operating_point(circuit, supply, dimmer, ohms=117e3, **DROPS)
    assert found.watts_each == pytest.approx(point.resistor_watts / 3, rel=1e-12)
    peak = max(point.led_amps_peak, point.second_led_amps_peak)
    assert found.led_amps_peak == pytest.approx(peak, rel=1e-12)
    assert found.led_reverse_amps_peak == pytest.approx(point.led_reverse_amps_peak, rel=1e-12)


def test_limit_without_drops_a_short_of_one_of_two_doubles_the_heat_of_the_string():
    """All of it is in one part then: four times what each had."""
    none = dict.fromkeys(("led_volts", "second_led_volts", "diode_volts"), 0.0)
    string = {"ohms_each": 47e3, "count": 2, **none}
    sound = faults.state("bridge", Supply(100.0, 50.0), **string).watts_each
    left = faults.state("bridge", Supply(100.0, 50.0), fault="dropper", **string).watts_each
    assert sound == pytest.approx(100.0**2 / 94e3 / 2)
    assert left == pytest.approx(4 * sound)


def test_property_a_shorted_series_diode_doubles_the_heat_nearly():
    """Both half-cycles pass; the LED's breakdown takes a little more than the diode."""
    for volts in (90.0, 253.0):
        string = {"ohms_each": 56e3, "count": 2}
        sound = faults.state("series_diode", Supply(volts, 60.0), **string)
        left = faults.state("series_diode", Supply(volts, 60.0), fault="diode", **string)
        assert 1.9 < left.watts_each / sound.watts_each < 2.0


def test_property_no_circuit_has_a_short_of_a_part_that_it_lacks():
    assert all("diode" not in faults.shorts(c) for c in ("resistor_only", "two_leds"))
    assert all(faults.shorts(c)[:2] == ("dropper", "led") for c in circuits.CIRCUITS)


def test_property_shape():
    supply = Supply(np.array([[230.0], [120.0]]), 50.0)
    for circuit, fault in product(circuits.CIRCUITS, ("none", "dropper", "led")):
        ohms = np.array([33e3, 47e3, 68e3])
        found = faults.state(circuit, supply, ohms_each=ohms, count=3, fault=fault)
        assert {np.shape(value) for value in vars(found).values()} == {(2, 3)}
        for place in np.ndindex(2, 3):
            one = Supply(supply.volts_rms[place[0], 0], 50.0)
            alone = faults.state(circuit, one, ohms_each=ohms[place[1]], count=3, fault=fault)
            assert alone.watts_each == pytest.approx(found.watts_each[place])
            assert type(alone.watts_each) is type(alone.led_amps_peak) is float


@pytest.mark.parametrize(
    ("call", "words"),
    [
        ({"fault": "diode"}, "fault was read as 'diode'; it must be one of none, dropper, led"),
        ({"fault": "dropper", "count": 1}, "Nothing would limit the current"),
        ({"count": 0}, "count was read as 0 resistors"),
        ({"ohms_each": 0.0}, "Without a resistor the LED is destroyed"),
    ],
)
def test_what_cannot_be_is_refused(call, words):
    given = {"ohms_each": 33e3, "count": 2} | call
    with pytest.raises(ValueError, match=words):
        faults.state("two_leds", Supply(120.0, 60.0), **given)


def test_an_unknown_circuit_is_refused():
    with pytest.raises(ValueError, match="circuit was read as 'lamp'"):
        faults.shorts("lamp")


#: By hand: each part as kind, name, from, to. The dropper leads from live to "a"; "n" is neutral.
#: The first diode of the bridge is the one that shorts, the third the one that opens.
NETWORKS = {
    "resistor_only": [("led", "led", "a", "n")],
    "series_diode": [("diode", "diode", "a", "m"), ("led", "led", "m", "n")],
    "diode_across": [("led", "led", "a", "n"), ("diode", "diode", "n", "a")],
    "two_leds": [("led", "led", "a", "n"), ("led", "second_led", "n", "a")],
    "bridge": [
        ("diode", "diode short", "a", "p"), ("diode", "", "n", "p"),
        ("diode", "diode open", "m", "a"), ("diode", "", "m", "n"), ("led", "led", "p", "m"),
    ],
}  # fmt: skip


def by_switches(circuit, part, how, volts, ohms):
    """Current in the dropper and in each LED: every pattern of states is tried until one holds."""
    drops = {"led": LED, "second_led": SECOND}
    net, wires = [], []
    for kind, name, start, end in NETWORKS[circuit]:
        if part and name in (part, f"{part} {how}"):
            wires += [(start, end)] * (how == "short")
        else:
            net.append((kind, name, start, end, drops.get(name, DIODE)))
    nodes = ["a", "m", "p"]
    states = [("off", "on", "back") if kind == "led" else ("off", "on") for kind, *_ in net]
    for pattern in product(*states):
        matrix, push = np.eye(3) * 1e-12, np.zeros(3)

        def joined(start, end, siemens, drop=0.0, matrix=matrix, push=push):
            for here, there, sign in ((start, end, 1.0), (end, start, -1.0)):
                if here in nodes:
                    row = nodes.index(here)
                    matrix[row, row] += siemens
                    push[row] += sign * siemens * drop
                    if there in nodes:
                        matrix[row, nodes.index(there)] -= siemens

        matrix[0, 0] += 1.0 / ohms
        push[0] += volts / ohms
        for start, end in wires:
            joined(start, end, 1e3)
        for (_, _, start, end, drop), state in zip(net, pattern, strict=True):
            if state != "off":
                joined(start, end, 1e3, drop if state == "on" else -BREAKDOWN)
        at = dict(zip(nodes, np.linalg.solve(matrix, push), strict=True)) | {"n": 0.0}
        amps, holds = {}, True
        for (kind, name, start, end, drop), state in zip(net, pattern, strict=True):
            across = at[start] - at[end]
            flow = 1e3 * (across - (drop if state == "on" else -BREAKDOWN)) * (state != "off")
            fits = {
                "off": (-BREAKDOWN if kind == "led" else -1e9) - 1e-6 <= across <= drop + 1e-6,
                "on": flow > -1e-9, "back": flow < 1e-9,
            }  # fmt: skip
            holds, amps[name] = holds and fits[state], flow
        if holds:
            return (volts - at["a"]) / ohms, amps.get("led", 0.0), amps.get("second_led", 0.0)
    raise AssertionError("no pattern of states holds")


@pytest.mark.parametrize(
    ("circuit", "part", "how"),
    [(c, *f) for c in circuits.CIRCUITS for f in (("", ""), *circuits.CIRCUITS[c].faulty)],
    ids=lambda word: f"second way: {word}",
)
def test_every_wiring_is_that_of_a_network_of_switches(circuit, part, how):
    ohms, volts = 33e3, 300.0
    value, law = circuits.named(circuit), circuits.laws(circuit, **DROPS)
    wiring = value.faulty.get((part, how), value.sound)
    for way, sign in ((wiring.forward, 1.0), (wiring.backward, -1.0)):
        flows = 0.0
        if way is not circuits.BLOCKED:
            flows = sign * (volts - sum(law[name].volts for name in way)) / ohms
        in_led = abs(flows) * ("led" in (way or ())) - abs(flows) * ("breakdown" in (way or ()))
        in_second = abs(flows) * ("second_led" in (way or ()))
        in_second -= abs(flows) * ("second_breakdown" in (way or ()))
        expected = (flows, in_led, in_second)
        assert by_switches(circuit, part, how, sign * volts, ohms) == pytest.approx(
            expected, rel=1e-5, abs=1e-7
        )


STRING = {"ohms_each": 75e3, "count": 2, "heater_ohms": 588.0}
EUROPE = Supply(230.0, 50.0)


@pytest.mark.parametrize(
    ("circuit", "fault", "light", "field", "value"),
    [
        ("series_diode", "led open", "dark", "gap_volts_peak", 325.0),
        ("series_diode", "led short", "dark", "watts_each", 0.0876),
        ("series_diode", "dropper short", "brighter", "watts_each", 0.345),
        ("series_diode", "dropper open", "dark", "gap_volts_peak", 325.0),
        ("series_diode", "diode short", "as before", "led_reverse_amps_peak", 2.13e-3),
        ("series_diode", "diode short", "as before", "watts_each", 0.343 / 2),
        ("series_diode", "diode open", "dark", "branch_amps_rms", 0.0),
        ("diode_across", "led open", "dark", "watts_each", 0.175 / 2),
        ("diode_across", "diode open", "as before", "led_reverse_amps_peak", 2.13e-3),
        ("diode_across", "diode short", "dark", "watts_each", 0.353 / 2),
        ("diode_across", "dropper short", "brighter", "watts_each", 0.698),
    ],
    ids=lambda value: f"published: {value}",
)
def test_published_single_fault_table(circuit, fault, light, field, value):
    """An independent program's table at 230 V, constant drops."""
    found = faults.after(circuit, *fault.split(), EUROPE, **STRING)
    assert found.light == light
    assert getattr(found, field) == pytest.approx(value, rel=5e-3, abs=1e-9)


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
def test_second_way_a_short_is_the_state_that_the_rules_judge(circuit):
    for short in faults.shorts(circuit):
        found = faults.after(circuit, short, "short", EUROPE, **STRING, **DROPS)
        state = faults.state(circuit, EUROPE, ohms_each=75e3, count=2, fault=short, **DROPS)
        for field in ("watts_each", "led_amps_peak", "led_reverse_amps_peak"):
            assert getattr(found, field) == pytest.approx(getattr(state, field), rel=1e-12)


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
@pytest.mark.parametrize("dimmer", [Dimmer(), Dimmer("leading", 120.0)], ids=str)
def test_property_an_open_element_leaves_the_light_and_a_shorted_dimmer_all_the_heat(
    circuit, dimmer
):
    sound = operating_point(circuit, EUROPE, dimmer, ohms=2 * 75e3)
    for part in ("element", "cut-out"):
        cold = faults.after(circuit, part, "open", EUROPE, dimmer, **STRING)
        assert (cold.light, cold.heater_watts) == ("as before", 0.0)
        assert cold.led_amps_peak == pytest.approx(sound.led_amps_peak)
    assert faults.after(circuit, "dimmer", "short", EUROPE, dimmer, **STRING).heater_watts == (
        pytest.approx(230.0**2 / 588.0)
    )
    halves = [
        faults.after(circuit, "dimmer", how, EUROPE, dimmer, **STRING)
        for how in ("half wave", "other half wave")
    ]
    light = sound.led_amps_mean + sound.second_led_amps_mean
    assert sum(half.led_amps_mean for half in halves) == pytest.approx(light)
    assert sum(2.0 * half.watts_each for half in halves) == pytest.approx(sound.resistor_watts)
    for part in ("neutral", "dimmer"):
        left = faults.after(circuit, part, "open", EUROPE, dimmer, **STRING)
        assert (left.light, left.branch_amps_rms, left.heater_watts) == ("dark", 0.0, 0.0)
        assert left.gap_volts_peak > 200.0


def test_second_way_a_drifted_resistor_takes_its_share_of_the_heat():
    found = faults.after("bridge", "dropper", "drift", EUROPE, drift=3.0, **STRING)
    point = operating_point("bridge", EUROPE, ohms=4 * 75e3)
    assert found.watts_each == pytest.approx(3 / 4 * point.resistor_watts)
    assert found.light == "dimmer"


def test_property_aftermath_shape_and_every_fault_over_settings_and_supplies():
    supply, dimmer = Supply(np.array([[230.0], [120.0]]), 50.0), Dimmer("leading", np.arange(3.0))
    for circuit in circuits.CIRCUITS:
        assert len(set(faults.singles(circuit))) == len(faults.singles(circuit))
        for part, how in faults.singles(circuit):
            found = faults.after(circuit, part, how, supply, dimmer, **STRING)
            assert {np.shape(getattr(found, f.name)) for f in fields(found)} == {(2, 3)}
            one = faults.after(circuit, part, how, Supply(120.0, 50.0), **STRING)
            assert type(one.light) is str and type(one.watts_each) is float
            assert one.led_watts == pytest.approx(found.led_watts[1, 0])


@pytest.mark.parametrize(
    ("fault", "given", "words"),
    [
        ("diode short", {}, "fault was read as 'diode short'; it must be one of dropper short"),
        ("dropper short", {"count": 1}, "Nothing would limit the current"),
        ("dropper drift", {"drift": 0.5}, "Film resistors drift upwards"),
        ("led open", {"heater_ohms": 0.0}, "heater_ohms was read as 0 ohm"),
    ],
)
def test_an_aftermath_that_cannot_be_is_refused(fault, given, words):
    with pytest.raises(ValueError, match=words):
        faults.after("two_leds", *fault.split(), EUROPE, **(STRING | given))
