"""What counts and what does not: honest tries, help, fresh numbers, danger items, predictions."""

import json
from dataclasses import replace

import pytest
from learner import BENCH, right_answer, session_of, wrong_answers
from questions import ONE_OF_EACH_KIND

from helpers.exercises.answer_log import parse_log
from helpers.exercises.bank import bank
from helpers.exercises.settings import Settings
from helpers.exercises.standing import replay
from helpers.exercises.wording import feedback_lines
from helpers.physics.mains import SUPPLIES

each_kind = pytest.mark.parametrize(
    "question_id",
    ONE_OF_EACH_KIND.values(),
    ids=[f"property: {i}" for i in ONE_OF_EACH_KIND.values()],
)


@pytest.fixture
def session():
    return session_of()


def texts(session, question_id, outcome, number=0, role=None):
    draw = session.draw(question_id, number)
    lines = feedback_lines(bank()[question_id], draw, number, outcome)
    return [line.text for line in lines if role in (None, line.role)]


@each_kind
def test_a_right_first_answer_earns_all(session, question_id):
    outcome = session.answer(question_id, right_answer(session, question_id))
    standing = session.standing(question_id)
    assert outcome.verdict.right
    assert (standing.share, standing.tries, standing.helped) == (1.0, 1, False)
    assert standing.marks == bank()[question_id].marks


@each_kind
def test_the_last_honest_try_shows_the_working_and_counts_as_helped(session, question_id):
    most = bank()[question_id].kind.tries
    wrong = wrong_answers(session, question_id)[:most]
    working = bank()[question_id].worked(session.draw(question_id).numbers)
    for place, typed in enumerate(wrong, start=1):
        outcome = session.answer(question_id, typed)
        shown = any(working in text for text in texts(session, question_id, outcome))
        assert shown == (place == most)
        assert session.standing(question_id).helped == (place == most)
    best = max(verdict.share for _, verdict in session.draw(question_id).tried.values())
    assert session.standing(question_id).share == best


@each_kind
def test_after_the_working_the_same_numbers_earn_nothing_more(session, question_id):
    for typed in wrong_answers(session, question_id):
        session.answer(question_id, typed)
    before = session.standing(question_id).share
    session.answer(question_id, right_answer(session, question_id))
    standing = session.standing(question_id)
    assert standing.share == before < 1
    assert standing.helped and not standing.right_after_help


EARNS = "This answer earns"


@each_kind
def test_an_answer_that_changes_no_marks_does_not_claim_to_earn_them(session, question_id):
    for typed in wrong_answers(session, question_id)[: bank()[question_id].kind.tries]:
        outcome = session.answer(question_id, typed)
        assert any(EARNS in text for text in texts(session, question_id, outcome))
    late = session.answer(question_id, right_answer(session, question_id))
    said = [texts(session, question_id, late)]
    if bank()[question_id].has_fresh_numbers:
        helped = session.answer(question_id, right_answer(session, question_id, 1), 1)
        said.append(texts(session, question_id, helped, 1))
    for lines in said:
        assert not any(EARNS in text for text in lines)
        assert any("does not change your marks" in text for text in lines)


def test_the_second_answer_to_a_danger_item_does_not_claim_to_earn(session):
    for typed in (wrong_answers(session, "start-2")[0], right_answer(session, "start-2")):
        outcome = session.answer("start-2", typed)
    assert not any(EARNS in text for text in texts(session, "start-2", outcome))
    outcome = session.answer("start-2", right_answer(session, "start-2", 1), 1)
    assert any("earns 1 of 1 mark" in text for text in texts(session, "start-2", outcome, 1))


@pytest.mark.parametrize("question_id", ["ohm-2", "ohm-8", "ohm-14"])
def test_fresh_numbers_after_help_show_that_it_was_learnt(session, question_id):
    for typed in wrong_answers(session, question_id):
        session.answer(question_id, typed)
    before = session.standing(question_id).share
    session.answer(question_id, right_answer(session, question_id, 1), 1)
    standing = session.standing(question_id)
    assert standing.right_after_help
    assert standing.helped and standing.share == before


@each_kind
def test_the_same_answer_twice_counts_once(session, question_id):
    typed = wrong_answers(session, question_id)[0]
    first, second = session.answer(question_id, typed), session.answer(question_id, f" {typed} ")
    assert first == second
    assert session.standing(question_id).tries == 1
    assert len(session.log.lines()[0]) == 1


def test_the_same_number_spelled_otherwise_is_the_same_answer(session):
    for typed in ("7 mA", "0.007 A", "7", "7000 µA", "7,0 mA"):
        session.answer("ohm-2", typed)
    assert session.standing("ohm-2").tries == 1


@pytest.mark.parametrize(
    "typed",
    ["", "   ", "x", "1,000", "12 V", "9**9**9", "4 kΩ kΩ", "__import__('os')", "a, b"],
)
@each_kind
def test_what_cannot_be_read_counts_as_nothing(session, question_id, typed):
    if question_id == "ohm-8" and typed == "a, b":
        typed = "a, z"
    outcome = session.answer(question_id, typed)
    assert outcome.verdict is None and outcome.problem
    assert session.standing(question_id).tries == 0
    assert session.log.lines()[0] == []


def test_the_best_try_before_help_counts(session):
    question = bank()["ohm-3"]
    n = session.draw("ohm-3").numbers
    half = f"{n.volts / n.amps:.6g} ohm"  # the LED's drop left out: half the marks
    wrong = wrong_answers(session, "ohm-3")
    for typed in (wrong[0], half, wrong[1]):
        session.answer("ohm-3", typed)
    standing = session.standing("ohm-3")
    assert (standing.share, standing.marks) == (0.5, 0.5 * question.marks)
    assert standing.helped
    assert "left out the LED's own drop" in standing.slips


def test_a_repaired_slip_earns_all_and_offers_fresh_numbers(session):
    session.answer("ohm-2", wrong_answers(session, "ohm-2")[0])
    outcome = session.answer("ohm-2", right_answer(session, "ohm-2"))
    assert session.standing("ohm-2").share == 1
    assert any("press Fresh numbers" in text for text in texts(session, "ohm-2", outcome))


@each_kind
def test_fresh_numbers_open_only_when_the_draw_is_finished(session, question_id):
    if not bank()[question_id].has_fresh_numbers:
        assert "no fresh draw" in session.open_draw(question_id, 1)
        return
    assert session.open_draw(question_id, 0) == ""
    assert session.open_draw(question_id, 1)
    session.answer(question_id, wrong_answers(session, question_id)[0])
    refused = session.answer(question_id, right_answer(session, question_id, 1), 1)
    assert refused.verdict is None and "draw 0" in refused.problem
    session.answer(question_id, right_answer(session, question_id))
    assert session.open_draw(question_id, 1) == ""
    assert session.open_draw(question_id, 2)


def test_a_choice_earns_half_at_the_second_try_and_then_shows_its_answer(session):
    session.answer("ohm-13", wrong_answers(session, "ohm-13")[0])
    outcome = session.answer("ohm-13", right_answer(session, "ohm-13"))
    marks = bank()["ohm-13"].marks
    assert session.standing("ohm-13").share == 0.5
    assert any(f"earns {0.5 * marks:g} of" in text for text in texts(session, "ohm-13", outcome))


SAME_FOR_ALL = ("ohm-9", "safe-2")


@pytest.mark.parametrize("question_id", SAME_FOR_ALL)
@pytest.mark.parametrize(
    "elsewhere", [Settings("BENCH-07", "wick", "120 V 60 Hz"), Settings("BENCH-07", "home")]
)
class TestSameNumbersForAll:
    """Tries at a question without numbers of its own are used up wherever they were made."""

    def test_tries_on_another_supply_or_under_another_word_are_used_up(
        self, question_id, elsewhere
    ):
        away = session_of(elsewhere)
        for typed in wrong_answers(away, question_id)[: bank()[question_id].kind.tries]:
            away.answer(question_id, typed)
        home = session_of(BENCH, away.store)
        before = home.standing(question_id).share
        home.answer(question_id, right_answer(home, question_id))
        assert home.standing(question_id).share == before < 1
        assert session_of(BENCH, home.store).standing(question_id).share == before

    def test_what_was_right_at_once_elsewhere_is_worth_the_same_here(self, question_id, elsewhere):
        away = session_of(elsewhere)
        away.answer(question_id, right_answer(away, question_id))
        home = session_of(BENCH, away.store)
        home.answer(question_id, right_answer(home, question_id))
        assert home.standing(question_id).share == 1
        assert session_of(BENCH, home.store).standing(question_id).share == 1


def test_asking_for_a_draw_that_is_not_open_yet_leaves_the_question_where_it_was(session):
    session.answer("ohm-2", "1 mA", 5)
    assert session.newest_draw("ohm-2") == 0


class TestDangerItem:
    def test_only_the_first_answer_of_a_draw_counts(self, session):
        session.answer("start-2", wrong_answers(session, "start-2")[0])
        session.answer("start-2", right_answer(session, "start-2"))
        assert session.standing("start-2").share == 0

    def test_a_wrong_answer_opens_a_fresh_draw_that_can_earn_full_marks(self, session):
        outcome = session.answer("start-2", wrong_answers(session, "start-2")[0])
        assert outcome.verdict.danger
        assert any("Another case" in text for text in texts(session, "start-2", outcome))
        session.answer("start-2", right_answer(session, "start-2", 1), 1)
        assert session.standing("start-2").share == 1

    def test_a_right_first_answer_stays_right_whatever_follows(self, session):
        session.answer("start-2", right_answer(session, "start-2"))
        session.answer("start-2", wrong_answers(session, "start-2")[0])
        assert session.standing("start-2").share == 1

    @pytest.mark.parametrize("question_id", [q.id for q in bank().values() if q.danger])
    def test_a_case_explained_just_before_does_not_count_on_another_supply(self, question_id):
        same = 0
        for bench in range(24):
            home, away = (
                session_of(Settings(f"BENCH-{bench}", "wick", name))
                for name in (BENCH.supply, "120 V 60 Hz")
            )
            away.log = home.log
            home.answer(question_id, wrong_answers(home, question_id)[0])
            away.read_again()
            met_again = away.draw(question_id).case == home.draw(question_id).case
            outcome = away.answer(question_id, right_answer(away, question_id))
            assert (away.standing(question_id).share == 1) != met_again
            said = " ".join(texts(away, question_id, outcome))
            assert ("explained just before" in said) == met_again
            away.answer(question_id, right_answer(away, question_id, 1), 1)
            assert away.standing(question_id).share == 1
            same += met_again
        assert 0 < same < 24

    def test_the_danger_is_said_before_all_else(self, session):
        outcome = session.answer("start-2", wrong_answers(session, "start-2")[0])
        assert texts(session, "start-2", outcome)[0].startswith("⚠ Danger first: ")


class TestPrediction:
    def test_it_is_kept_and_never_marked_right_or_wrong(self, session):
        outcome = session.answer("ohm-predict", "b")
        said = " ".join(texts(session, "ohm-predict", outcome))
        assert "Kept" in said and "✗" not in said and "✓" not in said
        assert len(session.log.lines()[0]) == 1

    def test_only_the_first_one_counts_and_a_later_one_says_so(self, session):
        session.answer("ohm-predict", "b")
        said = " ".join(texts(session, "ohm-predict", session.answer("ohm-predict", "c")))
        assert "Your first prediction stays" in said

    def test_its_working_is_not_shown_before_the_lesson_found_it(self, session):
        outcome = session.answer("ohm-predict", "b")
        working = bank()["ohm-predict"].worked(session.draw("ohm-predict").numbers)
        assert not any(working in text for text in texts(session, "ohm-predict", outcome))

    def test_it_is_no_slip_of_the_learner(self, session):
        session.answer("ohm-predict", "b")
        standing = session.standing("ohm-predict")
        assert standing.slips == []
        assert standing.marks == 0 and not standing.helped


def lines_of(session):
    return session.log.lines()[0]


@each_kind
def test_reading_the_log_again_gives_the_same_standing(session, question_id):
    for typed in [*wrong_answers(session, question_id)[:2], right_answer(session, question_id)]:
        session.answer(question_id, typed)
    again = session_of(store=session.store)
    assert again.standing(question_id) == session.standing(question_id)


def test_marks_follow_from_the_answers_and_not_from_what_a_line_claims(session):
    session.answer("ohm-2", wrong_answers(session, "ohm-2")[0])
    claims = {"marks": 99, "share": 1.0, "right": True}
    rows = [json.dumps(json.loads(line.text()) | claims) for line in lines_of(session)]
    forged = parse_log("\n".join(rows).encode()).lines
    assert len(forged) == 1
    assert replay(bank()["ohm-2"], forged, SUPPLIES, "wick").share == 0


@pytest.mark.parametrize(
    "settings, kept",
    [
        (Settings("BENCH-07", "wick", "120 V 60 Hz"), 1),
        (Settings("BENCH-07", "tallow", "230 V 50 Hz"), 0),
    ],
    ids=["property: another supply", "property: another class word"],
)
def test_other_settings_give_other_numbers_and_a_class_word_earns_its_own_marks(settings, kept):
    first = session_of()
    first.answer("ohm-2", right_answer(first, "ohm-2"))
    moved = session_of(settings, first.store)
    assert moved.draw("ohm-2").tried == {}
    assert moved.newest_draw("ohm-2") == 0
    assert moved.standing("ohm-2").share == kept
    moved.answer("ohm-2", wrong_answers(moved, "ohm-2")[0])
    assert moved.standing("ohm-2").share >= kept
    numbers = [[vars(s.draw(i).numbers) for i in ONE_OF_EACH_KIND.values()] for s in (first, moved)]
    assert numbers[0] != numbers[1]


def test_what_was_explained_under_another_class_word_is_explained():
    home = session_of(Settings("BENCH-07", "home", "230 V 50 Hz"))
    for typed in wrong_answers(home, "ohm-2"):
        home.answer("ohm-2", typed)
    moved = session_of(BENCH, home.store)
    moved.answer("ohm-2", right_answer(moved, "ohm-2"))
    standing = moved.standing("ohm-2")
    assert (standing.share, standing.tries, standing.right_after_help) == (0, 1, True)


def test_each_learner_has_their_own_standing():
    one, other = session_of(), session_of(Settings("BENCH-08", "wick", BENCH.supply))
    one.answer("ohm-2", right_answer(one, "ohm-2"))
    assert other.standing("ohm-2").tries == 0


def test_lines_that_cannot_be_read_by_this_bank_are_counted_and_cost_nothing_else(session):
    session.answer("ohm-2", right_answer(session, "ohm-2"))
    good = lines_of(session)[0]
    lines = [replace(good, answer="forty-two"), replace(good, supply="400 V 16.7 Hz"), good]
    standing = replay(bank()["ohm-2"], lines, SUPPLIES, "wick")
    assert standing.unread == 2
    assert standing.share == 1
