"""The invented class: the same every time, marked without surprise, never among real hand-ins."""

import re
import shlex
import sys
from pathlib import Path

import pytest
from invented_bank import BANK_FILES

from helpers.__main__ import main
from helpers.classroom import demo_room
from helpers.classroom.demo_room import (
    CUT_SHORT,
    FIRST_EVENING,
    LEARNERS,
    SILENT,
    STRANGER,
    lines_of,
    write_demo_room,
    wrong_answers,
)
from helpers.exercises.answer_log import parse_row
from helpers.exercises.bank import bank
from helpers.exercises.refusals import Unusable
from helpers.physics.mains import SUPPLIES

QUESTIONS = [question for module in BANK_FILES.values() for question in module.QUESTIONS]


def files_of(folder):
    return {p.relative_to(folder): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


def test_the_same_bytes_each_time(tmp_path, short_demo):
    for name in ("one", "two"):
        write_demo_room(tmp_path / name)
    one, two = (files_of(tmp_path / name) for name in ("one", "two"))
    readme = next(path for path in one if path.name == "README.txt")  # it names its own folder
    assert one.pop(readme).replace(b"one", b"two") == two.pop(readme)
    assert one == two


def test_the_printed_command_marks_it(tmp_path, capsys, short_demo):
    """24 bench codes handed in (23 of the roster and a stranger), one of them twice."""
    folder = tmp_path / "demo room"
    assert main(["demo-room", str(folder)]) == 0
    command = shlex.split(capsys.readouterr().out.splitlines()[-1])
    assert Path(command[0]).absolute() == Path(sys.executable)
    assert command[1:3] == ["-m", "helpers"]
    assert main(command[3:]) == 0
    printed = capsys.readouterr().out
    assert "25 hand-ins read. 25 learners: 23 handed in, 1 nothing handed in, 1 not on" in printed
    page = (folder / "marked" / "mark-book.html").read_text("utf-8")
    for words in (
        f'{STRANGER}</th><td class="words">this learner is not on the roster',
        f"wick_{CUT_SHORT}_",
    ):
        assert words in page
    row = page.partition(f'<th scope="row">{SILENT}</th>')[2].partition("</tr>")[0]
    items = sum(question.danger for question in bank().values())
    assert re.search(rf'<td colspan="{items}" class="s-blank">\s*– nothing handed in', row)
    assert "perhaps the power went" in page


@pytest.mark.parametrize(
    ("python", "shown"),
    [
        pytest.param(".venv/bin/python", ".venv/bin/python", id="inside this folder"),
        pytest.param("/usr/my tools/python3", "'/usr/my tools/python3'", id="elsewhere, a space"),
    ],
)
@pytest.mark.skipif(sys.platform == "win32", reason="paths and quotes of another system")
def test_the_command_names_the_python_that_runs_it(
    tmp_path, monkeypatch, short_demo, python, shown
):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(sys, "executable", str(tmp_path / python))
    assert write_demo_room(tmp_path / "room").startswith(f"{shown} -m helpers mark ")


def test_it_says_that_it_is_invented(tmp_path, short_demo):
    write_demo_room(tmp_path / "room")
    text = (tmp_path / "room" / "README.txt").read_text("utf-8")
    assert text.startswith("All of this is invented")


@pytest.mark.parametrize("kind", ["folder with something in it", "file"])
def test_it_refuses_to_mix_with_what_is_there(tmp_path, kind, capsys):
    path = tmp_path / "there"
    if kind == "file":
        path.write_text("real", encoding="utf-8")
    else:
        path.mkdir()
        (path / "real.jsonl").write_text("real", encoding="utf-8")
    before = files_of(tmp_path)
    with pytest.raises(Unusable, match="is not an empty folder"):
        write_demo_room(path)
    assert main(["demo-room", str(path)]) == 2
    assert "there is there already" in capsys.readouterr().err
    assert files_of(tmp_path) == before


def test_an_empty_folder_will_do(tmp_path, short_demo):
    write_demo_room(tmp_path)
    assert (tmp_path / "roster.csv").is_file()


@pytest.mark.parametrize("question", QUESTIONS, ids=lambda question: question.id)
def test_wrong_answers_are_read_and_wrong(question):
    numbers = question.numbers_for("BENCH-03", "wick", SUPPLIES["120 V 60 Hz"], 1)
    answers = list(wrong_answers(question, numbers))
    assert answers
    for typed in answers:
        value = question.kind.read(typed, numbers).value
        assert not question.kind.mark(value, numbers).right


def test_the_lines_are_whole_lines_of_a_log():
    lines = lines_of("BENCH-03", FIRST_EVENING, QUESTIONS)
    for line in lines:
        assert parse_row(line.text().encode()) == line
    assert len({line.line for line in lines}) == len(lines) > 20
    assert [line.at for line in lines] == sorted(line.at for line in lines)


def test_the_class_answers_in_typical_ways(tmp_path, monkeypatch):
    """Some are right at once, some after a slip, some after help, some never: all of it occurs."""
    counts = dict.fromkeys(("right at once", "more tries", "worked answer, fresh numbers"), 0)
    for learner in LEARNERS:
        by_question = {}
        for line in lines_of(learner, FIRST_EVENING, QUESTIONS):
            by_question.setdefault(line.question, []).append(line)
        for lines in by_question.values():
            counts["right at once"] += len(lines) == 1
            counts["more tries"] += len(lines) > 1
            counts["worked answer, fresh numbers"] += lines[-1].draw > 0
    assert min(counts.values()) > 20


def test_nobody_hands_in_an_empty_log(monkeypatch):
    monkeypatch.setattr(demo_room, "STEADY", (demo_room.LEFT_OUT,))
    monkeypatch.setattr(demo_room, "MANNERS", ((demo_room.LEFT_OUT,),))
    assert len(lines_of("BENCH-03", FIRST_EVENING, QUESTIONS)) == 1
