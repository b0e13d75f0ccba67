"""The words of each picture name the key numbers; each is worked out here a second time."""

import re
from math import exp, log, pi, radians, sin, sqrt

import numpy as np
import pytest

from helpers.figures import at_off, comparison, heat, readings, settings, touch, waves
from helpers.figures.words import KINDS, capital
from helpers.physics.mains import SUPPLIES
from helpers.physics.phase_cut import NO_DIMMER, Dimmer

SUPPLY, OTHER = SUPPLIES["240 V 50 Hz"], SUPPLIES["120 V 60 Hz"]


def words_of(made):
    return made.words.replace("\u00a0", " ")


def three(value):
    return f"{float(f'{value:.3g}'):g}"


def power_share(degrees):
    """Heat that a leading edge leaves: the textbook formula, in radians."""
    angle = radians(degrees)
    return 1.0 - angle / pi + sin(2.0 * angle) / (2.0 * pi)


@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=SUPPLIES)
def test_sine_names_rms_peak_mean_and_period(supply):
    words = words_of(waves.sine(supply))
    for number in (supply.volts_rms, sqrt(2.0) * supply.volts_rms,
                   2.0 * sqrt(2.0) / pi * supply.volts_rms):  # fmt: skip
        assert f"{three(number)} V" in words
    assert f"{three(1000.0 / supply.hertz)} ms" in words


@pytest.mark.parametrize(("edge", "degrees"), [("leading", 75.0), ("trailing", 105.0)])
def test_chopped_names_what_is_left(edge, degrees):
    words = words_of(waves.chopped(SUPPLY, Dimmer(edge, degrees)))
    share = power_share(75.0)
    assert f"{three(240.0 * sqrt(share))} V rms" in words
    assert f"{three(100.0 * share)} % of the heat" in words
    assert f"still {three(240.0 * sqrt(2.0))} V" in words


@pytest.mark.parametrize(("edge", "degrees"), [("leading", 180.0), ("trailing", 0.0)])
def test_a_dimmer_that_lets_nothing_through_is_not_called_safe(edge, degrees):
    assert "count as live" in words_of(waves.chopped(SUPPLY, Dimmer(edge, degrees)))
    assert "count as live" in words_of(readings.meters(SUPPLY, Dimmer(edge, degrees)))


def test_led_current_names_mean_peak_and_quick_sum():
    words = words_of(waves.led_current("series_diode", SUPPLY, NO_DIMMER, 68e3))
    angles = (np.arange(200000) + 0.5) * pi / 200000
    crest = 240.0 * sqrt(2.0)
    mean = np.maximum(crest * np.sin(angles) - 2.7, 0.0).mean() / 2.0 / 68e3
    assert f"{three(1e3 * mean)} mA on average" in words
    assert f"up to {three(1e3 * (crest - 2.7) / 68e3)} mA" in words
    assert f"V/R says {three(1e3 * 240.0 / 68e3)} mA" in words


def test_the_other_half_cycle_is_told_for_each_circuit():
    told = {
        "resistor_only": "pushes the LED backwards",
        "series_diode": "the diode blocks",
        "diode_across": "past the LED, in the diode",
        "two_leds": "the second LED gets",
        "bridge": "Both half-cycles light the LED",
    }
    for circuit, said in told.items():
        assert said in words_of(waves.led_current(circuit, OTHER, NO_DIMMER, 47e3))


@pytest.mark.parametrize(
    ("verdict", "start"),
    [
        ("pass", "Pass: at 100 °C the part makes 62 % of the heat that it may:"),
        ("fail", "Fail: at"),
    ],
)
def test_rating_names_the_derated_power_and_the_verdict_that_it_was_given(verdict, start):
    words = words_of(heat.rating(0.2, 0.5, 100.0, verdict))
    assert f"may turn {three(0.5 * (155.0 - 100.0) / (155.0 - 70.0))} W into heat" in words
    assert words.startswith(start)
    assert "half of that while all is sound; here it is 0.2 W" in words


def test_warm_up_names_final_temperature_and_time():
    words = words_of(heat.warm_up(0.25, 160.0, 80.0, 21.0))
    assert "settles at 61 °C: 40 K above its air" in words
    assert f"after {float(f'{-80.0 * log(0.05):.2g}'):g} s" in words
    assert f"passes {three(21.0 + 40.0 * (1.0 - exp(-1.0)))} °C" in words


def test_warm_up_warns_of_a_part_that_no_film_survives():
    assert "fire" in words_of(heat.warm_up(2.0, 160.0, 80.0, 21.0))


def test_limit_where_nothing_is_let_through_no_dropper_lights_the_led():
    assert "No dropper" in words_of(settings.brightness("bridge", OTHER, [1e5], [180.0]))


def test_brightness_names_every_dot():
    words = words_of(settings.brightness("two_leds", SUPPLY, (50e3, 100e3), (0.0, 180.0)))
    assert f"100 kΩ {116.0 * 0.5 ** (1.0 / 3.0) - 16.0:.0f} at 0°, 0 at 180°" in words


@pytest.mark.parametrize("count", [0, 9])
def test_brightness_refuses_a_grid_that_does_not_fit(count):
    with pytest.raises(ValueError, match=f"{count} droppers and 1 settings"):
        settings.brightness("bridge", SUPPLY, [1e5] * count, [0.0])


@pytest.mark.parametrize("degrees", [60.0, 105.0])
def test_meters_name_both_readings(degrees):
    words = words_of(readings.meters(OTHER, Dimmer("leading", degrees)))
    # Mean of the size times the form factor of a sine: (1 + cos) / 2 of the supply.
    average, true = (
        120.0 * (1.0 + np.cos(radians(degrees))) / 2.0,
        120.0 * sqrt(power_share(degrees)),
    )
    assert f"{three(average)} V where the true value is {three(true)} V" in words
    assert f"{float(f'{100.0 * (1.0 - average / true):.2g}'):g} % too little" in words


@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=SUPPLIES)
def test_at_off_begins_with_the_danger_and_names_every_state(supply):
    """By hand: one loop of 100 nF, 100 ohm and a 90 W pot; a mains shifted by crest less 2.7 V."""
    words = words_of(at_off.at_off(supply))
    crest, high = sqrt(2.0) * supply.volts_rms, 1.1 * supply.volts_rms
    assert words.startswith("Danger: dimmer off")
    assert f"swing to {three(2.0 * crest - 2.7)} V" in words
    assert f"{three(2.0 * sqrt(2.0) * high - 2.7)} V on the highest mains" in words
    rms = [sqrt(v**2 + (sqrt(2.0) * v - 2.7) ** 2) for v in (supply.volts_rms, high)]
    assert f"Rms: {three(rms[0])} V and {three(rms[1])} V." in words
    for farads, nano in ((100e-9, 100), (220e-9, 220)):
        pot = supply.volts_rms**2 / 90.0
        peak = crest * pot / abs(pot + 100.0 - 1j / (2.0 * pi * supply.hertz * farads))
        shown = f"{three(peak)} V" if peak >= 1.0 else f"{three(1e3 * peak)} mV"
        light = "a red LED can glow" if peak > 2.0 else "too little for an LED"
        assert f"sound, {nano} nF: {shown}, {light}" in words
    share = float(words.rsplit(", ", 1)[1].partition(" %")[0])
    assert 28.0 < share < 38.0  # an independent simulation: 470 kohm leaves 29 to 37 per cent


@pytest.mark.parametrize(
    ("amps", "seconds", "zone"),
    # IEC 60479-1 figure 20, well inside each zone; from memory.
    [(0.2e-3, 1.0, "AC-1"), (2e-3, 1.0, "AC-2"), (0.02, 1.0, "AC-3"), (0.2, 1.0, "AC-4")],
)
def test_touch_names_the_zone(amps, seconds, zone):
    assert f"Zone {zone}, " in words_of(touch.zones(amps, seconds))


@pytest.mark.parametrize(
    ("amps", "seconds", "zone", "border"),
    # Second way: straight lines on logarithmic scales, solved by hand. Curve b from 200 mA at 10 ms
    # to 5 mA at 2 s, c1 from 400 mA at 100 ms to 50 mA at 1 s (IEC 60479-1, c1 from memory).
    [
        (0.3, 0.04, "AC-4", 0.1 * (0.4 / 0.3) ** (log(10) / log(8))),
        (0.1, 0.02, "AC-4", 0.1 * (0.4 / 0.1) ** (log(10) / log(8))),
        (0.03, 0.01, "AC-3", 0.01 * (0.2 / 0.03) ** (log(200) / log(40))),
    ],
)
def test_touch_says_how_soon_a_longer_time_is_worse_and_rather_early_than_late(
    amps, seconds, zone, border
):
    words = words_of(touch.zones(amps, seconds))
    number, unit = re.search(f"zone {zone} from about ([0-9.]+) (m?s) on", words).groups()
    assert 0.8 * border < float(number) * (1e-3 if unit == "ms" else 1.0) <= 1.05 * border


def test_touch_tells_no_worse_zone_than_the_current_can_reach():
    assert "AC-4 from" not in words_of(touch.zones(0.03, 0.01))  # below 40 mA at any time
    assert "longer" not in words_of(touch.zones(0.3, 1.0))  # nothing is worse


def test_second_way_seven_circuits_name_light_and_heat_of_each():
    """Bridge: means of a sine less its drops. Dropper: the surge resistor leaves 4 f C per volt."""
    words = words_of(comparison.seven_circuits(SUPPLY, NO_DIMMER, 100e3))
    angles = (np.arange(200000) + 0.5) * pi / 200000
    volts = 240.0 * sqrt(2.0) * np.sin(angles)
    amps = np.maximum(volts - 3.4, 0.0) / 100e3
    heat = three((volts * amps).mean())
    assert f"the bridge gets {three(1e3 * amps.mean())} mA for {heat} W" in words
    dropper = 4.0 * SUPPLY.hertz * 100e-9 * (240.0 * sqrt(2.0) - 3.4)
    said = float(re.search(r"a capacitor dropper ([\d.]+) mA", words)[1])
    assert said == pytest.approx(1e3 * dropper, rel=0.01)
    for name in KINDS.values():
        assert f"{capital(name)}: mean" in words


@pytest.mark.parametrize("edge", ["leading", "trailing"])
def test_a_pulse_beyond_the_led_is_called_a_danger_first_behind_either_edge(edge):
    cut = Dimmer(edge, 90.0)
    for drawn in (
        comparison.seven_circuits(SUPPLY, cut, 100e3),
        comparison.dropper_pulse(SUPPLY, cut, 100e-9, 1e3),
    ):
        assert drawn.finding.startswith("Danger:")
    assert "Danger" not in comparison.dropper_pulse(SUPPLY, NO_DIMMER, 100e-9, 1e3).finding


def test_second_way_a_bad_day_is_told_for_each_of_the_seven():
    """Of two alike one is left with four times its heat; the mains across the surge resistor."""
    words = words_of(comparison.bad_days(OTHER, 100e3))
    volts = 1.1 * 120.0
    square = volts**2 - 2 * 3.4 * 2 * sqrt(2.0) / pi * volts + 3.4**2
    assert f"overheats the surge resistor: {three(square / 1e3)} W" in words
    for name in KINDS.values():
        assert f"{capital(name)}:" in words
    assert "Series diode: 42" in words and "pot broken dark" in words


def test_limit_a_dimmer_that_lets_nothing_through_is_dark_but_called_live():
    closed = Dimmer("leading", 180.0)
    assert "yet the wires are live" in comparison.seven_circuits(SUPPLY, closed, 100e3).finding
    assert "yet the wires are live" in comparison.dropper_pulse(SUPPLY, closed, 33e-9, 1e3).finding


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: touch.zones(-0.1, 1.0), "amps_rms was read as -0.1"),
        (lambda: touch.zones(0.1, 0.0), "seconds was read as 0"),
        (lambda: waves.led_current("ring", SUPPLY, NO_DIMMER, 1e5), "circuit was read as 'ring'"),
        (lambda: heat.rating(-1.0, 0.5, 20.0, "fail"), "watts was read as -1"),
    ],
    ids=["current", "time", "circuit", "power"],
)
def test_impossible_input_is_refused_in_words(call, message):
    with pytest.raises(ValueError, match=message):
        call()
