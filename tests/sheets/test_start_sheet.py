"""Start sheets, the prove-dead card and the leader's guide say what keeps people safe."""

import re
from dataclasses import replace
from operator import sub

import pytest

from helpers.exercises.bank import bank, lessons
from helpers.exercises.settings import Settings
from helpers.exercises.wording import CAUTION, STAMP
from helpers.physics.mains import SUPPLIES
from helpers.sheets import start_sheet

PEOPLE = [Settings("BENCH-07", "wick", name) for name in SUPPLIES]
MADE = {
    "start sheet": lambda: start_sheet.pieces(PEOPLE[:1], ["01"]),
    "card": start_sheet.card,
    "guide": start_sheet.guide,
}


def text_of(pieces):
    """Return what can be read on a page, blanks squeezed."""
    body = "".join(pieces).partition("<body>")[2]
    return " ".join(re.sub(r"<[^>]+>", " ", body).split())


def test_each_bench_gets_its_code_word_supply_and_lessons():
    made = "".join(start_sheet.pieces(PEOPLE, ["1", "02"]))
    sheets = made.split('<section class="sheet"')[1:]
    assert len(sheets) == len(SUPPLIES)
    for who, sheet in zip(PEOPLE, sheets, strict=True):
        for name, value in (("Your bench code", who.learner), ("Class word", "wick"),
                            ("Supply", who.supply)):  # fmt: skip
            assert f"<dt>{name}</dt><dd>{value}</dd>" in sheet
        assert f"<b>01 {lessons()['01'].TITLE}</b>" in sheet and "<b>02 " in sheet


def test_what_is_not_done_in_this_room_stands_before_how_to_begin():
    text = text_of(MADE["start sheet"]())
    rules = ("Open nothing", "Connect nothing to the mains", "Measure nothing", "low voltage only")
    places = [text.index(rule) for rule in (*rules, "Hands off", "never water", "Where to go")]
    assert places == sorted(places)


def test_what_it_says_of_typing_is_how_a_number_is_read():
    """Second way: the sheet's own examples through the reader of answers; 1,000 is asked back."""
    made = "".join(MADE["start sheet"]())
    typed = [text.strip() for text in re.findall("<code>([^<]*)</code>", made)]
    question = bank()["ohm-3"]
    numbers = question.numbers_for("A-2", "wick", SUPPLIES["230 V 50 Hz"], 0)
    kind = replace(question.kind, unit="Ω")
    same, asked_back = typed[:4], typed[4]
    read = {kind.read(text, numbers).value for text in same}
    assert read == {8200.0} and asked_back == "1,000"
    with pytest.raises(ValueError, match="can be read two ways"):
        kind.read(asked_back, numbers)


@pytest.mark.parametrize("name", MADE)
def test_each_carries_the_stamp_and_who_may_do_it(name):
    text = text_of(MADE[name]())
    assert STAMP in text
    assert CAUTION in text or "electrically skilled or instructed person" in text
    assert not re.search(r"approved|allows|permits|qualif", text)


def test_the_card_has_the_steps_in_their_order():
    """EN 50110-1, with the lock at once; the tester is proved before and after."""
    text = text_of(start_sheet.card())
    proved = ("Prove the tester on", "Prove dead with", "Prove the tester again")
    steps = ("Isolate", "Lock off", *proved, "Cover")
    places = [text.index(step, 60) for step in steps]
    assert places == sorted(places) and text.count("Isolate.") == 4


def test_the_guide_names_only_lessons_and_commands_that_are_there():
    from helpers.__main__ import command_line

    made = "".join(start_sheet.guide())
    text = text_of([made])
    plan = text.partition("Two days:")[2].partition("A danger item is wrong")[0]
    named = set(re.findall(r"\b(\d\d)(?=,| \.|;|$| (?:and|are|two))", plan))
    assert named <= set(lessons()) and {"01", "04", "05", "08", "09", "10"} <= named
    first = {words.split()[0] for words in re.findall("<code>([^<]+)</code>", made)}
    commands = set(command_line()[1])
    assert {"start-sheet", "paper", "key"} <= first & commands


def test_the_guide_names_what_to_print_as_the_form_does():
    """Second way: the options and buttons of the form itself."""
    from helpers.widgets import instructor

    made = "".join(start_sheet.guide()).partition("What to print")[2].partition("</table>")[0]
    named = set(re.findall('scope="row">([^<]+)<', made))
    assert named - {"Prove-dead card"} <= set(instructor.PAPERS) and "Packs of questions" in named


def test_a_start_sheet_says_how_long_answers_are_kept_or_has_room_for_it():
    room = "with no name, until <i></i>."
    assert room in "".join(start_sheet.pieces(PEOPLE[:1]))
    made = "".join(start_sheet.pieces(PEOPLE[:1], keep_until="2027-02-24"))
    assert "with no name, until <b>2027-02-24</b>." in made and room not in made


def minutes(clock):
    hours, rest = clock.split(":")
    return 60 * int(hours) + int(rest)


@pytest.mark.parametrize("day", [1, 2])
def test_each_sitting_of_a_day_has_the_time_that_its_lesson_states(day, root):
    """Second way: the longest times in the lessons' heads. An opening takes fifteen minutes."""
    rows = re.findall(
        r'row">(\d+:\d\d)</th><td>(.*?)</td><td>(.*?)</td>', "".join(start_sheet.guide())
    )
    times = [minutes(row[0]) for row in rows]
    assert times == sorted(times) and rows[-1][day].startswith("Hand in")
    met = set()
    for row, taken in zip(rows, map(sub, times[1:], times), strict=False):
        for number in re.findall(r"(?:^|lesson )(\d\d)\b", row[day]):
            (path,) = (root / "lessons").glob(f"{number}-*.ipynb")
            (stated,) = re.findall(r"\*\*Time:\*\*([^.\n]*)", path.read_text("utf-8"))
            most = max(map(int, re.match(r"\D*(\d+)(?: to (\d+))?", stated).groups("0")))
            assert taken >= most + 15 * (number == "00"), f"{row} of {stated}"
            met |= {number}
        assert "Lunch" not in row[day] or taken == 60
    assert met == ({"00", "01", "02", "03", "04"}, {"04", "08", "09", "10"})[day - 1]


def test_an_evening_adds_up_to_two_hours():
    spans = re.findall(r'row">(\d+)–(\d+)</th>', "".join(start_sheet.guide()))
    assert [span[0] for span in spans] == ["0", *[span[1] for span in spans[:-1]]]
    assert spans[-1][1] == "120"


def test_a_lesson_that_is_not_there_is_refused():
    with pytest.raises(ValueError, match="Lesson '77' was named; the bank holds 00"):
        start_sheet.pieces(PEOPLE, ["77"])
