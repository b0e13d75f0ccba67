"""What a phase-cut dimmer leaves of the mains: leading or trailing edge, any angle.

The switch is ideal: no drop, no leakage, no holding current. Angles count from each zero crossing
in degrees. Finding the angle for a wanted result is in `phase_cut_inverse`; knows no indicator
circuit and no meter.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import limits, mains, pulses

EDGES = ("none", "leading", "trailing")


@dataclass(frozen=True)
class Dimmer:
    """A dimmer and its setting; without arguments, no dimmer at all.

    Parameters
    ----------
    edge : str
        'none', 'leading' (dark first, then on) or 'trailing' (on first, then dark) [-].
    angle_degrees : float or array
        Firing angle of a leading edge, cut-off angle of a trailing edge, 0 to 180 [deg].

    Raises
    ------
    ValueError
        If the edge is unknown or the angle out of range.

    Examples
    --------
    >>> Dimmer("leading", 60.0).conduction_degrees, Dimmer("trailing", 60.0).conduction_degrees
    (120.0, 60.0)
    """

    edge: str = "none"
    angle_degrees: float = 0.0

    def __post_init__(self):
        limits.one_of(self.edge, "edge", EDGES)
        angle = limits.between(
            self.angle_degrees, "angle_degrees", "deg", 0.0, 180.0,
            "Each half-cycle counts anew from 0 to 180 degrees.",
        )  # fmt: skip
        object.__setattr__(self, "angle_degrees", angle)

    @property
    def conduction_degrees(self):
        """Part of each half-cycle that is let through [deg]."""
        if self.edge == "trailing":
            return self.angle_degrees
        if self.edge == "leading":
            return 180.0 - self.angle_degrees
        return 180.0 + 0.0 * self.angle_degrees


NO_DIMMER = Dimmer()


@dataclass(frozen=True)
class Wave:
    """What can be said of a dimmed mains voltage; every field is a float or an array."""

    volts_rms: float
    """True rms value [V]."""
    volts_mean: float
    """Mean of the size of the voltage, both half-cycles counted [V]."""
    volts_peak: float
    """Highest size inside the window that is let through [V]."""
    conduction_fraction: float
    """Share of each half-cycle that is let through [-]."""
    power_fraction: float
    """Heat in a plain resistance against full mains [-]."""
    crest_factor: float
    """Peak over rms; infinite when nothing is let through [-]."""
    form_factor: float
    """Rms over mean; infinite when nothing is let through [-]."""
    fundamental_volts_rms: float
    """Rms of the part at line frequency [V]."""
    distortion_percent: float
    """Rms of all other parts against the fundamental; infinite when nothing is let through [%]."""
    displacement_degrees: float
    """Phase of the fundamental against the mains; negative is lagging [deg]."""


def wave(supply, dimmer=NO_DIMMER):
    """Return rms, mean, peak, shares, factors and fundamental of a dimmed supply.

    Parameters
    ----------
    supply : mains.Supply
        The supply; only its volts matter here.
    dimmer : Dimmer
        Edge and angle, broadcast against the supply.

    Returns
    -------
    wave : Wave
        Floats, or arrays of the broadcast shape.

    Raises
    ------
    ValueError
        From `Supply` and `Dimmer`, if either is impossible.

    Notes
    -----
    With ``g`` the conduction angle, ``V`` rms and ``Vp`` peak volts of the supply: rms
    ``V sqrt((g - sin(g) cos(g)) / pi)``, mean ``Vp (1 - cos(g)) / pi``, peak ``Vp sin(g)`` while g
    is below a right angle and the whole ``Vp`` above. Fundamental: sine part
    ``V (g - sin(g) cos(g)) / pi``, cosine part ``-+ V sin(g)**2 / pi`` (minus for a leading edge).
    A resistive load is taken; a real switch loses about 1 V more.

    References
    ----------
    Rashid, Power Electronics, chapter on AC voltage controllers (rms); the rest derived here and
    compared with adaptive quadrature in the tests.

    Examples
    --------
    >>> half = wave(mains.Supply(230.0, 50.0), Dimmer("leading", 90.0))
    >>> round(half.volts_rms, 2), round(half.volts_mean, 2), round(half.power_fraction, 9)
    (162.63, 103.54, 0.5)
    """
    volts, conduction = np.broadcast_arrays(supply.volts_rms, dimmer.conduction_degrees)
    let_through = pulses.pulse(0.0, np.radians(conduction))
    blocked = pulses.pulse(0.0, np.radians(180.0 - conduction))
    lost = 2.0 / np.pi * pulses.square_area(blocked)
    power = np.where(conduction > 90.0, 1.0 - lost, 2.0 / np.pi * pulses.square_area(let_through))
    mean = pulses.area(let_through) / np.pi
    peak = pulses.height(0.0, np.radians(conduction))
    side = {"leading": -1.0, "trailing": 1.0, "none": 0.0}[dimmer.edge]
    cosine = side * let_through.sin_width * let_through.sin_width / np.pi
    fundamental = np.sqrt(power * power + cosine * cosine)
    # power - power**2 would lose its digits near full conduction.
    others = np.sqrt(np.maximum(power * lost - cosine * cosine, 0.0))
    crest = mains.peak(1.0)
    displacement = np.where(conduction > 0.0, np.degrees(np.arctan2(cosine, power)), 90.0 * side)
    fields = (
        volts * np.sqrt(power),
        volts * crest * mean,
        volts * crest * peak,
        conduction / 180.0,
        power,
        _ratio(crest * peak, np.sqrt(power)),
        _ratio(np.sqrt(power), crest * mean),
        volts * fundamental,
        100.0 * _ratio(others, fundamental),
        displacement,
    )
    return Wave(*map(limits.as_given, fields))


def _ratio(top, bottom):
    """Divide; where nothing is let through, the limit of all these ratios is infinite."""
    return np.where(bottom > 0.0, top / np.where(bottom > 0.0, bottom, 1.0), np.inf)


def volts_at(supply, dimmer, degrees):
    """Return the instantaneous voltage behind the dimmer.

    Parameters
    ----------
    supply : mains.Supply
    dimmer : Dimmer
        Edge and angle.
    degrees : float or array
        Angle from the rising zero crossing; 360 is a whole cycle [deg].

    Returns
    -------
    volts : float or ndarray
        Voltage at that instant, with its sign; at the edge itself the dimmer is on [V].

    Raises
    ------
    ValueError
        If the angle is no number.

    Notes
    -----
    The sine while the dimmer is on, zero otherwise.

    References
    ----------
    Derived here; the means of many samples are compared with `wave` in the tests.

    Examples
    --------
    >>> mains_100 = mains.Supply(100.0, 50.0)
    >>> round(volts_at(mains_100, Dimmer("trailing", 60.0), 30.0), 3)
    70.711
    >>> volts_at(mains_100, Dimmer("trailing", 60.0), 90.0)
    0.0
    """
    degrees = limits.finite(degrees, "degrees", "deg")
    in_half_cycle = np.mod(degrees, 180.0)
    if dimmer.edge == "leading":
        on = in_half_cycle >= dimmer.angle_degrees
    elif dimmer.edge == "trailing":
        on = in_half_cycle <= dimmer.angle_degrees
    else:
        on = True
    return limits.as_given(np.where(on, mains.volts_at(supply.volts_rms, degrees), 0.0))


def trace(supply, dimmer=NO_DIMMER, cycles=1, samples_per_cycle=360):
    """Return angles and voltages that draw the wave, with each edge exactly upright.

    Parameters
    ----------
    supply : mains.Supply
        The supply, one at a time.
    dimmer : Dimmer
        Edge and angle, one at a time.
    cycles : int
        Whole cycles to draw [-].
    samples_per_cycle : int
        Evenly spaced samples in each [-].

    Returns
    -------
    degrees, volts : tuple of ndarray
        One value each per point; at an edge the same angle stands twice [deg], [V].

    Raises
    ------
    ValueError
        If cycles or samples are not above zero.

    Notes
    -----
    The samples of `volts_at`, and at every edge the value on either side of it.

    Examples
    --------
    >>> degrees, volts = trace(mains.Supply(100.0, 50.0), Dimmer("leading", 90.0), 1, 8)
    >>> degrees[2:4].tolist(), volts[2:4].round(1).tolist()
    ([90.0, 90.0], [0.0, 141.4])
    """
    cycles = int(limits.positive(cycles, "cycles", "cycles"))
    count = int(limits.positive(samples_per_cycle, "samples_per_cycle", "samples"))
    degrees = np.linspace(0.0, 360.0 * cycles, count * cycles + 1)
    volts = volts_at(supply, dimmer, degrees)
    if dimmer.edge == "none" or dimmer.angle_degrees in (0.0, 180.0):
        return degrees, volts
    edges = np.arange(2 * cycles) * 180.0 + dimmer.angle_degrees
    off, on = np.zeros_like(edges), mains.volts_at(supply.volts_rms, edges)
    sides = np.stack([off, on] if dimmer.edge == "leading" else [on, off], axis=1).ravel()
    others = ~np.isin(degrees, edges)
    places = np.searchsorted(degrees[others], np.repeat(edges, 2))
    return (
        np.insert(degrees[others], places, np.repeat(edges, 2)),
        np.insert(volts[others], places, sides),
    )
