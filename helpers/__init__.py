"""The names that a lesson's cells use; everything else is in the folders beside this file.

They are fetched at first use, so that `helpers.physics` needs neither widgets nor pictures. Opening
a lesson gives them all to its notebook, so that its first cell is one line.
"""

from importlib import import_module

_HOMES = {
    "settings_form": "helpers.widgets.settings_form",
    "need_it_be_built": "helpers.widgets.need_form",
    "my_supply": "helpers.widgets.lesson",
    "card": "helpers.widgets.lesson",
    "answer": "helpers.widgets.lesson",
    "nudge": "helpers.widgets.lesson",
    "progress": "helpers.widgets.lesson",
    "predictions": "helpers.widgets.lesson",
    "hand_in": "helpers.widgets.lesson",
    "my_build": "helpers.widgets.my_build",
    "my_sheet": "helpers.widgets.my_sheet",
    "bring_in": "helpers.widgets.lesson",
    "picture": "helpers.widgets.screen",
    "explore": "helpers.widgets.explorers",
}
__all__ = ["open_lesson", *_HOMES]


def open_lesson(number, learner=None, class_word=None, supply=None, workshop_copy=False):
    """Open a lesson, and let the cells of its notebook use the names of this module.

    Parameters
    ----------
    number, learner, class_word, supply, workshop_copy
        As for `helpers.widgets.lesson.open_lesson`.
    """
    from IPython import get_ipython

    from helpers.widgets import lesson

    lesson.open_lesson(number, learner, class_word, supply, workshop_copy)
    if shell := get_ipython():
        shell.push({name: __getattr__(name) for name in _HOMES})


def __getattr__(name):
    if name not in _HOMES:
        raise AttributeError(f"module 'helpers' has no attribute {name!r}")
    return getattr(import_module(_HOMES[name]), name)
