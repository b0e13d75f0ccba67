"""Personal numbers: the same anywhere, fair, and another learner's are others."""

import os
import subprocess
import sys
from collections import Counter

import pytest

from helpers.exercises.draws import Draw


def test_pinned_stream():
    """Pinned: the marks of hand-ins from earlier years depend on these numbers staying the same."""
    draw = Draw("BENCH-07", "wick", "ohm-3", "0", "230 V 50 Hz")
    assert [draw.pick(range(1000)) for _ in range(10)] == [
        668,
        579,
        958,
        45,
        721,
        201,
        718,
        458,
        530,
        238,
    ]
    assert draw.shuffle("abcdef") == list("adebcf")


def test_second_way_the_stream_is_sha_256_in_words_of_four_bytes():
    """FIPS 180-4 through Python's hashlib, put together here by hand."""
    from hashlib import sha256

    key = "BENCH-07\x1fohm-3"
    stream = b"".join(sha256(f"{key}\x1f{block}".encode()).digest() for block in range(3))
    words = [int.from_bytes(stream[place : place + 4], "big") for place in range(0, 96, 4)]
    draw = Draw("BENCH-07", "ohm-3")
    assert [draw.pick(range(97)) for _ in range(24)] == [word * 97 // 2**32 for word in words]


def test_another_process_with_another_hash_seed_draws_the_same():
    program = (
        "from helpers.exercises.draws import Draw; d = Draw('BENCH-07', 'ohm-3'); "
        "print([d.pick(range(100)) for _ in range(20)])"
    )
    said = set()
    for seed in ("0", "1", "4242"):
        done = subprocess.run(
            [sys.executable, "-c", program],
            env={**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path)},
            capture_output=True,
            text=True,
            check=True,
        )
        said.add(done.stdout)
    draw = Draw("BENCH-07", "ohm-3")
    assert said == {f"{[draw.pick(range(100)) for _ in range(20)]}\n"}


def test_one_draw_does_not_depend_on_others_made_before_it():
    alone = [Draw("BENCH-07", "ohm-3").pick(range(1000)) for _ in range(3)]
    Draw("BENCH-08", "ohm-3").shuffle(range(50))
    assert alone == [Draw("BENCH-07", "ohm-3").pick(range(1000))] * 3


@pytest.mark.parametrize(
    ("one", "other"),
    [
        (("BENCH-07", "wick"), ("BENCH-08", "wick")),
        (("BENCH-07", "wick"), ("BENCH-07", "tallow")),
        (("AB", "C"), ("A", "BC")),
        (("A", "B", "C"), ("A", "BC")),
    ],
    ids=lambda words: f"property: {'+'.join(words)}",
)
def test_other_words_give_another_stream(one, other):
    first, second = Draw(*one), Draw(*other)
    assert [first.pick(range(10**6)) for _ in range(4)] != [
        second.pick(range(10**6)) for _ in range(4)
    ]


@pytest.mark.parametrize("size", [2, 3, 5, 9], ids=lambda size: f"limit: {size} items")
def test_picks_are_fair(size):
    """Chi-square over 6,000 learners, against the 99.9 % point of scipy; the ids are fixed."""
    from scipy.stats import chi2

    counts = Counter(Draw(f"BENCH-{n}", "ohm-3").pick(range(size)) for n in range(6000))
    expected = 6000 / size
    statistic = sum((counts[item] - expected) ** 2 / expected for item in range(size))
    assert statistic < chi2.ppf(0.999, size - 1)


def test_limit_orders_are_fair():
    from scipy.stats import chi2

    counts = Counter(tuple(Draw(f"BENCH-{n}", "x").shuffle("abc")) for n in range(6000))
    assert len(counts) == 6
    statistic = sum((count - 1000) ** 2 / 1000 for count in counts.values())
    assert statistic < chi2.ppf(0.999, 5)


def test_some_takes_each_item_once_and_shuffle_all_of_them():
    draw = Draw("BENCH-07")
    for _ in range(50):
        assert len(set(draw.some(range(9), 4))) == 4
        assert sorted(draw.shuffle(range(9))) == list(range(9))
