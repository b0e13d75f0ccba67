"""A whole design: six criteria by the rules of sizing, a stop before all, and nothing evaluated."""

import re
from types import SimpleNamespace

import pytest

from helpers.exercises.bank import bank
from helpers.exercises.kinds import Design, NotRead
from helpers.exercises.kinds.design import CRITERIA, REASONS, TELLS
from helpers.exercises.standing import Standing
from helpers.physics.mains import SUPPLIES
from helpers.sizing import rules, stops, verdicts
from helpers.sizing.brief import Brief, to_toml

KIND = Design()
N = SimpleNamespace(supply=SUPPLIES["230 V 50 Hz"], shown=())
EACH = 1.0 / 6.0


def marked(typed, numbers=N):
    return KIND.mark(KIND.read(typed, numbers).value, numbers)


def of(changes, choice=None):
    return f"{choice or KIND.model(N)}\n{to_toml(Brief(**changes))}"


def test_each_rule_belongs_to_exactly_one_criterion():
    listed = [rule for _, names, _ in CRITERIA for rule in names]
    found = verdicts.plan(Brief()).best(1)[0].findings
    assert len(CRITERIA) == 6 and len(set(listed)) == len(listed)
    assert {*rules.HELD["rule"], "count", "heat", "volts", "LED", "diode", "fuse"} <= set(listed)
    assert {finding.rule for finding in found} <= set(listed)
    stopped = Brief(heater_power=400.0, use_connection="fixed", heater_full_power_safe="no")
    assert {stop.rule for stop in stops.stops(stopped)} | {"capacitor dropper"} <= set(listed)
    assert {stop.rule for stop in stops.stops(stopped)} | {"socket load", "not known"} <= {*REASONS}


@pytest.mark.parametrize("name", SUPPLIES, ids=lambda name: f"property: {name}")
def test_the_model_answer_keeps_all_six_on_every_supply(name):
    numbers = SimpleNamespace(supply=SUPPLIES[name], shown=())
    verdict = marked(KIND.model(numbers), numbers)
    assert verdict.right and not verdict.danger and "not permission" in verdict.reply


@pytest.mark.parametrize(
    ("changes", "stop"),
    [
        ({"use_connection": "fixed"}, "fixed wiring"),
        ({"use_connection": "unknown"}, "fixed wiring"),
        ({"heater_full_power_safe": "no"}, "full power"),
        ({"heater_full_power_safe": "unknown"}, "full power"),
        ({"heater_power": 250.0}, "dimmer load"),  # 80 % of 300 W is 240 W
        ({"heater_power": 2400.0, "dimmer_rated": 6000.0}, "socket load"),  # 10.4 A, a plug of 10 A
        ({"unknown": ("dimmer_lowest",)}, "not known"),
    ],
)
def test_under_a_stop_not_to_build_earns_all_and_to_build_is_a_danger(changes, stop):
    assert marked(of(changes, f"do not build; {stop}")).right
    built = marked(of(changes))
    assert built.share == 0.0 and built.danger and "no stop is ignored" in built.reply
    for other in REASONS:
        if other != stop:
            wrong = marked(of(changes, f"do not build; {other}"))
            assert (wrong.share, wrong.slip, wrong.danger) == (0.5, "another stop", "")


def test_second_way_below_the_load_for_hours_nothing_stops_it():
    assert marked(of({"heater_power": 240.0})).right


def test_two_stops_are_each_a_reason():
    both = {"use_connection": "fixed", "heater_full_power_safe": "no"}
    for stop in ("fixed wiring", "full power"):
        assert marked(of(both, f"do not build; {stop}")).right


def test_where_no_parts_keep_the_rules_that_is_the_reason():
    far = {"seen_distance": 500.0}
    assert verdicts.plan(Brief(**far)).kept == 0
    assert marked(of(far, "do not build; no parts")).right
    assert marked("do not build; no parts").slip == "parts would do"
    assert marked("do not build; fixed wiring").slip == "no such stop"


ONE_MISSED = [
    ("bridge; 1 MΩ; 4; 0.6 W; 300 V; volts", CRITERIA[1][0], 5 * EACH, False),
    ("bridge; 39 kΩ; 4; 0.6 W; 50 V; volts", CRITERIA[3][0], 0.0, True),
    ("bridge; 330 kΩ; 1; 0.6 W; 500 V; volts", CRITERIA[3][0], 0.0, True),
    ("bridge; 39 kΩ; 4; 0.6 W; 300 V; heat", CRITERIA[5][0], 5 * EACH, False),
    ("bridge; 39 kΩ; 4; 0.6 W; 300 V; guards", CRITERIA[5][0], 5 * EACH, False),
    ("bridge; 39 kΩ; 4; 0.6 W; 300 V; off", CRITERIA[5][0], 0.0, True),
    ("resistor_only; 39 kΩ; 4; 0.6 W; 300 V; volts", CRITERIA[2][0], 5 * EACH, False),
]


@pytest.mark.parametrize(("typed", "missed", "share", "danger"), ONE_MISSED)
def test_a_criterion_that_is_missed_is_named_and_a_danger_earns_nothing(
    typed, missed, share, danger
):
    verdict = marked(typed)
    assert verdict.slip == missed and bool(verdict.danger) == danger
    assert verdict.share == pytest.approx(share)


def test_several_rules_missed_are_named_and_a_misread_light_is_always_said():
    """10 kOhm, one of 0.25 W for 50 V, breaks several rules; the light is misread besides."""
    poor = "series_diode; 10 kΩ; 1; 0.25 W; 50 V; "
    plain, off, heat = (marked(poor + tells) for tells in ("volts", "off", "heat"))
    missed = re.search("Not kept either: (.*?)[.]", plain.reply)[1].split("; ")
    assert missed == ["each resistor stands its heat and its volts"]
    assert "misread" not in plain.reply
    for verdict in (off, heat):
        assert "What the light tells is misread as well" in verdict.reply
    assert off.danger.startswith("Dark never means dead") and off.share == 0.0
    assert marked(ONE_MISSED[-2][0]).reply.count("Not kept either") == 0


def test_a_design_on_the_workshops_parts_is_told_so():
    text = to_toml(Brief()).replace('diode = "1000 V"\n', "").replace('air = "50 °C"\n', "")
    reply = marked(f"{KIND.model(N)}\n{text}").reply
    assert "not yours: 2 of 43, on box, resistors and diodes" in reply
    assert "not yours" not in marked(of({})).reply


def test_a_light_that_can_be_touched_is_a_danger():
    verdict = marked(of({"box_touch": "touchable"}))
    assert verdict.slip == "nothing live can be touched"
    assert "can be killed" in verdict.danger and verdict.share == 0.0


def test_what_is_marked_is_what_sizing_says_of_the_same_parts():
    for typed in KIND.guesses(N):
        value = KIND.read(typed, N).value
        if value.circuit and not stops.stops(value.brief) and value.tells == "volts":
            found = verdicts.mine(
                value.brief, value.circuit, value.ohms_each, value.count, value.rated_watts,
                value.type_volts,
            ).best(1)[0].findings  # fmt: skip
            assert KIND.mark(value, N).right == rules.passes(found)


def test_a_brief_that_leaves_a_danger_out_is_stopped_by_it():
    assert "no stop is ignored" in marked(f'{KIND.model(N)}\n[heater]\npower = "60 W"').reply


REFUSED = [
    "", "x", "bridge", "bridge; 39; 4; 0.6 W; 300 V", "do not build", "do not build; because",
    "capacitor_dropper; 39 kΩ; 4; 0.6 W; 300 V; volts", "bridge; 39 kΩ; 0; 0.6 W; 300 V; volts",
    "bridge; 39 kΩ; 4.5; 0.6 W; 300 V; volts", "bridge; 39 kΩ; 13; 0.6 W; 300 V; volts",
    "bridge; 9**9**9; 4; 0.6 W; 300 V; volts", "bridge; 39 kΩ; 4; 0 W; 300 V; volts",
    "bridge; 39 kΩ; ²; 0.6 W; 300 V; volts", "bridge; 39 kΩ; 4; 0.6 W; 300 V; __import__('os')",
    "do not build; no parts\n[lamp]", "do not build; no parts\nimport os",
    'do not build; no parts\n[bin]\nseries = "E24"\nmost = 12',
    'do not build; no parts\n[heater]\npower = "1e999 W"',
]  # fmt: skip


@pytest.mark.parametrize("typed", REFUSED)
def test_what_cannot_be_read_is_said_and_counts_as_nothing(typed):
    with pytest.raises(NotRead) as said:
        KIND.read(typed, N)
    assert len(str(said.value)) > 20


def test_the_brief_goes_into_the_answer_and_can_be_marked_again():
    whole = of({"heater_power": 60.0, "seen_distance": 2.0})
    assert len(whole) < KIND.longest
    answer = KIND.read(whole, N)
    assert answer.value.brief == Brief(heater_power=60.0, seen_distance=2.0)
    elsewhere = SimpleNamespace(supply=SUPPLIES["120 V 60 Hz"], shown=())
    assert KIND.read(whole, elsewhere) == answer
    assert KIND.mark(answer.value, elsewhere) == KIND.mark(answer.value, N)


def test_what_the_light_tells_and_reasons_are_listed_for_who_answers_on_paper():
    listed = " ".join(KIND.choices(N))
    assert all(key in listed for key in (*TELLS, *REASONS))


def test_limit_beyond_so_many_designs_none_is_even_read_whatever_its_class(monkeypatch):
    """A design takes tenths of a second to judge, and a hand-in can hold a thousand."""
    read, first = [], "do not build; fixed wiring\n[heater]\npower = '{} W'"
    real = Design.read
    monkeypatch.setattr(Design, "read", lambda *given: read.append(given) or real(*given))
    standing, refused = Standing(bank()["own-1"], "w0"), 0
    for n in range(60):
        draw = standing.draw("BENCH-07", f"w{n % 3}", N.supply, 0)
        try:
            standing.take(draw, first.format(40 + n))
        except NotRead:
            refused += 1
    assert len(read) == Design.most_answers >= Design.tries
    assert refused == 60 - Design.most_answers
