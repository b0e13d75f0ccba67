"""Live picture of a wave and of what three meters make of it. Computes no physics."""

from helpers.figures.live.chart import Axis, Chart, number_box, picture
from helpers.figures.live.waves import DEGREES
from helpers.quantities import write


def readings(degrees, values, crest, unit, boxes, title):
    """Return the picture of a wave with three readings.

    Parameters
    ----------
    degrees, values : ndarray
        The wave [deg], [V] or [A].
    crest : float
        Size that the scale has to hold [V] or [A].
    unit : str
        'V' or 'A'.
    boxes : sequence of (str, str, str)
        Name of the meter, its reading, and a remark.
    title : str
        The answer that the picture gives.

    Returns
    -------
    svg : str
    """
    quantity = {"V": "voltage", "A": "current"}[unit]
    low = -1.15 * crest if unit == "V" else 0.0
    ticks = {place: write(place, quantity) for place in (-crest, 0.0, crest) if place >= low}
    chart = Chart(
        (90, 66, 500, 258),
        Axis(0, 360, "angle in the cycle", DEGREES),
        Axis(low, 1.15 * crest, quantity, ticks),
    )
    chart.line(degrees, values, "dimmed" if unit == "V" else "led")
    drawn = [
        number_box(640, 82 + 106 * place, 200, *box) for place, box in enumerate(boxes)
    ]  # fmt: skip
    return picture(380, "A wave, and the readings of three meters", title, chart.svg(), *drawn)
