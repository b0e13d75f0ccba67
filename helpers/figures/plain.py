"""Pictures to be read in a question: a trace on a grid, and a number in a box.

Inline SVG written by hand; the words say what can be seen, in divisions, never the answer. Of no
maker's look. Knows no question.
"""

from html import escape

import numpy as np

from helpers.figures.drawn import Drawn
from helpers.physics import limits, phase_cut, visibility
from helpers.quantities import write_as

DIVISION = 40
"""Width and height of a division [px]."""
HALF_HEIGHT = 4
"""Divisions above and below the middle line [-]."""
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
        With a title for screen readers; its finding is what can be read off, in divisions.

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
    if across == "degrees":
        step, step_name = DEGREES_PER_DIVISION, write_as(DEGREES_PER_DIVISION, "°")
        columns, places = 12, degrees / step
    else:
        step, step_name = SECONDS_PER_DIVISION, write_as(SECONDS_PER_DIVISION, "ms")
        places = degrees / 360.0 / supply.hertz / step
        columns = int(np.ceil(places[-1] - 1e-9))
    heights = volts / volts_step
    scale = f"{write_as(volts_step, 'V')} and {step_name} a division"
    alternative = (
        f"A trace on a grid, {scale}, starting at a rising zero crossing. "
        f"{_seen(places, heights, dimmer)}"
    )
    return Drawn(_grid(columns, places, heights, scale, alternative), alternative)


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
    columns, rows, high = 18, 4, 60
    middle, width, height = 9 * DIVISION, columns * DIVISION, rows * high
    scale = "10° and a quarter of the intensity a division, the axis of the beam in the middle"
    alternative = (
        f"A curve on a grid, {scale}. Its top is 4 divisions high; at 2 divisions it crosses "
        f"{half_angle_degrees / 10:.2f} divisions left and right of it. It is the same on both "
        "sides."
    )
    lines = "".join(f"M{x * DIVISION} 0V{height}" for x in range(columns + 1))
    lines += "".join(f"M0 {y * high}H{width}" for y in range(rows + 1))
    ticks = "".join(f"M{x} {height // 2 - 4}v8" for x in range(0, width + 1, DIVISION // 5))
    points = " ".join(
        f"{middle + angle / 10 * DIVISION:.1f},{height * (1 - share):.1f}"
        for angle, share in zip(degrees, left, strict=True)
    )
    return Drawn(
        f"{_opening(width + 24, height + 46, alternative)}"
        f'<g transform="translate(12 12)" fill="none"><path d="{lines}" stroke="#b8b8b8"/>'
        f'<path d="M{middle} 0V{height}M0 {height // 2}H{width}{ticks}" stroke="#595959"/>'
        f'<polyline points="{points}" stroke="#0072b2" stroke-width="3" stroke-linejoin="round"/>'
        f'<text x="0" y="{height + 24}" font-family="sans-serif" font-size="16" '
        f'fill="#1a1a1a">{escape(scale)}</text></g></svg>',
        alternative,
    )


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
        With a title for screen readers.

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
    width = max(320, 9 * len(words) + 40)
    return Drawn(
        f"{_opening(width, 130, alternative)}"
        f'<rect x="1.5" y="1.5" width="{width - 3}" height="127" rx="8" fill="#fff" '
        'stroke="#1a1a1a" stroke-width="3"/>'
        f'<text x="{width / 2:g}" y="74" text-anchor="middle" font-family="monospace" '
        f'font-size="52" fill="#1a1a1a">{escape(text)} <tspan font-size="30">{escape(unit)}'
        "</tspan></text>"
        f'<text x="{width / 2:g}" y="110" text-anchor="middle" font-family="sans-serif" '
        f'font-size="16" fill="#1a1a1a">{escape(words)}</text></svg>',
        alternative,
    )


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


def _grid(columns, places, heights, scale, alternative):
    margin, foot = 12, 34
    width, height = columns * DIVISION, 2 * HALF_HEIGHT * DIVISION
    lines = "".join(
        f"M{x * DIVISION} 0V{height}" for x in range(columns + 1)
    ) + "".join(f"M0 {y * DIVISION}H{width}" for y in range(2 * HALF_HEIGHT + 1))  # fmt: skip
    middle, part = height // 2, DIVISION // 5
    ticks = "".join(f"M{x} {middle - 4}v8" for x in range(0, width + 1, part))
    ticks += "".join(f"M-4 {y}h8" for y in range(0, height + 1, part))
    points = " ".join(
        f"{x * DIVISION:.1f},{middle - y * DIVISION:.1f}"
        for x, y in zip(places, heights, strict=True)
    )
    return (
        f"{_opening(width + 2 * margin, height + margin + foot, alternative)}"
        f'<g transform="translate({margin} {margin})" fill="none">'
        f'<path d="{lines}" stroke="#b8b8b8"/>'
        f'<path d="M0 {middle}H{width}{ticks}" stroke="#595959"/>'
        f'<polyline points="{points}" stroke="#0072b2" stroke-width="3" stroke-linejoin="round"/>'
        f'<text x="0" y="{height + 24}" font-family="sans-serif" font-size="16" '
        f'fill="#1a1a1a">{escape(scale)}</text></g></svg>'
    )


def _opening(width, height, alternative):
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" '
        f'width="{width}" height="{height}" style="max-width:100%;height:auto;background:#fff" '
        f'role="img"><title>{escape(alternative)}</title>'
    )
