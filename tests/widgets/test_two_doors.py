"""Card and code are two doors to one question: same feedback, same line in the log."""

from dataclasses import replace

import pytest
from learner import right_answer, wrong_answers
from page_words import words
from questions import ONE_OF_EACH_KIND
from shown import fill, live_words, screen, thing

from helpers import answer, card
from helpers.exercises.answer_log import AnswerLog
from helpers.exercises.bank import bank
from helpers.pages.page import ANSWER_MEDIA_TYPE
from helpers.widgets import lesson

ASKED = (*ONE_OF_EACH_KIND.values(), "ohm-predict", "start-2")
each_kind = pytest.mark.parametrize("question_id", ASKED, ids=[f"property: {i}" for i in ASKED])


def open_card(session, question_id):
    card(question_id)
    return thing(f"c-{question_id}")


def typed_answers(session, question_id):
    """Two answers, wrong then right, as the controls word them."""
    if bank()[question_id].role == "predict":
        return ["a", "b"]
    return [wrong_answers(session, question_id)[0], right_answer(session, question_id)]


def by_card(question_id):
    session = lesson.current_session()
    with screen() as shown:
        opened = open_card(session, question_id)
        for typed in typed_answers(session, question_id):
            fill(opened, typed)
            opened.check.click()
    return session, shown


def by_code(question_id):
    session = lesson.current_session()
    for typed in typed_answers(session, question_id):
        with screen() as shown:
            answer(question_id, typed.replace("\u00a0", " "))
    return session, shown


@each_kind
def test_both_doors_write_the_same_lines(session, answers, question_id):
    lines = []
    for door, learner in ((by_card, "BENCH-07"), (by_code, "BENCH-07")):
        lesson.begin("02", learner)
        door(question_id)
        path = answers / "answers-BENCH-07.jsonl"
        lines.append(AnswerLog(path).lines()[0])
        path.unlink()
    for one, other in zip(*lines, strict=True):
        assert one.line != other.line and one.at != other.at
        assert bool(one.follows) == bool(other.follows)
        assert one == replace(other, line=one.line, at=one.at, follows=one.follows)
    assert len(lines[0]) == 2


@each_kind
def test_both_doors_give_the_same_feedback(session, answers, question_id):
    feedback = []
    for door in (by_card, by_code):
        lesson.begin("02", "BENCH-07")
        _, shown = door(question_id)
        feedback.append(shown.bundles[-1])
        (answers / "answers-BENCH-07.jsonl").unlink()
    copy, told = feedback
    assert told["text/plain"] in copy["text/plain"]
    assert told[ANSWER_MEDIA_TYPE] == copy[ANSWER_MEDIA_TYPE]


@each_kind
def test_a_card_shows_and_holds_what_came_through_the_other_door(session, question_id):
    with screen() as shown:
        opened = open_card(session, question_id)
        told = shown.bundles[-1]["text/plain"]
        for typed in typed_answers(session, question_id):
            answer(question_id, typed)
            kind, numbers = opened.question.kind, session.draw(question_id).numbers
            held = kind.read(opened.controls.typed(), numbers)
            assert held == kind.read(typed, numbers)
            assert f"Read as {held.understood}." in opened.told.value.replace("&#x27;", "'")
        assert "Not answered yet" in told


@each_kind
def test_a_card_that_is_run_again_shows_where_the_learner_was(session, question_id):
    _, first = by_card(question_id)
    lesson.begin("02")  # as after a restart of the kernel
    with screen() as again:
        card(question_id)
    assert again.plain.split("\n")[2:] == first.plain.split("\n")[2:]


@each_kind
def test_the_code_door_without_an_answer_follows_the_card(session, question_id):
    with screen():
        opened = open_card(session, question_id)
        answer(question_id)
        asked = thing(f"a-{question_id}-0")
        for typed in typed_answers(session, question_id):
            fill(opened, typed)
            opened.check.click()
            assert live_words(asked).endswith(words(opened.told.value))
