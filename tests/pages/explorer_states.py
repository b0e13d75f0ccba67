"""Every state of an explorer that is worth a look: each control at both ends and in the middle."""

from itertools import product

from helpers.pages.explorer import Entry, Slider, first_state


def positions(control):
    """Return both ends, the middle and the first value of a slider, or all values of a choice."""
    if not isinstance(control, Slider):
        return tuple(control.options.values())
    middle = control.low + control.step * round((control.high - control.low) / 2 / control.step)
    return (control.low, middle, control.high, control.start)


def states(controls):
    """Return the first state, each control moved alone, and all sliders at their ends together."""
    first = first_state(controls)
    held = [control for control in controls if not isinstance(control, Entry)]
    found = [first]
    for control in held:
        found += [first | {control.key: value} for value in positions(control)]
    sliders = [control for control in held if isinstance(control, Slider)]
    choices = [control for control in held if not isinstance(control, Slider)]
    for ends in product(*((control.low, control.high) for control in sliders)):
        corner = first | dict(zip([control.key for control in sliders], ends, strict=True))
        found.append(corner)
        for choice in choices:
            found += [corner | {choice.key: value} for value in positions(choice)]
    return found
