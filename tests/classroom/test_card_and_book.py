"""What the card says and what the mark book says of one log are the same, whatever was done."""

import pytest
from questions import ONE_OF_EACH_KIND

from helpers.classroom import learner_rows
from helpers.exercises.standing import replay

WAYS = {"right", "any", "again", "refused"}


@pytest.fixture(scope="module")
def bench(bench_script):
    return bench_script("card_and_book")


def test_property_card_and_book_say_the_same_over_any_sequence(bench):
    found, met = bench.run(600)
    assert found == []
    assert all(met[what] > 30 for what in {*ONE_OF_EACH_KIND, "picture", *WAYS})


def test_a_book_that_says_something_else_would_be_found(bench, monkeypatch):
    def forgetful(question, lines, *more):
        return replay(question, lines[:-1], *more)

    monkeypatch.setattr(learner_rows, "replay", forgetful)
    found, _ = bench.run(40, seed=1)
    assert len(found) > 10


def test_a_log_that_sessions_wrote_gives_nothing_to_ask(bench, monkeypatch):
    """And what no session lets through would be asked about."""
    monkeypatch.setattr("helpers.classroom.remarks.MOST_A_SECOND", 3)
    found, _ = bench.run(20)
    assert any("more than" in str(one[-1]) for one in found)
