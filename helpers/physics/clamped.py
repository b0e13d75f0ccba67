"""An off dimmer with a broken heating element and a series diode behind it: a charged capacitor.

The dimmer's capacitor charges to the crest and shifts the mains, so that the terminals of the pot
swing to nearly twice the crest while the LED is nearly or wholly dark. What anything else between
the terminals does to that is worked out too. Constant drops. Knows no meter.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import limits, relaxing
from helpers.physics.off_states import load_of, past_a_capacitor
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
    given = supply, farads, snubber_ohms, dropper_ohms, bleeder_ohms
    found = past_a_capacitor("series_diode", *given, **drop_volts)
    load, shape = load_of("series_diode", *given, **drop_volts)
    blocked = _blocked(load)
    bottom = relaxing.turn(blocked, -1.0)

    def below(level):
        """Twice the mean of what lies below a level that only the blocking mode passes."""

        def passes(angle):
            return relaxing.less(level, relaxing.at(off, angle, blocked.start, blocked.volts))

        falls = relaxing.root(passes, blocked.start, bottom)
        rises = relaxing.root(passes, bottom, blocked.stop, -1.0)
        under = relaxing.Stretch(off, falls, rises, level)
        return 2.0 / TURN * (level * (rises - falls) - relaxing.areas(under)[0])

    off, mean = blocked.mode, np.ravel(found.volts_mean)
    size, deviation = (
        limits.as_given(value.reshape(shape)) for value in (mean + below(0.0 * mean), below(mean))
    )
    lowest, highest = found.volts_lowest, found.volts_highest
    peak = limits.as_given(np.maximum(highest, -lowest))
    signal = Signal(found.volts_mean, size, deviation, found.volts_rms, peak)
    backward = limits.as_given(np.maximum(-lowest, 0.0))
    return Clamped(lowest, highest, signal, found.led_amps_mean, found.led_share, backward)


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

    Examples
    --------
    >>> from helpers.physics import mains
    >>> american = mains.Supply(120.0, 60.0)
    >>> volts_at([90.0, 270.0], american, 100e-9, 100.0, 100e3).round(1).tolist()
    [2.7, -336.7]
    """
    angles = np.radians(limits.finite(degrees, "degrees", "deg"))
    load, _ = load_of("series_diode", *given, **drop_volts)
    blocked, (_, on, _) = _blocked(load), relaxing.modes(load)
    after = blocked.start + np.mod(angles - blocked.start, TURN)
    return np.where(
        after < blocked.stop,
        relaxing.at(blocked.mode, after, blocked.start, blocked.volts)[0],
        relaxing.at(on, np.maximum(after, blocked.stop), blocked.stop, load.forward)[0],
    )


def _blocked(load):
    """The stretch in which nothing flows through the LED: the whole cycle where it stays dark.

    Without a bleeder the charged capacitor shifts the mains.
    """
    off, *_ = relaxing.modes(load)
    bled = load.shunt > 0.0
    top = np.arctan2(1.0, off.rate)
    shift = np.where(bled, 0.0, np.maximum(load.crest - load.forward, 0.0))
    found = [top, top + TURN, relaxing.steady(off, top) - shift]
    lit = bled & (off.crest > load.forward * np.hypot(1.0, off.rate))
    if lit.any():
        _, starts, stops, drops = relaxing.cycle(Load(*(field[lit] for field in load)))[2]
        for values, value in zip(found, (stops, starts + TURN, drops), strict=True):
            values[lit] = value
    return relaxing.Stretch(off, *found)
