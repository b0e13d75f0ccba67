"""What a run of the tests must leave as it was, and how to tell that it did not."""

import subprocess


def kept_state(root):
    """Return `git status` and every file that is changed, new, or an answer log, byte for byte.

    `lessons/answers` and `lessons/hand-in` are ignored by git, so they are read besides. Outside
    a clone (a downloaded copy) there is no status to compare, only the answers.
    """
    status = ""
    if (root / ".git").exists():
        command = ["git", "-c", "core.quotePath=false", "status", "--porcelain", "-z", "-uall"]
        done = subprocess.run(command, cwd=root, capture_output=True, check=True)
        status = done.stdout.decode("utf-8")
    changed = {entry[3:] for entry in status.split("\0")}
    files = {path: (root / path).read_bytes() for path in changed if (root / path).is_file()}
    for folder in ("answers", "hand-in"):
        for path in sorted((root / "lessons" / folder).rglob("*")):
            name = path.relative_to(root).as_posix()
            files[name] = path.read_bytes() if path.is_file() else "a folder"
    return {"git status": status, **files}


def touched(before, after):
    """Return the names of what was added, changed or taken away between two states."""
    return sorted(n for n in before.keys() | after.keys() if before.get(n) != after.get(n))
