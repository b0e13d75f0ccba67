"""What one short does to an indicator circuit: which drops and resistors are left, and their heat.

One part at a time is taken as a piece of wire: a resistor of the dropper, the LED or a silicon
diode. Says what happens; what may happen is for `sizing.rules` to judge. Knows no rating.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import circuits, limits
from helpers.physics.operating_point import of_wiring
from helpers.physics.phase_cut import NO_DIMMER

SOUND = "none"


@dataclass(frozen=True)
class State:
    """A circuit with at most one part shorted; every field is a float or an array."""

    watts_each: float
    """Mean power in each resistor of the dropper that is left [W]."""
    volts_rms_each: float
    """Share of the whole mains for each, as if nothing else held any of it, rms [V]."""
    led_amps_peak: float
    """Highest forward current of an LED, zero if it is shorted or bypassed [A]."""
    led_reverse_amps_peak: float
    """Highest current that is pushed backwards through an LED [A]."""


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

    References
    ----------
    Derived here.

    Examples
    --------
    >>> shorts("series_diode"), shorts("two_leds")
    (('dropper', 'led', 'diode'), ('dropper', 'led'))
    """
    faulty = circuits.named(circuit).faulty
    return ("dropper", *(part for part in ("led", "diode") if (part, "short") in faulty))


def state(
    circuit, supply, dimmer=NO_DIMMER, *, ohms_each, count, fault=SOUND, **drop_volts
):  # fmt: skip
    """Return what a circuit does with one part shorted, or with all parts sound.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply, at the top of its range for the worst case.
    dimmer : phase_cut.Dimmer
        Edge and angle; without one for the worst case.
    ohms_each : float or array
        Each of the equal resistors of the dropper [ohm].
    count : int or array
        How many are in series [-].
    fault : str
        'none' or one of `shorts` [-].
    **drop_volts : float or array
        led_volts, second_led_volts, diode_volts, breakdown_volts as for `circuits.fill_in` [V].

    Returns
    -------
    state : State
        Floats, or arrays of the broadcast shape of all arguments.

    Raises
    ------
    ValueError
        If the circuit or the fault is unknown, a value is impossible, or no resistor is left.

    Notes
    -----
    The resistors stand in the line, on the AC side of a bridge. On its DC side a shorted diode
    shorts the mains past them in one half-cycle, which this does not describe.
    Heat is ``ohms * mean(current**2)`` over both half-cycles, constant drops. The part that is
    shorted holds no volts; an LED that dies of it later changes the drops by a few volts only.

    References
    ----------
    Kirchhoff's laws, derived here; compared with adaptive quadrature in the tests.

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
    ohms = limits.positive(
        ohms_each, "ohms_each", "ohm", "Without a resistor the LED is destroyed."
    )
    count = limits.between(count, "count", "resistors", 1.0, 1000.0)
    left = limits.positive(
        count - (fault == "dropper"), "count of the resistors that are left", "resistors",
        "Nothing would limit the current: see burnout.",
    )  # fmt: skip
    wiring = circuits.named(circuit).sound
    if fault not in (SOUND, "dropper"):
        wiring = circuits.named(circuit).faulty[fault, "short"]
    laws = circuits.laws(circuit, **drop_volts)
    point = of_wiring(wiring, supply, dimmer, left * ohms, laws)
    each = supply.volts_rms / left
    found = (
        point.resistor_watts / left, each,
        np.maximum(point.led_amps_peak, point.second_led_amps_peak), point.led_reverse_amps_peak,
    )  # fmt: skip
    return State(*(limits.plain(value) for value in np.broadcast_arrays(*found)))
