"""Picture of which resistor value keeps every rule down to which setting of the dimmer."""

from itertools import groupby

import numpy as np

from helpers.figures.chart import Axis, Chart, picture
from helpers.quantities import write

_ROW = 34


def value_by_setting(ohms, heat_percent, broken, ohms_each, lowest):
    """Draw values of a dropper across, lowest settings up, and in each cell what is broken.

    Parameters
    ----------
    ohms : array
        Values of one resistor, rising [ohm].
    heat_percent : array
        Heat that the heater keeps at each lowest setting, falling [%].
    broken : array of str
        Name of the rule that is broken first, '' where all are kept; settings by values [-].
    ohms_each : float
        The value that is marked, one of `ohms` [ohm].
    lowest : float
        The setting that is marked, one of `heat_percent` [%].

    Returns
    -------
    drawn : Drawn
        Tinted where every rule is kept; elsewhere the letter of a rule.

    Raises
    ------
    ValueError
        If the array fits neither values nor settings.

    Notes
    -----
    A cell is the whole build used from full mains down to that setting, so a safety rule breaks at
    every setting alike: a dimmer can be turned up, and can fail at full mains.

    References
    ----------
    The verdicts are `sizing.by_setting`'s.

    Examples
    --------
    >>> broken = [["heat", "", "light"], ["heat", "light", "light"]]
    >>> words = value_by_setting([1e4, 1e5, 1e6], [100.0, 20.0], broken, 1e5, 100.0).words
    >>> words.replace("\\xa0", " ").partition(".")[0]
    'Down to 100 % of the heat, 100 kΩ keeps every rule'
    """
    broken = np.asarray(broken, dtype=object)
    if broken.shape != (len(heat_percent), len(ohms)):
        raise ValueError(
            f"broken was read as {broken.shape}; it must be {len(heat_percent)} settings by "
            f"{len(ohms)} values. Were they swapped?"
        )
    rows = [_runs(line) for line in broken]
    letters = _letters(run[0] for line in rows for run in line)
    own = int(np.argmin(np.abs(np.subtract(heat_percent, lowest))))
    column = int(np.argmin(np.abs(np.subtract(ohms, ohms_each))))
    settings = [write(each, "percent", 2) for each in heat_percent]
    kept = [_from_to(ohms, *run[1:]) for run in rows[own] if not run[0]]
    said = f"{' and '.join(kept)} every rule" if kept else "no value that is shown keeps every rule"
    finding = f"Down to {settings[own]} of the heat, {said}."
    told = "; ".join(
        f"down to {setting} " + ", ".join(
            f"{_span(ohms, *run[1:])} {'pass' if not run[0] else 'break ' + run[0]}" for run in line
        )
        for setting, line in zip(settings, rows, strict=True)
    )  # fmt: skip
    key = "; ".join(f"{letter} breaks {rule}" for rule, letter in letters.items())
    chart = _drawn(ohms, settings, rows, letters, (own, column))
    legend = f"Tinted: every rule is kept. {key}{'.' if key else ''}".rstrip()
    name = "A map of resistor values and settings with letters in it"
    details = f"From full mains: {told}. Marked is {write(ohms_each, 'resistance')}."
    return picture(name, finding, chart, f"<div>{legend}</div>", details=details)


def _runs(line):
    """What is broken along a row, with the first and the last column of each run."""
    runs, start = [], 0
    for rule, cells in groupby(line):
        stop = start + len(list(cells))
        runs.append((rule, start, stop - 1))
        start = stop
    return runs


def _letters(names):
    """A letter for each rule: the first of its name that is still free."""
    letters = {}
    for name in names:
        if name and name not in letters:
            free = (each for each in name.upper() + "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
                    if each.isalpha() and each not in letters.values())  # fmt: skip
            letters[name] = next(free)
    return letters


def _span(ohms, first, last):
    if first == last:
        return write(ohms[first], "resistance")
    return f"{write(ohms[first], 'resistance')} to {write(ohms[last], 'resistance')}"


def _from_to(ohms, first, last):
    return f"{_span(ohms, first, last)} {'keeps' if first == last else 'keep'}"


def _drawn(ohms, settings, rows, letters, chosen):
    wide, high, (row, column) = len(ohms), len(rows), chosen
    shown = sorted({0, wide // 3, 2 * wide // 3, wide - 1})
    across = Axis(
        0.0, wide, "value of each resistor",
        {at + 0.5: write(ohms[at], "resistance").replace("\u00a0", "\n") for at in shown},
    )  # fmt: skip
    up = Axis(0.0, high, "heat at the lowest setting that is used",
              {high - at - 0.5: text for at, text in enumerate(settings)})  # fmt: skip
    chart = Chart(_ROW * high, across, up)
    for at, line in enumerate(rows):
        top, bottom = high - at, high - at - 1
        for (rule, first, last), (before, *_) in zip(line, [("",), *line], strict=False):
            corners = (first, last + 1, last + 1, first), (bottom, bottom, top, top)
            if not rule:
                chart.fill(*corners, "light", 0.35)
            else:
                own = at == row and first <= column <= last
                middle = column + 0.5 if own else (first + last + 1) / 2
                chart.write(middle, _ROW * (at + 0.5) + 5, letters[rule])
            if rule and before:  # where the tint begins or ends no line is needed
                chart.line((first, first), (bottom, top), "limit")
    chart.pin(
        column + 0.5, high - row - 0.5, label=f"this one: {write(ohms[column], 'resistance')}"
    )
    return chart.html()
