"""Circuit drawings in the symbols of IEC 60617, as SVG that is the same at every run.

One line weight, labels beside the wires, the live side named in words. Knows no question and
works out no current.
"""

from helpers.figures.pen import Pen
from helpers.figures.words import NAMES, capital
from helpers.physics import circuits, limits
from helpers.quantities import write

_FEATURES = {
    "resistor_only": (
        "Nothing protects the LED: in the other half-cycle it is pushed backwards until it breaks "
        "down."
    ),
    "series_diode": "A silicon diode in series with both lets one half-cycle through.",
    "diode_across": (
        "A silicon diode lies across the LED, the other way round, and carries the other half "
        "cycle."
    ),
    "two_leds": "A second LED lies across the first, the other way round: one for each half-cycle.",
    "bridge": "Four silicon diodes lead both half-cycles through the LED in its own direction.",
}
_LIVE_AND_EARTH = (
    "Every part of it counts as live. Earth goes to metal that can be touched, and no part of the "
    "light is joined to it."
)
_ROOM = 1.3
"""Length of wire that a resistor of a string takes, in units of a drawing [-]."""
_TAPS = {
    "after": (
        ("behind the", "dimmer"),
        "The pilot light lies across the heater, behind switch and dimmer: it shows that the "
        "heater is supplied, and follows the setting. It can glow faintly when off, and dark "
        "never means dead.",
    ),
    "before": (
        ("before switch", "and dimmer"),
        "The pilot light is tapped before the switch and the dimmer: it shows that the mains is "
        "present, at any setting, and says nothing of the heater. Dark never means dead.",
    ),
}


def bench_dropper(volts, ohms, led_volts):
    """Draw an LED and its dropper on a bench supply, with values.

    Parameters
    ----------
    volts : float
        Setting of the supply [V].
    ohms : float
        The dropper [ohm].
    led_volts : float
        The LED's own drop [V].

    Returns
    -------
    drawn : Drawn
        With title and description for screen readers.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> bench_dropper(12.0, 1000.0, 2.0).finding.replace("\\xa0", " ")
    'Circuit: a 12 V DC bench supply, a dropper of 1 kΩ and an LED (2 V) in one loop.'
    """
    supply, dropper, led = (
        write(volts, "voltage"), write(ohms, "resistance"), write(led_volts, "voltage")
    )  # fmt: skip
    alternative = (
        f"Circuit: a {supply} DC bench supply, a dropper of {dropper} and an LED ({led}) "
        "in one loop."
    )
    pen, top, right = Pen(), 3.6, 5.4
    pen.part("SourceV", (0.0, 0.0), (0.0, top))
    pen.part("ResistorIEC", (0.0, top), (right, top))
    pen.part("LED", (right, top), (right, 0.0))
    pen.part("Line", (right, 0.0), (0.0, 0.0))
    pen.write(-0.8, 2.1, "bench supply", "right")
    pen.write(-0.8, 1.4, f"{supply} DC", "right")
    pen.write(right / 2.0, top + 0.9, f"dropper R, {dropper}")
    pen.write(right - 0.7, 1.8, f"LED, {led}", "right")
    return pen.done("An LED and its dropper on a bench supply", alternative)


def indicator(circuit, ohms=None, led_volts=None, string=None, led_count=1):
    """Draw one of the five indicator circuits between live and neutral.

    Parameters
    ----------
    circuit : str
        A key of `physics.circuits.CIRCUITS` [-].
    ohms : float, optional
        The dropper, or each of its resistors, to be written beside it [ohm].
    led_volts : float, optional
        The drop of all LEDs in series, to be written beside them [V].
    string : tuple of int, optional
        How many resistors stand in the live wire, and how many in the neutral one; two in the live
        wire as one dropper if none is given [-].
    led_count : int
        How many LEDs in series the one that is drawn stands for [-].

    Returns
    -------
    drawn : Drawn
        With title and description for screen readers.

    Raises
    ------
    ValueError
        If the circuit is unknown.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> indicator("bridge", 120e3).finding.replace("\\xa0", " ").partition(".")[0]
    'Circuit, bridge: between live and neutral lie dropper R, 120 kΩ, and LED'
    """
    limits.one_of(circuit, "circuit", NAMES)
    dropper = "dropper R" if ohms is None else f"dropper R, {write(ohms, 'resistance')}"
    led = "LED" if led_count == 1 else f"{led_count} LEDs"
    led = led if led_volts is None else f"{led}, {write(led_volts, 'voltage')}"
    words, also = [dropper, ""], "The dropper is two resistors in series. "
    if string:
        also = ""
        words = [f"{count} × {write(ohms, 'resistance')}" for count in string]
        wires = zip(words, string, ("in the live wire", "in the neutral one"), strict=True)
        dropper = " and ".join(f"{said} {wire}" for said, count, wire in wires if count)
    alternative = (
        f"Circuit, {NAMES[circuit]}: between live and neutral lie {dropper}, and {led}. "
        f"{also}{_FEATURES[circuit]} {_LIVE_AND_EARTH}"
    )
    pen = Pen()
    wired = circuits.named(circuit)
    draw = _bridge if wired.lights_twice else _one_loop
    draw(pen, wired.sound, zip(words, string or (2, 0), strict=True), led)
    pen.earth(-3.4 if wired.lights_twice else -2.0)
    return pen.done(f"{capital(NAMES[circuit])} indicator circuit", alternative)


def capacitor_dropper(farads=None, surge_ohms=None, bleeder_ohms=None):
    """Draw a capacitor dropper: fuse, surge resistor, capacitor with bleeder, bridge and LED.

    Parameters
    ----------
    farads : float, optional
        Its capacitor, to be written beside it [F].
    surge_ohms : float, optional
        Its surge resistor, likewise [ohm].
    bleeder_ohms : float, optional
        Each of the two resistors of its bleeder, likewise [ohm].

    Returns
    -------
    drawn : Drawn
        With title and description for screen readers.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> capacitor_dropper(100e-9).finding.replace("\\xa0", " ").partition(";")[0]
    'Circuit, capacitor dropper: from live through fuse, surge resistor, capacitor X2, 100 nF'
    """
    surge, capacitor, bleeder = (
        name if value is None else f"{name}, {write(value, of)}"
        for name, value, of in (
            ("surge resistor", surge_ohms, "resistance"), ("capacitor X2", farads, "capacitance"),
            ("bleeder, two", bleeder_ohms, "resistance"),
        )
    )  # fmt: skip
    alternative = (
        f"Circuit, capacitor dropper: from live through fuse, {surge}, {capacitor}; across the "
        f"capacitor a {bleeder} in series; then a bridge of four diodes with the LED inside, to "
        f"neutral. The capacitor can stay charged with the plug out. {_LIVE_AND_EARTH}"
    )
    pen, top, side, bleed, low = Pen(), 8.6, 7.6, 3.2, 4.2
    west, east, north, south = (1.6, 0.0), (side, 0.0), (4.6, 3.0), (4.6, -3.0)
    pen.terminal(0.0, top, "live")
    pen.terminal(0.0, 0.0, "neutral")
    pen.part("FuseIEC", (0.0, top), (2.0, top))
    pen.write(1.0, top + 0.9, "fuse")
    pen.part("ResistorIEC", (2.0, top), (5.2, top))
    pen.wire((5.2, top), (side, top), (side, top - 1.0))
    for line, text in enumerate(surge.split(", ")):
        pen.write(5.0, top + 1.5 - 0.65 * line, text)
    pen.part("Capacitor", (side, top - 1.0), (side, low))
    for line, text in enumerate(capacitor.split(", ")):
        pen.write(side - 0.7, 6.6 - 0.65 * line, text, "right")
    pen.wire((side, top - 1.0), (bleed - 1.4, top - 1.0))
    pen.part("ResistorIEC", (bleed - 1.4, top - 1.0), (bleed - 1.4, 5.9))
    pen.part("ResistorIEC", (bleed - 1.4, 5.9), (bleed - 1.4, low))
    pen.wire((bleed - 1.4, low), (side, low), east)
    pen.dots((side, top - 1.0), (side, low))
    for line, text in enumerate(bleeder.split(", ", 1)):
        pen.write(bleed - 0.9, 5.75 - 0.65 * line, text, "left")
    pen.bridge(west, east, north, south)
    pen.write(north[0] - 0.7, 0.0, "LED", "right")
    pen.part("Line", west, (0.0, 0.0))
    pen.earth(-4.4)
    return pen.done("Capacitor dropper indicator circuit", alternative)


def neon(ohms=None):
    """Draw a neon lamp with its two resistors between live and neutral.

    Parameters
    ----------
    ohms : float, optional
        Each resistor, to be written beside it [ohm].

    Returns
    -------
    drawn : Drawn
        With title and description for screen readers.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> neon(47e3).finding.replace("\\xa0", " ").partition(",")[2].partition(".")[0]
    ' neon lamp: between live and neutral lie two resistors of 47 kΩ, and a neon lamp'
    """
    each = "two resistors" if ohms is None else f"two resistors of {write(ohms, 'resistance')}"
    alternative = (
        f"Circuit, neon lamp: between live and neutral lie {each}, and a neon lamp. "
        f"{_LIVE_AND_EARTH}"
    )
    pen, top, corner = Pen(), 3.6, 6.8
    pen.terminal(0.0, top, "live")
    pen.terminal(0.0, 0.0, "neutral")
    pen.part("ResistorIEC", (0.0, top), (3.2, top))
    pen.part("ResistorIEC", (3.2, top), (corner, top))
    pen.part("Neon", (corner, top), (corner, 0.0))
    pen.write(3.2, top + 0.9, each)
    pen.write(corner - 0.9, 1.8, "neon lamp", "right")
    pen.part("Line", (corner, 0.0), (0.0, 0.0))
    pen.earth(-2.0)
    return pen.done("Neon lamp indicator circuit", alternative)


def dimmed_heater(tap="after"):
    """Draw the dimmer, its heater and where the pilot light is tapped.

    Parameters
    ----------
    tap : str
        'after' the dimmer and its switch, or 'before' both [-].

    Returns
    -------
    drawn : Drawn
        With title and description for screen readers.

    Raises
    ------
    ValueError
        If the tap is neither.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> dimmed_heater("before").finding.partition(".")[0]
    'Circuit: from live through switch, dimmer and heater to neutral'
    """
    limits.one_of(tap, "tap", _TAPS)
    place, meaning = _TAPS[tap]
    alternative = (
        "Circuit: from live through switch, dimmer and heater to neutral. In many dimmers a "
        f"snubber, a capacitor and a resistor, bridges the switch and leaks at off. The "
        f"pilot light is two resistors, a diode and an LED in series. {meaning} Earth "
        "goes to metal that can be touched."
    )
    pen = Pen()
    top, bottom, at_tap, right = 4.4, 0.0, {"after": 6.6, "before": 0.9}[tap], 8.4
    pen.terminal(0.0, top, "live")
    pen.terminal(0.0, bottom, "neutral")
    pen.part("Line", (0.0, top), (1.5, top))
    pen.part("Switch", (1.5, top), (3.5, top))
    pen.part("Triac", (3.5, top), (5.8, top))
    pen.part("Line", (5.8, top), (right, top))
    over, left_end, right_end = top + 2.2, 1.3, 6.0
    pen.part("Line", (left_end, top), (left_end, over))
    pen.part("Capacitor", (left_end, over), (3.4, over))
    pen.part("ResistorIEC", (3.4, over), (right_end, over))
    pen.part("Line", (right_end, over), (right_end, top))
    pen.dots((left_end, top), (right_end, top))
    pen.write(3.6, over + 0.9, "snubber: leaks at off")
    pen.heater((right, top), (right, bottom))
    pen.part("Line", (right, bottom), (0.0, bottom))
    pen.resistors((at_tap, top), (at_tap, 2.2))
    pen.part("Diode", (at_tap, 2.2), (at_tap, 1.2))
    pen.part("LED", (at_tap, 1.2), (at_tap, bottom))
    pen.dots((at_tap, top), (at_tap, bottom))
    pen.write(2.4, top + 0.95, "switch")
    pen.write(4.6, top + 1.15, "dimmer")
    pen.write(right_end + 0.3, top + 0.6, "counts as live", "left")
    pen.write(right + 0.6, 2.2, "heater", "left")
    side, align = (-0.9, "right") if tap == "after" else (0.9, "left")
    for line, text in enumerate(("pilot light with", "dropper, tapped", *place)):
        pen.write(at_tap + side, 3.2 - 0.65 * line, text, align)
    pen.earth(bottom - 2.0)
    return pen.done(f"Dimmer and heater, pilot light {' '.join(place)}", alternative)


def _one_loop(pen, wiring, string, led):
    (dropper, live), (other, neutral) = string
    top, end = 3.6, max(3.6, _ROOM * live)
    corner, side = end + (3.2 if "diode" in wiring.forward else 2.8), end + 3.9
    pen.terminal(0.0, top, "live")
    pen.terminal(0.0, 0.0, "neutral")
    pen.resistors((0.0, top), (end, top), live)
    pen.write(1.9, top + 0.9, dropper)
    if "diode" in wiring.forward:
        pen.part("Diode", (end, top), (corner, top))
        pen.write(end + 2.0, top + 0.95, "diode D")
    else:
        pen.part("Line", (end, top), (corner, top))
    pen.part("LED", (corner, top), (corner, 0.0))
    pen.write(corner - 0.6, 1.7, led, "right")
    pen.back((corner, 0.0), end, other, neutral)
    across = {("diode",): ("Diode", "diode D"), ("second_led",): ("LED", "second LED")}
    if wiring.backward in across:
        symbol, words = across[wiring.backward]
        pen.part("Line", (corner, top), (side, top))
        pen.part(symbol, (side, 0.0), (side, top))
        pen.part("Line", (side, 0.0), (corner, 0.0))
        pen.dots((corner, top), (corner, 0.0))
        pen.write(side + 0.6, 1.7, words, "left")


def _bridge(pen, _wiring, string, led):
    (dropper, live), (other, neutral) = string
    middle, west, north, south = 3.4, max(3.0, _ROOM * live), 6.8, 0.0
    east, centre = west + 6.4, west + 3.2
    corners = (west, middle), (east, middle), (centre, north), (centre, south)
    at_west, at_east = corners[:2]
    pen.terminal(0.0, middle, "live")
    pen.terminal(0.0, -1.4, "neutral")
    pen.resistors((0.0, middle), at_west, live)
    pen.write(-0.3, middle + 2.1, dropper, "left")
    pen.bridge(*corners)
    for line, text in enumerate(led.rsplit(" ", 1)):
        pen.write(centre - 0.7, middle + 0.35 - 0.7 * line, text, "right")
    pen.wire(at_east, (east + 0.8, middle), (east + 0.8, -1.4))
    pen.back((east + 0.8, -1.4), west, other, neutral)
    pen.write(east - 2.2, north - 0.6, "four diodes D", "left")
