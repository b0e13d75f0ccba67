"""Fuses and fusible resistors: what clears, what never does, and what a pulse does to them.

Look-up of the limits that miniature fuses are tested by; a maker's own curve is narrower and
decides. A fuse guards wiring against fire. It saves no LED, and nobody from a shock.
"""

from dataclasses import dataclass
from math import inf

import numpy as np

from helpers.physics import limits

# IEC 60127-2: times the rated current -> longest time before the fuse melts, the slowest of the
# sheets for each speed (1 and 2, 3 and 5). Confirmed in makers' sheets that quote the standard;
# sheet 3 from memory.
_LONGEST = {
    "F": ((2.1, 1800.0), (2.75, 2.0), (4.0, 0.3), (10.0, 0.02)),
    "T": ((2.1, 1800.0), (2.75, 80.0), (4.0, 5.0), (10.0, 0.3)),
}
#: Share of its current that a fuse must carry for an hour without melting (same source).
HOLDS_AN_HOUR = 1.5
_BREAKS = {"L": 35.0, "E": 150.0, "H": 1500.0}
# Pulses in a life -> share of the melting integral that each may take. Fuse makers' application
# notes (confirmed): a share for pulses with ten seconds or more between them.
_PULSES = ((100.0, 0.48), (1_000.0, 0.38), (10_000.0, 0.29), (100_000.0, 0.22))


@dataclass(frozen=True)
class Fuse:
    """A miniature fuse as its marking says, such as T 100 mA H.

    Parameters
    ----------
    rated_amps : float
        Rated current [A].
    speed : str
        'F' quick or 'T' time-lag [-].
    breaking : str
        'L' low, 'E' enhanced or 'H' high breaking capacity [-].

    Raises
    ------
    ValueError
        If a letter is unknown or the current not above zero.

    Examples
    --------
    >>> Fuse(0.1, "T", "H").breaking_amps
    1500.0
    """

    rated_amps: float
    speed: str = "T"
    breaking: str = "H"

    def __post_init__(self):
        slip = "Milliamps? Divide by 1000."
        amps = limits.positive(self.rated_amps, "rated_amps", "A", slip)
        limits.one_of(self.speed, "speed", _LONGEST)
        limits.one_of(self.breaking, "breaking", _BREAKS)
        object.__setattr__(self, "rated_amps", amps)

    @property
    def breaking_amps(self):
        """Largest current that it can break; beyond it the fuse may burst and burn on [A]."""
        least = _BREAKS[self.breaking]
        return max(least, 10.0 * self.rated_amps) if self.breaking == "L" else least


def longest_seconds(fuse, amps_rms):
    """Return the longest time in which a fuse may take to melt.

    Parameters
    ----------
    fuse : Fuse
    amps_rms : float or array
        Current, rms [A].

    Returns
    -------
    seconds : float or ndarray
        Longest time; infinite below 2.1 times the rated current, where it may never melt [s].

    Raises
    ------
    ValueError
        If the current is negative.

    Notes
    -----
    The next lower step of the standard counts, so a real fuse is quicker.

    References
    ----------
    IEC 60127-2, sheets 1, 2, 3 and 5 (confirmed but for sheet 3; pages from memory).

    Examples
    --------
    >>> quick = Fuse(0.1, "F")
    >>> longest_seconds(quick, 0.15), longest_seconds(quick, 1.5)
    (inf, 0.02)
    """
    times = np.asarray(limits.not_negative(amps_rms, "amps_rms", "A")) / fuse.rated_amps
    longest = np.full(np.shape(times), inf)
    for step, seconds in _LONGEST[fuse.speed]:
        # A current that is 2.1 times the rating but for rounding is meant to be that.
        longest = np.where(times >= step * (1.0 - 1e-12), seconds, longest)
    return limits.as_given(longest)


def can_break(fuse, prospective_amps):
    """Return whether a fuse can break the current that would flow without it.

    Parameters
    ----------
    fuse : Fuse
    prospective_amps : float or array
        What the mains would drive through a wire in its place, rms [A].

    Returns
    -------
    breaks : bool or ndarray
        False where it may burst [-].

    Raises
    ------
    ValueError
        If the current is negative.

    Notes
    -----
    A socket may drive a thousand amps and more. A resistor in series limits that only while it is
    whole: the fuse comes first, at the line, with high breaking capacity.

    References
    ----------
    IEC 60127-2: 35 A or ten times the rating, 150 A, 1500 A (confirmed; pages from memory).

    Examples
    --------
    >>> can_break(Fuse(0.1, "F", "L"), 500.0), can_break(Fuse(0.1, "F", "H"), 500.0)
    (False, True)
    """
    amps = limits.not_negative(prospective_amps, "prospective_amps", "A")
    return limits.as_given(np.asarray(amps) <= fuse.breaking_amps)


def least_melting_integral(pulse_integral, pulses=100_000.0):
    """Return the melting integral that a fuse needs to outlive its pulses.

    Parameters
    ----------
    pulse_integral : float or array
        Integral of the squared current of one pulse, from `switch_on.inrush` [A2 s].
    pulses : float or array
        How often in its life it is switched on, up to 100 000 [-].

    Returns
    -------
    ampere_squared_seconds : float or ndarray
        Least melting integral, to compare with the maker's sheet [A2 s].

    Raises
    ------
    ValueError
        If the integral is negative or there are too many pulses.

    Notes
    -----
    Each pulse may take 48 % of it for a hundred pulses, 38, 29 and 22 % for ten times as many each.
    For pulses with time to cool between them. Behind a phase-cut dimmer a pulse comes every
    half-cycle: then the rms current counts, and must stay within the rating.

    References
    ----------
    Application notes of fuse makers (confirmed in one).

    Examples
    --------
    >>> round(least_melting_integral(1.1e-4), 6)
    0.0005
    """
    pulse = limits.not_negative(pulse_integral, "pulse_integral", "A2 s")
    count = limits.between(
        pulses, "pulses", "pulses", 1.0, 100_000.0, "Behind a dimmer the rms current counts."
    )
    share = np.full(np.shape(count), _PULSES[-1][1])
    for most, each in reversed(_PULSES):
        share = np.where(np.asarray(count) <= most, each, share)
    return limits.as_given(pulse / share)


def fusible_opens(watts, rated_watts, opens_at_times):
    """Return whether a fusible resistor opens at an overload.

    Parameters
    ----------
    watts : float or array
        Power in it during the fault [W].
    rated_watts : float or array
        Rated power [W].
    opens_at_times : float or array
        Times its rated power at which its sheet says that it opens; above one [-].

    Returns
    -------
    opens : bool or ndarray
        False where it only glows: then it needs distance from all that burns [-].

    Raises
    ------
    ValueError
        If a value is impossible.

    Notes
    -----
    ``watts >= opens_at_times * rated_watts``. Between its rating and that point it runs hot for as
    long as the fault lasts. Sheets state 10 to 30 times: Common practice, no source.

    References
    ----------
    The maker's sheet decides.

    Examples
    --------
    >>> fusible_opens(350.0, 1.0, 20.0), fusible_opens(1.8, 1.0, 20.0)
    (True, False)
    """
    rated = limits.positive(rated_watts, "rated_watts", "W")
    times = limits.between(
        opens_at_times, "opens_at_times", "times", 1.0, 1000.0, "It is not a share of the rating."
    )
    power = limits.not_negative(watts, "watts", "W")
    return limits.as_given(np.asarray(power) >= times * rated)
