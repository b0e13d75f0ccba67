"""After installation nothing is contacted: the guard notices what it guards against, then holds."""

import subprocess
import sys
from pathlib import Path

import lookups
import pytest

ROOT = Path(__file__).resolve().parents[1]


def run(folder, *words):
    """Run Python under the guard; return what it printed."""
    return subprocess.run(
        [sys.executable, *words],
        cwd=ROOT,
        env=lookups.environment(folder, ROOT),
        capture_output=True,
        text=True,
    )


# Addresses and names that documentation may use: RFC 5737 and RFC 6761.
LEAVING = {
    "a connection": "import socket; socket.create_connection(('192.0.2.1', 80), 1)",
    "a name": "import socket; socket.getaddrinfo('workshop.example', 80)",
    "a name, the old way": "import socket; socket.gethostbyname('workshop.example')",
    "a packet": "import socket as s; s.socket(type=s.SOCK_DGRAM).sendto(b'1', ('192.0.2.1', 9))",
    "a page": "import urllib.request as r; r.urlopen('http://workshop.example/', timeout=1)",
    "in another Python": (
        "import subprocess, sys; subprocess.run([sys.executable, '-c',"
        " \"import socket; socket.gethostbyname('workshop.example')\"], check=True)"
    ),
    "in a thread": ("import asyncio; asyncio.run(asyncio.open_connection('workshop.example', 80))"),
}


@pytest.mark.parametrize("program", LEAVING.values(), ids=LEAVING)
def test_what_leaves_this_machine_is_refused_and_told(tmp_path, program):
    done = run(tmp_path, "-c", program)
    assert done.returncode == 1 and "leaves this machine" in done.stderr
    told = lookups.unwanted(lookups.seen(tmp_path))
    assert told and all(about in ("192.0.2.1", "workshop.example") for _, about, _ in told)


def test_a_program_that_cannot_be_watched_is_told(tmp_path):
    run(tmp_path, "-c", "import subprocess; subprocess.run(['no-such-program'])")
    assert ["subprocess.Popen", "no-such-program"] in [
        told[:2] for told in lookups.unwanted(lookups.seen(tmp_path))
    ]


def test_what_stays_on_this_machine_passes(tmp_path):
    program = (
        "import socket\nheard = socket.create_server(('127.0.0.1', 0))\n"
        "socket.create_connection(('localhost', heard.getsockname()[1]))"
    )
    assert run(tmp_path, "-c", program).returncode == 0
    events = lookups.seen(tmp_path)
    assert len(events) > 2 and lookups.unwanted(events) == []


def test_marking_a_room_looks_nothing_up(tmp_path):
    room = tmp_path / "room"
    assert run(tmp_path / "one", "-m", "helpers", "demo-room", str(room)).returncode == 0
    words = ["mark", str(room / "hand-ins"), "--roster", str(room / "roster.csv")]
    words += ["--class-word", "wick", "--out", str(room / "marked")]
    done = run(tmp_path / "two", "-m", "helpers", *words)
    assert done.returncode == 0 and (room / "marked/mark-book.html").is_file()
    for folder in ("one", "two"):
        events = lookups.seen(tmp_path / folder)
        assert [what for what, *_ in events] == ["watched"]
