"""Picture that sets the five indicator circuits side by side."""

from helpers.figures.chart import bars, beside, heading, picture
from helpers.figures.drawn import Drawn
from helpers.figures.words import NAMES, capital, setting, watts
from helpers.physics.operating_point import operating_point
from helpers.quantities import write


def five_circuits(supply, dimmer, ohms, led_volts=2.0):
    """Draw light, heat, reverse voltage and flicker of the five circuits with one resistor.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float
        Series resistance, the same for all [ohm].
    led_volts : float
        Forward drop of the LED [V].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        As `operating_point`.

    Notes
    -----
    Light is the mean current of all LEDs together. The reverse voltage of the LED is the bound
    that holds for leaking diodes too.

    References
    ----------
    As `operating_point`.

    Examples
    --------
    >>> from helpers.physics import mains, phase_cut
    >>> words = five_circuits(mains.Supply(230.0, 50.0), phase_cut.NO_DIMMER, 120e3).finding
    >>> words.replace("\\xa0", " ").partition(";")[0]
    'No dimmer, 120 kΩ each: the bridge gets 1.7 mA of LED current for 0.429 W of heat'
    """
    points = {
        circuit: operating_point(circuit, supply, dimmer, ohms=ohms, led_volts=led_volts)
        for circuit in NAMES
    }
    full = operating_point("bridge", supply, ohms=ohms, led_volts=led_volts)
    volts = max(point.led_reverse_volts_bound for point in points.values())
    rows = {circuit: _measures(point, full, volts, supply) for circuit, point in points.items()}
    texts = {circuit: [text for *_, text in row] for circuit, row in rows.items()}
    finding, more = _in_words(f"{setting(dimmer)}, {write(ohms, 'resistance')} each", texts)
    details = "In full: " + " ".join(
        f"{capital(NAMES[circuit])}: {amps} of LED current, {heat} in the resistor, up to {back} "
        f"and at most {volts} in reverse in an LED, flicker: {rate}."
        for circuit, (amps, heat, back, volts, rate) in texts.items()
    )
    columns = [
        heading(measures[0][0])
        + bars(measures[0][1], *(
            (capital(NAMES[circuit]), share, text)
            for circuit, (*_, share, text) in zip(NAMES, measures, strict=True)
        ))
        for measures in zip(*rows.values(), strict=True)
    ]  # fmt: skip
    name = "Bars: a block for each measure, a row for each circuit"
    svg = picture(name, finding, beside(*columns, least=220))
    return Drawn(svg, f"{finding}.{more}", details)


def _measures(point, full, most_volts, supply):
    """Heading, look, length of the bar against the longest there can be, and words, of each."""
    light = point.led_amps_mean + point.second_led_amps_mean
    back, volts = point.led_reverse_amps_peak, point.led_reverse_volts_bound
    rate = point.light_dominant_hertz
    return (
        ("LED current, mean", "light", _share(light, full.led_amps_mean), write(light, "current")),
        ("Heat in dropper", "heat", _share(point.resistor_watts, full.resistor_watts),
         watts(point.resistor_watts)),
        ("Backwards, peak", "volts", _share(back, full.led_amps_peak), write(back, "current")),
        ("At most backwards", "limit", _share(volts, most_volts), write(volts, "voltage")),
        ("Light repeats at", "eye", rate / (2.0 * supply.hertz),
         write(rate, "frequency") if rate else "dark"),
    )  # fmt: skip


def _share(value, most):
    return value / (1.03 * most) if most else 0.0


def _in_words(start, texts):
    if all(row[-1] == "dark" for row in texts.values()):
        return f"{start}: all five are dark, yet the wires are live", ""
    bridge, diode, back = texts["bridge"], texts["series_diode"], texts["resistor_only"][2]
    return (
        f"{start}: the bridge gets {bridge[0]} of LED current for {bridge[1]} of heat; a series "
        f"diode {diode[0]} for {diode[1]}"
    ), (
        " The bridge lights in both half-cycles, the series diode in every second one. Without any "
        f"diode the LED is driven into breakdown, up to {back} backwards: do not build that one."
    )
