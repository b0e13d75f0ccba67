"""Unusual ways to type a right value, and wrong or hostile ones; all as data beside this file.

How people type: common practice, no source. The value is what a reader of the text would take it
for; `unicode_escape` writes what cannot be printed.
"""

import csv
from pathlib import Path

import pytest

from helpers.quantities import GLOSSARY, Ambiguous, NotUnderstood, QuantityError, read
from helpers.quantities.words import MEASURES

HERE = Path(__file__).parent


def rows(name):
    with (HERE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


READ, REFUSED = rows("unusual_forms.csv"), rows("refused_forms.csv")


def test_there_are_enough_forms_of_every_quantity():
    assert len(READ) >= 300 and len(REFUSED) >= 100
    assert {row["quantity"] for row in READ} == set(GLOSSARY)
    assert {row["said"] for row in READ} == {"", *MEASURES}


@pytest.mark.parametrize("row", READ, ids=lambda row: ascii(f"{row['quantity']}: {row['text']}"))
def test_unusual_but_right_forms_are_read(row):
    reading = read(row["text"], row["quantity"], row["unit"])
    assert reading.value == pytest.approx(float(row["value"]), rel=1e-12)
    assert reading.said == row["said"]
    assert reading.said in reading.understood


@pytest.mark.parametrize("row", REFUSED, ids=lambda row: ascii(f"{row['words']}: {row['text']}"))
def test_wrong_and_hostile_forms_are_refused_with_what_to_do(row):
    """What was read stands in quotes, what is wrong is in the table, what to do is an order."""
    text = row["text"].encode().decode("unicode_escape") if "\\" in row["text"] else row["text"]
    with pytest.raises(QuantityError) as refused:
        read(text, row["quantity"], row["unit"], lambda: "EXAMPLE")
    said = str(refused.value)
    assert row["words"] in said and said.replace("\u00a0", " ").isprintable()
    assert "“" in said or text in ("", "-", ".")
    assert any(order in said for order in ("ype ", "Check ", "Keep ", "eave "))
    assert said.endswith(".") or "EXAMPLE" in said
    assert "such as 4.7" not in said


@pytest.mark.parametrize(
    ("text", "unit", "understood"),
    [
        ("about 2 mA", "mA", "about 2 mA"),
        ("~ 2 mA or more", "mA", "about at least 2 mA"),
        ("2 mA ±5%", "mA", "2 mA ± 5 %"),
        ("the mean is 2 mA DC", "mA", "2 mA mean DC"),
        ("I_rms = 2 mA", "mA", "2 mA rms"),
    ],
)
def test_the_words_are_shown_in_what_was_understood(text, unit, understood):
    """Pinned: cards show this very text."""
    assert read(text, "current", unit).understood.replace("\u00a0", " ") == understood


@pytest.mark.parametrize(
    ("text", "unit", "ohms"),
    [
        ("3.225 kΩ", "kΩ", 3225.0),
        ("3,225", "kΩ", 3225.0),
        ("5,600 Ω", "kΩ", 5600.0),
        ("1,000 Ω", "kΩ", 1000.0),
        ("1,000 kΩ", "kΩ", None),
        ("1,000 Ω", "MΩ", None),
        ("100,000 Ω", "kΩ", None),
        ("1.234 MΩ", "kΩ", None),
        ("1,000 Ω", "Ω", None),
    ],
)
def test_of_two_readings_one_is_taken_where_the_unit_asked_for_leaves_one(text, unit, ohms):
    """From 0.01 to below 1000 of a unit with a prefix: the rule knows no answer, so tells none.

    Three noughts are thousands more often than decimals, so these are never taken for decimals.
    """
    if ohms is not None:
        assert read(text, "resistance", unit).value == ohms
        return
    with pytest.raises(Ambiguous, match="two ways"):
        read(text, "resistance", unit)


@pytest.mark.parametrize(
    ("text", "name", "meant"),
    [
        ("10.9MS", "resistance", "10.9 MΩ"),
        ("10.9MS", "current", "10.9 mA"),
        ("10.9 kΩx", "resistance", "10.9 kΩ"),
        ("2 mAq", "current", "2 mA"),
        ("about 5 VV", "voltage", "5 V"),
    ],
)
def test_a_letter_too_many_after_the_unit_is_asked_back_with_what_it_could_be(text, name, meant):
    with pytest.raises(Ambiguous, match="not a unit known here") as asked:
        read(text, name)
    assert f"If you mean {meant}, type that." in str(asked.value).replace("\u00a0", " ")


def test_the_example_of_a_message_is_the_callers_and_is_made_only_if_shown():
    def never():
        raise AssertionError("no example is shown here")

    assert read("5 V", "voltage", "V", never).value == 5.0
    with pytest.raises(NotUnderstood, match="such as 33 mV"):
        read("five", "voltage", "mV", lambda: "33 mV")
    with pytest.raises(NotUnderstood, match="such as 4.7\u00a0mV"):
        read("five", "voltage", "mV")
