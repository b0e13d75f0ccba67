"""The resistor values one can buy: the preferred numbers of IEC 60063.

Their colour bands are read and written in `colour_code` and offered here too, letter codes (4K7)
in `quantities`; what a resistor can stand is in `ratings`. Knows no circuit and no supply.
"""

import numpy as np

from helpers.physics import limits
from helpers.physics.colour_code import bands, read_bands, scaled

__all__ = [
    "SERIES",
    "bands",
    "nearest",
    "next_down",
    "next_up",
    "read_bands",
    "tolerance_percent",
]

_E24 = (10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82)
_E24 += (91,)
_E192 = tuple(920 if k == 185 else round(100 * 10 ** (k / 192)) for k in range(192))

#: Significant figures of one decade for each series of IEC 60063. The fine series are a rounded
#: geometric row, but for 920; the coarse ones are older than that rule and are listed.
SERIES = {
    "E6": _E24[::4],
    "E12": _E24[::2],
    "E24": _E24,
    "E48": _E192[::4],
    "E96": _E192[::2],
    "E192": _E192,
}
_TOLERANCE_PERCENT = {"E6": 20.0, "E12": 10.0, "E24": 5.0, "E48": 2.0, "E96": 1.0, "E192": 0.5}

_LEAST_EXPONENT, _GREATEST_EXPONENT = -3, 12


def _ladder(figures):
    digits = len(str(figures[0])) - 1
    decades = range(_LEAST_EXPONENT - digits, _GREATEST_EXPONENT - digits)
    values = [scaled(each, decade) for decade in decades for each in figures]
    return np.array([*values, 10.0**_GREATEST_EXPONENT])


_LADDERS = {name: _ladder(figures) for name, figures in SERIES.items()}
# Float noise of a computed value (0.1 * 3 and the like) must not push it to its neighbour.
_NOISE = 1e-12


def _steps_around(ohms, series):
    """Return the preferred values just below or at, and just above or at, each value."""
    ladder = _LADDERS[limits.one_of(series, "series", SERIES)]
    ohms = limits.between(
        ohms, "ohms", "ohm", 1e-3, 1e12, "Was a prefix such as kilo or mega lost or doubled?"
    )
    above = np.searchsorted(ladder, ohms * (1 - _NOISE))
    below = above - (ladder[above] > ohms * (1 + _NOISE))
    return ohms, limits.as_given(ladder[below]), limits.as_given(ladder[above])


def nearest(ohms, series="E24", by="ratio"):
    """Return the preferred value nearest to a resistance.

    Parameters
    ----------
    ohms : float or array
        Wanted resistance, 1 milliohm to 1 teraohm [ohm].
    series : str
        A key of `SERIES`, one for the whole array [-].
    by : str
        'ratio', or 'difference' for the plain distance [-].

    Returns
    -------
    ohms : float or ndarray
        The preferred value; the upper one in an exact tie [ohm].

    Raises
    ------
    ValueError
        If the series or measure is unknown or the resistance out of range.

    Notes
    -----
    The value with the least ``abs(log(value / wanted))``: the steps of a series are equal ratios,
    so the border between two neighbours is their geometric mean. By plain difference 28 470 ohm
    would go to 27 kohm of E24, by ratio it goes to 30 kohm.

    References
    ----------
    IEC 60063:2015, preferred number series for resistors and capacitors.

    Examples
    --------
    >>> nearest(28470.0, "E24")
    30000.0
    >>> nearest([101e3, 118e3], "E12").tolist()
    [100000.0, 120000.0]
    """
    limits.one_of(by, "by", ("ratio", "difference"))
    ohms, below, above = _steps_around(ohms, series)
    lower = ohms * ohms < below * above if by == "ratio" else 2.0 * ohms < below + above
    return limits.as_given(np.where(lower, below, above))


def next_up(ohms, series="E24"):
    """Return the smallest preferred value that is not below a resistance.

    Parameters
    ----------
    ohms : float or array
        Wanted resistance, 1 milliohm to 1 teraohm [ohm].
    series : str
        A key of `SERIES`, one for the whole array [-].

    Returns
    -------
    ohms : float or ndarray
        The preferred value [ohm].

    Raises
    ------
    ValueError
        If the series is unknown or the resistance out of range.

    Notes
    -----
    A value of the series, to within one part in 1e12, is its own neighbour.

    References
    ----------
    IEC 60063:2015, preferred number series for resistors and capacitors.

    Examples
    --------
    >>> next_up(101e3, "E12"), next_up(100e3, "E12")
    (120000.0, 100000.0)
    """
    return _steps_around(ohms, series)[2]


def next_down(ohms, series="E24"):
    """Return the largest preferred value that is not above a resistance.

    Parameters
    ----------
    ohms : float or array
        Wanted resistance, 1 milliohm to 1 teraohm [ohm].
    series : str
        A key of `SERIES`, one for the whole array [-].

    Returns
    -------
    ohms : float or ndarray
        The preferred value [ohm].

    Raises
    ------
    ValueError
        If the series is unknown or the resistance out of range.

    Notes
    -----
    A value of the series, to within one part in 1e12, is its own neighbour.

    References
    ----------
    IEC 60063:2015, preferred number series for resistors and capacitors.

    Examples
    --------
    >>> next_down(119e3, "E12"), next_down(120e3, "E12")
    (100000.0, 120000.0)
    """
    return _steps_around(ohms, series)[1]


def tolerance_percent(series):
    """Return the tolerance that a series was laid out for.

    Parameters
    ----------
    series : str
        A key of `SERIES` [-].

    Returns
    -------
    tolerance : float
        Plus or minus, in per cent of the value [%].

    Raises
    ------
    ValueError
        If the series is unknown.

    Notes
    -----
    Parts are sold with closer tolerances than this; the marking of the part decides.

    References
    ----------
    IEC 60063:2015 (values confirmed, page from memory).

    Examples
    --------
    >>> tolerance_percent("E24")
    5.0
    """
    return _TOLERANCE_PERCENT[limits.one_of(series, "series", SERIES)]
