"""A page for one learner: their own answers alone, nobody else's marks, and no average.

Knows a row of the mark book; must never mark anything itself.
"""

from datetime import UTC, datetime

from helpers.classroom import mark_book as states
from helpers.classroom.mark_book import danger_open
from helpers.classroom.page import LOOKS
from helpers.exercises.refusals import make_folder, plain, write_text
from helpers.exercises.wording import CAUTION, question_lines
from helpers.pages import templates
from helpers.physics.mains import SUPPLIES

OPEN = (states.DANGER, states.EARLIER, states.NONE, states.HELPED, states.PART)

LONGEST = 200  # characters of an answer


def write_feedback(book, folder, at=None):
    """Write a page for each learner who has an answer that counts, and one of all, to print.

    Parameters
    ----------
    book : MarkBook
        Marked with `replies`.
    folder : Path
        Where the pages go, named feedback-BENCH-07.html, and feedback.html for all of them; one of
        before is replaced.
    at : datetime or None
        When it was marked; None is now.

    Returns
    -------
    paths : list of Path
        The pages of learners, then that of all; empty where no answer counts.

    Raises
    ------
    Unusable
        If one cannot be written.
    """
    make_folder(folder)
    parts = {row.learner: _part(book, row, at) for row in book.rows if row.states}
    pages = {f"feedback-{learner}": (learner, [part]) for learner, part in parts.items()}
    pages |= {"feedback": ("", parts.values())} if parts else {}
    for name, (whose, held) in pages.items():
        page = templates.page("feedback", whose=whose, class_word=book.class_word, parts=held)
        write_text(folder / f"{name}.html", page)
    return [folder / f"{name}.html" for name in pages]


def _part(book, row, at):
    """Return what is told to one learner.

    Notes
    -----
    What is to be looked at again comes first, dangers before all, each with the newest answer,
    what the card said to it and the first nudge; no right answer stands there. What was answered
    on paper stands there with its question: no card shows it.
    """
    begun = [lesson for lesson in book.lessons if lesson.begun(row)]
    wrong, blank = danger_open([q for lesson in begun for q in lesson.questions], row)
    again = [q for n in begun for q in n.questions if row.state(q) in OPEN]
    hurts = {name for name, (danger, _) in row.replies.items() if danger}
    again.sort(key=lambda q: (q.id not in hurts, OPEN.index(row.state(q))))
    return templates.part(
        "feedback-part",
        book=book,
        row=row,
        marked=f"{at or datetime.now(UTC):%Y-%m-%d}",
        caution=CAUTION,
        begun=begun,
        danger=wrong,
        danger_blank=blank,
        again=again,
        looks=LOOKS,
        earlier=states.EARLIER,
        asked_on_paper=lambda question: _asked(question, row.asked.get(question.id)),
        typed=lambda q: plain(row.typed[q.id].partition("\n")[0], LONGEST, "\u00a0"),
        open_in=lambda lesson: [q for q in lesson.questions if q.id not in row.states],
    )


def _asked(question, line):
    """Return what a question on paper said, by its line; nothing where its words are others now."""
    if not line or line.edition != question.edition or line.supply not in SUPPLIES:
        return []
    which = line.learner, line.class_word, SUPPLIES[line.supply], line.draw
    said = question_lines(question, question.numbers_for(*which), line.draw)
    return [one for one in said if one.role in ("ask", "option")]
