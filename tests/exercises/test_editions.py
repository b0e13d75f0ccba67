"""A question that has changed: answers to an earlier edition are named, and never marked anew."""

from dataclasses import replace

import pytest
from learner import BENCH, right_answer, session_of, wrong_answers

from helpers.exercises import session as sessions
from helpers.exercises.answer_log import new_line, parse_row
from helpers.exercises.bank import bank, lesson_of
from helpers.exercises.settings import Settings
from helpers.exercises.wording import feedback_lines, title
from helpers.pages.progress import progress_lines

WITH_NUMBERS, WITHOUT, DANGER = "ohm-2", "safe-2", "start-2"


@pytest.fixture
def change(monkeypatch):
    """Return a function that brings in the next edition of a question."""

    def changed(question_id):
        question = bank()[question_id]
        later = bank() | {question_id: replace(question, edition=question.edition + 1)}
        monkeypatch.setattr(sessions, "bank", lambda: later)

    return changed


def reopened(session, settings=BENCH):
    return session_of(settings, session.store)


def test_a_line_that_names_no_edition_is_of_the_first():
    line = (
        '{"format": 1, "line": "a", "learner": "BENCH-07", "class_word": "wick", "at": "", '
        '"supply": "230 V 50 Hz", "question": "ohm-2", "answer": "7 mA", "draw": 0, "nudges": 0}'
    )
    assert parse_row(line.encode()).edition == 1


def test_each_line_holds_the_edition_it_answers(change):
    change(WITH_NUMBERS)
    session = session_of()
    session.answer(WITH_NUMBERS, right_answer(session, WITH_NUMBERS))
    ((line,), _) = session.log.lines()
    assert line.edition == bank()[WITH_NUMBERS].edition + 1


@pytest.mark.parametrize("question_id", [WITH_NUMBERS, WITHOUT, DANGER])
def test_an_earlier_answer_earns_nothing_until_it_is_given_again(change, question_id):
    before = session_of()
    before.answer(question_id, right_answer(before, question_id))
    change(question_id)
    session = reopened(before)
    standing = session.standing(question_id)
    assert (standing.share, standing.tries, standing.earlier) == (0, 0, 1)
    assert session.newest_draw(question_id) == 1
    outcome = session.answer(question_id, right_answer(session, question_id, 1), 1)
    assert outcome.verdict.right and standing.share == 1
    again = reopened(session).standing(question_id)
    assert (again.share, again.tries, again.earlier, again.first_draw) == (1, 1, 1, 1)


@pytest.mark.parametrize("question_id", [WITH_NUMBERS, WITHOUT, DANGER])
def test_an_earlier_draw_is_refused_with_the_line_to_type(change, question_id):
    before = session_of()
    before.answer(question_id, right_answer(before, question_id))
    change(question_id)
    session = reopened(before)
    outcome = session.answer(question_id, right_answer(session, question_id))
    assert outcome.verdict is None
    assert f'answer("{question_id}", "' in outcome.problem and "draw=1)" in outcome.problem
    assert len(session.log.lines()[0]) == 1


def test_draws_run_on_from_the_highest_earlier_one_whatever_its_settings(change):
    home = session_of(Settings("BENCH-07", "home", "120 V 60 Hz"))
    for number in range(3):
        home.answer(WITH_NUMBERS, right_answer(home, WITH_NUMBERS, number), number)
    change(WITH_NUMBERS)
    session = reopened(home)
    assert session.newest_draw(WITH_NUMBERS) == 3
    assert session.open_draw(WITH_NUMBERS, 3) == ""
    assert session.open_draw(WITH_NUMBERS, 4)


def test_the_card_says_so_and_a_question_without_numbers_is_not_called_fresh(change):
    before = session_of()
    before.answer(WITHOUT, right_answer(before, WITHOUT))
    change(WITHOUT)
    session = reopened(before)
    question, draw = session.question(WITHOUT), session.draw(WITHOUT)
    said = " ".join(line.text for line in feedback_lines(question, draw, 1, None))
    assert "earlier edition" in said and "Not answered yet" in said
    assert "fresh" not in title(question, 1)


def test_a_case_explained_in_an_earlier_edition_does_not_count_on_another_supply(change):
    abroad = [session_of(Settings(f"BENCH-{n}", "wick", "120 V 60 Hz")) for n in range(24)]
    for before in abroad:
        before.answer(DANGER, wrong_answers(before, DANGER)[0])
    change(DANGER)
    met = 0
    for before in abroad:
        session = reopened(before, replace(before.settings, supply=BENCH.supply))
        again = session.draw(DANGER).case == before.draw(DANGER).case
        session.answer(DANGER, right_answer(session, DANGER, 1), 1)
        assert (session.standing(DANGER).share == 1) != again
        met += again
    assert 0 < met < 24


def test_an_answer_to_a_later_edition_is_not_marked_either(change):
    change(WITH_NUMBERS)
    newer = session_of()
    newer.answer(WITH_NUMBERS, right_answer(newer, WITH_NUMBERS))
    line = replace(newer.log.lines()[0][0], edition=9)
    newer.log.add(replace(line, line="b"))
    standing = reopened(newer).standing(WITH_NUMBERS)
    assert (standing.tries, standing.later, standing.earlier) == (1, 1, 0)


# Moved from lesson 01 to 08, with the editions that they had there.
EDITIONS = {"safe-11": 3, "safe-12": 4, "safe-13": 2, "safe-15": 3}


@pytest.mark.parametrize("question_id", EDITIONS)
def test_a_line_from_before_a_question_moved_counts_where_the_bank_has_it_now(question_id):
    """A line names no lesson: it was written when this question stood in lesson 01."""
    session = session_of()
    typed = right_answer(session, question_id)
    place = (BENCH.learner, BENCH.class_word, BENCH.supply, question_id, 0)
    session.log.add(new_line(*place, typed, 0, edition=EDITIONS[question_id]))
    session = reopened(session)
    standing = session.standing(question_id)
    assert (standing.share, standing.tries, standing.earlier) == (1, 1, 0)
    assert lesson_of(question_id) == "08"
    first = {number: progress_lines(session, number)[0].text for number in ("01", "08")}
    assert ": 0 of" in first["01"] and ": 1 of" in first["08"]
