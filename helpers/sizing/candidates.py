"""Every string of resistors of a bin in every circuit, and what it does at its worst.

Each at all settings of the dimmer and without it, both ends of the mains, the corners of its
tolerances, sound and with each single fault, and at off. Computed once for what is electrically
alike; the ratings come in where it is judged. Says figures, judges nothing.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import (
    circuits,
    faults,
    heat,
    leakage,
    leds,
    limits,
    mains,
    off_states,
    parts,
    phase_cut,
)
from helpers.physics.one_cycle import Cycle

SETTINGS = 25
"""Steps from the lowest to the highest setting; full mains stands besides them [-]."""
LED_STRAY_VOLTS = 0.2
"""How far the drop of one LED may stray: common practice, no source [V]."""
DRIFT = 2.0
"""How many times its value a drifted resistor has: common practice, no source [-]."""
_HOTTEST = 800.0
_GONE = 1e15  # in place of a string of which nothing is left: such a string fails by its number
KINDS = NEON, CAPACITOR = "neon", "capacitor_dropper"
"""What is worked out besides `circuits.CIRCUITS`, in `other_circuits`, and compared alone."""
HALVES = {"half wave": ("backward",), "other half wave": ("forward",)}


@dataclass(frozen=True)
class State:
    """One state of all strings of a circuit at its worst: sound, or after a fault.

    Parameters
    ----------
    after : str
        A key of `rules.AFTER`.
    watts_each, watts : ndarray
        Heat in the hottest resistor that is left, and all heat in the box [W].
    volts_each : ndarray
        Largest share of one in the whole mains at its highest, rms [V].
    led_amps_peak, backward_amps_peak : ndarray
        Highest current forwards, and pushed backwards through an LED [A].
    diode_volts : ndarray
        Most that a silicon diode holds off, zero if there is none [V].
    """

    after: str
    watts_each: np.ndarray
    volts_each: np.ndarray
    watts: np.ndarray
    led_amps_peak: np.ndarray
    backward_amps_peak: np.ndarray = 0.0
    diode_volts: np.ndarray = 0.0


@dataclass(frozen=True)
class Worst:
    """What all strings of one circuit do at their worst; arrays of one value each.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    ohms_each, count : ndarray
        Each resistor, how many in series [ohm], [-].
    states : list of State
        The sound one first.
    conditions : int
        Evaluated for each string [-].
    mean_lowest, mean_highest : ndarray
        Mean current of one LED at the lowest setting and mains, and at its highest [A].
    reverse_volts : float
        Most across the sound LED in reverse, before it breaks down [V].
    off_amps : ndarray
        Mean current of the LED with the dimmer off and the element sound [A].
    open_share, open_volts : ndarray
        With the dimmer off and the element open: light against full, highest voltage [-], [V].
    flicker_hertz : float
        Rate at which one LED pulses [Hz].
    hot : ndarray
        Largest share of one sound resistor in its string [-].
    dims : ndarray
        Mean current of the LED at the lowest setting, of that at full mains, all else alike [-].
    farads, bleeders, inrush : ndarray
        Of a capacitor dropper alone: capacitor, each bleeder, highest peak when a plug that kept
        its charge is put in again [F], [ohm], [A].
    """

    circuit: str
    ohms_each: np.ndarray
    count: np.ndarray
    states: list
    conditions: int
    mean_lowest: np.ndarray
    mean_highest: np.ndarray
    reverse_volts: float
    off_amps: np.ndarray
    open_share: np.ndarray
    open_volts: np.ndarray
    flicker_hertz: float
    hot: np.ndarray
    dims: np.ndarray
    farads: np.ndarray = None
    bleeders: np.ndarray = None
    inrush: np.ndarray = None


def strings(brief, circuit):
    """Return every string that a bin holds for a circuit: ohms of each, number, and its capacitor.

    Parameters
    ----------
    brief : brief.Brief
    circuit : str
        `NEON`, `CAPACITOR` or a key of `circuits.CIRCUITS` [-].

    Returns
    -------
    ohms_each, count : ndarray
        One value for each string [ohm], [-].
    farads : ndarray
        Of a capacitor dropper alone [F].

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> [len(strings(Brief(), name)[0]) for name in ("bridge", NEON, CAPACITOR)]
    [100, 100, 16]
    """
    numbers = np.arange(1.0, brief.bin_most + 1.0)
    if circuit != CAPACITOR:
        count, ohms = np.meshgrid(numbers, brief.ohms, indexing="ij")
        return ohms.ravel(), count.ravel()
    farads, count, ohms = np.meshgrid(brief.bin_capacitors, numbers, brief.bin_surge, indexing="ij")
    return ohms.ravel(), count.ravel(), farads.ravel()


def states_of(circuit):
    """Return the states of a circuit in which something heats or lights: name, wiring, fault.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].

    Returns
    -------
    states : list of (after, wiring, fault)
        The fault is that of the string: none, short or drift.

    Notes
    -----
    An open string, neutral, element or dimmer leaves no current that could be judged; a shorted
    dimmer is the setting without one, which every state counts in.

    Examples
    --------
    >>> [after for after, *_ in states_of("resistor_only")]
    ['none', 'dropper', 'dropper drift', 'led', 'half wave', 'other half wave']
    """
    kept = circuits.named(circuit)
    found = [
        (faults.SOUND, kept.sound, "none"),
        ("dropper", kept.sound, "short"),
        ("dropper drift", kept.sound, "drift"),
    ]
    for (part, how), wiring in kept.faulty.items():
        if wiring.forward is not circuits.BLOCKED or wiring.backward is not circuits.BLOCKED:
            found.append((part if how == "short" else f"{part} {how}", wiring, "none"))
    for after, blocked in HALVES.items():
        left = kept.sound._replace(**dict.fromkeys(blocked, circuits.BLOCKED))
        found.append((after, left, "none"))
    return found


def worst(brief, circuit, ohms_each, count):
    """Return what strings of one circuit do at their worst.

    Parameters
    ----------
    brief : brief.Brief
        Supply, dimmer, LED and tolerances.
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    ohms_each, count : ndarray
        As `strings` [ohm], [-].

    Returns
    -------
    worst : Worst

    Raises
    ------
    ValueError
        If the circuit is unknown.

    Notes
    -----
    Corners of a string: all resistors low, all high, or one high among low ones, which then has the
    largest share. Constant drops, but for the glow at off, which follows the diode law.

    References
    ----------
    `physics.one_cycle`; worst-case analysis, common practice.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> found = worst(Brief(), "series_diode", np.array([47e3]), np.array([3.0]))
    >>> round(float(found.states[0].watts_each[0]), 4), found.conditions
    (0.0808, 2186)
    """
    crest, stray, window = _conditions(brief)
    laws = circuits.laws(
        circuit, led_volts=np.maximum(brief.led_volts + stray, 0.0),
        breakdown_volts=breakdown_volts(brief),
    )  # fmt: skip
    high, states = mains.peak(brief.high.volts_rms), []
    for after, wiring, fault in states_of(circuit):
        ohms, share = corners(brief, ohms_each, count, fault)
        cycle = Cycle(wiring, laws, crest, window, brief.supply_hertz, ohms[:, :, None])
        watts = _most(cycle.resistor_watts(), len(count))
        peaks = np.maximum(cycle.led_amps_peak(), cycle.second_led_amps_peak())
        pushed = np.maximum(cycle.led_reverse_amps_peak(), cycle.second_led_reverse_amps_peak())
        states.append(State(
            after,
            (watts * share).max(1),
            share.max(1) * brief.high.volts_rms,
            _most(cycle.branch_watts(), len(count)).max(1),
            *(_most(value, len(count)).max(1)
              for value in (peaks, pushed, cycle.diode_reverse_volts_peak())),
        ))  # fmt: skip
        if after == faults.SOUND:
            sound, hot_share = cycle, share.max(1)
    mean = sound.led_amps_mean()
    bare = circuits.named(circuit).breaks_down
    conditions = 3 * crest.size * len(states) + 2 * bool(brief.suppression_farads)
    return Worst(
        circuit, ohms_each, count, states, conditions, mean.min((1, 2)), mean.max((1, 2)),
        high if bare else float(np.max(sound.led_reverse_volts_peak())),
        *_at_off(brief, circuit, ohms_each * count * (1.0 - brief.bin_tolerance / 100.0)),
        (1.0 + circuits.named(circuit).lights_twice) * brief.supply_hertz, hot_share,
        _dims(mean, window.size // (SETTINGS + 1)),
    )  # fmt: skip


def _dims(mean, kept):
    """Share that is left at the lowest setting: the worst string, the mains and drop at their last.

    The settings of each `kept` stand last, full mains at their end.
    """
    corner = mean[:, 0].reshape(len(mean), kept, SETTINGS + 1)[:, -1]
    return corner[:, 0] / np.where(corner[:, -1] > 0.0, corner[:, -1], 1.0)


def _most(value, size):
    """Highest over the conditions, of each string and corner."""
    return np.broadcast_to(np.max(value, -1) if np.ndim(value) else value, (size, 3))


def _conditions(brief):
    """Crest, stray of the drop and window of every condition, one after the other."""
    settings = np.linspace(brief.lowest_degrees, brief.highest_degrees, SETTINGS)
    window = np.radians(np.append(settings, 180.0))
    crest = np.array([mains.peak(each.volts_rms) for each in (brief.low, brief.high)])
    stray = np.array([-1.0, 1.0]) * LED_STRAY_VOLTS * brief.led_count
    return tuple(each.ravel() for each in np.meshgrid(crest, stray, window, indexing="ij"))


def corners(brief, ohms_each, count, fault):
    """Return ohms of a string, and the share of its hottest resistor in them, at each corner."""
    off = brief.bin_tolerance / 100.0
    left = (count - (fault == "short"))[:, None]
    hot = np.array([1.0 - off, 1.0 + off, 1.0 + off])
    others = np.array([1.0 - off, 1.0 + off, 1.0 - off])
    if fault == "drift":
        hot = DRIFT * hot
    total = np.where(left > 0.0, hot + (left - 1.0) * others, np.inf)
    ohms = np.where(left > 0.0, ohms_each[:, None] * total, _GONE)
    return ohms, np.where(left > 0.0, hot / total, 1.0)


def breakdown_volts(brief):
    """True breakdown of the string of LEDs, which lies above its rating and its drop [V]."""
    return brief.led_count * max(leds.REVERSE_RATING_VOLTS, brief.led_volts / brief.led_count + 1.0)


def _at_off(brief, circuit, dropper):
    """Glow with the element sound, share of light and voltage with the element open."""
    if not brief.suppression_farads:
        return (np.zeros(dropper.shape),) * 3
    past = circuit, brief.high, brief.suppression_farads, leakage.USUAL_SNUBBER[1], dropper
    least = max(brief.led_volts - LED_STRAY_VOLTS * brief.led_count, 0.0)
    drops = {"led_volts": least, "breakdown_volts": breakdown_volts(brief)}
    one = leds.real(brief.led_colour)
    string = parts.Part(0.0, brief.led_count * one.ohms, brief.led_count * one.slope_volts,
                        one.saturation_amps)  # fmt: skip
    try:
        glow = off_states.by_diode_law(
            *past, brief.heater_ohms, led=string, breakdown_volts=breakdown_volts(brief)
        ).led_amps_mean
    except ValueError:  # a heater so weak that the capacitor counts: by constant drops
        glow = off_states.past_a_capacitor(*past, brief.heater_ohms, **drops).led_amps_mean
    gone = off_states.past_a_capacitor(*past, **drops)
    return glow, gone.led_share, np.maximum(gone.volts_highest, -gone.volts_lowest)


def box_celsius(brief, watts):
    """Return the air in the box with the heat of the indicator, and the outside of the box.

    Parameters
    ----------
    brief : brief.Brief
    watts : float or ndarray
        All heat of the indicator [W].

    Returns
    -------
    inside, outside : tuple of float or ndarray
        [degC].

    Notes
    -----
    The air that the brief names surrounds the box, too; two like films of air share the rise.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> [round(each, 1) for each in box_celsius(Brief(), 0.44)]
    [55.0, 52.5]
    """
    # Hundreds of watts would glow; a thousand kelvin say as much, and stay within the tables.
    rise = limits.as_given(
        np.minimum(heat.box_rise_kelvin(watts, brief.box_square_metres), _HOTTEST)
    )
    return brief.box_air + rise, brief.box_air + 0.5 * rise


def heat_percent_at_lowest(brief):
    """Return the share of its heat that the pot keeps at the lowest setting [%]."""
    dimmer = phase_cut.Dimmer("trailing", brief.lowest_degrees)
    return 100.0 * phase_cut.wave(brief.supply, dimmer).power_fraction
