"""Picture of what three kinds of meter show behind a dimmer, in plain number boxes."""

from functools import cache

import numpy as np

from helpers.figures.chart import Axis, Chart, beside, number_box, picture
from helpers.figures.waves import SAMPLES, cycle_axis, led_curve
from helpers.physics import clamped, heater, leakage, mains, phase_cut, signals
from helpers.physics import meters as physics_meters
from helpers.quantities import write

PLACES = {
    "volts at the heater, dimmer on": "on",
    "volts at the heater, dimmer off": "off",
    "volts at the open ends, heater unplugged, dimmer off": "unloaded",
    "volts at the pot, element broken, series diode, dimmer off": "broken",
    "current of an LED with series diode": "led",
}
_WORTH_SAYING = 0.5
"""Errors below this are not worth a warning [%]."""


def meters(supply, dimmer, place="on", ohms=68e3, farads=100e-9, heater_watts=90.0):
    """Draw a wave and what a plain (average-responding), a true-rms and a DC meter show on it.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting, while it is on.
    place : str
        What is measured: a value of `PLACES` [-].
    ohms : float
        Dropper of the LED [ohm].
    farads : float
        Capacitor across the dimmer's switch, in series with a usual resistor [F].
    heater_watts : float
        Heat of the pot on full mains [W].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Notes
    -----
    Ideal meters, a red LED of 2 V; a true-rms meter is trusted up to a crest factor of 3.

    References
    ----------
    As `meters.reading`, `meters.within_crest_limit`, `leakage.off_state` and `clamped.off_state`.

    Examples
    --------
    >>> drawn = meters(mains.Supply(120.0, 60.0), phase_cut.Dimmer("leading", 120.0))
    >>> drawn.finding.replace("\\xa0", " ").partition(":")[0]
    'The plain meter shows 43 % too little'
    """
    signal, degrees, values, crest = _measured(supply, dimmer, place, ohms, farads, heater_watts)
    quantity = "current" if place == "led" else "voltage"
    plain, true, mean = (
        write(physics_meters.reading(signal, *how), quantity)
        for how in (("average",), ("true_rms",), ("mean", "dc"))
    )
    finding, meaning = _in_words(signal, place, plain, true, quantity, ohms)
    said = f"{finding}. {meaning}"
    if place == "broken":
        said += f"The plain meter shows {plain}, the true-rms meter {true}. "
    said += f"The DC range shows {mean}."
    low = 0.0 if place == "led" else -1.15 * crest
    ticks = {at: write(at, quantity) for at in (-crest, 0.0, crest) if at >= low}
    up = Axis(low, 1.15 * crest, quantity, ticks)
    chart = Chart(220, cycle_axis(supply), up)
    chart.line(degrees, values, "led" if place == "led" else "volts")
    if place in ("on", "led") and dimmer.edge != "none":
        chart.grip("angle_degrees", dimmer.angle_degrees, 0.25 * crest, period=180)
    boxes = (
        ("Plain meter, AC", plain, "mean, scaled for a sine"),
        ("True-rms meter, AC", true, "what heats, less any DC"),
        ("DC range", mean, "mean with its sign"),
    )
    shown = beside(chart.html(), "".join(number_box(*box) for box in boxes), least=250)
    name = "A wave, and the readings of three meters"
    return picture(name, said, shown)


def _measured(supply, dimmer, place, ohms, farads, heater_watts):
    """Signal, curve, and the size that the scale has to hold."""
    crest = mains.peak(supply.volts_rms)
    if place == "led":
        curve = led_curve("series_diode", supply, dimmer, ohms)
        signal = signals.led_amps("series_diode", supply, dimmer, ohms=ohms)
        return signal, *curve, crest / ohms
    snubber = farads, leakage.USUAL_SNUBBER[1]
    if place == "broken":
        return _broken(supply, *snubber, ohms)
    if place != "on":
        load = physics_meters.INPUT_OHMS
        if place == "off":
            load = heater.resistance(supply.volts_rms, heater_watts)
        left = leakage.off_state(supply, *snubber, heater_ohms=load).volts_rms
        supply, dimmer = mains.Supply(left, supply.hertz), phase_cut.NO_DIMMER
        crest = mains.peak(left)
    curve = phase_cut.trace(supply, dimmer, 1, SAMPLES)
    return signals.dimmed_mains(supply, dimmer), *curve, crest


@cache
def _broken(supply, *parts):
    """The same with a broken element: kept, for it takes time and no slider changes it."""
    pot = supply, *parts, physics_meters.INPUT_OHMS
    degrees = np.linspace(0.0, 360.0, SAMPLES + 1)
    signal = clamped.off_state(*pot).signal
    return signal, degrees, clamped.volts_at(degrees, *pot), signal.peak


def _in_words(signal, place, plain, true, quantity, ohms):
    """The finding, and what it means."""
    rms, peak = write(signal.rms, quantity), write(signal.peak, quantity)
    if place == "broken":
        return f"Danger: dimmer off, and the pot's terminals swing to {peak}", (
            "The element is broken, and the series diode lets the dimmer's capacitor charge. The "
            f"light is nearly dark. The true rms is {rms}; an AC range leaves the steady part out "
            "and shows no more than the mains. Without the meter, which drains a little, it is "
            "more still. A tester or meter whose upper limit lies below can fail or mislead. Pull "
            "the plug before anything else. "
        )
    both = f"the plain meter shows {plain}, the true-rms meter {true}"
    if place == "off":
        return f"Dimmer off, heater connected: {both}", (
            "The heater swallows what leaks through the dimmer. Both wires count as live "
            "all the same. "
        )
    if place == "unloaded":
        return f"Dimmer off, heater unplugged: {both}", (
            "Without a load the meter shows almost the whole supply, though the dimmer is off: a "
            "leak, but one that is live. Pull the plug before anything else, and prove dead with a "
            "two-pole tester rated for what may stand there: a low reading with the plug in proves "
            "nothing. "
        )
    if place == "led":
        return f"Behind {write(ohms, 'resistance')}, current of the LED: {both}", (
            f"The true rms with its DC part is {rms}; an AC range leaves that part out. The light "
            "follows the DC range. "
        )
    error = physics_meters.error_percent(signal)
    if not np.isfinite(error):
        return "All meters show 0 V, and that proves nothing: the wires count as live", ""
    if abs(error) < _WORTH_SAYING:
        return f"Both AC meters show the same: {plain} and {true}", ""
    trusted = physics_meters.within_crest_limit(signal)
    return (
        f"The plain meter shows {write(-error, 'percent', 2)} too little: {plain} where the true "
        f"value is {rms}"
    ), "It is right only on a sine. " + (
        "" if trusted else
        "The peaks are over 3 times the rms: many true-rms meters are out of their range as well. "
    )  # fmt: skip
