"""What lives on the page: drawn from the log of the open session, and anew whenever that changes.

All that is read and answered in one place is the state of one box of widgets, so that a reload
brings it back together, from the kernel. Knows no question.
"""

import asyncio
from contextlib import suppress

import ipywidgets as widgets

from helpers.exercises.wording import Line
from helpers.pages.page import Page
from helpers.widgets.screen import frame, show, show_controls
from helpers.widgets.twin import Twin

KEPT = 2  # of each: a notebook that was not saved since its cell ran again shows an earlier one
LOOK_SECONDS = 2.0
LOST_SECONDS = 12.0
SETTINGS_CHANGED_ELSEWHERE = (
    "The settings were changed in another notebook, so this shows nothing. Run the first cell of "
    "this lesson again: then it comes back, for the learner and the supply that are set now."
)
_HEARD = (
    "const box = this.closest('.cw-controls'); box.classList.remove('cw-lost');"
    " clearTimeout(box.cwLost); box.cwLost = setTimeout("
    f"() => box.classList.add('cw-lost'), {1000 * LOST_SECONDS:.0f})"
)
_things = {}
_open = {}


class Live:
    """Something that is drawn from the log, with its saved copy.

    A subclass says how to `draw` it: from a session and news, as for `follow`, to the page that
    says the same in text.

    Parameters
    ----------
    name : str
        Of its kind and its question or lesson, such as "c-ohm-2".
    """

    def __init__(self, name):
        self.name, self.session, self.said = name, None, None
        self.box = frame([], f"cw-{name}", twin=f"cw-twin-{name}")
        self.pulse = widgets.HTML()  # of its own: one that all share could be missed by a page
        self.hold([])
        self.twin = Twin(f"cw-twin-{name}")

    def show(self, session):
        """Display it and its copy, and keep both up to date."""
        self.follow(session)
        self.beat()
        show_controls(self.box)
        self.twin.show(self.said)
        kept = _things.setdefault(self.name, [])
        kept.append(self)
        if len(kept) > KEPT:
            kept.pop(0).close()

    def follow(self, session, *news):
        """Show what is true now; `news` are a question's id, a draw and what an answer led to."""
        if not session.closed:
            self.said = self.draw(session, *news)
            self.session = session
            self.twin.update(self.said)
        elif self.session or not self.said:
            page = Page([Line("note", SETTINGS_CHANGED_ELSEWHERE)])
            self.said, self.session = self.said or page, None
            self.hold([widgets.HTML(page.html())])

    def close(self):
        """Leave the page: where it is still shown, its copy comes forth."""
        _close(self.box)

    def alike(self):
        """Return what else of this name is on the page."""
        return [thing for thing in _things.get(self.name, ()) if thing is not self]

    def hold(self, children):
        """Let the box hold these; what it held before hears no more from the page."""
        *before, style = [child for child in self.box.children if child is not self.pulse]
        self.box.children = [*children, style, self.pulse]
        for child in before:
            if child not in children:
                _close(child)

    def beat(self):
        """Tell every page that this kernel lives; a box that hears nothing for long hides.

        JupyterLab tells no tab that another one has restarted the kernel of both.
        """
        turn = "" if self.pulse.value.endswith("/**/</style>") else "/**/"
        self.pulse.value = f'<style onload="{_HEARD}">{turn}</style>'


class LivePage(Live):
    """A page that follows the log.

    Parameters
    ----------
    name : str
        As for `Live`.
    page_of : callable
        From a session to the page.
    """

    def __init__(self, name, page_of):
        super().__init__(name)
        self.page_of = page_of

    def draw(self, session, *news):
        if not self.session:
            self.text = widgets.HTML()
            self.hold([self.text])
        page = self.page_of(session)
        self.text.value = page.html()
        return page


def show_page(session, name, page_of):
    """Show a page that follows the log; the workshop copy's stands still."""
    if session.workshop_copy:
        show(page_of(session))
    else:
        LivePage(name, page_of).show(session)


def open_on_page(session):
    """Let the page follow a session from now on, also what other kernels write."""
    session.watchers["page"] = lambda *news: follow(session, *news)
    session.closed = False
    _open.update(session=session, kept=session.store.kept())
    follow(session)
    with suppress(RuntimeError):  # outside a kernel nothing goes on between two cells
        if "timer" not in _open:
            _open["timer"] = asyncio.get_running_loop().call_later(LOOK_SECONDS, _look)


def follow(session, *news):
    """Let everything on the page follow."""
    for thing in _all():
        thing.follow(session, *news)


def _all():
    return [thing for kept in _things.values() for thing in kept]


def catch_up(session):
    """Read and show what other kernels wrote; return the ids of the questions it is about."""
    changed, closed = session.read_again(), session.closed
    if session is _open.get("session"):
        session.closed = session.store.kept() not in (None, _open["kept"])
    if session.closed != closed:
        follow(session)
    for question_id in changed:
        follow(session, question_id)
    return changed


def _look():
    """Catch up when log or settings have changed on the disk, and look again a moment later."""
    _open["timer"] = asyncio.get_running_loop().call_later(LOOK_SECONDS, _look)
    session = _open["session"]
    stamps = [_stamp(path) for path in (session.log.path, session.store.settings_path)]
    if stamps != _open.get("stamps"):
        _open["stamps"] = stamps
        catch_up(session)
    for thing in _all():
        thing.beat()


def _stamp(path):
    with suppress(OSError):
        return path and (path.stat().st_mtime_ns, path.stat().st_size)


def _close(widget):
    for child in getattr(widget, "children", ()):
        _close(child)
    for part in (getattr(widget, "style", None), widget.layout, widget):
        if part is not None:
            part.close()
