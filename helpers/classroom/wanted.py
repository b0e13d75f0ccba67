"""What a run of marking is told: where things are, whose they are, what counts."""

from dataclasses import dataclass
from pathlib import Path

from helpers.exercises.refusals import Unusable
from helpers.exercises.settings import Settings, SettingsError


@dataclass(frozen=True)
class Wanted:
    """What is to be marked.

    Parameters
    ----------
    folder, roster, out : str or Path
        Where the hand-ins are, the CSV file with the learners, and the folder to write into.
    class_word : str
        The word that the instructor gave out; answers given under another are not counted.
    only : sequence of str
        Numbers of the lessons that count; with none, those that anybody has begun.
    accept : sequence of str
        Hand-ins that count where several logs of one id have parted; and where screen and paper
        differ, `BENCH-07:ohm-3` for paper and `BENCH-07:ohm-3:screen` for the screen.
    decided : sequence of str
        As `accept`, decided just now: one that is not what it says is refused.
    paper : str, Path or None
        The log of what was typed back from paper, if there is any.

    Raises
    ------
    Unusable
        If the class word cannot be one.
    """

    folder: Path
    roster: Path
    class_word: str
    out: Path
    only: tuple = ()
    accept: tuple = ()
    decided: tuple = ()
    paper: Path | None = None

    def __post_init__(self):
        try:
            word = Settings("ROOM", self.class_word.strip().lower()).class_word
        except SettingsError as error:
            raise Unusable(str(error)) from None
        paths = {name: Path(getattr(self, name)) for name in ("folder", "roster", "out")}
        paper = Path(self.paper) if self.paper else None
        only = tuple(number.zfill(2) for number in self.only)
        vars(self).update(paths, class_word=word, paper=paper, only=only)
