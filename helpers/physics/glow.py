"""What a small LED sends out: by its colour, through its lens, and at very small currents.

Typical parts only; the data sheet of the part decides. Knows no circuit and no eye's distance.
"""

from math import cos, log, pi, radians

import numpy as np

from helpers.physics import leds, limits

#: Sensitivity of the eye by day for the wavelengths of `leds.TYPICAL_METRES`. CIE 018 [-].
EYE_SENSITIVITY = {
    "red": 0.265, "yellow": 0.757, "yellow-green": 0.952, "green": 0.7932, "blue": 0.09098,
}  # fmt: skip
#: Lumens in a watt of light where the eye is most sensitive: the SI's constant for 540 THz [lm/W].
LUMENS_PER_WATT = 683.0
#: Lumens that a white LED makes of each watt of its blue light. Common practice, no source [lm/W].
WHITE_LUMENS_PER_BLUE_WATT = 250.0
#: Photons that leave a plain LED for each electron. Common practice, no source: old types send out
#: a tenth of it, the best of today ten times as many [-].
PHOTONS_PER_ELECTRON = 0.05
#: Current and half angle at which the sheet of a small LED states its intensity. Common practice,
#: no source [A], [deg].
SHEET_AMPS, SHEET_HALF_DEGREES = 0.020, 30.0
#: Current at which a plain LED still turns half of its electrons to use. Common practice, no
#: source: good parts stay below a microamp, poor ones need a tenth of a milliamp [A].
HALF_LOST_AMPS = 20e-6


def lumens_per_amp(colour, photons_per_electron=PHOTONS_PER_ELECTRON):
    """Return the light of a colour for each ampere of mean current.

    Parameters
    ----------
    colour : str
        A key of `EYE_SENSITIVITY`, or 'white' [-].
    photons_per_electron : float or array
        Share of the electrons that end as light outside, 0 to 1 [-].

    Returns
    -------
    lumens_per_amp : float or ndarray
        Luminous flux over current [lm/A].

    Raises
    ------
    ValueError
        If the colour is unknown or the share out of range.

    Notes
    -----
    ``photons * electron volts of one * 683 V(wavelength)``, as if all light had one wavelength.
    White is blue light, times what the phosphor makes of it.

    References
    ----------
    CIE 018, spectral luminous efficiency by day; SI Brochure, 683 lm/W.

    Examples
    --------
    >>> [round(lumens_per_amp(colour)) for colour in ("red", "green", "blue")]
    [18, 64, 8]
    """
    limits.one_of(colour, "colour", (*EYE_SENSITIVITY, "white"))
    share = limits.share(photons_per_electron, "photons_per_electron")
    sensitivity = EYE_SENSITIVITY.get(colour)
    efficacy = (
        LUMENS_PER_WATT * sensitivity if sensitivity is not None else WHITE_LUMENS_PER_BLUE_WATT
    )
    return share * leds.photon_electron_volts(leds.TYPICAL_METRES[colour]) * efficacy


def axis_candelas(lumens, half_angle_degrees=SHEET_HALF_DEGREES):
    """Return the intensity on the axis of a beam that holds so many lumens.

    Parameters
    ----------
    lumens : float or array
        All light of the beam [lm].
    half_angle_degrees : float
        Angle from the axis at which half the intensity is left, 1 to 80 [deg].

    Returns
    -------
    candelas : float or ndarray
        Intensity on the axis [cd].

    Raises
    ------
    ValueError
        If a value is out of range.

    Notes
    -----
    ``lumens (m + 1) / 2 pi`` for a beam of ``cos(angle)**m``, the integral over half a sphere.

    References
    ----------
    Generalised Lambert's law, as `visibility.candelas`; Lambert's own case is 60 degrees.

    Examples
    --------
    >>> round(axis_candelas(1.0, 60.0), 4), round(axis_candelas(1.0, 10.0), 1)
    (0.3183, 7.4)
    """
    lumens = limits.not_negative(lumens, "lumens", "lm")
    half = limits.between(half_angle_degrees, "half_angle_degrees", "deg", 1.0, 80.0)
    return lumens * (log(0.5) / log(cos(radians(half))) + 1.0) / (2.0 * pi)


def typical_candelas(colour):
    """Return what the sheet of a plain small LED of a colour may state, on the axis at 20 mA.

    Parameters
    ----------
    colour : str
        As for `lumens_per_amp` [-].

    Returns
    -------
    candelas : float
        Intensity at `SHEET_AMPS` with `SHEET_HALF_DEGREES` [cd].

    Raises
    ------
    ValueError
        If the colour is unknown.

    Notes
    -----
    `lumens_per_amp` through `axis_candelas`. Parts of one colour differ more than colours do: a
    hundredfold is common.

    References
    ----------
    As those two.

    Examples
    --------
    >>> round(typical_candelas("red"), 2)
    0.33
    """
    return axis_candelas(lumens_per_amp(colour) * SHEET_AMPS)


def useful_amps(amps, half_lost_amps=HALF_LOST_AMPS):
    """Return the part of a small current that makes light; defects of the crystal take the rest.

    Parameters
    ----------
    amps : float or array
        Forward current [A].
    half_lost_amps : float or array
        Current at which half of it is lost; 0 for a part without defects [A].

    Returns
    -------
    amps : float or ndarray
        The useful part; at large currents nearly all [A].

    Raises
    ------
    ValueError
        If a value is negative.

    Notes
    -----
    Loss goes with the density of carriers, light with its square: ``amps = useful +
    sqrt(useful half_lost / 2)``, solved for the useful part. What is lost at high density is left
    out, and a pulse counts as steady.

    References
    ----------
    Schubert, Light-Emitting Diodes, rates of recombination (from memory); solved here, checked by
    putting the answer back.

    Examples
    --------
    >>> round(1e6 * useful_amps(20e-6), 3), round(1e6 * useful_amps(2e-6), 3)
    (10.0, 0.292)
    """
    amps = limits.not_negative(amps, "amps", "A")
    lost = limits.not_negative(half_lost_amps, "half_lost_amps", "A") / 2.0
    root = (np.sqrt(lost + 4.0 * np.asarray(amps)) - np.sqrt(lost)) / 2.0
    return limits.as_given(root * root)
