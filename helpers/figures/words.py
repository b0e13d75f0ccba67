"""Small turns of phrase that several pictures share."""

from helpers.quantities import write, write_as

#: What people call each circuit of `physics.circuits.CIRCUITS`.
NAMES = {
    "resistor_only": "resistor only",
    "series_diode": "series diode",
    "diode_across": "diode across the LED",
    "two_leds": "two LEDs back to back",
    "bridge": "bridge",
}


def capital(text):
    """Return a text with its first letter raised and all others as they are.

    Parameters
    ----------
    text : str
        At least one letter.

    Examples
    --------
    >>> capital("two LEDs back to back")
    'Two LEDs back to back'
    """
    return text[0].upper() + text[1:]


def watts(value):
    """Write a power as ratings are written: in watts, unless it is tiny.

    Parameters
    ----------
    value : float
        Power [W].

    Examples
    --------
    >>> [watts(value).replace("\\xa0", " ") for value in (0.25, 0.0, 0.0007)]
    ['0.25 W', '0 W', '700 µW']
    """
    return write(value, "power") if 0.0 < value < 0.001 else write_as(value, "W")
