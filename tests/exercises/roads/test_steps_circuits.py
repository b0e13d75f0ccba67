"""Each wrong turn of the better circuits, worked out by hand.

On 230 V 50 Hz, whose crest is 325.269 V. Charge C × V, reactance 1 / 2πfC, heat I²R, energy ½ C V²,
discharge e to −t/RC, Ohm's law: any textbook of electrical engineering. Lamp out at 60 V: common
practice, no source. From tables: sin 120° 0.866025, cos 120° −0.5, sin of 120 radians 0.580611.
"""

from math import exp, pi, sqrt
from types import SimpleNamespace

import pytest
from questions import QUANTITIES, of_each

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import circuits
from helpers.exercises.roads.steps.general import given
from helpers.physics.mains import SUPPLIES

N = SimpleNamespace(
    supply=SUPPLIES["230 V 50 Hz"], farads=100e-9, ohms=2e6, surge_ohms=500.0, degrees=120.0,
    jump_volts=260.0, strike_volts=90.0,
)  # fmt: skip
CREST = 325.2691193
BY_HAND = {
    "full_wave_mean": (circuits.full_wave_mean(), 0.010, 0.00636620, {
        "counted one half-cycle only": 0.00318310,
        "took the crest for the mean": 0.010,
        "used the quick sum, volts over ohms": 0.00707107,
        "halved the quick sum": 0.00353553,
        "halved the crest": 0.005,
        "took 0.9 of the crest": 0.009,
    }),
    "for_both_halves": (circuits.for_both_halves(), 47e3, 94e3, {
        "kept the ohms": 47e3,
        "halved the ohms": 23.5e3,
        "took four times the ohms": 188e3,
    }),
    "charge_turned": (circuits.charge_turned("farads"), CREST, 65.0538e-6, {
        "counted the charge of one crest only": 32.5269e-6,
        "counted the swing twice": 130.1076e-6,
        "divided by the farads": CREST / 1e-7,
    }),
    "each_half_cycle": (circuits.each_half_cycle(), 65e-6, 0.0065, {
        "counted the charge once a cycle": 0.00325,
        "multiplied by 2π": 65e-6 * 314.159265,
        "multiplied the volts of the mains by farads and hertz": (
            65e-6 * 50 / 2 / 1.41421356, 65e-6 * 50 / 3.14159265,  # and 0.9 of it, the mean
        ),
        "took the crest of the current": 65e-6 * 157.079633,
        "took the other mains frequency": 65e-6 * 120,
    }),
    "reactance": (circuits.reactance(), 100e-9, 31830.99, {
        "left out 2π": 200e3,
        "took π for 2π": 63661.98,
        "took the other mains frequency": 26525.82,
    }),
    "heat_of": (circuits.heat_of("surge_ohms"), 0.008, 0.032, {
        "forgot to square the current": 4.0,
        "multiplied the mains by the current": 1.84,
        "took the crest of the current": 0.064,
        "squared the mean": 0.032 * 0.810569,  # 0.9003²
        "halved it as for a half-wave": 0.016,
        "took the whole mains across it": 105.8,
    }),
    "at_edge": (circuits.at_edge("degrees"), 300.0, 259.8076, {
        "took the crest as it stands": 300.0,
        "took the cosine for the sine": 150.0,
        "took the share of the time": 100.0,
        "took the volts of the mains as they stand": 212.132,
        "let the calculator take degrees for radians": 174.183,
    }),
    "heat_of_jumps": (circuits.heat_of_jumps("farads"), 300.0, 0.45, {  # ½ × 9 mJ × 100
        "counted one jump a cycle": 0.225,
        "left out the half": 0.9,
        "forgot to square the volts": 0.0015,
        "gave the energy of one jump": 0.0045,
        "took the other mains frequency": 0.54,
    }),
    "left_after_a_second": (circuits.left_after_a_second("ohms", "farads"), 300.0, 2.02138, {
        "took one time constant for the second": 110.3638,  # 300 / e
        "turned the exponent upside down": 245.6192,  # 300 × 0.818731
        "gave what is gone": 297.97862,
        "multiplied by the time constant": 60.0,
        "took two to the power for e": 9.375,
        "took ten to the power for e": 0.003,
        "took the crest as it stands": 300.0,
    }),
    "read_jump": (circuits.read_jump("jump_volts", lambda n: 100.0), None, 260.0, {
        "gave the divisions": 2.6,
        "left out the small marks": 200.0,
        "counted one division too many": 360.0,
        "counted one division too few": 160.0,
        "read the crest, not the jump": CREST,
        "made an rms value of the jump": 183.8478,
        "counted each division as twice its volts": 520.0,
        "counted each division as half its volts": 130.0,
        "gave the label of the mains": 230.0,
    }),
    "goes_out": (circuits.goes_out("strike_volts"), 180.0, 150.0, {  # sin⁻¹ 0.5 is 30°
        "left out the 180°": 30.0,
        "took the cosine for the sine": 120.0,
        "took the volts that keep it lit": 160.528779,  # sin⁻¹ 0.3333 is 19.471°
        "took the share of the volts for the angle's": 90.0,
    }),
}  # fmt: skip


def operand_of(step):
    if isinstance(step.operand, Road):
        return step.operand.value(N)
    if isinstance(step.operand, str):
        return getattr(N, step.operand)
    return step.operand(N) if callable(step.operand) else step.operand


@pytest.mark.parametrize("name", BY_HAND, ids=lambda name: f"second way: {name}")
def test_each_turn_and_the_step_itself_are_what_their_names_say(name):
    step, before, right, by_hand = BY_HAND[name]
    operand = operand_of(step)
    assert step.take(before, operand, N) == pytest.approx(right, rel=1e-5)
    found = {}
    for turn in step.turns:
        found.setdefault(turn.name, []).append(turn.take(before, operand, N))
    assert set(found) == set(by_hand)
    for turn, values in found.items():
        expected = by_hand[turn] if isinstance(by_hand[turn], tuple) else (by_hand[turn],)
        assert values == pytest.approx(expected, rel=1e-5), turn


def test_second_way_a_time_constant_is_ohms_times_farads():
    road = circuits.seconds_of("ohms", "farads")
    assert road.value(N) == pytest.approx(0.2)
    (wrong,) = [one for one in road.wrong(N) if one.names == ("divided ohms by farads",)]
    assert wrong.value == pytest.approx(2e13)


def test_second_way_whole_roads():
    dropper = Road(given(CREST, of="voltage"), circuits.charge_turned("farads"),
                   circuits.each_half_cycle())  # fmt: skip
    assert dropper.value(N) == pytest.approx(4 * 50 * 100e-9 * 230 * sqrt(2))
    amps = 230 * 2 * pi * 50 * 100e-9
    assert 230 / Road(given("farads"), circuits.reactance()).value(N) == pytest.approx(amps)
    left = Road(given(CREST, of="voltage"), circuits.left_after_a_second("ohms", "farads"))
    assert left.value(N) == pytest.approx(CREST * exp(-5))
    assert "e to the −1 s" in left.sum(N) and "200\u00a0ms" in left.sum(N)


@of_each([q for q in QUANTITIES if q.id.startswith("better-")])
def test_every_wrong_turn_is_wrong_and_is_told_by_its_name(question):
    for n in every_numbers(question):
        for wrong in question.kind.road.wrong(n):
            verdict = question.kind.mark(float(f"{wrong.value:.4g}"), n, 4)
            assert not verdict.right, (wrong.names, n)
            assert set(wrong.names) & set(verdict.slip.split(" or ")), (wrong.names, n)
