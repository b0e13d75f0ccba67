"""The guard over a test run has to notice what it guards against."""

import subprocess

import pytest
from untouched import kept_state, touched


@pytest.fixture
def project(tmp_path):
    """A small project under git, with a log that git ignores and an edit in the making."""
    for command in (
        ["init", "-q"],
        ["config", "user.email", "x@y.z"],
        ["config", "user.name", "x"],
    ):
        subprocess.run(["git", *command], cwd=tmp_path, check=True)
    (tmp_path / ".gitignore").write_text("lessons/answers/\nlessons/hand-in/\n")
    (tmp_path / "lesson.txt").write_text("as committed")
    subprocess.run(["git", "add", "-A"], cwd=tmp_path, check=True)
    subprocess.run(["git", "commit", "-qm", "first"], cwd=tmp_path, check=True)
    (tmp_path / "being edited.txt").write_text("half done")
    answers = tmp_path / "lessons" / "answers"
    answers.mkdir(parents=True)
    (answers / "answers-BENCH-07.jsonl").write_text('{"format": 1}\n')
    return tmp_path


def test_a_run_that_touches_nothing_passes(project):
    assert touched(kept_state(project), kept_state(project)) == []


CHANGES = {
    "an answer more": ("lessons/answers/answers-BENCH-07.jsonl", '{"format": 1}\n{}\n'),
    "the same length": ("lessons/answers/answers-BENCH-07.jsonl", '{"format": 2}\n'),
    "a new log": ("lessons/answers/answers-BENCH-08.jsonl", ""),
    "a hand-in": ("lessons/hand-in/wick_BENCH-07_2026-01-01.jsonl", ""),
    "a committed file": ("lesson.txt", "changed"),
    "a file being edited": ("being edited.txt", "another half"),
    "a new file": ("left behind, é.txt", ""),
}


@pytest.mark.parametrize(("name", "text"), CHANGES.values(), ids=CHANGES)
def test_a_run_that_touches_something_is_caught(project, name, text):
    before = kept_state(project)
    (project / name).parent.mkdir(parents=True, exist_ok=True)
    (project / name).write_text(text)
    assert name in touched(before, kept_state(project))


def test_answers_are_guarded_in_a_copy_that_is_no_clone(project):
    before = kept_state(project)
    (project / ".git").rename(project / "no git")
    (project / "lessons/answers/answers-BENCH-07.jsonl").write_text("")
    assert "lessons/answers/answers-BENCH-07.jsonl" in touched(before, kept_state(project))


def test_a_log_that_vanished_is_caught(project):
    before = kept_state(project)
    (project / "lessons/answers/answers-BENCH-07.jsonl").unlink()
    assert touched(before, kept_state(project)) == ["lessons/answers/answers-BENCH-07.jsonl"]
