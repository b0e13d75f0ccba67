"""Where settings and answers lie however one starts, on disk and in memory."""

import json
import os
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from helpers.exercises import whole_files
from helpers.exercises.answer_log import AnswerLog, MemoryLog
from helpers.exercises.session import learner_session
from helpers.exercises.settings import Settings, SettingsError
from helpers.exercises.store import (
    ANSWERS_VARIABLE,
    DiskStore,
    MemoryStore,
    OwnBriefError,
    here,
)

BENCH = Settings("BENCH-07", "wick", "120 V 60 Hz")
ROOT = Path(__file__).resolve().parents[2]


def test_settings_are_found_again(tmp_path):
    assert DiskStore(tmp_path / "answers").save(BENCH) == ""
    assert DiskStore(tmp_path / "answers").load() == (BENCH, "")
    assert [path.name for path in (tmp_path / "answers").iterdir()] == ["settings.json"]


def test_who_chooses_nothing_gets_a_code_that_stays(tmp_path):
    first, note = DiskStore(tmp_path / "answers").load()
    assert note == "" and first.learner.startswith("BENCH-")
    assert DiskStore(tmp_path / "answers").load() == (first, "")


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
    log = DiskStore(tmp_path).log_path("BENCH-07")
    log.write_text("an earlier answer\n")
    (tmp_path / "settings.json").write_bytes(content)
    settings, note = DiskStore(tmp_path).load()
    assert settings.learner.startswith("BENCH-")
    assert "settings.json could not be read" in note and "give your old id" in note
    (aside,) = tmp_path.glob("settings-as-found-*.json")
    assert aside.name in note and aside.read_bytes() == content
    assert log.read_text() == "an earlier answer\n"
    assert DiskStore(tmp_path).load() == (settings, "")


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16"])
def test_settings_that_an_editor_has_saved_anew_are_read(tmp_path, encoding):
    DiskStore(tmp_path).save(BENCH)
    path = tmp_path / "settings.json"
    path.write_bytes(path.read_text(encoding="utf-8").encode(encoding))
    assert DiskStore(tmp_path).load() == (BENCH, "")


def test_a_file_that_cannot_be_opened_is_never_overwritten(tmp_path, monkeypatch):
    DiskStore(tmp_path).save(BENCH)
    before = (tmp_path / "settings.json").read_bytes()

    def refuse(self):
        raise PermissionError(13, "Permission denied")

    with monkeypatch.context() as locked:
        locked.setattr(Path, "read_bytes", refuse)
        settings, note = DiskStore(tmp_path).load()
        assert "Permission denied" in note and settings.learner in note
        assert "could not be written (Permission denied)" in DiskStore(tmp_path).save(settings)
    assert (tmp_path / "settings.json").read_bytes() == before
    assert DiskStore(tmp_path).load() == (BENCH, "")


def test_of_two_first_starts_at_once_both_end_with_one_id(tmp_path):
    with ThreadPoolExecutor(8) as pool:
        found = set(pool.map(lambda _: DiskStore(tmp_path / "answers").load(), range(40)))
    assert len(found) == 1
    assert sorted(path.name for path in (tmp_path / "answers").iterdir()) == ["settings.json"]


def test_a_first_start_without_links_keeps_its_settings(tmp_path, monkeypatch):
    def refuse(*_):
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(whole_files.os, "link", refuse)
    assert DiskStore(tmp_path).load() == DiskStore(tmp_path).load()


def test_a_folder_that_takes_no_file_is_said_and_the_lesson_goes_on(tmp_path):
    (tmp_path / "answers").write_text("a file in the way")
    settings, note = DiskStore(tmp_path / "answers").load()
    assert settings.learner in note and "holds for now" in note
    assert "settings.json could not be" in note


def test_a_read_only_folder_is_said_with_its_reason(tmp_path, monkeypatch):
    def refuse(*args, **more):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(whole_files.os, "replace", refuse)
    note = DiskStore(tmp_path).save(BENCH)
    assert "could not be written (Permission denied)" in note and "BENCH-07" in note


class TestAnOwnBrief:
    @pytest.mark.parametrize(
        "of", [DiskStore, lambda folder: MemoryStore()], ids=["disk", "memory"]
    )
    def test_it_is_found_again_and_each_learner_has_one(self, tmp_path, of):
        store = of(tmp_path / "answers")
        assert store.own_brief("BENCH-07") == ""
        store.keep_own_brief("BENCH-07", '[heater]\npower = "60 W"\n')
        store.keep_own_brief("CON", "")
        store.keep_own_brief("BENCH-07", '[heater]\npower = "40 Ω"\n')
        assert store.own_brief("BENCH-07") == '[heater]\npower = "40 Ω"\n'
        assert store.own_brief("CON") == store.own_brief("BENCH-0") == ""

    def test_it_lies_beside_the_answers_and_asking_makes_nothing(self, tmp_path):
        store = DiskStore(tmp_path / "answers")
        store.own_brief("CON")
        assert not store.folder.exists()
        store.keep_own_brief("CON", "")
        # On Windows a file cannot be called CON, whatever stands behind the dot.
        assert [path.name for path in store.folder.iterdir()] == ["build-CON.toml"]

    def test_an_editor_may_have_saved_it_in_another_encoding(self, tmp_path):
        store = DiskStore(tmp_path)
        store.build_path("BENCH-07").write_bytes("air = 50 °C".encode("utf-16"))
        assert store.own_brief("BENCH-07") == "air = 50 °C"

    def test_what_is_no_text_is_said_and_never_overwritten(self, tmp_path):
        store = DiskStore(tmp_path)
        store.build_path("BENCH-07").write_bytes(b"\xc3\x28")
        with pytest.raises(OwnBriefError, match="could not be read.*It is left as it is"):
            store.own_brief("BENCH-07")
        with pytest.raises(OwnBriefError, match="could not be read.*It is left as it is"):
            store.keep_own_brief("BENCH-07", "[heater]")
        assert store.build_path("BENCH-07").read_bytes() == b"\xc3\x28"

    def test_what_is_no_file_is_said(self, tmp_path):
        DiskStore(tmp_path).build_path("BENCH-07").mkdir()
        with pytest.raises(OwnBriefError, match="could not be read"):
            DiskStore(tmp_path).own_brief("BENCH-07")

    def test_a_full_disk_leaves_the_one_before(self, tmp_path, monkeypatch):
        store = DiskStore(tmp_path)
        store.keep_own_brief("BENCH-07", "[led]")

        def refuse(*_):
            raise OSError(28, "No space left on device")

        monkeypatch.setattr(whole_files.os, "replace", refuse)
        with pytest.raises(OwnBriefError, match="No space left on device.*is not kept"):
            store.keep_own_brief("BENCH-07", "[heater]")
        assert store.own_brief("BENCH-07") == "[led]"
        assert len(list(tmp_path.iterdir())) == 1


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
        assert here().folder == project / "lessons" / "answers"

    def test_in_the_project_of_these_helpers_for_a_notebook_elsewhere(self, tmp_path, monkeypatch):
        monkeypatch.chdir(tmp_path)
        assert here().folder == ROOT / "lessons" / "answers"

    def test_where_the_variable_says(self, tmp_path, monkeypatch):
        monkeypatch.setenv(ANSWERS_VARIABLE, str(tmp_path / "elsewhere"))
        assert here().folder == tmp_path / "elsewhere"

    def test_nowhere_if_the_variable_says_so(self, monkeypatch):
        monkeypatch.setenv(ANSWERS_VARIABLE, "memory")
        store = here()
        assert isinstance(store, MemoryStore) and store.folder is None
        session, note = learner_session(store)
        assert isinstance(session.log, MemoryLog) and note == ""

    def test_asking_makes_no_folder(self, project, monkeypatch):
        monkeypatch.chdir(project)
        here()
        assert not (project / "lessons" / "answers").exists()


class TestLearnerSession:
    @pytest.fixture(params=[True, False], ids=["on disk", "in memory"])
    def store(self, request, tmp_path):
        return DiskStore(tmp_path / "answers") if request.param else MemoryStore()

    def test_each_learner_has_a_file_and_changing_back_finds_the_answers(self, store):
        one, _ = learner_session(store, learner="BENCH-07")
        one.answer("ohm-2", "7 mA")
        other, _ = learner_session(store, learner="BENCH-08")
        assert other.standing("ohm-2").tries == 0
        other.answer("ohm-2", "7 mA")
        again, _ = learner_session(store, learner="bench-07")
        assert again.standing("ohm-2").tries == 1
        if store.folder:
            names = {path.name for path in store.folder.iterdir()}
            assert names == {"settings.json", "answers-BENCH-07.jsonl", "answers-BENCH-08.jsonl"}

    def test_a_change_is_remembered_and_a_refused_one_changes_nothing(self, store):
        learner_session(store, "BENCH-07", "wick", "120 V 60 Hz")
        before = store.kept()
        with pytest.raises(SettingsError):
            learner_session(store, learner="BENCH-08", class_word="???")
        assert store.kept() == before
        assert learner_session(store)[0].settings == Settings("BENCH-07", "wick", "120 V 60 Hz")

    def test_answers_given_before_a_change_of_supply_are_found_after_it(self, store):
        first, _ = learner_session(store, "BENCH-07", "wick", "230 V 50 Hz")
        first.answer("ohm-2", "7 mA")
        second, _ = learner_session(store, supply="120 V 60 Hz")
        assert isinstance(second.log, AnswerLog if store.folder else MemoryLog)
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
        "from helpers.exercises.store import here\n"
        "session, note = learner_session(here())\n"
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
