"""Who answers, in which class, on which mains: what is taken, forgiven and refused."""

import pytest

from helpers.exercises.settings import Settings, SettingsError, bench_code, changed
from helpers.physics.mains import SUPPLIES

BENCH = Settings("BENCH-07", "wick", "120 V 60 Hz")


@pytest.mark.parametrize(
    "learner", ["A1", "BENCH-07", "ABCDEFGHIJKL", "0-9", "NUL", "CON"], ids="limit: {}".format
)
def test_a_learner_id_of_the_right_form_is_taken(learner):
    assert Settings(learner).learner == learner


@pytest.mark.parametrize(
    "learner",
    [
        "",
        "A",
        "ABCDEFGHIJKLM",
        "bench-07",
        "BENCH 07",
        "../BENCH",
        "BÄNK",
        "A/B",
        "A\n",
        "١٢",
        "A_B",
    ],
    ids=lambda learner: f"limit: {ascii(learner)}",
)
def test_another_learner_id_is_refused_with_what_was_read_and_an_example(learner):
    with pytest.raises(SettingsError) as refused:
        Settings(learner)
    said = str(refused.value)
    assert repr(learner) in said and "2 to 12 of A-Z" in said and "BENCH-07" in said


@pytest.mark.parametrize("word", ["", "w", "w" * 21, "Wick", "two words", "wick/", "docht-ä"])
def test_another_class_word_is_refused(word):
    with pytest.raises(SettingsError, match="class word .* was read. Use 2 to 20 of a-z"):
        Settings("BENCH-07", word)


def test_an_unknown_supply_is_refused_with_the_known_ones():
    with pytest.raises(SettingsError, match="'400 V 50 Hz' was read.*120 V 60 Hz"):
        Settings("BENCH-07", "wick", "400 V 50 Hz")


@pytest.mark.parametrize("learner", ["WORKSHOP", "workshop", " Workshop "])
def test_nobody_can_take_the_id_whose_answers_are_published(learner):
    with pytest.raises(SettingsError, match="WORKSHOP belongs to the workshop copy"):
        changed(BENCH, learner=learner)


def test_spelling_is_forgiven_where_it_cannot_mean_anything_else():
    new = changed(BENCH, learner=" bench-08 ", class_word="Tallow ", supply="230v50hz")
    assert new == Settings("BENCH-08", "tallow", "230 V 50 Hz")


@pytest.mark.parametrize("name", SUPPLIES, ids="property: {}".format)
@pytest.mark.parametrize("spell", [str.lower, lambda n: n.replace(" ", ""), lambda n: f" {n}, "])
def test_every_supply_is_read_in_several_spellings(name, spell):
    assert changed(BENCH, supply=spell(name)).supply == name


def test_what_is_not_given_stays():
    assert changed(BENCH) == BENCH
    assert changed(BENCH, class_word="tallow") == Settings("BENCH-07", "tallow", "120 V 60 Hz")


def test_a_bench_code_is_a_learner_id_and_rarely_comes_twice():
    codes = {bench_code() for _ in range(200)}
    assert len(codes) > 190
    assert all(Settings(code) for code in codes)
    assert not any(set(code.removeprefix("BENCH-")) & set("01IOL") for code in codes)
