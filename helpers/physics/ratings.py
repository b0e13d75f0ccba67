"""What a resistor can stand: power at its ambient, voltage, and how a string shares the mains.

Takes what the part's own sheet states; values and codes are in `resistors`, temperatures in
`heat`. Knows no circuit.
"""

import numpy as np

from helpers.physics import limits

#: Power ratings that are easily had. Common practice, no source [W].
COMMON_WATTS = (0.125, 0.25, 0.4, 0.5, 0.6, 1.0, 2.0, 3.0, 5.0)

#: Where the full rating ends and where nothing of it is left, for parts without a sheet of their
#: own: the part's own sheet comes first, many film types have these (IEC 60115-1) [degC].
KNEE_CELSIUS, ZERO_CELSIUS = 70.0, 155.0


def derated_watts(
    rated_watts, ambient_celsius, knee_celsius=KNEE_CELSIUS, zero_celsius=ZERO_CELSIUS
):
    """Return the power that a resistor may turn into heat at an ambient temperature.

    Parameters
    ----------
    rated_watts : float or array
        Rated dissipation up to the knee [W].
    ambient_celsius : float or array
        Temperature of the air around the part, warmed by the heater if that is near [degC].
    knee_celsius : float or array
        Temperature up to which the full rating holds [degC].
    zero_celsius : float or array
        Film temperature limit, where nothing is left [degC].

    Returns
    -------
    watts : float or ndarray
        Allowed dissipation [W].

    Raises
    ------
    ValueError
        If the rating is not above zero or the limit not above the knee.

    Notes
    -----
    Full up to the knee, then a straight line down to zero at the limit.

    References
    ----------
    IEC 60115-1: rated dissipation at 70 degC. The zero belongs to the part's own sheet: often 155
    degC for film, 125 degC for long life.

    Examples
    --------
    >>> derated_watts(0.5, [40.0, 112.5, 180.0]).tolist()
    [0.5, 0.25, 0.0]
    """
    rated = limits.positive(rated_watts, "rated_watts", "W")
    ambient = limits.between(ambient_celsius, "ambient_celsius", "degC", -273.15, 1000.0)
    share = 1.0 - (ambient - knee_celsius) / span_kelvin(knee_celsius, zero_celsius)
    return limits.as_given(rated * np.clip(share, 0.0, 1.0))


def span_kelvin(knee_celsius, zero_celsius):
    """Return from where to where a rating falls to nothing [K]; refuse what does not fall."""
    zero = limits.finite(zero_celsius, "zero_celsius", "degC")
    fall = zero - limits.finite(knee_celsius, "knee_celsius", "degC")
    return limits.positive(fall, "zero_celsius less knee_celsius", "K", "Were the two swapped?")


def volts_rms_limit(ohms, watts, limiting_volts):
    """Return the highest rms voltage that a resistor may carry for good.

    Parameters
    ----------
    ohms : float or array
        Resistance [ohm].
    watts : float or array
        Allowed dissipation, derated already [W].
    limiting_volts : float or array
        Limiting element voltage of its type, DC or AC rms [V].

    Returns
    -------
    volts_rms : float or ndarray
        The lower of the two limits [V].

    Raises
    ------
    ValueError
        If the resistance or limiting voltage is not above zero, or the power negative.

    Notes
    -----
    ``min(sqrt(watts * ohms), limiting_volts)``. Keep the peak below sqrt(2) times it as well, and
    remember mains impulses: one small part across the mains can arc over although its rms is low.

    References
    ----------
    IEC 60115-1, rated voltage and limiting element voltage.

    Examples
    --------
    >>> volts_rms_limit(40e3, 0.25, 250.0), volts_rms_limit(1e6, 0.25, 250.0)
    (100.0, 250.0)
    """
    ohms = limits.positive(ohms, "ohms", "ohm")
    watts = limits.not_negative(watts, "watts", "W")
    limiting = limits.positive(limiting_volts, "limiting_volts", "V")
    return limits.as_given(np.minimum(np.sqrt(watts * ohms), limiting))


def limited_by(ohms, watts, limiting_volts):
    """Return which of the two limits comes first for a resistor.

    Parameters
    ----------
    ohms, watts, limiting_volts : float
        As for `volts_rms_limit`, one part at a time [ohm], [W], [V].

    Returns
    -------
    limit : str
        'power' or 'voltage' [-].

    Raises
    ------
    ValueError
        As `volts_rms_limit`.

    Notes
    -----
    Power comes first up to and including the resistance where both meet.

    References
    ----------
    IEC 60115-1.

    Examples
    --------
    >>> limited_by(40e3, 0.25, 250.0), limited_by(1e6, 0.25, 250.0)
    ('power', 'voltage')
    """
    limit = volts_rms_limit(ohms, watts, limiting_volts)
    return "power" if watts * ohms <= limit * limit * (1.0 + 1e-12) else "voltage"


def critical_ohms(rated_watts, limiting_volts):
    """Return the resistance above which voltage, not power, is the limit.

    Parameters
    ----------
    rated_watts : float or array
        Rated dissipation, not derated [W].
    limiting_volts : float or array
        Limiting element voltage, DC or AC rms [V].

    Returns
    -------
    ohms : float or ndarray
        Critical resistance [ohm].

    Raises
    ------
    ValueError
        If a value is not above zero.

    Notes
    -----
    ``limiting_volts**2 / rated_watts``.

    References
    ----------
    IEC 60115-1, critical resistance.

    Examples
    --------
    >>> critical_ohms(0.4, 200.0)
    100000.0
    """
    volts = limits.positive(limiting_volts, "limiting_volts", "V")
    return volts * volts / limits.positive(rated_watts, "rated_watts", "W")


def share_of_string(total_volts, count, tolerance_percent=0.0):
    """Return the voltage across the worst-placed of equal resistors in series.

    Parameters
    ----------
    total_volts : float or array
        Voltage across the whole string, peak or rms [V].
    count : int or array
        Number of resistors, one or more [-].
    tolerance_percent : float or array
        Tolerance of each, 0 to 50; 0 gives the nominal share [%].

    Returns
    -------
    volts : float or ndarray
        Highest voltage that one of them can see, in the measure given [V].

    Raises
    ------
    ValueError
        If the voltage is negative, the count below one or the tolerance out of range.

    Notes
    -----
    One high, all others low: ``total (1 + t) / ((1 + t) + (n - 1) (1 - t))``.

    References
    ----------
    Kirchhoff's voltage law, derived here.

    Examples
    --------
    >>> share_of_string(360.0, 3), round(share_of_string(360.0, 3, 10.0), 1)
    (120.0, 136.6)
    """
    total = limits.not_negative(total_volts, "total_volts", "V")
    count = limits.between(count, "count", "resistors", 1.0, 1000.0)
    share = limits.percent(tolerance_percent, "tolerance_percent") / 100.0
    high, low = 1.0 + share, 1.0 - share
    return total * high / (high + (count - 1.0) * low)
