"""The panel of an explorer: its controls, the picture that follows the hand, the sentence.

The picture is drawn anew at every move. The sentence waits until the hand rests, because it is
read out by a screen reader: its place on the page is a polite live region. Knows no explorer.
"""

from dataclasses import dataclass
from html import escape

import ipywidgets as widgets

from helpers.exercises.wording import Line
from helpers.pages.page import Page
from helpers.widgets.explorers.knobs import Entry
from helpers.widgets.timing import soon

REST_SECONDS = 0.3
CALCULATED = "A calculation, not a measurement."
# ipywidgets can set no attributes of a node, and replaces what is inside; so what is inside, on
# arriving, marks the node around it, which stays.
_SPOKEN = "<style onload=\"this.parentNode.setAttribute('role', 'status')\"></style>"
_CLOSE_LINES = (
    "<style>.cw-controls .widget-html-content {line-height: 1.45;}"
    " .cw-controls .widget-html-content p, .cw-controls ul {margin: .3rem 0;}</style>"
)
_NAME_HANDLES = (
    "<style onload=\"for (const row of this.closest('.cw-controls').querySelectorAll('.cw-slider'))"
    " row.querySelector('.noUi-handle').setAttribute('aria-label',"
    " row.querySelector('label').textContent)\"></style>"
)


@dataclass(frozen=True)
class Explorer:
    """An explorer, described.

    Parameters
    ----------
    open_on : callable
        From a supply to the plain function, which returns picture and sentence for a state, and
        its knobs.
    tries : tuple of str
        Things to try; true for every supply.
    caution : str
        What is dangerous about the subject; empty where nothing is.
    """

    open_on: object
    tries: tuple
    caution: str = ""


def first_state(knobs):
    """Return the values that the controls start with, by parameter."""
    return {knob.key: knob.start for knob in knobs if not isinstance(knob, Entry)}


def still_page(explorer, supply, name):
    """Return the first picture and sentence as a page that lasts."""
    draw, knobs = explorer.open_on(supply)
    svg, sentence = draw(**first_state(knobs))
    lines = [Line("danger", explorer.caution)] if explorer.caution else []
    lines += [Line("hint", CALCULATED), Line("text", sentence), Line("text", "Things to try:")]
    lines += [Line("option", f"– {text}") for text in explorer.tries]
    return Page(lines, svg, name=name)


class Panel:
    """An explorer that can be moved.

    Parameters
    ----------
    explorer : Explorer
        Which.
    supply : mains.Supply
        The learner's supply.
    """

    def __init__(self, explorer, supply):
        self.explorer = explorer
        self.draw, knobs = explorer.open_on(supply)
        self.inputs, self.laid_out, self._waiting, self._held = {}, [], None, False
        for knob in knobs:
            self._add(knob)
        self.picture, self.said = widgets.HTML(), widgets.HTML()
        self._move()
        self._say()

    def _add(self, knob):
        if isinstance(knob, Entry):
            box = knob.build()
            box.observe(lambda change: self._enter(knob, change["new"]), "value")
            self.laid_out.append(box)
            return
        row, control = knob.build()
        control.observe(self._follow, "value")
        self.inputs[knob.key] = control
        self.laid_out.append(row)

    def children(self):
        """Return what stands in the panel's frame, from top to bottom."""
        controls = widgets.Box(
            self.laid_out, layout={"flex_flow": "row wrap", "grid_gap": "0 1.2rem"}
        )
        caution = f'<p class="cw-danger">{escape(self.explorer.caution)}</p>'
        tries = "".join(f"<li>{escape(text)}</li>" for text in self.explorer.tries)
        head = widgets.HTML(caution if self.explorer.caution else "")
        foot = widgets.HTML(
            f'<p class="cw-hint">{CALCULATED}</p><p><b>Things to try</b></p>'
            f"<ul>{tries}</ul>{_CLOSE_LINES}{_NAME_HANDLES}"
        )
        return [head, controls, self.picture, self.said, foot]

    def _follow(self, _):
        if not self._held:
            self._move()
            self._say_at_rest()

    def _move(self):
        state = {key: control.value for key, control in self.inputs.items()}
        self.picture.value, self._sentence = self.draw(**state)

    def _say_at_rest(self):
        if self._waiting:
            self._waiting.cancel()
        self._waiting = soon(self._say, REST_SECONDS)

    def _say(self):
        self.said.value = f"<p>{escape(self._sentence)}</p>{_SPOKEN}"

    def _enter(self, knob, text):
        try:
            state = knob.meaning(text)
        except ValueError as error:
            self._sentence = str(error)
            self._say_at_rest()
            return
        self._held = True
        for key, value in state.items():
            self.inputs[key].value = value
        self._held = False
        self._follow(None)
