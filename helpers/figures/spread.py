"""Picture of a population of boards against a limit: how many exceed it."""

import numpy as np

from helpers.figures import style
from helpers.figures.drawn import Drawn
from helpers.physics import tolerance
from helpers.quantities import write, write_as

_BINS = 40


def histogram(values, limit, name, unit):
    """Draw how a quantity spreads over many boards, with a limit.

    Parameters
    ----------
    values : array
        One value per board [the glossary's unit, such as A].
    limit : float
        The limit, such as a rating [the same].
    name : str
        What is shown, in words [-].
    unit : str
        In which unit to show it, such as 'mA' [-].

    Returns
    -------
    drawn : Drawn
        With a plotted figure.

    Raises
    ------
    ValueError
        As `tolerance.spread`, or if the unit is none of the glossary's.

    Notes
    -----
    About forty bars of equal width; a value at the limit does not exceed it. A limit far off
    stands as an arrow at the edge.

    References
    ----------
    As `tolerance.spread` and `tolerance.chance_above`.

    Examples
    --------
    >>> words = histogram([0.20, 0.22, 0.23, 0.26], 0.25, "power in the resistor", "W").finding
    >>> words.replace("\\xa0", " ").partition(":")[0]
    'Of 4 boards 25 % exceed 0.25 W'
    """
    values = np.atleast_1d(np.asarray(values, dtype=float))
    found = tolerance.spread(values, (5, 50, 95))
    chance = tolerance.chance_above(values, limit)
    count = f"{values.size:,}".replace(",", "\u00a0")
    boards = "boards" if values.size > 1 else "board"
    low, middle, high = (write_as(found.percentiles[percent], unit) for percent in (5, 50, 95))
    border = write_as(limit, unit)
    share = write(100.0 * chance, "percent") if chance else "none"
    finding = (
        f"Of {count} {boards} {share} exceed {border}: half lie above {middle}, nine in ten "
        f"between {low} and {high}."
    )
    details = (
        f"A histogram of {name}; mean {write_as(found.mean, unit)}, from "
        f"{write_as(values.min(), unit)} to {write_as(values.max(), unit)}."
    )
    figure, axes = style.blank(finding)
    least, most = values.min(), values.max()
    room = (most - least) or 0.1 * abs(most) or abs(limit) or 1.0
    # Both ends of the axis: all values, and the limit if it is not far away.
    left = min(least - 0.1 * room, max(limit - 0.1 * room, least - 2.0 * room))
    right = max(most + 0.1 * room, min(limit + 0.1 * room, most + 2.0 * room))
    edges = _edges(least, most, limit, room / _BINS)
    heights = np.diff(np.searchsorted(np.sort(values), edges, side="right"))
    over = edges[:-1] >= limit
    for part, meaning, label in (
        (~over, "light", "within"),
        (over, "heat", "above the limit"),
    ):
        look = style.LOOKS[meaning]
        axes.bar(
            edges[:-1][part], heights[part], np.diff(edges)[part], align="edge",
            color=look.colour, alpha=0.75, edgecolor=style.FACE, linewidth=0.5,
            hatch=look.hatch, label=label if heights[part].any() else "_",
        )  # fmt: skip
    look = style.LOOKS["limit"]
    place = float(np.clip(limit, left, right))
    axes.axvline(place, color=look.colour, linestyle=look.dash, linewidth=style.LINE_WEIGHT,
                 label=f"limit {border}")  # fmt: skip
    if place != limit:
        axes.plot(
            [place], [0.5], ">" if limit > place else "<", color=style.INK, markersize=12,
            clip_on=False, transform=axes.get_xaxis_transform(),
        )  # fmt: skip
    axes.set_xlim(left, right)
    style.count_in(axes.xaxis, unit)
    style.name_axes(axes, (name, unit), ("boards", ""))
    style.legend(axes)
    return Drawn(figure, finding, details)


def _edges(least, most, limit, width):
    """Edges of the bars, one of them at the limit, so that no bar is half above it."""
    first = np.floor((least - limit) / width) - 1
    last = np.ceil((most - limit) / width) + 1
    return limit + width * np.arange(first, last + 1)
