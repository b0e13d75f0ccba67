"""Lessons 00 and 02: right answers, slips and parts worked out a second time, by hand."""

from itertools import product

import pytest
from every_numbers import every_numbers

from helpers.exercises import kinds
from helpers.exercises.bank import bank, lessons

QUESTIONS = [q for number in ("00", "02") for q in lessons()[number].QUESTIONS]
QUANTITIES = [q for q in QUESTIONS if isinstance(q.kind, kinds.Quantity)]


def of_each(questions):
    ids = [f"second way: {question.id}" for question in questions]
    return pytest.mark.parametrize("question", questions, ids=ids)


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


@of_each(QUANTITIES)
def test_right_answer(question):
    for numbers in every_numbers(question):
        expected = SECOND_WAY[question.id](numbers)
        assert question.kind.right(numbers) == pytest.approx(expected, rel=1e-12)


@of_each([bank()["ohm-14"]])
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


@of_each(QUANTITIES)
def test_each_slip_is_what_its_name_says(question):
    expected = SLIPS_SECOND_WAY.get(question.id, {})
    assert {slip.name for slip in question.kind.slips} == set(expected)
    for numbers in every_numbers(question):
        for slip in question.kind.slips:
            wrong = expected[slip.name](numbers)
            assert slip.wrong(numbers) == pytest.approx(wrong, rel=1e-12), slip.name


@of_each([bank()["ohm-3"]])
def test_a_dropper_that_burns_the_led_is_called_dangerous(question):
    for numbers in every_numbers(question):
        for share in (1e-9, 1e-6, 1e-3, 0.1, 0.5, 0.9):
            value = share * (numbers.volts - numbers.led_volts) / 0.022
            verdict = question.kind.mark(value, numbers)
            assert verdict.right or verdict.danger, (value, numbers)
            assert verdict.right or verdict.share == 0


def test_property_lesson_02_has_every_kind_and_ten_exercises():
    exercises = [q for q in lessons()["02"].QUESTIONS if q.role == "exercise"]
    every_kind = {"quantity", "choice", "choose-all", "order", "parts", "picture"}
    assert {q.kind_name for q in exercises} == every_kind
    assert len(exercises) >= 10
    assert {q.level for q in exercises} == {1, 2, 3}
    assert [q.role for q in lessons()["02"].QUESTIONS].count("recall") == 3
    assert [q.role for q in lessons()["02"].QUESTIONS].count("predict") == 1
