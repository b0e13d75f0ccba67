"""Electric shock: touch current, what it does to a body, and whether a barrier holds.

Danger first: where a figure is uncertain, the lower current is taken as the border. These sums
teach why a rule exists; they prove no build safe. Knows no LED; distances are in `insulation`.
"""

from dataclasses import dataclass

import numpy as np

from helpers.physics import limits

#: Dry hands, large contacts, hand to hand, at 225 V and at 125 V: so few ohms or fewer in 5, 50 and
#: 95 of 100 people (IEC 60479-1, from memory) [ohm].
DRY_HANDS_225_V_OHMS = (775.0, 1225.0, 1900.0)
DRY_HANDS_125_V_OHMS = (900.0, 1550.0, 2675.0)
#: The body that shock is judged with, on every supply. A wet one has less [ohm].
SHOCK_BODY_OHMS = min(DRY_HANDS_225_V_OHMS + DRY_HANDS_125_V_OHMS)
#: The network that touch current is measured with (IEC 60990, IEC 60335-1), for the limits of 0.5
#: and 0.7 mA alone: most bodies have less, so it would flatter a shock [ohm].
TOUCH_NETWORK_OHMS = 2000.0
#: Steady touch current that may just be felt (IEC 61140, IEC 60479-1 curve a) [A rms].
FELT_AMPS_RMS = 0.5e-3
#: Limit for parts behind a protective impedance (IEC 60335-1 clause 8.1.4) [A peak].
BARRIER_AMPS_PEAK = 0.7e-3
#: Let-go borders, about 5 mA for the whole population and 10 mA for adult men (IEC 60479-1, from
#: memory) [A rms].
LET_GO_AMPS_RMS = (5e-3, 10e-3)

#: Where a residual-current device for additional protection opens (IEC 60364-4-41, 415.1) [A rms].
RESIDUAL_AMPS_RMS = 0.030

ZONES = {
    "AC-1": "usually not felt",
    "AC-2": "felt, muscles may jerk, usually no harm",
    "AC-3": "strong cramp, cannot let go, breathing hindered",
    "AC-4": "the heart may stop, burns; this kills",
}

# Borders of IEC 60479-1 figure 20, left hand to feet, 15 to 100 Hz, as (seconds, amps); straight
# lines between them on logarithmic scales. Confirmed as quoted elsewhere: the ends of b, the
# short end of c1. The rest of c1 is from memory; redrawn figures end between 30 and 40 mA.
_CURVE_B = ((0.010, 0.200), (2.0, 0.005))
_CURVE_C1 = ((0.010, 0.500), (0.100, 0.400), (1.0, 0.050), (3.0, 0.040))


def touch_amps_rms(supply, ohms=0.0, farads=None, bleeder_ohms=None, body_ohms=SHOCK_BODY_OHMS):
    """Return the current through a body that touches the far side of an impedance.

    Parameters
    ----------
    supply : mains.Supply
        The supply, at the top of its range for the worst case.
    ohms : float or array
        Resistance between the mains and the touched part, zero for bare contact [ohm].
    farads : float or array, optional
        Capacitor in series with it, if there is one [F].
    bleeder_ohms : float or array, optional
        Resistor across that capacitor, if there is one [ohm].
    body_ohms : float or array
        `SHOCK_BODY_OHMS` for what a touch does, `TOUCH_NETWORK_OHMS` for the touch-current limits;
        wet skin is below both [ohm].

    Returns
    -------
    amps_rms : float or ndarray
        Rms current; its peak is 1.414 times that [A].

    Raises
    ------
    ValueError
        If a value is impossible, or a bleeder is given without a capacitor.

    Notes
    -----
    ``V / abs(ohms + body + 1 / (j w C + 1 / bleeder))``, sine and steady state. One body in twenty
    is lower still, and so is wet skin, so this is no upper bound; at low volts dry skin holds back
    more than this. A dimmed wave has the same peak up to 90 degrees.

    References
    ----------
    IEC 60479-1 (from memory) and IEC 60990 for the two bodies; the sum is derived here.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> bare = touch_amps_rms(mains.Supply(230.0, 50.0))
    >>> f"{bare * 1e3:.0f} mA: {zone(bare, 1.0)}"
    '297 mA: AC-4'
    """
    slip = "Leave the sign out."
    resistance = limits.not_negative(ohms, "ohms", "ohm", slip) + limits.positive(
        body_ohms, "body_ohms", "ohm", "No body has no resistance; 500 ohm is a low one."
    )
    if farads is None:
        if bleeder_ohms is not None:
            raise ValueError(
                f"bleeder_ohms was read as {bleeder_ohms} ohm but farads is missing; a bleeder "
                "lies across a capacitor. Give farads, or add the resistance to ohms."
            )
        return supply.volts_rms / resistance
    susceptance = 2.0 * np.pi * supply.hertz * limits.positive(farads, "farads", "F", slip)
    bleeder = limits.present(
        np.inf if bleeder_ohms is None else bleeder_ohms, "bleeder_ohms", "ohm"
    )
    impedance = resistance + 1.0 / (1.0 / bleeder + 1j * susceptance)
    return limits.as_given(supply.volts_rms / np.abs(impedance))


_ON_THE_BORDER = 1.0 - 1e-9  # so that rounding never puts a current below it


def zone(amps_rms, seconds):
    """Return the zone of IEC 60479-1 that a current through the body falls into.

    Parameters
    ----------
    amps_rms : float or array
        Rms current, 15 to 100 Hz, left hand to both feet [A].
    seconds : float or array
        How long it flows, 10 ms and longer [s].

    Returns
    -------
    zone : str or ndarray of str
        A key of `ZONES` [-].

    Raises
    ------
    ValueError
        If the current is negative or the time below 10 ms.

    Notes
    -----
    AC-1 below curve a (0.5 mA at any time), AC-2 below curve b, AC-3 below curve c1, AC-4 beyond. A
    current on a border counts as beyond it.
    Hand to hand the heart takes about 40 % of that, from a hand to the chest more than all of it.
    The zones are borders for a population: nobody is promised to survive AC-3.

    References
    ----------
    IEC 60479-1:2018 figure 20: curve a, the ends of b and the short end of c1 confirmed, the rest
    from memory.

    Examples
    --------
    >>> zone([0.0004, 0.004, 0.030, 0.297], 1.0).tolist()
    ['AC-1', 'AC-2', 'AC-3', 'AC-4']
    """
    amps = np.asarray(limits.not_negative(amps_rms, "amps_rms", "A", "Leave the sign out."))
    seconds = limits.between(
        seconds, "seconds", "s", 0.010, 1e9, "The curves begin at 10 ms. Was it in ms?"
    )
    above = (
        (amps >= FELT_AMPS_RMS * _ON_THE_BORDER).astype(int)
        + (amps >= _border(_CURVE_B, seconds) * _ON_THE_BORDER)
        + (amps >= _border(_CURVE_C1, seconds) * _ON_THE_BORDER)
    )
    return limits.as_given(np.array(list(ZONES))[above])


def _border(curve, seconds):
    times, currents = np.log(curve).T
    return np.exp(np.interp(np.log(seconds), times, currents))


@dataclass(frozen=True)
class Barrier:
    """Whether a string of resistors keeps a touchable part safe, each part shorted in turn."""

    amps_rms: float
    """Touch current with all parts sound [A]."""
    amps_rms_worst: float
    """The highest with any one part shorted [A]."""
    holds: bool
    """True only if the limits are kept sound and with any one part shorted."""


def protective_impedance(supply, part_ohms, body_ohms=TOUCH_NETWORK_OHMS):
    """Return the touch current behind a string of resistors, sound and with each one shorted.

    Parameters
    ----------
    supply : mains.Supply
        The supply at the top of its range.
    part_ohms : sequence of float
        Each resistor of the string at the low end of its tolerance [ohm].
    body_ohms : float
        The network that the limits are stated for [ohm].

    Returns
    -------
    barrier : Barrier
        Currents and verdict.

    Raises
    ------
    ValueError
        If no part is given or a value is impossible.

    Notes
    -----
    Holds if no case exceeds 0.5 mA rms or 0.7 mA peak. So one part alone never holds: shorted, it
    leaves a body across the mains. Parts must also be of a kind that does not fail short, keep
    distance, and pass the tests of the standard; a sum is not a certificate.

    References
    ----------
    IEC 60335-1 clause 8.1.4 (0.7 mA peak) and clause 22.42 (at least two parts; from memory);
    IEC 61140 (0.5 mA).

    Examples
    --------
    >>> from helpers.physics import mains
    >>> protective_impedance(mains.Supply(253.0, 50.0), [390e3]).holds
    False
    >>> barrier = protective_impedance(mains.Supply(253.0, 50.0), [560e3, 560e3])
    >>> barrier.holds, round(barrier.amps_rms_worst * 1e3, 2)
    (True, 0.45)
    """
    parts = [float(limits.positive(ohms, "part_ohms", "ohm")) for ohms in part_ohms]
    if not parts:
        raise ValueError("part_ohms holds no resistor; a bare contact is no barrier.")
    sound = touch_amps_rms(supply, sum(parts), body_ohms=body_ohms)
    worst = touch_amps_rms(supply, sum(parts) - max(parts), body_ohms=body_ohms)
    holds = worst <= FELT_AMPS_RMS and np.sqrt(2.0) * worst <= BARRIER_AMPS_PEAK
    return Barrier(sound, worst, bool(holds))
