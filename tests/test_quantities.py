"""Reading and writing quantities: what is understood, what is asked back, what is refused.

Published checks name their source. SI = SI Brochure, 9th edition (BIPM 2019); RKM = IEC 60062:2016
as quoted in public texts. The rest is how people type: Common practice, no source.
"""

import importlib.util
import re
from decimal import ROUND_HALF_UP, Context, Decimal
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers import quantities
from helpers.quantities import (
    GLOSSARY,
    Ambiguous,
    NotUnderstood,
    QuantityError,
    read,
    write,
    write_as,
    write_letter_code,
)

NAMES = tuple(GLOSSARY)
NO_BREAK = "\u00a0"

# SI, table 7: power of ten, name, symbol; with a quantity whose range suits it and its unit's name.
PREFIXES = (
    (-12, "pico", "p", "capacitance", "farad"),
    (-9, "nano", "n", "current", "ampere"),
    (-6, "micro", "µ", "voltage", "volt"),
    (-3, "milli", "m", "power", "watt"),
    (3, "kilo", "k", "resistance", "ohm"),
    (6, "mega", "M", "frequency", "hertz"),
    (9, "giga", "G", "resistance", "ohm"),
)
SYMBOLS = {symbol: power for power, _, symbol, *_ in PREFIXES} | {"": 0}
# RKM, clause 4, as tabulated in the public article "RKM code"; 2K2 and 1M0 from a public abstract
# of the same standard; 4L7 from that article's list of letters (L stands for 0.001).
LETTER_CODES = (
    ("R47", 0.47),
    ("4R7", 4.7),
    ("470R", 470.0),
    ("2K2", 2200.0),
    ("4K7", 4700.0),
    ("47K", 47e3),
    ("47K3", 47.3e3),
    ("470K", 470e3),
    ("1M0", 1e6),
    ("4M7", 4.7e6),
    ("4L7", 0.0047),
)
# RKM, clause 5: tolerance letters, symmetrical.
TOLERANCES = (
    ("B", 0.1),
    ("C", 0.25),
    ("D", 0.5),
    ("F", 1.0),
    ("G", 2.0),
    ("J", 5.0),
    ("K", 10.0),
    ("M", 20.0),
)


def cases(*rows):
    """Parameters whose test id is the kind and the text itself."""
    return [pytest.param(*row[1:], id=f"{row[0]}: {row[1]!r}") for row in rows]


# --- reading -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("power", "prefix", "symbol", "name", "word"),
    [pytest.param(*row, id=f"published: {row[1]}") for row in PREFIXES],
)
def test_prefixes_are_read_and_written(power, prefix, symbol, name, word):
    value, unit = float(f"1e{power}"), symbol + GLOSSARY[name].unit
    for typed in (f"1 {unit}", f"1{unit}", f"1 {prefix}{word}", f"1 {symbol}{word}"):
        assert read(typed, name).value == value
    assert write(value, name) == write_as(value, unit) == f"1{NO_BREAK}{unit}"


@pytest.mark.parametrize(
    ("text", "name", "value"),
    cases(
        # SI 5.4.4: the decimal marker is the point or the comma; spaces may part groups of three.
        ("published", "0,22 W", "power", 0.22),
        ("published", "0.22 W", "power", 0.22),
        ("published", "33 000 Ω", "resistance", 33e3),
        ("published", "33\u2009000 Ω", "resistance", 33e3),
        ("published", "0.000 33 F", "capacitance", 0.00033),
        # Common practice, no source.
        ("common practice", "4k7", "resistance", 4700.0),
        ("common practice", "4K7", "resistance", 4700.0),
        ("common practice", "4R7", "resistance", 4.7),
        ("common practice", "4r7", "resistance", 4.7),
        ("common practice", "R47", "resistance", 0.47),
        ("common practice", "0R22", "resistance", 0.22),
        ("common practice", "470R", "resistance", 470.0),
        ("common practice", "1M5", "resistance", 1.5e6),
        ("common practice", "4k7 ohm", "resistance", 4700.0),
        ("common practice", "4n7", "capacitance", 4.7e-9),
        ("common practice", "p33", "capacitance", 0.33e-12),
        ("common practice", "2µ2", "capacitance", 2.2e-6),
        ("common practice", "2\u03bc2", "capacitance", 2.2e-6),
        ("common practice", "2u2", "capacitance", 2.2e-6),
        ("common practice", "330 kΩ", "resistance", 330e3),
        ("common practice", "330k\u2126", "resistance", 330e3),
        ("common practice", "330kohm", "resistance", 330e3),
        ("common practice", "330 kohms", "resistance", 330e3),
        ("common practice", "330 k ohm", "resistance", 330e3),
        ("common practice", "330 KOHM", "resistance", 330e3),
        ("common practice", "330 kilohm", "resistance", 330e3),
        ("common practice", "330 kilo-ohms", "resistance", 330e3),
        ("common practice", "330R", "resistance", 330.0),
        ("common practice", "47 ohm", "resistance", 47.0),
        ("common practice", "2,2k", "resistance", 2200.0),
        ("common practice", "2.2 K", "resistance", 2200.0),
        ("common practice", "1 MΩ", "resistance", 1e6),
        ("common practice", "1 Megohm", "resistance", 1e6),
        ("common practice", "1 meg", "resistance", 1e6),
        ("common practice", "3.3E4", "resistance", 33e3),
        ("common practice", "R=330k", "resistance", 330e3),
        ("common practice", "r = 330 k", "resistance", 330e3),
        ("common practice", "1.5 mA", "current", 0.0015),
        ("common practice", "1.5 ma", "current", 0.0015),
        ("common practice", "1.5 m", "current", 0.0015),
        ("common practice", "1500 uA", "current", 0.0015),
        ("common practice", "I = 1.5 mA", "current", 0.0015),
        ("common practice", "1e-3 A", "current", 0.001),
        ("common practice", "1.234e-03", "current", 0.001234),
        ("common practice", "2 milliamp", "current", 0.002),
        ("common practice", "2 Milliamps", "current", 0.002),
        ("common practice", "\u22122 mA", "current", -0.002),
        ("common practice", "5 volts", "voltage", 5.0),
        ("common practice", "+.5", "voltage", 0.5),
        ("common practice", "5.", "voltage", 5.0),
        ("common practice", "2 KV", "voltage", 2000.0),
        ("common practice", "U = 12 V", "voltage", 12.0),
        ("common practice", "1 mw", "power", 0.001),
        ("common practice", "100 nF", "capacitance", 100e-9),
        ("common practice", "60 hz", "frequency", 60.0),
        ("common practice", "15 min", "time", 900.0),
        ("common practice", "2 h", "time", 7200.0),
        ("common practice", "90°", "angle", 90.0),
        ("common practice", "α = 90 deg", "angle", 90.0),
        ("common practice", "50 %", "percent", 50.0),
        ("common practice", "50", "percent", 50.0),
        ("common practice", "50 %", "ratio", 0.5),
        ("common practice", "0.5", "ratio", 0.5),
        ("common practice", "25 °C", "temperature", 25.0),
        ("common practice", "25 \u2103", "temperature", 25.0),
        ("common practice", "-5 C", "temperature", -5.0),
        ("common practice", "30 °C", "temperature rise", 30.0),
        ("common practice", "200 K/W", "thermal resistance", 200.0),
        ("common practice", "5 m", "length", 5.0),
        ("common practice", "2.5 mm", "length", 0.0025),
        ("common practice", "2 kwh", "energy", 2000.0),
        ("common practice", "45 µC", "charge", 45e-6),
        ("common practice", "1,234.5", "voltage", 1234.5),
        ("common practice", "1.234,5", "voltage", 1234.5),
        ("common practice", "1,234,567", "resistance", 1234567.0),
        ("common practice", "1.234.567", "resistance", 1234567.0),
        ("common practice", "1'234'567", "resistance", 1234567.0),
        ("common practice", "1\u2019234,5", "resistance", 1234.5),
        ("common practice", "1234,567", "resistance", 1234.567),
        ("common practice", "0,220", "power", 0.22),
        ("common practice", "0.125", "power", 0.125),
        ("common practice", "  47 \n", "resistance", 47.0),
        ("common practice", "47 ohm circa", "resistance", 47.0),
        ("common practice", "2 megohms", "resistance", 2e6),
        ("limit", "0", "resistance", 0.0),
        ("limit", "-0", "resistance", 0.0),
        ("limit", "-273.15 °C", "temperature", -273.15),
    ),
)
def test_what_people_type_is_read(text, name, value):
    assert read(text, name).value == value


def test_joules_and_radians_become_the_units_of_the_glossary():
    # SI, table 8: 1 h = 3600 s, so 1 Wh = 3600 J; 1° = (pi/180) rad.
    assert read("3600 J", "energy").value == pytest.approx(1.0, rel=1e-15)
    assert read("3.14159265358979 rad", "angle").value == pytest.approx(180.0, rel=1e-14)


@pytest.mark.parametrize(
    ("text", "name", "understood"),
    cases(
        ("pinned", "0,033M", "resistance", "33 kΩ"),
        ("pinned", "33 000 Ω", "resistance", "33 kΩ"),
        ("pinned", "0.0015", "current", "1.5 mA"),
        ("pinned", "-12.5", "temperature", "\u221212.5 °C"),
        ("pinned", "90", "angle", "90°"),
        ("pinned", "0.45", "ratio", "0.45"),
    ),
)
def test_what_was_understood_is_shown(text, name, understood):
    """Pinned: cards show this very text, so a change of it must be meant."""
    assert read(text, name).understood == understood.replace(" ", NO_BREAK)


@pytest.mark.parametrize(
    ("given", "name", "bare_unit", "value"),
    [
        pytest.param(1.5, "current", "mA", 0.0015, id="number in the bare unit"),
        pytest.param("1,5", "current", "mA", 0.0015, id="text in the bare unit"),
        pytest.param("1.5 A", "current", "mA", 1.5, id="its own unit wins"),
        pytest.param("1.5 m", "current", "mA", 0.0015, id="its own prefix wins"),
        pytest.param("4k7", "resistance", "kΩ", 4700.0, id="its own letter wins"),
        pytest.param(330_000, "resistance", None, 330e3, id="whole number"),
        pytest.param(1.234, "voltage", None, 1.234, id="a number is not asked back"),
        pytest.param(-1e-5, "current", None, -1e-5, id="a number printed with e"),
        pytest.param(15, "time", "min", 900.0, id="minutes"),
    ],
)
def test_numbers_without_a_unit(given, name, bare_unit, value):
    assert read(given, name, bare_unit).value == value


def test_no_value_is_a_negative_zero():
    assert repr(read("-0 Ω", "resistance").value) == "0.0"


@pytest.mark.parametrize("given", [np.float64(330e3), np.float32(330e3), np.int64(330_000)])
def test_numbers_of_numpy_are_numbers(given):
    assert read(given, "resistance").value == 330e3


# --- asked back --------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "name", "meanings"),
    cases(
        ("property", "1,000", "resistance", {1000.0, 1.0}),
        ("property", "1.000", "resistance", {1000.0, 1.0}),
        ("property", "1.000 kΩ", "resistance", {1e6, 1000.0}),
        ("property", "-1,500", "voltage", {-1500.0, -1.5}),
        ("property", "1.234 mA", "current", {1.234, 0.001234}),
        ("property", "012,345", "resistance", {12345.0, 12.345}),
        ("property", "1,000e-3", "current", {1.0, 0.001}),
        ("property", "33 m", "resistance", {0.033, 33e6}),
        ("property", "33 mOhm", "resistance", {0.033, 33e6}),
        ("property", "4m7", "resistance", {0.0047, 4.7e6}),
        ("property", "15 m", "time", {0.015, 900.0}),
        ("property", "0.5 MW", "power", {0.0005, 500e3}),
        ("property", "1,5 mhz", "frequency", {0.0015, 1.5e6}),
        ("property", "2e0 MV", "voltage", {0.002, 2e6}),
        ("property", "20 MS", "time", {0.02, 20e6}),
    ),
)
def test_two_meanings_are_asked_back_and_either_can_be_typed(text, name, meanings):
    with pytest.raises(Ambiguous, match="two ways|can mean") as caught:
        read(text, name)
    first, second = re.search(r"Type (.+) or (.+), whichever", str(caught.value)).groups()
    assert {read(answer, name).value for answer in (first, second)} == meanings


@pytest.mark.parametrize(
    ("text", "name", "value"),
    cases(
        ("limit", "150 mΩ", "resistance", 0.15),
        ("limit", "100 MΩ", "resistance", 1e8),
        ("limit", "1 Milliamp", "current", 0.001),
        ("limit", "33 milliohm", "resistance", 0.033),
        ("limit", "0 m", "resistance", 0.0),
        ("limit", "5 M", "length", 5.0),
        ("limit", "2 MM", "length", 0.002),
        ("limit", "1.5 MA", "current", 0.0015),
    ),
)
def test_m_and_mega_are_read_as_typed_inside_the_range_and_in_words(text, name, value):
    """And as the other one where a reading as typed would be refused: nobody means that."""
    assert read(text, name).value == value


# --- refused -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "name", "message"),
    cases(
        ("refusal", "", "voltage", "The answer has no number"),
        ("refusal", "mA", "current", "“mA” has no number"),
        ("refusal", "1.5 mA", "resistance", "“mA” is a unit of current.*asks for resistance"),
        ("refusal", "5 K", "angle", "unit of temperature rise.*asks for angle"),
        ("refusal", "5 bananas", "voltage", "“bananas” is not a unit known here"),
        ("refusal", "5 k", "percent", "“k” is not a unit known here.*type %"),
        ("refusal", "5 g", "resistance", "“g” is not a unit known here"),
        ("refusal", "4V7", "voltage", "no letter code for voltage"),
        ("refusal", "4k7", "voltage", "no letter code for voltage"),
        ("refusal", "4k7", "capacitance", "no letter code for capacitance"),
        ("refusal", "4K7J", "resistance", "“J” after its letter code.*type 4K7 alone"),
        ("refusal", "-3 Ω", "resistance", "impossible: resistance is never below 0"),
        ("refusal", "-300", "temperature", "impossible: temperature is never below \u2212273.15"),
        ("refusal", "3e20 Ω", "resistance", "never meets a resistance of “3e20 Ω”"),
        ("refusal", "1e-9 Ω", "resistance", "never meets a resistance"),
        ("refusal", "1e-999", "current", "never meets a current"),
        ("refusal", "1e999999999", "angle", "never meets an angle"),
        ("refusal", "10²", "voltage", "superscript two"),
        ("refusal", "½", "voltage", "vulgar fraction one half"),
        ("refusal", "\uff15 V", "voltage", "fullwidth digit five"),
        ("refusal", "\u0663 V", "voltage", "arabic-indic digit three"),
        ("refusal", "1\u00b75", "voltage", "middle dot"),
        ("refusal", "9**9**9", "resistance", "asterisk.*nothing is calculated"),
        ("refusal", "2^3", "current", "circumflex accent.*type e and the power"),
        ("refusal", "__import__('os')", "voltage", "low line"),
        ("refusal", "\x005 V", "voltage", r"character U\+0000"),
        ("refusal", "5\n6", "voltage", r"character U\+000A"),
        ("refusal", "\ud800", "voltage", r"character U\+D800"),
        ("refusal", "\u202e5 V", "voltage", "right-to-left override"),
        ("refusal", "=1+1", "voltage", "cannot be read as number, then unit"),
        ("refusal", "I = 5 V", "voltage", "“i” before its equals sign or the like. Only V"),
        ("refusal", "12 34", "voltage", "cannot be read as one number"),
        ("refusal", "1,23,456", "voltage", "cannot be read as one number"),
        ("refusal", "0,123,456", "voltage", "cannot be read as one number"),
        ("refusal", "5,", "voltage", "cannot be read as one number"),
        ("refusal", "1.2.3", "voltage", "cannot be read as one number"),
        ("refusal", "1+1", "voltage", "cannot be read as number, then unit"),
        ("refusal", "0x10", "voltage", "no letter code"),
        ("refusal", "5 V 5", "voltage", "cannot be read as number, then unit"),
        ("refusal", "9" * 41, "voltage", "more than 40 characters"),
        ("refusal", None, "voltage", "The answer given is nothing"),
        ("refusal", True, "voltage", "of the kind “bool”"),
        ("refusal", [5], "voltage", "of the kind “list”"),
        ("refusal", 5j, "voltage", "of the kind “complex”"),
        ("refusal", float("nan"), "voltage", "too large or not a number"),
        ("refusal", float("-inf"), "voltage", "too large or not a number"),
        ("refusal", -5, "resistance", "never below 0"),
    ),
)
def test_what_cannot_be_read_is_refused_with_the_reason(text, name, message):
    with pytest.raises(NotUnderstood, match=message):
        read(text, name)


def test_a_whole_number_beyond_floats_is_refused():
    with pytest.raises(NotUnderstood, match="too large or not a number"):
        read(10**400, "voltage")


def test_a_million_characters_are_refused_and_quoted_short():
    with pytest.raises(NotUnderstood, match="more than 40 characters") as caught:
        read("7" * 1_000_000, "voltage")
    assert len(str(caught.value)) < 150


@pytest.mark.parametrize(
    ("call", "message"),
    [
        pytest.param(lambda: read("5", "voltge"), "'voltge' is not in the glossary", id="name"),
        pytest.param(lambda: read("5", "current", "kV"), "'kV' is no unit of current", id="bare"),
        pytest.param(lambda: write(5, "voltge"), "'voltge' is not in the glossary", id="write"),
        pytest.param(lambda: write(float("nan"), "ratio"), "nan .*cannot be written", id="nan"),
        pytest.param(lambda: write(5, "ratio", 0), "0 digits", id="no digits"),
        pytest.param(lambda: write_as(5, "k"), "'k' is not a unit", id="prefix alone"),
        pytest.param(lambda: write_as(5, "ma"), "'ma' is not a unit", id="unit in small letters"),
        pytest.param(lambda: write_as(5, "lm"), "'lm' is not a unit", id="foreign unit"),
    ],
)
def test_slips_of_the_caller_are_not_shown_as_the_learners(call, message):
    with pytest.raises(ValueError, match=message) as caught:
        call()
    assert not isinstance(caught.value, QuantityError)


# --- writing -----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("value", "name", "digits", "text"),
    [
        # SI 5.4.3: a space before the unit, % and °C included; none before ° of an angle.
        pytest.param(33_000, "resistance", 3, "33 kΩ", id="published: prefix and space"),
        pytest.param(50, "percent", 3, "50 %", id="published: space before %"),
        pytest.param(21.5, "temperature", 3, "21.5 °C", id="published: space before °C"),
        pytest.param(90, "angle", 3, "90°", id="published: no space before °"),
        pytest.param(0.0015, "current", 3, "1.5 mA", id="zeros dropped"),
        pytest.param(999.6, "resistance", 3, "1 kΩ", id="limit: rolls over"),
        pytest.param(999.4, "resistance", 3, "999 Ω", id="limit: does not roll over"),
        pytest.param(0.9996e-3, "current", 3, "1 mA", id="limit: rolls over below one"),
        pytest.param(123_456, "resistance", 1, "100 kΩ", id="one digit"),
        pytest.param(123_456, "resistance", 2, "120 kΩ", id="two digits"),
        pytest.param(1.5e-14, "capacitance", 3, "0.015 pF", id="limit: below pico"),
        pytest.param(5e12, "resistance", 3, "5000 GΩ", id="limit: above giga"),
        pytest.param(1e-30, "current", 3, "1e\u221218 pA", id="limit: far below pico"),
        pytest.param(0, "current", 3, "0 A", id="limit: zero"),
        pytest.param(0, "current", 6, "0 A", id="limit: zero in more digits has no prefix"),
        pytest.param(-0.0, "current", 3, "0 A", id="limit: negative zero"),
        pytest.param(-0.0015, "current", 3, "\u22121.5 mA", id="negative"),
        pytest.param(-12.5, "temperature", 3, "\u221212.5 °C", id="negative temperature"),
        pytest.param(0.00045, "ratio", 3, "0.00045", id="ratio takes no prefix"),
        pytest.param(1200, "percent", 3, "1200 %", id="percent takes no prefix"),
        pytest.param(340, "thermal resistance", 3, "340 K/W", id="K/W takes no prefix"),
    ],
)
def test_values_are_written_as_people_read_them(value, name, digits, text):
    assert write(value, name, digits) == text.replace(" ", NO_BREAK)


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (0.0015, "mA", "1.5 mA"),
        (0.000333, "mA", "0.333 mA"),
        (33e3, "Ω", "33000 Ω"),
        (33e3, "kΩ", "33 kΩ"),
        (900, "min", "15 min"),
        (0.5, "", "0.5"),
        (50, "%", "50 %"),
        (45e-6, "C", "0.000045 C"),
        (25, "°C", "25 °C"),
        (30, "K", "30 K"),
        (0.0025, "mm", "2.5 mm"),
    ],
)
def test_values_are_written_in_a_given_unit(value, unit, text):
    assert write_as(value, unit) == text.replace(" ", NO_BREAK)


# --- letter codes ------------------------------------------------------------------------------


@pytest.mark.parametrize(("code", "ohms"), LETTER_CODES, ids=lambda part: str(part))
def test_published_letter_codes_are_written_and_read(code, ohms):
    assert write_letter_code(ohms) == code
    if ohms >= 0.1:  # nobody types milliohms with an L
        assert read(code, "resistance").value == ohms


@pytest.mark.parametrize(("letter", "percent"), TOLERANCES)
@pytest.mark.parametrize("code", ["47K", "4R7", "R47", "1M0", "470R"])
def test_published_tolerance_letters_are_written(code, letter, percent):
    assert write_letter_code(dict(LETTER_CODES)[code], percent) == code + letter


@pytest.mark.parametrize(
    ("ohms", "code"),
    [(1.0, "1R0"), (0.1, "R10"), (10.0, "10R"), (1000.0, "1K0"), (47_000.000000001, "47K")],
)
def test_written_codes_have_two_digits_at_least(ohms, code):
    """From memory of IEC 60062, clause 4; the pattern agrees with 1M0 in the table above."""
    assert write_letter_code(ohms) == code


@pytest.mark.parametrize("ohms", [0, -4700, 47_312, 1e-4, 1e12])
def test_resistances_without_a_code_are_refused(ohms):
    with pytest.raises(ValueError, match="has no letter code"):
        write_letter_code(ohms)


def test_a_tolerance_without_a_letter_is_refused():
    with pytest.raises(ValueError, match="3 % has no letter"):
        write_letter_code(4700, 3)


@given(
    st.integers(10, 9999), st.integers(-2, 4), st.sampled_from([None, *dict(TOLERANCES).values()])
)
def test_property_letter_codes_come_back(digits, power, tolerance):
    ohms = float(f"{digits}e{power}")
    code = write_letter_code(ohms)
    letters = {percent: letter for letter, percent in TOLERANCES} | {None: ""}
    assert write_letter_code(ohms, tolerance) == code + letters[tolerance]
    if ohms >= 0.1:
        assert read(code, "resistance").value == ohms


# --- the glossary and properties ---------------------------------------------------------------


@pytest.mark.parametrize("name", NAMES)
def test_glossary_entries_are_whole(name):
    quantity = GLOSSARY[name]
    assert quantity.name == name
    assert quantity.symbol and quantity.meaning
    assert 0 < quantity.smallest < quantity.largest
    assert quantity.lowest <= 0
    assert read(f"5 {quantity.unit}".strip(), name).value == 5.0
    assert read(f"{quantity.symbol} = 1", name).value == 1.0


def sizes(name):
    quantity = GLOSSARY[name]
    positive = st.floats(quantity.smallest, quantity.largest)
    return positive if quantity.lowest == 0 else positive | positive.map(lambda size: -size)


@st.composite
def named_values(draw):
    name = draw(st.sampled_from(NAMES))
    value = draw(sizes(name))
    return name, max(value, GLOSSARY[name].lowest), draw(st.integers(1, 3))


def half_up(value, digits):
    """Round as people do: 10.95, which a computer keeps a trace below, is 11.0."""
    return Context(prec=digits, rounding=ROUND_HALF_UP).create_decimal(f"{value:.15g}")


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    cases(
        ("limit", 10.95, 3, "11\u00a0V"),
        ("limit", -10.95, 3, "\u221211\u00a0V"),
        ("limit", 10.949, 3, "10.9\u00a0V"),
        ("limit", 0.25, 1, "300\u00a0mV"),
        ("limit", 999.5, 3, "1\u00a0kV"),
    ),
)
def test_halves_are_rounded_away_from_zero(value, digits, text):
    assert write(value, "voltage", digits) == text


@given(named_values())
def test_property_written_values_are_read_to_the_printed_digits(case):
    name, value, digits = case
    printed = float(half_up(value, digits))
    if printed >= GLOSSARY[name].lowest:
        assert read(write(value, name, digits), name).value == printed


@given(named_values(), st.sampled_from(list(SYMBOLS)))
def test_property_values_in_a_given_unit_are_read_to_the_printed_digits(case, prefix):
    name, value, digits = case
    quantity = GLOSSARY[name]
    unit = prefix + quantity.unit if quantity.prefixed else quantity.unit
    printed = float(half_up(value, digits))
    if printed >= quantity.lowest:
        assert read(write_as(value, unit, digits), name).value == printed


@given(st.floats(1e-12, 9e11), st.integers(1, 12))
def test_property_second_way_decimal_engineering_text(value, digits):
    """Python's decimal module rounds and writes engineering exponents by its own code."""
    rounded = half_up(value, digits)
    mantissa, _, power = rounded.to_eng_string().partition("E")
    number, unit = write(value, "voltage", digits).split(NO_BREAK)
    exponent = SYMBOLS[unit.removesuffix("V")]
    assert Decimal(number).scaleb(exponent) == rounded
    assert 1 <= Decimal(number) < 1000
    if power:
        assert Decimal(number).scaleb(exponent) == Decimal(mantissa).scaleb(int(power))


@given(
    st.integers(1, 999),
    st.integers(0, 999),
    st.integers(0, 99),
    st.sampled_from([" ", "\u00a0", "\u2009", "\u202f", "'", "\u2019"]),
    st.sampled_from(["", " ", "\u00a0", "\u2009"]),
    st.sampled_from(["Ω", "\u2126", "ohm", "Ohms", "R"]),
)
def test_property_separators_and_spaces_agree(thousands, rest, hundredths, group, gap, unit):
    expected = float(f"{thousands}{rest:03d}.{hundredths:02d}")
    for text in (
        f"{thousands}{rest:03d}.{hundredths:02d}",
        f"{thousands}{rest:03d},{hundredths:02d}",
        f"{thousands}{group}{rest:03d}.{hundredths:02d}",
        f"{thousands}{group}{rest:03d},{hundredths:02d}",
        f"{thousands},{rest:03d}.{hundredths:02d}",
        f"{thousands}.{rest:03d},{hundredths:02d}",
    ):
        assert read(text + gap + unit, "resistance").value == expected


@given(st.integers(1, 999), st.integers(0, 999), st.sampled_from(".,"), st.sampled_from(NAMES))
def test_property_three_decimals_after_a_whole_part_are_asked_back(whole, rest, mark, name):
    """Unless the glossary leaves one reading only, and three noughts are not made decimals."""
    quantity, text = GLOSSARY[name], f"{whole}{mark}{rest:03d}"
    both = (float(f"{whole}{rest:03d}"), float(f"{whole}.{rest:03d}"))
    inside = [value for value in both if quantity.smallest <= value <= quantity.largest]
    if len(inside) == 1 and (rest or inside[0] == both[0]):
        assert read(text, name).value == inside[0]
    else:
        with pytest.raises(Ambiguous, match=f"{whole}{rest:03d}"):
            read(text, name)


@settings(max_examples=500)
@given(st.text(max_size=60) | st.text("0123456789.,'eE+-kKmMRµuΩVAWhzHF% °", max_size=45))
def test_property_any_text_is_read_or_refused_in_printable_words(text):
    for name in ("resistance", "current", "ratio", "temperature"):
        try:
            reading = read(text, name)
        except QuantityError as error:
            assert str(error).replace(NO_BREAK, " ").isprintable()
            assert len(str(error)) < 300
        else:
            assert abs(reading.value) <= 1000 * GLOSSARY[name].largest
            assert reading.understood.replace(NO_BREAK, " ").isprintable()


def test_a_hundredth_of_the_fuzz_run():
    path = Path(__file__).parent / "bench" / "fuzz_quantities.py"
    spec = importlib.util.spec_from_file_location("fuzz_quantities", path)
    fuzz = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(fuzz)
    outcome = fuzz.run(1000, seed=1)
    assert outcome.strange == []
    assert set(outcome.endings) == {"read", "Ambiguous", "NotUnderstood"}
    assert outcome.endings["read"] > 100
    assert fuzz.quantities is quantities


@pytest.mark.parametrize(
    ("typed", "watts"),
    [("1/4 W", 0.25), ("1/2W", 0.5), ("1 / 8 W", 0.125), ("3/4 W", 0.75), ("250 mW.", 0.25)],
    ids=lambda value: f"common practice: {value}",
)
def test_ratings_are_read_as_they_are_printed(typed, watts):
    """Fractions of a watt, and a full stop at the end. Common practice, no source."""
    assert read(typed, "power").value == watts


@pytest.mark.parametrize("typed", ["1/3 W", "1/0 W", "1/22 W", "1/2/2 W", "/2 W", "1/"])
def test_other_fractions_are_refused(typed):
    with pytest.raises(NotUnderstood):
        read(typed, "power")
