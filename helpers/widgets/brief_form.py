"""Fields of a brief as a form: typed as people type, each error beside its field, results live.

The form is plain HTML. What is typed stands as text in a box of the kernel that is not shown, so
that a reload and a second tab find it. Knows no single field: labels, options and limits are those
of `sizing.brief`.
"""

import json
from html import escape
from itertools import count, groupby

import ipywidgets as widgets

from helpers.exercises.wording import STAMP, Line
from helpers.figures.words import capital
from helpers.pages.page import Page
from helpers.pages.templates import part
from helpers.sizing.brief import FIELDS, Brief, such_setting
from helpers.sizing.by_field import read_all, typed_of
from helpers.sizing.fields import called
from helpers.widgets.lesson import current_session
from helpers.widgets.live import Live
from helpers.widgets.screen import SPOKEN_NEXT, on_arriving, show
from helpers.widgets.timing import soon

REST_SECONDS = 0.3
OTHER_LEARNER = "Another learner is set now, so this form shows nothing. Run its cell again."
_ALIVE = on_arriving("brief_form.js")
_LOOK = "this.closest('.cw-controls').querySelector('form')?.cwLook?.()"
_TITLES = {"use": "Need and use", "led": "LED", "neon": "A neon lamp instead",
           "seen": "Where it is seen", "bin": "Parts at hand"}  # fmt: skip
_FOLDED = ("neon", "bin")  # where all is asked: what a beginner meets last
_numbers = count(1)


class BriefForm(Live):
    """A form that lives; a subclass says what it makes of a brief.

    Parameters
    ----------
    name : str
        As for `Live`.
    brief : brief.Brief
        What the fields hold at first.
    names : sequence of str or None
        Fields that are asked; None asks all.
    changed : callable or None
        Called with each new brief that can be used.
    flat : bool
        Whether they stand in the order of `names`, without sections [-].
    """

    def __init__(self, name, brief, names=None, changed=None, flat=False):
        super().__init__(name)
        self.twin.later = "It shows what was typed until then"
        self.changed, self.brief, self._waiting = changed, brief, None
        typed = typed_of(brief)
        self.fields = [each for each in FIELDS if names is None or each.name in names]
        if flat:
            self.fields.sort(key=lambda each: names.index(each.name))
        self.typed = _hidden("cw-typed", {each.name: typed[each.name] for each in self.fields})
        self.wrong, self.such = _hidden("cw-wrong", {}), _hidden("cw-such", _such(typed))
        self.pulse_of_form, self.told, self.page = (widgets.HTML() for _ in range(3))
        self.form = widgets.HTML(_form(self.fields, typed, flat, names is None))
        self.typed.observe(self._typed, "value")

    def show(self, session=None):
        """Display it, for the session of this kernel; the workshop copy's stands still."""
        session = session or current_session()
        if session.workshop_copy:
            show(self.page_of(self.brief))
        else:
            super().show(session)

    def draw(self, session, *news):
        if not self.session:
            self._show(self.page_of(self.brief))
            self.told.value = SPOKEN_NEXT  # what is there on arriving is no news: it stands once
            self.hold([
                self.form, self.typed, self.wrong, self.such, self.pulse_of_form, self.told,
                self.page,
            ])  # fmt: skip
        elif session.settings.learner != self.session.settings.learner:
            self.hold([widgets.HTML(Page([Line("note", OTHER_LEARNER)]).html())])
        return self.said_page

    def _typed(self, _):
        if self._waiting:
            self._waiting.cancel()
        self._waiting = soon(self._read, REST_SECONDS)

    def _read(self):
        typed = json.loads(self.typed.value)
        brief, wrong = read_all(self.texts(typed))
        self.wrong.value, self.such.value = json.dumps(wrong), json.dumps(_such(typed))
        self._look()
        if brief is None:
            names = "; ".join(f"{called(name)}: {why}" for name, why in wrong.items())
            text = f"Nothing is worked out until this can be read. {capital(names)}"
            self._show(Page([Line("note", text), Line("caution", STAMP)]), text)
        elif brief != self.brief or brief.left_out != self.brief.left_out or self.said_text:
            self.brief = brief
            self.work()
            if self.changed:
                self.changed(brief)

    def texts(self, typed):
        """Return all texts that are read together."""
        return typed

    def _look(self):
        """Let the form on the page show what its boxes hold."""
        held = escape(f"{self.typed.value} {self.wrong.value} {self.such.value}")
        self.pulse_of_form.value = f'<style onload="{_LOOK}">/* {held} */</style>'

    def work(self):
        """Show what the brief comes to."""
        self._show(self.page_of(self.brief))

    def _show(self, page, text=""):
        """Put a page below the form, with a line that is read out, and into the saved copy."""
        self.said_page, self.said_text = page, text
        self.page.value = page.html()
        heard = escape(text or self.in_short(page))
        self.told.value = f'<p class="cw-heard">{heard}</p>{SPOKEN_NEXT}'
        self.twin.update(page)

    def in_short(self, page):
        """The first line that says what came of it."""
        return next((each.text for each in page.lines if each.role in ("danger", "heading")), "")


def _such(typed):
    """Examples that go with the way in which settings are given."""
    return {
        each.name: such_setting(each.name, typed)
        for each in FIELDS if each.metadata["kind"] == "setting"
    }  # fmt: skip


def _hidden(name, held):
    box = widgets.Text(json.dumps(held), continuous_update=False)
    box.add_class("cw-held").add_class(name)
    return box


def _form(fields, typed, flat, everything):
    such = typed_of(Brief()) | _such(typed)
    sections = []
    for section, group in groupby(fields, key=lambda each: each.name.partition("_")[0]):
        rows = [
            (each.name, capital(called(each.name)), each.metadata["says"], _options(each))
            for each in group
        ]
        opened = section == "use" or any(not typed[name] for name, *_ in rows)
        opened = opened and not (everything and section in _FOLDED)
        sections.append((_TITLES.get(section, section.capitalize()), opened, rows))
    known = {"number": next(_numbers), "in_sections": not flat, "typed": typed, "such": such}
    return f"{part('brief-form', sections=sections, **known)}{_ALIVE}"


def _options(field):
    """Return what can be chosen and in which words; nothing where it is typed."""
    sort = field.metadata["kind"]
    words = ("yes", "no") if sort == "yes" else sort
    if not isinstance(words, tuple):
        return ()
    longer = field.metadata.get("options", {})
    return [(word, longer.get(word, word)) for word in dict.fromkeys((*words, "unknown"))]
