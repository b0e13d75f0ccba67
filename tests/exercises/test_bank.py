"""Right answers, bands, slips and model answers of every lesson, over all numbers to be met.

Each id says what the expected value rests on: a second way of calculating it, or a property that
every question must have. Judgements of a single question stand in `test_parts`.
"""

from functools import cache
from importlib import import_module
from itertools import pairwise, permutations, product
from math import ceil
from pkgutil import iter_modules
from types import SimpleNamespace

import pytest
from questions import ALL, MARKED, QUANTITIES, of_each

from helpers import physics
from helpers.authoring.every_numbers import every_numbers
from helpers.exercises import kinds
from helpers.exercises.bank import bank, lesson_of, lessons
from helpers.exercises.wording import working_lines
from helpers.physics.mains import SUPPLIES
from helpers.physics.operating_point import operating_point
from helpers.quantities import write, write_as

# The names that a model answer in code may use, and no other: all of the physics, and a few.
NAMES = {
    found.name: import_module(f"{physics.__name__}.{found.name}")
    for found in iter_modules(physics.__path__)
} | {"abs": abs, "ceil": ceil, "operating_point": operating_point, "write": write,
     "write_as": write_as, "__builtins__": {}}  # fmt: skip


def second_way(number):
    return import_module(f"second_ways.lesson_{number}")


@cache
def cases(question):
    """Return what a quantity question expects, once for all tests: numbers, right, band, wrongs."""
    return [
        SimpleNamespace(
            numbers=numbers,
            right=question.kind.right(numbers),
            simple=question.kind.road.value(numbers),
            band=question.kind.band(numbers),
            wrongs=[(slip, slip.wrong(numbers)) for slip in question.kind.slips],
        )
        for numbers in every_numbers(question)
    ]


# --- the right answers


@pytest.mark.parametrize("number", lessons(), ids=lambda number: f"property: lesson {number}")
def test_every_number_of_a_lesson_has_a_second_way_and_no_other_has(number):
    asked = [q for q in lessons()[number].QUESTIONS if q in QUANTITIES]
    second = second_way(number)
    assert set(second.RIGHT) == {q.id for q in asked}
    assert set(second.SIMPLE) == {q.id for q in asked if q.kind.exact}
    assert {id: set(slips) for id, slips in second.SLIPS.items()} == {
        q.id: {slip.name for slip in q.kind.slips} for q in asked if q.kind.slips
    }


@of_each(QUANTITIES, "second way")
def test_right_answer(question):
    second = second_way(lesson_of(question.id))
    for case in cases(question):
        expected = second.RIGHT[question.id](case.numbers)
        assert case.right == pytest.approx(expected, rel=second.WITHIN), case.numbers


@of_each([q for q in QUANTITIES if q.kind.exact], "second way")
def test_simple_answer(question):
    second = second_way(lesson_of(question.id))
    for case in cases(question):
        expected = second.SIMPLE[question.id](case.numbers)
        assert case.simple == pytest.approx(expected, rel=second.WITHIN), case.numbers


@of_each([q for q in QUANTITIES if q.line_of_code(every_numbers(q)[0])], "second way")
def test_code_of_the_model_answer_gives_the_right_answer(question):
    """The line of code is our own text; it is run here with the names above alone."""
    for case in cases(question):
        line = question.line_of_code(case.numbers)
        # it holds the numbers as the question shows them: six figures at least
        assert eval(line, NAMES) == pytest.approx(case.right, rel=1e-5), line
        shown = next(x for x in working_lines(question, case.numbers) if x.role == "code").text
        typed = question.kind.read(eval(shown, NAMES), case.numbers)
        assert question.kind.mark(typed.value, case.numbers).right, shown


# --- what is accepted


@of_each(QUANTITIES)
def test_the_band_reaches_from_the_simple_to_the_exact_answer_and_no_further(question):
    within, misread = question.kind.within, question.kind.misread
    assert 0.005 <= within <= 0.03
    for case in cases(question):
        both = (case.right, case.simple)
        below = within if question.kind.below is None else question.kind.below
        low, high = (1 - below) * min(both), (1 + within) * max(both)
        low, high = min(low, min(both) - misread), max(high, max(both) + misread)
        assert case.band == pytest.approx((low, high))
        for value in (1.0001 * low, 0.9999 * high):
            assert question.kind.mark(value, case.numbers).right
        for value in (0.9999 * low, 1.0001 * high):
            assert not question.kind.mark(value, case.numbers).right


@of_each(QUANTITIES)
def test_limit_three_digits_are_enough(question):
    for case in cases(question):
        for value in (case.right, case.simple):
            rounded = write_as(value, question.kind.unit, 3)
            typed = question.kind.read(rounded, case.numbers)
            assert question.kind.mark(typed.value, case.numbers).right, rounded


@of_each(QUANTITIES)
def test_the_example_that_shows_how_to_type_is_read_and_is_never_the_right_answer(question):
    for case in cases(question):
        typed = question.kind.read(question.kind.example(case.numbers), case.numbers)
        assert not question.kind.mark(typed.value, case.numbers).right, case.numbers


@of_each([q for q in QUANTITIES if q.kind.measure])
def test_the_measure_that_is_asked_is_right_by_its_name_and_no_rival_is(question):
    asked = question.kind.measure
    rivals = {"each", "total"} if asked in ("each", "total") else {"peak", "rms", "mean"}
    for case in cases(question):
        right = question.kind.model(case.numbers)
        for said in rivals:
            answer = question.kind.read(f"{right} {said}", case.numbers)
            verdict = question.kind.verdict_on(answer, case.numbers)
            assert verdict.share == (1.0 if said == asked else 0.5), (right, said)
            assert verdict.right == (said == asked)


# --- slips


@of_each(QUANTITIES, "second way")
def test_each_slip_is_what_its_name_says(question):
    second = second_way(lesson_of(question.id))
    for case in cases(question):
        for slip, wrong in case.wrongs:
            expected = second.SLIPS[question.id][slip.name](case.numbers)
            assert wrong == pytest.approx(expected, rel=second.WITHIN), slip.name


@of_each(QUANTITIES)
def test_no_slip_is_accepted_as_right(question):
    for case in cases(question):
        low, high = case.band
        for slip, wrong in case.wrongs:
            assert not low <= wrong <= high, (slip.name, case.numbers)


@of_each(QUANTITIES)
def test_every_slip_is_recognised_by_its_own_name(question):
    for case in cases(question):
        for slip, wrong in case.wrongs:
            verdict = question.kind.mark(wrong, case.numbers)
            assert verdict.slip == slip.name, (slip.name, case.numbers)
            assert verdict.share < 1


@of_each(QUANTITIES)
def test_limit_slips_with_different_replies_lie_three_per_cent_apart(question):
    for case in cases(question):
        for (one, first), (other, second) in permutations(case.wrongs, 2):
            told_alike = one.asks == other.asks
            assert told_alike or abs(first - second) > 0.03 * abs(second), (
                one.name,
                other.name,
                case.numbers,
            )


@of_each([q for q in QUANTITIES if q.kind.of == "resistance"])
def test_a_resistor_that_is_called_dangerous_is_smaller_than_the_right_one(question):
    for case in cases(question):
        for (slip, wrong), factor in product(case.wrongs, (1, 1e3, 1e-3, 1e6, 1e-6)):
            if question.kind.mark(wrong * factor, case.numbers).danger:
                assert wrong * factor < case.right, (slip.name, factor)


@of_each([bank()[name] for name in ("safe-1", "ohm-recall-1")])
def test_limit_a_touch_that_can_kill_is_never_taken_for_a_harmless_one_without_a_word(question):
    """Hands let go of 5 mA, most of 10 mA: IEC 60479-1, from memory; 50 mA stop a heart."""
    for case in cases(question):
        assert case.right > 0.05
        for amps in (0.5e-3, 5e-3, 9.9e-3, case.right / 1000):
            verdict = question.kind.mark(amps, case.numbers)
            assert verdict.danger and not verdict.share
        assert not question.kind.mark(case.right * 1.3, case.numbers).danger


def test_second_way_a_barrier_that_fails_is_never_said_to_hold_without_a_word():
    """0.5 mA rms and 0.7 mA peak through 2 kilo-ohms: IEC 61140, IEC 60335-1 clause 8.1.4."""
    question, told = bank()["safe-12"], set()
    for case in cases(question):
        beyond = case.right * 2**0.5 > 0.7e-3
        assert bool(question.kind.mark(0.3e-3, case.numbers).danger) == beyond
        told.add(beyond)
    assert told == {True, False}


@of_each(QUANTITIES)
def test_any_number_is_marked(question):
    for case in cases(question)[:20]:
        for value in (0.0, *(case.right * factor for factor in (1e-9, 1 / 7, 7, 1e9))):
            verdict = question.kind.mark(value, case.numbers)
            assert 0 <= verdict.share < 1
            assert verdict.reply


# --- model answers


@of_each(MARKED)
def test_model_answer_earns_full_marks(question):
    """All numbers to be met, in the listed order and as twenty learners on each supply see them."""
    drawn = [
        question.numbers_for(f"BENCH-{learner:04d}", "wick", supply, 0)
        for supply, learner in product(SUPPLIES.values(), range(20))
    ]
    for numbers in {repr(each): each for each in [*every_numbers(question), *drawn]}.values():
        answer = question.kind.read(question.kind.model(numbers), numbers)
        assert question.kind.mark(answer.value, numbers).right, numbers


@of_each(MARKED)
def test_fresh_numbers_are_other_numbers(question):
    if not question.has_fresh_numbers:
        return
    supply = SUPPLIES["230 V 50 Hz"]
    for learner in range(40):
        code = f"BENCH-{learner:04d}"
        drawn = [question.numbers_for(code, "wick", supply, number) for number in range(6)]
        for one, other in pairwise(drawn):
            one.shown = other.shown = ()
            assert one != other, learner
            if isinstance(question.kind, kinds.Amount):
                right = question.kind.right(one)
                assert question.kind.right(other) != pytest.approx(right), (one, other)


@of_each([q for q in MARKED if q.danger])
def test_a_danger_item_goes_through_all_its_cases_before_one_comes_again(question):
    for supply in SUPPLIES.values():
        count = sum(n.supply == supply for n in every_numbers(question))
        for learner in range(20):
            drawn = [
                question.numbers_for(f"BENCH-{learner:04d}", "wick", supply, number)
                for number in range(2 * count)
            ]
            met = [
                repr({k: v for k, v in vars(n).items() if k not in ("supply", "shown")})
                for n in drawn
            ]
            assert len(set(met[:count])) == count
            assert met[count:] == met[:count]


@of_each(ALL)
def test_there_are_three_cases_to_draw_or_one_for_everybody(question):
    """With two, a fresh draw could not differ from the one before and from the one after."""
    cases = {tuple(map(str, vars(n).values())) for n in every_numbers(question)}
    assert (len(cases) // len(SUPPLIES) >= 3) == question.has_fresh_numbers
