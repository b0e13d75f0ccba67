"""The letter codes printed on resistors, such as 4K7J, both ways. IEC 60062."""

import re
from math import isclose

from helpers.quantities.glossary import GLOSSARY
from helpers.quantities.reading import Asked, NotUnderstood, cleaned, refuse_impossible
from helpers.quantities.writing import rounded

_LETTER_CODE = re.compile(r"([0-9]{0,4})([RKMGL])([0-9]{0,4})([BCDFGJKM]?)")
_LETTER_EXPONENTS = {"L": -3, "R": 0, "K": 3, "M": 6, "G": 9}
_TOLERANCES = {"B": 0.1, "C": 0.25, "D": 0.5, "F": 1.0, "G": 2.0, "J": 5.0, "K": 10.0, "M": 20.0}


def read_letter_code(code: str) -> tuple[float, float | None]:
    """Read a resistor's letter code, with or without its tolerance letter.

    Parameters
    ----------
    code : str
        Such as `4K7J`; small k and r are read too.

    Returns
    -------
    ohms : float
        Resistance [Ω].
    tolerance_percent : float or None
        Tolerance [%], None where the code has no letter for it.

    Raises
    ------
    NotUnderstood
        It is not a letter code, or no resistance that this course meets.

    Notes
    -----
    The first letter stands where the decimal point would be (R ohms, K, M, G; L milliohms), the
    last is the tolerance: in `47K` the K is kilo, in `47KK` the second K is 10 %.

    References
    ----------
    IEC 60062:2016, clauses 4 and 5.

    Examples
    --------
    >>> read_letter_code("4K7J")
    (4700.0, 5.0)
    """
    typed, quoted, *words = cleaned(code, Asked(GLOSSARY["resistance"], "Ω"))
    parts = _LETTER_CODE.fullmatch(typed if "m" in typed else typed.upper())
    if any(words) or not parts or not parts[1] + parts[3]:
        raise NotUnderstood(
            f"{quoted} is not a resistor's letter code. Put R, K, M, G or L (milliohm) where the "
            f"decimal point would be, then the tolerance letter if there is one, such as 4K7J."
        )
    whole, letter, fraction, tolerance = parts.groups()
    ohms = float(f"{whole or 0}.{fraction or 0}e{_LETTER_EXPONENTS[letter]}")
    refuse_impossible(ohms, whole + fraction, quoted, GLOSSARY["resistance"])
    return ohms, _TOLERANCES.get(tolerance)


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
    tolerances = {percent: letter for letter, percent in _TOLERANCES.items()} | {None: ""}
    if tolerance_percent not in tolerances:
        raise ValueError(
            f"{tolerance_percent!r} % has no letter; these have: {sorted(_TOLERANCES.values())}"
        )
    letter = "L" if power < -1 else "RKMG"[max(power, 0) // 3]
    before = power - _LETTER_EXPONENTS[letter] + 1
    digits = mantissa.replace(".", "").rstrip("0").ljust(max(before, 2), "0")
    return digits[:before] + letter + digits[before:] + tolerances[tolerance_percent]
