"""What lies on the benches before anybody types: start sheets, the prove-dead card, and the guide.

Knows settings and the titles of lessons; no question.
"""

from helpers.exercises.bank import lessons
from helpers.exercises.wording import CAUTION, STAMP
from helpers.pages import templates


def pieces(people, wanted=(), keep_until=""):
    """Yield a start sheet for each learner: where to go, how to answer, what not to do here.

    Parameters
    ----------
    people : sequence of Settings
        Who gets one, in this order.
    wanted : sequence of str
        Numbers of the lessons that it names; may be none.
    keep_until : date or str
        Until when answers are kept; '' leaves room to write.

    Returns
    -------
    pieces : iterator of str
        One self-contained document.

    Raises
    ------
    ValueError
        If a lesson is not in the bank.
    """
    bank = lessons()
    numbers = [number.zfill(2) for number in wanted]
    for number in numbers:
        if number not in bank:
            raise ValueError(f"Lesson {number!r} was named; the bank holds {', '.join(bank)}.")
    named = [bank[number] for number in numbers]
    return _page("bench-sheet", "Start sheets", people=people, lessons=named, keep_until=keep_until)


def card():
    """Yield the card of how to prove dead, four times on one page to cut out."""
    return _page("prove-dead-card", "Prove-dead card")


def guide():
    """Yield the leader's guide: a room for two hours, or for two days."""
    return _page("leaders-guide", "Leader's guide")


def _page(part, title, **values):
    return templates.page(
        "start-sheet", part=part, title=title, caution=CAUTION, stamp=STAMP, **values
    )
