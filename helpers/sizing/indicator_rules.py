"""The rules of a whole indicator beside those of its dropper: light, touch, warmth, dimmer, off.

Each stands once: what is held against what, by whose word, and in which words it is told. Works on
figures of many candidates at once; what they are is computed in `candidates`.
"""

from dataclasses import dataclass

from helpers.physics import capacitors, faults, hazards, heat, insulation, ratings
from helpers.quantities import GLOSSARY, write
from helpers.sizing import rules

BURN_CELSIUS = 48.0
"""Burn threshold of any surface that is held for ten minutes: ISO 13732-1 (from memory) [degC]."""
AIR_CELSIUS = 85.0
"""Air that a small LED is made for at most: common practice, no source [degC]."""


@dataclass(frozen=True)
class Rule:
    """One figure held against one limit.

    Parameters
    ----------
    name : str
        As findings carry it.
    of : str
        Quantity of figure and limit, a name of the glossary.
    says : str
        What is told, with {figure}, {limit} and {after} in it.
    source : str
        Where the limit comes from.
    least : bool
        Whether the limit is the least that is wanted, not the most [-].
    unsure : float
        Share of the limit within which a figure is a caution [-].
    over : str
        What is beyond the limit: fail or caution.
    danger : str
        What hurts somebody beyond it.
    """

    name: str
    of: str
    says: str
    source: str
    least: bool = False
    unsure: float = 0.0
    over: str = "fail"
    danger: str = ""

    def places(self, figure, limit):
        """Return the verdicts of many figures, as places in `rules.VERDICTS`."""
        return rules.judge(figure, limit, least=self.least, unsure=self.unsure, over=self.over)

    def finding(self, figure, limit, after=faults.SOUND, place=None):
        """Return the finding on one figure; a place is given where more than the limit decides."""
        verdict = rules.VERDICTS[self.places(figure, limit) if place is None else place]
        said = self.says.format(
            figure=write(figure, self.of), limit=write(limit, self.of), after=rules.AFTER[after]
        )
        danger = self.danger if verdict == "fail" else ""
        unit = GLOSSARY[self.of].unit
        return rules.Finding(
            self.name, verdict, figure, limit, unit, said, self.source, after, danger, self.least
        )


def _rows(table):
    """The rules of one table of `rules.toml`, by their names."""
    return {name: Rule(name, **row) for name, row in rules.HELD[table].items()}


#: Of every indicator, and with them those of a neon lamp and a capacitor dropper.
RULES = _rows("rule")
EVERY = RULES | _rows("other")
UNSURE = EVERY["LED mean"].unsure
"""Share by which heat and currents may be off: constant drops are good to about 1 % [-]."""


def capacitor_class(name, highest_volts):
    """Return whether a capacitor's class may stand in series with an insulated load.

    Parameters
    ----------
    name : str
        A class, 'none' or 'unknown' [-].
    highest_volts : float
        Highest mains, rms [V].

    Returns
    -------
    finding : rules.Finding

    References
    ----------
    IEC 60384-14: `physics.capacitors.may_bridge`.

    Examples
    --------
    >>> capacitor_class("X2", 253.0).verdict, capacitor_class("unknown", 253.0).verdict
    ('pass', 'fail')
    """
    known = name in capacitors.CLASSES
    fits = known and capacitors.may_bridge(name, "in series with an insulated load", highest_volts)
    return rules.said("capacitor class", "pass" if fits else "fail", kind=name)


def distances(supply, highest_volts, recurring_volts):
    """Return the distances that a build needs towards a hand: a caution until somebody measures.

    Parameters
    ----------
    supply : mains.Supply
        At its label: what an impulse goes by.
    highest_volts, recurring_volts : float
        Highest mains, rms, and the highest peak that recurs [V].

    Returns
    -------
    finding : rules.Finding

    References
    ----------
    IEC 60664-1 Tables F.1, F.2 and F.5.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> distances(mains.Supply(230.0, 50.0), 253.0, 716.0).verdict
    'caution'
    """
    impulse = insulation.rated_impulse_volts(supply.volts_rms)
    air = insulation.clearance_metres(impulse, reinforced=True)
    surface = max(insulation.creepage_metres(highest_volts, reinforced=True), air)
    return rules.said(
        "distances", "caution", surface, surface, air=write(air, "length"),
        impulse=write(impulse, "voltage"), surface=write(surface, "length"),
        mains=write(highest_volts, "voltage"), recurs=write(recurring_volts, "voltage"),
    )  # fmt: skip


def film_celsius(watts, rated_watts, air_celsius):
    """Return how hot the film of a resistor gets at last.

    Parameters
    ----------
    watts, rated_watts, air_celsius : float or array
        Its heat, its rating, the air around it [W], [W], [degC].

    Returns
    -------
    celsius : float or ndarray
        Hottest spot [degC].

    Notes
    -----
    By the slope of its derating line: at full rating and 70 degC the film is at its limit.

    References
    ----------
    IEC 60115-1.

    Examples
    --------
    >>> film_celsius(0.5, 0.5, 70.0)
    155.0
    """
    return heat.final_celsius(watts, heat.kelvin_per_watt_of(rated_watts), air_celsius)


#: What the temperature of a film and a touch are held against [degC], [A].
FILM_CELSIUS, TOUCH_AMPS_PEAK = ratings.ZERO_CELSIUS, hazards.BARRIER_AMPS_PEAK
