"""From light to what the eye makes of it: brightness, and the limits of flicker.

Light is taken as proportional to mean forward current. Rules made for surfaces and rooms are used
as plain guides for a pilot light, and each says so. How far it is seen is in `visibility`. Knows
no circuit.
"""

import numpy as np

from helpers.physics import limits

#: Exponents of Stevens' power law for brightness: a patch seen in the dark, a point of light.
#: Stevens 1957, 1961, 1975 (values confirmed as reprinted, pages from memory).
STEVENS_EXPONENTS = {"patch": 1.0 / 3.0, "point": 0.5}


def lightness(relative_light):
    """Return the CIE lightness of a light against a reference that counts as 100.

    Parameters
    ----------
    relative_light : float or array
        Luminance over that of the reference, zero or more [-].

    Returns
    -------
    lightness : float or ndarray
        L*, 100 for the reference itself [-].

    Raises
    ------
    ValueError
        If the ratio is negative.

    Notes
    -----
    ``116 y**(1/3) - 16``, and ``(29/3)**3 y`` where y is at or below ``(6/29)**3``. Made for
    surface colours in daylight; for a glowing lens it says how the steps look, not how bright they
    are.

    References
    ----------
    CIE 15 and ISO/CIE 11664-4.

    Examples
    --------
    >>> round(lightness(0.18), 1)
    49.5
    """
    ratio = limits.not_negative(relative_light, "relative_light", "", "Give a share, as 0.5.")
    value = np.where(
        np.asarray(ratio) > (6.0 / 29.0) ** 3,
        116.0 * np.cbrt(ratio) - 16.0,
        (29.0 / 3.0) ** 3 * np.asarray(ratio),
    )
    return limits.as_given(value)


def stevens(relative_light, exponent=STEVENS_EXPONENTS["patch"]):
    """Return how bright a light looks against a reference, by Stevens' power law.

    Parameters
    ----------
    relative_light : float or array
        Light over that of the reference, zero or more [-].
    exponent : float
        One of `STEVENS_EXPONENTS`, or another between 0 and 1 [-].

    Returns
    -------
    brightness : float or ndarray
        Apparent brightness over that of the reference [-].

    Raises
    ------
    ValueError
        If the ratio is negative or the exponent out of range.

    Notes
    -----
    ``relative_light**exponent``. An average over observers in the dark; one person may differ.

    References
    ----------
    Stevens 1957 and 1975; the exponent 0.33 also in Psychological Record 59, 171.

    Examples
    --------
    >>> round(stevens(0.125), 6), round(stevens(0.25, STEVENS_EXPONENTS["point"]), 6)
    (0.5, 0.5)
    """
    ratio = limits.not_negative(relative_light, "relative_light", "", "Give a share, as 0.5.")
    exponent = limits.between(exponent, "exponent", "", 0.01, 1.0, "A third is 0.333.")
    return ratio**exponent


def share_for_look(brightness, exponent=STEVENS_EXPONENTS["patch"]):
    """Return the share of light that makes a light look so bright against a reference.

    Parameters
    ----------
    brightness : float or array
        Apparent brightness over that of the reference, zero or more [-].
    exponent : float
        As for `stevens` [-].

    Returns
    -------
    relative_light : float or ndarray
        Light over that of the reference [-].

    Raises
    ------
    ValueError
        If the brightness is negative or the exponent out of range.

    Notes
    -----
    ``brightness**(1 / exponent)``: `stevens` the other way round.

    Examples
    --------
    >>> round(share_for_look(0.5), 6), share_for_look(2.0, STEVENS_EXPONENTS["point"])
    (0.125, 4.0)
    """
    look = limits.not_negative(brightness, "brightness", "", "Give a share, as 0.5.")
    exponent = limits.between(exponent, "exponent", "", 0.01, 1.0, "A third is 0.333.")
    return look ** (1.0 / exponent)


def percent_flicker(highest, lowest):
    """Return how far a light swings.

    Parameters
    ----------
    highest, lowest : float or array
        Light at its highest and at its lowest, both in the same unit [-].

    Returns
    -------
    percent : float or ndarray
        100 for a light that goes dark, 0 for a steady one [%].

    Raises
    ------
    ValueError
        If there is no light, or the lowest is negative or above the highest.

    Notes
    -----
    ``100 (highest - lowest) / (highest + lowest)``. It says nothing of how often or for how long.

    References
    ----------
    CIE e-ILV, as percent flicker and modulation.

    Examples
    --------
    >>> percent_flicker(3.0, 1.0), percent_flicker(2.0, 0.0)
    (50.0, 100.0)
    """
    high = limits.positive(highest, "highest", "", "A dark light does not flicker.")
    low = limits.not_negative(lowest, "lowest", "")
    if np.any(np.asarray(low) > high):
        raise ValueError(f"lowest was read as {low} and highest as {high}; were they exchanged?")
    return 100.0 * (high - low) / (high + low)


def low_risk_percent(hertz):
    """Return the flicker that IEEE 1789 counts as low risk in room lighting.

    Parameters
    ----------
    hertz : float or array
        Frequency of the flicker [Hz].

    Returns
    -------
    percent : float or ndarray
        Highest percent flicker; 100 where any flicker is allowed [%].

    Raises
    ------
    ValueError
        If the frequency is not above zero.

    Notes
    -----
    ``0.025 f`` below 90 Hz, ``0.08 f`` from 90 to 1250 Hz. Written for lamps that light a room: an
    unsmoothed pilot light is far above it and still common.

    References
    ----------
    IEEE Std 1789-2015, recommended practice 1 (formulas confirmed as quoted).

    Examples
    --------
    >>> low_risk_percent(50.0), low_risk_percent(100.0)
    (1.25, 8.0)
    """
    return _flicker_limit(hertz, 0.025, 0.08)


def no_effect_percent(hertz):
    """Return the flicker below which IEEE 1789 expects no effect at all.

    Parameters
    ----------
    hertz : float or array
        Frequency of the flicker [Hz].

    Returns
    -------
    percent : float or ndarray
        Highest percent flicker; 100 where any flicker is allowed [%].

    Raises
    ------
    ValueError
        If the frequency is not above zero.

    Notes
    -----
    ``0.01 f`` below 90 Hz, ``0.0333 f`` from 90 to 3000 Hz.

    References
    ----------
    IEEE Std 1789-2015, recommended practice 2 (formulas confirmed as quoted).

    Examples
    --------
    >>> no_effect_percent(50.0), round(no_effect_percent(100.0), 2)
    (0.5, 3.33)
    """
    return _flicker_limit(hertz, 0.01, 0.0333)


def _flicker_limit(hertz, slow, fast):
    hertz = limits.positive(hertz, "hertz", "Hz", "Steady light has no flicker to judge.")
    slope = np.where(np.asarray(hertz) < 90.0, slow, fast)
    return limits.as_given(np.minimum(slope * hertz, 100.0))
