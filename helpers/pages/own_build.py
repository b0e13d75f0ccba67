"""A learner's own build on paper, as far as the lessons have come: what stands, what is open.

Says of it what sizing says. Knows no file and no control.
"""

from contextlib import suppress
from dataclasses import replace
from functools import lru_cache

from helpers.exercises.wording import STAMP, Line
from helpers.figures.words import KINDS
from helpers.pages.page import Page
from helpers.physics import mains
from helpers.quantities import write, write_as
from helpers.sizing import rules, stops, verdicts
from helpers.sizing.brief import FIELDS, Brief, to_toml
from helpers.sizing.fields import COMPARED_ALONE, called
from helpers.sizing.own import begun
from helpers.sizing.typed import BriefError

#: Which lesson asks for which fields of a brief.
ASKED_IN = {
    "02": (
        "use_connection", "use_by_others", "use_trouble", "supply_volts", "supply_hertz",
        "heater_power", "heater_full_power_safe", "heater_long_use", "dimmer_rated", "led_colour",
        "led_count", "led_drop", "led_limit",
    ),
    "03": ("supply_lowest", "supply_highest", "led_reverse", "bin_diode"),
    "04": (
        "box_air", "box_length", "box_width", "box_height", "bin_series", "bin_smallest",
        "bin_largest", "bin_most", "bin_tolerance", "bin_ratings", "bin_volts",
    ),
    "05": (
        "dimmer_edge", "dimmer_given_by", "dimmer_lowest", "dimmer_highest", "dimmer_least",
        "dimmer_suppression",
    ),
    "06": (
        "seen_lux", "seen_distance", "seen_angle", "led_intensity", "led_at", "led_half_angle",
    ),
    "07": COMPARED_ALONE,
    "08": ("box_touch", "bin_surge_rated", "bin_fusible_at"),
}  # fmt: skip
#: What is told of the first candidate after a lesson: rules by name.
_TOLD = {
    "04": ("heat", "volts"), "05": ("glow at off", "what it tells"), "06": ("light", "flicker"),
    "07": ("count", "diode"), "08": ("touch", "after a fault"),
}  # fmt: skip
_FIRST_CANDIDATES = "04"  # before that lesson no heat has been taught
_WINDOW_ASKED_IN, LAST = "08", "10"


def asked_in(number):
    """Return the fields that a lesson asks for, None if it asks nothing; the last asks for all."""
    return tuple(each.name for each in FIELDS) if number == LAST else ASKED_IN.get(number)


def own_text(session):
    """Return a learner's own brief as it is kept; the workshop copy has the workshop's."""
    if session.workshop_copy:
        supply = session.supply
        return to_toml(Brief(supply_volts=supply.volts_rms, supply_hertz=supply.hertz))
    return session.store.own_brief(session.settings.learner)


def own_brief(session):
    """Return a learner's own brief, as far as it goes, on the supply of the settings.

    Raises
    ------
    BriefError
        If it cannot be read or used; the text says what to do.
    """
    return begun(own_text(session), session.supply)


#: Which field of a brief sets which control of an explorer.
_SETS = {
    "edge": "dimmer_edge", "angle_degrees": "dimmer_lowest", "farads": "dimmer_suppression",
    "heater_watts": "heater_power", "colour": "led_colour", "room_lux": "seen_lux",
    "metres": "seen_distance", "off_axis_degrees": "seen_angle", "ambient_celsius": "box_air",
}  # fmt: skip


def explorer_state(session, takes):
    """Return what a learner's own brief says of an explorer's controls; nothing for what is open.

    Parameters
    ----------
    session : Session
    takes : tuple of str
        Keys of controls; without an edge among them, an angle is that of a leading one.

    Returns
    -------
    state : dict
    """
    with suppress(BriefError):
        brief = own_brief(session)
        said = {key: getattr(brief, _SETS[key]) for key in takes if _SETS[key] not in brief.assumed}
        if "edge" in said and said["edge"] != "trailing":
            said["edge"] = "leading"
        if "angle_degrees" in said:
            on = brief.lowest_degrees
            said["angle_degrees"] = on if said.get("edge") == "trailing" else 180.0 - on
        return {key: value for key, value in said.items() if value is not None}
    return {}


@lru_cache(maxsize=8)
def _planned(text, supply, windowed):
    """Return the plan of a brief, as if its LED lay behind a window where that is still open."""
    brief = begun(text, supply)
    taken = {"box_touch": "closed window"} if windowed and "box_touch" in brief.left_out else {}
    return verdicts.plan(replace(brief, **taken))


def own_build_page(session, number, news=()):
    """Return the page of a learner's own build after a lesson.

    Parameters
    ----------
    session : Session
    number : str
        The lesson, such as "05".
    news : sequence of Line
        What became of what was just typed.

    Returns
    -------
    page : Page
    """
    head = Line("heading", f"My build on paper, as far as lesson {number}")
    try:
        lines = list(_lines(own_text(session), session.supply, number))
    except BriefError as error:
        lines = [Line("note", str(error))]
    return Page([head, *news, *lines, Line("note", STAMP)], name="cw-own")


def _lines(text, supply, number):
    brief = begun(text, supply)
    forbidden = stops.stops(brief)
    for stop in forbidden:
        yield Line("danger", f"What stops it: {stop.rule}. Danger: {stop.danger} {stop.reason}")
    yield Line(
        "text", stops.SWITCHES_NOTHING if forbidden else f"First: {stops.need(brief).reason}"
    )
    for lesson, names in ASKED_IN.items():
        if names and lesson <= number:
            yield Line("option", f"Lesson {lesson}. {_how_it_stands(brief, names)}")
    yield Line(
        "hint",
        "What is open is taken as in the workshop until you say, and so is what later lessons ask "
        "for: those parts are not yours. Of what could hurt somebody, unknown counts as the worse.",
    )
    if not forbidden:
        yield from (Line("text", said) for said in _so_far(brief, number, text, supply))


def _how_it_stands(brief, names):
    stands = [f"{called(n)}: {_shown(brief, n)}" for n in names if n not in brief.left_out]
    still = [called(name) for name in names if name in brief.left_out]
    if len(still) == len(names):
        return "Open: all of it."
    return f"{'; '.join(stands)}." + f" Open: {', '.join(still)}." * bool(still)


def _shown(brief, name):
    value = getattr(brief, name)
    said = isinstance(value, bool) and name not in brief.unknown
    return ("no", "yes")[value] if said else brief.typed(name).replace('"', "")


def _so_far(brief, number, text, supply):
    if number == "02":
        yield (f"So far: the element has {write(brief.heater_ohms, 'resistance')}. {_drop(brief)}")
    elif number < _FIRST_CANDIDATES:
        yield (
            f"So far: the mains reaches {write(brief.high.volts_rms, 'voltage')} rms, and its "
            f"crest {write(mains.peak(brief.high.volts_rms), 'voltage')}."
        )
    else:
        # Asked for last, and without it nothing would pass.
        plan = _planned(text, supply, number < _WINDOW_ASKED_IN)
        yield _counted(brief, plan)
        if number == "07":
            each = (f"{KINDS[j.circuit]} {int((j.fails == 0).sum())}" for j in plan.judged)
            yield f"Strings that break no rule, by circuit: {'; '.join(each)}."
        best = plan.best(1)[0]
        for name in _TOLD.get(min(number, _WINDOW_ASKED_IN), ()):
            if found := [f for f in best.findings if f.rule == name]:
                worst = rules.worst(found)
                danger = worst.danger and f"Danger: {worst.danger} "
                yield f"Of the first, {name}: {worst.verdict}. {danger}{worst.reason}"


def _drop(brief):
    """What the LEDs drop, and whose they are."""
    each, volts = (
        write(v, "voltage") for v in (brief.led_volts / brief.led_count, brief.led_volts)
    )
    whose = {
        "led_colour": "a red LED, the workshop's until you name yours",
        "led_drop": f"a usual {brief.led_colour} LED, until yours is measured or read",
    }  # fmt: skip
    said = next((words for name, words in whose.items() if name in brief.left_out), "your LED")
    many = f", {brief.led_count} in series {volts}" * (brief.led_count > 1)
    return f"Of {said}, one drops about {each}{many}."


def _counted(brief, plan):
    best = plan.best(1)[0]
    what = (
        f"{KINDS[best.circuit]}, {best.count} x {write(best.ohms_each, 'resistance')} "
        f"{write_as(best.rated_watts, 'W')}"
    )
    if plan.kept:
        said = f"{plan.kept} break no rule; first comes {what}."
    else:
        broken = ", ".join(dict.fromkeys(finding.rule for finding in best.failed))
        said = f"each breaks a rule. The first, {what}, breaks: {broken}."
    window = "" if plan.brief == brief else (
        " Lesson 08 asks for the window: taken here is an LED with its leads wholly behind a "
        "closed insulating one."
    )  # fmt: skip
    return f"So far: of {plan.size} candidates {said}{window}"
