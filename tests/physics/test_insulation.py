"""Distances; the printed steps stand in tests/published, here their order and their ends."""

import pytest

from helpers.physics import insulation


def test_property_more_volts_never_need_less_distance():
    volts = range(10, 400, 10)
    for group in insulation.MATERIAL_GROUPS:
        creepage = [insulation.creepage_metres(float(v), group) for v in volts]
        assert creepage == sorted(creepage)
    clearances = [insulation.clearance_metres(float(v)) for v in range(100, 8000, 100)]
    assert clearances == sorted(clearances)


def test_property_worse_plastic_and_higher_category_need_more():
    creepage = [insulation.creepage_metres(230.0, group) for group in insulation.MATERIAL_GROUPS]
    assert creepage == sorted(set(creepage))
    impulses = [insulation.rated_impulse_volts(230.0, c) for c in insulation.CATEGORIES]
    assert impulses == sorted(set(impulses))


def test_limit_a_step_belongs_to_itself_and_a_little_more_to_the_next():
    assert insulation.rated_impulse_volts(150.0) == 1500.0
    assert insulation.rated_impulse_volts(150.1) == 2500.0
    assert insulation.creepage_metres(250.0) < insulation.creepage_metres(250.1)


def test_property_reinforced_is_always_more():
    assert insulation.creepage_metres(120.0, reinforced=True) == pytest.approx(0.003)
    for volts in (800.0, 1500.0, 2500.0, 4000.0, 6000.0):
        plain = insulation.clearance_metres(volts)
        assert insulation.clearance_metres(volts, reinforced=True) > plain


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: insulation.rated_impulse_volts(400.0), "the table ends at 300 V. Ask somebody"),
        (lambda: insulation.rated_impulse_volts(230.0, "V"), "category was read as 'V'"),
        (lambda: insulation.clearance_metres(9000.0), "the table ends at 8000 V"),
        (lambda: insulation.clearance_metres(8000.0, reinforced=True), "one step up for reinfo"),
        (lambda: insulation.creepage_metres(500.0), "the table ends at 400 V"),
        (lambda: insulation.creepage_metres(230.0, "IV"), "material_group was read as 'IV'"),
        (lambda: insulation.creepage_metres(0.0), "volts_rms was read as 0 V"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
