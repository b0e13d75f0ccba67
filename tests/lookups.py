"""Watches a process and the ones it starts: what is looked up, connected to, and run.

An audit hook, put in place by a sitecustomize of a temporary folder, writes each of these into one
file and refuses all that leaves this machine. What is no Python is not watched, so that each other
program that is run is told. Knows no test.
"""

import ipaddress
import json
import os
import sys
from pathlib import Path

RECORD = "CANDLE_WORKSHOP_LOOKUPS"
ADDRESSED = ("socket.connect", "socket.sendto", "socket.sendmsg")
NAMED = ("socket.getaddrinfo", "socket.gethostbyname", "socket.gethostbyaddr", "socket.getnameinfo")
RUN = "subprocess.Popen"
# What is run besides Python, for a version, the machine's name, the fonts here and the settings of
# yarn, which `helpers/opening.py` keeps from reporting. JupyterLab's were seen not to connect
# (strace, on Linux).
KNOWN = ("git", "uname", "fc-list", "node")


def stays_here(host):
    """Return whether a host is this machine by its own name for itself.

    Examples
    --------
    >>> stays_here("127.0.0.1"), stays_here("::1"), stays_here("localhost"), stays_here(None)
    (True, True, True, True)
    >>> stays_here("192.0.2.1"), stays_here("workshop.example")
    (False, False)
    """
    if isinstance(host, bytes):
        host = host.decode("ascii", "replace")
    if host in (None, "", "localhost"):
        return True
    try:
        return ipaddress.ip_address(host.partition("%")[0]).is_loopback
    except ValueError:
        return False


def host_of(event, arguments):
    """Return the host that an audited event of Python's socket module is about, or None."""
    address = arguments[1] if event in ADDRESSED else arguments[0]
    if event in ADDRESSED and not isinstance(address, tuple):
        return None  # a file of this machine, not a host
    return address[0] if isinstance(address, tuple) else address


def watch(record):
    """Write that this process is watched, then each host and program; refuse what leaves."""

    def write(what, about):
        with open(record, "a", encoding="utf-8") as handle:
            handle.write(json.dumps([what, about, " ".join(sys.orig_argv[1:])]) + "\n")

    def hook(event, arguments):
        if event == RUN:
            write(event, os.fspath(arguments[0] or arguments[1][0]))
        elif event in ADDRESSED or event in NAMED:
            host = host_of(event, arguments)
            write(event, None if host is None else str(host))
            if not stays_here(host):
                raise OSError(f"{event} of {host!r} leaves this machine")

    write("watched", sys.executable)
    sys.addaudithook(hook)


def environment(folder, project):
    """Return the environment for a process that runs a project, watched, as on a new machine.

    A folder takes what it asks for, and holds its home. Answers are kept where the project says.
    """
    guard = folder / "guard"
    guard.mkdir(parents=True)
    start = f"import os, lookups\nlookups.watch(os.environ[{RECORD!r}])\n"
    (guard / "sitecustomize.py").write_text(start, encoding="utf-8")
    home = str(folder / "home")
    kept = {n: v for n, v in os.environ.items() if not n.startswith(("JUPYTER", "BROWSER"))}
    for name in ("CANDLE_WORKSHOP_ANSWERS", "PYTHONUNBUFFERED"):
        kept.pop(name, None)
    return {
        **kept,
        "HOME": home,
        "USERPROFILE": home,
        "PYTHONPATH": os.pathsep.join([str(guard), str(project), str(Path(__file__).parent)]),
        RECORD: str(folder / "lookups.jsonl"),
    }


def seen(folder):
    """Return each event that was recorded: what, about whom, and the words of the command."""
    text = (folder / "lookups.jsonl").read_text(encoding="utf-8")
    return [json.loads(line) for line in text.splitlines()]


def unwanted(events):
    """Return the events that left this machine, and the programs run that could do so unseen."""
    python = os.path.realpath(sys.executable)
    return [
        [what, about, words]
        for what, about, words in events
        if (what == RUN and os.path.realpath(about) != python and Path(about).stem not in KNOWN)
        or (what in (*ADDRESSED, *NAMED) and not stays_here(about))
    ]
