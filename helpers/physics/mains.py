"""The mains that a learner may have at home: name, volts, frequency, peak, mean and tolerance.

A clean sine only; what a dimmer makes of it is in `phase_cut`. Knows no circuit.
"""

from dataclasses import dataclass
from math import pi, sqrt

import numpy as np

from helpers.physics import limits

_RMS_SLIP = "Give the rms value, without sign, as the label on the wall socket states it."


@dataclass(frozen=True)
class Supply:
    """A sine supply.

    Parameters
    ----------
    volts_rms : float or array
        Rms voltage [V].
    hertz : float or array
        Frequency [Hz].

    Raises
    ------
    ValueError
        If a value is not above zero.

    Examples
    --------
    >>> Supply(230.0, 50.0).name
    '230 V 50 Hz'
    """

    volts_rms: float
    hertz: float

    def __post_init__(self):
        volts = limits.positive(self.volts_rms, "volts_rms", "V", _RMS_SLIP)
        hertz = limits.positive(self.hertz, "hertz", "Hz", "Direct current: see `ohms_law`.")
        object.__setattr__(self, "volts_rms", volts)
        object.__setattr__(self, "hertz", hertz)

    @property
    def name(self):
        """How the supply is chosen and printed."""
        return f"{self.volts_rms:g} V {self.hertz:g} Hz"


# 230 V and 120 V are in IEC 60038 Table 1; the others are national systems (from memory).
_HOUSEHOLD = ((230, 50), (120, 60), (240, 50), (127, 60), (100, 50), (100, 60))
SUPPLIES = {supply.name: supply for supply in (Supply(float(v), float(f)) for v, f in _HOUSEHOLD)}


def peak(volts_rms):
    """Return the crest of a sine.

    Parameters
    ----------
    volts_rms : float or array
        Rms voltage [V].

    Returns
    -------
    volts_peak : float or ndarray
        Highest instantaneous voltage, zero to crest [V].

    Raises
    ------
    ValueError
        If the voltage is not above zero.

    Notes
    -----
    ``sqrt(2) * volts_rms``. Sine only: a dimmed wave keeps the whole crest until 90 degrees.

    References
    ----------
    Any textbook of alternating current; peak factor 1.414.

    Examples
    --------
    >>> round(peak(120.0), 1)
    169.7
    """
    return sqrt(2.0) * limits.positive(volts_rms, "volts_rms", "V", _RMS_SLIP)


def mean(volts_rms):
    """Return the mean of a rectified sine, both half-cycles counted.

    Parameters
    ----------
    volts_rms : float or array
        Rms voltage [V].

    Returns
    -------
    volts_mean : float or ndarray
        Mean of the size of the voltage over a cycle [V].

    Raises
    ------
    ValueError
        If the voltage is not above zero.

    Notes
    -----
    ``2 sqrt(2) / pi * volts_rms``, 0.9003 of the rms value. One half-cycle alone gives half of it.

    References
    ----------
    Any textbook of alternating current; mean 0.637 of the peak, form factor 1.11.

    Examples
    --------
    >>> round(mean(100.0), 2)
    90.03
    """
    return 2.0 / pi * peak(volts_rms)


def range_of(volts_rms, tolerance_percent=10.0):
    """Return the lowest and highest voltage that a supply may have.

    Parameters
    ----------
    volts_rms : float or array
        Nominal rms voltage [V].
    tolerance_percent : float or array
        Plus or minus, 0 to 50 [%].

    Returns
    -------
    lowest, highest : tuple of float or ndarray
        Rms voltages at the limits [V].

    Raises
    ------
    ValueError
        If the voltage is not above zero or the tolerance out of range.

    Notes
    -----
    ``volts_rms * (1 -+ tolerance / 100)``. Rate parts for the highest, choose brightness for the
    lowest. National rules may be narrower to one side.

    References
    ----------
    IEC 60038:2009 + A1:2021, supply range: +-10 % under normal conditions.

    Examples
    --------
    >>> [round(volts, 3) for volts in range_of(230.0)]
    [207.0, 253.0]
    """
    volts_rms = limits.positive(volts_rms, "volts_rms", "V", _RMS_SLIP)
    share = limits.between(
        tolerance_percent, "tolerance_percent", "%", 0.0, 50.0, "Ten per cent is 10, not 0.1."
    )
    return volts_rms * (1.0 - share / 100.0), volts_rms * (1.0 + share / 100.0)


def highest(supply, tolerance_percent=10.0):
    """Return a supply as it stands at the upper limit of its tolerance.

    Parameters
    ----------
    supply : Supply
        At its nominal voltage.
    tolerance_percent : float or array
        Plus or minus, 0 to 50 [%].

    Returns
    -------
    supply : Supply
        The same frequency, the highest voltage.

    Raises
    ------
    ValueError
        If the tolerance is out of range.

    Notes
    -----
    The upper end of `range_of`: what parts are rated for.

    References
    ----------
    As `range_of`.

    Examples
    --------
    >>> highest(Supply(120.0, 60.0)).name
    '132 V 60 Hz'
    """
    return Supply(range_of(supply.volts_rms, tolerance_percent)[1], supply.hertz)


def volts_at(volts_rms, degrees):
    """Return the instantaneous voltage of a sine.

    Parameters
    ----------
    volts_rms : float or array
        Rms voltage [V].
    degrees : float or array
        Angle from the rising zero crossing; 360 is a whole cycle [deg].

    Returns
    -------
    volts : float or ndarray
        Voltage at that instant, with its sign [V].

    Raises
    ------
    ValueError
        If the voltage is not above zero or the angle no number.

    Notes
    -----
    ``sqrt(2) * volts_rms * sin(degrees)``.

    References
    ----------
    Any textbook of alternating current.

    Examples
    --------
    >>> round(volts_at(100.0, 30.0), 3)
    70.711
    """
    degrees = limits.finite(degrees, "degrees", "deg")
    return limits.plain(peak(volts_rms) * np.sin(np.radians(degrees)))
