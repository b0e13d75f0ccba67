"""The saved copy under something live: what it says, as text, for a notebook without a kernel.

It follows what is live, and is hidden while that lives. JupyterLab forgets at a reload where a
display id was shown: from then on the copy in the notebook stands still until its cell is run
again. So each copy says of which moment it is, and where to find what came later.
"""

from datetime import datetime

from IPython.display import display

from helpers.exercises.wording import Line
from helpers.pages.page import Page


def saved_copy(moment, later="Later answers are in your log"):
    """Say of a copy in a notebook of which moment it is, and how to see what came later."""
    return (
        f"Saved copy of {moment:%Y-%m-%d}, {moment:%H:%M}. {later}: run the first cell, then this "
        "one."
    )


class Twin:
    """A saved copy.

    Parameters
    ----------
    name : str
        Its class on the page, by which `screen.frame` hides it.
    """

    later = saved_copy.__defaults__[0]

    def __init__(self, name):
        self.name, self._handle, self._said = name, None, None

    def show(self, page):
        """Display a page as the copy."""
        self._handle, self._said = display(self._of_now(page), display_id=True), page.html()

    def update(self, page):
        """Put a page in its place, if it says something else."""
        if self._handle and page.html() != self._said:
            self._handle.update(self._of_now(page))
            self._said = page.html()

    def _of_now(self, page):
        lines = [Line("saved", saved_copy(datetime.now(), self.later)), *page.lines]
        names = f"cw-twin {self.name} {page.name}"
        return Page(lines, page.picture, page.extra_html, names, page.data)
