"""A plan as lines of text and as plain data; what stands above all of it comes from who asks."""

from dataclasses import asdict

from helpers.physics import circuits
from helpers.quantities import write, write_as
from helpers.sizing import candidates, rules, verdicts
from helpers.sizing.brief import to_toml
from helpers.sizing.fields import key_of

SHOWN = 3
_OF_UNIT = {
    "V": "voltage", "A": "current", "W": "power", "m": "length", "°C": "temperature",
    "%": "percent", "-": "ratio",
}  # fmt: skip
_BUILT = {
    "neon": "neon lamp behind resistors",
    "capacitor_dropper": "capacitor with two bleeders, surge resistors, bridge and LED",
}
_NARROW = ("rule", "figure", "limit", "verdict")


def lines(plan, shown=SHOWN):
    """Return a plan as lines of plain text.

    Parameters
    ----------
    plan : verdicts.Plan
    shown : int
        How many of the best candidates are listed [-].

    Returns
    -------
    lines : list of str

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> lines(verdicts.plan(Brief()))[0]
    'Need it be built at all?'
    """
    brief, said = plan.brief, ["Need it be built at all?", f"  {plan.need}", ""]
    said += ["The brief", *(f"  {line}" for line in in_short(brief)), *_taken(brief), ""]
    said += [f"  {_named(each)}" for each in plan.cautions] + [""] * bool(plan.cautions)
    if plan.stops:
        said += ["What stops it", *(f"  {_named(stop)}" for stop in plan.stops)]
        said += [f"  {plan.listed} strings are listed by the bin; none was computed.", ""]
    else:
        said += [*_ranking(plan, shown), *_first(plan), *_not_met(plan)]
    said += ["Besides", *(f"  {_named(each)}" for each in plan.general), ""]
    return [
        *said,
        "What remains for a competent person",
        *(f"  {each}" for each in verdicts.REMAINS),
    ]


def in_short(brief):
    if {"supply_volts", "supply_hertz"} & set(brief.assumed):
        yield (
            f"Caution: nobody named the supply, so {brief.supply.name} is taken. On another one "
            "every figure here is wrong, and a resistor may burn."
        )
    low, high = (write_as(each.volts_rms, "V") for each in (brief.low, brief.high))
    yield f"{brief.supply.name}, {low} to {high}; a heater of {write_as(brief.heater_power, 'W')}."
    if brief.cuts:
        unknown = ", taken for a usual one," * (brief.dimmer_suppression is None)
        yield (
            f"Dimmer: {brief.dimmer_edge} edge, {brief.taken('dimmer_lowest')} to "
            f"{brief.taken('dimmer_highest')} by {brief.dimmer_given_by}; across its switch "
            f"{write(brief.suppression_farads, 'capacitance')}{unknown} stand."
        ).replace('"', "")
    yield (
        f"LED: {brief.led_count} {brief.led_colour}, to be noticed from "
        f"{write(brief.seen_distance, 'length')} at {brief.seen_lux:g} lx; {brief.box_touch}."
    )


def _taken(brief):
    for said, names in (("Left out", brief.left_out), ("Not known", brief.unknown)):
        taken = "; ".join(f"{key_of(name)} {brief.taken(name)}" for name in names)
        if taken:
            yield f"  {said}, and taken as: {taken}.".replace('"', "")


def _ranking(plan, shown):
    yield (
        f"Strings in circuits: {plan.listed}, {plan.computed} of them computed, each with "
        f"{plan.conditions:,} conditions or more: {plan.points:,} points. "
        f"With each rating of the bin: {plan.size} candidates. {plan.kept} break no rule."
    )
    best = plan.best(shown)
    rows = [("", "circuit", "resistors", "margin", "seen from", "heat", "verdict")]
    for place, each in enumerate(best, 1):
        margin, _, watts, _ = each.keys[-4:]
        light = next(f for f in each.findings if f.rule == "light")
        rows.append((
            f"{place}", each.circuit, string_of(each), f"{-margin:.1f}",
            write(light.figure, "length", 2), write_as(watts, "W", 2), each.verdict,
        ))  # fmt: skip
    yield from _table(rows)
    for place, (better, each) in enumerate(zip(best, best[1:], strict=False), 2):
        yield f"  Number {place} is {each.why_behind(better)}."
    yield from (f"  {said}" for said in others(plan))
    yield ""


def others(plan):
    """Say how the best of each circuit stands that is compared alone: what it breaks, by how much.

    Parameters
    ----------
    plan : verdicts.Plan
    """
    for name, part in zip(candidates.KINDS, ("neon", "bin"), strict=True):
        asked = plan.brief.compares(part) and not plan.only
        if asked and (one := plan.first_of(name)):
            worst = one_a_rule(one.failed)
            broken = "; ".join(f"{each.named}, {by_how_much(each)}" for each in worst)
            how = f"breaks {broken}" if broken else f"{one.verdict}; no sheet is made of it"
            danger = rules.worst(one.findings).danger
            danger = f"Danger: {danger} " if danger else ""
            yield f"{danger}The best {_BUILT[name]}: {string_of(one)}: {how}."


def nearest(plan):
    """Say which candidate misses by least, of all circuits: circuit and resistors.

    Parameters
    ----------
    plan : verdicts.Plan
        One in which each breaks a rule.
    """
    one = plan.first_of(None)
    return f"{one.circuit.replace('_', ' ')} of {string_of(one)}"


def string_of(candidate):
    """Write the resistors of a candidate: number, value, rating and volts of their type."""
    each, rated = write(candidate.ohms_each, "resistance"), write_as(candidate.rated_watts, "W")
    string = f"{candidate.count} x {each} {rated} {write_as(candidate.type_volts, 'V')}"
    if not candidate.farads:
        return string
    bleeder = write(candidate.bleeder_ohms, "resistance")
    return f"{write(candidate.farads, 'capacitance')}, {string}, bleeders 2 x {bleeder}"


def _first(plan):
    """Rule by rule on the best candidate: of each rule the finding that matters most."""
    best = plan.best(1)[0]
    built = _BUILT.get(best.circuit) or str(circuits.named(best.circuit))
    yield f"Number 1, rule by rule: {built}; its resistors in the line."
    rows, cautions = [_NARROW], []
    for one in one_a_rule(best.findings):
        rows.append((one.named, *figures(one), verdict(one)))
        if one.verdict != "pass":
            cautions.append(f"  {_named(one)}")
    yield from _table(rows)
    yield from [*cautions, ""]


def verdict(finding):
    """Write a verdict, and whether it rests on the workshop's parts: 'pass, not yours'."""
    return finding.verdict + ", not yours" * bool(finding.not_yours)


def _named(finding):
    return f"{finding.rule[0].upper()}{finding.rule[1:]}. {finding}"


def one_a_rule(findings):
    """Return of each rule the finding that matters most, in the order of the rules.

    Parameters
    ----------
    findings : list of rules.Finding

    Returns
    -------
    findings : list of rules.Finding
    """
    by_rule = {}
    for finding in findings:
        by_rule.setdefault(finding.rule, []).append(finding)
    return [rules.worst(found) for found in by_rule.values()]


def figures(finding):
    """Return figure and limit of a finding as they are written; '' where there is none."""
    return [
        write(value, _OF_UNIT[finding.unit]) if value or finding.unit != "-" else ""
        for value in (finding.figure, finding.limit)
    ]


def _not_met(plan):
    broken, changes = plan.nearest_breaks, plan.helps
    if not broken:
        return
    yield f"Every candidate breaks a rule. What the nearest one breaks, {nearest(plan)}:"
    for each in broken:
        yield f"  {each.named}: {by_how_much(each)}."
    helps = "; ".join(changes) or "none of those tried, one at a time"
    yield f"  One change that would do: {helps}."
    yield ""


def by_how_much(finding):
    """Return by how much a finding misses its limit, in words.

    Parameters
    ----------
    finding : rules.Finding

    Examples
    --------
    >>> by_how_much(rules.heat(0.5, 0.5, 70.0)).replace("\\xa0", " ")
    '500 mW where 250 mW is the most, 2 times as much'
    """
    figure, limit = figures(finding)
    end = "least" if finding.least else "most"
    if finding.rule == "count" or not 0.0 < finding.margin < 1.0:
        if not figure:
            return "not known or not made for it"
        return f"{figure} where {limit} is the {'least' if finding.rule == 'count' else end}"
    if finding.least:
        said = f"{figure} where {limit} is the least, {write(finding.margin, 'ratio', 2)} of it"
        if finding.rule == "light":  # it falls with the square of the distance
            more = write(finding.margin**-2.0, "ratio", 2)
            said += f": {more} times as much light is wanted"
        return said
    over = 1.0 / finding.margin - 1.0
    if finding.unit == "°C":  # degrees Celsius make no ratio
        much = f"{finding.figure - finding.limit:.0f} K too much"
    elif over < 0.2:
        much = f"{write(100.0 * over, 'percent', 2)} too much"
    else:
        much = f"{write(1.0 + over, 'ratio', 2)} times as much"
    return f"{figure} where {limit} is the most, {much}"


def _table(rows):
    widths = [max(len(row[at]) for row in rows) for at in range(len(rows[0]))]
    for row in rows:
        cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=True))
        yield "  " + "  ".join(cells).rstrip()


def data(plan, shown=SHOWN):
    """Return a plan as plain data, for JSON.

    Parameters
    ----------
    plan : verdicts.Plan
    shown : int
        How many of the best candidates stand with all findings [-].

    Returns
    -------
    data : dict

    Examples
    --------
    >>> from helpers.sizing.brief import Brief
    >>> sorted(data(verdicts.plan(Brief())))[:4]
    ['best', 'brief', 'broken', 'candidates']
    """
    broken, changes = plan.nearest_breaks, plan.helps
    best = plan.best(shown)
    why = ["", *(each.why_behind(better) for better, each in zip(best, best[1:], strict=False))]
    why = why[: len(best)]
    return {
        "brief": to_toml(plan.brief),
        "left_out": list(plan.brief.left_out),
        "need": as_data(plan.need),
        "stops": [as_data(each) for each in plan.stops],
        "general": [as_data(each) for each in (*plan.cautions, *plan.general)],
        **{name: getattr(plan, name) for name in ("listed", "computed", "conditions", "points")},
        "candidates": plan.size,
        "kept": plan.kept,
        "best": [
            {
                "circuit": each.circuit, "ohms_each": each.ohms_each, "count": each.count,
                "rated_watts": each.rated_watts, "type_volts": each.type_volts,
                "verdict": each.verdict, "behind": reason,
                "farads": each.farads, "bleeder_ohms": each.bleeder_ohms,
                "findings": [as_data(finding) for finding in each.findings],
            }
            for each, reason in zip(best, why, strict=True)
        ],
        "others": list(others(plan)),
        "broken": [as_data(each) | {"by": by_how_much(each)} for each in broken],
        "would_help": changes,
        "remains": list(verdicts.REMAINS),
    }  # fmt: skip


def as_data(finding):
    """A finding as a dictionary; JSON knows no infinite margin, so that one is left empty."""
    margin = finding.margin
    kept = asdict(finding) | {"margin": margin if margin < float("inf") else None}
    return kept | {"text": str(finding).replace("\xa0", " ")}
