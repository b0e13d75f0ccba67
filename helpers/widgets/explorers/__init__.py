"""Explorers: a calculation to move by hand, a picture of it, and a sentence on what it shows.

Each is a plain function from a state to picture and sentence, in a module of its own; `panel` puts
controls on it.
"""

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
from helpers.widgets.page import show, show_controls

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
        A key of `EXPLORERS`.

    Raises
    ------
    ValueError
        If there is no explorer of that name.
    """
    if name not in EXPLORERS:
        known = ", ".join(f'"{each}"' for each in EXPLORERS)
        raise ValueError(f"name was read as {name!r}; there is no such explorer. Take {known}.")
    session, word = current_session(), name.replace(" ", "-")
    if not session.workshop_copy:
        panel = Panel(EXPLORERS[name], session.supply)
        show_controls(panel.widget(f"cw-e-{word}", hides=f"cw-x-{word}"))
    show(still_page(EXPLORERS[name], session.supply, f"cw-x-{word}"))
