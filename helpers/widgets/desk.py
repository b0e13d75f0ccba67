"""Boxes, buttons and results for whoever leads a class: what all their forms share.

Knows which classes there are; no learner's session, so that opening a form leaves no trace.
"""

from pathlib import Path

import ipywidgets as widgets

from helpers.classroom.class_file import read_class
from helpers.exercises.refusals import Unusable, plain
from helpers.exercises.wording import Line
from helpers.pages.page import Page
from helpers.pages.style import STYLE
from helpers.widgets.screen import SPOKEN, frame, show, show_controls
from helpers.widgets.timing import soon

CLASSES = Path("classes")  # beside the notebook, so that JupyterLab's file browser reaches it
NOT_YET = "Choose a class first; if there is none, make one above."
_WIDE = {"description_width": "initial"}
_lists = []


class Form:
    """Boxes and buttons in one frame, and beside them what the last press led to.

    Parameters
    ----------
    name : str
        Of its style.
    fields : dict
        The boxes by name, in the order of the Tab key.
    actions : dict
        From what stands on a button to what it does with the form; that returns what to say, as
        text or lines.
    """

    listed = None  # what was shown to go, before it is erased

    def __init__(self, name, fields, actions):
        self.fields, self.told = fields, widgets.HTML(SPOKEN)
        buttons = []
        for said, action in actions.items():
            buttons.append(widgets.Button(description=said))
            buttons[-1].on_click(lambda _, action=action: soon(lambda: self.do(action)))
        self.box = frame([*fields.values(), widgets.HBox(buttons), self.told], f"cw-{name}")
        show(Page([], extra_html=STYLE))
        show_controls(self.box, "The form appears here when its cell is run.")

    def do(self, action):
        """Do something and say what came of it, or why nothing did."""
        try:
            said = action(self)
        except (OSError, ValueError) as error:  # ours say what was read and what to do
            reason = plain(str(error), 500, "\u00a0")
            said = [Line("not-yet", f"Not done. {reason}")]
        page = said if isinstance(said, str) else Page(said).html()
        self.told.value = page + SPOKEN

    def __getitem__(self, name):
        value = self.fields[name].value
        return value.strip() if isinstance(value, str) else value


def text_box(said, value="", **more):
    return widgets.Text(value, description=said, continuous_update=False, style=_WIDE, **more)


def long_box(said, **more):
    """Return a box for text, as wide as the form."""
    return text_box(said, **more).add_class("cw-long")


def tick_box(said):
    layout = widgets.Layout(width="max-content")
    return widgets.Checkbox(description=said, indent=False, layout=layout)


def list_box(said, options, **more):
    return widgets.Dropdown(options=options, description=said, style=_WIDE, **more)


def classes():
    """Return the files of the classes by name: their own, after that of another folder."""
    found = sorted(CLASSES.glob("*/*.toml"))
    return {"/".join(dict.fromkeys([path.parent.name, path.stem])): path for path in found}


def which_class():
    """Return a list of the classes, which `look_again` brings up to date."""
    _lists.append(list_box("Class:", list(classes())))
    return _lists[-1]


def look_again():
    """Let every list of classes hold those there are now, the newest chosen where none was."""
    for box in _lists:
        chosen, box.options = box.value, list(classes())
        box.value = chosen or (box.options[-1] if box.options else None)


def opened(name):
    path = classes().get(name)
    if not path:
        raise Unusable(NOT_YET)
    return read_class(path)


def as_lines(texts):
    return [Line("text", text) for text in texts if text]


def whole(said, text, example):
    if not text.isdecimal():
        read = plain(text) or "(nothing)"
        raise Unusable(f"{said}: {read} was read. Write a whole number, such as {example}.")
    return int(text)


def numbers_in(text):
    """Return the numbers of lessons in a text, however they are parted."""
    return [number.zfill(2) for number in text.replace(",", " ").split()]
