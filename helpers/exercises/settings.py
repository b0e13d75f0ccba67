"""Who answers, in which class, on which mains, and where the answers are kept.

One small file beside the answer logs remembers it. Knows no question.
"""

import json
import os
import re
import secrets
from contextlib import suppress
from dataclasses import asdict, dataclass, replace
from pathlib import Path

from helpers.exercises.answer_log import FOLDER_MODE
from helpers.exercises.whole_files import as_utf_8, write_new, write_whole
from helpers.physics.mains import SUPPLIES

ANSWERS_VARIABLE = "CANDLE_WORKSHOP_ANSWERS"
IN_MEMORY = "memory"
WORKSHOP_LEARNER = "WORKSHOP"
LEARNER_ID = re.compile(r"[A-Z0-9-]{2,12}")
CLASS_WORD = re.compile(r"[a-z0-9-]{2,20}")
CODE_LETTERS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"


class SettingsError(ValueError):
    """A setting that cannot be used. The text says what was read and what to type instead."""


@dataclass(frozen=True)
class Settings:
    """A learner's settings.

    Parameters
    ----------
    learner : str
        2 to 12 of A-Z, 0-9 and hyphen.
    class_word : str
        The word that the instructor gave out: 2 to 20 of a-z, 0-9 and hyphen.
    supply : str
        Name of one of `helpers.physics.mains.SUPPLIES`.

    Raises
    ------
    SettingsError
        If one of them is not of that form.
    """

    learner: str
    class_word: str = "home"
    supply: str = "230 V 50 Hz"

    def __post_init__(self):
        if not LEARNER_ID.fullmatch(self.learner):
            raise SettingsError(
                f"The learner id {self.learner!r} was read. Use 2 to 12 of A-Z, 0-9 and hyphen, "
                'such as "BENCH-07".'
            )
        if not CLASS_WORD.fullmatch(self.class_word):
            raise SettingsError(
                f"The class word {self.class_word!r} was read. Use 2 to 20 of a-z, 0-9 and hyphen, "
                'such as "wick".'
            )
        if self.supply not in SUPPLIES:
            raise SettingsError(
                f"The supply {self.supply!r} was read. Choose one of: {', '.join(SUPPLIES)}."
            )


def bench_code():
    """Return a fresh code for somebody who chose no learner id."""
    return "BENCH-" + "".join(secrets.choice(CODE_LETTERS) for _ in range(4))


def changed(settings, learner=None, class_word=None, supply=None):
    """Return settings with what was given put in, spelling forgiven.

    Raises
    ------
    SettingsError
        If a value cannot be used, or the learner is the one whose answers are published.
    """
    given = {
        "learner": learner and str(learner).strip().upper(),
        "class_word": class_word and str(class_word).strip().lower(),
        "supply": supply and _supply_name(supply),
    }
    given = {name: value for name, value in given.items() if value}
    if given.get("learner") == WORKSHOP_LEARNER:
        raise SettingsError(
            f"The learner id {WORKSHOP_LEARNER} belongs to the workshop copy, whose answers are "
            "published. Choose another one."
        )
    return replace(settings, **given)


def _supply_name(text):
    squeezed = re.sub(r"[\s\u00a0\u2009\u202f,/]", "", str(text)).lower()
    return next((n for n in SUPPLIES if n.replace(" ", "").lower() == squeezed), str(text))


def answers_folder():
    """Return where answers are kept, or None where they must leave no trace.

    Returns
    -------
    folder : Path or None
        `lessons/answers` of the project that the notebook lies in, however it was started; of
        the project that these helpers come from, if the notebook lies elsewhere.

    Notes
    -----
    The environment variable CANDLE_WORKSHOP_ANSWERS names another folder, or `memory` for none.
    """
    named = os.environ.get(ANSWERS_VARIABLE)
    if named:
        return None if named == IN_MEMORY else Path(named)
    here = Path.cwd()
    for folder in (here, *here.parents, Path(__file__).resolve().parents[2]):
        if (folder / "lessons").is_dir() and (folder / "helpers" / "exercises").is_dir():
            return folder / "lessons" / "answers"
    return here / "answers"


def log_path(folder, learner):
    """Return the path of a learner's log (the prefix keeps CON and NUL usable as ids)."""
    return folder / f"answers-{learner}.jsonl"


def settings_path(folder):
    """Return the path of the file that remembers the settings."""
    return folder / "settings.json"


def read(folder):
    """Return the settings kept in a folder.

    Raises
    ------
    OSError, ValueError, KeyError, TypeError, RecursionError
        If there are none, or none that can be used.
    """
    kept = json.loads(as_utf_8(settings_path(folder).read_bytes()).decode("utf-8"))
    settings = Settings(kept["learner"], kept["class_word"], kept["supply"])
    return changed(settings, learner=settings.learner)


def load(folder):
    """Read the settings kept in a folder, making new ones where there are none.

    Parameters
    ----------
    folder : Path or None
        None keeps nothing.

    Returns
    -------
    settings : Settings
    note : str
        What the learner should know: a file that could not be read, a disk that refused.

    Notes
    -----
    Of two first starts at once both end with one id. A file that cannot be opened is left as it is;
    one whose content is damaged is kept beside the new one.
    """
    if folder is None:
        return Settings(bench_code()), ""
    path = settings_path(folder)
    try:
        return read(folder), ""
    except (FileNotFoundError, NotADirectoryError):
        return _first(folder, path)
    except OSError as error:
        settings = Settings(bench_code())
        return settings, (
            f"{path} could not be opened ({error.strerror or error}), so the learner id "
            f"{settings.learner} was drawn for now, and {path.name} is left as it is. Make it "
            "readable and run this cell again."
        )
    except (ValueError, KeyError, TypeError, RecursionError) as error:
        note = f"{path} could not be read ({_reason(error)}), so a new learner id was drawn. "
        note += _keep_aside(path)
        settings, more = _first(folder, path)
        return settings, " ".join(filter(None, [note, more]))


def _reason(error):
    return "it is nested too deeply" if isinstance(error, RecursionError) else str(error)


def _keep_aside(path):
    aside = path.with_name(f"settings-as-found-{secrets.token_hex(3)}.json")
    try:
        path.rename(aside)
    except OSError as error:
        return f"It is left as it is ({error.strerror or error})."
    return (
        f"What was found is kept as {aside.name}. Your earlier answers are still beside it: give "
        "your old id in the set-up cell to go on."
    )


def _first(folder, path):
    """Draw a learner id and keep it, unless another start has just kept one."""
    settings = Settings(bench_code())
    try:
        folder.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
        write_new(path, _content(settings))
    except FileExistsError:
        with suppress(OSError, ValueError, KeyError, TypeError, RecursionError):
            return read(folder), ""
        return settings, _not_kept(path, settings, "another file has its name")
    except OSError as error:
        return settings, _not_kept(path, settings, error.strerror or error)
    return settings, ""


def save(folder, settings):
    """Write settings whole or not at all; return what the learner should know, or ''.

    A file that cannot be opened is left as it is.
    """
    if folder is None:
        return ""
    path = settings_path(folder)
    try:
        folder.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
        with suppress(FileNotFoundError):
            path.read_bytes()
        write_whole(path, [_content(settings)])
    except OSError as error:
        return _not_kept(path, settings, error.strerror or error)
    return ""


def _content(settings):
    return json.dumps(asdict(settings), indent=1).encode("utf-8")


def _not_kept(path, settings, reason):
    return (
        f"{path} could not be written ({reason}): the learner id {settings.learner} holds for now, "
        "and has to be given again next time."
    )
