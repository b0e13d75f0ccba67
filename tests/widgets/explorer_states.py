"""Every state of an explorer that is worth a look: each control at both ends and in the middle."""

from itertools import product

from helpers.widgets.explorers.knobs import Slider
from helpers.widgets.explorers.panel import first_state


def positions(knob):
    """Return both ends, the middle and the first value of a slider, or all values of a choice."""
    if not isinstance(knob, Slider):
        return tuple(knob.options.values())
    middle = knob.low + knob.step * round((knob.high - knob.low) / 2 / knob.step)
    return (knob.low, middle, knob.high, knob.start)


def states(knobs):
    """Return the first state, each control moved alone, and all sliders at their ends together."""
    first = first_state(knobs)
    held = [knob for knob in knobs if knob.__class__.__name__ != "Entry"]
    found = [first]
    for knob in held:
        found += [first | {knob.key: value} for value in positions(knob)]
    sliders = [knob for knob in held if isinstance(knob, Slider)]
    choices = [knob for knob in held if not isinstance(knob, Slider)]
    for ends in product(*((knob.low, knob.high) for knob in sliders)):
        corner = first | dict(zip([knob.key for knob in sliders], ends, strict=True))
        found.append(corner)
        for choice in choices:
            found += [corner | {choice.key: value} for value in positions(choice)]
    return found
