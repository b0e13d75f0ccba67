"""Explorers: a calculation to move by hand, a picture of it, and a sentence on what it shows.

Each is a plain function from a state to picture and sentence, in a module of its own; `panel` puts
controls on it.
"""

from helpers.exercises.wording import Line
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
from helpers.widgets.page import Page, show, show_controls

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
    if not session.workshop_copy:
        panel = Panel(EXPLORERS[name], session.supply)
        show_controls(panel.widget(f"cw-e-{word}", hides=f"cw-x-{word}"))
    show(still_page(EXPLORERS[name], session.supply, f"cw-x-{word}"))
