"""A share of the bench of packs and keys: two learners take their part of the time for a class."""

import pytest

from helpers.exercises.settings import Settings
from helpers.sheets import key, paper


@pytest.mark.parametrize("pieces", [paper.pieces, key.pieces], ids=["packs", "key"])
def test_limit_two_learners_are_quick(bench_script, pieces):
    bench = bench_script("paper_speed")
    people = [Settings(f"BENCH-{number}", "wick") for number in range(2)]
    list(pieces(people[:1], ["00"]))  # templates are made ready once
    seconds, size, first = bench.taken(pieces, people)
    assert seconds <= bench.SECONDS * len(people) / bench.LEARNERS
    assert size > 10_000 and 0 < first <= seconds
