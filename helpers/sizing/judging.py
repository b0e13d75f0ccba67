"""Every candidate of a circuit by every rule: figures of `candidates`, limits of the rules.

A rule makes a column: strings down, ratings across. Ranks nothing.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import NamedTuple

import numpy as np

from helpers.physics import (
    capacitors,
    circuits,
    faults,
    fuses,
    hazards,
    heat,
    insulation,
    light,
    neon,
    ratings,
    visibility,
)
from helpers.sizing import candidates, other_circuits, rules, stops

BURN_CELSIUS = 48.0
"""Burn threshold of any surface that is held for ten minutes: ISO 13732-1 (from memory) [degC]."""
MINUTE_CELSIUS = 60.0
"""The same of plastic that is held for one minute; beyond it a box fails [degC]."""
AIR_CELSIUS = 85.0
"""Air that a small LED is made for at most: common practice, no source [degC]."""
# Light has a place of its own in the ranking, the pulses are those of the LED once more, degrees
# Celsius make no ratio, and a diode's limit holds its margin already.
_NO_MARGIN = {"count", "diode", "light", "touch", "pulses", "film", "air"} | {
    rule.rule for rule in rules.RULES.values() if rule.over == "caution"
}
_CLEARED = ("dropper", "led", "diode", "second_led", "lamp", "capacitor")
_SHARES = ("none", "dropper", "dropper drift", "capacitor", "bleeder")
_GLOWS = 1000.0  # hotter than that nothing is a resistor any more [degC]
ENOUGH = 2.0
"""Margin beyond which more counts no further in the ranking: common practice, no source [-]."""


class Column(NamedTuple):
    """One rule on all candidates of a circuit; `finding` makes one from string and rating."""

    rule: str
    places: np.ndarray
    margin: np.ndarray
    finding: Callable


def _column(row, figure, limit, after=faults.SOUND, place=None, says=None):
    """A row of the rules on figures of strings, or of strings and ratings.

    `place` is given where more than the limit decides, `says` where a function of the rules does.
    """
    rule = rules.RULES[row]
    figure, limit = np.broadcast_arrays(*(
        np.reshape(value, np.shape(value) + (1,) * (2 - np.ndim(value))).astype(float)
        for value in (figure, limit)
    ))  # fmt: skip
    places = rule.places(figure, limit) if place is None else np.reshape(place, (-1, 1))
    places = np.broadcast_to(places, np.broadcast_shapes(figure.shape, np.shape(places)))

    def finding(*at):
        here = [float(_at(each, *at)) for each in (figure, limit)]
        if says:
            return says(*here)
        return rules.said(row, rules.VERDICTS[_at(places, *at)], *here, after=after)

    return Column(rule.rule, places, _ratio(figure, limit, rule.least), finding)


def _fixed(finding):
    """A finding that all candidates share."""
    place = np.full((1, 1), rules.VERDICTS.index(finding.verdict))
    return Column(finding.rule, place, np.full((1, 1), np.inf), lambda *_: finding)


def _at(values, string, rating):
    return values[string % len(values), rating % values.shape[1]]


def _ratio(figure, limit, least=False):
    over, under = (figure, limit) if least else (limit, figure)
    return np.where(under > 0.0, over / np.where(under > 0.0, under, 1.0), np.inf)


def _barrier(count, circuit):
    found = rules.barrier(count)
    lamp = "lamp" if circuit == candidates.NEON else "LED"
    return replace(found, danger=found.danger.replace("LED", lamp))


def _of_dropper(brief, found, rated, type_volts):
    """Number, heat, volts and film of the resistors, sound and after every fault."""
    yield Column(
        "count", np.where(found.count >= 2, 0, 2)[:, None], found.count[:, None] / 2.0,
        lambda i, m: _barrier(int(found.count[i]), found.circuit),
    )  # fmt: skip
    film = 0.0
    for state in found.states:
        columns, celsius = _of_state(brief, found, state, rated, type_volts)
        yield from columns
        film = np.maximum(film, celsius)
    yield _column("film", film, ratings.ZERO_CELSIUS)


def _of_state(brief, found, state, rated, type_volts):
    """Columns of heat and volts in one state, and how hot a film gets in it."""
    after, watts = state.after, state.watts_each[:, None]
    air, _ = candidates.box_celsius(brief, state.watts[:, None])
    left = (found.count > 1)[:, None] | (after != "dropper")
    limit = rules.heat_limit(rated, air, after)
    cleared = np.zeros(limit.shape, bool)
    if brief.bin_fusible_at and after in _CLEARED:
        opens = fuses.fusible_opens(watts, rated, brief.bin_fusible_at)
        cleared = left & np.broadcast_to(opens, limit.shape)

    def column(rule, figure, limit, unsure, says):
        places = np.where(cleared, 0, rules.judge(figure, limit, unsure=unsure))
        return Column(
            rule, places, np.where(cleared, np.inf, _ratio(figure, limit)),
            lambda i, m: rules.said("fuse", "pass", after=after) if cleared[i, m] else says(i, m),
        )  # fmt: skip

    columns = [column("heat", watts, limit, rules.UNSURE, lambda i, m: rules.heat(
        float(watts[i, 0]), float(rated[m]), float(air[i, 0]), after, unsure=rules.UNSURE
    ))]  # fmt: skip
    if after in _SHARES:  # in others the string is whole: its shares are those of the sound one
        share = state.volts_each[:, None] * left
        columns.append(column("volts", share, type_volts, 0.0, lambda i, m: rules.volts(
            float(share[i, 0]), float(type_volts[m]), after
        )))  # fmt: skip
    celsius = heat.final_celsius(watts, heat.kelvin_per_watt_of(rated), air)
    return columns, (left & ~cleared) * np.minimum(celsius, _GLOWS)


def _of_neon(brief, found):
    """Currents of a neon lamp, and its age."""
    yield _column("lamp mean", found.mean_highest, brief.neon_limit)
    for state in found.states[1:]:
        if np.any(state.led_amps_peak > 0.0):
            yield _column("lamp after a fault", state.led_amps_peak, brief.neon_limit, state.after)
    yield _column("lamp ages", neon.aged(brief.neon_strike), brief.neon_strike, place=1)


def _of_capacitor(brief, found):
    """The LED and its bridge as behind resistors; the capacitor, its pulse and its charge."""
    yield from _of_led(brief, found)
    most = brief.led_limit if brief.led_surge is None else brief.led_surge
    places = rules.judge(found.inrush, most, over="fail" if brief.led_surge else "caution")
    yield _column("inrush", found.inrush, most, place=places)
    left = other_circuits.pin_volts(brief, found.farads, found.bleeders)
    yield _column("pins", left, capacitors.PIN_VOLTS)
    high = brief.high.volts_rms
    yield _column("capacitor volts", high, brief.bin_capacitor_volts)
    yield _fixed(rules.capacitor_class(brief.bin_capacitor_class, high))
    yield _fixed(stops.capacitor_dropper(brief))


def _of_led(brief, found):
    """Currents and reverse volts of the LED, volts of the diodes."""
    sound, *after_faults = found.states
    peak = sound.led_amps_peak
    says = partial(rules.led, unsure=rules.UNSURE)
    places = rules.judge(peak, brief.led_limit, unsure=rules.UNSURE)
    yield _column("LED", peak, brief.led_limit, place=places, says=says)
    yield _column("LED mean", found.mean_highest, brief.led_limit)
    yield _column("reverse volts", found.reverse_volts, brief.led_reverse)
    for state in after_faults:
        if np.any(state.led_amps_peak > 0.0):
            yield _column("LED after a fault", state.led_amps_peak, brief.led_limit, state.after)
        if np.any(state.backward_amps_peak > 0.0):
            yield _column("pushed backwards", state.backward_amps_peak, 0.0, state.after)
    crest = np.max([state.diode_volts for state in found.states], axis=0)
    if np.any(crest > 0.0):
        least = rules.DIODE_MARGIN * crest
        yield _column("diode", brief.bin_diode, least, says=lambda rated, least: rules.diode(
            least / rules.DIODE_MARGIN, rated
        ))  # fmt: skip
    if found.circuit == "series_diode" and brief.suppression_farads:
        yield _column("diode at off", brief.bin_diode, found.open_volts)


def _of_use(brief, found, type_volts):
    """Light, warmth, touch, off and the dimmer."""
    yield _column("light", metres(brief, found.mean_lowest, found.circuit), brief.seen_distance)
    inside, outside = candidates.box_celsius(brief, found.states[0].watts)
    yield _column("air", inside, AIR_CELSIUS)
    place = np.searchsorted((BURN_CELSIUS, MINUTE_CELSIUS), outside)
    yield _column("box", outside, BURN_CELSIUS, place=place)
    yield _column("flicker", 100.0, light.low_risk_percent(found.flicker_hertz))
    heat = candidates.heat_percent_at_lowest(brief)
    yield _column("what it tells", 100.0 * found.dims, heat, place=1)
    if brief.suppression_farads:
        glow = np.round(metres(brief, found.off_amps, found.circuit), 3)
        yield _column("glow at off", glow, brief.seen_distance)
        yield _column("open element", 100.0 * found.open_share, 0.0, place=1)
    # Half of the string in each wire; after one short the weaker half has a resistor less.
    barrier = np.maximum(found.count // 2 - 1.0, 0.0) * found.ohms_each
    low = barrier * (1.0 - brief.bin_tolerance / 100.0)
    amps = np.sqrt(2.0) * hazards.touch_amps_rms(
        brief.high, low, body_ohms=hazards.TOUCH_NETWORK_OHMS
    )
    holds = (amps <= hazards.BARRIER_AMPS_PEAK) & (found.count >= 4) & (found.farads is None)
    if brief.box_touch == "closed window":
        yield _fixed(rules.said("window", "pass"))
    else:
        yield _column("touch", amps, hazards.BARRIER_AMPS_PEAK, place=np.where(holds, 1, 2))
    impulse = insulation.rated_impulse_volts(brief.supply_volts)
    stands = 2.0 * np.sqrt(2.0) * type_volts[None, :]
    if not brief.bin_surge_rated:
        yield _column("impulse", impulse * found.hot[:, None] + 0.0 * stands, stands)
    if found.circuit in circuits.CIRCUITS:
        yield _column("pulses", found.states[0].led_amps_peak, brief.led_limit)


def metres(brief, amps, circuit):
    """Return from how far the light is noticed at a mean current, in the room of the brief [m]."""
    seen = visibility.candelas(
        amps, brief.led_intensity, brief.led_at, brief.seen_angle, brief.led_half_angle
    )
    if circuit == candidates.NEON:  # it shines all round
        seen = visibility.candelas(amps, brief.neon_intensity, brief.neon_limit)
    return visibility.visible_metres(seen, visibility.background_luminance(brief.seen_lux))


_OTHERS = {
    candidates.NEON: (other_circuits.neon_worst, _of_neon),
    candidates.CAPACITOR: (other_circuits.capacitor_worst, _of_capacitor),
}


class Judged:
    """All candidates of one circuit: strings down, ratings across."""

    def __init__(self, brief, circuit, *string):
        self.circuit, self.brief = circuit, brief
        work, of_light = _OTHERS.get(circuit, (candidates.worst, _of_led))
        string = string if circuit in _OTHERS else (circuit, *string)
        self.worst = found = work(brief, *string)
        rated, volts = np.array(brief.bin_ratings), np.array(brief.bin_volts)
        self.columns = [
            *_of_dropper(brief, found, rated, volts), *of_light(brief, found),
            *_of_use(brief, found, volts),
        ]  # fmt: skip
        self.shape = shape = len(found.count), len(rated)
        self.fails, self.cautions = np.zeros(shape, int), np.zeros(shape, int)
        self.margin, self.short = np.full(shape, np.inf), np.full(shape, np.inf)
        for column in self.columns:
            self.fails += column.places == 2
            self.cautions += column.places == 1
            if column.rule not in _NO_MARGIN:
                self.margin = np.minimum(self.margin, column.margin)
            short = np.where(column.places == 2, column.margin, np.inf)
            self.short = np.minimum(self.short, short)
        self.metres = metres(brief, found.mean_lowest, circuit)

    def ranked_by(self):
        """What candidates are ranked by, most important first; less is better."""
        wide = [value[:, None] + np.zeros(self.shape) for value in (
            -np.floor(10.0 * np.minimum(self.metres / self.brief.seen_distance, ENOUGH)) / 10.0,
            np.round(self.worst.states[0].watts, 3), self.worst.count,
        )]  # fmt: skip
        margin = -np.floor(10.0 * np.minimum(self.margin, ENOUGH)) / 10.0
        other = np.full(self.shape, float(self.circuit in _OTHERS))
        # What is compared alone and breaks a rule comes after all of which a sheet could be made.
        fails = self.fails + 100.0 * other * (self.fails > 0)
        return [key.ravel() for key in (fails, other, self.cautions, margin, *wide)]
