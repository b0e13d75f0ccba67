"""Puts pages and boxes of controls on the screen of a notebook. Knows no question."""

from html import escape
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from helpers.figures.drawn import Drawn
from helpers.pages.page import Page
from helpers.pages.pictures import below


def on_arriving(name):
    """Return markup that runs a script of ours, such as `form.js`, once it is on the page."""
    script = Path(__file__).with_name(name).read_text("utf-8")
    return f'<style onload="{escape(script)}"></style>'


def _live(politeness):
    """Return what makes the node around it a live region, which is read out when it changes.

    ipywidgets can set no attributes of a node, and replaces what is inside; so what is inside, on
    arriving, sets them.
    """
    return (
        f"<style onload=\"this.parentNode.setAttribute('aria-live', '{politeness}');"
        " this.parentNode.setAttribute('aria-atomic', 'true')\"></style>"
    )


SPOKEN, SPOKEN_NEXT = _live("assertive"), _live("polite")
# The box remembers what had the focus in it. If that has gone, the first control gets it.
_FOCUS = on_arriving("focus.js")


def show(page):
    """Display a page and return the handle that can update it in place, also from a button."""
    return display(page, display_id=True)


def frame(children, *names, twin=""):
    """Return controls in a box of ours.

    Parameters
    ----------
    children : sequence of Widget
        The controls, in the order of the Tab key.
    *names : str
        Classes of the box.
    twin : str
        Class of the saved copy beside it, hidden while the box lives. A box that has lost its
        kernel, or a part on the way to the page, is hidden in its turn.

    Notes
    -----
    Inside the box the notebook's own one-letter shortcuts rest, so that an arrow key or a letter
    pressed in a list does not move, add or delete a cell.
    """
    box = widgets.VBox(children)
    for name in ("cw-controls", *names):
        box.add_class(name)
    dead, broken = ":is(.jupyter-widgets-disconnected, .cw-lost)", ".jupyter-widgets-error-widget"
    rules = f".cw-controls{dead}, .cw-controls:has({broken}) {{display: none}}"
    if twin:
        own = f".{names[0]}"
        alive = f":has({own}:not({dead}) > :nth-child(3)):not(:has({own} {broken}))"
        rules += f" .jp-OutputArea{alive} .{twin} {{display: none}}"
    box.children = [*children, widgets.HTML(f"{_FOCUS}<style>{rules}</style>")]
    return box


def show_controls(box, note="Controls."):
    """Display a frame; where it cannot live, a word stands in its place, above its copy."""
    bundle = box._repr_mimebundle_()
    bundle = bundle[0] if isinstance(bundle, tuple) else bundle
    bundle["text/plain"] = note
    display(bundle, raw=True)


def picture(drawing, finding, details=""):
    """Show a picture, with the words that say what it shows under it.

    Parameters
    ----------
    drawing, finding, details
        The parts of a `helpers.figures.drawn.Drawn`.
    """
    show(Page(below(Drawn(drawing, finding, details)), drawing))
