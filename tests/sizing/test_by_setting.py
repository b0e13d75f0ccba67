"""The map of values by settings says what the plan itself says of the same brief."""

from dataclasses import replace

import pytest

from helpers.sizing import verdicts
from helpers.sizing.brief import Brief
from helpers.sizing.by_setting import MOST_VALUES, by_setting

BRIEFS = {
    "the workshop's": Brief(),
    "120 V, trailing": Brief(supply_volts=120.0, supply_hertz=60.0, dimmer_edge="trailing",
                             dimmer_lowest=54.0, dimmer_highest=180.0),
    "touchable": Brief(box_touch="touchable"),
    "unknown edge": Brief(dimmer_edge="unknown", dimmer_lowest=120.0, dimmer_highest=170.0),
    "no dimmer": Brief(dimmer_edge="none"),
}  # fmt: skip


@pytest.fixture(params=BRIEFS.values(), ids=BRIEFS)
def mapped(request):
    candidate = verdicts.plan(request.param).best(1)[0]
    return request.param, candidate, by_setting(request.param, candidate)


def test_second_way_a_cell_is_empty_where_the_build_alone_breaks_no_rule(mapped):
    brief, best, found = mapped
    own = found.heat_percent.tolist().index(found.lowest)
    for column in range(0, len(found.ohms), 3):
        built = verdicts.mine(
            brief, best.circuit, found.ohms[column], best.count, best.rated_watts, best.type_volts
        )
        failed = {each.rule for each in built.best(1)[0].failed}
        assert (found.broken[own, column] == "") == (not failed)
        assert found.broken[own, column] in failed | {""}


def test_property_a_darker_lowest_setting_never_mends_a_value(mapped):
    _, _, found = mapped
    kept = found.broken == ""
    assert (found.heat_percent[:-1] > found.heat_percent[1:]).all()
    assert not (kept[1:] & ~kept[:-1]).any()


def test_the_candidates_own_value_is_on_the_map_and_a_large_bin_is_thinned():
    brief = Brief(bin_series="E24", bin_most=2)
    candidate = replace(verdicts.plan(brief).best(1)[0], ohms_each=1.1e5)
    found = by_setting(brief, candidate)
    assert 1.1e5 in found.ohms and len(found.ohms) <= MOST_VALUES + 1 < len(brief.ohms)
