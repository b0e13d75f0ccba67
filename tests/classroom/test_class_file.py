"""The file of a class: written once, read with reasons, outdone by the command line."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from invented_bank import BANK_FILES

from helpers.__main__ import main
from helpers.classroom.class_file import (
    KEPT_DAYS,
    ClassFile,
    for_marking,
    keep_decided,
    read_class,
    write_class,
)
from helpers.exercises.refusals import Unusable
from helpers.exercises.wording import COMMAND


@pytest.fixture
def path(tmp_path, monkeypatch):
    monkeypatch.setattr("helpers.exercises.bank.lessons", lambda: BANK_FILES)
    return tmp_path / "wick.toml"


def test_second_way_what_is_written_is_read_again(path):
    made = write_class(path, " Wick ", "120v 60hz", ["1", "02"], "bänke, “alle”.csv", benches=3)
    assert read_class(path) == made
    assert (made.word, made.supply, made.lessons) == ("wick", "120 V 60 Hz", ("01", "02"))
    assert made.where("roster").read_text(encoding="utf-8") == (
        "learner\nBENCH-01\nBENCH-02\nBENCH-03\n"
    )
    assert made.where("hand_ins").is_dir()
    assert made.keep_until == date.today() + timedelta(days=KEPT_DAYS)
    lines = path.read_text(encoding="utf-8").splitlines()
    bare = [line for line in lines if line and "#" not in line]
    assert bare == ["accept = []"], "each line has its comment, and that one has it above"


def test_what_is_decided_joins_what_was_and_leaves_the_rest_of_the_file(path):
    made, before = write_class(path, "wick", benches=2), path.read_text("utf-8")
    keep_decided(made, ["BENCH-01:current-1"])
    keep_decided(read_class(path), ["home [1].jsonl", 'a "b".jsonl', "BENCH-01:current-1"])
    keep_decided(read_class(path), ["home.jsonl"])
    names = ("BENCH-01:current-1", "home [1].jsonl", 'a "b".jsonl', "home.jsonl")
    assert read_class(path).accept == names
    after = path.read_text("utf-8")
    assert after.partition("accept = ")[0] == before.partition("accept = ")[0]


@pytest.mark.parametrize("line", ["", 'accept = [  # decided: ["a"]\n]\n', "accept=[#]\n]\n"])
def test_a_file_without_a_plain_line_to_write_into_is_left_and_says_what_to_write(path, line):
    path.write_text(f'word = "wick"\n{line}', encoding="utf-8")
    before = path.read_bytes()
    with pytest.raises(Unusable, match=r'Write into it: accept = \["BENCH-01:current-1"\]'):
        keep_decided(read_class(path), ["BENCH-01:current-1"])
    assert path.read_bytes() == before


def test_nothing_is_written_over(path):
    write_class(path, "wick", benches=2)
    before = path.read_bytes()
    with pytest.raises(Unusable, match=r"wick\.toml is there already, and was left as it is"):
        write_class(path, "wax")
    assert path.read_bytes() == before
    path.unlink()
    assert write_class(path, "wax", benches=5).where("roster").read_text().count("BENCH") == 2


@pytest.mark.parametrize("folder", ["", "wick"])
def test_a_folder_holds_one_class_alone_and_what_to_write_instead_is_said(path, folder):
    """A second one would count the hand-ins of the first, and take its roster for its own."""
    home = path.parent
    write_class(home / folder / "wick.toml", "wick", benches=2)
    (home / folder / "brief.toml").write_text("[mains]\n")
    with pytest.raises(Unusable) as refused:
        write_class(home / folder / "wax.toml", "wax")
    own = home / "wax" / "wax.toml"
    assert str(refused.value).endswith(f"Give this one a folder of its own: {own}")
    assert not (home / folder / "wax.toml").exists()
    assert write_class(own, "wax").word == "wax"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("word = wick", r"wick\.toml was read, and it is not written as TOML \(Invalid value"),
        (b"word = \"\xff\"", "not written as TOML .*utf-8"),
        ("", 'it has no class word. Add a line such as word = "wick"'),
        ('word = "two words"', "class word 'two words' was read. Use 2 to 20"),
        ('word = "wick"\nsupply = "230"', "supply '230' was read. Choose one of: "),
        ('word = "wick"\nlessons = ["17"]', "There is no lesson 17; the bank holds 01, 02"),
        ('word = "wick"\nlessons = "01"', 'Write a list of words in quotes, such as lessons'),
        ('word = "wick"\nlesson = ["01"]', "“lesson” is no name there. Use: word, supply"),
        ('word = "wick"\nroster = 7', 'roster = 7. Write it in quotes, such as roster = "roster'),
        ("word = 7", 'word = 7. Write it in quotes, such as word = "wick"'),
        ('word = "wick"\nkeep_until = "soon"', "Write a day without quotes"),
        ('word = "wick"\nkeep_until = 2027-01-01T10:00:00', "Write a day without quotes"),
    ],
    ids=lambda value: str(value)[:24],
)  # fmt: skip
def test_what_cannot_be_used_says_what_was_read_and_what_to_do(path, text, says):
    path.write_bytes(text if isinstance(text, bytes) else text.encode())
    with pytest.raises(Unusable, match=says):
        read_class(path)


def test_a_file_that_is_not_there_is_answered_with_how_to_make_one(path, capsys):
    assert main(["mark", "--class", str(path)]) == 2
    said = capsys.readouterr().err
    assert "could not be read (No such file" in said
    assert "python -m helpers class FILE.toml --word WORD" in said


def test_as_notepad_saves_it(path):
    path.write_bytes('word = "wick"\r\n'.encode("utf-16"))
    assert read_class(path) == ClassFile(path, "wick")


def test_the_command_line_wins_over_the_file(path):
    made = write_class(path, "wick", lessons=["01"])
    assert for_marking(path) == made.for_marking()
    given = for_marking(path, class_word="wax", only=["02"], out=None)
    assert given == replace(made.for_marking(), class_word="wax", only=("02",))
    with pytest.raises(Unusable, match="these are missing: --roster, --out. Give them, or"):
        for_marking(None, folder="a", class_word="wick")


def test_when_its_time_is_over_that_is_said(path):
    made = write_class(path, "wick")
    assert made.over(made.keep_until) == ""
    said = made.over(made.keep_until + timedelta(days=1))
    assert f"kept until {made.keep_until}" in said and f"forget-class {path}" in said
    assert ClassFile(path, "wick").over() == ""


def test_the_command_makes_a_class_that_can_be_marked(path, capsys, room):
    room.roster.unlink()
    assert main(["class", str(path), "--word", "wick", "--lessons", "01"]) == 0
    said = capsys.readouterr().out
    assert "Its roster is still to be written" in said and f"mark --class {path}" in said
    room.write_roster("learner\nBENCH-02\n")
    room.neighbour("current-1", "current-3")
    assert main(["mark", "--class", str(path)]) == 0
    assert "1 hand-in read. 1 learner: 1 handed in." in capsys.readouterr().out
    assert (path.parent / "marked" / "mark-book.html").is_file()
    text = path.read_text(encoding="utf-8")
    until = read_class(path).keep_until
    path.write_text(text.replace(str(until), "2026-01-31"), encoding="utf-8")
    assert main(["mark", "--class", str(path)]) == 0
    said = capsys.readouterr().out
    assert f"was to be kept until 2026-01-31. If its marks are settled: {COMMAND} " in said
    assert said.endswith("wick.toml\n")


@pytest.mark.parametrize("benches", [-1, 1000])
def test_limit_a_class_has_so_many_benches_and_no_more(path, benches):
    with pytest.raises(Unusable, match="a roster is made of 1 to 999"):
        write_class(path, "wick", benches=benches)
    assert not path.exists()
