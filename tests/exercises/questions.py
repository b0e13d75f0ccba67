"""The questions of the bank in the groups that the tests of this folder run over."""

import pytest

from helpers.exercises import kinds
from helpers.exercises.bank import bank

ALL = list(bank().values())
MARKED = [q for q in ALL if q.role != "predict"]
EXERCISES = [q for q in ALL if q.role == "exercise"]
QUANTITIES = [q for q in ALL if isinstance(q.kind, kinds.Amount)]
LETTERED = [q for q in ALL if hasattr(q.kind, "options")]
CHOICES = [q for q in MARKED if isinstance(q.kind, kinds.Choice)]
CHOOSE_ALL = [q for q in MARKED if isinstance(q.kind, kinds.ChooseAll)]
ORDERS = [q for q in MARKED if isinstance(q.kind, kinds.Order)]
DESIGNS = [q for q in MARKED if isinstance(q.kind, kinds.Design)]
PARTS = [q for q in MARKED if isinstance(q.kind, kinds.Parts)]

# One question of each kind, tried in every way; a browser answers those of lesson 02.
ONE_OF_EACH_KIND = {
    "quantity": "ohm-2",
    "choice": "ohm-13",
    "choose-all": "ohm-8",
    "order": "ohm-9",
    "parts": "ohm-14",
    "picture": "ohm-5",
    "bands": "ohm-15",
    "design": "own-1",
}


def of_each(questions, what="property"):
    return pytest.mark.parametrize(
        "question", questions, ids=[f"{what}: {q.id}" for q in questions]
    )
