"""Starts a real JupyterLab on a copy of the lessons, and a real Chromium to drive it.

Everything it writes goes into one temporary folder. Knows no test.
"""

import json
import os
import secrets
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from contextlib import contextmanager
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
]
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "chrome")
IDLE = """() => {
  const panel = window.jupyterapp && window.jupyterapp.shell.currentWidget;
  const kernel = panel && panel.context && panel.context.sessionContext.session
    && panel.context.sessionContext.session.kernel;
  return kernel && kernel.connectionStatus === 'connected' && kernel.status === 'idle';
}"""


def find_browser():
    """Return the path of a Chromium on this machine, or None."""
    return next(filter(None, map(shutil.which, BROWSERS)), None)


def _free_port():
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def _environment(folder):
    environment = dict(os.environ)
    for name in (
        "JUPYTER_CONFIG_DIR",
        "JUPYTER_DATA_DIR",
        "JUPYTER_RUNTIME_DIR",
        "JUPYTERLAB_SETTINGS_DIR",
        "JUPYTERLAB_WORKSPACES_DIR",
        "IPYTHONDIR",
        "MPLCONFIGDIR",
    ):
        environment[name] = str(folder / name.lower())
    news = {"fetchNews": "false", "checkForUpdates": False}
    overrides = folder / "jupyter_config_dir" / "labconfig" / "default_setting_overrides.json"
    overrides.parent.mkdir(parents=True)
    overrides.write_text(json.dumps({"@jupyterlab/apputils-extension:notification": news}))
    environment["CANDLE_WORKSHOP_ANSWERS"] = str(folder / "answers")
    environment["PYTHONPATH"] = str(ROOT)
    return environment


@contextmanager
def lab(folder):
    """Serve a copy of lessons/ from `folder`; yield the address with its token."""
    folder = Path(folder)
    work = folder / "work"
    shutil.copytree(
        ROOT / "lessons", work, ignore=shutil.ignore_patterns("answers", "hand-in", ".ipynb*")
    )
    port, token = _free_port(), secrets.token_hex(16)
    command = [sys.executable, "-m", "jupyterlab", "--no-browser", "--allow-root"]
    command += [
        "--ServerApp.ip=127.0.0.1",
        f"--ServerApp.port={port}",
        "--ServerApp.port_retries=0",
        f"--IdentityProvider.token={token}",
        f"--ServerApp.root_dir={work}",
        "--LabApp.expose_app_in_browser=True",
        "--LabApp.extension_manager=readonly",
        "--ServerApp.terminals_enabled=False",
    ]
    with open(folder / "server.log", "wb") as said:
        server = subprocess.Popen(
            command, env=_environment(folder), stdout=said, stderr=subprocess.STDOUT
        )
    try:
        _wait_for(f"http://127.0.0.1:{port}/api/status?token={token}", server, folder)
        yield f"http://127.0.0.1:{port}/lab/tree/{{name}}?reset&token={token}"
    finally:
        server.terminate()
        server.wait(timeout=20)


def _wait_for(address, server, folder, seconds=60):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if server.poll() is not None:
            break
        try:
            with urllib.request.urlopen(address, timeout=2):
                return
        except OSError:
            time.sleep(0.2)
    raise RuntimeError(f"JupyterLab did not start:\n{(folder / 'server.log').read_text()[-2000:]}")


@contextmanager
def chromium(width=1200, height=1000):
    """Yield a page of a fresh Chromium."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=find_browser(), headless=True, args=FLAGS
        )
        yield browser.new_page(viewport={"width": width, "height": height})
        browser.close()


def open_notebook(page, address, name):
    """Open a notebook and wait until its kernel is idle."""
    page.goto(address.format(name=name))
    page.wait_for_function(IDLE, timeout=60_000)


def run_all(page):
    """Run every cell and wait for the last one."""
    page.evaluate("window.jupyterapp.commands.execute('notebook:run-all-cells')")
    page.wait_for_function(IDLE, timeout=60_000)


def save(page, cell="", words=""):
    """Save the notebook and wait until it is clean; first until what a cell holds has the words.

    A verdict is on the page one message before it is in the saved copy.
    """
    page.wait_for_function(
        """([id, words]) => !id || [...window.jupyterapp.shell.currentWidget.context.model.cells]
        .some(cell => cell.id === id && JSON.stringify(cell).includes(words))""",
        arg=[cell, words],
    )
    page.evaluate("window.jupyterapp.commands.execute('docmanager:save')")
    page.wait_for_function("!window.jupyterapp.shell.currentWidget.context.model.dirty")


def restart_kernel(page):
    """Restart the kernel, as the menu does, and wait until it is idle again."""
    page.evaluate("void window.jupyterapp.commands.execute('notebook:restart-kernel')")
    page.locator(".jp-Dialog .jp-mod-accept").click()
    page.wait_for_function(IDLE, timeout=60_000)


def bring_to_view(page, question_id):
    """Scroll to the card of a question; return its controls."""
    index = page.evaluate(
        "id => window.jupyterapp.shell.currentWidget.content.widgets"
        ".findIndex(cell => cell.model.id === id)",
        question_id,
    )
    page.evaluate(
        "i => window.jupyterapp.shell.currentWidget.content.scrollToItem(i, 'center')", index
    )
    return page.locator(f".cw-c-{question_id}")
