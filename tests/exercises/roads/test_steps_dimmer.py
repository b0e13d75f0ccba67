"""Each wrong turn behind a dimmer, worked out by hand at 110° on 230 V 50 Hz.

Heat: 1 − α/180 + sin 2α / 2π of full, Rashid, Power Electronics, AC voltage controllers. Mean:
(1 + cos α) / 2 of full, the integral of a sine from α to π. From tables: cos 110° −0.34202,
sin 110° 0.93969, sin 220° −0.64279. In radians: cos 110 −0.9990208, sin 220 0.08840. Factor of a
sine: 1.1107.
"""

import csv
import random
from collections import Counter
from math import acos, degrees
from pathlib import Path
from types import SimpleNamespace

import pytest
from questions import QUANTITIES, of_each

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises.bank import bank
from helpers.exercises.kinds import NotRead
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import dimmer
from helpers.exercises.roads.steps.general import given, label
from helpers.physics.mains import SUPPLIES

N = SimpleNamespace(
    supply=SUPPLIES["230 V 50 Hz"], degrees=110.0, watts=90.0, reading_volts=75.67, amps=0.006
)
TIME, SINE, LIGHT = 0.38889, -0.10230, 0.32899  # 70/180, −0.64279/6.2832, 0.65798/2
HEAT = TIME + SINE  # 0.28659
VOLTS = 0.53534  # its root

HEAT_TURNS = {
    "took the share of the time": TIME,
    "took the share of the light": LIGHT,
    "took the share of the volts": VOLTS,
    "took the sign of the sine the other way": TIME - SINE,
    "left out the 1 − at the start": 0.61111 + SINE,
    "took the sine of the angle, not of twice it": TIME + 0.93969 / 6.2832,
    "let the calculator take degrees for radians": TIME + 0.08840 / 6.2832,
    "took what is cut away": 1 - HEAT,
    "left the dimmer out": 1.0,
}
LIGHT_TURNS = {
    "took the share of the time": TIME,
    "took the share of the heat": HEAT,
    "took the share of the volts": VOLTS,
    "forgot to halve": 1 - 0.34202,
    "let the calculator take degrees for radians": (1 - 0.9990208) / 2,
    "took the sine for the cosine": (1 + 0.93969) / 2,
    "took the cosine alone": 0.34202,
    "left out the 1": 0.17101,
    "took 0.45 on top": 0.45 * LIGHT,
    "took what is cut away": 1 - LIGHT,
    "left the dimmer out": 1.0,
}
IN_THE_FORMULA = {
    "divided by 360, not by 180": 0.5 - 0.30556 + SINE,
    "divided the sine by π, not by 2π": TIME - 0.64279 / 3.1416,
    "squared once too often": HEAT**2,
    "squared the share of the light": LIGHT**2,
    "squared the share of the time": TIME**2,
}
ROOT_TURNS = {
    "forgot the root": HEAT,
    "squared instead of taking the root": HEAT**2,
    "took the share of the time": TIME,
    "took the share of the light": LIGHT,
    "took the volts at the edge": 1.41421 * 0.93969,
}
OHMS = 230.0**2 / 90.0  # 587.8
POT_OHMS = Road(label(), dimmer.pot_ohms("watts"))
BY_HAND = {
    "read_angle": (dimmer.read_angle("degrees"), None, {
        "took the angle let through for the angle cut": 70.0,
        "counted from the start of the cycle": 290.0,
        "gave the divisions": 3.66667,
        "counted each division as 10°": 36.6667,
        "counted each division as 20°": 73.3333,
        "counted each division as 36°": 132.0,
        "counted each division as 45°": 165.0,
        "doubled the angle": 220.0,
        "halved the angle": 55.0,
        "counted from the crest": 20.0,
        "gave the milliseconds": 6.11111,
        "left out the small marks": 90.0,
        "counted one division too many": 140.0,
        "counted one division too few": 80.0,
    }),
    "heat_share": (dimmer.heat_share(), 110.0, HEAT_TURNS),
    "light_share": (dimmer.light_share(), 110.0, LIGHT_TURNS),
    "root": (dimmer.root("degrees"), HEAT, ROOT_TURNS),
    "in_percent": (dimmer.in_percent(), HEAT, {"gave a fraction, not per cent": HEAT}),
    "angle_of_light": (dimmer.angle_of_light(), LIGHT, {
        "took the share shown for the share of the time": 180 * (1 - LIGHT),
        "took the angle let through for the angle cut": 70.0,
        "did not take the 1 away": degrees(acos(2 * LIGHT)),
    }),
    "full_amps": (dimmer.full_amps(), 90.0, {
        "divided the wrong way round": 230 / 90,
        "multiplied instead of dividing": 230 * 90,
        "divided by the volts twice": 90 / 52_900,
    }),
    "dimmed_amps": (dimmer.dimmed_amps("degrees"), 0.39130, {
        "kept the watts while the volts fell": 0.39130 / VOLTS,
        "counted only one half-cycle": 0.39130 * VOLTS * 0.70711,
        "multiplied by 1.414": 0.39130 * VOLTS * 1.41421,
    }),
    "on_plain_meter": (dimmer.on_plain_meter("degrees"), 230.0, {
        "left out the scale of the meter": 75.668 / 1.1107,
        "divided by 1.414": 75.668 / 1.41421,
        "divided the rms by 1.11": 123.13 / 1.1107,
        "multiplied by 1.11": 75.668 * 1.1107,
        "counted only one half-cycle": 75.668 / 2,
    }),
    "share_shown": (dimmer.share_shown(), 75.67, {}),
    "of_mains": (dimmer.of_mains(), VOLTS, {
        "started from the crest": VOLTS * 325.269,
        "added ten per cent to the mains unasked": VOLTS * 253.0,
    }),
    "pot_ohms": (dimmer.pot_ohms("watts"), 230.0, {
        "forgot to square the volts": 230 / 90,
        "divided the watts by the volts": 90 / 230,
        "divided the wrong way round": 1 / OHMS,
        "took the watts for ohms": 90.0,
    }),
    "across_pot": (
        dimmer.across_pot(POT_OHMS, 82e3), 0.006, {
            "sent the leak through the dropper": 492.0,
            "added the dropper to the pot": 0.006 * (82e3 + OHMS),
            "gave the peak": 0.006 * OHMS * 1.41421,
            "squared the leak": 3.6e-5 * OHMS,
            "multiplied the mains by the leak": 1.38,
            "divided the watts by the leak": 15e3,
            "took the full mains": 230.0,
            "took “off” for no voltage": 0.0,
        },
    ),
}  # fmt: skip


def operand(step):
    if isinstance(step.operand, Road):
        return step.operand.value(N)
    if isinstance(step.operand, str):
        return getattr(N, step.operand)
    return step.operand(N) if callable(step.operand) else step.operand


@pytest.mark.parametrize("name", BY_HAND, ids=lambda name: f"second way: {name}")
def test_each_wrong_turn_of_a_step_is_what_its_name_says(name):
    step, before, by_hand = BY_HAND[name]
    assert {turn.name for turn in step.turns} == set(by_hand)
    for turn in step.turns:
        found, expected = turn.take(before, operand(step), N), by_hand[turn.name]
        several = expected if isinstance(expected, set) else {expected}
        assert any(found == pytest.approx(one, rel=1e-4) for one in several), turn.name


def test_second_way_more_is_known_where_the_share_of_the_heat_itself_is_asked():
    found = {turn.name: turn.take(110.0, None, N) for turn in dimmer.IN_THE_FORMULA}
    assert found == pytest.approx(IN_THE_FORMULA, rel=1e-4)


@pytest.mark.parametrize(
    "road, expected",
    [
        (dimmer.heat_left("degrees"), HEAT),
        (dimmer.volts_left("degrees"), VOLTS),
        (dimmer.light_left("degrees"), LIGHT),
        (Road(given("reading_volts"), dimmer.share_shown(), dimmer.angle_of_light()), 110.0),
        (Road(given("watts"), dimmer.full_amps(), dimmer.dimmed_amps("degrees")), 0.20948),
        (Road(label(), dimmer.on_plain_meter("degrees")), 75.668),
        (Road(given("amps"), dimmer.across_pot(POT_OHMS, 82e3)), 3.5267),
    ],
)  # fmt: skip
def test_second_way_the_right_road_leads_to_the_sum_by_hand(road, expected):
    assert road.value(N) == pytest.approx(expected, rel=1e-4)


# --- the questions of lesson 05

DIMMER = [q for q in QUANTITIES if q.id.startswith("dim-")]
# On 100 V a per cent is a volt: below so many volts nobody could tell.
NO_OTHER_NUMBER = {("dim-recall-2", "added the per cent as volts"): 120.0}
# Its number is told by a name that says more.
TOLD_AS_ANOTHER = {"dim-12": {"took the share of the light"}}


@of_each(DIMMER)
def test_every_wrong_turn_is_wrong_and_is_told_by_its_name(question):
    for n in every_numbers(question):
        for wrong in question.kind.road.wrong(n):
            name = wrong.names[0]
            verdict = question.kind.mark(float(f"{wrong.value:.3g}"), n, 3)
            if verdict.right:
                assert n.supply.volts_rms < NO_OTHER_NUMBER.get((question.id, name), 0.0), n
            elif name not in verdict.slip.split(" or "):
                assert verdict.slip and name in TOLD_AS_ANOTHER.get(question.id, ()), (name, n)


def test_wrong_answers_of_people_are_told_by_what_they_did():
    """The rows say what somebody did; what it should be called was decided before any search."""
    path = Path(__file__).parents[1] / "wrong_answers" / "lesson_05.csv"
    with path.open(encoding="utf-8", newline="") as rows:
        found = Counter(_told(row) for row in csv.DictReader(rows))
    assert found["right"] == 0
    assert found["named"] >= 0.75 * (found["named"] + found["missed"])
    assert found["false"] <= 0.015 * found.total()


def _told(row):
    question = bank()[row["question"]]
    supply = SUPPLIES[row["supply"]]
    n = question.numbers_for(row["learner"], row["class_word"], supply, 0)
    try:
        verdict = question.kind.verdict_on(question.kind.read(row["typed"], n), n)
    except NotRead:
        return "not read"
    names = {part for way in verdict.slip.split(" or ") for part in (way, *way.split(" and "))}
    if verdict.right:
        return "right"
    if not row["expected"]:
        return "false" if verdict.slip else "no reason"
    return "named" if row["expected"] in names else "missed"


@of_each(DIMMER, "limit")
def test_of_random_numbers_at_most_a_tenth_is_given_a_reason(question):
    chance, claimed, tried, drawn = random.Random(5), 0, 0, every_numbers(question)
    while tried < 6000:  # chance alone is then below half a per cent
        n = chance.choice(drawn)
        value = float(f"{question.kind.right(n) * 10 ** chance.uniform(-1, 1):.3g}")
        verdict = question.kind.mark(value, n, 3)
        if not verdict.right:
            tried += 1
            claimed += bool(verdict.slip)
    assert claimed <= 0.10 * tried
