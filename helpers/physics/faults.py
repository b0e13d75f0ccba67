"""What one fault does to an indicator circuit: light, current, heat, and what volts stand where.

One part at a time is shorted, open or drifted, or something outside the pilot light fails. The
wiring that is left belongs to the circuit, so a further circuit brings its own faults with it. Says
what happens; what may happen is for `sizing.rules` to judge. Knows no rating.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import circuits, limits
from helpers.physics.operating_point import of_wiring
from helpers.physics.phase_cut import NO_DIMMER, wave

SOUND = "none"
#: What can fail outside the pilot light. "other half wave" is the half-cycle that is not the LED's.
OUTSIDE = (
    ("neutral", "open"), ("element", "open"), ("cut-out", "open"), ("dimmer", "open"),
    ("dimmer", "short"), ("dimmer", "half wave"), ("dimmer", "other half wave"),
)  # fmt: skip
DARK_BELOW, DIMMER_BELOW, BRIGHTER_ABOVE = 0.01, 0.7, 1.4
"""Shares of the sound light from which a person would say so: common practice, no source [-]."""


def shorts(circuit):
    """Return the single shorts that a circuit can have.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].

    Returns
    -------
    faults : tuple of str
        'dropper' (one of its resistors), 'led' and, if there is one, 'diode' [-].

    Raises
    ------
    ValueError
        If the circuit is unknown.

    Notes
    -----
    Parts that are alike are named once: shorting either LED, or any diode of a bridge, does the
    same to the resistors.

    Examples
    --------
    >>> shorts("series_diode"), shorts("two_leds")
    (('dropper', 'led', 'diode'), ('dropper', 'led'))
    """
    faulty = circuits.named(circuit).faulty
    return ("dropper", *(part for part in ("led", "diode") if (part, "short") in faulty))


@dataclass(frozen=True)
class Aftermath:
    """What a circuit and its heater do after one fault; every field is a float or an array."""

    light: str
    """What the light says against a sound one: dark, dimmer, as before or brighter [-]."""
    light_share: float
    """Mean current of all LEDs against the sound circuit; zero where that is dark, too [-]."""
    led_amps_mean: float
    """Mean forward current of all LEDs [A]."""
    led_amps_peak: float
    """Highest forward current of an LED [A]."""
    led_reverse_amps_peak: float
    """Highest current that is pushed backwards through an LED [A]."""
    branch_amps_rms: float
    """Rms of the current in the dropper [A]."""
    watts_each: float
    """Mean power in the hottest resistor of the dropper that is left [W]."""
    volts_rms_each: float
    """Share of the whole mains for each, as if nothing else held any of it, rms [V]."""
    led_watts: float
    """Mean power in all LEDs [W]."""
    diode_watts: float
    """Mean power in all silicon diodes [W]."""
    heater_watts: float
    """Mean power of the heater [W]."""
    led_reverse_volts_peak: float
    """Most that the LED holds off, even if the diode leaks more than it does [V]."""
    diode_reverse_volts_peak: float
    """Most that a silicon diode holds off [V]."""
    gap_volts_peak: float
    """Most that stands across the part that is open, wherever it is [V]."""


def singles(circuit):
    """Return every single fault of a circuit and of what surrounds it.

    Parameters
    ----------
    circuit : str or circuits.Circuit
        A key of `circuits.CIRCUITS` [-].

    Returns
    -------
    faults : tuple of (part, how)
        Parts that are alike are named once [-].

    Raises
    ------
    ValueError
        If the circuit is unknown.

    Examples
    --------
    >>> singles("resistor_only")[:5]
    (('dropper', 'short'), ('dropper', 'open'), ('dropper', 'drift'), ('led', 'short'), \
('led', 'open'))
    """
    of_dropper = tuple(("dropper", how) for how in ("short", "open", "drift"))
    return (*of_dropper, *circuits.named(circuit).faulty, *OUTSIDE)


def after(
    circuit, part, how, supply, dimmer=NO_DIMMER, *, ohms_each, count, heater_ohms=np.inf,
    drift=2.0, **laws_of,
):  # fmt: skip
    """Return what a circuit and its heater do after one fault.

    Parameters
    ----------
    circuit : str or circuits.Circuit
        A key of `circuits.CIRCUITS` [-].
    part, how : str
        One of `singles` [-].
    supply : mains.Supply
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms_each : float or array
        Each of the equal resistors of the dropper [ohm].
    count : int or array
        How many are in series [-].
    heater_ohms : float or array
        The sound element; infinite for none [ohm].
    drift : float or array
        How many times its value a drifted resistor has, 1 or more [-].
    **laws_of
        Drops and real parts as for `circuits.laws`.

    Returns
    -------
    aftermath : Aftermath
        Floats, or arrays of the broadcast shape of all arguments.

    Raises
    ------
    ValueError
        If a name is unknown, a value impossible, or no resistor is left: see `burnout`.

    Notes
    -----
    Heat is ``ohms * mean(current**2)`` over both half-cycles. The resistors stand in the line, on
    the AC side of a bridge; on its DC side a shorted diode shorts the mains past them in one
    half-cycle, which this does not describe. A part that is shorted holds no volts; an LED that
    dies of it later changes the drops by a few volts only.
    The switch is ideal. With the element open a real one may misfire, for a pilot light alone does
    not hold it on; with the dimmer off, see `off_states`. **Dark never means dead**: after an open
    neutral or an open part everything behind the live wire is live.

    References
    ----------
    Kirchhoff's laws, derived here; the tests compare every wiring with a network of switches.

    Examples
    --------
    A dimmer that fails short leaves the pot on full heat, whatever its knob says.

    >>> from helpers.physics import mains, phase_cut
    >>> low, string = phase_cut.Dimmer("leading", 150.0), {"ohms_each": 39e3, "count": 2}
    >>> left = after("series_diode", "dimmer", "short", mains.Supply(230.0, 50.0), low,
    ...              heater_ohms=588.0, **string)
    >>> left.light, round(left.heater_watts)
    ('brighter', 90)
    """
    circuit = circuits.named(circuit)
    if (part, how) not in singles(circuit):
        known = ", ".join(" ".join(each) for each in singles(circuit))
        raise ValueError(f"fault was read as '{part} {how}'; it must be one of {known}.")
    ohms = limits.positive(
        ohms_each, "ohms_each", "ohm", "Without a resistor the LED is destroyed."
    )
    count = limits.between(count, "count", "resistors", 1.0, 1000.0)
    drift = limits.between(drift, "drift", "", 1.0, 1e6, "Film resistors drift upwards.")
    heater = limits.present(heater_ohms, "heater_ohms", "ohm")
    laws = circuits.laws(circuit, **laws_of)
    sound = of_wiring(circuit.sound, supply, dimmer, count * ohms, laws)

    wiring, hottest, halves = circuit.faulty.get((part, how), circuit.sound), 1.0, 1.0
    if part in ("dropper", "neutral", "dimmer") and how == "open":
        wiring = circuits.DARK
    elif how == "half wave":
        # Nothing is left that could push an LED backwards.
        wiring = circuit.sound._replace(backward=circuits.BLOCKED, led_holds=(), led_may_hold=())
        halves = 0.5
    elif how == "other half wave":
        wiring, halves = circuit.sound._replace(forward=circuits.BLOCKED), 0.5
    if part == "dropper":
        count = count + {"short": -1.0, "drift": drift - 1.0}.get(how, 0.0)
        hottest = drift if how == "drift" else 1.0
    count = limits.positive(
        count, "count of the resistors that are left", "resistors",
        "Nothing would limit the current: see burnout.",
    )  # fmt: skip
    set_to = NO_DIMMER if (part, how) == ("dimmer", "short") else dimmer
    point = of_wiring(wiring, supply, set_to, count * ohms, laws)

    heats = part not in ("neutral", "element", "cut-out") and (part, how) != ("dimmer", "open")
    heat = heats * halves * wave(supply, set_to).volts_rms ** 2 / heater
    gap = point.gap_volts_peak
    if part in ("element", "cut-out"):
        gap = wave(supply, dimmer).volts_peak
    bright, was = (p.led_amps_mean + p.second_led_amps_mean for p in (point, sound))
    share = np.where(was > 0.0, bright / np.where(was > 0.0, was, 1.0), 0.0)
    says = np.select(
        [share < DARK_BELOW, share < DIMMER_BELOW, share <= BRIGHTER_ABOVE],
        ["dark", "dimmer", "as before"], "brighter",
    )  # fmt: skip
    found = (
        says, share, bright, np.maximum(point.led_amps_peak, point.second_led_amps_peak),
        np.maximum(point.led_reverse_amps_peak, point.second_led_reverse_amps_peak),
        point.branch_amps_rms, hottest * point.resistor_watts / count, supply.volts_rms / count,
        point.led_watts, point.diode_watts, heat, point.led_reverse_volts_bound,
        point.diode_reverse_volts_peak, gap,
    )  # fmt: skip
    return Aftermath(*limits.alike(*found))


def state(circuit, supply, dimmer=NO_DIMMER, *, fault=SOUND, **given):
    """Return what a circuit does with one part shorted, or with all parts sound.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply, at the top of its range for the worst case.
    dimmer : phase_cut.Dimmer
        Edge and angle; without one for the worst case.
    fault : str
        'none' or one of `shorts` [-].
    **given
        ohms_each, count and drops as for `after`.

    Returns
    -------
    aftermath : Aftermath
        As `after` gives it.

    Raises
    ------
    ValueError
        If the circuit or the fault is unknown, a value is impossible, or no resistor is left.

    Examples
    --------
    Two of 82 kohm behind a diode at 253 V: what is left when one of them shorts.

    >>> from helpers.physics import mains
    >>> string = {"ohms_each": 82e3, "count": 2}
    >>> left = state("series_diode", mains.Supply(253.0, 50.0), fault="dropper", **string)
    >>> round(left.watts_each, 3), round(left.volts_rms_each, 3)
    (0.383, 253.0)
    """
    limits.one_of(fault, "fault", (SOUND, *shorts(circuit)))
    part, how = ("dropper", "drift") if fault == SOUND else (fault, "short")
    return after(circuit, part, how, supply, dimmer, drift=1.0, **given)
