"""Live picture of lights side by side, as bright against each other as they really are.

Gets shares of light; computes no physics.
"""

from helpers.figures.live.chart import QUIET, SMALL, picture, words
from helpers.quantities import write

NIGHT = "#141414"
COLOUR = (1.0, 0.42, 0.12)


def lights(columns, rows, light_shares, look_shares, chosen, title):
    """Return the picture of a bench of lights: one row a dropper, one column a setting.

    Parameters
    ----------
    columns, rows : sequence of str
        What stands over the columns and before the rows.
    light_shares, look_shares : ndarray
        Light and apparent brightness of each, row by row, against the brightest [-].
    chosen : tuple of int
        Row and column of the light that the sentence speaks of.
    title : str
        The answer that the picture gives.

    Returns
    -------
    svg : str

    Notes
    -----
    A screen gives light in proportion to its linear value, so a dot with half the light has half
    the linear value, and the reader's own eye does the rest.

    References
    ----------
    IEC 61966-2-1 (sRGB), the transfer curve of screens.
    """
    left, top, wide, high = 150, 72, 126, 78
    parts = [
        f'<rect x="{left - 8}" y="{top}" width="{wide * len(columns) + 16}" '
        f'height="{high * len(rows)}" fill="{NIGHT}"/>'
    ]
    for place, text in enumerate(columns):
        bold = place == chosen[1]
        parts.append(words(left + wide * (place + 0.5), top - 10, text, SMALL, "middle", bold))
    for line, text in enumerate(rows):
        y = top + high * (line + 0.5)
        parts.append(words(left - 18, y + 5, text, SMALL, "end", line == chosen[0]))
        for place in range(len(columns)):
            x = left + wide * (place + 0.5)
            paint = _paint(light_shares[line][place])
            parts.append(f'<circle cx="{x}" cy="{y - 10}" r="19" fill="{paint}"/>')
            text = write(100 * look_shares[line][place], "percent", 2)
            parts.append(
                f'<text x="{x}" y="{y + 29}" font-size="{SMALL}" text-anchor="middle" '
                f'fill="#e8e8e8">{text}</text>'
            )
    x, y = left + wide * chosen[1] + 6, top + high * chosen[0] + 5
    parts.append(
        f'<rect x="{x}" y="{y}" width="{wide - 12}" height="{high - 10}" rx="8" fill="none" '
        'stroke="#ffffff" stroke-width="2.5" stroke-dasharray="7 4"/>'
    )
    under = "The number under a light is how bright it looks against the brightest one."
    height = top + high * len(rows) + 38
    parts.append(words(left, height - 14, under, SMALL, colour=QUIET))
    return picture(height, "Lights in rows and columns, shaded by their light", title, *parts)


def _paint(share):
    channels = (round(255 * _screen_value(share * channel)) for channel in COLOUR)
    return "#" + "".join(f"{channel:02x}" for channel in channels)


def _screen_value(linear):
    """Return the sRGB value that makes a screen give so much of its light."""
    if linear <= 0.0031308:
        return 12.92 * linear
    return 1.055 * linear ** (1 / 2.4) - 0.055
