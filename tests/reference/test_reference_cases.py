"""Every field of every reference case within the tolerance that the case itself allows."""

import json
from pathlib import Path

import pytest
from solve import solve

CASES = json.loads((Path(__file__).parent / "cases.json").read_text())["cases"]
FIELDS = [
    pytest.param(case, field, id=f"second way: {case['id']} {case['kind']} {field}")
    for case in CASES
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


def test_limit_a_kind_that_is_not_known_is_named_in_the_refusal():
    with pytest.raises(KeyError, match="perpetual_motion"):
        solve("perpetual_motion", {})


def test_limit_the_file_holds_many_fields():
    assert len(FIELDS) > 250
