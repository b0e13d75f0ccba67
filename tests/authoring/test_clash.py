"""Wrong turns on the right answer, and three on one number, are found before a class does."""

import pytest

from helpers.__main__ import main
from helpers.authoring.clash import as_text, clashes, clashes_with, free_numbers, report
from helpers.authoring.every_numbers import every_numbers
from helpers.exercises.kinds import Amount, Choice, Option
from helpers.exercises.question import Question
from helpers.exercises.roads import Road, Turn
from helpers.exercises.roads.steps.general import given, knowing, times
from helpers.physics.mains import SUPPLIES


def doubled(*turns, amps=(2.0, 3.0, 5.0)):
    """Return a question for twice a current, which knows some wrong turns."""
    road = Road(given("amps"), knowing(times(2.0, "current", "the double"), *turns))
    return Question(
        id="made-up",
        outcome="double a current",
        ask="What is twice {amps}?",
        numbers=lambda draw, supply: {"amps": draw.pick(amps)},
        kind=Amount("current", "A", road),
        nudges=("What is twice a thing?", "Add it to itself."),
    )


def turn(name, take):
    return Turn(name, f"Why {name}?", lambda value, operand, n: take(value))


SQUARED = turn("squared it", lambda value: value**2)  # 2 A squared in figures is twice 2 A
TEN_MORE = turn("added a bit", lambda value: 2.045 * value)
THREE = [turn(f"went wrong in way {way}", lambda value: 7.0 * value) for way in range(3)]


def test_a_wrong_turn_on_the_right_answer_is_found_and_the_proposal_is_free_of_it():
    question = doubled(SQUARED)
    found = clashes(question)
    assert {(clash.names, clash.right, clash.numbers.amps) for clash in found} == {
        (("squared it",), "as it is", 2.0)
    }
    assert {clash.numbers.supply.name for clash in found} == set(SUPPLIES)
    said = "\n".join(report(question)).replace("\u00a0", " ")
    assert f"Marked right though a wrong turn was taken ({len(SUPPLIES)} sets of numbers):" in said
    assert "squared it: 4 A, right is 4 A, with amps 2 A, on every supply" in said
    assert said.endswith("Free of a clash on every supply:\n  amps 3 A\n  amps 5 A")


def test_property_no_proposed_number_clashes():
    question = doubled(SQUARED, TEN_MORE, *THREE[:2])
    free = free_numbers(question, clashes(question))
    for n in every_numbers(question):
        clash_free = not clashes_with(question.kind, n)
        assert (as_text(n) in free[n.supply.name]) == clash_free


def test_a_turn_that_is_right_by_its_two_digits_is_found():
    """Second way: 1.02 A is 2 % over 1 A and so in the band; 1.04 A is not, but is 1.0 A."""
    near = turn("added four per cent", lambda value: 2.08 * value)
    found = clashes(doubled(near, amps=(0.5, 0.7)))
    assert {(clash.right, clash.numbers.amps) for clash in found} == {("in two digits", 0.5)}


def test_three_turns_on_one_number_are_found_and_two_are_not():
    (clash,) = {clash.names for clash in clashes(doubled(*THREE))}
    assert clash == tuple(one.name for one in THREE)
    assert clashes(doubled(*THREE[:2])) == []


def test_a_clean_question_says_so():
    (head, said) = report(doubled(*THREE[:2]))
    sets = 3 * len(SUPPLIES)
    assert head == f"made-up: {sets} sets of numbers tried, all that it can draw."
    assert said == "No clash: no wrong turn is marked right, no number has three meanings."


def test_where_no_number_is_free_each_supply_is_told():
    always = turn("took the right way by a wrong reason", lambda value: 2.0 * value)
    said = report(doubled(always))
    assert "No set of numbers is free of a clash on every supply." in said
    assert "Free of a clash on 100 V 50 Hz: none" in said


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("heat-99", '"heat-99" was read, and no question has that id.'),
        ("of-choice", '"of-choice" was read. Its answer is not a sum'),
    ],
)
def test_what_was_read_and_what_there_is(monkeypatch, capsys, typed, said):
    kind = Choice((Option("a", "A.", right=True), Option("b", "B.")))
    other = Question("of-choice", "choose", "Which?", kind, nudges=("One?", "Two?"))
    monkeypatch.setattr(
        "helpers.exercises.bank.bank", lambda: {"made-up": doubled(), "of-choice": other}
    )
    assert main(["clash", typed]) == 2
    stopped = capsys.readouterr().err
    assert stopped.startswith(said)
    assert stopped.endswith("Questions with a sum are: made-up.\n")


def test_the_command_tells_of_a_question_of_the_bank(capsys):
    """Pinned: on 100 V, ten per cent are 10 V, so the two roads are one."""
    assert main(["clash", "safe-12"]) == 0
    said = capsys.readouterr().out
    assert "added the per cent as volts" in said and "100 V 50 Hz" in said
