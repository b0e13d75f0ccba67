"""The path "Need it be built at all?" brought to life."""

from helpers.pages.plan import need_page
from helpers.sizing import stops
from helpers.sizing.by_field import read_all
from helpers.widgets.brief_form import BriefForm


class NeedForm(BriefForm):
    """A few plain questions, and where they end."""

    def __init__(self):
        super().__init__("need", read_all({})[0], stops.ASKED)

    def page_of(self, brief):
        """Where the questions end."""
        return need_page(brief)


def need_it_be_built():
    """Show the questions on whether a light need be built at all."""
    NeedForm().show()
