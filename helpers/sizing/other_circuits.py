"""A neon lamp, or a capacitor before the LED: the figures of `candidates.Worst` for both.

A neon lamp has the strings of the bin before it. A capacitor dropper has a capacitor, a string of
surge resistors, a bridge, and two like bleeders of the bin; on plain mains alone, for behind a
dimmer that cuts it is forbidden. Says figures, judges nothing.
"""

from dataclasses import replace

import numpy as np

from helpers.physics import (
    capacitor_dropper,
    capacitors,
    circuits,
    dropper_faults,
    faults,
    leakage,
    mains,
    neon,
    phase_cut,
    switch_on,
)
from helpers.sizing import candidates
from helpers.sizing.candidates import CAPACITOR, NEON, State, Worst

MAINTAIN_STRAY = 10.0
"""How far the volts that a neon lamp holds may stray: common practice, no source [V]."""
CAPACITOR_OFF = 0.1
"""Tolerance of a capacitor, as a share; at its lowest it is aged besides: common practice [-]."""


def neon_worst(brief, ohms_each, count):
    """Return what strings with a neon lamp do at their worst; as `candidates.worst`.

    Parameters
    ----------
    brief : brief.Brief
    ohms_each, count : ndarray
        [ohm], [-].

    Returns
    -------
    worst : candidates.Worst

    Notes
    -----
    New and aged, and with the volts that it holds at both ends, at every setting. The edge counts:
    a lamp that a leading edge still strikes is dark behind a trailing one with as much heat.

    References
    ----------
    `physics.neon`.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> found = neon_worst(Brief(), np.array([100e3]), np.array([3.0]))
    >>> round(1e3 * float(found.mean_highest[0]), 2)
    0.63
    """
    settings = np.linspace(brief.lowest_degrees, brief.highest_degrees, candidates.SETTINGS)
    rms, strike, hold, window = (each.ravel() for each in np.meshgrid(
        [brief.low.volts_rms, brief.high.volts_rms],
        [brief.neon_strike, neon.aged(brief.neon_strike)],
        neon.MAINTAIN_VOLTS + MAINTAIN_STRAY * np.array([-1.0, 1.0]),
        np.append(settings, 180.0), indexing="ij",
    ))  # fmt: skip
    hold = np.minimum(hold, strike)
    edges = ("leading", "trailing") if brief.dimmer_edge == "unknown" else (brief.dimmer_edge,)
    supply, high = mains.Supply(rms, brief.supply_hertz), brief.high.volts_rms

    def glow(ohms):
        return [
            neon.glow(
                supply, phase_cut.Dimmer(edge, 180.0 - window if edge == "leading" else window),
                ohms=ohms[:, :, None], strike_volts=strike, maintain_volts=hold,
            )
            for edge in edges
        ]  # fmt: skip

    states, none = [], np.zeros(len(count))
    for after, fault in ((faults.SOUND, "none"), ("dropper", "short"), ("dropper drift", "drift")):
        ohms, share = candidates.corners(brief, ohms_each, count, fault)
        lit = glow(ohms)

        def most(name, lit=lit):
            return np.max([getattr(each, name).max(-1) for each in lit], axis=0)

        states.append(State(
            after, (most("resistor_watts") * share).max(1), share.max(1) * high,
            most("branch_watts").max(1), most("amps_peak").max(1),
        ))  # fmt: skip
        if after == faults.SOUND:
            sound, whole, least, shares = lit, high**2 / ohms, ohms.min(1), share
    first = states[0]
    states.append(State("lamp", (whole * shares).max(1), first.volts_each, whole.max(1), none))
    half = {"watts_each": first.watts_each / 2.0, "watts": first.watts / 2.0}
    states += [replace(first, after=after, **half) for after in candidates.HALVES]
    mean = np.array([each.amps_mean for each in sound])
    off, gone, volts = none, none, none
    if brief.suppression_farads:
        past = brief.high, brief.suppression_farads, leakage.USUAL_SNUBBER[1]
        lamp = {"strike_volts": brief.neon_strike, "maintain_volts": hold.min()}
        off, gone = (
            neon.glow(
                mains.Supply(leakage.off_state(*past, heater, least).volts_rms, brief.supply_hertz),
                ohms=least, **lamp,
            ).amps_mean
            for heater in (brief.heater_ohms, np.inf)
        )  # fmt: skip
        gone = gone / np.where(mean.max((0, 2, 3)) > 0.0, mean.max((0, 2, 3)), 1.0)
        volts = none + mains.peak(high)
    corner = mean[:, :, 0].reshape(len(edges), len(count), -1, len(settings) + 1)[..., -2:-1, :]
    full = np.where(corner[..., -1] > 0.0, corner[..., -1], 1.0)
    return Worst(
        NEON, ohms_each, count, states, mean[0, 0].size * len(edges) * len(states),
        mean.min((0, 2, 3)), mean.max((0, 2, 3)), 0.0, off, gone, volts,
        2.0 * brief.supply_hertz, shares.max(1), (corner[..., 0] / full).min((0, 2)),
    )  # fmt: skip


def bleeder_each(brief, farads):
    """Return each of two like bleeders: the largest of the bin that discharges in time.

    Parameters
    ----------
    brief : brief.Brief
    farads : ndarray
        As printed [F].

    Returns
    -------
    ohms : ndarray
        Infinite where the bin has none [ohm].

    References
    ----------
    IEC 60335-1 clause 22.5: `capacitors.largest_bleeder`.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> float(bleeder_each(Brief(), np.array([330e-9]))[0])
    470000.0
    """
    crest = mains.peak(brief.high.volts_rms)
    most = capacitors.largest_bleeder(np.asarray(farads) * (1.0 + CAPACITOR_OFF), crest)
    most = most / 2.0 / (1.0 + brief.bin_tolerance / 100.0)
    fit = np.where(brief.ohms <= np.asarray(most)[:, None], brief.ohms, 0.0).max(1)
    return np.where(fit > 0.0, fit, np.inf)


def capacitor_worst(brief, ohms_each, count, farads):
    """Return what capacitor droppers do at their worst; as `candidates.worst`, on plain mains.

    Parameters
    ----------
    brief : brief.Brief
    ohms_each, count, farads : ndarray
        Each surge resistor, how many in series, capacitor [ohm], [-], [F].

    Returns
    -------
    worst : candidates.Worst
        Its `inrush` is that of a plug put in again with its charge left.

    Notes
    -----
    Heat with the largest capacitor and surge resistors at their high end, where the current hardly
    falls; peaks at their low end. Light with the smallest capacitor, aged.

    References
    ----------
    `physics.capacitor_dropper`, `physics.dropper_faults`, `physics.switch_on`.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> found = capacitor_worst(Brief(dimmer_edge="none"), *np.array([[470.0], [2.0], [100e-9]]))
    >>> round(1e3 * float(found.mean_lowest[0]), 2), round(float(found.inrush[0]), 1)
    (4.16, 0.8)
    """
    off, high, none = brief.bin_tolerance / 100.0, brief.high, np.zeros(len(count))
    stray = candidates.LED_STRAY_VOLTS * brief.led_count
    least, most = max(brief.led_volts - stray, 0.0), brief.led_volts + stray
    bleeders = bleeder_each(brief, farads)

    def parts(share, ohms, led=least):
        return capacitor_dropper.Parts(share * farads, ohms, 2.0 * bleeders, led)

    def ends(left):
        return (np.maximum(left * (1.0 + sign * off), 1e-3) * ohms_each for sign in (-1.0, 1.0))

    def hottest(left, drift=1.0):
        """Largest share of one, drifted or not, in the string that is left."""
        high_end = drift * (1.0 + off)
        return high_end / (high_end + np.maximum(left - drift, 0.0) * (1.0 - off))

    def after_fault(fault, left=count, drift=1.0):
        """Heat of the hottest, of all, volts along it, peak of the LED: lower and upper end."""
        low, up = (
            dropper_faults.outcome(fault, parts(1.0 + CAPACITOR_OFF, ohms), high)
            for ohms in ends(left)
        )  # fmt: skip
        share = hottest(left, drift)
        volts = share * up.line_amps_rms * np.maximum(left, 1e-3) * ohms_each * (1.0 + off)
        watts = np.maximum(low.source_watts, up.source_watts)
        return share * up.surge_watts, volts, watts, np.maximum(low.led_amps_peak, up.led_amps_peak)

    def state(name, watts_each, volts, watts, peak, diode=high.volts_rms):
        crest = none + mains.peak(diode)
        return State(name, watts_each, volts, watts, peak + none, none, crest)

    states = [
        state(name, *after_fault(*how))
        for name, how in {
            faults.SOUND: ("none",),
            "dropper": ("none", count - 1.0),
            "dropper drift": ("none", count + candidates.DRIFT - 1.0, candidates.DRIFT),
            "led": ("LED short",),
            "diode": ("bridge diode short",),
            "diode open": ("bridge diode open",),
        }.items()
    ]  # fmt: skip
    (lowest, up), share = ends(count), hottest(count)
    whole = high.volts_rms**2 / lowest
    crest = np.maximum(mains.peak(high.volts_rms) - least - 2.0 * circuits.SILICON_VOLTS, 0.0)
    states.append(state("capacitor", share * whole, share * high.volts_rms, whole, crest / lowest))
    watts = high.volts_rms**2 / (bleeders * (1.0 - off))
    volts = np.where(np.isinf(bleeders), 0.0, high.volts_rms)
    sound = states[0]
    states.append(state("bleeder", watts, volts, sound.watts + watts, sound.led_amps_peak))
    small = capacitors.aged(1.0 - CAPACITOR_OFF)
    dim = capacitor_dropper.steady(parts(small, up, most), brief.low).led_amps_mean
    lit = capacitor_dropper.steady(parts(1.0 + CAPACITOR_OFF, lowest), high).led_amps_mean
    _, again = switch_on.worst(parts(1.0 + CAPACITOR_OFF, lowest), high)
    return Worst(
        CAPACITOR, ohms_each, count, states, 2 * len(states) + 3, dim, lit, 0.0, none, none, none,
        2.0 * brief.supply_hertz, share, none + 1.0, farads, bleeders, again.amps_peak,
    )  # fmt: skip


def pin_volts(brief, farads, bleeders):
    """Return what the pins of a plug keep a second after it is pulled [V]."""
    off = 1.0 + brief.bin_tolerance / 100.0
    return capacitors.volts_left(
        capacitors.PIN_SECONDS, farads * (1.0 + CAPACITOR_OFF), 2.0 * bleeders * off,
        mains.peak(brief.high.volts_rms),
    )  # fmt: skip


def dark_and_cold(circuit):
    """Return after which single faults it is dark, and after which lit over a cold pot: words."""
    outside = ("neutral open", "dimmer open"), ["element open", "cut-out open"]
    if circuit == NEON:
        own = ("a resistor open", "the lamp shorted", "the lamp open")
        return [*own, *outside[0]], outside[1]
    own = [each for each, words in dropper_faults.FAULTS.items() if words.startswith("dark")]
    kept = [each for each in own if each.startswith(("surge", "LED open", "LED short"))]
    return [*kept, "neutral open"], outside[1]
