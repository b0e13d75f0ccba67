"""Picture of a candidate's margins: one strip from what breaks its rule to what has ample room."""

import numpy as np

from helpers.figures.chart import Axis, Chart, beside, labelled, picture
from helpers.figures.words import capital
from helpers.quantities import write

_LOWEST, _HIGHEST, _AMPLE = 0.25, 8.0, 2.0
_TICKS = {0.25: "¼", 0.5: "½", 1.0: "1", 2.0: "2", 4.0: "4", 8.0: "8"}
_LANE, _APART = 22, 0.095


def strip(findings):
    """Draw how far each rule of a candidate is from its limit.

    Parameters
    ----------
    findings : list of Finding
        Of one candidate, as `sizing` hands them over; of each rule the tightest is shown [-].

    Returns
    -------
    drawn : Drawn
        Its title names what is broken, or else what is tightest.

    Raises
    ------
    ValueError
        If there is no finding.

    Notes
    -----
    At 1 a figure is at its limit, at 2 it may double. What is broken stands left of 1 with a cross,
    whatever its ratio. Cautions beyond a limit that sets no bound, degrees Celsius and what has no
    figure make no ratio: they are told in words.

    References
    ----------
    The limits are those of the findings; two as ample: common practice, no source.

    Examples
    --------
    >>> from helpers.sizing import rules
    >>> strip([rules.heat(0.1, 0.5, 70.0), rules.diode(358.0, 1000.0)]).finding
    'The tightest is diode: 1.3 times what its rule asks for.'
    """
    if not findings:
        raise ValueError("findings was read as empty; a strip needs one or more of a candidate.")
    rules = dict.fromkeys(each.rule for each in findings)
    tightest = [min((f for f in findings if f.rule == rule), key=_order) for rule in rules]
    placed = sorted(filter(_has_place, tightest), key=_order)
    listed = [(f"{_letter(at)}  {each.named}", _said(each)) for at, each in enumerate(placed)]
    told = "; ".join(f"{label.replace('  ', ' ')}: {said}" for label, said in listed)
    others = [f"{each.named} ({each.verdict})" for each in tightest if not _has_place(each)]
    without = f"Without a ratio: {'; '.join(others)}." if others else ""
    details = f"On the strip, tightest first: {told}. {without}" if told else without
    half = (len(listed) + 1) // 2
    keys = ("".join(labelled(*each) for each in some) for some in (listed[:half], listed[half:]))
    shown = _strip(placed), beside(*keys, least=380), f"<div>{without}</div>" if without else ""
    name = "A strip of margins with letters on it"
    return picture(name, _finding(placed), *shown, details=details.strip())


def _order(finding):
    worst = ("fail", "caution", "pass").index(finding.verdict)
    return worst > 0, finding.margin, worst


def _has_place(finding):
    if finding.verdict == "fail":
        return True
    measured = finding.verdict == "pass" or finding.figure != finding.limit
    return measured and finding.unit not in ("°C", "-") and 1.0 <= finding.margin < np.inf


def _finding(placed):
    if not placed:
        return "No rule of this candidate has a ratio to its limit."
    first, broken = placed[0], [row for row in placed if row.verdict == "fail"]
    if not broken:
        return f"The tightest is {first.named}: {_said(first)} what its rule asks for."
    first = next((row for row in broken if row.danger), first)
    count = f"{len(broken)} rule{'s are' if len(broken) > 1 else ' is'} broken, first {first.named}"
    if first.danger:
        return f"Danger: {count}. {capital(first.danger)}"
    return f"{count}."


def _said(finding):
    if finding.verdict == "fail":
        return "breaks its rule"
    # Rounded down: no margin is told as larger than it is.
    shown = np.floor(10.0 * finding.margin) / 10.0
    near = "a caution, so near: " if finding.verdict == "caution" else ""
    return f"{near}{write(float(shown), 'ratio', 2)} times"


def _letter(place):
    return chr(ord("A") + place)


def _strip(placed):
    across = Axis(_LOWEST, _HIGHEST, "times what its rule asks for", _TICKS, logarithmic=True)
    lanes, marks = [], []
    for place, row in enumerate(placed):
        ratio = row.margin
        if row.verdict == "fail":
            ratio = min(ratio, 0.9) if 0.0 < ratio < 1.0 and row.unit != "°C" else 0.5
        at = float(np.clip(ratio, 0.27, 7.6))
        share = float(across.share(at))
        lane = next((n for n, last in enumerate(lanes) if share - last > _APART), len(lanes))
        lanes[lane : lane + 1] = [share]
        mark = {"fail": "×", "caution": "!", "pass": ""}[row.verdict]
        marks.append((at, lane, f"{mark}{_letter(place)}"))
    height = _LANE * max(len(lanes), 1) + 14
    chart = Chart(height, across, Axis(0.0, height, "", {}))
    chart.fill((_LOWEST, 1.0, 1.0, _LOWEST), (0.0, 0.0, height, height), "heat")
    chart.fill((_AMPLE, _HIGHEST, _HIGHEST, _AMPLE), (0.0, 0.0, height, height), "light")
    chart.line((1.0, 1.0), (0.0, height), "limit")
    for at, lane, text in marks:
        chart.pin(at, 12 + _LANE * lane, text)
    zones = (("breaks its rule", 0.5), ("keeps it", np.sqrt(2.0)), ("ample", 4.0))
    for text, at in zones:
        chart.write(at, -6, text)
    return chart.html()
