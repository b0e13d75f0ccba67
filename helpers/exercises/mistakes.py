"""Typical wrong answers to a question, as somebody would type them: they follow from its slips.

For the workshop copy, which shows them with what the card says, and for the invented class.
"""

from helpers.exercises.kinds import NotRead


def wrong_answers(question, numbers, order=list):
    """Yield typical wrong answers to one draw of a question, as typed.

    Parameters
    ----------
    question : Question
    numbers : object
        The personal numbers of the draw.
    order : callable
        From the guesses to the order in which they are tried.

    Yields
    ------
    answer : str
        Each can be read, and none is right; they follow from the slips that the question knows.
        To a prediction, which may have no right answer: any answer.
    """
    return (typed for typed, _, _ in _wrong(question.kind, numbers, order))


def _wrong(kind, numbers, order=list):
    """Yield wrong answers as typed, as read and as marked, each value once."""
    found = set()
    for typed in order(list(kind.guesses(numbers))):
        try:
            answer = kind.read(typed, numbers)
        except NotRead:
            continue
        verdict = kind.verdict_on(answer, numbers)
        if not verdict.right and answer.value not in found:
            found.add(answer.value)
            yield typed, answer, verdict


def explained(question, numbers, most=4):
    """Return the usual mistakes that the question has an explanation for.

    Parameters
    ----------
    question : Question
    numbers : object
        The personal numbers of the draw.
    most : int
        How many at the most, dangers first.

    Returns
    -------
    pairs : list of (Answer, Verdict)
    """
    pairs = []
    for _, answer, verdict in _wrong(question.kind, numbers):
        if verdict.slip and verdict.slip not in {other.slip for _, other in pairs}:
            pairs.append((answer, verdict))
    return sorted(pairs, key=lambda pair: not pair[1].danger)[:most]
