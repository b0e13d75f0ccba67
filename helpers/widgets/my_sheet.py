"""`my_sheet()`: the sizing sheet of a learner's own build, written beside their answers."""

from pathlib import Path
from urllib.parse import quote

from helpers.exercises.wording import COMMAND, STAMP, Line
from helpers.pages.own_build import own_brief, own_text
from helpers.pages.page import Page
from helpers.sheets import sizing_sheet
from helpers.sheets.danger_items import of_learner
from helpers.sizing import own
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
        whose = own.CHOSEN if plan.only else own.FIRST
        where += f" It has {whose}, for {plan.brief.supply.name}, or says what stops it."
        if plan.kept and session.store.folder:
            where += f" A blank bench log of the same: {COMMAND} bench "
            where += f"{session.store.build_path(learner)} --blank > log.csv"
    except (BriefError, OSError) as error:
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
    """Plan the build; parts that earned all marks, if for this brief, are kept with it first."""
    text, last, parts = own_text(session), session.draw(DESIGN).last, None
    chosen = last and last[1].right and last[0].value
    if chosen and chosen.circuit and chosen.brief == own_brief(session):
        parts = (
            chosen.circuit, chosen.ohms_each, chosen.count, chosen.rated_watts, chosen.type_volts
        )  # fmt: skip
    if not session.workshop_copy:
        text = own.with_parts(text, session.supply, parts)
        session.store.keep_own_brief(session.settings.learner, text)
    return own.planned(text, session.supply)


def _write(session, pieces):
    """Write the file; return what to say, and a link where the notebook's page can reach it."""
    store = session.store
    folder, path = store.folder, store.sheet_path(session.settings.learner)
    folder.mkdir(parents=True, exist_ok=True)
    sizing_sheet.write_sheet(path, pieces)
    link = ""
    if folder.resolve().parent == Path.cwd():
        # The second one is right where `helpers open` serves; JupyterLab opens the first in a tab
        # of its own, which cannot print.
        to = f"{quote(folder.name)}/{quote(path.name)}"
        link = (
            f'<p>Open the sheet <a href="{to}" target="_blank">beside this</a>, or '
            f'<a href="/files/{to}" target="_blank">on a page of its own, to print it</a>.</p>'
        )
    return f"Written to {path}. Open it in a browser, and print it there on A4 or Letter.", link
