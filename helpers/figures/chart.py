"""Axes, curves, marks and words as SVG, in the one look of `helpers.figures.style`.

Matplotlib needs 50 ms and more for a picture; a few paths written by hand need one. The same
numbers always give the same text. Knows no physics.
"""

from html import escape
from textwrap import wrap
from typing import NamedTuple

import numpy as np

from helpers.figures.style import FACE, INK, LINE_WEIGHT, LOOKS, QUIET

WIDTH = 920
GRID = "#dddddd"
SMALL, NORMAL, LARGE = 13, 14, 15
TITLE_LETTERS, TITLE_LINE = 98, 19


def picture(height, name, title, *parts):
    """Return a whole picture: a white face, its title, and the parts.

    Parameters
    ----------
    height : int
        Height; the width is always the same [px].
    name : str
        What kind of picture it is, for who cannot see it.
    title : str
        The answer that the picture gives, with its numbers; takes one line or two.
    *parts : str
        SVG elements.

    Returns
    -------
    svg : str

    Examples
    --------
    >>> picture(40, "An empty picture", "Nothing")[-6:]
    '</svg>'
    """
    lines = "".join(
        words(16, 22 + TITLE_LINE * place, line, LARGE, bold=True)
        for place, line in enumerate(wrap(title, TITLE_LETTERS, break_on_hyphens=False))
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height}" width="{WIDTH}" '
        f'height="{height}" style="max-width:100%;height:auto;background:{FACE}" role="img" '
        f'font-family="DejaVu Sans, Verdana, sans-serif" aria-label="{escape(name)}">'
        f'<rect width="{WIDTH}" height="{height}" fill="{FACE}"/>{"".join(parts)}'
        f"{lines}</svg>"
    )


def words(x, y, text, size=NORMAL, anchor="start", bold=False, colour=INK):
    """Return a line of text on a white halo; `x`, `y` and `size` in [px]."""
    weight = ' font-weight="bold"' if bold else ""
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size}" text-anchor="{anchor}"{weight} '
        f'fill="{colour}" stroke="{FACE}" stroke-width="3" paint-order="stroke">'
        f"{escape(text)}</text>"
    )


def bar(x, y, width, height, share, meaning):
    """Return a horizontal bar, filled to a share of 0 to 1, in the look of its meaning."""
    filled = width * min(max(share, 0.0), 1.0)
    return (
        f'<rect x="{x}" y="{y}" width="{width}" height="{height}" fill="#eeeeee"/>'
        f'<rect x="{x}" y="{y}" width="{filled:.1f}" height="{height}" '
        f'fill="{LOOKS[meaning].colour}"/>'
        f'<rect x="{x}" y="{y}" width="{width}" height="{height}" fill="none" stroke="{QUIET}"/>'
    )


def legend(x, y, *entries):
    """Return a row that names curves by their look, from pairs of meaning and text."""
    parts = []
    for meaning, text in entries:
        parts.append(_path(f"M{x} {y - 5}h40", LOOKS[meaning].colour, LINE_WEIGHT, _dash(meaning)))
        parts.append(words(x + 48, y, text, SMALL))
        x += 70 + 8 * len(text)
    return "".join(parts)


def number_box(x, y, width, label, reading, remark):
    """Return a plain box with a reading in it, its label above and a remark below."""
    return (
        words(x, y - 8, label, NORMAL)
        + f'<rect x="{x}" y="{y}" width="{width}" height="52" rx="4" fill="#f4f4f4" '
        f'stroke="{QUIET}" stroke-width="1.5"/>'
        f'<text x="{x + width / 2}" y="{y + 35}" font-size="25" text-anchor="middle" '
        f'fill="{INK}">{escape(reading)}</text>' + words(x, y + 71, remark, SMALL)
    )


def _path(path, colour, weight, dash=""):
    dashes = f' stroke-dasharray="{dash}"' if dash else ""
    return f'<path d="{path}" fill="none" stroke="{colour}" stroke-width="{weight}"{dashes}/>'


def _dash(meaning):
    dash = LOOKS[meaning].dash
    return "" if dash == "-" else " ".join(f"{LINE_WEIGHT * length:.1f}" for length in dash[1])


class Axis(NamedTuple):
    """One axis: its ends in the unit of the numbers, its name with the unit, and its ticks."""

    low: float
    high: float
    name: str
    ticks: dict
    logarithmic: bool = False

    def share(self, values):
        """Return how far along the axis values lie, 0 at `low` and 1 at `high` [-]."""
        low, high = self.low, self.high
        if self.logarithmic:
            low, high, values = np.log(low), np.log(high), np.log(values)
        return (np.asarray(values) - low) / (high - low)


class Chart:
    """A pair of axes in a box of the picture; collects elements and hands them over as SVG.

    Parameters
    ----------
    box : tuple of int
        Left, top, width and height of the space between the axes [px].
    across, up : Axis
        The axes; their ticks map a place to its words.
    """

    def __init__(self, box, across, up):
        self.box, self.across, self.up = box, across, up
        self.faces, self.grid, self.elements = [], [], []
        left, top, width, height = box
        for value, text in up.ticks.items():
            y = float(self._y(value))
            self.grid.append(_path(f"M{left} {y:.1f}H{left + width}", GRID, 1))
            self.elements.append(words(left - 12, y + 5, text, SMALL, "end"))
        for value, text in across.ticks.items():
            x = float(self._x(value))
            self.grid.append(_path(f"M{x:.1f} {top}V{top + height}", GRID, 1))
            if text:  # a long one at the right edge must not run into what stands beside the chart
                long = len(text) > 6 and x > left + width - 1
                where = (x + 26, "end") if long else (x, "middle")
                self.elements.append(words(where[0], top + height + 17, text, SMALL, where[1]))
        self.elements.append(_path(f"M{left} {top}V{top + height}H{left + width}", QUIET, 1.2))
        self.elements.append(words(left, top - 8, up.name, SMALL))
        if across.name:
            self.elements.append(words(left + width, top + height + 35, across.name, SMALL, "end"))

    def _x(self, values):
        left, _, width, _ = self.box
        return left + width * self.across.share(values)

    def _y(self, values):
        _, top, _, height = self.box
        return top + height * (1.0 - self.up.share(values))

    def _points(self, across, up):
        xs, ys = np.broadcast_arrays(self._x(across), self._y(up))
        pairs = zip(xs.ravel().tolist(), ys.ravel().tolist(), strict=True)
        return " ".join(f"{x:.1f},{y:.1f}" for x, y in pairs)

    def line(self, across, up, meaning):
        """Draw a curve in the look of its meaning."""
        points = "M" + self._points(across, up)
        colour = LOOKS[meaning].colour
        self.elements.append(_path(points, colour, LINE_WEIGHT, _dash(meaning)))

    def fill(self, across, up, paint):
        """Fill the shape that points enclose with a colour, behind the grid."""
        self.faces.append(f'<polygon points="{self._points(across, up)}" fill="{paint}"/>')

    def fill_below(self, across, up, paint):
        """Fill the shape between a curve and its zero line."""
        self.fill([*across, across[-1], across[0]], [*up, 0.0, 0.0], paint)

    def mark(self, across, up, meaning="limit"):
        """Put a round mark with a cross hair on a point."""
        left, top, width, height = self.box
        x, y = float(self._x(across)), float(self._y(up))
        cross = f"M{x:.1f} {top + height}V{y:.1f}M{left} {y:.1f}H{x:.1f}"
        self.elements.append(
            _path(cross, INK, 1, "4 4")
            + f'<circle cx="{x:.1f}" cy="{y:.1f}" r="8" fill="{LOOKS[meaning].colour}" '
            f'stroke="{FACE}" stroke-width="2.5"/>'
        )

    def note(self, across, up, text, anchor="start", shift=(0, 0), bold=False):
        """Write words at a point, moved by `shift` [px]."""
        x, y = float(self._x(across)) + shift[0], float(self._y(up)) + shift[1]
        self.elements.append(words(x, y, text, NORMAL, anchor, bold))

    def svg(self):
        """Return all that was drawn."""
        return "".join([*self.faces, *self.grid, *self.elements])
