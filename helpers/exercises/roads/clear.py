"""Which numbers keep the wrong turns of a road away from its right answer, on whatever supply."""

from itertools import product
from types import SimpleNamespace

APART = 0.05  # a band of three per cent, and what the simple and the exact sum lie apart [-]


def _apart(wrong, right):
    """Whether a number is told from the right one, typed with two digits, too."""
    return abs(wrong - right) > APART * abs(right) and f"{wrong:.1e}" != f"{right:.1e}"


def clear(road, supply, name, values, exact=None, **given):
    """Return those values of a personal number at which no wrong turn ends beside the right one.

    Parameters
    ----------
    road : Road
    supply : Supply
        The learner's mains.
    name : str
        What the personal number is called.
    values : sequence
        What it may be.
    exact : callable or None
        From the personal numbers to the exact result, where the road is the simple sum for it.
    **given
        The other personal numbers.

    Returns
    -------
    values : list

    Examples
    --------
    >>> from helpers.exercises.roads.road import Road, Turn
    >>> from helpers.exercises.roads.steps.general import given
    >>> turn = Turn("doubled the square", "Twice what?", lambda value, volts, n: 2 * volts**2)
    >>> clear(Road(given("volts", turns=(turn,))), None, "volts", (0.3, 0.5, 0.7))
    [0.3, 0.7]
    """

    def is_clear(value):
        n = SimpleNamespace(supply=supply, **given, **{name: value})
        right = road.value(n)
        scales = (1.0, exact(n) / right) if exact else (1.0,)
        ends = product(scales, scales, road.wrong(n))
        return all(_apart(scale * wrong.value, other * right) for scale, other, wrong in ends)

    return [value for value in values if is_clear(value)]
