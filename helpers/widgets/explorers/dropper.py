"""Explorer: an LED and its dropper on a bench supply of a few volts."""

from helpers.figures.circuits import bench_dropper
from helpers.physics import leds, ohms_law, resistors
from helpers.quantities import write
from helpers.sizing import rules
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.panel import Explorer

LED_VOLTS = 2.0
BENCH_OHMS = [ohms for ohms in (10.0 * r for r in resistors.SERIES["E12"]) if ohms >= 220]
BENCH_OHMS += [100.0 * r for r in resistors.SERIES["E12"]]


def dropper(volts, ohms):
    """Show what current a dropper lets through an LED on a bench supply.

    Parameters
    ----------
    volts : float
        Setting of the supply, 5 to 24 [V].
    ohms : float
        The dropper [ohm].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers.

    References
    ----------
    20 mA as the usual limit of a small LED, a rating of twice the heat: common practice, no source.

    Examples
    --------
    >>> "small LED" in dropper(5.0, 4700.0)[1]
    False
    """
    amps = ohms_law.led_current(volts, LED_VOLTS, ohms)
    bare = ohms_law.current(volts, ohms)
    watts = ohms_law.power(amps=amps, ohms=ohms)
    sentence = (
        f"Calculated: {write(volts, 'voltage')} and {write(ohms, 'resistance')} give the LED "
        f"{write(amps, 'current')}; without the LED's own {write(LED_VOLTS, 'voltage')} the sum "
        f"would say {write(bare, 'current')}. The dropper turns {write(watts, 'power')} into heat, "
        f"so it has to be rated for {write(watts / rules.HEALTHY_SHARE, 'power')} at least."
    )
    if amps > leds.LIMIT_AMPS:
        limit = write(leds.LIMIT_AMPS, "current")
        sentence += f" Too much: a small LED is made for {limit} at most. Take more ohms."
    return bench_dropper(volts, ohms, LED_VOLTS)[0], sentence


def _open_on(_):
    values = {write(ohms, "resistance"): ohms for ohms in BENCH_OHMS}
    return dropper, (
        Slider("volts", "Supply in V", 5.0, 24.0, 0.5, 12.0),
        Choice("ohms", "Dropper", values, 1000.0),
    )


EXPLORER = Explorer(
    _open_on,
    (
        "Set 12 V and find the smallest dropper that keeps the LED below 20 mA.",
        "Go from 12 V to 24 V. Does the current double exactly? What stays the same?",
        "Compare the two currents in the sentence at 5 V and at 24 V. Where does leaving out the "
        "LED's own volts hurt more?",
    ),
)
