"""What one fault does to a capacitor dropper: each part open, each part shorted, one of them aged.

Says what happens; what may happen is for `sizing.rules` to judge. Knows no rating.
"""

from dataclasses import dataclass, replace
from math import inf

import numpy as np

from helpers.physics import capacitor_dropper, capacitors, limits, mains, phase_cut
from helpers.physics.phase_cut import NO_DIMMER

#: A short through a part leaves this much: wiring, contacts and the bulk of diodes. A guess.
WIRE_OHMS = 1.5
# A capacitor so large that it never charges is a wire; a drop that no mains reaches is a gap.
_NEVER_FULL, _NEVER_REACHED = 1e3, 1e9
_LED_GONE = ("LED open", "LED resistor open")

#: Every fault, with what happens in words that are true for all parts and supplies.
FAULTS = {
    "none": "as built",
    "capacitor short": "fire, unless a fuse clears it: the mains stands across the surge resistor",
    "capacitor open": "only what the bleeder lets through: a faint glow, and all of it is live",
    "capacitor aged": "it has lost a fifth of its capacitance, and the light with it",
    "surge resistor short": "nothing limits a pulse: a bad instant or a dimmer destroys the LED",
    "surge resistor open": "dark, with the whole mains across the gap: still live",
    "bleeder short": "fire, unless a fuse clears it: as a capacitor short",
    "bleeder open": "a shock from the pins of a pulled plug: they keep their charge; it works on",
    "bridge diode short": "half of the light; one half-cycle goes past the LED",
    "bridge diode open": "a trace of light, all of it live; the capacitor holds steady volts",
    "LED short": "dark, and still live",
    "LED open": "dark, still live; behind the bridge the crest builds up unless a clamp holds it",
    "LED resistor short": "the LED takes the pulses unsoftened",
    "LED resistor open": "dark, still live; as an open LED",
    "smoothing short": "dark, and still live",
    "smoothing open": "the LED takes all pulses by itself",
    "clamp short": "dark, and still live",
    "clamp open": "works, but nothing holds the voltage when the LED opens",
}


@dataclass(frozen=True)
class Outcome:
    """A dropper with one fault; every field but the words is a float or an array."""

    words: str
    """What happens, in a line."""
    led_amps_mean: float
    """Mean current of the LED: what makes light [A]."""
    led_amps_peak: float
    """Highest current of the LED in the steady cycle [A]."""
    line_amps_rms: float
    """Rms current in the line: what a fuse feels [A]."""
    surge_watts: float
    """Heat in the surge resistor [W]."""
    bleeder_watts: float
    """Heat in the bleeder [W]."""
    led_resistor_watts: float
    """Heat in the resistor beside the LED [W]."""
    clamp_watts: float
    """Heat in the clamp [W]."""
    source_watts: float
    """All that is taken from the mains [W]."""
    capacitor_volts_mean: float
    """Steady voltage of the capacitor [V]."""
    output_volts_peak: float
    """Highest voltage behind the bridge, or across the gap where a part is open there [V]."""
    pin_volts: float
    """Voltage on the pins one second after the plug is pulled at the worst instant [V]."""


def outcome(
    fault, parts, supply, dimmer=NO_DIMMER, *, heater_ohms=inf, wire_ohms=WIRE_OHMS,
    **suppression,
):  # fmt: skip
    """Return what a capacitor dropper does with one fault.

    Parameters
    ----------
    fault : str
        A key of `FAULTS` [-].
    parts : capacitor_dropper.Parts
        The sound parts.
    supply : mains.Supply
        The supply, at its highest for the worst case.
    dimmer : phase_cut.Dimmer
        Edge and angle.
    heater_ohms : float or array
        Heater across the same terminals; infinite for none [ohm].
    wire_ohms : float or array
        What a shorted surge resistor leaves [ohm].
    **suppression : float or array
        suppression_farads, suppression_ohms as for `capacitor_dropper.steady`.

    Returns
    -------
    outcome : Outcome
        Floats, or arrays of the broadcast shape.

    Raises
    ------
    ValueError
        If the fault is unknown or a value is impossible, or the parts have none of that kind.

    Notes
    -----
    The steady cycle with the other parts still sound; a part that dies of it changes the picture
    once more. A fault of a part that shorts the surge resistor tells in the first pulse: see
    `switch_on`.

    References
    ----------
    As `capacitor_dropper.steady`, with the part replaced by a wire or a gap.

    Examples
    --------
    >>> parts = capacitor_dropper.Parts(330e-9, 120.0, 1e6)
    >>> shorted = outcome("capacitor short", parts, mains.Supply(230.0, 50.0))
    >>> f"{shorted.line_amps_rms:.1f} A, {shorted.surge_watts:.0f} W in the surge resistor"
    '1.9 A, 429 W in the surge resistor'
    """
    limits.one_of(fault, "fault", FAULTS)
    for part, there in {
        "bleeder": np.all(np.isfinite(parts.bleeder_ohms)),
        "smoothing": np.all(np.asarray(parts.smoothing_farads) > 0.0),
        "clamp": np.all(np.isfinite(parts.clamp_volts)),
        "LED resistor": np.all(np.asarray(parts.led_ohms) > 0.0),
    }.items():
        if fault.startswith(part) and not there:
            raise ValueError(f"fault was read as {fault!r}; these parts have no {part}.")
    left, burns = _altered(fault, parts, wire_ohms)
    bridge = {"bridge diode short": "diode_shorted", "bridge diode open": "diode_open"}
    point = capacitor_dropper.steady(
        left, supply, dimmer, heater_ohms=heater_ohms, bridge=bridge.get(fault, "sound"),
        **suppression,
    )  # fmt: skip
    crest = mains.peak(supply.volts_rms)
    charged = fault not in ("capacitor short", "capacitor open", "bleeder short")
    ohms = inf if fault == "bleeder open" else parts.bleeder_ohms
    pins = capacitors.volts_left(capacitors.PIN_SECONDS, parts.farads, ohms, charged * crest)
    output = point.output_volts_peak
    if fault in _LED_GONE and burns != "clamp":
        peak = phase_cut.wave(supply, dimmer).volts_peak
        output = output + np.maximum(peak - 2.0 * np.asarray(parts.diode_volts), 0.0)
    bleeder = point.bleeder_watts
    surge = point.surge_watts
    if fault == "capacitor open":
        share = parts.surge_ohms / np.asarray(left.surge_ohms)
        surge, bleeder = share * surge, (1.0 - share) * surge
    clamp_watts = point.led_watts if burns == "clamp" else point.clamp_watts
    light = float(burns == "LED")
    found = (
        light * point.led_amps_mean, light * point.led_amps_peak, point.line_amps_rms,
        surge, bleeder, point.led_resistor_watts, clamp_watts,
        point.source_watts, point.capacitor_volts_mean, output, pins,
    )  # fmt: skip
    return Outcome(FAULTS[fault], *limits.alike(*found))


def _altered(fault, parts, wire_ohms):
    """The parts that are left, and what burns behind the bridge: the LED, the clamp or nothing."""
    gone = {"smoothing_farads": 0.0, "clamp_volts": inf, "led_ohms": 0.0}
    if fault in _LED_GONE and np.all(np.isfinite(parts.clamp_volts)):
        return replace(parts, **gone | {"led_volts": parts.clamp_volts}), "clamp"
    if fault in _LED_GONE or fault == "surge resistor open":
        return replace(parts, **gone | {"led_volts": _NEVER_REACHED}), ""
    if fault == "capacitor open":
        # What is left is a resistor; where there is none, the smallest current that can be.
        ohms = np.minimum(parts.surge_ohms + np.asarray(parts.bleeder_ohms), _NEVER_REACHED)
        return replace(parts, farads=_NEVER_FULL, bleeder_ohms=inf, surge_ohms=ohms), "LED"
    if fault in ("smoothing short", "clamp short"):
        return replace(parts, **gone | {"led_volts": 0.0}), ""
    if fault == "LED short":
        return replace(parts, led_volts=0.0), ""
    changes = {
        "capacitor short": {"farads": _NEVER_FULL, "bleeder_ohms": inf},
        "bleeder short": {"farads": _NEVER_FULL, "bleeder_ohms": inf},
        "capacitor aged": {"farads": capacitors.aged(parts.farads)},
        "surge resistor short": {"surge_ohms": wire_ohms},
        "bleeder open": {"bleeder_ohms": inf},
        "LED resistor short": {"led_ohms": 0.0},
        "smoothing open": {"smoothing_farads": 0.0},
        "clamp open": {"clamp_volts": inf},
    }
    return replace(parts, **changes.get(fault, {})), "LED"
