"""Where settings, answer logs and hand-ins are kept: in a folder, or in memory.

Who reads or writes them is handed a store; `here` alone asks the environment which. Knows no
question.
"""

import json
import os
import secrets
from contextlib import suppress
from dataclasses import asdict
from pathlib import Path

from helpers.exercises.answer_log import FOLDER_MODE, AnswerLog, MemoryLog
from helpers.exercises.settings import Settings, bench_code, changed
from helpers.exercises.whole_files import as_utf_8, write_new, write_whole
from helpers.sizing.typed import BriefError

ANSWERS_VARIABLE = "CANDLE_WORKSHOP_ANSWERS"
IN_MEMORY = "memory"
_UNUSABLE = (ValueError, KeyError, TypeError, RecursionError)


class OwnBriefError(BriefError):
    """A brief of one's own that cannot be read or kept; the text says what was left as it was."""


def here():
    """Return the store of this machine; asking makes no folder.

    Returns
    -------
    store : DiskStore or MemoryStore
        `lessons/answers` of the project that the notebook lies in, however it was started; of
        the project that these helpers come from, if the notebook lies elsewhere.

    Notes
    -----
    The environment variable CANDLE_WORKSHOP_ANSWERS names another folder, or `memory` for none.
    """
    named = os.environ.get(ANSWERS_VARIABLE)
    if named:
        return MemoryStore() if named == IN_MEMORY else DiskStore(named)
    start = Path.cwd()
    for folder in (start, *start.parents, Path(__file__).resolve().parents[2]):
        if (folder / "lessons").is_dir() and (folder / "helpers" / "exercises").is_dir():
            return DiskStore(folder / "lessons" / "answers")
    return DiskStore(start / "answers")


class MemoryStore:
    """A store that leaves no trace: for tests, for the workshop copy, for trying things out."""

    folder = settings_path = None

    def __init__(self):
        self._kept, self._logs, self._briefs = None, {}, {}

    def kept(self):
        """Return the settings that are remembered, or None."""
        return self._kept

    def load(self):
        """Return the settings and '', as there is nothing to be said."""
        self._kept = self._kept or Settings(bench_code())
        return self._kept, ""

    def save(self, settings):
        """Remember settings; return '', as nothing can refuse."""
        self._kept = settings
        return ""

    def log(self, learner):
        """Return a learner's log, the same one each time."""
        return self._logs.setdefault(learner, MemoryLog())

    def own_brief(self, learner):
        """Return the brief of a learner's own build as it was kept, or ''."""
        return self._briefs.get(learner, "")

    def keep_own_brief(self, learner, text):
        """Keep it in place of the one before."""
        self._briefs[learner] = text


class DiskStore:
    """A folder with one small file of settings and a log for each learner; hand-ins beside it.

    Parameters
    ----------
    folder : str or Path
        The folder; made when there is something to keep.
    """

    def __init__(self, folder):
        self.folder = Path(folder)
        self.hand_ins = self.folder.parent / "hand-in"
        self.settings_path = self.folder / "settings.json"

    def log_path(self, learner):
        """Return the path of a learner's log (the prefix keeps CON and NUL usable as ids)."""
        return self.folder / f"answers-{learner}.jsonl"

    def log(self, learner):
        """Return a learner's log."""
        return AnswerLog(self.log_path(learner))

    def build_path(self, learner):
        """Return the path of the brief of a learner's own build."""
        return self.folder / f"build-{learner}.toml"

    def sheet_path(self, learner):
        """Return the path of the sheet of a learner's own build."""
        return self.folder / f"sheet-{learner}.html"

    def own_brief(self, learner):
        """Return the brief of a learner's own build as it was kept, or ''.

        Raises
        ------
        OwnBriefError
            If there is one that cannot be opened or is no text.
        """
        path = self.build_path(learner)
        try:
            return as_utf_8(path.read_bytes()).decode("utf-8")
        except (FileNotFoundError, NotADirectoryError):
            return ""
        except (OSError, UnicodeDecodeError) as error:
            why = getattr(error, "strerror", None) or "it is no text"
            raise OwnBriefError(
                f"{path} could not be read ({why}). It is left as it is: mend it or give it "
                "another name, then run this cell again."
            ) from None

    def keep_own_brief(self, learner, text):
        """Write it whole in place of the one before.

        Raises
        ------
        OwnBriefError
            If it cannot be written, or the one that is there cannot be read: that one stays.
        """
        self.own_brief(learner)
        path = self.build_path(learner)
        try:
            self.folder.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
            write_whole(path, [text.encode("utf-8")])
        except OSError as error:
            raise OwnBriefError(
                f"{path} could not be written ({error.strerror or error}): what you typed is not "
                "kept. Make room, or make the folder writable, then say it once more."
            ) from None

    def kept(self):
        """Return the settings on the disk, or None where there are none that can be used."""
        with suppress(OSError, *_UNUSABLE):
            return self._read()

    def _read(self):
        kept = json.loads(as_utf_8(self.settings_path.read_bytes()).decode("utf-8"))
        settings = Settings(kept["learner"], kept["class_word"], kept["supply"])
        return changed(settings, learner=settings.learner)

    def load(self):
        """Read the settings, making new ones where there are none.

        Returns
        -------
        settings : Settings
        note : str
            What the learner should know: a file that could not be read, a disk that refused.

        Notes
        -----
        Of two first starts at once both end with one id. A file that cannot be opened is left as
        it is; one whose content is damaged is kept beside the new one.
        """
        path = self.settings_path
        try:
            return self._read(), ""
        except (FileNotFoundError, NotADirectoryError):
            return self._first()
        except OSError as error:
            settings = Settings(bench_code())
            return settings, (
                f"{path} could not be opened ({error.strerror or error}), so the learner id "
                f"{settings.learner} was drawn for now, and {path.name} is left as it is. Make it "
                "readable and run this cell again."
            )
        except _UNUSABLE as error:
            why = "it is nested too deeply" if isinstance(error, RecursionError) else str(error)
            note = f"{path} could not be read ({why}), so a new learner id was drawn. "
            note += self._keep_aside()
            settings, more = self._first()
            return settings, " ".join(filter(None, [note, more]))

    def _keep_aside(self):
        aside = self.folder / f"settings-as-found-{secrets.token_hex(3)}.json"
        try:
            self.settings_path.rename(aside)
        except OSError as error:
            return f"It is left as it is ({error.strerror or error})."
        return (
            f"What was found is kept as {aside.name}. Your earlier answers are still beside it: "
            "give your old id in the set-up cell to go on."
        )

    def _first(self):
        """Draw a learner id and keep it, unless another start has just kept one."""
        settings = Settings(bench_code())
        try:
            self.folder.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
            write_new(self.settings_path, _content(settings))
        except FileExistsError:
            if kept := self.kept():
                return kept, ""
            return settings, self._not_kept(settings, "another file has its name")
        except OSError as error:
            return settings, self._not_kept(settings, error.strerror or error)
        return settings, ""

    def save(self, settings):
        """Write settings whole or not at all; return what the learner should know, or ''.

        A file that cannot be opened is left as it is.
        """
        try:
            self.folder.mkdir(mode=FOLDER_MODE, parents=True, exist_ok=True)
            with suppress(FileNotFoundError):
                self.settings_path.read_bytes()
            write_whole(self.settings_path, [_content(settings)])
        except OSError as error:
            return self._not_kept(settings, error.strerror or error)
        return ""

    def _not_kept(self, settings, reason):
        return (
            f"{self.settings_path} could not be written ({reason}): the learner id "
            f"{settings.learner} holds for now, and has to be given again next time."
        )


def _content(settings):
    return json.dumps(asdict(settings), indent=1).encode("utf-8")
