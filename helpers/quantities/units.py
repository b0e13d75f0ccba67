"""Every spelling of every unit, with its prefixes, and what it stands for."""

from functools import cache, lru_cache
from math import pi
from typing import NamedTuple

from helpers.quantities.glossary import GLOSSARY


class Unit(NamedTuple):
    """One unit with one prefix: its value is a number times ten to `exponent`, times `scale`."""

    name: str
    symbol: str
    word: str
    exponent: int
    scale: float
    alone: bool  # a prefix, or nothing at all, standing for the quantity's own unit


# Symbol, word and another spelling of each prefix, from pico to giga.
_PREFIX_ROWS = ("p pico", "n nano", "µ micro u", "m milli", " ", "k kilo", "M mega meg", "G giga")
PREFIXES = {3 * place - 12: row.split(" ") for place, row in enumerate(_PREFIX_ROWS)}
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
    ("energy", 1, "Wh watthour watthours watthr watthrs Whr Whrs"),
    ("energy", 1 / 3600, "J joule joules"),
    ("charge", 1, "C coulomb coulombs"),
    ("length", 1, "m metre metres meter meters"),
    ("length", 0.01, "cm centimetre centimetres centimeter centimeters"),
    ("luminous intensity", 1, "cd candela candelas"),
    ("illuminance", 1, "lx lux"),
    ("angle", 1, "° degree degrees deg"),
    ("angle", 180 / pi, "rad radian radians"),
    ("percent", 1, "% percent pct /cent"),
    ("ratio", 1, "x times"),
    ("ratio", 0.01, "% percent pct /cent"),
    ("temperature", 1, "°C celsius degreescelsius centigrade degC degreeC degreesC C"),
    ("temperature rise", 1, "K kelvin kelvins °C celsius degreescelsius degC degreeC degreesC C"),
    ("thermal resistance", 1, "K/W kelvin/watt kelvins/watt °C/W °C/watt degC/W C/W C/watt"),
)
NEVER_PREFIXED = ("min", "h", "cm", "rad")


def _unit_table():
    """Every spelling -> {quantity: unit}, in small letters but for the prefixes M and G."""
    table = {}

    def add(name, scale, symbol, word, spellings, alone):
        prefixed = GLOSSARY[name].prefixed and symbol not in NEVER_PREFIXED
        for exponent in PREFIXES if prefixed else (0,):
            starts = PREFIXES[exponent]
            unit = Unit(name, starts[0] + symbol, starts[1] + word, exponent, scale, alone)
            for key in (start + spelling.lower() for start in starts for spelling in spellings):
                table.setdefault(key, {}).setdefault(name, unit)

    own_words = {}
    for name, scale, text in _UNIT_ROWS:
        symbol, word, *_ = spellings = text.split()
        own_words.setdefault(name, word)
        add(name, scale, symbol, word, spellings, alone=False)
    for name, word in own_words.items():  # last, so that "m" of a length stays a metre
        add(name, 1, GLOSSARY[name].unit, word, [""], alone=name != "ratio")
    table["kilohm"] = table["kilohms"] = table["kiloohm"]
    return table


UNITS = _unit_table()


@lru_cache(maxsize=4096)  # asked several times for each answer of a class
def spelled(spelling, name):
    """The unit of a quantity that is spelled like this, None where none is."""
    key = spelling.replace(" per ", "/").replace(" ", "").replace("-", "")
    for form in (key[:1] + key[1:].lower(), key.lower()):  # "Ma" is mega, "Volts" is "volts"
        if name in UNITS.get(form, ()):
            return UNITS[form][name]
    return None


@cache
def with_symbol(symbol):
    """The unit that is written exactly like this.

    Raises
    ------
    ValueError
        If no unit of the glossary is.
    """
    for known in owned(symbol):
        if known.symbol == symbol:
            return known
    raise ValueError(f"{symbol!r} is not a unit of the glossary; type one such as 'mA' or 'kΩ'")


def owned(spelling):
    """The units, prefixes standing alone left out, that are spelled like this."""
    return [unit for name in GLOSSARY if (unit := spelled(spelling, name)) and not unit.alone]
