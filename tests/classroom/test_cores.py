"""Work is done in order, on one core or on several, and a class marked so is the same class."""

from operator import itemgetter
from pickle import dumps, loads

import pytest

from helpers.classroom import cores, demo_room, room
from helpers.classroom.marking import mark_folder
from helpers.classroom.wanted import Wanted
from helpers.exercises.bank import bank

WORDS = [(word,) for word in ("ohm", "watt", "volt")] * 4


@pytest.mark.parametrize("fewest", [5, 100], ids=["two processes", "one"])
def test_the_order_of_the_work_is_kept(monkeypatch, fewest):
    monkeypatch.setattr(cores, "FEWEST", fewest)
    monkeypatch.setattr(cores, "AT_ONCE", 1)
    monkeypatch.setattr("os.cpu_count", lambda: 2)
    assert list(cores.each(itemgetter, (0,), WORDS, len(WORDS))) == list("owv" * 4)


def test_what_fails_in_a_process_fails_here(monkeypatch):
    monkeypatch.setattr(cores, "FEWEST", 1)
    monkeypatch.setattr("os.cpu_count", lambda: 2)
    with pytest.raises(IndexError, match="out of range"):
        list(cores.each(itemgetter, (9,), WORDS, len(WORDS)))


def test_a_class_that_was_sent_to_processes_and_back_has_the_same_book(tmp_path, monkeypatch):
    """A double stands for the processes: it sends each piece and what comes of it by pickle."""

    def sent(make, given, work, many):
        do = make(*loads(dumps(given)))
        return (loads(dumps(do(*loads(dumps(one))))) for one in work)

    hand_ins, roster = tmp_path / "hand-ins", tmp_path / "roster.csv"
    hand_ins.mkdir()
    for learner in ("BENCH-01", "BENCH-02"):
        lines = demo_room.lines_of(learner, demo_room.FIRST_EVENING, list(bank().values())[::6])
        text = "".join(line.text() + "\n" for line in lines)
        (hand_ins / f"wick_{learner}.jsonl").write_text(text, encoding="utf-8")
    roster.write_text("learner\nBENCH-01\nBENCH-02\nBENCH-03\n", encoding="utf-8")
    books = []
    for way in (room.each, sent):
        monkeypatch.setattr(room, "each", way)
        out = tmp_path / str(len(books))
        marked = mark_folder(Wanted(hand_ins, roster, "wick", out), feedback=out)
        books.append((marked.table.read_text("utf-8"), marked.book.rows, marked.book.problems))
    assert books[0] == books[1] and len(books[0][1]) == 3
