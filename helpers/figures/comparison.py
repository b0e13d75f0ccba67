"""Pictures of the seven ways to light a pilot light: side by side, and the pulse of one of them."""

import numpy as np

from helpers.figures.chart import Axis, Chart, bars, beside, heading, picture, stacked
from helpers.figures.waves import cycle_axis, voltage_chart
from helpers.figures.words import KINDS, capital, setting, watts
from helpers.physics import capacitor_dropper, compared, heater, leds, mains
from helpers.quantities import write

SAMPLES = 80
"""Points of a stretch of the pulse: its arc is then off by less than half a pixel [-]."""
#: What is compared of the seven: heading, look, and how it is said.
_MEASURES = (
    ("Light current, mean", "light", "mean"), ("Heat of all parts", "heat", "heat"),
    (f"Peak, of {write(leds.LIMIT_AMPS, 'current')}", "limit", "peak"),
    ("Backwards, peak", "mains", "backwards"), ("Light repeats at", "light", "flicker:"),
)  # fmt: skip


def seven_circuits(supply, dimmer, ohms, volts_rms=None):
    """Draw light, heat, peaks and flicker of the seven, at one setting of the dimmer.

    Parameters
    ----------
    supply : mains.Supply
        The supply, at its label.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float
        Series resistance, the same for the five that have a resistor and an LED [ohm].
    volts_rms : float, optional
        What the mains has today; its label if left out [V].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        As `compared.does`.

    Notes
    -----
    Light is the mean current of all LEDs together, or of the lamp. A pot of 90 W lies beside it.

    References
    ----------
    As `compared.does`.

    Examples
    --------
    >>> from helpers.physics.phase_cut import NO_DIMMER
    >>> said = seven_circuits(mains.Supply(230.0, 50.0), NO_DIMMER, 100e3).finding
    >>> said.replace("\\xa0", " ").partition(";")[0]
    "No dimmer, 230 V: the capacitor dropper's LED stays within what it stands: the bridge gets \
2.04 mA for 0.522 W"
    """
    today = mains.Supply(volts_rms or supply.volts_rms, supply.hertz)
    pot = heater.resistance(supply.volts_rms, heater.POT_WATTS)
    given = {"ohms": ohms, "lamp_ohms": compared.neon_ohms(supply), "heater_ohms": pot}
    found = {kind: compared.does(kind, today, dimmer, **given) for kind in KINDS}
    full = [compared.does(kind, today, **given) for kind in KINDS]
    most = [max(each) or 1.0 for each in zip(*full, strict=True)]
    rows = {capital(KINDS[kind]): _measures(does, most, today) for kind, does in found.items()}
    start = f"{setting(dimmer)}, {write(today.volts_rms, 'voltage')}"
    finding = _in_words(start, found)
    details = "In full:"
    for kind, row in rows.items():
        told = (f"{said} {text}" for (*_, said), (_, text) in zip(_MEASURES, row, strict=True))
        details += f" {kind}: {', '.join(told)}."
    columns = [
        heading(head) + bars(look, *((kind, *row[place]) for kind, row in rows.items()))
        for place, (head, look, _) in enumerate(_MEASURES)
    ]
    name = "Bars: a block for each measure, a row for each circuit"
    return picture(name, f"{finding}.", beside(*columns, least=220), details=details)


def _measures(does, most, supply):
    """Length of the bar against the longest there can be, and words, of each of `_MEASURES`."""
    mean, peak, back, heat, rate = does
    return (
        (mean / most[0], write(mean, "current")), (heat / most[3], watts(heat)),
        (peak / leds.LIMIT_AMPS, write(peak, "current")),
        (back / leds.LIMIT_AMPS, write(back, "current")),
        (rate / (2.0 * supply.hertz), write(rate, "frequency") if rate else "dark"),
    )  # fmt: skip


def _in_words(start, found):
    if not any(does.light_amps_mean for does in found.values()):
        return f"{start}: all seven are dark, yet the wires are live"
    bridge, diode, dropper, lamp = (
        f"{write(found[kind].light_amps_mean, 'current')} for {watts(found[kind].heat_watts)}"
        for kind in ("bridge", "series_diode", "capacitor_dropper", "neon")
    )
    peak = found["capacitor_dropper"].light_amps_peak
    if peak > leds.LIMIT_AMPS:
        return (
            f"Danger: {start[0].lower()}{start[1:]}: the capacitor dropper's LED takes more than "
            f"it stands: {write(peak, 'current')}, and {write(leds.LIMIT_AMPS, 'current')} is its "
            f"limit; a series diode gets {diode}"
        )
    return (
        f"{start}: the capacitor dropper's LED stays within what it stands: the bridge gets "
        f"{bridge}; a series diode {diode}; a capacitor dropper "
        f"{dropper}; a neon lamp {lamp}"
    )


def bad_days(supply, ohms):
    """Draw what the hottest resistor of each of the seven stands, and what the light says at off.

    Parameters
    ----------
    supply : mains.Supply
        The supply, at its label; heat is told at its highest.
    ohms : float
        Series resistance of the five that have a resistor and an LED [ohm].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        As `compared.stands`.

    Notes
    -----
    Resistors in pairs, but for the surge resistor of the capacitor dropper. Beside a pot of 90 W,
    behind a dimmer that is off and whose snubber leaks.

    References
    ----------
    As `compared.stands` and `compared.at_off`.

    Examples
    --------
    >>> said = bad_days(mains.Supply(230.0, 50.0), 100e3)
    >>> said.finding.replace("\xa0", " ").partition(":")[2].partition(";")[0]
    ' at off every terminal is live, lit or dark'
    """
    lamp, high = compared.neon_ohms(supply), mains.highest(supply)
    pots = heater.resistance(supply.volts_rms, heater.POT_WATTS), np.inf
    rows = {}
    for kind in KINDS:
        found = compared.stands(kind, high, ohms=ohms, lamp_ohms=lamp)
        off = (
            compared.at_off(kind, supply, ohms=ohms, lamp_ohms=lamp, heater_ohms=pot)
            for pot in pots
        )
        rows[kind] = (
            watts(found.watts_sound), watts(found.watts_after), found.fault,
            *(f"lit, {write(amps, 'current', 2)}" if amps else "dark" for amps in off),
        )  # fmt: skip
    finding = (
        "Danger: at off every terminal is live, lit or dark; a capacitor that fails short "
        f"overheats the surge resistor: {rows['capacitor_dropper'][1]} are left in it"
    )
    heads = ("", "hottest, sound", "after the worst fault", "that fault", "off, pot sound",
             "off, pot broken")  # fmt: skip
    head = "".join(f"<th>{text}</th>" for text in heads)
    lines = "".join(
        f"<tr><th>{capital(KINDS[kind])}</th>{''.join(f'<td>{text}</td>' for text in row)}</tr>"
        for kind, row in rows.items()
    )
    table = (
        '<div style="overflow-x:auto"><table style="border-top:1px solid currentColor">'
        f"<tr>{head}</tr>{lines}</table></div>"
    )
    details = " ".join(
        f"{capital(KINDS[kind])}: {sound} while sound, {after} after {fault}; with the dimmer off "
        f"and the pot sound {whole}, pot broken {broken}."
        for kind, (sound, after, fault, whole, broken) in rows.items()
    )
    name = "A table: a row for each of the seven circuits, heat before and after a fault, and off"
    return picture(name, f"{finding}.", table, details=details)


def dropper_pulse(supply, dimmer, farads, surge_ohms):
    """Draw one cycle of a capacitor dropper beside a pot: terminal volts and line current.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    farads : float
        The dropper's capacitor [F].
    surge_ohms : float
        Its surge resistor [ohm].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        As `capacitor_dropper.steady`.

    Notes
    -----
    Beside a pot of 90 W, with a bleeder of 2 Mohm, a red LED behind a bridge and ideal edges: a
    dimmer's choke rounds the pulse.

    References
    ----------
    As `capacitor_dropper.steady`.

    Examples
    --------
    >>> from helpers.physics.phase_cut import Dimmer
    >>> said = dropper_pulse(mains.Supply(230.0, 50.0), Dimmer("leading", 90.0), 100e-9, 1e3)
    >>> said.finding.replace("\\xa0", " ").partition(",")[0]
    'Danger: leading edge at 90°: for an instant the LED takes more than it stands: 325 mA'
    """
    parts = capacitor_dropper.Parts(farads, surge_ohms, compared.DROPPER.bleeder_ohms)
    pot = heater.resistance(supply.volts_rms, heater.POT_WATTS)
    sine = capacitor_dropper.steady(parts, supply, heater_ohms=pot)
    point = capacitor_dropper.steady(parts, supply, dimmer, heater_ohms=pot)
    degrees, volts, amps = capacitor_dropper.trace(
        parts, supply, dimmer, heater_ohms=pot, samples=SAMPLES
    )
    limit, peak = leds.LIMIT_AMPS, point.led_amps_peak
    text, over = setting(dimmer), peak > limit
    start = f"Danger: {text[0].lower()}{text[1:]}" if over else text
    taken = "more than it stands" if over else "no more than it stands"
    finding = (
        f"{start}: for an instant the LED takes {taken}: {write(peak, 'current')}, "
        f"{write(peak / sine.led_amps_peak, 'ratio', 2)} times its peak on a whole sine"
    )
    said = (
        f"{finding}. A small LED stands {write(limit, 'current')}. Its mean is "
        f"{write(point.led_amps_mean, 'current')}, on a whole sine "
        f"{write(sine.led_amps_mean, 'current')}. The surge resistor gives "
        f"{watts(point.surge_watts)}, on a whole sine {watts(sine.surge_watts)}."
    )
    if not peak:
        said = (
            f"{text}: nothing is let through; the light is dark, yet the wires are live. 0 V here "
            "is a calculation, never a proof."
        )
    top = max(amps.max(), limit)
    across = cycle_axis(supply)
    upper = voltage_chart(supply, dimmer, 120, across.unnamed(), (degrees, volts))
    what = "current of the capacitor dropper; between the broken lines what a small LED stands"
    ticks = {value: write(value, "current") for value in (-top, 0.0, top)}
    lower = Chart(150, across, Axis(-1.15 * top, 1.15 * top, what, ticks))
    if dimmer.edge != "none":
        half = mains.volts_at(supply.volts_rms, dimmer.angle_degrees) / 2
        upper.grip("angle_degrees", dimmer.angle_degrees, half, period=180)
    for value in (-limit, limit):
        lower.line((0.0, 360.0), value, "limit")
    lower.line(degrees, amps, "led")
    name = "Two curves over one cycle: the voltage, and the current of a capacitor dropper"
    return picture(name, said, stacked(upper, lower))
