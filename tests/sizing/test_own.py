"""A brief that is still being written: what it takes as it is, and what it never takes."""

import pytest

from helpers.physics.mains import SUPPLIES
from helpers.sizing.brief import NEVER_GUESSED, Brief, to_toml
from helpers.sizing.own import begun, with_typed
from helpers.sizing.typed import BriefError

HERE = SUPPLIES["120 V 60 Hz"]


@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=SUPPLIES)
def test_property_an_empty_one_is_the_workshops_on_ones_own_supply(supply):
    brief = begun("", supply)
    assert (brief.supply_volts, brief.supply_hertz) == (supply.volts_rms, supply.hertz)
    assert brief.heater_power == Brief().heater_power
    assert all(brief.typed(name) == '"unknown"' for name in NEVER_GUESSED)
    assert "supply_volts" not in brief.left_out and "heater_power" in brief.left_out


def test_a_supply_that_is_typed_holds_whatever_the_settings_say():
    assert begun('[supply]\nvolts = "240 V"', HERE).supply.name == "240 V 60 Hz"


def test_limits_of_the_mains_are_held_against_ones_own_supply():
    assert begun('[supply]\nlowest = "110 V"\nhighest = "130 V"', HERE).supply_highest == 130.0


def test_property_a_whole_brief_comes_back():
    brief = Brief(heater_power=60.0, bin_volts=(200.0, 350.0), use_by_others=False)
    assert begun(to_toml(brief), HERE) == brief


def test_fields_are_typed_as_people_type_them():
    text = with_typed("", {
        "heater_power": "60 W", "heater_long_use": "no", "use_by_others": True,
        "bin_ratings": "0,4 W; 1 W", "bin_volts": ["250 V", "500 V"], "led_count": 2,
        "dimmer_edge": "unknown",
    }, HERE)  # fmt: skip
    brief = begun(text, HERE)
    assert (brief.heater_power, brief.heater_long_use, brief.use_by_others) == (60.0, False, True)
    assert (brief.bin_ratings, brief.bin_volts) == ((0.4, 1.0), (250.0, 500.0))
    assert (brief.led_count, brief.dimmer_edge) == (2, "unknown")


def test_what_is_emptied_is_open_again():
    text = with_typed("", {"heater_power": "60 W", "led_colour": "green"}, HERE)
    text = with_typed(text, {"heater_power": " "}, HERE)
    assert text == '[led]\ncolour = "green"\n'
    assert with_typed(text, {"led_colour": None}, HERE) == ""


def test_text_with_quotation_marks_or_line_ends_stays_one_value():
    with pytest.raises(BriefError, match="Write one of: leading"):
        with_typed("", {"dimmer_edge": 'none"\n[box]\ntouch = "closed window'}, HERE)


WRONG = [
    ("", {"heater_power": "60 volts"}, "power in .heater. was read as"),
    ("", {"heater_watts": "60 W"}, "watts in .heater. is not known"),
    ("", {"lamp": "60 W"}, "The section .lamp. is not known"),
    ("", {"heater_power": float("nan")}, "power in .heater."),
    ("", {"heater_power": {"a": 1}}, "power in .heater. was read as"),
    ("", {"dimmer_given_by": "heat", "dimmer_highest": "103 %"}, "above all of the heat"),
    ("", {"bin_ratings": "0.4 W; 0.6 W; 1 W"}, "Write one voltage for each rating"),
    ("[heater", {"heater_power": "60 W"}, "The brief is no TOML"),
    ("supply = 1", {"heater_power": "60 W"}, "below the line .supply."),
]  # fmt: skip


@pytest.mark.parametrize(("text", "typed", "said"), WRONG)
def test_what_cannot_be_used_is_said_and_nothing_is_put_in(text, typed, said):
    with pytest.raises(BriefError, match=said):
        with_typed(text, typed, HERE)
