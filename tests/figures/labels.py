"""Where the words of a picture lie, at the widths that a page gives it, and what lies on them.

Words are measured by their letters, not by a browser: that is all that `helpers.figures.chart`
knows when it places them. What a browser makes of them: tests/browser/test_pictures.py.
"""

import re
from functools import cache
from itertools import combinations
from xml.etree import ElementTree

import numpy as np

WIDTHS = 338.0, 460.0, 640.0, 920.0
"""From what a window of 480 px leaves for a picture to the widest that there is [px]."""
LETTER, ABOVE, BELOW = 0.55, 0.72, 0.12
"""Width of a letter, and what of it stands above and below its line, in sizes of letters [-]."""


def faults(picture):
    """Return what is wrong with the words of a picture: width, text, and what lies on it."""
    found = []
    for svg, least in _drawings(ElementTree.fromstring(picture)):
        if "calc(" in svg.get("style", ""):  # as wide as its place
            for width in {least, *WIDTHS}:
                left, right = _margins(svg)
                found += _faults(svg, width - left - right, (-left, width - left), width)
        elif svg.get("viewBox"):
            left, _, wide, _ = map(float, svg.get("viewBox").split())
            found += _faults(svg, wide, (left, left + wide), wide)
    return found


def _drawings(tree, least=WIDTHS[0]):
    """Each drawing, and the least width of its place: less where others stand beside it."""
    if tree.tag == "svg":
        yield tree, least
        return
    beside = re.search(r"min\(100%,(\d+)px", tree.get("style", ""))
    for part in tree:
        yield from _drawings(part, float(beside[1]) if beside else least)


def _margins(svg):
    """Room left and right of a chart [px]."""
    style = svg.get("style")
    sides = re.search(r"margin:\d+px (\d+)(?:px)? \d+px (\d+)px", style)
    return float(sides[2]), float(sides[1])


def _faults(svg, wide, edges, width):
    words, bodies, backings, lines = [], [], [], []
    _gather(svg, wide, words, bodies, backings, lines)
    pieces = np.concatenate(lines) if lines else np.empty((0, 2, 2))
    for (text, box), (other, at) in combinations(words, 2):
        if _overlap(box, at):
            yield width, text, other
    for text, box in words:
        if box[0] < edges[0] - 0.5 or box[2] > edges[1] + 0.5:
            yield width, text, "the edge of the picture"
        own = [each for each in backings if each[0] <= box[0] and box[2] <= each[2]
               and each[1] <= box[1] and box[3] <= each[3]]  # fmt: skip
        if any(_overlap(box, each) for each in bodies + backings if each not in own):
            yield width, text, "a mark"
        if not own and _crossed(box, pieces):
            yield width, text, "a line"


def _gather(svg, wide, words, bodies, backings, lines):
    """Boxes of words, of marks and the lines of a drawing [px]."""
    for part in svg:
        if part.tag == "svg" and "preserveAspectRatio" in part.attrib:
            across = wide / float(part.get("viewBox").split()[2])
            for path in part.iter("path"):
                if path.get("fill") == "none":
                    lines += [line * (across, 1.0) for line in _pieces(path.get("d"))]
        elif part.tag == "svg":  # a grip
            x, y = _length(part.get("x"), wide), float(part.get("y"))
            shape = ElementTree.tostring(part, "unicode")
            left, right = (15.0 if arrow in shape else 6.0 for arrow in ("M-15", "M15"))
            if "rotate" in shape:
                bodies.append((x - 6.0, y - left, x + 6.0, y + right))
            else:
                bodies.append((x - left, y - 6.0, x + right, y + 6.0))
        elif part.tag == "circle":
            x, y, r = (_length(part.get(name), wide) for name in ("cx", "cy", "r"))
            if part.get("fill-opacity") is None:
                backed = "fill:var" in part.get("style", "")
                (backings if backed else bodies).append((x - r, y - r, x + r, y + r))
        elif part.tag == "text" and part.text:
            words.append((part.text, _box(part, wide)))
        elif part.tag == "g":
            _gather(part, wide, words, bodies, backings, lines)


def _length(text, wide):
    return wide * float(text[:-1]) / 100.0 if text.endswith("%") else float(text)


def _box(text, wide):
    size = float(text.get("font-size"))
    long = LETTER * size * len(text.text)
    left = _length(text.get("x"), wide) + float(text.get("dx", 0.0))
    left -= {"start": 0.0, "middle": 0.5, "end": 1.0}[text.get("text-anchor", "start")] * long
    y = float(text.get("y"))
    return left, y - ABOVE * size, left + long, y + BELOW * size


@cache
def _pieces(path):
    """The two ends of each piece of the lines of a path of M, H, V and L."""
    lines, at, waiting, order = [], (0.0, 0.0), None, "L"
    for token in re.findall(r"[MHV]|-?[\d.]+", path):
        if token in "MHV":
            order = token
            continue
        number = float(token)
        if order == "H":
            at = number, at[1]
        elif order == "V":
            at = at[0], number
        elif waiting is None:
            waiting = number
            continue
        else:
            at, waiting = (waiting, number), None
        if order == "M":
            lines.append([])
            order = "L"
        lines[-1].append(at)
    ends = [[line[i : i + 2] for i in range(len(line) - 1)] for line in lines]
    return [np.array(each).reshape(-1, 2, 2) for each in ends]


def _overlap(one, other):
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _crossed(box, pieces):
    """Whether a piece of a line passes through a box: it meets the box and parts its corners."""
    (left, top, right, bottom), x, y = box, pieces[..., 0], pieces[..., 1]
    near = (x.min(1) < right) & (x.max(1) > left) & (y.min(1) < bottom) & (y.max(1) > top)
    if not near.any():
        return False
    start, along = pieces[near, 0], pieces[near, 1] - pieces[near, 0]
    corners = np.array([(left, top), (left, bottom), (right, top), (right, bottom)])
    away = corners - start[:, None]
    side = along[:, None, 0] * away[..., 1] - along[:, None, 1] * away[..., 0]
    return bool(((side.max(1) >= 0.0) & (side.min(1) <= 0.0)).any())
