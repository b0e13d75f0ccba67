"""Explorers: a calculation to move by hand, a picture of it, and a sentence on what it shows.

Each is a plain function from a state to picture and sentence; the glue below puts controls on it.
"""

from html import escape

import ipywidgets as widgets

from helpers.exercises.wording import Line
from helpers.figures.circuits import bench_dropper
from helpers.physics import ohms_law, resistors
from helpers.quantities import write
from helpers.widgets.lesson import current_session
from helpers.widgets.page import Page, frame, show, show_controls

LED_VOLTS = 2.0
BENCH_VOLTS = (5.0, 24.0)
BENCH_OHMS = [ohms for ohms in (10.0 * r for r in resistors.SERIES["E12"]) if ohms >= 220]
BENCH_OHMS += [100.0 * r for r in resistors.SERIES["E12"]]
LED_LIMIT_AMPS = 0.020


def dropper(volts, ohms):
    """Show what current a dropper lets through an LED on a bench supply.

    Parameters
    ----------
    volts : float
        Setting of the supply, 5 to 24 [V].
    ohms : float
        The dropper [ohm].

    Returns
    -------
    svg : str
    sentence : str
        What the picture shows, with its numbers.

    References
    ----------
    20 mA as the usual limit of a small LED: common practice, no source.

    Examples
    --------
    >>> "LED limit" in dropper(5.0, 4700.0)[1]
    False
    """
    amps = ohms_law.led_current(volts, LED_VOLTS, ohms)
    bare = ohms_law.current(volts, ohms)
    watts = ohms_law.power(amps=amps, ohms=ohms)
    sentence = (
        f"Calculated: {write(volts, 'voltage')} and {write(ohms, 'resistance')} give the LED "
        f"{write(amps, 'current')}; without the LED's own {write(LED_VOLTS, 'voltage')} the sum "
        f"would say {write(bare, 'current')}. The dropper turns {write(watts, 'power')} into heat."
    )
    if amps > LED_LIMIT_AMPS:
        limit = write(LED_LIMIT_AMPS, "current")
        sentence += f" Too much: a small LED is made for {limit} at most. Take more ohms."
    return bench_dropper(volts, ohms, LED_VOLTS)[0], sentence


def _dropper_controls():
    volts = widgets.FloatSlider(
        min=BENCH_VOLTS[0], max=BENCH_VOLTS[1], step=0.5, value=12.0, readout=False
    )
    box = widgets.BoundedFloatText(
        min=BENCH_VOLTS[0], max=BENCH_VOLTS[1], step=0.5, value=12.0,
        description="Supply in V:", style={"description_width": "initial"},
    )  # fmt: skip
    widgets.link((volts, "value"), (box, "value"))
    ohms = widgets.Dropdown(
        options=[(write(value, "resistance"), value) for value in BENCH_OHMS],
        value=1000.0, description="Dropper:", style={"description_width": "initial"},
    )  # fmt: skip
    return [volts, box, ohms], {"volts": box, "ohms": ohms}


EXPLORERS = {"dropper": (dropper, _dropper_controls)}


def explore(name):
    """Show an explorer.

    Parameters
    ----------
    name : str
        One of `EXPLORERS`.
    """
    if name not in EXPLORERS:
        known = ", ".join(EXPLORERS)
        show(Page([Line("note", f"There is no explorer {name!r}. There are: {known}.")]))
        return
    function, make_controls = EXPLORERS[name]
    laid_out, inputs = make_controls()
    state = {key: control.value for key, control in inputs.items()}
    svg, sentence = function(**state)
    if not current_session().workshop_copy:
        picture = widgets.HTML()

        def redraw(_=None):
            svg, sentence = function(**{key: c.value for key, c in inputs.items()})
            picture.value = f'{svg}<p aria-live="polite">{escape(sentence)}</p>'

        for control in inputs.values():
            control.observe(redraw, "value")
        redraw()
        show_controls(
            frame([*laid_out, picture], f"cw-e-{name}", hides=f"cw-x-{name}"),
        )
    show(
        Page(
            [Line("text", sentence), Line("hint", "A calculation, not a measurement.")],
            svg,
            name=f"cw-x-{name}",
        )
    )
