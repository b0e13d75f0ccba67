"""Numbers that a lesson says in its prose, made anew by the modules that own the sum.

Only what holds on every supply may stand there; what depends on one comes from a cell.
"""

import pytest
from notebook import LESSONS, prose, read

from helpers.exercises.standing import PASS_PERCENT
from helpers.physics import (
    burnout,
    capacitor_dropper,
    capacitors,
    dropper_faults,
    faults,
    fuses,
    mains,
    neon,
    ohms_law,
    phase_cut,
)
from helpers.physics.phase_cut_inverse import percentages
from helpers.quantities import write

ANY_SUPPLY = mains.Supply(100.0, 50.0)


def leading(degrees):
    return phase_cut.Dimmer("leading", degrees)


def heat(degrees):
    return percentages(leading(degrees)).power_percent


def rms(degrees):
    return percentages(leading(degrees)).volts_percent


def light(degrees):
    full = phase_cut.wave(ANY_SUPPLY, phase_cut.NO_DIMMER).volts_mean
    return 100.0 * phase_cut.wave(ANY_SUPPLY, leading(degrees)).volts_mean / full


def in_prose(value, quantity):
    return write(value, quantity).replace("\u00a0", " ")


def led_ohms(amps):
    return in_prose(ohms_law.resistance(2.0, amps), "resistance")


def surge(volts, ohms):
    return in_prose(ohms_law.current(volts, ohms), "current")


def left_after(time_constants):
    return capacitors.volts_left(time_constants, 1e-6, 1e6, 1.0)


SAID = {
    "01": [f"full marks on its **danger items** and {PASS_PERCENT} % of the rest"],
    "02": [
        f"2 V at 5 mA would be {led_ohms(0.005)}, and 2 V at 1 mA {led_ohms(0.001)}",
        f"Of 12 V, red leaves {12 - 2:.0f} V and blue {12 - 3.1:.1f} V",
    ],
    "03": [
        f"passes {60 / 50:.1f} times as much at 60 Hz as at 50 Hz",
        f"Each 1000 V more drives {surge(1_000.0, 100_000.0)} more through 100 kΩ",
    ],
    "04": [
        f"is {230 / 120:.2f} times the lower, and makes {(230 / 120) ** 2:.1f} times the heat",
    ],
    "05": [
        f"lasts 10 ms at 50 Hz and {1e3 / 2 / 60:.2f} ms at 60 Hz",
        f"is multiplied by {60 / 50:.1f} for 50 Hz",
        f"at 60° there is {light(60.0):.0f} % of the light, but {heat(60.0):.1f} % of the heat",
        f"at 30° there is still {heat(30.0):.0f} % of the heat",
        f"At {180 * 9 / 10:.0f}°, 9 of the 10 ms of 50 Hz, {rms(162.0):.0f} % of the rms is left",
    ],
    "09": [
        f"which is {1 / 3**0.5:.2f} of it",
        f"a third of another adds only {100 * (1 + 1 / 9) ** 0.5 - 100:.0f} % to it",
        f"The drops leave {24 - 2.2:.1f} V",
        f"Expect a little less than {(24 - 2.2) / 2:.2f} V",
    ],
    "07": [
        f"100 nF × 2 MΩ = {capacitors.time_constant(100e-9, 2e6):g} s",
        f"After one of them {100 * left_after(1):.0f} % is left, after five less than 1 %",
        f"e to the power of −5 is {left_after(5):.4f}",
        f"at most **{capacitors.PIN_VOLTS:g} V after one second**",
        f"about {neon.STRIKE_VOLTS:g} V. Then it glows at a lower one, about "
        f"{neon.MAINTAIN_VOLTS:g} V",
    ],
}


@pytest.mark.parametrize(
    ("lesson", "said"), [(lesson, said) for lesson, texts in SAID.items() for said in texts]
)
def test_second_way_a_number_in_the_prose_is_what_the_modules_give(lesson, said):
    (path,) = [path for path in LESSONS if path.stem.startswith(lesson)]
    assert said in prose(read(path))


STRING = {"ohms_each": 82e3, "count": 2}
SAID_OF_FAULTS = {
    "one resistor short": ("dropper", "short", 2.0, 4.0, "brighter"),
    "one resistor open": ("dropper", "open", 0.0, 0.0, "dark"),
    "one resistor at twice its ohms": ("dropper", "drift", 2 / 3, 8 / 9, "dimmer"),
    "diode short": ("diode", "short", 1.0, 2.0, "as before"),
    "diode open, LED open": ("led", "open", 0.0, 0.0, "dark"),
    "LED short": ("led", "short", 1.0, 1.0, "dark"),
    "neutral wire open": ("neutral", "open", 0.0, 0.0, "dark"),
}


@pytest.mark.parametrize("supply", mains.SUPPLIES.values(), ids=mains.SUPPLIES)
@pytest.mark.parametrize("row", SAID_OF_FAULTS)
def test_second_way_the_table_of_faults_in_lesson_08_is_what_physics_gives(row, supply):
    """Shares by hand: half or one and a half of the ohms, one half-cycle or both."""
    part, how, current, heat, light = SAID_OF_FAULTS[row]
    (path,) = [path for path in LESSONS if path.stem.startswith("08")]
    (line,) = [line for line in prose(read(path)).splitlines() if line.startswith(f"| {row} |")]
    assert f"| {light}" in line
    left = faults.after("series_diode", part, how, supply, **STRING)
    sound = faults.after("series_diode", "dropper", "drift", supply, drift=1.0, **STRING)
    assert left.light == light
    assert left.watts_each == pytest.approx(heat * sound.watts_each, rel=0.05)
    both = 2**0.5 if row == "diode short" else 1.0  # the rms of two half-cycles
    assert left.branch_amps_rms == pytest.approx(
        current * both * sound.branch_amps_rms, rel=0.05, abs=1e-12
    )


@pytest.mark.parametrize("supply", mains.SUPPLIES.values(), ids=mains.SUPPLIES)
def test_property_what_lesson_08_says_of_fuse_and_bare_led_holds_on_every_supply(supply):
    """Several times its rating; hundred-thousandths of a second at the crest, a thousandth not."""
    parts = capacitor_dropper.Parts(330e-9, 120.0, 1e6)
    amps = dropper_faults.outcome("capacitor short", parts, supply).line_amps_rms
    assert amps > 4 * 0.2 and fuses.longest_seconds(fuses.Fuse(0.2, "F"), amps) < 1.0
    assert 1e-6 < burnout.led_on_mains(supply, 90.0).seconds < 1e-4
    assert 0.5e-3 < burnout.led_on_mains(supply, 0.0).seconds < 2e-3
    left = faults.after("series_diode", "dropper", "short", supply, **STRING)
    assert left.branch_amps_rms < 0.032 / 2.1  # the smallest fuse may never open: IEC 60127-2


# Two equal resistors, drops of 2.2 V, 24 V: what becomes of each row, in shares of the sound one.
SAID_OF_ROWS = {
    "one resistor short": (0.0, 1.0, "none", "twice", "twice"),
    "one resistor open": (1e9, 1.0, "nearly all", "none", "none"),
    "one with ten times its ohms": (10.0, 1.0, "nearly twice", "a fifth or so", "a fifth or so"),
    "one with a tenth of its ohms": (0.1, 1.0, "a fifth or so", "nearly twice", "nearly twice"),
}
SHARES = {"none": (0.0, 0.01), "a fifth or so": (0.15, 0.25), "nearly twice": (1.7, 2.0),
          "twice": (1.99, 2.01), "nearly all": (1.9, 2.01)}  # fmt: skip


@pytest.mark.parametrize("row", SAID_OF_ROWS)
def test_second_way_the_table_of_causes_in_lesson_09_is_what_kirchhoff_gives(row):
    first, second, *said = SAID_OF_ROWS[row]
    (path,) = [path for path in LESSONS if path.stem.startswith("09")]
    assert f"| {row} | {' | '.join(said)} |" in prose(read(path))
    amps = 2.0 / (first + second)
    for share, words in zip((amps * first, amps * second, amps), said, strict=True):
        low, high = SHARES[words]
        assert low <= share <= high, (row, share, words)
