"""Steps after a fault: what is left of a string, heat in a bad joint, what a fuse makes of it."""

from helpers.exercises.roads.road import Step, Turn
from helpers.exercises.roads.steps.general import factor


def one_fewer(count, called="the ohms that are left"):
    """From one of several equal resistors in series to all of them, when one is a piece of wire."""
    return Step(
        called, "resistance", factor(count - 1.0), f"{count - 1} × {{value}}",
        f"{count - 1} * {{value}}",
        turns=(
            Turn("counted the shorted one as well", "How many ohms has a part that failed short?",
                 factor(count)),
            Turn("took one for all", "What stands in the way: one of them, or all?", factor(1.0)),
            Turn("took them as side by side", "One after the other: more in the way, or less?",
                 factor(1.0 / (count - 1))),
        ),
    )  # fmt: skip


def heat_in_joint(ohms, called="the heat in the joint"):
    """Amps squared times ohms: the current belongs to the pot, the ohms to the joint."""
    return Step(
        called, "power", lambda amps, ohms, n: amps * amps * ohms, "({value})² × {operand}",
        "({value})**2 * {operand}", operand=ohms, operand_of="resistance",
        turns=(
            Turn("forgot to square the amps", "Amps times ohms are volts. What makes watts?",
                 lambda amps, ohms, n: amps * ohms, share=0.0),
            Turn("doubled instead of squaring", "What is a number times itself?",
                 lambda amps, ohms, n: 2 * amps * ohms),
            Turn("gave the amps", "How much heat do these amps make in the joint?",
                 lambda amps, ohms, n: amps, share=0.0),
            Turn("squared the amps alone", "Which ohms belong to the joint?",
                 lambda amps, ohms, n: amps * amps, share=0.0),
            Turn("divided by the ohms", "With the same current, do more ohms make less heat?",
                 lambda amps, ohms, n: amps * amps / ohms, share=0.0),
            Turn("gave the joint the volts of the mains", "Which part has nearly all of the volts?",
                 lambda amps, ohms, n: n.supply.volts_rms**2 / ohms, share=0.0),
            Turn("multiplied the watts by the ohms", "Which current flows, and what makes watts?",
                 lambda amps, ohms, n: amps * n.supply.volts_rms * ohms, share=0.0),
            Turn("gave the heat of the pot", "Which ohms belong to the joint?",
                 lambda amps, ohms, n: amps * n.supply.volts_rms, share=0.0),
        ),
    )  # fmt: skip


def times_its_rating(rated, called="how many times its rating"):
    """From a current to how many times the rating of a fuse it is."""
    return Step(
        called, "ratio", lambda amps, rated, n: amps / rated, "{value} / {operand}",
        "{value} / {operand}", operand=rated, operand_of="current",
        turns=(
            Turn("divided the wrong way round", "Is more than the rating flowing, or less?",
                 lambda amps, rated, n: rated / amps, share=0.0),
            Turn("multiplied instead of dividing", "How often does the one fit into the other?",
                 lambda amps, rated, n: amps * rated, share=0.0),
            Turn("gave the amps", "How many times the rating is that?",
                 lambda amps, rated, n: amps, share=0.0),
            Turn("took the rise above the rating", "Times what it carries, or more than it?",
                 lambda amps, rated, n: amps / rated - 1),
        ),
    )  # fmt: skip
