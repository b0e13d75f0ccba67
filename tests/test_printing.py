"""From a class to one new file: who gets what, and what is refused before anything is written."""

import sys
from types import SimpleNamespace

import pytest

from helpers.__main__ import main
from helpers.classroom.class_file import write_class
from helpers.exercises.refusals import Unusable
from helpers.printing import print_for


@pytest.fixture(autouse=True)
def double(monkeypatch):
    """A sheet that names who gets it."""
    monkeypatch.setitem(sys.modules, "helpers.sheets.people_of", SimpleNamespace(pieces=people_of))


def people_of(people, lessons):
    return [f"{one.learner} {one.class_word} {one.supply} {'+'.join(lessons)}\n" for one in people]


@pytest.fixture
def roster(tmp_path):
    path = tmp_path / "roster.csv"
    path.write_text("learner,supply\nBENCH-01,\nbench-02,120V/60Hz\nbench 3,\n", encoding="utf-8")
    return path


def test_each_learner_of_the_roster_gets_a_part_on_their_own_supply(tmp_path, roster):
    out = tmp_path / "out.html"
    said = print_for("people_of", out, None, " WICK ", roster, lessons=["02"])
    assert out.read_text("utf-8") == "BENCH-01 wick 230 V 50 Hz 02\nBENCH-02 wick 120 V 60 Hz 02\n"
    assert said[0] == f"2 learners, on 230 V 50 Hz, 120 V 60 Hz: {out}"
    assert said[1].startswith("roster, row 4: “BENCH 3” is not a learner id")


def test_one_learner_may_be_picked_from_the_roster_or_named_without_one(tmp_path, roster):
    for name, given in (("a", roster), ("b", None)):
        print_for("people_of", tmp_path / name, None, "wick", given, "bench-02", "100 V 50 Hz")
    assert (tmp_path / "a").read_text("utf-8") == "BENCH-02 wick 120 V 60 Hz \n"
    assert (tmp_path / "b").read_text("utf-8") == "BENCH-02 wick 100 V 50 Hz \n"


def test_a_class_file_says_what_is_not_given_and_what_is_given_wins(tmp_path, monkeypatch, roster):
    places = {"roster": roster, "paper": tmp_path / "paper"}
    held = SimpleNamespace(
        word="wick", supply="100 V 50 Hz", lessons=("01", "02"), where=places.get
    )
    double = SimpleNamespace(read_class=lambda path: held)
    monkeypatch.setitem(sys.modules, "helpers.classroom.class_file", double)
    print_for("people_of", class_file="wick.toml")
    made = (tmp_path / "paper" / "people_of-01-02.html").read_text("utf-8")
    assert made == "BENCH-01 wick 100 V 50 Hz 01+02\nBENCH-02 wick 120 V 60 Hz 01+02\n"
    out = tmp_path / "out"
    print_for("people_of", out, "wick.toml", "wax", None, "BENCH-01", "230 V 50 Hz", ["08"])
    assert out.read_text("utf-8") == "BENCH-01 wax 230 V 50 Hz 08\n"


@pytest.mark.parametrize(
    ("given", "says"),
    [
        ({}, "Whose"),
        ({"class_word": None}, "Which class"),
        ({"learner": "BENCH-09", "out": None}, "Where to"),
        ({"roster": "roster.csv", "learner": "BENCH-09"}, "BENCH-09 is not on the roster"),
        ({"learner": "BENCH-09", "supply": "23 V"}, "The supply '23 V' was read. Choose one of"),
        ({"learner": "B"}, "The learner id 'B' was read"),
        ({"learner": "WORKSHOP"}, "belongs to the workshop copy"),
        ({"learner": "BENCH-09", "class_word": "a b"}, "The class word 'a b' was read"),
        ({"learner": "BENCH-09", "out": "roster.csv"}, "roster.csv is there already"),
        ({"learner": "BENCH-09", "out": "roster.csv/new"}, "roster.csv could not be made"),
    ],
)
def test_what_cannot_be_used_is_refused_and_nothing_is_written(
    tmp_path, monkeypatch, roster, given, says
):
    monkeypatch.chdir(tmp_path)
    before = roster.read_bytes()
    with pytest.raises(Unusable, match=says):
        print_for("people_of", **{"out": "new.html", "class_word": "wick"} | given)
    assert [path.name for path in tmp_path.iterdir()] == ["roster.csv"]
    assert roster.read_bytes() == before


@pytest.mark.parametrize("command", ["paper", "key"])
def test_the_commands_write_a_page_and_refuse_with_code_2(tmp_path, roster, command, capsys):
    words = [command, "--lessons", "1", "--again", "2", "--class-word", "wick"]
    out = tmp_path / "out.html"
    assert main([*words, "--roster", str(roster), "--out", str(out)]) == 0
    made = out.read_text("utf-8")
    assert made.count('<section class="pack') == 2 and "set <b>2</b>" in made or ", set 2<" in made
    assert str(out) in capsys.readouterr().out
    assert main([*words, "--roster", str(roster), "--out", str(out)]) == 2
    assert "is there already" in capsys.readouterr().err and out.read_text("utf-8") == made


@pytest.mark.parametrize(
    ("words", "says"),
    [(["--card"], "Prove the tester again"), (["--guide"], "Never a live bench")],
    ids=["card", "guide"],
)
def test_card_and_guide_need_no_class(tmp_path, capsys, words, says):
    out = tmp_path / "new" / "out.html"
    assert main(["start-sheet", *words]) == 2
    assert "Where to?" in capsys.readouterr().err
    assert main(["start-sheet", *words, "--out", str(out)]) == 0
    assert says in out.read_text("utf-8")
    assert main(["start-sheet", *words, "--out", str(out)]) == 2


def test_start_sheets_say_how_long_answers_are_kept_and_that_each_takes_a_page(tmp_path):
    made = write_class(tmp_path / "wick.toml", "wick", benches=2)
    said = print_for("start-sheet", class_file=made.path)
    assert said[0].startswith("2 learners, ") and said[1:] == ["One page each: print on one side."]
    (path,) = made.where("paper").iterdir()
    assert path.read_text("utf-8").count(f"until <b>{made.keep_until}</b>.") == 2


def test_what_is_left_out_of_what_is_asked_again_is_named(tmp_path, roster):
    wanted = ["ohm-recall-2", "ohm-recall-1"]
    given = {"class_word": "wick", "roster": roster, "lessons": wanted, "draw": 1}
    said = print_for("paper", tmp_path / "out.html", **given)
    assert any(one.startswith("Left out: ohm-recall-2, which is always the same.") for one in said)
    assert "Look back 1, fresh numbers 1" in (tmp_path / "out.html").read_text("utf-8")


def test_a_page_in_the_folder_of_a_class_is_named_for_what_is_in_it(tmp_path, monkeypatch, roster):
    places = {"roster": roster, "paper": tmp_path / "paper"}
    held = SimpleNamespace(word="wick", supply=None, lessons=("01",), where=places.get)
    double = SimpleNamespace(read_class=lambda path: held)
    monkeypatch.setitem(sys.modules, "helpers.classroom.class_file", double)
    for words in (["paper"], ["paper", "--again", "--learner", "bench-02", "--lessons", "01"]):
        assert main([*words, "--class", "wick.toml"]) == 0
    assert main(["key", "--class", "wick.toml", "--learner", "../../out"]) == 2
    names = sorted(path.name for path in tmp_path.rglob("*.html"))
    assert names == ["paper-01-set-1-BENCH-02.html", "paper-01.html"]
