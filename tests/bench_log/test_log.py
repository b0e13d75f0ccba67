from math import inf

import pytest

from helpers.bench import report
from helpers.bench.diagnosis import diagnose
from helpers.bench.log import BenchLogError, blank, from_csv, read_one, readings
from helpers.bench.predictions import table
from helpers.bench.rows import COMPETENT
from helpers.bench.world import Build
from helpers.sizing.brief import Brief

LIST = table(Build(Brief(), "two_leds", 100e3, 2))
DIODE = table(Build(Brief(), "series_diode", 100e3, 2))
ROWS = {row.name: row for row in (*DIODE, *LIST)}


@pytest.mark.parametrize(
    ("name", "typed", "value"),
    [
        ("R1", "99.2k", 99.2e3),
        ("R1", "99,2 kΩ", 99.2e3),
        ("R1", "OL", inf),
        ("R1", "O.L", inf),
        ("R1", "0L", inf),
        ("R1", 101e3, 101e3),
        ("12 V, supply", "-11.98 V", -11.98),
        ("12 V, LED", "1640 mV", 1.64),
        ("12 V, LED", "1.750 V", 1.75),
        ("LED test", "-1,750", -1.75),
        ("element", "1.020k", 1020.0),
        ("LED test, LEDs lit", "lit", 1.0),
        ("LED test, LEDs lit", "0", 0.0),
        ("LED test, LEDs lit", "both", 2.0),
        ("setting 1, watts", "57 W", 57.0),
    ],
)
def test_second_way_readings_as_people_type_them(name, typed, value):
    assert read_one(typed, ROWS[name]) == value


@pytest.mark.parametrize("row", [row for row in ROWS.values() if row.unit != "count"])
def test_property_a_number_without_a_unit_is_in_the_unit_of_what_its_row_should_be(row):
    """Both limits, as they are written, without their unit."""
    for written, limit in zip(report.should_be(row).split(" to "), row.limits, strict=False):
        number, _, unit = written.partition("\xa0")
        if unit:
            assert read_one(number, row) == pytest.approx(limit, rel=6e-3, abs=6e-4)
            assert bool(read_one(number, row).bare) == (unit not in "VW")


def test_property_a_number_without_a_unit_is_said_as_it_was_read():
    typed = readings({"R1": "99.2", "diode": "588", "24 V, LED": "1.75", "R2": "99.2k"}, DIODE)
    found = diagnose(Build(Brief(), "series_diode", 100e3, 2), typed)
    said = [line for line in report.lines(found) if "since none was typed" in line]
    assert not found.wrong and len(said) == 1
    assert said[0].endswith("typed: R1, 99.2 as 99.2 kΩ; diode, 588 as 588 mV.")


def test_limit_where_no_unit_is_shown_a_number_has_no_prefix():
    found = read_one("2", ROWS["leads to metal"])
    assert found == 2.0 and found.bare == "2"


@pytest.mark.parametrize(
    ("name", "typed", "place"),
    [
        ("12 V, LED", "20.7", 0.1),
        ("12 V, LED", "20.70", 0.01),
        ("12 V, LED", "-1640 mV", 0.01),
        ("12 V, LED", "20", 1.0),
        ("12 V, LED", "2e1", 10.0),
        ("12 V, LED", "2.07 x 10^1 V", 0.1),
        ("R1", "R1 = 99.2k", 1e2),
        ("R1", "1'234 kΩ", 1e3),
        ("12 V, LED", "0", 0.0),
        ("R1", "82k", 1e3),
        ("R1", "4k70", 10.0),
        ("R1", "1.2 M", 1e5),
        ("R1", "101000 Ω", 1e3),
        ("R1", "101200 Ω", 1e2),
        ("R1", "99.2", 1e2),
        ("diode", "588", 1e-3),
        ("R1", 101e3, 0.0),
        ("R1", "OL", 0.0),
        ("LED test, LEDs lit", "1", 0.0),
    ],
)
def test_second_way_the_last_place_is_that_of_what_was_typed(name, typed, place):
    assert read_one(typed, ROWS[name]).place == pytest.approx(place)


@pytest.mark.parametrize(
    ("name", "typed", "says"),
    [
        ("R1", "12 V", "a unit of voltage"),
        ("R1", "about right", "has no number"),
        ("R1", "__import__('os')", "Row R1 was read as"),
        ("leads to metal", "1,000", "two ways"),
        ("R1", "101000", "in kΩ or in Ω. Write its unit"),
        ("R1", "0.4", "in kΩ or in Ω"),
        ("diode", "0.588", "in mV or in V"),
        ("R1", "1e999", "Row R1"),
        ("R1", "nan", "has no number"),
        ("LED test, LEDs lit", "bright", "Write 1 for one LED that lights"),
        ("LED test, LEDs lit", "²", "Write 1"),
        ("setting 1, watts", "OL", "has no number"),
        ("12 V, supply", "x" * 500, "more than 40 characters"),
    ],
)
def test_refused_with_row_what_was_read_and_what_to_write(name, typed, says):
    with pytest.raises(BenchLogError) as refused:
        read_one(typed, ROWS[name])
    assert f"Row {name} was read as" in str(refused.value) and says in str(refused.value)
    assert len(str(refused.value)) < 400


def test_property_a_blank_log_holds_no_row_of_the_mains_and_comes_back_empty():
    text = blank(LIST)
    assert len(text.splitlines()) == 1 + sum(row.by != COMPETENT for row in LIST)
    assert "setting" not in text and "mains" not in text
    assert from_csv(text, LIST) == {}


@pytest.mark.parametrize("parted", [",", ";", "\t"])
def test_property_columns_may_be_parted_as_spreadsheets_do(parted):
    text = f'\ufeffrow{parted}where{parted}reading\r\n"12 V, LED"{parted}x{parted}1.6 V\r\n'
    assert from_csv(text, LIST) == {"12 V, LED": 1.6}
    assert from_csv(text.encode("utf-8"), LIST) == {"12 V, LED": 1.6}


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "first line was read as nothing"),
        ("name,value\nR1,1k\n", "It needs row and reading"),
        ("row,reading\nR9,1k\n", "no row R9"),
        ("row,reading\nR1,99k\nR1,98k\n", "stands there twice"),
        ("row,reading\nR1,99,2k\n", "has 3 cells instead of 2"),
        ('row,reading\nR1,"99k\n', "no CSV file"),
        ("row,reading\n" + "R1,\n" * 300, "lines; 200 are possible"),
        ("row,reading\n" + "x" * 70_000, "more than 65536"),
        (b"row,reading\nR1,\xff\n", "no CSV file in UTF-8"),
    ],
)
def test_refused_a_table_that_cannot_be_used(text, says):
    with pytest.raises(BenchLogError, match=says):
        from_csv(text, LIST)


def test_property_notes_above_are_passed_over():
    text = blank(LIST, ["Plan only. Not, however, less;", "Twice"])
    assert text.startswith('"# Plan only. Not, however, less;"\n# Twice\nrow,')
    lines = text.splitlines()
    assert lines[3].startswith("R1,") and "94.1" in lines[3]
    lines[3] += "99k"
    assert from_csv("\n".join(lines), LIST) == {"R1": 99e3}


def test_property_what_is_empty_was_not_read():
    assert readings({"R1": None, "R2": " ", "12 V, LED": 1.6}, LIST) == {"12 V, LED": 1.6}


def test_refused_a_row_that_is_not_there():
    with pytest.raises(BenchLogError, match="There is no row R7"):
        readings({"R7": "1k"}, LIST)
