"""From a brief to a plan: every candidate judged by every rule, ranked, with its reasons.

Physics says what happens (`candidates`), the rules judge (`rules`); here both meet. A verdict says
which rules passed and what remains for a competent person, never more.
"""

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from helpers.physics import circuits, faults, hazards, limits, phase_cut
from helpers.quantities import write_as
from helpers.sizing import candidates, other_circuits, rules, stops
from helpers.sizing.fields import called
from helpers.sizing.judging import Judged
from helpers.sizing.typed import BriefError

_PIECE = 200  # strings worked on at a time; bounds the memory, not the speed
REMAINS = tuple(
    each.format(residual=f"{1e3 * hazards.RESIDUAL_AMPS_RMS:.0f}") for each in rules.HELD["remains"]
)
#: Which change to try where nothing passes: in words, and as fields of the brief.
CHANGES = (
    ("a box whose LED and leads truly lie wholly behind a closed insulating window (look at it: a "
     "choice here closes nothing)", lambda b: {"box_touch": "closed window"}),
    ("an LED four times as bright", lambda b: {"led_intensity": 4.0 * b.led_intensity}),
    ("a place from which it need be seen half as far away",
     lambda b: {"seen_distance": max(0.5 * b.seen_distance, 0.05)}),
    ("full mains as the lowest setting", lambda b: {"dimmer_lowest": b.dimmer_highest}),
    ("resistors of 1 W that stand 500 V", lambda b: {"bin_ratings": (1.0,), "bin_volts": (500.0,)}),
    ("values from 1 kΩ to 1 MΩ",
     lambda b: {"bin_smallest": min(1e3, b.bin_smallest), "bin_largest": max(1e6, b.bin_largest)}),
    ("room for four resistors in series", lambda b: {"bin_most": max(4, b.bin_most)}),
    ("air of at most 40 °C in the box", lambda b: {"box_air": min(40.0, b.box_air)}),
    ("a box twice as long, wide and high",
     lambda b: {f"box_{side}": min(2.0 * getattr(b, f"box_{side}"), 2.0)
                for side in ("length", "width", "height")}),
    ("diodes for 1000 V", lambda b: {"bin_diode": max(1000.0, b.bin_diode)}),
)  # fmt: skip
_NAMED = {"dropper": "a resistor", "led": "the LED", "second_led": "the second LED",
          "diode": "a diode"}  # fmt: skip
_KEYS = ("rules broken", "circuit", "cautions", "margin", "light", "heat", "number of parts")


def _after_faults(brief, circuit, ohms_each, count):
    """What the light says after each single fault: a caution, for it never tells of dead wires."""
    if circuit in candidates.KINDS:
        dark, cold = other_circuits.dark_and_cold(circuit)
    else:
        dark, cold = _dark_and_cold(brief, circuit, ohms_each, count)
    return rules.said("after a fault", "caution", dark=", ".join(dark), cold=", ".join(cold))


def _dark_and_cold(brief, circuit, ohms_each, count):
    """After which single faults it is dark, and after which lit over a cold pot: words."""
    dimmer, dark, cold = phase_cut.Dimmer("trailing", brief.highest_degrees), [], []
    for part, how in faults.singles(circuit):
        left = faults.after(
            circuit, part, how, brief.supply, dimmer, heater_ohms=brief.heater_ohms,
            breakdown_volts=candidates.breakdown_volts(brief), led_volts=brief.led_volts,
            # A short of all that limits the current leaves nothing that could be told.
            ohms_each=ohms_each, count=max(count, 2),
        )  # fmt: skip
        if left.light == "dark":
            dark.append(f"{_NAMED.get(part, part)} {how.replace('short', 'shorted')}")
        elif left.heater_watts == 0.0:
            cold.append(f"{part} {how}")
    return dark, cold


def _on_whose(finding, workshops):
    """Add to a finding which of the workshop's parts or places it rests on, if any."""
    rests = rules.HELD["rests"].get(finding.rule, ())
    if not (names := tuple(name for name in rests if name in workshops)):
        return finding
    reason = f"{finding.reason} The workshop's, not yours: {', '.join(map(called, names))}."
    return replace(finding, reason=reason, not_yours=names)


@dataclass(frozen=True)
class Candidate:
    """One string in one circuit with one rating, and every finding on it."""

    circuit: str
    ohms_each: float
    count: int
    rated_watts: float
    type_volts: float
    keys: tuple
    findings: list
    farads: float = 0.0
    bleeder_ohms: float = 0.0

    @property
    def verdict(self):
        """The worst of its verdicts."""
        return rules.VERDICTS[max(rules.VERDICTS.index(f.verdict) for f in self.findings)]

    @property
    def failed(self):
        """The findings that break a rule."""
        return [finding for finding in self.findings if finding.verdict == "fail"]

    def why_behind(self, better):
        """Say what puts this one behind another: the first thing in the ranking that differs."""
        if self.keys[1] > better.keys[1]:
            return "behind since it is compared alone: no sheet or bench log is made of it"
        for name, own, other in zip(_KEYS, self.keys, better.keys, strict=True):
            if own != other:
                own, other = abs(own), abs(other)
                if name in ("margin", "light"):
                    own, other = f"{own:.1f} times its limit", f"{other:.1f} times"
                elif name == "heat":
                    digits = 2 + (write_as(own, "W", 2) == write_as(other, "W", 2))
                    own, other = write_as(own, "W", digits), write_as(other, "W", digits)
                else:
                    own, other = f"{own:.0f}", f"{other:.0f}"
                return f"behind by its {name}: {own} against {other}"
        return "alike in all that is ranked, and later in the bin"


class Plan:
    """What a brief comes to: need, stops, and every candidate judged and ranked."""

    def __init__(self, brief, only=None):
        self.brief, self.only = brief, only
        self.need, self.stops = stops.need(brief), stops.stops(brief)
        self.cautions = stops.settings(brief) + ([] if self.stops else stops.not_yours(brief))
        self.general = [stops.dimmer_least(brief)]
        self.general += [stops.capacitor_dropper(brief)] * brief.compares("bin")
        names = [only[0]] if only else [*circuits.CIRCUITS, *candidates.KINDS]
        strings = {name: only[1:] if only else candidates.strings(brief, name) for name in names}
        self.listed = sum(len(each[0]) for each in strings.values())
        if brief.cuts:
            strings.pop(candidates.CAPACITOR, None)  # forbidden there: see `general`
        self.computed = 0 if self.stops else sum(len(each[0]) for each in strings.values())
        self.judged = []
        if not self.stops:
            self.judged = [
                Judged(brief, name, *(each[at : at + _PIECE] for each in string))
                for name, string in strings.items() for at in range(0, len(string[0]), _PIECE)
            ]  # fmt: skip
        self.conditions = min((j.worst.conditions for j in self.judged), default=0)
        self.points = sum(j.worst.conditions * j.shape[0] for j in self.judged)

    @cached_property
    def _keys(self):
        return [
            np.concatenate(each) for each in zip(*(j.ranked_by() for j in self.judged), strict=True)
        ]

    @cached_property
    def order(self):
        """Places of all candidates, best first; ties in the order of circuit, number and value."""
        return np.lexsort(self._keys[::-1]) if self.judged else np.empty(0, int)

    @property
    def size(self):
        """How many candidates were judged, a string with each rating as one."""
        return len(self.order)

    @property
    def kept(self):
        """How many candidates break no rule."""
        return int(np.sum(self._keys[0] == 0)) if self.judged else 0

    def candidate(self, place):
        """Return one candidate with all its findings.

        Parameters
        ----------
        place : int
            One of `order` [-].
        """
        keys = tuple(float(key[place]) for key in self._keys)
        for judged in self.judged:
            if place < (size := int(np.prod(judged.shape))):
                break
            place -= size
        string, rating = divmod(int(place), judged.shape[1])
        found, brief = judged.worst, self.brief
        ohms, count = float(found.ohms_each[string]), int(found.count[string])
        findings = [column.finding(string, rating) for column in judged.columns]
        if count == 1:  # its short leaves no string: that one fails by its number
            findings = [each for each in findings if each.after != "dropper"]
        mains_volts = brief.high.volts_rms
        recurring = max(float(found.open_volts[string]), np.sqrt(2.0) * mains_volts)
        findings += [
            _after_faults(brief, judged.circuit, ohms, count),
            rules.distances(brief.supply, mains_volts, recurring),
        ]
        workshops = brief.workshops
        findings = [_on_whose(each, workshops) for each in findings]
        return Candidate(
            judged.circuit, ohms, count, brief.bin_ratings[rating], brief.bin_volts[rating],
            keys, findings,
            *(float(each[string]) for each in (found.farads, found.bleeders) if each is not None),
        )  # fmt: skip

    def first_of(self, circuit):
        """Return the first candidate of one circuit that breaks no rule, or else the nearest.

        None if none of it was judged. Nearest is which breaks the fewest rules, and of those misses
        its worst limit by least.
        """
        own = [np.full(each.shape, circuit in (None, each.circuit)).ravel() for each in self.judged]
        if not own or not np.any(own := np.concatenate(own)):
            return None
        first = self.order[np.argmax(own[self.order])]
        if self._keys[0][first]:
            short = np.concatenate([judged.short.ravel() for judged in self.judged])
            fails, *_, watts, _ = self._keys
            first = np.lexsort((watts, -short, fails, ~own))[0]
        return self.candidate(first)

    def best(self, number=3):
        """Return the first candidates of the ranking."""
        return [self.candidate(place) for place in self.order[:number]]

    @cached_property
    def nearest_breaks(self):
        """What the nearest candidate breaks; empty where one breaks no rule."""
        return [] if self.kept or not self.judged else self.first_of(None).failed

    @cached_property
    def helps(self):
        """Which changes of the brief, one alone, leave a candidate; each is tried, not guessed."""
        return [words for words in self.trying() if words]

    def trying(self):
        """Try one change after the other: its words where it leaves a candidate, else ''."""
        for words, change in CHANGES if self.nearest_breaks else ():
            try:
                brief = replace(self.brief, **change(self.brief))
            except BriefError:
                continue
            yield words if brief != self.brief and Plan(brief, self.only).kept else ""


def plan(brief):
    """Return the plan of a brief.

    Parameters
    ----------
    brief : brief.Brief

    Returns
    -------
    plan : Plan

    Notes
    -----
    Under a hard stop candidates are listed and not computed.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> workshop = plan(Brief())
    >>> workshop.need.verdict, workshop.listed, workshop.kept > 0
    ('caution', 616, True)
    """
    return Plan(brief)


def mine(brief, circuit, ohms_each, count, rated_watts, type_volts):
    """Return the plan of a build as it is: one candidate under the same rules.

    Parameters
    ----------
    brief : brief.Brief
        All but the parts.
    circuit : str
        A key of `circuits.CIRCUITS`, or neon [-].
    ohms_each, count, rated_watts, type_volts : float
        Each resistor, how many in series, its rating, what its type stands [ohm], [-], [W], [V].

    Returns
    -------
    plan : Plan

    Raises
    ------
    ValueError
        If the circuit is unknown or a value impossible.

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> built = mine(Brief(), "series_diode", 82e3, 1, 0.6, 300.0)
    >>> [finding.rule for finding in built.best()[0].failed][:1]
    ['count']
    """
    if circuit == "capacitor_dropper":
        raise ValueError(str(stops.capacitor_dropper(brief)))
    if circuit != candidates.NEON:
        circuits.named(circuit)
    limits.positive(ohms_each, "ohms_each", "ohm", "Without a resistor the LED is destroyed.")
    if limits.between(count, "count", "resistors", 1.0, 12.0) != int(count):
        raise ValueError(f"count was read as {count:g}; it must be a whole number of resistors.")
    own = {"bin_ratings": (rated_watts,), "bin_volts": (type_volts,)}
    still = {
        each: tuple(name for name in getattr(brief, each) if name not in own)
        for each in ("left_out", "unknown")
    }
    brief = replace(brief, **own, **still)
    return Plan(brief, (circuit, np.array([float(ohms_each)]), np.array([float(count)])))
