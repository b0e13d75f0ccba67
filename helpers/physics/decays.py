"""Sums of a constant, a sine and decays: what a linear circuit does between two instants.

Values, turning points, crossings and integrals of such a `Wave`, all in closed form but for the
instants, which are roots. Angles are radians. Knows no circuit.
"""

from math import cos, exp, expm1, inf, sin

_STEP = 0.8  # radians between looks at a wave; a wave turns once at most between two of them
_EARLY = (1.0, 4.0)  # looks counted in time constants of the fastest decay


class Wave:
    """A constant, a sine, a cosine, and decays that begin at the start of a stretch.

    Parameters
    ----------
    constant, sine, cosine : float
        Sizes, in the unit of what the wave stands for [V] or [A].
    start : float
        Angle from the rising zero crossing of the mains at which the decays begin [rad].
    decays : list of tuple
        Size in the same unit, and rate per radian of the mains, of each [-].

    Notes
    -----
    ``constant + sine sin(a) + cosine cos(a) + sum of size exp(-rate (a - start))``.

    Examples
    --------
    >>> round(Wave(1.0, 0.0, 0.0, 0.0, [(2.0, 1.0)]).at(1.0), 6)
    1.735759
    """

    __slots__ = ("constant", "cosine", "decays", "sine", "start")

    def __init__(self, constant, sine, cosine, start, decays):
        self.constant, self.sine, self.cosine = constant, sine, cosine
        self.start, self.decays = start, decays

    def look(self, angle):
        """Return the value at an angle, and its change per radian."""
        up, along = sin(angle), cos(angle)
        value = self.constant + self.sine * up + self.cosine * along
        slope = self.sine * along - self.cosine * up
        for size, rate in self.decays:
            left = size * exp(rate * (self.start - angle))
            value += left
            slope -= rate * left
        return value, slope

    def slope(self):
        """How fast it changes at each angle, a wave again."""
        decays = [(-rate * size, rate) for size, rate in self.decays]
        return Wave(0.0, -self.cosine, self.sine, self.start, decays)

    def at(self, angle):
        """Return the value at an angle."""
        return self.look(angle)[0]

    def area(self, low, high):
        """Return the integral between two angles."""
        value = self.constant * (high - low)
        value += self.sine * (cos(low) - cos(high)) + self.cosine * (sin(high) - sin(low))
        for size, rate in self.decays:
            left = size * exp(rate * (self.start - low))
            value += -left * expm1(rate * (low - high)) / rate if rate else left * (high - low)
        return value


class Products:
    """Integrals of products of two waves over one stretch: what all such pairs share.

    Parameters
    ----------
    low, high : float
        Ends of the stretch [rad].
    rates : sequence of float
        Rates of the decays, the same in each wave [1/rad].

    Examples
    --------
    >>> sine = Wave(0.0, 2.0, 0.0, 0.0, [])
    >>> round(Products(0.0, 3.141592653589793, []).of(sine, sine), 6)
    6.283185
    """

    def __init__(self, low, high, rates):
        up, along, to_up, to_along = sin(low), cos(low), sin(high), cos(high)
        self.width, turned = high - low, 0.25 * (sin(2.0 * high) - sin(2.0 * low))
        self.sine, self.cosine = along - to_along, to_up - up
        self.sines, self.cosines = 0.5 * self.width - turned, 0.5 * self.width + turned
        self.mixed = 0.5 * (to_up * to_up - up * up)
        self.single, self.double = [], []
        for rate in rates:
            left, scale = exp(-rate * self.width), 1.0 / (1.0 + rate * rate)
            on_sine = scale * (rate * up + along - left * (rate * to_up + to_along))
            on_cosine = scale * (rate * along - up - left * (rate * to_along - to_up))
            self.single.append((self._decay(rate), on_sine, on_cosine))
            self.double.append([self._decay(rate + other) for other in rates])

    def _decay(self, rate):
        return -expm1(-rate * self.width) / rate if rate else self.width

    def of(self, one, two):
        """Return the integral of the product of two waves that begin with the stretch."""
        total = one.constant * two.constant * self.width
        total += one.sine * two.sine * self.sines + one.cosine * two.cosine * self.cosines
        total += (one.constant * two.sine + one.sine * two.constant) * self.sine
        total += (one.constant * two.cosine + one.cosine * two.constant) * self.cosine
        total += (one.sine * two.cosine + one.cosine * two.sine) * self.mixed
        for (size, _), row, (alone, on_sine, on_cosine), (other, _) in zip(
            one.decays, self.double, self.single, two.decays, strict=True
        ):
            total += size * (two.constant * alone + two.sine * on_sine + two.cosine * on_cosine)
            total += other * (one.constant * alone + one.sine * on_sine + one.cosine * on_cosine)
            for (each, _), both in zip(two.decays, row, strict=True):
                total += size * each * both
        return total


def _crossing(wave, low, at_low, high, at_high, close=4e-16):
    """Return where a wave passes zero: Newton, halved where it would leave the two ends.

    `close` is the last step, of the angle: a turn may be off by more, for a wave is flat there.
    """
    angle = low + (high - low) * at_low / (at_low - at_high)
    for _ in range(100):
        value, slope = wave.look(angle)
        if (value > 0.0) == (at_high > 0.0):
            high = angle
        else:
            low = angle
        step = value / slope if slope else inf
        if abs(step) <= close * (1.0 + abs(angle)) or value == 0.0:
            return angle
        after = angle - step
        angle = after if low < after < high else 0.5 * (low + high)
        if high - low <= close * (1.0 + abs(high)):
            return angle
    return angle


def pieces(wave, end):
    """Yield the pieces in which a wave only rises or only falls.

    Parameters
    ----------
    wave : Wave
    end : float
        Where to stop [rad].

    Yields
    ------
    low, at_low, high, at_high : tuple of float
        Ends of a piece and the values there: all extremes are among them [rad], [V] or [A].

    Notes
    -----
    The slope is looked at every 0.8 radians and at one and four time constants of the fastest
    decay; where it changes its sign, the turning point is found.

    Examples
    --------
    >>> [round(piece[3], 6) for piece in pieces(Wave(0.0, 1.0, 0.0, 0.0, []), 1.6)]
    [0.717356, 1.0, 0.999574]
    """
    start = low = wave.start
    fastest = max([rate for size, rate in wave.decays if size], default=0.0)
    looks = [start + count / fastest for count in _EARLY if count < _STEP * fastest]
    while low + _STEP < end:
        low += _STEP
        looks.append(low)
    low = start
    at_low, slope = wave.look(low)
    for high in [*[look for look in looks if look < end], end]:
        at_high, next_slope = wave.look(high)
        if slope * next_slope < 0.0:
            turn = _crossing(wave.slope(), low, slope, high, next_slope, 1e-13)
            at_turn = wave.at(turn)
            yield low, at_low, turn, at_turn
            yield turn, at_turn, high, at_high
        else:
            yield low, at_low, high, at_high
        low, at_low, slope = high, at_high, next_slope


def highest(found):
    """Return the highest value of a wave, from its `pieces`."""
    return max([found[0][1], *[piece[3] for piece in found]])


def area_above(level, wave, found):
    """Return the integral of what a wave has above a level.

    Parameters
    ----------
    level : float
        The level, in the wave's unit [V] or [A].
    wave : Wave
    found : list of tuple
        Its `pieces` [-].

    Returns
    -------
    area : float
        Integral over the angle [V rad] or [A rad].

    Examples
    --------
    >>> half = Wave(0.0, 1.0, 0.0, 0.0, [])
    >>> round(area_above(0.5, half, list(pieces(half, 3.141592653589793))), 6)
    0.684853
    """
    total = 0.0
    wave.constant -= level
    for low, at_low, high, at_high in found:
        at_low, at_high = at_low - level, at_high - level
        if at_low < 0.0 < at_high:
            low = _crossing(wave, low, at_low, high, at_high)
        elif at_high < 0.0 < at_low:
            high = _crossing(wave, low, at_low, high, at_high)
        if at_low > 0.0 or at_high > 0.0:
            total += wave.area(low, high)
    wave.constant += level
    return total


def first_rise(wave, end):
    """Return the first angle at which a wave rises above zero.

    Parameters
    ----------
    wave : Wave
    end : float
        Where to stop looking [rad].

    Returns
    -------
    angle : float or None
        The start itself where it rises from above zero; None where it does not rise [rad].

    Examples
    --------
    >>> round(first_rise(Wave(-0.5, 1.0, 0.0, 0.0, []), 3.0), 6)
    0.523599
    """
    for low, at_low, high, at_high in pieces(wave, end):
        if at_high > 0.0:
            return low if at_low > 0.0 else _crossing(wave, low, at_low, high, at_high)
    return None
