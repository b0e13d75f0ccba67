"""Writes a value as people read it. Reads nothing."""

from decimal import ROUND_HALF_UP, Context
from functools import cache
from math import isfinite

from helpers.quantities.glossary import entry
from helpers.quantities.units import PREFIXES, with_symbol


def joined(number, unit):
    return number + ("" if unit in ("", "°") else "\u00a0") + unit


@cache
def _rounding(digits):
    return Context(prec=digits, rounding=ROUND_HALF_UP)


def rounded(value, digits):
    """Mantissa, as text, and power of ten of a value in significant digits, halves away from zero.

    Fifteen digits first: 10.95 as a computer keeps it lies a trace below, and people write 11.
    """
    if not isfinite(value) or not 1 <= digits <= 15:
        raise ValueError(f"{value!r} with {digits!r} digits cannot be written; digits are 1 to 15")
    shown = _rounding(digits).create_decimal(f"{value + 0.0:.15g}")
    mantissa, _, power = f"{shown:.{digits - 1}e}".partition("e")
    return mantissa, int(power)


def _number(value, exponent, digits):
    """Decimal text of value / 10**exponent, rounded once and without trailing zeros."""
    mantissa, power = rounded(value, digits)
    power -= exponent
    tail = "" if -7 < power < 12 else f"e{power}"
    if not tail:
        mantissa = f"{float(f'{mantissa}e{power}'):.{max(0, digits - 1 - power)}f}"
    if "." in mantissa:
        mantissa = mantissa.rstrip("0").rstrip(".")
    return (mantissa + tail).replace("-", "\u2212")


def write(value: float, name: str, digits: int = 3) -> str:
    """Write a value as people read it, with an SI prefix and a no-break space.

    Parameters
    ----------
    value : float
        The value [the glossary's unit].
    name : str
        A name of `GLOSSARY`.
    digits : int, optional
        Significant digits [-], 1 to 15; trailing zeros are dropped.

    Returns
    -------
    text : str
        Such as `1.5 mA`.

    Raises
    ------
    ValueError
        The value is not finite, or name or digits are not possible.

    Notes
    -----
    The power of ten is a multiple of three and the number before it lies from 1 to 999. Four
    digits or more can print `1.234 kΩ`, which `read` asks back as it would from anyone.

    References
    ----------
    Space before the unit, none before °: SI Brochure, 9th edition, section 5.4.3.

    Examples
    --------
    >>> write(33_000, "resistance") == "33\\u00a0kΩ"
    True
    """
    quantity, exponent = entry(name), 0
    if quantity.prefixed:
        exponent = min(max(rounded(value, digits)[1] // 3 * 3, -12), 9)
    return joined(_number(value, exponent, digits), PREFIXES[exponent][0] + quantity.unit)


def write_as(value: float, unit: str, digits: int = 3) -> str:
    """Write a value in one given unit, such as 0.015 A in mA.

    Parameters
    ----------
    value : float
        The value [the glossary's unit].
    unit : str
        A unit's symbol, with or without prefix, exactly as written; `""` is a ratio.
    digits : int, optional
        Significant digits [-], 1 to 15; trailing zeros are dropped.

    Returns
    -------
    text : str
        Such as `15 mA`.

    Raises
    ------
    ValueError
        The unit is not known, the value is not finite, or digits are not possible.

    Examples
    --------
    >>> write_as(0.015, "mA") == "15\\u00a0mA"
    True
    """
    known = with_symbol(unit)
    return joined(_number(value / known.scale, known.exponent, digits), known.symbol)


def volts(value):
    return write(value, "voltage")


def milliamps(amps):
    return write_as(amps, "mA")


def ohms(value):
    return write(value, "resistance")


def midway(value, name):
    """Write a figure in the middle of a sum: with a digit more, so that the sum comes out."""
    return write(value, name, digits=4)
