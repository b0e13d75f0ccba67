"""A capacitor dropper between its switching instants: exact exponentials, instants by root.

Between two instants the circuit is linear: resistors, at most three capacitors, a sine. Each
quantity is then a `waves.Wave`, with one decay per capacitor. Angles here are radians. Knows how
the parts are joined, and nothing of what they should be; who may pass what is decided in
`capacitor_dropper`.
"""

from math import cos, exp, inf, pi, sin, sqrt

import numpy as np

from helpers.physics.waves import Wave, first_rise

_SLACK = 1e-12  # of the crest: nothing switches for less, so that rounding switches nothing
_MOST_STRETCHES = 400
_MOST_CYCLES = 4000
_CLOSE = 1e-13  # of the crest: the cycle closes on itself


def _dot(row, column):
    total = 0.0
    for one, other in zip(row, column, strict=True):
        total += one * other
    return total


class Mode:
    """The circuit with dimmer, bridge, LED and clamp each in one state: one linear system."""

    def __init__(self, circuit, on, way, lit, clamped):
        c = circuit
        self.circuit, self.on, self.way, self.lit, self.clamped = c, on, way, lit, clamped
        stores, blocked = c.smoothing > 0.0, c.suppression > 0.0 and not on
        # What the dropper sees: a share of the mains behind some ohms, less its capacitor's share.
        self.share, self.behind, feed = float(on), 0.0, 0.0
        if blocked:
            feed = 1.0 / (c.heater + c.suppression_ohms)
            self.share = 1.0 - c.suppression_ohms * feed
            self.behind = self.share * c.suppression_ohms
        elif not on and c.heater < inf:
            self.behind = c.heater
        drops, through = c.ways[way] if way else (0.0, False)
        fixed = c.clamp if clamped else 0.0 if stores else c.led_volts
        self.drops = drops + fixed * through
        self.ohms = self.behind + c.surge + c.led_ohms * (through and not stores and not clamped)
        seen, held, steady, swing = [1.0], [1.0 / c.bleeder], [0.0], [0.0]
        if stores:
            burns = lit and not clamped
            seen.append(float(way * (through and not clamped)))
            held.append(burns / c.led_ohms)
            steady.append(burns * c.led_volts / c.led_ohms)
            swing.append(0.0)
        if c.suppression > 0.0:
            seen.append(self.share * blocked)
            held.append(feed if blocked else 1.0 / c.suppression_ohms)
            steady.append(0.0)
            swing.append(feed * c.crest)
        self.seen, root = seen, c.roots
        places = range(len(seen))
        pull = [[held[i] * (i == j) for j in places] for i in places]
        if way:
            for i in places:
                steady[i] -= seen[i] * way * self.drops / self.ohms
                swing[i] += seen[i] * self.share * c.crest / self.ohms
                pull[i] = [old + seen[i] * seen[j] / self.ohms for j, old in enumerate(pull[i])]
        turns = 2.0 * pi * c.hertz
        pull = [[pull[i][j] / (root[i] * root[j] * turns) for j in places] for i in places]
        # Rows are the ways in which the charges decay, each at one rate.
        self.rates, rows = pull[0], [[1.0]]
        if len(seen) > 1:
            self.rates, rows = (found.T.tolist() for found in np.linalg.eigh(pull))
        # A charge that nothing can move: what drives it is zero but for rounding.
        least = 1e-14 * max(self.rates[-1], 1e-30)
        self.rates = [rate if rate > least else 0.0 for rate in self.rates]
        self.back = [[each * size for each, size in zip(row, root, strict=True)] for row in rows]
        self.out = [[row[i] / root[i] for row in rows] for i in places]
        self.constants, self.sines, self.cosines = [], [], []
        for rate, row in zip(self.rates, zip(*self.out, strict=True), strict=True):
            push, shake = _dot(row, steady) / turns, _dot(row, swing) / turns
            self.constants.append(push / rate if rate else 0.0)
            self.sines.append(shake * rate / (rate * rate + 1.0))
            self.cosines.append(-shake / (rate * rate + 1.0) if rate else 0.0)


class Stretch:
    """One mode from an angle and a state on; `end` is set when it is known."""

    def __init__(self, mode, start, state):
        self.mode, self.start, self.end = mode, start, start
        sine, cosine = sin(start), cos(start)
        self.sizes = [
            _dot(row, state) - constant - on_sine * sine - on_cosine * cosine
            for row, constant, on_sine, on_cosine in zip(
                mode.back, mode.constants, mode.sines, mode.cosines, strict=True
            )
        ]

    def wave(self, weights, sine=0.0, constant=0.0):
        """Return a weighted sum of the capacitors' volts plus a sine and a constant."""
        mode, cosine, decays = self.mode, 0.0, []
        for place, (rate, size) in enumerate(zip(mode.rates, self.sizes, strict=True)):
            weight = 0.0
            for each, row in zip(weights, mode.out, strict=True):
                weight += each * row[place]
            constant += weight * mode.constants[place]
            sine += weight * mode.sines[place]
            cosine += weight * mode.cosines[place]
            decays.append((weight * size, rate))
        return Wave(constant, sine, cosine, self.start, decays)

    def _weights(self, *known):
        return [*known, *[0.0] * (len(self.sizes) - len(known))]

    def capacitor_volts(self):
        """Return the voltage of the dropper's capacitor."""
        return self.wave(self._weights(1.0))

    def line_amps(self, sign=1.0):
        """Return the current through the surge resistor, times a sign."""
        mode = self.mode
        if not mode.way:
            return self.wave(self._weights())
        scale = sign / mode.ohms
        return self.wave(
            [-scale * each for each in mode.seen],
            scale * mode.share * mode.circuit.crest, -scale * mode.way * mode.drops,
        )  # fmt: skip

    def terminal_volts(self):
        """Return the voltage between the terminals of the heater."""
        mode, crest = self.mode, self.mode.circuit.crest
        if mode.on:
            return self.wave(self._weights(), crest)
        amps = mode.behind / mode.ohms if mode.way else 0.0
        weights = [amps * each for each in mode.seen]
        if mode.circuit.suppression > 0.0:
            weights[-1] -= mode.share
        return self.wave(weights, (1.0 - amps) * mode.share * crest, amps * mode.way * mode.drops)

    def led_is_lit(self):
        """Return whether the LED carries current."""
        mode, c = self.mode, self.mode.circuit
        return mode.lit if c.smoothing > 0.0 else bool(mode.way) and c.ways[mode.way][1]

    def led_amps(self):
        """Return the current of the LED."""
        mode, c = self.mode, self.mode.circuit
        if not self.led_is_lit():
            return self.wave(self._weights())
        if c.smoothing > 0.0:
            return self.wave(self._weights(0.0, 1.0 / c.led_ohms), 0.0, -c.led_volts / c.led_ohms)
        if mode.clamped:
            return self.wave(self._weights(), 0.0, (c.clamp - c.led_volts) / c.led_ohms)
        return self.line_amps(mode.way)

    def ends(self):
        """Yield what may end this stretch: a wave that rises above zero, and the mode after it."""
        mode, c = self.mode, self.mode.circuit
        on, way, lit, clamped = mode.on, mode.way, mode.lit, mode.clamped
        stores, through = c.smoothing > 0.0, bool(way) and c.ways[way][1]
        slack = _SLACK * c.crest
        if way:
            yield self.line_amps(-way), (on, 0, lit, clamped and stores)
        elif mode.on or c.has_way_when_blocked:
            for sign, (drops, loaded) in c.ways.items():
                weights = [-sign, -float(loaded)] if stores else [-sign]
                weights = self._weights(*weights)
                if not on and c.suppression > 0.0:
                    weights[-1] = -sign * mode.share
                held = drops + c.led_volts * (loaded and not stores) + slack
                yield self.wave(weights, sign * mode.share * c.crest, -held), (on, sign, lit, False)
        if stores:
            sign = -1.0 if lit else 1.0
            if c.led_ohms < inf and not clamped:
                rise = self.wave(self._weights(0.0, sign), 0.0, -sign * c.led_volts - slack)
                yield rise, (on, way, not lit, False)
            if clamped:
                spare = self.line_amps(-way)
                spare.constant += (c.clamp - c.led_volts) / c.led_ohms
                yield spare, (on, way, lit, False)
            elif through and c.clamp < inf:
                rise = self.wave(self._weights(0.0, 1.0), 0.0, -c.clamp - slack)
                yield rise, (on, way, lit, True)
        elif through and c.clamp < inf and c.led_ohms > 0.0:
            sign = -1.0 if clamped else 1.0
            amps = self.line_amps(sign * way)
            amps.constant -= sign * (c.clamp - c.led_volts) / c.led_ohms
            yield amps, (on, way, lit, not clamped)

    def state(self, angle):
        """Return the capacitors' volts at an angle."""
        mode, sine, cosine = self.mode, sin(angle), cos(angle)
        ways = [
            constant + on_sine * sine + on_cosine * cosine + left
            for constant, on_sine, on_cosine, left in zip(
                mode.constants, mode.sines, mode.cosines, self._left(self.sizes, angle), strict=True
            )
        ]
        return [_dot(row, ways) for row in mode.out]

    def _left(self, sizes, angle):
        return [
            size * exp(rate * (self.start - angle))
            for size, rate in zip(sizes, self.mode.rates, strict=True)
        ]

    def kept(self, change, angle):
        """Return what is left of a change of the state at an angle."""
        ways = self._left([_dot(row, change) for row in self.mode.back], angle)
        return [_dot(row, ways) for row in self.mode.out]


class Circuit:
    """Parts, supply and dimmer of one point in plain numbers, with every mode met so far.

    `ways` holds, for current forwards (1) and backwards (-1), the diodes' drops and whether it
    passes the LED; a way that is blocked is left out.
    """

    def __init__(
        self, crest, hertz, windows, farads, surge, bleeder, ways, led_volts, led_ohms, smoothing,
        clamp, heater, suppression, suppression_ohms,
    ):  # fmt: skip
        self.crest, self.hertz, self.windows = crest, hertz, windows
        self.surge, self.bleeder, self.ways = surge, bleeder, ways
        self.led_volts, self.led_ohms, self.clamp = led_volts, led_ohms, clamp
        # Without resistance beside it the LED holds the smoothing capacitor at one voltage.
        self.smoothing = smoothing if led_ohms > 0.0 else 0.0
        self.heater, self.suppression = heater, suppression
        self.suppression_ohms = suppression_ohms
        self.has_way_when_blocked = heater < inf or suppression > 0.0
        stores = [each for each in (self.smoothing, suppression) if each > 0.0]
        self.roots, self.modes = [sqrt(each) for each in (farads, *stores)], {}

    def mode(self, *key):
        """Return a mode by dimmer on, way of the current, LED lit, clamp holding."""
        if key not in self.modes:
            self.modes[key] = Mode(self, *key)
        return self.modes[key]

    def begin(self, on, angle, state):
        """Return the stretch that follows when the dimmer has just switched."""
        stores = self.smoothing > 0.0
        lit = stores and state[1] > self.led_volts
        stretch = Stretch(self.mode(on, 0, lit, False), angle, state)
        if on or self.has_way_when_blocked:
            for wave, key in stretch.ends():
                if key[1] and wave.at(angle) > 0.0:
                    stretch = Stretch(self.mode(*key), angle, state)
                    break
        if stretch.mode.way and self.clamp < inf:
            full = not stores or state[1] >= self.clamp * (1.0 - _SLACK)
            for wave, key in stretch.ends():
                if key[3] and full and wave.at(angle) > -2.0 * _SLACK * self.crest:
                    return Stretch(self.mode(*key), angle, state)
        return stretch

    def march(self, state, schedule):
        """Return the stretches of a schedule, the state at its end, and what is left there of a
        volt more at its start, by capacitor.

        `schedule` is a list of start, end and whether the dimmer is on.
        """
        stretches, places = [], range(len(state))
        changes = [[float(i == j) for j in places] for i in places]
        for start, stop, on in schedule:
            stretch = self.begin(on, start, state)
            while stretch:
                end, key = stop, None
                for wave, after in stretch.ends():
                    rise = first_rise(wave, end)
                    if rise is not None:
                        end, key = rise, after
                stretch.end, state = end, stretch.state(end)
                changes = [stretch.kept(change, end) for change in changes]
                stretches.append(stretch)
                if len(stretches) > _MOST_STRETCHES:
                    raise RuntimeError("The dropper switches without end; please report its parts.")
                if key and key[3] != stretch.mode.clamped and self.smoothing > 0.0:
                    state[1] = self.clamp
                    for change in changes:
                        change[1] = 0.0
                stretch = Stretch(self.mode(*key), end, state) if key else None
        return stretches, state, changes

    def steady(self, state, turned):
        """Return the stretches of the cycle that repeats, found from a first guess of its start.

        With `turned` half a cycle is enough: it ends where it began but for the sign of the
        alternating volts.
        """
        flip = [1.0] * len(state)
        if turned:
            flip[0] = -1.0
            if self.suppression > 0.0:
                flip[-1] = -1.0
        last = inf
        for _ in range(_MOST_CYCLES):
            stretches, after, changes = self.march(state, self.windows)
            missing = [f * new - old for f, new, old in zip(flip, after, state, strict=True)]
            far = max(map(abs, missing))
            if far <= _CLOSE * self.crest or (far <= 1e3 * _CLOSE * self.crest and far >= last):
                return stretches
            # Newton; where it does not help, the circuit's own way to rest, which always ends.
            if far < 0.5 * last:
                missing = _newton(flip, changes, missing)
            state, last = [old + new for old, new in zip(state, missing, strict=True)], far
        raise RuntimeError("No steady cycle was found; please report the parts of this dropper.")


def _newton(flip, changes, missing):
    if len(missing) == 1:
        remains = 1.0 - flip[0] * changes[0][0]
        return [missing[0] / remains] if remains > 1e-9 else missing
    remains = np.eye(len(missing)) - np.array(flip)[:, None] * np.transpose(changes)
    return np.linalg.lstsq(remains, missing, rcond=1e-13)[0].tolist()
