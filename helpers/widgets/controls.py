"""One set of controls for each kind of question; each hands over the answer as text.

`put` fills them again with an answer of before, from what was typed and how it was understood.
Knows how an answer is entered, never what it is worth.
"""

from contextlib import suppress
from functools import partial
from html import escape

import ipywidgets as widgets

from helpers.exercises import kinds
from helpers.exercises.kinds.design import NOT_BUILT, REASONS, TELLS
from helpers.figures.bands import resistor
from helpers.pages.own_build import own_brief, own_text
from helpers.pages.templates import part
from helpers.physics.circuits import CIRCUITS
from helpers.sizing.brief import to_toml
from helpers.sizing.typed import BriefError
from helpers.widgets.screen import on_arriving
from helpers.widgets.timing import on_enter

_ALIVE, _GRAB = on_arriving("form.js"), on_arriving("grab.js")
_LOOK = "const form = this.closest('.cw-controls').querySelector('form'); form?.cwLook?.()"


class Typed:
    """A box to type in; Enter checks."""

    def __init__(self, question, numbers, submit):
        unit = question.kind.unit
        self.box = widgets.Text(
            description=f"Answer in {unit}:" if unit else "Answer:",
            placeholder="number and unit",
            continuous_update=False,
            layout={"width": "auto"},
            style={"description_width": "initial"},
        )
        on_enter(self.box, submit)
        self.widget = self.box

    def typed(self):
        return self.box.value

    def put(self, typed, understood):
        self.box.value = str(typed)


class Form:
    """Plain HTML controls: options, or steps to put in order, with the hint as their legend.

    What is entered stands as text in a box that is not shown, so that a reload and a second tab
    find it; the pulse tells the page to look there.

    Parameters
    ----------
    sort : str
        Of the inputs: radio, checkbox (with one for none of them), or order: each step as dealt is
        a button that puts it next, or takes it back.
    """

    def __init__(self, sort, question, numbers, submit):
        hint, options = question.kind.hint(numbers), question.kind.shown(numbers)
        form = part("card-form", sort=sort, hint=hint, options=options)
        self.page = widgets.HTML(f"{form}{_ALIVE}")
        self.held, self.pulse = widgets.Text(continuous_update=False), widgets.HTML()
        self.held.add_class("cw-held")
        self.held.observe(self._tell_all_tabs, "value")
        self.widget = widgets.VBox([self.page, self.held, self.pulse])

    def _tell_all_tabs(self, change):
        self.pulse.value = f'<style onload="{_LOOK}">/* {escape(change["new"])} */</style>'

    def typed(self):
        return self.held.value

    def put(self, typed, understood):
        self.held.value = understood


class Bins:
    """One list to choose from for each part."""

    def __init__(self, question, numbers, submit):
        width = max(len(f.label) for f in question.kind.fields) + 2
        self.lists = [
            widgets.Dropdown(
                options=[("choose …", ""), *((text, text) for text in map(f.text, f.bin))],
                description=f"{f.label}:",
                style={"description_width": f"{width}ch"},
                layout={"width": "auto"},
            )
            for f in question.kind.fields
        ]
        self.widget = self.laid_out()

    def laid_out(self):
        """Return the one box that holds all: one that stood apart would outlive what it holds."""
        return widgets.VBox(self.lists)

    def typed(self):
        return "; ".join(box.value for box in self.lists if box.value)

    def put(self, typed, understood):
        for box, text in zip(self.lists, understood.split("; "), strict=True):
            box.value = text


class Banded(Bins):
    """One list of colours for each band of a drawn resistor; a press on a band takes the next."""

    def laid_out(self):
        self.drawing = widgets.HTML()
        for place, box in enumerate(self.lists, start=1):
            box.add_class(f"cw-of-band-{place}")
            box.observe(self._draw, "value")
        self._draw()
        box = widgets.Box([self.drawing, *self.lists])
        box.add_class("cw-knobs")
        return box

    def _draw(self, change=None):
        picks = [f"band-{place}" for place, _ in enumerate(self.lists, start=1)]
        drawn = resistor([box.value for box in self.lists], picks)
        hint = '<p class="cw-hint">A press on a band takes its next colour.</p>'
        self.drawing.value = f"{drawn.picture}{hint}{_GRAB}"

    def typed(self):
        values = [box.value for box in self.lists]
        return ", ".join(value or "…" for value in values) if any(values) else ""

    def put(self, typed, understood):
        super().put(typed, understood.replace(", ", "; "))


class Designed:
    """Lists and boxes for a design; the brief that goes with it is the learner's own build.

    Where nothing is built, there is nothing to choose below.
    """

    session = None

    def __init__(self, question, numbers, submit):
        lists = {
            "Circuit:": [*((name.replace("_", " "), name) for name in CIRCUITS),
                         *((f"{NOT_BUILT}: {said}", f"{NOT_BUILT}; {key}")
                           for key, said in REASONS.items())],
            "The light tells:": [(said, key) for key, said in TELLS.items()],
        }  # fmt: skip
        texts = ("Each resistor:", "How many:", "Rating of each:", "Volts of its type:")
        looks = {"style": {"description_width": "9em"}, "layout": {"width": "auto"}}
        first, last = (
            widgets.Dropdown(options=[("choose …", ""), *rows], description=label, **looks)
            for label, rows in lists.items()
        )
        boxes = [
            widgets.Text(description=label, continuous_update=False, **looks) for label in texts
        ]
        for box in boxes:
            on_enter(box, submit)
        self.lists = [first, *boxes, last]
        self.widget = widgets.VBox(self.lists)
        first.observe(self._let_rest, "value")

    def _let_rest(self, change):
        for box in self.lists[1:]:
            box.disabled = change["new"].startswith(NOT_BUILT)

    def typed(self):
        values = [box.value.strip() for box in self.lists]
        if values[0].startswith(NOT_BUILT):
            values = values[:1]
        return "\n".join(filter(None, ["; ".join(filter(None, values)), _own(self.session)]))

    def put(self, typed, understood):
        first = typed.partition("\n")[0]
        values = [first] if first.startswith(NOT_BUILT) else first.split("; ")
        for box, value in zip(self.lists, [*values, *[""] * 6], strict=False):
            box.value = value


def _own(session):
    """Return the brief of the learner's own build, without what is open; '' if none has been begun.

    One that cannot be used is handed over as it is: then nothing is marked, and it is said why.
    """
    text = "unreadable"
    with suppress(BriefError):
        text = session and own_text(session)
        return to_toml(own_brief(session)) if text else ""
    return text


CONTROLS = {
    kinds.Amount: Typed,
    kinds.Choice: partial(Form, "radio"),
    kinds.ChooseAll: partial(Form, "checkbox"),
    kinds.Order: partial(Form, "order"),
    kinds.Parts: Bins,
    kinds.Bands: Banded,
    kinds.Design: Designed,
}


def controls_for(question, numbers, submit, session=None):
    """Return the controls for a question; `submit` is called when Enter asks for a check."""
    controls = CONTROLS[type(question.kind)](question, numbers, submit)
    controls.session = session
    return controls
