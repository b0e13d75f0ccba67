"""The questions of the bank, over every set of numbers that a learner can meet.

Each id says what the expected value rests on: a second way of calculating it, or a property that
every question must have.
"""

import re
from itertools import combinations, pairwise, product

import pytest
from every_numbers import every_numbers

from helpers.exercises import kinds
from helpers.exercises.bank import bank, lesson_of, lessons
from helpers.exercises.slips import CLOSE, close
from helpers.exercises.standing import DrawStanding
from helpers.exercises.wording import feedback_lines, question_lines, working_lines
from helpers.physics import ohms_law, resistors
from helpers.physics.mains import SUPPLIES
from helpers.quantities import write, write_as

ALL = list(bank().values())
MARKED = [q for q in ALL if q.role != "predict"]
QUANTITIES = [q for q in ALL if isinstance(q.kind, kinds.Quantity)]
LETTERED = [q for q in ALL if hasattr(q.kind, "options")]

# Two wrong turns that cannot be told apart by their number, with the reply that both may share.
# Found by this test; a pair may be added only where its two replies fit both turns.
FOUND_COLLISIONS = set()


def of_each(questions, what="property"):
    return pytest.mark.parametrize(
        "question", questions, ids=[f"{what}: {q.id}" for q in questions]
    )


def learners(count):
    return [f"BENCH-{number:04d}" for number in range(count)]


# --- the right answers, worked out a second time

E12 = (1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10.0)  # IEC 60063, as bought

LED = {"red": 2.0, "yellow": 2.1, "blue": 3.1}  # common practice, no source

SECOND_WAY = {
    "start-1": lambda n: n.ohms,
    "ohm-recall-1": lambda n: n.amps,
    "ohm-1": lambda n: n.amps,
    "ohm-2": lambda n: n.volts / n.ohms,
    "ohm-3": lambda n: (n.volts - LED[n.led]) / n.amps,
    "ohm-5": lambda n: n.ohms,
    "ohm-6": lambda n: 1000 * min(value for value in E12 if value >= n.ohms / 1000),
    "ohm-7": lambda n: (n.volts - 2.0) / (n.ohms * 0.9),
    "ohm-10": lambda n: n.volts / (n.pair[0] + n.pair[1]),
    "ohm-11": lambda n: n.pair[0] * n.pair[1] / (n.pair[0] + n.pair[1]),
    "ohm-12": lambda n: (24.0 - LED[n.led]) / n.ohms,
}


@of_each(QUANTITIES, "second way")
def test_right_answer(question):
    for numbers in every_numbers(question):
        expected = SECOND_WAY[question.id](numbers)
        assert question.kind.right(numbers) == pytest.approx(expected, rel=1e-12)


@of_each([q for q in ALL if isinstance(q.kind, kinds.Parts)], "second way")
def test_parts_are_judged_by_what_they_would_do(question):
    """An LED of 2 V within 20 mA and bright enough, and a rating of twice I²R: by hand."""
    fields = question.kind.fields
    for numbers in every_numbers(question):
        for ohms, watts in product(*(field.bin for field in fields)):
            amps = (numbers.volts - 2.0) / ohms
            heat = (numbers.volts - 2.0) ** 2 / ohms
            right = numbers.least_amps <= amps <= 0.020 and watts >= 2 * heat
            verdict = question.kind.mark((ohms, watts), numbers)
            assert verdict.right == right, (numbers, ohms, watts)
            assert bool(verdict.danger) == (amps > 0.020 or watts < heat)
        assert question.kind.mark(question.kind.best(numbers), numbers).right


@of_each([q for q in MARKED if q.code], "second way")
def test_code_of_the_model_answer_gives_the_right_answer(question):
    """The line of code is our own text; it is run here with the names of the physics alone."""
    names = {"ohms_law": ohms_law, "resistors": resistors, "__builtins__": {}}
    for numbers in every_numbers(question):
        value = eval(question.code(numbers), names)
        if question.id == "ohm-1":  # asks for the number of milliamperes itself
            value = value / 1000
        assert value == pytest.approx(question.kind.right(numbers), rel=1e-9)


# What each wrong turn gives, written down a second time from its name alone [A, ohm].
SLIPS_SECOND_WAY = {
    "start-1": {"wrote ohms, read as kilo-ohms": lambda n: n.ohms * 1000},
    "ohm-1": {
        "one place too few": lambda n: n.amps / 10,
        "one place too many": lambda n: n.amps * 10,
    },
    "ohm-2": {  # the number, typed bare, is read in milliamperes
        "multiplied instead of divided": lambda n: n.volts * n.ohms / 1000,
        "ohms over volts": lambda n: n.ohms / n.volts / 1000,
    },
    "ohm-3": {
        "left out the LED's own drop": lambda n: n.volts / n.amps,
        "added the LED's drop": lambda n: (n.volts + LED[n.led]) / n.amps,
        "LED's drop over current": lambda n: LED[n.led] / n.amps,
        "volts times amps": lambda n: (n.volts - LED[n.led]) * n.amps * 1000,
    },
    "ohm-5": {
        "one zero too many": lambda n: n.ohms * 10,
        "one zero too few": lambda n: n.ohms / 10,
        "swapped the first two bands": lambda n: float(
            f"{n.ohms:.0f}"[1] + f"{n.ohms:.0f}"[0] + f"{n.ohms:.0f}"[2:]
        ),
    },
    "ohm-6": {
        "next value down": lambda n: 1000 * max(v for v in E12 if v < n.ohms / 1000),
        "kept the calculated value": lambda n: n.ohms,
    },
    "ohm-7": {
        "took the printed value": lambda n: (n.volts - 2.0) / n.ohms,
        "took the largest resistor": lambda n: (n.volts - 2.0) / (1.1 * n.ohms),
        "left out the LED's own drop": lambda n: n.volts / (0.9 * n.ohms),
    },
    "ohm-10": {
        "treated series as parallel": lambda n: n.volts * (1 / n.pair[0] + 1 / n.pair[1]),
        "forgot the second resistor": lambda n: n.volts / n.pair[0],
        "forgot the first resistor": lambda n: n.volts / n.pair[1],
    },
    "ohm-11": {
        "added as in series": lambda n: n.pair[0] + n.pair[1],
        "took the mean": lambda n: (n.pair[0] + n.pair[1]) / 2,
        "difference": lambda n: abs(n.pair[0] - n.pair[1]),
    },
    "ohm-12": {
        "doubled the old current": lambda n: 2 * (12.0 - LED[n.led]) / n.ohms,
        "left out the LED's own drop": lambda n: 24.0 / n.ohms,
        "current on the old supply": lambda n: (12.0 - LED[n.led]) / n.ohms,
    },
}


# --- slips


@of_each(QUANTITIES, "second way")
def test_each_slip_is_what_its_name_says(question):
    expected = SLIPS_SECOND_WAY.get(question.id, {})
    assert {slip.name for slip in question.kind.slips} == set(expected)
    for numbers in every_numbers(question):
        for slip in question.kind.slips:
            wrong = expected[slip.name](numbers)
            assert slip.wrong(numbers) == pytest.approx(wrong, rel=1e-12), slip.name


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
        for value in (right, right * (1 - 0.99 * CLOSE), right * (1 + 0.99 * CLOSE)):
            assert question.kind.mark(value, numbers).right
        for value in (right * (1 - 1.02 * CLOSE), right * (1 + 1.02 * CLOSE)):
            assert not question.kind.mark(value, numbers).right


@of_each(QUANTITIES)
def test_a_danger_that_is_named_is_one(question):
    """What is called too small a resistor lets through more than a small LED's 20 mA."""
    for numbers in every_numbers(question):
        right = question.kind.right(numbers)
        for slip in question.kind.slips:
            for factor in (1, 1e3, 1e-3, 1e6, 1e-6):
                value = slip.wrong(numbers) * factor
                verdict = question.kind.mark(value, numbers)
                if verdict.danger and question.kind.of == "resistance":
                    assert value < right, (slip.name, factor, verdict.danger)


@of_each([q for q in QUANTITIES if q.id == "ohm-3"])
def test_a_dropper_that_burns_the_led_is_called_dangerous(question):
    for numbers in every_numbers(question):
        for share in (1e-9, 1e-6, 1e-3, 0.1, 0.5, 0.9):
            value = share * (numbers.volts - numbers.led_volts) / 0.022
            verdict = question.kind.mark(value, numbers)
            assert verdict.right or verdict.danger, (value, numbers)
            assert verdict.right or verdict.share == 0


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
    for supply in SUPPLIES.values():
        for learner in learners(200):
            numbers = question.numbers_for(learner, "wick", supply, 0)
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
        wrong = [option for option in question.kind.listed(numbers) if not option.right]
        assert any(option.danger for option in wrong)


# --- the bank as a whole


def test_property_every_id_stands_once_and_in_one_lesson():
    listed = [q.id for module in lessons().values() for q in module.QUESTIONS]
    assert len(set(listed)) == len(listed) == len(ALL)
    assert all(re.fullmatch(r"[a-z]+(-[a-z0-9]+)+", question_id) for question_id in listed)
    for number, module in lessons().items():
        assert {lesson_of(q.id) for q in module.QUESTIONS} == {number}


def test_property_lesson_02_has_every_kind_and_ten_exercises():
    exercises = [q for q in lessons()["02"].QUESTIONS if q.role == "exercise"]
    every_kind = {"quantity", "choice", "choose-all", "order", "parts", "picture"}
    assert {q.kind_name for q in exercises} == every_kind
    assert len(exercises) >= 10
    assert {q.level for q in exercises} == {1, 2, 3}
    assert [q.role for q in lessons()["02"].QUESTIONS].count("recall") == 3
    assert [q.role for q in lessons()["02"].QUESTIONS].count("predict") == 1


@of_each(ALL)
def test_every_question_says_what_it_shows(question):
    assert question.outcome and question.outcome[0].islower()
    assert question.level in (1, 2, 3)
    assert question.marks in (1, 2, 3)
