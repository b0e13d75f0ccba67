"""An explorer brought to life: its controls, the picture that follows the hand, the sentence.

The picture is drawn anew at every move. The sentence waits until the hand rests, because it is
read out by a screen reader: its place on the page is a polite live region. Every slider has a
number box with the label, so that each value can also be typed. Knows no single explorer.
"""

from html import escape

import ipywidgets as widgets

from helpers.exercises.wording import Line
from helpers.figures.drawn import Drawn
from helpers.pages.explorer import CALCULATED, Choice, Entry, first_state, still_page, underlined
from helpers.pages.explorers import EXPLORERS
from helpers.pages.own_build import explorer_state
from helpers.pages.page import Page
from helpers.pages.pictures import below
from helpers.widgets.lesson import current_session
from helpers.widgets.live import Live
from helpers.widgets.screen import on_arriving, show
from helpers.widgets.timing import soon

REST_SECONDS = 0.3
_LABELLED = {"description_width": "initial"}
# ipywidgets can set no attributes of a node, and replaces what is inside; so what is inside, on
# arriving, marks the node around it, which stays.
_SPOKEN = "<style onload=\"this.parentNode.setAttribute('role', 'status')\"></style>"
_GRAB = on_arriving("grab.js")


def explore(name):
    """Show an explorer: controls that live, and under them its first state, which lasts.

    Parameters
    ----------
    name : str
        A key of `EXPLORERS`; the page says which there are if it is none.
    """
    if name not in EXPLORERS:
        known = ", ".join(EXPLORERS)
        show(Page([Line("note", f"There is no explorer {name!r}. There are: {known}.")]))
        return
    session, word = current_session(), name.replace(" ", "-")
    if session.workshop_copy:
        show(still_page(EXPLORERS[name], session.supply, f"cw-x-{word}"))
    else:
        LiveExplorer(EXPLORERS[name], word).show(session)


class LiveExplorer(Live):
    """An explorer on the learner's supply; its copy is its first state."""

    def __init__(self, explorer, word):
        super().__init__(f"e-{word}")
        self.explorer, self.word = explorer, word

    def draw(self, session, *news):
        mine = explorer_state(session, self.explorer.takes)
        if not self.session or (session.supply, mine) != (self.session.supply, self.mine):
            self.mine = mine
            self.hold(Panel(self.explorer, session.supply, mine).children())
            self.still = still_page(self.explorer, session.supply, f"cw-x-{self.word}")
        return self.still


class Panel:
    """An explorer that can be moved.

    Parameters
    ----------
    explorer : Explorer
        Which.
    supply : mains.Supply
        The learner's supply.
    mine : dict, optional
        What a build of one's own says of its controls: a list then offers to take that.
    """

    def __init__(self, explorer, supply, mine=None):
        self.explorer = explorer
        self.draw, controls = explorer.open_on(supply)
        self.inputs, self.laid_out, self.mine = {}, [], mine or {}
        self._waiting, self._held, self._rested = None, False, None
        for control in controls:
            self._add(control)
        if mine:
            start = first_state(controls)
            whose = {"the workshop": {key: start[key] for key in mine}, "my build": mine}
            offer = widgets.Dropdown(options=list(whose.items()), description="Numbers of:")
            offer.add_class("cw-whose")
            offer.observe(lambda change: self._take(change["new"]), "value")
            self.laid_out.append(offer)
        self.picture, self.said = widgets.HTML(), widgets.HTML()
        self._move()
        self._say()

    def _add(self, control):
        """Lay a control out, and keep what holds its value."""
        label = {"description": f"{control.label}:", "style": _LABELLED}
        if isinstance(control, Entry):
            box = widgets.Text(**label, continuous_update=False, layout={"width": "22rem"})
            box.observe(lambda change: self._enter(control, change["new"]), "value")
            self.laid_out.append(box)
            return
        label["layout"] = {"width": "auto"}
        if isinstance(control, Choice):
            options, own = list(control.options.items()), self.mine.get(control.key)
            if isinstance(own, float) and own not in control.options.values():
                options.append(("as in my build", own))
            row = held = widgets.Dropdown(options=options, value=control.start, **label)
        else:
            row, held = _slider_and_box(control, label)
        row.add_class(f"cw-of-{control.key}")
        held.observe(self._follow, "value")
        self.inputs[control.key] = held
        self.laid_out.append(row)

    def children(self):
        """Return what stands in the panel's frame, from top to bottom."""
        controls = widgets.Box(self.laid_out, layout={"flex_flow": "row wrap"})
        controls.add_class("cw-knobs")
        tries = "".join(f"<li>{escape(text)}</li>" for text in self.explorer.tries)
        foot = widgets.HTML(
            f'<p class="cw-hint">{CALCULATED}</p><p><b>Things to try</b></p><ul>{tries}</ul>{_GRAB}'
        )
        head = widgets.HTML(Page(self.explorer.warning()).html())
        return [head, controls, self.picture, self.said, foot]

    def _follow(self, _):
        if not self._held:
            self._move()
            self._say_at_rest()

    def _move(self):
        self._state = {key: held.value for key, held in self.inputs.items()}
        before = {"before": self._rested} if self.explorer.remembers else {}
        drawn = self.draw(**self._state, **before)
        self.picture.value, self._sentence = drawn.picture, drawn.finding

    def _say_at_rest(self):
        if self._waiting:
            self._waiting.cancel()
        self._waiting = soon(self._say, REST_SECONDS)

    def _say(self):
        self._rested = self._state
        said = " ".join(
            f'<span class="{"cw-heard" if line.role == "heard" else ""}">{underlined(line.text)}'
            "</span>"
            for line in below(Drawn(self.picture.value, self._sentence))
        )
        self.said.value = f"<p>{said}</p>{_SPOKEN}"

    def _enter(self, entry, text):
        try:
            state = entry.meaning(text)
        except ValueError as error:
            self._sentence = str(error)
            self._say_at_rest()
            return
        self._take(state)

    def _take(self, state):
        self._held = True
        for key, value in state.items():
            self.inputs[key].value = value
        self._held = False
        self._follow(None)


def _slider_and_box(control, label):
    """Return a slider and its box in a row, and the box.

    They follow each other, though the box can say what the slider cannot: the slider on the page
    snaps to its steps and reports that, with noise (0.30000000000000004). Such an echo of a typed
    number must not change what was typed.
    """
    ends = {"min": control.low, "max": control.high, "step": control.step, "value": control.start}
    box = widgets.BoundedFloatText(**ends, **label)
    slider = widgets.FloatSlider(
        **ends, readout=False, layout={"flex": "1 1 12rem", "margin": "2px 14px"}
    )

    def follow_slider(change):
        if abs(change["new"] - box.value) > 0.51 * control.step:
            box.value = round(change["new"], 6)

    def follow_box(change):
        if abs(change["new"] - slider.value) > 1e-6:
            slider.value = change["new"]

    slider.observe(follow_slider, "value")
    box.observe(follow_box, "value")
    row = widgets.HBox([box, slider], layout={"flex_flow": "row wrap"})
    row.add_class("cw-slider")
    return row, box
