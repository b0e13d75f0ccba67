"""A form's texts and a brief's fields are one thing; what is wrong stands beside its field."""

from dataclasses import replace

import pytest

from helpers.sizing.brief import FIELDS, NEVER_GUESSED, Brief, from_toml, to_toml
from helpers.sizing.by_field import read_all, typed_of

BRIEFS = [
    Brief(),
    Brief(bin_ratings=(0.25, 0.6, 1.0), bin_volts=(200.0, 300.0, 350.0), supply_lowest=210.0),
    Brief(dimmer_given_by="heat", dimmer_lowest=15.0, dimmer_highest=100.0, use_by_others=False),
    Brief(dimmer_edge="none", led_drop=1.83, bin_fusible_at=20.0),
]


@pytest.mark.parametrize("brief", BRIEFS)
def test_property_what_a_form_holds_is_read_as_the_same_brief(brief):
    found, wrong = read_all(typed_of(brief))
    assert found == brief and not wrong and found.left_out == ()


def test_property_what_is_empty_is_left_out_as_in_a_file():
    from_file = from_toml('[heater]\npower = "60 W"')
    found, _ = read_all({"heater_power": " 60 W "})
    assert found == from_file and found.left_out == from_file.left_out
    assert all(found.typed(name) == '"unknown"' for name in NEVER_GUESSED)
    assert typed_of(found) == {each.name: "" for each in FIELDS} | {"heater_power": "60 W"}


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("heater_power", "ninety", "has no number"),
        ("supply_volts", "9 V", "90 V to 264 V is possible"),
        ("led_count", "two", "Write a whole number"),
        ("led_colour", "mauve", "Write one of"),
        ("bin_ratings", "0.4 W; 1 W; 2 W", ""),
        ("seen_lux", "5 bananas", "Write a number and lx"),
        ("dimmer_lowest", "300°", "180"),
    ],
)
def test_what_is_wrong_stands_beside_its_field_with_what_was_read(name, text, said):
    brief, wrong = read_all(typed_of(Brief()) | {name: text})
    where = "bin_volts" if name == "bin_ratings" else name
    assert brief is None and list(wrong) == [where]
    assert wrong[where].startswith("Read as ") and said in wrong[where]


def test_all_that_is_wrong_is_said_at_once():
    _, wrong = read_all(typed_of(Brief()) | {"heater_power": "x", "led_at": "y", "seen_lux": "z"})
    assert list(wrong) == ["heater_power", "led_at", "seen_lux"]


def test_what_nobody_knows_stands_in_the_form_as_unknown():
    texts = {"use_by_others": "unknown", "seen_lux": "?", "bin_ratings": "don't know"}
    brief, wrong = read_all(texts)
    typed = typed_of(brief)
    assert not wrong and {typed[name] for name in texts} == {"unknown"}
    assert read_all(typed)[0] == brief


def test_settings_given_in_another_way_are_read_in_that_way():
    assert list(read_all({"dimmer_given_by": "meter"})[1]) == ["dimmer_given_by"]
    _, wrong = read_all({"dimmer_given_by": "heat", "dimmer_lowest": "60 V"})
    assert wrong["dimmer_lowest"].endswith("By heat it is such as 20 %.")


def test_nothing_typed_is_evaluated_and_markup_stays_text():
    hostile = "__import__('os').abort()"
    _, wrong = read_all({"heater_power": hostile, "led_colour": "<b>"})
    assert set(wrong) == {"heater_power", "led_colour"}


def test_the_text_to_copy_is_the_same_brief():
    brief = replace(Brief(), heater_power=75.0)
    assert from_toml(to_toml(read_all(typed_of(brief))[0])) == brief
