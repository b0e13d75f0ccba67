import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from helpers.physics import circuits, joints, leds, parts
from helpers.physics.joints import JOINTS, faulty, way
from helpers.physics.parts import Part

#: Constant drops, with which a second way needs no solver.
LAWS = {"led": Part(1.6), "second_led": Part(1.7), "diode": Part(0.5)}
SINGLES = [(name, *fault) for name, held in circuits.CIRCUITS.items() for fault in held.faulty]


def kinds(names):
    """A way as `circuits` writes it: sorts of parts, wires left out, None if blocked."""
    if names is None:
        return None
    return sorted(joints.kind(name) for name in names if joints.kind(name) != "wire")


def written(names):
    """A way of `circuits` on few volts, where nothing breaks down and the mains is far away."""
    if names is None or any("breakdown" in name for name in names):
        return None
    return sorted(names)


def test_joints_has_all_circuits():
    assert JOINTS.keys() == circuits.CIRCUITS.keys()


@pytest.mark.parametrize("circuit", JOINTS)
def test_second_way_sound_ways_are_those_of_the_circuits(circuit):
    sound = circuits.CIRCUITS[circuit].sound
    assert kinds(way(JOINTS[circuit], "a", "b")) == written(sound.forward)
    assert kinds(way(JOINTS[circuit], "b", "a")) == written(sound.backward)


@pytest.mark.parametrize(("circuit", "part", "how"), SINGLES)
def test_second_way_faulty_ways_are_those_of_the_circuits(circuit, part, how):
    """Either half-cycle may be the one that is left, since a bridge has four like diodes."""
    joined = JOINTS[circuit]
    left = faulty(joined, part if part in joined else f"{part} 1", how)
    wiring = circuits.CIRCUITS[circuit].faulty[part, how]
    found = [kinds(way(left, *ends)) for ends in ("ab", "ba")]
    expected = [written(wiring.forward), written(wiring.backward)]
    assert found in (expected, expected[::-1])


def test_property_a_part_that_is_turned_twice_is_sound():
    bridge = JOINTS["bridge"]
    assert faulty(faulty(bridge, "diode 3", "turned"), "diode 3", "turned") == bridge


def test_second_way_a_turned_diode_of_a_bridge_shorts_one_half_past_the_led():
    left = faulty(JOINTS["bridge"], "diode 1", "turned")
    assert way(left, "a", "b") is None
    assert way(left, "b", "a") == ("diode 3", "diode 1")


def test_second_way_string_on_steady_volts_by_hand():
    # 12 V less 1.6 and 0.5 V; the meter's 10 megohm lies beside the 100 kilohm that it measures.
    beside = 100e3 * 10e6 / 10.1e6
    expected = 9.9 * beside / (beside + 50e3)
    shown = joints.string_volts(JOINTS["series_diode"], LAWS, 50e3, 100e3, 12.0)
    assert shown == pytest.approx(expected, rel=1e-12)


def test_second_way_real_parts_by_a_root_search():
    laws = {"led": leds.real("red"), "diode": parts.SILICON}

    def spare(amps):
        return 12.0 - 240e3 * amps - laws["led"].volts_at(amps) - laws["diode"].volts_at(amps)

    amps = brentq(spare, 1e-9, 1e-3, xtol=1e-18)
    shown = joints.led_volts(JOINTS["series_diode"], laws, "am", 240e3, 12.0)
    assert shown == pytest.approx(float(laws["led"].volts_at(amps)), rel=1e-9)


def test_limit_a_blocked_string_shows_nothing():
    assert joints.string_volts(JOINTS["series_diode"], LAWS, 0.0, 100e3, 5.0, turned=True) == 0.0


def test_limit_an_open_resistor_shows_almost_the_whole_supply():
    shown = joints.string_volts(JOINTS["resistor_only"], LAWS, 100e3, joints.OPEN_OHMS, 12.0)
    assert shown == pytest.approx((12.0 - 1.6) * 10e6 / 10.1e6, rel=1e-6)


def test_second_way_a_meter_closes_the_circuit_of_an_open_led():
    left = faulty(JOINTS["series_diode"], "led", "open")
    shown = joints.led_volts(left, LAWS, "am", 100e3, 12.0)
    assert shown == pytest.approx((12.0 - 0.5) * 10e6 / 10.1e6)


def test_limit_a_shorted_led_shows_nothing():
    left = faulty(JOINTS["series_diode"], "led", "short")
    assert joints.led_volts(left, LAWS, "am", 100e3, 12.0) == 0.0


@pytest.mark.parametrize(
    ("circuit", "ends", "volts"),
    [
        ("resistor_only", "ab", 1.6),  # the LED lights
        ("resistor_only", "ba", 5.0 * 10e6 / (10e6 + 4.7e3)),  # all of it: blocked
        ("diode_across", "ba", 0.5),  # the diode beside it
        ("bridge", "np", 1.0),  # two diodes of the bridge
    ],
)
def test_second_way_led_test(circuit, ends, volts):
    assert joints.pin_volts(JOINTS[circuit], LAWS, ends, 4.7e3, 5.0) == pytest.approx(volts)


def test_second_way_diode_test():
    assert joints.diode_test(JOINTS["bridge"], LAWS, "ap") == 0.5
    assert joints.diode_test(faulty(JOINTS["bridge"], "diode 1", "short"), LAWS, "ap") == 0.0
    assert joints.diode_test(JOINTS["bridge"], LAWS, "pa") == np.inf


def test_limit_a_diode_test_overloads_above_two_volts():
    assert joints.diode_test(JOINTS["resistor_only"], {"led": Part(2.01)}, "ab") == np.inf
    assert joints.diode_test(JOINTS["resistor_only"], {"led": Part(1.99)}, "ab") == 1.99


def test_second_way_sine_on_a_half_wave_by_quadrature():
    crest, drop, ohms = np.sqrt(2.0) * 12.0, 2.1, 100e3
    signal = joints.string_signal(JOINTS["series_diode"], LAWS, ohms, 12.0)
    beside = ohms * 10e6 / (ohms + 10e6)

    def over(power):
        start = np.arcsin(drop / crest)
        found = quad(lambda x: (crest * np.sin(x) - drop) ** power, start, np.pi - start)[0]
        return found / (2.0 * np.pi)

    assert beside / ohms == pytest.approx(0.990, abs=1e-3)  # the string is all there is: no divider
    assert signal.mean == pytest.approx(over(1), rel=1e-4)
    assert signal.rms == pytest.approx(np.sqrt(over(2)), rel=1e-4)
    assert signal.mean_size == pytest.approx(signal.mean)


@pytest.mark.parametrize(
    ("circuit", "ends", "lights"),
    [
        ("series_diode", "am", {"led"}),
        ("series_diode", "ma", set()),
        ("two_leds", "ba", {"second_led"}),
        ("diode_across", "ba", set()),
        ("bridge", "ba", {"led"}),
    ],
)
def test_second_way_which_leds_light(circuit, ends, lights):
    assert joints.lit(JOINTS[circuit], *ends) == lights


def test_property_a_turned_led_lights_together_with_its_neighbour():
    left = faulty(JOINTS["two_leds"], "led", "turned")
    assert joints.lit(left, "b", "a") == {"led", "second_led"}
    assert joints.lit(left, "a", "b") == set()


def test_property_a_diode_beside_a_turned_led_keeps_it_dark():
    left = faulty(JOINTS["diode_across"], "led", "turned")
    assert joints.lit(left, "b", "a") == set()


def test_shape_supplies_go_through():
    volts = np.array([12.0, 24.0])
    assert joints.string_volts(JOINTS["bridge"], LAWS, 0.0, 1e5, volts).shape == (2,)
    assert joints.string_signal(JOINTS["bridge"], LAWS, 1e5, volts).rms.shape == (2,)


def test_refused_a_part_that_a_circuit_has_not():
    with pytest.raises(KeyError, match="second_led"):
        faulty(JOINTS["bridge"], "second_led", "open")
