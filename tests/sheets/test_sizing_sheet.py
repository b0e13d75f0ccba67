"""The sizing sheet: what stands on it, what must not, and its figures worked out a second time.

The figures are read from `size --json`, and everything is computed anew from the brief in it.
"""

import json
import re
import subprocess
import sys
from contextlib import redirect_stdout
from dataclasses import replace
from datetime import UTC, datetime
from html.parser import HTMLParser
from io import StringIO
from math import cos, exp, log, pi, radians, sin, sqrt

import numpy as np
import pytest
import slowly

from helpers.__main__ import main
from helpers.exercises.bank import bank
from helpers.exercises.session import Session
from helpers.exercises.settings import Settings
from helpers.exercises.store import DiskStore, MemoryStore
from helpers.exercises.wording import CAUTION, STAMP
from helpers.physics.mains import SUPPLIES
from helpers.sheets import danger_items, plan_facts, sizing_sheet
from helpers.sizing import own, verdicts
from helpers.sizing.brief import Brief, from_toml, to_toml

BEGUN = """\
[use]
connection = "plug-in"
[supply]
volts = "120 V"
hertz = "60 Hz"
[heater]
power = "60 W"
full_power_safe = "yes"
[dimmer]
edge = "leading"
rated = "300 W"
[seen]
lux = "unknown"
distance = "1 m"
[box]
touch = "closed window"
"""
PLANS = {
    "workshop": lambda: verdicts.plan(Brief()),
    "120 V": lambda: verdicts.plan(Brief(supply_volts=120.0, supply_hertz=60.0)),
    "no dimmer": lambda: verdicts.plan(Brief(dimmer_edge="none")),
    "touchable": lambda: verdicts.plan(
        Brief(box_touch="unknown", seen_lux=50.0, bin_largest=2e6, bin_most=6)
    ),
    "green": lambda: verdicts.plan(
        Brief(
            led_colour="green",
            led_count=3,
            dimmer_edge="trailing",
            dimmer_lowest=60.0,
            dimmer_highest=170.0,
        )
    ),
    "mine": lambda: verdicts.mine(Brief(), "two_leds", 39e3, 4, 0.6, 300.0),
    "nothing meets it": lambda: verdicts.plan(Brief(seen_lux=20000.0)),
    "mine, broken": lambda: verdicts.mine(Brief(), "series_diode", 82e3, 1, 0.6, 300.0),
    "begun": lambda: own.planned(BEGUN),
    "stopped": lambda: verdicts.plan(Brief(use_connection="fixed", heater_power=290.0)),
    "mine, stopped": lambda: verdicts.mine(
        Brief(heater_full_power_safe="unknown"), "bridge", 39e3, 4, 0.6, 300.0
    ),
}
KEPT = ("workshop", "120 V", "no dimmer", "touchable", "green", "mine", "begun")
every_plan = pytest.mark.parametrize("plan", PLANS)
every_kept = pytest.mark.parametrize("plan", KEPT)
AT = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)


class Text(HTMLParser):
    """Headings in order, cells of each table by its name, and the text of it all."""

    def __init__(self, html):
        super().__init__()
        self.sections, self.tables, self.text, self.pre = [], {}, "", ""
        self._table, self._tag = None, ""
        self.feed(html)
        self.text = " ".join(self.text.split())

    def handle_starttag(self, tag, attrs):
        held = dict(attrs)
        self._tag = tag
        if tag == "section":
            self.sections.append(held["class"])
        if held.get("role") == "group":
            self._table = self.tables[held["aria-label"]] = []
        if tag == "tr" and self._table is not None:
            self._table.append([])
        if tag in ("td", "th") and self._table:
            self._table[-1].append("")

    def handle_endtag(self, tag):
        self._tag = ""
        if tag == "table":
            self._table = None

    def handle_data(self, data):
        if self._tag != "style":
            self.text += data
        if self._tag == "pre":
            self.pre += data
        if self._table and self._table[-1]:
            self._table[-1][-1] = " ".join((self._table[-1][-1] + data).split())


@pytest.fixture(scope="module")
def sheets():
    made = {}

    def sheet(name):
        if name not in made:
            plan = PLANS[name]()
            html = "".join(sizing_sheet.pieces(plan, danger_items.danger_items(), at=AT))
            made[name] = plan, html, Text(html)
        return made[name]

    return sheet


ORDER = (
    "need", "items", "remains", "broken", "circuit", "parts", "rules", "warm", "faults", "dead",
    "log", "assumed", "again", "mains",
)  # fmt: skip


@every_plan
def test_stamp_caution_and_the_first_verdict_come_before_all_else(sheets, plan):
    made, html, read = sheets(plan)
    places = [read.text.find(words) for words in (
        STAMP, "Sizing sheet: a pilot light for a heater", CAUTION.split(".")[0],
        "Need it be built at all?", "switches nothing off", "Danger items of the lessons",
    )]  # fmt: skip
    assert -1 not in places and places[1:] == sorted(places[1:])
    # Twice in the markup: at the head, and in the foot that print repeats on each page.
    assert html.count(STAMP) == 2 and "<tfoot>" in html.partition(STAMP)[0]
    assert [name for name in ORDER if name in read.sections] == read.sections


@every_plan
def test_it_holds_nothing_that_runs_or_comes_from_elsewhere(sheets, plan):
    _, html, _ = sheets(plan)
    assert "script" not in html and "http-equiv" in html
    assert re.findall(r"(?:https?:|url\(|\bsrc=|\bhref=|\bon\w+=|@import)", html) == []
    assert "default-src &#39;none&#39;" in html or "default-src 'none'" in html


@every_plan
def test_from_the_brief_on_it_the_same_sheet_is_made(sheets, plan):
    made, html, read = sheets(plan)
    planned = own.planned(read.pre)
    assert planned.brief == made.brief and planned.brief.left_out == made.brief.left_out
    assert "python -m helpers size brief.toml --sheet" in read.text
    assert "".join(sizing_sheet.pieces(planned, danger_items.danger_items(), at=AT)) == html


@pytest.mark.parametrize("plan", [name for name in PLANS if name not in KEPT])
def test_where_a_rule_is_broken_there_is_nothing_to_build_or_test(sheets, plan):
    made, html, read = sheets(plan)
    assert "live wire" not in html and "Expected" not in read.text and "Never" not in read.text
    assert not {"circuit", "parts", "faults", "log", "mains"} & set(read.sections)
    told = plan_facts.facts(made)
    assert told["build"] is told["readings"] is told["faults"] is None
    if made.stops:
        assert "no circuit and no parts" in read.text and "electrically skilled person" in read.text
        assert "broken" not in read.sections and "rules" not in read.sections
    for each in [*made.stops, *made.nearest_breaks]:
        assert each.rule in read.text.lower() or each.rule in read.text
        assert not each.danger or each.danger in read.text


def test_a_build_that_stands_and_breaks_a_rule_is_taken_out_of_use(sheets):
    made, _, read = sheets("mine, broken")
    assert "Pull its plug" in read.text and "It bursts" in read.text
    verdict = {row[0]: row[-1] for row in read.tables["Rules"]}
    assert verdict["count"] == "✗ FAIL" and verdict["diode"] == "✓ pass"
    _, _, other = sheets("nothing meets it")
    assert "Pull its plug" not in other.text and "light: 1.42" in other.text.replace("\xa0", " ")
    assert "rules" not in other.sections and "full mains as the lowest setting" in other.text


@every_kept
def test_mains_readings_stand_apart_and_have_no_blanks(sheets, plan):
    _, html, read = sheets(plan)
    before, _, mains = html.partition('<section class="mains"')
    mains = mains.partition("</section>")[0]
    assert "For the competent person" in mains and "Covers closed" in mains
    assert 'class="blank"' not in mains and "plug-in" in mains
    assert "plug-in watts" not in before and "true-rms" not in before.lower()
    by = {row["name"]: row["by"] for row in plan_facts.facts(sheets(plan)[0])["readings"]}
    blanks = [row[0] for name in ("Unpowered readings", "Readings of the rehearsal")
              for row in read.tables[name][1:]]  # fmt: skip
    assert blanks == [name for name, who in by.items() if who != "competent person"]
    assert html.count('class="blank"') == len(blanks) > 10


@every_kept
def test_the_drawing_shows_the_string_where_it_stands(sheets, plan):
    made, html, read = sheets(plan)
    build = plan_facts.facts(made)["build"]
    live, neutral = build["live_count"], build["neutral_count"]
    assert live + neutral == build["count"] == made.best(1)[0].count
    # Half of it in each wire is what the rule of a touch asks for; behind a window, in the line.
    assert (neutral > 0) == (plan == "touchable")
    assert f"{live} ×" in html and f"{live} × " in read.text.replace("\xa0", " ")
    drawing = html.partition('class="circuit"')[2].partition("</section>")[0]
    assert drawing.count("<svg") == 1 and 'role="img"' in drawing


@every_kept
def test_the_strip_of_margins_agrees_with_the_table(sheets, plan):
    _, html, read = sheets(plan)
    rows = {row[0]: row[3] for row in read.tables["Rules"][1:]}
    strip = html.partition('aria-label="A strip of margins')[2].partition("</figure>")[0]
    told = re.findall(r"<span>\w  ([^<]*)</span><b>(?:[^<]*: )?([\d.]+)\W*times</b>", strip)
    assert {rule: rows[rule] for rule, _ in told} == dict(told) and len(told) > 5
    assert {rule for rule, margin in rows.items() if margin} == dict(told).keys()


WORDS = {"bridge": 4, "series_diode": 1, "diode_across": 1, "two_leds": 0}


@every_kept
def test_the_parts_are_those_of_the_build(sheets, plan):
    made, _, read = sheets(plan)
    best, brief = made.best(1)[0], made.brief
    rows = {row[1]: row for row in read.tables["Parts"][1:]}
    assert len(read.tables["Parts"][0]) == 4 and all(row[3] for row in rows.values())
    name = next(name for name in rows if name.startswith("resistor"))
    value = name.split()[-2:]
    assert rows[name][0] == str(best.count)
    scale = {"kΩ": 1e3, "MΩ": 1e6}[value[1]]
    assert float(value[0]) * scale == pytest.approx(best.ohms_each)
    assert "Flameproof" in rows[name][2] and f"{best.type_volts:g} V" in rows[name][2]
    leds = brief.led_count * (2 if best.circuit == "two_leds" else 1)
    assert rows[f"LED, {brief.led_colour}"][0] == str(leds)
    assert rows.get("silicon diode", ["0"])[0] == str(WORDS[best.circuit])
    assert "X2" in rows["capacitor"][3] and rows["capacitor"][0] == "0"


@pytest.mark.parametrize(
    ("change", "has_to"),
    [
        ({}, False),
        ({"bin_surge_rated": True}, True),  # then no rule asks, so the part has to keep it
        ({"bin_volts": (200.0, 200.0), "bin_most": 3}, True),  # the rule says caution
    ],
)
def test_impulses_are_asked_for_where_the_plan_rests_on_it(change, has_to):
    plan = verdicts.plan(Brief(**change))
    html = " ".join("".join(sizing_sheet.pieces(plan, [])).split())
    assert ("has to rate it for impulses" in html) == has_to
    assert ("is better still" in html) != has_to


ITEMS = sum(question.danger for question in bank().values())


class TestDangerItems:
    NAMES = [name for name, _ in danger_items.danger_items()]

    def answered(self, session, *ids, wrong=()):
        for name in ids:
            question = bank()[name]
            numbers = session.draw(name).numbers
            answer = question.kind.model(numbers)
            if name in wrong:
                answer = ",".join(reversed(answer.split(","))) if "," in answer else "a b c d"
            session.answer(name, answer)

    def test_they_are_those_of_all_lessons(self):
        dangers = [q.id for q in bank().values() if q.danger]
        assert [name.partition(":")[0] for name in self.NAMES] == dangers
        assert {"start-2", "safe-7", "dim-16", "better-16"} < set(dangers)

    def test_a_log_with_open_items_says_which(self, tmp_path):
        store = DiskStore(tmp_path)
        store.save(Settings("BENCH-07", "wick"))
        session = Session(Settings("BENCH-07", "wick"), store)
        self.answered(session, "safe-7", "safe-8", "fail-6")
        passed = {name.partition(":")[0] for name, ok in
                  danger_items.of_learner("BENCH-07", store)[1] if ok}  # fmt: skip
        assert passed == {"safe-7", "safe-8", "fail-6"}
        plan = verdicts.plan(Brief())
        items = danger_items.of_learner("BENCH-07", store)[1]
        html = "".join(sizing_sheet.pieces(plan, items, "BENCH-07"))
        shown = re.findall(r"<li><b>(. \w+)</b> ([a-z]+-\d+)", html.replace("\n", " "))
        assert {name: said == "✓ passed" for said, name in shown} == {
            name.partition(":")[0]: ok for name, ok in items
        }
        assert "From the answers of BENCH-07" in html

    def test_a_wrong_first_answer_leaves_it_open_whatever_follows_in_that_draw(self):
        store = MemoryStore()
        session = Session(Settings("BENCH-07", "wick"), store)
        self.answered(session, "safe-7", wrong={"safe-7"})
        self.answered(session, "safe-7")
        assert not any(ok for _, ok in danger_items.of_learner("BENCH-07", store)[1])

    def test_an_answer_under_another_class_word_or_edition_counts_for_nothing(self):
        store = MemoryStore()
        self.answered(Session(Settings("BENCH-07", "wick"), store), "safe-7")
        lines = store.log("BENCH-07").lines()[0]
        assert sum(ok for _, ok in danger_items.danger_items(lines, "wick")) == 1
        assert not any(ok for _, ok in danger_items.danger_items(lines, "other"))
        older = [replace(line, edition=line.edition - 1) for line in lines]
        assert not any(ok for _, ok in danger_items.danger_items(older, "wick"))
        store.save(Settings("BENCH-07", "other"))
        assert not any(ok for _, ok in danger_items.of_learner("BENCH-07", store)[1])

    def test_a_name_from_outside_stays_text(self):
        items = [('<img src="x">\u202e', True)]
        html = "".join(sizing_sheet.pieces(PLANS["stopped"](), items, "<b>"))
        assert "<img" not in html and "&lt;img" in html and "\\u202e" in html
        assert "answers of &lt;b&gt;" in html


@pytest.mark.parametrize(
    ("limit", "said"),
    [(5e-3, "5 mA"), (60e-3, "20 mA")],
    ids=["limit: the LED's own", "limit: 20 mA, rule of this course"],
)
def test_the_rehearsal_is_limited_to_what_the_led_stands_and_never_above_20_ma(limit, said):
    plan = verdicts.plan(Brief(led_limit=limit))
    text = Text("".join(sizing_sheet.pieces(plan, []))).text.replace("\xa0", " ")
    assert f"24 V at most, the limit on its current set to {said} or less" in text


def test_of_what_is_compared_alone_no_sheet_is_made():
    brief = Brief(
        dimmer_edge="none", led_limit=1e-4, bin_smallest=100e3, bin_largest=330e3, bin_most=3,
        bin_series="E6", seen_distance=1.0,
    )  # fmt: skip
    plan = verdicts.plan(brief)
    assert plan.kept and plan.best(1)[0].circuit == "neon"
    told, html = plan_facts.facts(plan), "".join(sizing_sheet.pieces(plan, []))
    assert told["build"] is told["readings"] is None
    assert "compared alone, and no sheet is made of it" in html and "breaks a rule" not in html


def test_what_was_taken_for_unknown_or_left_out_is_listed_with_its_value():
    text = to_toml(Brief()).replace('power = "90 W"\n', "").replace('touch = "', '#"')
    brief = from_toml(text)
    told = {one["field"]: one for one in plan_facts.facts(verdicts.plan(brief))["assumed"]}
    assert told["power in [heater]"]["taken"] == "90 W" and told["power in [heater]"]["left_out"]
    assert told["touch in [box]"]["taken"] == "touchable"
    # By hand: 230 V and 10 % either way (IEC 60038); a usual snubber of 100 nF; a red LED of 1.9 V.
    values = {name: one["value"] for name, one in told.items() if one["of"]}
    assert values == pytest.approx({
        "lowest in [supply]": 207.0, "highest in [supply]": 253.0,
        "suppression in [dimmer]": 100e-9, "drop in [led]": 1.9,
    })  # fmt: skip
    known = Brief(supply_lowest=200.0, supply_highest=260.0, dimmer_suppression=0.0, led_drop=2.0)
    assert plan_facts.facts(verdicts.plan(known))["assumed"] == []
    html = "".join(sizing_sheet.pieces(verdicts.plan(known), []))
    assert "Every field of the brief was given." in html


@pytest.fixture(scope="module")
def held(tmp_path_factory):
    """From a plan's name to what `size --json --sheet` says: data, sheet, brief, page."""
    folder, made = tmp_path_factory.mktemp("sheet"), {}

    def read(name):
        if name not in made:
            plan, path = PLANS[name](), folder / "brief.toml"
            path.write_text(own.whole(plan), encoding="utf-8")
            page = folder / "sheet.html"
            words = ["size", str(path), "--json", "--sheet", str(page)]
            with redirect_stdout(StringIO()) as said:
                assert main(words) == 0
            data = json.loads(said.getvalue())
            read_again = Text(page.read_text("utf-8"))
            made[name] = data, data["sheet"], from_toml(data["brief"]), read_again
        return made[name]

    return read


class TestFiguresASecondWay:
    """From the JSON of the command: its brief and build, then sums that share nothing with ours."""

    @every_kept
    def test_warm_up(self, held, plan):
        _, sheet, brief, read = held(plan)
        warm, build = sheet["warm_up"], sheet["build"]
        high = sqrt(2.0) * brief.high.volts_rms
        off = brief.bin_tolerance / 100.0
        least = max(brief.led_volts - 0.2 * brief.led_count, 0.0)
        hottest = most = 0.0
        for hot, others in ((1 - off, 1 - off), (1 + off, 1 + off), (1 + off, 1 - off)):
            whole = build["ohms_each"] * (hot + (build["count"] - 1) * others)
            for led in (least, brief.led_volts + 0.2 * brief.led_count):
                at = slowly.point(brief, build["circuit"], "none", whole, high, led, pi)
                hottest = max(hottest, at["string"] * hot * build["ohms_each"] / whole)
                most = max(most, at["all"])
        assert warm["watts_each"] == pytest.approx(hottest, rel=1e-6)
        assert warm["watts"] == pytest.approx(most, rel=1e-6)
        long, wide, high = brief.box_length, brief.box_width, brief.box_height
        faces = sorted([long * wide, long * high, wide * high])
        inside = brief.box_air + most / (4.0 * (2 * faces[0] + 2 * faces[1] + faces[2]))
        assert warm["inside_celsius"] == pytest.approx(inside, abs=1e-4)
        assert warm["outside_celsius"] == pytest.approx((inside + brief.box_air) / 2, abs=1e-4)
        rise = hottest * 85.0 / build["rated_watts"]
        for minutes, celsius in warm["celsius_after"].items():
            after = inside + rise * (1 - exp(-60.0 * float(minutes) / 120.0))
            assert celsius == pytest.approx(after, abs=1e-3)
        settled = 120.0 * log(rise) if rise > 1.0 else 0.0
        assert warm["settled_seconds"] == pytest.approx(settled, abs=1e-2)
        last = read.tables["Hottest resistor after switching on"][1][-1]
        assert float(last.split()[0]) == pytest.approx(inside + rise, abs=0.06)

    @every_kept
    def test_rules(self, held, plan):
        """Each figure on the page is that of the JSON, rounded; verdicts by the slow twin."""
        data, sheet, brief, read = held(plan)
        build = sheet["build"]
        parts = build["circuit"], build["ohms_each"], build["count"]
        assert slowly.broken(brief, *parts, build["rated_watts"], build["type_volts"]) == set()
        rows = {row[0]: row for row in read.tables["Rules"][1:]}
        findings = data["best"][0]["findings"]
        assert {rule["rule"].partition(",")[0] for rule in sheet["rules"]} == {
            finding["rule"] for finding in findings
        }
        for rule in sheet["rules"]:
            _, figure, limit, margin, verdict = rows[rule["rule"]]
            said, whose = verdict.split(",")[0], bool(rule["not_yours"])
            assert said.split()[-1] == rule["verdict"] and ("not yours" in verdict) == whose
            for shown, value in ((figure, rule["figure"]), (limit, rule["limit"])):
                if shown:
                    number, _, unit = shown.replace("−", "-").partition(" ")
                    scale = {"m": 1e-3, "µ": 1e-6, "k": 1e3, "n": 1e-9}.get(unit[:-1], 1.0)
                    assert float(number) * scale == pytest.approx(value, rel=5.1e-3, abs=1e-12)
            if margin:
                assert float(margin) == pytest.approx(rule["margin"], rel=0.05, abs=0.1)

    @every_kept
    def test_single_faults(self, held, plan):
        """Heat by quadrature over wirings of its own; the pot by V squared over R."""
        _, sheet, brief, read = held(plan)
        build, found = sheet["build"], {one["fault"]: one for one in sheet["faults"]}
        high = sqrt(2.0) * brief.high.volts_rms
        each, count = build["ohms_each"], build["count"]
        window = radians(brief.highest_degrees)

        def watts(state, ohms):
            at = slowly.point(brief, build["circuit"], state, ohms, high, brief.led_volts, window)
            return at["string"] * each / ohms

        named = {"led": "the LED", "second_led": "the second LED", "diode": "a diode"}
        states = slowly.ways(build["circuit"], brief.led_volts, 5.0)
        for state in set(states) - {"none", "half wave", "other half wave"}:
            part, _, how = state.partition(" ")
            one = found[f"{named[part]} {how or 'shorted'}"]
            assert one["watts_each"] == pytest.approx(watts(state, each * count), rel=1e-6)
        shorted = found["one resistor shorted"]
        assert shorted["watts_each"] == pytest.approx(watts("none", each * (count - 1)), rel=1e-6)
        drifted = 2.0 * watts("none", each * (count + 1))
        assert found["one resistor at twice its value"]["watts_each"] == pytest.approx(drifted)
        ohms = brief.supply_volts**2 / brief.heater_power
        for name, one in found.items():
            for degrees, heat in zip(
                (brief.lowest_degrees, brief.highest_degrees), one["heater_watts"], strict=True
            ):
                left = radians(degrees)
                share = (left - sin(2 * left) / 2) / pi
                if name.endswith((" half", "half only")):
                    share *= 0.5
                if name == "the dimmer shorted":
                    share = 1.0
                if name in ("the neutral wire open", "the pot's element open", "the dimmer open",
                            "the pot's cut-out open"):  # fmt: skip
                    share = 0.0
                assert heat == pytest.approx(share * brief.high.volts_rms**2 / ohms, rel=1e-6)
        assert found["the neutral wire open"]["light_highest"] == "dark"
        assert found["the pot's element open"]["light_lowest"] == "as before"
        rows = {row[0]: row for row in read.tables["Single faults"][1:]}
        assert set(rows) == set(found) and all(row[-1] for row in rows.values())
        assert rows["the neutral wire open"][-1].startswith("Pull the plug")
        assert "Lit over a cold pot" in rows["the pot's element open"][-1]

    @every_kept
    def test_mains_predictions(self, held, plan):
        """Phase control in closed form: published in many books, such as Rashid's."""
        _, sheet, brief, read = held(plan)
        by_name = {row["name"]: row for row in sheet["readings"]}
        rows = read.tables["Readings on mains"][1:]
        assert len(rows) == len(sheet["settings"]) == (5 if brief.cuts else 1)
        lets = np.linspace(brief.lowest_degrees, brief.highest_degrees, len(rows))
        volts = brief.supply_volts
        for number, (row, degrees) in enumerate(zip(rows, lets, strict=True), 1):
            left = radians(degrees)
            share = (left - sin(2 * left) / 2) / pi
            true = by_name[f"setting {number}, true rms"]
            assert true["value"] == pytest.approx(volts * sqrt(share), rel=1e-6)
            average = by_name[f"setting {number}, average"]
            assert average["value"] == pytest.approx(volts * (1 - cos(left)) / 2, rel=1e-6)
            heat = by_name[f"setting {number}, watts"]
            assert heat["value"] == pytest.approx(brief.heater_power * share, rel=0.02)
            for one, shown in zip((heat, true, average), row[3:], strict=True):
                assert one["low"] < one["value"] < one["high"]
                half = 2.0 * one["standard"]
                assert one["high"] - one["value"] == pytest.approx(half)
                assert float(shown.split()[0]) == pytest.approx(one["value"], rel=6e-3)
            assert float(row[2].split()[0]) == pytest.approx(100 * share, rel=6e-3)

    @every_kept
    def test_rehearsal(self, held, plan):
        """Ohm's law by the printed values; what stands on the page agrees with its own limits."""
        _, sheet, brief, read = held(plan)
        build = sheet["build"]
        by_name = {row["name"]: row for row in sheet["readings"]}
        assert by_name["R1"]["value"] == pytest.approx(build["ohms_each"])
        whole = by_name["whole string"]["value"]
        assert whole == pytest.approx(build["count"] * build["ohms_each"])
        string, one = by_name["24 V, string"]["value"], by_name["24 V, R1"]["value"]
        if build["neutral_count"]:  # each half is read with the meter beside it alone
            halves = [build[f"{wire}_count"] * build["ohms_each"] for wire in ("live", "neutral")]
            beside = [1.0 / (1.0 / half + 1e-7) for half in halves]
            string /= sum(b / (b + whole - h) for b, h in zip(beside, halves, strict=True))
        # Its own 10 megohm load a meter's reading across one more than across all.
        loaded = 1.0 / (1.0 / build["ohms_each"] + 1e-7)
        share = loaded / (loaded + (build["count"] - 1) * build["ohms_each"])
        assert one == pytest.approx(share * string, rel=3e-3)
        drops = {"bridge": 2, "series_diode": 1}.get(build["circuit"], 0)
        left = 24.0 - string - by_name["24 V, LED"]["value"]
        assert left == pytest.approx(0.5 * drops, abs=0.15 * drops + 0.1)
        shown = [row for name in ("Unpowered readings", "Readings of the rehearsal")
                 for row in read.tables[name][1:]]  # fmt: skip
        told = [row for row in sheet["readings"] if row["by"] != "competent person"]
        assert [row[0] for row in shown] == [row["name"] for row in told]
        for row, one in zip(shown, told, strict=True):
            if one["value"] is None:
                assert row[3] == row[4] == "OL"
        assert "leads to metal" in by_name and by_name["leads to metal"]["value"] is None


class TestTheCommand:
    @pytest.fixture
    def brief(self, tmp_path):
        path = tmp_path / "brief.toml"
        path.write_text(to_toml(Brief()), encoding="utf-8")
        return path

    def test_it_writes_a_sheet_and_replaces_only_one_of_ours(self, brief, tmp_path, capsys):
        out = tmp_path / "sheet.html"
        assert main(["size", str(brief), "--sheet", str(out)]) == 0
        said = capsys.readouterr().out
        assert said.startswith(STAMP) and "Sizing sheet written" in said
        assert f"open: {ITEMS} of {ITEMS}" in said
        assert out.read_text("utf-8").startswith("<!DOCTYPE html>")
        assert main(["size", str(brief), "--sheet", str(out)]) == 0
        assert "Sizing sheet replaced" in capsys.readouterr().out
        assert sorted(path.name for path in tmp_path.iterdir()) == ["brief.toml", "sheet.html"]

    @pytest.mark.parametrize("there", [b"my notes", b"", b"<!DOCTYPE html>\n<title>Sizing sheet"])
    def test_what_is_no_sheet_stays_and_that_is_said(self, brief, tmp_path, capsys, there):
        out = tmp_path / "notes.html"
        out.write_bytes(there)
        assert main(["size", str(brief), "--sheet", str(out)]) == 2
        said, error = capsys.readouterr()
        assert said == "" and out.read_bytes() == there
        assert "no sizing sheet has this name" in error and "another name" in error

    def test_a_folder_or_no_folder_is_said(self, brief, tmp_path, capsys):
        for out in (tmp_path, tmp_path / "none" / "sheet.html"):
            assert main(["size", str(brief), "--sheet", str(out)]) == 2
            assert "could not be written" in capsys.readouterr().err

    def test_whose_danger_items(self, brief, tmp_path, capsys, monkeypatch):
        monkeypatch.setenv("CANDLE_WORKSHOP_ANSWERS", str(tmp_path / "answers"))
        store = DiskStore(tmp_path / "answers")
        session = Session(Settings("BENCH-07", "wick"), store)
        TestDangerItems().answered(session, "safe-7")
        out = str(tmp_path / "sheet.html")
        assert main(["size", str(brief), "--sheet", out, "--learner", "bench-07"]) == 0
        assert f"open: {ITEMS - 1} of {ITEMS}" in capsys.readouterr().out
        assert main(["size", str(brief), "--sheet", out, "--learner", "x y"]) == 2
        assert "learner id" in capsys.readouterr().err
        assert main(["size", str(brief), "--sheet", out, "--learner", "WORKSHOP"]) == 2
        assert "published" in capsys.readouterr().err


@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=SUPPLIES)
def test_property_every_supply_has_its_sheet(supply):
    brief = Brief(supply_volts=supply.volts_rms, supply_hertz=supply.hertz)
    html = "".join(sizing_sheet.pieces(verdicts.plan(brief), danger_items.danger_items()))
    assert f"{supply.volts_rms:g}\xa0V {supply.hertz:g}\xa0Hz" in html or supply.name in html
    assert not re.search(r"\\[xu]|\b(?:nan|inf|None)\b", Text(html).text)


def test_limit_a_window_of_half_a_half_cycle_is_half_the_heat():
    """By symmetry about the crest."""
    plan = verdicts.plan(Brief(dimmer_lowest=90.0))
    assert plan_facts.facts(plan)["settings"][0]["heat_percent"] == pytest.approx(50.0)


def test_limit_a_sheet_is_written_within_two_seconds_of_work(tmp_path):
    """Of the processor, in a process of its own, the start of Python included."""
    brief = tmp_path / "brief.toml"
    brief.write_text(to_toml(Brief()), encoding="utf-8")
    program = (
        "import sys, time\nfrom helpers.__main__ import main\n"
        f"code = main(['size', {str(brief)!r}, '--sheet', {str(tmp_path / 'sheet.html')!r}])\n"
        "print(time.process_time(), file=sys.stderr)\nsys.exit(code)"
    )
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True)
    assert done.returncode == 0 and float(done.stderr.split()[-1]) < 2.0
