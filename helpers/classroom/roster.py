"""The roster: who is in the class, read from a CSV file that any spreadsheet saves.

Knows learner ids only; must never ask for names of people.
"""

import csv
import io
import re
from dataclasses import dataclass, field

from helpers.classroom.problems import ASK, Problem
from helpers.exercises.hand_in import LARGEST_FILE
from helpers.exercises.refusals import Unusable, plain, refused
from helpers.exercises.settings import WORKSHOP_LEARNER, Settings, SettingsError
from helpers.exercises.whole_files import as_utf_8

COLUMN, ALSO, SUPPLY = "learner", "also", "supply"
ONE_ID = "Leave it where it belongs; until then it counts for whom it stood for before."
EXAMPLE = "Its first row has to name the columns, one of them `learner`, and each row below one id."


@dataclass(frozen=True)
class Roster:
    """Who is in the class: learner ids, for some other ids that were settled as theirs, or a mains.

    `supplies` are as typed, for those who have one of their own.
    """

    learners: list
    also: dict = field(default_factory=dict)
    supplies: dict = field(default_factory=dict)

    def ids(self, learner):
        """Return all the ids under which a learner has answered, their own first."""
        return [learner, *self.also.get(learner, ())]

    def supply_of(self, one_id):
        """Return the mains of whoever answers under an id, as typed; None where none is."""
        return next((self.supplies.get(n) for n in self.learners if one_id in self.ids(n)), None)


def read_roster(path):
    """Read the learner ids of a class.

    Parameters
    ----------
    path : Path
        A CSV file with a column `learner`, and perhaps a column `also` with other ids or spellings
        of that learner, parted by blanks or commas, or `supply`; columns parted by comma, semicolon
        or tab.

    Returns
    -------
    roster : Roster
        Each learner once, in the order of the file.
    problems : list of Problem
        Rows and ids that could not be used, and learners that stand there twice.

    Raises
    ------
    Unusable
        If the file cannot be read, has no column `learner`, or names no learner.
    """
    rows = _rows(path)
    header = [name.strip().lower() for name in rows[0]] if rows else []
    if COLUMN not in header:
        shown = plain(", ".join(header)) or "nothing"
        raise Unusable(f"The roster {path} was read; its first row holds: {shown}. {EXAMPLE}")
    learners, others, supplies, problems = {}, [], {}, []
    for number, row in enumerate(rows[1:], start=2):
        if not any(cell.strip() for cell in row):
            continue
        cells = dict(reversed(list(zip(header, row, strict=False))))
        learner = cells.get(COLUMN, "").strip().upper()
        if problem := _refusal(learner, learners):
            problems.append(Problem(f"roster, row {number}", *problem))
        else:
            learners[learner] = number
            if supply := cells.get(SUPPLY, "").strip():
                supplies[learner] = supply
            named = re.split(r"[\s,]+", cells.get(ALSO, ""))
            others += [(other, learner, number) for other in named if other not in ("", learner)]
    if not learners:
        raise Unusable(f"The roster {path} was read and names no usable learner id. {EXAMPLE}")
    whose = dict(zip(learners, learners, strict=True)) | {WORKSHOP_LEARNER: "the workshop copy"}
    also = {}
    for other, learner, number in others:
        if whose.setdefault(other, learner) != learner:
            found = f"{plain(other, 40)} stands for {learner}, and for {whose[other]} before that"
            problems.append(Problem(f"roster, row {number}", found, ONE_ID))
        elif other not in also.setdefault(learner, []):
            also[learner].append(other)
    return Roster(list(learners), also, supplies), problems


def _refusal(learner, learners):
    """Say what was found and what to do, where a row does not name a new learner; else None."""
    if learner in learners:
        found = f"{learner} stands there again (first in row {learners[learner]})"
        return found, "Take out the row that is not meant; the learner is counted once.", ASK
    if learner == WORKSHOP_LEARNER:
        found = f"{learner} belongs to the workshop copy, whose answers are published"
        return found, "Give this learner an id of their own."
    try:
        Settings(learner)
    except SettingsError:
        found = f"“{plain(learner, 40)}” is not a learner id" if learner else "the cell is empty"
        return found, "Write the id that the learner uses: 2 to 12 of A-Z, 0-9 and hyphen."
    return None


def _rows(path):
    advice = "Give the path of a CSV file after --roster."
    with refused(f"The roster {path} could not be read", advice):
        if path.stat().st_size > LARGEST_FILE:
            said = f"The roster {path} is larger than 20 MB. Is it the right file? {EXAMPLE}"
            raise Unusable(said)
        content = as_utf_8(path.read_bytes())
    try:
        text = content.decode("utf-8")
        first = text.partition("\n")[0]
        parted_by = max(",;\t", key=first.count)
        return list(csv.reader(io.StringIO(text, newline=""), delimiter=parted_by))
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise Unusable(
            f"The roster {path} was read; line {line} holds letters that are not UTF-8. "
            "Save it as CSV (UTF-8) in the spreadsheet program."
        ) from error
    except csv.Error as error:
        raise Unusable(
            f"The roster {path} could not be read as a table ({error}). "
            "Save it as CSV (UTF-8) in the spreadsheet program."
        ) from error
