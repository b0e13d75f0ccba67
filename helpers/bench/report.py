"""A bench log in words: the same findings for the command line and a lesson. Judges nothing."""

import numpy as np

from helpers import quantities
from helpers.bench.causes import DANGERS
from helpers.bench.predictions import BENCH_METERS, place
from helpers.bench.rows import COMPETENT

AGREES = "Agrees with the plan, as far as these readings go."
WRONG = "Something is wrong: do not connect."
#: Who may read what on the mains: one rule for lessons, sheet and report.
MAINS_READINGS = (
    "Pot and dimmer as bought, never opened or changed: whoever may use them may read a plug-in "
    "power meter, certified or conforming for this use and rated for the load, in the wall socket "
    "before the dimmer, all covers closed. Anything opened, changed or built: every reading on the "
    "mains is for a competent person alone. Local rules, or those of a course room, may allow less."
)
_DC = BENCH_METERS["DC volts"]
METER = (
    f"Limits hold for a meter of {_DC.counts} counts with a sheet such as ± ({_DC.percent:g} % + "
    f"{_DC.digits:g} digits) on DC volts. A meter of fewer digits strays further. Write down every "
    "figure that it shows, noughts too: where a log is compared, its last figures count. Write the "
    "unit as well: a number without one is taken in the unit of what its row should be."
)
BEFORE = (
    "Unpowered means that the plug is pulled and lies in sight. Let what was soldered cool. An "
    "ohmmeter finds a touch of metal, but no weak insulation. The rehearsal is on an isolated "
    "supply of at most 24 V, its current limited to what the LED stands, 20 mA at most, and on a "
    "short-circuit-proof safety isolating transformer of 12 V: never on the mains, never with the "
    f"light on the heater, on a dimmer or on a mains cord. {MAINS_READINGS} {METER}"
)
NAMED = 3
"""Causes, or groups of them, that are named at most [-]."""
_LEAST = 1e-4


def shown(value, unit):
    """Return a reading as it stands on a display, OL included.

    Parameters
    ----------
    value : float
        [SI].
    unit : str
        As in `predictions.Row`.

    Examples
    --------
    >>> shown(99.2e3, "resistance"), shown(float("inf"), "voltage"), shown(1.0, "count")
    ('99.2\\xa0kΩ', 'OL', '1')
    """
    if np.isinf(value):
        return "OL"
    if unit == "count":
        return f"{value:.0f}"
    return quantities.write(round(value, 3), unit, digits=3)


def named(build):
    """Return which build a log is of: all that decides what is read on it.

    Parameters
    ----------
    build : world.Build

    Examples
    --------
    >>> from helpers.bench.world import Build
    >>> from helpers.sizing.brief import Brief
    >>> named(Build(Brief(), "series_diode", 47e3, 3)).replace("\xa0", " ")
    'series diode with 3 × 47 kΩ ± 5 % and 1 red LED on a heater of 90 W on 230 V 50 Hz'
    """
    brief, sort = build.brief, build.circuit.replace("_", " ")
    return (
        f"{sort} with {build.count:g} × {quantities.write(build.ohms_each, 'resistance', 12)} ± "
        f"{quantities.write(brief.bin_tolerance, 'percent')} and {brief.led_count} "
        f"{brief.led_colour} LED{'s' * (brief.led_count > 1)} on a heater of "
        f"{quantities.write_as(brief.heater_power, 'W')} on {brief.supply.name}"
    )


def should_be(row):
    """Return what a row should read, with its limits.

    Parameters
    ----------
    row : predictions.Row
    """
    if np.isinf(row.value) or row.unit == "count":
        return shown(row.value, row.unit)
    low, high = (quantities.write_as(round(each, 3), unit_of(row)) for each in row.limits)
    return f"{low} to {high}"


def unit_of(row):
    """Return the unit in which a row is written, and its number read where none was typed.

    Volts keep none but V, since a row near nothing has no prefix of its own; only a diode test is
    shown in mV by some meters.

    Parameters
    ----------
    row : predictions.Row
        Not of the eye.

    Examples
    --------
    >>> from helpers.bench.world import Build
    >>> from helpers.sizing.brief import Brief
    >>> from helpers.bench.predictions import table
    >>> rows = {row.name: row for row in table(Build(Brief(), "series_diode", 120e3, 2))}
    >>> [unit_of(rows[name]) for name in ("R1", "leads to metal", "diode", "24 V, string")]
    ['kΩ', 'Ω', 'mV', 'V']
    """
    own = quantities.GLOSSARY[row.unit].unit
    if np.isinf(row.value) or row.meter not in ("ohms", "diode test"):
        return own
    return shown(row.value, row.unit).partition("\xa0")[2]


def lines(diagnosis):
    """Return what a log comes to, line by line, what is dangerous first.

    Parameters
    ----------
    diagnosis : diagnosis.Diagnosis

    Returns
    -------
    lines : list of str

    Examples
    --------
    >>> from helpers.bench.world import Build
    >>> from helpers.sizing.brief import Brief
    >>> from helpers.bench.diagnosis import diagnose
    >>> found = diagnose(Build(Brief(), "bridge", 100e3, 2), {"R1": 99e3, "R2": 10.1e3})
    >>> print("\\n".join(lines(found)[:5]))
    Something is wrong: do not connect.
    Danger if R2 is a tenth of its value: a string of too few ohms may burn.
    A sound build gives readings this far off in less than one log in 10,000.
    Likeliest first:
      1. R2 is a tenth of its value.
    """
    read = diagnosis.readings
    taken = [row for row in diagnosis.rows if row.name in read]
    off = [
        row for row in taken if not row.doubts and read[row.name] != row.value
        and not row.limits[0] <= read[row.name] <= row.limits[1]
    ]  # fmt: skip
    if diagnosis.wrong:
        said = [WRONG, *_likely(diagnosis)]
    else:
        said = [AGREES]
        if off:
            said.append(
                "One sound reading in twenty lies a little outside its own limits. Take these "
                "again, with another meter if there is one:"
            )
    if off and diagnosis.wrong:
        said.append("Outside their own limits:")
    for row in off:
        said.append(f"  {row.name}: {shown(read[row.name], row.unit)}, should be {should_be(row)}")
    if diagnosis.missing:
        names = ", ".join(row.name for row in diagnosis.missing)
        said.append(f"Not read yet, so nothing is said of it: {names}.")
    bare = [
        f"{row.name}, {one.bare} as {quantities.write_as(one, unit_of(row), 6)}"
        for row in taken if (one := read[row.name]) and getattr(one, "bare", "")
    ]  # fmt: skip
    if bare:
        said.append(f"Read in the unit of its row, since none was typed: {'; '.join(bare)}.")
    for row in taken:
        half = 0.5 * place(read[row.name])
        if half**2 / 3.0 > 0.5 * row.standard**2:
            said.append(
                f"{row.name}, as it was typed: its last figure alone makes ± "
                f"{shown(half, row.unit)}, which can hide a fault. Type all that the meter shows."
            )
        if row.doubts:
            said.append(f"  {row.name} is not judged. {' '.join(row.doubts)}")
    said.append("No reading says that anything is safe; a fault that shows in none stays unseen.")
    return [line.replace("\xa0", " ") for line in said]


def _chance(chance):
    most = f"one log in {1.0 / max(chance, _LEAST):,.0f}"
    return f"A sound build gives readings this far off in {'less than ' * (chance < _LEAST)}{most}."


def _likely(diagnosis):
    named = diagnosis.likely[:NAMED]
    said = [
        f"Danger if {words}: {DANGERS[cause.kind]}"
        for each in named for cause, words in zip(each.causes, each.words, strict=True)
        if cause.kind in DANGERS
    ]  # fmt: skip
    said.append(_chance(diagnosis.fit.chance))
    ranked = named if diagnosis.explained else []
    said += ["Likeliest first:"] * bool(ranked)
    for rank, each in enumerate(ranked, start=1):
        words = "; or ".join(each.words)
        said.append(f"  {rank}. {words[0].upper()}{words[1:]}.")
        if len(each.words) > 1:
            said.append("     These readings cannot tell them apart.")
    if not diagnosis.explained:
        said.append(
            "None of the causes known here alone gives such readings: there may be two at once, or "
            "a slip in writing down. Read again from the first row."
        )
    on_mains = any(row.by == COMPETENT and row.name in diagnosis.readings for row in diagnosis.rows)
    off = "Pull the plug." if on_mains else "Switch the bench supply off."
    said.append(
        f"{off} What is on the mains is for a competent person to find and mend; on the unpowered "
        "light put right one thing, then take all rows anew."
    )
    return said
