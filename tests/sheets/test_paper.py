"""A pack asks what the learner's card asks, and names what an answer on it is typed back under."""

from itertools import count, islice

import pytest
from on_paper import read
from questions import ALL, MARKED, of_each

from helpers.exercises.answer_log import MOST_DRAWS
from helpers.exercises.bank import lessons
from helpers.exercises.kinds import NotRead
from helpers.exercises.session import Session
from helpers.exercises.settings import Settings
from helpers.exercises.store import MemoryStore
from helpers.exercises.wording import CAUTION, STAMP
from helpers.pages.questions import question_page
from helpers.physics.mains import SUPPLIES
from helpers.sheets import paper

PEOPLE = [Settings("BENCH-07", "wick", "230 V 50 Hz"), Settings("A-2", "wick", "120 V 60 Hz")]
NONE_OF_THEM = "none of them"


def squeezed(texts):
    return [" ".join(text.replace("`", "").split()) for text in texts]


@pytest.mark.parametrize("number", lessons())
@pytest.mark.parametrize("who", PEOPLE, ids=lambda who: who.supply)
def test_second_way_each_question_says_what_the_card_of_the_same_learner_says(number, who):
    """The card comes from a session of the notebook, the pack from its own printed markup."""
    session = Session(who, MemoryStore())
    questions = lessons()[number].QUESTIONS
    printed = read(paper.pieces([who], [number]))
    assert len(printed) == len(questions)
    for question, on_paper in zip(questions, printed, strict=True):
        card = question_page(session, question, 0).lines
        for role in ("title", "about", "ask"):
            assert on_paper[role] == squeezed(o.text for o in card if o.role == role), question.id
        options = [text for text in on_paper["option"] if text != NONE_OF_THEM]
        assert options == squeezed(o.text for o in card if o.role == "option"), question.id
        by_hand = question.kind.by_hand(paper.numbers_of(question, who))
        assert on_paper["hint"] == squeezed([by_hand.how])
        assert on_paper["ticked"] == bool(by_hand.ticks)
        places = [f"{before or 'Answer:'} {behind}".split() for before, behind in by_hand.places]
        assert [text.replace(" or in", "").split() for text in on_paper["places"]] == places
        assert on_paper["line"] == [
            f"{who.learner} · {question.id} · set 0 · edition {question.edition}"
        ]


@of_each(MARKED)
@pytest.mark.parametrize("draw", [0, 1])
def test_the_numbers_are_those_of_the_learner_and_every_place_can_be_typed_back(question, draw):
    who = PEOPLE[1]
    drawn = question.numbers_for(who.learner, who.class_word, SUPPLIES[who.supply], draw)
    assert paper.numbers_of(question, who, draw) == drawn
    by_hand = question.kind.by_hand(drawn)
    # What would be written by hand, put together as a typist would, is read, and is right.
    model = question.kind.model(drawn)
    letters = [text[0] for text in by_hand.ticks if text[1:2] == ")"]
    if letters:
        assert letters == sorted(question.kind.shown(drawn)) and not by_hand.places
        assert set(model.split(", ")) <= {*letters, "none"}
        typed_back = model
    else:
        pieces = model.split(question.kind.between) if len(by_hand.places) > 1 else [model]
        assert len(pieces) == len(by_hand.places) > 0
        typed_back = question.kind.between.join(pieces)
    read_back = question.kind.read(typed_back, drawn)
    assert question.kind.verdict_on(read_back, drawn).right


def test_every_kind_has_its_own_way_to_be_answered_by_hand():
    """Common practice: one or many are ticked, a sum, steps and parts have lines to write on."""
    ways = {}
    for question in ALL:
        by_hand = question.kind.by_hand(paper.numbers_of(question, PEOPLE[0]))
        places = min(len(by_hand.places), 2)
        ways.setdefault(question.kind.name, set()).add(
            (bool(by_hand.ticks), NONE_OF_THEM in by_hand.ticks, places)
        )
    assert ways == {
        "quantity": {(False, False, 1)},
        "choice": {(True, False, 0)},
        "choose-all": {(True, True, 0)},
        "order": {(False, False, 2)},
        "parts": {(False, False, 2)},
        "bands": {(False, False, 2)},
        "design": {(False, False, 1)},
    }


def test_none_of_them_is_typed_back_as_none():
    question = next(q for q in ALL if q.kind.name == "choose-all")
    numbers = paper.numbers_of(question, PEOPLE[0])
    assert question.kind.read("none", numbers).value == ()
    with pytest.raises(NotRead, match="options here are"):
        question.kind.read(NONE_OF_THEM, numbers)


def test_again_asks_danger_items_alone_with_another_case():
    first = read(paper.pieces(PEOPLE[:1], ["01", "08"]))
    again = read(paper.pieces(PEOPLE[:1], ["01", "08"], 1))
    wanted = [q for n in ("01", "08") for q in lessons()[n].QUESTIONS if q.danger]
    assert [one["line"] for one in again] == [
        [f"BENCH-07 · {q.id} · set 1 · edition {q.edition}"] for q in wanted
    ]
    before = {one["line"][0].split(" · ")[1]: one for one in first}
    for one in again:
        asked = before[one["line"][0].split(" · ")[1]]
        assert (one["ask"], sorted(one["option"])) != (asked["ask"], sorted(asked["option"]))
        assert one["title"][0].endswith("another case 1")


def test_each_pack_begins_with_whose_it_is_and_the_cautions():
    text = " ".join("".join(paper.pieces(PEOPLE, ["02"])).split())
    for who, pack in zip(PEOPLE, text.split('<section class="pack"')[1:], strict=True):
        top = pack.partition("<article")[0]
        assert who.learner in top and who.supply in top and "<b>wick</b>" in top
        assert CAUTION in top and STAMP in top and "Mains voltage can kill" in top


def test_a_pack_is_worked_out_when_its_turn_comes():
    """A class that never ends is begun all the same."""
    endless = (Settings(f"B-{number}") for number in count())
    assert "B-0" in "".join(islice(paper.pieces(endless, ["00"]), 3))


@pytest.mark.parametrize(
    ("numbers", "draw", "says"),
    [
        (["02", "77"], 0, "'77' was asked for; the bank holds the lessons 00, 01"),
        (["heat-33"], 1, "'heat-33' was asked for; .* questions such as heat-3,"),
        (["safe-2"], 1, "safe-2: nothing of it has other numbers. Again can be asked: the danger"),
        (["02"], 1, "02: nothing of it has other numbers. .* as those of 01, .* such as ohm-3"),
        ([], 0, "Which lessons"),
        (["01"], -1, "Set -1 was asked for"),
        (["01"], MOST_DRAWS, f"Set {MOST_DRAWS} was asked for"),
    ],
)
def test_what_cannot_be_asked_is_refused(numbers, draw, says):
    with pytest.raises(ValueError, match=says):
        paper.pieces(PEOPLE, numbers, draw)


def test_a_single_question_is_asked_again_with_other_numbers():
    first, again = (read(paper.pieces(PEOPLE[:1], ["heat-3"], draw)) for draw in (0, 2))
    assert [len(first), len(again)] == [1, 1]
    assert again[0]["line"][0].startswith("BENCH-07 · heat-3 · set 2 · edition ")
    assert first[0]["ask"] != again[0]["ask"]
    text = " ".join("".join(paper.pieces(PEOPLE[:1], ["heat-3"], 2)).split())
    assert "<title>Questions on paper, heat-3</title>" in text
    assert "BENCH-07: again, with other numbers" in text and "set <b>2</b>" in text


def test_danger_items_of_a_lesson_and_a_single_question_may_be_asked_again_together():
    found = [(m.LESSON, [q.id for q in qs]) for m, qs in paper.chosen(["01", "ohm-2"], 1)]
    dangers = [q.id for q in lessons()["01"].QUESTIONS if q.danger]
    assert found == [("01", dangers), ("02", ["ohm-2"])]


def test_what_is_always_the_same_is_left_out_and_the_rest_is_asked_again():
    wanted = ["ohm-recall-2", "ohm-recall-1"]
    assert [[q.id for q in qs] for _, qs in paper.chosen(wanted, 1)] == [["ohm-recall-1"]]
    assert paper.always_the_same(wanted) == ["ohm-recall-2"]
    assert [[q.id for q in qs] for _, qs in paper.chosen(wanted)] == [["ohm-recall-1", *wanted[:1]]]


def test_what_the_examples_of_a_refusal_name_can_be_asked_again():
    assert paper.chosen(["01"], 1) and paper.chosen(["ohm-3"], 1) and paper.chosen(["heat-3"], 1)


@pytest.mark.parametrize(("number", "has"), [("01", True), ("02", False)])
def test_a_pack_speaks_of_danger_items_where_it_has_some(number, has):
    assert any(q.danger for q in lessons()[number].QUESTIONS) == has
    assert ("talked through" in "".join(paper.pieces(PEOPLE[:1], [number]))) == has


def test_a_picture_of_colours_is_told_in_words(monkeypatch):
    """A list of names takes less paper than boxes that ink alone cannot fill."""
    question = next(q for q in ALL if q.id == "wave-5")
    drawing = question.picture(paper.numbers_of(question, PEOPLE[0])).drawing
    assert "<svg" in paper.asked(question, PEOPLE[0]).markup
    monkeypatch.setattr(paper, "IN_WORDS", {drawing})
    told = paper.asked(question, PEOPLE[0]).markup
    assert "<svg" not in told and '<p class="cw-text">' in told


def test_lessons_are_printed_once_each_in_their_order():
    assert [module.LESSON for module, _ in paper.chosen(["3", "02", "03"])] == ["02", "03"]
