"""One entry point for the indicator circuits behind a supply and a dimmer.

Everything that a lesson, a candidate or a bench log asks of a circuit comes from `operating_point`:
currents, power in every part, reverse voltage, conduction, flicker and energy. Every argument may
be an array. Constant drops unless real parts are given. Knows no ratings and no limits.
"""

import numpy as np

from helpers.physics import circuits, limits
from helpers.physics.one_cycle import Cycle
from helpers.physics.parts import Part
from helpers.physics.phase_cut import NO_DIMMER

# Points worked on at a time, so that a few dozen arrays of them stay in the processor's cache; of
# real parts, which take many currents a point, fewer.
_CHUNK, _CHUNK_OF_REAL = 8192, 256


#: Every number that an operating point knows: the sums of a `Cycle`.
FIELDS = tuple(name for name in vars(Cycle) if not name.startswith("_") and name != "flows")


class OperatingPoint:
    """What a circuit does over one mains cycle: each method of `one_cycle.Cycle` as a number.

    A float or an array, worked out when it is first asked for.
    """

    def __init__(self, cycle, shape, size):
        self.__dict__.update(_cycle=cycle, _shape=shape, _size=size, _asked=False)

    def __dir__(self):
        return FIELDS

    def __repr__(self):
        said = ", ".join(f"{name}={getattr(self, name)!r}" for name in FIELDS)
        return f"OperatingPoint({said})"

    def __getattr__(self, name):
        if name not in FIELDS:
            raise AttributeError(f"an operating point has no {name}; it has {', '.join(FIELDS)}.")
        # One number costs itself; whoever asks for a second gets all in one pass, piece by piece.
        asked = name, *(FIELDS if self.__dict__["_asked"] else ())
        self.__dict__["_asked"] = True
        self.__dict__.update(self._work_out(asked))
        return self.__dict__[name]

    def _work_out(self, names):
        if self._shape == ():
            cycle = self._cycle(...)
            return {name: float(getattr(cycle, name)()) for name in names}
        count = int(np.prod(self._shape))
        found = {name: np.empty(count) for name in names}
        for start in range(0, count, self._size):
            piece = slice(start, start + self._size)
            cycle = self._cycle(piece)
            for name, values in found.items():
                values[piece] = getattr(cycle, name)()
        return {name: values.reshape(self._shape) for name, values in found.items()}


def operating_point(circuit, supply, dimmer=NO_DIMMER, *, ohms, resistor_side="ac", **laws_of):
    """Return everything that a circuit does on a supply behind a dimmer.

    Parameters
    ----------
    circuit : str or circuits.Circuit
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        Volts and frequency.
    dimmer : phase_cut.Dimmer
        Edge and angle.
    ohms : float or array
        Series resistance, the whole string [ohm].
    resistor_side : str
        'ac' or 'dc' side of a bridge; only the reverse voltage of the diodes depends on it [-].
    **laws_of : float or array, or parts.Part
        led_volts (2 unless given), second_led_volts (as led_volts), diode_volts (0.7) and
        breakdown_volts (5), as `circuits.fill_in` explains them [V]; or real parts as led,
        second_led and diode, as `circuits.laws` explains them.

    Returns
    -------
    point : OperatingPoint
        Floats, or arrays of the broadcast shape of all arguments.

    Raises
    ------
    ValueError
        If the circuit or the side is unknown, a drop is negative, the resistance is not above zero,
        or the LED would break down before the part beside it conducts.

    Notes
    -----
    Current flows while the voltage exceeds the drops of its half-cycle, between the angles where
    the sine passes them and where the dimmer blocks: ``(sqrt(2) V sin(angle) - drops) / ohms``.
    Means are over the whole cycle. Light follows the forward current at once.
    Constant drops are good to about 1 % on the mains: at microamps an LED drops about a quarter
    less: give a real one. A part that blocks leaks nothing here.

    References
    ----------
    Derived here from Kirchhoff's laws; the tests compare every field with adaptive quadrature.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> point = operating_point("series_diode", mains.Supply(230.0, 50.0), ohms=120e3)
    >>> f"{point.led_amps_mean * 1e3:.3f} mA mean, {point.resistor_watts:.3f} W in the resistor"
    '0.852 mA mean, 0.216 W in the resistor'
    """
    wiring = circuits.named(circuit).sound
    limits.one_of(resistor_side, "resistor_side", ("ac", "dc"))
    if resistor_side == "dc" and wiring.diode_holds:
        wiring = wiring._replace(diode_holds=circuits.MAINS)
    return of_wiring(wiring, supply, dimmer, ohms, circuits.laws(circuit, **laws_of))


def of_wiring(wiring, supply, dimmer, ohms, laws):
    """Return the operating point of one wiring: of a sound circuit, or of one with a fault.

    Parameters
    ----------
    wiring : circuits.Wiring
        The ways of the current.
    supply, dimmer, ohms
        As for `operating_point`.
    laws : dict of str to parts.Part
        What `circuits.laws` returns.

    Returns
    -------
    point : OperatingPoint

    Raises
    ------
    ValueError
        If the resistance is not above zero.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> laws, gap = circuits.laws("bridge"), circuits.named("bridge").faulty["led", "open"]
    >>> round(of_wiring(gap, mains.Supply(100.0, 50.0), NO_DIMMER, 1e5, laws).gap_volts_peak)
    141
    """
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    inputs = [
        np.sqrt(2.0) * supply.volts_rms, np.radians(dimmer.conduction_degrees), supply.hertz, ohms,
        *(value for part in laws.values() for value in part),
    ]  # fmt: skip
    shape = ()
    if any(isinstance(value, np.ndarray) for value in inputs):
        arrays = [np.asarray(value, dtype=float) for value in inputs]
        shape = np.broadcast_shapes(*(value.shape for value in arrays))
        inputs = [
            np.broadcast_to(value, shape).reshape(-1) if value.size != 1 else value.item()
            for value in arrays
        ]

    def cycle(piece):
        values = [value[piece] if isinstance(value, np.ndarray) else value for value in inputs]
        rest = iter(values[4:])
        of_parts = {name: Part(*(next(rest) for _ in Part._fields)) for name in laws}
        return Cycle(wiring, of_parts, *values[:4])

    real = any(laws[name].is_junction for way in wiring[:2] for name in way or ())
    return OperatingPoint(cycle, shape, _CHUNK_OF_REAL if real else _CHUNK)
