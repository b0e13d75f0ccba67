"""Every wrong turn on the way to heat, to warmth and to the bill, by hand.

Sources: a sine of rms 1 has crest 1.4142 and mean 0.9003, half of it mean 0.4502 and rms 0.7071:
any textbook. Full rating up to 70 °C, none left at 155 °C: IEC 60115-1. 8 W/m² K for one film of
still air, 4 for two, 10 for a surface in the open: Incropera, from memory. 8760 h: 365 days.
"""

from types import SimpleNamespace

import pytest

from helpers.exercises.kinds import Amount
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps import heat as steps
from helpers.exercises.roads.steps.general import given, knowing

BENCH = SimpleNamespace(
    volts=120.0, ohms=48e3, watts=0.5, percent=10.0, rated_watts=2.0, air_celsius=104.0,
    square_metres=0.005, room_celsius=20.0, each_watt_kelvin=80.0,
)  # fmt: skip
VOLTS, OHMS, WATTS = given("volts"), given("ohms"), given("watts")


def ends(*road):
    """Return the ends of the turns of the last step, each by its name."""
    road = Road(*road)
    last = len(road.steps) - 1
    wrong = [way for way in road.wrong(BENCH) if way.places == (last,)]
    return {way.names[0]: way.value for way in wrong}


@pytest.mark.parametrize(
    "road, right, by_hand",
    [
        pytest.param(
            (VOLTS, steps.half_wave_rms()), 84.853,
            {
                "counted both half-cycles": 120.0, "halved the volts": 60.0,
                "multiplied the mean by 1.11": 60.0, "took the mean for the rms": 54.019,
                "took the mean of the whole wave": 108.038, "took the crest for the rms": 169.706,
                "halved once too often": 30.0,
            },
            id="rms of the half-wave",
        ),
        pytest.param(
            (VOLTS, knowing(steps.squared_over("ohms"), steps.MEAN_BY_RMS)), 0.3,
            {
                "multiplied a mean by an rms value": 0.270095,
                "forgot to square the volts": 0.0025, "squared the crest": 0.6,
                "squared the mean": 0.243171, "multiplied volts by ohms": 5.76e6,
                "squared the ohms too": 6.25e-6,
            },
            id="volts squared over ohms",
        ),
        pytest.param(
            (WATTS, knowing(steps.halved(), steps.HALVED_TWICE)), 0.25,
            {
                "counted both half-cycles": 0.5, "halved the volts": 0.125,
                "halved once too often": 0.125,
                "squared the mean of the half-wave": 0.101321, "took 0.707 for the half": 0.353553,
                "took 0.45 for the half": 0.225,
            },
            id="half of the heat",
        ),
        pytest.param(
            (WATTS, steps.doubled()), 1.0,
            {"left out the margin": 0.5, "halved instead of doubling": 0.25},
            id="margin",
        ),
        pytest.param(
            (WATTS, steps.in_step_with(lambda n: 0.1)), 0.05,
            {
                "squared the ratio of the currents": 0.005, "kept the old heat": 0.5,
                "turned the ratio upside down": 5.0, "took what is saved": 0.45,
            },
            id="heat in step with the current",
        ),
        pytest.param(
            (WATTS, steps.whole_year()), 4380.0,
            {
                "took a day for the year": 12.0, "took a month for the year": 365.0,
                "left out the hours of a day": 182.5,
            },
            id="energy of a year",
        ),
        pytest.param(
            (WATTS, steps.per_cent_of(lambda n: 2.0)), 25.0,
            {
                "gave a fraction, not per cent": 0.25, "took the share of both together": 20.0,
                "took what is left to a hundred": 75.0, "turned the ratio upside down": 400.0,
            },
            id="in per cent of another",
        ),
        pytest.param(
            (given("air_celsius"), steps.slope_left()), 51 / 85,
            {
                "left the warm air out": 1.0, "took the share that is lost": 34 / 85,
                "drew the line from zero degrees": 51 / 155,
                "took the air's share of the whole scale": 104 / 155,
                "divided by the degrees up to the bend": 36 / 70,
                "divided the bend by the air": 70 / 104,
                "divided the lost degrees by the air's": 34 / 104,
                "divided the lost degrees by the bend's": 34 / 70,
                "divided what is left by the air": 51 / 104,
                "left nothing behind the bend": 0.0,
            },
            id="derating",
        ),
        pytest.param(
            (given(0.6, "ratio"), steps.of_rating("rated_watts")), 1.2,
            {"halved what is left": 0.6},
            id="what is left of a rating",
        ),
        pytest.param(
            (OHMS, steps.alike_in_series(3)), 144e3,
            {"took them as side by side": 16e3, "took one for all": 48e3},
            id="alike in series",
        ),
        pytest.param(
            (VOLTS, steps.shared_volts(lambda n: 4)), 30.0,
            {"gave each the whole voltage": 120.0, "left one of them out": 40.0},
            id="shared volts",
        ),
        pytest.param(
            # one of four alone has a quarter of the ohms: four times the heat of all together
            (WATTS, steps.shared_heat(4)), 0.125,
            {
                "gave the heat of all together": 0.5, "took each as alone on the mains": 2.0,
                "shared once too often": 0.03125,
            },
            id="shared heat",
        ),
        pytest.param(
            (WATTS, steps.box_rise("square_metres")), 25.0,
            {
                "left out the box": 0.0, "took 100 cm² for a square metre": 0.25,
                "left out what the walls pass": 100.0, "took 6 W for what the walls pass": 50 / 3,
                "counted one film of air only": 12.5,
                "took the figure of a surface in open air": 10.0,
            },
            id="rise of the box",
        ),
        pytest.param(
            (given(25.0, "temperature rise"), steps.warmer_than("room_celsius")), 45.0,
            {"left out the room": 25.0, "took the room off": 5.0},
            id="warmer than the room",
        ),
        pytest.param(
            (given(45.0, "temperature"), steps.own_rise("watts", "each_watt_kelvin")), 85.0,
            {
                "left out the dropper's own rise": 45.0, "gave the dropper's own rise alone": 40.0,
                "forgot to multiply by the watts": 45.0 + 80.0,
            },
            id="own rise",
        ),
    ],
)  # fmt: skip
def test_second_way_every_turn_by_hand(road, right, by_hand):
    assert Road(*road).value(BENCH) == pytest.approx(right, rel=1e-5)
    assert ends(*road) == pytest.approx(by_hand, rel=1e-5)


def test_a_turn_of_which_only_the_digits_fit_is_told_as_far_off_as_a_prefix_alone():
    """100 V and 30 kΩ: 0.45 × 100² / 30 000 is 0.15; 100 × 30 000 / 2 is 1.5 million."""
    n = SimpleNamespace(volts=100.0, ohms=30e3)
    kind = Amount("power", "W", Road(VOLTS, steps.squared_over("ohms"), steps.halved()))
    assert kind.mark(0.15, n, 3).slip == "took 0.45 for the half"
    assert kind.mark(1.5, n, 3).slip == "multiplied volts by ohms"
