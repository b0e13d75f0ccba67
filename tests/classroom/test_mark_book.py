"""The mark book: marked afresh, danger first, and everything that does not count is named."""

from dataclasses import replace
from types import SimpleNamespace

import pytest
from class_on_disk import SUPPLY, found_in
from hypothesis import given
from hypothesis import strategies as st
from invented_bank import BANK_FILES

from helpers.classroom.mark_book import (
    HELPED,
    NO_KNOWN_TURN,
    NONE,
    REPAIRED,
    LearnerMarks,
    MarkBook,
    danger_open,
    lessons_of,
)
from helpers.classroom.marking import mark_folder
from helpers.classroom.spreadsheet import cells, columns, fallen, for_cell
from helpers.classroom.wanted import Wanted
from helpers.exercises.kinds import Choice, Option
from helpers.exercises.refusals import Unusable
from helpers.physics.mains import SUPPLIES

LESSONS = lessons_of(BANK_FILES)


def wrong(room, count, question_id="current-1"):
    """Lines of so many different wrong answers."""
    right = room.question(question_id).kind.right(room.numbers(question_id))
    answers = [f"{1000 * right * (1.4 + 0.1 * n):.4g} mA" for n in range(count)]
    return [room.line(answer, question_id, second=n) for n, answer in enumerate(answers)]


def test_a_learner_on_the_roster_who_handed_in_nothing_has_a_row(room):
    room.neighbour(learner="BENCH-01")
    row = (room.mark(), room.table())[1]["BENCH-02"]
    assert row["status"] == "nothing handed in"
    assert row["marks"] == "0"
    assert row["danger items not answered"] == "touch, ready, steps"
    assert row["danger items answered wrong"] == ""


def test_a_recorded_mark_is_not_believed(room):
    room.hand_in(wrong(room, 1)[0] | {"marks": 99, "share": 1.0, "right": True})
    room.mark()
    assert room.table()["BENCH-01"]["current-1 (of 1)"] == "0"


def test_totals_second_way(room):
    """Added by hand: 1 + 3 + 1 + 2 = 7 marks.

    Lesson 01 has 1 + 3 + 2 + 2 = 8, lesson 02 has 8 + 3 + 6 + 2 + 6 = 25; 7 of 33 are 21.2 %.
    """
    names = ("touch", "ready", "current-3", "parts-1")
    room.hand_in(*(room.line(room.right(name), name) for name in names))
    room.mark()
    row = room.table()["BENCH-01"]
    assert (row["marks"], row["out of"], row["percent"]) == ("7", "33", "21.2")
    assert (row["lesson 01 (of 8)"], row["lesson 02 (of 25)"]) == ("4", "3")


def test_a_prediction_is_kept_and_not_marked(room):
    room.hand_in(room.line(room.right("guess"), "guess"))
    book = room.mark()
    row = room.table()["BENCH-01"]
    assert row["guess (not marked)"] == "answered"
    assert row["marks"] == "0"
    assert book.slips() == []


@pytest.mark.parametrize(
    ("tries", "fresh", "state", "repaired"),
    [
        pytest.param(2, False, NONE, "", id="two tries, no marks yet"),
        pytest.param(3, False, HELPED, "", id="worked answer shown"),
        pytest.param(3, True, REPAIRED, "current-1", id="then right with fresh numbers"),
    ],
)
def test_who_needs_help(room, tries, fresh, state, repaired):
    lines = wrong(room, tries)
    if fresh:
        lines.append(room.line(room.right("current-1", draw=1), draw=1, second=50))
    room.hand_in(*lines)
    book = room.mark()
    assert [q.id for q in book.in_state(book.rows[0], state)] == ["current-1"]
    assert room.table()["BENCH-01"]["helped, then right with fresh numbers"] == repaired


def test_a_danger_item_counts_by_the_first_answer_of_a_draw(room):
    shown = room.question("touch").kind.shown(room.numbers("touch"))
    dark = next(letter for letter, option in shown.items() if option.key == "dark")
    first = room.line(dark, "touch", second=1)
    room.hand_in(first, room.line(room.right("touch"), "touch", second=2))
    book = room.mark()
    wrong, blank = danger_open(book.questions, book.rows[0])
    assert [[q.id for q in wrong], [q.id for q in blank]] == [["touch"], ["ready", "steps"]]
    (slip,) = book.slips()
    assert (slip.name, slip.dangers) == ("chose: It is dark, so touch it.", {"touch"})
    room.hand_in(first, room.line(room.right("touch", draw=1), "touch", draw=1, second=3))
    book = room.mark()
    wrong, blank = danger_open(book.questions, book.rows[0])
    assert [[q.id for q in wrong], [q.id for q in blank]] == [[], ["ready", "steps"]]


@pytest.mark.parametrize(
    ("marks", "passed"),
    [
        pytest.param((0, 1, 3, 2, 1, 1), True, id="all of it"),
        pytest.param((0, 1, 3, 2, 0.8, 0.8), True, id="limit: 80 % of the rest"),
        pytest.param((0, 1, 3, 2, 1, 0.5), False, id="75 % of the rest"),
        pytest.param((0, 1, 2.97, 2, 1, 1), False, id="a danger item not whole"),
        pytest.param((0, 1, 3, 0, 1, 1), False, id="a danger item missing"),
    ],
)
def test_pass_rule_of_a_lesson_with_danger_items(marks, passed):
    """The rule of the course: full marks on the danger items and 80 % of the rest."""
    ids = (question.id for question in LESSONS[0].questions)
    row = LearnerMarks("BENCH-01", "", dict(zip(ids, marks, strict=True)), {})
    assert LESSONS[0].passed(row) is passed
    assert LESSONS[1].passed(row) is None


def test_slips_are_counted_by_learners_and_by_answers(room):
    slip = room.question("current-1").kind.slips[1]
    for learner in ("BENCH-01", "BENCH-02"):
        upside_down = slip.wrong(room.numbers("current-1", learner))
        line = room.line(f"{upside_down:.4g} A", learner=learner)
        room.hand_in(line, name=f"{learner}.jsonl")
    (slip,) = room.mark().slips()
    assert slip.name == "turned it upside down"
    assert (slip.learners, slip.answers, slip.dangers) == (2, 2, set())


def upside_down(room, question_id, learner, second):
    """A line with the slip of that name, which the tests' sums all know."""
    slip = room.question(question_id).kind.slips[1]
    typed = f"{slip.wrong(room.numbers(question_id, learner)):.4g} A"
    return room.line(typed, question_id, learner, second=second)


def test_a_slip_has_one_name_over_all_lessons(room):
    """Second way, by hand: current-1 is of lesson 01, current-3 of lesson 02; the first learner
    took the turn on both, the second on one.
    """
    for learner, ids in (("BENCH-01", ("current-1", "current-3")), ("BENCH-02", ("current-3",))):
        lines = [upside_down(room, one, learner, n) for n, one in enumerate(ids)]
        room.hand_in(*lines, name=f"{learner}.jsonl")
    (slip,) = room.mark().slips()
    assert (slip.learners, slip.answers) == (2, 3)
    assert slip.places() == [("current-3", 2), ("current-1", 1)]
    (slip,) = room.mark(only=["01"]).slips()
    assert (slip.learners, slip.answers, dict(slip.questions)) == (1, 1, {"current-1": 1})


def test_an_option_is_a_slip_by_its_text_wherever_it_stands(room):
    """Both questions hold the same option; only in the danger item would it hurt."""
    lines = []
    for second, name in enumerate(("choice-1", "touch")):
        typed = room.question(name).kind.letters_of(["dark"], room.numbers(name))
        lines.append(room.line(typed, name, second=second))
    room.hand_in(*lines)
    (slip,) = room.mark().slips()
    assert (slip.learners, slip.answers) == (1, 2)
    assert slip.places() == [("touch", 1), ("choice-1", 1)]
    assert slip.dangers == {"touch"}


def test_an_option_that_holds_personal_numbers_is_one_slip_for_all(room):
    options = (Option("all", "All", right=True), Option("some", "{volts} of it"))
    question = replace(room.question("choice-1"), id="some", kind=Choice(options))
    module = SimpleNamespace(LESSON="02", TITLE="Sums", QUESTIONS=(question,))
    names = set()
    for learner in ("BENCH-01", "BENCH-02"):
        numbers = question.numbers_for(learner, "wick", SUPPLIES[SUPPLY], 0)
        typed = question.kind.letters_of(["some"], numbers)
        answer = question.kind.read(typed, numbers)
        names.add(question.kind.verdict_on(answer, numbers).turn)
        line = room.line(typed, "some", learner)
        room.hand_in(line, name=f"{learner}.jsonl")
    book = mark_folder(
        Wanted(room.hand_ins, room.roster, "wick", room.out), bank_files={"02": module}
    ).book
    (slip,) = book.slips()
    assert len(names) == 2 and slip.name in names
    assert slip.learners == 2


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        pytest.param({"class_word": "wax"}, "1 answer under the class word “wax”", id="word"),
        pytest.param({"question": "ohm-99"}, "does not hold: “ohm-99”", id="question"),
        pytest.param({"supply": "400 V"}, "does not know: “400 V”", id="supply"),
        pytest.param({"answer": "seven"}, "1 answer to current-1 could not be read", id="unread"),
    ],
)
def test_a_line_that_does_not_count_is_named(room, changes, says):
    room.hand_in(room.line(room.right("current-1")) | changes)
    room.neighbour()
    book = room.mark()
    assert says in found_in(book)
    assert all(problem.advice for problem in book.problems)
    assert room.table()["BENCH-01"]["marks"] == "0"


def test_a_hand_in_under_another_class_word_is_not_called_nothing(room):
    room.hand_in(room.line("1 mA", class_word="wax"))
    room.neighbour()
    room.mark()
    assert room.table()["BENCH-01"]["status"] == "handed in, nothing in it counts"


def test_a_learner_who_is_not_on_the_roster_is_marked_and_named(room):
    stranger = room.line(room.right("current-1", "BENCH-77"), learner="BENCH-77")
    room.hand_in(stranger, name="a.jsonl")
    assert "BENCH-77: this learner is not on the roster" in found_in(room.mark())
    row = room.table()["BENCH-77"]
    assert (row["status"], row["marks"]) == ("not on the roster", "1")


def test_a_question_at_fault_stops_nobody(room, monkeypatch):
    kind = room.question("current-2").kind
    monkeypatch.setitem(kind.__dict__, "right", lambda n: 1 / 0)
    lines = [room.line("1 mA", "current-2"), room.line(room.right("current-1"))]
    room.hand_in(*lines)
    assert "current-2 could not be marked (ZeroDivisionError" in found_in(room.mark())
    row = room.table()["BENCH-01"]
    assert (row["current-2 (of 1)"], row["marks"]) == ("could not be marked", "1")


def test_every_row_of_the_table_has_every_column(room):
    room.neighbour()
    book = room.mark()
    assert {len(cells(book, row)) for row in book.rows} == {len(columns(book))}
    assert columns(book)[2].startswith("danger")


def test_an_empty_bank_gives_an_empty_book():
    assert MarkBook("wick", ()).out_of == 0


def test_a_lesson_that_nobody_has_begun_counts_against_nobody(room):
    """Added by hand: lesson 01 is out of 8, so one mark is 12.5 %."""
    room.neighbour("current-1")
    book = room.mark()
    row = room.table()["BENCH-02"]
    assert (row["marks"], row["out of"], row["percent"]) == ("1", "8", "12.5")
    assert not any("lesson 02" in name or name.startswith("current-3 ") for name in row)
    assert book.in_words().endswith(" Lessons not begun by anybody, so left out: 02.")
    assert book.in_words() in room.page()
    assert "Lesson 02" not in room.page()


def test_lessons_can_be_named(room):
    """One that is named counts even if nobody has begun it; one that is not does not."""
    room.neighbour("current-1")
    book = room.mark(only=["2"])
    row = room.table()["BENCH-02"]
    assert (row["marks"], row["out of"], row["lesson 02 (of 25)"]) == ("0", "25", "0")
    assert not any("lesson 01" in name for name in row)
    assert "left out" not in book.in_words()
    with pytest.raises(Unusable, match=r"no lesson 09; the bank holds 01, 02\."):
        room.mark(only=["09"])


def test_who_has_begun_a_lesson_and_who_has_not(room):
    room.neighbour()
    room.hand_in(room.line("x", "current-3"), name="unread.jsonl")
    room.mark()
    assert room.table()["BENCH-01"]["lesson 01 passed"] == "not begun"
    assert room.table()["BENCH-02"]["lesson 01 passed"] == "no"


@pytest.mark.parametrize(
    ("marks", "short"),
    [((0, 1, 3, 2, 0.5, 0.5), 0.6), ((0, 0, 0, 0, 0.8, 0.8), 0), ((0,) * 6, 1.6)],
    ids=["second way: 1.6 - 1", "limit: 80 % of the rest", "second way: 80 % of 2"],
)
def test_how_much_is_missing_besides_the_danger_items(marks, short):
    ids = (question.id for question in LESSONS[0].questions)
    row = LearnerMarks("BENCH-01", "", dict(zip(ids, marks, strict=True)), {})
    assert LESSONS[0].short_by(row) == pytest.approx(short, abs=1e-9)


def test_a_wrong_answer_that_no_slip_explains_is_counted(room):
    room.hand_in(*wrong(room, 2))
    (slip,) = room.mark().slips()
    assert (slip.learners, slip.answers, slip.name) == (1, 2, NO_KNOWN_TURN)


@pytest.mark.parametrize(
    ("question_id", "typed", "text"),
    [
        pytest.param("ready", ("gloves", "tester", "lock", "music"), "ticked: Music", id="ticked"),
        pytest.param("ready", ("gloves", "tester"), "left out: Lock", id="left out"),
        pytest.param("steps", ("prove", "isolate", "lock", "work"), "too early: Prove", id="order"),
    ],
)
def test_a_slip_is_told_in_the_words_that_the_learner_read(room, question_id, typed, text):
    letters = room.question(question_id).kind.letters_of(typed, room.numbers(question_id))
    room.hand_in(room.line(letters, question_id))
    assert [slip.name for slip in room.mark().slips()] == [text]


def test_the_day_of_the_last_answer(room):
    """Noon in UTC is the same day from UTC-12 to UTC+11."""
    days = {"current-2": "13", "current-1": "15", "current-3": "14"}
    lines = [
        room.line("1 mA", name) | {"at": f"2026-01-{d}T12:00:00+00:00"} for name, d in days.items()
    ]
    room.hand_in(*lines)
    room.mark()
    assert room.table()["BENCH-01"]["last answer"] == "2026-01-15"
    room.hand_in(room.line("1 mA") | {"at": "<b>9999"})
    room.mark()
    assert room.table()["BENCH-01"]["last answer"] == ""


HEAD = "learner,lesson 01 (of 8),ohm-1 (of 1),ohm-2 (of 2)\r\n"


@pytest.mark.parametrize(
    ("before", "now", "shared", "found"),
    [
        pytest.param("A1,9,1,2", "A1,2,1,2", False, [], id="the same questions"),
        pytest.param("A1,3,1,2", "A1,2,1,0.5", False, [("A1", 3, 1.5)], id="fewer"),
        pytest.param("A1,3,1,2", "B1,3,1,2", False, [("A1", 3, 0)], id="gone"),
        pytest.param("A1,3,,answered", "A1,0,,", False, [], id="no marks"),
        pytest.param("A1", "A1,0,0,0,9,9", False, [], id="rows of another length"),
    ],
)
def test_whose_marks_are_lower_than_before(before, now, shared, found):
    assert fallen(HEAD + before, HEAD + now, shared) == found


@pytest.mark.parametrize(("shared", "found"), [(False, [("A1", 3, 1)]), (True, [])])
def test_where_lessons_were_named_only_shared_questions_are_compared(shared, found):
    now = "learner,ohm-1 (of 1)\r\nA1,1\r\n"
    assert fallen(HEAD + "A1,3,1,2", now, shared) == found


@pytest.mark.parametrize(
    "before", ["", "\x00\xff", "learner;a\r\nA1;2", "learner," + "x" * 200_000]
)
def test_an_earlier_table_past_reading_tells_nothing(before):
    assert fallen(before, HEAD + "A1,0,0,0") == []


STARTS = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r")


@pytest.mark.parametrize("start", [*STARTS, " =", " ＝"])
def test_a_spreadsheet_runs_no_cell(start):
    cell = for_cell(f'{start}HYPERLINK("x");1+1')
    assert cell.startswith("'")
    assert ";" not in cell


@given(st.text(st.characters(codec=None), max_size=400))
def test_property_a_cell_is_one_harmless_line(text):
    cell = for_cell(text)
    assert not cell.startswith(STARTS)
    assert cell.isprintable()
    assert ";" not in cell


def test_a_number_stays_a_number():
    assert for_cell(7.5) == 7.5
