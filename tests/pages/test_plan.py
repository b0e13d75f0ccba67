"""A plan as a page: dangers first, the stamp always, nothing sized under a stop."""

import json
from dataclasses import replace

import pytest
from page_words import words

from helpers.exercises.bank import lessons
from helpers.exercises.wording import STAMP
from helpers.figures.words import NAMES, capital
from helpers.pages.plan import need_page, plan_page
from helpers.sizing import report, stops, verdicts
from helpers.sizing.brief import Brief, from_toml
from helpers.sizing.by_field import read_all
from helpers.sizing.fields import called

NONE = Brief(box_touch="touchable", bin_most=2, bin_series="E6")
BRIEFS = {
    "the workshop's": Brief(),
    "120 V": Brief(supply_volts=120.0, supply_hertz=60.0),
    "no candidate": NONE,
    "no dimmer": Brief(dimmer_edge="none"),
    "begun": read_all({"heater_power": "60 W"})[0],
}
STOPPED = {
    "fixed": Brief(use_connection="fixed"),
    "unsafe": Brief(heater_full_power_safe="no"),
    "overload": Brief(heater_power=290.0),
}


@pytest.mark.parametrize("brief", (BRIEFS | STOPPED).values(), ids=BRIEFS | STOPPED)
def test_every_page_has_the_stamp_the_need_and_its_brief_to_copy(brief):
    page = plan_page(verdicts.plan(brief))
    assert STAMP in page.plain() and "Need it be built at all?" in page.plain()
    code = next(line.text for line in page.lines if line.role == "code")
    assert from_toml(code) == replace(brief, left_out=())
    assert "nan" not in page.plain().lower().split()


@pytest.mark.parametrize("brief", STOPPED.values(), ids=STOPPED)
def test_under_a_stop_its_danger_is_first_and_no_circuit_is_named(brief):
    page = plan_page(verdicts.plan(brief))
    assert page.lines[0].role == "danger" and "Danger:" in page.lines[0].text
    assert not page.picture and not page.picture.count("svg")
    assert not any(f"{capital(name)}, " in page.plain() for name in NAMES.values())


def test_a_first_candidate_that_could_kill_says_so_before_anything_else():
    page = plan_page(verdicts.plan(Brief(box_touch="touchable")), quick=True)
    assert page.lines[0].role == "danger" and "can be killed" in page.lines[0].text
    assert "the first breaks touch" in page.lines[0].text
    assert not any(line.role == "danger" for line in plan_page(verdicts.plan(Brief())).lines)


def test_the_best_three_stand_with_what_puts_them_behind_and_every_rule_is_folded():
    plan = verdicts.plan(Brief())
    page, best = plan_page(plan), plan.best(3)
    said = page.plain()
    for place, each in enumerate(best, 1):
        assert f"{place}. {capital(NAMES[each.circuit])}" in said
    assert best[1].why_behind(best[0]) in said
    folded = " ".join(line.text for line in page.lines if line.role == "folded")
    assert all(capital(finding.rule) in folded for finding in best[0].findings)
    visible = [line.text for line in page.lines if line.role not in ("folded", "within", "code")]
    for finding in report.one_a_rule(best[0].findings):  # no caution stands in a fold alone
        assert finding.verdict != "caution" or any(finding.reason in text for text in visible)
    assert all(text in visible for text in verdicts.REMAINS)
    assert page.picture.count("<figure") == 2 and words(page.html())


def test_whose_parts_a_plan_stands_on_stands_in_plain_sight_above_the_ranking():
    said = {"use_connection": "plug-in", "heater_full_power_safe": "yes", "dimmer_rated": "300 W",
            "dimmer_edge": "leading", "box_touch": "closed window", "seen_lux": "?"}  # fmt: skip
    lines = plan_page(verdicts.plan(read_all(said)[0]), quick=True).lines
    roles = [line.role for line in lines]
    above = lines[: roles.index("heading")]
    assert "not yours: 33 of 43" in above[-2].text and "lux" not in above[-1].text
    assert "light where it stands 2000 lx" in above[-1].text
    assert {line.role for line in above[-3:]} == {"caution"}
    assert "with parts that are not all yours" in lines[roles.index("heading")].text
    assert any(line.text.startswith("Diode, pass, not yours: ") for line in lines)
    assert " in [" not in " ".join(line.text for line in lines if line.role != "code")


def test_where_nothing_passes_what_is_broken_and_what_would_help_stand():
    plan = verdicts.plan(NONE)
    quick, page = plan_page(plan, quick=True).plain(), plan_page(plan).plain()
    assert "each breaks a rule" in page
    assert f"misses by least, {report.nearest(plan)}, breaks" in page
    assert "being tried" in quick and "being tried" not in page
    assert all(change in page for change in plan.helps)
    # Second way: the first change that is named leaves a candidate, one that is not leaves none.
    for text, change in verdicts.CHANGES:
        tried = replace(NONE, **change(NONE))
        assert (text in plan.helps) == (tried != NONE and verdicts.plan(tried).kept > 0)


def test_the_quick_page_has_the_table_and_one_picture():
    page = plan_page(verdicts.plan(Brief()), quick=True)
    assert "1. Bridge" in page.plain() and page.picture.count("<figure") == 1


class TestNeed:
    def test_what_is_open_ends_nowhere_and_is_named(self):
        page = need_page(read_all({})[0])
        assert "Until then no end is named" in page.plain()
        assert not any(line.role in ("danger", "verdict") for line in page.lines)
        assert all(called(name) in page.plain() for name in stops.ASKED)

    def test_a_danger_that_was_answered_is_said_before_the_rest_is(self):
        page = need_page(read_all({"use_connection": "fixed"})[0])
        assert page.lines[0].role == "danger" and "wall plate" in page.lines[0].text

    def test_no_dimmer_needs_no_rating_of_one(self):
        answered = {"use_connection": "plug-in", "heater_power": "90 W", "use_trouble": "none",
                    "heater_full_power_safe": "yes", "use_by_others": "no"}  # fmt: skip
        without = need_page(read_all(answered | {"dimmer_edge": "none"})[0])
        assert "a light can be planned" in without.plain()
        assert (
            called("dimmer_rated")
            in need_page(read_all(answered | {"dimmer_edge": "leading"})[0]).plain()
        )

    @pytest.mark.parametrize("end", stops.ENDS)
    def test_every_end_is_reached(self, end):
        change = {
            "person": {"use_connection": "unknown"},
            "on": {"use_trouble": "none", "use_by_others": False},
            "indicator": {"use_trouble": "none"},
        }.get(end, {"use_trouble": end})
        page = need_page(Brief(**change))
        assert f"questions end {stops.ENDS[end]['then']}." in page.plain()
        assert STAMP in page.plain()

    def test_the_lessons_that_stand_are_named(self):
        numbers = list(lessons())
        assert f"01 first, then 02 to {numbers[-1]}." in need_page(Brief()).plain()

    def test_lesson_00_has_the_same_ends_as_a_table_that_needs_no_kernel(self, root):
        text = (root / "lessons" / "00-start-here.ipynb").read_text("utf-8")
        cell = next(c for c in json.loads(text)["cells"] if c["id"] == "need")
        for each in stops.ENDS.values():
            end = each["then"].removeprefix("at ").removeprefix("with ")
            assert f"| {capital(each['when'])} | {end} |\n" in cell["source"]
