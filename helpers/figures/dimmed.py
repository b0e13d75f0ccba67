"""Picture of all that a dimmer's setting does at once: wave, LED, heater, light, two meters."""

from helpers.figures.chart import bars, beside, number_box, picture
from helpers.figures.drawn import Drawn
from helpers.figures.waves import cycle_charts
from helpers.figures.words import NEXT_TO_NOTHING, setting, share_of_one
from helpers.physics import light, meters, phase_cut_inverse, signals
from helpers.physics.operating_point import operating_point
from helpers.quantities import write


def at_once(circuit, supply, dimmer, ohms, heater_watts, led_volts=2.0):
    """Draw wave, LED current, shares of heat, light and look, and two meters, of one setting.

    Parameters
    ----------
    circuit : str
        A key of `physics.circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float
        Series resistance of the LED [ohm].
    heater_watts : float
        Heat of the heater on full mains [W].
    led_volts : float
        Forward drop of the LED [V].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Notes
    -----
    Light follows the mean current of the LED; how bright it looks is the CIE lightness.

    References
    ----------
    As `operating_point`, `phase_cut_inverse.percentages` and `meters.reading`.

    Examples
    --------
    >>> from helpers.physics import mains, phase_cut
    >>> half = phase_cut.Dimmer("leading", 90.0)
    >>> words = at_once("bridge", mains.Supply(230.0, 50.0), half, 68e3, 90.0).finding
    >>> words.replace("\\xa0", " ").partition(",")[0]
    'Leading edge at 90°: the heater makes 45 W of its 90 W'
    """
    full = operating_point(circuit, supply, ohms=ohms, led_volts=led_volts)
    point = operating_point(circuit, supply, dimmer, ohms=ohms, led_volts=led_volts)
    lit = point.led_amps_mean / full.led_amps_mean
    look = light.lightness(lit) / 100.0
    heat = phase_cut_inverse.percentages(dimmer).power_percent / 100.0
    signal = signals.dimmed_mains(supply, dimmer)
    plain, true = (
        write(meters.reading(signal, kind), "voltage") for kind in ("average", "true_rms")
    )
    made, got = (
        "almost nothing" if 0.0 < share < NEXT_TO_NOTHING else write(value, name)
        for share, value, name in (
            (heat, heat * heater_watts, "power"), (lit, point.led_amps_mean, "current"),
        )
    )  # fmt: skip
    finding = (
        f"{setting(dimmer)}: the heater makes {made} of its "
        f"{write(heater_watts, 'power')}, and the LED gets {got} on average"
    )
    said = (
        f"{finding}. That is {share_of_one(lit)} of full light, and looks {share_of_one(look)} as "
        f"bright. A true-rms meter shows {true}, a plain one {plain}; the peak is "
        f"{write(signal.peak, 'voltage')}."
    )
    if signal.rms and not meters.within_crest_limit(signal):
        said += " With peaks so far above the rms, a true-rms meter may be wrong as well."
    if not lit:
        said += " The light is out, yet the wires are live."
    curves = "".join(part.html() for part in cycle_charts(circuit, supply, dimmer, ohms, led_volts))
    shares = "".join(
        bars(meaning, (label, share, share_of_one(share)))
        for label, share, meaning in (
            ("Heat of the heater", heat, "heat"),
            ("Light of the LED", lit, "light"),
            ("How bright it looks", look, "eye"),
        )
    )
    shares += number_box("Plain meter, AC", plain, "mean, scaled for a sine")
    shares += number_box("True-rms meter, AC", true, "shows what heats")
    name = (
        "Two curves over one cycle, the voltage and the current of the LED; beside them heat, "
        "light and look in per cent of full, and what two meters show"
    )
    return Drawn(picture(name, finding, beside(curves, shares, least=250)), said)
