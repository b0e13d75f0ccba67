"""A learner to test with: a session of a bench code, and right and wrong answers to any question.

Writes nothing; tests that need a file give the store themselves.
"""

from itertools import permutations, product

from helpers.exercises import kinds
from helpers.exercises.bank import bank
from helpers.exercises.session import Session
from helpers.exercises.settings import Settings
from helpers.exercises.store import MemoryStore
from helpers.quantities import GLOSSARY

BENCH = Settings("BENCH-07", "wick", "230 V 50 Hz")


def session_of(settings=BENCH, store=None):
    return Session(settings, store or MemoryStore())


def right_answer(session, question_id, number=0):
    return bank()[question_id].kind.model(session.draw(question_id, number).numbers)


def wrong_answers(session, question_id, number=0):
    """Return different wrong answers as typed, as many as use up all tries."""
    question, numbers = bank()[question_id], session.draw(question_id, number).numbers
    kind = question.kind
    if isinstance(kind, kinds.Amount):
        right = kind.right(numbers)
        unit = GLOSSARY[kind.of].unit
        typed = [f"{factor * right:.5e} {unit}" for factor in (1.37, 1.61, 0.71)]
    elif isinstance(kind, kinds.Choice):
        typed = list(kind.shown(numbers))
    elif isinstance(kind, kinds.ChooseAll):
        typed = [*kind.shown(numbers), "none"]
    elif isinstance(kind, kinds.Order):
        typed = [", ".join(letters) for letters in list(permutations(kind.shown(numbers)))[:5]]
    elif isinstance(kind, kinds.Parts):
        texts = [[part.text(value) for value in part.bin] for part in kind.fields]
        typed = ["; ".join(pieces) for pieces in product(*texts)]
    else:
        typed = list(kind.guesses(numbers))
    wrong = [t for t in typed if not kind.mark(kind.read(t, numbers).value, numbers).right]
    return wrong[: max(3, kind.tries)]
