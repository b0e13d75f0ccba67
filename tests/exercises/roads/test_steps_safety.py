"""What each wrong turn on the way of a touch leads to, by hand.

Sources: 2 kΩ for a finger, IEC 60990. 775 Ω for dry hands: IEC 60479-1, quoted from memory. 30 mA:
IEC 60364-4-41, 415.1. Clearances: IEC 60664-1 Tables F.1 and F.2. Creepage: Table F.4, pollution
degree 2.
"""

from types import SimpleNamespace

import pytest

from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import safety as steps
from helpers.exercises.roads.steps.general import given, knowing
from helpers.physics.mains import SUPPLIES

ON_230 = SimpleNamespace(
    supply=SUPPLIES["230 V 50 Hz"], volts=230.0, ohms=1000.0, amps=0.0005, parts=390e3
)
ON_120 = SimpleNamespace(supply=SUPPLIES["120 V 60 Hz"])
TOUCHED = {"took the crest for the label": 325.27, "took the mean for the label": 207.07,
           "counted one half-cycle only": 115.0}  # fmt: skip


def plugged_in(n):
    return "II", False


def built_in(n):
    return "III", True


@pytest.mark.parametrize(
    "steps, right, wrong",
    [
        ((steps.touch_volts(),), 230.0,
         {**TOUCHED, "added ten per cent to the mains unasked": 253.0,
          "took the volts of another mains": 120.0}),
        ((steps.name_of_mains(),), 230.0, TOUCHED),
        ((given("volts"), steps.through_body("ohms")), 0.230, {
            "took the RCD's current": 0.030, "took the network for the body": 0.115,
            "took dry hands for wet ones": 0.29677, "squared the volts": 52.9,
            "divided the wrong way round": 4.3478, "multiplied instead of dividing": 230e3}),
        ((steps.one_left("parts"),), 390e3, {
            "counted both parts": 780e3, "took them as side by side": 195e3,
            "took both as shorted": 0.0}),
        ((given("parts"), knowing(steps.with_network(), steps.NETWORK_LEFT_OUT)), 392e3, {
            "left out the network": 390e3}),
        ((given("volts"), steps.ohms_of_part("amps")), 460e3, {
            "doubled them for two parts": 920e3,
            "shared the ohms between the parts": 230e3, "took in a tolerance": 484_211.0,
            "rounded up to a value of a series": 470e3,
            "divided the wrong way round": 0.0005 / 230.0,
            "multiplied instead of dividing": 0.115}),
    ],
    ids=["touch", "highest", "body", "one left", "network", "part"],
)  # fmt: skip
def test_second_way_each_wrong_turn_is_the_sum_by_hand(steps, right, wrong):
    road = Road(*steps)
    assert road.value(ON_230) == pytest.approx(right)
    ends = {found.names[0]: found.value for found in road.wrong(ON_230)}
    assert ends == pytest.approx(wrong, rel=1e-4)


@pytest.mark.parametrize(
    "where, n, right, wrong",
    [
        # 2.5 kV: 1.5 mm, reinforced 3 mm. Row 320 V: 3.2 mm, twice that; row 250 V: 2.5 mm.
        (plugged_in, ON_230, 6.4e-3, {
            "took the smaller of the two": 3.0e-3, "read the row of the supply's name": 5.0e-3,
            "took the basic distance": 3.2e-3, "added the two distances": 9.4e-3,
            "added the basic distance to the reinforced": 9.6e-3}),
        # 2.5 kV: 3 mm reinforced, 4 kV: 5.5 mm. Board: row 160 V 0.4 mm, row 125 V 0.25 mm.
        (built_in, ON_120, 3.0e-3, {
            "took the smaller of the two": 0.8e-3, "read the row of the supply's name": 0.5e-3,
            "took the basic distance": 1.5e-3, "added the two distances": 3.8e-3,
            "added the basic distance to the reinforced": 4.5e-3,
            "read the row of another category": 5.5e-3,
            "read the column of plastic": 3.2e-3}),  # row 160 V: 1.6 mm, twice that
    ],
    ids=["plugged in, 230 V", "built in, 120 V"],
)  # fmt: skip
def test_published_distances_read_wrong_are_other_cells_of_the_tables(where, n, right, wrong):
    road = Road(steps.distance(where))
    assert road.value(n) == pytest.approx(right)
    assert {found.names[0]: found.value for found in road.wrong(n)} == pytest.approx(wrong)


def test_limit_name_and_highest_mains_in_one_row_leave_nothing_to_read_wrong():
    n = SimpleNamespace(supply=SUPPLIES["100 V 50 Hz"])
    names = {found.names[0] for found in Road(steps.distance(plugged_in)).wrong(n)}
    assert "read the row of the supply's name" not in names


@pytest.mark.parametrize(("share", "warned"), [(0.001, True), (0.59, True), (0.61, False)])
def test_property_a_touch_current_far_too_small_is_a_danger(share, warned):
    assert bool(steps.understated_touch(share * 0.230, ON_230)) == warned


def test_published_half_a_milliampere_is_told_where_another_limit_is_asked_for():
    """IEC 61140: 0.5 mA, over which 230 V are 460 kΩ."""
    road, name = Road(given("volts"), steps.ohms_of_part("amps")), "took the limit of the standard"
    ends = {
        wrong.names[0]: wrong.value for wrong in road.wrong(SimpleNamespace(volts=230.0, amps=4e-4))
    }
    assert ends[name] == pytest.approx(460e3)
    assert name not in {wrong.names[0] for wrong in road.wrong(ON_230)}
