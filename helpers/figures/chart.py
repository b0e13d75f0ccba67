"""Pictures as HTML and SVG in the one look of `helpers.figures.style`: axes, curves, bars, words.

A picture is as wide as its place and as high as it needs. Curves stretch with it; letters never
do, so that they have the same size in a narrow window, and grow with the reader's zoom. Words stand
at an axis, at the end of a line, or beside what they are of where `placing` finds room at every
width; what finds none stands in a key. Ink and face are those of the page. A picture takes
milliseconds; the same numbers always give the same text. Knows no physics.
"""

from html import escape
from typing import NamedTuple

import numpy as np

from helpers.figures import placing
from helpers.figures.drawn import Drawn
from helpers.figures.style import INK, LINE_WEIGHT, LOOKS
from helpers.figures.words import title_of

SMALL, NORMAL = 13, 14
"""Sizes of letters [px]."""
FACE = "var(--jp-layout-color0, #fff)"
_GRID = 'stroke="currentColor" stroke-opacity=".2"'
_RIM = f"stroke:{FACE};stroke-width"
_CLEAR = f"paint-order:stroke;{_RIM}:3px"
_STRETCHED = 1000
"""Width of the space between the axes, before it is stretched to that of the page."""
_NARROW = 300
"""The least width of a place for a picture [px]."""


def picture(name, finding, *parts, details=""):
    """Return a whole picture: its title, without decimals, and the parts, one below the other.

    Parameters
    ----------
    name : str
        What kind of picture it is, for who cannot see it.
    finding : str
        What it shows, to be cut to a title by `title_of`; '' where that is asked, and then the name
        says what can be seen.
    *parts : str
        Of this module.
    details : str
        As for `Drawn`.

    Returns
    -------
    drawn : Drawn

    Examples
    --------
    >>> drawn = picture("An empty picture", "It is empty: 0.0 curves.")
    >>> drawn.picture[-27:], drawn.words
    ('>It is empty</div></figure>', 'It is empty: 0.0 curves.')
    """
    top = (
        f'<div style="font-size:{NORMAL}px;font-weight:600;max-width:38rem;margin-bottom:.4rem">'
        f"{escape(title_of(finding))}</div>"
    )
    return Drawn(
        f'<figure role="img" aria-label="{escape(name)}" style="margin:.4rem 0;max-width:920px;'
        f'font-size:{SMALL}px;line-height:1.35">{top if finding else ""}{"".join(parts)}</figure>',
        finding or name,
        details,
    )


def beside(*parts, least=300):
    """Return parts side by side where each has `least` [px], and below each other elsewhere."""
    cells = "".join(f'<div style="min-width:0">{part}</div>' for part in parts)
    return (
        '<div style="display:grid;gap:.2rem 1.6rem;'
        f'grid-template-columns:repeat(auto-fit,minmax(min(100%,{least}px),1fr))">{cells}</div>'
    )


def stacked(*charts):
    """Return charts below each other, one place of theirs right above the other."""
    left, right = (max(room) for room in zip(*(chart.room() for chart in charts), strict=True))
    return "".join(chart.html(left, right) for chart in charts)


def heading(text):
    """Return a line that names what stands below it."""
    return f'<div style="font-weight:600;margin-top:.3rem">{escape(text)}</div>'


def labelled(label, said, style=""):
    """Return a label and what is said of it, at the two ends of a line where they fit in one."""
    return (
        '<div style="display:flex;flex-wrap:wrap;justify-content:space-between;column-gap:1rem'
        f'{style}"><span>{escape(label)}</span><b>{escape(said)}</b></div>'
    )


def bars(meaning, *rows):
    """Return horizontal bars in the look of a meaning, each from a label, a share and its words.

    Examples
    --------
    >>> bars("heat", ("Heat", 0.5, "half")).count("50.0%")
    1
    """
    colour = _ink(meaning)
    return "".join(
        labelled(label, said, ";margin-top:.3rem")
        + '<svg width="100%" height="12" style="display:block" stroke="currentColor">'
        f'<rect width="{100 * min(max(share, 0.0), 1.0):.1f}%" height="12" stroke="none" '
        f'fill="{colour}"/><rect width="100%" height="12" fill="none"/></svg>'
        for label, share, said in rows
    )


def number_box(label, reading, remark):
    """Return a plain box with a reading in it, its label above and a remark below."""
    return (
        f'{heading(label)}<div style="border:1.5px solid currentColor;border-radius:4px;'
        'padding:.2rem .5rem;text-align:center;font-size:25px;line-height:1.4">'
        f"{escape(reading)}</div><div>{escape(remark)}</div>"
    )


def _ink(meaning):
    colour = LOOKS[meaning].colour
    return "currentColor" if colour == INK else colour


def _path(path, meaning):
    dashes = " ".join(f"{LINE_WEIGHT * length:.1f}" for length in LOOKS[meaning].dash)
    return (
        f'<path d="{path}" fill="none" stroke="{_ink(meaning)}" stroke-width="{LINE_WEIGHT}" '
        f'stroke-dasharray="{dashes}" vector-effect="non-scaling-stroke"/>'
    )


def _key(name, rows):
    """Return the name of an axis, and beside it what stands in the key, with width and look."""
    said = "".join(
        f'<span><svg width="{wide}" height="12" fill="currentColor" style="margin-right:.3rem">'
        f"{look}</svg>{escape(text)}</span>"
        for wide, look, text in rows
    )
    flow = "display:flex;flex-wrap:wrap;column-gap:1.2rem"
    return f'<div style="{flow}"><span>{escape(name)}</span>{said}</div>'


def words(x, y, text, anchor="middle", size=SMALL, more=""):
    """Return a line of text in a drawing."""
    return (
        f'<text x="{x}" y="{y:.1f}" font-size="{size}" text-anchor="{anchor}" fill="currentColor"'
        f"{more}>{escape(text)}</text>"
    )


def grab(moves, low, high, way, place, period=0):
    """Return a face on which a hand moves an explorer's control, from one end to the other.

    Where `period` is given, places count anew after each.
    """
    turned, free = ("ew", "pan-y") if way == "across" else ("ns", "pan-x")
    return (
        f'<rect {place} fill="transparent" data-moves="{moves}" data-way="{way}" '
        f'data-ends="{low:g} {high:g} {period:g}" '
        f'style="cursor:{turned}-resize;touch-action:{free}"/>'
    )


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

    def unnamed(self):
        """Return the same without words, for a chart that stands right above another."""
        return self._replace(name="", ticks=dict.fromkeys(self.ticks, ""))


def axis(name, low, high, step):
    """Return an axis in the unit of its name, with a tick at each step."""
    return Axis(low, high, name, {float(at): f"{at:g}" for at in np.arange(low, high + 0.1, step)})


class Chart:
    """A pair of axes; collects elements and hands them over as HTML.

    Parameters
    ----------
    height : int
        Height of the space between the axes [px].
    across, up : Axis
        The axes; their ticks map a place to its words, where a line break parts two lines.
    """

    def __init__(self, height, across, up):
        self.height, self.across, self.up = height, across, up
        self.curves, self.letters, self.ends = [], [], []
        self.lines, self.bodies, self.labels = [], [], []
        grid = "".join(f"M0 {self._y(value):.1f}H{_STRETCHED}" for value in up.ticks)
        grid += "".join(f"M{self._x(value):.1f} 0V{height}" for value in across.ticks)
        self.faces = [f'<path d="{grid}" {_GRID} vector-effect="non-scaling-stroke"/>']
        for value, text in up.ticks.items():
            self.letters.append(words(-8, self._y(value) + 4.5, text, "end"))
        for value, text in across.ticks.items():
            for line, part in enumerate(text.split("\n")):
                self.write(value, height + 18 + 16 * line, part)
        self._thin(f"M0 0V{height}H{_STRETCHED}")

    def _x(self, values):
        return _STRETCHED * self.across.share(values)

    def _y(self, values):
        return self.height * (1.0 - self.up.share(values))

    def _place(self, value):
        return f"{100 * float(self.across.share(value)):.1f}%"

    def _places(self, across, up):
        xs, ys = np.broadcast_arrays(self._x(across), self._y(up))
        return np.stack((xs.ravel(), ys.ravel()), axis=1)

    def _points(self, across, up):
        return " ".join(f"{x:.1f},{y:.1f}" for x, y in self._places(across, up).tolist())

    def _thin(self, path, dashes=""):
        self.curves.append(f'<path d="{path}" fill="none" stroke="currentColor"{dashes} '
                           'vector-effect="non-scaling-stroke"/>')  # fmt: skip

    def line(self, across, up, meaning, name="", label=""):
        """Draw a curve in the look of its meaning, its name beside its right end, or as a label."""
        self.curves.append(_path("M" + self._points(across, up), meaning))
        places = self._places(across, up)
        for line, bare in self.lines:  # where it lies on another, that one is not seen
            bare &= len(line) != len(places) or (line != places).any(axis=1)
        self.lines.append((places, np.full(len(places), True)))
        if name:
            self.ends.append((float(self._y(np.ravel(up)[-1])), name))
        self.label(label, 30, _path("M0 6H30", meaning))

    def label(self, text, wide=0, look="", at=None, reach=0.0, key=""):
        """Ask for words beside the last line, or at places with a mark of such reach [px].

        Where they meet anything they go to the key, as `key` if that is given, behind a sample
        of what they are of: `look`, and how wide it is [px]. What has no sample is left out there.
        """
        points, row = self._places(*at) if at else None, (wide, look, key or text)
        if text:
            self.labels.append((text, len(self.lines) - 1, points, reach, row))

    def _labelled(self, wide):
        """Return the labels that find room on axes so wide [px], and the rows of the key."""
        scale, placed, rows = wide / _STRETCHED, "", {}
        found = placing.places(self.labels, self.lines, self.bodies, scale, self.height)
        for (text, *_, row), place in zip(self.labels, found, strict=True):
            if place:
                x, side, y = place
                more, anchor = f' dx="{side * placing.ASIDE:g}"', ("middle", "start", "end")[side]
                placed += words(f"{x / 10:.1f}%", y, text, anchor, more=more)
            elif row[0]:
                rows[row[1]] = row  # a number takes the place of its curve's name, and tells it
        return placed, rows.values()

    def fill(self, across, up, meaning, depth=0.2):
        """Tint the shape that points enclose in the colour of a meaning."""
        self.faces.append(
            f'<polygon points="{self._points(across, up)}" fill="{_ink(meaning)}" '
            f'fill-opacity="{depth}"/>'
        )

    def fill_between(self, across, up, other, meaning, depth=0.2):
        """Tint what lies between two curves, the second a number or as long as the first."""
        other = np.broadcast_to(other, np.shape(up))
        self.fill([*across, *across[::-1]], [*up, *other[::-1]], meaning, depth)

    def pour(self, across, up, level, meaning):
        """Tint what lies under a curve, poured flat: a box of that level, moved once if it may."""
        ends = self._points(across, 0.0 * np.asarray(up)).split()[::-1]
        heap, box = (f"M{self._points(across, y)} {' '.join(ends)}z" for y in (up, level))
        self.faces.append(
            f'<path class="cw-pour" d="{box}" fill="{_ink(meaning)}" fill-opacity=".3" '
            f"style=\"--cw-heap:path('{heap}')\"/>"
        )

    def mark(self, across, up, meaning="limit", label=""):
        """Put a round mark with a cross hair on a point, and say what it marks."""
        x, y = float(self._x(across)), float(self._y(up))
        self._thin(f"M{x:.1f} {self.height}V{y:.1f}M0 {y:.1f}H{x:.1f}", ' stroke-dasharray="4 4"')
        self.lines.append((np.array(((x, self.height), (x, y), (0, y))), np.full(3, True)))
        look = f'fill="{_ink(meaning)}" style="{_RIM}:2.5px"'
        self._disc(across, up, 8, look)
        self.label(label, 12, f'<circle cx="6" cy="6" r="6" {look}/>', (across, up), 8)

    def _disc(self, across, up, radius, look):
        place = f'cx="{self._place(across)}" cy="{float(self._y(up)):.1f}" r="{radius}"'
        self.letters.insert(0, f"<circle {place} {look}/>")
        self.bodies.append((float(self._x(across)), float(self._y(up)), radius, radius))

    def write(self, across, y, text):
        """Write words in the middle of a place along the first axis, at a height [px]."""
        self.letters.append(words(self._place(across), y, text))
        self.bodies.append((float(self._x(across)), y - 4, placing.LETTER * len(text) / 2, 5.5))

    def pin(self, across, up, text="", label=""):
        """Put a letter or two on a point in a disc of their own, and say what it is."""
        look = f'stroke="currentColor" style="fill:{FACE}"'
        self._disc(across, up, 10, look)
        self.write(across, float(self._y(up)) + 4.5, text)
        self.label(label, 12, f'<circle cx="6" cy="6" r="5" {look}/>', (across, up), 10)

    def ghost(self, across, up):
        """Put a hollow mark where a point was a moment ago."""
        look = 'fill="none" stroke="currentColor" stroke-dasharray="3 2" stroke-width="2"'
        self._disc(across, up, 8, look)

    def dot(self, across, up, meaning, label="", key=""):
        """Put a small dot on a point of the last line, its number beside it or in the key."""
        self._disc(across, up, 5, f'fill="{_ink(meaning)}" style="{_RIM}:1.5px"')
        self.label(label, 30, _path("M0 6H30", meaning), (across, up), 5, key)

    def read_at(self, at, *curves):
        """Draw curves with their names, and on each at one place a dot with its number.

        A curve is its places, heights, meaning and name. Returns height and name of each there.
        """
        self.line((at, at), self.up[:2], "limit")
        dots = []
        for across, up, meaning, name in curves:
            there = float(np.interp(at, across, up))
            self.line(across, up, meaning, label=name)
            self.dot(at, there, meaning, f"{there:.3g}", f"{name}: {there:.3g}")
            dots.append((there, name))
        return dots

    def grip(self, moves, across, up, period=0, way="across", label=""):
        """Let a hand move an explorer's control on the chart itself, by a grip at a point.

        `moves` is the control's key. Where `period` is given, places count anew after each.
        """
        low, high, *_ = self.across if way == "across" else self.up
        place, y = self._place(across), float(self._y(up))
        share = self.across.share(across) if way == "across" else 1.0 - self.up.share(up)
        # No arrow where an axis ends: nothing moves that way, and its numbers stand there.
        arrows = "M-15 0l6 -5v10z" * bool(share > 0.06) + "M15 0l-6 -5v10z" * bool(share < 0.94)
        turn = "" if way == "across" else ' transform="rotate(90)"'
        size = (15, 6) if way == "across" else (6, 15)
        self.bodies.append((float(self._x(across)), y, *size))
        self.letters.append(
            f'<svg x="{place}" y="{y:.1f}" overflow="visible">'
            f'<g class="cw-grip" fill="currentColor"{turn} style="{_CLEAR}"><circle r="6"/>'
            f'<path d="{arrows}"/></g></svg>'
            + grab(moves, low, high, way, 'width="100%" height="100%"', period)
        )
        self.label(label, 12, '<circle cx="6" cy="6" r="6"/>', (across, up), 15)

    def room(self):
        """Return how much room the words left and right of the axes take [px]."""
        names = [line for _, name in self.ends for line in name.split("\n")]
        right = 14 + 7 * max(map(len, names)) if names else 26
        return 14 + 8 * max(map(len, self.up.ticks.values()), default=0), right

    def html(self, left=0, right=0):
        """Return all that was drawn, between the names of the axes, with so much room [px]."""
        left, right = (max(pair) for pair in zip(self.room(), (left, right), strict=True))
        labels, key = self._labelled(_NARROW - left - right)
        names = "".join(
            words("100%", top + 11 + 15 * line, text, "start", more=' dx="8"')
            for top, name in self._names_apart() for line, text in enumerate(name.split("\n"))
        )  # fmt: skip
        lines = max(len(text.split("\n")) if text else 0 for text in self.across.ticks.values())
        return (
            f'{_key(self.up.name, key)}<svg height="{self.height}" style="display:block;'
            f"width:calc(100% - {left + right}px);height:{self.height}px;overflow:visible;"
            f'margin:20px {right}px {8 + 16 * lines}px {left}px"><svg width="100%" height="100%" '
            f'viewBox="0 0 {_STRETCHED} {self.height}" preserveAspectRatio="none" '
            f'overflow="visible">{"".join([*self.faces, *self.curves])}</svg>'
            f'{names}{"".join(self.letters)}{labels}</svg><div style="text-align:right">'
            f"{escape(self.across.name)}</div>"
        )

    def _names_apart(self):
        """Return the top of each name at a line's end, moved so that none lies over another."""
        placed, top = [], -8.0
        for y, name in sorted(self.ends):
            tall = 15 * len(name.split("\n"))
            placed.append((max(y - tall / 2, top), name))
            top = placed[-1][0] + tall
        low = self.height + 2.0
        for place, (top, name) in reversed(list(enumerate(placed))):
            low = min(top, low - 15 * len(name.split("\n")))
            placed[place] = low, name
        return placed
