"""Explorer: droppers and dimmer settings side by side, as bright as the eye would see them."""

from functools import partial

from helpers.figures import settings
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.mains_side import CIRCUIT, in_short
from helpers.widgets.explorers.panel import Explorer

ROW_OHMS = (33e3, 56e3, 82e3, 120e3)
COLUMN_DEGREES = (0.0, 60.0, 90.0, 120.0, 150.0)


def brightness(supply, circuit, ohms, angle_degrees):
    """Show LEDs with four droppers at six settings of a leading-edge dimmer.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    circuit : str
        A key of `circuits.CIRCUITS`.
    ohms : float
        The dropper that the sentence speaks of, one of `ROW_OHMS` [ohm].
    angle_degrees : float
        The setting of the last column [deg].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers.

    References
    ----------
    Apparent brightness as CIE lightness against the brightest light: CIE 15.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> words = brightness(mains.SUPPLIES["230 V 50 Hz"], "bridge", 33e3, 0.0)[1]
    >>> "100 % of the light" in words.replace("\\xa0", " ")
    True
    """
    angles = (*COLUMN_DEGREES, angle_degrees)
    chosen = ROW_OHMS.index(ohms), len(COLUMN_DEGREES)
    return in_short(settings.brightness(circuit, supply, ROW_OHMS, angles, chosen=chosen))


def _open_on(supply):
    droppers = {write(ohms, "resistance"): ohms for ohms in ROW_OHMS}
    return partial(brightness, supply), (
        Slider("angle_degrees", "Your angle in degrees", 0.0, 180.0, 1.0, 135.0),
        Choice("ohms", "Dropper", droppers, 56e3),
        CIRCUIT,
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Go down one column. The ohms grow nearly fourfold; by how much does the look fall?",
        "Find the angle at which your light looks half as bright. How much light is left there?",
        "Turn to 180 degrees. The light is out. Is the heater's wire dead?",
    ),
    "Danger: a dim or dark light says nothing about the volts on the wires. They kill at every "
    "setting.",
)
