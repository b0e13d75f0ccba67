"""Live picture of a power against what a resistor may turn into heat at its ambient.

Gets curves and numbers; computes no physics.
"""

from helpers.figures.live.chart import Axis, Chart, picture
from helpers.quantities import write

ALLOWED_FACE, HALF_FACE = "#f7ead9", "#dcefe7"


def rating(celsius, allowed_watts, point, title):
    """Return the picture of a working point under the derating line.

    Parameters
    ----------
    celsius, allowed_watts : ndarray
        The derating line [degC], [W].
    point : tuple of float
        Ambient and power of the part [degC], [W].
    title : str
        The verdict, with its numbers.

    Returns
    -------
    svg : str
    """
    ambient, watts = point
    top = 1.2 * max(allowed_watts.max(), watts)
    chart = Chart(
        (80, 66, 800, 260),
        Axis(celsius[0], celsius[-1], "air around the part in °C", _tens(celsius)),
        Axis(0, top, "power in W", {top * k / 4: write(top * k / 4, "power", 2) for k in range(5)}),
    )
    around = [*celsius, celsius[-1], celsius[0]]
    chart.fill(around, [*allowed_watts, 0, 0], ALLOWED_FACE)
    chart.fill(around, [*(allowed_watts / 2), 0, 0], HALF_FACE)
    chart.line(celsius, allowed_watts, "limit")
    chart.line(celsius, allowed_watts / 2, "eye")
    full = allowed_watts[0]
    chart.note(celsius[0], full, "the most that the part may take", shift=(8, -8))
    chart.note(celsius[0], full / 2, "half of it: room to spare", shift=(8, -8))
    chart.mark(ambient, watts, "heat")
    right = ambient < 0.7 * celsius[-1]
    chart.note(
        ambient, watts, f"here: {write(watts, 'power')} at {write(ambient, 'temperature')}",
        "start" if right else "end", (14 if right else -14, -10), bold=True,
    )  # fmt: skip
    return picture(380, "A power under the derating line of a resistor", title, chart.svg())


def _tens(celsius):
    return {value: f"{value}" for value in range(0, int(celsius[-1]) + 1, 20)}
