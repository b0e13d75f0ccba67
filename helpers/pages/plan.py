"""A plan as a page: what stops it first, whether it need be built, the best, why, what would help.

For the form, a lesson and a sheet; knows no widget.
"""

from helpers.exercises.bank import lessons
from helpers.exercises.wording import STAMP, Line
from helpers.figures import margins, value_map
from helpers.figures.words import KINDS, capital
from helpers.pages.page import Page
from helpers.quantities import write, write_as
from helpers.sizing import report, rules, stops, verdicts
from helpers.sizing.brief import to_toml
from helpers.sizing.by_setting import by_setting
from helpers.sizing.fields import called


def need_page(brief, kept=False):
    """Return where the questions on need end for a brief; what is open among them ends nowhere.

    Parameters
    ----------
    brief : brief.Brief
    kept : bool
        Whether what is answered is kept with the learner's own build [-].

    Returns
    -------
    page : Page
    """
    still = [name for name in stops.ASKED if name in brief.left_out]
    if not brief.cuts:
        still = [name for name in still if name != "dimmer_rated"]
    dangers = [stop for stop in stops.stops(brief) if not still or _known(stop, brief)]
    lines = [Line("danger", f"{stop}") for stop in dangers]
    if still:
        open_ones = ", ".join(map(called, still))
        lines.append(Line("note", f"Still open: {open_ones}. Until then no end is named."))
    else:
        numbers = list(lessons())[1:]
        lines.append(Line("verdict", f"{stops.need(brief)}"))
        then = f"{numbers[1]} to {numbers[-1]}"
        lines.append(Line("hint", f"The lessons: {numbers[0]} first, then {then}."))
    told = Line("hint", "What you answer here is kept with your own build on paper.")
    lines += [told] * kept
    return Page([*lines, Line("caution", STAMP)], name="cw-need")


def _known(stop, brief):
    """Whether a stop comes from an answer, not from a question that is still open."""
    asked = {"fixed wiring": "use_connection", "full power": "heater_full_power_safe",
             "socket load": "heater_power", "not known": ""}  # fmt: skip
    return asked.get(stop.rule, "dimmer_rated") not in brief.left_out


def plan_page(plan, quick=False):
    """Return a plan as a page, with its strip of margins, its map of values, and its brief.

    Parameters
    ----------
    plan : verdicts.Plan
    quick : bool
        Whether the map and what would help are left for later, since they take a second [-].

    Returns
    -------
    page : Page

    Notes
    -----
    Under a hard stop nothing is sized, and no circuit or part is named.
    """
    lines = [Line("danger", f"What stops it: {stop}") for stop in plan.stops]
    for each in plan.best(1)[0].failed if plan.judged else ():
        told = f"Danger: {each.danger} Of all candidates the first breaks {each.named}."
        lines += [Line("danger", told)] * bool(each.danger)
    lines.append(Line("verdict", f"Need it be built at all? {plan.need}"))
    lines.append(Line("caution", STAMP))
    lines += [Line("caution", f"{each}") for each in plan.cautions]
    drawn = []
    if plan.judged:
        lines += [*_ranking(plan), *_not_met(plan, quick)]
        best = plan.best(1)[0]
        drawn = [margins.strip(best.findings)]
        if not quick:
            drawn.append(value_map.value_by_setting(*by_setting(plan.brief, best)))
        lines += _cautions(best)
        lines += _rule_by_rule(best)
        lines.append(Line("folded", "The pictures in words: those of number 1."))
        lines += [Line("within", each.words) for each in drawn]
    brief = plan.brief
    lines += [Line("text", f"{capital(each.rule)}. {each}") for each in plan.general]
    lines.append(Line("heading", "What remains for a competent person"))
    lines += [Line("text", text) for text in verdicts.REMAINS]
    for said, names in (("Left out", brief.left_out), ("Not known", brief.unknown)):
        taken = "; ".join(f"{called(name)} {brief.told(name)}" for name in names)
        lines += [Line("folded", f"{said}: taken as {taken}.".replace('"', ""))] * bool(taken)
    lines += [Line("folded", "As TOML: to copy."), Line("code", to_toml(brief).rstrip())]
    return Page(lines, "".join(each.picture for each in drawn), name="cw-plan")


def _ranking(plan):
    best = plan.best(report.SHOWN)
    kept = f"{plan.kept} break no rule" if plan.kept else "each breaks a rule"
    kept += ", with parts that are not all yours" * bool(plan.brief.workshops)
    yield Line("heading", f"Of {plan.size} candidates {kept}. The first of the ranking:")
    for place, each in enumerate(best, 1):
        light = next(f for f in each.findings if f.rule == "light")
        behind = f" It is {each.why_behind(best[place - 2])}." if place > 1 else ""
        breaks = ", ".join(dict.fromkeys(f.named for f in each.failed))
        yield Line(
            "text",
            f"{place}. {capital(KINDS[each.circuit])}, {report.string_of(each)}: {each.verdict}"
            f"{': ' * bool(breaks)}{breaks}. Noticed from {write(light.figure, 'length', 2)}, heat "
            f"{write_as(each.keys[-2], 'W', 2)}.{behind}",
        )
    yield from (Line("text", said) for said in report.others(plan))


def _not_met(plan, quick):
    broken = plan.nearest_breaks
    nearest = f", {report.nearest(plan)}, " if broken and not plan.only else " "
    for each in broken:
        told = f"misses by least{nearest}breaks {each.named}: {report.by_how_much(each)}."
        told = f"Of all circuits and parts, the one that {told}"
        yield Line("danger", f"Danger: {each.danger} {told}") if each.danger else Line("note", told)
    if broken:
        helps = "being tried, a moment" if quick else "; ".join(plan.helps)
        helps = helps or "none of those tried, one at a time"
        yield Line("text", f"What would help, one change alone: {helps}.")


def _cautions(candidate):
    """What a competent person looks at on the first one: in plain sight, for no fold hides it."""
    found = [f for f in report.one_a_rule(candidate.findings) if f.verdict == "caution"]
    yield Line("heading", f"Number 1, to be looked at: {len(found)} cautions")
    yield from (Line("text", f"{capital(each.named)}. {each.reason}") for each in found)


def _rule_by_rule(candidate):
    """Of each rule the finding that matters most, what is broken first, folded behind its name."""
    found = report.one_a_rule(candidate.findings)
    for one in sorted(found, key=lambda each: -rules.VERDICTS.index(each.verdict)):
        danger = f"Danger: {one.danger} " if one.danger else ""
        yield Line(
            "folded",
            f"{capital(one.named)}, {report.verdict(one)}: {danger}{one.reason} "
            f"Source: {one.source}",
        )
