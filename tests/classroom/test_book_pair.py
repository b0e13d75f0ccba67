"""Both files of the mark book are of one run, whatever fails or is killed while they change."""

import os
from contextlib import suppress

import pytest

from helpers.classroom import book_pair
from helpers.classroom.book_pair import BookPair
from helpers.exercises.refusals import Unusable

STEPS = ("fsync", "replace", "rename", "utime", "unlink")


class Stopped(BaseException):
    """A kill: nothing that comes after it in the run is done."""


class Faults:
    """Counts the steps of a run that touch the disk, and stops it at one of them or from it on."""

    def __init__(self, monkeypatch):
        self.steps, self.at, self.error, self.for_ever = 0, None, None, False
        for name in STEPS:
            monkeypatch.setattr(os, name, self._counted(getattr(os, name)))
        opened = open

        def with_faulty_writing(path, mode):
            handle = opened(path, mode)
            self._step()
            return handle

        monkeypatch.setattr(book_pair, "open", with_faulty_writing, raising=False)

    def _counted(self, step):
        def counted(*arguments, **named):
            self._step()
            return step(*arguments, **named)

        return counted

    def _step(self):
        self.steps += 1
        if self.at is not None and (
            self.steps == self.at or self.for_ever and self.steps > self.at
        ):
            raise self.error


@pytest.fixture
def faults(monkeypatch):
    return Faults(monkeypatch)


def write(out, run):
    BookPair(out).write([f"table of run {run}"], [f"page of run {run}"])


def pairs(out):
    """Return the runs that the pairs in a folder are of, by name; a torn pair is a test failed."""
    found = {}
    for path in sorted(out.iterdir()):
        words = path.read_text().split(" of run ")
        assert words[0] == ("table" if path.suffix == ".csv" else "page"), path
        found.setdefault(path.stem, {})[path.suffix] = words[1]
    for stem, files in found.items():
        assert len(files) == 2 and len(set(files.values())) == 1, (stem, files)
    return {stem: files[".csv"] for stem, files in found.items()}


def test_the_pair_before_is_kept_under_one_date(tmp_path):
    for run in range(4):  # within one second, perhaps
        write(tmp_path, run)
    found = pairs(tmp_path)
    assert found.pop("mark-book") == "3"
    assert sorted(found.values()) == ["0", "1", "2"]


def steps_of(tmp_path, faults, befores):
    """Return how many steps one run takes."""
    folder = tmp_path / "counted"
    folder.mkdir()
    for run in range(befores):
        write(folder, run)
    before = faults.steps
    write(folder, "new")
    return faults.steps - before


@pytest.mark.parametrize("befores", [0, 1])
def test_a_fault_at_any_step_leaves_the_pair_that_was_there(tmp_path, faults, befores):
    """Every open, sync, rename and date of one run fails once."""
    steps = steps_of(tmp_path, faults, befores)
    assert steps >= 8 + 2 * befores  # two files: open, sync, ready, named; a date; the folder
    for step in range(1, steps + 1):
        out = tmp_path / str(step)
        out.mkdir()
        for run in range(befores):
            write(out, run)
        faults.at, faults.error = faults.steps + step, OSError(28, "No space left on device")
        with pytest.raises(Unusable, match="could not be written .No space left"):
            write(out, "new")
        faults.at = None
        assert pairs(out) == ({"mark-book": "0"} if befores else {}), step


@pytest.mark.parametrize("error", [OSError(5, "I/O error"), Stopped()], ids=["disk", "kill"])
@pytest.mark.parametrize("befores", [0, 1])
def test_stopped_for_good_at_any_step_the_next_run_puts_it_right(tmp_path, faults, befores, error):
    """The disk fails from a step on, or the run is killed there: not even undoing works then."""
    for step in range(1, steps_of(tmp_path, faults, befores) + 1):
        out = tmp_path / str(step)
        out.mkdir()
        for run in range(befores):
            write(out, run)
        faults.at, faults.error, faults.for_ever = faults.steps + step, error, True
        with suppress(Unusable, Stopped):
            write(out, "new")
        faults.at = None
        BookPair(out).recover()
        found = pairs(out)
        assert set(found.values()) <= {"0", "new"}
        assert ("mark-book" in found) >= bool(befores), step
        assert "0" in found.values() or not befores
        write(out, "next")
        assert pairs(out)["mark-book"] == "next"


def test_killed_while_putting_right_it_is_put_right_the_next_time(tmp_path, faults):
    faults.error, faults.for_ever = Stopped(), True
    for step in range(1, steps_of(tmp_path, faults, 1) + 1):
        for again in range(1, 8):
            out = tmp_path / f"{step}-{again}"
            out.mkdir()
            write(out, 0)
            faults.at = faults.steps + step
            with suppress(Stopped):
                write(out, "new")
            faults.at = faults.steps + again
            with suppress(Stopped):
                BookPair(out).recover()
            faults.at = None
            BookPair(out).recover()
            assert "mark-book" in pairs(out), (step, again)


def test_a_page_alone_in_the_folder_is_kept_too(tmp_path):
    (tmp_path / "mark-book.html").write_text("page of run 0")
    write(tmp_path, "new")
    assert (tmp_path / "mark-book.html").read_text() == "page of run new"
    assert len(list(tmp_path.glob("mark-book_*.html"))) == 1
