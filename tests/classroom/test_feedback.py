"""A learner's own page: their answers alone, dangers first, no right answer and nobody's marks."""

import re
from html import unescape
from html.parser import HTMLParser

import pytest
from class_on_disk import found_in

from helpers.exercises.refusals import Unusable
from helpers.exercises.wording import CAUTION


@pytest.fixture
def pages(room):
    """Mark a class of two, one of them with much to look at, and return the folder of pages."""
    kind, numbers = room.question("touch").kind, room.numbers("touch")
    lines = [
        room.line(kind.letters_of(["dark"], numbers), "touch", second=1),
        room.line(room.right("ready"), "ready", second=2),
        room.line("9 A", "current-1", second=3),
        room.line(room.right("current-2"), "current-2", second=4),
        room.line(room.right("current-3"), "current-3", second=5, edition=0),
    ]
    room.hand_in(*lines)
    room.neighbour()
    room.run(feedback=room.folder / "feedback")
    return room.folder / "feedback"


def text_of(pages, learner="BENCH-01"):
    return " ".join((pages / f"feedback-{learner}.html").read_text(encoding="utf-8").split())


def test_one_page_for_each_who_has_an_answer(room, pages):
    names = sorted(path.name for path in pages.iterdir())
    assert names == ["feedback-BENCH-01.html", "feedback-BENCH-02.html", "feedback.html"]
    room.write_roster("learner\nBENCH-01\nBENCH-03\n")
    marked = room.run(feedback=room.folder / "more")
    assert [path.name for path in marked.feedback] == names, "BENCH-03 has handed in nothing"
    assert any("Feedback: 2 pages; all in one, to print: " in line for line in marked.summary())
    assert room.run().feedback == []


def test_a_marking_without_feedback_says_that_older_pages_lie_there(room):
    room.neighbour()
    assert "earlier marking" not in "\n".join(room.run().summary())
    room.run(feedback=room.out / "feedback")
    said = "\n".join(room.run().summary())
    assert f"Feedback of an earlier marking lies in {room.out / 'feedback'}: " in said


def test_what_could_hurt_comes_first_with_what_the_card_said(pages):
    text = text_of(pages)
    assert 'Talk these through with your instructor: <span class="id">touch</span>' in text
    assert '</span>. Not answered yet: <span class="id">steps</span>' in text
    heads = re.findall(r"<h3><b[^>]*>.</b> ([\w-]+):", text)
    assert heads == ["touch", "current-3", "current-1"]
    assert "<strong>⚠ Danger first:</strong> A shock." in text and "<p>Dark?</p>" in text
    assert "Answered before the question was changed. Please answer it again." in text
    assert "<strong>A nudge:</strong> Which rule joins the two?" in text


def test_each_thing_to_look_at_again_shows_what_was_answered_last(room, pages):
    """As typed, a letter with its words: the newest one, which the words of the card answer."""
    text, letter = text_of(pages), room.question("touch").kind
    wrong = letter.letters_of(["dark"], room.numbers("touch")) + ") It is dark, so touch it."
    shown = re.findall(r"You answered: <q>(.*?)</q>", text)
    assert shown == [wrong, room.right("current-3").replace("\u00a0", " "), "9 A"]
    asked = [room.line(answer, second=n) for n, answer in enumerate(("8 A", "7 A", "8 A"), 6)]
    room.hand_in(*asked, room.line("5" * 300 + "\nA", "current-3", edition=0))
    room.run(feedback=pages)
    shown = re.findall(r"You answered: <q>(.*?)</q>", text_of(pages))
    assert shown == ["5" * 200 + "…", "7 A"], "8 A once more is no answer of its own"
    assert "You answered" not in text_of(pages, "BENCH-02")


def test_nobody_else_s_marks_and_no_right_answer_stand_there(room, pages):
    for learner, other in (("BENCH-01", "BENCH-02"), ("BENCH-02", "BENCH-01")):
        text = text_of(pages, learner)
        assert other not in text and "average" not in text.lower()
        assert f"Feedback for {learner}, class wick" in text
    for name in ("touch", "current-1"):
        assert room.right(name) == "a" or f">{room.right(name)}<" not in text_of(pages)
    assert "none of your answers needs another look" in text_of(pages, "BENCH-02")


def test_the_page_is_whole_in_itself_and_carries_the_caution(pages):
    text = text_of(pages)
    assert CAUTION in text and "Mains voltage can kill" in text
    assert text.index(CAUTION) < text.index("<h2")
    assert not re.search(r"https?:|url\(|@import|<script|<link|<img|<iframe| style=| on\w+=", text)
    assert "default-src 'none'; style-src 'sha256-" in unescape(text)


def test_text_from_outside_is_shown_and_never_read_as_markup(room):
    room.write_roster("learner\nBENCH-01\n")
    typed = room.line("<b>\u202e9 A</b>", "current-3", edition=0)
    room.hand_in(room.line("9 A", at="<b>2026"), room.line("9 A", "current-2", second=3), typed)
    room.run(feedback=room.folder / "feedback")
    tags = []
    parser = HTMLParser()
    parser.handle_starttag = lambda tag, attributes: tags.append(tag)
    parser.feed(text_of(room.folder / "feedback"))
    assert tags.count("b") == 3, "a sign before each question, and nothing that was typed"
    assert r"<q>&lt;b&gt;\u202e9 A&lt;/b&gt;</q>" in text_of(room.folder / "feedback")


def test_a_folder_that_cannot_be_made_stops_with_the_reason(room):
    room.neighbour()
    with pytest.raises(Unusable, match="could not be made"):
        room.run(feedback=room.roster)


def test_a_page_of_before_is_made_anew(room, pages):
    before = text_of(pages)
    room.hand_in(room.line(room.right("current-1")), name="wick_BENCH-01_2026-01-13.jsonl")
    book = room.run(feedback=pages).book
    assert found_in(book).count("lower marks") == 1
    assert text_of(pages) != before and "⚠" not in text_of(pages)


def test_what_was_answered_on_paper_stands_there_with_its_question_and_numbers(room, pages):
    """A card on the screen holds its question; a pack stays with whoever typed it back."""
    kind, numbers = room.question("touch").kind, room.numbers("touch", "BENCH-02", draw=1)
    room.type_back(kind.letters_of(["wait"], numbers), "touch", "BENCH-02", draw=1)
    room.run(feedback=pages)
    (asked,) = re.findall('<div class="asked">(.*?)</div>', text_of(pages, "BENCH-02"))
    options = [f"{letter}) {option.text}" for letter, option in kind.shown(numbers).items()]
    assert re.findall("<p>(.*?)</p>", asked) == ["touch", *options]
    assert 'class="asked"' not in text_of(pages)


def test_a_danger_in_an_ordinary_question_comes_before_what_is_not_passed(room, pages):
    burnt = room.question("current-3").kind.slips[2].wrong(room.numbers("current-3"))
    lines = room.line(f"{burnt:.4g} A", "current-3"), room.line("c, d", "ready", second=1)
    room.hand_in(*lines)
    room.run(feedback=pages)
    assert re.findall(r"<h3><b[^>]*>.</b> ([\w-]+):", text_of(pages)) == ["current-3", "ready"]


def test_one_file_to_print_holds_the_page_of_each(pages):
    """As it stands on the page of its own, and the dangers of nobody are lost."""
    whole = (pages / "feedback.html").read_text(encoding="utf-8")
    for learner in ("BENCH-01", "BENCH-02"):
        single = (pages / f"feedback-{learner}.html").read_text(encoding="utf-8")
        part = single.partition("<main>")[2].partition("</main>")[0].strip()
        assert part.count("<article") == 1 and part in whole
    assert whole.count("<article") == 2 and whole.count("<h1") == 2
    assert "<title>Feedback, class wick</title>" in whole
