"""The mark book names answers to an earlier edition, and what that changes for whom."""

import re
from dataclasses import replace
from types import SimpleNamespace

import invented_bank
import pytest

from helpers.classroom.mark_book import EARLIER
from helpers.classroom.marking import mark_folder
from helpers.classroom.wanted import Wanted


@pytest.fixture
def marked(room):
    """Return a function that marks the room by a bank in which some questions have changed."""

    def run(*changed):
        files = {
            number: SimpleNamespace(
                LESSON=number,
                TITLE=module.TITLE,
                QUESTIONS=tuple(
                    replace(q, edition=2) if q.id in changed else q for q in module.QUESTIONS
                ),
            )
            for number, module in invented_bank.BANK_FILES.items()
        }
        return mark_folder(Wanted(room.hand_ins, room.roster, "wick", room.out), bank_files=files)

    return run


def test_an_earlier_answer_is_named_on_every_page_and_earns_nothing(room, marked):
    room.hand_in(
        room.line(room.right("touch"), "touch"), room.line(room.right("current-1"), second=1)
    )
    before, now = marked(), marked("touch")
    row, row_now = before.book.rows[0], now.book.rows[0]
    assert before.book.total(row) - now.book.total(row_now) == room.question("touch").marks
    assert row_now.states["touch"] == EARLIER
    said = "Answered before the question was changed, no marks until answered again: "
    assert f"{said}BENCH-01 (touch)." in now.summary()
    assert any("answered before the question was changed" in p.found for p in now.book.problems)
    page = (room.out / "mark-book.html").read_text(encoding="utf-8")
    told = " ".join(re.sub(r"<[^>]*>", " ", page).split())
    assert "Answered before the question was changed, ask for it again: touch " in told
    assert " E ask again " in told
    assert EARLIER in (room.out / "mark-book.csv").read_text(encoding="utf-8")
    assert EARLIER not in " ".join(before.summary())


def test_answering_the_new_edition_counts(room, marked):
    again = room.line(room.right("touch", draw=1), "touch", draw=1, second=2) | {"edition": 2}
    room.hand_in(room.line(room.right("touch"), "touch"), again)
    (row, *_) = marked("touch").book.rows
    assert row.marks["touch"] == room.question("touch").marks


def test_an_answer_to_a_later_edition_is_asked_about(room, marked):
    room.hand_in(room.line(room.right("touch"), "touch") | {"edition": 7})
    room.neighbour()
    book = marked().book
    assert "touch" not in book.rows[0].marks
    assert any("in a later edition" in problem.found for problem in book.problems)


def test_an_earlier_answer_under_another_class_word_is_not_one_of_this_class(room, marked):
    at_home = room.line("B", "touch", class_word="home")
    room.hand_in(at_home, room.line(room.right("current-1"), second=1))
    (row, *_) = marked("touch").book.rows
    assert "touch" not in row.states
