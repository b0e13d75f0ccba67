"""Personal numbers: the same learner, question, draw and supply give the same numbers anywhere.

Knows nothing of questions; must never depend on Python's own `hash` or on the order of a run.
"""

import hashlib


class Draw:
    """A stable stream of choices that follows from a few words.

    Parameters
    ----------
    *words : str
        What the stream depends on: learner, class word, question, draw number, supply.

    Notes
    -----
    Each choice takes four bytes of SHA-256 of the words and a counter, so a marker on another
    machine, years later, draws the same numbers. The bias of a choice among k items is below
    k / 2**32.

    References
    ----------
    SHA-256: FIPS 180-4. The use made of it here is our own; a test pins one stream.

    Examples
    --------
    >>> Draw("BENCH-01", "ohm-1").pick([5, 12, 24]) == Draw("BENCH-01", "ohm-1").pick([5, 12, 24])
    True
    """

    def __init__(self, *words):
        self._key = "\x1f".join(words)
        self._block = 0
        self._bytes = b""

    def _next(self):
        if not self._bytes:
            self._bytes = hashlib.sha256(f"{self._key}\x1f{self._block}".encode()).digest()
            self._block += 1
        word, self._bytes = self._bytes[:4], self._bytes[4:]
        return int.from_bytes(word, "big")

    def pick(self, items):
        """Return one of `items`, a non-empty sequence."""
        return items[self._next() * len(items) >> 32]

    def some(self, items, count):
        """Return `count` different members of `items`, in drawn order."""
        left = list(items)
        return [left.pop(self._next() * len(left) >> 32) for _ in range(count)]

    def shuffle(self, items):
        """Return all of `items` in a drawn order."""
        items = list(items)
        return self.some(items, len(items))


class Turns:
    """Picks like a `Draw`, and meets every item before one comes again.

    Parameters
    ----------
    stream : Draw
        Decides the order; the same for all turns.
    turn : int
        0 first.

    Examples
    --------
    >>> met = {Turns(Draw("BENCH-01", "safe-9"), turn).pick(["a", "b", "c"]) for turn in range(3)}
    >>> sorted(met)
    ['a', 'b', 'c']
    """

    def __init__(self, stream, turn):
        self._stream, self._turn = stream, turn

    def pick(self, items):
        """Return the item whose turn it is."""
        return self._stream.shuffle(items)[self._turn % len(items)]
