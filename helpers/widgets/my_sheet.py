"""`my_sheet()`: the sizing sheet of a learner's own build, written beside their answers."""

from html import escape
from pathlib import Path

from helpers.exercises.store import OwnBriefError
from helpers.exercises.wording import STAMP, Line
from helpers.pages.own_build import own_brief
from helpers.pages.page import Page
from helpers.sheets import sizing_sheet
from helpers.sheets.danger_items import of_learner
from helpers.sizing import verdicts
from helpers.sizing.typed import BriefError
from helpers.widgets.lesson import current_session
from helpers.widgets.screen import show

#: Its last answer that earns all marks says which parts the sheet is for.
DESIGN = "own-1"


def my_sheet():
    """Write the sheet of a learner's own build, and say where it is and what is open."""
    session = current_session()
    learner, link = session.settings.learner, ""
    try:
        plan = _plan(session)
        _, items = of_learner(None if session.workshop_copy else learner, session.store)
        if session.store.folder:
            where, link = _write(session, sizing_sheet.pieces(plan, items, learner))
        else:
            where = "Answers are kept in memory here, so no file was written."
        of = "your design, own-1" if plan.only else "what the plan puts first for your brief"
        where += f" It is of {of}, or says what stops it."
    except (OwnBriefError, BriefError, OSError) as error:
        where, items = f"No sheet was written. {error}", []
    left = [name for name, passed in items if not passed]
    show(Page([
        Line("heading", "The sheet of my build"),
        Line("text", where),
        Line("text", f"Danger items passed: {len(items) - len(left)} of {len(items)}."),
        *(Line("option", f"Open: {name}") for name in left),
        Line("note", STAMP),
    ], extra_html=link))  # fmt: skip


def _plan(session):
    """Plan the parts of the last design that earned all marks, if it was for this brief."""
    brief = own_brief(session)
    last = session.draw(DESIGN).last
    chosen = last and last[1].right and last[0].value
    if chosen and chosen.circuit and chosen.brief == brief:
        return verdicts.mine(
            brief, chosen.circuit, chosen.ohms_each, chosen.count, chosen.rated_watts,
            chosen.type_volts,
        )  # fmt: skip
    return verdicts.plan(brief)


def _write(session, pieces):
    """Write the file; return what to say, and a link where the notebook's page can reach it."""
    folder, path = session.store.folder, session.store.sheet_path(session.settings.learner)
    folder.mkdir(parents=True, exist_ok=True)
    sizing_sheet.write_sheet(path, pieces)
    link = ""
    if folder.resolve().parent == Path.cwd():
        link = (
            f'<p><a href="{escape(folder.name)}/{escape(path.name)}" target="_blank">Open the '
            "sheet</a>, then print it from the browser.</p>"
        )
    return f"Written to {path}. Open it in a browser, and print it there on A4 or Letter.", link
