"""Typical wrong answers to a question, as somebody would type them: they follow from its slips.

For the workshop copy, which shows them with what the card says, and for the invented class.
"""

from helpers import quantities
from helpers.exercises.kinds import Amount, NotRead


def wrong_answers(question, numbers):
    """Return typical wrong answers to one draw of a question, as typed.

    Parameters
    ----------
    question : Question
    numbers : object
        The personal numbers of the draw.

    Returns
    -------
    answers : list of str
        Each can be read, and none is right; they follow from the slips that the question knows.
        To a prediction, which may have no right answer: any answer.
    """
    return [typed for typed, _, _ in _wrong(question.kind, numbers)]


def _wrong(kind, numbers):
    """Yield wrong answers as typed, as read and as marked, each value once."""
    found = set()
    for typed in _GUESSES[kind.name](kind, numbers):
        try:
            answer = kind.read(typed, numbers)
        except NotRead:
            continue
        verdict = kind.verdict_on(answer, numbers)
        if not verdict.right and answer.value not in found:
            found.add(answer.value)
            yield typed, answer, verdict


def _quantity_guesses(kind, numbers):
    right = kind.right(numbers)
    values = [slip.wrong(numbers) for slip in kind.slips]
    if isinstance(kind, Amount):
        values += [wrong.value for wrong in kind.road.wrong(numbers)]
    values += [right * 1000, right * 1.4, right / 3]
    return [quantities.write_as(value, kind.unit, 3) for value in values]


def _choice_guesses(kind, numbers):
    return list(kind.shown(numbers))


def _choose_all_guesses(kind, numbers):
    model = kind.model(numbers).replace(",", " ").split()
    right = set() if model == ["none"] else set(model)
    return [", ".join(sorted(right ^ {letter})) or "none" for letter in kind.shown(numbers)]


def _order_guesses(kind, numbers):
    right = kind.model(numbers).split(", ")
    return [
        ", ".join([*right[:at], right[at + 1], right[at], *right[at + 2 :]])
        for at in range(len(right) - 1)
    ]


def _parts_guesses(kind, numbers):
    best = kind.model(numbers).split("; ")
    return [
        "; ".join([*best[:at], part.text(value), *best[at + 1 :]])
        for at, part in enumerate(kind.fields)
        for value in part.bin
    ]


_GUESSES = {
    "quantity": _quantity_guesses,
    "choice": _choice_guesses,
    "choose-all": _choose_all_guesses,
    "order": _order_guesses,
    "parts": _parts_guesses,
}


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
