"""A question and what became of it, as pages: from a session, for card, code and looking back."""

from helpers.exercises.bank import lessons
from helpers.exercises.session import Outcome
from helpers.exercises.wording import Line, feedback_lines, predict_first, question_lines
from helpers.pages.page import Page
from helpers.pages.pictures import draw_picture


def question_page(session, question, number, beside_controls=False):
    """Return the page that asks a question; controls beside it say how it is answered."""
    numbers = session.draw(question.id, number).numbers
    lines = question_lines(question, numbers, number)
    if beside_controls:
        lines = [line for line in lines if line.role not in ("hint", "option")]
    picture = ""
    if question.picture:
        picture, words = draw_picture(question.picture(numbers))
        lines.insert(3, words)
    return Page(lines, picture, name=f"cw-q-{question.id}")


def feedback_page(session, question, number, outcome):
    """Return the page that says what became of an answer, with the answers kept as data."""
    draw = session.draw(question.id, number)
    nudges = session.nudges_seen(question.id, number)
    data = {
        "question": question.id,
        "learner": session.settings.learner,
        "class_word": session.settings.class_word,
        "supply": session.settings.supply,
        "edition": question.edition,
        "draw": number,
        "answers": draw.typed,
    }
    return Page(feedback_lines(question, draw, number, outcome, nudges), data=data)


def whole_page(session, question, number, outcome):
    """Return question and feedback as one page."""
    asked = question_page(session, question, number)
    told = feedback_page(session, question, number, outcome)
    return Page([*asked.lines, *told.lines], asked.picture, name=asked.name, data=told.data)


def last_outcome(session, question, number):
    """Return what the newest answer of a draw led to, or None."""
    last = session.draw(question.id, number).last
    return Outcome(*last) if last else None


def predictions_page(session, number):
    """Return what was predicted before a lesson, beside what it found: not any earlier."""
    lines = []
    for question in lessons()[number].QUESTIONS:
        draw = session.draw(question.id) if question.role == "predict" else None
        if draw and draw.tried:
            lines += [Line("text", text) for text in question.asked(draw.numbers).split("\n\n")]
            said = question.kind.said(draw.first[0], draw.numbers)
            lines.append(Line("note", f"You predicted: {said}"))
            lines.append(Line("verdict", f"What we found: {question.worked(draw.numbers)}"))
        elif draw:
            lines.append(Line("note", predict_first(question, number)))
    return Page(lines)
