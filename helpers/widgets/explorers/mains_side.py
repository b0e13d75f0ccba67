"""What the explorers on the mains share: names of the circuits, droppers to choose, the cycle."""

import numpy as np

from helpers.figures.live.waves import Cycle
from helpers.physics import circuits, phase_cut
from helpers.physics.operating_point import operating_point
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Choice

LED_VOLTS = 2.0
CIRCUIT_NAMES = {
    "resistor and LED only": "resistor_only",
    "with a series diode": "series_diode",
    "diode across the LED": "diode_across",
    "two LEDs back to back": "two_leds",
    "bridge of four diodes": "bridge",
}
DROPPER_OHMS = (27e3, 33e3, 39e3, 47e3, 56e3, 68e3, 82e3, 100e3, 120e3)
CIRCUIT = Choice("circuit", "Circuit", CIRCUIT_NAMES, "series_diode")
DROPPER = Choice(
    "ohms", "Dropper", {write(ohms, "resistance"): ohms for ohms in DROPPER_OHMS}, 68e3
)


def percent(share):
    """Write a share of one as a percentage."""
    return write(100.0 * share, "percent", 2)


def cycle(supply, dimmer, circuit, ohms, samples=180):
    """Return the curves of one cycle: voltage, what is left of it, and the current of the LED.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    circuit : str
        A key of `circuits.CIRCUITS`.
    ohms : float
        The dropper [ohm].
    samples : int
        Points of each curve [-].

    Returns
    -------
    cycle : Cycle
        The scale holds the highest current without a dimmer.
    """
    degrees, volts = phase_cut.trace(supply, dimmer, 1, samples)
    sine = phase_cut.volts_at(supply, phase_cut.NO_DIMMER, degrees)
    branch = circuits.amps_at(circuit, supply, dimmer, degrees, ohms=ohms, led_volts=LED_VOLTS)
    branch = np.where(volts == 0.0, 0.0, branch)
    second = np.maximum(-branch, 0.0) if circuit == "two_leds" else np.zeros_like(branch)
    if circuit == "bridge":
        amps = abs(branch)
    else:
        amps = branch if circuit == "resistor_only" else np.maximum(branch, 0.0)
    full = operating_point(circuit, supply, ohms=ohms, led_volts=LED_VOLTS)
    return Cycle(degrees, sine, volts, amps, second, full.led_amps_peak)
