"""The question card: the question as text, controls to answer it, the feedback as text.

The code door shows the same two texts; only the controls in between are the card's own.
"""

from html import escape

import ipywidgets as widgets

from helpers.exercises.session import Outcome
from helpers.exercises.wording import again_words, feedback_lines, question_lines
from helpers.widgets.controls import controls_for
from helpers.widgets.page import Page, frame, show, show_controls
from helpers.widgets.pictures import draw_picture
from helpers.widgets.timing import soon


def question_page(session, question, number):
    """Return the page that asks a question."""
    numbers = session.draw(question.id, number).numbers
    lines = question_lines(question, numbers, number)
    picture = ""
    if question.picture:
        picture, words = draw_picture(question.picture(numbers))
        lines.insert(2, words)
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
        "draw": number,
        "answers": draw.typed,
    }
    return Page(feedback_lines(question, draw, number, outcome, nudges), data=data)


def last_outcome(session, question, number):
    """Return what the newest answer of a draw led to, or None."""
    last = session.draw(question.id, number).last
    return Outcome(*last) if last else None


class Card:
    """A question with its controls.

    Parameters
    ----------
    session : Session
        Whose question.
    question : Question
        Which one; its newest draw is opened.
    """

    def __init__(self, session, question):
        self.session, self.question = session, question
        self.number = session.newest_draw(question.id)
        self.outcome = last_outcome(session, question, self.number)
        self.announcement = widgets.HTML()
        self.announcement.add_class("cw-announce")
        self.check = self._button("Check", self.submit)
        self.check.button_style = "primary"
        self.nudge = self._button("Nudge", self.open_nudge)
        self.fresh = self._button(again_words(question), self.open_fresh_draw)
        self.body = widgets.VBox()

    def _button(self, text, action):
        button = widgets.Button(description=text)
        button.on_click(lambda _: action())
        return button

    def show(self):
        """Display question, controls and feedback, in this order."""
        self.asked = show(question_page(self.session, self.question, self.number))
        self._lay_out()
        options = f"cw-q-{self.question.id} .cw-options"
        box = [self.body, self.announcement]
        show_controls(frame(box, f"cw-c-{self.question.id}", hides=options, on=self.controls.on))
        self.told = show(self._feedback())
        self.session.watchers["card", self.question.id] = self._follow

    def _lay_out(self):
        draw = self.session.draw(self.question.id, self.number)
        self.controls = controls_for(self.question, draw.numbers, self.submit)
        if draw.last:
            answer, _ = draw.last
            self.controls.put(draw.typed[-1], answer.understood)
        buttons = [self.check, self.nudge, self.fresh]
        if self.question.role == "predict":
            buttons = [self.check]
        self.body.children = [self.controls.widget, widgets.HBox(buttons)]
        self._refresh_buttons()

    def _feedback(self):
        return feedback_page(self.session, self.question, self.number, self.outcome)

    def _refresh_buttons(self):
        draw = self.session.draw(self.question.id, self.number)
        self.nudge.disabled = len(self.session.nudges_seen(self.question.id, self.number)) >= len(
            self.question.nudges
        )
        more = draw.finished(self.question) and self.question.has_fresh_numbers
        self.fresh.layout.display = "" if more and self.question.role != "predict" else "none"

    def _tell(self):
        page = self._feedback()
        self.told.update(page)
        text = escape(page.plain()).replace("\n", "<br>")
        self.announcement.value = f'<div role="alert">{text}</div>'
        self._refresh_buttons()

    def submit(self):
        """Check what the controls hold, once it has all come in."""
        answer = self.session.answer
        soon(lambda: answer(self.question.id, self.controls.typed(), self.number))

    def open_nudge(self):
        """Show one nudge more."""
        self.session.nudge(self.question.id, self.number)
        self._tell()

    def open_fresh_draw(self):
        """Ask the question again with other numbers."""
        self.number += 1
        self.outcome = last_outcome(self.session, self.question, self.number)
        self.asked.update(question_page(self.session, self.question, self.number))
        self._lay_out()
        self._tell()

    def _follow(self, question_id, number, outcome):
        """Show an answer to this question, whichever door it came through."""
        if (question_id, number) == (self.question.id, self.number):
            self.outcome = outcome
            self._tell()
