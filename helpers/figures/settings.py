"""Picture of what the dimmer's setting does to the light, as dots for the reader's own eye."""

import numpy as np

from helpers.figures.chart import SMALL, picture, words
from helpers.figures.scene import NIGHT, on_screen
from helpers.figures.words import share_of_one, whole_percent
from helpers.physics import light, phase_cut
from helpers.physics.operating_point import operating_point
from helpers.quantities import write


def brightness(circuit, supply, ohms_choices, firing_degrees_choices, chosen=(-1, -1)):
    """Draw how bright several droppers look at several settings, as dots on a dark panel.

    Parameters
    ----------
    circuit : str
        A key of `physics.circuits.CIRCUITS` [-].
    supply : mains.Supply
        The supply.
    ohms_choices : sequence of float
        One row each [ohm].
    firing_degrees_choices : sequence of float
        One column each, leading edge [deg].
    chosen : tuple of int
        Row and column of the dot that the finding is about [-].

    Returns
    -------
    drawn : Drawn
        With a picture in HTML.

    Raises
    ------
    ValueError
        If there is nothing to draw, more than six of either, or as `operating_point`.

    Notes
    -----
    A red LED of 2 V; the brightest dot counts as 100. The light of a dot's colour is in proportion
    to the mean current, as a screen that keeps to sRGB shows it, so that the reader's own eye does
    the rest; the number below is the CIE lightness.

    References
    ----------
    As `light.lightness`; coding of a screen's light: IEC 61966-2-1.

    Examples
    --------
    >>> from helpers.physics import mains
    >>> words = brightness("bridge", mains.Supply(230.0, 50.0), (100e3, 200e3), (0, 120)).finding
    >>> words.replace("\\xa0", " ").partition(". ")[0]
    '200 kΩ at 120°: 12 % of the light of the brightest dot looks 42 % as bright'
    """
    rows, columns = len(ohms_choices), len(firing_degrees_choices)
    if not (1 <= rows <= 6 and 1 <= columns <= 6):
        raise ValueError(f"{rows} droppers and {columns} settings were given; 1 to 6 of each fit.")
    dimmer = phase_cut.Dimmer("leading", np.asarray(firing_degrees_choices, dtype=float)[None])
    amps = operating_point(
        circuit, supply, dimmer, ohms=np.asarray(ohms_choices, dtype=float)[:, None]
    ).led_amps_mean
    share = amps / amps.max() if amps.max() else amps
    seen = light.lightness(share)
    row, column = chosen[0] % rows, chosen[1] % columns
    droppers = [write(ohms, "resistance") for ohms in ohms_choices]
    angles = [write(angle, "angle") for angle in firing_degrees_choices]
    finding = (
        f"{droppers[row]} at {angles[column]}: {whole_percent(share[row, column])} of the light of "
        f"the brightest dot looks {whole_percent(seen[row, column] / 100.0)} as bright"
    )
    if not amps.max():
        finding = "No dropper lights the LED at any of these settings"
    said = (
        f"{finding}. Its LED gets {write(amps[row, column], 'current')} on average, the brightest "
        f"{write(amps.max(), 'current')}."
    )
    name = "Lights in rows and columns, shaded by their light"
    svg = _dots(droppers, angles, share, seen, (row, column))
    return picture(name, said, svg, details=f"In full: {_dots_in_words(seen, droppers, angles)}.")


def _dots(rows, columns, shares, seen, chosen):
    high, wide = 78, 100 / len(columns)
    parts = [f'<rect width="100%" height="{high * len(rows)}" fill="{NIGHT}"/>']
    for place, text in enumerate(columns):
        weight = ' font-weight="bold"' if place == chosen[1] else ""
        parts.append(words(f"{wide * (place + 0.5):.1f}%", -8, text, more=weight))
    for line, text in enumerate(rows):
        weight = ' font-weight="bold"' if line == chosen[0] else ""
        parts.append(words(-8, high * (line + 0.5) + 5, text, "end", more=weight))
    for (line, place), share in np.ndenumerate(shares):
        x, y, look = f"{wide * (place + 0.5):.1f}%", high * (line + 0.5), seen[line, place]
        said = "&lt;1\u00a0%" if 0.0 < look < 1.0 else share_of_one(look / 100.0)
        parts.append(
            f'<circle cx="{x}" cy="{y - 10}" r="16" fill="{on_screen(share)}"/>'
            f'<text x="{x}" y="{y + 29}" font-size="{SMALL}" text-anchor="middle" fill="#e8e8e8" '
            f'style="forced-color-adjust:none">{said}</text>'
        )
    parts.append(
        f'<rect x="{wide * (chosen[1] + 0.04):.1f}%" y="{high * chosen[0] + 4}" '
        f'width="{0.92 * wide:.1f}%" '
        f'height="{high - 8}" rx="8" fill="none" stroke="#fff" stroke-width="2.5" '
        'stroke-dasharray="7 4"/>'
    )
    tall, left = high * len(rows), 16 + 8 * max(map(len, rows))
    return (
        f'<svg height="{tall}" style="display:block;overflow:visible;width:calc(100% - {left}px);'
        f'margin:26px 0 6px {left}px">{"".join(parts)}</svg>'
        "<div>The number under a light is how bright it looks against the brightest one.</div>"
    )


def _dots_in_words(seen, droppers, angles):
    return "; ".join(
        f"{ohms} "
        + ", ".join(f"{value:.0f} at {angle}" for value, angle in zip(line, angles, strict=True))
        for ohms, line in zip(droppers, seen, strict=True)
    )
