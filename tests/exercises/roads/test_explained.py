"""A wrong number is explained by the turn that ends exactly there, and by no other."""

import random
from types import SimpleNamespace

import pytest

from helpers.exercises.kinds import Amount, Slip, size_check
from helpers.exercises.roads import Road, explain
from helpers.exercises.roads.explained import WIDEST
from helpers.exercises.roads.steps.general import given, label, over
from helpers.exercises.roads.steps.mains import crest, half_wave_mean
from helpers.exercises.roads.steps.ohms import less_drop
from helpers.physics.mains import SUPPLIES
from helpers.physics.operating_point import operating_point

BENCH = SimpleNamespace(volts=12.0, led_volts=2.0, ohms=1500.0)
DROPPER = Road(given("volts"), less_drop("led_volts"), over("ohms"))
MAINS = SimpleNamespace(supply=SUPPLIES["230 V 50 Hz"], ohms=56e3)
HALF_WAVE = Road(
    label(), crest(), over("ohms", called="the current at the crest"), half_wave_mean()
)


def exact(n):
    return operating_point("series_diode", n.supply, ohms=n.ohms).led_amps_mean


LED_MEAN = Amount("current", "mA", HALF_WAVE, exact=exact)


def verdict(typed, kind=LED_MEAN, n=MAINS):
    return kind.verdict_on(kind.read(typed, n), n)


@pytest.mark.parametrize(
    "typed, names",
    [
        ("5.81 mA", ("took the crest for the mean", "multiplied instead of dividing")),
        ("2.05 mA", ("halved the quick sum",)),
        ("4.11 mA", ("used the quick sum, volts over ohms",)),
        ("2.88 mA", ("took the rms of the half-wave for its mean",)),
        ("3.7 mA", ("counted both half-cycles", "took the wave from trough to crest")),
        ("1.85 A", ("mixed up a prefix",)),
        ("18.2 mA", ("moved the decimal point",)),
        ("5800 mA", ("multiplied instead of dividing",)),
        ("7.77 mA", ("",)),
    ],
)
def test_second_way_a_number_worked_out_by_hand_is_named(typed, names):
    """Crest 325.3 V; over 56 kΩ 5.81 mA; over π 1.85 mA; 230 V / 56 kΩ is 4.11 mA."""
    assert verdict(typed).slip == " or ".join(names)


def test_two_that_end_in_one_number_are_both_named_with_the_question_that_parts_them():
    said = verdict("3.7 mA").reply
    assert "if you counted both half-cycles or if you took the wave from trough to crest" in said
    assert said.endswith("Which was it? What did you get for the crest?")


def test_the_exact_sum_has_its_slips_in_the_same_proportion():
    assert verdict(f"{2e3 * exact(MAINS):.5g} mA").slip.startswith("counted both half-cycles")


def test_what_the_question_alone_knows_goes_first():
    own = Slip("took the grid for milliamperes", lambda n: 0.0058, "What is a division worth?")
    kind = Amount("current", "mA", HALF_WAVE, exact=exact, slips=(own,))
    assert verdict("5.8 mA", kind).slip == own.name


def test_limit_a_number_half_a_per_cent_away_has_no_reason():
    right = DROPPER.value(BENCH)
    near, far = 1.2 * right * (1 + 0.9 * WIDEST), 1.2 * right * (1 + 1.1 * WIDEST)
    assert explain(near, 2, DROPPER, BENCH).names == ("left out the LED's own drop",)
    assert explain(far, 2, DROPPER, BENCH) is None


def test_limit_four_digits_are_matched_more_narrowly_than_two():
    wrong = 1.2 * DROPPER.value(BENCH) * 1.004
    assert explain(wrong, 2, DROPPER, BENCH) and explain(wrong, 4, DROPPER, BENCH) is None


def test_two_digits_that_are_the_right_ones_are_right():
    kind = Amount("current", "mA", DROPPER, within=0.005)
    n = SimpleNamespace(volts=12.0, led_volts=2.0, ohms=1475.0)  # 6.78 mA
    assert kind.verdict_on(kind.read("6.8 mA", n), n).right
    assert not kind.verdict_on(kind.read("6.8 mA", n), n).slip
    assert not kind.verdict_on(kind.read("6.84 mA", n), n).right
    assert not kind.verdict_on(kind.read("7 mA", n), n).right


@pytest.mark.parametrize("below", [0, 0.005])
def test_limit_below_the_least_that_is_safe_two_digits_are_not_enough(below):
    kind = Amount("current", "mA", DROPPER, below=below)
    n = SimpleNamespace(volts=12.0, led_volts=2.0, ohms=1483.0)  # 6.743 mA
    assert not kind.verdict_on(kind.read("6.7 mA", n), n).right
    assert kind.verdict_on(kind.read("6.72 mA", n), n).right == (below > 0)


def test_limit_of_random_numbers_at_most_a_tenth_is_given_a_reason():
    chance, claimed, tried = random.Random(11), 0, 0
    while tried < 2000:
        value = float(f"{exact(MAINS) * 10 ** chance.uniform(-1, 1):.3g}")
        found = LED_MEAN.mark(value, MAINS, 3)
        if not found.right:
            tried += 1
            claimed += bool(found.slip)
    assert claimed <= 0.10 * tried


def test_second_way_the_exact_sum_upside_down_is_named_too():
    """Crest 325.3 V less 2.7 V, over 47 kΩ: 6.86 mA; the other way round 0.146."""
    n = SimpleNamespace(supply=SUPPLIES["230 V 50 Hz"], ohms=47e3)
    kind = Amount("current", "mA", Road(label(), crest(), over("ohms")),
                  exact=lambda n: 6.863e-3)  # fmt: skip
    assert verdict("0.146 mA", kind, n).slip == "divided the wrong way round"


RIGHT = 100.0


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (0.0, "sign"),
        (-RIGHT, "sign"),
        (RIGHT * 1.1, "a little too large"),
        (RIGHT / 1.1, "a little too small"),
        (RIGHT * 1.9, "Too large, but by less than a factor of two"),
        (RIGHT / 1.9, "Too small, but by less than a factor of two"),
        (RIGHT * 9, "more than twice, less than ten times"),
        (RIGHT / 9, "more than twice, less than ten times"),
        (RIGHT * 11, "Much too large: more than ten times"),
        (RIGHT / 11, "Much too small: more than ten times"),
    ],
    ids=lambda value: f"limit: {value}",
)
def test_an_answer_that_no_turn_explains_gets_its_direction_and_size(value, words):
    said = size_check(value, RIGHT)
    assert words in said
    assert f"{RIGHT:g}" not in said


@pytest.mark.parametrize("off", [0.0, 2.99, -2.99, 3.01, -3.01], ids=lambda off: f"limit: {off} %")
def test_right_is_three_per_cent_around(off):
    right = DROPPER.value(BENCH)
    kind = Amount("current", "mA", DROPPER)
    assert kind.mark(right * (1 + off / 100), BENCH).right == (abs(off) <= 3)


@pytest.mark.parametrize("share", [1.06, 0.94], ids=lambda value: f"limit: {value}")
def test_all_between_the_simple_and_the_exact_result_is_right(share):
    simple = DROPPER.value(BENCH)
    kind = Amount("current", "mA", DROPPER, exact=lambda n: share * simple)
    low, high = sorted((simple, share * simple))
    for value in (0.9701 * low, low, (low + high) / 2, high, 1.0299 * high):
        assert kind.mark(value, BENCH).right
    for value in (0.9699 * low, 1.0301 * high):
        assert not kind.mark(value, BENCH).right


def test_a_danger_takes_away_what_a_turn_would_earn_and_is_said_without_one():
    kind = Amount("current", "mA", DROPPER, danger=lambda value, n: "it burns.")
    for value, slip in ((0.008, "left out the LED's own drop"), (0.0123, "")):
        found = kind.mark(value, BENCH)
        assert (found.danger, found.share, found.slip) == ("it burns.", 0.0, slip)


def test_a_number_that_nothing_explains_leads_back_to_the_first_result_on_the_way():
    kind = Amount("current", "mA", DROPPER)
    asked = "What did you get for the volts left for the dropper?"
    assert kind.mark(0.0123, BENCH).reply.endswith(asked)
    assert asked not in kind.mark(0.008, BENCH).reply


def test_where_the_digits_stay_right_a_moved_point_is_named_before_the_turn():
    """2 V over 100 kΩ are 20 µA; 2 V times 100 kΩ have the same digits."""
    road = Road(given("volts"), over("ohms"))
    found = explain(2e-4, 3, road, SimpleNamespace(volts=2.0, ohms=100e3))
    assert found.names == ("moved the decimal point", "multiplied instead of dividing")
    assert found.share == 0.0
