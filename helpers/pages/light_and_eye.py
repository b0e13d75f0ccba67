"""The explorer of light and eye: what it says beside its figure, and where it starts."""

from helpers.figures import seen
from helpers.pages.explorer import Choice, Slider
from helpers.physics import glow, mains, phase_cut, visibility
from helpers.physics.operating_point import operating_point
from helpers.quantities import write

EXAMPLE_OHMS, EXAMPLE_DEGREES = 94e3, 130.0
"""Dropper and lowest setting of the worked example in lesson 06 [ohm], [deg]."""
LEAST, MOST = 0.01, 5.0
WIDEST = 80.0
ROOMS = {f"{name}, {write(lux, 'illuminance')}": lux for name, lux in visibility.ROOMS_LUX.items()}
ROOM = Choice("room_lux", "Room", ROOMS, visibility.ROOMS_LUX["workshop"])
COLOURS = (*glow.EYE_SENSITIVITY, "white")


def light_and_eye(supply, milliamps, colour, room_lux, metres, off_axis_degrees):
    """Show from how far an LED is noticed in a room, and how bright it looks.

    Parameters
    ----------
    supply : mains.Supply
        Not asked: the current says it all.
    milliamps : float
        Mean current of the LED, 0.01 to 5 [mA].
    colour : str
        One of `COLOURS`.
    room_lux : float
        Light on the wall behind it [lx].
    metres : float
        Distance from the eye, 0.5 to 30 [m].
    off_axis_degrees : float
        Angle between its axis and the eye, 0 to 80 [deg].

    Returns
    -------
    drawn : Drawn

    References
    ----------
    As `seen.noticed`.

    Examples
    --------
    >>> drawn = light_and_eye(None, 1.0, "red", 300.0, 4.0, 0.0)
    >>> drawn.finding.replace("\\xa0", " ").partition(". ")[0]
    'Noticed from where you stand: a red LED with 1 mA is noticed up to 4.86 m, and you \
stand at 4 m'
    """
    amps = milliamps / 1000.0
    drawn = seen.noticed(amps, colour, room_lux, metres, off_axis_degrees)
    said = drawn.finding
    if amps < glow.HALF_LOST_AMPS * 5:
        share = glow.useful_amps(amps) / amps
        said += (
            f" So small a current may lose a part of its light: in a plain LED perhaps "
            f"{write(100.0 * share, 'percent', 2)} of this is left."
        )
    return drawn._replace(finding=said)


def controls(supply):
    """Open on the worked example of the lesson: the lowest setting on the lowest mains."""
    low = phase_cut.Dimmer("leading", EXAMPLE_DEGREES)
    point = operating_point("series_diode", mains.lowest(supply), low, ohms=EXAMPLE_OHMS)
    amps = point.led_amps_mean
    return (
        Slider("milliamps", "Mean current in mA", LEAST, MOST, 0.01, round(1000.0 * amps, 3)),
        ROOM,
        Slider("metres", "Distance in m", seen.NEAREST, seen.FARTHEST, 0.5, 4.0),
        Slider("off_axis_degrees", "Angle beside the axis in degrees", 0.0, WIDEST, 1.0, 0.0),
        Choice("colour", "Colour of a plain LED", {name: name for name in COLOURS}, "red"),
    )
