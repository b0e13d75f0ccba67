"""Picture of all that a dimmer's setting does at once: wave, LED, pot, resistors, two meters."""

from helpers.figures import scene
from helpers.figures.chart import beside, picture, stacked
from helpers.figures.seen import DISTANCE
from helpers.figures.waves import cycle_charts
from helpers.figures.words import NEXT_TO_NOTHING, setting, share_of_one, watts, whole_percent
from helpers.physics import glow, heater, leakage, light, mains, meters, signals, visibility
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import NO_DIMMER
from helpers.quantities import write, write_as

RESISTORS = 2


def at_once(circuit, supply, dimmer, ohms_each, heater_watts, today=None, room_lux=300.0):
    """Draw the wave, with LED, pot, resistors and what two meters show, at one setting.

    Parameters
    ----------
    circuit : str
        A key of `physics.circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply, at its label.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms_each : float
        Each of the two resistors in series with the LED [ohm].
    heater_watts : float
        Heat of the pot on the label's volts [W].
    today : mains.Supply, optional
        The mains of the day; the label if left out.
    room_lux : float
        Light on the wall behind the LED [lx].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML. Its edge is the grip of a control named `angle_degrees`.

    Notes
    -----
    Light follows the mean current of the LED, a plain red one of 2 V; how bright it looks is the
    CIE lightness. Where nothing is let through, what a usual snubber leaks is drawn instead.

    References
    ----------
    As `operating_point`, `meters.reading`, `visibility.visible_metres` and `leakage.off_state`.

    Examples
    --------
    >>> from helpers.physics import phase_cut
    >>> half = phase_cut.Dimmer("leading", 90.0)
    >>> drawn = at_once("bridge", mains.Supply(230.0, 50.0), half, 33e3, 90.0)
    >>> drawn.finding.replace("\\xa0", " ").partition(".")[0]
    'Leading edge at 90°: 50 % of the heat, 50 % of the light, and it looks 76 % as bright'
    """
    today = today or supply
    ohms, pot = RESISTORS * ohms_each, heater.resistance(supply.volts_rms, heater_watts)
    now, cut = today, dimmer
    if not dimmer.conduction_degrees:
        left = leakage.off_state(today, *leakage.USUAL_SNUBBER, heater_ohms=pot).volts_rms
        now, cut = mains.Supply(left, supply.hertz), NO_DIMMER
    full, point, high = (
        operating_point(circuit, *case, ohms=ohms)
        for case in ((today,), (now, cut), (mains.highest(supply),))
    )
    made = heater.watts(now, cut, pot)
    heat = made / heater.watts(today, NO_DIMMER, pot)
    lit = point.led_amps_mean / full.led_amps_mean
    look = light.lightness(lit) / 100.0
    signal = signals.dimmed_mains(now, cut)
    readings = meters.reading(signal, "true_rms"), meters.reading(signal, "average")
    true, plain = (write(each, "voltage") for each in readings)
    sent = visibility.candelas(point.led_amps_mean, glow.typical_candelas("red"), glow.SHEET_AMPS)
    metres = visibility.visible_metres(sent, visibility.background_luminance(room_lux))
    seen = "noticed by nobody"
    if lit > NEXT_TO_NOTHING:
        seen = f"noticed up to {write_as(metres, 'm', 2)}"
    warm, hot = (watts(each.resistor_watts / RESISTORS) for each in (point, high))
    pot_made, mean = (
        "almost nothing" if 0.0 < share < NEXT_TO_NOTHING else text
        for share, text in ((heat, watts(made)), (lit, write(point.led_amps_mean, "current")))
    )
    title = (
        f"{setting(dimmer)}: {whole_percent(heat)} of the heat, {whole_percent(lit)} of the light, "
        f"and it looks {whole_percent(look)} as bright"
    )
    if cut is not dimmer:
        title = f"{setting(dimmer)}: nothing is let through, yet a leak is left, and it is live"
    said = (
        f"{title}. On {write(today.volts_rms, 'voltage')} the pot of {watts(heater_watts)} makes "
        f"{pot_made}; the LED gets {mean} on average and is {seen}, with "
        f"{write(room_lux, 'illuminance')} on the wall. Each resistor gives {warm}, at full on the "
        f"highest mains {hot}. A true-rms meter shows {true}, a plain one {plain}; the peak is "
        f"{write(signal.peak, 'voltage')}."
    )
    if not meters.within_crest_limit(signal):
        said += " With peaks so far above the rms, a true-rms meter may be wrong as well."
    upper, lower = cycle_charts(circuit, now, cut, ohms)
    upper.line((0, 360), readings[0], "rms", f"true rms\n{true}")
    upper.line((0, 360), readings[1], "mean", f"plain meter\n{plain}")
    lower.line((0, 360), point.led_amps_mean, "led mean", f"mean\n{mean}")
    if dimmer.edge != "none":
        middle = mains.volts_at(now.volts_rms, dimmer.angle_degrees) / 2
        upper.grip("angle_degrees", dimmer.angle_degrees, middle, period=180)
    of_light = f"{share_of_one(lit)} of the light", f"looks {share_of_one(look)} as bright"
    of_pot = f"{pot_made} of heat", f"pot of {watts(heater_watts)}"
    of_resistor = f"{warm} in each resistor", f"{hot} at the most"
    warmth = point.resistor_watts / high.resistor_watts
    shone = scene.drawing(
        294, 160, scene.by_night(0, 0, lit, look, *of_light),
        scene.distance(0, 104, metres, DISTANCE, seen),
    )  # fmt: skip
    heated = scene.drawing(
        294, 160, scene.pot(0, 22, made / heater_watts, *of_pot),
        scene.resistor(0, 136, warmth, *of_resistor),
    )  # fmt: skip
    name = (
        "Two curves over one cycle, the voltage and the current of the LED, with what two meters "
        "show; beside them the light and how far it is noticed, the pot's heat and a resistor's"
    )
    return picture(name, said, stacked(upper, lower), beside(shone, heated, least=290))
