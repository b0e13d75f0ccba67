"""The path "Need it be built at all?" brought to life."""

import json
from contextlib import suppress

from helpers.pages.own_build import own_brief
from helpers.pages.plan import need_page
from helpers.sizing import stops
from helpers.sizing.by_field import read_all
from helpers.sizing.typed import BriefError
from helpers.widgets.brief_form import BriefForm
from helpers.widgets.lesson import current_session
from helpers.widgets.my_build import keep


class NeedForm(BriefForm):
    """A few plain questions, and where they end; the answers are kept with the learner's build.

    Parameters
    ----------
    brief : brief.Brief
        What the fields hold at first.
    """

    def __init__(self, brief):
        super().__init__("need", brief, stops.ASKED, self._keep, flat=True)

    def page_of(self, brief):
        """Where the questions end."""
        return need_page(brief, kept=not current_session().workshop_copy)

    def _keep(self, _):
        keep(self.session, json.loads(self.typed.value))


def need_it_be_built():
    """Show the questions on whether a light need be built at all, as far as they are answered."""
    session, brief = current_session(), read_all({})[0]
    if not session.workshop_copy:
        with suppress(BriefError):
            brief = own_brief(session)
    NeedForm(brief).show()
