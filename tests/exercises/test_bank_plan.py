"""The bank as a whole: what each lesson must hold, and that all that is taught is tested."""

import re
from collections import Counter
from pathlib import Path

import pytest
from outcomes import OUTCOMES
from questions import ALL, EXERCISES

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises.bank import lesson_of, lessons

LESSONS = Path(__file__).resolve().parents[2] / "lessons"
# What each full lesson holds; a further kind may stand where it is of use.
KINDS = {"quantity", "choice", "choose-all", "order", "parts", "picture"}
FULL = [number for number in lessons() if number not in ("00", "10")]  # 10 is one design


def of_each_lesson(numbers):
    return pytest.mark.parametrize("number", numbers, ids=[f"property: {n}" for n in numbers])


def exercises(number):
    return [q for q in EXERCISES if lesson_of(q.id) == number]


def kind_name(question):
    return "picture" if question.picture else question.kind.name


def asked(question):
    return question.asked(every_numbers(question)[0])


def test_property_every_id_stands_once_and_in_one_lesson():
    listed = [q.id for module in lessons().values() for q in module.QUESTIONS]
    assert len(set(listed)) == len(listed) == len(ALL)
    assert all(re.fullmatch(r"[a-z]+(-[a-z0-9]+)+", question_id) for question_id in listed)
    for number, module in lessons().items():
        assert {lesson_of(q.id) for q in module.QUESTIONS} == {number}


@of_each_lesson(list(lessons()))
def test_every_question_stands_in_the_notebook_of_its_lesson(number):
    (path,) = LESSONS.glob(f"{number}-*.ipynb")
    cells = re.findall(r'card\(\\"([a-z0-9-]+)\\"\)', path.read_text(encoding="utf-8"))
    assert {q.id for q in lessons()[number].QUESTIONS} <= set(cells)


@of_each_lesson(list(lessons()))
def test_a_lesson_looks_back_and_asks_for_one_prediction(number):
    roles = Counter(q.role for q in lessons()[number].QUESTIONS)
    assert roles["predict"] == 1
    assert roles["recall"] == {"00": 0, "01": 1}.get(number, 3)


@of_each_lesson(FULL)
def test_limit_a_lesson_has_eight_exercises_on_all_three_levels(number):
    assert len(exercises(number)) >= 8
    assert {q.level for q in exercises(number)} == {1, 2, 3}


@of_each_lesson(FULL)
def test_a_lesson_has_every_kind(number):
    assert {kind_name(q) for q in exercises(number)} >= KINDS


@of_each_lesson(FULL)
def test_a_lesson_asks_for_a_mistake_and_for_the_reason_of_a_step(number):
    mistakes = [q for q in exercises(number) if asked(q).startswith("Find the mistake")]
    assert mistakes and {kind_name(q) for q in mistakes} <= {"choice", "choose-all"}
    why = [q for q in exercises(number) if asked(q).startswith("Why this step?")]
    assert why and {kind_name(q) for q in why} == {"choice"}


def test_limit_fifty_exercises_and_five_of_every_kind_by_lesson_05():
    early = [q for q in EXERCISES if lesson_of(q.id) <= "05"]
    assert len(early) >= 50
    count = Counter(kind_name(q) for q in early)
    assert min(count[kind] for kind in KINDS) >= 5, count


@of_each_lesson(list(OUTCOMES))
def test_everything_that_is_taught_is_tested_by_an_exercise_of_its_lesson(number):
    here = {q.id for q in exercises(number)}
    for outcome, ids in OUTCOMES[number].items():
        assert ids and set(ids) <= here, outcome


@of_each_lesson(list(OUTCOMES))
def test_every_exercise_tests_something_that_is_taught(number):
    assert {id for ids in OUTCOMES[number].values() for id in ids} == {
        q.id for q in exercises(number)
    }
