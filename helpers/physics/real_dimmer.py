"""The dimmer as it is: drop and holding current of its switch, its capacitor, a half that fails.

What then stands across the heater, as angles, weights and volts over a cycle, and what the light
and both kinds of meter make of it. The ideal switch is in `phase_cut`. Knows no rating.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from helpers.physics import circuits, limits, mains, parts, relaxing
from helpers.physics.phase_cut import NO_DIMMER
from helpers.physics.relaxing import TURN
from helpers.physics.signals import Signal

#: Drop of a triac or of two transistors in a row while they conduct: common practice, no source.
SWITCH_VOLTS = 1.2
FAILURES = ("none", "half wave", "other half wave", "short")
_AT, _OF = np.polynomial.legendre.leggauss(60)
_AT, _OF = 0.5 * (_AT + 1.0), 0.5 * _OF  # on 0 to 1, for each piece of a half-cycle


@dataclass(frozen=True)
class Switch:
    """The switch of a dimmer, the capacitor beside it, and what has failed."""

    volts: float = SWITCH_VOLTS
    """Drop while it conducts [V]."""
    holding_amps: float = 0.0
    """Below this current of the heater it lets go; a triac has some milliamps [A]."""
    farads: float = 0.0
    """Capacitor across it; zero for none [F]."""
    failure: str = "none"
    """One of `FAILURES`: which half it still passes, or that it passes all [-]."""

    def __post_init__(self):
        limits.not_negative(self.volts, "volts", "V")
        limits.not_negative(self.holding_amps, "holding_amps", "A", "Milliamps? Divide by 1000.")
        limits.not_negative(self.farads, "farads", "F", "Nanofarads? Multiply by 1e-9.")
        limits.one_of(self.failure, "failure", FAILURES)


class Wave(NamedTuple):
    """Volts across the heater at angles of a cycle, and the share of the cycle of each."""

    degrees: float
    volts: float
    shares: float


def wave(supply, dimmer, switch, heater_ohms):
    """Return what a real switch leaves across the heater over one cycle.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    switch : Switch
        What it is made of, and what has failed.
    heater_ohms : float or array
        The heater [ohm].

    Returns
    -------
    wave : Wave
        Arrays with one more axis, over the angles [deg], [V], [-].

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    While the switch conducts: the sine less its drop. It lets go where the heater's current falls
    to the holding current, and does not hold at all where that is never passed. While it does not
    conduct, the capacitor drives the heater: a sine and a decaying exponential, from the volts that
    the switch had. The indicator, of milliamps at most, is left out of the heater's current.

    References
    ----------
    Kirchhoff's laws, derived here; compared with adaptive integration in the tests.

    Examples
    --------
    >>> from helpers.physics.phase_cut import Dimmer
    >>> cut = wave(mains.Supply(230.0, 50.0), Dimmer("leading", 143.0), Switch(), 588.0)
    >>> round(float(np.sum(cut.shares)), 9)
    1.0
    """
    heater = limits.positive(heater_ohms, "heater_ohms", "ohm")
    if switch.failure == "short":
        dimmer, switch = NO_DIMMER, Switch(0.0)
    crest = mains.peak(supply.volts_rms)
    opens = np.arcsin(np.minimum(switch.volts / crest, 1.0))
    held = (switch.volts + switch.holding_amps * heater) / crest
    shuts = np.pi - np.arcsin(np.minimum(held, 1.0))
    if dimmer.edge == "leading":
        opens = np.maximum(opens, np.radians(dimmer.angle_degrees))
    elif dimmer.edge == "trailing":
        shuts = np.minimum(shuts, np.radians(dimmer.angle_degrees))
    shuts = np.where(held < 1.0, np.maximum(shuts, opens), opens)
    alike = switch.failure in ("none", "short")
    again = opens + (np.pi if alike else TURN)
    crest, heater, opens, shuts, again = (
        each[..., None] for each in np.broadcast_arrays(crest, heater, opens, shuts, again)
    )

    def piece(low, high, volts_at):
        angles = low + (high - low) * _AT
        return angles, volts_at(angles), (high - low) * _OF

    def conducts(angles):
        return crest * np.sin(angles) - switch.volts

    # Points of no width, so that the peak is not missed.
    ends = np.concatenate([opens, np.clip(0.5 * np.pi, opens, shuts), shuts], -1)
    pieces = [(ends, conducts(ends) * (shuts > opens), 0.0 * ends), piece(opens, shuts, conducts)]
    if switch.farads:
        rate = 1.0 / (heater * TURN * supply.hertz * switch.farads)
        mode = relaxing.Mode(crest, rate, 0.0)
        start = np.where(shuts > opens, conducts(shuts), relaxing.steady(mode, shuts))
        settled = np.minimum(shuts + 8.0 / rate, again)
        middle = 0.5 * (settled + again)
        pieces += [
            piece(low, high, lambda a: relaxing.at(mode, a, shuts, start)[0])
            for low, high in ((shuts, settled), (settled, middle), (middle, again))
        ]
    else:
        pieces.append((0.5 * (shuts + again), 0.0 * shuts, again - shuts))
    if alike:
        pieces += [(angles + np.pi, -volts, widths) for angles, volts, widths in pieces]
    elif switch.failure == "other half wave":
        pieces = [(angles + np.pi, -volts, widths) for angles, volts, widths in pieces]
    angles, volts, widths = (np.concatenate(each, -1) for each in zip(*pieces, strict=True))
    return Wave(np.degrees(angles), volts, widths / TURN)


def signal(wave):
    """Return the signal of a sampled wave, for `meters`.

    Parameters
    ----------
    wave : Wave
        From `wave`.

    Returns
    -------
    signal : signals.Signal
        Floats or arrays [V].

    Notes
    -----
    Sums of Gauss and Legendre; where the wave changes sign within a piece, right to some 1e-5.

    References
    ----------
    Definitions.

    Examples
    --------
    >>> from helpers.physics.phase_cut import Dimmer
    >>> ideal = wave(mains.Supply(100.0, 50.0), Dimmer("leading", 90.0), Switch(0.0), 588.0)
    >>> round(signal(ideal).rms, 3)
    70.711
    """
    volts, shares = wave.volts, wave.shares
    mean = (shares * volts).sum(-1)
    return Signal(*map(limits.plain, (
        mean, (shares * abs(volts)).sum(-1), (shares * abs(volts - mean[..., None])).sum(-1),
        np.sqrt((shares * volts * volts).sum(-1)), abs(volts).max(-1),
    )))  # fmt: skip


def light(circuit, wave, *, ohms, **laws_of):
    """Return the mean current of all LEDs of a circuit on a sampled wave.

    Parameters
    ----------
    circuit : str or circuits.Circuit
        A key of `circuits.CIRCUITS` [-].
    wave : Wave
        From `wave`.
    ohms : float
        Series resistance [ohm].
    **laws_of
        Drops and real parts, as for `circuits.laws`.

    Returns
    -------
    amps : float or ndarray
        What makes light [A].

    Raises
    ------
    ValueError
        As `circuits.laws`, or if the resistance is not above zero.

    References
    ----------
    Kirchhoff's voltage law at each angle.

    Examples
    --------
    >>> from helpers.physics.phase_cut import Dimmer
    >>> ideal = wave(mains.Supply(100.0, 50.0), Dimmer("leading", 90.0), Switch(0.0), 588.0)
    >>> f"{light('bridge', ideal, ohms=47e3) * 1e3:.2f} mA"
    '0.92 mA'
    """
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    laws, wiring = circuits.laws(circuit, **laws_of), circuits.named(circuit).sound
    total = 0.0
    for way, push in ((wiring.forward, wave.volts), (wiring.backward, -wave.volts)):
        if any(name in circuits.LEDS for name in way or ()):
            chain = [parts.Part(ohms=ohms), *(laws[name] for name in way)]
            total = total + (wave.shares * parts.amps_through(chain, push)).sum(-1)
    return limits.plain(total)
