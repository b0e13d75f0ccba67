"""Parts are not what they say: worst corners, and many boards drawn at random.

Both ask `operating_point`, so every quantity it names can be asked for. Knows no rating by itself.
"""

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from helpers.physics import circuits, limits, mains, phase_cut
from helpers.physics.operating_point import operating_point

# Boards worked on at a time; bounds the memory, not the speed.
_BATCH = 65536


@dataclass(frozen=True)
class Tolerances:
    """How far each thing may stray to either side of its nominal value."""

    ohms_percent: float = 5.0
    """Series resistance [%]."""
    supply_percent: float = 10.0
    """Supply voltage [%]."""
    led_volts: float = 0.2
    """Forward drop of each LED [V]."""
    angle_degrees: float = 0.0
    """Angle of the dimmer [deg]."""

    def __post_init__(self):
        limits.percent(self.ohms_percent, "ohms_percent")
        limits.percent(self.supply_percent, "supply_percent")
        limits.between(self.led_volts, "led_volts tolerance", "V", 0.0, 5.0)
        limits.between(self.angle_degrees, "angle_degrees tolerance", "deg", 0.0, 90.0)


class Range(NamedTuple):
    """Lowest and highest value at the corners, in the unit of the quantity."""

    lowest: float
    highest: float


class Spread(NamedTuple):
    """A population of boards in a few numbers, in the unit of the quantity."""

    mean: float
    standard_deviation: float
    percentiles: dict


def worst_corners(
    circuit, supply, dimmer=phase_cut.NO_DIMMER, tolerances=Tolerances(), *, ohms,
    quantities=("led_amps_mean", "led_amps_peak", "resistor_watts"), **drops,
):  # fmt: skip
    """Return the lowest and highest value of each quantity over all corners.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        The nominal supply, one at a time.
    dimmer : phase_cut.Dimmer
        The nominal setting, one at a time.
    tolerances : Tolerances
        How far things may stray.
    ohms : float
        Nominal series resistance [ohm].
    quantities : sequence of str
        Names of fields of `OperatingPoint` [-].
    **drops : float
        led_volts and the others, as `circuits.fill_in` explains them [V].

    Returns
    -------
    ranges : dict of str to Range
        For each quantity, in its own unit.

    Raises
    ------
    ValueError
        As `operating_point`.

    Notes
    -----
    Every combination of low and high is tried: sixteen points. Currents and powers rise or fall
    steadily with each of them, so the extremes lie at corners; for a reverse voltage or a fraction
    that holds too, for a flicker index nearly.

    References
    ----------
    Worst-case analysis, common practice; derived here.

    Examples
    --------
    >>> supply = mains.Supply(230.0, 50.0)
    >>> ranges = worst_corners("series_diode", supply, ohms=120e3)
    >>> [round(amps * 1e3, 3) for amps in ranges["led_amps_mean"]]
    [0.728, 0.988]
    """
    signs = np.array(np.meshgrid(*[(-1.0, 1.0)] * 4, indexing="ij")).reshape(4, -1)
    point = _boards(circuit, supply, dimmer, tolerances, ohms, drops, signs)
    return {
        name: Range(float(getattr(point, name).min()), float(getattr(point, name).max()))
        for name in quantities
    }


def random_boards(
    circuit, supply, dimmer=phase_cut.NO_DIMMER, tolerances=Tolerances(), *, ohms, count, seed=1,
    quantities=("led_amps_mean", "resistor_watts"), **drops,
):  # fmt: skip
    """Return quantities of many boards whose parts stray evenly within their tolerances.

    Parameters
    ----------
    circuit : str
        A key of `circuits.CIRCUITS` [-].
    supply : mains.Supply
        The nominal supply, one at a time.
    dimmer : phase_cut.Dimmer
        The nominal setting, one at a time.
    tolerances : Tolerances
        How far things may stray.
    ohms : float
        Nominal series resistance [ohm].
    count : int
        Number of boards [-].
    seed : int
        Start of the random numbers; the same seed gives the same boards [-].
    quantities : sequence of str
        Names of fields of `OperatingPoint` [-].
    **drops : float
        led_volts and the others, as `circuits.fill_in` explains them [V].

    Returns
    -------
    boards : dict of str to ndarray
        For each quantity one value per board, in its own unit.

    Raises
    ------
    ValueError
        As `operating_point`, or if the count is not above zero.

    Notes
    -----
    Uniform and independent between the limits. That is harsher than most real parts, which crowd
    about the middle, and milder than the worst corner. Both LEDs of a pair stray together.

    References
    ----------
    Monte Carlo method; the mean and spread are checked against integrals in the tests.

    Examples
    --------
    >>> supply = mains.Supply(230.0, 50.0)
    >>> boards = random_boards("series_diode", supply, ohms=120e3, count=1000)
    >>> amps = boards["led_amps_mean"]
    >>> bool(0.0007 < amps.min() < amps.max() < 0.001)
    True
    """
    count = int(limits.between(count, "count", "boards", 1.0, 1e8))
    generator = np.random.default_rng(seed)
    boards = {name: np.empty(count) for name in quantities}
    for start in range(0, count, _BATCH):
        piece = slice(start, min(start + _BATCH, count))
        strays = generator.uniform(-1.0, 1.0, (4, piece.stop - start))
        point = _boards(circuit, supply, dimmer, tolerances, ohms, drops, strays)
        for name, values in boards.items():
            values[piece] = getattr(point, name)
    return boards


def spread(values, percents=(1, 5, 50, 95, 99)):
    """Return mean, standard deviation and percentiles of a population.

    Parameters
    ----------
    values : array
        One value per board [any unit].
    percents : sequence of float
        Which percentiles, 0 to 100 [%].

    Returns
    -------
    spread : Spread
        In the unit of the values.

    Raises
    ------
    ValueError
        If there is no value.

    Notes
    -----
    Standard deviation of the population itself, divided by the count.

    Examples
    --------
    >>> spread([1.0, 2.0, 3.0], (50,))
    Spread(mean=2.0, standard_deviation=0.816496580927726, percentiles={50: 2.0})
    """
    values = _boards_in(values)
    found = np.percentile(values, percents)
    percentiles = {percent: float(value) for percent, value in zip(percents, found, strict=True)}
    return Spread(float(values.mean()), float(values.std()), percentiles)


def chance_above(values, limit):
    """Return the share of boards that exceed a limit, such as a rating.

    Parameters
    ----------
    values : array
        One value per board [any unit].
    limit : float
        The limit, in the same unit.

    Returns
    -------
    chance : float
        Share above it, 0 to 1 [-].

    Raises
    ------
    ValueError
        If there is no value, or the limit is no number.

    Notes
    -----
    Counted. With n boards its own uncertainty is about ``sqrt(chance (1 - chance) / n)``.

    Examples
    --------
    >>> chance_above([0.20, 0.24, 0.26, 0.30], 0.25)
    0.5
    """
    values = _boards_in(values)
    return float(np.mean(values > limits.finite(limit, "limit", "the unit of the values")))


def _boards_in(values):
    values = np.atleast_1d(limits.finite(values, "values", "their unit"))
    if values.size == 0:
        raise ValueError("values holds no board; draw at least one.")
    return values


def _boards(circuit, supply, dimmer, tolerances, ohms, drops, strays):
    """Operating points of boards whose things stray by shares (-1 to 1) of their tolerances."""
    of_ohms, of_supply, of_led, of_angle = strays
    led_volts, second, diode, breakdown = circuits.fill_in(circuit, **drops)
    ohms = limits.positive(ohms, "ohms", "ohm", "Without a resistor the LED is destroyed.")
    volts = supply.volts_rms * (1.0 + 0.01 * tolerances.supply_percent * of_supply)
    angle = dimmer.angle_degrees + tolerances.angle_degrees * of_angle
    led_stray = tolerances.led_volts * of_led
    return operating_point(
        circuit,
        mains.Supply(volts, supply.hertz),
        phase_cut.Dimmer(dimmer.edge, np.clip(angle, 0.0, 180.0)),
        ohms=ohms * (1.0 + 0.01 * tolerances.ohms_percent * of_ohms),
        led_volts=np.maximum(led_volts + led_stray, 0.0),
        second_led_volts=np.maximum(second + led_stray, 0.0),
        diode_volts=diode,
        breakdown_volts=breakdown,
    )
