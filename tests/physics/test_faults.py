"""One short at a time, worked out a second way: by quadrature along the path of the current."""

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
