"""An off dimmer with a broken heating element and a series diode behind it: a charged capacitor.

The dimmer's capacitor charges to the crest and shifts the mains, so that the terminals of the pot
swing to nearly twice the crest while the LED is nearly or wholly dark. What anything else between
the terminals does to that is worked out too. Constant drops. Knows no meter.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from helpers.physics import circuits, limits, mains
from helpers.physics.operating_point import operating_point
from helpers.physics.signals import Signal

_TURN = 2.0 * np.pi
_MOST_STEPS = 60  # halving alone needs fewer
_CLOSE = 1e-13
_NEAR = 1e-10  # Newton has then gone twice as far; its own noise is greater than _CLOSE


@dataclass(frozen=True)
class Clamped:
    """What stands between the pot's terminals; every field is a float or an array."""

    volts_lowest: float
    """Most negative voltage of the dimmed wire against the other [V]."""
    volts_highest: float
    """Most positive voltage [V]."""
    signal: Signal
    """Mean, rms and the others, for `meters` [V]."""
    led_amps_mean: float
    """Mean current of the LED: what makes light [A]."""
    led_share: float
    """The same against the dimmer at full [-]."""
    diode_reverse_volts: float
    """What the series diode holds off, if it blocks better than the LED does [V]."""

    @property
    def volts_rms(self):
        """Rms voltage, its steady part included [V]."""
        return self.signal.rms


def off_state(
    supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms=np.inf, *,
    led_volts=2.0, diode_volts=circuits.SILICON_VOLTS,
):  # fmt: skip
    """Return what an off dimmer leaves on a pilot light with a series diode.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    farads : float or array
        Capacitor across the dimmer's switch [F].
    snubber_ohms : float or array
        Resistance in series with it, zero allowed [ohm].
    dropper_ohms : float or array
        Dropper of the pilot light, in series with its LED and diode [ohm].
    bleeder_ohms : float or array
        All else between the terminals: a bleeder, a meter, a sound element; infinite for nothing
        at all [ohm].
    led_volts, diode_volts : float or array
        Forward drops [V].

    Returns
    -------
    state : Clamped
        Floats, or arrays of the broadcast shape.

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    Crest V, drops D. With nothing else between the terminals no charge can leave the capacitor
    again, so in the end no current flows: the terminals follow ``V sin(angle) - (V - D)``, from
    ``D - 2 V`` to D. With a bleeder the LED conducts once a cycle, while the terminals stand
    above D; between the two instants the voltage is a sine and a decaying exponential, in closed
    form, and the instants follow from the cycle closing on itself. Real diodes leak and real LEDs
    glow below their drop, so a trace of light may be left where this says none.

    References
    ----------
    Kirchhoff's laws, derived here; the tests compare with adaptive integration through events.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> state = off_state(mains.Supply(230.0, 50.0), 100e-9, 100.0, 100e3)
    >>> round(state.volts_lowest), round(state.volts_rms), state.led_amps_mean
    (-648, 396, 0.0)
    >>> bled = off_state(mains.Supply(230.0, 50.0), 100e-9, 100.0, 100e3, 1e6)
    >>> round(bled.volts_lowest), round(bled.volts_rms), round(bled.led_share, 3)
    (-531, 309, 0.203)
    """
    circuit, shape = _circuit(
        supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms, led_volts, diode_volts
    )
    results = _dark(circuit)
    lit = _lights(circuit)
    if lit.any():
        for values, found in zip(results, _lit(_Circuit(*(f[lit] for f in circuit))), strict=True):
            values[lit] = found
    *numbers, amps = (limits.plain(values.reshape(shape)) for values in results)
    full = operating_point(
        "series_diode", supply, ohms=dropper_ohms, led_volts=led_volts, diode_volts=diode_volts
    ).led_amps_mean
    lowest, highest, mean, size, deviation, rms = numbers
    signal = Signal(mean, size, deviation, rms, limits.plain(np.maximum(highest, -lowest)))
    share = limits.plain(amps / np.where(full > 0.0, full, 1.0))
    return Clamped(lowest, highest, signal, amps, share, limits.plain(np.maximum(-lowest, 0.0)))


def volts_at(
    degrees, supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms=np.inf, *,
    led_volts=2.0, diode_volts=circuits.SILICON_VOLTS,
):  # fmt: skip
    """Return the voltage between the terminals at angles of the mains, for one circuit.

    Parameters
    ----------
    degrees : array
        Angles from the rising zero crossing of the mains [deg].
    supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms, led_volts, diode_volts
        As for `off_state`, one number each.

    Returns
    -------
    volts : ndarray
        Voltage of the dimmed wire against the other [V].

    Raises
    ------
    ValueError
        As `off_state`.

    Notes
    -----
    As `off_state`.

    References
    ----------
    As `off_state`.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> american = mains.Supply(120.0, 60.0)
    >>> volts_at([90.0, 270.0], american, 100e-9, 100.0, 100e3).round(1).tolist()
    [2.7, -336.7]
    """
    angles = np.radians(limits.finite(degrees, "degrees", "deg"))
    circuit, _ = _circuit(
        supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms, led_volts, diode_volts
    )
    off, on = _modes(circuit)
    if not _lights(circuit).item():
        return _steady(off, angles) - _shift(circuit)
    starts, stops = _instants(off, on, circuit.drops)
    after = starts + np.mod(angles - starts, _TURN)
    return np.where(
        after < stops,
        _at(on, after, starts, circuit.drops)[0],
        _at(off, after, stops, circuit.drops)[0],
    )


class _Circuit(NamedTuple):
    """One number each per case, in flat arrays."""

    crest: float
    conductance: float
    """Of the dropper [1/ohm]."""
    bleeder: float
    """Conductance of all else [1/ohm]."""
    snubber_ohms: float
    susceptance: float
    """Of the capacitor [1/ohm]."""
    drops: float


class _Mode(NamedTuple):
    """The voltage v between two instants: dv/dangle = crest cos(angle) - rate (v - level)."""

    crest: float
    rate: float
    level: float


def _circuit(supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms, led_volts, diode_volts):
    farads = limits.positive(farads, "farads", "F", "Nanofarads? Multiply by 1e-9.")
    dropper = limits.positive(dropper_ohms, "dropper_ohms", "ohm", "An LED needs its dropper.")
    missing = np.asarray(bleeder_ohms) == np.inf
    slip = "Give inf for a bleeder that is not there."
    bleeder = limits.positive(np.where(missing, 1.0, bleeder_ohms), "bleeder_ohms", "ohm", slip)
    values = (
        mains.peak(supply.volts_rms),
        1.0 / dropper,
        np.where(missing, 0.0, 1.0 / bleeder),
        limits.not_negative(snubber_ohms, "snubber_ohms", "ohm"),
        _TURN * supply.hertz * farads,
        limits.not_negative(led_volts, "led_volts", "V")
        + limits.not_negative(diode_volts, "diode_volts", "V"),
    )
    together = np.broadcast_arrays(*values)
    return _Circuit(*(each.astype(float).ravel() for each in together)), together[0].shape


def _modes(circuit):
    """The two modes: diode blocking, diode conducting."""

    def mode(conductance, level):
        share = 1.0 / (1.0 + circuit.snubber_ohms * conductance)
        return _Mode(share * circuit.crest, share * conductance / circuit.susceptance, level)

    both = circuit.bleeder + circuit.conductance
    level = circuit.conductance * circuit.drops / both
    return mode(circuit.bleeder, 0.0), mode(both, level)


def _lights(circuit):
    off, _ = _modes(circuit)
    return (circuit.bleeder > 0.0) & (off.crest > circuit.drops * np.hypot(1.0, off.rate))


def _shift(circuit):
    """How far the charged capacitor shifts the mains: it can only without a bleeder."""
    spare = np.maximum(circuit.crest - circuit.drops, 0.0)
    return np.where(circuit.bleeder > 0.0, 0.0, spare)


def _dark(circuit):
    """Lowest, highest, mean, mean size, mean deviation, rms, LED mean: a shifted sine."""
    off, _ = _modes(circuit)
    shift, crest = _shift(circuit), off.crest / np.hypot(1.0, off.rate)
    at = np.arcsin(np.clip(shift / crest, -1.0, 1.0))
    above_zero = crest / np.pi * np.cos(at) - shift * (0.5 - at / np.pi)
    return [
        -crest - shift, crest - shift, -shift, 2.0 * above_zero + shift, 2.0 / np.pi * crest,
        np.hypot(crest / np.sqrt(2.0), shift), 0.0 * crest,
    ]  # fmt: skip


def _lit(circuit):
    """The same where the LED conducts once a cycle."""
    off, on = _modes(circuit)
    drops = circuit.drops
    starts, stops = _instants(off, on, drops)
    again = starts + _TURN

    def below(level):
        """Twice the mean of what lies below a level that only the blocking mode passes."""
        falls = _root(lambda a: _less(level, _at(off, a, stops, drops)), stops, bottom)
        rises = _root(lambda a: _less(level, _at(off, a, stops, drops)), bottom, again, -1.0)
        return 2.0 / _TURN * (level * (rises - falls) - _areas(off, falls, rises, level)[0])

    bottom = _root(lambda a: _turning(off, a, stops, drops), stops, again, -1.0)
    top = _root(lambda a: _turning(on, a, starts, drops), starts, stops)
    lit, blocked = _areas(on, starts, stops, drops), _areas(off, stops, again, drops)
    mean, square = ((a + b) / _TURN for a, b in zip(lit, blocked, strict=True))
    return (
        _at(off, bottom, stops, drops)[0], _at(on, top, starts, drops)[0], mean,
        mean + below(0.0 * mean), below(mean), np.sqrt(square),
        circuit.conductance / _TURN * (lit[0] - drops * (stops - starts)),
    )  # fmt: skip


def _instants(off, on, drops):
    """The angles at which the LED starts and stops conducting, once the cycle repeats itself.

    The voltage can rise through the drops only within `reach` of the mains' own zero crossing, and
    fall through them only outside. The start of that stretch is where the cycle is closed.
    """
    reach = np.arccos(np.minimum(off.rate * drops / off.crest, 1.0))

    def follow(volts):
        starts = _root(lambda a: _less(drops, _at(off, a, -reach, volts)), -reach, reach, -1.0)
        there = _at(off, starts, -reach, volts)[0]
        stops = _root(lambda a: _less(drops, _at(on, a, starts, there)), reach, _TURN - reach)
        return starts, stops, _at(on, stops, starts, there)[0]

    def gained(volts):
        """What a cycle adds to the voltage it began with, and how that changes with it."""
        starts, stops, there = follow(volts)
        kept = np.exp(-on.rate * (stops - starts) - off.rate * (_TURN - (stops - starts)))
        return _at(off, _TURN - reach, stops, there)[0] - volts, kept - 1.0

    starts, stops, _ = follow(_root(gained, -2.0 * off.crest - 1.0, drops, close=_NEAR))
    return starts, stops


def _steady(mode, angle):
    return (
        mode.crest * (np.sin(angle) + mode.rate * np.cos(angle)) / (1.0 + mode.rate**2) + mode.level
    )


def _at(mode, angle, start, volts):
    """Voltage at an angle, from what it is at the start, and its slope."""
    left = (volts - _steady(mode, start)) * np.exp(-mode.rate * (angle - start))
    there = _steady(mode, angle) + left
    return there, mode.crest * np.cos(angle) - mode.rate * (there - mode.level)


def _turning(mode, angle, start, volts):
    _, slope = _at(mode, angle, start, volts)
    return slope, -mode.crest * np.sin(angle) - mode.rate * slope


def _less(level, found):
    volts, slope = found
    return volts - level, slope


def _areas(mode, start, stop, volts):
    """Integrals of the voltage and of its square, as sums of complex exponentials."""
    turning = mode.crest / (mode.rate + 1j) / 2.0 * np.exp(1j * start)
    terms = (
        (turning, 1j), (turning.conj(), -1j), (mode.level, 0.0),
        (volts - _steady(mode, start), -mode.rate),
    )  # fmt: skip

    def grown(rate):
        some = np.where(rate == 0.0, 1.0, rate)
        return np.where(rate == 0.0, stop - start, np.expm1(some * (stop - start)) / some)

    once = sum(size * grown(rate) for size, rate in terms)
    twice = sum(size * other * grown(rate + more) for size, rate in terms for other, more in terms)
    return once.real, twice.real


def _root(function, low, high, sign=1.0, close=_CLOSE):
    """Where a value that falls (sign 1) or rises (-1) passes zero: Newton, kept between bounds."""
    low, high = (np.array(each, dtype=float) for each in np.broadcast_arrays(low, high))
    at = 0.5 * (low + high)
    for _ in range(_MOST_STEPS):
        value, slope = function(at)
        low, high = np.where(sign * value > 0.0, at, low), np.where(sign * value > 0.0, high, at)
        with np.errstate(divide="ignore", invalid="ignore"):
            step = at - value / slope
        after = np.where((step > low) & (step < high), step, 0.5 * (low + high))
        if np.all(np.abs(after - at) <= close * (1.0 + np.abs(at))):
            return after
        at = after
    return at
