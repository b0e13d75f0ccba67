"""The mains that a learner may have at home: name, volts, frequency, peak, mean and range.

A clean sine only; what a dimmer makes of it is in `phase_cut`. Knows no circuit.
"""

from dataclasses import dataclass
from math import pi, sqrt
from typing import NamedTuple

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


class NationalRange(NamedTuple):
    """What a national rule says of a supply: rms volts at its limits, and which rule."""

    lowest: float
    """Lowest rms voltage [V]."""
    highest: float
    """Highest rms voltage [V]."""
    source: str
    """The rule, in words."""


# A supply is one line: volts, hertz, national range in rms volts, its source. 230 V and 120 V are
# in IEC 60038 Table 1; the others are national systems (from memory).
_HOUSEHOLD = (
    (230, 50, 207.0, 253.0, "EN 50160, for 95 % of a week; elsewhere +10/−6 % (from memory)"),
    (120, 60, 110.0, 127.0, "ANSI C84.1, service range B; A is 114 to 126 V (from memory)"),
    (240, 50, 225.6, 254.4, "± 6 %, the older British and Australian rule (from memory)"),
    (127, 60, 117.0, 133.0, "Brazil, PRODIST module 8, adequate supply (from memory)"),
    (100, 50, 95.0, 107.0, "Japan, 101 ± 6 V (from memory)"),
    (100, 60, 95.0, 107.0, "Japan, 101 ± 6 V (from memory)"),
    (110, 60, 104.5, 115.5, "Taiwan, ± 5 % for lighting (from memory)"),
    (220, 50, 198.0, 235.4, "China, GB/T 12325, +7/−10 % (from memory)"),
    (220, 60, 207.0, 233.0, "Korea, 220 ± 13 V (from memory)"),
)  # fmt: skip
SUPPLIES = {}
NATIONAL = {}
for _volts, _hertz, *_range in _HOUSEHOLD:
    _supply = Supply(float(_volts), float(_hertz))
    SUPPLIES[_supply.name], NATIONAL[_supply.name] = _supply, NationalRange(*_range)


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
    ``volts_rms * (1 -+ tolerance / 100)``. National rules differ: `lowest` and `highest` know them.

    References
    ----------
    IEC 60038:2009 + A1:2021, supply range: +-10 % under normal conditions.

    Examples
    --------
    >>> [round(volts, 3) for volts in range_of(230.0)]
    [207.0, 253.0]
    """
    volts_rms = limits.positive(volts_rms, "volts_rms", "V", _RMS_SLIP)
    share = limits.percent(tolerance_percent, "tolerance_percent")
    return volts_rms * (1.0 - share / 100.0), volts_rms * (1.0 + share / 100.0)


def national_range(supply):
    """Return what a national rule says of a household supply.

    Parameters
    ----------
    supply : Supply
        At its nominal voltage.

    Returns
    -------
    national : NationalRange or None
        None for a supply that is not one of `SUPPLIES`, and for an array of them.

    Notes
    -----
    A look-up. One rule for each supply; other countries with the same label may have another.

    References
    ----------
    Named in each line of the table, from memory; the local rule decides.

    Examples
    --------
    >>> national_range(Supply(120.0, 60.0))[:2]
    (110.0, 127.0)
    """
    one = np.ndim(supply.volts_rms) == np.ndim(supply.hertz) == 0
    return NATIONAL.get(supply.name) if one else None


def lowest(supply):
    """Return a supply at its lowest: what brightness is judged at.

    Parameters
    ----------
    supply : Supply
        At its nominal voltage.

    Returns
    -------
    supply : Supply
        The same frequency, the lowest voltage.

    Notes
    -----
    10 % below the label, or the national figure where that is lower. Wiring in the house takes a
    little more, and on a few bad days the supply stands lower still.

    Examples
    --------
    >>> lowest(Supply(120.0, 60.0)).name
    '108 V 60 Hz'
    """
    volts, national = range_of(supply.volts_rms)[0], national_range(supply)
    return Supply(min(volts, national.lowest) if national else volts, supply.hertz)


def highest(supply):
    """Return a supply at its highest: what parts are rated for.

    Parameters
    ----------
    supply : Supply
        At its nominal voltage.

    Returns
    -------
    supply : Supply
        The same frequency, the highest voltage.

    Notes
    -----
    10 % above the label, or the national figure where that is higher. Surges come on top.

    Examples
    --------
    >>> highest(Supply(120.0, 60.0)).name
    '132 V 60 Hz'
    """
    volts, national = range_of(supply.volts_rms)[1], national_range(supply)
    return Supply(max(volts, national.highest) if national else volts, supply.hertz)


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
    return limits.as_given(peak(volts_rms) * np.sin(np.radians(degrees)))
