"""An LED behind a capacitor instead of a resistor: what it does on a sine and on a cut wave.

Surge resistor, capacitor with bleeder, bridge, LED, with smoothing and clamp where wanted. Every
argument may be an array. Constant drops, ideal edges. A dropper is not cut off from the mains: all
of it is live. Switching on is in `switch_on`, single faults in `dropper_faults`; knows no rating.
"""

from dataclasses import dataclass, fields
from math import inf, pi, sin, sqrt

import numpy as np

from helpers.physics import circuits, decays, limits, switched
from helpers.physics.phase_cut import NO_DIMMER


@dataclass(frozen=True)
class Parts:
    """The parts of a capacitor dropper; each may be an array.

    Parameters
    ----------
    farads : float or array
        Capacitor in series with the mains, as it is: aged and within its tolerance [F].
    surge_ohms : float or array
        Resistor in series with it [ohm].
    bleeder_ohms : float or array
        Resistor across the capacitor; infinite for none [ohm].
    led_volts : float or array
        Drop of the LED or of a string of them [V].
    led_ohms : float or array
        Resistor in series with the LED, behind the bridge; zero for none [ohm].
    diode_volts : float or array
        Drop of one diode of the bridge [V].
    smoothing_farads : float or array
        Capacitor across LED and its resistor; zero for none [F].
    clamp_volts : float or array
        Breakdown diode across the same; infinite for none [V].

    Raises
    ------
    ValueError
        If a value is impossible, or the clamp would take the current from the LED at once.

    Examples
    --------
    >>> Parts(330e-9, 120.0, 1e6).smoothing_farads
    0.0
    """

    farads: float
    surge_ohms: float
    bleeder_ohms: float = inf
    led_volts: float = 2.0
    led_ohms: float = 0.0
    diode_volts: float = circuits.SILICON_VOLTS
    smoothing_farads: float = 0.0
    clamp_volts: float = inf

    def __post_init__(self):
        for name, (check, *words) in _PARTS.items():
            object.__setattr__(self, name, check(getattr(self, name), name, *words))
        if np.any(np.asarray(self.clamp_volts) <= self.led_volts):
            raise ValueError(
                f"clamp_volts was read as {self.clamp_volts} V; it must be above led_volts, "
                f"{self.led_volts} V, or the LED stays dark."
            )


_PARTS = {
    "farads": (limits.positive, "F", "Nanofarads: multiply by 1e-9."),
    "surge_ohms": (limits.positive, "ohm", "Without it the first pulse has no limit."),
    "bleeder_ohms": (limits.present, "ohm"),
    "led_volts": (limits.not_negative, "V"),
    "led_ohms": (limits.not_negative, "ohm"),
    "diode_volts": (limits.not_negative, "V"),
    "smoothing_farads": (limits.not_negative, "F", "Microfarads: multiply by 1e-6."),
    "clamp_volts": (limits.present, "V"),
}


@dataclass(frozen=True)
class Steady:
    """What a capacitor dropper does once every cycle is alike; floats or arrays."""

    led_amps_mean: float
    """Mean current of the LED: what makes light [A]."""
    led_amps_rms: float
    """Rms current of the LED [A]."""
    led_amps_peak: float
    """Highest current of the LED [A]."""
    line_amps_rms: float
    """Rms current in the surge resistor: what a fuse feels [A]."""
    line_amps_peak: float
    """Highest current in the surge resistor [A]."""
    capacitor_amps_rms: float
    """Rms current in the capacitor itself, without the bleeder's [A]."""
    capacitor_volts_peak: float
    """Highest voltage of the capacitor, in either direction [V]."""
    capacitor_volts_mean: float
    """Steady part of it, which a sound circuit does not have [V]."""
    output_volts_peak: float
    """Highest voltage behind the bridge [V]."""
    surge_watts: float
    """Mean power in the surge resistor [W]."""
    bleeder_watts: float
    """Mean power in the bleeder [W]."""
    led_watts: float
    """Mean power in the LED [W]."""
    led_resistor_watts: float
    """Mean power in the resistor beside it [W]."""
    bridge_watts: float
    """Mean power in all diodes of the bridge [W]."""
    clamp_watts: float
    """Mean power in the clamp [W]."""
    heater_watts: float
    """Mean power given back to the heater while the dimmer blocks [W]."""
    source_watts: float
    """Mean power taken from the mains while the dimmer conducts [W]."""
    watt_hours_per_day: float
    """Energy taken from the mains in 24 hours [Wh]."""
    apparent_volt_amps: float
    """Rms supply times rms current [VA]."""
    led_conduction_fraction: float
    """Share of the cycle in which the LED carries current [-]."""
    light_percent_flicker: float
    """Highest less lowest light over their sum; zero if dark [%]."""
    light_flicker_index: float
    """Light above the mean over all light; zero if dark [-]."""
    light_fundamental_hertz: float
    """Rate at which the light repeats; zero if dark or without ripple [Hz]."""


#: Which ways a current has through the bridge, forwards and backwards: how many diodes it meets,
#: and whether it passes the LED.
BRIDGES = {
    "sound": {1: (2.0, True), -1: (2.0, True)},
    "diode_shorted": {1: (1.0, True), -1: (1.0, False)},
    "diode_open": {-1: (2.0, True)},
}


def steady(
    parts, supply, dimmer=NO_DIMMER, *, heater_ohms=inf,
    suppression_farads=0.0, suppression_ohms=100.0, bridge="sound",
):  # fmt: skip
    """Return what a capacitor dropper does when all cycles are alike.

    Parameters
    ----------
    parts : Parts
        The dropper.
    supply : mains.Supply
        Volts and frequency.
    dimmer : phase_cut.Dimmer
        Edge and angle.
    heater_ohms : float or array
        Heater across the same terminals; infinite for a broken element or none [ohm].
    suppression_farads, suppression_ohms : float or array
        Capacitor across the dimmer's switch, zero for none, and the resistance in series with
        it [F], [ohm].
    bridge : str
        A key of `BRIDGES` [-].

    Returns
    -------
    point : Steady
        Floats, or arrays of the broadcast shape of all arguments.

    Raises
    ------
    ValueError
        If a value is impossible or the bridge unknown.

    Notes
    -----
    The mean follows the peak of the wave, ``4 f C (Vp - drops)``, so a dimmer down to a right angle
    does not dim it; each edge pushes the whole peak through the surge resistor alone. While the
    dimmer blocks, the capacitor empties through the heater and the suppression capacitor; with the
    heater open and no suppression, only through the bleeder.
    Ideal edges: a real dimmer rises within microseconds and its choke rounds the pulse, so peaks
    are upper bounds. One point takes some hundred microseconds; arrays are worked on one by one.

    References
    ----------
    Kirchhoff's laws with constant drops, solved exactly between the instants at which a diode or
    the dimmer switches; derived here, compared with adaptive integration in the tests.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> from helpers.physics.phase_cut import Dimmer
    >>> parts, supply = Parts(330e-9, 120.0, 1e6), mains.Supply(230.0, 50.0)
    >>> sine, cut = steady(parts, supply), steady(parts, supply, Dimmer("leading", 90.0))
    >>> f"{sine.led_amps_mean * 1e3:.1f} and {cut.led_amps_mean * 1e3:.1f} mA mean"
    '21.2 and 21.1 mA mean'
    >>> f"{sine.led_amps_peak:.3f} and {cut.led_amps_peak:.2f} A peak"
    '0.034 and 2.74 A peak'
    """
    limits.one_of(bridge, "bridge", BRIDGES)
    heater = limits.present(heater_ohms, "heater_ohms", "ohm")
    extra = limits.not_negative(suppression_farads, "suppression_farads", "F")
    ohms = limits.positive(suppression_ohms, "suppression_ohms", "ohm")
    values = (
        supply.volts_rms, supply.hertz, dimmer.angle_degrees, heater, extra, ohms,
        *(getattr(parts, name) for name in _PARTS),
    )  # fmt: skip
    if all(type(value) is float for value in values):
        return Steady(*_point(bridge, dimmer.edge, *values))
    known = {}  # a sweep over angles asks the same circuit again
    return pointwise(Steady, lambda *at: _point(bridge, dimmer.edge, *at, known=known), *values)


def pointwise(kind, point, *values):
    """Return a kind of result whose fields a function gives for each point by itself.

    Parameters
    ----------
    kind : type
        A dataclass.
    point : callable
        Takes one float of each value, returns the fields in order.
    *values : float or array
        What is broadcast together.
    """
    values = np.broadcast_arrays(*values)
    points = zip(*(value.ravel().tolist() for value in values), strict=True)
    table = np.array([point(*each) for each in points]).reshape(-1, len(fields(kind))).T
    return kind(*(limits.as_given(column.reshape(values[0].shape)) for column in table))


def _windows(edge, degrees, half_cycles):
    """Start, end and whether the dimmer is on, for each part of some half-cycles [rad]."""
    cut = {"none": 0.0, "leading": degrees, "trailing": degrees}[edge] * pi / 180.0
    stops = [(0.0, cut, edge == "trailing"), (cut, pi, edge != "trailing")]
    return [
        (half * pi + start, half * pi + stop, on)
        for half in range(half_cycles)
        for start, stop, on in stops
        if stop > start
    ]


def trace(parts, supply, dimmer=NO_DIMMER, *, heater_ohms, samples=240):
    """Return one cycle of a capacitor dropper for drawing: terminal volts and line current.

    Parameters
    ----------
    parts, supply, dimmer, heater_ohms
        As for `steady`, each a single value, with a heater.
    samples : int
        Points of every stretch between two instants at which something switches [-].

    Returns
    -------
    degrees, volts, amps : ndarray
        Angle from the rising zero crossing, voltage across the heater and current in the surge
        resistor, in the direction of the first half-cycle [deg], [V], [A].

    Raises
    ------
    ValueError
        As `steady`.

    Notes
    -----
    The points crowd at the start of a stretch, where a pulse falls within microseconds. An edge
    stands as two points at the same angle.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> from helpers.physics.phase_cut import Dimmer
    >>> _, _, amps = trace(Parts(100e-9, 1e3), mains.Supply(230.0, 50.0), Dimmer("leading", 90.0),
    ...                    heater_ohms=588.0)
    >>> round(float(amps.max()), 3)
    0.325
    """
    circuit, half = _settled(
        "sound", dimmer.edge, float(supply.volts_rms), float(supply.hertz),
        float(dimmer.angle_degrees), float(heater_ohms), 0.0, 100.0,
        *(float(getattr(parts, name)) for name in _PARTS),
    )  # fmt: skip
    along = np.linspace(0.0, 1.0, samples) ** 4
    found = []
    for stretch in half:
        mode, at = stretch.mode, stretch.start + (stretch.end - stretch.start) * along
        line = stretch.wave(mode.line_amps) if mode.way else None
        volts = stretch.wave(mode.terminal_volts) if mode.way else None
        for angle in at:
            across = circuit.crest * sin(angle) if mode.on else volts.at(angle) if volts else 0.0
            found.append((angle, across, mode.way * line.at(angle) if line else 0.0))
    degrees, volts, amps = np.array(found).T * [[180.0 / pi], [1.0], [1.0]]
    first = degrees - degrees[0]
    return (
        np.concatenate([first, first + 180.0]),
        np.concatenate([volts, -volts]),
        np.concatenate([amps, -amps]),
    )


def _point(bridge, edge, volts_rms, *values, known=None):
    """Every field of `Steady` for one point of plain numbers."""
    circuit, stretches = _settled(bridge, edge, volts_rms, *values, known=known)
    return _sums(circuit, stretches, volts_rms, bridge == "sound")


def _settled(bridge, edge, volts_rms, hertz, degrees, *parts, known=None):
    """The circuit of one point, and its stretches once all cycles are alike."""
    turned, key = bridge == "sound", (volts_rms, hertz, *parts)
    circuit = known.get(key) if known else None
    if not circuit:
        circuit = circuit_of(bridge, volts_rms, hertz, *parts)
        if known is not None:
            known.clear()
            known[key] = circuit
    circuit.windows = _windows(edge, degrees, 1 if turned else 2)
    widest = max((stop - start for start, stop, on in circuit.windows if on), default=0.0)
    spare = (
        circuit.crest * sin(min(widest, 0.5 * pi))
        - max(drops for drops, _ in circuit.ways.values())
        - circuit.led_volts
    )
    spare = max(spare, 0.0)
    guess = [-spare, *[0.0] * (len(circuit.roots) - 1)]
    if circuit.smoothing:
        most = 4.0 * hertz * circuit.roots[0] ** 2 * spare
        guess[1] = min(circuit.led_volts + circuit.led_ohms * most, circuit.clamp)
    return circuit, circuit.steady(guess, turned)


def circuit_of(
    bridge, volts_rms, hertz, heater, suppression, suppression_ohms,
    farads, surge, bleeder, led_volts, led_ohms, diode_volts, smoothing=0.0, clamp=inf,
):  # fmt: skip
    """Return the circuit between switching instants, of checked floats."""
    ways = {way: (count * diode_volts, led) for way, (count, led) in BRIDGES[bridge].items()}
    return switched.Circuit(
        sqrt(2.0) * volts_rms, hertz, [], farads, surge, bleeder, ways,
        led_volts, led_ohms, smoothing, clamp, heater, suppression, suppression_ohms,
    )  # fmt: skip


def _sums(circuit, stretches, volts_rms, turned):
    per_cycle = 1.0 / (stretches[-1].end - stretches[0].start)
    c, drops = circuit, {way: volts for way, (volts, _) in circuit.ways.items()}
    line_square = led_square = held_square = source_watts = heater_watts = held_mean = 0.0
    led_mean = line_peak = held_peak = bridge_watts = clamp_mean = load_peak = 0.0
    leds, dark = [], False
    for stretch in stretches:
        mode, start, end = stretch.mode, stretch.start, stretch.end
        held, products = stretch.wave(mode.capacitor_volts), decays.Products(start, end, mode.rates)
        held_square += per_cycle * products.of(held, held)
        # Without current the capacitor only falls.
        held_peak = max(held_peak, abs(held.at(start)), abs(held.at(end)))
        if not turned:
            held_mean += per_cycle * held.area(start, end)
        line = led = None
        if mode.way:
            line = stretch.wave(mode.line_amps)
            found, charge = list(decays.pieces(line, end)), per_cycle * line.area(start, end)
            square = per_cycle * products.of(line, line)
            line_square += square
            line_peak = max(line_peak, decays.highest(found))
            for piece in decays.pieces(held, end):
                held_peak = max(held_peak, abs(piece[3]))
            bridge_watts += drops[mode.way] * charge
            watts = mode.way * per_cycle * products.of(stretch.wave(mode.terminal_volts), line)
            source_watts += watts * mode.on
            heater_watts -= watts * (not mode.on)
        if mode.led_amps:
            led, amps = line, charge if mode.way else 0.0
            if c.smoothing or mode.clamped:
                led = stretch.wave(mode.led_amps)
                found, amps = list(decays.pieces(led, end)), per_cycle * led.area(start, end)
                square = per_cycle * products.of(led, led)
            led_mean += amps
            led_square += square
            leds.append((led, end, found))
            if mode.clamped:
                clamp_mean += charge - amps
                load_peak = c.clamp
        dark = dark or led is None
    conduction, led_peak, index, flicker = _light(leds, led_mean, dark, per_cycle)
    if led_peak > 0.0:
        load_peak = max(load_peak, c.led_volts + c.led_ohms * led_peak)
    hertz = c.hertz * (2.0 if turned else 1.0) if flicker > 1e-9 else 0.0
    return (
        led_mean, sqrt(led_square), led_peak, sqrt(line_square), line_peak,
        # The capacitor's own current and its volts are at right angles once cycles are alike.
        sqrt(max(line_square - held_square / c.bleeder**2, 0.0)), held_peak, held_mean, load_peak,
        c.surge * line_square, held_square / c.bleeder, c.led_volts * led_mean,
        c.led_ohms * led_square, bridge_watts, c.clamp * clamp_mean if clamp_mean else 0.0,
        heater_watts, source_watts, 24.0 * source_watts,
        volts_rms * sqrt(line_square), conduction, flicker, index, hertz,
    )  # fmt: skip


def _light(leds, mean, dark, per_cycle):
    """Share of the cycle, peak, flicker index and per cent flicker of the LED's current."""
    if mean <= 0.0:
        return 0.0, 0.0, 0.0, 0.0
    conduction = per_cycle * sum(end - led.start for led, end, _ in leds)
    peak = max(decays.highest(found) for *_, found in leds)
    least = 0.0 if dark else min(min(low, high) for *_, found in leds for _, low, _, high in found)
    above = per_cycle * sum(decays.area_above(mean, led, found) for led, _, found in leds)
    ripple = (peak - max(least, 0.0)) / (peak + max(least, 0.0))
    return conduction, peak, above / mean, 100.0 * ripple
