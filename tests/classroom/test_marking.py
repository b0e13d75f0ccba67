"""One run from folder to files: the command line, its refusals, files written whole."""

import subprocess
import sys

import pytest
from invented_bank import BANK_FILES

from helpers.__main__ import main
from helpers.classroom.learner_rows import MOST_PROBLEMS as MOST_OF_ONE
from helpers.classroom.marking import mark_folder
from helpers.classroom.problems import ASK, FINE, LOST
from helpers.classroom.wanted import Wanted
from helpers.commands.room import with_bar
from helpers.exercises.refusals import Unusable, write_text
from helpers.exercises.wording import CAUTION


def command(room, *more, **changes):
    words = {"folder": room.hand_ins, "roster": room.roster, "class_word": "wick", "out": room.out}
    words = {name: str(value) for name, value in (words | changes).items()}
    given = ["mark", words["folder"], "--roster", words["roster"]]
    return main([*given, "--class-word", words["class_word"], "--out", words["out"], *more])


@pytest.fixture
def room(room, monkeypatch):
    """A room with one good hand-in, marked by the invented bank."""
    monkeypatch.setattr("helpers.exercises.bank.lessons", lambda: BANK_FILES)
    room.neighbour()
    return room


def test_the_command_writes_both_files_and_prints_where(room, capsys):
    assert command(room) == 0
    printed = capsys.readouterr()
    assert "1 hand-in read. 2 learners: 1 nothing handed in, 1 handed in." in printed.out
    assert "Nothing else to look at." in printed.out
    assert printed.out.endswith(f"Caution. {CAUTION}\n")
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
    assert not room.out.exists()


def test_a_class_word_that_nobody_used_is_answered_with_those_there_are(room, capsys):
    for learner in ("BENCH-01", "BENCH-03"):
        room.hand_in(room.line("1 mA", learner=learner, class_word="wax"), name=f"{learner}.jsonl")
    assert command(room) == 0
    before = {path.name: path.read_bytes() for path in room.out.iterdir()}
    assert command(room, class_word="talow") == 2
    printed = capsys.readouterr()
    assert (
        "is under the class word talow. Found: wax (2 learners), wick (1 learner). " in printed.err
    )
    assert "Mark with --class-word wax?" in printed.err
    assert {path.name: path.read_bytes() for path in room.out.iterdir()} == before


def test_a_folder_without_a_hand_in_says_so_and_writes_nothing(room, capsys):
    for path in room.hand_ins.iterdir():
        path.unlink()
    assert command(room) == 2
    assert "There is no hand-in in " in capsys.readouterr().err
    (room.hand_ins / "lesson.ipynb").write_text("{}")
    assert command(room) == 2
    printed = capsys.readouterr().err
    assert "No file in " in printed and "lesson.ipynb: it is a notebook" in printed
    assert not room.out.exists()


def test_answers_that_no_bank_knows_stop_the_run_with_the_reason(room, capsys):
    for path in room.hand_ins.iterdir():
        path.unlink()
    room.hand_in(room.line("1 mA", "ohm-99"))
    assert command(room) == 2
    printed = capsys.readouterr().err
    assert "No answer in " in printed
    assert "to a question that this bank does not hold: “ohm-99”" in printed


def test_the_mark_book_before_is_kept_and_whose_marks_fell_is_said(room, capsys):
    room.hand_in(room.line(room.right("current-1")), name="one.jsonl")
    assert command(room) == 0
    before = (room.out / "mark-book.csv").read_bytes()
    (room.hand_ins / "one.jsonl").unlink()
    for _ in range(2):  # the second run, in the same second perhaps, must not lose the first
        assert command(room) == 0
        room.hand_in(room.line("7 A"), name="two.jsonl")
    kept = [path.read_bytes() for path in room.out.glob("mark-book_*.csv")]
    assert len(kept) == 2
    assert before in kept
    assert len(list(room.out.glob("mark-book_*.html"))) == 2
    printed = capsys.readouterr().out
    assert printed.count("lower marks than in the mark book before: BENCH-01 (was 1, is 0)") == 1
    assert "Earlier: " in printed


def test_a_book_is_kept_only_where_the_table_says_something_else(room, capsys):
    for _ in range(2):
        assert command(room) == 0
    assert {path.name for path in room.out.iterdir()} == {"mark-book.csv", "mark-book.html"}
    assert "Earlier: " not in capsys.readouterr().out
    assert command(room, "--decimal-comma") == 0
    assert len(list(room.out.iterdir())) == 4


def test_marks_that_went_to_their_owner_are_no_fall(room):
    """Under BENCH-1 they stood by themselves until the roster said whose they are."""
    room.hand_in(room.line(room.right("current-1", "BENCH-1"), learner="BENCH-1"), name="1.jsonl")
    room.run()
    room.write_roster("learner,also\nBENCH-01,BENCH-1\nBENCH-02,\n")
    assert room.run().lower == []
    room.write_roster("learner\nBENCH-02\n")
    assert "BENCH-01 (was 1, is 0)" in room.run().lower[0].found


def test_a_lesson_that_has_left_the_book_with_a_lost_hand_in_is_a_fall(room):
    """Only BENCH-01 had begun lesson 01; where lessons are named, others are not compared."""
    room.neighbour("current-3")
    path = room.hand_in(room.line(room.right("current-1")), name="one.jsonl")
    room.run()
    path.unlink()
    assert room.run(only=["02"]).lower == []
    (room.out / "mark-book.csv").unlink()
    path = room.hand_in(room.line(room.right("current-1")), name="one.jsonl")
    room.run()
    path.unlink()
    assert "BENCH-01 (was 1, is 0)" in room.run().lower[0].found


def test_who_fell_comes_first_on_the_page_and_many_are_not_all_named(room):
    ids = [f"LOW-{number:02d}" for number in range(12)]
    rows = "".join(f"{name},2\r\n" for name in ids)
    room.out.mkdir()
    (room.out / "mark-book.csv").write_text("learner,current-1 (of 1)\r\n" + rows)
    problem = room.run().book.problems[0]
    assert problem.place == "mark-book.csv"
    assert "LOW-09 (was 2, is 0); and 2 more" in problem.found
    assert "The one before is kept: mark-book_" in problem.advice


def test_what_lies_there_and_is_no_table_is_kept_all_the_same(room):
    (room.out / "mark-book.csv").mkdir(parents=True)
    assert room.run().lower == []
    assert [path.is_dir() for path in room.out.glob("mark-book_*")] == [True]


def test_a_mark_book_that_cannot_be_kept_aside_is_not_written_over(room, monkeypatch, capsys):
    assert command(room) == 0
    before = {path.name: path.read_bytes() for path in room.out.iterdir()}
    room.hand_in(room.line("1 A"))

    def held(*_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("os.rename", held)
    assert command(room) == 2
    assert "could not be written (Permission denied)" in capsys.readouterr().err
    assert {path.name: path.read_bytes() for path in room.out.iterdir()} == before


def test_what_lost_answers_comes_first_and_what_needs_nothing_last(room):
    lines = [room.line(room.right("current-1")), room.line("1 mA", "current-2", second=1)]
    room.hand_in(*lines, name="a.jsonl")
    room.hand_in(*lines, lines[0], name="b.jsonl")
    room.neighbour(learner="BENCH-77")
    (room.hand_ins / "z.ipynb").write_text("{}")
    room.write_roster("learner\nBENCH-01\nBENCH-01\nBENCH-02\nx\n")
    ranks = [(problem.rank, problem.place) for problem in room.mark().problems]
    assert ranks == [
        (LOST, "roster, row 5"),
        (LOST, "z.ipynb"),
        (ASK, "roster, row 3"),
        (ASK, "BENCH-77"),
        (FINE, "BENCH-01"),
    ]


def test_what_is_said_is_capped_for_each_learner_and_in_all(room, monkeypatch):
    """Unknown questions once made a page of 27 MB."""
    many = [room.line("1 mA", f"no-{n}", second=n % 60) | {"line": str(n)} for n in range(1000)]
    room.hand_in(*many, room.line(room.right("current-1"), second=59))
    problems = room.mark().problems
    assert len(problems) == MOST_OF_ONE + 1
    assert problems[-1].found == f"{1000 - MOST_OF_ONE} more things like these"
    for n in range(30):
        (room.hand_ins / f"{n}.zip").write_text("")
    monkeypatch.setattr("helpers.classroom.marking.MOST_PROBLEMS", 25)
    problems = room.mark().problems
    assert len(problems) == 26
    assert problems[-1].place == "the folder"
    assert problems[-1].found == f"{30 + MOST_OF_ONE + 1 - 25} more things like these"
    assert len(room.page()) < 100_000


def test_what_a_command_accepts(room, capsys):
    lines = [room.line(room.right(f"current-{n}"), f"current-{n}", second=n) for n in (1, 2, 3)]
    room.hand_in(*lines[:2], name="a.jsonl")
    room.hand_in(lines[0], lines[2], name="b.jsonl")
    assert command(room) == 0
    assert room.table()["BENCH-01"]["marks"] == "1"
    assert command(room, "--accept", "a.jsonl", "b.jsonl") == 0
    assert room.table()["BENCH-01"]["marks"] == "3"
    assert command(room, "--accept", "c.jsonl") == 2
    assert "There is no hand-in c.jsonl to accept" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("name", "says"),
    [("mark", "mark-book.html, one page"), ("build", "model answers"), ("demo-room", "README")],
)
def test_help_says_what_a_command_leaves_behind(capsys, name, says):
    with pytest.raises(SystemExit) as stopped:
        main([name, "--help"])
    assert stopped.value.code == 0
    assert says in " ".join(capsys.readouterr().out.split())


def test_a_lesson_that_is_not_there_is_not_built(capsys):
    assert main(["build", "nosuch.ipynb"]) == 2
    printed = capsys.readouterr()
    assert (
        "There is no lesson nosuch.ipynb in lessons/. It holds 00-start-here.ipynb" in printed.err
    )
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
    mark_folder(Wanted(room.hand_ins, room.roster, " Wick ", room.out), bank_files=BANK_FILES)
    assert room.table()["BENCH-01"]["marks"] == "1"


def test_a_file_is_written_whole_or_not_at_all(room, monkeypatch):
    path = room.folder / "kept.csv"
    path.write_text("before", encoding="utf-8")

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.replace", full)
    with pytest.raises(Unusable, match=r"kept\.csv could not be written \(No space left"):
        write_text(path, ["after"])
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


def test_jinja_is_imported_by_the_first_page_and_not_before():
    code = (
        "import sys\n"
        "import helpers.classroom.marking\n"
        "from helpers.classroom.mark_book import MarkBook\n"
        "from helpers.classroom.page import page\n"
        "assert 'jinja2' not in sys.modules\n"
        "list(page(MarkBook('wick', ())))\n"
        "assert 'jinja2' in sys.modules\n"
    )
    subprocess.run([sys.executable, "-c", code], check=True)
