"""How far a reading and a prediction may lie apart: limits, standard uncertainty, their sum.

After the guide to the expression of uncertainty (JCGM 100). Works on any function of arrays. Knows
no circuit and no verdict.
"""

from dataclasses import dataclass
from math import erfc, exp, lgamma, log, sqrt
from typing import NamedTuple

import numpy as np

from helpers.physics import limits, meters

COVERAGE = 2.0
"""Coverage factor: about 95 % of a normal spread lies within so many standard uncertainties [-]."""


class Combined(NamedTuple):
    """Results of a sum and how they vary together."""

    values: np.ndarray
    """Each in its unit."""
    covariance: np.ndarray
    """Of each result with each, in the product of their units."""

    @property
    def standard(self):
        """Standard uncertainty of each."""
        return np.sqrt(np.diagonal(self.covariance))


def rectangular(half_width):
    """Return the standard uncertainty of what lies anywhere within limits.

    Parameters
    ----------
    half_width : float or array
        From the middle to either limit, such as a tolerance [any unit].

    Returns
    -------
    standard : float or ndarray
        In the same unit.

    Raises
    ------
    ValueError
        If the half-width is negative.

    Notes
    -----
    ``half_width / sqrt(3)``: no value between the limits is likelier than another.

    References
    ----------
    JCGM 100:2008, 4.3.7.

    Examples
    --------
    A resistor of 5 % and 100 ohm:

    >>> round(rectangular(5.0), 2)
    2.89
    """
    half_width = limits.not_negative(half_width, "half_width", "its unit", "Leave the sign out.")
    return half_width / sqrt(3.0)


def combined(function, values, standard, correlation=None):
    """Return what a function makes of uncertain inputs.

    Parameters
    ----------
    function : callable
        Takes an array, one row an input and one column a case, and returns the same of results.
    values, standard : array
        Each input and its standard uncertainty [their units].
    correlation : array, optional
        Coefficient of each input with each; independent if left out [-].

    Returns
    -------
    combined : Combined

    Raises
    ------
    ValueError
        If an uncertainty is negative or a coefficient lies beyond 1.

    Notes
    -----
    Each input is moved by its own standard uncertainty to either side; half the difference is its
    share. Shares add up with the coefficients. Right where the function is nearly straight over
    that distance.

    References
    ----------
    JCGM 100:2008, 5.1.3 note 2 and 5.2.2; JCGM 102:2011 for several results.

    Examples
    --------
    >>> volts_and_ohms = [12.0, 100e3], [0.1, 1e3]
    >>> found = combined(lambda x: x[:1] / x[1:], *volts_and_ohms)
    >>> f"{found.values[0] * 1e6:.0f} µA, give or take {found.standard[0] * 1e6:.1f} µA"
    '120 µA, give or take 1.6 µA'
    """
    values = np.asarray(limits.finite(values, "values", "their unit"))
    standard = np.asarray(limits.not_negative(standard, "standard", "their unit"))
    steps = np.diag(standard)
    cases = np.concatenate([values[:, None], values[:, None] + steps, values[:, None] - steps], 1)
    results = np.asarray(function(cases), float)
    up, down = results[:, 1 : len(values) + 1], results[:, len(values) + 1 :]
    shares = 0.5 * (up - down)
    if correlation is None:
        return Combined(results[:, 0], shares @ shares.T)
    correlation = np.asarray(limits.between(correlation, "correlation", "", -1.0, 1.0))
    return Combined(results[:, 0], shares @ correlation @ shares.T)


def sampled(function, values, half_widths, count=10_000, seed=1):
    """Return what a function makes of inputs that stray at random within their limits.

    Parameters
    ----------
    function : callable
        As for `combined`.
    values, half_widths : array
        Each input and its limits to either side [their units].
    count : int
        How many cases [-].
    seed : int
        Start of the random numbers; the same seed gives the same cases [-].

    Returns
    -------
    results : ndarray
        One row a result, one column a case.

    Raises
    ------
    ValueError
        If a limit is negative, or the count not above zero.

    Notes
    -----
    Rectangular and independent: the propagation of distributions, which asks nothing of the
    function. Where `combined` is right, both agree.

    References
    ----------
    JCGM 101:2008, 5 and 6.4.2.

    Examples
    --------
    >>> volts = sampled(lambda x: x[:1] - x[1:], [24.0, 2.2], [0.24, 0.3])
    >>> round(float(volts.std()), 2), round(float(combined(
    ...     lambda x: x[:1] - x[1:], [24.0, 2.2], rectangular([0.24, 0.3])).standard[0]), 2)
    (0.22, 0.22)
    """
    middle = np.asarray(limits.finite(values, "values", "their unit"))[:, None]
    half = np.asarray(limits.not_negative(half_widths, "half_widths", "their unit"))[:, None]
    count = int(limits.between(count, "count", "cases", 1, 1e7))
    strays = np.random.default_rng(seed).uniform(-1.0, 1.0, (len(middle), count))
    return np.asarray(function(middle + half * strays), float)


def expanded(standard, coverage=COVERAGE):
    """Return the half-width that is stated beside a result.

    Parameters
    ----------
    standard : float or array
        Standard uncertainty [any unit].
    coverage : float
        Coverage factor [-].

    Returns
    -------
    expanded : float or ndarray
        In the same unit.

    Raises
    ------
    ValueError
        If a value is negative.

    References
    ----------
    JCGM 100:2008, 6.2.1.

    Examples
    --------
    >>> expanded(0.35)
    0.7
    """
    coverage = limits.positive(coverage, "coverage", "")
    return coverage * limits.not_negative(standard, "standard", "its unit")


@dataclass(frozen=True)
class Meter:
    """One range of a meter, as its sheet has it: so many per cent of the reading and digits."""

    percent: float = 1.0
    """Of the reading [%]."""
    digits: float = 3.0
    """Of the last place [-]."""
    response: str = "mean"
    """One of `meters.RESPONSES` [-]."""
    coupling: str = "dc"
    """One of `meters.COUPLINGS` [-]."""
    counts: int = 2000
    """The display reads less than so many of its last place [-]."""
    least_step: float = 0.0
    """Last place on the most sensitive range that is used, in the unit of the reading."""
    crest_limit: float = 3.0
    """Highest peak over rms that a true-rms range follows [-]."""
    input_ohms: float = 10e6
    """Input resistance of a range of volts, or that of the shunt of a range of amps [ohm]."""
    in_series: bool = False
    """Whether it is a range of amps, which the current passes through [-]."""

    def step(self, reading):
        """Last place of the range on which something is read, in the unit of the reading."""
        size = np.maximum(np.abs(reading), 1e-12) / self.counts
        return np.maximum(10.0 ** np.ceil(np.log10(size) - 1e-12), self.least_step)

    def half_width(self, reading):
        """Limits to either side of a reading, in its unit."""
        return 0.01 * self.percent * np.abs(reading) + self.digits * self.step(reading)

    def doubts(self, signal, source_ohms=0.0):
        """Return why the limits of the sheet do not hold for what is read; empty if they do.

        Parameters
        ----------
        signal : signals.Signal
            What stands at the leads [V] or [A].
        source_ohms : float
            Resistance that the leads look into [ohm].

        Returns
        -------
        doubts : tuple of str

        Notes
        -----
        Wave form, mean and crest, each against what the range is made for; and the loading of a
        range of volts, or the burden of one of amps, which has to stay within the limits. Without
        a resistance neither is asked.

        References
        ----------
        The sheet of the meter. Crest of at most 3 and 10 megohm: common practice, no source.

        Examples
        --------
        >>> from helpers.physics import mains, phase_cut, signals
        >>> low = signals.dimmed_mains(mains.Supply(120.0, 60.0), phase_cut.Dimmer("leading", 120))
        >>> Meter(response="average", coupling="ac").doubts(low)
        ('The wave is no sine, and this range is right on a sine only: 43 % too low.',)
        """
        found = []
        true = signal.rms if self.response != "mean" else signal.mean
        shown = meters.reading(signal, self.response, self.coupling)
        off = 100.0 * (shown / true - 1.0) if true else 0.0
        if self.response == "average" and abs(off) > self.percent:
            low = f"{abs(off):.0f} % too {'low' if off < 0 else 'high'}"
            found.append(f"The wave is no sine, and this range is right on a sine only: {low}.")
        if self.response == "true_rms" and self.coupling == "ac" and abs(off) > self.percent:
            found.append(f"AC coupling leaves the mean of the wave out: {-off:.0f} % too low.")
        if self.response == "true_rms" and signal.peak > self.crest_limit * signal.rms:
            crest = signal.peak / signal.rms if signal.rms else np.inf
            found.append(
                f"Its crest is {crest:.1f} times its rms, above {self.crest_limit:g} times."
            )
        if self.in_series:
            loss, what = self.input_ohms / (self.input_ohms + source_ohms), "holds back"
        else:
            loss, what = source_ohms / (self.input_ohms + source_ohms), "loads"
        if source_ohms and 100.0 * loss > self.percent:
            found.append(f"The meter {what} what it reads: {100.0 * loss:.0f} % too low.")
        return tuple(found)


def chance_above(chi_squared, freedom):
    """Return the chance that a sum of squared normal residuals comes out higher still.

    Parameters
    ----------
    chi_squared : float
        Sum of the squares, each over its variance [-].
    freedom : int
        How many independent residuals [-].

    Returns
    -------
    chance : float
        0 to 1 [-].

    Raises
    ------
    ValueError
        If the sum is negative, or there is no residual.

    Notes
    -----
    A finite sum, exact: Poisson terms for an even number; the error function and more terms for
    an odd one.

    References
    ----------
    Abramowitz and Stegun, 26.4.4 and 26.4.5 (numbers from memory); the tests compare with a table
    and with another program.

    Examples
    --------
    >>> round(chance_above(18.307, 10), 4)
    0.05
    """
    half = 0.5 * limits.not_negative(chi_squared, "chi_squared", "")
    freedom = int(limits.between(freedom, "freedom", "residuals", 1, 100_000))
    if half == 0.0:
        return 1.0
    first = 0.5 * (freedom % 2)
    terms = (exp(k * log(half) - half - lgamma(k + 1.0))
             for k in np.arange(first, 0.5 * freedom - 0.25))  # fmt: skip
    return min(1.0, sum(terms) + (erfc(sqrt(half)) if first else 0.0))
