"""Live picture of a current through the body against the zones of IEC 60479-1.

Gets borders and numbers; computes no physics.
"""

from helpers.figures.live.chart import Axis, Chart, picture

_AMPS = {1e-4: "0.1 mA", 1e-3: "1 mA", 1e-2: "10 mA", 1e-1: "100 mA", 1.0: "1 A"}
_SECONDS = {0.01: "10 ms", 0.1: "0.1 s", 1.0: "1 s", 10.0: "10 s"}
_FACES = ("#eef5ee", "#f5f0d8", "#f6dcc6", "#efbfc4")


def zones(seconds, borders, names, point, title):
    """Return the picture of the zones with a working point in it.

    Parameters
    ----------
    seconds : ndarray
        Times at which the borders are known [s].
    borders : sequence of ndarray
        Current of each border at those times, lowest first [A].
    names : sequence of str
        Names of the zones, one more than borders.
    point : tuple of float
        Current and time [A], [s]; put on the edge where it lies beyond the picture.
    title : str
        What the current does.

    Returns
    -------
    svg : str
    """
    names_both = "across: current through the body, rms; upwards: how long it flows"
    across = Axis(1e-4, 1.0, names_both, _AMPS, True)
    up = Axis(0.01, 10.0, "", _SECONDS, True)
    chart = Chart((90, 66, 790, 262), across, up)
    edges = [0 * seconds + across.low, *borders, 0 * seconds + across.high]
    for low, high, face in zip(edges, edges[1:], _FACES, strict=False):
        chart.fill([*low, *high[::-1]], [*seconds, *seconds[::-1]], face)
    for border in borders:
        chart.line(border, seconds, "limit")
    for low, high, name in zip(edges, edges[1:], names, strict=False):
        middle = (low[-1] * high[-1]) ** 0.5
        chart.note(middle, seconds[-1], name, "middle", (0, -9), bold=True)
    amps, time = point
    seen = min(max(amps, across.low), across.high)
    chart.mark(seen, time, "dimmed")
    right = seen < 0.05
    low_down = time < 0.02
    shift = (14 if right else -14, -12 if low_down else 22)
    chart.note(seen, time, "here", "start" if right else "end", shift, bold=True)
    return picture(386, "Zones of current and time, with a point", title, chart.svg())
