"""Every indicator circuit behind a switch that is off, and what leaks past it.

Past a capacitor (a snubber, radio suppression, the wires of a cable), with the element sound or
open, with a bleeder or a bypass load. Live in every case: dark, dim or lit, off does not mean safe.
Knows no rating.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import circuits, leakage, limits, mains, relaxing
from helpers.physics.leds import real
from helpers.physics.operating_point import operating_point
from helpers.physics.relaxing import NEVER, TURN, Load


@dataclass(frozen=True)
class OffLight:
    """What is left of light and voltage at off; every field is a float or an array."""

    volts_rms: float
    """Rms voltage between the terminals, its steady part included [V]."""
    volts_mean: float
    """Steady part of it [V]."""
    volts_lowest: float
    """Most negative voltage [V]."""
    volts_highest: float
    """Most positive voltage [V]."""
    led_amps_mean: float
    """Mean forward current of the LED, of both half-cycles in a bridge [A]."""
    led_amps_peak: float
    """Its highest forward current [A]."""
    second_led_amps_mean: float
    """Mean current of the second LED, zero if there is none [A]."""
    branch_amps_rms: float
    """Rms current in the dropper [A]."""
    leak_amps_rms: float
    """Rms current past the switch [A]."""
    led_share: float
    """Light of all LEDs against the switch on [-]."""


def past_a_capacitor(
    circuit, supply, farads, snubber_ohms, dropper_ohms, load_ohms=np.inf, **drop_volts
):
    """Return what a capacitor across the open switch leaves on a circuit, exactly.

    Parameters
    ----------
    circuit : str or circuits.Circuit
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
    farads : float or array
        Capacitor across the switch; a cable has some 100 pF a metre (common practice,
        no source) [F].
    snubber_ohms : float or array
        Resistance in series with it, zero allowed [ohm].
    dropper_ohms : float or array
        Dropper of the indicator [ohm].
    load_ohms : float or array
        All else between the terminals side by side: a sound element, a bleeder, a bypass load, a
        meter; infinite for an open element and nothing else [ohm].
    **drop_volts : float or array
        As for `circuits.fill_in` [V].

    Returns
    -------
    light : OffLight

    Raises
    ------
    ValueError
        If the circuit is unknown or a value impossible.

    Notes
    -----
    Constant drops, so it glows a little earlier than this says: see `by_diode_law` for a sound
    element. With nothing but a series diode at the terminals the capacitor charges to the crest and
    no current is left, a case of its own, which `clamped` describes to the meter.

    References
    ----------
    Kirchhoff's laws, derived here; compared with adaptive integration through events in the tests.

    Examples
    --------
    >>> europe = mains.Supply(230.0, 50.0)
    >>> sound = past_a_capacitor("diode_across", europe, 100e-9, 100.0, 100e3, 588.0)
    >>> broken = past_a_capacitor("diode_across", europe, 100e-9, 100.0, 100e3)
    >>> f"{sound.volts_rms:.1f} V, {sound.led_share:.3f}; {broken.volts_rms:.0f} V"
    '4.2 V, 0.010; 219 V'
    >>> blocked = past_a_capacitor("series_diode", europe, 100e-9, 100.0, 100e3)
    >>> round(blocked.volts_lowest), round(blocked.volts_rms), blocked.led_amps_mean
    (-648, 396, 0.0)
    """
    load, shape = load_of(
        circuit, supply, farads, snubber_ohms, dropper_ohms, load_ohms, **drop_volts
    )
    # Nothing but a diode, or drops that the mains never passes: no current that could settle it.
    spare = 2.0 * load.crest > load.forward + load.backward
    settles = (load.shunt > 0.0) | spare
    shift = np.where(settles, 0.0, np.maximum(load.crest - load.forward, 0.0))
    results = [
        np.hypot(load.crest / np.sqrt(2.0), shift), -shift, -load.crest - shift, load.crest - shift,
        *(0.0 * shift for _ in range(6)),
    ]  # fmt: skip
    if settles.any():
        found = _settled(Load(*(field[settles] for field in load)))
        for values, value in zip(results, found, strict=True):
            values[settles] = value
    *volts, up, up_peak, down, down_peak, branch, leak = (
        limits.as_given(values.reshape(shape)) for values in results
    )
    twice = circuits.named(circuit).lights_twice
    second = down if "second_led" in (circuits.named(circuit).sound.backward or ()) else 0.0 * down
    full = operating_point(circuit, supply, ohms=dropper_ohms, **drop_volts)
    lit = up + down if twice else up
    peak = limits.as_given(np.maximum(up_peak, down_peak)) if twice else up_peak
    most = full.led_amps_mean + full.second_led_amps_mean
    share = limits.as_given((lit + second) / np.where(most > 0.0, most, 1.0))
    return OffLight(*volts, lit, peak, second, branch, leak, share)


def by_diode_law(
    circuit, supply, farads, snubber_ohms, dropper_ohms, load_ohms, *, led=None, **laws_of
):
    """Return how the circuit glows at off beside a sound element, by the diode law.

    Parameters
    ----------
    circuit, supply, farads, snubber_ohms, dropper_ohms
        As for `past_a_capacitor`.
    load_ohms : float or array
        Sound element, bleeder and bypass load side by side [ohm].
    led : parts.Part, optional
        The real LED; red if left out [-].
    **laws_of
        Other real parts, as for `circuits.laws`.

    Returns
    -------
    point : operating_point.OperatingPoint

    Raises
    ------
    ValueError
        If a value is impossible, or the load is so weak that it is no sound element.

    Notes
    -----
    To the indicator, mains, capacitor and load are a smaller sine behind the resistance of the load
    (Thevenin). What the capacitor adds to that resistance is left out, at most a twentieth of the
    dropper and with a heater far less.

    References
    ----------
    Thevenin's theorem.

    Examples
    --------
    >>> europe = mains.Supply(230.0, 50.0)
    >>> glow = by_diode_law("series_diode", europe, 100e-9, 100.0, 100e3, 588.0)
    >>> f"{glow.led_amps_mean * 1e6:.1f} uA"
    '10.3 uA'
    """
    state = leakage.off_state(supply, farads, snubber_ohms, load_ohms)
    reactance = 1.0 / (TURN * supply.hertz * farads)
    behind = 1.0 / (1.0 / np.asarray(load_ohms) + 1.0 / (snubber_ohms - 1j * reactance))
    dropper = limits.positive(dropper_ohms, "dropper_ohms", "ohm", "An LED needs its dropper.")
    limits.between(
        np.abs(load_ohms - behind) / dropper, "share of the capacitor in what lies behind", "",
        0.0, 0.05,
        "A load this weak is no sound element: see past_a_capacitor.",
    )  # fmt: skip
    left = mains.Supply(state.volts_rms, supply.hertz)
    ohms = limits.as_given(dropper + behind.real)
    return operating_point(circuit, left, ohms=ohms, led=led or real("red"), **laws_of)


def load_of(circuit, supply, farads, snubber_ohms, dropper_ohms, load_ohms=np.inf, **drop_volts):
    """Return the load of an open switch in flat arrays for `relaxing`, and their shape.

    Parameters
    ----------
    circuit, supply, farads, snubber_ohms, dropper_ohms, load_ohms, **drop_volts
        As for `past_a_capacitor`.

    Returns
    -------
    load, shape : relaxing.Load, tuple
    """
    laws, wiring = circuits.laws(circuit, **drop_volts), circuits.named(circuit).sound
    farads = limits.positive(farads, "farads", "F", "Nanofarads? Multiply by 1e-9.")
    dropper = limits.positive(dropper_ohms, "dropper_ohms", "ohm", "An LED needs its dropper.")
    values = (
        mains.peak(supply.volts_rms),
        1.0 / dropper,
        leakage.conductance(load_ohms, "load_ohms"),
        limits.not_negative(snubber_ohms, "snubber_ohms", "ohm"),
        TURN * supply.hertz * farads,
        *(
            NEVER if way is circuits.BLOCKED else sum(laws[name].volts for name in way)
            for way in (wiring.forward, wiring.backward)
        ),
    )
    together = np.broadcast_arrays(*values)
    return Load(*(each.astype(float).ravel() for each in together)), together[0].shape


def _settled(load):
    """The fields of `OffLight`, forwards and backwards apart, of a cycle that repeats itself."""
    _, rest, on, falling, back_again, last = stretches = relaxing.cycle(load)
    once, twice = zip(*(relaxing.areas(each) for each in stretches), strict=True)
    widths = [each.stop - each.start for each in stretches]
    mean, square = sum(once) / TURN, sum(twice) / TURN
    load_back = load.backward

    def branch(drop, *places):
        """Integral of the branch's volts beyond a drop, and of their square, over a turn."""
        first = sum(once[i] + drop * widths[i] for i in places) / TURN
        second = sum(twice[i] + 2.0 * drop * once[i] + drop**2 * widths[i] for i in places) / TURN
        crossed = sum(twice[i] + drop * once[i] for i in places) / TURN
        return first, second, crossed

    up, up_square, up_cross = branch(-load.forward, 2)
    down, down_square, down_cross = branch(load_back, 0, 4)
    own = load.conductance
    branch_square = own**2 * (up_square + down_square)
    leak = load.shunt**2 * square + 2.0 * load.shunt * own * (up_cross + down_cross) + branch_square
    lit, pushed = widths[2] > 0.0, widths[4] > 0.0
    # Where the LED does not conduct, the turn lies in what is left of the cycle on either side.
    top = np.where(
        lit, relaxing.extreme(on, 1.0),
        np.maximum(relaxing.extreme(rest._replace(stop=falling.stop), 1.0),
                   relaxing.extreme(last, 1.0)),
    )  # fmt: skip
    bottom = np.where(
        pushed, relaxing.extreme(back_again, -1.0),
        relaxing.extreme(falling._replace(stop=last.stop), -1.0),
    )  # fmt: skip
    off = relaxing.modes(load)[0]
    alone = off.crest / np.hypot(1.0, off.rate)
    top = np.where(lit | pushed, top, alone)
    bottom = np.where(lit | pushed, bottom, -alone)
    return (
        np.sqrt(square), mean, bottom, top,
        own * up, own * np.maximum(top - load.forward, 0.0),
        -own * down, own * np.maximum(-bottom - load_back, 0.0),
        np.sqrt(branch_square), np.sqrt(np.maximum(leak, 0.0)),
    )  # fmt: skip
