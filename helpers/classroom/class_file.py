"""A class in one file: its word, supply, lessons and roster, and how long what it left is kept.

Knows names and words; must never read an answer.
"""

import json
import re
import tomllib
from dataclasses import dataclass, fields
from datetime import date, timedelta
from pathlib import Path

from helpers.classroom.wanted import Wanted
from helpers.exercises import bank
from helpers.exercises.refusals import MAKE_ROOM, Unusable, make_folder, plain, refused, write_text
from helpers.exercises.settings import Settings, SettingsError, changed
from helpers.exercises.whole_files import as_utf_8, write_new
from helpers.exercises.wording import COMMAND
from helpers.pages import templates

KEPT_DAYS = 90  # until marks are settled, with room for a question; common practice, no source
MAKE_ONE = f"To make a class file: {COMMAND} class FILE.toml --word WORD"
NEEDED = {"folder": "FOLDER", "roster": "--roster", "class_word": "--class-word", "out": "--out"}


@dataclass(frozen=True)
class ClassFile:
    """What stands in the file of a class; names of files and folders begin at its own folder."""

    path: Path
    word: str
    supply: str = Settings.supply
    lessons: tuple = ()
    roster: str = "roster.csv"
    hand_ins: str = "hand-ins"
    paper: str = "paper"
    marked: str = "marked"
    keep_until: date | None = None
    accept: tuple = ()

    def where(self, name):
        """Return the path behind one of `roster`, `hand_ins`, `paper` and `marked`."""
        return self.path.parent / getattr(self, name)

    @property
    def paper_log(self):
        return self.where("paper") / f"paper-{self.word}.jsonl"

    def over(self, today=None):
        """Say that the time is over for which this class is kept; '' while it is not."""
        if not self.keep_until or (today or date.today()) <= self.keep_until:
            return ""
        return (
            f"This class was to be kept until {self.keep_until}. If its marks are settled: "
            f"{COMMAND} forget-class {plain(str(self.path), 300)}"
        )

    def for_marking(self):
        """Return what is to be marked of it."""
        folder, roster, out = map(self.where, ("hand_ins", "roster", "marked"))
        counts = {"only": self.lessons, "accept": self.accept, "paper": self.paper_log}
        return Wanted(folder, roster, self.word, out, **counts)


def write_class(path, word, supply=Settings.supply, lessons=(), roster="roster.csv", benches=0):
    """Write the file of a new class, the folder for its hand-ins, and perhaps its roster.

    Parameters
    ----------
    path : str or Path
        The file, such as wick.toml.
    word : str
        The class word.
    supply : str
        Name of the supply that most have.
    lessons : sequence of str
        Numbers of the lessons that count; none takes those that anybody has begun.
    roster : str
        The name of the roster, from the folder of the file.
    benches : int
        How many bench codes go into the roster, where there is none yet [-].

    Returns
    -------
    made : ClassFile

    Raises
    ------
    Unusable
        If something given cannot be used, there is a file of that name, which is left as it is, or
        another class lies in that folder: the two would share hand-ins, roster and mark book.
    """
    path = Path(path)
    given = {"word": word, "supply": supply, "lessons": list(lessons), "roster": str(roster)}
    until = date.today() + timedelta(days=KEPT_DAYS)
    made = _checked(path, given | {"keep_until": until}, "The class was not made")
    if not 0 <= benches <= 999:
        raise Unusable(f"{benches} benches were read; a roster is made of 1 to 999.")
    _refuse_neighbours(made)
    text = templates.text("class.toml", **{n: _as_toml(value) for n, value in vars(made).items()})
    make_folder(path.parent)
    _write_new(path, text, "Give another name, or change that file in an editor.")
    make_folder(made.where("hand_ins"))
    if benches and not made.where("roster").exists():
        codes = "".join(f"BENCH-{number:02d}\n" for number in range(1, benches + 1))
        _write_new(made.where("roster"), f"learner\n{codes}", "Give another name for the roster.")
    return made


def read_class(path):
    """Read the file of a class.

    Parameters
    ----------
    path : str or Path

    Returns
    -------
    read : ClassFile

    Raises
    ------
    Unusable
        If it cannot be read or used; the text says what was read, what is wrong and what to do.
    """
    path = Path(path)
    shown = f"The class file {plain(str(path), 300)}"
    with refused(f"{shown} could not be read", MAKE_ONE):
        content = as_utf_8(path.read_bytes())
    try:
        held = tomllib.loads(content.decode("utf-8"))
    except ValueError as error:  # not UTF-8, or not TOML
        raise Unusable(
            f"{shown} was read, and it is not written as TOML ({plain(str(error), 200)}). Put "
            f'words in quotation marks, as in word = "wick". {MAKE_ONE}'
        ) from None
    return _checked(path, held, f"{shown} was read")


def keep_decided(made, names):
    """Write what was decided into the file of a class, behind `accept`; all else stays as it is.

    Parameters
    ----------
    made : ClassFile
    names : sequence of str
        What is to stand there beside what does.

    Raises
    ------
    Unusable
        If the file cannot be read or written, or its line cannot be found; it is left as it is.
    """
    _write_decided(made, list(dict.fromkeys([*made.accept, *names])))


def forget_decided(made):
    """Empty what stands behind `accept` in the file of a class; raise as `keep_decided`."""
    if made.accept:
        _write_decided(made, [])


def _write_decided(made, wanted):
    with refused(f"{plain(str(made.path), 300)} could not be read", MAKE_ONE):
        text = as_utf_8(made.path.read_bytes()).decode("utf-8")
    line = f"accept = {_as_toml(wanted)}"
    text = re.sub(r'(?m)^accept\s*=\s*\[(?:"(?:\\.|[^"\\])*"|[^\]"#])*\]', lambda _: line, text)
    try:
        written = tomllib.loads(text).get("accept")
    except tomllib.TOMLDecodeError:
        written = None
    if written != wanted:
        raise Unusable(f"{plain(str(made.path), 300)} was left as it is. Write into it: {line}")
    write_text(made.path, [text])


def for_marking(class_file, **given):
    """Return what is to be marked: what is given, else what the class file says.

    Raises
    ------
    Unusable
        If the class file cannot be used, or one of folder, roster, class_word and out is missing.
    """
    wanted = vars(read_class(class_file).for_marking()) if class_file else {}
    wanted = wanted | {name: value for name, value in given.items() if value}
    missing = [said for name, said in NEEDED.items() if name not in wanted]
    if missing:
        raise Unusable(
            f"To mark, these are missing: {', '.join(missing)}. Give them, or name a class file: "
            f"mark --class FILE.toml. {MAKE_ONE}"
        )
    return Wanted(**wanted)


def _refuse_neighbours(made):
    """Raise `Unusable` where another class lies in the folder of a new one."""
    for path in sorted(made.path.parent.glob("*.toml")):
        try:
            word = read_class(path).word
        except Unusable:  # no class, such as a brief of the sizing
            continue
        if path != made.path:
            home = path.parent.parent if path.parent.name == word else path.parent
            own = home / made.word / f"{made.word}.toml"
            raise Unusable(
                f"Class {word} lies in that folder ({plain(str(path), 300)}). Two classes there "
                "would share hand-ins, roster and mark book. Give this one a folder of its own: "
                f"{plain(str(own), 300)}"
            )


def _checked(path, held, said):
    """Return the class, its spelling forgiven; raise `Unusable` where a value cannot be used."""
    names = [one.name for one in fields(ClassFile)][1:]
    for name, value in held.items():
        if name not in names:
            raise Unusable(f"{said}: “{plain(name)}” is no name there. Use: {', '.join(names)}.")
        if reason := _unfit(name, value):
            raise Unusable(f"{said}: {name} = {plain(str(value))}. {reason}")
    if "word" not in held:
        raise Unusable(f'{said}: it has no class word. Add a line such as word = "wick".')
    try:
        settings = changed(Settings("ROOM"), None, held["word"], held.get("supply"))
    except SettingsError as error:
        raise Unusable(f"{said}. {error}") from None
    numbers = tuple(number.zfill(2) for number in held.get("lessons", ()))
    accept = tuple(held.get("accept", ()))
    checked = {"word": settings.class_word, "supply": settings.supply}
    return ClassFile(path, **held | checked | {"lessons": numbers, "accept": accept})


def _unfit(name, value):
    """Say why a value is not of its kind and what to write; '' where it is."""
    if name == "keep_until":
        return "" if type(value) is date else "Write a day without quotes, such as 2027-03-31."
    if name in ("lessons", "accept"):
        if not isinstance(value, list) or not all(isinstance(one, str) for one in value):
            return f'Write a list of words in quotes, such as {name} = ["01", "02"].'
        if name == "lessons":
            return unknown_lesson(value, bank.lessons())
    elif not isinstance(value, str) or not value.strip():
        return f'Write it in quotes, such as {name} = "{getattr(ClassFile, name, "wick")}".'
    return ""


def unknown_lesson(numbers, held):
    """Name the first of some numbers that is no lesson, and those that are held; '' for none."""
    for number in numbers:
        if number.zfill(2) not in held:
            return f"There is no lesson {plain(number, 40)}; the bank holds {', '.join(held)}."
    return ""


def _as_toml(value):
    return str(value) if isinstance(value, date | Path) else json.dumps(value, ensure_ascii=False)


def _write_new(path, text, advice):
    shown = plain(str(path), 300)
    with refused(f"{shown} could not be written", MAKE_ROOM):
        try:
            write_new(path, text.encode("utf-8"))
        except FileExistsError:
            said = f"{shown} is there already, and was left as it is. {advice}"
            raise Unusable(said) from None
