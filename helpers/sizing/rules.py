"""The rules of a safe dropper and of the light round it: questions, texts, explorers all ask here.

Healthy, each resistor of a dropper takes at most half its derated rating. After any one short (a
dropper, the series diode, the LED) no remaining resistor is above its derated rating, and what
remains of the string stands the whole mains, unless a fuse or fusible part that is rated for this
fault clears it. Both at the highest mains and in the air of the box. A single dropper fails. An LED
may die in such a fault if it stays enclosed: a caution that says so.

Asks physics what happens and judges it. Passing is a plan, no permission to build.
"""

import tomllib
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

import numpy as np

from helpers.physics import capacitors, faults, insulation, leds, limits, mains, ratings
from helpers.quantities import GLOSSARY, write, write_as

VERDICTS = ("pass", "caution", "fail")
HEALTHY_SHARE = 0.5
"""Share of the derated rating that a sound dropper may use: common practice, no source [-]."""
DIODE_MARGIN = 2.0
"""Reverse rating of a diode over the highest crest, for surges: common practice, no source [-]."""

#: Their words, as `rules.toml` has them: by state, by rule, by what happens.
HELD = tomllib.loads(Path(__file__).with_name("rules.toml").read_text("utf-8"))
AFTER, SOURCES, DANGERS = HELD["after"], HELD["source"], HELD["danger"]


@dataclass(frozen=True)
class Finding:
    """What one rule says of one figure."""

    rule: str
    """Its name, as `Rule` has it."""
    verdict: str
    """pass, caution or fail; a caution keeps the rules."""
    figure: float
    """What was computed."""
    limit: float
    """What the figure is held against, in the same unit."""
    unit: str
    """V, A, W or - [-]."""
    reason: str
    """What was computed and what the limit is, one sentence or two."""
    source: str
    """Where the limit comes from."""
    after: str = faults.SOUND
    """A key of `AFTER`."""
    danger: str = ""
    """What hurts somebody if it is built all the same; empty if nothing does."""
    least: bool = False
    """Whether the limit is the least that is wanted, not the most."""
    not_yours: tuple = ()
    """Fields of a brief that it rests on and that nobody gave: the workshop's stand for them."""

    @property
    def margin(self):
        """How many times the figure fits its limit: 1 at the limit; infinite where none is near."""
        over, under = self.limit, self.figure
        if self.least:
            over, under = under, over
        return over / under if under and self.rule != "count" else float("inf")

    @property
    def named(self):
        """The rule, and after which fault: 'heat, with one resistor shorted'."""
        return self.rule if self.after == faults.SOUND else f"{self.rule}, {AFTER[self.after]}"

    def __str__(self):
        verdict = self.verdict.capitalize()
        if self.danger:
            return f"{verdict}. Danger: {self.danger} {self.reason}"
        first = self.reason[0] if self.reason[1].isupper() else self.reason[0].lower()
        return f"{verdict}: {first}{self.reason[1:]}"


@dataclass(frozen=True)
class Rule:
    """One row of `rules.toml`."""

    rule: str
    """As findings name it."""
    says: str
    """What is told, with figures and what has failed in braces."""
    source: str
    """Where the limit comes from."""
    danger: str = ""
    """What hurts somebody beyond it."""
    of: str = ""
    """Quantity of figure and limit, a name of the glossary, where both are told as they are."""
    unit: str = "-"
    """Of figure and limit."""
    least: bool = False
    """Whether the limit is the least that is wanted, not the most."""
    unsure: float = 0.0
    """Share of the limit within which a figure is a caution."""
    over: str = "fail"
    """What is beyond the limit: fail or caution."""

    def places(self, figure, limit):
        """Return the verdicts of many figures, as places in `VERDICTS`."""
        return judge(figure, limit, least=self.least, unsure=self.unsure, over=self.over)


def _rule(name, row):
    held = {"rule": name, "danger": ""} | row
    held["source"] = SOURCES.get(held["source"], held["source"])
    held["danger"] = DANGERS.get(held["danger"], held["danger"])
    if "of" in row:
        held["unit"] = GLOSSARY[row["of"]].unit
    return Rule(**held)


#: Every row by its name: those of every indicator, of a neon lamp or capacitor dropper, and others.
RULES = {
    name: _rule(name, row)
    for table in ("rule", "other", "said") for name, row in HELD[table].items()
}  # fmt: skip
UNSURE = RULES["LED mean"].unsure
"""Share by which heat and currents may be off: constant drops are good to about 1 % [-]."""


def said(row, verdict, figure=0.0, limit=0.0, *, after=faults.SOUND, danger=None, **words):
    """Return a finding in the words of its row.

    Parameters
    ----------
    row : str
        A key of `RULES` [-].
    verdict : str
        pass, caution or fail [-].
    figure, limit : float
        What was computed and what it is held against, in the unit of the row.
    after : str
        A key of `AFTER` [-].
    danger : bool or None
        Whether its danger is told; None tells it of what fails [-].
    **words : object
        What stands in the braces of the row, but for its fault.

    Returns
    -------
    finding : Finding

    Examples
    --------
    >>> str(said("fuse", "pass", after="led")).partition(",")[0]
    'Pass: with the LED shorted'
    """
    rule, when = RULES[row], AFTER[after]
    if rule.of:
        words = {"figure": write(figure, rule.of), "limit": write(limit, rule.of)}
    reason = rule.says.format(when=when, When=when[0].upper() + when[1:], **words)
    told = verdict == "fail" if danger is None else danger
    return Finding(
        rule.rule, verdict, figure, limit, rule.unit, reason, rule.source, after,
        rule.danger if told else "", rule.least,
    )  # fmt: skip


def judge(figure, limit, *, least=False, unsure=0.0, over="fail"):
    """Return how figures stand to their limits, as places in `VERDICTS`.

    Parameters
    ----------
    figure, limit : float or array
        What was computed and what it is held against, in one unit.
    least : bool
        Whether the limit is the least that is wanted, not the most [-].
    unsure : float
        Share of the limit up to which the figure may be wrong [-].
    over : str
        'fail' or 'caution', for what is beyond its limit [-].

    Returns
    -------
    places : int or ndarray of int
        0 pass, 1 caution, 2 fail [-].

    Notes
    -----
    Beyond its limit, however little, it does not pass; on the safe side of it but within the
    uncertainty it is a caution: guarded acceptance.

    References
    ----------
    JCGM 106:2012, clause 8.3.2 (page from memory).

    Examples
    --------
    >>> judge([0.5, 0.99, 1.0, 1.01], 1.0, unsure=0.02).tolist(), judge(1.0, 1.0)
    ([0, 1, 1, 2], 0)
    """
    figure, limit = np.asarray(figure), np.asarray(limit)
    sign = -1.0 if least else 1.0
    beyond = sign * figure > sign * limit
    near = sign * figure > sign * limit * (1.0 - sign * unsure)
    return limits.as_given(np.where(beyond, VERDICTS.index(over), np.where(near, 1, 0)))


def heat_limit(rated_watts, air_celsius, after=faults.SOUND):
    """Return the heat that a resistor may have: half its derated rating while all is sound.

    Parameters
    ----------
    rated_watts, air_celsius : float or array
        Rating on its sheet, air around it in the box [W], [degC].
    after : str
        'none', or which part has failed [-].

    Returns
    -------
    watts : float or ndarray
        The most that passes [W].

    Raises
    ------
    ValueError
        As `ratings.derated_watts`.

    References
    ----------
    As `heat`.

    Examples
    --------
    >>> heat_limit(0.5, 40.0), heat_limit(0.5, 40.0, "dropper")
    (0.25, 0.5)
    """
    allowed = ratings.derated_watts(rated_watts, air_celsius)
    return allowed * (HEALTHY_SHARE if after == faults.SOUND else 1.0)


def worst(findings):
    """Return the finding that matters most: danger, then verdict, a single part, least margin.

    Parameters
    ----------
    findings : iterable of Finding
        One at least.

    Returns
    -------
    finding : Finding

    Examples
    --------
    >>> worst([heat(0.1, 0.5, 70.0), heat(0.3, 0.5, 70.0)]).verdict
    'fail'
    """
    return max(findings, key=_matters)


def _matters(one):
    danger = bool(one.danger)
    return danger, VERDICTS.index(one.verdict), danger and one.rule == "count", -one.margin


def passes(findings):
    """Return whether no rule is broken; cautions may be among them.

    Parameters
    ----------
    findings : iterable of Finding

    Returns
    -------
    passes : bool

    Examples
    --------
    >>> passes([heat(0.1, 0.5, 70.0)]), passes([heat(0.3, 0.5, 70.0)])
    (True, False)
    """
    return all(finding.verdict != "fail" for finding in findings)


def heat(watts, rated_watts, air_celsius, after=faults.SOUND, *, unsure=0.0):
    """Judge the heat in one resistor: half its derated rating while sound, all of it after a short.

    Parameters
    ----------
    watts : float
        Its heat at the highest mains [W].
    rated_watts : float
        Rating on its sheet [W].
    air_celsius : float
        Air around it in the box [degC].
    after : str
        'none', or which part is shorted [-].
    unsure : float
        As for `judge` [-].

    Returns
    -------
    finding : Finding

    Raises
    ------
    ValueError
        If the power is negative, or as `ratings.derated_watts`.

    Notes
    -----
    The limit itself passes.

    References
    ----------
    IEC 60115-1, derating; half of it while sound: common practice, no source.

    Examples
    --------
    >>> print(str(heat(0.2, 0.5, 40.0)).replace("\\xa0", " "))
    Pass: at 40 °C a 0.5 W resistor may turn 0.5 W into heat, half of that while all is sound; \
here it is 0.2 W.
    """
    watts = limits.not_negative(watts, "watts", "W", "Leave the sign out.")
    allowed = heat_limit(rated_watts, air_celsius, "a short")
    limit = heat_limit(rated_watts, air_celsius, after)
    return said(
        "heat" if after == faults.SOUND else "heat after",
        VERDICTS[judge(watts, limit, unsure=unsure)], watts, limit, after=after,
        danger=watts > allowed, air=write(air_celsius, "temperature"), rated=_watts(rated_watts),
        allowed=_watts(allowed), watts=_watts(watts),
    )  # fmt: skip


def _watts(value):
    return write(value, "power") if 0.0 < value < 0.1 else write_as(value, "W")


def volts(volts_rms, limiting_volts, after=faults.SOUND):
    """Judge the volts along one resistor against what its type stands.

    Parameters
    ----------
    volts_rms : float
        Its share of the whole mains at the highest, rms [V].
    limiting_volts : float
        Limiting element voltage of its type, DC or AC rms [V].
    after : str
        'none', or which part is shorted [-].

    Returns
    -------
    finding : Finding

    Raises
    ------
    ValueError
        If the voltage is negative or the limit not above zero.

    Notes
    -----
    Rms of the whole sine stands for its crest, too: behind a diode the rms is lower but the crest
    is the same.

    References
    ----------
    IEC 60115-1, limiting element voltage.

    Examples
    --------
    >>> volts(253.0, 200.0).verdict, volts(126.5, 200.0).verdict
    ('fail', 'pass')
    """
    share = limits.not_negative(volts_rms, "volts_rms", "V", "Leave the sign out.")
    limit = limits.positive(limiting_volts, "limiting_volts", "V")
    return said(
        "volts", VERDICTS[judge(share, limit)], share, limit, after=after,
        share=write(share, "voltage"), stands=write(limit, "voltage"),
    )  # fmt: skip


def led(amps_peak, limit_amps=leds.LIMIT_AMPS, *, unsure=0.0):
    """Judge the highest current of an LED while all parts are sound.

    Parameters
    ----------
    amps_peak : float
        Highest forward current at the highest mains [A].
    limit_amps : float
        What the LED is made for [A].
    unsure : float
        As for `judge` [-].

    Returns
    -------
    finding : Finding

    Raises
    ------
    ValueError
        If the current is negative or the limit not above zero.

    Notes
    -----
    The limit for steady current is asked of the peak: on the safe side, whatever the pulse.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> led(0.006).verdict, led(0.021).verdict
    ('pass', 'fail')
    """
    amps = limits.not_negative(amps_peak, "amps_peak", "A", "Leave the sign out.")
    limit = limits.positive(limit_amps, "limit_amps", "A")
    verdict = VERDICTS[judge(amps, limit, unsure=unsure)]
    return said("LED", verdict, amps, limit, amps=write_as(amps, "mA"), most=write_as(limit, "mA"))


def diode(crest_volts, rated_volts):
    """Judge the reverse rating of a silicon diode.

    Parameters
    ----------
    crest_volts : float
        Highest reverse voltage at the highest mains [V].
    rated_volts : float
        Repetitive reverse voltage on its sheet [V].

    Returns
    -------
    finding : Finding
        Its limit is the least rating.

    Raises
    ------
    ValueError
        If a voltage is not above zero.

    Notes
    -----
    Surges come on top of the crest. With the heater open, the capacitor of a dimmer's filter
    nearly doubles what a series diode holds off: the margin is then used up and none is left for
    surges, so behind a dimmer take a higher rating, commonly 1000 V.

    References
    ----------
    Common practice, no source.

    Examples
    --------
    >>> diode(358.0, 400.0).verdict, diode(358.0, 1000.0).verdict
    ('fail', 'pass')
    """
    crest = limits.positive(crest_volts, "crest_volts", "V")
    rated = limits.positive(rated_volts, "rated_volts", "V")
    least = DIODE_MARGIN * crest
    verdict = VERDICTS[judge(rated, least, least=True)]
    return said(
        "diode", verdict, rated, least, danger=rated < crest, crest=write(crest, "voltage"),
        rated=write_as(rated, "V"),
    )  # fmt: skip


@lru_cache(4096)
def dropper(circuit, supply, ohms_each, count, rated_watts, limiting_volts, air_celsius):
    """Judge a dropper of equal resistors in series: sound, and after each single short.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        As on its label; judged at its highest [V], [Hz].
    ohms_each : float
        Each resistor, as printed; its low end if its tolerance is to count [ohm].
    count : int
        How many in series [-].
    rated_watts : float
        Rating of each [W].
    limiting_volts : float
        Limiting element voltage of their type, DC or AC rms [V].
    air_celsius : float
        Air around them in the box [degC].

    Returns
    -------
    findings : tuple of Finding
        count; heat and volts with all parts sound, and a caution if a bare LED is pushed
        backwards; then for each short heat and volts, and a caution if the LED may die of it.

    Raises
    ------
    ValueError
        If a name is unknown, a value impossible, or the count no whole number.

    Notes
    -----
    Without a dimmer, which could only lessen the heat. The resistors stand in the line, on the AC
    side of a bridge: on its DC side a shorted diode shorts the mains past all of them. A single
    dropper fails: its own short leaves nothing in the way.

    References
    ----------
    IEC 61140 for one fault at a time; IEC 60115-1 for derating and limiting element voltage;
    their use here: common practice, no source.

    Examples
    --------
    Two of 82 kohm and 0.25 W behind a diode at 230 V pass while sound, not after one short.

    >>> from helpers.physics.mains import Supply
    >>> found = dropper("series_diode", Supply(230.0, 50.0), 82e3, 2, 0.25, 300.0, 40.0)
    >>> [(f.rule, f.after, round(f.figure, 3), f.limit) for f in found if f.verdict == "fail"]
    [('heat', 'dropper', 0.383, 0.25)]
    """
    count = limits.between(count, "count", "resistors", 1.0, 1000.0)
    if count != int(count):
        raise ValueError(f"count was read as {count:g}; it must be a whole number of resistors.")
    found = [barrier(count)]
    for fault in (faults.SOUND, *faults.shorts(circuit)):
        if fault == "dropper" and count == 1.0:
            continue
        left = _left(circuit, mains.highest(supply), ohms_each=ohms_each, count=count, fault=fault)
        found.append(heat(left.watts_each, rated_watts, air_celsius, fault))
        found.append(volts(left.volts_rms_each, limiting_volts, fault))
        if fault != faults.SOUND or left.led_reverse_amps_peak > 0.0:
            found += _led_after(left, fault)
    return tuple(found)


# Of one string each rating, in each air, is asked about: what it does is the same.
_left = lru_cache(4096)(faults.state)


def barrier(count):
    """Judge the number of resistors: one alone is no barrier.

    Parameters
    ----------
    count : int
        Resistors in series [-].

    Returns
    -------
    finding : Finding

    References
    ----------
    IEC 60335-1 clause 22.42 for protective impedance (from memory); for every dropper: common
    practice, no source.

    Examples
    --------
    >>> barrier(1).verdict, barrier(2).verdict
    ('fail', 'pass')
    """
    if count >= 2:
        return said("count", "pass", count, 2.0, number=count)
    return said("one", "fail", count, 2.0)


def _led_after(left, fault):
    """A caution if the LED may die: of a short, or bare in every cycle. It stays enclosed."""
    amps, limit, row = left.led_amps_peak, leds.LIMIT_AMPS, "LED after"
    if left.led_reverse_amps_peak > 0.0:
        amps, limit, row = left.led_reverse_amps_peak, 0.0, "LED backwards"
    if amps <= limit:
        return []
    words = {"amps": write_as(amps, "mA"), "most": write_as(limit, "mA")}
    return [said(row, "caution", amps, limit, after=fault, **words)]


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
    finding : Finding

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
    return said("capacitor class", "pass" if fits else "fail", kind=name)


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
    finding : Finding

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
    return said(
        "distances", "caution", surface, surface, air=write(air, "length"),
        impulse=write(impulse, "voltage"), surface=write(surface, "length"),
        mains=write(highest_volts, "voltage"), recurs=write(recurring_volts, "voltage"),
    )  # fmt: skip


def rating_for(watts, air_celsius=ratings.KNEE_CELSIUS, after=faults.SOUND):
    """Return the smallest common rating that `heat` passes.

    Parameters
    ----------
    watts, air_celsius, after
        As for `heat` [W], [degC], [-].

    Returns
    -------
    rated_watts : float
        The rating to buy [W].

    Raises
    ------
    ValueError
        If the power is negative or no common rating is enough.

    Notes
    -----
    The first of `ratings.COMMON_WATTS` that passes.

    References
    ----------
    As `heat`.

    Examples
    --------
    >>> rating_for(0.22), rating_for(0.22, 112.5), rating_for(0.22, after="dropper")
    (0.5, 1.0, 0.25)
    """
    for rated in ratings.COMMON_WATTS:
        if heat(watts, rated, air_celsius, after).verdict != "fail":
            return rated
    raise ValueError(
        f"watts was read as {watts:g} W; in air of {air_celsius:g} degC no common part of up to "
        f"{ratings.COMMON_WATTS[-1]:g} W is enough. Raise the resistance or share it among parts."
    )
