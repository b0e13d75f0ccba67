"""Every figure of a sizing sheet as plain data: the page and `size --json` both say these.

SI, as in physics; a reading of OL and a margin that nothing limits are None. Knows no page.
"""

from dataclasses import asdict

import numpy as np

from helpers.bench import predictions
from helpers.physics import circuits, faults, heat, insulation, phase_cut
from helpers.sizing import candidates, fields, report

PART_SECONDS = 120.0
"""Time for 63 % of the rise of a small resistor: common practice, no source [s]."""
MINUTES = (1.0, 2.0, 5.0, 15.0)
"""After switching on cold, when a temperature is told [min]."""
DIODES = {"series_diode": 1, "diode_across": 1, "bridge": 4}
PARTS = {
    "dropper": "one resistor", "led": "the LED", "second_led": "the second LED",
    "diode": "a diode", "neutral": "the neutral wire", "element": "the pot's element",
    "cut-out": "the pot's cut-out", "dimmer": "the dimmer",
}  # fmt: skip
HOW = {
    "short": "shorted", "drift": "at twice its value", "half wave": "passing one half only",
    "other half wave": "passing the other half",
}  # fmt: skip


def facts(plan):
    """Return every figure of a plan that its sheet shows.

    Parameters
    ----------
    plan : verdicts.Plan

    Returns
    -------
    facts : dict
        `rules` of the build that is judged, none under a stop or where the bin holds nothing that
        keeps them; `build`, `warm_up`, `faults`, `settings` and `readings` are None where a rule is
        broken: what breaks one is not to be built, and is not told how to be tested.

    Examples
    --------
    >>> from helpers.sizing import verdicts
    >>> from helpers.sizing.brief import Brief
    >>> told = facts(verdicts.plan(Brief()))
    >>> told["build"]["diodes"], told["faults"][0]["fault"], facts(verdicts.plan(
    ...     Brief(use_connection="fixed")))["build"]
    (4, 'one resistor shorted', None)
    """
    told = dict.fromkeys(("build", "warm_up", "faults", "settings", "readings"))
    told |= {"assumed": list(_assumed(plan.brief)), "rules": []}
    if plan.stops or not (plan.kept or plan.only):
        return told
    best, brief = plan.best(1)[0], plan.brief
    told["rules"] = [_rule(finding) for finding in report.one_a_rule(best.findings)]
    if plan.kept and best.circuit in circuits.CIRCUITS:
        build = predictions.of_plan(plan)
        told["build"] = _build(brief, best, build.each_wire)
        told["warm_up"] = _warm_up(brief, best)
        told["faults"] = [_fault(brief, best, *each) for each in faults.singles(best.circuit)]
        told["settings"] = [_setting(brief, window) for window in build.windows]
        told["readings"] = [_reading(row) for row in predictions.table(build)]
    return told


def _rule(finding):
    shown = report.figures(finding)
    return report.as_data(finding) | {"rule": finding.named, "shown": shown}


def _build(brief, best, each_wire):
    """What is bought and where it stands."""
    return {
        "circuit": best.circuit, "ohms_each": best.ohms_each, "count": best.count,
        "live_count": each_wire[0], "neutral_count": each_wire[1],
        "tolerance_percent": brief.bin_tolerance, "rated_watts": best.rated_watts,
        "type_volts": best.type_volts, "fusible_at": brief.bin_fusible_at,
        "surge_rated": brief.bin_surge_rated
        or any(f.rule == "impulse" and f.verdict != "pass" for f in best.findings),
        "impulse_volts": insulation.rated_impulse_volts(brief.supply_volts),
        "diodes": DIODES.get(best.circuit, 0), "diode_volts": brief.bin_diode,
        "leds": brief.led_count * (1 + (best.circuit == "two_leds")),
        "led_volts": brief.led_volts,
    }  # fmt: skip


def _warm_up(brief, best):
    """At full mains, its highest, with every tolerance at its worse end."""
    string = np.array([best.ohms_each]), np.array([float(best.count)])
    sound = candidates.worst(brief, best.circuit, *string).states[0]
    watts, total = float(sound.watts_each[0]), float(sound.watts[0])
    inside, outside = candidates.box_celsius(brief, total)
    part = watts, heat.kelvin_per_watt_of(best.rated_watts)
    final = heat.final_celsius(*part, inside)
    return {
        "watts_each": watts, "watts": total, "kelvin_per_watt": part[1],
        "seconds": PART_SECONDS, "inside_celsius": inside, "outside_celsius": outside,
        "final_celsius": final,
        "celsius_after": {
            f"{each:g}": heat.celsius_after(60.0 * each, *part, PART_SECONDS, inside)
            for each in MINUTES
        },
        "settled_seconds": heat.seconds_to(
            max(final - 1.0, inside), *part, PART_SECONDS, inside
        ),
    }  # fmt: skip


def _fault(brief, best, part, how):
    """What one fault does: heat at the highest mains and setting, light at both ends."""
    ends = [
        faults.after(
            best.circuit, part, how, brief.high, phase_cut.Dimmer("trailing", degrees),
            ohms_each=best.ohms_each, count=best.count, heater_ohms=brief.heater_ohms,
            drift=candidates.DRIFT, led_volts=brief.led_volts,
            breakdown_volts=candidates.breakdown_volts(brief),
        )
        for degrees in (brief.lowest_degrees, brief.highest_degrees)
    ]  # fmt: skip
    low, high = ends
    return {
        "fault": f"{PARTS[part]} {HOW.get(how, how)}",
        "light_lowest": str(low.light), "light_highest": str(high.light),
        "watts_each": float(high.watts_each),
        "heater_watts": [float(end.heater_watts) for end in ends],
        "gap_volts_peak": float(high.gap_volts_peak),
        "seen": {str(end.light) for end in ends} != {"as before"},
        "outside": part not in ("dropper", "led", "second_led", "diode"),
        "full_heat": (part, how) == ("dimmer", "short"),
    }  # fmt: skip


def _setting(brief, window):
    wave = phase_cut.wave(brief.supply, phase_cut.Dimmer("trailing", window))
    return {"conduction_degrees": float(window), "heat_percent": 100.0 * float(wave.power_fraction)}


def _reading(row):
    """A predicted reading; JSON knows no infinity."""
    value, low, high = (end if np.isfinite(end) else None for end in (row.value, *row.limits))
    if value is not None and abs(value) < 1e-3 * row.standard:
        value = 0.0  # what a sum has left of nothing
    kept = asdict(row) | {"value": value, "low": low, "high": high}
    del kept["limits"]
    return kept


def _assumed(brief):
    """Each field that nobody gave, and what was taken for it."""
    taken = {
        "supply_lowest": (brief.low.volts_rms, "voltage"),
        "supply_highest": (brief.high.volts_rms, "voltage"),
        "dimmer_suppression": (brief.suppression_farads, "capacitance"),
        "led_drop": (brief.led_volts / brief.led_count, "voltage"),
    }
    worse = {
        "dimmer_edge": "either edge, whichever is worse", "box_touch": "touchable",
        "use_connection": "fixed wiring", "heater_full_power_safe": "no",
        "dimmer_rated": "too small for the heater",
    }  # fmt: skip
    for each in fields.FIELDS:
        unknown = getattr(brief, each.name) in (None, "unknown")
        if each.name in fields.COMPARED_ALONE or not unknown and each.name not in brief.assumed:
            continue
        value, of = taken.get(each.name, (None, "")) if unknown else (None, "")
        said = worse.get(each.name, "") if unknown else brief.told(each.name)
        yield {
            "field": fields.key_of(each.name), "called": fields.called(each.name),
            "left_out": each.name in brief.left_out,
            "taken": said, "value": value, "of": of,
        }  # fmt: skip
