"""How far a learner is in a lesson."""

from helpers.exercises.bank import lessons
from helpers.exercises.standing import PASS_PERCENT, passed
from helpers.exercises.wording import Line


def progress_lines(session, number):
    """Return what has been answered and earned in a lesson, and what is still open.

    Parameters
    ----------
    session : Session
    number : str
        The lesson, such as "02".

    Returns
    -------
    lines : list of Line
    """
    questions = lessons()[number].QUESTIONS
    standings = [session.standing(question.id) for question in questions]
    marked = [s for s in standings if s.question.role != "predict"]
    tried = [s for s in standings if s.tries]
    earned = sum(s.marks for s in marked)
    most = sum(s.question.marks for s in marked)
    lines = [
        Line(
            "heading",
            f"Progress in lesson {number}: {len(tried)} of {len(standings)} questions answered, "
            f"{earned:g} of {most} marks",
        )
    ]
    if not any(s.tries or s.earlier for s in standings):
        return lines
    if (done := passed((s.question, s.marks) for s in standings)) is not None:
        rule = f"full marks on the danger items and {PASS_PERCENT} % of the rest"
        lines.append(Line("text", f"{'Passed' if done else 'Not passed yet'}: {rule}."))
    unfinished = {
        "Still open": [s.question.id for s in standings if not s.tries and not s.earlier],
        "Answered in an earlier edition, to be answered again": [
            s.question.id for s in standings if s.earlier and not s.tries
        ],
    }
    for standing in standings:
        if short := standing.short_of_all:
            unfinished.setdefault(short, []).append(standing.question.id)
    lines += [
        Line("text", f"{title}: {', '.join(ids) if len(ids) < len(standings) else 'all of them'}")
        for title, ids in unfinished.items()
        if ids
    ]
    if wrong := [s.question for s in standings if s.question.danger and _began_wrong(s)]:
        names = "; ".join(f"{question.id}, {question.outcome}" for question in wrong)
        lines.append(Line("note", f"Danger items first answered wrong: {names}"))
    if not any(unfinished.values()):
        lines.append(Line("text", "Nothing is left open, and all of it is right."))
    return lines


def _began_wrong(standing):
    """Whether the oldest answer was wrong, whatever came of the question later."""
    first = next((draw.first for draw in standing.draws.values() if draw.tried), None)
    return first is not None and not first[1].right
