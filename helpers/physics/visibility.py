"""How far off a small light is noticed: intensity, ambient light, threshold of the eye.

A plain rule made for signal lights, used here as a guide for a pilot light. Knows no current limit
and no circuit.
"""

import numpy as np

from helpers.physics import limits

#: Light on the wall behind the lamp. EN 12464-1 (from memory) asks for as much on the floor of a
#: corridor and on what is worked at; that a wall gets it too, where it often gets less, and the
#: other rooms: common practice, no source [lx].
ROOMS_LUX = {
    "at night": 1.0, "corridor": 100.0, "workshop": 300.0, "bright bench": 500.0,
    "beside a window": 2000.0, "in the sun": 50e3,
}  # fmt: skip
#: Illuminance at the eye over the bare threshold for a light that should be noticed by who does
#: not look for it. Common practice, no source [-].
NOTICED = 100.0


def candelas(amps_mean, rated_candelas, rated_amps, off_axis_degrees=0.0, half_angle_degrees=30.0):
    """Return the luminous intensity of an LED at a current and a viewing angle.

    Parameters
    ----------
    amps_mean : float or array
        Mean forward current [A].
    rated_candelas : float or array
        Intensity on the axis from the sheet [cd].
    rated_amps : float or array
        Current at which the sheet states it [A].
    off_axis_degrees : float or array
        Angle between axis and eye, 0 to 90 [deg].
    half_angle_degrees : float or array
        Angle from the axis at which half the intensity is left, 1 to 80 [deg].

    Returns
    -------
    candelas : float or ndarray
        Intensity towards the eye [cd].

    Raises
    ------
    ValueError
        If a value is out of range.

    Notes
    -----
    In proportion to current, times ``cos(angle)**m`` with m set by the half angle. Intensity falls
    faster than the current at very low currents; the sheet's curve decides.

    References
    ----------
    Generalised Lambert's law; common practice, no source.

    Examples
    --------
    >>> round(candelas(0.001, 0.2, 0.02, 30.0, 30.0), 4)
    0.005
    """
    amps = limits.not_negative(amps_mean, "amps_mean", "A")
    rated = limits.positive(
        rated_candelas, "rated_candelas", "cd", "Millicandelas? Divide by 1000."
    )
    rated_amps = limits.positive(rated_amps, "rated_amps", "A", "Milliamps? Divide by 1000.")
    angle = limits.between(off_axis_degrees, "off_axis_degrees", "deg", 0.0, 90.0)
    half = limits.between(
        half_angle_degrees, "half_angle_degrees", "deg", 1.0, 80.0,
        "It is counted from the axis: half of the sheet's whole viewing angle.",
    )  # fmt: skip
    order = np.log(0.5) / np.log(np.cos(np.radians(half)))
    value = rated * amps / rated_amps * np.maximum(np.cos(np.radians(angle)), 0.0) ** order
    return limits.as_given(value)


def background_luminance(lux, reflectance=0.5):
    """Return the luminance of a matt surface in ambient light.

    Parameters
    ----------
    lux : float or array
        Illuminance on the surface around the light [lx].
    reflectance : float or array
        Share that it sends back, 0 to 1 [-].

    Returns
    -------
    luminance : float or ndarray
        Luminance of the background [cd/m2].

    Raises
    ------
    ValueError
        If a value is out of range.

    Notes
    -----
    ``reflectance * lux / pi``, for a surface without gloss.

    References
    ----------
    Lambert's law.

    Examples
    --------
    >>> round(background_luminance(500.0), 1)
    79.6
    """
    share = limits.share(reflectance, "reflectance")
    return share * limits.not_negative(lux, "lux", "lx") / np.pi


def threshold_lux(luminance):
    """Return the least illuminance at the eye that shows a point of light against a background.

    Parameters
    ----------
    luminance : float or array
        Luminance of the background [cd/m2].

    Returns
    -------
    lux : float or ndarray
        Threshold of illuminance [lx].

    Raises
    ------
    ValueError
        If the luminance is negative.

    Notes
    -----
    ``0.242e-6 (1 + sqrt(0.4 luminance))**2``. Made for steady lights at sea, watched for by
    somebody who looks. In the dark it gives 2.42e-7 lx, where others print a round 2e-7 lx. The
    formula's value is used: it goes on into daylight without a step, and it promises 9 % less
    distance, which is the careful side.

    References
    ----------
    IALA recommendation E-200-2 (formula from memory). The round 2e-7 lx: IES definition of the
    visual threshold in point vision, 5.11.2; COLREG 1972, Annex I, section 8.

    Examples
    --------
    >>> f"{threshold_lux(0.0):.0e} lx in the dark, {threshold_lux(10000.0):.0e} lx by day"
    '2e-07 lx in the dark, 1e-03 lx by day'
    >>> threshold_lux(0.0) > 2e-7
    True
    """
    luminance = limits.not_negative(luminance, "luminance", "cd/m2")
    return limits.as_given(0.242e-6 * (1.0 + np.sqrt(0.4 * luminance)) ** 2)


def visible_metres(candelas, luminance, margin=NOTICED):
    """Return how far away a small light is noticed against a background.

    Parameters
    ----------
    candelas : float or array
        Intensity towards the eye [cd].
    luminance : float or array
        Luminance of the background [cd/m2].
    margin : float or array
        Illuminance at the eye over the bare threshold, 1 or more [-].

    Returns
    -------
    metres : float or ndarray
        Greatest distance [m].

    Raises
    ------
    ValueError
        If a value is out of range.

    Notes
    -----
    Inverse-square law up to ``margin`` times `threshold_lux`, which is for somebody who looks for
    the light; the margin of 100 stands for being noticed in a workshop (common practice, no
    source). Clear air, a small light, an eye without glare.

    References
    ----------
    Inverse-square law of photometry; see `threshold_lux`.

    Examples
    --------
    >>> round(visible_metres(0.005, background_luminance(500.0)), 1)
    2.2
    """
    candelas = limits.not_negative(candelas, "candelas", "cd")
    margin = limits.between(margin, "margin", "", 1.0, 1e6)
    return limits.as_given(np.sqrt(candelas / (margin * threshold_lux(luminance))))


def needed_lux(room_lux, reflectance=0.5, margin=NOTICED):
    """Return the illuminance at the eye that lets a light be noticed in a room.

    Parameters
    ----------
    room_lux : float or array
        Illuminance on the wall behind the light [lx].
    reflectance : float or array
        Share that the wall sends back, 0 to 1 [-].
    margin : float or array
        Over the bare threshold, 1 or more [-].

    Returns
    -------
    lux : float or ndarray
        Illuminance at the eye [lx].

    Raises
    ------
    ValueError
        If a value is out of range.

    Notes
    -----
    ``margin * threshold_lux(background_luminance(room_lux, reflectance))``.

    References
    ----------
    As those two; see `visible_metres` for the margin.

    Examples
    --------
    >>> f"{needed_lux(300.0):.1e}"
    '7.0e-04'
    """
    margin = limits.between(margin, "margin", "", 1.0, 1e6)
    return margin * threshold_lux(background_luminance(room_lux, reflectance))


def needed_candelas(metres, room_lux, reflectance=0.5, margin=NOTICED):
    """Return the intensity towards the eye that lets a light be noticed from a distance.

    Parameters
    ----------
    metres : float or array
        Distance from the eye [m].
    room_lux, reflectance, margin : float or array
        As for `needed_lux` [lx], [-], [-].

    Returns
    -------
    candelas : float or ndarray
        Intensity towards the eye [cd].

    Raises
    ------
    ValueError
        If a value is out of range.

    Notes
    -----
    ``needed_lux * metres**2``: `visible_metres` the other way round.

    References
    ----------
    Inverse-square law of photometry.

    Examples
    --------
    >>> round(needed_candelas(4.0, 300.0), 4)
    0.0112
    """
    metres = limits.positive(metres, "metres", "m", "Was it in centimetres?")
    return needed_lux(room_lux, reflectance, margin) * metres * metres
