"""A neon lamp with its resistor on the mains and behind a dimmer: when it strikes, when it ends.

A neon lamp is dark until the voltage reaches its striking voltage, then holds a lower maintaining
voltage until the mains falls below that. So its window in each half-cycle is not symmetric, and
behind a dimmer it goes out at once where an LED fades. Knows no LED.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import limits
from helpers.physics.phase_cut import NO_DIMMER

#: Striking and maintaining voltage of a small lamp. Common practice, no source.
STRIKE_VOLTS, MAINTAIN_VOLTS = 90.0, 60.0


@dataclass(frozen=True)
class Glow:
    """What a neon lamp does over one mains cycle; every field is a float or an array."""

    lit: bool
    """Whether it strikes at all [-]."""
    amps_mean: float
    """Mean of the size of the current: what makes light [A]."""
    amps_rms: float
    """Rms current [A]."""
    amps_peak: float
    """Highest current [A]."""
    conduction_fraction: float
    """Share of the cycle in which it glows [-]."""
    resistor_watts: float
    """Mean power in the resistor [W]."""
    lamp_watts: float
    """Mean power in the lamp [W]."""
    branch_watts: float
    """Mean power of both [W]."""
    branch_watt_hours_per_day: float
    """Energy of both in 24 hours [Wh]."""
    strike_degrees: float
    """Angle at which it strikes in each half-cycle; not a number if it never does [deg]."""
    end_degrees: float
    """Angle at which it goes out again; not a number if it never strikes [deg]."""
    light_flicker_index: float
    """Light above the mean over all light; zero if dark [-]."""
    light_fundamental_hertz: float
    """Rate at which the light repeats; zero if dark [Hz]."""


def glow(
    supply, dimmer=NO_DIMMER, *, ohms, strike_volts=STRIKE_VOLTS, maintain_volts=MAINTAIN_VOLTS
):
    """Return what a neon lamp and its resistor do on a supply behind a dimmer.

    Parameters
    ----------
    supply : mains.Supply
        Volts and frequency.
    dimmer : phase_cut.Dimmer
        Edge and angle.
    ohms : float or array
        Resistor in series [ohm].
    strike_volts : float or array
        Voltage at which the lamp strikes; an old lamp needs more, see `aged` [V].
    maintain_volts : float or array
        Voltage that it holds while it glows [V].

    Returns
    -------
    glow : Glow
        Floats, or arrays of the broadcast shape of all arguments.

    Raises
    ------
    ValueError
        If a value is impossible or the maintaining voltage above the striking voltage.

    Notes
    -----
    It strikes at the first angle inside the dimmer's window at which the mains reaches the striking
    voltage, and ends where the mains falls to the maintaining voltage or the window closes; between
    them ``(Vp sin(angle) - maintain) / ohms``. Both half-cycles alike. A real lamp strikes some
    volts earlier in the light than in the dark, and may miss half-cycles near the limit.

    References
    ----------
    Derived here; compared with adaptive quadrature in the tests.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> lamp = glow(mains.Supply(230.0, 50.0), ohms=330e3)
    >>> f"{lamp.amps_mean * 1e3:.3f} mA, {lamp.strike_degrees:.1f} to {lamp.end_degrees:.1f} deg"
    '0.455 mA, 16.1 to 169.4 deg'
    """
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the lamp bursts.")
    strike = limits.positive(strike_volts, "strike_volts", "V")
    maintain = limits.positive(maintain_volts, "maintain_volts", "V")
    if np.any(np.asarray(maintain) > strike):
        raise ValueError(
            f"maintain_volts was read as {maintain} V; it must not be above strike_volts, "
            f"{strike} V. Were the two exchanged?"
        )
    crest = np.sqrt(2.0) * supply.volts_rms
    angle = np.radians(dimmer.angle_degrees)
    opens = angle if dimmer.edge == "leading" else 0.0 * angle
    closes = angle if dimmer.edge == "trailing" else np.pi + 0.0 * angle
    start = np.maximum(np.arcsin(np.minimum(strike / crest, 1.0)), opens)
    last = np.pi - np.arcsin(np.minimum(strike / crest, 1.0))
    lit = (crest >= strike) & (start <= last) & (start < closes)
    end = np.minimum(closes, np.pi - np.arcsin(np.minimum(maintain / crest, 1.0)))
    start, end = np.where(lit, start, 0.0), np.where(lit, end, 0.0)
    height, drop = crest / ohms, maintain / ohms
    mean = _area(start, end, height, drop) / np.pi
    square = (
        0.5 * height**2 * (end - start - 0.5 * (np.sin(2.0 * end) - np.sin(2.0 * start)))
        - 2.0 * height * drop * (np.cos(start) - np.cos(end))
        + drop**2 * (end - start)
    ) / np.pi
    top = np.clip(0.5 * np.pi, start, end)
    peak = lit * (height * np.sin(top) - drop)
    over = np.arcsin(np.minimum((drop + mean) / height, 1.0))
    low, high = np.clip(over, start, end), np.clip(np.pi - over, start, end)
    above = _area(low, high, height, drop + mean) / np.pi
    resistor, lamp = ohms * square, maintain * mean
    nothing = np.where(lit, 0.0, np.nan)
    found = (
        lit, mean, np.sqrt(np.maximum(square, 0.0)), peak, (end - start) / np.pi, resistor, lamp,
        resistor + lamp, 24.0 * (resistor + lamp), np.degrees(start) + nothing,
        np.degrees(end) + nothing, above / np.where(mean > 0.0, mean, 1.0),
        lit * 2.0 * supply.hertz,
    )  # fmt: skip
    return Glow(*limits.alike(*found))


def _area(start, end, height, drop):
    return height * (np.cos(start) - np.cos(end)) - drop * (end - start)


def goes_out_degrees(supply, edge, strike_volts=STRIKE_VOLTS):
    """Return the dimmer's angle beyond which a neon lamp no longer strikes.

    Parameters
    ----------
    supply : mains.Supply
        The supply, at its lowest for the worst case.
    edge : str
        'leading' or 'trailing' [-].
    strike_volts : float or array
        Voltage at which the lamp strikes [V].

    Returns
    -------
    degrees : float or ndarray
        Largest firing angle of a leading edge, or least cut-off angle of a trailing edge, at which
        it still lights; not a number where the crest never reaches the striking voltage [deg].

    Raises
    ------
    ValueError
        If the edge or a value is impossible.

    Notes
    -----
    ``180 - asin(strike / Vp)`` and ``asin(strike / Vp)``: the current plays no part. Beyond it the
    lamp is dark while the heater still gets some volts, so dark never means dead.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> round(goes_out_degrees(mains.Supply(120.0, 60.0), "leading"), 1)
    148.0
    """
    limits.one_of(edge, "edge", ("leading", "trailing"))
    share = limits.positive(strike_volts, "strike_volts", "V") / (np.sqrt(2.0) * supply.volts_rms)
    least = np.degrees(np.arcsin(np.where(np.asarray(share) <= 1.0, share, np.nan)))
    return limits.as_given(180.0 - least if edge == "leading" else least)


def aged(strike_volts=STRIKE_VOLTS, rise_percent=20.0):
    """Return the striking voltage of an old lamp.

    Parameters
    ----------
    strike_volts : float or array
        Striking voltage when new [V].
    rise_percent : float or array
        How much it has risen, 0 to 100 [%].

    Returns
    -------
    volts : float or ndarray
        Striking voltage now [V].

    Raises
    ------
    ValueError
        If a value is out of range.

    Notes
    -----
    ``strike * (1 + rise / 100)``. Electrode metal that settles on the glass makes a lamp dim and
    hard to strike; one that flickers is near its end, and behind a dimmer it goes out earlier.

    References
    ----------
    The rise of 20 %: Common practice, no source.

    Examples
    --------
    >>> aged(90.0, 20.0)
    108.0
    """
    rise = limits.percent(rise_percent, "rise_percent", 100.0)
    return limits.positive(strike_volts, "strike_volts", "V") * (1.0 + rise / 100.0)
