"""One run of marking: from a folder of hand-ins and a roster to the two files of the mark book.

What the command line calls, and the tests and the bench too.
"""

from dataclasses import dataclass
from pathlib import Path

from helpers.classroom.files import Unusable, make_folder, plain, write_whole
from helpers.classroom.mark_book import NOTHING, lessons_of
from helpers.classroom.marker import mark_room
from helpers.classroom.report import page
from helpers.classroom.roster import read_roster
from helpers.classroom.table import csv_lines
from helpers.exercises.settings import Settings, SettingsError


@dataclass(frozen=True)
class Marked:
    """What a run has made: the book and where its two files are."""

    book: object
    table: Path
    report: Path

    def summary(self):
        """Return the lines that the command prints."""
        book = self.book
        silent = sum(row.status == NOTHING for row in book.rows)
        open_danger = sum(bool(book.danger_open(row)) for row in book.rows)
        return [
            f"{book.hand_ins} hand-ins read, {len(book.rows)} learners in the mark book, "
            f"{silent} of them handed in nothing.",
            f"{open_danger} learners have danger items that are not passed yet.",
            f"{len(book.problems)} things to look at; the report names each and what to do.",
            f"Table:  {plain(str(self.table), 300)}",
            f"Report: {plain(str(self.report), 300)}",
        ]


def mark_folder(folder, roster, class_word, out, bank_files=None, progress=iter):
    """Mark a folder of hand-ins and write mark-book.csv and mark-book.html.

    Parameters
    ----------
    folder, roster, out : str or Path
        Where the hand-ins are, the CSV file with the learners, and the folder to write into.
    class_word : str
        The word that the instructor gave out.
    bank_files : mapping or None
        The bank's files by lesson number; None takes the bank of this installation.
    progress : callable
        Takes the list of learners and yields them.

    Returns
    -------
    marked : Marked

    Raises
    ------
    Unusable
        If folder, roster, class word or out cannot be used; the text says what to do.
    """
    if bank_files is None:
        from helpers.exercises.bank import lessons

        bank_files = lessons()
    folder, roster, out = Path(folder), Path(roster), Path(out)
    class_word = _class_word(class_word)
    learners, roster_problems = read_roster(roster)
    make_folder(out)
    table, report = out / "mark-book.csv", out / "mark-book.html"
    apart = (roster, table, report)
    book = mark_room(folder, learners, class_word, lessons_of(bank_files), apart, progress)
    book.problems[:0] = roster_problems
    write_whole(table, csv_lines(book))
    write_whole(report, page(book))
    return Marked(book, table, report)


def _class_word(text):
    try:
        return Settings("ROOM", text.strip().lower()).class_word
    except SettingsError as error:
        raise Unusable(str(error)) from None
