"""Steps through a body: from the mains to the current of a touch."""

from math import pi, sqrt

from helpers.exercises.roads.road import Turn
from helpers.exercises.roads.steps.general import knowing, label
from helpers.exercises.roads.steps.ohms import current_through
from helpers.physics import hazards


def touch_volts():
    """The label of the mains, whose rms volts are what harm is sorted by."""
    return knowing(
        label(),
        Turn("took the crest for the label", "The thresholds are rms values: which voltage goes "
             "with them?", lambda value, given, n: sqrt(2) * given),
        Turn("took the mean for the label", "The thresholds are rms values: which voltage goes "
             "with them?", lambda value, given, n: 2 * sqrt(2) / pi * given),
        Turn("counted one half-cycle only", "What in this circuit would stop the other half-cycle?",
             lambda value, given, n: given / 2),
    )  # fmt: skip


def through_body(body):
    """The current that the ohms of a body let through."""
    return knowing(
        current_through(body),
        Turn("took the RCD's current", "That is where it opens. Until it has, what decides the "
             "current?", lambda value, body, n: hazards.RESIDUAL_AMPS_RMS, share=0.0),
        Turn("took the network for the body", "The network stands for a finger in a test. Which "
             "ohms does the question give?",
             lambda value, body, n: value / hazards.TOUCH_NETWORK_OHMS),
        Turn("took dry hands for wet ones", "Wet skin lets more through than dry. Which ohms does "
             "the question give?", lambda value, body, n: value / hazards.SHOCK_BODY_OHMS),
    )  # fmt: skip


def understated_touch(value, n):
    """Say what is wrong with a touch current that is far too small."""
    if value < 0.6 * n.supply.volts_rms / n.ohms:
        return (
            "far more than this can flow, and it can stop a heart. No RCD holds it down: it only "
            "shortens it."
        )
    return None
