"""Texts with places for personal numbers: a number's name says how it is written.

Nothing in a template is ever run: a place names a number, and perhaps a unit or its digits.
"""

from string import Formatter

from helpers import quantities

QUANTITY_OF = {
    "volts": "voltage", "amps": "current", "ohms": "resistance", "watts": "power",
    "degrees": "angle", "hertz": "frequency", "seconds": "time", "percent": "percent",
    "celsius": "temperature", "kelvin": "temperature rise", "farads": "capacitance",
    "metres": "length", "candelas": "luminous intensity", "lux": "illuminance", "hours": "",
    "ratio": "ratio",
}  # fmt: skip


def quantity_of(name):
    """Return the quantity that a number's name speaks of, or None.

    Examples
    --------
    >>> quantity_of("led_volts"), quantity_of("volts_peak"), quantity_of("colour")
    ('voltage', 'voltage', None)
    """
    found = [QUANTITY_OF[word] for word in name.split("_") if word in QUANTITY_OF]
    return (found[-1] or None) if found else None


def fill(template, n, **more):
    """Return a template with its places filled in.

    Parameters
    ----------
    template : str
        `{ohms}` writes the number of that name as people read it, `{amps:mA}` in a given unit,
        `{volts:4}` with so many digits; `{supply}` is the name of the learner's mains.
    n : SimpleNamespace
        The personal numbers.
    **more : str or float
        Further numbers and texts by name.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> n = SimpleNamespace(ohms=4700.0, led="red", amps=0.0015)
    >>> fill("A {led} LED behind {ohms} gets {amps:A}.", n).replace(chr(160), " ")
    'A red LED behind 4.7 kΩ gets 0.0015 A.'
    """
    return _Places(n, more).format(template) if "{" in template else template


class _Places(Formatter):
    def __init__(self, n, more):
        self._n, self._more = n, more

    def get_field(self, field_name, args, kwargs):
        name, *rest = field_name.split(".")
        value = self._more[name] if name in self._more else getattr(self._n, name)
        for part in rest:
            value = getattr(value, part)
        return (value, rest[-1] if rest else name), name

    def format_field(self, found, spec):
        value, name = found
        quantity = quantity_of(name)
        if hasattr(value, "name"):
            return value.name
        if isinstance(value, str) or quantity is None:
            return format(value, spec)
        if spec and not spec.isdigit():
            return quantities.write_as(value, spec)
        return quantities.write(value, quantity, int(spec or 3))
