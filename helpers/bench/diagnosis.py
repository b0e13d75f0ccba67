"""Whether the readings of a bench log agree with the plan, and what is likeliest wrong if not.

One joint test over all readings; then every cause is computed and compared. Says "agrees" or
"something is wrong", never that anything is safe.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from helpers.bench import predictions
from helpers.bench.causes import causes
from helpers.bench.rows import COMPETENT
from helpers.physics import uncertainty

ALARM = 0.01
"""Chance of readings this far off on a sound build, below which something is wrong: common
practice, no source [-]."""
_OL = 1e30  # in place of infinity
_UNLIKE = 2.0 * np.log(1e5)  # a word (OL, lit) that a cause does not give: one slip in 100,000
_LOOKED_AT = 10  # states that are worked out with their spread; the rest lie far behind
_FAR = 40.0  # of twice the logarithm: a cause that far behind the first is not named
_BETTER = 2.0 * np.log(1.0 / ALARM)  # a cause fits better than the plan, by as much
UNEXPLAINED = 1e-6
"""Chance of the readings under the likeliest cause, below which none explains them [-]."""


class Fit(NamedTuple):
    """How readings lie to what one state gives."""

    chi_squared: float
    freedom: int
    unlike: int
    """Readings that are OL, or a number of LEDs, where the state gives another."""
    score: float
    """Minus twice the logarithm of the likelihood."""

    @property
    def chance(self):
        """Of readings at least as far off."""
        if self.unlike:
            return 0.0
        return uncertainty.chance_above(self.chi_squared, self.freedom) if self.freedom else 1.0


@dataclass(frozen=True)
class Likely:
    """Causes that the readings taken cannot tell apart, most often one."""

    causes: tuple
    """Of `causes.Cause`."""
    words: tuple
    """What is said of each: of its state that fits best."""
    fit: Fit


@dataclass(frozen=True)
class Diagnosis:
    """What a log comes to."""

    rows: list
    """All that is asked for: `predictions.Row`."""
    readings: dict
    """What was read, by name; infinite for OL [SI]."""
    fit: Fit
    """Against the plan."""
    likely: list
    """Of `Likely`, the likeliest first; empty where the log agrees or no cause fits better."""

    @property
    def wrong(self):
        """Whether something is wrong."""
        return self.fit.chance < ALARM

    @property
    def explained(self):
        """Whether the likeliest cause gives such readings."""
        return bool(self.likely) and self.likely[0].fit.chance > UNEXPLAINED

    @property
    def missing(self):
        """Rows that are not the competent person's and were not read."""
        rows = (row for row in self.rows if row.by != COMPETENT)
        return [row for row in rows if row.name not in self.readings]


def diagnose(build, readings):
    """Return whether readings agree with the plan, and the likeliest causes if not.

    Parameters
    ----------
    build : world.Build
    readings : dict of str to float
        By the name of a row; infinite for OL. Their last places count, where they are
        `predictions.Reading` [SI].

    Returns
    -------
    diagnosis : Diagnosis

    Raises
    ------
    ValueError
        If nothing that is judged was read, or a row is unknown.

    Notes
    -----
    The test: squares of the residuals under their covariance, against chi-squared; a reading that
    is OL where it should not be, or the reverse, decides at once. A cause: the likelihood of the
    readings in its best and its other states, all causes being as likely before. Two causes are
    named together where each reading would differ by less than its expanded uncertainty.

    References
    ----------
    JCGM 100:2008 for the covariance; the test and the likelihood are those of normal residuals.

    Examples
    --------
    >>> from helpers.bench.world import Build
    >>> from helpers.sizing.brief import Brief
    >>> found = diagnose(Build(Brief(), "bridge", 100e3, 2), {"R1": 99e3, "R2": 10.1e3})
    >>> found.wrong, found.likely[0].words
    (True, ('R2 is a tenth of its value',))
    """
    rows = predictions.table(build, readings)
    known = {row.name for row in rows}
    if unknown := readings.keys() - known:
        raise ValueError(
            f"There is no row {min(unknown)!r}. There are: {', '.join(sorted(known))}."
        )
    judged = [row.name for row in rows if row.name in readings and not row.doubts]
    if not judged:
        raise ValueError("No reading is there that could be judged. Fill in at least one row.")
    taken = Taken(build, judged, readings)
    fit, plan = taken.fit(build.sound)
    likely = taken.likely(fit, plan) if fit.chance < ALARM else []
    return Diagnosis(rows, readings, fit, likely)


class Taken:
    """The readings that are judged, and how each state of the build fits them."""

    def __init__(self, build, names, readings):
        self.build, self.readings = build, readings
        self.asks = [ask for ask in predictions.asks(build) if ask.name in names]
        self.read = _finite([readings[ask.name] for ask in self.asks])
        self.counted = np.array([ask.unit == "count" for ask in self.asks])
        self.cell = np.array([
            max(predictions.place(readings[ask.name]),
                predictions.BENCH_METERS[ask.meter].step(value))
            for ask, value in zip(self.asks, self.read, strict=True)
        ])  # fmt: skip

    def unlike(self, one, other):
        """Where one of two has a word, as OL is one, that the other has not."""
        return ((one == _OL) != (other == _OL)) | (self.counted & (abs(one - other) > 0.5))

    def numbers(self, values):
        """Which rows hold a number, read and given."""
        return (self.read != _OL) & (values != _OL) & ~self.counted

    def fit(self, state):
        """How the readings lie to what a state gives, and what it gives."""
        found = predictions.expected(self.build, state, self.asks, self.readings)
        values = _finite(found.values)
        both, unlike = self.numbers(values), int(self.unlike(self.read, values).sum())
        if not both.any():
            return Fit(0.0, 0, unlike, unlike * _UNLIKE), found
        off, spread = (self.read - values)[both], found.covariance[np.ix_(both, both)]
        chi_squared = float(off @ np.linalg.solve(spread, off))
        size = np.linalg.slogdet(2.0 * np.pi * spread / np.outer(*(self.cell[both],) * 2))[1]
        score = chi_squared + float(size) + unlike * _UNLIKE
        return Fit(chi_squared, int(both.sum()), unlike, score), found

    def promising(self, plan):
        """The states of causes that come nearest to the readings, each by its middle."""
        spread, found = np.diagonal(plan.covariance), []
        for cause in causes(self.build):
            for words, state in zip(cause.words, cause.states, strict=True):
                values = _finite(predictions.middle(self.build, state, self.asks))
                both = self.numbers(values) & (spread > 0.0)
                off = (self.read - values)[both] ** 2 / (spread[both] + (0.03 * values[both]) ** 2)
                far = np.minimum(off, _UNLIKE).sum()
                far += self.unlike(self.read, values).sum() * _UNLIKE
                found.append((far, len(found), cause, words, state))
        return [each[2:] for each in sorted(found)[:_LOOKED_AT]]

    def likely(self, sound, plan):
        """The causes that fit best, and better than the plan, those alike together."""
        best = {}
        for cause, words, state in self.promising(plan):
            fit, found = self.fit(state)
            best.setdefault(cause.kind, []).append((fit.score, len(best), cause, words, fit, found))
        ranked = sorted((_evidence(fits), *min(fits)[1:]) for fits in best.values())
        groups = []
        for evidence, _, *each in ranked:
            if evidence > min(ranked[0][0] + _FAR, sound.score - _BETTER):
                break
            group = next((held for held in groups if self.alike(held[0][3], each[3])), None)
            groups.append([each]) if group is None else group.append(each)
        return [
            Likely(tuple(each[0] for each in group), tuple(each[1] for each in group), group[0][2])
            for group in groups
        ]  # fmt: skip

    def alike(self, one, other):
        """Whether each reading would differ by less than its expanded uncertainty."""
        first, second = (_finite(each.values) for each in (one, other))
        if self.unlike(first, second).any():
            return False
        spread = np.maximum(*(np.diagonal(each.covariance) for each in (one, other)))
        return bool(np.all(abs(first - second) <= uncertainty.expanded(np.sqrt(spread))))


def _finite(values):
    """Numbers with one in place of OL that can be compared."""
    return np.minimum(np.asarray(values, float), _OL)


def _evidence(fits):
    """Of a cause from the scores of its states, each as likely before."""
    scores = np.array([each[0] for each in fits])
    states = len(fits[0][2].states)
    least = scores.min()
    return least - 2.0 * np.log(np.exp(-0.5 * (scores - least)).sum() / states)
