"""Each figure at the ends of what it is given."""

from helpers.figures import (
    areas,
    at_off,
    bench_supply,
    comparison,
    dimmed,
    faulty,
    heat,
    job,
    margins,
    on_bench,
    readings,
    seen,
    settings,
    spread,
    touch,
    value_map,
    waves,
)
from helpers.figures.words import NAMES
from helpers.physics.mains import SUPPLIES
from helpers.physics.phase_cut import NO_DIMMER, Dimmer
from helpers.sizing.brief import Brief
from helpers.sizing.by_setting import by_setting
from helpers.sizing.verdicts import plan

ANGLES = (0.0, 5.0, 90.0, 175.0, 180.0)
DIMMERS = [NO_DIMMER, *(Dimmer(edge, a) for edge in ("leading", "trailing") for a in ANGLES)]
SUPPLY, AMERICA = SUPPLIES["230 V 50 Hz"], SUPPLIES["120 V 60 Hz"]


def _all():
    for supply in SUPPLIES.values():
        yield waves.sine, (supply,)
        yield at_off.at_off, (supply,)
        yield waves.chopped, (supply, Dimmer("leading", 90.0))
        yield readings.meters, (supply, Dimmer("trailing", 90.0))
        yield waves.led_current, ("bridge", supply, NO_DIMMER, 100e3)
        yield comparison.seven_circuits, (supply, NO_DIMMER, 100e3)
        yield comparison.bad_days, (supply, 100e3)
        yield comparison.dropper_pulse, (supply, Dimmer("leading", 90.0), 100e-9, 1e3)
    for dimmer in DIMMERS:
        yield waves.chopped, (SUPPLY, dimmer)
        for place in readings.PLACES.values():
            yield readings.meters, (SUPPLY, dimmer, place)
        for circuit in NAMES:
            yield dimmed.at_once, (circuit, SUPPLY, dimmer, 27e3, 90.0)
            yield dimmed.at_once, (circuit, SUPPLY, dimmer, 120e3, 200.0, AMERICA, 50e3)
        yield comparison.seven_circuits, (SUPPLY, dimmer, 47e3)
        yield comparison.dropper_pulse, (SUPPLY, dimmer, 33e-9, 10e3)
        yield waves.led_current, ("diode_across", SUPPLY, dimmer, 1e6)
    for circuit in NAMES:
        for ohms in (1e3, 100e3, 10e6):
            yield waves.led_current, (circuit, SUPPLY, Dimmer("leading", 120.0), ohms)
    for watts in (0.0, 1e-5, 0.3, 20.0):
        for ambient in (-40.0, 25.0, 70.0, 200.0):
            yield heat.rating, (watts, 0.5, ambient, "caution")
        for seconds in (0.5, 120.0, 5000.0):
            yield heat.warm_up, (watts, 200.0, seconds, 25.0)
    for read in ((0.0, 0.02), (9.0, 0.1), (10.6, 3.0), (24.0, 0.9)):
        yield on_bench.agreement, ((10.6, 0.5), read, read[0] == 10.6)
    for seconds in (0.0, 60.0, 3600.0, 9000.0, 21600.0):
        yield on_bench.settling, (seconds, 40.0, 1800.0, 20.0)
    for fault in faulty.FAULTS:
        for circuit in ("series_diode", "diode_across", "bridge"):
            yield faulty.one_fault, (circuit, SUPPLY, NO_DIMMER, 47e3, fault)
    for riddle in range(1, len(faulty.RIDDLES) + 1):
        yield faulty.one_fault, ("bridge", SUPPLY, DIMMERS[3], 47e3, "a diode is open", riddle)
    for volts, ohms in ((5.0, 100.0), (24.0, 100e3), (24.0, 10e6)):
        yield spread.readings_of_boards, (volts, ohms)
    yield seen.look, ()
    for amps in (1e-5, 0.2e-3, 5e-3):
        for lux, metres, beside in ((1.0, 30.0, 0.0), (300.0, 4.0, 30.0), (50e3, 0.5, 80.0)):
            yield seen.noticed, (amps, "yellow-green", lux, metres, beside)
    choices = ([47e3], (33e3, 100e3, 330e3), [1e3, 4.7e3, 22e3, 47e3, 100e3, 10e6])
    angles = ([0.0], (0.0, 90.0, 150.0), [0, 60, 90, 120, 175, 180])
    for ohms, degrees in zip(choices, angles, strict=True):
        yield settings.brightness, ("series_diode", SUPPLY, ohms, degrees)
    for amps in (0.0, 1e-7, 0.5e-3, 0.03, 10.0, 200.0):
        for seconds in (0.01, 1.0, 10.0, 1e6):
            yield touch.zones, (amps, seconds)
            yield touch.zones, (amps, seconds, (amps / 2, 2 * seconds), 0.39)
    for volts in (1.0, 5.0, 24.0):
        for ohms in (100.0, 2e3, 100e3):
            yield bench_supply.dropper, (volts, ohms)
    for percent in (0.0, 50.0, 100.0):
        yield job.knob, (AMERICA, percent)
    for degrees in ANGLES:
        yield areas.shares, (degrees,)
    yield from _of_plans()


def _of_plans():
    """The best, one in the middle and the last of the workshop's, of a poor one, without dimmer."""
    poor = {"box_touch": "touchable", "seen_distance": 90.0, "bin_series": "E24", "box_air": 84.0}
    for brief in (Brief(), Brief(**poor), Brief(dimmer_edge="none"), Brief(dimmer_lowest=180.0)):
        made = plan(brief)
        for place in (0, len(made.order) // 2, -1):
            candidate = made.candidate(made.order[place])
            yield margins.strip, (candidate.findings,)
            yield value_map.value_by_setting, tuple(by_setting(brief, candidate))


CASES = list(_all())
