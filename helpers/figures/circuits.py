"""Circuit drawings in the symbols of IEC 60617, as SVG that is the same at every run.

One line weight, labels beside the wires, the live side named in words. Knows no question and
works out no current.
"""

from helpers.figures.chart import beside, heading
from helpers.figures.drawn import Drawn
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
    "Every part counts as live. Earth goes to metal that can be touched, and no part of the "
    "light is joined to it."
)
_ROOM = 1.3
"""Length of wire that a resistor of a string takes, in units of a drawing [-]."""
_TAPS = {
    "after": (
        "behind the\ndimmer",
        "The pilot light lies across the heater, behind switch and dimmer: it shows that the "
        "heater is supplied, and follows the setting. It can glow faintly when off, and dark "
        "never means dead.",
    ),
    "before": (
        "before switch\nand dimmer",
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
    supply, led = write(volts, "voltage"), write(led_volts, "voltage")
    dropper = write(ohms, "resistance")
    alternative = (
        f"Circuit: a {supply} DC bench supply, a dropper of {dropper} and an LED ({led}) "
        "in one loop."
    )
    pen, top, right = Pen(), 3.6, 5.4
    pen.chain((0.0, 0.0), "SourceV", (0.0, top), "Resistor", (right, top), "LED", (right, 0.0),
              "Line", (0.0, 0.0))  # fmt: skip
    pen.write(-0.8, 2.1, f"bench supply\n{supply} DC", "right")
    pen.write(right / 2.0, top + 0.9, f"dropper R, {dropper}")
    pen.write(right - 0.7, 1.8, f"LED, {led}", "right")
    return pen.done("An LED and its dropper on a bench supply", alternative)


def indicator(circuit, ohms=None, led_volts=None, string=None, led_count=1, earth=True):
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
    earth : bool
        Whether the wire is drawn that goes past the light to the metal of the pot.

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
    if earth:
        pen.earth(-3.4 if wired.lights_twice else -2.0)
    return pen.done(f"{capital(NAMES[circuit])} indicator circuit", alternative)


def five():
    """Draw the five indicator circuits side by side, to be compared.

    Returns
    -------
    drawn : Drawn
        With title and description of each for screen readers.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> five().picture.count("<svg")
    5
    """
    drawn = [(capital(name), indicator(circuit, earth=False)) for circuit, name in NAMES.items()]
    return Drawn(
        beside(*(heading(name) + one.picture for name, one in drawn), least=285),
        f"Five circuits. {_LIVE_AND_EARTH}",
        " ".join(f"{capital(NAMES[circuit])}: {said}" for circuit, said in _FEATURES.items()),
    )


def capacitor_dropper(farads, surge_ohms, bleeder_ohms):
    """Draw a capacitor dropper: fuse, surge resistor, capacitor with bleeder, bridge and LED.

    Parameters
    ----------
    farads : float
        Its capacitor [F].
    surge_ohms : float
        Its surge resistor [ohm].
    bleeder_ohms : float
        Each of the two resistors of its bleeder [ohm].

    Returns
    -------
    drawn : Drawn
        With title and description for screen readers.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> capacitor_dropper(100e-9, 1e3, 1e6).finding.replace("\\xa0", " ").partition(";")[0][46:]
    'fuse, surge resistor, 1 kΩ, capacitor X2, 100 nF'
    """
    capacitor = f"capacitor X2, {write(farads, 'capacitance')}"
    surge = f"surge resistor, {write(surge_ohms, 'resistance')}"
    bleeder = f"bleeder, two, {write(bleeder_ohms, 'resistance')}"
    alternative = (
        f"Circuit, capacitor dropper: from live through fuse, {surge}, {capacitor}; across the "
        f"capacitor a {bleeder} in series; then a bridge of four diodes with the LED inside, to "
        f"neutral. The capacitor can stay charged with the plug out. {_LIVE_AND_EARTH}"
    )
    pen, top, side, bleed, low = Pen(), 8.6, 7.6, 1.8, 4.2
    west, east, north, south = (1.6, 0.0), (side, 0.0), (4.6, 3.0), (4.6, -3.0)
    pen.supply(top, 0.0)
    pen.chain((0.0, top), "Fuse", (2.0, top), "Resistor", (5.2, top), "Line", (side, top),
              "Line", (side, top - 1.0), "Capacitor", (side, low))  # fmt: skip
    pen.chain((side, top - 1.0), "Line", (bleed, top - 1.0), "Resistor", (bleed, 5.9),
              "Resistor", (bleed, low), "Line", (side, low), "Line", east)  # fmt: skip
    pen.dots((side, top - 1.0), (side, low))
    pen.write(1.0, top + 0.9, "fuse")
    pen.write(5.0, top + 1.5, surge.replace(", ", "\n"))
    pen.write(side - 0.7, 6.6, capacitor.replace(", ", "\n"), "right")
    pen.write(bleed + 0.5, 5.75, bleeder.replace(", ", "\n", 1), "left")
    pen.bridge(west, east, north, south)
    pen.write(north[0] - 0.7, 0.0, "LED", "right")
    pen.wire(west, (0.0, 0.0))
    pen.earth(-4.4)
    return pen.done("Capacitor dropper indicator circuit", alternative)


def neon():
    """Draw a neon lamp with its two resistors between live and neutral.

    Returns
    -------
    drawn : Drawn
        With title and description for screen readers.

    References
    ----------
    Symbols: IEC 60617.

    Examples
    --------
    >>> neon().finding.partition(",")[2].partition(".")[0]
    ' neon lamp: between live and neutral lie two resistors, and a neon lamp'
    """
    alternative = (
        "Circuit, neon lamp: between live and neutral lie two resistors, and a neon lamp. "
        f"{_LIVE_AND_EARTH}"
    )
    pen, top, corner = Pen(), 3.6, 6.8
    pen.supply(top, 0.0)
    pen.chain((0.0, top), "Resistor", (3.2, top), "Resistor", (corner, top), "Neon", (corner, 0.0),
              "Line", (0.0, 0.0))  # fmt: skip
    pen.write(3.2, top + 0.9, "two resistors")
    pen.write(corner - 0.9, 1.8, "neon lamp", "right")
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
    pen, top, over, right = Pen(), 4.4, 6.6, 8.4
    at_tap, side, align = {"after": (6.6, -0.9, "right"), "before": (1.1, 0.7, "left")}[tap]
    pen.supply(top, 0.0)
    pen.chain((0.0, top), "Line", (1.5, top), "Switch", (3.5, top), "Triac", (5.8, top),
              "Line", (right, top), "Heater", (right, 0.0), "Line", (0.0, 0.0))  # fmt: skip
    pen.chain((1.5, top), "Line", (1.5, over), "Capacitor", (3.4, over), "Resistor", (6.0, over),
              "Line", (6.0, top))  # fmt: skip
    pen.chain((at_tap, top), "Resistor", (at_tap, 3.3), "Resistor", (at_tap, 2.2),
              "Diode", (at_tap, 1.2), "LED", (at_tap, 0.0))  # fmt: skip
    pen.dots((1.5, top), (6.0, top), (at_tap, top), (at_tap, 0.0))
    pen.write(3.6, over + 0.9, "snubber: leaks at off")
    pen.write(2.4, top + 0.95, "switch")
    pen.write(4.6, top + 1.15, "dimmer")
    pen.write(6.3, top + 0.6, "counts as live", "left")
    pen.write(right + 0.6, 2.2, "heater", "left")
    pen.write(at_tap + side, 3.2, f"pilot light with\ndropper, tapped\n{place}", align)
    pen.earth(-2.0)
    return pen.done(f"Dimmer and heater, pilot light {place.replace(chr(10), ' ')}", alternative)


def _one_loop(pen, wiring, string, led):
    (dropper, live), (other, neutral) = string
    top, end = 3.6, max(3.6, _ROOM * live)
    corner, side = end + (3.2 if "diode" in wiring.forward else 2.8), end + 4.6
    pen.supply(top, 0.0)
    pen.resistors((0.0, top), (end, top), live)
    pen.write(1.9, top + 0.9, dropper)
    diode = "diode" in wiring.forward
    pen.part("Diode" if diode else "Line", (end, top), (corner, top))
    pen.write(end + 2.0, top + 0.95, "diode D" if diode else "")
    pen.part("LED", (corner, top), (corner, 0.0))
    pen.write(corner - 0.6, 1.7, led, "right")
    pen.back((corner, 0.0), end, other, neutral)
    across = {("diode",): ("Diode", "diode D"), ("second_led",): ("LED", "second LED")}
    if wiring.backward in across:
        symbol, words = across[wiring.backward]
        pen.wire((corner, top), (side, top))
        pen.chain((corner, 0.0), "Line", (side, 0.0), symbol, (side, top))
        pen.dots((corner, top), (corner, 0.0))
        pen.write(side + 0.6, 1.7, words, "left")


def _bridge(pen, _wiring, string, led):
    (dropper, live), (other, neutral) = string
    middle, west, north, south = 3.4, max(3.0, _ROOM * live), 6.8, 0.0
    east, centre = west + 6.4, west + 3.2
    corners = (west, middle), (east, middle), (centre, north), (centre, south)
    at_west, at_east = corners[:2]
    pen.supply(middle, -1.4)
    pen.resistors((0.0, middle), at_west, live)
    pen.write(-0.3, middle + 1.6, dropper.replace(", ", ",\n"), "left")
    pen.bridge(*corners)
    pen.write(centre - 0.7, middle + 0.35, "\n".join(led.rsplit(" ", 1)), "right")
    pen.wire(at_east, (east + 0.8, middle), (east + 0.8, -1.4))
    pen.back((east + 0.8, -1.4), west, other, neutral)
    pen.write(east - 1.9, north - 0.6, "four diodes D", "left")
