"""Live picture of a power against what a resistor may turn into heat at its ambient.

Gets curves and numbers; computes no physics.
"""

from helpers.figures.live.chart import Axis, Chart, legend, picture
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
    full = allowed_watts[0]
    top = (2.3 if watts > 1.2 * full else 1.3) * full
    seen = min(watts, top)
    ticks = {full * quarter / 4: write(full * quarter / 4, "power") for quarter in range(0, 9, 2)}
    chart = Chart(
        (80, 66, 800, 260),
        Axis(celsius[0], celsius[-1], "air around the part in °C", _tens(celsius)),
        Axis(0, top, "power", {at: text for at, text in ticks.items() if at <= top}),
    )
    around = [*celsius, celsius[-1], celsius[0]]
    chart.fill(around, [*allowed_watts, 0, 0], ALLOWED_FACE)
    chart.fill(around, [*(allowed_watts / 2), 0, 0], HALF_FACE)
    chart.line(celsius, allowed_watts, "limit")
    chart.line(celsius, allowed_watts / 2, "eye")
    chart.mark(ambient, seen, "heat")
    right = ambient < 0.6 * celsius[-1]
    here = f"here: {write(watts, 'power')} at {write(ambient, 'temperature')}"
    here += ", beyond this picture" if watts > top else ""
    shift = (14 if right else -14, 18 if seen > 0.9 * top else -10)
    chart.note(ambient, seen, here, "start" if right else "end", shift, bold=True)
    names = legend(
        330, 56, ("limit", "the most that the part may take"), ("eye", "half of it: room to spare")
    )
    return picture(
        380, "A power under the derating line of a resistor", title, chart.svg(), names
    )  # fmt: skip


def _tens(celsius):
    return {value: f"{value}" for value in range(0, int(celsius[-1]) + 1, 20)}
