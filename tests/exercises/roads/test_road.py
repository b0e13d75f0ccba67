"""A road: right value, worked sum, code and wrong ends all follow from one chain of steps."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from helpers.exercises.roads import Road, Turn, clear
from helpers.exercises.roads.steps.general import given, over
from helpers.exercises.roads.steps.ohms import less_drop, parallel, series, smallest
from helpers.physics import ohms_law

N = SimpleNamespace(volts=12.0, led_volts=2.0, ohms=1000.0, percent=10.0, pair=(1000.0, 3000.0))
DROPPER = Road(given("volts"), less_drop("led_volts"), over("ohms"))
NESTED = Road(given("volts"), over(Road(given("ohms"), smallest("percent"))))


def plain(text):
    return text.replace("\u00a0", " ")


def ends(road):
    return {" and ".join(wrong.names): wrong.value for wrong in road.wrong(N)}


def test_second_way_the_value_is_the_sum_by_hand():
    assert DROPPER.value(N) == pytest.approx((12.0 - 2.0) / 1000.0)
    assert NESTED.value(N) == pytest.approx(12.0 / 900.0)


def test_the_worked_sum_has_a_piece_for_each_step_also_of_a_road_within():
    assert plain(DROPPER.sum(N)) == "12 V − 2 V = 10 V; 10 V / 1 kΩ = 10 mA"
    assert plain(NESTED.sum(N)) == "1 kΩ − 10 % = 900 Ω; 12 V / 900 Ω = 13.3 mA"
    assert plain(Road(series("pair")).sum(N)) == "1 kΩ + 3 kΩ = 4 kΩ"
    assert plain(Road(given("volts")).sum(N)) == "12 V"


@pytest.mark.parametrize(
    "road", [DROPPER, NESTED, Road(given("volts"), over(Road(parallel("pair"))))]
)
def test_second_way_the_line_of_code_gives_the_value(road):
    line = road.code(N)
    assert eval(line, {"__builtins__": {}, "ohms_law": ohms_law}) == pytest.approx(road.value(N))


def test_a_wrong_turn_changes_one_step_and_the_rest_of_the_road_stays():
    wrong = ends(DROPPER)
    assert wrong["left out the LED's own drop"] == pytest.approx(0.012)
    assert wrong["added the LED's drop"] == pytest.approx(0.014)
    assert wrong["divided the wrong way round"] == pytest.approx(1000.0 / 10.0)


def test_a_road_within_has_its_wrong_turns_too():
    assert ends(NESTED)["took the largest of the batch"] == pytest.approx(12.0 / 1100.0)


def test_two_usual_turns_are_taken_at_two_steps_and_a_dozen_are_the_most():
    twice = Road(given("volts"), less_drop("led_volts"), *[less_drop("led_volts")] * 9)
    pairs = twice.wrong_twice(N)
    assert len(pairs) == 12
    assert all(len(set(pair.places)) == 2 for pair in pairs)
    assert pairs[0].value == pytest.approx(twice.value(N) + 4.0)


def test_second_way_one_of_two_turns_may_lie_on_a_road_within():
    smallest_of_all = Road(given("ohms"), smallest("percent"))
    bench = Road(given("volts"), less_drop("led_volts"), over(smallest_of_all))
    pairs = {pair.names: pair.value for pair in bench.wrong_twice(N)}
    assert pairs["left out the LED's own drop", "left the tolerance out"] == pytest.approx(0.012)
    assert len(pairs) == 2


def test_a_turn_that_leads_nowhere_is_left_out():
    over_zero = Road(given("volts"), less_drop("volts"), over("ohms"))
    assert "divided the wrong way round" not in ends(over_zero)


def test_a_turn_on_a_road_within_that_leads_nowhere_is_left_out():
    by_nothing = Turn("took nothing", "How many ohms stand there?", lambda value, operand, n: 0.0)
    within = Road(replace(given("ohms"), turns=(by_nothing,)))
    assert "took nothing" in ends(within)
    assert "took nothing" not in ends(Road(given("volts"), over(within)))


def test_property_a_clear_number_is_told_from_the_wrong_turn_with_two_digits_and_when_exact():
    """1.249 and 93 % of it are 1.2 both; 1.31 and 1.218 are not, but 97 % of 1.31 is too near."""
    seven_off = Turn("took seven per cent off", "Why?", lambda value, watts, n: 0.93 * watts)
    road = Road(given("watts", turns=(seven_off,)))
    assert clear(road, None, "watts", (1.249, 1.31)) == [1.31]
    assert clear(road, None, "watts", (1.249, 1.31), lambda n: 0.97 * n.watts) == []
