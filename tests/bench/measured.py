"""How a bench script says when, where and by which command it measured, and how it ends."""

import os
import platform
from datetime import UTC, datetime


def heading(command):
    """Return the line that dates a result and names machine and command."""
    machine = f"{platform.system()} {platform.machine()}, {os.cpu_count()} cores"
    python = f"Python {platform.python_version()}"
    return f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC · {machine} · {python} · {command}"


def verdict(held, text):
    """Print a bar with what was found; return the exit code: 0 if it held, 1 if not."""
    print(f"{'held' if held else 'MISSED'}: {text}")
    return 0 if held else 1
