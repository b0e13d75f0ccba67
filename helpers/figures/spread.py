"""How the readings of many boards spread about a prediction: the one picture that is plotted."""

from base64 import b64encode
from io import BytesIO

import numpy as np

from helpers.figures.chart import picture
from helpers.figures.style import INK, LOOKS
from helpers.physics import rehearsal, uncertainty
from helpers.quantities import write_as

BINS, WIDE, HIGH, DOTS = 50, 4.6, 2.6, 100
LETTERS = 12.8  # so that 13 px are left where a window of 480 px makes it narrower [pt]


def readings_of_boards(volts, ohms_each):
    """Draw what a meter reads on many boards, and the limits that squares give their prediction.

    Parameters
    ----------
    volts, ohms_each : float
        The rehearsal supply [V] and each of two resistors [ohm].

    Returns
    -------
    drawn : Drawn

    Notes
    -----
    Plotted on white in every theme, at twice the dots, to be sharp in print and at 200 %.

    Examples
    --------
    >>> readings_of_boards(24.0, 100e3).finding.replace("\\xa0", " ")
    'Of 10 000 boards 96 % read within the limits: 10.35 V to 11.34 V.'
    """
    values = rehearsal.volts_on_one_of_many(volts, ohms_each)
    middle, standard = rehearsal.volts_on_one(volts, ohms_each)
    ends = middle - uncertainty.expanded(standard), middle + uncertainty.expanded(standard)
    within = np.mean((values >= ends[0]) & (values <= ends[1]))
    many = f"{values.size:,}".replace(",", "\u00a0")
    low, high, least, most, top = (
        write_as(each, "V", 4) for each in (*ends, values.min(), values.max(), middle)
    )
    finding = f"Of {many} boards {within:.0%} read within the limits: {low} to {high}."
    finding = finding.replace("%", "\u00a0%")
    details = f"A hill of bars, highest about {top}; the outermost boards read {least} and {most}."
    bars = _plotted(values, ends)
    return picture("Bars: how many boards read what", finding, bars, details=details)


def _plotted(values, ends):
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(WIDE, HIGH), facecolor="white", layout="constrained")
    FigureCanvasAgg(figure)
    axes = figure.add_subplot()
    axes.hist(values, BINS, color=LOOKS["volts"].colour)
    for limit in ends:
        axes.axvline(limit, color=INK, linewidth=2, linestyle=(0, LOOKS["limit"].dash))
        axes.annotate(write_as(limit, "V", 4), (limit, 1.0), xycoords=("data", "axes fraction"),
                      ha="center", va="bottom", size=LETTERS)  # fmt: skip
    axes.set_xlabel("reading (V)", size=LETTERS)
    axes.set_ylabel("boards", size=LETTERS)
    axes.tick_params(labelsize=LETTERS)
    axes.spines[["top", "right"]].set_visible(False)
    file = BytesIO()
    figure.savefig(file, dpi=2 * DOTS, metadata={"Software": None})
    data = b64encode(file.getvalue()).decode("ascii")
    said = "A histogram of the readings in volts, with a dashed line at each limit"
    return (
        f'<img alt="{said}" width="{WIDE * DOTS:.0f}" src="data:image/png;base64,{data}" '
        'style="max-width:100%;background:#fff"/>'
    )
