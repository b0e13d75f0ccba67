"""Seven ways to light a pilot light, side by side: five with a resistor, a capacitor, a neon lamp.

What each does at a setting, what its hottest resistor has to stand when one part fails, and what it
shows when the dimmer is off. Knows no rating.
"""

from math import inf
from typing import NamedTuple

from helpers.physics import (
    capacitor_dropper,
    circuits,
    dropper_faults,
    faults,
    leakage,
    limits,
    mains,
    neon,
    off_states,
)
from helpers.physics.operating_point import operating_point
from helpers.physics.phase_cut import NO_DIMMER, Dimmer

#: The seven, by the names of `circuits.CIRCUITS` and two more.
KINDS = (*circuits.CIRCUITS, "capacitor_dropper", "neon")
#: Parts of the capacitor dropper: small enough for every supply. Common practice, no source.
DROPPER = capacitor_dropper.Parts(100e-9, 1_000.0, 2e6)
#: Resistor of a neon lamp from 200 V up, and below: common practice, no source [ohm].
NEON_OHMS = (330e3, 100e3)
#: How many equal resistors stand in series, so that one that fails short is not all of them [-].
COUNT = 2


class Does(NamedTuple):
    """What one of the seven does at one setting."""

    light_amps_mean: float
    """Mean current of all LEDs together, or of the neon lamp: what makes light [A]."""
    light_amps_peak: float
    """Highest forward current of an LED, or of the lamp [A]."""
    back_amps_peak: float
    """Highest current that is pushed backwards through an LED [A]."""
    heat_watts: float
    """Heat of all its parts together [W]."""
    light_hertz: float
    """Rate at which the light repeats; zero if dark [Hz]."""


def neon_ohms(supply):
    """Return the resistor of the neon lamp in the comparison.

    Parameters
    ----------
    supply : mains.Supply
        The supply, at its label.

    Returns
    -------
    ohms : float
        Resistor in series [ohm].

    Examples
    --------
    >>> neon_ohms(mains.Supply(120.0, 60.0))
    100000.0
    """
    return NEON_OHMS[0] if supply.volts_rms >= 180.0 else NEON_OHMS[1]


def does(kind, supply, dimmer=NO_DIMMER, *, ohms, lamp_ohms=NEON_OHMS[0], heater_ohms=inf):
    """Return what one of the seven does.

    Parameters
    ----------
    kind : str
        One of `KINDS` [-].
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    ohms : float
        Resistor of the five circuits that have one and an LED [ohm].
    lamp_ohms : float
        Resistor of the neon lamp, as from `neon_ohms` [ohm].
    heater_ohms : float
        Heater across the same terminals; infinite for none [ohm].

    Returns
    -------
    does : Does

    Raises
    ------
    ValueError
        If the kind is unknown or a value impossible.

    Notes
    -----
    Red LED of 2 V, parts of `DROPPER`, constant drops. The eye sees neon orange and red alike only
    roughly, so compare the light of the lamp with care.

    References
    ----------
    As `operating_point`, `capacitor_dropper.steady` and `neon.glow`.

    Examples
    --------
    >>> supply = mains.Supply(230.0, 50.0)
    >>> for kind in ("bridge", "capacitor_dropper", "neon"):
    ...     found = does(kind, supply, ohms=100e3)
    ...     print(f"{found.light_amps_mean * 1e3:.2f} mA for {found.heat_watts:.3f} W")
    2.04 mA for 0.522 W
    6.43 mA for 0.100 W
    0.46 mA for 0.123 W
    """
    limits.one_of(kind, "kind", KINDS)
    if kind == "neon":
        lamp = neon.glow(supply, dimmer, ohms=lamp_ohms)
        return Does(
            lamp.amps_mean, lamp.amps_peak, 0.0, lamp.branch_watts, lamp.light_fundamental_hertz
        )
    if kind == "capacitor_dropper":
        point = capacitor_dropper.steady(DROPPER, supply, dimmer, heater_ohms=float(heater_ohms))
        heat = point.surge_watts + point.bleeder_watts + point.led_watts + point.bridge_watts
        return Does(
            point.led_amps_mean, point.led_amps_peak, 0.0, heat, point.light_fundamental_hertz
        )
    point = operating_point(kind, supply, dimmer, ohms=ohms)
    return Does(
        point.led_amps_mean + point.second_led_amps_mean,
        max(point.led_amps_peak, point.second_led_amps_peak), point.led_reverse_amps_peak,
        point.branch_watts, point.light_fundamental_hertz,
    )  # fmt: skip


class Stands(NamedTuple):
    """The heat of the hottest resistor, while all is sound and after the worst single fault."""

    watts_sound: float
    """While all is sound [W]."""
    watts_after: float
    """After the fault that heats it most [W]."""
    fault: str
    """That fault, in words [-]."""


def stands(kind, supply, *, ohms, lamp_ohms=NEON_OHMS[0]):
    """Return what the hottest resistor of one of the seven has to stand.

    Parameters
    ----------
    kind : str
        One of `KINDS` [-].
    supply : mains.Supply
        The supply, at its highest for the worst case.
    ohms, lamp_ohms : float
        As for `does`, made of `COUNT` equal resistors in series [ohm].

    Returns
    -------
    stands : Stands

    Raises
    ------
    ValueError
        As `does`.

    Notes
    -----
    Without a dimmer, which heats a resistor most. The surge resistor of the dropper is a single one
    and stands alone against the mains when its capacitor fails short: unless a fuse or the
    resistor itself opens, it burns.

    References
    ----------
    As `faults.after` and `dropper_faults.outcome`.

    Examples
    --------
    >>> high = mains.Supply(253.0, 50.0)
    >>> stands("series_diode", high, ohms=100e3).fault
    'one resistor short'
    >>> round(stands("capacitor_dropper", high, ohms=100e3).watts_after)
    62
    """
    limits.one_of(kind, "kind", KINDS)
    if kind == "neon":
        sound = neon.glow(supply, ohms=lamp_ohms).resistor_watts / COUNT
        left = lamp_ohms * (COUNT - 1) / COUNT
        after = {
            "one resistor short": neon.glow(supply, ohms=left).resistor_watts / (COUNT - 1),
            "lamp short": supply.volts_rms**2 / lamp_ohms / COUNT,
        }
    elif kind == "capacitor_dropper":
        sound = capacitor_dropper.steady(DROPPER, supply).surge_watts
        after = {
            fault: dropper_faults.outcome(fault, DROPPER, supply).surge_watts
            for fault in ("capacitor short", "LED short", "bridge diode short")
        }
    else:
        string = {"ohms_each": ohms / COUNT, "count": COUNT}
        sound = faults.state(kind, supply, **string).watts_each
        own = [each for each in faults.singles(kind) if each not in faults.OUTSIDE]
        after = {
            f"{part.replace('dropper', 'one resistor')} {how}": faults.after(
                kind, part, how, supply, **string
            ).watts_each
            for part, how in own
            if how != "drift"
        }
    worst = max(after, key=after.get)
    return Stands(float(sound), float(after[worst]), worst.replace("_", " "))


def at_off(kind, supply, *, ohms, lamp_ohms=NEON_OHMS[0], heater_ohms=inf):
    """Return the light's mean current when the dimmer is off and its snubber leaks.

    Parameters
    ----------
    kind : str
        One of `KINDS` [-].
    supply : mains.Supply
        The supply.
    ohms, lamp_ohms, heater_ohms : float
        As for `does`; an infinite heater is a broken element [ohm].

    Returns
    -------
    amps : float
        Mean current of the light [A].

    Raises
    ------
    ValueError
        As `does`.

    Notes
    -----
    `leakage.USUAL_SNUBBER` across the switch; a neon lamp counts as its resistor. **None of it says
    whether the terminals may be touched: they are live in every case.**

    References
    ----------
    As `off_states.past_a_capacitor`, `leakage.off_state` and `capacitor_dropper.steady`.

    Examples
    --------
    >>> supply = mains.Supply(230.0, 50.0)
    >>> at_off("series_diode", supply, ohms=100e3)
    0.0
    >>> round(at_off("two_leds", supply, ohms=100e3) * 1e3, 1)
    2.0
    """
    limits.one_of(kind, "kind", KINDS)
    if kind == "capacitor_dropper":
        farads, beside = leakage.USUAL_SNUBBER
        return capacitor_dropper.steady(
            DROPPER, supply, Dimmer("leading", 180.0), heater_ohms=float(heater_ohms),
            suppression_farads=farads, suppression_ohms=beside,
        ).led_amps_mean  # fmt: skip
    if kind == "neon":
        left = leakage.off_state(supply, *leakage.USUAL_SNUBBER, heater_ohms, lamp_ohms)
        return neon.glow(mains.Supply(left.volts_rms, supply.hertz), ohms=lamp_ohms).amps_mean
    left = off_states.past_a_capacitor(kind, supply, *leakage.USUAL_SNUBBER, ohms, heater_ohms)
    return left.led_amps_mean + left.second_led_amps_mean
