"""Where words stand beside what they are of, so that they meet nothing else. Draws nothing."""

import numpy as np

LETTER, ASCENT, DESCENT = 7.2, 9.5, 1.5
"""Width of a letter, and what of it stands above and below its line [px]."""
ASIDE, APART = 4.0, 4.0
"""How far words stand beside and above their point [px]."""
OWN, NEAR, CLEAR = 1.0, 2.5, 6.0
"""How far they stay away from their own line, from others, and a line's name from others [px]."""
ABOVE_AXES, TRIED = 16.0, 12
"""How far above the axes words may reach [px], and how many places along a line are tried."""
_WAYS = np.array([(0, -1), (1, -1), (-1, -1), (0, 1), (1, 1), (-1, 1)])


def places(labels, lines, bodies, scale, high):
    """Yield for each label where it meets nothing, or None.

    Parameters
    ----------
    labels : list of tuple
        Words, the number of their own line, their points or None for that line, and the size of a
        mark on them [px], in the order in which they take their places; more is left alone.
    lines : list of tuple
        Points of a line, and which of them no other line covers.
    bodies : list of tuple
        Middle of each mark and written word, and half its size: x, y, aside and high.
    scale : float
        Width of a unit of x; heights are told in pixels [px].
    high : float
        Height of the space between the axes, which is 1000 units wide [px].

    Yields
    ------
    place : tuple or None
        x in its unit, the side to which the words go from there, -1 to 1, and y of their line.

    Notes
    -----
    Each label's box has its point's x at an edge or within. Where the picture is wider, all else
    moves away from that x, so a place that is free in the narrowest picture is free in each. The
    highest place that is free is taken: above a crest, a plateau, a mark.

    Examples
    --------
    >>> flat = np.array([(0.0, 50.0), (1000.0, 50.0)])
    >>> label, seen = ("ours", 0, None, 0.0), np.array([True, True])
    >>> list(places([label], [(flat, seen)], [], 0.3, 90.0))
    [(0.0, 1, 44.5)]
    >>> list(places([label], [(flat, seen), (flat - 9.0, seen)], [], 0.3, 90.0))  # one above it
    [(0.0, 1, 63.5)]
    """
    wide = np.array((scale, 1.0))
    pieces, owner = [np.empty((0, 2, 2))], []
    for number, (line, seen) in enumerate(lines):
        pieces.append((np.stack((line[:-1], line[1:]), axis=1) * wide)[seen[:-1] | seen[1:]])
        owner += [number] * len(pieces[-1])
    pieces, owner = np.concatenate(pieces), np.array(owner)
    taken = [(np.array((x * scale, y)), np.array(half)) for x, y, *half in bodies]
    for text, own, points, reach, *_ in labels:
        # A line's name too near another line would seem to be of that one.
        apart = np.where(owner == own, OWN, CLEAR if points is None else NEAR)
        points = lines[own][0][lines[own][1]] if points is None else points
        points = points[:: len(points) // TRIED + 1]
        points = points[np.argsort(points[:, 1], kind="stable")]
        half = np.array((len(text) * LETTER, ASCENT + DESCENT)) / 2
        aside = _WAYS * (half + (ASIDE, APART + reach))
        middles = (points[:, None] * wide + aside).reshape(-1, 2)
        free = (middles >= half + (APART, -ABOVE_AXES)).all(axis=1)
        free &= (middles <= (1000 * scale, high - APART) - half).all(axis=1)
        for middle, size in taken:
            free &= (np.abs(middles - middle) >= half + size + 2.0).any(axis=1)
        free[free] = ~_crossed(middles[free], half + apart[:, None], pieces)
        if not free.any():
            yield None
            continue
        first = int(np.argmax(free))
        taken.append((middles[first], half))
        side = int(_WAYS[first % len(_WAYS), 0])
        yield (
            float(points[first // len(_WAYS), 0]),
            side,
            float(middles[first, 1] + ASCENT - half[1]),
        )


def _crossed(middles, halves, pieces):
    """Whether any piece passes through each box: it comes near, and parts the corners."""
    least, most = pieces.min(axis=1) - halves, pieces.max(axis=1) + halves
    box, piece = np.nonzero(((least < middles[:, None]) & (most > middles[:, None])).all(axis=2))
    across, down = (pieces[piece, 1] - pieces[piece, 0]).T
    x, y = (middles[box] - pieces[piece, 0]).T
    # A line passes within a corner's distance of the middle, measured square to it.
    reach = np.abs(down) * halves[piece, 0] + np.abs(across) * halves[piece, 1]
    hit = np.abs(across * y - down * x) <= reach
    return np.bincount(box[hit], minlength=len(middles)) > 0
