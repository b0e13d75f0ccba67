"""What the command `size` prints: stamp and caution always, the table, the data."""

import json
from dataclasses import replace

import pytest

from helpers.__main__ import main
from helpers.physics import mains
from helpers.sizing import report, verdicts
from helpers.sizing.brief import Brief, from_toml, to_toml

STAMP = (
    "Plan only. Not permission to build or connect: a competent person checks it first, under "
    "local rules."
)
BRIEFS = {
    "workshop": Brief(),
    "nothing meets it": Brief(seen_lux=20000.0),
    "stopped": Brief(use_connection="fixed"),
    "no dimmer": Brief(dimmer_edge="none"),
}


@pytest.fixture
def size(tmp_path, capsys):
    def run(brief, *words):
        path = tmp_path / "brief.toml"
        path.write_text(brief if isinstance(brief, str) else to_toml(brief), encoding="utf-8")
        code = main(["size", str(path), *words])
        said, error = capsys.readouterr()
        return code, said if "--json" in words else " ".join(said.split("\n")), error

    return run


@pytest.mark.parametrize("brief", BRIEFS.values(), ids=BRIEFS)
def test_stamp_and_caution_stand_first_and_the_stamp_last(size, brief):
    code, said, _ = size(brief)
    said = " ".join(said.split())
    start = f"{STAMP} Caution. Mains voltage can kill. Marks license nobody."
    assert code == 0 and said.startswith(start) and said.endswith(STAMP)
    places = [said.find(words) for words in (
        "Need it be built at all?", "A light switches nothing off.", "The brief", "Besides",
        "What remains for a competent person",
    )]  # fmt: skip
    assert places == sorted(places) and places[0] > 0


@pytest.mark.parametrize("brief", BRIEFS.values(), ids=BRIEFS)
def test_the_data_say_the_same_as_the_plan(size, brief):
    code, said, _ = size(brief, "--json")
    held, plan = json.loads(said), verdicts.plan(brief)
    assert code == 0 and held["stamp"] == STAMP and "caution" in held
    assert from_toml(held["brief"]) == brief
    assert (held["kept"], held["points"], held["listed"]) == (plan.kept, plan.points, 616)
    assert [stop["rule"] for stop in held["stops"]] == [stop.rule for stop in plan.stops]
    for one, told in zip(plan.best(), held["best"], strict=True):
        assert told["circuit"] == one.circuit and told["ohms_each"] == one.ohms_each
        assert [f["verdict"] for f in told["findings"]] == [f.verdict for f in one.findings]
    assert bool(held["broken"]) == (plan.kept == 0 and not plan.stops)


def test_what_a_file_leaves_out_is_said_with_what_was_taken(size):
    _, said, _ = size(to_toml(Brief()).replace('power = "90 W"\n', "").replace('touch = "', '#"'))
    words = " ".join(said.split())
    assert "Left out, and taken as: power in [heater] 90 W; touch in [box] unknown." in words
    assert "can be killed" in words
    assert "Left out" not in size(Brief())[1]


def test_the_second_says_why_it_is_not_the_first(size):
    _, said, _ = size(Brief())
    assert "Number 2 is behind by its heat: 0.51 W against 0.43 W." in " ".join(said.split())
    first, second, *_ = verdicts.plan(Brief()).best()
    assert second.why_behind(first) != first.why_behind(first)


def test_what_is_not_met_is_named_with_by_how_much_and_what_would_help(size):
    _, said, _ = size(BRIEFS["nothing meets it"])
    words = " ".join(said.split())
    assert "Every candidate breaks a rule." in words and "is the least, 0.47 of it: " in words
    assert "times as much light is wanted" in words
    assert "One change that would do: full mains as the lowest setting" in words


def test_a_build_as_it_is_gets_the_same_verdicts(size):
    code, said, _ = size(Brief(), "--mine", "series_diode", "82k", "1", "0.6 W", "300V")
    words = " ".join(said.split())
    assert code == 0 and "1 x 82 kΩ 0.6 W 300 V" in words
    assert "Danger: when the one resistor fails short, the LED is straight on the mains" in words
    _, said, _ = size(Brief(heater_power=290.0), "--mine", "bridge", "82k", "3", "0.6 W", "300V")
    assert "none was computed" in said and "start a fire" in said


@pytest.mark.parametrize(
    ("text", "words", "told"),
    [
        ("[led", (), "no TOML"),
        ("[led]\nfoo = 1", (), "foo in [led] is not known"),
        ('[box]\ntouch = "no"', (), "Write one of: closed window, touchable, unknown"),
        ("", ("--mine", "lamp", "1k", "2", "1W", "300V"), "circuit was read as 'lamp'"),
        ("", ("--mine", "bridge", "1 V", "2", "1W", "300V"), "unit of voltage"),
        ("", ("--mine", "bridge", "1k", "2.5", "1W", "300V"), "whole number"),
        ("", ("--mine", "bridge", "1k", "2", "0 W", "300V"), "ratings in [bin] was read as"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_is_said_and_ends_with_two(size, text, words, told):
    code, said, error = size(text, *words)
    assert (code, said) == (2, "") and told in error and "Traceback" not in error


def test_a_file_that_is_not_there_or_none_at_all_is_said(capsys, tmp_path):
    assert main(["size", str(tmp_path / "none.toml")]) == 2
    assert "could not be read" in capsys.readouterr().err
    assert main(["size"]) == 2
    assert "size --example" in capsys.readouterr().err


def test_the_example_is_the_workshops_brief_with_comments(capsys):
    assert main(["size", "--example"]) == 0
    said = capsys.readouterr().out
    assert from_toml(said) == Brief() and said.count("#") > 40 and STAMP in said


@pytest.mark.parametrize("supply", mains.SUPPLIES.values(), ids=lambda s: f"property: {s.name}")
def test_the_example_can_be_printed_for_every_supply(capsys, supply):
    assert main(["size", "--example", "--supply", supply.name]) == 0
    brief = from_toml(capsys.readouterr().out)
    assert (
        brief.supply == supply and replace(brief, supply_volts=230.0, supply_hertz=50.0) == Brief()
    )


def test_a_supply_that_is_not_known_is_answered_with_those_there_are(capsys):
    assert main(["size", "--example", "--supply", "12 V"]) == 2
    assert "There are: 230 V 50 Hz, 120 V 60 Hz" in capsys.readouterr().err


def test_by_how_much_says_the_factor_for_each_kind_of_limit():
    broken = verdicts.plan(Brief(bin_most=1, seen_lux=20000.0)).nearest_breaks
    told = {f.rule: report.by_how_much(f).replace("\xa0", " ") for f in broken}
    assert told["count"] == "1 where 2 is the least"
    assert "of it" in told["light"]
    # A fifth of the way asks for 25 times the light; 91 degrees are no times 85.
    light = replace(broken[-1], rule="light", least=True, figure=0.6, limit=3.0, unit="m")
    assert report.by_how_much(light).endswith("0.2 of it: 25 times as much light is wanted")
    warm = replace(light, rule="air", least=False, figure=91.0, limit=85.0, unit="°C")
    assert report.by_how_much(warm).endswith("is the most, 6 K too much")
    near = replace(warm, rule="volts", figure=253.0, limit=250.0, unit="V")
    assert report.by_how_much(near).replace("\xa0", " ").endswith("the most, 1.2 % too much")


def test_lines_are_the_same_at_every_run():
    brief = replace(Brief(), bin_series="E6")
    assert report.lines(verdicts.plan(brief)) == report.lines(verdicts.plan(brief))


def test_what_breaks_no_rule_is_counted_among_the_candidates():
    plan = verdicts.plan(Brief(bin_series="E6", bin_most=2, bin_smallest=33e3, bin_largest=330e3))
    kept = sum(not plan.candidate(place).failed for place in plan.order)  # second way: one by one
    said = f"With each rating of the bin: {len(plan.order)} candidates. {kept} break no rule."
    assert any(said in line for line in report.lines(plan))


@pytest.mark.parametrize("text, silent", [
    ('[heater]\npower = "60 W"', False),
    ('[supply]\nvolts = "240 V"', False),
    ('[supply]\nvolts = "120 V"\nhertz = "60 Hz"', True),
])  # fmt: skip
def test_a_supply_that_nobody_named_is_said_before_its_figures(text, silent):
    brief = from_toml(text)
    first = next(iter(report.in_short(brief)))
    assert first.startswith("Caution: nobody named the supply, so ") != silent
    assert brief.supply.name in first
