"""What puts pages, pictures and boxes on the screen, and updates them."""

import re
from base64 import b64decode

import ipywidgets
from shown import screen as reader

from helpers.exercises.wording import Line
from helpers.figures import spread
from helpers.pages.page import Page
from helpers.widgets import screen
from helpers.widgets.screen import show, show_controls


def test_an_updated_page_takes_the_place_of_the_first():
    with reader() as shown:
        handle = show(Page([Line("note", "before")]))
        handle.update(Page([Line("note", "after")]))
    assert shown.plain == "after"


def test_controls_leave_a_word_where_they_cannot_live():
    with reader() as shown:
        show_controls(ipywidgets.VBox([ipywidgets.Text()]))
    assert shown.has_controls
    assert shown.plain == "Controls."


def test_a_plotted_figure_is_an_image_with_an_alternative_text_and_its_words(monkeypatch):
    shown = []
    monkeypatch.setattr(screen, "display", lambda *things, **more: shown.append(things))
    drawn = spread.histogram([0.20, 0.22, 0.23, 0.26], 0.25, "power in the resistor", "W")
    screen.picture(*drawn)
    bundle = shown[0][0]._repr_mimebundle_()
    image = re.search("<img [^>]*>", bundle["text/html"])[0]
    assert f'alt="{drawn.finding}"' in image and 'width="900"' in image
    png = b64decode(re.search('base64,([^"]*)"', image)[1])
    assert png[:4] == b"\x89PNG" and int.from_bytes(png[16:20]) == 1800
    assert bundle["text/plain"] == drawn.words and drawn.words in bundle["text/html"]


def test_an_svg_is_shown_within_the_text(monkeypatch):
    shown = []
    monkeypatch.setattr(screen, "display", lambda *things, **more: shown.append(things))
    screen.picture("<svg></svg>", "A drawing of nothing.")
    bundle = shown[0][0]._repr_mimebundle_()
    assert "<svg></svg>" in bundle["text/html"]
    assert bundle["text/plain"] == "A drawing of nothing."
