"""Distances; the printed steps stand in tests/published, here their order and their ends."""

import pytest

from helpers.physics import insulation
from helpers.physics.mains import SUPPLIES, Supply


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
    ("volts", "category", "board", "air", "along", "row"),
    [(230.0, "II", False, 3.0, 6.4, 320.0), (230.0, "III", True, 5.5, 3.2, 320.0),
     (230.0, "IV", False, 8.0, 6.4, 320.0), (120.0, "II", False, 1.5, 3.2, 160.0),
     (120.0, "III", True, 3.0, 0.8, 160.0), (100.0, "IV", False, 5.5, 3.0, 125.0)],
)  # fmt: skip
def test_published_distances_towards_a_hand(volts, category, board, air, along, row):
    """IEC 60664-1: F.1 by name, one step up in F.2, twice the row of F.4 at 1.1 times the name."""
    far = insulation.towards_a_hand(Supply(volts, 50.0), category, board)
    found = (1e3 * far.clearance_metres, 1e3 * far.creepage_metres, far.row_volts)
    assert found == pytest.approx((air, along, row))
    assert 1e3 * far.metres == pytest.approx(max(air, along))


def test_property_reading_the_highest_mains_never_needs_less_than_reading_its_name():
    for supply in SUPPLIES.values():
        by_name = insulation.creepage_metres(supply.volts_rms, reinforced=True)
        assert insulation.towards_a_hand(supply).creepage_metres >= by_name


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
        (lambda: insulation.towards_a_hand(Supply(400.0, 50.0)), "the table ends at 300 V"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
