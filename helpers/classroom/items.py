"""Which questions are too easy, too hard, or tell nobody apart: simple sums over the mark book.

Knows the mark book; must never mark anything itself.
"""

from math import sqrt
from operator import gt, lt
from statistics import mean, median
from typing import NamedTuple

EASY, HARD = 0.95, 0.3  # common practice, no source
FEWEST = 5  # learners on each side of the middle, below which nothing is said


class Item(NamedTuple):
    """A question in numbers: who had it right at the first try, and how that tells learners apart.

    `apart` is the share of these among learners above the middle of all other questions, less that
    among those below it; None where there are too few on either side.
    """

    right: int
    tried: int
    apart: float | None

    @property
    def facility(self):
        return self.right / self.tried

    @property
    def remark(self):
        """What to look into; '' where there is nothing, or chance alone may have done it."""
        if self.apart is None:
            return ""
        if self.apart < -by_chance(self.tried)[1] / 100:
            return "turned round?"
        return "too easy?" if self.facility >= EASY else "too hard?" * (self.facility <= HARD)


def items(book):
    """Return an `Item` for each marked question that somebody has answered, by its id."""
    firsts = {row.learner: set(row.firsts) for row in book.rows}
    found = {}
    for question in [question for lesson in book.lessons for question in lesson.marked]:
        tried = [firsts[row.learner] for row in book.rows if question.id in row.states]
        if tried:
            found[question.id] = _item(question.id, tried)
    return found


def _item(name, tried):
    rest = [len(right) - (name in right) for right in tried]
    middle = median(rest)
    above, below = [
        [name in right for right, one in zip(tried, rest, strict=True) if beyond(one, middle)]
        for beyond in (gt, lt)
    ]
    few = min(len(above), len(below)) < FEWEST
    right = sum(name in right for right in tried)
    return Item(right, len(tried), None if few else mean(above) - mean(below))


def by_chance(learners):
    """Return how far chance alone moves a share, and a difference between two halves [points].

    Notes
    -----
    Two standard errors of a share of a half, the worst case: 200 √(¼ / n), and √2 times that for
    halves of n/2 each, taken apart.

    Examples
    --------
    >>> [round(points) for points in by_chance(24)]
    [20, 41]
    """
    return 100 / sqrt(learners), 200 / sqrt(learners)
