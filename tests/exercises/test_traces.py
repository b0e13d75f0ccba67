"""What one learner leaves is found, all of it and nothing of anybody else's."""

import json

import pytest

from helpers import __main__ as command
from helpers.commands import learner
from helpers.exercises.settings import SettingsError
from helpers.exercises.store import DiskStore
from helpers.exercises.traces import find_traces

OWN = (
    "answers/answers-BENCH-07.jsonl",
    "answers/answers-BENCH-07-as-found-0a1b2c.txt",
    "answers/build-BENCH-07.toml",
    "answers/settings.json",
    "answers/sheet-BENCH-07.html",
    "hand-in/wick_BENCH-07_2026-01-13_1de24a.jsonl",
    "hand-in/home_BENCH-07_2026-01-14_1de24a.jsonl",
)
OTHERS = (
    "answers/answers-BENCH-08.jsonl",
    "answers/answers-BENCH-08-as-found-0a1b2c.txt",
    "answers/build-BENCH-08.toml",
    "answers/sheet-BENCH-0.html",
    "answers/answers-BENCH-0.jsonl",
    "answers/answers-2026-01-13.jsonl",
    "hand-in/wick_BENCH-08_2026-01-13_77aa01.jsonl",
    "01-plain.ipynb",
    "02-run.ipynb",
)
CHECKPOINTS = ".ipynb_checkpoints"


def notebook(outputs):
    cell = {"cell_type": "code", "id": "a", "metadata": {}, "source": ["1"], "outputs": outputs}
    return json.dumps({"cells": [{**cell, "execution_count": None}], "metadata": {}})


@pytest.fixture
def lessons(tmp_path, monkeypatch):
    """A folder of lessons that two learners used, one after the other."""
    lessons = tmp_path / "lessons"
    for name in (*OWN, *OTHERS, f"{CHECKPOINTS}/02-run-checkpoint.ipynb"):
        (lessons / name).parent.mkdir(parents=True, exist_ok=True)
        (lessons / name).write_text("{}", encoding="utf-8")
    (lessons / "answers/settings.json").write_text('{"learner": "BENCH-07"}', encoding="utf-8")
    (lessons / "01-plain.ipynb").write_text(notebook([]), encoding="utf-8")
    (lessons / "02-run.ipynb").write_text(notebook([{"text": "BENCH-07"}]), encoding="utf-8")
    monkeypatch.setattr(learner, "ROOT", tmp_path)
    monkeypatch.setenv("CANDLE_WORKSHOP_ANSWERS", str(lessons / "answers"))
    return lessons


def left(lessons):
    return {path.relative_to(lessons).as_posix() for path in lessons.rglob("*") if path.is_file()}


def test_all_of_one_learner_is_found_and_nothing_else(lessons):
    found = find_traces(DiskStore(lessons / "answers"), lessons, " bench-07 ")
    names = {path.relative_to(lessons).as_posix() for path in found}
    assert names == {*OWN, CHECKPOINTS}


def test_an_id_that_reads_like_a_date_does_not_take_the_hand_ins_of_that_day(lessons):
    found = find_traces(DiskStore(lessons / "answers"), lessons, "2026-01-13")
    assert [path.name for path in found] == ["answers-2026-01-13.jsonl", CHECKPOINTS]


def test_nobody_of_that_id_is_answered_with_who_is_there(lessons):
    with pytest.raises(SettingsError, match=r'"BENCH-99" was read.*BENCH-0, BENCH-07, BENCH-08\.$'):
        find_traces(DiskStore(lessons / "answers"), lessons, "BENCH-99")


@pytest.mark.parametrize("learner", ["*", "../x", "", "BENCH-07*"])
def test_what_is_no_learner_id_finds_nothing(lessons, learner):
    with pytest.raises(SettingsError, match="was read. Use 2 to 12 of"):
        find_traces(DiskStore(lessons / "answers"), lessons, learner)


def test_the_command_says_what_it_erases_and_leaves_the_rest(lessons, capsys):
    before = left(lessons)
    assert command.main(["forget", "BENCH-07", "--yes"]) == 0
    assert left(lessons) == set(OTHERS)
    printed = capsys.readouterr().out
    erased = [line.removeprefix("Erased: ") for line in printed.splitlines() if "Erased:" in line]
    assert set(erased) == {str(lessons / name) for name in (*OWN, CHECKPOINTS)}
    assert len(before) == len(OTHERS) + len(OWN) + 1
    assert f"still stored in these:\n  {lessons / '02-run.ipynb'}\n" in printed
    assert "Clear Outputs of All Cells" in printed


def test_results_in_lessons_are_cleared_when_asked_for(lessons, capsys):
    assert command.main(["forget", "BENCH-07", "--yes", "--outputs"]) == 0
    assert "BENCH-07" not in (lessons / "02-run.ipynb").read_text(encoding="utf-8")
    assert (lessons / "01-plain.ipynb").read_text(encoding="utf-8") == notebook([])
    assert f"Cleared: {lessons / '02-run.ipynb'}" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("typed", "code"), [("yes", 0), ("Yes ", 0), ("y", 2), ("", 2), ("no", 2), (EOFError, 2)]
)
def test_nothing_goes_before_a_yes(lessons, monkeypatch, capsys, typed, code):
    def keyboard(_):
        if typed is EOFError:
            raise EOFError
        return typed

    before = left(lessons)
    monkeypatch.setattr("builtins.input", keyboard)
    assert command.main(["forget", "BENCH-07"]) == code
    printed = capsys.readouterr()
    assert str(lessons / OWN[0]) in printed.out
    assert (left(lessons) == before) is bool(code)
    assert ("Nothing was erased." in printed.err) is bool(code)


def test_settings_of_somebody_else_stay(lessons):
    assert command.main(["forget", "BENCH-08", "--yes"]) == 0
    assert set(OWN) <= left(lessons)
    assert not any("BENCH-08" in name for name in left(lessons))


def test_a_refusal_of_the_system_is_told(lessons, monkeypatch, capsys):
    def held(_):
        raise PermissionError(13, "in use")

    monkeypatch.setattr("pathlib.Path.unlink", held)
    assert command.main(["forget", "BENCH-08", "--yes"]) == 2
    assert "could not be erased (in use). Close the lessons" in capsys.readouterr().err


def test_nothing_is_there_to_erase_where_answers_leave_no_trace(lessons, monkeypatch, capsys):
    monkeypatch.setenv("CANDLE_WORKSHOP_ANSWERS", "memory")
    assert command.main(["forget", "BENCH-07", "--yes"]) == 2
    assert "in memory only" in capsys.readouterr().err
    assert set(OWN) <= left(lessons)
