"""Each wrong turn on the way from current to light and look, worked out by hand.

Exponents of a third and a half: Stevens. L* = 116 ∛Y − 16: CIE 15. Inverse-square law; a beam of
cos^m, in which a quarter is left where the cosine is the square of that at half; 1239.84 eV nm,
CODATA. At 20 mA: common practice, no source.
"""

from math import acos, cos, degrees, radians, sqrt
from types import SimpleNamespace

import pytest
from questions import QUANTITIES, of_each

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import light
from helpers.exercises.roads.steps.general import given

N = SimpleNamespace(
    look_ratio=3.0, amps=0.0005, rated_candelas=0.4, lux=0.001, half_degrees=26.0, full_watts=80.0,
    lit_percent=20.0, low_amps=0.001, cycles=20, on_cycles=6,
)  # fmt: skip
BY_HAND = {
    "as_share": (light.as_share(), 30.0, {"left the per cent as it stands": 30.0}),
    "cube_root": (light.cube_root(), 0.125, {
        "took the light for the look": 0.125,
        "took the root for a point of light": 0.353553,
        "took the lightness of surfaces": 0.42,  # 116 × 0.5 − 16
        "gave how much is lost": 0.5,
        "divided by three": 0.0416667,
        "raised to the third power": 0.00195313,
    }),
    "for_point_look": (light.for_point_look("look_ratio"), 0.2, {
        "took the light for the look": 0.6,
        "took the third power, as for a patch": 5.4,
        "took the root instead of the square": 0.2 * 1.7320508,
        "divided instead of multiplying": 0.2 / 9,
        "doubled instead of squaring": 1.2,
    }),
    "intensity": (light.intensity("amps"), 0.12, {
        "took the sheet's intensity as it stands": 0.12,
        "took the root of the share": 0.12 * 0.1581139,
        "divided the wrong way round": 4.8,
        "multiplied by the milliamps alone": 0.06,
        "divided by the sheet's milliamps alone": 0.006,
        "divided by the milliamps it gets": 0.24,
    }),
    "noticed_from": (light.noticed_from("lux"), 0.016, {
        "forgot the root": 16.0,
        "halved instead of taking the root": 8.0,
        "took the third root": 2.519842,
        "divided the wrong way round": 0.25,
        "multiplied instead of dividing": 0.004,
        "took the root of the intensity alone": 126.4911,
        "left out a prefix under the root": 126.4911,
    }),
    "candelas_at": (light.candelas_at("lux"), 6.0, {
        "forgot to square the distance": 0.006,
        "doubled instead of squaring": 0.012,
        "took the third power of the distance": 0.216,
        "divided by the square of the distance": 0.001 / 36,
    }),
    "amps_for": (light.amps_for("rated_candelas"), 0.04, {
        "divided the wrong way round": 0.2,
        "took the sheet's intensity for one milliamp": 0.0001,
        "took the sheet's intensity for one amp": 0.1,
        "took the root of the share": 0.02 * 0.3162278,
    }),
    "read_beam": (light.read_beam("half_degrees"), None, {
        "read it at a quarter": degrees(acos(cos(radians(26)) ** 2)),
        "left out the small marks": 20.0,
        "gave the divisions": 2.6,
        "counted one division too many": 36.0,
        "took each small mark for one degree": 23.0,
    }),
    "both_sides": (light.both_sides(), 26.0, {
        "gave the half angle": 26.0,
        "halved the angle": 13.0,
    }),
    "share_of_full": (light.share_of_full("full_watts"), 4.0, {
        "divided the wrong way round": 20.0,
        "took the watts for per cent": 0.04,
    }),
    # A tenth of the heat is left at 133.40°: 46.60/180 + sin 266.8°/6.2832 is 0.2589 − 0.1589.
    "table_of_light": (light.table_of_light(), 0.1, {
        "took the share of the heat": 0.1,
        "took the share of the volts": sqrt(0.1),
        "took the share of the time": 0.2589,
        "read the wrong row of the table": 0.2541,  # at 119.46°: (1 + cos 119.46°) / 2
        "squared the share of the heat": 0.01,
    }),
    "photon_volts": (light.photon_volts(), 620e-9, {
        "divided the wrong way round": 0.5,
        "divided a thousand by it": 1.612903,
        "took a hundredth of the nanometres": 6.2,
        "took off a diode's 0.7 V as well": 1.99974 - 0.7,
    }),
    "mean_of_pulses": (light.mean_of_pulses("lit_percent"), 0.005, {
        "took the pulse as it stands": 0.005,
        "took the rms of the pulses": 0.00223607,
        "took the dark time": 0.004,
        "took half of the pulse": 0.0025,
        "divided by the share": 0.025,
    }),
    "swing": (light.swing("low_amps"), 0.003, {
        "divided by the highest": 2 / 3,
        "divided by the middle": 1.0,
        "divided by the lowest": 2.0,
        "took the lowest over the highest": 1 / 3,
        "turned the quotient over": 2.0,
    }),
    "bursts_a_second": (light.bursts_a_second("cycles"), 50.0, {
        "took the hertz of the mains": 50.0,
        "counted half-cycles": 5.0,
        "divided by the cycles let through": 8.333333,
        "divided by the cycles held back": 3.571429,
        "counted the cycles let through": 15.0,
        "gave the time of one round": 0.4,
        "multiplied instead of dividing": 1000.0,
    }),
}  # fmt: skip


@pytest.mark.parametrize("name", BY_HAND, ids=lambda name: f"second way: {name}")
def test_each_wrong_turn_of_a_step_is_what_its_name_says(name):
    step, before, by_hand = BY_HAND[name]
    operand = getattr(N, step.operand) if isinstance(step.operand, str) else step.operand
    found = {turn.name: turn.take(before, operand, N) for turn in step.turns}
    assert found == pytest.approx(by_hand, rel=1e-3 if name == "table_of_light" else 1e-5)


def test_second_way_the_wrong_rows_of_the_table_are_the_two_beside():
    """A twentieth of the heat is left at 143.65°, a fifth at 119.46°."""
    rows = [turn for turn in light.table_of_light().turns if turn.name.startswith("read")]
    assert [row.take(0.1, None, N) for row in rows] == pytest.approx([0.0973, 0.2541], rel=1e-3)
    with pytest.raises(ValueError, match="power_fraction"):
        rows[0].take(0.01, None, N)


@pytest.mark.parametrize(
    ("road", "expected"),
    [
        (Road(given(30.0, of="percent"), light.as_share(), light.cube_root()), 0.669433),
        (Road(given("amps"), light.for_point_look("look_ratio")), 0.0045),
        (Road(given("rated_candelas"), light.intensity("amps")), 0.01),
        (Road(given(0.016, of="luminous intensity"), light.noticed_from("lux")), 4.0),
        (Road(given(6.0, of="length"), light.candelas_at("lux"),
              light.amps_for("rated_candelas")), 0.0018),
        (Road(light.read_beam("half_degrees"), light.both_sides()), 52.0),
        (Road(given(8.0, of="power"), light.share_of_full("full_watts"),
              light.table_of_light()), 0.15648),
        (Road(given(620e-9, of="length"), light.photon_volts()), 1.99974),
        (Road(given(0.005, of="current"), light.mean_of_pulses("lit_percent")), 0.001),
        (Road(given(0.003, of="current"), light.swing("low_amps")), 0.5),
        (Road(given(50.0, of="frequency"), light.bursts_a_second("cycles")), 2.5),
    ],
)  # fmt: skip
def test_second_way_the_right_road_leads_to_the_sum_by_hand(road, expected):
    assert road.value(N) == pytest.approx(expected, rel=1e-4)


@of_each([q for q in QUANTITIES if q.id.startswith("see-")])
def test_every_wrong_turn_is_wrong_and_is_told_by_its_name(question):
    for n in every_numbers(question):
        for wrong in question.kind.road.wrong(n):
            verdict = question.kind.mark(float(f"{wrong.value:.3g}"), n, 3)
            assert not verdict.right, (wrong.names, n)
            assert wrong.names[0] in verdict.slip.split(" or "), (wrong.names, verdict.slip, n)
