"""The pen of the circuit drawings: symbols of IEC 60617 and words, as SVG in the page's own ink.

Knows symbols, never a circuit.
"""

import re
from html import escape
from itertools import pairwise

from helpers.figures.chart import SMALL
from helpers.figures.drawn import Drawn

UNIT, LETTER = 26.0, 7.4
"""A unit of a drawing, and room for a letter [px]."""
_DRAWN_AS = {"Resistor": "ResistorIEC", "Fuse": "FuseIEC", "Heater": "ResistorIEC"}


class Pen:
    """Puts parts between two points and words at a point, so that a layout reads as a list."""

    def __init__(self):
        import schemdraw
        from schemdraw import elements

        schemdraw.use("svg")
        self.elements, self.drawing = elements, schemdraw.Drawing(show=False)
        self.left = self.right = 0.0
        self.drawing.config(
            unit=3.5, inches_per_unit=UNIT / 72, fontsize=SMALL, font="sans-serif", lw=1.6,
            margin=0.3,
        )  # fmt: skip

    def part(self, kind, start, end):
        from schemdraw.segments import Segment

        element, lines = getattr(self.elements, _DRAWN_AS.get(kind, kind))(), ()
        if isinstance(element, self.elements.Diode):
            # The wire goes on through the triangle, as the standard draws a diode.
            lines = ([(0.0, 0.0), (0.35, 0.0)],)
        elif kind == "Heater":  # a box with bars across it
            lines = ([(place, 0.25), (place, -0.25)] for place in (0.25, 0.5, 0.75))
        element.segments.extend(map(Segment, lines))
        self.drawing.add(element.endpoints(start, end))

    def chain(self, start, *path):
        """Parts one behind the other: a kind, then the point that it leads to, and so on."""
        for kind, end in zip(path[::2], path[1::2], strict=True):
            self.part(kind, start, end)
            start = end

    def resistors(self, start, end, count=2):
        """So many resistors in series: of one alone nothing is left when it fails short."""
        (x, y), (to_x, to_y) = start, end
        steps = [each / count for each in range(count + 1)]
        places = [(x + (to_x - x) * step, y + (to_y - y) * step) for step in steps]
        for one, other in pairwise(places):
            self.part("Resistor", one, other)

    def back(self, start, end, words, count):
        """The wire back to neutral on the left, with resistors in it up to `end` if there are."""
        if count:
            self.resistors((0.0, start[1]), (end, start[1]), count)
            self.write(end / 2.0, start[1] + 0.75, words)
        self.wire(start, (end if count else 0.0, start[1]))

    def bridge(self, west, east, north, south):
        """Four diodes that lead both half-cycles from north to south through an LED."""
        for start, end in ((west, north), (east, north), (south, west), (south, east)):
            self.part("Diode", start, end)
        self.part("LED", north, south)
        self.dots(west, east, north, south)

    def earth(self, up):
        """The third wire, which goes past the light to the metal of the pot."""
        self.terminal(0.0, up, "earth")
        self.wire((0.0, up), (2.2, up))
        self.write(2.5, up, "to touchable metal only", "left")

    def supply(self, live, neutral):
        """The two wires that feed what is drawn, by their heights."""
        self.terminal(0.0, live, "live")
        self.terminal(0.0, neutral, "neutral")

    def terminal(self, across, up, words):
        self.drawing.add(self.elements.Dot(open=True).at((across, up)))
        self.write(across, up - 0.65, words)

    def wire(self, *points):
        for start, end in pairwise(points):
            self.part("Line", start, end)

    def dots(self, *points):
        for point in points:
            self.drawing.add(self.elements.Dot().at(point))

    def write(self, across, up, lines, align="center"):
        start = {"left": 0.0, "center": 0.5, "right": 1.0}[align]
        for place, words in enumerate(lines.split("\n")):
            label = self.elements.Label().at((across, up - 0.65 * place))
            self.drawing.add(label.label(words, loc="center", halign=align, valign="center"))
            wide = LETTER * len(words)
            self.left = min(self.left, UNIT * across - start * wide)
            self.right = max(self.right, UNIT * across + (1.0 - start) * wide)

    def done(self, title, alternative):
        """Return the drawing as SVG, with title and description, and the words for it.

        In the page's own ink, and never wider than its letters are readable.
        """
        svg = self.drawing.get_imagedata("svg").decode("utf-8").replace("black", "currentColor")
        opening, _, inside = svg.partition(">")
        left, top, wide, high = map(float, re.search('viewBox="([^"]*)"', opening)[1].split())
        left, right = min(left, self.left - 4), max(left + wide, self.right + 4)
        return Drawn(
            f'<svg viewBox="{left:.1f} {top:.1f} {right - left:.1f} {high:.1f}" '
            f'width="{right - left:.1f}" style="max-width:100%" role="img"><title>{escape(title)}'
            f"</title><desc>{escape(alternative)}</desc>{inside}",
            alternative,
        )
