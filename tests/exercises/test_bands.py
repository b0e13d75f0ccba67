"""Colour bands that are picked: read in many forms, marked by hand, each wrong turn by its name.

IEC 60062: the digits of the colours and what gold and silver say, as every chart has them.
"""

from types import SimpleNamespace

import pytest

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises.bank import bank
from helpers.exercises.kinds import NotRead
from helpers.exercises.roads.steps.colours import TURNS
from helpers.physics import resistors

QUESTION = bank()["ohm-15"]
KIND, NUMBERS = QUESTION.kind, SimpleNamespace(ohms=3_900.0)
DIGITS = ["black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white"]


def verdict(typed, numbers=NUMBERS):
    return KIND.mark(KIND.read(typed, numbers).value, numbers)


def test_second_way_the_right_bands_are_digit_digit_zeros_and_gold():
    for numbers in every_numbers(QUESTION):
        text = f"{numbers.ohms:.0f}"
        by_hand = [DIGITS[int(text[0])], DIGITS[int(text[1])], DIGITS[len(text) - 2], "gold"]
        assert set(text[2:]) == {"0"} and KIND.model(numbers) == ", ".join(by_hand)
        assert verdict(" ".join(by_hand), numbers).share == 1.0
        line = KIND.code_that_writes(QUESTION.line_of_code(numbers))
        assert eval(line, {"resistors": resistors, "__builtins__": {}}) == KIND.model(numbers)
        assert all(word in QUESTION.worked(numbers) for word in by_hand[:3])


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("gold, red, white, orange", "began at the other end"),
        ("red, white, orange, gold", "began at the other end"),
        ("white, orange, red, gold", "swapped the first two bands"),
        ("orange, white, orange, gold", "counted one zero too many"),
        ("orange, white, brown, gold", "counted one zero too few"),
        ("orange, white, black, gold", "read the third band as a digit"),
        ("orange, white, green, gold", "mixed up a prefix"),
        ("orange, white, gold, gold", "mixed up a prefix"),
        ("red, white, red, gold", "read the first band one colour off"),
        ("yellow, white, red, none", "read the first band one colour off"),
        ("orange, grey, red, silver", "read the second band one colour off"),
        ("orange, white, red", "left out the tolerance band"),
        ("orange, white, red, silver", "took the band of another tolerance"),
        ("orange, white, red, brown", "took the band of another tolerance"),
        ("violet, blue, red, gold", ""),
        ("black, white, white, black", ""),
    ],
    ids=lambda text: f"second way: {text}",
)
def test_a_wrong_turn_is_told_by_its_name_with_one_question(typed, name):
    found = verdict(typed)
    assert found.slip == name and not found.right
    assert found.reply.count("?") == (1 if name else 0)


def test_property_no_two_reasons_lead_to_the_same_bands():
    for numbers in every_numbers(QUESTION):
        right, ends = KIND.right(numbers), {}
        for turn in TURNS:
            end = turn.take(right)
            if end != right and None not in end:  # yellow violet yellow is its own other end
                assert ends.setdefault(end, turn.name) == turn.name
                assert KIND.mark(end, numbers).slip == turn.name


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("orange white orange gold", "These bands say 39 kΩ ± 5 %."),
        ("orange white gold silver", "These bands say 3.9 Ω ± 10 %."),
        ("orange white red none", "These bands say 3.9 kΩ ± 20 %."),
        ("gold red white orange", "No resistor is marked like that."),
        ("black white red gold", "No resistor is marked like that."),
    ],
    ids=lambda text: f"second way: {text}",
)
def test_what_was_picked_is_told_in_ohms(typed, said):
    assert verdict(typed).reply.replace("\xa0", " ").startswith(said)


@pytest.mark.parametrize(
    "typed",
    ["Orange White Red GOLD", " orange;white; red ; gold", "orange-white-red-gold.",
     "orange, white, red, gold", "orange / white / red / gold"],
)  # fmt: skip
def test_bands_are_read_however_they_are_parted(typed):
    assert KIND.read(typed, NUMBERS).understood == "orange, white, red, gold"


def test_a_colour_is_read_by_its_other_name_and_three_bands_have_no_fourth():
    assert KIND.read("gray purple red gold", NUMBERS).value == ("grey", "violet", "red", "gold")
    assert KIND.read("grey violet red", NUMBERS).value == ("grey", "violet", "red", "none")


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("", "four words in order"),
        ("3900", "Such as: blue, grey, black, silver."),
        ("orange, white, black, brown, gold", "four words in order"),
        ("orange, …, red, gold", "Band 2 can be black, brown"),
        ("orange, white, none, gold", "Band 3 can be black, brown"),
        ("orange, white, red, mauve", "Band 4 can be black, brown"),
    ],
)
def test_what_cannot_be_read_says_which_band_and_what_it_can_be(typed, words):
    with pytest.raises(NotRead) as refused:
        KIND.read(typed, NUMBERS)
    assert words in str(refused.value)
