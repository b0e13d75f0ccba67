"""The form that sizes a pilot light while its brief is typed."""

from helpers.pages.plan import plan_page
from helpers.sizing import verdicts
from helpers.widgets.brief_form import BriefForm
from helpers.widgets.timing import soon

LATER_SECONDS = 0.7
"""When the map and what would help follow the first table, if nothing more is typed [s]."""
BETWEEN_SECONDS = 0.02


class SizingForm(BriefForm):
    """A brief in its sections, and below it the plan, which follows what is typed.

    Parameters
    ----------
    brief : brief.Brief
        What the fields hold at first; what it left out stands open.
    changed : callable or None
        Called with each new brief that can be used.
    """

    def __init__(self, brief, changed=None):
        super().__init__("sizing", brief, changed=changed)

    def page_of(self, brief):
        """The whole plan."""
        return plan_page(verdicts.plan(brief))

    def work(self):
        """Show the first table at once, and what takes longer when the hand rests."""
        plan = verdicts.plan(self.brief)
        self._show(plan_page(plan, quick=True))
        self._waiting = soon(lambda: self._try_on(plan, plan.trying(), []), LATER_SECONDS)

    def _try_on(self, plan, trying, found):
        """Try one change more and let go, so that what is typed meanwhile does not wait."""
        for words in trying:
            found.append(words)
            self._waiting = soon(lambda: self._try_on(plan, trying, found), BETWEEN_SECONDS)
            return
        plan.helps = [words for words in found if words]
        self._show(plan_page(plan))
