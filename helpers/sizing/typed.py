"""One value of a brief as people type it, read and written; which there are is in `brief`."""

import json
import re

from helpers import quantities

_SIGNS = {"lx": {"lx": 1.0, "lux": 1.0}, "cd": {"cd": 1.0, "mcd": 1e-3}}
_MOST_SHOWN = 60
_TYPE = re.compile("[0-9]?(?!V)[A-Z]{1,4}[0-9]{2,}[A-Z]*", re.I)  # of a diode, such as 1N4007
_NOBODY_KNOWS = (
    "unknown", "not known", "nobody knows", "don't know", "i don't know", "do not know",
    "i do not know", "dont know", "no idea", "?",
)  # fmt: skip


class BriefError(ValueError):
    """A brief cannot be used; the message names the field, what was read and what to write."""

    def __init__(self, message, field=""):
        super().__init__(message)
        self.field = field


#: Units of North America: how they are spelled, and their size and where they begin in ours.
_FOREIGN = {
    "length": {"ft": 0.3048, "foot": 0.3048, "feet": 0.3048, "in": 0.0254, "inch": 0.0254,
               "inches": 0.0254},
    "temperature": {"°f": 5.0 / 9.0, "f": 5.0 / 9.0, "degf": 5.0 / 9.0, "fahrenheit": 5.0 / 9.0},
}  # fmt: skip
_TENTHS = {"length": 4, "temperature": 1}  # places that a reading in such a unit can bear
_FREEZES = 32.0


def nobody_knows(typed):
    """Return whether what was typed says that nobody knows: 'unknown', "don't know", '?'."""
    if isinstance(typed, list) and len(typed) == 1:
        typed = typed[0]
    words = (
        typed.strip().rstrip(".").replace("\u2019", "'").lower() if isinstance(typed, str) else ""
    )
    return words in _NOBODY_KNOWS


def read_one(sort, typed, name, bare=None):
    """Read one value as typed; `sort` is a quantity, a sign, a tuple of words, or a list of one.

    `bare` is the unit of a text that has none.
    """
    try:
        if isinstance(sort, list):
            if not isinstance(typed, list) or not typed:
                raise ValueError('It must be a list, such as ["0.6 W"].')
            return tuple(_quantity(sort[0], each) for each in typed)
        if isinstance(sort, tuple):
            words = {word.lower(): word for word in sort}
            if not isinstance(typed, str) or typed.strip().lower() not in words:
                raise ValueError(f"Write one of: {', '.join(sort)}.")
            return words[typed.strip().lower()]
        if sort == "yes":
            if not isinstance(typed, bool):
                raise ValueError("Write true or false, without quotation marks.")
            return typed
        if typed == "unknown" and sort.startswith("?"):
            return None
        if sort == "count":
            if not re.fullmatch("[0-9]{1,4}", str(typed)):
                raise ValueError("Write a whole number, such as 2.")
            return int(typed)
        return _quantity(sort, typed, bare)
    except ValueError as error:
        raise BriefError(f"{name} was read as {shown(typed)}. {error}") from None


def _quantity(sort, typed, bare=None):
    if isinstance(typed, bool) or not isinstance(typed, (str, int, float)):
        raise ValueError('Write a number with its unit in quotation marks, such as "90 W".')
    if sort in _SIGNS:
        number, scale = _signed(typed, sort)
        return scale * quantities.read(number, "ratio").value
    if not isinstance(typed, str):
        return quantities.read(typed, sort.strip("?")).value
    if sort in _FOREIGN and (value := _abroad(sort, typed)) is not None:
        return value
    if sort == "voltage" and _TYPE.fullmatch(typed.strip()):
        raise ValueError(
            "That is the name of a type, not volts. Its sheet says what it stands in reverse, "
            "V_RRM: type that number with V."
        )
    bare = None if re.search("[A-Za-z]", typed) else bare
    return quantities.read(typed, sort.strip("?"), bare_unit=bare).value


def _abroad(sort, typed):
    """Read feet, inches and degrees Fahrenheit in our units; None where it has another unit."""
    number, unit = re.fullmatch(r"(.*?)[ \u00a0]*([A-Za-z°]*)\.?", typed.strip(), re.S).groups()
    size = _FOREIGN[sort].get(unit.lower())
    if size is None or not number:
        return None
    value = quantities.read(number, "ratio").value
    value = size * (value - _FREEZES * (sort == "temperature"))
    return round(value, _TENTHS[sort])


def _signed(typed, sort):
    if not isinstance(typed, str):
        return typed, 1.0
    found = re.fullmatch(r"([^A-Za-z]*)([A-Za-z]*)", typed.strip())
    if not found or (found[2] and found[2] not in _SIGNS[sort]):
        raise ValueError(f"Write a number and {' or '.join(_SIGNS[sort])}.")
    return found[1].strip(), _SIGNS[sort].get(found[2], 1.0)


def shown(value):
    """Write what was read as a file has it, not too long."""
    text = repr(value) if isinstance(value, str) else json.dumps(value, default=str)
    return text if len(text) <= _MOST_SHOWN else text[: _MOST_SHOWN - 1] + "…"


def write_one(value, sort):
    """Write a value as it is typed; as a bare number where words could be read two ways."""
    if value is None or isinstance(value, str):
        return f'"{value or "unknown"}"'
    if not isinstance(value, float) or sort == "ratio":
        return str(value).lower()
    sort = sort.strip("?")
    unit = {"power": "W", "voltage": "V"}.get(sort)
    if sort in _SIGNS:
        text = f"{1e3 * value:.12g} mcd" if sort == "cd" and value < 1.0 else f"{value:.12g} {sort}"
    else:
        text = quantities.write_as(value, unit, 12) if unit else quantities.write(value, sort, 12)
    text = text.replace("\xa0", " ")
    try:
        if read_one(sort, text, "") == value:
            return f'"{text}"'
    except BriefError:  # such as 1.234 kΩ
        pass
    # A text without a unit may be read in another than this.
    return f'"{value!r}0 m"' if sort == "length" and "." in repr(value) else repr(value)


def plain(text, most=_MOST_SHOWN):
    """Return text from outside on one line and not too long; a no-break space is a space."""
    kept = repr(text.replace("\xa0", " "))[1:-1]
    return kept if len(kept) <= most else kept[: most - 1] + "…"
