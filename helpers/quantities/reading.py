"""Reads what people type, by a strict grammar of our own.

Must never evaluate text, and never guess where a reading could mean two things.
"""

import re
import unicodedata
from dataclasses import dataclass, replace
from functools import cache
from math import inf, isfinite
from numbers import Real

from helpers.quantities.glossary import entry
from helpers.quantities.units import owned, spelled
from helpers.quantities.writing import joined, write


class QuantityError(ValueError):
    """What was typed gives no value; the message is for the person who typed it."""


class NotUnderstood(QuantityError):
    """It cannot be read, has another quantity's unit, or is impossible."""


class Ambiguous(QuantityError):
    """It could mean two things, so it is asked back; the message carries both."""


@dataclass(frozen=True)
class Reading:
    """A value [the glossary's unit], in engineering form what was understood, and its digits."""

    value: float
    understood: str
    digits: int = 15


_BLANKS = " \t\u00a0\u2002\u2003\u2007\u2008\u2009\u200a\u202f"
_SAME = str.maketrans(
    dict.fromkeys(_BLANKS, " ")
    | {"\u03bc": "µ", "\u2126": "Ω", "\u2212": "-", "\u2019": "'", "\u00d7": "x"}
    | {"\u00ba": "°", "\u02da": "°", "\u2103": "°C"}
)
_LONGEST = 40
_FAR = 1000  # that far beyond the range a slip is still read, so that it can be explained
_FOREIGN = re.compile(r"[^0-9A-Za-z+\-.,'=%°Ωµ/ αΔ]")
_UNIT_TEXT = r" *([A-Za-zΩµ°%][A-Za-zΩµ°%/ -]*)?"
_TYPED = re.compile(r"([+-]?) *([0-9.,' ]*)(?:[eE]([+-]?[0-9]+))?" + _UNIT_TEXT)
_DECIMAL = re.compile(r"([0-9]*)[.,]((?:[0-9]{3} )*[0-9]{1,3}|[0-9]+)|([0-9]+)\.?")
_GROUPED = re.compile(
    r"(?!0{1,3}[ ',.])([0-9]{1,3}([ ',.])[0-9]{3}(?:\2[0-9]{3})*)(?:(?!\2)[.,]([0-9]+))?"
)
_CODE = re.compile(r"([+-]?) *([0-9]*)([A-DF-Za-df-zµ])([0-9]+)" + _UNIT_TEXT)
_FRACTION = re.compile(r"([0-9]{1,2}) ?/ ?(2|4|8|16)(?![0-9])")  # as ratings are printed: 1/4 W
_CODE_LETTERS = {"resistance": "RrKkMmG", "capacitance": "pPnNuUµmMF"}


def read(text: str, name: str, bare_unit: str | None = None) -> Reading:
    """Read what a person typed as a value of one quantity.

    Parameters
    ----------
    text : str, int or float
        What was typed, such as `4k7`, `1.5 mA` or `0,22 W`; a number counts as typed bare.
    name : str
        A name of `GLOSSARY`.
    bare_unit : str, optional
        Unit of a number typed without any, such as `mA`; otherwise the glossary's own.

    Returns
    -------
    reading : Reading
        The value [the glossary's unit] and what was understood.

    Raises
    ------
    NotUnderstood
        It cannot be read, has another quantity's unit, or is impossible.
    Ambiguous
        It could mean two things: `1,000`, or `33 m` for a resistance.
    ValueError
        `name` or `bare_unit` is not in the glossary: a slip of the caller.

    Notes
    -----
    A strict grammar of our own; text is never evaluated. Values up to a thousand times outside
    the glossary's range are read, so that a slip with a prefix can be explained.

    References
    ----------
    Prefixes: SI Brochure, 9th edition, table 7. Letter codes: IEC 60062:2016.

    Examples
    --------
    >>> read("4k7", "resistance").value
    4700.0
    >>> read("1,5", "current", bare_unit="mA").value
    0.0015
    """
    quantity = entry(name)
    asked = _asked(name, bare_unit)
    unit = spelled(bare_unit or "", name)
    if unit is None:
        raise ValueError(f"bare_unit {bare_unit!r} is no unit of {name}; try {quantity.unit!r}")
    typed, quoted = _number_text(text) if _is_number(text) else cleaned(text, asked)
    parts = _TYPED.fullmatch(typed)
    if parts:
        sign, digits, power, spelling = parts.groups()
        unit = _unit(spelling, asked, quoted) if spelling else unit
        exact = _is_number(text)
        mantissa = digits if exact else _mantissa(parts, typed, quoted, asked)
    else:
        sign, mantissa, spelling = _code_parts(typed, quoted, quantity)
        unit, power = spelled(spelling, name), None
    value = _value(sign, mantissa, power, unit)
    other = _other_meaning(spelling, unit)
    if other:
        second = _value(sign, mantissa, power, other)
        if name == "time" or (_usual(second, quantity) and not _usual(value, quantity)):
            number = _unmistakable(mantissa).removesuffix(".0") + (f"e{power}" if power else "")
            raise Ambiguous(
                f"{quoted} can mean {write(value, name)} or {write(second, name)}. Type "
                f"{sign}{number} {unit.word} or {sign}{number} {other.word}, whichever you mean."
            )
    refuse_impossible(value, mantissa, quoted, quantity)
    return Reading(value, write(value, name, digits=6), _significant(mantissa, typed))


@cache
def _asked(name, bare_unit):
    """The quantity as the question asks for it: messages name the question's own unit."""
    return replace(entry(name), unit=entry(name).unit if bare_unit is None else bare_unit)


def _quoted(text):
    shown = repr(text[: _LONGEST + 1])[1:-1]
    return f"“{shown if len(shown) <= _LONGEST else shown[: _LONGEST - 1] + '…'}”"


def _hint(quantity):
    what = "one number and its unit" if quantity.unit else "one number"
    return f"Type {what}, such as {joined('4.7', quantity.unit)}."


def _is_number(given):
    return not isinstance(given, str) and isinstance(given, Real) and not isinstance(given, bool)


def _number_text(given):
    try:
        number = float(given)
    except OverflowError:
        number = inf
    if not isfinite(number):
        raise NotUnderstood("The number given is too large or not a number. Check how it was made.")
    return repr(number), _quoted(repr(number))


def cleaned(text, quantity):
    """The typed text in the grammar's own characters, and as messages quote it."""
    if not isinstance(text, str):
        kind = "nothing" if text is None else f"of the kind {_quoted(type(text).__name__)}"
        raise NotUnderstood(f"The answer given is {kind}. {_hint(quantity)}")
    typed = text[: 10 * _LONGEST].strip(_BLANKS + "\r\n")
    quoted = _quoted(typed.translate(_SAME))
    if len(text) > 10 * _LONGEST or len(typed) > _LONGEST:
        raise NotUnderstood(f"{quoted} has more than {_LONGEST} characters. {_hint(quantity)}")
    typed = typed.translate(_SAME)
    foreign = _FOREIGN.search(typed)
    if foreign:
        called = unicodedata.name(foreign[0], "").lower() or f"character U+{ord(foreign[0]):04X}"
        raise NotUnderstood(
            f"{quoted} contains {_quoted(foreign[0])} ({called}), which is not read here. "
            f"{_hint(quantity)} Powers of ten are typed as 1.5e-3; nothing is calculated."
        )
    before, equals, after = typed.partition("=")
    if equals:
        symbols = {quantity.symbol.lower()} | ({"u"} if quantity.name == "voltage" else set())
        if before.strip().lower() not in symbols:
            raise NotUnderstood(
                f"{quoted} has an equals sign. Only {quantity.symbol}, for {quantity.name}, "
                f"can stand before it. {_hint(quantity)}"
            )
        typed = after.strip()
    if typed[-1:] == "." and typed[-2:-1].isalpha():
        typed = typed[:-1]
    if fraction := _FRACTION.match(typed):
        typed = f"{int(fraction[1]) / int(fraction[2]):.4f}{typed[fraction.end() :]}"
    if not any(map(str.isdigit, typed)):
        raise NotUnderstood(f"{quoted if typed else 'The answer'} has no number. {_hint(quantity)}")
    return typed, quoted


def _unit(spelling, quantity, quoted):
    unit = spelled(spelling, quantity.name)
    if unit is None:
        shown = spelling.strip()
        owners = [] if shown == "k" else owned(spelling)  # k alone is the prefix, not kelvin
        said = f"a unit of {owners[0].name}" if owners else "not a unit known here"
        raise NotUnderstood(
            f"In {quoted}, “{shown}” is {said}. The question asks for {quantity.name}: type "
            f"{quantity.unit or 'a plain number'}, or check which number is asked for."
        )
    return unit


def _mantissa(parts, typed, quoted, quantity):
    """The digits with a point for the decimal separator and without groups."""
    sign, digits, power = parts[1], parts[2].strip(), parts[3]
    if grouped := _GROUPED.fullmatch(digits):
        sure = grouped[2] in " '" or grouped[3] or digits.count(grouped[2]) > 1
        if not sure and not (power and "." in digits):  # 1.234e-3 is how programs print
            tail = typed[parts.start(2) + len(digits) :] or joined("", quantity.unit)
            one = sign + digits.replace(grouped[2], "") + tail
            other = sign + _unmistakable(digits.replace(",", ".")) + tail
            raise Ambiguous(
                f"{quoted} can be read two ways, because some countries mark thousands with a "
                f"point and some with a comma. Type {one} or {other}, whichever you mean."
            )
        if sure:
            return "".join(filter(str.isdigit, grouped[1])) + "." + (grouped[3] or "0")
    decimal = _DECIMAL.fullmatch(digits)
    if not decimal:
        raise NotUnderstood(f"{quoted} cannot be read as one number. {_hint(quantity)}")
    return f"{decimal[3] or decimal[1] or 0}.{(decimal[2] or '0').replace(' ', '')}"


def _significant(mantissa, typed):
    """How many digits of a number say something: noughts at the end of a whole number may not."""
    whole, _, fraction = mantissa.partition(".")
    shown = whole + fraction if re.search(r"[.,A-Za-zµ][0-9]", typed) else whole.rstrip("0")
    return max(1, len(shown.lstrip("0")))


def _unmistakable(mantissa):
    """The same number with anything but three decimals, so that it is not asked back again."""
    whole, _, fraction = mantissa.partition(".")
    fraction = fraction.rstrip("0") or "0"
    return f"{whole}.{fraction}" + "0" * (len(fraction) == 3)


def _code_parts(typed, quoted, quantity):
    """Sign, mantissa and letter of a letter code such as 4k7, p33 or 0R22."""
    parts = _CODE.fullmatch(typed)
    if not parts:
        raise NotUnderstood(f"{quoted} cannot be read as number, then unit. {_hint(quantity)}")
    sign, whole, letter, fraction, tail = parts.groups()
    if letter not in _CODE_LETTERS.get(quantity.name, ""):
        raise NotUnderstood(f"{quoted} is no letter code for {quantity.name}. {_hint(quantity)}")
    if tail and spelled(tail, quantity.name) != spelled(quantity.unit, quantity.name):
        raise NotUnderstood(
            f"{quoted} has “{tail}” after its letter code. If that is the tolerance, leave it "
            f"out: type {typed[: parts.end(4)]} alone."
        )
    return sign, f"{whole or 0}.{fraction}", letter


def _value(sign, mantissa, power, unit):
    # Putting the prefix into the decimal exponent rounds once: "1.5 mA" is 0.0015 exactly.
    return float(f"{sign}{mantissa}e{int(power or 0) + unit.exponent}") * unit.scale + 0.0


def _other_meaning(spelling, unit):
    """The unit that was meant if m and M were mixed up, or if m of a time meant minutes."""
    if not spelling or spelling[0] not in "mM":
        return None
    if unit.name == "time":
        return spelled("min", "time") if spelling == "m" else None
    other = spelled(spelling[0].swapcase() + spelling[1:], unit.name)
    return other if other != unit else None


def _usual(value, quantity):
    return value == 0 or quantity.smallest <= abs(value) <= quantity.largest


def refuse_impossible(value, mantissa, quoted, quantity):
    name, size = quantity.name, abs(value)
    if value < quantity.lowest:
        least = write(quantity.lowest, name, digits=5)
        raise NotUnderstood(
            f"{quoted} is impossible: {name} is never below {least}. Check the sign."
        )
    vanished = value == 0 and mantissa.strip("0.") != ""
    if vanished or size > quantity.largest * _FAR or 0 < size < quantity.smallest / _FAR:
        raise NotUnderstood(
            f"This course never meets {'an' if name[0] in 'aeiou' else 'a'} {name} of {quoted}, "
            f"only {write(quantity.smallest, name)} to {write(quantity.largest, name)}. "
            f"Check the prefix and the power of ten."
        )
