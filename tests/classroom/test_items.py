"""Which questions are too easy, too hard, or tell nobody apart."""

import pytest
from invented_bank import BANK_FILES

from helpers.classroom.items import Item, by_chance, items
from helpers.classroom.mark_book import FULL, NONE, LearnerMarks, MarkBook, lessons_of

IDS = [q.id for module in BANK_FILES.values() for q in module.QUESTIONS]


def book_of(*learners):
    """Each learner is what was right at once; all questions but those after a dash were tried."""
    book = MarkBook("wick", lessons_of(BANK_FILES))
    for number, right in enumerate(learners):
        states = {name: FULL if name in right else NONE for name in IDS if f"-{name}" not in right}
        firsts = tuple(name for name in right if name in IDS)
        book.rows.append(LearnerMarks(f"BENCH-{number:02d}", "", {}, states, firsts=firsts))
    return book


def test_second_way_ten_learners_counted_by_hand():
    """Five know three others and current-1, five know one other: 4 of 5 against 1 of 5."""
    strong = [("current-2", "current-3", "current-4", "current-1")] * 4
    strong += [("current-2", "current-3", "current-4")]
    weak = [("current-2",)] * 4 + [("current-2", "current-1")]
    # one in the middle stands on neither side
    found = items(book_of(*strong, *weak, ("current-2", "current-3")))
    assert found["current-1"] == Item(5, 11, pytest.approx(0.8 - 0.2))
    assert found["current-3"].right == 6
    assert "guess" not in found, "a prediction is not marked"


def test_limit_with_four_on_one_side_nothing_is_said():
    found = items(book_of(*[("current-1", "current-2", "current-3")] * 4, *[()] * 5))
    assert found["current-1"].apart is None and found["current-1"].remark == ""


def test_a_question_counts_with_those_who_tried_it_alone():
    found = items(book_of(("current-1",), ("-current-1",), ("-current-1",)))
    assert found["current-1"][:2] == (1, 1)
    assert "current-5" not in items(book_of(("-current-5",)))


@pytest.mark.parametrize(
    ("item", "remark"),
    [
        (Item(23, 24, 0.1), "too easy?"),
        (Item(22, 24, 0.1), ""),
        (Item(7, 24, 0.1), "too hard?"),
        (Item(8, 24, 0.1), ""),
        (Item(23, 24, -0.42), "turned round?"),
        (Item(12, 24, -0.40), ""),
        (Item(1, 24, None), ""),
    ],
)
def test_limit_a_remark_needs_more_than_chance(item, remark):
    """23 of 24 is 0.958, 7 of 24 is 0.292; two standard errors of a difference of halves of 12
    are 0.408.
    """
    assert item.remark == remark


def test_limit_four_times_as_many_halve_what_chance_does():
    assert by_chance(100) == pytest.approx([one / 2 for one in by_chance(25)])


def test_the_page_says_what_to_read_again(room):
    for number in range(12):
        learner = f"BENCH-{number:02d}"
        names = ["current-1", "choice-1", *(["current-3", "current-4"] if number % 2 else [])]
        lines = [room.line(room.right(n, learner), n, learner) for n in names]
        lines.append(room.line("9 A", "current-5", learner))
        room.hand_in(*lines, name=f"{learner}.jsonl")
    room.mark()
    text = " ".join(room.page().split())
    assert 'Perhaps too hard: <span class="id">current-5</span>' in text
    assert "Perhaps too easy: <span" in text and "read its wording again" not in text
    assert "moves a share by up to 29 in a hundred, and this one by up to 58" in text
    assert '<th scope="col">Strong less weak</th>' in text and "is not said" not in text


def test_a_class_too_small_to_tell_says_so_and_has_no_empty_column(room):
    room.neighbour()
    room.mark()
    text = " ".join(room.page().split())
    assert "too easy or too hard is not said: that takes 5 learners or more on either side" in text
    assert "Strong less weak" not in text
