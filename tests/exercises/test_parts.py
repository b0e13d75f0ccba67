"""Judgements that belong to one question: parts by what they would do, dangers, order, truth.

Each is worked out here a second time, by hand or from first principles, with its source beside it.
"""

from itertools import pairwise, product
from math import acos, asin, degrees, exp, hypot, pi, sqrt
from types import SimpleNamespace

import numpy as np
import pytest
from questions import PARTS, of_each
from second_ways import (
    highest_volts,
    lesson_01,
    lesson_03,
    lesson_04,
    lesson_05,
    lesson_06,
    lowest_volts,
)

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises.bank import bank
from helpers.exercises.bank import lesson_09_on_the_bench as lesson_09_bank
from helpers.exercises.kinds import judged
from helpers.physics.mains import SUPPLIES
from helpers.sizing import rules

LED_LIMIT = 0.020  # [A], common practice, no source


# --- parts: right only if every rule is kept, dangerous only if something would burn or burst


def bench_dropper(n, ohms, watts):
    """An LED of 2 V within 20 mA and bright enough, and a rating of twice I²R."""
    amps, heat = (n.volts - 2.0) / ohms, (n.volts - 2.0) ** 2 / ohms
    right = n.least_amps <= amps <= LED_LIMIT and watts >= 2 * heat
    return right, amps > LED_LIMIT or watts < heat


def barrier(n, first, second, volts, watts):
    """One part shorted: 0.5 mA rms (IEC 61140), 0.7 mA peak (IEC 60335-1, 8.1.4) through 2 kΩ.

    The one that is left stands the whole mains and its whole heat, in air below 70 °C.
    """
    most, low = highest_volts(n.supply), 0.95 * min(first, second)
    amps, heat = most / (low + 2000.0), most**2 / low
    holds = amps <= 0.5e-3 and amps * sqrt(2) <= 0.7e-3
    right = holds and volts >= most and watts >= heat and first + second <= n.most_ohms
    return right, not holds or volts < most or watts < heat


def diode_and_dropper(n, rating, each):
    """Means at both ends of the range, crest current and reverse volts; two in series."""
    ohms = 2 * each
    ends = lowest_volts(n.supply), highest_volts(n.supply)
    crest = ends[1] * sqrt(2)
    low, high = (lesson_03.mean_above_drops(volts) / ohms for volts in ends)
    right = rating >= 2 * crest and n.least_amps <= low and high <= n.most_amps
    return right, (crest - 2.7) / ohms > LED_LIMIT or rating < crest


def most_heat(n, circuit, each, count):
    """Heat in each resistor at the highest mains: while all is sound, and after the worst short."""
    high = highest_volts(n.supply)
    sound = lesson_04.cycle(circuit, high, each * count)[2] / count
    shorted = [lesson_04.cycle(left, high, each * count)[2] / count for left in SHORTED[circuit]]
    if count > 1:
        shorted.append(lesson_04.cycle(circuit, high, each * (count - 1))[2] / (count - 1))
    return sound, max(shorted)


# What is left when the LED or a diode is a piece of wire, see `lesson_04.DROPS`.
SHORTED = {
    "series_diode": ("diode alone", "resistor_only"),
    "diode_across": ("nothing but resistors",),
    "bridge": ("two diodes", "bridge with one diode shorted"),
}


def string(n, each, count, rating, sizes, circuit):
    """Sound, half of what the air leaves of the rating; after one short, all of it and the mains.

    Types of 200 V rms; the whole mains stands along what one short leaves.
    """
    sound, shorted = most_heat(n, circuit, each, count)
    bright = lesson_04.cycle(circuit, lowest_volts(n.supply), each * count)[0] >= n.least_amps
    stands = count >= 2 and highest_volts(n.supply) / (count - 1) <= 200.0
    will_do = [w for w in sizes if w * lesson_04.left(n.air) >= max(2 * sound, shorted)]
    right = bright and stands and rating in will_do[:2]
    return right, not stands or rating * lesson_04.left(n.air) < max(sound, shorted)


def string_of_one_value(n, count, rating):
    sizes = bank()["heat-15"].kind.fields[-1].bin
    return string(n, n.each, count, rating, sizes, "series_diode")


def string_of_any_value(n, each, count, rating):
    sizes = bank()["heat-16"].kind.fields[-1].bin
    return string(n, each, count, rating, sizes, n.circuit)


def dimmed_pair(n, each, watts):
    """Crest at full on highest mains, mean at lowest on lowest, heat of both; half of the rating.

    Values 5 % low for crest and heat, 5 % high for the mean, as the question states.

    Shorted: one of the two, when the other has it all; or the diode, when both half-cycles pass.
    Types of 300 V stand the whole mains; air below 70 °C.
    """
    least, most = 0.95 * each, 1.05 * each
    full = lesson_05.led_amps(highest_volts(n.supply), 0.0, 2 * least)
    low = lesson_05.led_amps(lowest_volts(n.supply), n.angle, 2 * most).mean()
    heat, crest = least * (full**2).mean(), full.max()
    shorted = most_heat(n, "series_diode", least, 2)[1]
    lit, cool = low >= n.least_amps, 2 * heat <= n.box_watts
    rated = watts >= max(2 * heat, shorted)
    return crest <= LED_LIMIT and lit and cool and rated, crest > LED_LIMIT or watts < shorted


def seen_pair(n, rated, each, watts):
    """As `dimmed_pair`, with the light that arrives in place of a wished current."""
    full = lesson_05.led_amps(highest_volts(n.supply), 0.0, 2 * each)
    low = lesson_05.led_amps(lowest_volts(n.supply), n.angle, 2 * each).mean()
    heat, crest = each * (full**2).mean(), full.max()
    shorted = most_heat(n, "series_diode", each, 2)[1]
    sent, needed = rated * low / 0.020, lesson_06.candelas(n.metres, n.room_lux)
    rated_for = watts >= max(2 * heat, shorted)
    right = crest <= LED_LIMIT and sent >= needed and 2 * heat <= n.box_watts and rated_for
    return right, crest > LED_LIMIT or watts < shorted or sent < needed / 2


def bleeder(n, each, count, stands):
    """34 V after 1 s, IEC 60335-1 clause 22.5; C 10 % and R 5 % high; of n one may be shorted.

    The resistor at the far end of its 5 % takes most volts; a quarter of a watt each.
    """
    high, farads = highest_volts(n.supply), 1.1 * n.farads
    left = sqrt(2) * high * exp(-1 / (1.05 * each * count * farads))

    def most_volts(of):
        return high * 1.05 / (1.05 + (of - 1) * 0.95)

    remain = max(count - 1, 1)
    volts = max(most_volts(count), most_volts(remain))
    heat, shorted = (high**2 / (each * of**2) for of in (count, remain))
    cool = heat <= 0.125 and (count == 1 or shorted <= 0.25)
    hurts = left > 34 or count == 1 or volts > stands
    return left <= 34 and count >= 2 and volts <= stands and cool, hurts


def lead(n, fuse, residual, metres):
    """The pots' ohms on the highest mains; 30 mA: IEC 60364-4-41; reinforced, category II."""
    drawn = 2 * n.watts / n.supply.volts_rms**2 * highest_volts(n.supply)
    n.place = "plugged in"
    needed = max(lesson_01.both_metres(n))
    safe = fuse <= n.cord_amps and residual <= 0.03 and metres >= needed - 1e-9
    return safe and fuse >= drawn, not safe


def fuse_of_dropper(n, rated, breaking):
    """Quick-acting: 0.3 s at 4 times, 2 s at 2.75 times its rating; 35, 150, 1500 A: IEC 60127-2.

    What it has to carry and to clear stands in the question; see the next test for those.
    """
    clears, breaks = n.cleared_amps >= 4 * rated, breaking >= n.socket_amps
    return rated >= n.carried_amps and clears and breaks, not (clears and breaks)


def rehearsal(n, supply, limit, span):
    """(V - 2.2 V) / 2 R; 24 V, 5 % for drops, 1 % for digits: rules of this course."""
    amps = (supply - 2.2) / (2 * n.ohms)
    spared, undisturbed = limit <= LED_LIMIT, limit >= 2 * amps
    each = (supply - 2.2) / 2
    seen = 0.1 * each >= 0.3 and each <= span and 3 * span / 2000 <= 0.01 * each
    return supply <= 24 and spared and undisturbed and seen, supply > 24


def test_second_way_what_the_fuse_carries_and_clears_follows_from_farads_and_ohms():
    """Carried: the highest mains over the ohms of capacitor and resistor at right angles.

    Cleared: the lowest mains over the ohms. Both less the drops of bridge and LED, a few per cent.
    """
    for n in every_numbers(bank()["fail-10"]):
        capacitor_ohms = 1 / (2 * pi * n.supply.hertz * n.farads)
        rms = highest_volts(n.supply) / hypot(n.surge_ohms, capacitor_ohms)
        assert 0.95 * rms < n.carried_amps < 1.01 * rms
        amps = lowest_volts(n.supply) / n.surge_ohms
        assert 0.95 * amps < n.cleared_amps < amps


JUDGES = {
    "meter-10": rehearsal,
    "safe-18": lead,
    "fail-10": fuse_of_dropper,
    "ohm-14": bench_dropper,
    "safe-15": barrier,
    "wave-17": diode_and_dropper,
    "heat-15": string_of_one_value,
    "heat-16": string_of_any_value,
    "dim-10": dimmed_pair,
    "see-11": seen_pair,
    "better-8": bleeder,
}


@of_each(PARTS, "second way")
def test_parts_are_judged_by_what_they_would_do(question):
    """And in every draw some set is right, but whoever picks blindly is mostly wrong."""
    judge, bins = JUDGES[question.id], [field.bin for field in question.kind.fields]
    for numbers in every_numbers(question):
        met = []
        for picked in product(*bins):
            verdict = question.kind.mark(picked, numbers)
            said = (verdict.right, bool(verdict.danger))
            assert said == judge(numbers, *picked), (numbers, picked)
            met.append(verdict.right)
        assert 0 < sum(met) < len(met) / 2


@of_each(PARTS)
def test_each_rule_that_parts_are_judged_by_can_be_missed(question):
    """At the smallest or the largest value of every bin; by one draw of each supply at least."""
    ends = [(field.bin[0], field.bin[-1]) for field in question.kind.fields]
    for supply in {numbers.supply for numbers in every_numbers(question)}:
        drawn = [numbers for numbers in every_numbers(question) if numbers.supply == supply]
        judged = [
            c for n in drawn for picked in product(*ends) for c in question.kind.judge(picked, n)
        ]
        names = {criterion.name for criterion in judged}
        assert {criterion.name for criterion in judged if not criterion.passed} == names


# Two of 100 kΩ ± 5 %, drops of 2.2 V ± 0.3 V, on 24 V ± 1 %; meters of 0.8 % and 3 digits.
SOUND = {"first": 100e3, "second": 100e3, "drops": 2.2, "supply": 24.0}
AFTER = {
    "short": {"first": 0.0},
    "decade": {"second": 1e6},
    "turned": {"drops": 24.0},
    "supply": {"supply": 21.6},
    "one row": {},
}


@pytest.mark.parametrize("case", AFTER, ids=lambda case: f"second way: {case}")
def test_the_chart_of_differences_shows_what_each_cause_does_to_every_row(case):
    """Kirchhoff's laws; limits over √3 and squares added: JCGM 100:2008, 4.3.7 and 5.1.2."""

    def rows(first, second, drops, supply):
        amps = max(supply - drops, 0.0) / (first + second)
        return np.array([amps * first, amps * second, supply - amps * (first + second), amps,
                         supply])  # fmt: skip

    volts, current, seen, left = rows(**SOUND)[[0, 3, 4, 2]]
    each = volts * hypot(0.05 / sqrt(2), 0.24 / 21.8, 0.3 / 21.8, 0.011)
    # A hand's breadth of figures is enough: which rows agree, which way the others go, how far.
    uncertain = np.array([each, each, 0.3, current * hypot(0.05 / sqrt(2), 0.018, 0.011),
                          hypot(0.24, 0.22)]) / sqrt(3)  # fmt: skip
    apart = (rows(**SOUND | AFTER[case]) - rows(**SOUND)) / uncertain
    if case == "one row":
        apart[3] = -current / uncertain[3]
    shown = np.array(lesson_09_bank.PATTERNS[case])
    assert (np.abs(apart) > 2).tolist() == (np.abs(shown) > 2).tolist(), apart
    far = np.abs(apart) > 2
    assert (np.sign(apart[far]) == np.sign(shown[far])).all()
    assert (np.abs(apart[far] / shown[far] - 1) < 0.4).all(), apart


def test_a_rule_that_is_not_kept_is_named_with_its_reason_its_danger_and_a_question():
    hot, warm, cool = (rules.heat(watts, 0.5, 70.0) for watts in (0.6, 0.3, 0.1))
    missed = judged("half of it", 0.3, [warm, hot, cool], "Which part takes more?")
    assert not missed.passed and missed.share == 0.3 and missed.danger == rules.DANGERS["burns"]
    assert (missed.reply, missed.ask) == (hot.reason, "Which part takes more?")
    assert not judged("half of it", 0.3, [warm], "?").danger
    assert judged("half of it", 0.3, [cool], "?").reply == cool.reason


def test_a_caution_keeps_the_rule_and_is_said_all_the_same():
    found = rules.dropper("series_diode", SUPPLIES["230 V 50 Hz"], 82e3, 2, 0.5, 300.0, 40.0)
    kept = judged("after one short", 0.3, [f for f in found if f.after == "diode"], "?")
    assert kept.passed and not kept.danger and "must stay enclosed" in kept.reply


# --- answers that would hurt if they were built


def least_ohms_of_led(n):
    return (n.volts - n.led_volts) / (1.1 * LED_LIMIT)


def least_ohms_of_part(n):
    """0.5 mA, what may flow from a part that may be touched: IEC 61140."""
    return highest_volts(n.supply) / 0.0005 - 2000.0


def least_ohms_on_mains(n):
    return sqrt(2) * highest_volts(n.supply) / LED_LIMIT


def distance_towards_a_hand(n):
    return max(lesson_01.both_metres(n))


def sure_to_have_the_least(n):
    """A guard band of the expanded uncertainty: JCGM 106:2012, 8.3; limits over √3, k = 2."""
    return n.least_ohms + 2 * n.limits_ohms / sqrt(3)


def crest_of_high_mains(n):
    return 0.995 * sqrt(2) * n.supply.volts_rms * (1 + n.percent / 100)


@pytest.mark.parametrize(
    ("question_id", "least"),
    [
        ("ohm-3", least_ohms_of_led),
        ("safe-14", least_ohms_of_part),
        ("safe-16", distance_towards_a_hand),
        ("wave-9", least_ohms_on_mains),
        ("dim-recall-2", crest_of_high_mains),
        ("meter-17", sure_to_have_the_least),
    ],
    ids=lambda value: f"second way: {value}" if isinstance(value, str) else "",
)
def test_less_than_what_is_safe_warns_and_earns_nothing(question_id, least):
    question = bank()[question_id]
    for numbers in every_numbers(question):
        for share in (0.0, 1e-9, 1e-6, 1e-3, 0.1, 0.5, 0.9, 0.999):
            verdict = question.kind.mark(share * least(numbers), numbers)
            assert verdict.danger and verdict.share == 0, (share, numbers)


def test_property_a_dropper_that_would_burst_on_the_mains_is_not_called_merely_hot():
    """Five times an LED's limit at the crest is over 3 W of heat on every household mains."""
    question = bank()["wave-9"]
    for numbers in every_numbers(question):
        least = least_ohms_on_mains(numbers)
        heat = highest_volts(numbers.supply) ** 2 / 2 / (least / 5)
        assert heat > 3
        for share, bursts in ((1e-3, True), (0.19, True), (0.21, False), (0.9, False)):
            danger = question.kind.mark(share * least, numbers).danger
            assert ("burst or burn" in danger) == bursts


def test_second_way_pins_that_shock_are_never_called_safe_without_a_word():
    """34 V after one second: IEC 60335-1 clause 22.5; discharge through a resistor."""
    question, told = bank()["better-7"], set()
    for n in every_numbers(question):
        left = sqrt(2) * highest_volts(n.supply) * exp(-1 / (n.ohms * n.farads))
        for value in (0.0, 1.0, 33.9):
            warned = bool(question.kind.mark(value, n).danger)
            assert warned == (left > 34), (value, n)
            told.add(warned)
    assert told == {True, False}


@pytest.mark.parametrize("question_id", ["better-10", "better-11", "better-recall-1", "better-2"])
def test_a_pulse_or_a_heat_that_is_called_far_too_small_warns(question_id):
    question = bank()[question_id]
    for n in every_numbers(question):
        right = question.kind.right(n)
        for share in (0.0, 1e-6, 1e-3, 0.1, 0.19):
            verdict = question.kind.mark(share * right, n)
            assert verdict.danger and not verdict.right
        assert not question.kind.mark(1.3 * right, n).danger


def test_second_way_five_circuits_lie_in_the_order_of_their_heat_on_every_supply():
    """V² over the ohms, half of it behind a diode, whose drops of a few volts are left out; the
    capacitor's current is V 2πfC at most, and meets 470 Ω and 3.4 V."""
    for n in every_numbers(bank()["better-3"]):
        square = n.supply.volts_rms**2
        amps = n.supply.volts_rms * 2 * pi * n.supply.hertz * n.farads
        heats = {
            "across": square / n.low_ohms,
            "series low": square / n.low_ohms / 2,
            "bridge": square / n.high_ohms,
            "series high": square / n.high_ohms / 2,
            "capacitor": 470 * amps**2 + 3.4 * amps,
        }
        assert order_of("better-3", n) == sorted(heats, key=heats.get, reverse=True)
        by_size = sorted(heats.values(), reverse=True)
        assert all(more > 1.25 * less for more, less in pairwise(by_size)), n


# --- steps in their order


def order_of(question_id, numbers):
    return [option.key for option in bank()[question_id].kind.listed(numbers)]


def test_second_way_the_currents_that_matter_are_in_order_on_every_supply():
    """0.5 mA felt, IEC 60479-1. Let-go, 10 mA, and a heart at 50 mA in 1 s: the same, from memory.

    30 mA: IEC 60364-4-41, 415.1. A fuse of 3 A at least in the cord: common practice, no source.
    """
    for numbers in every_numbers(bank()["safe-3"]):
        pot = 90.0 / numbers.supply.volts_rms
        amps = {"fuse": 3.0, "felt": 0.5e-3, "heart": 0.05, "rcd": 0.03, "let go": 0.01, "pot": pot}
        assert order_of("safe-3", numbers) == sorted(amps, key=amps.get)


def test_second_way_the_instants_of_a_cycle_are_in_order_on_every_supply():
    for numbers in every_numbers(bank()["wave-10"]):
        starts = degrees(asin(2.7 / lesson_03.peak(numbers.supply.volts_rms)))
        angles = {"trough": 270, "crest": 90, "stops": 180 - starts, "starts": starts}
        angles |= {"rising": 0, "falling": 180}
        assert order_of("wave-10", numbers) == sorted(angles, key=angles.get)


def test_second_way_settings_are_in_order_of_their_heat_and_can_be_told_apart():
    for n in every_numbers(bank()["dim-9"]):
        of_mean = [degrees(acos(2 * share / 100 - 1)) for share in (n.light, n.mean)]
        angles = (*of_mean, 180 - 1.8 * n.knob)
        heat = [(n.high / 100) ** 2, *map(lesson_05.heat, angles), (n.low / 100) ** 2]
        assert all(lower < 0.93 * upper for upper, lower in pairwise(heat)), heat
        assert order_of("dim-9", n) == [
            "true rms high",
            "light",
            "mean",
            "knob",
            "true rms low",
        ]


def test_second_way_lights_are_in_order_of_what_they_send_and_can_be_told_apart():
    """Sheet times mean over 20 mA; half of it at the half angle, a tenth far beside it."""
    for n in every_numbers(bank()["see-8"]):
        sent = {
            "strong": 2.0 * n.strong_amps,
            "plain": 0.4 * n.plain_amps,
            "side": 0.5 * n.side_amps,
            "pulses": 0.1 * n.pulse_amps / 10,
            "outside": 0.1 * n.outside_amps,
        }
        in_order = sorted(sent, key=sent.get, reverse=True)
        assert order_of("see-8", n) == in_order
        assert all(sent[b] < 0.7 * sent[a] for a, b in pairwise(in_order)), sent


def test_second_way_faults_are_in_order_of_the_heat_in_the_hottest_resistor():
    """Current against the sound one, squared, times the ohms of the part and its half-cycles."""
    for n in every_numbers(bank()["fail-4"]):
        heat = {"one shorted": 2**2, "diode shorted": 1 * 2, "sound": 1, "led open": 0}
        heat["drifted"] = (2 / 4) ** 2 * 3
        assert order_of("fail-4", n) == sorted(heat, key=heat.get, reverse=True)


# --- options that are right or wrong because of a number


def right_keys(question_id, numbers):
    return {o.key for o in bank()[question_id].kind.listed(numbers) if o.right}


def test_second_way_only_a_bare_led_lets_about_as_much_through_backwards_as_forwards():
    """5 V as breakdown, 2 V forwards: common practice, no source. A diode in series only leaks."""
    for n in every_numbers(bank()["wave-13"]):
        crest = lesson_03.peak(n.supply.volts_rms)
        assert 0.95 < (crest - 5.0) / (crest - 2.0) < 1
        assert ("breakdown" in right_keys("wave-13", n)) == (n.circuit == "resistor_only")


def test_second_way_the_drops_take_one_to_three_per_cent_of_the_mean_on_every_supply():
    for n in every_numbers(bank()["wave-8"]):
        volts = n.supply.volts_rms
        assert 0.01 < 1 - lesson_03.mean_above_drops(volts) / lesson_03.mean(volts) < 0.03


def test_second_way_a_dropper_works_on_both_half_cycles_where_its_heat_says_so():
    """Two LEDs back to back conduct like a diode across, with 2 V both ways."""
    circuits = {"diode across": "diode_across", "bare LED": "resistor_only", "bridge": "bridge"}
    circuits |= {"series diode": "series_diode", "plug turned": "series_diode"}
    for n in every_numbers(bank()["heat-4"]):
        share = {key: lesson_04.heat(n, name) / lesson_04.full(n) for key, name in circuits.items()}
        assert all(0.45 < value < 0.5 or 0.9 < value < 1 for value in share.values())
        both = {key for key, value in share.items() if value > 0.9}
        assert right_keys("heat-4", n) == both | {"two LEDs"}


def test_second_way_a_part_that_still_warms_up_ends_above_what_the_plastic_stands():
    """After one time constant 1 − 1/e of the rise is there; the first reading is still below."""
    for n in every_numbers(bank()["heat-13"]):
        settles = n.room + (n.first - n.room) / (1 - exp(-1))
        assert n.first < n.allowed < settles - 2
        assert right_keys("heat-13", n) == {"not settled"}


def test_second_way_the_sentences_about_the_dimmer_are_wrong_where_the_numbers_say_so():
    """A dimmer for 600 W is loaded to 480 W; a heater's rms current goes with the root of heat."""
    watts = {50.0: 530.0, 60.0: 560.0, 70.0: 590.0}
    for n in every_numbers(bank()["dim-15"]):
        heat, mean = lesson_05.heat(n.angle), lesson_05.mean(n.angle)
        assert n.angle < 90  # so the crest is not cut away
        assert mean < sqrt(heat)  # so a plain meter shows less
        assert abs(mean - heat) > 0.03  # so light and heat can be told apart
        half_cycle = np.sin(np.radians(lesson_05.TURN[:18_000])) ** 2
        cut_at_its_end = half_cycle[lesson_05.TURN[:18_000] < 180 - n.angle].sum()
        assert cut_at_its_end / half_cycle.sum() == pytest.approx(heat)  # so both edges heat alike
        assert watts[n.angle] * heat < 0.8 * 600 < watts[n.angle] * sqrt(heat)
        wrong = {"weaker diode", "light as heat", "overload", "sound element"}
        assert right_keys("dim-15", n) == wrong


@pytest.mark.parametrize("question_id", ["see-6", "see-7"])
def test_a_light_that_nobody_notices_is_called_a_danger(question_id):
    question = bank()[question_id]
    for n in every_numbers(question):
        right = question.kind.right(n)
        unseen = {"see-6": 2.1 * right, "see-7": 0.45 * right}[question_id]
        assert "looking off" in question.kind.mark(unseen, n).danger
        for factor in (0.7, 1.4):
            assert not question.kind.mark(factor * right, n).danger


@pytest.mark.parametrize("question_id", ["see-3", "see-7"])
def test_second_way_a_mean_whose_half_waves_are_too_high_is_called_a_danger(question_id):
    """A half-wave's crest is pi times its mean."""
    question = bank()[question_id]
    for n in every_numbers(question):
        assert question.kind.right(n) < 0.5 * LED_LIMIT / pi
        assert "pulses above" in question.kind.mark(1.01 * LED_LIMIT / pi, n).danger
        assert not question.kind.mark(0.99 * LED_LIMIT / pi, n).danger


def test_published_colours_of_iec_60073_and_green_is_never_right():
    for n in every_numbers(bank()["see-13"]):
        (colour,) = right_keys("see-13", n)
        duties = {"white": "supplied", "yellow": "have a look", "red": "at once", "blue": "has to"}
        assert duties[colour] in n.message
        assert bank()["see-13"].kind.mark("green", n).danger


def test_second_way_a_reading_of_a_string_fits_what_has_happened_and_nothing_else():
    """Two of the printed value, ±5 %; a shorted one leaves one of them."""
    for n in every_numbers(bank()["fail-5"]):
        shown = bank()["fail-5"].picture(n).values["text"]
        times = None if shown == "OL" else float(shown) * 1e3 / n.ohms
        fits = {"short": (0.95, 1.05), "sound": (1.9, 2.1), "drift": (2.2, 10.0)}
        found = {key for key, (low, high) in fits.items() if times and low <= times <= high}
        assert right_keys("fail-5", n) == (found or {"open"})


def test_second_way_the_barriers_that_are_called_unsafe_break_the_limit_with_one_fault():
    """0.5 mA rms through 2 kΩ, IEC 61140: nothing left, or 33 kΩ left, lets more through."""
    for n in every_numbers(bank()["fail-8"]):
        left = 33e3 if "33" in n.case else 0.0
        assert highest_volts(n.supply) / (left + 2000.0) > 0.5e-3
        assert right_keys("fail-8", n) == {"no"}


def test_second_way_a_hand_can_die_before_the_trusted_part_opens():
    """Dry hands: 775 Ω, IEC 60479-1, from memory. Time-lag, IEC 60127-2: 80 s at 2.75 times its
    rating, 5 s at 4 times; it may never melt below 2.1 times. A fusible part opens at ten times
    its watts or more: common practice, no source."""
    for supply in SUPPLIES.values():
        amps = supply.volts_rms / 775.0
        assert 0.05 < amps < 4 * 0.1
        assert amps**2 * 22.0 < 10 * 1.0 / 4


@pytest.mark.parametrize("question_id", ["heat-15", "heat-16"])
def test_property_the_drops_of_led_and_diode_never_decide(question_id):
    """A sum without drops, as it is taught, and one with them agree on what is bright enough.

    By hand: the mean of a half-wave is sqrt(2) / pi of the rms; a drop takes pi / 2 of its share
    of the crest, to first order.
    """
    lost_volts = {"series_diode": 2.7, "diode_across": 2.0, "bridge": 3.4}
    for n in every_numbers(bank()[question_id]):
        circuit = getattr(n, "circuit", "series_diode")
        values = [n.each] if question_id == "heat-15" else bank()[question_id].kind.fields[0].bin
        for each, count in product(values, (1, 2, 3, 4)):
            low = lowest_volts(n.supply)
            mean = sqrt(2) / pi * low / (each * count) * (1 + (circuit == "bridge"))
            lost = lost_volts[circuit] * pi / 2 / (sqrt(2) * low)
            assert not mean * (1 - lost) < n.least_amps <= mean, (n, each, count)


def test_of_a_wrong_order_the_row_that_was_moved_is_named_by_its_parts():
    """Each row moved to each other place: the reply names the part and the ohms of that row."""
    spoken = {
        "across": "with the diode across",
        "series low": "diode in series behind 22",
        "bridge": "bridge",
        "series high": "diode in series behind 100",
        "capacitor": "capacitor",
    }
    kind = bank()["better-3"].kind
    n = SimpleNamespace(low_ohms=22e3, high_ohms=100e3, farads=33e-9, shown=(0, 1, 2, 3, 4))
    right = [option.key for option in kind.listed(n)]
    for moved, place in product(right, range(5)):
        order = [key for key in right if key != moved]
        order.insert(place, moved)
        if order != right:
            reply = kind.mark(tuple(order), n).reply.replace("\xa0", " ").lower()
            assert spoken[moved] in reply, (moved, place, reply)
