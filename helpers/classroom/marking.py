"""One run of marking: from a folder of hand-ins and a roster to the two files of the mark book.

What the command line calls, and the tests and the bench too.
"""

from contextlib import suppress
from dataclasses import dataclass
from operator import attrgetter
from pathlib import Path

from helpers.classroom.book_pair import BookPair
from helpers.classroom.class_file import unknown_lesson
from helpers.classroom.feedback import write_feedback
from helpers.classroom.mark_book import EARLIER, danger_open, lessons_of
from helpers.classroom.page import page
from helpers.classroom.problems import ASK, Problem, capped
from helpers.classroom.room import mark_room
from helpers.classroom.roster import read_roster
from helpers.classroom.spreadsheet import csv_text, fallen, moved
from helpers.exercises.refusals import Unusable, counted, few, make_folder, plain, write_text
from helpers.exercises.whole_files import as_utf_8
from helpers.exercises.wording import CAUTION

MOST = 10  # learners that one sentence names
MOST_PROBLEMS = 1000  # on the page


@dataclass(frozen=True)
class Marked:
    """What a run has made: the book, its two files, the earlier table, what is other than there.

    `feedback` lists the pages of learners, and behind them the one of all.
    """

    book: object
    table: Path
    page: Path
    earlier: Path | None
    lower: list
    feedback: list

    def summary(self):
        """Return the lines that the command prints."""
        book = self.book
        open_danger = sum(any(danger_open(book.questions, row)) for row in book.rows)
        lines = [
            book.in_words(),
            book.dangers_in_words(),
            f"Danger items that are not passed: {counted(open_danger, 'learner')}.",
            _earlier_in_words(book),
            *(f"Look first: {problem.found}." for problem in self.lower),
            f"{counted(len(book.problems), 'thing')} to look at; the page says what to do."
            if book.problems
            else "Nothing else to look at.",
            f"Table:   {plain(str(self.table), 300)}",
            f"Page:    {plain(str(self.page), 300)}",
            f"Earlier: {plain(str(self.earlier), 300)}" if self.earlier else "",
            self.feedback
            and f"Feedback: {counted(len(self.feedback) - 1, 'page')}; all in one, "
            f"to print: {plain(str(self.feedback[-1]), 300)}",
            _older_in_words(self.page.parent) if not self.feedback else "",
            f"Caution. {CAUTION}",
        ]
        return list(filter(None, lines))


def mark_folder(wanted, *, feedback=None, decimal_comma=False, progress=iter, bank_files=None):
    """Mark a folder of hand-ins and write mark-book.csv and mark-book.html.

    Parameters
    ----------
    wanted : Wanted
        Where, whose, and what counts.
    feedback : str, Path or None
        A folder for a page for each learner, with their own marks alone.
    decimal_comma : bool
        Write the table for a spreadsheet that is set to a decimal comma.
    progress : callable
        Takes the list of learners and yields them.
    bank_files : mapping or None
        The bank's files by lesson number; None takes the bank of this installation.

    Returns
    -------
    marked : Marked

    Raises
    ------
    Unusable
        If folder, roster, out, lessons or what is accepted cannot be used, or no answer counts; the
        text says what to do. Nothing is written then.

    Notes
    -----
    A mark book that lies in `out` is kept under its own date, where its table says something else.
    """
    lessons = None if bank_files is None else lessons_of(bank_files)
    if unknown := unknown_lesson(wanted.only, [one.number for one in lessons or lessons_of()]):
        raise Unusable(unknown)
    members, roster_problems = read_roster(wanted.roster)
    book = mark_room(wanted, members, lessons, progress, bool(feedback))
    _refuse_nothing(book, plain(str(wanted.folder), 300))
    book.narrow(wanted.only)
    make_folder(wanted.out)
    pair = BookPair(wanted.out)
    pair.recover()
    rows = csv_text(book, decimal_comma)
    earlier = pair.kept_names().get(pair.table)
    owners = {one: learner for learner, others in members.also.items() for one in others}
    lower = _lower(pair.table, earlier, rows, bool(wanted.only), owners) if earlier else []
    problems = sorted(lower + roster_problems + book.problems, key=attrgetter("rank"))
    book.problems = capped(problems, MOST_PROBLEMS, "the folder")
    if earlier and _holds(pair.table, rows):
        write_text(pair.page, page(book))
        earlier = None
    else:
        pair.write([rows], page(book))
    pages = write_feedback(book, Path(feedback)) if feedback else []
    return Marked(book, pair.table, pair.page, earlier, lower, pages)


def _earlier_in_words(book):
    """Say whose answers to which questions are of an earlier edition; '' where none are."""
    found = [(row.learner, book.in_state(row, EARLIER)) for row in book.rows]
    told = [f"{plain(who, 40)} ({', '.join(q.id for q in qs)})" for who, qs in found if qs]
    if not told:
        return ""
    return f"{EARLIER.capitalize()}, no marks until answered again: {few(told, MOST, '; ')}."


def _older_in_words(out):
    """Say that pages of feedback which lie there are older than this mark book; '' for none."""
    older = sorted(out.rglob("feedback-*.html"))
    if not older:
        return ""
    where = plain(str(older[0].parent), 300)
    return f"Feedback of an earlier marking lies in {where}: make it anew before you hand it out."


def _refuse_nothing(book, folder):
    """Stop where no answer counts, so that nothing is written over a good mark book."""
    if any(row.states for row in book.rows):
        return
    seen = "".join(f" {problem.place}: {problem.found}." for problem in book.problems[:3])
    if not book.hand_ins:
        none = "No file in {} can be used." if seen else "There is no hand-in in {}."
        raise Unusable(
            f"{none.format(folder)}{seen} Give the folder with the files that hand_in() writes."
        )
    if book.class_word in book.class_words or not book.class_words:
        raise Unusable(f"No answer in {folder} counts.{seen}")
    words = [(plain(word, 40), learners) for word, learners in book.class_words.most_common(5)]
    found = ", ".join(f"{word} ({counted(learners, 'learner')})" for word, learners in words)
    raise Unusable(
        f"No answer in {folder} is under the class word {book.class_word}. Found: {found}. "
        f"Mark with --class-word {words[0][0]}?"
    )


def _holds(path, text):
    with suppress(OSError):  # past reading: it is kept as it is
        return path.read_bytes() == text.encode("utf-8")


def _lower(table, earlier, rows, shared, owners):
    """Say what is other than in the mark book that lay there: lower marks, the same answers."""
    problems, kept = [], f"The one before is kept: {earlier.name}."
    with suppress(OSError):  # past reading: it is kept all the same
        before = as_utf_8(table.read_bytes()).decode("utf-8", "replace")
        if told := [
            f"{plain(name, 40)} (was {was:g}, is {now:g})"
            for name, was, now in fallen(before, rows, shared, owners)
        ]:
            found = f"lower marks than in the mark book before: {few(told, MOST)}"
            advice = f"Is a hand-in missing, or was this another class? {kept}"
            problems.append(Problem("mark-book.csv", found, advice))
        if told := [f"{plain(n, 40)} ({_cells(cells)})" for n, cells in moved(before, rows)]:
            found = f"other marks than before for the same answers: {few(told, MOST)}"
            advice = f"Has the bank changed, or what was decided? Tell these learners. {kept}"
            problems.append(Problem("mark-book.csv", found, advice, ASK))
    return problems


def _cells(cells):
    return few([f"{name} was {was}, is {now or 'open'}" for name, was, now in cells], MOST, "; ")
