"""Which numbers keep the wrong turns of a road away from its right answer, on whatever supply."""

from types import SimpleNamespace

APART = 0.05  # a band of three per cent, and what the simple and the exact sum lie apart [-]


def clear(road, supply, name, values, **given):
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
        return all(abs(wrong.value - right) > APART * abs(right) for wrong in road.wrong(n))

    return [value for value in values if is_clear(value)]
