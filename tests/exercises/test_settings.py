"""Who answers, in which class, on which mains; and where the answers lie however one starts."""

import json
import os
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from helpers.exercises import settings as kept
from helpers.exercises import whole_files
from helpers.exercises.answer_log import AnswerLog, MemoryLog
from helpers.exercises.session import learner_session
from helpers.exercises.settings import (
    ANSWERS_VARIABLE,
    Settings,
    SettingsError,
    answers_folder,
    bench_code,
    changed,
    load,
    log_path,
    save,
)
from helpers.physics.mains import SUPPLIES

BENCH = Settings("BENCH-07", "wick", "120 V 60 Hz")
ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize(
    "learner", ["A1", "BENCH-07", "ABCDEFGHIJKL", "0-9", "NUL", "CON"], ids="limit: {}".format
)
def test_a_learner_id_of_the_right_form_is_taken(learner):
    assert Settings(learner).learner == learner


@pytest.mark.parametrize(
    "learner",
    [
        "",
        "A",
        "ABCDEFGHIJKLM",
        "bench-07",
        "BENCH 07",
        "../BENCH",
        "BÄNK",
        "A/B",
        "A\n",
        "١٢",
        "A_B",
    ],
    ids=lambda learner: f"limit: {ascii(learner)}",
)
def test_another_learner_id_is_refused_with_what_was_read_and_an_example(learner):
    with pytest.raises(SettingsError) as refused:
        Settings(learner)
    said = str(refused.value)
    assert repr(learner) in said and "2 to 12 of A-Z" in said and "BENCH-07" in said


@pytest.mark.parametrize("word", ["", "w", "w" * 21, "Wick", "two words", "wick/", "docht-ä"])
def test_another_class_word_is_refused(word):
    with pytest.raises(SettingsError, match="class word .* was read. Use 2 to 20 of a-z"):
        Settings("BENCH-07", word)


def test_an_unknown_supply_is_refused_with_the_known_ones():
    with pytest.raises(SettingsError, match="'400 V 50 Hz' was read.*120 V 60 Hz"):
        Settings("BENCH-07", "wick", "400 V 50 Hz")


@pytest.mark.parametrize("learner", ["WORKSHOP", "workshop", " Workshop "])
def test_nobody_can_take_the_id_whose_answers_are_published(learner):
    with pytest.raises(SettingsError, match="WORKSHOP belongs to the workshop copy"):
        changed(BENCH, learner=learner)


def test_spelling_is_forgiven_where_it_cannot_mean_anything_else():
    new = changed(BENCH, learner=" bench-08 ", class_word="Tallow ", supply="230v50hz")
    assert new == Settings("BENCH-08", "tallow", "230 V 50 Hz")


@pytest.mark.parametrize("name", SUPPLIES, ids="property: {}".format)
@pytest.mark.parametrize("spell", [str.lower, lambda n: n.replace(" ", ""), lambda n: f" {n}, "])
def test_every_supply_is_read_in_several_spellings(name, spell):
    assert changed(BENCH, supply=spell(name)).supply == name


def test_what_is_not_given_stays():
    assert changed(BENCH) == BENCH
    assert changed(BENCH, class_word="tallow") == Settings("BENCH-07", "tallow", "120 V 60 Hz")


def test_a_bench_code_is_a_learner_id_and_rarely_comes_twice():
    codes = {bench_code() for _ in range(200)}
    assert len(codes) > 190
    assert all(Settings(code) for code in codes)
    assert not any(set(code.removeprefix("BENCH-")) & set("01IOL") for code in codes)


def test_settings_are_found_again(tmp_path):
    assert save(tmp_path / "answers", BENCH) == ""
    assert load(tmp_path / "answers") == (BENCH, "")
    assert [path.name for path in (tmp_path / "answers").iterdir()] == ["settings.json"]


def test_who_chooses_nothing_gets_a_code_that_stays(tmp_path):
    first, note = load(tmp_path / "answers")
    assert note == "" and first.learner.startswith("BENCH-")
    assert load(tmp_path / "answers") == (first, "")


DAMAGED = {
    "empty": b"",
    "cut short": b'{"learner": "BENCH',
    "a list": b"[]",
    "null": b"null",
    "no learner": b'{"class_word": "wick", "supply": "230 V 50 Hz"}',
    "learner is a number": b'{"learner": 7, "class_word": "wick", "supply": "230 V 50 Hz"}',
    "bad learner": b'{"learner": "../x", "class_word": "wick", "supply": "230 V 50 Hz"}',
    "supply is a list": b'{"learner": "AB", "class_word": "wick", "supply": []}',
    "unknown supply": b'{"learner": "AB", "class_word": "wick", "supply": "400 V"}',
    "nested without end": b"[" * 100_000,
    "bytes that are no text": b"\xff\xfe\x00",
    "the workshop copy's": b'{"learner": "WORKSHOP", "class_word": "w2", "supply": "230 V 50 Hz"}',
}


@pytest.mark.parametrize("content", DAMAGED.values(), ids=DAMAGED)
def test_damaged_settings_are_said_and_replaced_and_no_answer_is_lost(tmp_path, content):
    log = log_path(tmp_path, "BENCH-07")
    log.write_text("an earlier answer\n")
    (tmp_path / "settings.json").write_bytes(content)
    settings, note = load(tmp_path)
    assert settings.learner.startswith("BENCH-")
    assert "settings.json could not be read" in note and "give your old id" in note
    (aside,) = tmp_path.glob("settings-as-found-*.json")
    assert aside.name in note and aside.read_bytes() == content
    assert log.read_text() == "an earlier answer\n"
    assert load(tmp_path) == (settings, "")


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16"])
def test_settings_that_an_editor_has_saved_anew_are_read(tmp_path, encoding):
    save(tmp_path, BENCH)
    path = tmp_path / "settings.json"
    path.write_bytes(path.read_text(encoding="utf-8").encode(encoding))
    assert load(tmp_path) == (BENCH, "")


def test_a_file_that_cannot_be_opened_is_never_overwritten(tmp_path, monkeypatch):
    save(tmp_path, BENCH)
    before = (tmp_path / "settings.json").read_bytes()

    def refuse(self):
        raise PermissionError(13, "Permission denied")

    with monkeypatch.context() as locked:
        locked.setattr(Path, "read_bytes", refuse)
        settings, note = load(tmp_path)
        assert "Permission denied" in note and settings.learner in note
        assert "could not be written (Permission denied)" in save(tmp_path, settings)
    assert (tmp_path / "settings.json").read_bytes() == before
    assert load(tmp_path) == (BENCH, "")


def test_of_two_first_starts_at_once_both_end_with_one_id(tmp_path):
    with ThreadPoolExecutor(8) as pool:
        found = set(pool.map(lambda _: load(tmp_path / "answers"), range(40)))
    assert len(found) == 1
    assert sorted(path.name for path in (tmp_path / "answers").iterdir()) == ["settings.json"]


def test_a_first_start_without_links_keeps_its_settings(tmp_path, monkeypatch):
    def refuse(*_):
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(whole_files.os, "link", refuse)
    assert load(tmp_path) == load(tmp_path)


def test_a_folder_that_takes_no_file_is_said_and_the_lesson_goes_on(tmp_path):
    (tmp_path / "answers").write_text("a file in the way")
    settings, note = load(tmp_path / "answers")
    assert settings.learner in note and "holds for now" in note
    assert "settings.json could not be" in note


def test_a_read_only_folder_is_said_with_its_reason(tmp_path, monkeypatch):
    def refuse(*args, **more):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(kept.os, "replace", refuse)
    note = save(tmp_path, BENCH)
    assert "could not be written (Permission denied)" in note and "BENCH-07" in note


class TestWhereAnswersLie:
    @pytest.fixture(autouse=True)
    def no_variable(self, monkeypatch):
        monkeypatch.delenv(ANSWERS_VARIABLE)

    @pytest.fixture
    def project(self, tmp_path):
        root = tmp_path / "Kerzen & Döchte ログ" / "moved here"
        for folder in ("lessons/deep/er", "helpers/exercises", "solutions"):
            (root / folder).mkdir(parents=True)
        return root

    @pytest.mark.parametrize("start", ["", "lessons", "solutions", "lessons/deep/er", "helpers"])
    def test_beside_the_lessons_wherever_the_notebook_is_started(self, project, monkeypatch, start):
        monkeypatch.chdir(project / start)
        assert answers_folder() == project / "lessons" / "answers"

    def test_in_the_project_of_these_helpers_for_a_notebook_elsewhere(self, tmp_path, monkeypatch):
        monkeypatch.chdir(tmp_path)
        assert answers_folder() == ROOT / "lessons" / "answers"

    def test_where_the_variable_says(self, tmp_path, monkeypatch):
        monkeypatch.setenv(ANSWERS_VARIABLE, str(tmp_path / "elsewhere"))
        assert answers_folder() == tmp_path / "elsewhere"

    def test_nowhere_if_the_variable_says_so(self, monkeypatch):
        monkeypatch.setenv(ANSWERS_VARIABLE, "memory")
        assert answers_folder() is None
        session, note = learner_session()
        assert isinstance(session.log, MemoryLog) and note == ""

    def test_asking_makes_no_folder(self, project, monkeypatch):
        monkeypatch.chdir(project)
        answers_folder()
        assert not (project / "lessons" / "answers").exists()


class TestLearnerSession:
    @pytest.fixture(autouse=True)
    def folder(self, tmp_path, monkeypatch):
        monkeypatch.setenv(ANSWERS_VARIABLE, str(tmp_path / "answers"))
        return tmp_path / "answers"

    def test_each_learner_has_a_file_and_changing_back_finds_the_answers(self, folder):
        one, _ = learner_session(learner="BENCH-07")
        one.answer("ohm-2", "7 mA")
        other, _ = learner_session(learner="BENCH-08")
        assert other.standing("ohm-2").tries == 0
        other.answer("ohm-2", "7 mA")
        again, _ = learner_session(learner="bench-07")
        assert again.standing("ohm-2").tries == 1
        names = {path.name for path in folder.iterdir()}
        assert names == {"settings.json", "answers-BENCH-07.jsonl", "answers-BENCH-08.jsonl"}

    def test_a_change_is_remembered_and_a_refused_one_changes_nothing(self, folder):
        learner_session("BENCH-07", "wick", "120 V 60 Hz")
        before = (folder / "settings.json").read_bytes()
        with pytest.raises(SettingsError):
            learner_session(learner="BENCH-08", class_word="???")
        assert (folder / "settings.json").read_bytes() == before
        assert learner_session()[0].settings == Settings("BENCH-07", "wick", "120 V 60 Hz")

    def test_answers_given_before_a_change_of_supply_are_found_after_it(self):
        first, _ = learner_session("BENCH-07", "wick", "230 V 50 Hz")
        first.answer("ohm-2", "7 mA")
        second, _ = learner_session(supply="120 V 60 Hz")
        assert isinstance(second.log, AnswerLog)
        assert second.standing("ohm-2").tries == 1
        assert second.draw("ohm-2").tried == {}


def test_answers_are_found_after_the_whole_project_was_moved(tmp_path):
    """A copy with spaces and accents in its path; answers given before and after a move."""
    root = tmp_path / "erste Kopie"
    for name in ("lessons", "helpers"):
        ignore = shutil.ignore_patterns("__pycache__", "answers", "hand-in")
        shutil.copytree(ROOT / name, root / name, ignore=ignore)
    program = (
        "from helpers.exercises.session import learner_session\n"
        "session, note = learner_session()\n"
        "tries = session.standing('ohm-2').tries\n"
        "session.answer('ohm-2', f'{tries + 1} mA')\n"
        "print(session.settings.learner, tries, session.log.path)\n"
    )
    said = []
    for place in (root, tmp_path / "Zweite Kopie, verschoben é"):
        if place != root:
            root.rename(place)
        env = {**os.environ, "PYTHONPATH": str(place)}
        env.pop(ANSWERS_VARIABLE, None)
        done = subprocess.run(
            [sys.executable, "-c", program], cwd=place / "lessons", env=env,
            capture_output=True, text=True, check=True, encoding="utf-8",
        )  # fmt: skip
        said.append(done.stdout.split(maxsplit=2))
    (learner, tries, _), (same, later, path) = said
    assert (tries, later) == ("0", "1") and learner == same
    assert "verschoben" in path and json.loads(Path(path.strip()).read_text().splitlines()[1])
