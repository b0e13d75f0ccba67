"""The command line says what it read and what there is; code 2 says that it could not go on."""

import os
import subprocess
import sys

import pytest

from helpers.__main__ import main

SUBCOMMANDS = (
    "open",
    "forget",
    "mark",
    "class",
    "demo-room",
    "forget-class",
    "paper",
    "key",
    "start-sheet",
    "size",
    "bench",
    "build",
    "clash",
)
STAMP = (
    "Plan only. Not permission to build or connect: a competent person checks it first, under "
    "local rules"
)


def stopped(words, code):
    with pytest.raises(SystemExit) as end:
        main(words)
    assert end.value.code == code


def test_no_such_subcommand_is_answered_with_those_there_are(capsys):
    stopped(["nonsense"], 2)
    said = capsys.readouterr().err
    assert '"nonsense" is no SUBCOMMAND. There are: ' + ", ".join(SUBCOMMANDS) in said


def test_no_subcommand_at_all_is_answered_the_same_way(capsys):
    stopped([], 2)
    assert (
        "no SUBCOMMAND was given. There are: " + ", ".join(SUBCOMMANDS) in capsys.readouterr().err
    )


MISSING = {
    "class": "FILE, --word",
    "demo-room": "folder",
    "forget": "learner",
    "forget-class": "FILE",
    "clash": "ID",
}


@pytest.mark.parametrize(("name", "missing"), MISSING.items(), ids=MISSING)
def test_what_is_missing_is_named(capsys, name, missing):
    stopped([name], 2)
    assert f"the following arguments are required: {missing}" in capsys.readouterr().err


@pytest.mark.parametrize("words", [["open", "03", "04"], ["open", "--browser"], ["--verbose"]])
def test_what_is_too_much_is_refused(capsys, words):
    stopped(words, 2)
    assert "error: " in capsys.readouterr().err


@pytest.mark.parametrize("words", [[], *([name] for name in SUBCOMMANDS)], ids=str)
def test_help_carries_the_caution_and_the_stamp(capsys, words):
    stopped([*words, "--help"], 0)
    said = " ".join(capsys.readouterr().out.split())
    assert "Mains voltage can kill" in said and STAMP in said


def test_ctrl_c_leaves_no_traceback(monkeypatch, capsys):
    def pressed(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("helpers.opening.open_lesson", pressed)
    assert main(["open"]) == 130
    assert capsys.readouterr().err == "Stopped.\n"


@pytest.mark.parametrize(
    ("words", "unbuffered"),
    [(["--help"], ""), (["clash", "safe-12"], ""), (["clash", "safe-12"], "1")],
    ids=["help", "lines, written at the end", "lines, written at once"],
)
def test_a_reader_that_is_gone_ends_it_without_a_word(root, words, unbuffered):
    """As `python -m helpers clash safe-12 | head` does, with the reader gone from the start."""
    reader, writer = os.pipe()
    os.close(reader)
    ran = subprocess.run(
        [sys.executable, "-m", "helpers", *words],
        cwd=root, env=os.environ | {"PYTHONUNBUFFERED": unbuffered},
        stdout=writer, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    os.close(writer)
    assert (ran.returncode, ran.stderr) == (141, "")
