"""A capacitor across an open switch, and behind it anything that conducts beyond two drops.

Between two instants the voltage at the terminals is a sine and a decaying exponential, in closed
form; the instants follow from the cycle closing on itself. For `off_states`, `clamped` and the
dimmer as it is; knows no circuit by name.
"""

from typing import NamedTuple

import numpy as np

TURN = 2.0 * np.pi
NEVER = 1e9
"""A drop that no mains reaches, for a half-cycle that is blocked [V]."""
_MOST_STEPS = 60  # halving alone needs fewer
_CLOSE = 1e-13
_NEAR = 1e-10  # Newton has then gone twice as far; its own noise is greater than _CLOSE


class Load(NamedTuple):
    """What lies across the terminals, one number each per case, in flat arrays."""

    crest: float
    """Of the mains [V]."""
    conductance: float
    """Of the dropper [1/ohm]."""
    shunt: float
    """Conductance of all else between the terminals [1/ohm]."""
    snubber_ohms: float
    """In series with the capacitor [ohm]."""
    susceptance: float
    """Of the capacitor [1/ohm]."""
    forward: float
    """Drops beyond which the dropper conducts [V]."""
    backward: float
    """The same in the other half-cycle; `NEVER` where that is blocked [V]."""


class Mode(NamedTuple):
    """The voltage v between two instants: dv/dangle = crest cos(angle) - rate (v - level)."""

    crest: float
    rate: float
    level: float


class Stretch(NamedTuple):
    """A mode from one instant to another, and the voltage that it starts from."""

    mode: Mode
    start: float
    stop: float
    volts: float


def modes(load):
    """Return the three modes: nothing but the shunt conducts, forwards, backwards."""

    def mode(conductance, level):
        share = 1.0 / (1.0 + load.snubber_ohms * conductance)
        return Mode(share * load.crest, share * conductance / load.susceptance, level)

    both = load.shunt + load.conductance
    share = load.conductance / both
    return (
        mode(load.shunt, 0.0 * load.crest),
        mode(both, share * load.forward),
        mode(both, -share * load.backward),
    )


def cycle(load):
    """Return the six stretches of a cycle that repeats itself, some of no length.

    Backwards, none, forwards, none, backwards, none. The voltage can rise through the forward drop
    only within `reach` of the mains' own rising zero crossing and fall through it only outside, so
    it is not above that drop where the cycle is closed; likewise backwards.
    """
    off, on, back = modes(load)
    forward, backward = load.forward, -load.backward
    reach = np.arccos(np.minimum(off.rate * forward / off.crest, 1.0))
    back_reach = np.arccos(np.minimum(off.rate * load.backward / off.crest, 1.0))
    begin, end, turned = -reach, TURN - reach, np.pi + back_reach

    def crossing(mode, start, volts, level, low, high, sign, takes_place):
        """Where the level is passed; at the start where that does not take place."""
        low = np.where(takes_place, np.maximum(low, start), start)
        high = np.where(takes_place, high, start)
        return root(lambda a: less(level, at(mode, a, start, volts)), low, high, sign)

    def follow(volts):
        pushed = volts < backward
        first = crossing(back, begin, volts, backward, begin, np.pi - back_reach, -1.0, pushed)
        held = np.where(pushed, backward, volts)
        lit = (first < reach) & (at(off, reach, first, held)[0] > forward)
        starts = crossing(off, first, held, forward, first, reach, -1.0, lit)
        held = np.where(lit, forward, held)
        stops = crossing(on, starts, held, forward, reach, TURN - reach, 1.0, lit)
        pushed = (stops < turned) & (at(off, turned, stops, held)[0] < backward)
        falls = crossing(off, stops, held, backward, np.pi - back_reach, turned, 1.0, pushed)
        kept = np.where(pushed, backward, held)
        back_again = pushed & (at(back, end, falls, kept)[0] > backward)
        rises = crossing(back, falls, kept, backward, turned, end, -1.0, back_again)
        rises = np.where(pushed & ~back_again, end, rises)
        there = np.where(pushed, at(back, rises, falls, kept)[0], held)
        return (
            Stretch(back, begin, first, volts),
            Stretch(off, first, starts, np.where(volts < backward, backward, volts)),
            Stretch(on, starts, stops, held),
            Stretch(off, stops, falls, held),
            Stretch(back, falls, rises, kept),
            Stretch(off, rises, end, there),
        )

    def gained(volts):
        """What a cycle adds to the voltage it began with, and how that changes with it."""
        stretches = follow(volts)
        last = stretches[-1]
        decay = sum(each.mode.rate * (each.stop - each.start) for each in stretches)
        after = at(last.mode, last.stop, last.start, last.volts)[0]
        return after - volts, np.expm1(-decay)

    return follow(root(gained, -2.0 * off.crest - 1.0, forward, close=_NEAR))


def steady(mode, angle):
    """What is left of a mode when its exponential has died away [V]."""
    return (
        mode.crest * (np.sin(angle) + mode.rate * np.cos(angle)) / (1.0 + mode.rate**2) + mode.level
    )


def at(mode, angle, start, volts):
    """Voltage at an angle, from what it is at the start, and its slope."""
    left = (volts - steady(mode, start)) * np.exp(-mode.rate * (angle - start))
    there = steady(mode, angle) + left
    return there, mode.crest * np.cos(angle) - mode.rate * (there - mode.level)


def less(level, found):
    """The same less a level."""
    volts, slope = found
    return volts - level, slope


def turn(stretch, sign):
    """Where a stretch that has one such turn is highest (sign 1) or lowest (-1) [rad]."""
    mode, start, stop, volts = stretch

    def turning(angle):
        _, slope = at(mode, angle, start, volts)
        return slope, -mode.crest * np.sin(angle) - mode.rate * slope

    return root(turning, start, stop, sign)


def extreme(stretch, sign):
    """Highest (sign 1) or lowest (-1) voltage of a stretch that has one such turn [V]."""
    return at(stretch.mode, turn(stretch, sign), stretch.start, stretch.volts)[0]


def areas(stretch):
    """Integrals of the voltage and of its square, as sums of complex exponentials."""
    mode, start, stop, volts = stretch
    turning = mode.crest / (mode.rate + 1j) / 2.0 * np.exp(1j * start)
    terms = (
        (turning, 1j), (turning.conj(), -1j), (mode.level, 0.0),
        (volts - steady(mode, start), -mode.rate),
    )  # fmt: skip

    def grown(rate):
        some = np.where(rate == 0.0, 1.0, rate)
        return np.where(rate == 0.0, stop - start, np.expm1(some * (stop - start)) / some)

    once = sum(size * grown(rate) for size, rate in terms)
    twice = sum(size * other * grown(rate + more) for size, rate in terms for other, more in terms)
    return once.real, twice.real


def root(function, low, high, sign=1.0, close=_CLOSE):
    """Where a value that falls (sign 1) or rises (-1) passes zero: Newton, kept between bounds."""
    low, high = (np.array(each, dtype=float) for each in np.broadcast_arrays(low, high))
    found = 0.5 * (low + high)
    for _ in range(_MOST_STEPS):
        value, slope = function(found)
        low = np.where(sign * value > 0.0, found, low)
        high = np.where(sign * value > 0.0, high, found)
        with np.errstate(divide="ignore", invalid="ignore"):
            step = found - value / slope
            # The last step may end a hair outside the bounds, which are then one end of it.
            done = np.abs(step - found) <= close * (1.0 + np.abs(found))
        after = np.where(done | ((step > low) & (step < high)), step, 0.5 * (low + high))
        if np.all(np.abs(after - found) <= close * (1.0 + np.abs(found))):
            return after
        found = after
    return found
