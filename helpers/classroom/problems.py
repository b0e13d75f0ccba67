"""What goes wrong outside, on the page of a mark book: where, what was found, what to do."""

from dataclasses import dataclass

from helpers.exercises.refusals import counted

LOST, ASK, FINE = range(3)  # how urgent a problem is: answers lost, something to ask, nothing


@dataclass(frozen=True, slots=True)
class Problem:
    """Something to look at: where it was, what was found there, what to do, how urgent it is.

    `copied` is what that asks to be copied, each by itself.
    """

    place: str
    found: str
    advice: str
    rank: int = LOST
    copied: tuple = ()


def capped(problems, most, place):
    """Return at most so many problems, the rest as one that counts them.

    Parameters
    ----------
    problems : list of Problem
        The most urgent first, where that matters.
    most : int
        How many are told [-].
    place : str
        Where the rest is.

    Returns
    -------
    problems : list of Problem
    """
    rest = problems[most:]
    if not rest:
        return problems
    found = f"{counted(len(rest), 'more thing')} like these"
    return [*problems[:most], Problem(place, found, "Settle these first.", rest[0].rank)]
