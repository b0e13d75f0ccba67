"""The card without a browser: its text, its buttons, and what it says when something is amiss."""

from datetime import datetime

import pytest
from ipywidgets.widgets.widget import _instances
from learner import right_answer, wrong_answers
from markupsafe import escape
from page_words import words
from shown import fill, live_words, screen, thing

from helpers import answer, card, nudge
from helpers.exercises import answer_log
from helpers.exercises.answer_log import AnswerLog
from helpers.exercises.bank import bank
from helpers.widgets import lesson
from helpers.widgets.controls import CONTROLS, controls_for
from helpers.widgets.live import KEPT
from helpers.widgets.screen import SPOKEN
from helpers.widgets.twin import saved_copy

ALL = list(bank())
each_question = pytest.mark.parametrize("question_id", ALL, ids=[f"property: {i}" for i in ALL])
KINDS = {type(bank()[i].kind): i for i in ALL} | {bank()[i].role: i for i in ALL}
SOME = list(dict.fromkeys([*KINDS.values(), "ohm-5", "start-2"]))  # a picture, a danger item
of_each_kind = pytest.mark.parametrize("question_id", SOME, ids=[f"property: {i}" for i in SOME])
HOSTILE = "<script>alert(1)</script><img src=x onerror=alert(1)>"


class Holding:
    """Controls that hold whatever text."""

    def __init__(self, text):
        self.typed = lambda: text


def hostile_at_the_end(kind):
    """Return an answer whose parts can all be read, but for the last."""
    first = [field.text(field.bin[0]) for field in getattr(kind, "fields", ())]
    return "; ".join([*first[:-1], HOSTILE])


def open_card(session, question_id):
    card(question_id)
    return thing(f"c-{question_id}")


@of_each_kind
@pytest.mark.parametrize("door", [card, answer, nudge])
def test_an_unanswered_question_says_so_and_raises_nothing(session, door, question_id):
    with screen() as shown:
        door(question_id)
    assert "Not answered yet" in shown.plain
    assert "Not answered yet" in words(shown.html)


@pytest.mark.parametrize("door", [card, answer, nudge])
@pytest.mark.parametrize(
    ("asked", "near"), [("ohm3", "ohm-3"), ("Ohm-3", "ohm-3"), ("strat-1", "start-1"), (7, "7")]
)
def test_an_unknown_question_is_named_with_what_is_near(session, door, asked, near):
    with screen() as shown:
        door(asked)
    assert f"There is no question {asked!r}." in shown.plain
    assert near in shown.plain
    assert not shown.has_controls


def test_an_id_with_markup_is_shown_as_text(session):
    with screen() as shown:
        card(HOSTILE)
    assert "<script" not in shown.html and "<img" not in shown.html
    assert HOSTILE in words(shown.html)


@of_each_kind
def test_what_a_learner_typed_is_shown_as_text_and_never_as_markup(session, question_id):
    with screen() as shown:
        opened = open_card(session, question_id)
        for typed in (HOSTILE, f"4 {HOSTILE}", hostile_at_the_end(bank()[question_id].kind)):
            opened.controls = Holding(typed)
            opened.check.click()
            answer(question_id, typed)
            assert "alert(1)" in shown.plain or "characters long" in shown.plain
            for html in (shown.html, opened.told.value):
                assert "<script" not in html and "<img" not in html


@each_question
def test_what_lives_and_its_copy_in_text_and_in_html_say_the_same(session, question_id):
    with screen() as shown:
        opened = open_card(session, question_id)
        opened.open_nudge()
        wrong = wrong_answers(session, question_id)[: None if question_id in SOME else 1]
        for typed in ["", *wrong, right_answer_to(session, question_id)]:
            if typed:
                fill(opened, typed)
            opened.check.click()
            plain, html = shown.pages[-1]
            assert words(html) == " ".join(plain.replace("`", "").split())
            asked, told = words(opened.asked.value), words(opened.told.value)
            assert words(html).startswith(f"{words(saved_copy(datetime.now()))} {asked} ")
            assert words(html).endswith(f" {told}")
            kind, numbers = opened.question.kind, opened._draw.numbers
            how = words(" ".join(map(escape, [kind.hint(numbers), *kind.choices(numbers)])))
            assert words(html).removesuffix(told).endswith(f"{asked} {how} ")


def right_answer_to(session, question_id):
    predicted = bank()[question_id].role == "predict"
    return "b" if predicted else right_answer(session, question_id)


@of_each_kind
def test_the_feedback_is_announced_to_a_screen_reader_and_stands_once(session, question_id):
    with screen():
        opened = open_card(session, question_id)
        answer(question_id, right_answer_to(session, question_id))
    assert opened.told.value.endswith(SPOKEN) and "aria-live" in SPOKEN
    assert live_words(opened).count("Read as") == 1


@of_each_kind
def test_check_without_an_answer_is_no_try(session, question_id):
    with screen() as shown:
        open_card(session, question_id).check.click()
    assert session.standing(question_id).tries == 0
    assert "Not answered" not in shown.bundles[-1]["text/plain"]
    assert len(shown.bundles[-1]["text/plain"]) > 20


def test_nudges_come_one_at_a_time_until_there_are_no_more(session):
    nudges = bank()["ohm-2"].nudges
    with screen() as shown:
        opened = open_card(session, "ohm-2")
        for count in range(len(nudges) + 1):
            if count == 1:
                assert opened.nudge.disabled
                fill(opened, wrong_answers(session, "ohm-2")[0])
                opened.check.click()
            assert [text in shown.plain for text in nudges] == [n < count for n in range(2)]
            assert opened.nudge.disabled == (count == len(nudges))
            opened.nudge.click()


def test_fresh_numbers_can_be_taken_once_the_draw_is_finished(session):
    with screen() as shown:
        opened = open_card(session, "ohm-2")
        asked = live_words(opened)
        assert opened.fresh.layout.display == "none"
        fill(opened, right_answer(session, "ohm-2"))
        opened.check.click()
        assert opened.fresh.layout.display == ""
        opened.fresh.click()
        assert live_words(opened) != asked
        assert "fresh numbers 1" in live_words(opened) and "fresh numbers 1" in shown.plain
        assert "Not answered yet" in shown.bundles[-1]["text/plain"]
        assert opened.fresh.layout.display == "none"
        fill(opened, right_answer(session, "ohm-2", 1))
        opened.check.click()
        assert "✓" in shown.bundles[-1]["text/plain"]
    with screen() as again:
        card("ohm-2")
    assert "fresh numbers 1" in again.plain


def test_a_card_that_is_run_many_times_lives_and_the_oldest_leave_the_page(session):
    with screen():
        shown = [open_card(session, "ohm-2") for _ in range(KEPT + 2)]
        fill(shown[-1], "7 mA")
        shown[-1].check.click()
    assert [bool(each.box.comm) for each in shown] == [False] * 2 + [True] * KEPT
    assert all("Read as 7\u00a0mA." in each.told.value for each in shown[2:])
    assert all(child.comm for child in shown[-1].box.children)


@of_each_kind
def test_a_card_that_turns_leaves_no_widget_that_holds_a_closed_one(session, question_id):
    """A page that is loaded again waits for ever for a widget that holds one which is closed."""
    with screen():
        before = set(_instances)
        opened = open_card(session, question_id)
        opened.follow(session, question_id, 1)
        opened._turn_to(session, 1)
    left = [each for key, each in _instances.items() if key not in before]
    assert opened.box in left
    for box in left:
        assert all(child.comm for child in getattr(box, "children", ())), box


def test_fresh_numbers_stay_open_when_the_cell_is_run_again(session):
    answer("ohm-2", right_answer(session, "ohm-2"))
    with screen():
        first = open_card(session, "ohm-2")
        first.fresh.click()
        again = open_card(session, "ohm-2")
        assert live_words(first) == live_words(again) and "fresh numbers 1" in live_words(again)


def test_a_danger_item_offers_fresh_numbers_after_its_first_answer(session):
    with screen():
        opened = open_card(session, "start-2")
        fill(opened, wrong_answers(session, "start-2")[0])
        opened.check.click()
        assert opened.fresh.layout.display == ""


def test_a_prediction_has_neither_nudge_nor_fresh_numbers(session):
    with screen():
        opened = open_card(session, "ohm-predict")
        names = [button.description for button in opened.box.children[2].children]
        fill(opened, "b")
        opened.check.click()
    assert names == ["Check"]


def test_enter_in_the_box_checks(session):
    with screen() as shown:
        opened = open_card(session, "ohm-2")
        opened.controls.box.value = "7 mA"
        opened.controls.box._handle_custom_msg({"event": "submit"}, [])
        assert "Read as 7\u00a0mA." in shown.plain


def test_a_full_disk_is_said_before_all_else_and_check_again_keeps_the_answer(
    session, answers, monkeypatch
):
    def refuse(*_):
        raise OSError(28, "No space left on device")

    path = answers / "answers-BENCH-07.jsonl"
    with screen() as shown:
        opened = open_card(session, "ohm-2")
        opened.controls.box.value = "7 mA"
        with monkeypatch.context() as full:
            full.setattr(answer_log, "add_row", refuse)
            opened.check.click()
        told = shown.bundles[-1]["text/plain"]
        assert told.index("This answer is not kept") < told.index("Read as")
        assert '<p class="cw-danger"><strong>This answer is not kept' in opened.told.value
        assert "Read as 7\u00a0mA." in told and opened.controls.box.value == "7 mA"
        opened.check.click()
        assert "not kept" not in shown.bundles[-1]["text/plain"]
    assert [line.answer for line in AnswerLog(path).lines()[0]] == ["7 mA"]


def test_the_workshop_copy_shows_text_without_controls(session, answers, monkeypatch):
    monkeypatch.setattr(lesson, "_open", {})
    lesson.begin("02", workshop_copy=True)
    for question_id in ALL:
        with screen() as shown:
            card(question_id)
        assert not shown.has_controls
        assert "Not answered yet" in shown.plain
    with screen() as shown:
        answer("ohm-2", "7 mA")
    assert list(answers.iterdir()) == [answers / "settings.json"]


def test_every_kind_has_its_controls():
    assert {type(question.kind) for question in bank().values()} == set(CONTROLS)


@each_question
def test_what_the_controls_hand_over_can_be_read(session, question_id):
    question = bank()[question_id]
    numbers = session.draw(question_id).numbers
    with screen():
        opened = open_card(session, question_id)
        typed = question.kind.example(numbers).replace(" ", "\u00a0", 0)
        if question.kind.name == "parts":
            typed = "; ".join(part.text(part.bin[0]) for part in question.kind.fields)
        fill(opened, typed)
        read = question.kind.read(opened.controls.typed(), numbers)
    assert read == question.kind.read(typed, numbers)


@each_question
def test_a_card_that_is_opened_again_holds_the_last_answer(session, question_id):
    question, numbers = bank()[question_id], session.draw(question_id).numbers
    predicted = question.role == "predict"
    typed = [] if predicted else wrong_answers(session, question_id)[:1]
    for each in [*typed, "b" if predicted else right_answer(session, question_id)]:
        session.answer(question_id, each)
        with screen() as shown:
            opened = open_card(session, question_id)
        assert question.kind.read(opened.controls.typed(), numbers) == (
            question.kind.read(each, numbers)
        )
        tries = session.standing(question_id).tries
        opened.check.click()
        assert session.standing(question_id).tries == tries
        assert "Not answered yet" not in shown.plain


@pytest.mark.parametrize("question_id", [i for i in ALL if getattr(bank()[i].kind, "measure", "")])
def test_a_card_comes_back_after_a_number_was_called_by_another_measure(session, question_id):
    right = right_answer(session, question_id)
    with screen():
        for measure in ("peak", "rms", "each", "total"):
            answer(question_id, f"{right} {measure}")
        opened = open_card(session, question_id)
    draw = session.draw(question_id)
    assert any(each.misnamed for each, _ in draw.tried.values())
    assert opened.controls.typed() == draw.typed[-1]


@each_question
def test_controls_have_names_that_a_screen_reader_can_say(session, question_id):
    question, numbers = bank()[question_id], session.draw(question_id).numbers
    controls = controls_for(question, numbers, lambda: None)
    named = [controls.box] if hasattr(controls, "box") else getattr(controls, "lists", [])
    assert all(each.description for each in named)
    if not named:
        legend = f"<fieldset><legend>{escape(question.kind.hint(numbers))}</legend>"
        assert legend in controls.page.value
        for choice in question.kind.choices(numbers):
            assert f"<span>{escape(choice)}</span>" in controls.page.value


@pytest.mark.parametrize("question_id", ["ohm-13", "ohm-8", "ohm-9"])
def test_what_is_entered_on_one_page_is_told_to_all_pages_of_the_kernel(session, question_id):
    with screen():
        controls = open_card(session, question_id).controls
        told = [controls.pulse.value]
        for typed in ("a", "b"):
            controls.held.value = typed
            told.append(controls.pulse.value)
    assert len(set(told)) == 3


def test_steps_that_are_not_all_placed_are_no_try_and_how_many_are_missing_is_said(session):
    with screen():
        opened = open_card(session, "ohm-9")
        opened.controls.held.value = "b, a"
        opened.check.click()
    assert "2 of 6 letters read" in live_words(opened)
    assert session.standing("ohm-9").tries == 0


def test_where_nothing_is_built_no_parts_can_be_chosen(session):
    controls = open_card(session, "own-1").controls
    first, *rest = controls.lists
    for why in ("do not build; fixed wiring", "bridge"):
        first.value = why
        assert {box.disabled for box in rest} == {why != "bridge"}
        assert controls.typed() == why
