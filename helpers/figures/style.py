"""One look for every plotted picture: sizes, weights, fonts, colours, and axes with units.

Each meaning has one colour and a second signal (dash, marker or hatch), so that a picture reads
the same for colour-blind eyes and on black-and-white paper. The face is white in every theme. No
pyplot: a figure belongs to who made it and is gone with it. Knows no physics and no question.
"""

from io import BytesIO
from textwrap import wrap
from typing import NamedTuple

from helpers.quantities import write, write_as

WIDTH, HEIGHT, DOTS_PER_INCH = 9.0, 4.0, 100
FONT, TEXT_SIZE, TITLE_SIZE = "DejaVu Sans", 11, 12.5
LINE_WEIGHT, THIN, HALO = 2.2, 0.8, 3.0
INK, QUIET, FACE = "#1a1a1a", "#595959", "#ffffff"

_LEFT, _RIGHT, _BOTTOM, _TITLE_LINE, _LEGEND_ROW = 0.85, 0.3, 0.78, 0.235, 0.3
_LETTERS_PER_INCH = 9.8


class Look(NamedTuple):
    """How one meaning looks: a colour, and what says the same without colour."""

    colour: str
    dash: object
    marker: str
    hatch: str


LOOKS = {
    "mains": Look("#6b6b6b", (0, (1, 1.4)), "o", "...."),
    "dimmed": Look("#0072b2", "-", "s", ""),
    "removed": Look("#8a8a8a", "-", "x", "////"),
    "led": Look("#b84a00", "-", "D", "\\\\\\\\"),
    "heat": Look("#b84a00", (0, (6, 2)), "s", "xx"),
    "light": Look("#0072b2", "-", "o", ""),
    "eye": Look("#00715a", (0, (5, 1.5, 1, 1.5)), "^", "++"),
    "volts": Look("#8f4a7d", (0, (2.5, 1.5)), "v", "||"),
    "mean": Look("#7a5c00", (0, (7, 1.5, 1, 1.5)), "d", "--"),
    "limit": Look("#1a1a1a", (0, (9, 3)), "_", ""),
}


def blank(title, height=HEIGHT, rows=1, columns=1, legend=False, gap=1.0, left=_LEFT, heading=0.0):
    """Return an empty figure with its title, and its axes.

    Parameters
    ----------
    title : str
        The answer that the picture gives; wrapped to the width, its full stop left out.
    height : float
        Height of the whole picture [inch]; its width is always the same.
    rows, columns : int
        How many axes [-].
    legend : bool
        Leave a row for `legend` between title and axes.
    gap : float
        Room between neighbouring axes [inch].
    left : float
        Room left of the axes, for long names on the vertical axis [inch].
    heading : float
        Room for headings above each of several axes [inch].

    Returns
    -------
    figure : matplotlib.figure.Figure
        With its own Agg canvas; pyplot does not know it.
    axes : matplotlib.axes.Axes or array of Axes
        One, or an array of `rows` x `columns` with the ones squeezed out.

    Examples
    --------
    >>> figure, axes = blank("The peak is 325 V")
    >>> figure.get_size_inches().tolist(), figure.texts[0].get_text()
    ([9.0, 4.0], 'The peak is 325 V')
    """
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(WIDTH, height), dpi=DOTS_PER_INCH, facecolor=FACE)
    FigureCanvasAgg(figure)
    title_room = set_title(figure, title)
    top = title_room + (_LEGEND_ROW if legend else 0.08) + heading
    wide = (WIDTH - left - _RIGHT - gap * (columns - 1)) / columns
    high = (height - top - _BOTTOM - gap * (rows - 1)) / rows
    axes = figure.subplots(
        rows,
        columns,
        gridspec_kw={
            "left": left / WIDTH,
            "right": 1 - _RIGHT / WIDTH,
            "bottom": _BOTTOM / height,
            "top": 1 - top / height,
            "wspace": gap / wide,
            "hspace": gap / high,
        },
    )
    for one in figure.axes:
        _plain(one)
    return figure, axes


def set_title(figure, title):
    """Write the title, wrapped to the width, in place of any earlier one.

    Parameters
    ----------
    figure : matplotlib.figure.Figure
        Made by `blank`.
    title : str
        The answer that the picture gives.

    Returns
    -------
    inches : float
        Room that the title takes at the top [inch].
    """
    lines = wrap(
        title.removesuffix("."), int((WIDTH - 0.4) * _LETTERS_PER_INCH), break_on_hyphens=False
    )
    height = figure.get_size_inches()[1]
    if not figure.texts:
        figure.text(
            0.2 / WIDTH,
            1 - 0.1 / height,
            "",
            family=FONT,
            size=TITLE_SIZE,
            weight="bold",
            color=INK,
            va="top",
            linespacing=1.2,
        )
    figure.texts[0].set_text("\n".join(lines))
    return 0.16 + _TITLE_LINE * len(lines)


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


def unit_of(value, name):
    """Return the unit, prefix included, in which people write a value.

    Parameters
    ----------
    value : float
        The largest value to be shown [the glossary's unit].
    name : str
        A name of the glossary.

    Examples
    --------
    >>> unit_of(0.0027, "current"), unit_of(0.43, "power")
    ('mA', 'mW')
    """
    return write(value, name).partition("\u00a0")[2]


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


def name_cycle(axes, supply, up):
    """Name the axes of a picture of one mains cycle: degrees and milliseconds, and `up`.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Made by `blank`; drawn over 0 to 360 degrees.
    supply : mains.Supply
        Its frequency gives the milliseconds.
    up : tuple of (str, str)
        Name and unit of the vertical axis.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> figure, axes = blank("One cycle")
    >>> name_cycle(axes, mains.Supply(100.0, 50.0), ("voltage", "V"))
    >>> [tick.get_text() for tick in axes.get_xticklabels()][2]
    '90°\\n5\\xa0ms'
    """
    places = range(0, 361, 45)
    times = (write_as(place / 360.0 / supply.hertz, "ms", 3) for place in places)
    names = [f"{place}°\n{time}" for place, time in zip(places, times, strict=True)]
    axes.set_xlim(0, 360)
    axes.set_xticks(list(places), names, family=FONT, size=TEXT_SIZE - 1)
    axes.axhline(0, color=QUIET, linewidth=THIN, zorder=1)
    name_axes(axes, ("place in the mains cycle", "degrees, milliseconds"), up)


def draw_line(axes, across, up, meaning, label="", every=None, **more):
    """Draw a curve in the look of its meaning.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Where.
    across, up : array
        The curve's points.
    meaning : str
        A name in `LOOKS`.
    label : str
        Its words in the legend; none without.
    every : int or None
        Put a marker on every so many points; None for no markers [-].
    **more
        Handed to `Axes.plot`.

    Returns
    -------
    line : matplotlib.lines.Line2D
    """
    look = LOOKS[meaning]
    options = {
        "color": look.colour,
        "linestyle": look.dash,
        "linewidth": LINE_WEIGHT,
        "label": label or "_",
        "marker": look.marker if every else "",
        "markevery": every,
        "markersize": 7,
    }
    return axes.plot(across, up, **{**options, **more})[0]


def legend(axes, entries=None, columns=None):
    """Put the legend in its row above the axes, where it can hide nothing.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Of a figure made by `blank` with `legend=True`.
    entries : sequence of artists or None
        What to list; None for every artist of the axes with a label.
    columns : int or None
        Entries in a row; None for all in one [-].
    """
    entries = axes.get_legend_handles_labels()[0] if entries is None else entries
    axes.legend(
        handles=entries,
        loc="lower left",
        bbox_to_anchor=(0, 1.0),
        borderaxespad=0.2,
        ncols=columns or len(entries),
        frameon=False,
        handlelength=2.6,
        columnspacing=1.4,
        prop={"family": FONT, "size": TEXT_SIZE - 1},
        labelcolor=INK,
    )


def note(axes, across, up, text, **more):
    """Write a word beside what it names, on a white halo.

    Parameters
    ----------
    axes : matplotlib.axes.Axes
        Where.
    across, up : float
        Place, in the units of the axes, or of `transform`.
    text : str
        A few words, with the number and its unit.
    **more
        Handed to `Axes.text`.

    Returns
    -------
    text : matplotlib.text.Text
    """
    from matplotlib.patheffects import withStroke

    options = {
        "family": FONT,
        "size": TEXT_SIZE - 1,
        "color": INK,
        "path_effects": [withStroke(linewidth=HALO, foreground=FACE)],
    }
    return axes.text(across, up, text, **{**options, **more})


def png(figure):
    """Return a figure as PNG bytes: the same bytes for the same figure.

    Parameters
    ----------
    figure : matplotlib.figure.Figure
        Made by `blank`.

    Returns
    -------
    data : bytes

    Examples
    --------
    >>> png(blank("The peak is 325 V")[0])[1:4]
    b'PNG'
    """
    file = BytesIO()
    figure.savefig(file, format="png", dpi=figure.dpi, metadata={"Software": None})
    return file.getvalue()
