"""The rules of a whole indicator beside those of its dropper: light, touch, warmth, dimmer, off.

Each stands once: what is held against what, by whose word, and in which words it is told. Works on
figures of many candidates at once; what they are is computed in `candidates`.
"""

from dataclasses import dataclass

from helpers.physics import capacitors, faults, hazards, heat, insulation, ratings
from helpers.quantities import GLOSSARY, write
from helpers.sizing import rules

UNSURE = 0.02
"""Share by which heat and currents may be off: constant drops are good to about 1 % [-]."""
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


def _table(*rows):
    return {row.name: row for row in rows}


#: By their names, as findings carry them.
RULES = _table(
    Rule(
        "light", "length",
        "At the lowest setting and the lowest mains it is noticed from {figure}; wanted are "
        "{limit}.",
        "IALA E-200-2 with a hundredfold margin (from memory): a guide, no promise.",
        least=True, unsure=0.25,
    ),
    Rule(
        "LED mean", "current",
        "The LED gets {figure} on average at most; it is made for {limit}.",
        rules.LED_SOURCE, unsure=UNSURE, danger=rules.LED_DIES,
    ),
    Rule(
        "LED after a fault", "current",
        "An LED gets up to {figure} {after}, made for {limit}. Beyond that it may die, and must "
        "stay enclosed.",
        rules.LED_SOURCE, unsure=UNSURE, over="caution",
    ),
    Rule(
        "pushed backwards", "current",
        "Up to {figure} are pushed backwards through an LED {after}. Above {limit} it may die, and "
        "must stay enclosed.",
        rules.LED_SOURCE, over="caution",
    ),
    Rule(
        "reverse volts", "voltage",
        "In reverse, up to {figure} stand across the LED before it breaks down; its sheet allows "
        "{limit}.",
        "The LED's own sheet; 5 V for a small one: Common practice, no source.",
    ),
    Rule(
        "diode at off", "voltage",
        "With the dimmer off and the element open the diode holds off up to {limit}; it is made "
        "for {figure}.",
        "The diode's own sheet.", least=True, unsure=UNSURE, danger=rules.BREAKS_DOWN,
    ),
    Rule(
        "film", "temperature",
        "After the worst single fault the film of a resistor gets up to {figure}; it stands "
        "{limit}.",
        "IEC 60115-1 for the derating line; its zero from the part's own sheet.",
        unsure=0.05, danger=rules.BURNS,
    ),
    Rule(
        "air", "temperature",
        "The air in the box gets up to {figure}; a small LED is commonly made for air of {limit}.",
        "The LED's own sheet; the usual figure: Common practice, no source.", unsure=0.05,
        danger="hot parts age fast, and soft plastic no longer keeps live parts out of reach.",
    ),
    Rule(
        "box", "temperature",
        "The outside of the box gets up to {figure}. From {limit} on, skin that stays ten minutes "
        "can burn.",
        "ISO 13732-1, burn threshold of any material at ten minutes (from memory); it sets no "
        "limits.", over="caution",
    ),
    Rule(
        "flicker", "percent",
        "The light pulses by {figure}; for room lighting {limit} counts as low risk. Usual for a "
        "pilot light: keep it out of the corner of the eye.",
        "IEEE Std 1789-2015, recommended practice 1; made for lamps that light a room.",
        over="caution",
    ),
    Rule(
        "glow at off", "length",
        "With the dimmer off and the element sound, what leaks past the switch is noticed from "
        "{figure}; somebody stands at {limit}.",
        "Thevenin's theorem; a usual capacitor unless yours is known: Common practice, no source.",
        unsure=0.25, over="caution",
    ),
    Rule(
        "open element", "percent",
        "With the dimmer off and the element open, {figure} of the full light is left, and the "
        "terminals are live all the same.",
        "Kirchhoff's laws.", over="caution",
    ),
    Rule(
        "what it tells", "percent",
        "At the lowest setting the light keeps {figure} of its current while the pot has {limit} "
        "of its heat. It shows volts, not heat: with an open element it stays lit.",
        "Kirchhoff's laws.", over="caution",
    ),
    Rule(
        "touch", "current",
        "After one short a touch would draw up to {figure} peak through the 2 kΩ network of the "
        "standard, of {limit} that is allowed: with half of the string in each wire, for a plug "
        "goes in either way. A skilled person decides.",
        "IEC 60335-1 clause 8.1.4, two parts each by clause 22.42 (from memory); IEC 60990.",
        danger="whoever touches the LED or its leads can be killed: it is at mains.",
    ),
    Rule(
        "impulse", "voltage",
        "Of an impulse on the mains one resistor takes up to {figure} for an instant; its type is "
        "tested to about {limit}. Beyond that ask for a sheet that names impulses.",
        "IEC 60664-1 Table F.1; overload test of IEC 60115-1 (from memory).", over="caution",
    ),
    Rule(
        "pulses", "current",
        "No capacitor is in it: at switching on and at each edge never more than {figure} flow, "
        "and it keeps no charge on the pins of its plug.",
        "Ohm's law.", unsure=UNSURE, danger=rules.LED_DIES,
    ),
)  # fmt: skip

_SHORTS = "one that is not made for the mains fails short, and the surge resistor burns."
#: Of a neon lamp and of a capacitor dropper alone.
OF_OTHERS = _table(
    Rule(
        "lamp mean", "current",
        "The neon lamp gets {figure} on average at most; it is made for {limit}.",
        "The lamp's own sheet; 1 mA for a small one: Common practice, no source.", unsure=UNSURE,
    ),
    Rule(
        "lamp after a fault", "current",
        "The neon lamp gets up to {figure} at the crest {after}, made for {limit} on average. "
        "Beyond that it soon blackens and goes dark.",
        "The lamp's own sheet.", over="caution",
    ),
    Rule(
        "lamp ages", "voltage",
        "An old lamp strikes at up to {figure}, a new one at {limit}. It flickers at its end and "
        "goes dark first at low settings, over live wires.",
        "A fifth more with age: Common practice, no source.", over="caution",
    ),
    Rule(
        "inrush", "current",
        "Put in again while it keeps its charge, a plug sends a pulse of up to {figure} through "
        "the LED; it is made for {limit}.",
        "Ohm's law; the LED's own sheet for a single pulse.", danger=rules.LED_DIES,
    ),
    Rule(
        "pins", "voltage",
        "A second after the plug is pulled its pins keep {figure}; {limit} are allowed. Two like "
        "bleeders in series, the largest of the bin that do.",
        "IEC 60335-1 clause 22.5.",
        danger="the pins of a pulled plug give a shock, and the hand that starts can hit worse.",
    ),
    Rule(
        "capacitor volts", "voltage",
        "The capacitor stands on a mains of up to {figure}; printed on it are {limit}.",
        "IEC 60384-14.", danger=_SHORTS,
    ),
)  # fmt: skip
#: Every rule of both tables, by name.
EVERY = RULES | OF_OTHERS


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
    reason = (
        f"The capacitors are of class {name}; in series with the light they have to be of X1 or "
        "X2, certified, and never stand towards what a hand may touch."
    )
    verdict, danger = ("pass", "") if fits else ("fail", _SHORTS)
    return rules.Finding("capacitor class", verdict, 0.0, 0.0, "-", reason, "IEC 60384-14.",
                         danger=danger)  # fmt: skip


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
    reason = (
        f"From all that is live to what a hand may touch: {write(air, 'length')} through air for "
        f"impulses of {write(impulse, 'voltage')}, {write(surface, 'length')} along a surface for "
        f"{write(highest_volts, 'voltage')} rms; the peak that recurs is "
        f"{write(recurring_volts, 'voltage')}. A competent person measures."
    )
    source = "IEC 60664-1 Tables F.1, F.2 and F.5, reinforced insulation, pollution degree 2."
    return rules.Finding("distances", "caution", surface, surface, "m", reason, source)


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
