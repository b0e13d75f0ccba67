"""The parts of an indicator by one law: the volts that each drops at a current.

``volts + ohms * amps + slope_volts * log(1 + amps / saturation_amps)``. A resistor has only ohms, a
constant drop only volts, a real LED or diode the last term and a little resistance of its own.
Knows no circuit.
"""

from typing import NamedTuple

import numpy as np

from helpers.physics import limits

#: Boltzmann's constant times temperature over the charge of an electron, at 25 degC: CODATA 2018.
THERMAL_VOLTS = 0.02569257912108585
_MOST_STEPS = 60  # of Newton; six are usual


class Part(NamedTuple):
    """What a part drops while current flows in its own direction."""

    volts: float = 0.0
    """Constant drop [V]."""
    ohms: float = 0.0
    """Series resistance [ohm]."""
    slope_volts: float = 0.0
    """Ideality factor times thermal voltage; zero without a junction [V]."""
    saturation_amps: float = 1.0
    """Saturation current of the junction [A]."""

    def volts_at(self, amps):
        """Volts at a current of zero or more [V]."""
        volts = self.volts + self.ohms * amps
        if self.is_junction:
            volts = volts + self.slope_volts * np.log1p(np.asarray(amps) / self.saturation_amps)
        return volts

    def slope_at(self, amps):
        """Change of these volts with the current [ohm]."""
        return self.ohms + self.slope_volts / (self.saturation_amps + amps)

    @property
    def is_junction(self):
        """Whether the volts follow the logarithm of the current."""
        return not (isinstance(self.slope_volts, float) and self.slope_volts == 0.0)


def junction(volts, amps, ideality, ohms=0.0, thermal_volts=THERMAL_VOLTS):
    """Return a real LED or diode that passes through one point of its data sheet.

    Parameters
    ----------
    volts, amps : float or array
        Forward drop at a current [V], [A].
    ideality : float or array
        Ideality factor, 1 to about 4 [-].
    ohms : float or array
        Series resistance of the chip and its wire [ohm].
    thermal_volts : float
        Thermal voltage, 25.7 mV at 25 degC [V].

    Returns
    -------
    part : Part

    Raises
    ------
    ValueError
        If a value is impossible, or the resistance alone would take the whole drop.

    Notes
    -----
    ``amps = saturation * (exp((volts - amps * ohms) / (ideality * thermal)) - 1)``.

    References
    ----------
    Shockley's diode equation.

    Examples
    --------
    >>> red = junction(2.0, 0.020, 2.0, 5.0)
    >>> [round(float(red.volts_at(amps)), 2) for amps in (0.020, 1e-3, 10e-6)]
    [2.0, 1.75, 1.51]
    """
    amps = limits.positive(amps, "amps", "A", "Milliamps? Divide by 1000.")
    slope = limits.positive(ideality, "ideality", "") * thermal_volts
    ohms = limits.not_negative(ohms, "ohms", "ohm")
    across = limits.positive(volts - amps * ohms, "volts less those of the resistance", "V")
    turns = limits.between(
        across / slope, "volts over ideality and thermal volts", "", 0.0, 600.0,
        "No junction is that steep: is the ideality at least 1?",
    )  # fmt: skip
    return Part(0.0, ohms, slope, limits.as_given(amps / np.expm1(turns)))


#: A small silicon rectifier, drop 0.6 V at 1 mA: common practice, no source.
SILICON = Part(0.0, 0.05, 1.9 * THERMAL_VOLTS, 5e-9)


def amps_through(chain, volts):
    """Return the current that a voltage drives through parts in series.

    Parameters
    ----------
    chain : sequence of Part
        At least one with resistance [-].
    volts : float or array
        Voltage across all of them; none flows below zero [V].

    Returns
    -------
    amps : float or ndarray
        Current [A].

    Notes
    -----
    With one junction this is the Lambert W function. Newton's method on the logarithm of the
    current: the equation is convex there, so it comes down from an upper bound without a detour,
    and no exponential overflows.

    References
    ----------
    Derived here; put back into the parts in the tests.

    Examples
    --------
    >>> amps_through([Part(ohms=100e3), Part(volts=2.0)], 102.0)
    0.001
    >>> round(float(amps_through([Part(ohms=100e3), junction(2.0, 0.02, 2.0)], 102.0)) * 1e3, 4)
    1.0015
    """
    ohms = sum(part.ohms for part in chain)
    spare = np.maximum(volts - sum(part.volts for part in chain), 0.0)
    junctions = [part for part in chain if part.is_junction]
    if not junctions:
        return limits.as_given(spare / ohms)
    flows = spare > 0.0
    spare = np.where(flows, spare, 1.0)
    log = np.log(spare / ohms)
    for part in junctions:
        turns = spare / part.slope_volts
        log = np.minimum(log, np.log(part.saturation_amps) + turns + np.log(-np.expm1(-turns)))
    for _ in range(_MOST_STEPS):
        amps = np.exp(log)
        off, slope = ohms * amps - spare, ohms * amps
        for part in junctions:
            ratio = amps / part.saturation_amps
            off = off + part.slope_volts * np.log1p(ratio)
            slope = slope + part.slope_volts * ratio / (1.0 + ratio)
        step = off / slope
        log = log - step
        if np.all(np.abs(step) < 1e-13):
            break
    return limits.as_given(np.where(flows, np.exp(log), 0.0))
