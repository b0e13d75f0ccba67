"""The forms of an instructor: what a press of a button does, and what stands beside it then."""

import re
import sys
from datetime import UTC, datetime
from html import escape, unescape
from types import SimpleNamespace

import ipywidgets as widgets
import pytest
from shown import screen

from helpers.classroom.class_file import keep_decided, read_class
from helpers.classroom.demo_room import lines_of
from helpers.classroom.paper_log import PaperLog
from helpers.exercises.bank import bank
from helpers.exercises.kinds import Amount
from helpers.physics.mains import SUPPLIES
from helpers.widgets import desk, instructor

WORD = "wick"


@pytest.fixture(autouse=True)
def beside(tmp_path, monkeypatch):
    """The folder that the notebook lies in, without any class yet."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(desk, "_lists", [])
    return tmp_path


def form_of(name, **values):
    with screen() as seen:
        form = getattr(instructor, name)()
    assert seen.has_controls
    return fill(form, **values)


def fill(form, **values):
    for field, value in values.items():
        form.fields[field].value = value
    return form


def said_by(form):
    return unescape(re.sub("<[^>]+>", "", form.told.value))


def press(form, said):
    def buttons(widget):
        for child in getattr(widget, "children", ()):
            yield from [child] if isinstance(child, widgets.Button) else buttons(child)

    next(button for button in buttons(form.box) if button.description == said).click()
    return said_by(form)


@pytest.fixture
def made():
    press(form_of("make_class", word=" Wick ", lessons="1, 02", benches="3"), "Make this class")
    return read_class("classes/wick/wick.toml")


def test_a_class_is_made_with_its_roster_and_the_other_forms_know_it(beside):
    marking = form_of("mark")
    assert "Choose a class first" in press(marking, "Mark")
    form = form_of("make_class", word="Wick", supply="120 V 60 Hz", lessons="1", benches="2")
    said = press(form, "Make this class")
    made = read_class(beside / "classes/wick/wick.toml")
    assert (made.word, made.supply, made.lessons) == ("wick", "120 V 60 Hz", ("01",))
    assert made.where("roster").read_text() == "learner\nBENCH-01\nBENCH-02\n"
    assert str(made.keep_until) in said and "hand-ins" in said
    assert "Open With, Editor" in said, "a double click opens a roster to look at only"
    assert marking["class"] == "wick"
    assert "is there already, and was left as it is" in press(form, "Make this class")


@pytest.mark.parametrize(
    ("values", "says"),
    [
        ({"word": "two words"}, "class word 'two words' was read"),
        ({"word": "../up"}, "class word '../up' was read"),
        ({"word": " "}, "The class word is empty. Type one word, such as wick"),
        ({"benches": "many"}, "many was read. Write a whole number"),
        ({"lessons": "77"}, "There is no lesson 77"),
    ],
)
def test_what_cannot_be_made_says_why_and_leaves_nothing(beside, values, says):
    form = form_of("make_class", **({"word": "wick"} | values))
    assert "Not done. " in press(form, "Make this class") and says in said_by(form)
    assert list(beside.rglob("*.toml")) == []


def next_of(form):
    return unescape(re.sub("<[^>]+>", "", form.fields["next"].value)).strip()


def a_sum():
    """The first sum of lesson 02."""
    return next(q for i, q in bank().items() if i.startswith("ohm-") and type(q.kind) is Amount)


def enter(form, row):
    form.fields["row"].value = row
    form.enter()
    return said_by(form)


def test_paper_is_typed_back_by_enter_alone_and_read_back_before_it_is_kept(made):
    form = form_of("type_back", learner="bench-02", lessons="02")
    log = PaperLog(made.paper_log)
    question = a_sum()
    numbers = question.numbers_for("BENCH-02", WORD, SUPPLIES[made.supply], 0)
    row = f"{question.id}: {question.kind.model(numbers)}"
    said = enter(form, row)
    assert "Read. BENCH-02, " in said and "Enter keeps it" in said
    assert log.lines()[0] == [], "nothing is kept yet"
    form.enter()
    said = said_by(form)
    assert "Kept: BENCH-02" in said and "✓ Right." in said
    (line,) = log.lines()[0]
    assert (line.question, line.answer) == (
        question.id,
        row.partition(": ")[2].replace("\xa0", " "),
    )
    assert form["row"] == ""
    assert "is there already" in enter(form, row)
    assert "Taken back: BENCH-02" in press(form, "Undo the last line")
    assert log.lines()[0] == []
    assert "Nothing was kept" in press(form, "Undo the last line")


def test_a_changed_line_is_read_again_and_another_bench_is_never_kept_by_an_old_reading(made):
    form = form_of("type_back", learner="BENCH-02", lessons="02")
    question = a_sum()
    enter(form, f"{question.id}: 1 {question.kind.unit}")
    changed = f"{question.id}: 2 {question.kind.unit}"
    assert "Read. " in enter(form, changed)
    fill(form, learner="BENCH-03")
    assert "Read. BENCH-03" in enter(form, changed)
    assert PaperLog(made.paper_log).lines()[0] == []


def test_property_what_was_read_ends_with_one_full_stop(made):
    form, earlier = form_of("type_back", learner="BENCH-01", lessons="01"), "safe-2 · edition 1"
    for row in ("safe-2: a", "safe-1: 230 mA", f"{earlier}: a"):
        for said in (enter(form, row), enter(form, row)):
            assert ".." not in said


def test_what_is_asked_for_parts_is_said_as_people_read_it_and_as_paper_has_it(made):
    form = form_of("type_back", learner="BENCH-01", lessons="01")
    said = enter(form, "safe-18: 3 A")
    assert "\\x" not in said and "Put a semicolon between them" in said
    assert "Paper has 3 lines for it: type them on one." in said


def test_lines_are_taken_back_one_after_the_other_the_newest_first(made):
    form = form_of("type_back", learner="BENCH-01", lessons="01")
    for row in ("safe-2: a", "safe-4: b", "safe-5: none"):
        enter(form, row)
        form.enter()
    for left, name in ((2, "safe-5"), (1, "safe-4"), (0, "safe-2")):
        assert f"Taken back: BENCH-01, {name}" in press(form, "Undo the last line")
        assert len(PaperLog(made.paper_log).lines()[0]) == left


def test_undo_after_the_class_was_erased_writes_nothing_of_it_anew(made):
    form = form_of("type_back", learner="BENCH-01", lessons="01")
    enter(form, "safe-2: a")
    form.enter()
    erasing = form_of("forget", yes="yes")
    press(erasing, "List what would go")
    assert "Erased for good: 1 file" in press(erasing, "Erase")
    assert "does not stand in the log any more" in press(form, "Undo the last line")
    assert not made.paper_log.exists()


def test_an_empty_line_leaves_a_question_out_until_all_are_done(made):
    form = form_of("type_back", learner="BENCH-01", lessons="00")
    asked = [q.id for q in bank().values() if q.id.startswith("start-")]
    for question in asked:
        assert f"{question} is left out" in enter(form, "")
    assert "That was all of BENCH-01" in next_of(form)
    assert "The bench code" in enter(fill(form, learner="BENCH-99"), "x")
    assert "'77' was asked for" in enter(fill(form, learner="BENCH-01", lessons="77"), "x")


def test_a_pack_of_fresh_cases_holds_danger_items_alone_and_their_draw_is_kept(made):
    form = form_of("type_back", learner="BENCH-01", lessons="01", draw="1")
    first = next(q for q in bank().values() if q.danger and q.id.startswith("safe-"))
    numbers = first.numbers_for("BENCH-01", WORD, SUPPLIES[made.supply], 1)
    enter(form, first.kind.model(numbers))
    form.enter()
    (line,) = PaperLog(made.paper_log).lines()[0]
    assert (line.question, line.draw) == (first.id, 1)


def test_a_single_question_is_printed_with_other_numbers_and_typed_back_under_their_draw(made):
    form = form_of("print_paper", what="Questions again", draw="2")
    fill(form, lessons="ohm-2", learner="BENCH-01")
    assert "1 learner, on 230 V 50 Hz" in press(form, "Make it")
    (path,) = made.where("paper").iterdir()
    assert path.name == "paper-ohm-2-set-2-BENCH-01.html"
    assert "<b>ohm-2</b> · set 2 · edition" in path.read_text("utf-8")
    typed = form_of("type_back", learner="BENCH-01", lessons="ohm-2", draw="2")
    question = bank()["ohm-2"]
    numbers = question.numbers_for("BENCH-01", WORD, SUPPLIES[made.supply], 2)
    enter(typed, question.kind.model(numbers))
    typed.enter()
    assert "✓ Right." in said_by(typed) and "That was all of BENCH-01" in next_of(typed)
    (line,) = PaperLog(made.paper_log).lines()[0]
    assert (line.question, line.draw) == ("ohm-2", 2)


@pytest.mark.parametrize(
    ("learner", "supply"),
    [("BENCH-01", "120 V 60 Hz"), ("BENCH-0I", "120 V 60 Hz"), ("BENCH-02", "230 V 50 Hz")],
)
def test_paper_is_read_on_the_mains_of_the_roster_before_that_of_the_class(made, learner, supply):
    """The question asks for a current on the learner's own mains: on another one it is wrong."""
    rows = "learner,also,supply\nBENCH-01,BENCH-0I,120v 60hz\nBENCH-02,,\n"
    made.where("roster").write_text(rows)
    form, question = form_of("type_back", learner=learner, lessons="01"), bank()["safe-1"]
    numbers = question.numbers_for(learner, WORD, SUPPLIES[supply], 0)
    enter(form, f"safe-1: {question.kind.model(numbers)}")
    form.enter()
    assert PaperLog(made.paper_log).lines()[0][0].supply == supply
    assert "✓ Right." in said_by(form)


def test_a_supply_of_the_roster_that_nobody_knows_is_refused_before_anything_is_kept(made):
    made.where("roster").write_text("learner,supply\nBENCH-01,120 V\n")
    form = form_of("type_back", learner="BENCH-01", lessons="01")
    assert "The supply '120 V' was read. Choose one of" in enter(form, "safe-1: 230 mA")
    assert PaperLog(made.paper_log).lines()[0] == []


def hand_in(made, learner="BENCH-01"):
    questions = [bank()["ohm-2"], bank()["safe-2"]]
    lines = lines_of(learner, datetime(2026, 1, 13, tzinfo=UTC), questions)
    path = made.where("hand_ins") / f"wick_{learner}_2026-01-13.jsonl"
    path.write_text("".join(line.text() + "\n" for line in lines), encoding="utf-8")


def test_a_room_is_marked_and_its_book_shown_in_a_frame_that_runs_nothing(made):
    form = form_of("mark", feedback=True, comma=True)
    assert "There is no mark book yet" in press(form, "Look at the book")
    assert "There is no hand-in in" in press(form, "Mark")
    hand_in(made)
    said = press(form, "Mark")
    assert "1 hand-in read. 3 learners" in said and "Caution. Marks license nobody" in said
    assert "Feedback: 1 page" in said
    assert made.where("marked").joinpath("mark-book.csv").read_bytes().startswith(b"\xef\xbb\xbf")
    press(form, "Look at the book")
    frame = form.told.value
    assert '<iframe title="Mark book, class wick" srcdoc="&lt;!DOCTYPE html&gt;' in frame
    assert 'sandbox=""' in frame
    base, policy = (unescape(frame).index(tag) for tag in ("<base href=", "<meta http-equiv="))
    assert base < policy, "behind it the policy refuses it, and links lead out of the frame"


def test_a_class_copied_or_named_with_markup_shows_its_own_book_and_nothing_else(made):
    named = 'q" onload="alert(1)'
    for folder, name in ((named, named), ("wick-old", "wick")):
        path = made.path.parent.parent / folder / f"{name}.toml"
        path.parent.mkdir()
        path.write_text('word = "wick"\n', encoding="utf-8")
        book = read_class(path).where("marked") / "mark-book.html"
        book.parent.mkdir()
        book.write_text(f"<head>{folder}", encoding="utf-8")
    form = form_of("mark")
    assert form.fields["class"].options == (named, "wick", "wick-old/wick")
    for chosen in (named, "wick-old/wick"):
        press(fill(form, **{"class": chosen}), "Look at the book")
        (frame,) = re.findall("<iframe[^>]*>", form.told.value)
        assert " onload=" not in re.sub('"[^"]*"', "", frame)
        assert f'title="Mark book, class {escape(chosen)}" ' in frame


def test_doubles_are_decided_in_the_form_and_stay_decided(made):
    hand_in(made)
    typed = form_of("type_back", learner="BENCH-01", lessons="02")
    question = bank()["ohm-2"]
    numbers = question.numbers_for("BENCH-01", WORD, SUPPLIES[made.supply], 0)
    enter(typed, f"ohm-2: {question.kind.model(numbers)}")
    typed.enter()
    form = form_of("mark")
    press(form, "Mark")
    book = made.where("marked") / "mark-book.html"
    asked = "BENCH-01:ohm-2"
    assert f"<code>{asked}</code><code>{asked}:screen</code>" in book.read_text("utf-8")
    said = press(fill(form, decided="'no where (1).jsonl'"), "Mark")
    assert "no hand-in no where (1).jsonl" in said and read_class(made.path).accept == ()
    said = press(fill(form, decided="'no where"), "Mark")
    assert "'no where was read. One of its quotation marks has no fellow" in said
    said = press(fill(form, decided="BENCH-01:ohm-3"), "Mark")
    assert "no answer of BENCH-01 to ohm-3 was typed back" in said
    assert read_class(made.path).accept == ()
    said = press(fill(form, decided=asked), "Mark")
    assert f"kept in {made.path}: BENCH-01:ohm-2. To take it back, delete it there." in said
    assert form["decided"] == "" and read_class(made.path).accept == ("BENCH-01:ohm-2",)
    press(form_of("mark"), "Mark")
    assert f"<code>{asked}" not in book.read_text("utf-8")


def test_a_class_is_erased_only_after_its_list_was_read_and_yes_was_typed(made):
    hand_in(made)
    form = form_of("forget", yes="yes")
    assert "List first what would go" in press(form, "Erase")
    assert "1 file of class wick would go" in press(form, "List what would go")
    hand_in(made, "BENCH-02")
    assert "List first what would go" in press(form, "Erase"), "something has come since"
    press(form, "List what would go")
    assert "yes was not typed" in press(fill(form, yes="no"), "Erase")
    keep_decided(made, ["BENCH-01:ohm-2"])
    said = press(fill(form, yes="Yes"), "Erase")
    assert "Erased for good: 2 files of class wick" in said
    assert "stays in the lists here until you delete its folder, " in said
    assert read_class(made.path).accept == ()
    assert list(made.where("hand_ins").iterdir()) == []


@pytest.mark.parametrize(
    ("what", "lessons", "draw", "whose", "wanted"),
    [
        ("Packs of questions", "", "0", "", ("paper", "", [], 0)),
        ("Questions again", "1", "2", "", ("paper", "", ["01"], 2)),
        ("Key to the packs", "02", "1", "bench-02", ("key", "bench-02", ["02"], 0)),
        ("Key to questions again", "1", "2", "", ("key", "", ["01"], 2)),
        ("Start sheets", "", "1", "", ("start-sheet", "", [], 0)),
    ],
)
def test_printing_hands_over_what_the_command_does(
    made, monkeypatch, what, lessons, draw, whose, wanted
):
    """A double stands for what prints: its own tests say what it writes."""
    told = []

    def print_for(name, class_file, learner, lessons, draw):
        told.append((name, learner, lessons, draw))
        return [f"3 learners: {class_file}"]

    monkeypatch.setitem(sys.modules, "helpers.printing", SimpleNamespace(print_for=print_for))
    form = form_of("print_paper", what=what, lessons=lessons, draw=draw, learner=whose)
    assert f"3 learners: {made.path}" in press(form, "Make it")
    assert told == [wanted]


def test_one_bench_gets_other_cases_of_its_danger_items_and_they_have_a_key(made):
    form = form_of("print_paper", what="Questions again", learner="bench-02")
    assert "1 learner, on 230 V 50 Hz" in press(form, "Make it")
    fill(form, what="Key to questions again")
    assert "1 learner, on 230 V 50 Hz" in press(form, "Make it")
    names = {path.name for path in made.where("paper").iterdir()}
    assert names == {f"{name}-01-02-set-1-BENCH-02.html" for name in ("paper", "key")}
    assert "BENCH-99 is not on the roster" in press(fill(form, learner="bench-99"), "Make it")


def test_a_page_that_is_there_already_says_what_can_be_done_without_a_command(made):
    form = form_of("print_paper")
    said = press(form, "Leader's guide")
    assert "Written: " in said and "Open in New Browser Tab" in said
    said = press(form, "Leader's guide")
    assert "guide.html is there already, and was left as it is. Delete or rename it" in said
    assert "--" not in said


@pytest.mark.parametrize(
    ("draw", "says"),
    [("next", "next was read. Write a whole number"), ("0", "Set 0 is that of the first pack")],
)
def test_a_set_that_has_no_other_numbers_is_refused(made, draw, says):
    form = form_of("print_paper", what="Questions again", draw=draw)
    assert says in press(form, "Make it") and not made.where("paper").exists()


def test_which_set_is_asked_only_for_what_is_asked_again(made):
    form = form_of("print_paper")
    shown = []
    for what in form.fields["what"].options:
        fill(form, what=what)
        shown += [what] if form.fields["draw"].layout.display != "none" else []
    assert shown == ["Questions again", "Key to questions again"]


def test_whose_question_is_next_stands_there_from_the_bench_code_on(made):
    form = form_of("type_back", lessons="02")
    assert next_of(form) == ""
    fill(form, learner="3")
    assert next_of(form) == "Now: BENCH-03, Look back 1 (ohm-recall-1)"
    enter(form, "")
    assert "ohm-recall-1 is left out" in said_by(form)
    fill(form, learner="BENCH-02")
    assert next_of(form) == "Now: BENCH-02, Look back 1 (ohm-recall-1)"
    assert said_by(form) == "", "what was said of the bench before is gone"
    fill(form, learner="BENCH-77")
    assert next_of(form) == "" and "The bench code BENCH-77 was read" in said_by(form)
    fill(form, learner="BENCH-02", lessons="01", draw="1")
    assert next_of(form).startswith("Now: BENCH-02, Danger item ") and "another" in next_of(form)


def test_what_was_taken_back_is_next(made):
    form = form_of("type_back", learner="1", lessons="01")
    for row in ("safe-2: a", "safe-5: none"):
        enter(form, row)
        form.enter()
    assert "(safe-recall-1)" in next_of(form)
    press(form, "Undo the last line")
    assert next_of(form) == "Now: BENCH-01, Exercise 5 (safe-5)"
    enter(form, "none")
    form.enter()
    assert "Kept: BENCH-01, safe-5" in said_by(form) and "(safe-recall-1)" in next_of(form)


def test_a_question_may_be_called_what_stands_above_it_on_paper(made):
    form = form_of("type_back", learner="1", lessons="02")
    assert "ohm-9 · set 0 · edition" in enter(form, "exercise 9: c a b d e f")


def test_a_class_without_lessons_asks_for_the_question_by_name(made):
    made.path.write_text('word = "wick"\n', encoding="utf-8")
    form = form_of("type_back", learner="1")
    assert next_of(form).startswith("Now: BENCH-01. Put its question before each answer")
    assert "ohm-9 · set 0" in enter(form, "ohm-9: c a b d e f")
