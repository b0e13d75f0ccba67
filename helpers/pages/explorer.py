"""What an explorer is: a picture to move by hand, its controls as plain data, and its first page.

Knows no single explorer and no widget.
"""

import re
from dataclasses import dataclass
from html import escape

from helpers.exercises.wording import Line
from helpers.pages.page import Page
from helpers.pages.pictures import below

CALCULATED = "A calculation, not a measurement."


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

    def end_said(self, value):
        """Return what is said where nothing lies beyond a value, or nothing; at rest nothing.

        Whether a number was typed beyond it and cut is known to the page alone.
        """
        if self.low < value < self.high or value == self.start:
            return ""
        name, _, unit = self.label.rpartition(" in ")
        end = f"{name.rstrip(',')} {value:g}\u00a0{unit}"
        return f" {end} is the {'least' if value == self.low else 'most'} that can be set here."


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


@dataclass(frozen=True)
class Explorer:
    """An explorer, described.

    Parameters
    ----------
    draw : callable
        From a supply and the value of each control, by its key, to what is drawn.
    controls : callable
        From a supply to the controls, in the order in which they are laid out.
    tries : tuple of str
        Things to try; true for every supply.
    caution : str
        What is dangerous about the subject; empty where nothing is. It begins with ⚠, and gets a
        frame, where what is shown is the danger itself, or a reading that seems to deny it.
    remembers : bool
        Whether `draw` takes the state in which the hand last rested, as `before`.
    takes : tuple of str
        Controls that a learner's own brief can set, by their keys.
    """

    draw: object
    controls: object
    tries: tuple
    caution: str = ""
    remembers: bool = False
    takes: tuple = ()

    def warning(self):
        """Return the caution as lines, none or one."""
        role = "danger" if self.caution.startswith("⚠") else "caution"
        return [Line(role, self.caution)] if self.caution else []

    def open_on(self, supply):
        """Return the function that draws a state on a supply, and the controls.

        Where a slider was moved to its end, it says that it is one.
        """
        controls = self.controls(supply)
        sliders = [control for control in controls if isinstance(control, Slider)]

        def draw(**state):
            drawn = self.draw(supply, **state)
            ends = (slider.end_said(state[slider.key]) for slider in sliders)
            return drawn._replace(finding=drawn.finding + "".join(ends))

        return draw, controls


def underlined(said):
    """Return what is said as HTML, with peak, rms and mean underlined as their lines are drawn.

    In a sentence about the LED or a current, peak and mean are those of the LED's current, whose
    rms has no line.

    Examples
    --------
    >>> underlined("230 V rms. The LED's mean is low.").count("cw-led-mean")
    1
    """

    return "".join(
        re.sub(r"\b(rms|peak|mean)\b", rf'<span class="cw-{of}\1">\1</span>', sentence)
        for sentence in re.split(r"(?<=\. )", escape(said))
        for of in ("led-" if re.search(r"LED|light|[\xa0mµ]A\b", sentence) else "",)
    )


def first_state(controls):
    """Return the values that the controls start with, by parameter."""
    return {control.key: control.start for control in controls if not isinstance(control, Entry)}


def still_page(explorer, supply, name):
    """Return the first picture and what it says as a page that lasts."""
    draw, controls = explorer.open_on(supply)
    state = first_state(controls)
    drawn = draw(**state)
    lines = [*explorer.warning(), Line("hint", CALCULATED), *below(drawn._replace(details=""))]
    lines += [Line("text", "Things to try:")]
    lines += [Line("option", f"– {text}") for text in explorer.tries]
    if "shown" in state:  # what is to be predicted stands folded, for who has no kernel
        lines.append(Line("folded", f"The curve: {draw(**state | {'shown': True}).finding}"))
    return Page(lines, drawn.picture, name=name)
