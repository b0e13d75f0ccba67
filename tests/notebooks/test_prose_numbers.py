"""Numbers that a lesson says in its prose, made anew by the modules that own the sum.

Only what holds on every supply may stand there; what depends on one comes from a cell.
"""

import pytest
from notebook import LESSONS, prose, read

from helpers.physics import capacitors, mains, neon, ohms_law, phase_cut
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
