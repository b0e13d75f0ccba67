"""A form to choose the supply, the learner id and the class word without typing code."""

import ipywidgets as widgets

from helpers.exercises.bank import lessons
from helpers.exercises.wording import Line
from helpers.pages.page import Page
from helpers.physics.mains import SUPPLIES
from helpers.widgets.lesson import begin, current_session
from helpers.widgets.live import Live
from helpers.widgets.screen import SPOKEN


def settings_form():
    """Show the form; Save remembers what it holds for all lessons."""
    session = current_session()
    if not session.workshop_copy:
        SettingsForm().show(session)


class SettingsForm(Live):
    """Boxes that hold the settings of the open session."""

    def __init__(self):
        super().__init__("settings")

    def draw(self, session, *news):
        if not self.session:
            self._lay_out()
        if session is not self.session:
            kept = session.settings
            self.supply.value, self.learner.value = kept.supply, kept.learner
            self.word.value = kept.class_word
            self.told.value = SPOKEN  # what was saved before holds no longer
        return Page([Line("note", "The form to change the settings appears here.")])

    def _lay_out(self):
        self.supply = _labelled(widgets.Dropdown, "Supply:", options=list(SUPPLIES))
        self.learner = _labelled(widgets.Text, "Learner id:")
        self.word = _labelled(widgets.Text, "Class word:")
        self.told = widgets.HTML(SPOKEN)
        save = widgets.Button(description="Save")
        save.on_click(lambda _: self._save())
        self.hold([self.supply, self.learner, self.word, save, self.told])

    def _save(self):
        first = next(iter(lessons()))
        wrong = begin(first, self.learner.value, self.word.value, self.supply.value)
        s = current_session().settings
        saved = f"Saved: supply {s.supply}, learner {s.learner}, class word {s.class_word}."
        self.told.value = Page(wrong or [Line("note", saved)]).html() + SPOKEN


def _labelled(kind, text, **values):
    return kind(description=text, style={"description_width": "8em"}, **values)
