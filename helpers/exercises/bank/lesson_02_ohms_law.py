"""Lesson 02: Ohm's law on a bench supply."""

from helpers.exercises.kinds import Quantity
from helpers.exercises.question import Question
from helpers.exercises.slips import Slip
from helpers.physics import ohms_law
from helpers.quantities import write

LESSON = "02"
TITLE = "Ohm's law"

QUESTIONS = (
    Question(
        id="ohm-1",
        outcome="find the current from voltage and resistance",
        numbers=lambda draw, supply: {
            "volts": draw.pick((5.0, 9.0, 12.0, 15.0, 24.0)),
            "ohms": draw.pick((1800.0, 2700.0, 3900.0, 6800.0)),
        },
        ask=lambda n: (
            f"A bench supply is set to {write(n.volts, 'voltage')} DC. A resistor of "
            f"{write(n.ohms, 'resistance')} is connected across it. What current flows?"
        ),
        kind=Quantity(
            of="current",
            unit="mA",
            right=lambda n: ohms_law.current(n.volts, n.ohms),
            slips=(
                Slip(
                    "multiplied volts and ohms",
                    lambda n: n.volts * n.ohms,
                    "You seem to have multiplied. Should more ohms let more current through?",
                ),
            ),
        ),
        nudges=("Which is the push, and which holds back?", "Divide the push by what holds back."),
        working=lambda n: "I = V / R",
    ),
)
