"""Explorer: the shape of the mains, and when an LED on it conducts."""

from functools import partial

from helpers.figures import waves
from helpers.physics import mains
from helpers.physics.phase_cut import NO_DIMMER
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Choice
from helpers.widgets.explorers.mains_side import CIRCUIT, DROPPER
from helpers.widgets.explorers.panel import Explorer


def waveform(supply, volts_rms, circuit, ohms):
    """Show one cycle of an AC supply and the current that an LED takes from it.

    Parameters
    ----------
    supply : mains.Supply
        The learner's supply; its frequency counts.
    volts_rms : float
        The mains, or what a transformer makes of it, rms [V].
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
    >>> words = waveform(mains.SUPPLIES["120 V 60 Hz"], 120.0, "bridge", 68e3)[1]
    >>> "conducts for 355° of 360°" in words
    True
    """
    source = mains.Supply(volts_rms, supply.hertz)
    return waves.led_current(circuit, source, NO_DIMMER, ohms)


def _open_on(supply):
    sources = {f"the mains, {write(supply.volts_rms, 'voltage')}": supply.volts_rms}
    sources |= {f"bench transformer, {volts:g} V": volts for volts in (24.0, 12.0, 6.0)}
    return partial(waveform, supply), (
        Choice("volts_rms", "Supply", sources, supply.volts_rms),
        CIRCUIT,
        DROPPER,
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Compare the mean current with the quick sum for the series diode. How many times too big "
        "is the quick sum? Then try the bridge.",
        "Take the 6 V transformer. The LED now waits for its volts: where in the cycle does it "
        "start, and why is that hard to see on the mains?",
        "Choose the resistor only. What happens in the half-cycle that should be dark?",
    ),
    "Danger: this wave kills. Look at it here, never at a socket: only electrically skilled or "
    "instructed people measure inside mains equipment, under local rules.",
)
