"""One set of controls for each kind of question; each hands over the answer as text.

`put` fills them again with an answer of before, from what was typed and how it was understood.
Knows how an answer is entered, never what it is worth.
"""

from html import escape
from pathlib import Path

import ipywidgets as widgets

from helpers.exercises import kinds

_ALIVE = escape(Path(__file__).with_name("form.js").read_text(encoding="utf-8"))
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
        self.box.on_msg(lambda _, content, buffers: content.get("event") == "submit" and submit())
        self.widget = self.box

    def typed(self):
        return self.box.value

    def put(self, typed, understood):
        self.box.value = str(typed)


class Form:
    """Plain HTML controls: options, or steps to put in order, with the hint as their legend.

    What is entered stands as text in a box that is not shown, so that a reload and a second tab
    find it; the pulse tells the page to look there.
    """

    def __init__(self, question, numbers, submit):
        kind = question.kind
        rows = self.rows({letter: o.text for letter, o in kind.shown(numbers).items()})
        self.page = widgets.HTML(
            f'<form class="cw-form"><fieldset><legend>{escape(kind.hint(numbers))}</legend>{rows}'
            f'</fieldset></form><style onload="{_ALIVE}"></style>'
        )
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


class OneOf(Form):
    """Radio buttons."""

    sort = "radio"

    def rows(self, texts):
        return "".join(
            f'<label><input type="{self.sort}" name="option" value="{letter}">'
            f"<span>{escape(label)}</span></label>"
            for letter, label in self.labels(texts).items()
        )

    def labels(self, texts):
        return {letter: f"{letter}) {text}" for letter, text in texts.items()}


class AnyOf(OneOf):
    """Boxes to tick, and one for none of them."""

    sort = "checkbox"

    def labels(self, texts):
        return super().labels(texts) | {"none": "none of them"}


class Sorted(Form):
    """Steps as dealt; each is a button that puts it next, or takes it back."""

    def rows(self, texts):
        steps = "".join(
            f'<li><button type="button" value="{letter}"><b></b>'
            f"<span>{letter}) {escape(text)}</span><i>put next</i></button></li>"
            for letter, text in texts.items()
        )
        return f'<ol data-dealt="{"".join(texts)}">{steps}</ol><output></output>'


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
        self.widget = widgets.VBox(self.lists)

    def typed(self):
        return "; ".join(box.value for box in self.lists if box.value)

    def put(self, typed, understood):
        for box, text in zip(self.lists, understood.split("; "), strict=True):
            box.value = text


CONTROLS = {
    kinds.Amount: Typed,
    kinds.Choice: OneOf,
    kinds.ChooseAll: AnyOf,
    kinds.Order: Sorted,
    kinds.Parts: Bins,
}


def controls_for(question, numbers, submit):
    """Return the controls for a question; `submit` is called when Enter asks for a check."""
    return CONTROLS[type(question.kind)](question, numbers, submit)
