"""What the questions of every lesson say: whole text, from a question to a method, no number."""

import re

import pytest
from questions import (
    ALL,
    CHOICES,
    CHOOSE_ALL,
    DESIGNS,
    EXERCISES,
    MARKED,
    PARTS,
    QUANTITIES,
    of_each,
)

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises import kinds
from helpers.exercises.bank import bank
from helpers.exercises.standing import DrawStanding
from helpers.exercises.templates import fill
from helpers.exercises.wording import Line, feedback_lines, question_lines, working_lines
from helpers.quantities import write, write_as


def of_options(question, numbers):
    return question.kind.listed(numbers)


def replies(question, numbers):
    """Return what may be said to a wrong answer, with its warnings."""
    kind = question.kind
    texts = [(option.reply, option.danger) for option in of_options(question, numbers)]
    if isinstance(kind, kinds.Amount):
        texts += [(fill(slip.asks, numbers), fill(slip.danger, numbers)) for slip in kind.slips]
        texts += [(turn.asks, "") for wrong in kind.road.wrong(numbers) for turn in wrong.turns]
    if isinstance(kind, kinds.Parts):
        for picked in zip(
            *(field.bin[:: len(field.bin) - 1] for field in kind.fields), strict=True
        ):
            texts += [(c.reply, c.danger) for c in kind.judge(picked, numbers)]
    return [text for pair in texts for text in pair if text]


@of_each(ALL)
def test_everything_said_is_whole_text(question):
    for numbers in every_numbers(question):
        lines = question_lines(question, numbers)
        lines += feedback_lines(question, DrawStanding(numbers), 0, None, question.nudges)
        if question.role == "predict":
            lines.append(Line("working", question.worked(numbers)))
        else:
            lines += working_lines(question, numbers)
        # the code of a model answer may hold braces; what is written for people may not
        said = [line.text for line in lines if line.role != "code"] + replies(question, numbers)
        for text in said:
            assert text == text.strip() != ""
            assert not re.search(r"[{}<>]|  |\b(None|nan|inf|lambda|object)\b", text), text


@of_each(MARKED)
def test_replies_and_warnings_are_sentences(question):
    for numbers in every_numbers(question):
        for text in replies(question, numbers):
            assert re.search(r"[.?!”)]$", text), text


@of_each(EXERCISES)
def test_nudges_go_from_a_question_to_a_method(question):
    assert len(set(question.nudges)) == len(question.nudges) >= 2
    assert question.nudges[0].endswith("?"), question.nudges[0]


@of_each([q for q in MARKED if q.role == "recall"])
def test_a_recall_question_has_a_nudge(question):
    assert question.nudges


def digits(text):
    return set(re.findall(r"\d+(?:\.\d+)?", text))


@of_each(QUANTITIES)
def test_nudges_and_replies_never_hold_the_number(question):
    for numbers in every_numbers(question):
        right = question.kind.right(numbers)
        texts = {write(right, question.kind.of), write_as(right, question.kind.unit, 3)}
        given_away = {re.match(r"[\d.]+", text)[0] for text in texts} | {f"{right:g}"}
        for text in (*question.nudges, *replies(question, numbers)):
            # "divide by 1000" is a method; it gives the answer away only where 1000 is the answer
            assert not given_away & digits(text), (text, given_away)


@of_each(PARTS)
def test_nudges_never_name_a_part_of_the_bins(question):
    for field in question.kind.fields:
        for value in field.bin:
            named = re.compile(rf"(?<![\d.]){re.escape(field.text(value))}(?!\w)")
            assert not any(named.search(nudge) for nudge in question.nudges), field.text(value)


@of_each(CHOICES + CHOOSE_ALL)
def test_nudges_never_repeat_an_option_that_is_right(question):
    for numbers in every_numbers(question):
        right = [option.text for option in of_options(question, numbers) if option.right]
        for nudge in question.nudges:
            assert not any(text.rstrip(".").lower() in nudge.lower() for text in right), nudge


@of_each(QUANTITIES)
def test_working_ends_at_the_right_answer(question):
    for numbers in every_numbers(question):
        right = question.kind.right(numbers)
        working = question.worked(numbers)
        texts = {write(right, question.kind.of), write_as(right, question.kind.unit, 3)}
        assert any(text in working for text in texts), (working, texts)


@of_each(ALL)
def test_every_question_says_what_it_shows(question):
    assert question.outcome and question.outcome[0].islower()
    assert question.level in (1, 2, 3)
    assert question.marks in (1, 2, 3) or question in DESIGNS


# What a cell above the question prints on the learner's own mains.
PRINTED = {
    "wave-12": ("percent", 10.0),
    "heat-3": ("ohms", 47e3),
    "heat-5": ("ohms", 47e3),
    "heat-8": ("ohms", 47e3),
    "dim-14": ("watts", 90.0),
    "see-1": ("light_percent", 25.0),
    "see-7": ("metres", 4.0),
    "see-10": ("full_watts", 90.0),
    "see-12": ("wave_metres", 590e-9),
}


@pytest.mark.parametrize("question_id", PRINTED)
def test_no_draw_asks_for_the_number_that_a_cell_above_it_prints(question_id):
    name, printed = PRINTED[question_id]
    drawn = {vars(numbers)[name] for numbers in every_numbers(bank()[question_id])}
    assert len(drawn) >= 3 and printed not in drawn
