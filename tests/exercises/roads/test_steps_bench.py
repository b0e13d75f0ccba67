"""What each wrong turn on the bench leads to, by hand.

Limits, root of three, squares, k = 2: JCGM 100:2008, 4.3.7, 5.1.2, 6.2; a guard band as wide as the
expanded uncertainty: JCGM 106:2012, 8.3. Volts shared by Kirchhoff's laws; 63 % and five time
constants: any textbook.
"""

from math import log, sqrt
from types import SimpleNamespace

import pytest

from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import bench as steps
from helpers.exercises.roads.steps.general import given, knowing, over
from helpers.physics.mains import SUPPLIES

N = SimpleNamespace(
    supply=SUPPLIES["120 V 60 Hz"], reading_volts=5.0, percent=2.0, digits=4, step_volts=0.01,
    one_volts=0.3, two_volts=0.4, ohms=1e6, volts=6.0, tau_seconds=60.0, predicted_volts=4.0,
    printed_ohms=10e3, first_volts=5.0, second_volts=2.0, least_ohms=100e3, limits_ohms=3e3,
)  # fmt: skip
ROOT = sqrt(3)


@pytest.mark.parametrize(
    "steps, right, wrong",
    [
        ((given("reading_volts"),
          steps.per_cent_of("percent", "voltage", "so much", steps.PER_CENT_OF_RANGE),
          steps.plus_digits()), 0.14, {
            "gave the whole width, from end to end": 0.24,
            "took the per cent of the whole range": 0.44, "left out the digits": 0.1,
            "left out the per cent": 0.04, "took the digits for per cent": 0.3,
            "counted a digit one place too far left": 0.5, "took the digits for whole units": 4.1,
            "counted one digit only": 0.11, "divided by root three as well": 0.14 / ROOT,
            "added the limits to the reading": 5.14, "took the limits off the reading": 4.86,
            "took the digits off": 0.06}),
        ((given("one_volts"), steps.standard_of_limits("voltage")), 0.3 / ROOT, {
            "took the limits as they are": 0.3, "divided by three, not by its root": 0.1,
            "divided by two, not by root three": 0.15, "divided by root two": 0.3 / sqrt(2),
            "multiplied by root three": 0.3 * ROOT}),
        ((given("one_volts"), steps.combined_with(Road(given("two_volts")), "voltage")), 0.5, {
            "added the two as they are": 0.7, "took the larger one alone": 0.4,
            "took the smaller one alone": 0.3, "forgot the root of the sum of squares": 0.25,
            "took the difference of the two": 0.1, "took the mean of the two uncertainties": 0.35,
            "added the two and left k out": 0.35}),
        ((given("one_volts"), knowing(steps.expanded("voltage"), steps.K_UNDER_THE_ROOT)), 0.6, {
            "left k out": 0.3, "took k = 3": 0.9, "halved instead of doubling": 0.15,
            "put k under the root": 0.3 * sqrt(2)}),
        ((given("volts"), steps.loaded_by_meter(Road(given("ohms"), steps.from_the_middle()))),
         6 / 1.05, {
            "took one resistor for what the leads see": 6 / 1.1,
            "took the two one after the other": 6 / 1.2, "left the meter out": 6.0,
            "gave what the meter takes away": 6 - 6 / 1.05,
            "added what the meter takes away": 6.3,
            "gave the volts on the other one": 12 - 6 / 1.05,
            "left out one of the two resistors": 12 / 1.1}),
        ((steps.read_time_constant("tau_seconds", 840.0), steps.settled()), 300.0, {
            "read where half of the rise is there": 300 * log(2),
            "read where the curve looks level": 900.0, "took the whole time that is drawn": 4200.0,
            "gave one time constant": 60.0, "took three time constants": 180.0,
            "took four time constants": 240.0,
            "took two time constants": 120.0, "took ten time constants": 600.0}),
        ((given("reading_volts"), steps.apart_from("predicted_volts"),
          steps.in_uncertainties(Road(given("one_volts")))), 1 / 0.3, {
            "took the reading itself": 5 / 0.3, "took the share of the prediction": 0.25 / 0.3,
            "divided the wrong way round": 0.3, "multiplied instead of dividing": 0.3,
            "divided by the expanded uncertainty": 1 / 0.6, "gave the difference itself": 1.0}),
        ((given("second_volts"), steps.ohms_at(Road(given("first_volts"), over("printed_ohms")))),
         4e3, {
            "multiplied instead of dividing": 1e-3, "divided the wrong way round": 2.5e-4,
            "gave the ohms that are printed": 10e3, "gave the ohms of both together": 14e3,
            "shared the volts the wrong way round": 25e3,
            "shared the volts of both": 10e3 * 2 / 7}),
        ((given("least_ohms"), steps.guarded(Road(
            given("limits_ohms"), steps.standard_of_limits("resistance"),
            steps.expanded("resistance")))), 100e3 + 6e3 / ROOT, {
            "took the limits as they are": 106e3, "divided by three, not by its root": 102e3,
            "divided by two, not by root three": 103e3,
            "divided by root two": 100e3 + 6e3 / sqrt(2),
            "multiplied by root three": 100e3 + 6e3 * ROOT, "left k out": 100e3 + 3e3 / ROOT,
            "took k = 3": 100e3 + 9e3 / ROOT, "halved instead of doubling": 100e3 + 1.5e3 / ROOT,
            "left the guard band out": 100e3, "added the limits themselves": 103e3,
            "took the guard band off": 100e3 - 6e3 / ROOT,
            "took the limits off": 97e3,
            "gave the guard band alone": 6e3 / ROOT}),
    ],
    ids=["sheet", "limits", "combined", "expanded", "loaded", "settled", "apart", "ohms", "guard"],
)  # fmt: skip
def test_second_way_each_wrong_turn_is_the_sum_by_hand(steps, right, wrong):
    road = Road(*steps)
    assert road.value(N) == pytest.approx(right)
    ends = {}
    for found in road.wrong(N):
        ends.setdefault(found.names[0], found.value)
    assert {name: ends[name] for name in wrong} == pytest.approx(wrong, rel=1e-4)
    assert set(ends) - set(wrong) <= {
        "divided the wrong way round",
        "multiplied instead of dividing",
    }
