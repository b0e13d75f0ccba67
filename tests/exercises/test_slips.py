"""How a wrong answer is understood: dangers, one turn, a prefix, a pair; and when it is not."""

from types import SimpleNamespace

import pytest

from helpers.exercises.kinds import Quantity
from helpers.exercises.slips import CLOSE, Slip, close, recognise, size_check

RIGHT = 100.0
N = SimpleNamespace(right=RIGHT)


def slip(name, value, danger="", share=0.0):
    return Slip(name, lambda n: value, f"You seem to have {name}. Which one pushes?", danger, share)


DOUBLED = slip("doubled", 200.0, share=0.5)
BURNS = slip("rated too low", 25.0, danger="it burns.")


def found(value, *slips):
    return recognise(slips, value, RIGHT, N)


def test_a_single_turn_is_named_with_its_reply_and_share():
    turn = found(201.0, BURNS, DOUBLED)
    assert (turn.name, turn.reply, turn.danger, turn.share) == (
        "doubled", DOUBLED.reply, "", 0.5
    )  # fmt: skip


def test_a_danger_comes_before_a_kinder_reading_of_the_same_number():
    kind = slip("quartered", 25.0, share=0.5)
    turn = found(25.0, kind, BURNS)
    assert (turn.name, turn.danger) == ("rated too low", "it burns.")


def test_a_danger_comes_before_a_power_of_ten():
    thousandth = slip("milli for one", RIGHT / 1000, danger="it explodes.")
    assert found(0.1, thousandth).danger == "it explodes."


def test_among_equals_the_first_of_the_table_is_named():
    assert found(200.0, slip("first", 200.0), slip("second", 201.0)).name == "first"


@pytest.mark.parametrize("factor", [1e3, 1e-3, 1e6, 1e-6], ids=lambda f: f"limit: {f:g}")
def test_a_prefix_is_named_within_three_per_cent_and_not_beyond(factor):
    for off in (1, 1 + 0.999 * CLOSE, 1 - 0.999 * CLOSE):
        assert found(RIGHT * factor * off).name == "power of ten"
    for off in (1 + 1.001 * CLOSE, 1 - 1.001 * CLOSE):
        assert found(RIGHT * factor * off) is None


@pytest.mark.parametrize("factor", [10, 0.1, 100, 0.01, 1e9], ids=lambda f: f"limit: {f:g}")
def test_no_prefix_is_named_where_none_fits(factor):
    assert found(RIGHT * factor) is None


def test_limit_a_turn_is_named_within_three_per_cent_and_not_beyond():
    assert CLOSE == 0.03
    for off in (0.999, -0.999):
        assert found(200.0 * (1 + off * CLOSE), DOUBLED).name == "doubled"
    for off in (1.001, -1.001):
        assert found(200.0 * (1 + off * CLOSE), DOUBLED) is None


@pytest.mark.parametrize("factor", [1e3, 1e-3, 1e6, 1e-6], ids=lambda f: f"limit: {f:g}")
def test_a_turn_and_a_prefix_together_are_named_as_a_pair(factor):
    turn = found(200.0 * factor, DOUBLED)
    assert turn.name == "doubled, and power of ten"
    assert turn.reply.startswith("Two things at once. ") and DOUBLED.reply in turn.reply
    assert turn.share == 0


def test_a_pair_keeps_no_danger_that_belongs_to_another_value():
    assert found(25.0 * 1000, BURNS).danger == ""


def test_two_turns_at_once_are_guesswork_and_not_named():
    assert found(200.0 * 0.25, DOUBLED, BURNS) is None


def test_a_turns_own_reply_comes_before_the_general_one():
    own = slip("kilo-ohm typed as ohm", RIGHT * 1000)
    assert found(RIGHT * 1000, own).name == "kilo-ohm typed as ohm"


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


def test_close_to_nothing_is_only_nothing():
    assert close(0.0, 0.0) and not close(1e-12, 0.0)


def quantity(**more):
    return Quantity(of="resistance", unit="kΩ", right=lambda n: RIGHT, **more)


@pytest.mark.parametrize("off", [0.0, 2.99, -2.99, 3.01, -3.01], ids=lambda off: f"limit: {off} %")
def test_right_is_three_per_cent_around(off):
    assert quantity().mark(RIGHT * (1 + off / 100), N).right == (abs(off) <= 3)


@pytest.mark.parametrize("simple", [106.0, 94.0], ids=lambda value: f"limit: {value}")
def test_all_between_the_simple_and_the_exact_result_is_right(simple):
    kind = quantity(simple=lambda n: simple)
    low, high = sorted((RIGHT, simple))
    for value in (0.9701 * low, low, (low + high) / 2, high, 1.0299 * high):
        assert kind.mark(value, N).right
    for value in (0.9699 * low, 1.0301 * high):
        assert not kind.mark(value, N).right


def test_the_rule_for_danger_takes_away_what_a_slip_would_earn():
    kind = quantity(slips=(DOUBLED,), danger=lambda value, n: "it burns." if value > 150 else None)
    verdict = kind.mark(200.0, N)
    assert (verdict.danger, verdict.share, verdict.slip) == ("it burns.", 0.0, "doubled")


def test_an_unexplained_danger_is_said_as_well():
    kind = quantity(danger=lambda value, n: "it burns.", check="Look at the volts.")
    verdict = kind.mark(137.0, N)
    assert verdict.danger == "it burns." and verdict.reply.endswith("Look at the volts.")


def test_the_intermediate_step_is_asked_for_only_where_nothing_explains_the_answer():
    kind = quantity(slips=(DOUBLED,), check="Look at the volts.")
    assert "Look at the volts." in kind.mark(137.0, N).reply
    assert "Look at the volts." not in kind.mark(200.0, N).reply
