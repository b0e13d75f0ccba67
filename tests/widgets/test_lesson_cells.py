"""What the other cells of a lesson show: set-up, progress, predictions, hand-in, settings."""

from types import SimpleNamespace

import pytest
from learner import right_answer, wrong_answers
from page_words import words
from shown import fill, live_words, screen, thing

import helpers
from helpers import (
    answer,
    card,
    hand_in,
    open_lesson,
    picture,
    predictions,
    progress,
    settings_form,
)
from helpers.exercises import answer_log
from helpers.exercises.answer_log import AnswerLog
from helpers.exercises.bank import bank, lessons
from helpers.exercises.session import learner_session
from helpers.exercises.wording import CAUTION
from helpers.figures import bands, circuits
from helpers.pages.progress import progress_lines
from helpers.widgets import lesson

HOSTILE = "<script>alert(1)</script>"
OF_ALL = f"of {len(lessons()['02'].QUESTIONS)}"


@pytest.mark.parametrize("number", lessons())
def test_a_lesson_says_that_it_is_ready_for_whom_and_where_answers_are_kept(
    session, answers, number
):
    with screen() as shown:
        open_lesson(number)
    assert f"Ready. Lesson {number}: {lessons()[number].TITLE}" in shown.plain
    for text in ("230 V 50 Hz", "BENCH-07", "wick", str(answers / "answers-BENCH-07.jsonl")):
        assert text in shown.plain and text in words(shown.html)
    assert "0 of" in shown.plain
    assert shown.plain.count("How to answer:") == 1 and "`answer(…)`" in shown.plain


def test_a_bad_setting_is_said_and_changes_nothing(session, answers):
    before = (answers / "settings.json").read_bytes()
    with screen() as shown:
        open_lesson("02", learner=HOSTILE)
    assert shown.plain.startswith("Nothing was changed. The learner id '<SCRIPT>")
    assert "<script" not in shown.html.lower()
    assert "BENCH-07" in shown.plain
    assert (answers / "settings.json").read_bytes() == before


def test_a_damaged_log_is_said_when_the_lesson_opens(session, answers):
    answer("ohm-2", "7 mA")
    with (answers / "answers-BENCH-07.jsonl").open("a") as log:
        log.write('{"format": 1, "li')
    with screen() as shown:
        open_lesson("02")
    assert "line 2 was left out" in shown.plain and f"1 {OF_ALL} questions" in shown.plain


@pytest.mark.parametrize("number", ["99", "2", 2, None, HOSTILE])
@pytest.mark.parametrize("cell", [open_lesson, progress, predictions])
def test_a_lesson_that_there_is_not_is_named_with_those_there_are(session, cell, number):
    if number is None and cell is not open_lesson:
        return  # the open one is meant
    with screen() as shown:
        cell(number)
    assert f"There is no lesson {number!r}" in shown.plain and ", ".join(lessons()) in shown.plain
    assert "<script" not in shown.html


class TestProgress:
    def test_it_counts_what_was_earned_and_lists_what_is_open(self, session):
        session.answer("ohm-9", right_answer(session, "ohm-9"))  # worth two marks
        session.answer("ohm-3", wrong_answers(session, "ohm-3")[0])
        for typed in wrong_answers(session, "ohm-10"):
            session.answer("ohm-10", typed)
        session.answer("ohm-predict", "b")
        with screen() as shown:
            progress("02")
        lines = shown.bundles[-1]["text/plain"].split("\n")[1:]
        most = sum(q.marks for q in lessons()["02"].QUESTIONS if q.role != "predict")
        assert (
            lines[0] == f"Progress in lesson 02: 4 {OF_ALL} questions answered, 2 of {most} marks"
        )
        assert "ohm-9" not in lines[1].split(": ")[1].split(", ")
        assert lines[2:] == ["Not right yet: ohm-3", "With help: ohm-10"]

    def test_it_says_of_an_answer_what_its_card_said(self, session):
        for typed in (wrong_answers(session, "ohm-8")[0], right_answer(session, "ohm-8")):
            session.answer("ohm-8", typed)
        choice = next(
            q.id
            for q in lessons()["02"].QUESTIONS
            if q.kind.name == "choice" and not q.danger and q.role != "predict"
        )
        for typed in (wrong_answers(session, choice)[0], right_answer(session, choice)):
            session.answer(choice, typed)
        for typed in wrong_answers(session, "ohm-10"):
            session.answer("ohm-10", typed)
        said = [line.text for line in progress_lines(session, "02")]
        assert f"Right at a later try, for part of the marks: {choice}" in said
        assert "With help: ohm-10" in said
        assert not any(text.startswith("Not right yet") for text in said)
        session.answer("ohm-10", right_answer(session, "ohm-10", 1), 1)
        said = [line.text for line in progress_lines(session, "02")]
        assert "With help, and right since then: ohm-10" in said

    def test_a_danger_item_put_right_at_once_is_no_more_called_wrong(self, session):
        for typed in (wrong_answers(session, "safe-6")[0], right_answer(session, "safe-6")):
            session.answer("safe-6", typed)
        said = [line.text for line in progress_lines(session, "01")]
        assert "Right at a later try, without marks: safe-6" in said

    def test_a_danger_item_first_answered_wrong_stays_named_after_it_was_put_right(self, session):
        assert not any("first answered" in line.text for line in progress_lines(session, "01"))
        session.answer("safe-6", wrong_answers(session, "safe-6")[0])
        session.answer("safe-6", right_answer(session, "safe-6", 1), 1)
        session.answer("safe-8", right_answer(session, "safe-8"))
        session.answer("safe-1", wrong_answers(session, "safe-1")[0])  # no danger item
        session.answer("safe-9", wrong_answers(session, "safe-9")[0])
        assert progress_lines(session, "01")[-1].text == (
            "Danger items first answered wrong: safe-6, say what happens to an LED straight across "
            "the mains; safe-9, spot the parts that can still be live"
        )

    def test_nothing_open_and_nothing_wrong_is_said(self, session):
        for question in lessons()["02"].QUESTIONS:
            predicted = question.role == "predict"
            session.answer(question.id, "b" if predicted else right_answer(session, question.id))
        with screen() as shown:
            progress("02")
        assert shown.plain.split("\n")[3:] == ["Nothing is left open, and all of it is right."]

    def test_it_follows_the_answers(self, session):
        with screen() as shown:
            progress()
            assert f"0 {OF_ALL}" in shown.plain
            session.answer("ohm-2", right_answer(session, "ohm-2"))
            assert f"1 {OF_ALL}" in shown.plain and f"1 {OF_ALL}" in words(shown.html)

    def test_it_is_the_same_after_a_restart(self, session):
        session.answer("ohm-2", right_answer(session, "ohm-2"))
        with screen() as before:
            progress("02")
        lesson.begin("02")
        with screen() as after:
            progress("02")
        assert before.plain.split("\n")[2:] == after.plain.split("\n")[2:]


class TestPredictions:
    def test_what_was_predicted_comes_back_in_words_beside_what_was_found(self, session):
        option = bank()["ohm-predict"].kind.shown(session.draw("ohm-predict").numbers)["b"]
        session.answer("ohm-predict", "b")
        with screen() as shown:
            predictions("02")
        assert f"You predicted: b) {option.text}" in shown.plain
        assert "What we found: " in shown.plain

    @pytest.mark.parametrize("number", lessons())
    def test_what_was_found_stays_away_until_there_is_a_prediction_and_then_comes(
        self, session, number
    ):
        (question,) = [q for q in lessons()[number].QUESTIONS if q.role == "predict"]
        with screen() as shown:
            predictions(number)
            found = thing(f"predictions-{number}")
            for text in (live_words(found), shown.plain, shown.html):
                assert "Make your prediction first" in text and "What we found" not in text
            answer(question.id, "b")
            for text in (live_words(found), shown.plain, shown.html):
                assert "Make your prediction first" not in text and "What we found" in text

    def test_only_the_first_prediction_counts(self, session):
        shown_options = bank()["ohm-predict"].kind.shown(session.draw("ohm-predict").numbers)
        for letter in ("b", "c"):
            session.answer("ohm-predict", letter)
        with screen() as shown:
            predictions("02")
        assert shown_options["b"].text in shown.plain
        assert "You predicted: c" not in shown.plain


class TestHandIn:
    def test_its_path_is_shown(self, session, answers):
        session.answer("ohm-2", "7 mA")
        with screen() as shown:
            hand_in()
        (handed,) = (answers.parent / "hand-in").iterdir()
        assert str(handed) in shown.plain and str(handed) in words(shown.html)
        assert CAUTION in shown.plain and CAUTION in words(shown.html)

    def test_it_says_what_was_answered_since(self, session):
        session.answer("ohm-2", "7 mA")
        with screen() as shown:
            hand_in()
            assert "answers now" not in shown.plain
            answer("ohm-2", "8 mA")
            said = "2 answers now, 1 in this file: run this line again."
            for text in (live_words(thing("hand-in")), shown.plain, shown.html):
                assert said in text and "Receipt: 1 answer," in text
            lesson.begin("02", learner="BENCH-08")
            assert "Made for BENCH-07, wick: run this line again." in live_words(thing("hand-in"))

    def test_nothing_to_hand_in_is_said(self, session):
        with screen() as shown:
            hand_in()
            assert "BENCH-07 has answered nothing yet" in shown.plain
            answer("ohm-2", "7 mA")
        assert "1 answer now, none handed in: run this line again." in shown.plain

    def test_a_file_in_the_way_is_said(self, session, answers):
        session.answer("ohm-2", "7 mA")
        (answers.parent / "hand-in").write_text("in the way")
        with screen() as shown:
            hand_in()
        assert "could not be written" in shown.plain


class TestSettingsForm:
    @pytest.fixture
    def form(self, session):
        with screen():
            settings_form()
            yield thing("settings")

    def test_it_shows_what_is_kept_and_follows_the_code_door(self, form):
        assert held(form) == ("230 V 50 Hz", "BENCH-07", "wick")
        save(form, "240 V 50 Hz", "BENCH-07", "wick")
        open_lesson("02", "BENCH-08", "tallow", "120 V 60 Hz")
        assert held(form) == ("120 V 60 Hz", "BENCH-08", "tallow")
        assert "Saved" not in live_words(form)

    def test_save_is_remembered_for_all_lessons(self, form, answers):
        save(form, "120 V 60 Hz", " bench-08", "Tallow")
        assert "Saved: supply 120 V 60 Hz, learner BENCH-08, class word tallow." in live_words(form)
        assert lesson.current_session().settings.learner == "BENCH-08"
        lesson.begin("02")
        assert lesson.current_session().settings.supply == "120 V 60 Hz"

    def test_what_cannot_be_used_is_said_and_nothing_is_changed(self, form, answers):
        before = (answers / "settings.json").read_bytes()
        save(form, "120 V 60 Hz", HOSTILE, "wick")
        assert "Nothing was changed." in live_words(form)
        assert "<script" not in form.told.value.lower()
        assert (answers / "settings.json").read_bytes() == before

    def test_the_workshop_copy_has_no_form(self, session):
        lesson.begin("00", workshop_copy=True)
        with screen() as shown:
            settings_form()
        assert shown.bundles == []


def held(form):
    return form.supply.value, form.learner.value, form.word.value


def save(form, supply, learner, word):
    form.supply.value, form.learner.value, form.word.value = supply, learner, word
    form.box.children[3].click()


class TestCardsThatAreOnThePage:
    """Run All Cells shows every card; then the learner saves settings, or runs set-up again."""

    @pytest.fixture
    def opened(self, session):
        with screen() as shown:
            open_lesson("02")
            lesson.my_supply()
            card("ohm-2")
            yield thing("c-ohm-2"), shown

    @pytest.mark.parametrize(
        "change", [{"learner": "BENCH-08"}, {"supply": "120 V 60 Hz"}, {"class_word": "tallow"}]
    )
    def test_after_a_change_they_ask_and_answer_for_the_settings_that_hold_now(
        self, opened, answers, change
    ):
        shown, screen_ = opened
        before = live_words(shown)
        old = shown.check
        fill(shown, "7 mA")
        lesson.begin("02", **change)
        assert live_words(shown) != before and "Not answered yet" in live_words(shown)
        assert shown.controls.typed() == ""
        fill(shown, "7 mA")
        old.click()  # a press that was under way
        assert list(answers.glob("*.jsonl")) == []
        shown.check.click()
        (log,) = answers.glob("*.jsonl")
        assert log.stem == f"answers-{change.get('learner', 'BENCH-07')}"
        made_for = "Sums and pictures on this page were made for 230 V 50 Hz"
        assert (made_for in live_words(thing("ready-02"))) == ("supply" in change)

    def test_nothing_is_said_of_sums_that_nobody_ran(self, session):
        with screen():
            open_lesson("02")
            lesson.begin("02", supply="120 V 60 Hz")
            lesson.my_supply()
            answer("ohm-2", "7 mA")
            assert "were made for" not in live_words(thing("ready-02"))

    def test_after_the_same_set_up_again_a_card_goes_on_and_progress_counts_it(self, opened):
        old, shown = opened
        open_lesson("02")
        fill(old, "7 mA")
        old.check.click()
        assert "Read as 7\u00a0mA." in shown.plain
        assert f"1 {OF_ALL} questions answered" in shown.plain

    def test_set_up_again_finds_what_another_kernel_wrote(self, opened, session):
        other, _ = learner_session(session.store)
        other.answer("ohm-2", "7 mA")
        with screen() as shown:
            open_lesson("02")
        assert f"1 {OF_ALL} questions answered" in shown.plain

    def test_set_up_again_forgets_no_answer_that_a_full_disk_refused(
        self, opened, answers, monkeypatch
    ):
        old, _ = opened
        with monkeypatch.context() as full:
            full.setattr(answer_log, "add_row", refuse)
            fill(old, "7 mA")
            old.check.click()
            open_lesson("02")
        answer("ohm-3", "1 kΩ")
        lines, _ = AnswerLog(answers / "answers-BENCH-07.jsonl").lines()
        assert [line.answer for line in lines] == ["7 mA", "1 kΩ"]


class TestTwoKernelsOnOneLog:
    """The other kernel is a session of its own, as it would be there."""

    def test_a_danger_item_that_the_other_has_failed_shows_as_failed_before_an_answer_counts(
        self, session, answers
    ):
        other, _ = learner_session(session.store)
        wrong, right = wrong_answers(session, "start-2")[0], right_answer(session, "start-2")
        with screen():
            card("start-2")
            opened = thing("c-start-2")
            other.answer("start-2", wrong)
            fill(opened, right)
            opened.check.click()
            assert "answered in another notebook" in live_words(opened)
            assert "✗" in live_words(opened) and "closed" in live_words(opened)
            assert opened.controls.typed() == wrong
            assert len(AnswerLog(answers / "answers-BENCH-07.jsonl").lines()[0]) == 1
            fill(opened, right)
            opened.check.click()
        assert "for practice" in live_words(opened)
        assert session.standing("start-2").marks == 0

    def test_another_case_that_the_other_has_opened_and_answered_is_shown_first(self, session):
        other, _ = learner_session(session.store)
        with screen():
            card("start-2")
            opened = thing("c-start-2")
            fill(opened, wrong_answers(session, "start-2")[0])
            opened.check.click()
            other.read_again()
            other.answer("start-2", wrong_answers(other, "start-2", 1)[0], 1)
            opened.fresh.click()
        assert "another case 1" in live_words(opened) and "✗" in live_words(opened)

    def test_settings_that_another_changed_leave_no_question_and_no_control(self, session, answers):
        with screen() as shown:
            open_lesson("02")
            card("ohm-2")
            opened = thing("c-ohm-2")
            learner_session(session.store, "BENCH-08")
            fill(opened, "7 mA")
            opened.check.click()
            for name in ("c-ohm-2", "ready-02"):
                assert "settings were changed in another notebook" in live_words(thing(name))
            assert len(opened.box.children) == 3  # that sentence, rules of the box and the pulse
            answer("ohm-2", "7 mA")
            assert "this is not marked" in shown.plain
            assert list(answers.glob("*.jsonl")) == []
            open_lesson("02")
            fill(opened, "7 mA")
            opened.check.click()
        assert [path.stem for path in answers.glob("*.jsonl")] == ["answers-BENCH-08"]


def refuse(*_):
    raise OSError(28, "No space left on device")


def test_a_cell_run_before_the_set_up_cell_opens_the_kept_settings(session, monkeypatch):
    monkeypatch.setattr(lesson, "_open", {})
    with screen() as shown:
        answer("ohm-2", "7 mA")
    assert "Read as 7\u00a0mA." in shown.plain
    assert lesson.current_session().settings.learner == "BENCH-07"


@pytest.mark.parametrize(
    "drawn",
    [circuits.bench_dropper(12.0, 1000.0, 2.0), bands.resistor(("red", "red", "red", "gold"))],
    ids=["circuit", "bands"],
)
def test_a_drawing_comes_with_its_words(session, drawn):
    with screen() as shown:
        picture(*drawn)
    svg, said = drawn.picture, drawn.words
    assert said in shown.plain and svg in shown.html and words(said) in words(shown.html)


def test_the_cells_of_a_lesson_are_the_front_door():
    assert set(helpers.__all__) == {
        "open_lesson", "settings_form", "card", "answer", "nudge", "progress", "predictions",
        "hand_in", "bring_in", "picture", "explore", "my_supply", "my_build", "my_sheet",
        "need_it_be_built",
    }  # fmt: skip


def test_opening_a_lesson_gives_its_notebook_the_names_of_the_door(session, monkeypatch):
    given = {}
    monkeypatch.setattr("IPython.get_ipython", lambda: SimpleNamespace(push=given.update))
    open_lesson("02")
    assert set(given) == set(helpers.__all__) - {"open_lesson"}
    assert given["card"] is card
