"""An off dimmer with a broken heating element and a series diode behind it: a charged capacitor.

The dimmer's capacitor charges to the crest and shifts the mains, so that the terminals of the pot
swing to nearly twice the crest while the LED is nearly or wholly dark. What anything else between
the terminals does to that is worked out too. Constant drops. Knows no meter.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import limits, relaxing
from helpers.physics.off_states import load_of
from helpers.physics.operating_point import operating_point
from helpers.physics.relaxing import TURN, Load
from helpers.physics.signals import Signal


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
    supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms=np.inf, **drop_volts
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
    **drop_volts : float or array
        led_volts and diode_volts, as for `circuits.fill_in` [V].

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
    load, shape = load_of(
        "series_diode", supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms, **drop_volts
    )
    results = _dark(load)
    lit = _lights(load)
    if lit.any():
        for values, found in zip(results, _lit(Load(*(f[lit] for f in load))), strict=True):
            values[lit] = found
    *numbers, amps = (limits.plain(values.reshape(shape)) for values in results)
    full = operating_point("series_diode", supply, ohms=dropper_ohms, **drop_volts).led_amps_mean
    lowest, highest, mean, size, deviation, rms = numbers
    signal = Signal(mean, size, deviation, rms, limits.plain(np.maximum(highest, -lowest)))
    share = limits.plain(amps / np.where(full > 0.0, full, 1.0))
    return Clamped(lowest, highest, signal, amps, share, limits.plain(np.maximum(-lowest, 0.0)))


def volts_at(degrees, *given, **drop_volts):
    """Return the voltage between the terminals at angles of the mains, for one circuit.

    Parameters
    ----------
    degrees : array
        Angles from the rising zero crossing of the mains [deg].
    *given, **drop_volts
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
    load, _ = load_of("series_diode", *given, **drop_volts)
    off, *_ = relaxing.modes(load)
    if not _lights(load).item():
        return relaxing.steady(off, angles) - _shift(load)
    on, starts, stops, _ = relaxing.cycle(load)[2]
    after = starts + np.mod(angles - starts, TURN)
    return np.where(
        after < stops,
        relaxing.at(on, after, starts, load.forward)[0],
        relaxing.at(off, after, stops, load.forward)[0],
    )


def _lights(load):
    off, *_ = relaxing.modes(load)
    return (load.shunt > 0.0) & (off.crest > load.forward * np.hypot(1.0, off.rate))


def _shift(load):
    """How far the charged capacitor shifts the mains: it can only without a bleeder."""
    spare = np.maximum(load.crest - load.forward, 0.0)
    return np.where(load.shunt > 0.0, 0.0, spare)


def _dark(load):
    """Lowest, highest, mean, mean size, mean deviation, rms, LED mean: a shifted sine."""
    off, *_ = relaxing.modes(load)
    shift, crest = _shift(load), off.crest / np.hypot(1.0, off.rate)
    at = np.arcsin(np.clip(shift / crest, -1.0, 1.0))
    above_zero = crest / np.pi * np.cos(at) - shift * (0.5 - at / np.pi)
    return [
        -crest - shift, crest - shift, -shift, 2.0 * above_zero + shift, 2.0 / np.pi * crest,
        np.hypot(crest / np.sqrt(2.0), shift), 0.0 * crest,
    ]  # fmt: skip


def _lit(load):
    """The same where the LED conducts once a cycle."""
    off, *_ = relaxing.modes(load)
    drops, lit = load.forward, relaxing.cycle(load)[2]
    _, starts, stops, _ = lit
    again = starts + TURN
    blocked = relaxing.Stretch(off, stops, again, drops)
    bottom = relaxing.turn(blocked, -1.0)

    def below(level):
        """Twice the mean of what lies below a level that only the blocking mode passes."""

        def passes(angle):
            return relaxing.less(level, relaxing.at(off, angle, stops, drops))

        falls = relaxing.root(passes, stops, bottom)
        rises = relaxing.root(passes, bottom, again, -1.0)
        under = relaxing.Stretch(off, falls, rises, level)
        return 2.0 / TURN * (level * (rises - falls) - relaxing.areas(under)[0])

    lit_areas = relaxing.areas(lit)
    mean, square = (
        sum(pair) / TURN for pair in zip(lit_areas, relaxing.areas(blocked), strict=True)
    )
    return (
        relaxing.at(off, bottom, stops, drops)[0], relaxing.extreme(lit, 1.0), mean,
        mean + below(0.0 * mean), below(mean), np.sqrt(square),
        load.conductance / TURN * (lit_areas[0] - drops * (stops - starts)),
    )  # fmt: skip
