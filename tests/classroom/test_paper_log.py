"""What was answered on paper, typed back: read as the card reads it, counted where no screen is."""

import json
from dataclasses import replace

import pytest
from class_on_disk import found_in
from invented_bank import BANK_FILES

from helpers.classroom import mark_book as states
from helpers.classroom.paper_log import (
    NotUnderstood,
    learner_in,
    named,
    refuse_twice,
    understand,
)
from helpers.classroom.roster import Roster
from helpers.exercises.bank import bank
from helpers.exercises.refusals import Unusable
from helpers.exercises.wording import title
from helpers.physics.mains import SUPPLIES

SUPPLY = "230 V 50 Hz"
BANK = {q.id: q for module in BANK_FILES.values() for q in module.QUESTIONS}
SUPPLY_OF = SUPPLIES[SUPPLY]


def typed(text, expected="", draw=0, learner="BENCH-01"):
    return understand(text, learner, "wick", SUPPLY, BANK, expected, draw)


def row_of(book, learner="BENCH-01"):
    return next(row for row in book.rows if row.learner == learner)


@pytest.mark.parametrize(
    ("text", "question", "draw", "edition", "answer"),
    [
        ("4.7 mA", "current-1", 0, 1, "4.7 mA"),
        ("current-2: 4,7 mA", "current-2", 0, 1, "4,7 mA"),
        ("current-2 · draw 3 · edition 1: 4.7 mA", "current-2", 3, 1, "4.7 mA"),
        ("current-2 · set 3 · edition 1: 4.7 mA", "current-2", 3, 1, "4.7 mA"),
        ("CURRENT-2 draw 3: 4.7 mA ", "current-2", 3, 1, "4.7 mA"),
        ("touch: b", "touch", 0, 1, "b"),
        ("steps: b a d c", "steps", 0, 1, "b a d c"),
        ("parts-1: 1 kΩ; 2 W", "parts-1", 0, 1, "1 kΩ; 2 W"),
    ],
)
def test_a_row_is_the_answer_with_the_small_print_before_it_or_not(
    text, question, draw, edition, answer
):
    line = typed(text, "current-1").line
    told = [line.question, line.draw, line.edition, line.answer]
    assert told == [question, draw, edition, answer] and line.by_hand is True


@pytest.mark.parametrize(
    ("text", "question", "draw", "answer"),
    [
        ("Exercise 2: 4.7 mA", "current-2", 0, "4.7 mA"),
        ("exercise  2, fresh numbers 3: 4.7 mA", "current-2", 3, "4.7 mA"),
        ("Exercise 1: 4.7 mA", "current-1", 0, "4.7 mA"),
    ],
)
def test_a_question_may_be_called_what_stands_above_it(text, question, draw, answer):
    line = understand(text, "BENCH-01", "wick", SUPPLY, BANK, pack=["current-1", "current-2"]).line
    assert [line.question, line.draw, line.answer] == [question, draw, answer]


def test_what_two_questions_of_a_pack_are_called_is_asked_back():
    pack = ["current-1", "parts-1"]
    assert {title(BANK[name]) for name in pack} == {"Exercise 1"}
    with pytest.raises(NotUnderstood, match="exercise 1” stands on this pack as current-1 and as"):
        understand("Exercise 1: 2 mA", "BENCH-01", "wick", SUPPLY, BANK, pack=pack)


@pytest.mark.parametrize("text", ["1k 2W", "1 k 2 W", "1 kΩ, 2 W", "1 kΩ; 2 W"])
def test_parts_on_one_line_are_parted_where_only_one_way_fits(text):
    read = typed(f"parts-1: {text}")
    assert read.said.endswith("read as 1\xa0kΩ; 2\xa0W") and ";" in read.line.answer


@pytest.mark.parametrize("text", ["1k", "1k 2W 2W", "2W 1k", "1 " * 40])
def test_parts_that_fit_no_way_are_asked_back(text):
    with pytest.raises(NotUnderstood, match="Paper has 2 lines for it: type them on one"):
        typed(f"parts-1: {text}")


def test_what_was_understood_is_said_with_the_words_of_that_learner_s_option():
    numbers = BANK["touch"].numbers_for("BENCH-01", "wick", SUPPLY_OF, 2)
    option = BANK["touch"].kind.shown(numbers)["b"].text
    said = typed("touch draw 2: b").said
    assert said == f"BENCH-01, touch · set 2 · edition 1: read as b) {option}"
    assert typed("0,0047 A", "current-1").said.endswith("read as 4.7\xa0mA")


def test_the_small_print_of_a_question_is_read_as_it_is_written():
    line = typed("current-2 draw 3: 4.7 mA").line
    assert typed(f"{named(line)}: 4.7 mA").line.draw == 3


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("currant-1: 4.7 mA", "The question currant-1 was read. Near it: current-1"),
        ("lamp-1: 4.7 mA", "The question lamp-1 was read. It stands in small print"),
        ("", "An answer of 0 characters was read"),
        ("9" * 201, "An answer of 201 characters was read; 1 to 200"),
        ("4.7 volts", "volts"),
        ("touch: x", "“x” was read, and the options here are a, b, c, d"),
        ("touch draw 10000: a", "set 10000, edition 1 was read"),
        ("touch edition 0: a", "edition 0 was read"),
    ],
)
def test_what_cannot_be_kept_says_what_was_read(text, says):
    with pytest.raises(NotUnderstood, match=says):
        typed(text, "current-1")


def test_an_old_pack_is_kept_as_typed_and_earns_nothing(room):
    understood = typed("current-1 edition 3: 4.7 mA")
    assert "earns no marks" in understood.said
    room.paper.keep(understood.line)
    earlier = replace(typed("current-2 edition 1: 4.7 mA").line, edition=0)
    room.paper.keep(earlier)
    book = room.mark()
    assert row_of(book).states == {"current-2": states.EARLIER}
    assert "1 answer to current-1 in a later edition of it" in found_in(book)


def test_the_bench_code_is_one_of_the_roster():
    roster = Roster(["BENCH-01", "BENCH-02"], {"BENCH-02": ["BANK-02"]})
    assert learner_in(" bench-01 ", roster) == "BENCH-01"
    assert learner_in("bank-02", roster) == "BANK-02", "numbers follow from the id on the pack"
    with pytest.raises(NotUnderstood, match="BENCH-O1 was read.* Near it: BENCH-01"):
        learner_in("bench-o1", roster)
    with pytest.raises(NotUnderstood, match=r"\(none\) was read"):
        learner_in("", roster)


@pytest.mark.parametrize("text", ["1", "01", "bench 1", "Bench01", "BENCH-1"])
def test_a_number_is_a_bench_code_where_only_one_can_be_meant(text):
    assert learner_in(text, Roster(["BENCH-01", "BENCH-11", "A-2"])) == "BENCH-01"


@pytest.mark.parametrize(("text", "near"), [("1", "BENCH-01, A-1"), ("B-1", "A-1"), ("7", "BENCH")])
def test_a_number_that_may_mean_two_or_none_is_asked_back(text, near):
    with pytest.raises(NotUnderstood, match=f"the roster does not hold it. Near it: {near}"):
        learner_in(text, Roster(["BENCH-01", "A-1"]))


def test_one_place_is_typed_once_and_taken_back_to_type_it_anew(room):
    first = typed("current-1: 4.7 mA")
    room.paper.keep(first.line)
    lines, problems = room.paper.lines()
    assert [line.answer for line in lines] == ["4.7 mA"] and problems == []
    with pytest.raises(NotUnderstood, match="is there already, as “4.7 mA”. Take that back"):
        refuse_twice(lines, typed("current-1: 5 mA"))
    refuse_twice(lines, typed("current-1 draw 1: 5 mA"))
    refuse_twice(lines, typed("current-1: 5 mA", learner="BENCH-02"))
    room.paper.take_back(lines[0])
    assert room.paper.lines() == ([], [])
    room.paper.keep(typed("current-1: 5 mA").line)
    assert [line.answer for line in room.paper.lines()[0]] == ["5 mA"]
    assert room.paper.path.read_text(encoding="utf-8").count("4.7 mA") == 2, "nothing is lost"


def test_a_log_that_two_have_typed_or_that_was_damaged_is_asked_about(room):
    room.type_back("4.7 mA")
    room.type_back("5 mA")
    room.type_back("5 mA", learner="not an id")
    with open(room.paper.path, "a", encoding="utf-8") as handle:
        handle.write(json.dumps(room.line("5 mA", "current-2")) + "\n" + '{"format": 1, "li')
    lines, problems = room.paper.lines()
    assert [line.answer for line in lines] == ["4.7 mA"]
    said = " ".join(f"{problem.found} {problem.advice}" for problem in problems)
    for words in ("typed twice, differently", "line 5 was left out", "1 lines of not an id",
                  "1 lines of BENCH-01 were not typed back here"):  # fmt: skip
        assert words in said


def test_a_log_that_cannot_be_read_or_written_stops_with_the_reason(room):
    room.paper.path.mkdir(parents=True)
    with pytest.raises(Unusable, match="could not be read"):
        room.run()
    with pytest.raises(Unusable, match="It was not kept: .*paper-wick"):
        room.type_back("4.7 mA")


def test_paper_counts_where_the_screen_has_no_line(room):
    room.hand_in(room.line(room.right("current-1")))
    room.type_back(room.right("current-2"), "current-2")
    room.type_back(room.right("touch", "BENCH-02"), "touch", "BENCH-02")
    book = room.mark()
    assert row_of(book).marks == {"current-1": 1, "current-2": 1}
    assert row_of(book).paper == ["current-2"]
    assert row_of(book, "BENCH-02").marks == {"touch": 1}
    assert [row.status for row in book.rows] == [states.HANDED_IN, states.ON_PAPER]
    assert found_in(book) == ""


def test_second_way_a_paper_line_is_marked_as_the_same_line_on_a_screen(room):
    answers = [("touch", "b"), ("steps", "a b c d"), ("current-1", "4.7 mA"), ("all-1", "a, b")]
    room.hand_in(*(room.line(a, q, second=n) for n, (q, a) in enumerate(answers)))
    on_screen = row_of(room.mark()).marks
    for path in room.hand_ins.iterdir():
        path.unlink()
    for question, answer in answers:
        room.type_back(answer, question)
    assert row_of(room.mark()).marks == on_screen


def test_where_both_have_an_answer_the_screen_counts_until_somebody_decides(room):
    room.hand_in(room.line("1 A"), room.line(room.right("current-2"), "current-2", second=1))
    room.type_back(room.right("current-1"))
    room.type_back("1 A", "current-2")
    book = room.mark()
    assert row_of(book).marks == {"current-1": 0, "current-2": 1}
    said = found_in(book)
    assert "BENCH-01: screen and paper differ in current-1, current-2; the screen counts" in said
    (problem,) = book.problems
    assert problem.copied == (
        "BENCH-01:current-1", "BENCH-01:current-1:screen",
        "BENCH-01:current-2", "BENCH-01:current-2:screen",
    )  # fmt: skip
    book = room.mark(accept=["BENCH-01:current-1"])
    assert row_of(book).marks == {"current-1": 1, "current-2": 1}
    assert row_of(book).paper == ["current-1"]
    assert "screen and paper differ in current-2;" in found_in(book)
    book = room.mark(accept=["BENCH-01:current-1", "BENCH-01:current-2:screen"])
    assert row_of(book).marks == {"current-1": 1, "current-2": 1}
    assert "differ" not in found_in(book)
    book = room.mark(accept=["BENCH-01:current-1", "BENCH-01:current-3"])
    assert "BENCH-01:current-3: this was decided; screen and paper do not" in found_in(book)


def test_where_both_have_the_same_answer_nothing_is_asked(room):
    right, wrong = room.right("current-1"), "1 A"
    first = room.line(wrong), room.line(right, second=1), room.line("1A", "current-2", second=2)
    room.hand_in(*first)
    room.type_back(wrong)
    room.type_back("1 A", "current-2")
    assert found_in(room.mark()) == ""
    room.type_back(right, draw=1)
    assert "screen and paper differ in current-1;" in found_in(room.mark()), "another draw"


def test_where_both_earn_the_same_or_nothing_is_earned_nothing_is_asked(room):
    lines = room.line("1 A"), room.line("a", "guess", second=1)
    room.hand_in(*lines)
    room.type_back("2 A")
    room.type_back("b", "guess")
    assert found_in(room.mark()) == ""
    burnt = room.question("current-1").kind.slips[2].wrong(room.numbers("current-1", draw=1))
    room.type_back(f"{burnt:.4g} A", draw=1)
    assert "screen and paper differ in current-1;" in found_in(room.mark()), "a danger on paper"


def test_one_question_is_decided_for_one_of_the_two(room):
    room.hand_in(room.line("1 A"))
    room.type_back(room.right("current-1"))
    kept = room.run(decided=["BENCH-01:current-1:screen"]).book
    assert row_of(kept).marks == {"current-1": 0} and found_in(kept) == ""
    both = ["BENCH-01:current-1", "BENCH-01:current-1:screen"]
    with pytest.raises(Unusable, match="are both decided. Delete the one that is not to count"):
        room.run(accept=both[1:], decided=both[:1])


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("BENCH-99:current-1", "this class has no bench BENCH-99"),
        ("BENCH-01:current-77", "there is no question current-77"),
        ("BENCH-02:current-1", "no answer of BENCH-02 to current-1 was typed back from paper"),
        ("BENCH-01:touch", "BENCH-01 has no answer to touch on the screen: paper counts as it is"),
        (
            "BENCH-02:current-1:screen",
            "no answer of BENCH-02 to current-1 was typed back from paper",
        ),
    ],
)
def test_what_is_no_double_cannot_be_decided_and_nothing_is_marked(room, name, says):
    room.hand_in(room.line("1 A"))
    room.type_back(room.right("current-1"))
    room.type_back(room.right("touch"), "touch")
    with pytest.raises(Unusable, match=f"{name} cannot be decided: {says}.*. Nothing was marked"):
        room.run(decided=["BENCH-01:current-1", name])
    assert not room.out.exists()
    assert row_of(room.run(decided=["BENCH-01:current-1"]).book).marks["current-1"] == 1
    assert "this was decided" in found_in(room.mark(accept=[name])), "of a time before"


def test_a_fresh_case_on_paper_alone_is_no_skipped_draw(room):
    room.type_back(room.right("touch", draw=3), "touch", draw=3)
    book = room.mark()
    assert row_of(book).marks == {"touch": 1}
    assert found_in(book) == ""


def test_forty_lines_typed_at_once_are_no_pace_to_ask_about(room):
    for number in range(40):
        room.type_back(
            "4.7 mA", learner="BENCH-01", draw=number, at="2026-01-13T18:00:00.000+00:00"
        )
    assert found_in(room.mark()) == ""


def test_somebody_whom_the_roster_does_not_hold_is_marked_and_asked_about(room):
    room.type_back("1 A", learner="BENCH-77")
    book = room.mark()
    assert row_of(book, "BENCH-77").status == states.NOT_ON_ROSTER
    assert "BENCH-77: this learner is not on the roster" in found_in(book)


def test_a_hand_in_that_calls_itself_paper_is_none(room):
    room.hand_in(room.line(room.right("touch", draw=3), "touch", draw=3, by_hand=True))
    book = room.mark()
    assert row_of(book).paper == []
    assert "answered before the one before it was finished" in found_in(book)


def test_answers_under_another_class_word_are_named_and_not_counted(room):
    room.neighbour()
    room.type_back(room.right("current-1"), class_word="wax")
    book = room.mark()
    assert row_of(book).status == states.NOTHING_COUNTS
    assert "under the class word “wax”" in found_in(book)


def test_the_log_may_lie_among_the_hand_ins(room):
    room.paper.path = room.hand_ins / "paper-wick.jsonl"
    room.type_back(room.right("current-1"))
    book = room.mark()
    assert book.hand_ins == 0 and row_of(book).marks == {"current-1": 1}


@pytest.mark.parametrize("supply", ["230 V 50 Hz", "120 V 60 Hz"])
def test_property_every_right_answer_of_the_bank_is_read_behind_its_small_print(supply):
    for question in bank().values():
        numbers = question.numbers_for("BENCH-01", "wick", SUPPLIES[supply], 0)
        answer = question.kind.model(numbers) or next(iter(question.kind.guesses(numbers)))
        if "\n" in answer:
            continue  # a design brings its brief along, and has no line on paper
        row = f"BENCH-01 · {question.id} · set 0 · edition {question.edition}: {answer}"
        understood = understand(row, "BENCH-01", "wick", supply, bank())
        kept = "A prediction" if question.role == "predict" else "✓ Right"
        assert understood.judged.startswith(kept), question.id
