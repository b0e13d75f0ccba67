"""A room: every hand-in of a folder and what was typed back from paper, gathered into a mark book.

Knows who is in the class and in which order; each learner is marked by `learner_rows`.
"""

from pathlib import Path

from helpers.classroom import mark_book as states
from helpers.classroom import remarks
from helpers.classroom.cores import each
from helpers.classroom.hand_ins import find_files, group_by_id, learners_named
from helpers.classroom.ids import strangers_in
from helpers.classroom.learner_rows import Marker
from helpers.classroom.mark_book import MarkBook, Turn, lessons_of
from helpers.classroom.one_log import accepted_paths
from helpers.classroom.paper_log import Paper, PaperLog
from helpers.exercises.settings import CLASS_WORD
from helpers.exercises.traces import CHECKPOINTS

MOST_CLASS_WORDS = 1000


def mark_room(wanted, roster, lessons, progress=iter, replies=False):
    """Mark every hand-in in a folder.

    Parameters
    ----------
    wanted : Wanted
        Where, whose, and what counts.
    roster : Roster
        Who is in the class.
    lessons : tuple of Lesson or None
        The bank; None takes that of this installation, and all cores where the class is large.
    progress : callable
        Takes the list of learners and yields them, perhaps showing how far it is.
    replies : bool
        Whether the rows hold the newest answers, and what the card says to wrong ones.

    Returns
    -------
    book : MarkBook
        One row a learner: the roster first, then learners who are not on it.

    Raises
    ------
    Unusable
        If the folder cannot be read, or there is no such hand-in, or answer on paper and screen,
        to accept.

    Notes
    -----
    One learner's lines are held at a time; only marks and states are kept.
    """
    book = MarkBook(wanted.class_word, lessons or lessons_of())
    files, unusable = find_files(wanted.folder, filter(None, (wanted.roster, wanted.paper)))
    # What JupyterLab copies when a file is opened there: hidden, and perhaps older than the file.
    files = [path for path in files if Path(path).parent.name != CHECKPOINTS]
    groups, problems = group_by_id(files, wanted.folder)
    unusable += problems
    accept = [*wanted.accept, *wanted.decided]
    typed = Paper(wanted.paper and PaperLog(wanted.paper), accept)
    accepted = accepted_paths([name for name in accept if name not in typed.decided], groups)
    for learner in typed.lines:
        groups.setdefault(learner, [])
    strangers, problems = strangers_in(groups, roster)
    unusable += problems
    book.problems += unusable
    book.unusable, book.hand_ins = len(unusable), sum(map(len, groups.values()))
    unreadable = learners_named(unusable, roster.learners)
    learners = [*roster.learners, *strangers]

    def work():
        for learner in learners:
            status = states.UNREADABLE if learner in unreadable else states.NOTHING
            ids = roster.ids(learner)
            if any(map(typed.lines.get, ids)):
                status = states.ON_PAPER
            if any(map(groups.get, ids)):
                status = states.HANDED_IN
            if learner in strangers:
                status = states.NOT_ON_ROSTER
            yield learner, status, ids, list(filter(None, [groups.pop(one, None) for one in ids]))

    given = wanted.class_word, lessons, typed, accepted, replies
    shown = each(Marker, given, work(), len(learners) if lessons is None else 0)
    gathered = Gathered(book)
    for _ in progress(learners):
        gathered.add(next(shown))
    known = {question.id for question in book.questions}
    typed.refuse_no_double(wanted.decided, gathered.doubles, roster, known)
    book.problems += [*strangers.values(), *typed.in_words(gathered.doubles)]
    book.problems += remarks.of_shared_lines(gathered.line_ids)
    return book


class Gathered:
    """Puts what each learner has shown into a book, in the order of its rows."""

    def __init__(self, book):
        self.book, self.names, self.doubles, self.line_ids = book, {}, set(), {}

    def add(self, shown):
        book = self.book
        book.rows.append(shown.row)
        shown.row.turns += self._named(shown.turns)
        book.problems += shown.problems
        book.handed_in += shown.handed_in
        self.doubles |= shown.doubles
        self.line_ids[shown.row.learner] = shown.line_ids
        for word in sorted(filter(CLASS_WORD.fullmatch, shown.words)):
            if word in book.class_words or len(book.class_words) < MOST_CLASS_WORDS:
                book.class_words[word] += 1

    def _named(self, turns):
        """Yield the wrong turns, each by the name under which its slip was first met."""
        found = {}
        for question, slip, name, danger in turns:
            key = question, self.names.setdefault((question, slip), name) if slip else name
            answers, before = found.get(key, (0, ""))
            found[key] = answers + 1, danger or before
        return (Turn(*key, *count) for key, count in found.items())
