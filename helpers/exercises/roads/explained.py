"""A wrong number explained by search: which wrong turn on the road ends exactly there?

Never wider than the digits that were typed: with two dozen turns, pairs and decades together would
explain any number at all, and a false reason is worse than none.
"""

from dataclasses import dataclass
from math import log10

from helpers.exercises.templates import fill

CLOSEST, WIDEST = 0.002, 0.005  # sums by hand are rounded on their way; no more is claimed [-]
PREFIX_PLACES, PER_CENT_PLACES = 3, 2  # by which a number may be off as it is typed
PREFIX, PLACE = "mixed up a prefix", "moved the decimal point"
ASK_PREFIX = "The digits are right. Which prefix did you mean: milli, kilo, or none?"
ASK_PLACE = "The digits are right. By how many places does the point move?"


@dataclass(frozen=True)
class Reason:
    """Why a number came out: names of the wrong turns, what to say, the share of the marks."""

    names: tuple
    reply: str
    share: float = 0.0
    danger: str = ""

    @property
    def name(self):
        return " or ".join(self.names)


def explain(value, digits, road, n, exact=None, own=(), prefixed=True):
    """Return the reason for a wrong number, or None.

    Parameters
    ----------
    value : float
        What was answered [the glossary's unit].
    digits : int
        Significant digits typed [-].
    road : Road
        How the right number comes about.
    n : SimpleNamespace
        The personal numbers.
    exact : float or None
        The exact result, where the road is the simple sum for it [the glossary's unit].
    own : sequence of (Slip, float)
        Slips that this question alone knows, with the numbers they lead to; these go first.
    prefixed : bool
        Whether the unit takes prefixes, so that one can be mixed up.

    Returns
    -------
    reason : Reason or None
        With two names where two turns end in one number.

    Notes
    -----
    In this order: the question's own turns; single turns, on the simple sum and, in the same
    proportion, on the exact one; two usual turns together; a wrong decade on the right road.
    """
    right = road.value(n)
    scales, fits = _scales(right, exact), _fit(value, digits)
    if found := _slips(value, fits, own):
        first = found[0]
        names = tuple(dict.fromkeys(slip.name for slip in found))[:2]
        danger = next((slip.danger for slip in found if slip.danger), "")
        return Reason(names, _reply(names, fill(first.asks, n)), first.share, danger)
    single = _single(value, fits, road, n, scales, prefixed)
    power = _decade(value, fits, [right * scale for scale in scales])
    by_prefix = prefixed and power and power % 3 == 0
    name, asks = (PREFIX, ASK_PREFIX) if by_prefix else (PLACE, ASK_PLACE)
    if power and all(one.turns[0].any_decade for one, _ in single):
        # over a power of ten the digits stay right: two names
        names = (name, *(one.turns[0].name for one, _ in single[:1]))
        return Reason(names, _reply(names, asks)) if single else Reason(names, asks, 0.5)
    if told := _told(road, single):
        return told
    twice = [w for w in road.wrong_twice(n) if any(fits(w.value * scale) for scale in scales)]
    return _told(road, [(one, True) for one in twice])


def meanings(value, digits, road, n, exact=None, own=(), prefixed=True):
    """Return the names of all single turns that a number may come from, the question's own first.

    Parameters are those of `explain`, which tells two of them; more are one too many.
    """
    fits = _fit(value, digits)
    found = [slip.name for slip in _slips(value, fits, own)]
    if not found:
        scales = _scales(road.value(n), exact)
        single = _single(value, fits, road, n, scales, prefixed)
        found = [" and ".join(one.names) for one, meant in single if meant]
    return tuple(dict.fromkeys(found))


def _slips(value, fits, own):
    return [slip for slip, end in own if fits(end) or abs(value - end) <= 1.000001 * slip.misread]


def _scales(right, exact):
    return (1.0,) if exact is None or not right else (1.0, exact / right)


def _single(value, fits, road, n, scales, prefixed):
    """Return each single wrong road that ends at a number, and whether it may be meant by it.

    Where the decade says nothing, one has to be off by as much as a prefix or a per cent makes; by
    another power of ten it is chance.
    """
    places = PREFIX_PLACES if prefixed else PER_CENT_PLACES
    found = ((one, _off_by(value, fits, one, scales)) for one in road.wrong(n))
    return [(one, power % places == 0) for one, power in found if power is not None]


def _off_by(value, fits, wrong, scales):
    """Return by which power of ten a number lies beside the end of a wrong road, or None."""
    ends = [wrong.value * scale for scale in scales]
    if wrong.turns[0].any_decade:
        ends += [wrong.value / scale for scale in scales]  # upside down, the exact sum is too
    if any(map(fits, ends)):
        return 0
    return _decade(value, fits, ends) if wrong.turns[0].any_decade else None


def _decade(value, fits, ends):
    """Return by which power of ten a value lies beside one of some numbers, or None."""
    for end in ends:
        if value * end > 0:
            power = round(log10(value / end))
            if fits(end * 10.0**power):
                return power
    return None


def _fit(value, digits):
    """Return a function that says whether a number ends in what was typed."""
    width = abs(value) * min(max(0.5 * 10.0 ** (1 - digits), CLOSEST), WIDEST)
    return lambda other: abs(value - other) <= width


def _told(road, wrong):
    """Name one wrong road, or two with the question that parts them; None if none may be meant.

    Each comes with whether it may be; an answer earns as if all of them had been.
    """
    by_name = {}
    turns_first = sorted(wrong, key=lambda w: (w[0].turns[0].any_decade, not w[0].turns[0].usual))
    for one, meant in turns_first:  # where the decade says nothing, chance fits more often
        by_name.setdefault(" and ".join(one.names), (one, meant))
    ways = list(by_name.values())[:2]
    share = min((w.turns[0].share if len(w.turns) == 1 else 0.0 for w, _ in ways), default=0.0)
    ways = [one for one, meant in ways if meant]
    names = tuple(" and ".join(way.names) for way in ways)
    if not ways:
        return None
    if len(ways) == 1:
        return Reason(names, _reply(names, ways[0].turns[0].asks), share)
    place = min(way.places[-1] for way in ways)
    asks = f"What did you get for {road.steps[place].called}?"
    if len(road.steps) == 1:  # that is what the question itself has asked
        asks = " ".join(dict.fromkeys(way.turns[0].asks for way in ways))
    return Reason(names, _reply(names, f"Which was it? {asks}"), share)


def _reply(names, question):
    return f"This fits if you {' or if you '.join(names)}. {question}"
