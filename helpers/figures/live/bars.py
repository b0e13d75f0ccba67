"""Live picture of things compared: a row for each, a column of bars for each measure.

Gets numbers and their words; computes no physics.
"""

from typing import NamedTuple

from helpers.figures.live.chart import NORMAL, SMALL, bar, picture, words


class Column(NamedTuple):
    """One measure of all rows: its name, shares of the longest bar, words, and its look."""

    name: str
    shares: tuple
    texts: tuple
    meaning: str


def compared(rows, columns, title):
    """Return the picture of a few things compared by a few measures.

    Parameters
    ----------
    rows : sequence of str
        The things.
    columns : sequence of Column
        The measures; each has one share and one text a row.
    title : str
        The answer that the picture gives.

    Returns
    -------
    svg : str
    """
    left, wide, top, high = 212, 178, 76, 50
    parts = []
    for place, column in enumerate(columns):
        x = left + wide * place
        parts.append(words(x, top - 14, column.name, SMALL))
        for line, (share, text) in enumerate(zip(column.shares, column.texts, strict=True)):
            y = top + high * line
            parts.append(bar(x, y + 4, wide - 22, 12, share, column.meaning))
            parts.append(words(x, y + 34, text, NORMAL))
    for line, row in enumerate(rows):
        parts.append(words(16, top + high * line + 20, row, NORMAL, bold=True))
    name = "Bars: a row for each circuit, a column for each measure"
    return picture(top + high * len(rows) + 12, name, title, *parts)
