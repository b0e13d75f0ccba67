"""Opening a lesson: the right one, or a plain word why not; on this machine only."""

import os
import re
import sys
import urllib.error
import urllib.request
import webbrowser
from pathlib import Path

import psutil
import pytest

from helpers.__main__ import main
from helpers.exercises.refusals import Unusable
from helpers.opening import browser_at_hand, find_lesson

ROOT = Path(__file__).resolve().parents[1]
LESSONS = ROOT / "lessons"


@pytest.mark.parametrize(
    "wanted", ["03", "3", " 03 ", "03-the-mains-wave", "03-the-mains-wave.ipynb"]
)
def test_a_lesson_is_found_by_number_or_name(wanted):
    assert find_lesson(LESSONS, wanted).name == "03-the-mains-wave.ipynb"


def test_the_index_is_found_by_its_name():
    assert find_lesson(LESSONS, "index").name == "index.ipynb"


def test_the_first_lesson_is_found_where_none_is_asked_for():
    assert find_lesson(LESSONS).name == "00-start-here.ipynb"


@pytest.mark.parametrize("wanted", ["index.md", "17", "003", "-1", "", "../README", "٣", "[0-9]"])
def test_what_is_no_lesson_is_answered_with_those_there_are(capsys, wanted):
    assert main(["open", "--", wanted]) == 2
    said = capsys.readouterr().err
    assert f'The lesson "{wanted}" was read.' in said
    assert all(path.stem in said for path in LESSONS.glob("*.ipynb"))


def test_a_folder_without_lessons_is_told(tmp_path):
    with pytest.raises(Unusable, match="there are: none"):
        find_lesson(tmp_path)


def test_a_python_without_jupyterlab_is_told_of_the_first_command(monkeypatch, capsys):
    monkeypatch.setitem(sys.modules, "jupyterlab.labapp", None)
    monkeypatch.setitem(os.environ, "JUPYTER_CONFIG_PATH", "")  # put back afterwards
    monkeypatch.setitem(os.environ, "YARN_ENABLE_TELEMETRY", "")
    assert main(["open"]) == 2
    said = capsys.readouterr().err
    assert f"{sys.executable} has no module jupyterlab" in said and "README.md" in said


class Window(webbrowser.BackgroundBrowser):
    """Stands for a browser with a window of its own."""


@pytest.mark.parametrize(
    ("found", "named", "at_hand"),
    [
        (Window("window"), "", True),
        (webbrowser.GenericBrowser("in-the-terminal"), "", False),
        (webbrowser.GenericBrowser("chosen"), "chosen", True),
        (None, "", False),
    ],
    ids=["a window", "in the terminal", "one the person chose", "none"],
)
def test_only_a_browser_with_a_window_is_at_hand(monkeypatch, found, named, at_hand):
    def get():
        if found is None:
            raise webbrowser.Error("could not locate runnable browser")
        return found

    monkeypatch.setattr(webbrowser, "get", get)
    monkeypatch.delenv("BROWSER", raising=False)
    if named:
        monkeypatch.setenv("BROWSER", named)
    assert browser_at_hand() is at_hand


def test_one_command_serves_a_lesson_to_this_machine_until_ctrl_c(open_lessons, tmp_path):
    """Against a configuration that would open it to all, without a token, and on one port."""
    own = tmp_path / "home/.jupyter/jupyter_server_config.py"
    own.parent.mkdir(parents=True)
    own.write_text(
        'c.ServerApp.ip = "0.0.0.0"\nc.IdentityProvider.token = ""\nc.ServerApp.base_url = "/x/"\n'
        "c.ServerApp.port = 8888\nc.ServerApp.port_retries = 0\n"
    )
    with open_lessons("03") as opened:
        page = re.fullmatch(
            r"(http://127\.0\.0\.1:\d+)/lab/tree/03-the-mains-wave\.ipynb\?token=(\w{48})",
            opened.address,
        )
        assert page
        with urllib.request.urlopen(f"{page[1]}/api/status?token={page[2]}") as answer:
            assert answer.status == 200
        with pytest.raises(urllib.error.HTTPError, match="403"):
            urllib.request.urlopen(f"{page[1]}/api/status")
        assert page[2] not in " ".join(psutil.Process(opened.process.pid).cmdline())
        opened.close()
    assert opened.process.returncode == 0
    assert ("You are root here" in opened.said()) is (os.geteuid() == 0)
    assert "No browser was found here. Copy this address" in opened.said()
    assert opened.said().endswith("The lessons are closed. Your answers are kept.\n")
    assert own.parent.joinpath("lab").exists() is False
    assert list((tmp_path / "home").rglob("jpserver-*")) == []
