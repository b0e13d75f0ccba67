"""What the forgotten heater and the pilot light use.

Joules are shown to nobody here: the trade and the bill count in kilowatt hours. Knows no circuit.
"""

from helpers.physics import limits

HOURS_PER_YEAR = 8760.0


def kilowatt_hours(watts, hours):
    """Return the energy used in a time.

    Parameters
    ----------
    watts : float or array
        Mean power [W].
    hours : float or array
        Time [h].

    Returns
    -------
    kilowatt_hours : float or ndarray
        Energy [kWh].

    Raises
    ------
    ValueError
        If a value is negative.

    Notes
    -----
    ``watts * hours / 1000``.

    References
    ----------
    Definition of the kilowatt hour: 3.6 MJ.

    Examples
    --------
    >>> kilowatt_hours(90.0, 10.0)
    0.9
    """
    watts = limits.not_negative(watts, "watts", "W")
    return watts * limits.not_negative(hours, "hours", "h") / 1000.0
