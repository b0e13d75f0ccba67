"""Who answers, in which class, on which mains. Knows no question and no file."""

import re
import secrets
from dataclasses import dataclass, replace

from helpers.physics.mains import SUPPLIES

WORKSHOP_LEARNER = "WORKSHOP"
LEARNER_ID = re.compile(r"[A-Z0-9-]{2,12}")
CLASS_WORD = re.compile(r"[a-z0-9-]{2,20}")
CODE_LETTERS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"


class SettingsError(ValueError):
    """A setting that cannot be used. The text says what was read and what to type instead."""


@dataclass(frozen=True)
class Settings:
    """A learner's settings.

    Parameters
    ----------
    learner : str
        2 to 12 of A-Z, 0-9 and hyphen.
    class_word : str
        The word that the instructor gave out: 2 to 20 of a-z, 0-9 and hyphen.
    supply : str
        Name of one of `helpers.physics.mains.SUPPLIES`.

    Raises
    ------
    SettingsError
        If one of them is not of that form.
    """

    learner: str
    class_word: str = "home"
    supply: str = "230 V 50 Hz"

    def __post_init__(self):
        if not LEARNER_ID.fullmatch(self.learner):
            raise SettingsError(
                f"The learner id {self.learner!r} was read. Use 2 to 12 of A-Z, 0-9 and hyphen, "
                'such as "BENCH-07".'
            )
        if not CLASS_WORD.fullmatch(self.class_word):
            raise SettingsError(
                f"The class word {self.class_word!r} was read. Use 2 to 20 of a-z, 0-9 and hyphen, "
                'such as "wick".'
            )
        if self.supply not in SUPPLIES:
            raise SettingsError(
                f"The supply {self.supply!r} was read. Choose one of: {', '.join(SUPPLIES)}."
            )


def bench_code():
    """Return a fresh code for somebody who chose no learner id."""
    return "BENCH-" + "".join(secrets.choice(CODE_LETTERS) for _ in range(4))


def changed(settings, learner=None, class_word=None, supply=None):
    """Return settings with what was given put in, spelling forgiven.

    Raises
    ------
    SettingsError
        If a value cannot be used, or the learner is the one whose answers are published.
    """
    given = {
        "learner": learner and str(learner).strip().upper(),
        "class_word": class_word and str(class_word).strip().lower(),
        "supply": supply and _supply_name(supply),
    }
    given = {name: value for name, value in given.items() if value}
    if given.get("learner") == WORKSHOP_LEARNER:
        raise SettingsError(
            f"The learner id {WORKSHOP_LEARNER} belongs to the workshop copy, whose answers are "
            "published. Choose another one."
        )
    return replace(settings, **given)


def _supply_name(text):
    squeezed = re.sub(r"[\s\u00a0\u2009\u202f,/]", "", str(text)).lower()
    return next((n for n in SUPPLIES if n.replace(" ", "").lower() == squeezed), str(text))
