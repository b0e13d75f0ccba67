"""Every row of every table here is a value that somebody else printed; helpers must agree.

Columns: source and place say where it stands. A value and the page that is named for it are two
things, so each has a status: value_status is 'confirmed' in a public text, 'by definition' or
'by arithmetic' where the sum under reason gives it to anybody, or 'from memory'; page_status is
'confirmed' or 'from memory'. Tables that were renumbered are named with their edition.
kind is 'result' for what helpers computes and 'constant' for what it stores; call and arguments
say how helpers comes to it, take which part of the answer is meant; printed is the value as it
stands in the source. The tolerance is half of its last digit; words must agree exactly.

Not taken over: 0.764 for the average-responding reading of a half wave and 0.636 for its mean, both
printed in meter manuals; the first is wrong (0.779), the second cut off instead of rounded. And
0.482 for the ripple factor of a full wave, which some books get from the rounded form factor 1.11;
it is 0.4834.
"""

import csv
import json
from decimal import Decimal
from importlib import import_module
from pathlib import Path

import pytest

from helpers.physics import mains, phase_cut

TABLES = sorted(Path(__file__).parent.glob("*.csv"))
VALUE_STATUS = {"confirmed", "by definition", "by arithmetic", "from memory"}
PAGE_STATUS = {"confirmed", "from memory"}


def rows():
    for table in TABLES:
        with table.open(encoding="utf-8", newline="") as file:
            for row in csv.DictReader(file):
                yield table.stem, row


ROWS = list(rows())


def computed(call, arguments, take=""):
    module, name = call.split(".")
    value = getattr(import_module(f"helpers.physics.{module}"), name)
    if callable(value):
        if isinstance(arguments, list):
            value = value(*arguments)
        else:
            value = value(**{key: argument(each) for key, each in arguments.items()})
    for step in filter(None, take.split("/")):
        if isinstance(value, dict):
            value = value[step]
        elif step.isdigit():
            value = value[int(step)]
        else:
            value = getattr(value, step)
    return value


def argument(value):
    if not isinstance(value, dict):
        return value
    if "supply" in value:
        return mains.Supply(*value["supply"])
    if "dimmer" in value:
        return phase_cut.Dimmer(*value["dimmer"])
    return computed(value["call"], value.get("arguments", {}), value.get("take", ""))


def half_of_last_digit(printed):
    return 0.5 * 10.0 ** Decimal(printed).as_tuple().exponent


def is_number(printed):
    return printed[0].isdigit()


@pytest.mark.parametrize(
    "row",
    [pytest.param(r, id=f"published: {t}, {r['source']}, {r['quantity']}") for t, r in ROWS],
)
def test_agrees_with_the_printed_value(row):
    value = computed(row["call"], json.loads(row["arguments"]), row["take"])
    printed = row["printed"].split()
    found = list(value) if isinstance(value, (tuple, list)) else [value]
    assert len(found) == len(printed)
    for mine, theirs in zip(found, printed, strict=True):
        if is_number(theirs):
            assert abs(mine - float(theirs)) <= half_of_last_digit(theirs)
        else:
            assert mine == theirs


def test_the_tables_are_wide_enough():
    assert len(ROWS) >= 40
    assert len({row["source"] for _, row in ROWS}) >= 15
    assert sum(row["kind"] == "result" for _, row in ROWS) >= 20


@pytest.mark.parametrize("row", [row for _, row in ROWS], ids=lambda row: row["quantity"])
def test_every_row_says_where_it_stands(row):
    assert row["source"] and row["place"] and row["units"]
    assert row["value_status"] in VALUE_STATUS
    assert row["page_status"] in PAGE_STATUS
    assert row["kind"] in {"result", "constant"}


def test_what_follows_from_a_sum_shows_the_sum():
    for _, row in ROWS:
        if row["value_status"] in {"by definition", "by arithmetic"}:
            assert row["reason"], row["quantity"]


def test_limit_few_values_rest_on_memory_alone():
    resting = [row["quantity"] for _, row in ROWS if row["value_status"] == "from memory"]
    assert resting == [
        "threshold by day",
        "just below curve c1, 40 mA at 3 s",
        "just above curve c1, 40 mA at 3 s",
        "just above curve c1, 50 mA at 1 s",
        "body, 5, 50 and 95 %, 225 V",
        "body, 5, 50 and 95 %, 125 V",
    ]
