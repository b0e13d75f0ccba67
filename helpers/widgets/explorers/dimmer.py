"""Explorer: what a dimmer setting does to wave, LED, heater and two meters, all at once."""

from functools import partial

from helpers.figures.live.waves import Setting, dimmed
from helpers.physics import heater, light, meters, phase_cut, signals
from helpers.physics.operating_point import operating_point
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Choice, Slider
from helpers.widgets.explorers.mains_side import CIRCUIT, DROPPER, LED_VOLTS, cycle, percent
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
        Where the edge stands in each half cycle [deg].
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
    setting = phase_cut.Dimmer(edge, angle_degrees)
    full = operating_point(circuit, supply, ohms=ohms, led_volts=LED_VOLTS)
    point = operating_point(circuit, supply, setting, ohms=ohms, led_volts=LED_VOLTS)
    pot_ohms = heater.resistance(supply.volts_rms, POT_WATTS)
    pot_watts = heater.watts(supply, setting, pot_ohms)
    light_share = point.led_amps_mean / full.led_amps_mean
    look = light.lightness(light_share) / 100.0
    signal = signals.dimmed_mains(supply, setting)
    average, true_rms = meters.reading(signal, "average"), meters.reading(signal, "true_rms")
    mean = write(point.led_amps_mean, "current")
    title = f"{edge.capitalize()} edge at {write(angle_degrees, 'angle')}: {mean} in the LED, "
    title += f"{write(pot_watts, 'power')} in the pot"
    shown = Setting(title, pot_watts / POT_WATTS, light_share, look, average, true_rms)
    sentence = (
        f"Calculated: {edge} edge at {write(angle_degrees, 'angle')}. The heater makes "
        f"{write(pot_watts, 'power')} of its {write(POT_WATTS, 'power')}. The LED gets {mean} on "
        f"average, {percent(light_share)} of full light, and looks {percent(look)} as bright. "
        f"A true-rms meter shows {write(true_rms, 'voltage')}, a plain one "
        f"{write(average, 'voltage')}; the peak is {write(signal.peak, 'voltage')}."
    )
    if average and not meters.within_crest_limit(signal):
        sentence += " With peaks so far above the rms, a true-rms meter may be wrong as well."
    if light_share == 0.0:
        sentence += " The light is out, yet the wires are live."
    return dimmed(cycle(supply, setting, circuit, ohms), shown), sentence


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
        "what does that mean for insulation?",
        "Find the setting at which the pot makes a tenth of its heat. Would you still see the "
        "light?",
        "Find where the plain meter is off by a third. Does a trailing edge change that?",
    ),
    "Danger: behind a dimmer everything is at mains voltage at every setting, also turned down "
    "and switched off. Dark never means dead. Nothing here is a reason to open a dimmer.",
)
