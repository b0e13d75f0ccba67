"""What a class left is erased for good, that class alone, and never before somebody says yes."""

from pathlib import Path

import pytest
from invented_bank import BANK_FILES

from helpers.__main__ import main
from helpers.classroom.class_file import keep_decided, read_class, write_class
from helpers.classroom.forget_class import find_traces

PACK = '<h1>BENCH-01</h1><p class="head">Class word <b>{}</b> · supply</p>'
KEY = "<h2>BENCH-01 <small>class word {}, 230 V 50 Hz, draw 0</small></h2>"
SHEET = "<div><dt>Class word</dt><dd>{}</dd></div>"


@pytest.fixture
def made(room, monkeypatch):
    """A class with one of everything, beside a neighbour's class in the same folders."""
    monkeypatch.setattr("helpers.exercises.bank.lessons", lambda: BANK_FILES)
    made = write_class(room.folder / "wick.toml", "wick")
    room.out, room.paper.path = made.where("marked"), made.paper_log
    room.hand_in(room.line("1 A"))
    wax = room.line("1 A", learner="BENCH-02", class_word="wax")
    room.hand_in(wax, name="in/wax.jsonl")
    room.hand_in(room.line("1 A"), room.line("1 A", class_word="wax"), name="both.jsonl")
    room.type_back("1 A", "current-2")
    for word in ("wick", "wax", "wick"):
        room.run(word, feedback=made.where("marked") / f"feedback-{word}")
    (room.out / "mark-book_old.csv").write_text("learner\n")
    for name, text in (("pack", PACK), ("key", KEY), ("sheet", SHEET)):
        for word in ("wick", "wax"):
            page = made.where("paper") / f"{name}-{word}.html"
            page.write_text(text.format(word), encoding="utf-8")
    (made.where("paper") / "guide.html").write_text("<title>Guide</title>", encoding="utf-8")
    return made


def everything(made):
    return {path for path in made.path.parent.rglob("*") if path.is_file()}


def test_all_of_a_class_goes_and_nothing_of_another(made, capsys):
    before = everything(made)
    keep_decided(made, ["BENCH-01:current-2", "wick_BENCH-01_2026-01-13.jsonl"])
    assert main(["forget-class", str(made.path), "--yes"]) == 0
    assert read_class(made.path) == made, "what was decided names benches and files: it goes too"
    gone = sorted(path.name for path in before - everything(made))
    assert [name for name in gone if not name.startswith("mark-book")] == [
        "feedback-BENCH-01.html", "feedback.html", "key-wick.html", "pack-wick.html",
        "paper-wick.jsonl", "sheet-wick.html", "wick_BENCH-01_2026-01-13.jsonl",
    ]  # fmt: skip
    assert len([name for name in gone if name.startswith("mark-book")]) == 4, "two pairs"
    said = capsys.readouterr().out
    assert all(f"Erased: {path}" in said for path in before - everything(made))
    for words in (
        "both.jsonl: it holds answers of another class, too: wax",
        "mark-book_old.csv: it lies alone",
        "guide.html: nothing in it says",
        "wick.toml: it is not erased",
        "roster.csv: it is not erased",
    ):
        assert words in said
    assert main(["forget-class", str(made.path), "--yes"]) == 2
    assert "Nothing of class wick lies in the folders" in capsys.readouterr().err


def test_the_hidden_copies_that_jupyterlab_makes_of_opened_files_go_too(made, capsys):
    """One is made when a file is opened there, as seen in JupyterLab 4: .ipynb_checkpoints."""
    hand_in = next(made.where("hand_ins").glob("wick_*"))
    table, page = made.where("marked") / "mark-book.csv", made.where("paper") / "key-wick.html"
    copies = []
    for path in (table, page, made.paper_log, hand_in, made.path):
        folder = path.parent / ".ipynb_checkpoints"
        folder.mkdir(exist_ok=True)
        copies.append(folder / f"{path.stem}-checkpoint{path.suffix}")
        copies[-1].write_bytes(path.read_bytes())
    assert main(["forget-class", str(made.path), "--yes"]) == 0
    assert [path for path in copies if path.exists()] == [copies[-1]]
    assert f"{copies[-1]}: it is not erased" in capsys.readouterr().out


@pytest.mark.parametrize("typed", ["no", "", None])
def test_it_lists_first_and_asks(made, monkeypatch, capsys, typed):
    def answered(_):
        if typed is None:
            raise EOFError
        return typed

    monkeypatch.setattr("builtins.input", answered)
    before = everything(made)
    assert main(["forget-class", str(made.path)]) == 2
    assert everything(made) == before
    printed = capsys.readouterr()
    assert "To be erased for good, class wick:" in printed.out and "wax.jsonl" not in printed.out
    assert "Nothing was erased." in printed.err


def test_what_cannot_be_erased_stops_with_the_reason(made, monkeypatch, capsys):
    def held(*_, **__):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("pathlib.Path.unlink", held)
    assert main(["forget-class", str(made.path), "--yes"]) == 2
    assert "could not be erased (Permission denied)" in capsys.readouterr().err


def test_a_class_file_that_names_the_folder_above_takes_nothing_else_along(made):
    text = made.path.read_text(encoding="utf-8")
    made.path.write_text(text.replace('"hand-ins"', '"."').replace('"marked"', '"."'))
    own, _ = find_traces(read_class(made.path))
    assert made.path not in own and made.where("roster") not in own
    assert not [path for path in own if "wax" in path.name]


def test_folders_that_are_not_there_hold_nothing(room, monkeypatch):
    monkeypatch.setattr("helpers.exercises.bank.lessons", lambda: BANK_FILES)
    path = room.folder / "new" / "wick.toml"
    path.parent.mkdir()
    path.write_text('word = "wick"')
    assert find_traces(read_class(path))[0] == []


def test_all_that_is_listed_begins_at_the_folder_of_the_class_file(made, monkeypatch):
    monkeypatch.chdir(made.path.parent.parent)
    folder = Path(made.path.parent.name)
    own, left = find_traces(read_class(folder / made.path.name))
    assert len(own) > 9 and {path.parts[0] for path in own} == {folder.name}
    assert {path.parts[0] for path, _ in left} == {folder.name}
