"""Explorer: what a dimmer setting does to wave, LED, heater and two meters, all at once."""

from functools import partial

from helpers.figures.dimmed import at_once
from helpers.physics.phase_cut import Dimmer
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.mains_side import CIRCUIT, DROPPER
from helpers.widgets.explorers.panel import Explorer

POT_WATTS = 90.0


def dimmer(supply, edge, angle_degrees, circuit, ohms):
    """Show what is left behind a dimmer: wave, LED current, light, heat and meter readings.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    edge : str
        'leading' or 'trailing'.
    angle_degrees : float
        Where the edge stands in each half-cycle [deg].
    circuit : str
        A key of `circuits.CIRCUITS`.
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
    >>> words = dimmer(mains.SUPPLIES["230 V 50 Hz"], "leading", 90.0, "bridge", 68e3)[1]
    >>> "heater makes 45 W of its 90 W" in words.replace("\\xa0", " ")
    True
    """
    return at_once(circuit, supply, Dimmer(edge, angle_degrees), ohms, POT_WATTS)


def _open_on(supply):
    edges = {"leading: dark first, then on": "leading", "trailing: on first, then dark": "trailing"}
    return partial(dimmer, supply), (
        Slider("angle_degrees", "Angle of the edge in degrees", 0.0, 180.0, 1.0, 110.0),
        Choice("edge", "Edge", edges, "leading"),
        CIRCUIT,
        DROPPER,
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Move a leading edge from 0 to 90 degrees. The heat halves. What does the peak do, and "
        "what does that mean for a diode?",
        "Find the setting at which the pot makes a tenth of its heat. Would you still see the "
        "light?",
        "Find where the plain meter is off by a third. Does a trailing edge change that?",
    ),
    "Danger: behind a dimmer everything counts as live at every setting, also turned down and "
    "switched off. With a broken element, the terminals of an off pot can swing to nearly twice "
    "the crest of the mains. Dark never means dead. Nothing here is a reason to open a dimmer.",
)
