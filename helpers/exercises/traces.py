"""What a learner leaves on this machine, found by name and erased for good.

Knows files; must never know what an answer is worth.
"""

import json
import shutil
from pathlib import Path

from helpers.exercises.settings import Settings, SettingsError

CHECKPOINTS = ".ipynb_checkpoints"


def find_traces(store, lessons, learner):
    """List what one learner leaves behind.

    Parameters
    ----------
    store : DiskStore
        Where answers are kept.
    lessons : Path
        The folder with the notebooks.
    learner : str
        The learner id, spelling forgiven.

    Returns
    -------
    traces : list of Path
        The log, the brief and sheet of a build, hand-ins, the settings if they are this learner's,
        and the editor's safety copies of notebooks (folders, which may hold other learners' too).

    Raises
    ------
    SettingsError
        If it is no learner id, or nothing here is this learner's; the text says who is here.
    """
    learner = Settings(learner.strip().upper()).learner
    answers, log, settings = store.folder, store.log_path(learner), store.settings_path
    kept = log, store.build_path(learner), store.sheet_path(learner)
    own = [path for each in kept for path in answers.glob(f"{each.name}*")]
    own += answers.glob(f"{log.stem}-as-found-*")
    own += [path for path in store.hand_ins.glob("*") if _of_hand_in(path) == learner]
    own += [p for p in answers.glob(f"{settings.name}*") if _held(p, "learner") == learner]
    if not own:
        prefix = store.log_path("").stem
        here = sorted(path.stem.removeprefix(prefix) for path in answers.glob(f"{prefix}*.jsonl"))
        raise SettingsError(
            f'The learner id "{learner}" was read. Nothing of that id is kept in {answers}. '
            f"Ids with answers there: {', '.join(here) or 'none'}."
        )
    return sorted(own) + sorted(lessons.rglob(CHECKPOINTS))


def erase(path):
    """Erase a file, or a folder with all that is in it.

    Raises
    ------
    OSError
        If the system refuses.
    """
    if path.is_dir() and not path.is_symlink():
        shutil.rmtree(path)
    else:
        path.unlink()


def with_outputs(lessons):
    """Return the notebooks of a folder in which results of run cells are stored."""
    notebooks = sorted(Path(lessons).glob("*.ipynb"))
    return [path for path in notebooks if any(c.get("outputs") for c in _held(path, "cells") or ())]


def _of_hand_in(path):
    """Return the learner of a hand-in; the name is parted at `_`, which stands in no id."""
    return path.name.split("_")[1] if "_" in path.name else None


def _held(path, name):
    """Return what a file of JSON holds under a name; None where it is no such file."""
    try:
        return json.loads(path.read_text(encoding="utf-8"))[name]
    except (ValueError, KeyError, TypeError, OSError):
        return None
