"""Every field of every reference case within the tolerance that the case itself allows."""

import json
from pathlib import Path

import pytest
from solve import solve

CASES = json.loads((Path(__file__).parent / "cases.json").read_text())["cases"]
LATER = set()


def covered(case):
    return case["kind"] not in LATER


FIELDS = [
    pytest.param(case, field, id=f"second way: {case['id']} {case['kind']} {field}")
    for case in CASES
    if covered(case)
    for field in case["outputs"]
]


@pytest.mark.parametrize(("case", "field"), FIELDS)
def test_field_is_within_its_tolerance(case, field):
    got = solve(case["kind"], case["inputs"])[field]
    expected = case["outputs"][field]
    if expected.get("exact"):
        assert got == expected["value"]
    else:
        allowed = expected["accept_rel"] * abs(expected["value"]) + expected["accept_abs"]
        assert abs(got - expected["value"]) <= allowed


@pytest.mark.parametrize(
    "case", [case for case in CASES if not covered(case)], ids=lambda c: c["id"]
)
def test_a_kind_that_is_not_covered_is_named_in_the_refusal(case):
    with pytest.raises(KeyError, match=case["kind"]):
        solve(case["kind"], case["inputs"])


def test_the_file_holds_both_covered_and_later_kinds():
    assert len(FIELDS) > 150
    assert {case["kind"] for case in CASES if not covered(case)} == LATER
