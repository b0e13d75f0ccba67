"""Explorer: the five indicator circuits side by side."""

from functools import partial

from helpers.figures.comparison import five_circuits
from helpers.physics.phase_cut import Dimmer
from helpers.widgets.explorers.knobs import Slider
from helpers.widgets.explorers.mains_side import DROPPER, in_short
from helpers.widgets.explorers.panel import Explorer


def circuits(supply, angle_degrees, ohms):
    """Show light, heat, reverse current and flicker of five circuits with the same dropper.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    angle_degrees : float
        Firing angle of a leading-edge dimmer; 0 is full [deg].
    ohms : float
        The dropper [ohm].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> words = circuits(mains.SUPPLIES["100 V 50 Hz"], 180.0, 68e3)[1]
    >>> "all five are dark" in words
    True
    """
    return in_short(five_circuits(supply, Dimmer("leading", angle_degrees), ohms))


def _open_on(supply):
    return partial(circuits, supply), (
        Slider("angle_degrees", "Firing angle in degrees", 0.0, 180.0, 1.0, 0.0),
        DROPPER,
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Which circuit makes the most light for each watt in the dropper?",
        "Which circuits protect the LED in the other half-cycle, and which one does not?",
        "Turn the angle to 120 degrees. Which column does not change, and why?",
    ),
    "Danger: every part of all five circuits is at mains voltage, the LED's legs too. Comparing "
    "them is not permission to build one; a ready-made indicator, certified or conforming for this "
    "use, is always a choice.",
)
