"""The danger items that stand on a sizing sheet: passed or open, by name.

Marked afresh from a learner's log, as a card does; knows no plan.
"""

from helpers.exercises.bank import lessons
from helpers.exercises.settings import Settings, changed
from helpers.exercises.standing import replay
from helpers.exercises.store import here
from helpers.physics.mains import SUPPLIES


def danger_items(lines=(), class_word=""):
    """Return the danger items of all lessons, and whether somebody has passed each.

    Parameters
    ----------
    lines : iterable of LogLine
        Of one learner's answer log, oldest first; none leaves every item open.
    class_word : str
        Under which answers count.

    Returns
    -------
    items : list of (str, bool)
        Name and whether it is passed.

    Examples
    --------
    >>> name, passed = danger_items()[0]
    >>> name.partition(":")[0], passed
    ('start-2', False)
    """
    by_question = {}
    for line in lines:
        by_question.setdefault(line.question, []).append(line)
    found = []
    for question in (q for lesson in lessons().values() for q in lesson.QUESTIONS if q.danger):
        standing = replay(question, by_question.get(question.id, ()), SUPPLIES, class_word)
        found.append((f"{question.id}: {question.outcome}", standing.marks >= question.marks))
    return found


def of_learner(learner, store=None):
    """Return the danger items of a learner whose answers are kept here.

    Parameters
    ----------
    learner : str or None
        Their id, as people type it; none leaves every item open.
    store : store.DiskStore, store.MemoryStore or None
        Where; None is the store of this machine.

    Returns
    -------
    learner : str
        The id as it is kept; '' for none.
    items : list of (str, bool)
        As `danger_items`; the class word is that of their settings, or else of their last answer.

    Raises
    ------
    SettingsError
        If it is no id of a learner.

    Examples
    --------
    >>> from helpers.exercises.store import MemoryStore
    >>> learner, items = of_learner("bench-07", MemoryStore())
    >>> learner, any(passed for _, passed in items)
    ('BENCH-07', False)
    """
    if not learner:
        return "", danger_items()
    learner, store = changed(Settings("ROOM"), learner).learner, store or here()
    lines = [line for line in store.log(learner).lines()[0] if line.learner == learner]
    kept = store.kept()
    word = lines[-1].class_word if lines else ""
    if kept and kept.learner == learner:
        word = kept.class_word
    return learner, danger_items(lines, word)
