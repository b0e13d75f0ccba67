"""What a class leaves in the folders of its file, found by what is in it and erased for good.

Knows files and class words; must never know what an answer is worth.
"""

import os
import re
from html import unescape

from helpers.classroom.hand_ins import find_files
from helpers.exercises.answer_log import parse_log
from helpers.exercises.hand_in import MOST_LINES
from helpers.exercises.refusals import plain, refused
from helpers.exercises.traces import CHECKPOINTS

# How a page of ours says whose it is: mark book and feedback in the title, packs and start sheets
# in their head, keys beside each bench code.
WORDS = re.compile(
    r"<title>[^<]*, class ([a-z0-9-]+)</title>"
    r"|class word(?:</dt>\s*<dd>|\s+<b>|\s+)([a-z0-9-]{2,20})(?![a-z0-9-])",
    re.IGNORECASE,
)


def find_traces(made):
    """List what a class has left in the folders that its file names.

    Parameters
    ----------
    made : ClassFile

    Returns
    -------
    own : list of Path
        Hand-ins, mark books of all dates, feedback, packs and the paper log of this class alone.
    left : list of (Path, str)
        What lies there and cannot be told, or is of another class too, each with the reason.

    Raises
    ------
    Unusable
        If a folder cannot be read.
    """
    own, left = [], []
    folder = made.where("hand_ins")
    if folder.is_dir():
        files, problems = find_files(folder, (made.paper_log, made.path))
        left += [(folder / problem.place, problem.found) for problem in problems]
        for path in [folder / os.path.relpath(path, folder) for path in files]:
            _sort(path, _words_of_log(path), made.word, own, left)
    pages = [path for name in ("marked", "paper") for path in _pages(made.where(name))]
    for path in pages:
        _sort(path, _words_of_page(path), made.word, own, left)
    for path in sorted(made.where("marked").glob("mark-book*.csv")):
        if path.with_suffix(".html") in own:
            own += _with_copy(path)
        elif not path.with_suffix(".html").exists():
            left.append((path, "it lies alone, so nothing says of which class it is"))
    own += _with_copy(made.paper_log)
    left += [(path, "it is not erased: delete it by hand if you need it no more")
             for path in (*_with_copy(made.where("roster")), *_with_copy(made.path))]  # fmt: skip
    return sorted(dict.fromkeys(own)), left


def erase(paths):
    """Erase files; yield each that is gone.

    Raises
    ------
    Unusable
        If the system refuses; what was yielded before is gone all the same.
    """
    for path in paths:
        shown = plain(str(path), 300)
        with refused(f"{shown} could not be erased", "Close it, then say it once more."):
            path.unlink()
        yield path


def _with_copy(path):
    """Return a file and the hidden copy that JupyterLab makes of one that is opened there."""
    copy = path.parent / CHECKPOINTS / f"{path.stem}-checkpoint{path.suffix}"
    return [one for one in (path, copy) if one.is_file()]


def _sort(path, words, word, own, left):
    if words == {word}:
        own.append(path)
    elif word in words:
        others = ", ".join(sorted(words - {word}))
        left.append((path, f"it holds answers of another class, too: {others}"))
    elif not words:
        left.append((path, "nothing in it says of which class it is"))


def _words_of_log(path):
    return {line.class_word for line in parse_log(_content(path), MOST_LINES).lines}


def _words_of_page(path):
    text = unescape(_content(path).decode("utf-8", "replace"))
    return {word.lower() for found in WORDS.findall(text) for word in found if word}


def _pages(folder):
    return sorted(path for path in folder.rglob("*.html") if path.is_file())


def _content(path):
    with refused(f"{plain(str(path), 300)} could not be read", "Make it readable, or delete it."):
        return path.read_bytes()
