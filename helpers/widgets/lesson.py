"""What a lesson's cells call: open a lesson, show a card, answer in code, look back, hand in.

Keeps the one session of this kernel. Displays; never marks.
"""

from helpers.exercises import hand_in as hand_in_files
from helpers.exercises.answer_log import LogError
from helpers.exercises.bank import lessons
from helpers.exercises.hand_in import HandInError
from helpers.exercises.mistakes import explained
from helpers.exercises.session import UnknownQuestion, learner_session, workshop_session
from helpers.exercises.settings import SettingsError
from helpers.exercises.store import here
from helpers.exercises.wording import CAUTION, Line, made_for_another_supply
from helpers.figures import job
from helpers.pages.page import Page
from helpers.pages.progress import progress_lines
from helpers.pages.questions import (
    feedback_page,
    last_outcome,
    predictions_page,
    question_page,
    whole_page,
)
from helpers.pages.style import STYLE
from helpers.widgets.card import Card
from helpers.widgets.live import catch_up, follow, open_on_page, show_page
from helpers.widgets.screen import show

_open = {}

#: How every card is answered: said once a lesson, by its set-up cell.
HOW_TO_ANSWER = (
    "How to answer: type a number with its unit, choose, tick, or press the steps in their order; "
    "then Check. A placed step is taken back by a press, and moved by a drag, or by Alt with an "
    "arrow key. Nudge gives a hint; the next one opens after a try. By keys: run the cell with "
    "Ctrl + Enter, then Tab leads into the card; Escape leads back to its cell. Once a question is "
    "finished, Fresh numbers or Another case asks it again. Instead of a card, one line of code "
    "will do: `answer(…)`, with the question's id, then your answer, each in quotes; a third piece "
    "such as `draw=1` names fresh numbers."
)


AGAIN = "run this line again."


def open_lesson(number, learner=None, class_word=None, supply=None, workshop_copy=False):
    """Get a lesson ready: who answers, on which supply, where answers are kept, how far they are.

    Parameters
    ----------
    number : str
        The lesson, such as "02".
    learner, class_word, supply : str, optional
        Change the settings, which are remembered for all lessons.
    workshop_copy : bool
        True in `solutions/` only: a fixed learner, and nothing is written.
    """
    if _is_lesson(number):
        lines, still = begin(number, learner, class_word, supply, workshop_copy), ""
        if number in job.TODAY:
            still, said, _ = job.today(number)
            lines.append(Line("hint", said))
        show(Page(lines, still, extra_html=STYLE))
        session = current_session()
        supply = session.settings.supply
        show_page(session, f"ready-{number}", lambda s: _ready_page(s, number, supply))
        show(Page([Line("folded", HOW_TO_ANSWER)]))


def _ready_page(session, number, supply):
    """Return what says for whom a lesson is open, whose cells were run on this supply."""
    s = session.settings
    path = session.log.path
    kept = f"Where your answers are kept: {path}." if path else "Answers are kept in memory only."
    lines = [
        Line("heading", f"Ready. Lesson {number}: {lessons()[number].TITLE}"),
        Line("text", f"Supply {s.supply} · learner {s.learner} · class word {s.class_word}"),
    ]
    if s.supply != supply and supply in _open.get("computed", ()):
        lines.append(Line("note", made_for_another_supply(supply)))
    place = Line("folded" if path else "note", kept)
    return Page([*lines, *progress_lines(session, number), place], name="cw-progress")


def begin(number, learner=None, class_word=None, supply=None, workshop_copy=False):
    """Open the session of a lesson; return lines that say what is wrong, if anything is."""
    notes = []
    try:
        if workshop_copy:
            session, note = workshop_session(), ""
        else:
            session, note = learner_session(_store(), learner, class_word, supply)
    except SettingsError as error:
        session, note = learner_session(_store())
        notes = [Line("danger", f"Nothing was changed. {error} As before:")]
    earlier = _open.get("session")
    if earlier and earlier.same_as(session):  # it knows what a full disk has refused
        catch_up(earlier)
        session = earlier
    _open.update(session=session, lesson=number)
    open_on_page(session)
    return notes + [Line("danger", text) for text in [note, *session.problems] if text]


def open_number():
    """Return the lesson that is open, 00 if none is."""
    return _open.get("lesson", "00")


def _store():
    """Return where this kernel keeps answers: one place as long as it lives, also in memory."""
    return _open.setdefault("store", here())


def current_session():
    """Return the session of this kernel, opening the kept settings where no lesson is open."""
    if "session" not in _open:
        _open["session"] = learner_session(_store())[0]
        open_on_page(_open["session"])
    return _open["session"]


def my_supply():
    """Return the learner's own supply, for the cells of a lesson that compute with it."""
    supply = current_session().supply
    _open.setdefault("computed", set()).add(supply.name)
    return supply


def card(question_id):
    """Show the card of a question: its words, controls to answer it, and what came of it."""
    session = current_session()
    if session.workshop_copy:
        return answer(question_id)
    if question := _found(session, question_id):
        Card(question).show(session)


def answer(question_id, typed=None, draw=0):
    """Answer a question in code, or show it if no answer is given.

    Parameters
    ----------
    question_id : str
        Such as "ohm-3".
    typed : str, number or list, optional
        The answer as one would type it: "330 kΩ", "b", "a, c", "c, a, d, b", "330 Ω; 0.25 W".
    draw : int
        0, or the number of the fresh draw that is meant.
    """
    session = current_session()
    question = _found(session, question_id)
    if not question:
        return
    catch_up(session)
    if problem := session.open_draw(question_id, draw):
        show(Page([Line("note", problem)]))
    elif typed is None and not session.workshop_copy:
        _show_and_follow(session, question, draw, whole_page)
    else:
        outcome = None if typed is None else session.answer(question_id, typed, draw)
        show(question_page(session, question, draw))
        show(feedback_page(session, question, draw, outcome))
        if session.workshop_copy and typed is not None:
            show(Page(_mistake_lines(question, session.draw(question_id, draw).numbers)))


def _mistake_lines(question, numbers):
    """Return the usual mistakes with what the card would say to each, for the workshop copy."""
    if question.role == "predict":
        return []
    pairs = explained(question, numbers)
    lines = [Line("heading", "Usual mistakes, and what the card says to them")] if pairs else []
    for answer, verdict in pairs:
        danger = f"Danger first: {verdict.danger} " if verdict.danger else ""
        lines.append(Line("note", f"{answer.understood}: {danger}{verdict.reply}"))
    return lines


def nudge(question_id, draw=0):
    """Show the next nudge of a question: a question back or a method, never the number."""
    session = current_session()
    if question := _found(session, question_id):
        if problem := session.open_draw(question_id, draw):
            show(Page([Line("note", problem)]))
            return
        session.nudge(question_id, draw)
        follow(session)
        _show_and_follow(session, question, draw, feedback_page)


def _show_and_follow(session, question, draw, page_of):
    """Show how a draw stands, without controls, also when it is answered elsewhere."""

    def standing(session):
        return page_of(session, question, draw, last_outcome(session, question, draw))

    show_page(session, f"a-{question.id}-{draw}", standing)


def _found(session, question_id):
    try:
        return session.question(question_id)
    except UnknownQuestion as error:
        show(Page([Line("note", str(error))]))
        return None


def _is_lesson(number):
    """Say whether there is such a lesson, on the page if there is none."""
    found = isinstance(number, str) and number in lessons()
    if not found:
        known = ", ".join(lessons())
        show(Page([Line("note", f"There is no lesson {number!r}. There are: {known}.")]))
    return found


def progress(number=None):
    """Show how far the learner is in a lesson, also as answers come in."""
    _about_lesson("progress", number, lambda s, n: Page(progress_lines(s, n), name="cw-progress"))


def predictions(number=None):
    """Show what was predicted before a lesson, beside what the lesson found: not any earlier."""
    _about_lesson("predictions", number, predictions_page)


def _about_lesson(name, number, page_of):
    """Show a page about a lesson, the open one if none is named, and keep it up to date."""
    number = number or open_number()
    if _is_lesson(number):
        show_page(current_session(), f"{name}-{number}", lambda s: page_of(s, number))


def hand_in():
    """Write one file with all of this learner's answers, and say where it is."""
    session = current_session()
    receipt, problem = None, ""
    try:
        receipt = session.hand_in()
    except (HandInError, LogError) as error:
        problem = str(error)
    made = session.settings, session.answers
    show_page(session, "hand-in", lambda s: _hand_in_page(s, *made, receipt, problem))


def _hand_in_page(session, settings, answers, receipt, problem):
    """Return what was written for some settings, and what has become of it since."""
    held = receipt.answers if receipt else 0
    now = session.settings
    lines = []
    if (now.learner, now.class_word) != (settings.learner, settings.class_word):
        lines.append(Line("note", f"Made for {settings.learner}, {settings.class_word}: {AGAIN}"))
    elif more := session.answers - answers:
        many = "answers" if held + more > 1 else "answer"
        held_in = f"{held} in this file" if receipt else "none handed in"
        lines.append(Line("note", f"{held + more} {many} now, {held_in}: {AGAIN}"))
    if not receipt:
        return Page(lines or [Line("note", problem)])
    if receipt.refused:
        lines.append(Line("danger", f"Marking will not take it as it is: {receipt.refused}."))
    return Page(
        [
            *lines,
            Line("heading", "Your hand-in is written."),
            Line("text", f"Give this file to your instructor: {receipt.path}"),
            Line(
                "text",
                f"Receipt: {held} {'answers' if held > 1 else 'answer'}, digest {receipt.digest}",
            ),
            Line("hint", "It holds your learner id, class word, answers and times; no name."),
            Line("note", CAUTION),
        ]
    )


def bring_in(path):
    """Go on here with what was answered on another machine.

    Parameters
    ----------
    path : str
        The file that `hand_in()` wrote there.
    """
    try:
        settings, brought = hand_in_files.bring_in(path, _store())
    except (HandInError, LogError) as error:
        show(Page([Line("note", str(error))]))
        return
    said = f"{brought} answers of {settings.learner} were brought in."
    if not brought:
        said = f"All answers in this file are here already; {settings.learner} goes on with them."
    show(Page([Line("heading", said)]))
    open_lesson(open_number(), settings.learner, settings.class_word, settings.supply)
