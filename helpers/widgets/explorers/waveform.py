"""Explorer: the shape of the mains, and when an LED on it conducts."""

from functools import partial

from helpers.figures.live.waves import conduction
from helpers.physics import mains
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import NO_DIMMER
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Choice
from helpers.widgets.explorers.mains_side import CIRCUIT, DROPPER, LED_VOLTS, cycle
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
    point = operating_point(circuit, source, ohms=ohms, led_volts=LED_VOLTS)
    mean, peak = write(point.led_amps_mean, "current"), write(point.led_amps_peak, "current")
    degrees = write(360.0 * point.led_conduction_fraction, "angle")
    quick = write(volts_rms / ohms, "current")
    sentence = (
        f"Calculated: {write(volts_rms, 'voltage')} rms has a peak of "
        f"{write(mains.peak(volts_rms), 'voltage')}. The LED conducts for {degrees} of 360°: "
        f"{mean} mean, which makes the light, and {peak} at the peak. The quick sum, volts over "
        f"ohms, says {quick}."
    )
    if circuit == "resistor_only":
        back = write(point.led_reverse_amps_peak, "current")
        sentence += (
            f" In the other half cycle the LED breaks down and up to {back} flows backwards: no "
            "LED is made for that."
        )
    if circuit == "two_leds":
        sentence += " The second LED takes the other half cycle."
    title = f"The LED gets {mean} mean, {peak} peak; the quick sum says {quick}"
    return conduction(cycle(source, NO_DIMMER, circuit, ohms, 360), title), sentence


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
        "Choose the resistor and LED only. What happens in the half cycle that should be dark?",
    ),
    "Danger: this wave kills. Look at it here, never at a socket: only trained people measure "
    "inside mains equipment, under local rules.",
)
