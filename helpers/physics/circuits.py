"""The five resistive indicator circuits: which drops stand in the way of each half-cycle.

Constant drops: an LED or diode lets nothing through below its drop and keeps it above; an LED
that is pushed backwards past its breakdown keeps that voltage. Knows names and drops; the sums
over a cycle are in `operating_point`.
"""

from helpers.physics import limits, phase_cut, pulses

#: Name of each circuit and what is wired in it.
CIRCUITS = {
    "resistor_only": "resistor and LED; the LED breaks down in the other half-cycle",
    "series_diode": "resistor, LED and a silicon diode in series, which blocks the other half",
    "diode_across": "resistor and LED, a silicon diode across the LED for the other half",
    "two_leds": "resistor and two LEDs back to back, one for each half-cycle",
    "bridge": "resistor, bridge of four diodes and one LED that lights in both half-cycles",
}

SILICON_VOLTS = 0.7
"""Drop of a silicon diode: common practice, no source [V]."""


def drops(circuit, led_volts, second_led_volts, diode_volts, breakdown_volts):
    """Return the voltage that each half-cycle must exceed before current flows.

    Parameters
    ----------
    circuit : str
        A key of `CIRCUITS` [-].
    led_volts, second_led_volts, diode_volts, breakdown_volts : float or array
        Drop of the LED, of the second LED, of a silicon diode, and the LED's true reverse
        breakdown [V].

    Returns
    -------
    forward, backward : tuple
        Sum of the drops in the LED's own half-cycle and in the other; None where a diode blocks
        for good [V].

    Notes
    -----
    Two diodes of the bridge conduct at a time.

    References
    ----------
    Kirchhoff's voltage law; constant drops are common practice, good to about 1 % on the mains.

    Examples
    --------
    >>> drops("bridge", 2.0, 2.0, 0.7, 5.0)
    (3.4, 3.4)
    """
    if circuit == "series_diode":
        return led_volts + diode_volts, None
    if circuit == "bridge":
        both = led_volts + 2.0 * diode_volts
        return both, both
    backward = {
        "resistor_only": breakdown_volts,
        "diode_across": diode_volts,
        "two_leds": second_led_volts,
    }[circuit]
    return led_volts, backward


def half_cycle_pulses(circuit, crest, window, drop_volts):
    """Return the current's pulse in each half-cycle.

    Parameters
    ----------
    circuit : str
        A key of `CIRCUITS`.
    crest : float or array
        Peak of the supply [V].
    window : float or array
        What the dimmer lets through of a half-cycle [rad].
    drop_volts : tuple
        What `fill_in` returns [V].

    Returns
    -------
    forward, backward : pulses.Pulse
        The second is None if a diode blocks, and the first itself in the bridge.

    Examples
    --------
    >>> half_cycle_pulses("series_diode", 325.0, 3.14, fill_in("series_diode"))[1] is None
    True
    """
    forward_drop, backward_drop = drops(circuit, *drop_volts)
    forward = pulses.pulse(forward_drop / crest, window)
    if circuit == "bridge":
        return forward, forward
    return forward, None if backward_drop is None else pulses.pulse(backward_drop / crest, window)


def fill_in(
    circuit, led_volts=2.0, second_led_volts=None, diode_volts=SILICON_VOLTS, breakdown_volts=5.0
):
    """Return the four drops of a circuit, the usual ones filled in, or refuse them.

    Parameters
    ----------
    circuit : str
        A key of `CIRCUITS` [-].
    led_volts : float or array
        Forward drop of the LED [V].
    second_led_volts : float or array, optional
        Forward drop of the second of two LEDs; equal to the first if left out [V].
    diode_volts : float or array
        Forward drop of a silicon diode [V].
    breakdown_volts : float or array
        True reverse breakdown of the LED, which is not the few volts of its rating [V].

    Returns
    -------
    drops : tuple
        led_volts, second_led_volts, diode_volts, breakdown_volts [V].

    Raises
    ------
    ValueError
        If the circuit is unknown, a drop is negative, or the LED would break down before the part
        across it conducts.

    Notes
    -----
    A drop that is left out takes a usual value: red LED 2 V, silicon diode 0.7 V, breakdown 5 V.

    References
    ----------
    Common practice, no source; the data sheet of the part decides.

    Examples
    --------
    >>> fill_in("two_leds", 2.0)
    (2.0, 2.0, 0.7, 5.0)
    >>> fill_in("two_leds", 2.0, 6.0)
    Traceback (most recent call last):
    ...
    ValueError: breakdown_volts less the drop across the LED was read as -1 V; it must be above \
0 V. The LED would break down first, and the part across it would protect nothing.
    """
    limits.one_of(circuit, "circuit", CIRCUITS)
    slip = "Give the drop without sign."
    led_volts = limits.not_negative(led_volts, "led_volts", "V", slip)
    if second_led_volts is None:
        second_led_volts = led_volts
    second_led_volts = limits.not_negative(second_led_volts, "second_led_volts", "V", slip)
    diode_volts = limits.not_negative(diode_volts, "diode_volts", "V", slip)
    breakdown_volts = limits.positive(breakdown_volts, "breakdown_volts", "V", slip)
    if circuit in ("diode_across", "two_leds"):
        across = diode_volts if circuit == "diode_across" else second_led_volts
        limits.positive(
            breakdown_volts - across, "breakdown_volts less the drop across the LED", "V",
            "The LED would break down first, and the part across it would protect nothing.",
        )  # fmt: skip
    return led_volts, second_led_volts, diode_volts, breakdown_volts


def amps_at(circuit, supply, dimmer, degrees, *, ohms, **drop_volts):
    """Return the current in the resistor at an instant, for drawing.

    Parameters
    ----------
    circuit : str
        A key of `CIRCUITS` [-].
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    degrees : float or array
        Angle from the rising zero crossing [deg].
    ohms : float or array
        Series resistance [ohm].
    **drop_volts : float or array
        led_volts, second_led_volts, diode_volts, breakdown_volts as for `fill_in` [V].

    Returns
    -------
    amps : float or ndarray
        Current in the resistor; positive in the half-cycle of the LED [A].

    Raises
    ------
    ValueError
        As `fill_in`, or if the resistance is not above zero.

    Notes
    -----
    ``(volts - drop) / ohms`` while the voltage exceeds the drop, in each direction. In a bridge the
    LED carries the size of this current, in all others its positive part, and with
    'resistor_only' the negative part too, as breakdown.

    References
    ----------
    Kirchhoff's voltage law.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> supply = mains.Supply(120.0, 60.0)
    >>> crest = amps_at("series_diode", supply, phase_cut.NO_DIMMER, 90.0, ohms=68e3)
    >>> round(crest * 1e3, 4)
    2.456
    """
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    forward, backward = drops(circuit, *fill_in(circuit, **drop_volts))
    volts = phase_cut.volts_at(supply, dimmer, degrees)
    over = 0.5 * ((volts - forward) + abs(volts - forward))
    under = 0.0
    if backward is not None:
        under = 0.5 * ((-volts - backward) + abs(-volts - backward))
    return (over - under) / ohms
