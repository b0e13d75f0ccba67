"""Quantities: what the course measures, how people type it, and how it is shown to them.

It must never evaluate text, never guess where a reading could mean two things, and import
nothing of ours: everything else stands on it.
"""

import re
import unicodedata
from dataclasses import dataclass
from math import inf, isclose, isfinite, pi
from numbers import Real
from typing import NamedTuple


@dataclass(frozen=True)
class Quantity:
    """One glossary entry; sizes are in `unit`, zero is always allowed besides them."""

    name: str
    symbol: str
    unit: str
    meaning: str
    smallest: float  # the smallest and the largest size, sign left out, that the course meets
    largest: float
    lowest: float = 0.0  # no value can lie below it: 0 for what is never negative
    prefixed: bool = True  # written with milli, kilo and the like


GLOSSARY = {
    quantity.name: quantity
    for quantity in (
        Quantity("voltage", "V", "V", "the push between two points", 1e-6, 1e4, -inf),
        Quantity("current", "I", "A", "the flow of charge through a part", 1e-9, 100, -inf),
        Quantity("resistance", "R", "Ω", "volts needed for each amp", 0.1, 1e8),
        Quantity("power", "P", "W", "energy turned over each second", 1e-9, 1e4),
        Quantity("capacitance", "C", "F", "charge stored for each volt", 1e-12, 0.1),
        Quantity("frequency", "f", "Hz", "cycles each second", 0.1, 1e7),
        Quantity("time", "t", "s", "how long it takes", 1e-9, 1e6),
        Quantity("energy", "E", "Wh", "power used over time", 1e-9, 1e6),
        Quantity("charge", "Q", "C", "current carried over time", 1e-9, 1, -inf),
        Quantity("length", "l", "m", "distance, thickness or gap", 1e-6, 1e3),
        Quantity("angle", "α", "°", "place in the mains cycle", 1e-3, 3600, -inf, False),
        Quantity("percent", "p", "%", "parts in a hundred", 1e-3, 1000, -inf, False),
        Quantity("ratio", "r", "", "one size divided by another", 1e-6, 1e6, -inf, False),
        Quantity("temperature", "T", "°C", "how hot it is", 1e-2, 3000, -273.15, False),
        Quantity("temperature rise", "ΔT", "K", "how much hotter", 1e-3, 3000, -inf, False),
        Quantity("thermal resistance", "Rth", "K/W", "rise per watt", 1e-3, 1e4, 0.0, False),
    )
}


class QuantityError(ValueError):
    """What was typed gives no value; the message is for the person who typed it."""


class NotUnderstood(QuantityError):
    """It cannot be read, has another quantity's unit, or is impossible."""


class Ambiguous(QuantityError):
    """It could mean two things, so it is asked back; the message carries both."""


@dataclass(frozen=True)
class Reading:
    """A value [the glossary's unit] and, in engineering form, what was understood."""

    value: float
    understood: str


class _Unit(NamedTuple):
    name: str
    symbol: str
    word: str
    exponent: int
    scale: float
    alone: bool  # a prefix, or nothing at all, standing for the quantity's own unit


_PREFIXES = {
    -12: ("p", "pico"),
    -9: ("n", "nano"),
    -6: ("µ", "micro", "u"),
    -3: ("m", "milli"),
    0: ("", ""),
    3: ("k", "kilo"),
    6: ("M", "mega"),
    9: ("G", "giga"),
}
# Size in the glossary's unit; then symbol, word and other spellings. Where two quantities share
# a symbol, the first is the one that write_as means.
_UNIT_ROWS = (
    ("voltage", 1, "V volt volts"),
    ("current", 1, "A ampere amperes amp amps"),
    ("resistance", 1, "Ω ohm ohms R"),
    ("power", 1, "W watt watts"),
    ("capacitance", 1, "F farad farads"),
    ("frequency", 1, "Hz hertz"),
    ("time", 1, "s second seconds sec secs"),
    ("time", 60, "min minute minutes mins"),
    ("time", 3600, "h hour hours hr hrs"),
    ("energy", 1, "Wh watthour watthours"),
    ("energy", 1 / 3600, "J joule joules"),
    ("charge", 1, "C coulomb coulombs"),
    ("length", 1, "m metre metres meter meters"),
    ("length", 0.01, "cm centimetre centimetres centimeter centimeters"),
    ("angle", 1, "° degree degrees deg"),
    ("angle", 180 / pi, "rad radian radians"),
    ("percent", 1, "% percent"),
    ("ratio", 1, "x times"),
    ("ratio", 0.01, "% percent"),
    ("temperature", 1, "°C celsius degC degreeC degreesC C"),
    ("temperature rise", 1, "K kelvin kelvins °C celsius degC degreeC degreesC C"),
    ("thermal resistance", 1, "K/W kelvin/watt °C/W degC/W C/W"),
)
_NEVER_PREFIXED = ("min", "h", "cm", "rad")


def _unit_table():
    """Every spelling -> {quantity: unit}, in small letters but for the prefixes M and G."""
    table = {}

    def add(name, scale, symbol, word, spellings, alone):
        prefixed = GLOSSARY[name].prefixed and symbol not in _NEVER_PREFIXED
        for exponent in _PREFIXES if prefixed else (0,):
            starts = _PREFIXES[exponent]
            unit = _Unit(name, starts[0] + symbol, starts[1] + word, exponent, scale, alone)
            for key in (start + spelling.lower() for start in starts for spelling in spellings):
                table.setdefault(key, {}).setdefault(name, unit)

    own_words = {}
    for name, scale, text in _UNIT_ROWS:
        symbol, word, *_ = spellings = text.split()
        own_words.setdefault(name, word)
        add(name, scale, symbol, word, spellings, alone=False)
    for name, word in own_words.items():  # last, so that "m" of a length stays a metre
        add(name, 1, GLOSSARY[name].unit, word, [""], alone=name != "ratio")
    for short, whole in (("kilohm", "kiloohm"), ("megohm", "megaohm")):
        table[short] = table[short + "s"] = table[whole]
    table["meg"] = table["mega"]
    return table


_UNITS = _unit_table()
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
_CODE_LETTERS = {"resistance": "RrKkMmG", "capacitance": "pPnNuUµmMF"}
_LETTER_CODE = re.compile(r"([0-9]{0,4})([RKMGL])([0-9]{0,4})([BCDFGJKM]?)")
_LETTER_EXPONENTS = {"L": -3, "R": 0, "K": 3, "M": 6, "G": 9}
_TOLERANCES = {"B": 0.1, "C": 0.25, "D": 0.5, "F": 1.0, "G": 2.0, "J": 5.0, "K": 10.0, "M": 20.0}


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
    quantity = _quantity(name)
    unit = _spelled(bare_unit or "", name)
    if unit is None:
        raise ValueError(f"bare_unit {bare_unit!r} is no unit of {name}; try {quantity.unit!r}")
    typed, quoted = _number_text(text) if _is_number(text) else _cleaned(text, quantity)
    parts = _TYPED.fullmatch(typed)
    if parts:
        sign, digits, power, spelling = parts.groups()
        unit = _unit(spelling, quantity, quoted) if spelling else unit
        exact = _is_number(text)
        mantissa = digits if exact else _mantissa(parts, typed, quoted, quantity)
    else:
        sign, mantissa, spelling = _code_parts(typed, quoted, quantity)
        unit, power = _spelled(spelling, name), None
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
    _refuse_impossible(value, mantissa, quoted, quantity)
    return Reading(value, write(value, name, digits=6))


def _quantity(name):
    if name not in GLOSSARY:
        raise ValueError(f"{name!r} is not in the glossary, which has: {', '.join(GLOSSARY)}")
    return GLOSSARY[name]


def _quoted(text):
    shown = repr(text[: _LONGEST + 1])[1:-1]
    return f"“{shown if len(shown) <= _LONGEST else shown[: _LONGEST - 1] + '…'}”"


def _hint(quantity):
    return f"Type one number and its unit, such as {_joined('4.7', quantity.unit)}."


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


def _cleaned(text, quantity):
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
    if not any(map(str.isdigit, typed)):
        raise NotUnderstood(f"{quoted if typed else 'The answer'} has no number. {_hint(quantity)}")
    return typed, quoted


def _spelled(spelling, name):
    key = spelling.replace(" ", "").replace("-", "")
    for form in (key[:1] + key[1:].lower(), key.lower()):  # "Ma" is mega, "Volts" is "volts"
        if name in _UNITS.get(form, ()):
            return _UNITS[form][name]
    return None


def _owned(spelling):
    """The units, prefixes standing alone left out, that are spelled like this."""
    return [unit for name in GLOSSARY if (unit := _spelled(spelling, name)) and not unit.alone]


def _unit(spelling, quantity, quoted):
    unit = _spelled(spelling, quantity.name)
    if unit is None:
        shown = spelling.strip()
        owners = [] if shown == "k" else _owned(spelling)  # k alone is the prefix, not kelvin
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
            tail = typed[parts.start(2) + len(digits) :]
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
    if tail and _spelled(tail, quantity.name) != _spelled(quantity.unit, quantity.name):
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
        return _spelled("min", "time") if spelling == "m" else None
    other = _spelled(spelling[0].swapcase() + spelling[1:], unit.name)
    return other if other != unit else None


def _usual(value, quantity):
    return value == 0 or quantity.smallest <= abs(value) <= quantity.largest


def _refuse_impossible(value, mantissa, quoted, quantity):
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


def _joined(number, unit):
    return number + ("" if unit in ("", "°") else "\u00a0") + unit


def _rounded(value, digits):
    """Mantissa, as text, and power of ten of a value in significant digits."""
    if not isfinite(value) or not 1 <= digits <= 15:
        raise ValueError(f"{value!r} with {digits!r} digits cannot be written; digits are 1 to 15")
    mantissa, _, power = f"{value + 0.0:.{digits - 1}e}".partition("e")
    return mantissa, int(power)


def _number(value, exponent, digits):
    """Decimal text of value / 10**exponent, rounded once and without trailing zeros."""
    mantissa, power = _rounded(value, digits)
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
    quantity, exponent = _quantity(name), 0
    if quantity.prefixed:
        exponent = min(max(_rounded(value, digits)[1] // 3 * 3, -12), 9)
    return _joined(_number(value, exponent, digits), _PREFIXES[exponent][0] + quantity.unit)


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
    units = [known for known in _owned(unit) if known.symbol == unit]
    if not units:
        raise ValueError(f"{unit!r} is not a unit of the glossary; type one such as 'mA' or 'kΩ'")
    return _joined(_number(value / units[0].scale, units[0].exponent, digits), units[0].symbol)


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
    typed, quoted = _cleaned(code, GLOSSARY["resistance"])
    parts = _LETTER_CODE.fullmatch(typed if "m" in typed else typed.upper())
    if not parts or not parts[1] + parts[3]:
        raise NotUnderstood(
            f"{quoted} is not a resistor's letter code. Put R, K, M, G or L (milliohm) where the "
            f"decimal point would be, then the tolerance letter if there is one, such as 4K7J."
        )
    whole, letter, fraction, tolerance = parts.groups()
    ohms = float(f"{whole or 0}.{fraction or 0}e{_LETTER_EXPONENTS[letter]}")
    _refuse_impossible(ohms, whole + fraction, quoted, GLOSSARY["resistance"])
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
    mantissa, power = _rounded(ohms, 4)
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
