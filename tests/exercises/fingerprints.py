"""What a question asks and how it marks, as two short marks that change when the question does.

`python tests/exercises/fingerprints.py` records them. It refuses where what is asked or how it is
marked has changed under the same edition: an answer to the one must never be marked as the other.
"""

import json
import sys
from hashlib import sha256
from itertools import product
from pathlib import Path

from helpers.exercises.bank import bank
from helpers.exercises.kinds import Amount, Choice, ChooseAll, Order, Parts
from helpers.physics.mains import SUPPLIES

RECORDED = Path(__file__).with_suffix(".json")
LEARNERS = ("BENCH-01", "BENCH-02", "BENCH-03")
DRAWN_ON = ("230 V 50 Hz", "120 V 60 Hz")
FACTORS = (
    1e-3,
    0.1,
    0.45,
    0.5,
    0.707,
    0.9,
    0.96,
    0.98,
    0.997,
    1.0,
    1.003,
    1.02,
    1.04,
    1.11,
    1.414,
    2,
    10,
    1e3,
)
MOST_PARTS = 60


def fingerprint(question):
    """Return (marked, worded): over what is asked and earned, and over the words of it."""
    draws = [
        question.numbers_for(learner, "wick", SUPPLIES[supply], number)
        for learner in LEARNERS
        for supply in DRAWN_ON
        for number in range(3)
    ]
    about = (question.marks, question.role, question.danger, type(question.kind).__name__)
    first_counts = question.danger or question.role == "predict"
    if (tries := question.kind.tries) != 3 and not first_counts:
        about += (tries, question.kind.worth(1))
    marked = [(_numbers(n), _earned(question.kind, n)) for n in draws]
    worded = [(question.asked(n), _options(question.kind, n)) for n in draws]
    return _short((about, marked)), _short(worded)


def _numbers(n):
    return sorted((k, _plain(v)) for k, v in vars(n).items() if k != "supply")


def _plain(value):
    if isinstance(value, float):
        return f"{value:.9g}"
    if isinstance(value, (tuple, list)):
        return tuple(map(_plain, value))
    return repr(value)


def _earned(kind, n):
    """Return what a spread of answers earns."""
    return [
        (repr(_plain(value)), f"{kind.mark(value, n).share:.4g}") for value in _answers(kind, n)
    ]


def _answers(kind, n):
    if isinstance(kind, Parts):
        return list(product(*(field.bin for field in kind.fields)))[:MOST_PARTS]
    if isinstance(kind, Amount):
        return [factor * kind.right(n) for factor in FACTORS]
    if not isinstance(kind, (Choice, ChooseAll, Order)):
        return [kind.read(typed, n).value for typed in (kind.model(n), *kind.guesses(n))]
    keys = [option.key for option in kind.listed(n)]
    if isinstance(kind, Choice):
        return keys
    if isinstance(kind, ChooseAll):
        return [(), tuple(keys), *((key,) for key in keys)]
    swapped = [[*keys[:i], keys[i + 1], keys[i], *keys[i + 2 :]] for i in range(len(keys) - 1)]
    turned = [keys[i:] + keys[:i] for i in range(1, len(keys))]
    return [tuple(keys), *map(tuple, swapped + turned)]


def _options(kind, n):
    return [option.text for option in kind.listed(n)]


def _short(value):
    return sha256(repr(value).encode()).hexdigest()[:12]


def now():
    """Return edition and fingerprints of every question of the bank."""
    return {q.id: [q.edition, *fingerprint(q)] for q in bank().values()}


def recorded():
    return json.loads(RECORDED.read_text(encoding="utf-8")) if RECORDED.exists() else {}


def forgotten(before, after):
    """Return the questions that have changed under the same edition, or gone back to an older."""
    return [
        name
        for name, (edition, marked, _) in after.items()
        if name in before
        and (
            edition < before[name][0] or (edition == before[name][0] and marked != before[name][1])
        )
    ]


def main():
    before, after = recorded(), now()
    if names := forgotten(before, after):
        print(f"Changed under the same edition: {', '.join(names)}. Raise edition= of each first.")
        return 1
    rows = (f" {json.dumps(name)}: {json.dumps(row)}" for name, row in after.items())
    RECORDED.write_text("{\n" + ",\n".join(rows) + "\n}\n", encoding="utf-8")
    changed = sum(before.get(name) != row for name, row in after.items())
    print(f"{len(after)} questions, {changed} of them new or changed: {RECORDED.name} is written.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
