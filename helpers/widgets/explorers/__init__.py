"""Explorers: a calculation to move by hand, a picture of it, and a sentence on what it shows.

Each is a plain function from a state to picture and sentence, in a module of its own; `panel` puts
controls on it.
"""

from helpers.exercises.wording import Line
from helpers.pages.page import Page
from helpers.widgets.explorers import (
    bands,
    brightness,
    circuits,
    dimmer,
    dropper,
    heat,
    meter,
    touch_current,
    waveform,
)
from helpers.widgets.explorers.panel import Panel, still_page
from helpers.widgets.lesson import current_session
from helpers.widgets.live import Live
from helpers.widgets.screen import show

EXPLORERS = {
    "dropper": dropper.EXPLORER,
    "waveform": waveform.EXPLORER,
    "heat": heat.EXPLORER,
    "dimmer": dimmer.EXPLORER,
    "brightness": brightness.EXPLORER,
    "circuits": circuits.EXPLORER,
    "meter": meter.EXPLORER,
    "touch current": touch_current.EXPLORER,
    "bands": bands.EXPLORER,
}


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
        if not self.session or session.supply != self.session.supply:
            self.hold(Panel(self.explorer, session.supply).children())
            self.still = still_page(self.explorer, session.supply, f"cw-x-{self.word}")
        return self.still
