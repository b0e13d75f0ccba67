"""The questions of the bank, over every set of numbers that a learner can meet.

Each id says what the expected value rests on: a second way of calculating it, or a property that
every question must have.
"""

import re
from importlib import import_module
from itertools import combinations, pairwise, product
from pkgutil import iter_modules

import pytest
from every_numbers import every_numbers

from helpers import physics
from helpers.exercises import kinds
from helpers.exercises.bank import bank, lesson_of, lessons
from helpers.exercises.slips import CLOSE, close
from helpers.exercises.standing import DrawStanding
from helpers.exercises.wording import feedback_lines, question_lines, working_lines
from helpers.physics.mains import SUPPLIES
from helpers.quantities import write, write_as

ALL = list(bank().values())
MARKED = [q for q in ALL if q.role != "predict"]
QUANTITIES = [q for q in ALL if isinstance(q.kind, kinds.Quantity)]
LETTERED = [q for q in ALL if hasattr(q.kind, "options")]

PHYSICS = [found.name for found in iter_modules(physics.__path__)]

# Two wrong turns that cannot be told apart by their number, with the reply that both may share.
# Found by this test; a pair may be added only where its two replies fit both turns.
FOUND_COLLISIONS = set()


def of_each(questions, what="property"):
    return pytest.mark.parametrize(
        "question", questions, ids=[f"{what}: {q.id}" for q in questions]
    )


def learners(count):
    return [f"BENCH-{number:04d}" for number in range(count)]


# --- the right answers


@of_each([q for q in MARKED if q.code], "second way")
def test_code_of_the_model_answer_gives_the_right_answer(question):
    """The line of code is our own text; it is run here with the names of the physics alone."""
    names = {name: import_module(f"helpers.physics.{name}") for name in PHYSICS}
    names |= {"operating_point": names["operating_point"].operating_point, "__builtins__": {}}
    for numbers in every_numbers(question):
        value = eval(question.code(numbers), names)
        assert question.kind.mark(value, numbers).right, (value, question.kind.right(numbers))


# --- slips


@of_each(QUANTITIES)
def test_no_slip_is_accepted_as_right(question):
    for numbers in every_numbers(question):
        low, high = question.kind.band(numbers)
        for slip in question.kind.slips:
            assert not low <= slip.wrong(numbers) <= high, (slip.name, numbers)


@of_each(QUANTITIES)
def test_every_slip_is_recognised_by_its_own_name(question):
    for numbers in every_numbers(question):
        for slip in question.kind.slips:
            verdict = question.kind.mark(slip.wrong(numbers), numbers)
            assert verdict.slip == slip.name, (slip.name, numbers)
            assert verdict.reply == slip.reply
            assert verdict.share < 1


@of_each(QUANTITIES)
def test_no_two_slips_with_different_replies_give_the_same_number(question):
    for numbers in every_numbers(question):
        for one, other in combinations(question.kind.slips, 2):
            if {one.name, other.name} in FOUND_COLLISIONS or one.reply == other.reply:
                continue
            near = close(one.wrong(numbers), other.wrong(numbers))
            assert not near, (one.name, other.name, numbers)


@of_each(QUANTITIES)
def test_right_answer_stays_right_when_it_is_rounded(question):
    for numbers in every_numbers(question):
        right = question.kind.right(numbers)
        within = question.kind.within
        assert 0.005 <= within <= CLOSE
        for value in (right, right * (1 - 0.99 * within), right * (1 + 0.99 * within)):
            assert question.kind.mark(value, numbers).right
        low, high = question.kind.band(numbers)
        simple = question.kind.simple(numbers) if question.kind.simple else right
        assert low == pytest.approx((1 - within) * min(right, simple))
        assert high == pytest.approx((1 + within) * max(right, simple))
        for value in (0.9999 * low, 1.0001 * high):
            assert not question.kind.mark(value, numbers).right


@of_each([q for q in QUANTITIES if q.kind.of == "resistance"])
def test_a_resistor_that_is_called_dangerous_is_smaller_than_the_right_one(question):
    for numbers in every_numbers(question):
        right = question.kind.right(numbers)
        for slip, factor in product(question.kind.slips, (1, 1e3, 1e-3, 1e6, 1e-6)):
            value = slip.wrong(numbers) * factor
            if question.kind.mark(value, numbers).danger:
                assert value < right, (slip.name, factor)


@of_each(QUANTITIES)
def test_any_number_is_marked(question):
    for numbers in every_numbers(question)[:20]:
        right = question.kind.right(numbers)
        for value in (0.0, right * 1e-9, right / 7, right * 7, right * 1e9):
            verdict = question.kind.mark(value, numbers)
            assert 0 <= verdict.share < 1
            assert verdict.reply


# --- model answers


@of_each(MARKED)
def test_model_answer_earns_full_marks(question):
    seen = set()
    for supply, learner in product(SUPPLIES.values(), learners(200)):
        numbers = question.numbers_for(learner, "wick", supply, 0)
        if repr(numbers) not in seen:  # the same numbers have the same model answer
            seen.add(repr(numbers))
            answer = question.kind.read(question.kind.model(numbers), numbers)
            assert question.kind.mark(answer.value, numbers).right, (learner, supply)


@of_each(QUANTITIES)
def test_working_ends_at_the_right_answer(question):
    for numbers in every_numbers(question):
        right = question.kind.right(numbers)
        texts = {write(right, question.kind.of), write_as(right, question.kind.unit, 3)}
        working = question.working(numbers)
        assert any(text in working for text in texts), (working, texts)


@of_each(MARKED)
def test_fresh_numbers_are_other_numbers(question):
    if not question.has_fresh_numbers:
        return
    supply = SUPPLIES["230 V 50 Hz"]
    for learner in learners(40):
        drawn = [question.numbers_for(learner, "wick", supply, number) for number in range(6)]
        for one, other in pairwise(drawn):
            one.shown = other.shown = ()
            assert one != other, learner
            if isinstance(question.kind, kinds.Quantity):
                right = question.kind.right(one)
                assert question.kind.right(other) != pytest.approx(right), (one, other)


@of_each(ALL)
def test_there_are_three_cases_to_draw_or_one_for_everybody(question):
    """With two, a fresh draw could not differ from the one before and from the one after."""
    cases = {tuple(map(str, vars(n).values())) for n in every_numbers(question)}
    assert (len(cases) // len(SUPPLIES) >= 3) == question.has_fresh_numbers


# --- what is said


def said_before_the_working(question, numbers):
    texts = list(question.nudges)
    kind = question.kind
    if isinstance(kind, kinds.Quantity):
        texts += [slip.reply for slip in kind.slips] + [slip.danger for slip in kind.slips]
        texts.append(kind.check)
    if hasattr(kind, "options"):
        wrong = [option for option in kind.listed(numbers) if not option.right]
        texts += [option.reply for option in wrong] + [option.danger for option in wrong]
    return texts


@of_each(QUANTITIES)
def test_nudges_and_replies_never_hold_the_number(question):
    for numbers in every_numbers(question):
        right = question.kind.right(numbers)
        texts = {write(right, question.kind.of), write_as(right, question.kind.unit, 3)}
        digits = {re.match(r"[\d.]+", text)[0] for text in texts} | {f"{right:g}"}
        for text in said_before_the_working(question, numbers):
            found = set(re.findall(r"\d+(?:\.\d+)?", text))
            # "divide by 1000" is a method; it gives the answer away only where 1000 is the answer
            assert not digits & found, (text, digits)


@of_each(MARKED)
def test_nudges_go_from_a_question_to_a_method(question):
    assert len(set(question.nudges)) == len(question.nudges)
    assert len(question.nudges) >= (2 if question.role == "exercise" else 1)
    if question.role == "exercise":
        assert question.nudges[0].endswith("?"), question.nudges[0]


@of_each(ALL)
def test_everything_said_is_whole_text(question):
    for learner, supply in zip(learners(50), 9 * list(SUPPLIES.values()), strict=False):
        numbers = question.numbers_for(learner, "wick", supply, 0)
        draw = DrawStanding(numbers)
        lines = question_lines(question, numbers) + working_lines(question, numbers)
        lines += feedback_lines(question, draw, 0, None, question.nudges)
        for line in lines:
            assert line.text.strip(), line
            # the code of a model answer may hold braces; what is written for people may not
            assert line.role == "code" or not re.search(r"[{}]|\bNone\b|\bnan\b", line.text), line
        for text in said_before_the_working(question, numbers):
            assert not re.search(r"[{}]", text)


@of_each(LETTERED)
def test_options_can_be_told_apart(question):
    for numbers in every_numbers(question):
        listed = question.kind.listed(numbers)
        assert 2 < len(listed) <= len(kinds.LETTERS)
        assert len({option.key for option in listed}) == len(listed)
        assert len({option.text for option in listed}) == len(listed)


@of_each([q for q in MARKED if isinstance(q.kind, kinds.Choice)])
def test_exactly_one_option_of_a_choice_is_right(question):
    for numbers in every_numbers(question):
        listed = question.kind.listed(numbers)
        assert sum(option.right for option in listed) == 1
        assert all(option.reply for option in listed if not option.right)


@of_each([q for q in MARKED if isinstance(q.kind, kinds.ChooseAll)])
def test_choose_all_has_right_and_wrong_options_with_replies(question):
    for numbers in every_numbers(question):
        listed = question.kind.listed(numbers)
        assert {option.right for option in listed} == {True, False}
        assert all(option.reply for option in listed)


@of_each([q for q in MARKED if isinstance(q.kind, kinds.Order)])
def test_each_step_of_an_order_says_what_it_waits_for(question):
    for numbers in every_numbers(question):
        assert all(option.reply for option in question.kind.listed(numbers)[1:])


@of_each([q for q in MARKED if q.danger])
def test_a_danger_item_warns_of_what_could_hurt(question):
    for numbers in every_numbers(question):
        assert any(option.danger for option in question.kind.listed(numbers))


# --- the bank as a whole


def test_property_every_id_stands_once_and_in_one_lesson():
    listed = [q.id for module in lessons().values() for q in module.QUESTIONS]
    assert len(set(listed)) == len(listed) == len(ALL)
    assert all(re.fullmatch(r"[a-z]+(-[a-z0-9]+)+", question_id) for question_id in listed)
    for number, module in lessons().items():
        assert {lesson_of(q.id) for q in module.QUESTIONS} == {number}


@of_each(ALL)
def test_every_question_says_what_it_shows(question):
    assert question.outcome and question.outcome[0].islower()
    assert question.level in (1, 2, 3)
    assert question.marks in (1, 2, 3)
