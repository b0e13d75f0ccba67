"""Walks through every set of personal numbers that a question can draw, not only the likely ones.

For tests of the bank and for who writes questions; stands in for `helpers.exercises.draws.Draw`.
"""

from functools import cache
from types import SimpleNamespace

from helpers.physics.mains import SUPPLIES


class Walk:
    """Gives the choices of one path through a question's draws, and finds the next path."""

    def __init__(self, path):
        self._path = list(path)
        self._taken = []

    def _next(self, size):
        place = len(self._taken)
        choice = self._path[place] if place < len(self._path) else 0
        self._taken.append((choice, size))
        return choice

    def pick(self, items):
        return items[self._next(len(items))]

    def some(self, items, count):
        left = list(items)
        return [left.pop(self._next(len(left))) for _ in range(count)]

    def shuffle(self, items):
        return self.some(items, len(items))

    def next_path(self):
        taken = list(self._taken)
        while taken and taken[-1][0] + 1 == taken[-1][1]:
            taken.pop()
        return [choice for choice, _ in taken[:-1]] + [taken[-1][0] + 1] if taken else None


@cache
def every_numbers(question):
    """Return every set of personal numbers on every supply, options in their listed order."""
    found = []
    for supply in SUPPLIES.values():
        path = []
        while path is not None:
            walk = Walk(path)
            numbers = SimpleNamespace(supply=supply, **question.numbers(walk, supply))
            listed = question.kind.listed(numbers)
            numbers.shown = tuple(range(len(listed)))
            found.append(numbers)
            path = walk.next_path()
    return found
