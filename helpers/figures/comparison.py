"""Picture that sets the five indicator circuits side by side."""

from typing import NamedTuple

from helpers.figures import style
from helpers.figures.words import NAMES, capital, watts
from helpers.physics.operating_point import operating_point
from helpers.quantities import write


class _Panel(NamedTuple):
    """One column of bars: heading, look, and per circuit the value and how it is written."""

    heading: str
    meaning: str
    values: list
    written: list


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
    figure : matplotlib.figure.Figure
    alternative : str
        The finding with its numbers.

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
    >>> words = five_circuits(mains.Supply(230.0, 50.0), phase_cut.NO_DIMMER, 120e3)[1]
    >>> words.replace("\\xa0", " ").partition(";")[0]
    'With 120 kΩ each, the bridge gets 1.7 mA of LED current for 0.429 W of heat'
    """
    points = [
        operating_point(circuit, supply, dimmer, ohms=ohms, led_volts=led_volts)
        for circuit in NAMES
    ]
    panels = _panels(points)
    finding = _finding(ohms, *panels[:2])
    rows = zip(NAMES.values(), *(panel.written for panel in panels), strict=True)
    alternative = f"{finding} " + " ".join(
        f"{capital(name)}: {amps} of LED current, {heat} in the resistor, "
        f"at most {volts} in reverse on an LED, flicker: {rate}."
        for name, amps, heat, volts, rate in rows
    )
    figure, all_axes = style.blank(finding, columns=4, height=3.4, gap=0.2, left=2.0, heading=0.45)
    for axes, panel in zip(all_axes, panels, strict=True):
        _bars(axes, panel)
    all_axes[0].set_yticks(range(len(NAMES)), NAMES.values())
    return figure, alternative


def _panels(points):
    light = [point.led_amps_mean + point.second_led_amps_mean for point in points]
    heat = [point.resistor_watts for point in points]
    volts = [point.led_reverse_volts_bound for point in points]
    rate = [point.light_dominant_hertz for point in points]
    return (
        _Panel("LED current,\nmean", "light", light, [write(amps, "current") for amps in light]),
        _Panel("heat in the\nresistor", "heat", heat, [watts(power) for power in heat]),
        _Panel("LED in reverse,\nat most", "volts", volts, [write(u, "voltage") for u in volts]),
        _Panel(
            "light repeats\nat", "eye", rate, [write(f, "frequency") if f else "dark" for f in rate]
        ),
    )


def _finding(ohms, light, heat):
    order = list(NAMES)
    bridge, diode = order.index("bridge"), order.index("series_diode")
    each = write(ohms, "resistance")
    if not any(light.values):
        return f"With {each} each, no circuit lights its LED at this setting."
    return (
        f"With {each} each, the bridge gets {light.written[bridge]} of LED current for "
        f"{heat.written[bridge]} of heat; a series diode {light.written[diode]} for "
        f"{heat.written[diode]}."
    )


def _bars(axes, panel):
    look = style.LOOKS[panel.meaning]
    places = range(len(panel.values))
    axes.barh(
        places, panel.values, height=0.6, color=look.colour, alpha=0.75, hatch=look.hatch,
        edgecolor=style.FACE, linewidth=0,
    )  # fmt: skip
    widest = max(panel.values) or 1.0
    for place, value, text in zip(places, panel.values, panel.written, strict=True):
        style.note(axes, value + 0.04 * widest, place, text, va="center")
    axes.set(xlim=(0, 1.75 * widest), ylim=(len(panel.values) - 0.5, -0.5), xticks=[])
    axes.set_yticks([])
    axes.grid(False)
    axes.spines["bottom"].set_visible(False)
    axes.set_title(
        panel.heading, loc="left", family=style.FONT, size=style.TEXT_SIZE - 1, color=style.INK
    )
