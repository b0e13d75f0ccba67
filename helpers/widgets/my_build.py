"""`my_build()`: a learner's own build on paper, with fields to type; what it says is a page."""

from contextlib import suppress

import ipywidgets as widgets

from helpers.exercises.wording import Line
from helpers.pages.own_build import (
    ASKED_IN,
    LAST,
    asked_in,
    own_brief,
    own_build_page,
    own_text,
    words_of,
)
from helpers.pages.page import Page
from helpers.sizing.brief import FIELDS, tables, to_toml
from helpers.sizing.own import begun, with_typed
from helpers.sizing.typed import BriefError
from helpers.widgets import lesson as lessons
from helpers.widgets.live import Live, follow
from helpers.widgets.screen import SPOKEN, show
from helpers.widgets.sizing_form import SizingForm
from helpers.widgets.timing import on_enter, soon

_SORTS = {each.name: each.metadata["kind"] for each in FIELDS}
_OPEN, _UNKNOWN = ("open", ""), ("unknown", "unknown")


def my_build(lesson=None, **typed):
    """Show a learner's own build as far as the lessons have come, and keep what is typed.

    Parameters
    ----------
    lesson : str, optional
        Such as "05"; the open one if none is named.
    **typed
        Fields by name, as people type them: `heater_power="60 W"`; '' opens one again.
    """
    session, number = lessons.current_session(), lesson or lessons.open_number()
    if asked_in(number) is None:
        asked = ", ".join([*ASKED_IN, LAST])
        show(Page([Line("note", f"Lesson {number!r} asks nothing of a build. These do: {asked}.")]))
        return
    news = keep(session, typed) if typed else []
    if session.workshop_copy:
        show(own_build_page(session, number, news))
        return
    follow(session)
    if number == LAST and not news:
        with suppress(BriefError):
            SizingForm(own_brief(session), lambda brief: keep_whole(session, brief)).show(session)
            return
    MyBuild(number, news).show(session)


def keep(session, typed):
    """Keep fields as they were typed, all or none; return lines that say what became of them."""
    if session.workshop_copy:
        return [Line("note", "The workshop copy keeps nothing.")]
    try:
        text = with_typed(own_text(session), typed, session.supply)
        session.store.keep_own_brief(session.settings.learner, text)
    except BriefError as error:
        return [Line("note", f"Nothing was changed. {error}")]
    return [Line("note", "Kept.")]


def keep_whole(session, brief):
    """Keep what the sizing form holds; what is as the settings say stays out."""
    supply = session.supply
    with suppress(BriefError):
        out = {"supply_volts", "supply_hertz"} if brief.supply == supply else set()
        out -= set(brief.unknown)
        held = {
            f"{section}_{key}": value
            for section, table in tables(to_toml(brief)).items() for key, value in table.items()
        }  # fmt: skip
        text = with_typed("", {n: v for n, v in held.items() if n not in out}, supply)
        session.store.keep_own_brief(session.settings.learner, text)


class MyBuild(Live):
    """What a build comes to, and under it the fields that a lesson asks for.

    Parameters
    ----------
    number : str
        The lesson.
    news : list of Line
        What became of fields typed in code.
    """

    def __init__(self, number, news=()):
        super().__init__(f"own-{number}")
        self.twin.later = "What was kept later stands with your build"
        self.number, self.news = number, list(news)
        self.held, self.shown = None, dict.fromkeys(asked_in(number), "")

    def draw(self, session, *news):
        if not self.session:
            self._lay_out()
        text = _text(session)
        if text is not None and (session is not self.session or text != self.held):
            self._fill(session, text)
        page = own_build_page(session, self.number)
        self.says.value = page.html()
        self.told.value = Page(self.news).html() + SPOKEN
        return page

    def _lay_out(self):
        self.says, self.told = widgets.HTML(), widgets.HTML()
        self.fields = {name: _control(name) for name in asked_in(self.number)}
        parts = [self.says]
        for name, box in self.fields.items():
            parts += [widgets.HTML(Page([Line("hint", words_of(name)[1])]).html()), box]
            on_enter(box, lambda: soon(self._keep))
        button = widgets.Button(description="Keep")
        button.on_click(lambda _: soon(self._keep))
        self.hold([*parts, *[button] * bool(self.fields), self.told])

    def _fill(self, session, text):
        """Let the fields hold what is kept; what is open stays empty."""
        brief, self.held = begun(text, session.supply), text
        self.shown = {
            name: "" if name in brief.left_out else _typed(brief, name) for name in self.fields
        }
        for name, box in self.fields.items():
            box.value = self.shown[name]

    def _keep(self):
        typed = {n: box.value for n, box in self.fields.items() if box.value != self.shown[n]}
        self.news = keep(self.session, typed)
        follow(self.session)


def _typed(brief, name):
    """Write a field as its control holds it."""
    sort = _SORTS[name]
    if name not in brief.unknown and (sort == "yes" or isinstance(sort, tuple)):
        return getattr(brief, name)
    text = brief.typed(name).strip("[]").replace('"', "")
    return text.replace(", ", "; ") if isinstance(sort, list) else text


def _text(session):
    """Return what is kept if it can be read and used."""
    try:
        text = own_text(session)
        begun(text, session.supply)
    except BriefError:
        return None
    return text


def _control(name):
    sort = _SORTS[name]
    looks = {
        "description": f"{words_of(name)[0]}:",
        "layout": {"width": "auto"},
        "style": {"description_width": "13em"},
    }
    if sort == "yes":
        return widgets.Dropdown(options=[_OPEN, ("yes", True), ("no", False), _UNKNOWN], **looks)
    if isinstance(sort, tuple):
        words = [(word, word) for word in sort if word != "unknown"]
        return widgets.Dropdown(options=[_OPEN, *words, _UNKNOWN], **looks)
    return widgets.Text(continuous_update=False, placeholder="open", **looks)
