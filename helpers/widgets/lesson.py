"""What a lesson's cells call: open a lesson, show a card, answer in code, look back, hand in.

Keeps the one session of this kernel. Displays; never marks.
"""

from helpers.exercises import hand_in as hand_in_files
from helpers.exercises.answer_log import LogError
from helpers.exercises.bank import lessons
from helpers.exercises.hand_in import HandInError
from helpers.exercises.session import UnknownQuestion, learner_session, workshop_session
from helpers.exercises.settings import SettingsError, answers_folder
from helpers.exercises.wording import CAUTION, Line, mistake_lines
from helpers.widgets.card import Card, feedback_page, last_outcome, question_page
from helpers.widgets.page import STYLE, Page, show
from helpers.widgets.progress import progress_page

_open = {}


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
        show(begin(number, learner, class_word, supply, workshop_copy))
        progress(number)


def begin(number, learner=None, class_word=None, supply=None, workshop_copy=False):
    """Open the session of a lesson; return the page that says it is ready, or what is wrong."""
    notes = []
    try:
        if workshop_copy:
            session, note = workshop_session(), ""
        else:
            session, note = learner_session(learner, class_word, supply)
    except SettingsError as error:
        session, note = learner_session()
        notes = [Line("danger", f"Nothing was changed. {error} As before:")]
    session = _taking_over_from(_open.get("session"), session)
    _open.update(session=session, lesson=number)
    notes += [Line("danger", text) for text in [note, *session.problems] if text]
    return Page([*notes, *_ready_lines(session, number)], extra_html=STYLE)


def _taking_over_from(earlier, session):
    """Return the session to go on with: cards of another learner's on the page must not answer."""
    if earlier is None:
        return session
    if earlier.same_as(session):
        earlier.read_again()
        return earlier
    earlier.closed = True
    return session


def _ready_lines(session, number):
    s, title = session.settings, lessons()[number].TITLE
    kept = session.log.path or "memory only: nothing is written"
    return [
        Line("heading", f"Ready. Lesson {number}: {title}"),
        Line("text", f"Supply {s.supply} · learner {s.learner} · class word {s.class_word}"),
        Line("text", f"Answers are kept in {kept}"),
    ]


def current_session():
    """Return the session of this kernel, opening the kept settings where no lesson is open."""
    if "session" not in _open:
        _open["session"] = learner_session()[0]
    return _open["session"]


def my_supply():
    """Return the learner's own supply, for the cells of a lesson that compute with it."""
    return current_session().supply


def card(question_id):
    """Show the card of a question: its text, controls to answer it, and what came of it."""
    session = current_session()
    if session.workshop_copy:
        return answer(question_id)
    question = _found(session, question_id)
    if question:
        Card(session, question).show()


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
    if problem := session.open_draw(question_id, draw):
        show(Page([Line("note", problem)]))
        return
    if typed is None:
        outcome = last_outcome(session, question, draw)
    else:
        outcome = session.answer(question_id, typed, draw)
    show(question_page(session, question, draw))
    show(feedback_page(session, question, draw, outcome))
    if session.workshop_copy and typed is not None:
        show(Page(mistake_lines(question, session.draw(question_id, draw).numbers)))


def nudge(question_id, draw=0):
    """Show the next nudge of a question: a question back or a method, never the number."""
    session = current_session()
    if question := _found(session, question_id):
        if problem := session.open_draw(question_id, draw):
            show(Page([Line("note", problem)]))
            return
        session.nudge(question_id, draw)
        show(feedback_page(session, question, draw, last_outcome(session, question, draw)))


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
    """Show how far the learner is in a lesson, and keep showing it as answers come in."""
    _show_and_follow("progress", number, progress_page)


def _show_and_follow(name, number, page_of):
    """Show a page about a lesson, the open one if none is named, and keep it up to date."""
    session, number = current_session(), number or _open.get("lesson", "00")
    if not _is_lesson(number):
        return
    handle = show(page_of(session, number))
    if not session.workshop_copy:
        session.watchers[name, handle.display_id] = lambda *_: handle.update(
            page_of(session, number)
        )


def predictions(number=None):
    """Show again what was predicted before the lesson, beside what the lesson found."""
    _show_and_follow("predictions", number, _predictions_page)


def _predictions_page(session, number):
    lines = []
    for question in lessons()[number].QUESTIONS:
        if question.role == "predict":
            draw = session.draw(question.id)
            lines += [Line("text", text) for text in question.ask(draw.numbers).split("\n\n")]
            lines.append(Line("note", f"You predicted: {_predicted(question, draw)}"))
            lines.append(Line("verdict", f"What we found: {question.working(draw.numbers)}"))
    return Page(lines)


def _predicted(question, draw):
    """Return a learner's first prediction in words: a letter alone says nothing later."""
    if not draw.tried:
        return "nothing yet"
    said = draw.first[0].understood
    options = question.kind.shown(draw.numbers) if hasattr(question.kind, "shown") else {}
    return f"{said}) {options[said].text}" if said in options else said


def hand_in():
    """Write one file with all of this learner's answers, and say where it is."""
    session = current_session()
    try:
        receipt = session.hand_in()
    except (HandInError, LogError) as error:
        show(Page([Line("note", str(error))]))
        return
    lines = [
        Line("heading", "Your hand-in is written."),
        Line("text", f"Give this file to your instructor: {receipt.path}"),
        Line("text", f"Receipt: {receipt.answers} answers, digest {receipt.digest}"),
        Line("hint", "It holds your learner id, class word, answers and times; no name."),
        Line("note", CAUTION),
    ]
    if receipt.refused:
        lines.insert(1, Line("danger", f"Marking will not take it as it is: {receipt.refused}."))
    show(Page(lines))


def bring_in(path):
    """Go on here with what was answered on another machine.

    Parameters
    ----------
    path : str
        The file that `hand_in()` wrote there.
    """
    folder = answers_folder()
    if folder is None:
        show(Page([Line("note", "Answers are kept in memory only here: nothing to bring in.")]))
        return
    try:
        settings, brought = hand_in_files.bring_in(path, folder)
    except (HandInError, LogError) as error:
        show(Page([Line("note", str(error))]))
        return
    said = f"{brought} answers of {settings.learner} were brought in."
    if not brought:
        said = f"All answers in this file are here already; {settings.learner} goes on with them."
    show(Page([Line("heading", said)]))
    open_lesson(_open.get("lesson", "00"), settings.learner, settings.class_word, settings.supply)
