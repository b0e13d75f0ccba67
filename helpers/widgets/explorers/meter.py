"""Explorer: what three meters show at four places, with and without the heater as a load."""

from functools import partial

from helpers.figures import readings
from helpers.physics.phase_cut import Dimmer
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.panel import Explorer


def meter(supply, place, angle_degrees):
    """Show the readings of a plain and a true-rms AC meter and of a DC range.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    place : str
        A value of `readings.PLACES`.
    angle_degrees : float
        Firing angle of a leading-edge dimmer, where it is on [deg].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> supply = mains.SUPPLIES["230 V 50 Hz"]
    >>> "shows 115 V" in meter(supply, "on", 90.0)[1].replace("\\xa0", " ")
    True
    """
    return readings.meters(supply, Dimmer("leading", angle_degrees), place)


def _open_on(supply):
    return partial(meter, supply), (
        Choice("place", "Measured", readings.PLACES, "on"),
        Slider("angle_degrees", "Firing angle while on, in degrees", 0.0, 180.0, 1.0, 120.0),
    )


EXPLORER = Explorer(
    _open_on,
    (
        "At which angle does the plain meter show half of the true value?",
        "Switch the dimmer off, then unplug the heater as well. Which reading would fool you?",
        "Now let the element be broken. What do both AC ranges leave out, and what must a tester "
        "stand there?",
        "Measure the LED's current. Which of the three follows its light?",
    ),
    "Danger: a reading of 0 V proves nothing. Isolate, prove the tester, prove dead, prove the "
    "tester again. Measuring on the mains is work for an electrically skilled or instructed "
    "person, with a meter and leads rated for all that can stand there.",
)
