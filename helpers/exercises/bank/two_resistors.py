"""What lessons 05 and 06 ask of a dropper of two equal resistors, beside the light that is wanted.

In lesson 05 the light is a mean current, and the LED's limit weighs more. In lesson 06 it is what
reaches an eye, and being noticed weighs more.
"""

from helpers.exercises.kinds import Criterion, judged
from helpers.physics import faults, leds
from helpers.quantities import write, write_as
from helpers.sizing import rules


def criteria(light, led_share, highest, found, box_watts):
    """Return the criteria, the LED's limit first.

    Parameters
    ----------
    light : Criterion
        The light that is wanted at the lowest setting.
    led_share : float
        What the LED's limit earns [-].
    highest : operating point
        At full and high mains.
    found : list of Finding
        What the rules say of the dropper.
    box_watts : float
        What the box takes [W].
    """
    peak = write_as(highest.led_amps_peak, "mA")
    return [
        Criterion(
            "LED within its limit",
            rules.passes([rules.led(highest.led_amps_peak)]),
            led_share,
            f"The LED's peak is {peak} at full and high mains.",
            f"a peak of {peak} is more than the {write_as(leds.LIMIT_AMPS, 'mA')} that a small LED "
            "can stand. It dies and can burst, and the dropper can burn.",
        ),
        light,
        Criterion(
            "cool enough in the box at the highest setting",
            highest.resistor_watts <= box_watts,
            0.2,
            f"Both together give {write(highest.resistor_watts, 'power')} at full and high mains; "
            f"the box takes {write(box_watts, 'power')}.",
        ),
        judged(
            "at most half of the rating while all is sound",
            0.1,
            [f for f in found if f.rule == "heat" and f.after == faults.SOUND],
            "Which rating is at least twice the heat of each?",
        ),
        judged(
            "within the rating after any one short",
            0.2,
            [f for f in found if f.after != faults.SOUND],
            "How much heat does the one get that is left when the other is a piece of wire?",
        ),
    ]
