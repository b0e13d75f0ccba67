import numpy as np
import pytest

from helpers.bench import predictions
from helpers.bench.predictions import ANYONE, COMPETENT, REHEARSAL, Build, Reading, table
from helpers.bench.rows import asks
from helpers.bench.world import World, inputs
from helpers.physics import circuits, meters, phase_cut, signals
from helpers.sizing import verdicts
from helpers.sizing.brief import Brief

BUILD = Build(Brief(), "series_diode", 100e3, 3)
ROWS = {row.name: row for row in table(BUILD)}


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
def test_property_all_rows_are_whole(circuit):
    rows = table(Build(Brief(led_colour="blue"), circuit, 82e3, 2))
    assert len({row.name for row in rows}) == len(rows)
    assert [row.by for row in rows] == sorted(
        (row.by for row in rows), key=[ANYONE, REHEARSAL, COMPETENT].index
    )
    for row in rows:
        assert row.meter in predictions.BENCH_METERS and row.where
        assert row.limits[0] <= row.value <= row.limits[1]
        assert np.isinf(row.value) or row.standard > 0.0


def test_limit_nothing_unpowered_or_rehearsed_is_above_extra_low_voltage():
    # 60 V DC, 25 V AC: IEC 61140 (from memory).
    for count in (1, 4, 20):
        build = Build(Brief(led_count=count, bin_most=1), "two_leds", 82e3, 2)
        for row in table(build):
            if row.by != COMPETENT and row.unit == "voltage":
                assert abs(row.value) < 25.0


def test_limit_backwards_is_no_more_than_the_sheet_of_the_led_allows():
    names = {row.name for row in table(Build(Brief(led_reverse=0.0), "bridge", 100e3, 2))}
    assert not any("turned" in name for name in names if "diode" not in name)
    build = Build(Brief(led_reverse=3.0), "bridge", 100e3, 2)
    row = {row.name: row for row in table(build)}["turned, supply"]
    assert row.value == 3.0


def test_limit_only_a_competent_person_is_asked_for_the_mains_and_from_outside():
    mains = [row for row in table(BUILD) if row.by == COMPETENT]
    assert all("covers closed" in row.where for row in mains)
    assert {row.unit for row in mains} == {"voltage", "power", "count"}
    assert len([row for row in mains if "watts" in row.name]) == 5


def test_second_way_mains_rows():
    dimmer = phase_cut.Dimmer("leading", 126.0)
    signal = signals.dimmed_mains(Brief().supply, dimmer)
    assert ROWS["setting 1, true rms"].value == pytest.approx(signal.rms)
    assert ROWS["setting 1, average"].value == pytest.approx(meters.reading(signal, "average"))
    assert ROWS["setting 1, watts"].value == pytest.approx(signal.rms**2 / (230.0**2 / 90.0))
    assert ROWS["setting 5, watts"].value == pytest.approx(90.0)


def test_second_way_resistor_by_hand():
    # 5 % and 1 % of 100 kilohm, five of 100 ohm, each over root 3, in squares, twice.
    standard = np.sqrt(5e3**2 + 1e3**2 + 500.0**2) / np.sqrt(3.0)
    row = ROWS["R2"]
    assert row.standard == pytest.approx(standard, rel=1e-9)
    assert row.limits == pytest.approx((100e3 - 2 * standard, 100e3 + 2 * standard))


@pytest.mark.parametrize(
    ("place", "digits"),
    [(10.0, 500.0), (100.0, 500.0), (1e3, 5e3), (1e4, 5e3)],
    ids=["finer than the meter", "as the meter", "of three figures", "rounded by hand"],
)
def test_second_way_what_was_typed_widens_its_row_alone(place, digits):
    """By hand, for 100 kilohm: step / sqrt(12) is half of it over root 3 (JCGM 100, F.2.2.1)."""
    rows = {row.name: row for row in table(BUILD, {"R2": Reading(98e3, place)})}
    standard = np.sqrt(5e3**2 + 1e3**2 + digits**2 + (0.5 * place) ** 2) / np.sqrt(3.0)
    assert rows["R2"].standard == pytest.approx(standard, rel=1e-9)
    assert {name for name in rows if rows[name] != ROWS[name]} == {"R2"}


@pytest.mark.parametrize("circuit", circuits.CIRCUITS)
def test_second_way_many_draws_spread_like_the_covariance(circuit):
    """All rows at once: 4,000 worlds drawn between their limits, without scale and digits."""
    build = Build(Brief(), circuit, 100e3, 3)
    names, random = inputs(build), np.random.default_rng(5)
    stray = dict(zip(names, random.uniform(-1.0, 1.0, (len(names), 4000)), strict=True))
    world, found = World(build, build.sound, stray), predictions.expected(build)
    kept = [at for at in range(len(found.values)) if np.isfinite(found.values[at])]
    kept = [at for at in kept if found.asks[at].unit != "count"]
    drawn = np.array([np.broadcast_to(found.asks[at].read(world), 4000) for at in kept])
    spread = np.sqrt(np.diagonal(found.covariance))[kept]
    meters_of = [predictions.BENCH_METERS[found.asks[at].meter] for at in kept]
    own = [
        np.hypot(0.01 * m.percent * value, m.digits * m.step(value)) / np.sqrt(3.0)
        for m, value in zip(meters_of, found.values[kept], strict=True)
    ]
    expected = np.hypot(drawn.std(axis=1), own)
    assert spread == pytest.approx(expected, rel=0.06)
    assert drawn.mean(axis=1) == pytest.approx(found.values[kept], rel=0.02, abs=0.05)


def test_property_resistors_of_one_string_share_their_volts():
    """What one resistor takes more, the others take less: rows are not independent."""
    found = predictions.expected(BUILD)
    names = [ask.name for ask in found.asks]
    one, other = names.index("24 V, R1"), names.index("24 V, R2")
    alone = found.covariance - np.diag(np.diagonal(found.covariance))
    assert alone[names.index("R1"), one] > 0.0 > alone[names.index("R1"), other]


def test_limit_what_may_be_ol_as_well_is_not_asked_for():
    """A yellow-green LED lies about the 2 V that a diode test shows at most."""
    build = Build(Brief(led_colour="yellow-green"), "diode_across", 100e3, 2)
    assert "diode, turned" not in {row.name for row in table(build)}


def test_property_a_fixed_heater_has_no_plug_to_measure_at():
    rows = {row.name: row for row in table(Build(Brief(use_connection="fixed"), "bridge", 1e5, 2))}
    assert "element" not in rows
    assert "competent person decides" in rows["mains"].where


def test_property_without_a_dimmer_there_is_one_setting():
    names = {row.name for row in table(Build(Brief(dimmer_edge="none"), "bridge", 1e5, 2))}
    assert "setting 1, watts" in names and "setting 2, watts" not in names


def test_limit_a_crest_beyond_the_meter_is_said():
    dark = Build(Brief(dimmer_lowest=150.0), "bridge", 1e5, 2)
    row = {row.name: row for row in table(dark)}["setting 1, true rms"]
    assert "crest" in row.doubts[0]
    assert ROWS["setting 2, true rms"].doubts == ()


def test_property_each_turned_row_of_the_supply_says_where_the_leads_of_the_meter_go():
    said = [row.where for row in ROWS.values() if "turned" in row.name and row.meter == "DC volts"]
    assert len(said) == 3 and all("the leads of the meter changed over" in each for each in said)


def test_property_a_plan_gives_its_first_build():
    build = predictions.of_plan(verdicts.plan(Brief()))
    best = verdicts.plan(Brief()).best(1)[0]
    assert (build.circuit, build.ohms_each, build.count) == (
        best.circuit, best.ohms_each, best.count,
    )  # fmt: skip


def test_refused_a_plan_that_is_forbidden():
    with pytest.raises(ValueError, match="no candidate"):
        predictions.of_plan(verdicts.plan(Brief(use_connection="fixed")))


def test_refused_an_unknown_circuit():
    with pytest.raises(ValueError, match="circuit was read as 'ring'"):
        Build(Brief(), "ring", 1e5, 2)


def test_every_ask_is_a_row_of_its_own_meter():
    for ask in asks(BUILD):
        assert ask.unit in ("resistance", "voltage", "power", "count")


HALVED = Build(Brief(box_touch="touchable"), "series_diode", 330e3, 4)


def test_second_way_halves_are_read_apart_and_the_meter_lies_beside_one_at_a_time():
    """By hand: two of 330 kΩ beside 10 MΩ, and two without, share what the drops leave."""
    rows, whole = {row.name: row for row in table(HALVED)}, 24.0 - 2.1
    half = 1.0 / (1.0 / 660e3 + 1.0 / meters.INPUT_OHMS)
    by_hand = 2.0 * whole * half / (half + 660e3)
    assert rows["24 V, string"].value == pytest.approx(by_hand, rel=0.01)
    assert rows["24 V, string"].value < 0.98 * whole


def test_property_a_split_string_is_told_wire_by_wire():
    where = {row.name: row.where for row in table(HALVED)}
    assert where["R2"] == "across resistor 2 in the live wire, counted from its lead"
    assert where["R4"] == "across resistor 1 in the neutral wire, counted from its lead"
    assert "each half" in where["whole string"] and "each half" in where["turned, string"]
    assert not any("without resistors" in words for words in where.values())
    assert any("without resistors" in row.where for row in ROWS.values())
