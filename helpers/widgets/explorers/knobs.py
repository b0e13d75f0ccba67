"""What an explorer can be moved by, described as plain data and built as labelled controls.

Every slider has a number box with the label, so that each value can also be typed. Knows no
explorer.
"""

from dataclasses import dataclass

import ipywidgets as widgets

_LABELLED = {"description_width": "initial"}


@dataclass(frozen=True)
class Slider:
    """A number between two ends.

    Parameters
    ----------
    key : str
        The parameter of the explorer's function.
    label : str
        What stands before the box, unit included.
    low, high, step, start : float
        Ends, step and first value, in the unit of the label.
    """

    key: str
    label: str
    low: float
    high: float
    step: float
    start: float

    def build(self):
        """Return what is laid out, and the control that holds the value."""
        ends = {"min": self.low, "max": self.high, "step": self.step, "value": self.start}
        box = widgets.BoundedFloatText(
            **ends, description=f"{self.label}:", style=_LABELLED, layout={"width": "auto"}
        )
        slider = widgets.FloatSlider(
            **ends, readout=False, layout={"width": "20rem", "margin": "2px 14px"}
        )
        _tie(slider, box, self.step)
        row = widgets.HBox([box, slider])
        row.add_class("cw-slider")
        return row, box


def _tie(slider, box, step):
    """Let slider and box follow each other, though the box can say what the slider cannot.

    The slider on the page snaps to its steps and reports that, with noise (0.30000000000000004):
    such an echo of a typed number must not change what was typed.
    """

    def follow_slider(change):
        if abs(change["new"] - box.value) > 0.51 * step:
            box.value = round(change["new"], 6)

    def follow_box(change):
        if abs(change["new"] - slider.value) > 1e-6:
            slider.value = change["new"]

    slider.observe(follow_slider, "value")
    box.observe(follow_box, "value")


@dataclass(frozen=True)
class Choice:
    """One of a few values.

    Parameters
    ----------
    key : str
        The parameter of the explorer's function.
    label : str
        What stands before the list.
    options : dict
        Text to value, in the order of the list.
    start : object
        The first value.
    """

    key: str
    label: str
    options: dict
    start: object

    def build(self):
        """Return what is laid out, and the control that holds the value: here the same."""
        control = widgets.Dropdown(
            options=list(self.options.items()), value=self.start,
            description=f"{self.label}:", style=_LABELLED, layout={"width": "auto"},
        )  # fmt: skip
        return control, control


@dataclass(frozen=True)
class Entry:
    """A text that sets the other controls.

    Parameters
    ----------
    label : str
        What stands before the box.
    meaning : callable
        From the typed text to values for the other controls; raises ValueError with a message
        for the person who typed.
    """

    label: str
    meaning: object

    def build(self):
        """Return the box to type in."""
        return widgets.Text(
            description=f"{self.label}:", style=_LABELLED, continuous_update=False,
            layout={"width": "22rem"},
        )  # fmt: skip
