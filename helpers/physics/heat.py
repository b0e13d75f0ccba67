"""How warm a part gets, how soon, and how warm the box around it.

One thermal resistance and one time constant stand for the part; both come from its sheet or a
measurement. Knows no resistor type and no circuit.
"""

import numpy as np

from helpers.physics import limits, ratings

SETTLED_AFTER = 5.0
"""Time constants after which a part counts as settled: rule of this course; 0.7 % of the rise is
still to come then [-]."""


def final_celsius(watts, kelvin_per_watt, ambient_celsius):
    """Return the temperature that a part settles at.

    Parameters
    ----------
    watts : float or array
        Power it turns into heat [W].
    kelvin_per_watt : float or array
        Thermal resistance to the air [K/W].
    ambient_celsius : float or array
        Temperature of that air [degC].

    Returns
    -------
    celsius : float or ndarray
        Settled temperature [degC].

    Raises
    ------
    ValueError
        If the power is negative or the thermal resistance not above zero.

    Notes
    -----
    ``ambient + watts * kelvin_per_watt``. Convection and radiation grow with the rise, so a
    resistance measured at a small rise overstates a large one a little.

    References
    ----------
    Thermal Ohm's law; Incropera, Fundamentals of Heat and Mass Transfer.

    Examples
    --------
    >>> final_celsius(0.2, 200.0, 25.0)
    65.0
    """
    watts = limits.not_negative(watts, "watts", "W")
    resistance = limits.positive(kelvin_per_watt, "kelvin_per_watt", "K/W")
    return limits.finite(ambient_celsius, "ambient_celsius", "degC") + watts * resistance


def celsius_after(seconds, watts, kelvin_per_watt, time_constant_seconds, ambient_celsius):
    """Return the temperature of a part some time after it was switched on cold.

    Parameters
    ----------
    seconds : float or array
        Time since switching on [s].
    watts : float or array
        Power it turns into heat [W].
    kelvin_per_watt : float or array
        Thermal resistance to the air [K/W].
    time_constant_seconds : float or array
        Time for 63 % of the rise [s].
    ambient_celsius : float or array
        Temperature of the air and of the part at the start [degC].

    Returns
    -------
    celsius : float or ndarray
        Temperature then [degC].

    Raises
    ------
    ValueError
        If a time or the power is negative, or a constant not above zero.

    Notes
    -----
    ``ambient + rise * (1 - exp(-seconds / time_constant))``. The lead wires and the box warm up
    more slowly, so a real part creeps on for a while.

    References
    ----------
    Lumped capacitance method; Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.

    Examples
    --------
    >>> round(celsius_after(90.0, 0.2, 200.0, 90.0, 25.0), 2)
    50.28
    """
    seconds = limits.not_negative(seconds, "seconds", "s")
    constant = limits.positive(time_constant_seconds, "time_constant_seconds", "s")
    final = final_celsius(watts, kelvin_per_watt, ambient_celsius)
    ambient = limits.finite(ambient_celsius, "ambient_celsius", "degC")
    return limits.as_given(ambient - (final - ambient) * np.expm1(-seconds / constant))


def seconds_to(celsius, watts, kelvin_per_watt, time_constant_seconds, ambient_celsius):
    """Return how long a part takes from cold to a temperature.

    Parameters
    ----------
    celsius : float or array
        Temperature to reach, at or above the ambient [degC].
    watts, kelvin_per_watt, time_constant_seconds, ambient_celsius : float or array
        As for `celsius_after` [W], [K/W], [s], [degC].

    Returns
    -------
    seconds : float or ndarray
        Time; infinite if it never gets there [s].

    Raises
    ------
    ValueError
        If the temperature lies below the ambient, or as `celsius_after`.

    Notes
    -----
    ``-time_constant * log(1 - rise wanted / rise at last)``.

    References
    ----------
    Derived here, the inverse of `celsius_after`.

    Examples
    --------
    >>> round(seconds_to(45.0, 0.2, 200.0, 90.0, 25.0), 2)
    62.38
    """
    constant = limits.positive(time_constant_seconds, "time_constant_seconds", "s")
    rise = limits.not_negative(
        limits.finite(celsius, "celsius", "degC")
        - limits.finite(ambient_celsius, "ambient_celsius", "degC"),
        "celsius above ambient_celsius", "K", "A warm part does not cool below its air.",
    )  # fmt: skip
    full_rise = np.asarray(final_celsius(watts, kelvin_per_watt, ambient_celsius) - ambient_celsius)
    reached = (rise < full_rise) | (np.asarray(rise) == 0.0)
    share = np.where(reached, rise, 0.0) / np.where(full_rise > 0.0, full_rise, 1.0)
    return limits.as_given(np.where(reached, -constant * np.log1p(-share), np.inf))


def kelvin_per_watt_of(
    rated_watts, knee_celsius=ratings.KNEE_CELSIUS, zero_celsius=ratings.ZERO_CELSIUS
):
    """Return the thermal resistance that a derating line implies.

    Parameters
    ----------
    rated_watts : float or array
        Rated dissipation at the knee [W].
    knee_celsius, zero_celsius : float or array
        Where the full rating ends and where nothing is left [degC].

    Returns
    -------
    kelvin_per_watt : float or ndarray
        From the hottest spot of the film to the air [K/W].

    Raises
    ------
    ValueError
        If the rating is not above zero or the limit not above the knee.

    Notes
    -----
    ``(zero - knee) / rated``: at full rating the film reaches its limit at the knee. The outside
    is cooler, the lead cooler still. Both temperatures belong to the part's own sheet: 155 degC is
    usual for many film types, 125 degC for others.

    References
    ----------
    IEC 60115-1 for the knee at 70 degC; the zero is from the part's own sheet. Derived here.

    Examples
    --------
    >>> kelvin_per_watt_of(0.5)
    170.0
    """
    span = ratings.span_kelvin(knee_celsius, zero_celsius)
    return span / limits.positive(rated_watts, "rated_watts", "W")


#: Heat transfer of one face of a wall to still air, convection and radiation together: the low
#: and safer end of the usual 8 to 12. About 10: Incropera (from memory); the range is common
#: practice, no source [W/(m2 K)].
STILL_AIR_FILM = 8.0


def films_in_series(inner=STILL_AIR_FILM, outer=STILL_AIR_FILM):
    """Return what the wall of a closed box passes from the air inside to the room.

    Parameters
    ----------
    inner, outer : float or array
        Heat transfer of the film of air on either face of the wall [W/(m2 K)].

    Returns
    -------
    coefficient : float or ndarray
        Both films together, one behind the other [W/(m2 K)].

    Raises
    ------
    ValueError
        If a film is not above zero.

    Notes
    -----
    ``1 / (1 / inner + 1 / outer)``. Films of 8 to 12 give 4 to 6; the default is the low end,
    which finds the warmer box. The wall itself is left out: a thin one of plastic or metal adds
    little. A box that is wrapped, covered or crowded passes less.

    References
    ----------
    Resistances in series, overall heat transfer coefficient; Incropera, Fundamentals of Heat and
    Mass Transfer, chapter 3.

    Examples
    --------
    >>> films_in_series(), films_in_series(12.0, 12.0)
    (4.0, 6.0)
    """
    inner = limits.positive(inner, "inner", "W/(m2 K)")
    outer = limits.positive(outer, "outer", "W/(m2 K)")
    return inner * outer / (inner + outer)


#: From the air in a closed box to the room, the safer end of 4 to 6 [W/(m2 K)].
CLOSED_BOX = films_in_series()


def box_rise_kelvin(watts, square_metres, watts_per_square_metre_kelvin=CLOSED_BOX):
    """Return how much warmer than the room the air in a closed box gets.

    Parameters
    ----------
    watts : float or array
        All the heat set free inside [W].
    square_metres : float or array
        Outer surface that can give it off [m2].
    watts_per_square_metre_kelvin : float or array
        From the air inside to the room, as `films_in_series` [W/(m2 K)].

    Returns
    -------
    kelvin : float or ndarray
        Rise above the room, to be added to the ambient of every part inside [K].

    Raises
    ------
    ValueError
        If the power is negative or another value not above zero.

    Notes
    -----
    ``watts / (coefficient * area)``. For a box that stands free in still air. A face that lies on
    something, or on the warm pot, gives nothing off and is not counted.

    References
    ----------
    Newton's law of cooling; the coefficient as `films_in_series`.

    Examples
    --------
    >>> box_rise_kelvin(0.5, 0.005), round(box_rise_kelvin(0.5, 0.005, 6.0), 1)
    (25.0, 16.7)
    """
    area = limits.positive(square_metres, "square_metres", "m2")
    coefficient = limits.positive(
        watts_per_square_metre_kelvin, "watts_per_square_metre_kelvin", "W/(m2 K)"
    )
    return limits.not_negative(watts, "watts", "W") / (coefficient * area)
