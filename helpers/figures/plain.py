"""Pictures to be read in a question: a trace on a grid, and a number in a box.

Written by hand; the words say what can be seen, in divisions, never the answer. Of no
maker's look. Knows no question.
"""

from html import escape

import numpy as np

from helpers.figures.chart import NORMAL, Axis, Chart, picture
from helpers.figures.style import LOOKS
from helpers.physics import heat, limits, phase_cut, visibility
from helpers.quantities import write_as

DIVISION = 40
BEAM_DIVISION = 60
"""Width and height of a division [px]."""
BEAM_SCALE = "10° and a quarter of the intensity a division, the axis of the beam in the middle"
WARM_UP_SCALE = "1 min and 10 K a division"
BELOW_ABOVE = "below (−) or above its prediction, in combined uncertainties"
HALF_HEIGHT = 4
"""Divisions above and below the middle line [-]."""
_WIDEST, _HIGHEST = 640, 430
"""Of a grid: as the text around it, and so that its question stays in view [px]."""
DEGREES_PER_DIVISION, SECONDS_PER_DIVISION = 30.0, 2e-3


def waveform(supply, dimmer=phase_cut.NO_DIMMER, across="degrees"):
    """Draw one cycle behind a dimmer as a trace on a grid, to be read off.

    Parameters
    ----------
    supply : mains.Supply
        The supply.
    dimmer : phase_cut.Dimmer
        The dimmer and its setting.
    across : str
        'degrees' (30 degrees a division) or 'ms' (2 ms a division) [-].

    Returns
    -------
    drawn : Drawn
        Its finding, also its name, is what can be read off, in divisions.

    Raises
    ------
    ValueError
        If `across` is neither.

    Notes
    -----
    The height of a division is the smallest of 1, 2 and 5 times a power of ten with which the
    crest of the undimmed supply stays within four divisions. Each division has five parts.

    References
    ----------
    Eight divisions high, steps of 1, 2 and 5: common practice, no source.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> half = phase_cut.Dimmer("leading", 90.0)
    >>> words = waveform(mains.Supply(230.0, 50.0), half).finding.replace("\\xa0", " ")
    >>> words.partition(". ")[0]
    'A trace on a grid, 100 V and 30° a division, starting at a rising zero crossing'
    """
    limits.one_of(across, "across", ("degrees", "ms"))
    degrees, volts = phase_cut.trace(supply, dimmer)
    volts_step = _volts_per_division(supply)
    step, unit, places = DEGREES_PER_DIVISION, "°", degrees
    if across == "ms":
        step, unit, places = SECONDS_PER_DIVISION, "ms", degrees / 360.0 / supply.hertz
    places, heights = places / step, volts / volts_step
    scale = f"{write_as(volts_step, 'V')} and {write_as(step, unit)} a division"
    alternative = (
        f"A trace on a grid, {scale}, starting at a rising zero crossing. "
        f"{_seen(places, heights, dimmer)}"
    )
    size = int(np.ceil(places[-1] - 1e-9)), 2 * HALF_HEIGHT
    return _on_grid(places, heights + HALF_HEIGHT, size, DIVISION, (0, HALF_HEIGHT),
                    (scale, alternative))  # fmt: skip


def beam(half_angle_degrees):
    """Draw the beam of an LED over the angle on a grid, to be read off.

    Parameters
    ----------
    half_angle_degrees : float
        Angle from the axis at which half the intensity is left, 5 to 60 [deg].

    Returns
    -------
    drawn : Drawn
        Inline SVG with a title for screen readers, and what can be read off, in divisions.

    Raises
    ------
    ValueError
        If the angle is out of range.

    Notes
    -----
    Ten degrees and a quarter of the intensity a division; the axis of the beam is in the middle.

    References
    ----------
    As `visibility.candelas`.

    Examples
    --------
    >>> beam(20.0).finding.split(". ")[1]
    'Its top is 4 divisions high; at 2 divisions it crosses 2.00 divisions left and right of it'
    """
    limits.between(half_angle_degrees, "half_angle_degrees", "deg", 5.0, 60.0)
    degrees = np.linspace(-90.0, 90.0, 361)
    left = visibility.candelas(1.0, 1.0, 1.0, np.abs(degrees), half_angle_degrees)
    alternative = (
        f"A curve on a grid, {BEAM_SCALE}. Its top is 4 divisions high; at 2 divisions it crosses "
        f"{half_angle_degrees / 10:.2f} divisions left and right of it. It is the same on both "
        "sides."
    )
    return _on_grid(degrees / 10.0 + 9.0, 4.0 * left, (18, 4), BEAM_DIVISION, (9, 2),
                    (BEAM_SCALE, alternative))  # fmt: skip


def meter(text, unit, words):
    """Draw a number in a box, as a meter would show it.

    Parameters
    ----------
    text : str
        The digits, as shown.
    unit : str
        The unit, as shown.
    words : str
        What kind of meter it is and how it is set.

    Returns
    -------
    drawn : Drawn
        Its finding is also its name for screen readers.

    Raises
    ------
    ValueError
        If there are no digits or more than eight characters of them.

    Examples
    --------
    >>> meter("115.2", "V", "AC volts, average-responding").finding.replace("\\xa0", " ")
    'A meter (AC volts, average-responding) shows 115.2 V.'
    """
    if not 0 < len(text) <= 8:
        raise ValueError(f"text was read as {text!r}; a display shows 1 to 8 characters.")
    alternative = f"A meter ({words}) shows {text}\u00a0{unit}."
    shown = (
        '<div style="max-width:20rem;border:3px solid currentColor;border-radius:8px;'
        'text-align:center;padding:.3rem .6rem"><div style="font:52px/1.3 monospace">'
        f'{escape(text)} <span style="font-size:30px">{escape(unit)}</span></div>'
        f'<div style="font-size:{NORMAL}px">{escape(words)}</div></div>'
    )
    return picture(alternative, "", shown)


def warm_up_curve(time_constant_seconds):
    """Draw how a closed box warms up on a grid, to be read off.

    Parameters
    ----------
    time_constant_seconds : float
        Time after which 63 % of the rise is there, 30 to 170 [s].

    Returns
    -------
    drawn : Drawn
        Inline SVG with a title for screen readers, and what can be read off, in divisions.

    Raises
    ------
    ValueError
        If the time constant is out of range: the curve would not settle within the grid.

    Notes
    -----
    One minute and ten kelvin a division; the whole rise is 4.75 divisions, so that 63 % of it
    is three.

    References
    ----------
    As `heat.celsius_after`.

    Examples
    --------
    >>> warm_up_curve(120.0).finding.split(". ")[1]
    'After each half division across it stands at 1.05, 1.87, 2.51, 3.00, 3.39, 3.69, 3.92, 4.11'
    """
    limits.between(time_constant_seconds, "time_constant_seconds", "s", 30.0, 170.0)
    columns, rise = 14, 4.75
    places = np.linspace(0.0, columns, 281)
    heights = heat.celsius_after(60.0 * places, rise, 1.0, time_constant_seconds, 0.0)
    read = ", ".join(f"{height:.2f}" for height in heights[10:90:10])
    alternative = (
        f"A curve on a grid, {WARM_UP_SCALE}, from the lower left. After each half division across "
        f"it stands at {read}. It becomes level at {rise} divisions."
    )
    return _on_grid(places, heights, (columns, 5), BEAM_DIVISION, (0, 0),
                    (WARM_UP_SCALE, alternative))  # fmt: skip


def residuals(rows, values):
    """Draw how far readings lie from their predictions, in uncertainties, to be read off.

    Parameters
    ----------
    rows : sequence of str
        What is read.
    values : sequence of float
        Reading less prediction, over the combined standard uncertainty [-].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Notes
    -----
    The band from -2 to 2 is tinted. A mark beyond 10 stands at the edge, with its number.

    References
    ----------
    JCGM 106:2012 for judging by an interval; k = 2: JCGM 100:2008, 6.2.

    Examples
    --------
    >>> residuals(["current", "volts"], [-27.0, 0.4]).finding
    'Differences in combined uncertainties: current −27; volts 0.4.'
    """
    shown = [f"{value:.3g}".replace("-", "\u2212") for value in values]
    said = "; ".join(f"{row} {text}" for row, text in zip(rows, shown, strict=True))
    alternative = f"Differences in combined uncertainties: {said}."
    places = {float(at): f"{at}".replace("-", "\u2212") for at in (-10, -5, -2, 0, 2, 5, 10)}
    bottom = len(rows) + 0.6
    up = Axis(bottom, 0.4, "", {float(at): str(at) for at in range(1, len(rows) + 1)})
    chart = Chart(34 * len(rows), Axis(-11.0, 11.0, BELOW_ABOVE, places), up)
    chart.fill([-2.0, 2.0, 2.0, -2.0], [0.4, 0.4, bottom, bottom], "mains", 0.3)
    for at, value, text in zip(up.ticks, values, shown, strict=True):
        place = float(np.clip(value, -10.4, 10.4))
        chart.line([0.0, place], [at, at], "volts", text)
    key = "".join(f"<div>{at}: {escape(row)}</div>" for at, row in enumerate(rows, 1))
    return picture(alternative, "", key, chart.html())


def _volts_per_division(supply):
    crest = phase_cut.wave(supply).volts_peak
    steps = (digit * 10.0**power for power in range(-3, 5) for digit in (1, 2, 5))
    return next(step for step in steps if step * HALF_HEIGHT >= crest)


def _seen(places, heights, dimmer):
    """The first half-cycle in words: where the trace is flat, where it jumps and how high it is."""
    half = places <= places[-1] / 2 + 1e-9
    across, up = places[half], heights[half]
    if not np.any(up > 1e-9):
        return "It lies on the middle line all along."
    crest = f"It is at most {up.max():.2f} divisions high. Then the same below the middle line."
    end = f"{across[-1]:.2f}"
    jump = int(np.argmax(np.abs(np.diff(up)) * (np.diff(across) < 1e-9)))
    if across[jump + 1] - across[jump] > 1e-9:
        return f"It is a sine, back on the middle line after {end} divisions. {crest}"
    edge, size = f"{across[jump]:.2f}", f"{max(up[jump], up[jump + 1]):.2f}"
    if dimmer.edge == "leading":
        return (
            f"It is flat for {edge} divisions, jumps up by {size} and follows a sine back to "
            f"the middle line at {end}. {crest}"
        )
    return (
        f"It follows a sine for {edge} divisions, there drops by {size} and is flat "
        f"up to {end}. {crest}"
    )


def _on_grid(places, heights, size, tall, zero, said):
    """Return a curve on a grid, all in divisions from its lower left, the scale written below it.

    `size` are columns and rows, `tall` a row [px], `zero` is where the axes with ticks cross.
    """
    width, height, margin = size[0] * DIVISION, size[1] * tall, 6
    left, up = zero[0] * DIVISION, height - zero[1] * tall
    grid = "".join(f"M{x} 0V{height}" for x in range(0, width + 1, DIVISION))
    grid += "".join(f"M0 {y}H{width}" for y in range(0, height + 1, tall))
    axes = f"M{left} 0V{height}M0 {up}H{width}"
    axes += "".join(f"M{x} {up - 4}v8" for x in range(0, width + 1, DIVISION // 5))
    axes += "".join(f"M{left - 4} {y}h8" for y in range(0, height + 1, tall // 5))
    points = " ".join(
        f"{x * DIVISION:.1f},{height - y * tall:.1f}" for x, y in zip(places, heights, strict=True)
    )
    scale, alternative = said
    sides = width + 2 * margin, height + 2 * margin
    wide = min(_WIDEST, round(_HIGHEST * sides[0] / sides[1]))
    svg = (
        f'<svg viewBox="-{margin} -{margin} {sides[0]} {sides[1]}" width="{wide}" fill="none" '
        f'stroke="currentColor" style="max-width:100%;height:auto">'
        f'<path d="{grid}" stroke-opacity=".55"/><path d="{axes}"/>'
        f'<polyline points="{points}" stroke="{LOOKS["volts"].colour}" stroke-width="4" '
        'stroke-linejoin="round"/></svg>'
    )
    return picture(alternative, "", svg, f'<div style="font-size:{NORMAL}px">{escape(scale)}</div>')
