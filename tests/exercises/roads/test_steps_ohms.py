"""What each wrong turn of the steps of Ohm's law leads to, by hand.

Colours and their digits: IEC 60062, from memory. E12: IEC 60063.
"""

from types import SimpleNamespace

import pytest

from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import ohms as steps
from helpers.exercises.roads.steps.general import given

BENCH = SimpleNamespace(
    volts=12.0, led_volts=2.0, ohms=1000.0, percent=10.0, pair=(1000.0, 3000.0), sum_ohms=3600.0
)
CURRENT = Road(given("volts"), steps.current_through("ohms"))
LEFT = Road(given("volts"), steps.less_drop("led_volts"))
SMALLEST = Road(given("ohms"), steps.smallest("percent"))
NEXT_UP = Road(given("sum_ohms"), steps.next_up("E12"))


def ends(road, n=BENCH):
    found = {}
    for wrong in road.wrong(n):
        found.setdefault(wrong.names[0], set()).add(wrong.value)
    return found


@pytest.mark.parametrize(
    "road, right, wrong",
    [
        (CURRENT, 0.012, {"squared the volts": 0.144, "divided the wrong way round": 83.33,
                          "multiplied instead of dividing": 12_000.0}),
        (Road(given("volts"), steps.dc_current("ohms")), 0.012, {
            "took the crest of a DC supply": 0.0169706, "halved it as on the mains": 0.006,
            "took 0.45 as on the mains": 0.0054, "squared the volts": 0.144,
            "divided the wrong way round": 83.33, "multiplied instead of dividing": 12_000.0}),
        (LEFT, 10.0, {"left out the LED's own drop": 12.0, "added the LED's drop": 14.0,
                      "took the LED's drop twice": 8.0, "took the LED's drop alone": 2.0,
                      "took off a diode's 0.7 V as well": 9.3, "took the drop of a blue LED": 9.0}),
        (SMALLEST, 900.0, {"left the tolerance out": 1000.0,
                           "took the largest of the batch": 1100.0}),
        (NEXT_UP, 3900.0, {"took the next value down": 3300.0, "went one value too far": 4700.0,
                           "kept the sum as it came out": 3600.0,
                           "rounded up to a whole kilo-ohm": 4000.0}),
        (Road(steps.series("pair")), 4000.0, {
            "took them as side by side": 750.0, "left out the second one": 1000.0,
            "left out the first one": 3000.0, "took the mean of the two": 2000.0,
            "took the difference": 2000.0}),
        (Road(steps.parallel("pair")), 750.0, {
            "added them as one after the other": 4000.0, "took the difference": 2000.0,
            "halved the smaller one": 500.0, "divided the product by the difference": 1500.0,
            "doubled the product over the sum": 1500.0, "halved the product over the sum": 375.0,
            "took the mean of the two": 2000.0, "took the root of the product": 1732.05,
            "left the sum of 1/R upside down": 1 / 750.0, "took the smaller one alone": 1000.0,
            "left the product undivided": 3e6}),
    ],
    ids=["current", "on DC", "drop", "tolerance", "values", "one after the other", "side by side"],
)  # fmt: skip
def test_second_way_each_wrong_turn_is_the_sum_by_hand(road, right, wrong):
    assert road.value(BENCH) == pytest.approx(right)
    assert {name: max(found) for name, found in ends(road).items()} == pytest.approx(
        wrong, rel=1e-4
    )


def test_second_way_a_red_drop_is_told_from_that_of_a_blue_led_only():
    """12 − 2 V."""
    assert ends(LEFT, SimpleNamespace(volts=12.0, led_volts=3.1))["took the drop of a red LED"] == {
        10.0
    }
    assert "took the drop of a red LED" not in ends(LEFT)


def test_second_way_a_blue_drop_is_what_people_say_or_what_the_lesson_has():
    """12 − 3 V, 12 − 3.1 V; on 5 V the first leaves what a red LED keeps."""
    name = "took the drop of a blue LED"
    assert ends(LEFT)[name] == {9.0, 8.9}
    assert ends(LEFT, SimpleNamespace(volts=5.0, led_volts=2.0))[name] == {1.9}
    assert name not in ends(LEFT, SimpleNamespace(volts=12.0, led_volts=3.1))


def test_second_way_no_value_begins_with_black():
    """12 and two zeros: brown one colour down is black."""
    found = ends(Road(steps.bands("ohms")), SimpleNamespace(ohms=1200.0))
    assert found["read the first band one colour off"] == {2200.0}


def test_second_way_bands_read_wrong_are_the_digits_by_hand():
    """39 and two zeros: orange, white, red."""
    road, n = Road(steps.bands("ohms")), SimpleNamespace(ohms=3900.0)
    assert road.value(n) == 3900.0
    assert ends(road, n) == {
        "counted one zero too many": {39_000.0},
        "counted one zero too few": {390.0},
        "swapped the first two bands": {9300.0},
        "read the third band as a digit": {392.0},
        "took the third band as a plain factor": {78.0},
        "read the first band one colour off": {4900.0, 2900.0},
        "read the second band one colour off": {3800.0},  # no colour stands for ten
    }
