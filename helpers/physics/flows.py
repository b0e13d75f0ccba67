"""The current of one half-cycle, summed over a cycle: behind constant drops, and behind real parts.

Both kinds of flow answer the same questions, so that nobody above asks which law a part follows.
Behind constant drops they are the closed forms of `pulses`. Behind real parts the current is taken
in layers: the sine stands above ``volts(amps)`` for a width that is known in closed form, so only
the crest is solved for, and everything else is an integral over the current of explicit terms.
Knows no names of parts.
"""

from functools import cached_property

import numpy as np

from helpers.physics import harmonics, pulses
from helpers.physics.parts import Part, amps_through

_TURN = 2.0 * np.pi
_LAYERS = 28  # of each Gauss-Legendre sum: with these, the energy balances to 1e-9 on the mains


class NoFlow:
    """A half-cycle in which nothing flows."""

    mean = square = peak = delivered = 0.0

    def mean_above(self, _amps):
        """Nothing, above any level [A]."""
        return 0.0


class Flow:
    """A half-cycle behind constant drops; what is not said to be else is a mean over the cycle."""

    def __init__(self, crest, window, chain):
        self.crest, self.window, self.chain = crest, window, chain
        self.volts = sum(part.volts for part in chain)
        self.amps = crest / sum(part.ohms for part in chain)

    @cached_property
    def _pulse(self):
        return pulses.pulse(self.volts / self.crest, self.window)

    @cached_property
    def mean(self):
        """Current [A]."""
        return self.amps / _TURN * pulses.area(self._pulse)

    @cached_property
    def square(self):
        """Squared current [A2]."""
        return self.amps * (self.amps / _TURN) * pulses.square_area(self._pulse)

    @cached_property
    def peak(self):
        """Crest of the current [A]."""
        return self.amps * pulses.height(self.volts / self.crest, self.window)

    @property
    def delivered(self):
        """Power that the supply gives [W]."""
        return self.crest * self.amps / _TURN * pulses.delivered_area(self._pulse)

    @property
    def width(self):
        """Angle in which current flows [rad]."""
        return self._pulse.width

    def width_above(self, amps):
        """Angle in which the current is above a level [rad]."""
        level = np.minimum(self._pulse.threshold + amps / self.amps, 1.0)
        return np.where(self.width > 0.0, pulses.width(level, self.window), 0.0)

    def mean_above(self, amps):
        """What lies above a level [A]."""
        level = self._pulse.threshold + amps / self.amps
        return self.amps / _TURN * pulses.area(pulses.pulse(level, self.window))

    def watts_in(self, part):
        """Power in one of the parts, by its own law [W]."""
        return part.volts * self.mean + part.ohms * self.square

    def harmonic(self, order):
        """Current times cosine and sine of once or twice the angle [A]."""
        find = {1: harmonics.first_harmonic, 2: harmonics.second_harmonic}[order]
        cosine, sine = (self.amps / _TURN * part for part in find(self._pulse))
        start, cos_start = self._pulse.threshold, self._pulse.cos_start
        for _ in range(order):
            cosine, sine = cosine * cos_start - sine * start, cosine * start + sine * cos_start
        return cosine, sine


class LayeredFlow(Flow):
    """A half-cycle behind parts of which one at least is a junction."""

    def __init__(self, crest, window, chain):
        self.crest, self.window = _column(crest), _column(window)
        self.given, self.chain = chain, [_columns(part) for part in chain]

    @cached_property
    def _marks(self):
        """Current at the end of the window and at the crest [A]."""
        edge = np.sin(np.maximum(self.window, 0.5 * np.pi))
        crest = np.sin(np.minimum(self.window, 0.5 * np.pi))
        at_crest = amps_through(self.chain, self.crest * crest)
        return np.where(edge < 1.0, amps_through(self.chain, self.crest * edge), at_crest), at_crest

    def _layers(self, low):
        """Currents from a level to the crest, and the weight of each."""
        edge, crest = (np.maximum(mark, low) for mark in self._marks)
        nodes = np.concatenate([low + (edge - low) * _PLACES, edge + (crest - edge) * _PLACES], -1)
        weights = np.concatenate([(edge - low) * _WEIGHTS, (crest - edge) * _WEIGHTS], -1)
        return nodes, weights / _TURN

    @cached_property
    def _all(self):
        """Currents and their weights; sine and cosine of where each layer starts, and its width."""
        amps, weights = self._layers(np.zeros(np.shape(self._marks[1])))
        self._drops = [part.volts_at(amps) for part in self.chain]
        sine = np.minimum(sum(self._drops) / self.crest, 1.0)
        return amps, weights, sine, np.sqrt((1.0 - sine) * (1.0 + sine)), self._width(sine)

    def _sine(self, amps):
        return np.minimum(sum(part.volts_at(amps) for part in self.chain) / self.crest, 1.0)

    def _width(self, sine):
        return pulses.width(sine, self.window)

    @cached_property
    def _end(self):
        """Sine and cosine of where each layer ends: at the window or where the sine falls."""
        _, _, sine, cosine, _ = self._all
        by_window = np.cos(self.window) > -cosine
        end_sine = np.where(by_window, np.sin(self.window), sine)
        return end_sine, np.where(by_window, np.cos(self.window), -cosine)

    @cached_property
    def mean(self):
        """Current [A]."""
        _, weights, *_, widths = self._all
        return (weights * widths).sum(-1)

    @cached_property
    def square(self):
        """Squared current [A2]."""
        amps, weights, *_, widths = self._all
        return (weights * 2.0 * amps * widths).sum(-1)

    @cached_property
    def peak(self):
        """Crest of the current [A]."""
        return self._marks[1][..., 0]

    @property
    def delivered(self):
        """Power that the supply gives [W]."""
        _, weights, _, cosine, _ = self._all
        return (self.crest * weights * (cosine - self._end[1])).sum(-1)

    @property
    def width(self):
        """Angle in which current flows [rad]."""
        return self.width_above(np.zeros(np.shape(self.peak)))

    def width_above(self, amps):
        """Angle in which the current is above a level [rad]."""
        return self._width(self._sine(_column(amps)))[..., 0]

    def mean_above(self, amps):
        """What lies above a level [A]."""
        nodes, weights = self._layers(_column(amps))
        return (weights * self._width(self._sine(nodes))).sum(-1)

    def watts_in(self, part):
        """Power in one of the parts, by its own law [W]."""
        amps, weights, *_, widths = self._all
        place = next(i for i, each in enumerate(self.given) if each is part)
        rises = self._drops[place] + amps * self.chain[place].slope_at(amps)
        return (weights * rises * widths).sum(-1)

    def harmonic(self, order):
        """Current times cosine and sine of once or twice the angle [A]."""
        _, weights, *start, _ = self._all
        (sine, cosine), (end_sine, end_cosine) = start, self._end
        if order == 1:
            return (weights * (end_sine - sine)).sum(-1), (weights * (cosine - end_cosine)).sum(-1)
        return (
            (weights * (end_sine * end_cosine - sine * cosine)).sum(-1),
            (weights * (end_sine**2 - sine**2)).sum(-1),
        )


def flow(crest, window, chain):
    """Return the flow of one half-cycle through a chain of parts.

    Parameters
    ----------
    crest : float or array
        Peak of the supply [V].
    window : float or array
        What the dimmer lets through of a half-cycle [rad].
    chain : sequence of parts.Part or None
        The dropper and all else on the way; None where it is blocked [-].

    Returns
    -------
    flow : Flow, LayeredFlow or NoFlow

    Notes
    -----
    In layers: ``mean(f(i)) = integral of f'(amps) * width(amps) / (2 pi)``.

    References
    ----------
    Derived here; compared with adaptive quadrature in the tests.

    Examples
    --------
    >>> round(float(flow(325.0, np.pi, [Part(ohms=100e3)]).mean * 1e3), 4)
    1.0345
    """
    if chain is None:
        return NoFlow()
    kind = LayeredFlow if any(part.is_junction for part in chain) else Flow
    return kind(crest, window, chain)


def _column(value):
    return np.asarray(value, dtype=float)[..., None]


def _columns(part):
    return Part(*(_column(value) if isinstance(value, np.ndarray) else value for value in part))


def _places_and_weights():
    """Nodes on 0 to 1, drawn towards both ends, where widths change like a root or a logarithm."""
    at, weights = np.polynomial.legendre.leggauss(_LAYERS)
    at = 0.5 * (at + 1.0)
    places = at**6 * (84.0 - 216.0 * at + 189.0 * at**2 - 56.0 * at**3)
    return places, weights * 252.0 * at**5 * (1.0 - at) ** 3


_PLACES, _WEIGHTS = _places_and_weights()
