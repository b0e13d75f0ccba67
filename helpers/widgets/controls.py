"""One set of controls for each kind of question; each hands over the answer as text.

`put` fills them again with an answer of before, from what was typed and how it was understood.
Knows how an answer is entered, never what it is worth.
"""

import ipywidgets as widgets

from helpers.exercises import kinds
from helpers.widgets.timing import soon


def _wide(**more):
    """Return a layout for one widget: were it shared, a page that missed it would lose them all."""
    return widgets.Layout(width="auto", max_width="46rem", **more)


class Typed:
    """A box to type in; Enter checks."""

    def __init__(self, question, numbers, submit):
        unit = question.kind.unit
        self.box = widgets.Text(
            description=f"Answer in {unit}:" if unit else "Answer:",
            placeholder="number and unit",
            continuous_update=False,
            style={"description_width": "initial"},
        )
        self.box.on_msg(lambda _, content, buffers: content.get("event") == "submit" and submit())
        self.widget = self.box

    def typed(self):
        return self.box.value

    def put(self, typed, understood):
        self.box.value = str(typed)


class OneOf:
    """Radio buttons."""

    def __init__(self, question, numbers, submit):
        shown = question.kind.shown(numbers)
        self.widget = widgets.RadioButtons(
            options=[(f"{letter}) {option.text}", letter) for letter, option in shown.items()],
            value=None,
            layout=_wide(),
        )

    def typed(self):
        return self.widget.value or ""

    def put(self, typed, understood):
        self.widget.value = understood


class AnyOf:
    """Boxes to tick, and one for none of them."""

    def __init__(self, question, numbers, submit):
        shown = question.kind.shown(numbers)
        self.boxes = {letter: _tick(f"{letter}) {option.text}") for letter, option in shown.items()}
        self.none = _tick("none of them")
        self.widget = widgets.VBox([*self.boxes.values(), self.none])

    def typed(self):
        ticked = [letter for letter, box in self.boxes.items() if box.value]
        if self.none.value:
            return " ".join([*ticked, "none"])
        return ", ".join(ticked)

    def put(self, typed, understood):
        self.none.value = understood == "none"
        for letter, box in self.boxes.items():
            box.value = letter in understood.split(", ")


def _tick(text):
    return widgets.Checkbox(description=text, indent=False, layout=_wide())


class Sorted:
    """A list in which the marked step is moved up and down."""

    def __init__(self, question, numbers, submit):
        shown = question.kind.shown(numbers)
        self.texts = {letter: f"{letter}) {option.text}" for letter, option in shown.items()}
        self.steps = widgets.Select(
            options=self._options(list(shown)),
            rows=len(shown),
            description="In order, first on top:",
            style={"description_width": "initial"},
            layout=_wide(flex_flow="column"),
        )
        self.moved = False
        up = widgets.Button(description="Move up")
        down = widgets.Button(description="Move down")
        up.on_click(lambda _: soon(lambda: self._move(-1)))
        down.on_click(lambda _: soon(lambda: self._move(1)))
        self.widget = widgets.VBox([self.steps, widgets.HBox([up, down])])

    def _options(self, letters):
        return [(self.texts[letter], letter) for letter in letters]

    def _move(self, step):
        letters = [letter for _, letter in self.steps.options]
        marked = self.steps.value
        place = letters.index(marked)
        target = min(max(place + step, 0), len(letters) - 1)
        letters.insert(target, letters.pop(place))
        self.steps.options = self._options(letters)
        self.steps.value = marked
        self.moved = True

    def typed(self):
        """Return the order, or nothing while the steps lie as they were dealt."""
        if not self.moved:
            return ""
        return ", ".join(letter for _, letter in self.steps.options)

    def put(self, typed, understood):
        self.steps.options = self._options(understood.split(", "))
        self.moved = True


class Bins:
    """One list to choose from for each part."""

    def __init__(self, question, numbers, submit):
        width = max(len(f.label) for f in question.kind.fields) + 2
        self.lists = [
            widgets.Dropdown(
                options=[("choose …", ""), *((text, text) for text in map(f.text, f.bin))],
                description=f"{f.label}:",
                style={"description_width": f"{width}ch"},
                layout=widgets.Layout(width="auto"),
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
