"""The rules of a safe dropper: by hand, at their limits, and what may never turn a fail round."""

from math import pi, sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from helpers.physics import circuits, faults, ratings
from helpers.physics.mains import SUPPLIES, Supply
from helpers.quantities import GLOSSARY
from helpers.sizing import rules

EUROPE = Supply(230.0, 50.0)
DERATING = [(70.0, 1.0), (85.0, 70 / 85), (112.5, 0.5), (155.0, 0.0)]  # IEC 60115-1


def by(findings, rule, after):
    return next(f for f in findings if (f.rule, f.after) == (rule, after))


def failed(findings):
    return {(f.rule, f.after) for f in findings if f.verdict == "fail"}


# --- the case that is told everywhere: two of 82 kilohm, 0.25 W, behind a diode on 230 V


def test_second_way_two_of_82_kilohm_of_a_quarter_watt_fail_after_one_short():
    """253² / (2 × 82 000) = 390 mW, less 2 % for the drops.

    The mean of (crest sin - drop)² over one half-cycle of two is crest²/4 - 2 crest drop/pi +
    drop²/2, but for the third power of the drop.
    """
    found = rules.dropper("series_diode", EUROPE, 82e3, 2, 0.25, 300.0, 40.0)
    left = by(found, "heat", "dropper")
    crest, drop = 253.0 * sqrt(2), 2.7
    square = crest**2 / 4 - 2 * crest * drop / pi + drop**2 / 2
    assert left.figure == pytest.approx(square / 82e3, rel=1e-6)
    assert left.figure == pytest.approx(0.383, abs=5e-4) and left.limit == 0.25
    assert failed(found) == {("heat", "dropper")}
    assert left.danger and not rules.passes(found)
    sound = by(found, "heat", "none")
    assert sound.verdict == "pass"
    assert sound.figure == pytest.approx(left.figure / 4) and sound.limit == 0.125


def test_second_way_half_a_watt_passes_and_the_led_may_die_enclosed():
    """With the diode shorted, about 358 V less 5 V push (358 - 5) / 164 000 A backwards."""
    found = rules.dropper("series_diode", EUROPE, 82e3, 2, 0.5, 300.0, 40.0)
    assert rules.passes(found)
    caution = rules.worst(found)
    assert (caution.rule, caution.after, caution.verdict) == ("LED", "diode", "caution")
    assert caution.figure == pytest.approx((253 * sqrt(2) - 5.0) / 164e3)
    assert "enclosed" in caution.reason and not caution.danger


def test_second_way_two_must_each_stand_the_whole_mains_and_three_half_of_it():
    two = rules.dropper("series_diode", EUROPE, 82e3, 2, 1.0, 250.0, 40.0)
    assert failed(two) == {("volts", "dropper")}
    assert by(two, "volts", "dropper").figure == pytest.approx(253.0)
    three = rules.dropper("series_diode", EUROPE, 56e3, 3, 1.0, 250.0, 40.0)
    assert rules.passes(three)
    assert by(three, "volts", "dropper").figure == pytest.approx(126.5)


# --- every circuit and short: the figures are those of physics, the limits those of the sheet


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=lambda s: s.name)
def test_property_every_short_is_judged_once_at_the_highest_mains(circuit, supply):
    found = rules.dropper(circuit, supply, 39e3, 3, 0.6, 200.0, 85.0)
    high = Supply(1.1 * supply.volts_rms, supply.hertz)  # IEC 60038: ten per cent above its name
    for fault in ("none", *faults.shorts(circuit)):
        left = faults.state(circuit, high, ohms_each=39e3, count=3, fault=fault)
        heats = [f for f in found if (f.rule, f.after) == ("heat", fault)]
        assert len(heats) == 1
        assert heats[0].figure == pytest.approx(left.watts_each)
        share = 0.5 if fault == "none" else 1.0
        assert heats[0].limit == pytest.approx(share * 0.6 * 70 / 85)
        number = 3 - (fault == "dropper")
        assert by(found, "volts", fault).figure == pytest.approx(high.volts_rms / number)
    assert len(found) == len({(f.rule, f.after) for f in found})


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
@pytest.mark.parametrize("supply", SUPPLIES.values(), ids=lambda s: s.name)
def test_property_a_single_dropper_fails_whatever_it_is_rated_for(circuit, supply):
    found = rules.dropper(circuit, supply, 1e6, 1, 5.0, 1e4, 20.0)
    assert failed(found) == {("count", "none")}
    assert "bursts" in rules.worst(found).danger


def test_limit_a_low_string_lights_the_led_too_much_after_a_short():
    """110 V on one of two 6.8 kilohm: (155.6 - 2.7) / 6800 = 22.5 mA, above 20 mA."""
    found = rules.dropper("series_diode", Supply(100.0, 50.0), 6.8e3, 2, 5.0, 200.0, 40.0)
    caution = by(found, "LED", "dropper")
    assert caution.verdict == "caution"
    assert caution.figure == pytest.approx((110 * sqrt(2) - 2.7) / 6800)


def test_second_way_a_bare_led_is_pushed_backwards_while_all_is_sound():
    """(358 - 5) / 164 000 A in every cycle; a diode in any place spares the LED."""
    bare = by(rules.dropper("resistor_only", EUROPE, 82e3, 2, 1.0, 300.0, 40.0), "LED", "none")
    assert bare.verdict == "caution" and "enclosed" in bare.reason
    assert bare.figure == pytest.approx((253 * sqrt(2) - 5.0) / 164e3)
    for circuit in set(circuits.CIRCUITS) - {"resistor_only"}:
        found = rules.dropper(circuit, EUROPE, 82e3, 2, 1.0, 300.0, 40.0)
        assert ("LED", "none") not in {(f.rule, f.after) for f in found}


# --- limits: at the limit passes, just above does not


@pytest.mark.parametrize(("air", "share"), DERATING[:3], ids=lambda v: f"limit: {v:.3g}")
@pytest.mark.parametrize(("after", "of_it"), [("none", 0.5), ("dropper", 1.0), ("diode", 1.0)])
def test_heat_at_its_limit_passes_and_just_above_fails(air, share, after, of_it):
    limit = of_it * ratings.derated_watts(0.5, air)
    assert limit == pytest.approx(of_it * share * 0.5)
    assert rules.heat(limit, 0.5, air, after).verdict == "pass"
    above = rules.heat(limit * (1 + 1e-12), 0.5, air, after)
    assert above.verdict == "fail"
    assert bool(above.danger) == (of_it == 1.0)  # over half is no fire yet, over all of it is one
    assert rules.heat(share * 0.5 * 1.001, 0.5, air).danger


def test_limit_nothing_is_left_of_a_rating_at_the_end_of_its_line():
    assert rules.heat(1e-9, 5.0, 155.0).verdict == "fail"
    assert rules.heat(0.0, 5.0, 155.0).verdict == "pass"


def test_limit_volts_led_and_diode():
    assert rules.volts(200.0, 200.0).verdict == "pass"
    assert rules.volts(200.0 * (1 + 1e-12), 200.0).danger
    assert rules.led(0.020).verdict == "pass" and rules.led(0.020001).danger
    assert rules.diode(200.0, 400.0).verdict == "pass"
    room_gone = rules.diode(200.0, 399.0)
    assert room_gone.verdict == "fail" and not room_gone.danger
    assert rules.diode(200.0, 199.0).danger


def test_second_way_the_margin_says_how_often_the_figure_fits():
    assert rules.heat(0.05, 0.5, 70.0).margin == pytest.approx(5.0)
    assert rules.diode(100.0, 300.0).margin == pytest.approx(1.5)
    assert rules.heat(0.0, 0.5, 70.0).margin == float("inf")


# --- what may never turn a fail into a pass

STRINGS = {
    "circuit": st.sampled_from(sorted(circuits.CIRCUITS)),
    "each": st.sampled_from((10e3, 22e3, 33e3, 47e3, 82e3, 120e3)),
    "count": st.integers(1, 5),
    "rated": st.sampled_from(ratings.COMMON_WATTS),
    "type_volts": st.sampled_from((100.0, 200.0, 300.0)),
}


@settings(deadline=None, derandomize=True, max_examples=200)
@given(
    **STRINGS,
    volts=st.floats(90.0, 250.0),
    more=st.floats(1.0, 1.3),
    air=st.floats(20.0, 150.0),
    warmer=st.floats(0.0, 40.0),
)
def test_property_higher_mains_or_warmer_air_never_turn_a_fail_into_a_pass(
    circuit, each, count, rated, type_volts, volts, more, air, warmer
):
    def failing(volts, air):
        part = (each, count, rated, type_volts, air)
        return failed(rules.dropper(circuit, Supply(volts, 50.0), *part))

    before = failing(volts, air)
    assert before <= failing(volts * more, air)
    assert before <= failing(volts, air + warmer)


# --- what findings say


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
def test_each_finding_says_what_was_computed_its_limit_and_its_source(circuit):
    for count in (1, 2):
        for f in rules.dropper(circuit, EUROPE, 10e3, count, 0.25, 200.0, 85.0):
            assert f.verdict in rules.VERDICTS and f.source and f.reason.endswith(".")
            assert f.reason[0].isupper() or f.reason[0].isdigit()
            assert not f.danger or f.verdict == "fail"
            assert ("Common practice, no source." in f.source) or "IEC" in f.source
            start = ". Danger: " if f.danger else ": "
            assert str(f).startswith(f.verdict.capitalize() + start)


def test_danger_comes_first_and_a_single_part_before_all():
    found = rules.dropper("series_diode", EUROPE, 10e3, 1, 0.25, 100.0, 85.0)
    assert rules.worst(found).rule == "count"
    over_half, too_hot = rules.heat(0.3, 0.5, 70.0), rules.heat(0.51, 0.5, 70.0)
    assert rules.worst([over_half, too_hot, rules.led(0.001)]) is too_hot
    assert rules.worst([rules.led(0.001), over_half]) is over_half


@pytest.mark.parametrize("air", [20.0, 85.0, 110.0])
@pytest.mark.parametrize("after", ["none", "dropper"])
def test_property_the_smallest_rating_passes_and_no_smaller_one_does(air, after):
    for watts in (0.01, 0.0625, 0.2, 0.26, 0.9):
        rated = rules.rating_for(watts, air, after)
        smaller = [each for each in ratings.COMMON_WATTS if each < rated]
        assert rules.heat(watts, rated, air, after).verdict == "pass"
        assert all(rules.heat(watts, each, air, after).verdict == "fail" for each in smaller)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: rules.heat(-0.1, 0.5, 70.0), "watts was read as -0.1 W"),
        (lambda: rules.volts(-1.0, 200.0), "volts_rms was read as -1 V"),
        (lambda: rules.led(-0.001), "amps_peak was read as -0.001 A"),
        (lambda: rules.diode(0.0, 400.0), "crest_volts was read as 0 V"),
        (lambda: rules.rating_for(3.0), "no common part of up to 5 W is enough"),
        (lambda: string_of(count=0), "count was read as 0 resistors"),
        (lambda: string_of(count=2.5), "count was read as 2.5; it must be a whole number"),
    ],
)
def test_what_cannot_be_is_refused(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def string_of(count):
    return rules.dropper("two_leds", EUROPE, 82e3, count, 0.5, 300.0, 40.0)


def test_a_reason_goes_on_in_small_letters_but_for_an_abbreviation():
    """Common practice, no source."""
    led = rules.Finding("LED", "pass", 1.0, 2.0, "mA", "LEDs stay cool.", "none")
    pot = rules.Finding("heat", "pass", 1.0, 2.0, "W", "The pot stays cool.", "none")
    assert [str(led), str(pot)] == ["Pass: LEDs stay cool.", "Pass: the pot stays cool."]


@pytest.mark.parametrize("rule", rules.RULES.values(), ids=rules.RULES)
def test_each_row_is_in_whole_sentences_and_its_names_are_known(rule):
    """What ends with a brace is a sentence that is put in, or none. A name of a source or danger
    that is misspelt would stand in the text as it is."""
    assert rule.says.endswith((".", "}")) and rule.source.endswith(".")
    assert not rule.danger or rule.danger.endswith(".")
    assert rule.of in ("", *GLOSSARY) and rule.over in ("fail", "caution")
    assert 0.0 <= rule.unsure < 1.0
