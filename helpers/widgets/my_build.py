"""`my_build()`: a learner's own build on paper, with fields to type; what it says is a page."""

import json
from contextlib import suppress

from helpers.exercises.wording import Line
from helpers.pages.own_build import (
    ASKED_IN,
    LAST,
    asked_in,
    own_brief,
    own_build_page,
    own_text,
)
from helpers.pages.page import Page
from helpers.sizing.brief import tables, to_toml
from helpers.sizing.by_field import typed_of
from helpers.sizing.own import with_typed
from helpers.sizing.typed import BriefError
from helpers.widgets import lesson as lessons
from helpers.widgets.brief_form import BriefForm
from helpers.widgets.live import follow
from helpers.widgets.screen import show
from helpers.widgets.sizing_form import SizingForm


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
    try:
        brief = own_brief(session)
    except BriefError:
        show(own_build_page(session, number, news))
        return
    if number == LAST and not news:
        SizingForm(brief, lambda brief: keep_whole(session, brief)).show(session)
    else:
        MyBuild(number, brief, news).show(session)


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


class MyBuild(BriefForm):
    """The fields that a lesson asks for, kept as they are typed, and what the build comes to.

    Parameters
    ----------
    number : str
        The lesson.
    brief : brief.Brief
        What is kept.
    news : list of Line
        What became of fields typed in code.
    """

    def __init__(self, number, brief, news=()):
        super().__init__(f"own-{number}", brief, asked_in(number))
        self.twin.later = "What was kept later stands with your build"
        self.number, self.news, self.shown = number, list(news), json.loads(self.typed.value)

    def page_of(self, _):
        """The build as far as it is kept."""
        return own_build_page(lessons.current_session(), self.number, self.news)

    def texts(self, typed):
        """Return what is kept, with what stands in the fields."""
        kept = {}
        with suppress(BriefError):
            kept = typed_of(own_brief(self.session))
        return kept | typed

    def draw(self, session, *news):
        with suppress(BriefError):
            self._fill(own_brief(session))
        if not self.session:
            return super().draw(session)
        self._show(self.page_of(self.brief))
        return self.said_page

    def _fill(self, brief):
        """Let the fields hold what was kept elsewhere."""
        if (brief, brief.left_out) != (self.brief, self.brief.left_out):
            held = typed_of(brief)
            self.brief, self.shown = brief, {each.name: held[each.name] for each in self.fields}
            self.typed.value = json.dumps(self.shown)
            self._look()

    def work(self):
        """Keep what was changed, and show what the build comes to now."""
        typed = json.loads(self.typed.value)
        changed = {name: text for name, text in typed.items() if text != self.shown[name]}
        self.news, self.shown = keep(self.session, changed), typed
        follow(self.session)
