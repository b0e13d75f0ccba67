"""Writes a value as people read it. Reads nothing."""

from decimal import ROUND_HALF_UP, Context, Decimal
from math import isclose, isfinite

from helpers.quantities.glossary import entry
from helpers.quantities.units import PREFIXES, with_symbol

# The letter of each tolerance in per cent, printed behind a resistor's letter code.
_TOLERANCES = {None: "", 0.1: "B", 0.25: "C", 0.5: "D", 1: "F", 2: "G", 5: "J", 10: "K", 20: "M"}


def joined(number, unit):
    """Number and unit with a no-break space between, none before the sign of an angle."""
    return number + ("" if unit in ("", "°") else "\u00a0") + unit


def rounded(value, digits):
    """Mantissa, as text, and power of ten of a value in significant digits, halves away from zero.

    Trailing zeros are dropped.
    Fifteen digits first: 10.95 as a computer keeps it lies a trace below, and people write 11.
    """
    if not isfinite(value) or not 1 <= digits <= 15:
        raise ValueError(f"{value!r} with {digits!r} digits cannot be written; digits are 1 to 15")
    shown = Context(digits, ROUND_HALF_UP).create_decimal(f"{value + 0.0:.15g}").normalize()
    mantissa, _, power = f"{shown:e}".partition("e")
    return mantissa, int(power)


def _number(value, exponent, digits):
    """Decimal text of value / 10**exponent, rounded once and without trailing zeros."""
    mantissa, power = rounded(value, digits)
    text = f"{mantissa}e{power - exponent}"
    if -7 < power - exponent < 12:
        text = f"{Decimal(text):f}"
    return text.replace("-", "\u2212")


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


def write_letter_code(ohms: float, tolerance_percent: float | None = None) -> str:
    """Write a resistance as its letter code.

    Parameters
    ----------
    ohms : float
        Resistance [Ω], 1 mΩ to 999.9 GΩ, with at most four significant digits.
    tolerance_percent : float, optional
        Tolerance [%] that has a letter.

    Returns
    -------
    code : str
        Such as `4K7J`; at least two digits are written, as in `1K0`.

    Raises
    ------
    ValueError
        The resistance or the tolerance has no letter code.

    Notes
    -----
    The first letter stands where the decimal point would be (R ohms, K, M, G; L milliohms), the
    last is the tolerance: in `47K` the K is kilo, in `47KK` the second K is 10 %.

    References
    ----------
    IEC 60062:2016, clauses 4 and 5.

    Examples
    --------
    >>> write_letter_code(4700, 5)
    '4K7J'
    """
    mantissa, power = rounded(ohms, 4)
    whole_code = isclose(float(f"{mantissa}e{power}"), ohms, rel_tol=1e-9)
    if ohms <= 0 or not -3 <= power <= 11 or not whole_code:
        raise ValueError(
            f"{ohms!r} Ω has no letter code: it needs 1 mΩ to 999.9 GΩ and at most four digits"
        )
    if tolerance_percent not in _TOLERANCES:
        raise ValueError(f"{tolerance_percent!r} % has no letter; these have: {[*_TOLERANCES][1:]}")
    thousands = -1 if power < -1 else max(power, 0) // 3
    before = power - 3 * thousands + 1
    digits = mantissa.replace(".", "").ljust(max(before, 2), "0")
    letter, tolerance = "RKMGL"[thousands], _TOLERANCES[tolerance_percent]
    return digits[:before] + letter + digits[before:] + tolerance


def volts(value):
    """Write volts with a prefix."""
    return write(value, "voltage")


def milliamps(amps):
    """Write amps in milliamps, however few."""
    return write_as(amps, "mA")


def ohms(value):
    """Write ohms with a prefix."""
    return write(value, "resistance")


def midway(value, name):
    """Write a figure in the middle of a sum: with a digit more, so that the sum comes out."""
    return write(value, name, digits=4)
