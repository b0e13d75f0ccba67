"""The question card: question, controls and feedback, alive together, and their saved copy.

Controls belong to one draw of one learner's question and go with it, so that a press of a button
can never answer another question than the one it stood under.
"""

from contextlib import suppress
from dataclasses import replace
from functools import partial

import ipywidgets as widgets

from helpers.exercises.kinds import NotRead
from helpers.exercises.session import Outcome
from helpers.exercises.wording import again_words
from helpers.pages.questions import feedback_page, last_outcome, question_page, whole_page
from helpers.widgets.controls import controls_for
from helpers.widgets.live import Live, catch_up, follow
from helpers.widgets.screen import SPOKEN, SPOKEN_NEXT
from helpers.widgets.timing import soon

ANSWERED_ELSEWHERE = (
    "This question was answered in another notebook meanwhile. So it stands now. What you just "
    "checked was not counted: look again, then check."
)


class Card(Live):
    """A question with its controls, opened at its newest draw.

    Parameters
    ----------
    question : Question
        Which one.
    """

    def __init__(self, question):
        super().__init__(f"c-{question.id}")
        self.box.add_class(f"cw-{question.kind.name}")
        self.question = question

    def draw(self, session, question_id=None, number=0, outcome=None):
        """Show an answer to this question, whichever door or kernel it came through."""
        newest = session.newest_draw(self.question.id)
        if session is not self.session:
            opened = [card.number for card in self.alike() if card.session is session]
            self._turn_to(session, max(newest, *opened, 0))
        elif question_id == self.question.id:
            newest = newest if outcome else max(newest, number)
            if newest > self.number:
                self._turn_to(session, newest)
            elif not outcome or (outcome.answer and number == self.number):
                self.outcome = outcome or last_outcome(session, self.question, self.number)
                self._put_answer()
        if question_id in (None, self.question.id):
            self._tell()
        return whole_page(session, self.question, self.number, self.outcome)

    def _turn_to(self, session, number):
        """Ask another draw: other words, other controls, other buttons."""
        if not self.session:
            self.asked, self.told = widgets.HTML(), widgets.HTML()
            self.told.add_class("cw-told")
        self.session, self.number, self.face = session, number, object()
        self.outcome = last_outcome(session, self.question, number)
        self.check = self._button("Check", self.answer)
        self.check.add_class("cw-check")
        self.nudge = self._button("Nudge", self.open_nudge)
        self.fresh = self._button(again_words(self.question), self.open_fresh_draw)
        predict = self.question.role == "predict"
        buttons = [self.check] if predict else [self.check, self.nudge, self.fresh]
        press_check = partial(self._press, self.face, self.answer)
        numbers = self._draw.numbers
        self.controls = controls_for(self.question, numbers, press_check, session)
        self._put_answer()
        self._tell()  # before the rest, so that no verdict ever stands under another question
        page = question_page(session, self.question, number, beside_controls=True)
        self.asked.value = page.html() + SPOKEN_NEXT
        self.hold([self.asked, self.controls.widget, widgets.HBox(buttons), self.told])

    @property
    def _draw(self):
        return self.session.draw(self.question.id, self.number)

    def _button(self, text, action):
        button = widgets.Button(description=text)
        face = self.face
        button.on_click(lambda _: self._press(face, action))
        return button

    def _press(self, face, action):
        """Act once everything has come in, unless the page has turned to another draw."""
        soon(lambda: face is self.face and self.session and action())

    def _put_answer(self):
        """Let the controls hold the answer that the feedback speaks of."""
        if self.outcome and self.outcome.answer:
            answer, draw, kind = self.outcome.answer, self._draw, self.question.kind
            with suppress(NotRead):
                if kind.read(self.controls.typed(), draw.numbers).given == answer.given:
                    return
            typed = draw.typed[list(draw.tried).index(answer.given)]
            self.controls.put(typed, answer.understood)

    def _tell(self):
        draw, question = self._draw, self.question
        page = feedback_page(self.session, question, self.number, self.outcome)
        self.told.value = page.html() + SPOKEN
        self.nudge.disabled = not self.session.has_nudge(question.id, self.number)
        more = draw.finished(question) and question.has_fresh_numbers
        self.fresh.layout.display = "" if more else "none"

    def answer(self):
        """Check what the controls hold, unless another kernel has moved on meanwhile."""
        session = self.session
        if self._overtaken():
            return
        outcome = session.answer(self.question.id, self.controls.typed(), self.number)
        if not outcome.answer:
            self.outcome = outcome
            self.follow(session)
        elif outcome.kept:
            catch_up(session)

    def _overtaken(self):
        """Show what other kernels wrote; say whether it was about this question."""
        session = self.session
        changed = self.question.id in catch_up(session)
        if changed and not session.closed:
            self.outcome = replace(self.outcome or Outcome(), problem=ANSWERED_ELSEWHERE)
            self.follow(session)
        return changed or session.closed

    def open_nudge(self):
        """Show one nudge more."""
        self.session.nudge(self.question.id, self.number)
        follow(self.session)

    def open_fresh_draw(self):
        """Ask the question again with other numbers."""
        if not self._overtaken():
            follow(self.session, self.question.id, self.number + 1)
