"""What puts pages, pictures and boxes on the screen, and updates them."""

import ipywidgets
from shown import screen as reader

from helpers.exercises.wording import Line
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


def test_an_svg_is_shown_within_the_text(monkeypatch):
    shown = []
    monkeypatch.setattr(screen, "display", lambda *things, **more: shown.append(things))
    screen.picture("<svg></svg>", "A drawing of nothing.")
    bundle = shown[0][0]._repr_mimebundle_()
    assert "<svg></svg>" in bundle["text/html"]
    assert bundle["text/plain"] == "A drawing of nothing."
