"""A screen to test with: runs what a lesson's cells call, and keeps what a reader would see."""

from contextlib import contextmanager

import ipywidgets as widgets
from IPython.core.interactiveshell import InteractiveShell
from IPython.utils.capture import capture_output
from page_words import words

from helpers.widgets import live

CONTROLS = "application/vnd.jupyter.widget-view+json"


class Screen:
    """What has been displayed so far, in order; a page that was updated shows its newest text."""

    def __init__(self, captured):
        self._captured = captured

    @property
    def bundles(self):
        places, shown = {}, []
        for output in self._captured.outputs:
            name = (output.transient or {}).get("display_id")
            if output.update:  # one of a page that was shown before has no place here
                if name in places:
                    shown[places[name]] = output.data
            else:
                places[name] = len(shown)
                shown.append(output.data)
        return shown

    @property
    def plain(self):
        return "\n".join(bundle.get("text/plain", "") for bundle in self.bundles)

    @property
    def html(self):
        return "\n".join(bundle.get("text/html", "") for bundle in self.bundles)

    @property
    def pages(self):
        """The pages alone, without controls, as (plain text, HTML)."""
        return [(b["text/plain"], b["text/html"]) for b in self.bundles if "text/html" in b]

    @property
    def has_controls(self):
        return any(CONTROLS in bundle for bundle in self.bundles)


@contextmanager
def screen():
    """Collect what is displayed inside, updates included."""
    InteractiveShell.instance()
    with capture_output() as captured:
        yield Screen(captured)


def thing(name):
    """Return what was last shown of a live thing, such as "c-ohm-2" or "progress-02"."""
    return live._things[name][-1]


def live_words(shown):
    """Return what a reader of a live thing sees, controls left out."""
    texts = [child.value for child in shown.box.children if isinstance(child, widgets.HTML)]
    return words(" ".join(texts))


def fill(card, typed):
    """Enter an answer through the controls of a card, as a learner would with the mouse."""
    card.controls.put(typed, typed)
