"""Opens a lesson in JupyterLab: on this machine only, asking nothing of the network.

The learner's own Jupyter configuration is read and never written. Knows lessons by their file
names; must never know what is in them.
"""

import json
import os
import re
import secrets
import signal
import sys
import webbrowser
from pathlib import Path
from tempfile import TemporaryDirectory

from helpers.exercises.refusals import Unusable, plain

FIRST_LESSON = "00"
# Without these answers JupyterLab asks its learner whether it may look for news.
QUIET = {
    "@jupyterlab/apputils-extension:notification": {"fetchNews": "false", "checkForUpdates": False}
}


def find_lesson(folder, wanted=FIRST_LESSON):
    """Return the file of one lesson.

    Parameters
    ----------
    folder : Path
        Where the lessons are.
    wanted : str
        Its number, or the name of its file.

    Returns
    -------
    path : Path

    Raises
    ------
    Unusable
        If there is no such lesson; the text says what was read and which there are.
    """
    held = sorted(folder.glob("*.ipynb"))
    read = wanted.strip()
    number = read.zfill(2) if re.fullmatch("[0-9]{1,2}", read) else None
    for path in held:
        if path.name.startswith(f"{number}-") or read in (path.name, path.stem):
            return path
    there = ", ".join(path.stem for path in held) or "none"
    raise Unusable(
        f'The lesson "{plain(read)}" was read. Give a number, such as 03. In {folder} there are: '
        f"{there}."
    )


def say_now(text):
    """Print at once, also into a file or a container's log."""
    print(text, flush=True)


def open_lesson(path, say=say_now):
    """Serve the folder of a lesson to a browser on this machine, until Ctrl-C.

    Parameters
    ----------
    path : Path
        The lesson to begin with.
    say : callable
        Takes each text for the person at the keyboard.

    Raises
    ------
    Unusable
        If this Python has no JupyterLab.
    """
    with TemporaryDirectory(prefix="lessons-", ignore_cleanup_errors=True) as folder:
        _add_configuration(Path(folder))
        LabApp = _lab_app()
        token, browser = secrets.token_hex(24), browser_at_hand()
        server = LabApp.initialize_server(argv=_options(path, folder, token, browser))
        page = f"{server.connection_url}lab/tree/{path.name}?token={token}"
        # In the loop, behind the server's own first step there: only then does it listen.
        server.io_loop.add_callback(say, "\n".join(_greeting(path, page, browser)))
        _close_at_ctrl_c(server)
        server.start()
    say("The lessons are closed. Your answers are kept.")


def _lab_app():
    try:
        from jupyterlab.labapp import LabApp  # slow, and not needed to say what was wrong
    except ModuleNotFoundError as error:
        raise Unusable(
            f"{sys.executable} has no module {error.name}. Open the lessons with the first command "
            "in README.md: it installs what is missing, beside that file."
        ) from None
    return LabApp


def _add_configuration(folder):
    """Put into the environment what options cannot say, leaving the learner's own files alone."""
    quiet = folder / "labconfig" / "default_setting_overrides.json"
    quiet.parent.mkdir()
    quiet.write_text(json.dumps(QUIET), encoding="utf-8")
    before = os.environ.get("JUPYTER_CONFIG_PATH")
    os.environ["JUPYTER_CONFIG_PATH"] = os.pathsep.join(filter(None, [str(folder), before]))
    # JupyterLab asks the yarn that it brings along for its settings; that reports its use at times.
    os.environ["YARN_ENABLE_TELEMETRY"] = "0"


def _options(path, folder, token, browser):
    """Return what goes before any configuration, in one process: no list of processes shows it."""
    return [
        "--Application.log_level=ERROR",
        "--ServerApp.ip=127.0.0.1",
        "--ServerApp.port=0",
        "--ServerApp.base_url=/",
        f"--IdentityProvider.token={token}",
        "--ServerApp.allow_root=True",
        f"--ServerApp.open_browser={browser}",
        f"--ServerApp.root_dir={path.parent}",
        f"--LabApp.default_url=/lab/tree/{path.name}",
        f"--LabApp.workspaces_dir={folder}",
        "--LabApp.news_url=None",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
        "--LabApp.extension_manager=readonly",
        # Else it runs npm, if that is here, to look for language servers.
        "--LanguageServerManager.autodetect=False",
    ]


def _close_at_ctrl_c(server):
    """Let one Ctrl-C close kernels and server without a question; a second one ends at once."""

    def close(*_):
        signal.signal(signal.SIGINT, signal.default_int_handler)
        server.stop(from_signal=True)

    signal.signal(signal.SIGINT, close)


def browser_at_hand():
    """Return whether a browser with a window can be opened; one in the terminal would cover it."""
    try:
        found = webbrowser.get()
    except webbrowser.Error:
        return False
    return "BROWSER" in os.environ or type(found) is not webbrowser.GenericBrowser


def as_root():
    """Return whether this runs with all rights, as in most containers."""
    return hasattr(os, "geteuid") and os.geteuid() == 0


def _greeting(path, page, browser):
    if browser:
        yield f"{path.stem} opens in your browser. If it does not, copy this address into it:"
    else:
        yield "No browser was found here. Copy this address into one on this machine:"
    yield f"\n    {page}\n"
    if as_root():
        yield "You are root here, as in a container, so JupyterLab runs as root."
    yield "Leave this window open while you work. Ctrl-C in it closes the lessons. Other messages"
    yield "that come here need no answer."
