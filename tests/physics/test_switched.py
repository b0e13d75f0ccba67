"""The circuit between its instants: each mode's own equations, and the state carried across."""

from math import inf, pi, sin, sqrt

import pytest

from helpers.physics import switched

CREST = sqrt(2.0) * 230.0


def circuit(smoothing=47e-6, suppression=100e-9, heater=588.0, clamp=6.0):
    ways = {1: (1.4, True), -1: (1.4, True)}
    return switched.Circuit(
        CREST, 50.0, [(0.0, 1.0, False), (1.0, pi, True)], 330e-9, 120.0, 1e6, ways, 2.0, 68.0,
        smoothing, clamp, heater, suppression, 100.0,
    )  # fmt: skip


@pytest.mark.parametrize("key", [
    (True, 0, False, False), (True, 1, True, False), (True, -1, True, False),
    (False, 1, True, False), (False, -1, False, False), (False, 0, True, False),
    (True, 1, True, True),
])  # fmt: skip
@pytest.mark.parametrize("heater", [588.0, inf])
def test_second_way_charges_follow_the_currents_of_the_mode(key, heater):
    """C dv/dt of each capacitor against Kirchhoff, at an instant well inside the stretch."""
    c = circuit(heater=heater)
    on, way, lit, clamped = key
    stretch = switched.Stretch(c.mode(*key), 1.2, [-40.0, 6.0 if clamped else 2.5, 15.0])
    angle, step = 1.3, 1e-5
    turns = 2.0 * pi * 50.0
    before, now, after = (stretch.state(angle + n * step) for n in (-1, 0, 1))
    slopes = [(b - a) / (2.0 * step) * turns for a, b in zip(before, after, strict=True)]
    mode = stretch.mode
    line, led, volts = (
        stretch.wave(kept).at(angle) if kept else 0.0
        for kept in (mode.line_amps, mode.led_amps, mode.terminal_volts)
    )
    line *= way  # a mode counts it along the way that it takes
    assert 330e-9 * slopes[0] == pytest.approx(line - now[0] / 1e6, rel=1e-5, abs=1e-10)
    gained = 0.0 if clamped else abs(line) * (way != 0) * (1.0 if way * line > 0 else -1.0) - led
    assert 47e-6 * slopes[1] == pytest.approx(gained, rel=1e-5, abs=1e-9)
    mains = CREST * sin(angle)
    if way or on:
        leak = -now[2] / 100.0 if on else (mains - now[2] - volts) / 100.0
        assert 100e-9 * slopes[2] == pytest.approx(leak, rel=1e-5, abs=1e-10)
    if way:
        across = volts - now[0] - 120.0 * line
        assert across == pytest.approx(way * (1.4 + now[1]), rel=1e-9)
    if way and not on:
        assert (mains - now[2] - volts) / 100.0 == pytest.approx(line + volts / heater, abs=1e-9)


def test_second_way_what_is_left_of_a_change_is_the_change_of_the_end():
    c = circuit(clamp=inf)
    start = [-200.0, 3.0, 4.0]
    stretches, end = c.march(start, c.windows)
    changes = c.changes(stretches)
    for place in range(3):
        moved = [volts + 1e-4 * (place == other) for other, volts in enumerate(start)]
        _, other_end = c.march(moved, c.windows)
        expected = [(b - a) / 1e-4 for a, b in zip(end, other_end, strict=True)]
        assert changes[place] == pytest.approx(expected, abs=1e-4)


@pytest.mark.parametrize("suppression", [0.0, 100e-9])
@pytest.mark.parametrize("smoothing", [0.0, 22e-6])
def test_property_the_steady_cycle_closes_on_itself_and_has_no_gaps(smoothing, suppression):
    c = circuit(smoothing, suppression, clamp=inf)
    guess = [-100.0, *[3.0] * (smoothing > 0.0), *[0.0] * (suppression > 0.0)]
    stretches = c.steady(guess, True)
    first, last = stretches[0], stretches[-1]
    closed = last.state(last.end)
    assert closed[0] == pytest.approx(-first.state(first.start)[0], abs=1e-9)
    for before, after in zip(stretches, stretches[1:], strict=False):
        assert before.end == after.start
        assert before.state(before.end) == pytest.approx(after.state(after.start), abs=1e-9)
