"""Explorer: what three meters show at four places, with and without the heater as a load."""

from functools import partial

import numpy as np

from helpers.figures.live.meters import readings
from helpers.physics import circuits, heater, leakage, mains, meters, phase_cut, signals
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.mains_side import LED_VOLTS
from helpers.widgets.explorers.panel import Explorer

POT_WATTS, DROPPER_OHMS, METER_OHMS = 90.0, 68e3, 10e6
#: Suppression parts across a dimmer's switch. Common practice, no source [F], [ohm].
SNUBBER = (100e-9, 100.0)
PLACES = {
    "volts at the heater, dimmer on": "on",
    "volts at the heater, dimmer off": "off",
    "volts at the open ends, heater unplugged, dimmer off": "unloaded",
    "current of an LED with series diode": "led",
}


def meter(supply, place, angle_degrees):
    """Show the readings of a plain and a true-rms AC meter and of a DC range.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    place : str
        A value of `PLACES`.
    angle_degrees : float
        Firing angle of a leading-edge dimmer, where it is on [deg].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers.

    Examples
    --------
    >>> supply = mains.SUPPLIES["230 V 50 Hz"]
    >>> "shows 115 V" in meter(supply, "on", 90.0)[1].replace("\\xa0", " ")
    True
    """
    dimmer = phase_cut.Dimmer("leading", angle_degrees)
    crest = mains.peak(supply.volts_rms)
    if place == "led":
        signal = signals.led_current("series_diode", supply, dimmer, ohms=DROPPER_OHMS)
        degrees, volts = phase_cut.trace(supply, dimmer, 1, 180)
        values = circuits.amps_at(
            "series_diode", supply, dimmer, degrees, ohms=DROPPER_OHMS, led_volts=LED_VOLTS
        )  # fmt: skip
        values, crest = np.where(volts == 0.0, 0.0, values), crest / DROPPER_OHMS
    elif place == "on":
        signal = signals.dimmed_mains(supply, dimmer)
        degrees, values = phase_cut.trace(supply, dimmer, 1, 180)
    else:
        left = _left_over(supply, place)
        crest = mains.peak(left.volts_rms)
        signal = signals.dimmed_mains(left)
        degrees, values = phase_cut.trace(left, phase_cut.NO_DIMMER, 1, 180)
    unit, quantity = ("A", "current") if place == "led" else ("V", "voltage")
    average = write(meters.reading(signal, "average"), quantity)
    true_rms = write(meters.reading(signal, "true_rms"), quantity)
    mean = write(meters.reading(signal, "mean", "dc"), quantity)
    boxes = (
        ("Plain meter, AC", average, "mean, scaled for a sine"),
        ("True-rms meter, AC", true_rms, "what heats, less any DC"),
        ("DC range", mean, "mean with its sign"),
    )
    sentence = (
        f"Calculated: the plain meter shows {average}, the true-rms meter {true_rms}, the DC "
        f"range {mean}. {_meaning(place, signal, quantity)}"
    )
    title = f"Plain {average}, true rms {true_rms}, DC {mean}"
    return readings(degrees, values, crest, unit, boxes, title), sentence


def _left_over(supply, place):
    """The sine that a dimmer's capacitor leaves at its output while it is off."""
    load = METER_OHMS
    if place == "off":
        load = heater.resistance(supply.volts_rms, POT_WATTS)
    volts = leakage.off_state(supply, *SNUBBER, heater_ohms=load).volts_rms
    return mains.Supply(volts, supply.hertz)


def _meaning(place, signal, quantity):
    true = write(signal.rms, quantity)
    if place == "on":
        error = meters.error_percent(signal)
        if not np.isfinite(error):
            return "Nothing is let through, yet one wire is live."
        low = write(-error, "percent", 2)
        said = f"The true value is {true}: the plain meter reads {low} low, right only on a sine."
        if not meters.within_crest_limit(signal):
            said += " The peaks are over 3 times the rms: a true-rms meter may be wrong as well."
        return said
    if place == "off":
        return "The heater swallows what leaks through the dimmer. One wire is live all the same."
    if place == "unloaded":
        return (
            "Without a load the meter shows almost the whole supply, though the dimmer is off: a "
            "leak, but one that is live. Load the ends, or prove dead with a two-pole tester."
        )
    return (
        f"The true rms with its DC part is {true}; an AC range leaves that part out. The light "
        "follows the DC range."
    )


def _open_on(supply):
    return partial(meter, supply), (
        Choice("place", "Measured", PLACES, "on"),
        Slider("angle_degrees", "Firing angle while on, in degrees", 0.0, 180.0, 1.0, 120.0),
    )


EXPLORER = Explorer(
    _open_on,
    (
        "At which angle does the plain meter show half of the true value?",
        "Switch the dimmer off, then unplug the heater as well. Which reading would fool you?",
        "Measure the LED's current. Which of the three follows its light?",
    ),
    "Danger: a reading of 0 V proves nothing. Isolate, prove the tester, prove dead, prove the "
    "tester again. Measuring on the mains is work for trained people with rated leads.",
)
