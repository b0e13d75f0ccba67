"""The heater behind the dimmer: its resistance, and its current and power at a setting.

A heating element is taken as a constant resistance. Knows no indicator and no price.
"""

from helpers.physics import limits, phase_cut

POT_WATTS = 90.0
"""The workshop's wax-melting pot, by its label: an example [W]."""


def resistance(rated_volts, rated_watts):
    """Return the resistance of a heater from its label.

    Parameters
    ----------
    rated_volts : float or array
        Rms voltage on the label [V].
    rated_watts : float or array
        Power on the label [W].

    Returns
    -------
    ohms : float or ndarray
        Resistance when hot [ohm].

    Raises
    ------
    ValueError
        If a value is not above zero.

    Notes
    -----
    ``rated_volts**2 / rated_watts``. A cold element measures a little less; a positive-temperature
    element does not behave so at all.

    References
    ----------
    Joule's law.

    Examples
    --------
    >>> round(resistance(120.0, 90.0), 1)
    160.0
    """
    volts = limits.positive(rated_volts, "rated_volts", "V")
    return volts * volts / limits.positive(rated_watts, "rated_watts", "W")


def amps_rms(supply, dimmer, ohms):
    """Return the rms current of the heater at a dimmer setting.

    Parameters
    ----------
    supply : mains.Supply
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float or array
        Resistance of the heater [ohm].

    Returns
    -------
    amps : float or ndarray
        Rms current [A].

    Raises
    ------
    ValueError
        If the resistance is not above zero.

    Notes
    -----
    True rms voltage over resistance.

    References
    ----------
    Ohm's law with `phase_cut.wave`.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> round(amps_rms(mains.Supply(120.0, 60.0), phase_cut.NO_DIMMER, 160.0), 3)
    0.75
    """
    ohms = limits.positive(ohms, "ohms", "ohm", "A shorted heater is a fault, not a setting.")
    return phase_cut.wave(supply, dimmer).volts_rms / ohms


def watts(supply, dimmer, ohms):
    """Return the power of the heater at a dimmer setting.

    Parameters
    ----------
    supply : mains.Supply
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float or array
        Resistance of the heater [ohm].

    Returns
    -------
    watts : float or ndarray
        Mean power [W].

    Raises
    ------
    ValueError
        If the resistance is not above zero.

    Notes
    -----
    True rms voltage squared over resistance. A supply 10 % high heats 21 % more.

    References
    ----------
    Joule's law with `phase_cut.wave`.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> half = phase_cut.Dimmer("trailing", 90.0)
    >>> round(watts(mains.Supply(120.0, 60.0), half, 160.0), 3)
    45.0
    """
    amps = amps_rms(supply, dimmer, ohms)
    return amps * amps * ohms
