"""The sizing sheet: one printable page of a plan, in the order in which it is used at the bench.

Says what was computed elsewhere; judges nothing. How it is set: `helpers/pages/templates`.
"""

from datetime import UTC, datetime
from importlib.metadata import version
from math import floor

from markupsafe import Markup

from helpers.bench import predictions
from helpers.bench import report as bench_report
from helpers.exercises.whole_files import write_whole
from helpers.exercises.wording import CAUTION, COMMAND, STAMP
from helpers.figures import circuits, margins, words
from helpers.pages import templates
from helpers.physics import leds
from helpers.quantities import write
from helpers.sheets.plan_facts import facts
from helpers.sizing import own, report, verdicts

SIGN = "sizing sheet of the candle workshop lessons"
"""By this a file is known as a sheet of ours; it stands near its beginning."""
_BY = {"anyone": predictions.ANYONE, "rehearsal": predictions.REHEARSAL}
_KINDS = ("plug-in watts", "AC volts, true rms", "AC volts, average")


def pieces(plan, danger_items, learner="", at=None):
    """Yield a sizing sheet piece by piece.

    Parameters
    ----------
    plan : verdicts.Plan
    danger_items : list of (str, bool)
        Name of each and whether it is passed.
    learner : str
        Whose they are; '' for nobody's.
    at : datetime or None
        When it was made; None is now.

    Returns
    -------
    pieces : iterator of str
        One self-contained document.

    Notes
    -----
    Under a stop, or where a rule is broken, it holds no circuit, no parts and no tests.
    """
    told = facts(plan)
    build, readings = told["build"], told["readings"] or ()
    drawn = build and circuits.indicator(
        build["circuit"], build["ohms_each"], build["led_volts"],
        (build["live_count"], build["neutral_count"]), plan.brief.led_count,
    )  # fmt: skip
    strip = told["rules"] and margins.strip(plan.best(1)[0].findings)
    broken, changes = plan.nearest_breaks, plan.helps
    return templates.page(
        "sizing-sheet",
        sign=SIGN, version=version("candle-workshop-lessons"),
        made=f"{(at or datetime.now(UTC)).astimezone():%Y-%m-%d %H:%M}",
        stamp=STAMP, caution=CAUTION, command=COMMAND, plan=plan, brief=plan.brief,
        told=told, build=build, mains_readings=bench_report.MAINS_READINGS,
        meter=bench_report.METER,
        in_short=list(report.in_short(plan.brief)), learner=learner, danger_items=danger_items,
        drawing=drawn and Markup(drawn.picture), drawing_words=drawn and drawn.words,
        strip=strip and Markup(strip.picture),
        by_hand={name: [r for r in readings if r["by"] == by] for name, by in _BY.items()},
        mains=_mains(told), broken=[(each, report.by_how_much(each)) for each in broken],
        changes=changes, remains=verdicts.REMAINS, own=_own, say=_say,
        whose=own.CHOSEN if plan.only else own.FIRST, margin=_margin, ratio=_ratio, watts=_watts,
        most_amps=min(plan.brief.led_limit, leds.LIMIT_AMPS),
        toml=[line for line in own.whole(plan).splitlines() if line],
    )  # fmt: skip


def _own(text):
    """Text of ours, with its blanks that do not break; escaped like any other."""
    return templates.piece("{}", text)


def _say(value, of):
    """A reading as a meter shows it; the eye counts."""
    if value is None:
        return "OL"
    return f"{value:.0f}" if of == "count" else _own(write(value, of))


def _ratio(value, digits=2):
    return _own(write(value, "ratio", digits))


def _margin(rule):
    """Rounded down: no margin is told as larger than it is. Degrees Celsius make no ratio."""
    margin, beyond = rule["margin"] or 0.0, rule["verdict"] == "fail"
    measured = rule["verdict"] == "pass" or rule["figure"] != rule["limit"]
    if not margin or rule["unit"] == "°C" or not (beyond or margin >= 1.0 and measured):
        return ""
    return _ratio(floor(10.0 * margin + 1e-9) / 10.0)


def _watts(value):
    return _own(words.watts(value))


def _mains(told):
    """What a competent person reads: at the socket alone, then setting by setting."""
    rows = [r for r in told["readings"] or () if r["by"] == predictions.COMPETENT]
    settings = [
        (setting, {r["meter"]: r for r in rows if r["name"].startswith(f"setting {number},")})
        for number, setting in enumerate(told["settings"] or (), 1)
    ]
    doubts = dict.fromkeys(f"{r['name']}: {each}" for r in rows for each in r["doubts"])
    return {
        "supply": next((r for r in rows if r["name"] == "mains"), None), "settings": settings,
        "lit": next((r for r in rows if r["unit"] == "count"), None), "kinds": _KINDS,
        "doubts": list(doubts),
        "where": dict.fromkeys(f"{r['meter']}: {r['where']}" for r in rows if r["meter"] in _KINDS),
    }  # fmt: skip


def write_sheet(path, made):
    """Write a sheet whole; one of ours that lies there is replaced.

    Parameters
    ----------
    path : Path
        The file; its folder is there already.
    made : iterable of str
        As `pieces` yields.

    Returns
    -------
    replaced : bool
        Whether an earlier sheet lay there.

    Raises
    ------
    FileExistsError
        If what lies there is no sheet of ours; it is left as it was.
    OSError
        If it cannot be written.
    """
    there = path.exists() or path.is_symlink()
    if there and not _is_ours(path):
        raise FileExistsError("a file that is no sizing sheet has this name, and stays as it is")
    write_whole(path, (piece.encode("utf-8") for piece in made))
    return there


def _is_ours(path):
    if not path.is_file():
        return False
    with open(path, "rb") as handle:
        return f'content="{SIGN}"'.encode() in handle.read(1000)
