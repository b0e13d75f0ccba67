"""The LED by its colour, and the dropper that gives it a wanted mean current on the mains.

Typical figures only; the data sheet of the part decides. Knows no brightness and no rating.
"""

import numpy as np

from helpers.physics import limits, parts
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import NO_DIMMER

#: Typical forward drop at a few milliamps by colour. Common practice, no source [V].
TYPICAL_VOLTS = {
    "infrared": 1.2, "red": 1.9, "yellow": 2.1, "yellow-green": 2.1,
    "green": 3.1, "blue": 3.2, "white": 3.2,
}  # fmt: skip

#: Typical wavelength by colour; white is a blue LED under phosphor. Common practice, no source [m].
TYPICAL_METRES = {
    "infrared": 940e-9, "red": 630e-9, "yellow": 590e-9, "yellow-green": 570e-9,
    "green": 525e-9, "blue": 470e-9, "white": 450e-9,
}  # fmt: skip

#: A real LED by colour: drop at 20 mA, ideality factor, series resistance. Common practice, no
#: source [V], [-], [ohm].
REAL = {
    "infrared": (1.25, 1.6, 3.0), "red": (2.0, 2.0, 5.0), "yellow": (2.1, 2.0, 6.0),
    "yellow-green": (2.15, 2.0, 8.0), "green": (3.2, 3.0, 12.0), "blue": (3.2, 2.8, 12.0),
    "white": (3.2, 2.8, 12.0),
}  # fmt: skip


#: Reverse voltage that data sheets commonly allow. A rating: the breakdown lies above it, often at
#: tens of volts; common practice, no source [V].
REVERSE_RATING_VOLTS = 5.0
#: Steady current that a small LED is commonly made for at most; common practice, no source. And the
#: mean of undimmed half-waves with that crest; behind a dimmer the same crest has a lower mean [A].
LIMIT_AMPS, LIMIT_HALF_WAVE_AMPS = 0.020, 0.020 / np.pi

# CODATA 2018, exact since the SI revision of 2019.
_PLANCK, _LIGHT_SPEED, _ELECTRON_CHARGE = 6.62607015e-34, 299792458.0, 1.602176634e-19


def typical_volts(colour):
    """Return the forward drop that is usual for a colour.

    Parameters
    ----------
    colour : str
        A key of `TYPICAL_VOLTS` [-].

    Returns
    -------
    volts : float
        Forward drop at a few milliamps [V].

    Raises
    ------
    ValueError
        If the colour is unknown.

    Notes
    -----
    A look-up. The drop falls by about a quarter from 20 mA to microamps.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> typical_volts("red")
    1.9
    """
    return TYPICAL_VOLTS[limits.one_of(colour, "colour", TYPICAL_VOLTS)]


def real(colour):
    """Return the law of a real LED of a colour.

    Parameters
    ----------
    colour : str
        A key of `REAL` [-].

    Returns
    -------
    part : parts.Part
        For `operating_point` as led [-].

    Raises
    ------
    ValueError
        If the colour is unknown.

    Notes
    -----
    Through the drop at 20 mA with a series resistance, `parts.junction`. Real LEDs of one colour
    differ by some tenths of a volt; far below a microamp they leak more than this says.

    References
    ----------
    Shockley's diode equation; the figures are common practice, no source.

    Examples
    --------
    >>> round(float(real("red").volts_at(0.5e-3) + parts.SILICON.volts_at(0.5e-3)), 1)
    2.3
    """
    volts, ideality, ohms = REAL[limits.one_of(colour, "colour", REAL)]
    return parts.junction(volts, 0.020, ideality, ohms)


def photon_electron_volts(metres):
    """Return the energy of a photon, which the LED's drop cannot fall far below.

    Parameters
    ----------
    metres : float or array
        Wavelength, 100 nm to 10 um [m].

    Returns
    -------
    electron_volts : float or ndarray
        Energy; the same number in volts is the drop to expect [eV].

    Raises
    ------
    ValueError
        If the wavelength is out of range.

    Notes
    -----
    ``h c / (e wavelength)``, 1239.84 eV nm. Heat in the junction supplies a little of it, so a
    cool-running LED at low current can stay some tenths of a volt below.

    References
    ----------
    CODATA 2018 constants.

    Examples
    --------
    >>> round(photon_electron_volts(630e-9), 3)
    1.968
    """
    metres = limits.between(metres, "metres", "m", 1e-7, 1e-5, "Was it in nanometres?")
    return _PLANCK * _LIGHT_SPEED / (_ELECTRON_CHARGE * metres)


def dropper_for_mean(circuit, supply, led_amps_mean, dimmer=NO_DIMMER, **drops):
    """Return the series resistance that gives the LED a wanted mean current.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
    led_amps_mean : float or array
        Wanted mean forward current of the LED (the first of two) [A].
    dimmer : phase_cut.Dimmer
        The setting at which it is wanted.
    **drops : float or array
        led_volts and the others, as for `operating_point` [V].

    Returns
    -------
    ohms : float or ndarray
        Series resistance, not yet a preferred value [ohm].

    Raises
    ------
    ValueError
        If the current is not above zero, or the wave never reaches the drops.

    Notes
    -----
    With constant drops every current is in inverse proportion to the resistance, so the current
    through one ohm, divided by the wanted one, is the answer. Give it `mains.lowest` where the LED
    must be bright enough, and rate what is chosen at `mains.highest`.

    References
    ----------
    Derived here; checked by putting the answer back into `operating_point`.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> ohms = dropper_for_mean("series_diode", mains.Supply(120.0, 60.0), 0.001)
    >>> round(ohms)
    52676
    """
    wanted = limits.positive(led_amps_mean, "led_amps_mean", "A", "For no light, fit no LED.")
    through_one_ohm = operating_point(circuit, supply, dimmer, ohms=1.0, **drops).led_amps_mean
    if np.any(through_one_ohm <= 0.0):
        raise ValueError(
            f"led_amps_mean was read as {wanted} A; at this dimmer setting the mains never reaches "
            "the drops of the circuit, so no resistance lights the LED. Turn the dimmer up."
        )
    return through_one_ohm / wanted
