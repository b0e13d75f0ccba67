"""Small turns of phrase that several pictures share."""

import re
from itertools import takewhile

from helpers.quantities import write, write_as

TIME_UNITS = {"s": 1.0, "min": 60.0, "h": 3600.0}
"""Units in which a duration is told, and how many seconds each has [s]."""

NEXT_TO_NOTHING = 1e-4
"""Shares below this are not worth their digits [-]."""

BEYOND = " Its place lies beyond this picture and is marked at the edge."

#: What people call each circuit of `physics.circuits.CIRCUITS`.
NAMES = {
    "resistor_only": "resistor only",
    "series_diode": "series diode",
    "diode_across": "diode across the LED",
    "two_leds": "two LEDs back to back",
    "bridge": "bridge",
}
#: The same and two more: the seven of `physics.compared.KINDS`.
KINDS = NAMES | {"capacitor_dropper": "capacitor dropper", "neon": "neon lamp"}


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
    >>> [watts(value).replace("\\xa0", " ") for value in (0.25, 0.0, 0.007)]
    ['0.25 W', '0 W', '7 mW']
    """
    return write(value, "power") if 0.0 < value < 0.1 else write_as(value, "W")


def time_unit(seconds):
    """Return the unit of `TIME_UNITS` in which people tell a duration.

    Parameters
    ----------
    seconds : float
        The duration [s].

    Examples
    --------
    >>> [time_unit(seconds) for seconds in (90.0, 600.0, 86400.0)]
    ['s', 'min', 'h']
    """
    return "h" if seconds >= 7200.0 else "min" if seconds >= 300.0 else "s"


def duration(seconds, digits=2):
    """Write a duration as people tell it: milliseconds to hours.

    Parameters
    ----------
    seconds : float
        The duration [s].
    digits : int
        Significant digits [-].

    Examples
    --------
    >>> [duration(seconds).replace("\\xa0", " ") for seconds in (0.04, 90.0, 359.0)]
    ['40 ms', '90 s', '6 min']
    """
    unit = time_unit(seconds)
    return write(seconds, "time", digits) if unit == "s" else write_as(seconds, unit, digits)


def setting(dimmer):
    """Write a dimmer's setting.

    Parameters
    ----------
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.

    Examples
    --------
    >>> from helpers.physics import phase_cut
    >>> setting(phase_cut.NO_DIMMER), setting(phase_cut.Dimmer("trailing", 90.0))
    ('No dimmer', 'Trailing edge at 90°')
    """
    if dimmer.edge == "none":
        return "No dimmer"
    return f"{capital(dimmer.edge)} edge at {write(dimmer.angle_degrees, 'angle')}"


def share_of_one(share):
    """Write a share of one as a percentage of two digits; what nobody could see is said so.

    Parameters
    ----------
    share : float
        Such as 0.5 [-].

    Examples
    --------
    >>> [share_of_one(share).replace("\\xa0", " ") for share in (0.5, 5.5e-6, 0.0)]
    ['50 %', 'about 0 %', '0 %']
    """
    if 0.0 < share < NEXT_TO_NOTHING:
        return f"about {write(0.0, 'percent')}"
    return write(100.0 * share, "percent", 2)


def title_of(finding):
    """Return a finding as a title: its first sentence, up to where decimals begin.

    Parameters
    ----------
    finding : str
        Clauses end with a colon or a semicolon; what stands before the first decimals is a title.

    Examples
    --------
    >>> title_of("Dimmer off: it shows 4.2 V. Pull the plug."), title_of("Off: it shows 4 V.")
    ('Dimmer off', 'Off: it shows 4 V')
    """
    first = re.split(r"\. |(?<=\?) ", finding)[0].removesuffix(".")
    clauses = re.split("(?=[:;] )", first)
    return "".join(takewhile(lambda clause: not re.search(r"\d\.\d", clause), clauses))


def untitled(finding):
    """Return what of a finding its title says, and what is left to be said below the picture.

    Parameters
    ----------
    finding : str
        As for `title_of`.

    Examples
    --------
    >>> untitled("Off: it shows 4 V. Pull the plug."), untitled("Off: it shows 4.2 V.")
    (('Off: it shows 4 V.', 'Pull the plug.'), ('Off.', 'It shows 4.2 V.'))
    """
    title = title_of(finding)
    rest = finding[len(title) :].lstrip(".:; ")
    if not title or not rest:
        return (finding, "") if title else ("", finding)
    return title if title.endswith("?") else f"{title}.", capital(rest)


def whole_percent(share):
    """Write a share of one for a title: as whole per cent, or as less than one.

    Parameters
    ----------
    share : float
        Such as 0.5 [-].

    Examples
    --------
    >>> [whole_percent(share).replace("\\xa0", " ") for share in (0.286, 0.004, 0.0)]
    ['29 %', 'under 1 %', '0 %']
    """
    return "under 1\u00a0%" if 0.0 < share < 0.005 else f"{100.0 * share:.0f}\u00a0%"
