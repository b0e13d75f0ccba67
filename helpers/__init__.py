"""The names that a lesson's cells use; everything else is in the folders beside this file.

They are fetched at first use, so that `helpers.physics` needs neither widgets nor pictures.
"""

from importlib import import_module

_HOMES = {
    "open_lesson": "helpers.widgets.lesson",
    "settings_form": "helpers.widgets.settings_form",
    "my_supply": "helpers.widgets.lesson",
    "card": "helpers.widgets.lesson",
    "answer": "helpers.widgets.lesson",
    "nudge": "helpers.widgets.lesson",
    "progress": "helpers.widgets.lesson",
    "predictions": "helpers.widgets.lesson",
    "hand_in": "helpers.widgets.lesson",
    "bring_in": "helpers.widgets.lesson",
    "picture": "helpers.widgets.screen",
    "explore": "helpers.widgets.explorers",
}
__all__ = list(_HOMES)


def __getattr__(name):
    if name not in _HOMES:
        raise AttributeError(f"module 'helpers' has no attribute {name!r}")
    return getattr(import_module(_HOMES[name]), name)
