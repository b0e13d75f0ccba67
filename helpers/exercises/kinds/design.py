"""A question for a whole design: a brief of one's own and what is chosen for it, or why not.

The answer holds both, so that it can be marked again anywhere. What is right is what sizing says.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

from helpers import quantities
from helpers.exercises.kinds.answers import Answer, NotRead, Verdict
from helpers.exercises.kinds.kind import ByHand, Kind
from helpers.exercises.kinds.parts import judged, weighed
from helpers.physics import circuits, limits
from helpers.sizing import stops, verdicts
from helpers.sizing.brief import Brief, to_toml
from helpers.sizing.own import begun

NOT_BUILT = "do not build"
NO_PARTS = "no parts"
#: Why something is not built, by what sizing calls it.
REASONS = {
    "fixed wiring": "it is, or may be, fixed wiring",
    "full power": "the heater may not stay at full power unwatched, or nobody knows",
    "dimmer load": "the heater is too much for its dimmer, or nobody knows what that is made for",
    "socket load": "the heater is too much for its plug",
    "not known": "the supply, the heater's watts or a setting of the dimmer is not known",
    NO_PARTS: "no parts of the bin keep every rule",
}
#: What the light is said to tell; the first is true of every design.
TELLS = {
    "volts": "lit: volts stand here, hot or not; dark: nothing is known",
    "heat": "lit: the pot is heating; dark: it is not",
    "off": "dark: it is off and may be touched",
    "guards": "it switches off what is forgotten",
}
_NEVER_DEAD = (
    "dark never means dead. Whoever takes it so can touch the mains and be killed: unplug, and "
    "prove dead."
)
#: The six criteria: name, the rules that belong to it, and what to ask who has missed it.
CRITERIA = (
    ("no stop is ignored",
     ("fixed wiring", "full power", "dimmer load", "socket load", "least load",
      "capacitor dropper", "not known"),
     "What has to be answered before any part is chosen?"),
    ("it is seen at the lowest setting", ("light", "flicker"),
     "How much current is left at the lowest setting on the lowest mains, and what do room and "
     "distance ask for?"),
    ("the LED and diodes stay within their limits",
     ("LED", "LED mean", "LED after a fault", "pushed backwards", "reverse volts", "diode",
      "diode at off", "pulses"),
     "What do they get at full, on the highest mains, forwards and in reverse?"),
    ("each resistor stands its heat and its volts",
     ("count", "heat", "volts", "fuse", "film", "impulse", "air", "box"),
     "What is left after one of them shorts, and what must each then stand?"),
    ("nothing live can be touched", ("touch", "distances"),
     "What lies between a finger and each live part, also after one short?"),
    ("what the light tells is known",
     ("what it tells", "open element", "glow at off", "after a fault"),
     "Which faults leave it dark over live wires, and lit over a cold pot?"),
)  # fmt: skip
_MOST_STRINGS = 240  # of a bin that an answer may bring: marking stays quick


@dataclass(frozen=True)
class Chosen:
    """A design as read: a brief, and a circuit with its parts or why nothing is built."""

    brief: Brief
    circuit: str = ""
    ohms_each: float = 0.0
    count: int = 0
    rated_watts: float = 0.0
    type_volts: float = 0.0
    tells: str = ""
    reason: str = ""

    def typed(self):
        """Write it as the first line of an answer."""
        if self.reason:
            return f"{NOT_BUILT}; {self.reason}"
        parts = (
            self.circuit, quantities.write(self.ohms_each, "resistance"), str(self.count),
            quantities.write_as(self.rated_watts, "W"), quantities.write_as(self.type_volts, "V"),
            self.tells,
        )  # fmt: skip
        return "; ".join(parts).replace("\xa0", " ")


class Design(Kind):
    """A brief and the parts chosen for it, judged by every rule of sizing.

    The answer's first line is the choice; below it stands a brief as TOML, or nothing for the
    workshop's on the supply of the question.
    """

    name = "design"
    between = "\n"
    longest = 2000
    tries = 10  # whoever designs tries again; a worked answer would be for another pot
    most_answers = 15  # one that says that no parts would do has every string of its bin judged
    other_answers = "This is one choice for the workshop's pot; yours has numbers of its own."

    def read(self, typed, numbers):
        first, _, text = str(typed).strip().partition("\n")
        pieces = [piece.strip() for piece in first.split(";")]
        try:
            supply = numbers.supply
            brief = begun(text, supply) if text.strip() else _workshops(supply)
            chosen = _chosen(brief, pieces)
            if len(brief.ohms) * brief.bin_most > _MOST_STRINGS:
                raise ValueError("The bin makes too many strings to be marked: take a smaller one.")
            if chosen.circuit:
                _findings(chosen)
        except ValueError as error:
            hint = "" if len(pieces) in (2, 6) else f" {self.hint(numbers)}"
            raise NotRead(f"{error}{hint}") from None
        of = f"a heater of {quantities.write_as(brief.heater_power, 'W')} on {brief.supply.name}"
        return Answer(chosen, f"{chosen.typed()}; for {of}".replace("\xa0", " "))

    def mark(self, value, numbers):
        forbidden = stops.stops(value.brief)
        if value.reason:
            return _of_reason(value, [stop.rule for stop in forbidden])
        found = [*forbidden, stops.dimmer_least(value.brief), *_findings(value)]
        criteria = []
        for name, rules, ask in CRITERIA:
            own = [finding for finding in found if finding.rule in rules]
            criteria.append(judged(name, 1.0 / len(CRITERIA), own, ask))
        criteria[-1] = _told(criteria[-1], value.tells)
        verdict = weighed(criteria)
        if not verdict.right:
            return _with_misread(verdict, criteria[-1], value.tells)
        theirs = "".join(f" {each}" for each in stops.not_yours(value.brief))
        cautions = dict.fromkeys(finding.rule for finding in found if finding.verdict == "caution")
        return Verdict(
            1.0,
            f"Right. On paper all six are kept: {'; '.join(c.name for c in criteria)}. Cautions "
            f"that a competent person looks at: {', '.join(cautions)}.{theirs} Plan only, not "
            "permission to build or connect.",
        )

    def model(self, numbers):
        return best_for(_workshops(numbers.supply)).typed()

    def example(self, numbers):
        return "series_diode; 82 kΩ; 2; 0.6 W; 300 V; volts"

    def hint(self, numbers):
        return (
            "Choose circuit, each resistor, how many in series, its rating, the volts of its type, "
            f"and what the light tells; or “{NOT_BUILT}” and why. Your own brief goes with it."
        )

    def choices(self, numbers):
        return [
            f"circuits: {', '.join(circuits.CIRCUITS)}",
            *(f"{key} (what the light tells): {said}" for key, said in TELLS.items()),
            *(f"{NOT_BUILT}; {key}: {said}" for key, said in REASONS.items()),
        ]

    def guesses(self, numbers):
        """Return the model answer with one thing changed, reasons without cause, and stops."""
        best = self.model(numbers).split("; ")
        changed = [(0, "resistor_only"), (1, "10 kΩ"), (1, "1 MΩ"), (2, "1"), (4, "50 V")]
        yield from ("; ".join([*best[:at], new, *best[at + 1 :]]) for at, new in changed)
        yield from ("; ".join([*best[:-1], key]) for key in TELLS)
        yield from (f"{NOT_BUILT}; {key}" for key in REASONS)
        typed = "; ".join(best)
        yield f"{typed}\n{to_toml(_workshops(numbers.supply)).replace('plug-in', 'fixed')}"

    def by_hand(self, numbers):
        return ByHand(
            "For the workshop's pot. Write six pieces with semicolons between: circuit; each "
            "resistor; how many; rating of each; volts of its type; what the light tells. Or "
            f"“{NOT_BUILT};” and why.",
            places=[("", "")],
        )


def _workshops(supply):
    return Brief(supply_volts=supply.volts_rms, supply_hertz=supply.hertz)


@lru_cache(maxsize=32)
def best_for(brief):
    """Return what sizing puts first for a brief, as somebody may choose it.

    Parameters
    ----------
    brief : brief.Brief

    Returns
    -------
    chosen : Chosen
        Not built where something stops it, or no parts keep every rule.
    """
    plan = verdicts.plan(brief)
    if plan.stops or not plan.kept:
        return Chosen(brief, reason=plan.stops[0].rule if plan.stops else NO_PARTS)
    one = plan.best(1)[0]
    parts = one.circuit, one.ohms_each, one.count, one.rated_watts, one.type_volts
    return Chosen(brief, *parts, "volts")


@lru_cache(maxsize=256)
def _findings(chosen):
    """Return what every rule says of the parts; nothing where something stops them first."""
    parts = chosen.ohms_each, chosen.count, chosen.rated_watts, chosen.type_volts
    best = verdicts.mine(chosen.brief, chosen.circuit, *parts).best(1)
    return tuple(best[0].findings) if best else ()


def _chosen(brief, pieces):
    """Read the first line of an answer; raise ValueError with what to write."""
    if pieces[0].lower() == NOT_BUILT:
        reason = pieces[1].lower() if len(pieces) == 2 else ""
        if reason not in REASONS:
            raise ValueError(f"Not to build needs its reason, one of: {', '.join(REASONS)}.")
        return Chosen(brief, reason=reason)
    if len(pieces) != 6:
        raise ValueError(f"“{'; '.join(pieces)[:60]}” was read as {len(pieces)} of 6 pieces.")
    circuit, tells = pieces[0].lower().replace(" ", "_"), pieces[5].lower()
    circuits.named(circuit)
    if tells not in TELLS:
        raise ValueError(f"What the light tells is one of: {', '.join(TELLS)}.")
    units = (("resistance", 10.0, 1e8), ("power", 0.01, 100.0), ("voltage", 10.0, 1e4))
    typed = pieces[1], pieces[3], pieces[4]
    ohms, watts, volts = (
        limits.between(quantities.read(piece, of).value, of, "in SI units", least, most)
        for piece, (of, least, most) in zip(typed, units, strict=True)
    )
    if not (pieces[2].isascii() and pieces[2].isdigit() and 1 <= int(pieces[2][:4]) <= 12):
        raise ValueError(f"“{pieces[2][:12]}” in series was read; write a number from 1 to 12.")
    return Chosen(brief, circuit, ohms, int(pieces[2]), watts, volts, tells)


def _told(criterion, tells):
    """Add to what the rules say of the light what the answer says of it."""
    if tells == "volts":
        return criterion
    danger = _NEVER_DEAD if tells == "off" else ""
    return replace(criterion, passed=False, danger=danger, ask=CRITERIA[-1][2])


def _with_misread(verdict, criterion, tells):
    """Say that the light is misread, whatever other rule spoke; its danger before all others."""
    if tells == "volts" or verdict.slip == criterion.name:
        return verdict
    dangers = [criterion.danger, verdict.danger] if criterion.danger != verdict.danger else []
    said = " ".join(each[:1].upper() + each[1:] for each in dangers if each) or verdict.danger
    reply = f"{verdict.reply} What the light tells is misread as well. {criterion.ask}"
    return replace(verdict, reply=reply, danger=said)


def _of_reason(value, forbidden):
    """Mark that nothing is built: right for its own reason, and never a danger."""
    if value.reason in forbidden:
        return Verdict(
            1.0, f"Right. Nothing is built: {REASONS[value.reason]}. {stops.SWITCHES_NOTHING}"
        )
    if forbidden:
        reply = "Not to build is right, but for another reason. What stops it before any part?"
        return Verdict(0.5, reply, "another stop")
    if value.reason != NO_PARTS:
        reply = "Not to build is always allowed. But that does not stand in this brief: read it."
        return Verdict(0.0, reply, "no such stop")
    if best_for(value.brief).reason:
        return Verdict(1.0, f"Right. {REASONS[NO_PARTS].capitalize()}. {stops.SWITCHES_NOTHING}")
    reply = (
        "Not to build is always allowed, and something bought may do. But parts of this bin keep "
        "every rule: which circuit gives light enough for the least heat?"
    )
    return Verdict(0.0, reply, "parts would do")
