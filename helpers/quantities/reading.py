"""Reads what people type, by a strict grammar of our own.

Must never evaluate text, and never guess where a reading could mean two things.
"""

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass
from math import inf, isfinite
from numbers import Real

from helpers.quantities.glossary import Quantity, entry
from helpers.quantities.units import owned, spelled
from helpers.quantities.words import MEASURES, unworded
from helpers.quantities.writing import joined, write


class QuantityError(ValueError):
    """What was typed gives no value; the message is for the person who typed it."""


class NotUnderstood(QuantityError):
    """It cannot be read, has another quantity's unit, or is impossible."""


class Ambiguous(QuantityError):
    """It could mean two things, so it is asked back; the message carries both."""


@dataclass(frozen=True)
class Reading:
    """A value [the glossary's unit], in engineering form what was understood, and its digits.

    `said` is the measure that was named: peak, rms, mean, each, total, or nothing; `before` and
    `after` are all words around the number, which stand in `understood` too.
    """

    value: float
    understood: str
    digits: int = 15
    said: str = ""
    before: tuple = ()
    after: tuple = ()

    def around(self, text):
        """Return another text with the words that stood around the number."""
        return " ".join((*self.before, text, *self.after))


@dataclass(frozen=True)
class Asked:
    """What a question asks for; messages name its unit, and show its example of an answer."""

    quantity: Quantity
    unit: str
    example: Callable | None = None

    @property
    def hint(self):
        """How an answer is typed, with an example."""
        shown = self.example() if self.example else joined("4.7", self.unit)
        return f"Type {'one number and its unit' if self.unit else 'one number'}, such as {shown}."


_BLANKS = " \t\u00a0\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f"
_ALIKE = "\u03bc\u2126ω\u2212\u2013\u00d7\u00ba\u02da≈\u2018\u2019“”„«»"  # as below
_SAME = str.maketrans(_BLANKS + _ALIKE, " " * len(_BLANKS) + "µΩΩ--x°°~''" + '"' * 5)
_SAME |= str.maketrans({"\u2103": "°C"})
_LONGEST = 40
_ALTERNATING = ("voltage", "current", "power")  # what has a peak and an rms value
_FAR = 1000  # that far beyond the range a slip is still read, so that it can be explained
_FOREIGN = re.compile(r"[^0-9A-Za-z+\-.,'%°Ωµ/ ]")
_RAISED = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺", "0123456789-+")
_TIMES_TEN = re.compile(
    r"(?<=[0-9.]) *[xX*·⋅] *10 *(?:(?:\^|\*\*) *\(?([+-]?[0-9]{1,3})\)?|([⁻⁺]?[⁰¹²³⁴-⁹]{1,3}))"
)
_UNIT_TEXT = r" *([A-Za-zΩµ°%][A-Za-zΩµ°%/ -]*)?"
_TYPED = re.compile(r"([+-]?) *([0-9.,' ]*)(?:[eE]([+-]?[0-9]+))?" + _UNIT_TEXT)
_DECIMAL = re.compile(r"([0-9]*)[.,]((?:[0-9]{3} )*[0-9]{1,3}|[0-9]+)|([0-9]+)\.?")
_GROUPED = re.compile(
    r"(?!0{1,3}[ ',.])([0-9]{1,3}([ ',.])[0-9]{3}(?:\2[0-9]{3})*)(?:(?!\2)[.,]([0-9]+))?"
)
_CODE = re.compile(r"([+-]?) *([0-9]*)([A-DF-Za-df-zµ])([0-9]+)" + _UNIT_TEXT)
_FRACTION = re.compile(r"([0-9]{1,2}) ?/ ?(2|4|8|16)(?![0-9])")  # as ratings are printed: 1/4 W
_CODE_LETTERS = {"resistance": "RrKkMmG", "capacitance": "pPnNuUµmMF"}


def read(
    text: str, name: str, bare_unit: str | None = None, example: Callable | None = None
) -> Reading:
    """Read what a person typed as a value of one quantity.

    Parameters
    ----------
    text : str, int or float
        What was typed, such as `4k7`, `1.5 mA` or `0,22 W`; a number counts as typed bare.
    name : str
        A name of `GLOSSARY`.
    bare_unit : str, optional
        Unit of a number typed without any, such as `mA`; otherwise the glossary's own.
    example : callable, optional
        Gives an example of an answer for the messages, called only where one is shown.

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
    the glossary's range are read, so that a slip with a prefix can be explained. Words around the
    number are kept and change no value. Of `3.225 kΩ` one of two readings is taken where the
    glossary and the unit asked for leave only one: never by what the answer is.

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
    asked = Asked(quantity, quantity.unit if bare_unit is None else bare_unit, example)
    own = spelled(bare_unit or "", name)
    if own is None:
        raise ValueError(f"bare_unit {bare_unit!r} is no unit of {name}; try {quantity.unit!r}")
    exact = isinstance(text, Real) and not isinstance(text, bool)
    typed, quoted, before, after = _number_text(text) if exact else _cleaned(text, asked)
    parts = _TYPED.fullmatch(typed)
    if parts:
        sign, digits, power, spelling = parts.groups()
        unit = _unit(spelling, typed[: parts.start(4)], asked, quoted) if spelling else own
        mantissas = [digits] if exact else _mantissas(digits.strip(), power, asked, quoted)
    else:
        sign, mantissa, spelling = _code_parts(typed, quoted, asked)
        mantissas, unit, power = [mantissa], spelled(spelling, name), None
    if len(mantissas) > 1:
        likely = [m for m in mantissas if _likely(_value(sign, m, power, unit), own, quantity)]
        if len(likely) != 1 or likely[0].endswith(".000"):  # noughts most often are thousands
            tail = typed[parts.start(2) + len(digits.strip()) :] or joined("", asked.unit)
            ways = [sign + text + tail for text in (mantissas[0], _unmistakable(mantissas[1]))]
            raise Ambiguous(
                f"{quoted} can be read two ways, because some countries mark thousands with a "
                f"point and some with a comma. Type {' or '.join(ways)}, whichever you mean."
            )
        mantissas = likely
    mantissa = mantissas[0]
    value = _value(sign, mantissa, power, unit)
    if other := _other_meaning(spelling, unit):
        second = _value(sign, mantissa, power, other)
        if other.word == "minute" or (_met(second, quantity) and not _met(value, quantity)):
            if _met(value, quantity, _FAR):
                tail = f"e{power}" if power else ""
                number = sign + _unmistakable(mantissa).removesuffix(".0") + tail
                raise Ambiguous(
                    f"{quoted} can mean {write(value, name)} or {write(second, name)}. Type "
                    f"{number} {unit.word} or {number} {other.word}, whichever you mean."
                )
            value = second
    _refuse_impossible(value, mantissa, quoted, quantity)
    digits = _significant(mantissa, typed if "." in mantissa else "")
    said = _said([word for word in after if word in MEASURES], name, quoted) if after else ""
    shown = " ".join((*before, write(value, name, digits=6), *after))
    return Reading(value, shown, digits, said, before, after)


def _quoted(text):
    shown = repr(text[: _LONGEST + 1])[1:-1]
    return f"“{shown if len(shown) <= _LONGEST else shown[: _LONGEST - 1] + '…'}”"


def _number_text(given):
    try:
        number = float(given)
    except OverflowError:
        number = inf
    if not isfinite(number):
        raise NotUnderstood("The number given is too large or not a number. Check how it was made.")
    return repr(number), _quoted(repr(number)), (), ()


def _cleaned(text, asked):
    """The bare number and unit in the grammar's own characters, as quoted, and the words around."""
    if not isinstance(text, str):
        kind = "nothing" if text is None else f"of the kind {_quoted(type(text).__name__)}"
        raise NotUnderstood(f"The answer given is {kind}. {asked.hint}")
    typed = text[: 10 * _LONGEST].strip(_BLANKS + "\r\n").translate(_SAME)
    quoted, name = _quoted(typed), asked.quantity.name
    if len(text) > 10 * _LONGEST or len(typed) > _LONGEST:
        raise NotUnderstood(f"{quoted} has more than {_LONGEST} characters. {asked.hint}")
    bare = None if typed.endswith(".") else _TYPED.fullmatch(typed)
    if bare and bare[2].strip(" .,'") and (not bare[4] or spelled(bare[4], name)):
        return typed, quoted, (), ()  # no words, as most often: done
    label, typed, *words = unworded(typed)
    if "10" in typed:
        typed = _TIMES_TEN.sub(lambda m: "e" + (m[1] or m[2].translate(_RAISED)), typed)
    symbol = asked.quantity.symbol
    known = ("it", "answer", name, symbol.lower(), "u" if name == "voltage" else symbol)
    if label and label.rstrip("0123456789") not in known:
        raise NotUnderstood(
            f"{quoted} has {_quoted(label)} before its equals sign or the like. Only {symbol}, "
            f"for {name}, can stand there. {asked.hint}"
        )
    if foreign := _FOREIGN.search(typed):
        called = unicodedata.name(foreign[0], "").lower() or f"character U+{ord(foreign[0]):04X}"
        raise NotUnderstood(
            f"{quoted} contains {_quoted(foreign[0])} ({called}), which is not read here. "
            f"{asked.hint} For a power of ten, type e and the power; nothing is calculated."
        )
    if fraction := _FRACTION.match(typed):
        typed = f"{int(fraction[1]) / int(fraction[2]):.4f}{typed[fraction.end() :]}"
    if not any(map(str.isdigit, typed)):
        subject = "The answer" if quoted == "“”" else quoted
        raise NotUnderstood(f"{subject} has no number. {asked.hint}")
    return typed, quoted, *words


def _said(measures, name, quoted):
    """The measure that was named: one, and one that the quantity has."""
    if len(measures) > 1:
        raise NotUnderstood(f"{quoted} says {' and '.join(measures)}. Keep the one that you mean.")
    if measures and measures[0] in ("peak", "rms") and name not in _ALTERNATING:
        raise NotUnderstood(f"{quoted} says {measures[0]}, and {name} has none. Leave it out.")
    return measures[0] if measures else ""


def _unit(spelling, number, asked, quoted):
    name, shown = asked.quantity.name, spelling.strip()
    unit = spelled(spelling, name)
    if unit is not None:
        return unit
    owners = [] if shown == "k" else owned(spelling)  # k alone is the prefix, not kelvin
    if shown[0] == "M":  # nobody means megaseconds or megametres
        owners = [known for known in owners if known.name not in ("time", "length")]
    if not owners and shown[:-1] and (near := spelled(shown[:-1], name)):
        if 10.0**near.exponent > asked.quantity.largest:
            near = _other_meaning(shown[:-1], near) or near
        raise Ambiguous(
            f"In {quoted}, “{shown}” is not a unit known here. "
            f"If you mean {joined(number.strip(), near.symbol)}, type that."
        )
    said = f"a unit of {owners[0].name}" if owners else "not a unit known here"
    raise NotUnderstood(
        f"In {quoted}, “{shown}” is {said}. The question asks for {name}: type "
        f"{asked.unit or 'a plain number'}, or check which number is asked for."
    )


def _mantissas(digits, power, asked, quoted):
    """The digits with a point for the decimal separator and no groups: both ways if in doubt."""
    if grouped := _GROUPED.fullmatch(digits):
        whole = "".join(filter(str.isdigit, grouped[1]))
        if grouped[2] in " '" or grouped[3] or digits.count(grouped[2]) > 1:
            return [f"{whole}.{grouped[3] or 0}"]
        if not (power and "." in digits):  # 1.234e-3 is how programs print
            return [whole, digits.replace(",", ".")]
    decimal = _DECIMAL.fullmatch(digits)
    if not decimal:
        raise NotUnderstood(f"{quoted} cannot be read as one number. {asked.hint}")
    return [f"{decimal[3] or decimal[1] or 0}.{(decimal[2] or '0').replace(' ', '')}"]


def _likely(value, own, quantity):
    """Whether a question can mean a value, by the glossary and its unit: no number is given away.

    Units are asked with a prefix so that the number is neither tiny nor a thousand and more.
    """
    number = abs(value) / own.scale / 10.0**own.exponent
    return _met(value, quantity) and (not own.exponent or 0.01 <= number < 1000)


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


def _code_parts(typed, quoted, asked):
    """Sign, mantissa and letter of a letter code such as 4k7, p33 or 0R22."""
    parts, quantity = _CODE.fullmatch(typed), asked.quantity
    if not parts:
        raise NotUnderstood(f"{quoted} cannot be read as number, then unit. {asked.hint}")
    sign, whole, letter, fraction, tail = parts.groups()
    if letter not in _CODE_LETTERS.get(quantity.name, ""):
        raise NotUnderstood(f"{quoted} is no letter code for {quantity.name}. {asked.hint}")
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
    minutes = spelling == "m" and unit.name == "time"
    other = spelled("min" if minutes else spelling[0].swapcase() + spelling[1:], unit.name)
    return other if other != unit else None


def _met(value, quantity, beyond=1):
    """Whether a value lies in the glossary's range, or no more than so many times outside it."""
    return value == 0 or quantity.smallest / beyond <= abs(value) <= quantity.largest * beyond


def _refuse_impossible(value, mantissa, quoted, quantity):
    name = quantity.name
    if value < quantity.lowest:
        least = write(quantity.lowest, name, digits=5)
        raise NotUnderstood(
            f"{quoted} is impossible: {name} is never below {least}. Check the sign."
        )
    if (value == 0 and mantissa.strip("0.")) or not _met(value, quantity, _FAR):
        raise NotUnderstood(
            f"This course never meets {'an' if name[0] in 'aeiou' else 'a'} {name} of {quoted}, "
            f"only {write(quantity.smallest, name)} to {write(quantity.largest, name)}. "
            f"Check the prefix and the power of ten."
        )
