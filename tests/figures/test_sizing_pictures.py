"""The two pictures of sizing: what they say, by findings and verdicts made here by hand."""

import re

import numpy as np
import pytest

from helpers.figures import margins, value_map
from helpers.sizing.rules import Finding


def finding(rule, figure, limit, verdict="pass", unit="W", **more):
    return Finding(rule, verdict, figure, limit, unit, "A sum.", "Made up.", **more)


def words_of(drawn):
    return drawn.words.replace("\u00a0", " ")


def test_second_way_the_tightest_of_each_rule_is_named_with_its_ratio():
    """1 W over 0.8 W is 1.25, told as 1.2 and never as 1.3; 3 m where 2 m is wanted is 1.5."""
    drawn = margins.strip([
        finding("heat", 0.2, 1.0), finding("heat", 0.8, 1.0, after="dropper"),
        finding("light", 3.0, 2.0, unit="m", least=True),
    ])  # fmt: skip
    assert words_of(drawn).startswith(
        "The tightest is heat, with one resistor shorted: 1.2 times what its rule asks for. "
        "On the strip, tightest first: A heat, with one resistor shorted: 1.2 times; "
        "B light: 1.5 times."
    )
    assert "5 times" not in drawn.words.replace("1.5 times", "")


def test_a_danger_is_said_first_and_what_breaks_has_a_cross_whatever_its_ratio():
    drawn = margins.strip([
        finding("light", 1.0, 3.0, "fail", "m", least=True),
        finding("count", 1.0, 2.0, "fail", "-", danger="it bursts."),
        finding("film", 200.0, 155.0, "fail", "°C"), finding("volts", 100.0, 300.0, unit="V"),
    ])  # fmt: skip
    assert drawn.finding == "Danger: 3 rules are broken, first count. It bursts."
    assert len(re.findall("×[A-D]<", drawn.picture)) == 3


def test_what_makes_no_ratio_is_told_in_words_and_never_left_out():
    drawn = margins.strip([
        finding("heat", 0.5, 1.0), finding("air", 84.0, 85.0, "caution", "°C"),
        finding("box", 60.0, 48.0, "caution", "°C"), finding("distances", 6e-3, 6e-3, "caution"),
        finding("touch", 0.0, 0.0, unit="-"), finding("impulse", 900.0, 800.0, "caution", "V"),
    ])  # fmt: skip
    assert words_of(drawn).endswith(
        "Without a ratio: air (caution); box (caution); distances (caution); touch (pass); "
        "impulse (caution)."
    )


def test_limit_a_pass_at_its_limit_and_a_caution_just_within_stand_on_the_strip():
    drawn = margins.strip([
        finding("heat", 1.0, 1.0), finding("LED", 0.0199, 0.02, "caution", "A"),
    ])  # fmt: skip
    assert "A heat: 1 times" in words_of(drawn)
    assert "B LED: a caution, so near: 1 times" in words_of(drawn)


def test_property_every_finding_on_the_strip_lies_left_of_those_with_more_room():
    ratios = [1.05, 1.3, 1.8, 2.5, 4.0, 30.0]
    drawn = margins.strip([finding(f"rule {n}", 1.0, each) for n, each in enumerate(ratios)])
    places = dict(re.findall(r'<text x="([\d.]+)%"[^>]*>([A-F])<', drawn.picture))
    in_order = [float(place) for place, _ in sorted(places.items(), key=lambda pair: pair[1])]
    assert in_order == sorted(in_order) and len(in_order) == 6


def test_a_candidate_without_findings_is_refused():
    with pytest.raises(ValueError, match="findings was read as empty"):
        margins.strip([])


BROKEN = [["heat", "", "", "light"], ["heat", "", "light", "light"], ["heat", *["light"] * 3]]
OHMS, HEAT = [1e4, 3.9e4, 1e5, 1e6], [100.0, 50.0, 5.0]


@pytest.mark.parametrize(
    ("lowest", "said"),
    [
        (100.0, "Down to 100 % of the heat, 39 kΩ to 100 kΩ keep every rule."),
        (50.0, "Down to 50 % of the heat, 39 kΩ keeps every rule."),
        (5.0, "Down to 5 % of the heat, no value that is shown keeps every rule."),
    ],
)
def test_the_map_says_what_is_left_at_the_lowest_setting(lowest, said):
    drawn = value_map.value_by_setting(OHMS, HEAT, BROKEN, 3.9e4, lowest)
    assert drawn.finding.replace("\u00a0", " ") == said
    assert "down to 5 % 10 kΩ break heat, 39 kΩ to 1 MΩ break light" in words_of(drawn)


def test_the_map_says_each_rule_by_a_letter_of_its_own():
    broken = [["heat", "LED", "", "light"]]
    drawn = value_map.value_by_setting(OHMS, [100.0], broken, 1e5, 100.0)
    assert "H breaks heat; L breaks LED; I breaks light" in drawn.picture
    assert [len(re.findall(f">{letter}</text>", drawn.picture)) for letter in "HLI"] == [1, 1, 1]


def test_no_letter_stands_where_every_rule_is_kept():
    drawn = value_map.value_by_setting(OHMS, [100.0], [[""] * 4], 1e5, 100.0)
    assert not re.findall(">[A-Z]</text>", drawn.picture)


def test_a_map_whose_sides_are_swapped_is_refused():
    with pytest.raises(ValueError, match=r"\(4, 3\); it must be 3 settings by 4 values"):
        value_map.value_by_setting(OHMS, HEAT, np.transpose(BROKEN), 1e5, 5.0)
