"""One run from folder to files: the command line, its refusals, files written whole."""

import subprocess
import sys

import pytest
from invented_bank import BANK_FILES

from helpers.__main__ import main, with_bar
from helpers.classroom.files import Unusable, write_whole
from helpers.classroom.marking import mark_folder


def command(room, **changes):
    words = {"folder": room.hand_ins, "roster": room.roster, "class_word": "wick", "out": room.out}
    words = {name: str(value) for name, value in (words | changes).items()}
    given = ["mark", words["folder"], "--roster", words["roster"]]
    return main([*given, "--class-word", words["class_word"], "--out", words["out"]])


def test_the_command_writes_both_files_and_prints_where(room, capsys):
    assert command(room) == 0
    printed = capsys.readouterr()
    assert "0 hand-ins read, 2 learners" in printed.out
    for name in ("mark-book.csv", "mark-book.html"):
        assert str(room.out / name) in printed.out
        assert (room.out / name).is_file()
    assert printed.err == ""


@pytest.mark.parametrize(
    ("argument", "value", "says"),
    [
        pytest.param("folder", "nowhere", "nowhere is not there", id="folder"),
        pytest.param("roster", "nowhere.csv", "nowhere.csv could not be read", id="roster"),
        pytest.param("class_word", "two words", "class word 'two words' was read", id="word"),
        pytest.param("out", "roster.csv", "could not be made", id="out is a file"),
        pytest.param("out", "roster.csv/in", "could not be made", id="out below a file"),
    ],
)
def test_arguments_that_cannot_be_used(room, capsys, argument, value, says):
    if argument != "class_word":
        value = room.folder / value
    assert command(room, **{argument: value}) == 2
    printed = capsys.readouterr()
    assert says in printed.err
    assert printed.out == ""


@pytest.mark.parametrize(
    ("learners", "watched", "bar"),
    [(500, True, True), (500, False, False), (24, True, False)],
    ids=["many, watched", "many, into a file", "few, watched"],
)
def test_a_bar_is_shown_where_it_is_long_and_somebody_watches(monkeypatch, learners, watched, bar):
    monkeypatch.setattr(sys.stderr, "isatty", lambda: watched, raising=False)
    names = list(range(learners))
    shown = with_bar(names)
    assert (shown is not names) is bar
    assert list(shown) == names


def test_no_subcommand_is_answered_with_those_there_are(capsys):
    with pytest.raises(SystemExit) as stopped:
        main([])
    assert stopped.value.code == 2
    assert "SUBCOMMAND" in capsys.readouterr().err


def test_the_spelling_of_the_class_word_is_forgiven(room):
    room.hand_in(room.line(room.right("current-1")))
    mark_folder(room.hand_ins, room.roster, " Wick ", room.out, BANK_FILES)
    assert room.table()["BENCH-01"]["marks"] == "1"


def test_a_file_is_written_whole_or_not_at_all(room, monkeypatch):
    path = room.folder / "kept.csv"
    path.write_text("before", encoding="utf-8")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.replace", full)
    with pytest.raises(Unusable, match=r"kept\.csv could not be written \(No space left"):
        write_whole(path, ["after"])
    assert path.read_text(encoding="utf-8") == "before"
    assert [p.name for p in room.folder.glob("*.part")] == []


def test_marking_needs_no_pictures_no_widgets_and_no_notebooks():
    """As in a place where none of these is installed."""
    barred = ("matplotlib", "ipywidgets", "nbformat", "IPython", "tqdm", "schemdraw")
    code = (
        "import sys\n"
        f"for name in {barred}: sys.modules[name] = None\n"
        "import helpers.__main__, helpers.classroom.marking, helpers.classroom.demo_room\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True)
