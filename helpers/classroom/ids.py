"""Ids that the roster does not hold: strangers are marked, misspelt ones are asked about.

Knows ids and the roster; must never guess that two ids are one learner.
"""

import re
from difflib import get_close_matches

from helpers.classroom.problems import ASK, Problem
from helpers.exercises.refusals import plain
from helpers.exercises.settings import LEARNER_ID

LONGEST = 24  # characters; a longer id is like nobody's
MOST_COMPARED = 100  # ids in a folder that are compared with the roster


def strangers_in(groups, roster):
    """Sort out the ids that the roster does not hold.

    Parameters
    ----------
    groups : dict
        Hand-ins by id; those that are not spelt as ids are, are taken out: they count for nobody.
    roster : Roster
        Who is in the class.

    Returns
    -------
    strangers : dict
        From each id that is nobody's on the roster to what to say of it.
    problems : list of Problem
        One for each file that was taken out.
    """
    known = {one for learner in roster.learners for one in roster.ids(learner)}
    unknown = sorted(one for one in groups if one not in known)
    misspelt = [one for one in unknown if not LEARNER_ID.fullmatch(one)]
    problems = []
    for number, one in enumerate(misspelt):
        near = _nearest(one, roster.learners) if number < MOST_COMPARED else None
        problems += _misspelt(one, near, groups.pop(one))
    return {one: _stranger(one) for one in unknown if one in groups}, problems


def _nearest(one, learners):
    """Return the learner whose id was perhaps meant; None if there is none."""
    if len(one) > LONGEST:
        return None
    near = re.sub(r"[^A-Z0-9-]", "", one.upper())
    return next(iter(get_close_matches(near, learners, n=1)), None)


def _misspelt(one, near, hand_ins):
    """Say of each file that its id is not spelt as ids are, and how the roster settles it."""
    shown, whose = plain(one, 40), near or "whoever used it"
    found = f"the id “{shown}” was read; ids have capital letters, so it counts for nobody yet"
    advice = f"Ask whose it is. Then write it into the column `also` of {whose} in the roster."
    if near:
        found += f"; the nearest on the roster is {near}"
    return [Problem(hand_in.name, found, advice, ASK) for hand_in in hand_ins]


def _stranger(learner):
    return Problem(
        plain(learner, 40),
        "this learner is not on the roster; the answers are marked all the same",
        "Add the id to the roster if it belongs to the class, or write it into the column `also` "
        "of the learner who used it.",
        ASK,
    )
