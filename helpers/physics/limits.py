"""Refuse impossible input, with a message that says what was read and what to do.

Every other module here asks these few functions first. They know numbers and units' names,
never what the numbers are for; a plain float passes through untouched, so that a single
call stays quick, and anything else becomes an array of floats.
"""

import numpy as np


def finite(value, name, unit):
    """Return the value as a float or an array of floats; refuse what is not a real number.

    Parameters
    ----------
    value : float or array
        What was read, in the unit named [-].
    name, unit : str
        The words for the message.

    Returns
    -------
    value : float or ndarray
        The same numbers, a plain float where one number was given.

    Raises
    ------
    ValueError
        If a value is not finite or cannot be read as a number.

    Notes
    -----
    ``-inf < value < inf``; not a number is refused as well.

    Examples
    --------
    >>> finite(12, "volts", "V")
    12.0
    >>> finite("12 V", "volts", "V")
    Traceback (most recent call last):
    ...
    ValueError: volts was read as '12 V'; it must be a number in V.
    """
    if type(value) is float and -np.inf < value < np.inf:
        return value
    return _checked(value, name, unit, "", np.isfinite, "")


def positive(value, name, unit, slip=""):
    """Return the value; refuse zero, negative and infinite numbers.

    Parameters
    ----------
    value : float or array
        What was read, in the unit named [-].
    name, unit, slip : str
        The words for the message; `slip` is a sentence about the likely cause.

    Returns
    -------
    value : float or ndarray
        The same numbers.

    Raises
    ------
    ValueError
        If a value is not above zero and finite.

    Notes
    -----
    ``0 < value < inf``.

    Examples
    --------
    >>> positive(0, "ohms", "ohm", "Is the resistor missing?")
    Traceback (most recent call last):
    ...
    ValueError: ohms was read as 0 ohm; it must be above 0 ohm. Is the resistor missing?
    """
    if type(value) is float and 0.0 < value < np.inf:
        return value
    rule = f"it must be above 0 {unit}"
    return _checked(value, name, unit, slip, lambda v: (v > 0.0) & (v < np.inf), rule)


def not_negative(value, name, unit, slip=""):
    """Return the value; refuse negative and infinite numbers, allow zero.

    Parameters
    ----------
    value : float or array
        What was read, in the unit named [-].
    name, unit, slip : str
        The words for the message; `slip` is a sentence about the likely cause.

    Returns
    -------
    value : float or ndarray
        The same numbers.

    Raises
    ------
    ValueError
        If a value is below zero or not finite.

    Notes
    -----
    ``0 <= value < inf``.

    Examples
    --------
    >>> not_negative(-2.0, "led_volts", "V", "Leave the sign out.")
    Traceback (most recent call last):
    ...
    ValueError: led_volts was read as -2 V; it must be 0 V or more. Leave the sign out.
    """
    if type(value) is float and 0.0 <= value < np.inf:
        return value
    rule = f"it must be 0 {unit} or more"
    return _checked(value, name, unit, slip, lambda v: (v >= 0.0) & (v < np.inf), rule)


def between(value, name, unit, lowest, highest, slip=""):
    """Return the value; refuse numbers outside lowest to highest (both allowed).

    Parameters
    ----------
    value : float or array
        What was read, in the unit named [-].
    name, unit, slip : str
        The words for the message; `slip` is a sentence about the likely cause.
    lowest, highest : float
        The limits, in the unit named [-].

    Returns
    -------
    value : float or ndarray
        The same numbers.

    Raises
    ------
    ValueError
        If a value lies outside the limits or is not finite.

    Notes
    -----
    ``lowest <= value <= highest``.

    Examples
    --------
    >>> between(200, "firing_degrees", "deg", 0, 180, "Was a whole cycle meant?")
    Traceback (most recent call last):
    ...
    ValueError: firing_degrees was read as 200 deg; it must lie between 0 and 180 deg. \
Was a whole cycle meant?
    """
    if type(value) is float and lowest <= value <= highest:
        return value
    rule = f"it must lie between {lowest:g} and {highest:g} {unit}"
    return _checked(value, name, unit, slip, lambda v: (v >= lowest) & (v <= highest), rule)


def present(value, name, unit):
    """Return a value above zero, or infinite where the part is not there.

    Parameters
    ----------
    value : float or array
        What was read, in the unit named [-].
    name, unit : str
        The words for the message.

    Returns
    -------
    value : float or ndarray
        The same numbers.

    Raises
    ------
    ValueError
        If a value is zero, negative or no number.

    Notes
    -----
    ``0 < value <= inf``.

    Examples
    --------
    >>> present(np.inf, "bleeder_ohms", "ohm")
    inf
    """
    if type(value) is float and value > 0.0:
        return value
    slip = "A short circuit is a fault of its own; give inf for a part that is not there."
    rule = f"it must be above 0 {unit}"
    return _checked(value, name, unit, slip, lambda v: v > 0.0, rule)


def share(value, name):
    """Return a share of 0 to 1; refuse any other, as `between` does.

    Examples
    --------
    >>> share(50, "reflectance")
    Traceback (most recent call last):
    ...
    ValueError: reflectance was read as 50; it must lie between 0 and 1. Half is 0.5, not 50.
    """
    return between(value, name, "", 0.0, 1.0, "Half is 0.5, not 50.")


def percent(value, name, most=50.0):
    """Return parts in a hundred from 0 to a most; refuse any other, as `between` does.

    Examples
    --------
    >>> percent(10, "tolerance_percent")
    10.0
    """
    return between(value, name, "%", 0.0, most, "Ten per cent is 10, not 0.1.")


def one_of(value, name, allowed):
    """Return the word if it is one of those allowed; refuse any other and list them.

    Parameters
    ----------
    value : str
        The word that was read [-].
    name : str
        What the word is for.
    allowed : iterable of str
        The words that are known.

    Returns
    -------
    value : str
        The same word.

    Raises
    ------
    ValueError
        If the word is not among those allowed.

    Notes
    -----
    Words are compared as they are, capitals included.

    Examples
    --------
    >>> one_of("E25", "series", ("E12", "E24"))
    Traceback (most recent call last):
    ...
    ValueError: series was read as 'E25'; it must be one of E12, E24.
    """
    if not isinstance(value, str) or value not in allowed:
        raise ValueError(f"{name} was read as {value!r}; it must be one of {', '.join(allowed)}.")
    return value


def as_given(value):
    """Return an array as it is, and a single number, truth or word as Python's own kind.

    Parameters
    ----------
    value : float or array
        What numpy made of one value or of many.

    Examples
    --------
    >>> as_given(np.float64(1.5)), as_given(np.array(True))
    (1.5, True)
    """
    return value if np.ndim(value) else np.asarray(value).item()


def alike(*values):
    """Return values in the shape that they have together, each as `as_given` gives it.

    Parameters
    ----------
    *values : float or array
        Numbers, truths or words.

    Examples
    --------
    >>> [np.shape(value) for value in alike(1.0, np.zeros(3))]
    [(3,), (3,)]
    """
    return [as_given(value) for value in np.broadcast_arrays(*values)]


def _checked(value, name, unit, slip, fits, rule):
    try:
        numbers = np.asarray(value, dtype=float)
    except (TypeError, ValueError):
        raise ValueError(f"{name} was read as {value!r}; it must be a number in {unit}.") from None
    wrong = numbers[~fits(numbers)]
    if wrong.size:
        rule = rule if np.isfinite(wrong[0]) else f"it must be a finite number in {unit}"
        read = f"{wrong[0]:g} {unit}".strip()
        raise ValueError(f"{name} was read as {read}; {rule.strip()}. {slip}".strip())
    return as_given(numbers)
