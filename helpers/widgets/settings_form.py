"""A form to choose the supply, the learner id and the class word without typing code."""

import ipywidgets as widgets

from helpers.exercises.bank import lessons
from helpers.physics.mains import SUPPLIES
from helpers.widgets.lesson import begin, current_session
from helpers.widgets.page import Page, frame, show, show_controls


def settings_form():
    """Show the form; Save remembers what it holds for all lessons."""
    session = current_session()
    if session.workshop_copy:
        return
    kept = session.settings
    supply = _labelled(widgets.Dropdown, "Supply:", value=kept.supply, options=list(SUPPLIES))
    learner = _labelled(widgets.Text, "Learner id:", value=kept.learner)
    word = _labelled(widgets.Text, "Class word:", value=kept.class_word)
    save = widgets.Button(description="Save")
    first = next(iter(lessons()))
    show_controls(frame([supply, learner, word, save], "cw-settings"))
    said = show(Page([]))
    save.on_click(lambda _: said.update(begin(first, learner.value, word.value, supply.value)))


def _labelled(kind, text, **values):
    return kind(description=text, style={"description_width": "8em"}, **values)
