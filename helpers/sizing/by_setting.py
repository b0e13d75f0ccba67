"""Which values of a candidate's resistors keep every rule down to which setting of the dimmer."""

from dataclasses import replace
from typing import NamedTuple

import numpy as np

from helpers.physics import phase_cut
from helpers.sizing.judging import Judged

MOST_VALUES = 25
"""Values that a map has at most; of a larger bin every second or third [-]."""
_SETTINGS = (180.0, 120.0, 90.0, 60.0, 35.0)


class Map(NamedTuple):
    """Settings from full mains down, by values from small to large."""

    ohms: np.ndarray
    """Value of each resistor [ohm]."""
    heat_percent: np.ndarray
    """Heat of the heater at each lowest setting [%]."""
    broken: np.ndarray
    """Name of the rule that is broken first, '' where all are kept; settings by values [-]."""
    ohms_each: float
    """The candidate's own value [ohm]."""
    lowest: float
    """The brief's own setting, one of `heat_percent` [%]."""


def by_setting(brief, candidate):
    """Return which values break which rule, used from full mains down to each of some settings.

    Parameters
    ----------
    brief : brief.Brief
    candidate : verdicts.Candidate
        Its circuit, number and rating are kept; its value is one of the map.

    Returns
    -------
    map : Map

    Notes
    -----
    Each row is the brief with another lowest setting, its own among them, judged by every rule. Of
    several rules that are broken, one that misses its limit most is named, and light last.

    References
    ----------
    `judging.Judged`, as for every candidate.

    Examples
    --------
    >>> from helpers.sizing import verdicts
    >>> from helpers.sizing.brief import Brief
    >>> plan = verdicts.plan(Brief())
    >>> found = by_setting(plan.brief, plan.best(1)[0])
    >>> found.broken[0, 0] != "", found.broken[-1, -1], found.ohms.size
    (True, 'light', 25)
    """
    step = -(-len(brief.ohms) // MOST_VALUES)
    ohms = np.union1d(brief.ohms[::step], candidate.ohms_each)
    count = np.full(len(ohms), float(candidate.count))
    rated = {"bin_ratings": (candidate.rated_watts,), "bin_volts": (candidate.type_volts,)}
    own = brief.lowest_degrees
    degrees = sorted({own, *(each for each in _SETTINGS if brief.cuts)}, reverse=True)
    heat, rows = [], []
    for each in degrees:
        wave = phase_cut.wave(brief.supply, phase_cut.Dimmer("trailing", each))
        percent = 100.0 * wave.power_fraction
        change = {} if each == own else {
            "dimmer_given_by": "heat", "dimmer_lowest": percent, "dimmer_highest": 100.0,
        }  # fmt: skip
        string = (ohms, count, 0.0 * ohms + candidate.farads)[: 2 + bool(candidate.farads)]
        judged = Judged(replace(brief, **rated, **change), candidate.circuit, *string)
        heat.append(percent)
        rows.append(_broken(judged))
    return Map(ohms, np.array(heat), np.array(rows), candidate.ohms_each, heat[degrees.index(own)])


def _broken(judged):
    """The rule that each string breaks first, '' where it breaks none."""
    name = np.full(judged.shape[0], "", dtype=object)
    least = np.full(judged.shape[0], np.inf)
    for column in judged.columns:
        places = np.broadcast_to(column.places, judged.shape)[:, 0]
        margin = np.broadcast_to(column.margin, judged.shape)[:, 0]
        margin = np.where(column.rule == "light", 1e9, np.minimum(margin, 1e6))
        worse = (places == 2) & (margin < least)
        name[worse], least[worse] = column.rule, margin[worse]
    return name
