"""A capacitor dropper between its switching instants: exact exponentials, instants by root.

Between two instants the circuit is linear: resistors, at most three capacitors, a sine. Each
quantity is then a `decays.Wave`, with one decay per capacitor. Angles here are radians. Knows how
the parts are joined, and nothing of what they should be; who may pass what is decided in
`capacitor_dropper`.
"""

from math import cos, exp, inf, pi, sin, sqrt

import numpy as np

from helpers.physics.decays import Wave, first_rise

# Of the crest, or of an LED's volts: nothing switches for less, so that rounding switches nothing.
_SLACK = 1e-12
_MOST_STRETCHES = 400
_MOST_CYCLES = 4000
_CLOSE = 1e-13  # of the crest, or of an LED's volts: the cycle closes on itself


def _dot(row, column):
    if len(row) == 1:  # most droppers hold one capacitor, and most of their time is spent here
        return row[0] * column[0]
    total = 0.0
    for one, other in zip(row, column, strict=True):
        total += one * other
    return total


class Mode:
    """The circuit with dimmer, bridge, LED and clamp each in one state: one linear system.

    What is asked of it is a sum of the capacitors' volts, a sine and a constant, kept as constant,
    sine, cosine and the weight of each decay: `line_amps` along the way that it takes, `led_amps`,
    `terminal_volts`, `capacitor_volts`, and in `ends` whatever ends the mode when it rises above
    zero, with the mode that comes after.
    """

    def __init__(self, circuit, on, way, lit, clamped):
        c = circuit
        self.on, self.way, self.clamped = on, way, clamped
        stores, blocked = c.smoothing > 0.0, c.suppression > 0.0 and not on
        # What the dropper sees: a share of the mains behind some ohms, less its capacitor's share.
        share, behind, feed = float(on), 0.0, 0.0
        if blocked:
            feed = 1.0 / (c.heater + c.suppression_ohms)
            share = 1.0 - c.suppression_ohms * feed
            behind = share * c.suppression_ohms
        elif not on and c.heater < inf:
            behind = c.heater
        drops, through = c.ways[way] if way else (0.0, False)
        drops += (c.clamp if clamped else 0.0 if stores else c.led_volts) * through
        soft = through and not clamped
        ohms = behind + c.surge + c.led_ohms * (soft and not stores)
        burns = lit and not clamped
        seen, held, steady, swing = [1.0], [1.0 / c.bleeder], [0.0], [0.0]
        if stores:
            seen.append(float(way * soft))
            held.append(burns / c.led_ohms)
            steady.append(burns * c.led_volts / c.led_ohms)
            swing.append(0.0)
        if c.suppression > 0.0:
            seen.append(share * blocked)
            held.append(feed if blocked else 1.0 / c.suppression_ohms)
            steady.append(0.0)
            swing.append(feed * c.crest)
        places = range(len(seen))
        pull = [[held[i] * (i == j) for j in places] for i in places]
        if way:
            for i in places:
                steady[i] -= seen[i] * way * drops / ohms
                swing[i] += seen[i] * share * c.crest / ohms
                pull[i] = [old + seen[i] * seen[j] / ohms for j, old in enumerate(pull[i])]
        self._solve(pull, steady, swing, c.roots, 2.0 * pi * c.hertz)

        unit = [1.0, *[0.0] * (len(seen) - 1)]
        self.capacitor_volts = self.sum(unit)
        self.line_amps = self.led_amps = self.terminal_volts = None
        drive = share * c.crest
        if way:
            scale = way / ohms
            self.line_amps = self.sum([-scale * e for e in seen], scale * drive, -drops / ohms)
            # The terminals stand at the mains, or at what the line leaves of it behind the dimmer.
            self.terminal_volts = 0.0, drive, 0.0, [0.0] * len(seen)
            if blocked:
                part = behind / ohms
                across = [part * each for each in seen[:-1]] + [(part - 1.0) * share]
                self.terminal_volts = self.sum(across, (1.0 - part) * drive, part * way * drops)
            elif not on:
                self.terminal_volts = self.turned(-way * behind, self.line_amps)
        behind_bridge = [0.0, 1.0, *unit[2:]]
        most = (c.clamp - c.led_volts) / c.led_ohms if c.clamp < inf and c.led_ohms else inf
        if stores and lit:
            each = [volts / c.led_ohms for volts in behind_bridge]
            self.led_amps = self.sum(each, 0.0, -c.led_volts / c.led_ohms)
        elif through and not stores:
            self.led_amps = (most, 0.0, 0.0, [0.0] * len(seen)) if clamped else self.line_amps

        slack, self.ends = _SLACK * c.crest, []
        few = _SLACK * max(c.led_volts, 1.0)
        if way:
            self.ends.append((self.turned(-1.0, self.line_amps), (on, 0, lit, clamped and stores)))
        elif on or c.has_way_when_blocked:
            for sign, (volts, loaded) in c.ways.items():
                weights = [-sign * each for each in seen]
                if stores:
                    weights[1] = -float(loaded)
                wait = volts + c.led_volts * (loaded and not stores) + slack
                self.ends.append((self.sum(weights, sign * drive, -wait), (on, sign, lit, False)))
        if stores and not clamped:
            sign = -1.0 if lit else 1.0
            each = [sign * volts for volts in behind_bridge]
            rise = self.sum(each, 0.0, -sign * c.led_volts - few)
            self.ends.append((rise, (on, way, not lit, False)))
        if through and most < inf:
            if stores and not clamped:
                rise = self.sum(behind_bridge, 0.0, -c.clamp - few)
            else:
                sign = -1.0 if clamped else 1.0
                rise = self.turned(sign, self.line_amps, -sign * most)
            self.ends.append((rise, (on, way, lit, not clamped)))

    def _solve(self, pull, steady, swing, roots, turns):
        """Find the ways in which the charges decay, each at one rate, and what drives them."""
        places = range(len(roots))
        pull = [[pull[i][j] / (roots[i] * roots[j] * turns) for j in places] for i in places]
        self.rates, rows = pull[0], [[1.0]]
        if len(roots) > 1:
            self.rates, rows = (found.T.tolist() for found in np.linalg.eigh(pull))
        # A charge that nothing can move: what drives it is zero but for rounding.
        least = 1e-14 * max(self.rates[-1], 1e-30)
        self.rates = [rate if rate > least else 0.0 for rate in self.rates]
        self.back = [[each * size for each, size in zip(row, roots, strict=True)] for row in rows]
        self.out = [[row[i] / roots[i] for row in rows] for i in places]
        self.columns, self.ways = list(zip(*self.out, strict=True)), []
        for rate, column, row in zip(self.rates, self.columns, self.back, strict=True):
            push, shake = _dot(column, steady) / turns, _dot(column, swing) / turns
            sine, cosine = shake * rate / (rate * rate + 1.0), -shake / (rate * rate + 1.0)
            moves = rate > 0.0
            self.ways.append((rate, push / rate if moves else 0.0, sine, moves * cosine, row))

    def sum(self, weights, sine=0.0, constant=0.0):
        """Return a sum of the capacitors' volts, a sine and a constant as a mode keeps it."""
        each, cosine = [_dot(weights, column) for column in self.columns], 0.0
        for weight, (_, level, on_sine, on_cosine, _) in zip(each, self.ways, strict=True):
            constant += weight * level
            sine += weight * on_sine
            cosine += weight * on_cosine
        return constant, sine, cosine, each

    def turned(self, factor, kept, more=0.0):
        """Return a kept sum times a factor, and a constant more."""
        constant, sine, cosine, weights = kept
        weights = [factor * weight for weight in weights]
        return factor * constant + more, factor * sine, factor * cosine, weights


class Stretch:
    """One mode from an angle and a state on; `end` is set when it is known."""

    __slots__ = ("end", "mode", "sizes", "start")

    def __init__(self, mode, start, state):
        self.mode, self.start, self.end = mode, start, start
        sine, cosine = sin(start), cos(start)
        self.sizes = [
            _dot(row, state) - constant - on_sine * sine - on_cosine * cosine
            for _, constant, on_sine, on_cosine, row in mode.ways
        ]

    def wave(self, kept):
        """Return one of the sums that the mode keeps, from the start of this stretch on."""
        constant, sine, cosine, weights = kept
        sizes, rates = self.sizes, self.mode.rates
        decays = [(weight * sizes[i], rates[i]) for i, weight in enumerate(weights)]
        return Wave(constant, sine, cosine, self.start, decays)

    def state(self, angle):
        """Return the capacitors' volts at an angle."""
        sine, cosine = sin(angle), cos(angle)
        ways = [
            constant + on_sine * sine + on_cosine * cosine + size * exp(rate * (self.start - angle))
            for size, (rate, constant, on_sine, on_cosine, _) in zip(
                self.sizes, self.mode.ways, strict=True
            )
        ]
        return [_dot(row, ways) for row in self.mode.out]

    def kept(self, change):
        """Return what is left at the end of a change of the state at the start."""
        passed = self.start - self.end
        ways = [_dot(row, change) * exp(rate * passed) for rate, *_, row in self.mode.ways]
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
        lit = stores and state[1] > self.led_volts + _SLACK * max(self.led_volts, 1.0)
        stretch = Stretch(self.mode(on, 0, lit, False), angle, state)
        if on or self.has_way_when_blocked:
            for rise, key in stretch.mode.ends:
                if key[1] and stretch.wave(rise).at(angle) > 0.0:
                    stretch = Stretch(self.mode(*key), angle, state)
                    break
        if stretch.mode.way and self.clamp < inf:
            full = not stores or state[1] >= self.clamp * (1.0 - _SLACK)
            for rise, key in stretch.mode.ends:
                if key[3] and full and stretch.wave(rise).at(angle) > -2.0 * _SLACK * self.crest:
                    return Stretch(self.mode(*key), angle, state)
        return stretch

    def march(self, state, schedule):
        """Return what happens over a schedule of the dimmer.

        Parameters
        ----------
        state : list of float
            Volts of the dropper's, the smoothing and the suppression capacitor, if any [V].
        schedule : list of tuple
            Start, end and whether the dimmer is on, one after the other [rad].

        Returns
        -------
        stretches : list of Stretch
            From instant to instant.
        state : list of float
            Volts at the end [V].

        Raises
        ------
        RuntimeError
            If it does not come to an end, which no circuit of these parts should do.
        """
        stretches = []
        for start, stop, on in schedule:
            stretch = self.begin(on, start, state)
            while stretch:
                end, key = stop, None
                for rise, after in stretch.mode.ends:
                    angle = first_rise(stretch.wave(rise), end)
                    if angle is not None:
                        end, key = angle, after
                stretch.end, state = end, stretch.state(end)
                stretches.append(stretch)
                if len(stretches) > _MOST_STRETCHES:
                    raise RuntimeError("The dropper switches without end; please report its parts.")
                if key and key[3] != stretch.mode.clamped and self.smoothing > 0.0:
                    state[1] = self.clamp
                stretch = Stretch(self.mode(*key), end, state) if key else None
        return stretches, state

    def steady(self, state, turned):
        """Return the stretches of the cycle that repeats.

        Parameters
        ----------
        state : list of float
            A guess of the volts at the instant at which the dimmer turns on [V].
        turned : bool
            True where half a cycle is enough: it ends where it began but for the sign of the
            alternating volts [-].

        Returns
        -------
        stretches : list of Stretch
            Over `windows`.

        Raises
        ------
        RuntimeError
            If no such cycle is found, which no circuit of these parts should do.

        Notes
        -----
        Newton's method on the state at the start. What flows does not jump at an instant, so the
        derivative is the product of the stretches' own decays, exactly.
        """
        flip = [1.0] * len(state)
        if turned:
            flip[0] = -1.0
            if self.suppression > 0.0:
                flip[-1] = -1.0
        # What flows once the dimmer is on hardly knows the state before it, so this comes close.
        first = next((place for place, window in enumerate(self.windows) if window[2]), 0)
        _, state = self.march(state, self.windows[first:])
        state, last = [f * new for f, new in zip(flip, state, strict=True)], inf
        sizes = [self.crest] * len(state)
        if self.smoothing:
            sizes[1] = max(self.led_volts, 1.0)
        for _ in range(_MOST_CYCLES):
            stretches, after = self.march(state, self.windows)
            missing = [f * new - old for f, new, old in zip(flip, after, state, strict=True)]
            far = max(abs(miss) / size for miss, size in zip(missing, sizes, strict=True))
            if far <= _CLOSE or (far <= 1e3 * _CLOSE and far >= last):
                return stretches
            # Newton; where it does not help, the circuit's own way to rest, which always ends.
            if far < 0.5 * last:
                missing = self._newton(stretches, flip, missing)
            state, last = [old + new for old, new in zip(state, missing, strict=True)], far
        raise RuntimeError("No steady cycle was found; please report the parts of this dropper.")

    def changes(self, stretches):
        """Return what is left at the end of a volt more at the start, capacitor by capacitor."""
        places = range(len(self.roots))
        changes, clamped = [[float(i == j) for j in places] for i in places], False
        for stretch in stretches:
            if self.smoothing and stretch.mode.clamped and not clamped:
                for change in changes:
                    change[1] = 0.0
            clamped = stretch.mode.clamped
            changes = [stretch.kept(change) for change in changes]
        return changes

    def _newton(self, stretches, flip, missing):
        """Return the step that brings the end of the cycle to its start, were it all linear."""
        if len(flip) == 1:
            remains = 1.0 - flip[0] * self.changes(stretches)[0][0]
            return [missing[0] / remains] if remains > 1e-9 else missing
        remains = np.eye(len(flip)) - np.array(flip)[:, None] * np.transpose(
            self.changes(stretches)
        )
        return np.linalg.lstsq(remains, missing, rcond=1e-9)[0].tolist()
