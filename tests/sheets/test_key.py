"""The key says what is right with each learner's own numbers, and which slips are dangerous."""

import html
import re
from importlib import import_module

import pytest
from questions import ALL, MARKED, QUANTITIES, of_each

from helpers import quantities
from helpers.exercises.bank import bank, lesson_of, lessons
from helpers.exercises.kinds import Amount
from helpers.exercises.mistakes import explained
from helpers.exercises.settings import Settings
from helpers.exercises.wording import CAUTION, STAMP
from helpers.sheets import key, paper

PEOPLE = [Settings("BENCH-07", "wick", "230 V 50 Hz"), Settings("A-2", "wick", "100 V 60 Hz")]
PRINTED = 5e-3  # the key writes three digits


def plainly(text):
    """Undo the escaping of a text of the key."""
    return html.unescape(str(text))


@of_each([q for q in QUANTITIES if q.role != "predict"], "second way")
@pytest.mark.parametrize("who", PEOPLE, ids=lambda who: who.supply)
def test_the_right_number_is_that_of_a_sum_by_hand(question, who):
    by_hand = import_module(f"second_ways.lesson_{lesson_of(question.id)}").RIGHT[question.id]
    wanted = by_hand(paper.numbers_of(question, who))
    row = key.row(question, who)
    read = quantities.read(plainly(row.right), question.kind.of, question.kind.unit)
    assert read.value == pytest.approx(wanted, rel=PRINTED)
    low, high = re.fullmatch("right from (.*) to (.*)", plainly(row.accepted)).groups()
    # A digit more makes plain that the point is no mark of thousands.
    longer = [re.sub(r"(\.\d{3})(?!\d)", r"\g<1>0", end) for end in (low, high)]
    ends = [quantities.read(e, question.kind.of, question.kind.unit).value for e in longer]
    assert ends[0] * (1 - PRINTED) <= wanted <= ends[1] * (1 + PRINTED)


@of_each(MARKED)
def test_what_is_right_is_marked_right_and_each_slip_wrong_dangers_first(question):
    who = PEOPLE[0]
    n, row = paper.numbers_of(question, who, 1), key.row(question, who, 1)
    kind = question.kind
    typed = plainly(row.right).partition("; for ")[0]  # of a design, whose brief is named behind it
    typed = typed.partition(") ")[0] if ") " in row.right else typed
    assert kind.verdict_on(kind.read(typed, n), n).right
    right = kind.read(kind.model(n), n)
    usual = [(a.understood, v) for a, v in explained(question, n, key.EVERY)
             if type(kind) is not Amount or not a.value
             or 0.999e-3 < abs(a.value / right.value) < 1.001e3][:key.MOST]  # fmt: skip
    assert not any(verdict.right for _, verdict in usual)
    told = [(danger, typed) for danger, answers, _ in row.slips
            for typed in plainly(answers).split(" or ")]  # fmt: skip
    assert sorted(told) == sorted((bool(v.danger), typed) for typed, v in usual), "none is lost"
    assert [danger for danger, _ in told] == sorted((d for d, _ in told), reverse=True)
    assert all(row.slips)


@pytest.mark.parametrize("question", [q for q in ALL if q.role == "predict"], ids=lambda q: q.id)
def test_a_prediction_is_kept_and_not_marked(question):
    row = key.row(question, PEOPLE[0])
    assert (row.right, row.accepted, row.slips) == ("Kept, not marked", "", [])
    assert row.working[:1] == row.working[:1].upper() != ""


@pytest.mark.parametrize("number", lessons())
def test_the_page_holds_every_question_of_every_learner_and_the_cautions(number):
    made = "".join(key.pieces(PEOPLE, [number]))
    parts = made.split('<section class="pack"')
    assert len(parts) == 3
    for who, part in zip(PEOPLE, parts[1:], strict=True):
        assert f"{who.learner} <small>class word wick, {who.supply}, set 0" in part
        for question in lessons()[number].QUESTIONS:
            row = key.row(question, who)
            item = "danger item, " if question.danger else ""
            assert f"{question.id}\n<small>{item}edition {question.edition}</small>" in part
            assert f"<b>{row.right}</b>" in part and str(row.working) in part
    assert CAUTION in made and STAMP in made and "never lies on a bench" in made
    assert "\\xa0" not in made, "a blank that does not break is spelt out"


def test_a_fresh_draw_has_a_key_of_its_own():
    made = "".join(key.pieces(PEOPLE[:1], ["01"], 2))
    wanted = [q for q in lessons()["01"].QUESTIONS if q.danger]
    assert made.count("danger item, edition") == len(wanted) and "set 2" in made
    assert all(f"<b>{key.row(q, PEOPLE[0], 2).right}</b>" in made for q in wanted)


def test_what_was_drawn_stands_by_its_units_without_the_names_of_the_bank():
    names = ("ohm-2", "heat-6", "safe-8", "start-2", "ohm-11")
    numbers = [plainly(key.row(bank()[n], PEOPLE[0]).numbers).replace("\xa0", " ") for n in names]
    assert numbers[0] == "Given: 24 V, 6.8 kΩ." and numbers[1].startswith("Given: before 12")
    assert numbers[2] == numbers[4] == "", "neither the name of a case nor a number without unit"
    assert numbers[3].startswith("Given: “The ") and numbers[3].endswith("”.")
    assert not any(re.search(r"\b(amps|volts|ohms|case|_)\b", key.row(question, PEOPLE[0]).numbers)
                   for question in QUANTITIES)  # fmt: skip


def test_a_danger_item_and_a_dangerous_slip_have_signs_of_their_own():
    made = "".join(key.pieces(PEOPLE[:1], ["01", "02"]))
    dangers = [q.id for q in lessons()["01"].QUESTIONS if q.danger]
    assert all(f'<th scope="row">▲ {name}' in made for name in dangers)
    assert made.count("▲") == 1 + len(dangers), "one of them explains it"
    assert '<th scope="row">ohm-3' in made and "<b>⚠ " in made


def test_no_slip_of_a_key_is_beyond_a_thousand_times():
    """As of a dropper without its LED: 620 µΩ is nothing that anybody writes down."""
    typed = " ".join(typed for _, typed, _ in key.row(bank()["ohm-3"], PEOPLE[0]).slips)
    assert "µΩ" not in typed and typed


def test_an_area_is_not_written_as_a_length():
    numbers = plainly(key.row(bank()["heat-12"], PEOPLE[0]).numbers)
    assert "square metres 0.00" in numbers and "mm" not in numbers
