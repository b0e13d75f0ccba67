"""One look for every picture: colours, weights, and the sizes and axes of those plotted.

Each meaning has one colour that stands out from a white face and from a dark one, and a second
signal (dash or hatch), so that a picture reads the same for colour-blind eyes and on
black-and-white paper. What is plotted by matplotlib has a white face in every theme. No pyplot: a
figure belongs to who made it and is gone with it. Knows no physics and no question.
"""

from base64 import b64encode
from html import escape
from io import BytesIO
from textwrap import wrap
from typing import NamedTuple

from helpers.quantities import write_as

WIDTH, HEIGHT, DOTS_PER_INCH = 9.0, 4.0, 100
FONT, TEXT_SIZE, TITLE_SIZE = "DejaVu Sans", 11, 12.5
LINE_WEIGHT, THIN = 2.2, 0.8
INK, QUIET, FACE = "#1a1a1a", "#595959", "#ffffff"

_LEFT, _RIGHT, _BOTTOM, _TITLE_LINE, _LEGEND_ROW = 0.85, 0.3, 0.78, 0.235, 0.3
_LETTERS_PER_INCH = 9.8


class Look(NamedTuple):
    """How one meaning looks: a colour, and what says the same without colour."""

    colour: str
    dash: object
    hatch: str


#: One colour a meaning, in pictures and prose: what pushes, what lights, what heats, what is seen.
VOLTS, LIGHT, HEAT, EYE, GREY = "#1f7fc0", "#b87d00", "#c8321e", "#0a8268", "#757575"
_SOLID, _LONG, _SHORT, _MIXED = "-", (0, (6, 2)), (0, (2.5, 1.5)), (0, (7, 1.5, 1, 1.5))
LOOKS = {
    "mains": Look(GREY, (0, (1, 1.4)), "...."),
    "volts": Look(VOLTS, _SOLID, ""),
    "peak": Look(VOLTS, _LONG, ""),
    "rms": Look(VOLTS, _SHORT, "||"),
    "mean": Look(VOLTS, _MIXED, "--"),
    "led": Look(LIGHT, _SOLID, "\\\\"),
    "light": Look(LIGHT, _SOLID, "\\\\"),
    "led peak": Look(LIGHT, _LONG, "\\\\"),
    "led mean": Look(LIGHT, _MIXED, "//"),
    "heat": Look(HEAT, (0, (5, 1.2)), "xx"),
    "eye": Look(EYE, (0, (5, 1.5, 1, 1.5)), "++"),
    "eye from afar": Look(EYE, (0, (2, 1)), "oo"),
    "eye by day": Look(EYE, (0, (9, 1.5)), "OO"),
    "limit": Look(INK, (0, (9, 3)), ""),
    "held": Look(INK, (0, (4, 1.5, 1, 1.5, 1, 1.5)), ""),
}
"""Peak, rms and mean have a dash each, in the colour of what they are of."""


def underlined():
    """Return style rules that underline a word in a lesson as its line is drawn in a picture.

    Returns
    -------
    css : str
        One rule a meaning, for `<span class="cw-rms">` and its like. In forced colours the
        underline goes and the word stays.

    Examples
    --------
    >>> underlined().count("cw-rms")
    1
    """
    rules = ""
    for meaning, (colour, dash, _) in LOOKS.items():
        stops, at = [], 0.0
        for place, length in enumerate((1.0,) if dash == _SOLID else dash[1]):
            ink, start = "transparent" if place % 2 else colour, at
            at += LINE_WEIGHT * length
            stops.append(f"{ink} {start:.1f}px {at:.1f}px")
        rules += (
            f".cw-{meaning.replace(' ', '-')} {{padding-bottom: 2px; background: "
            f"repeating-linear-gradient(90deg, {', '.join(stops)}) 0 100% / 100% 2px no-repeat;}}\n"
        )
    return rules


def blank(title):
    """Return an empty figure with its title and its axes.

    Parameters
    ----------
    title : str
        The answer that the picture gives; wrapped to the width, its full stop left out.

    Returns
    -------
    figure : matplotlib.figure.Figure
        With its own Agg canvas; pyplot does not know it.
    axes : matplotlib.axes.Axes

    Examples
    --------
    >>> figure, axes = blank("The peak is 325 V")
    >>> figure.get_size_inches().tolist(), figure.texts[0].get_text()
    ([9.0, 4.0], 'The peak is 325 V')
    """
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(WIDTH, HEIGHT), dpi=DOTS_PER_INCH, facecolor=FACE)
    FigureCanvasAgg(figure)
    lines = wrap(
        title.removesuffix("."), int((WIDTH - 0.4) * _LETTERS_PER_INCH), break_on_hyphens=False
    )
    figure.text(
        0.2 / WIDTH, 1 - 0.1 / HEIGHT, "\n".join(lines), family=FONT, size=TITLE_SIZE,
        weight="bold", color=INK, va="top", linespacing=1.2,
    )  # fmt: skip
    top = HEIGHT - 0.16 - _TITLE_LINE * len(lines) - _LEGEND_ROW
    box = (
        _LEFT / WIDTH, _BOTTOM / HEIGHT,
        1 - (_LEFT + _RIGHT) / WIDTH, (top - _BOTTOM) / HEIGHT,
    )  # fmt: skip
    axes = figure.add_axes(box)
    _plain(axes)
    return figure, axes


def _plain(axes):
    axes.set_facecolor(FACE)
    axes.spines[["top", "right"]].set_visible(False)
    for side in ("left", "bottom"):
        axes.spines[side].set(color=QUIET, linewidth=THIN)
    axes.tick_params(
        labelfontfamily=FONT, labelsize=TEXT_SIZE - 1, color=QUIET, labelcolor=INK, width=THIN
    )
    axes.grid(True, color="#dddddd", linewidth=THIN)
    axes.set_axisbelow(True)


def name_axes(axes, across, up):
    """Name both axes, each with its unit.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Made by `blank`.
    across, up : tuple of (str, str)
        Name and unit of the horizontal and of the vertical axis; an empty unit is a pure number.

    Examples
    --------
    >>> figure, axes = blank("One cycle")
    >>> name_axes(axes, ("time", "ms"), ("voltage", "V"))
    >>> axes.get_xlabel(), axes.get_ylabel()
    ('time (ms)', 'voltage (V)')
    """
    for (name, unit), set_label in ((across, axes.set_xlabel), (up, axes.set_ylabel)):
        text = f"{name} ({unit})" if unit else name
        set_label(text, family=FONT, size=TEXT_SIZE, color=INK)


def count_in(axis, unit):
    """Write the numbers of an axis, kept in the glossary's unit, in another with a prefix.

    Parameters
    ----------
    axis : matplotlib.axis.Axis
        As `axes.yaxis`.
    unit : str
        Such as 'mA'.

    Examples
    --------
    >>> figure, axes = blank("Current")
    >>> count_in(axes.yaxis, "mA")
    >>> axes.yaxis.get_major_formatter()(0.0015)
    '1.5'
    """
    axis.set_major_formatter(lambda value, _: write_as(value, unit, 6).partition("\u00a0")[0])


def legend(axes):
    """Put the legend in its row above the axes, where it can hide nothing.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Of a figure made by `blank`.
    """
    entries = axes.get_legend_handles_labels()[0]
    axes.legend(
        handles=entries, loc="lower left", bbox_to_anchor=(0, 1.0), borderaxespad=0.2,
        ncols=len(entries), frameon=False, handlelength=2.6, columnspacing=1.4,
        prop={"family": FONT, "size": TEXT_SIZE - 1}, labelcolor=INK,
    )  # fmt: skip


def image(figure, alternative):
    """Return a figure as an `<img>` of its own width, drawn at twice the dots, with its words.

    Parameters
    ----------
    figure : matplotlib.figure.Figure
        Made by `blank`.
    alternative : str
        What it shows, for who cannot see it.

    Returns
    -------
    html : str
        The same text for the same figure.

    Examples
    --------
    >>> image(blank("The peak is 325 V")[0], "A peak of 325 V")[:46]
    '<img alt="A peak of 325 V" width="900" src="da'
    """
    file = BytesIO()
    figure.savefig(file, format="png", dpi=2 * DOTS_PER_INCH, metadata={"Software": None})
    data = b64encode(file.getvalue()).decode("ascii")
    width = round(WIDTH * DOTS_PER_INCH)
    return (
        f'<img alt="{escape(alternative)}" width="{width}" src="data:image/png;base64,{data}" '
        'style="max-width:none;background:#fff">'
    )
