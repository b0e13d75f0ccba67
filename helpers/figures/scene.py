"""Things as they are seen: a lamp with its halo, a pot and its heat, a resistor that gets warm.

Pieces of SVG in pixels that never shrink, so that letters keep their size. Computes no physics:
shares are handed in.
"""

import numpy as np

from helpers.figures.chart import SMALL, words
from helpers.figures.style import EYE, HEAT, LIGHT

NIGHT = "#141414"
_AMBER = np.array([1.0, 0.42, 0.12])


def on_screen(share):
    """Return the colour in which a screen gives this share of an amber light.

    Parameters
    ----------
    share : float
        Of the light, 0 to 1 [-].

    References
    ----------
    IEC 61966-2-1, for a screen that keeps to sRGB.

    Examples
    --------
    >>> on_screen(1.0), on_screen(0.0)
    ('#ffad61', '#000000')
    """
    linear = share * _AMBER
    coded = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)
    return "#" + "".join(f"{round(255 * channel):02x}" for channel in coded)


def lamp(x, y, share, look):
    """Return an LED by night: its light as a colour, how bright it looks as the size of its halo.

    Parameters
    ----------
    x, y : float
        Its middle [px].
    share, look : float
        Of the light, and of how bright it looks, 0 to 1 [-].
    """
    rings = "".join(
        f'<circle cx="{x}" cy="{y}" r="{10 + reach * look:.1f}" fill="{LIGHT}" fill-opacity=".2"/>'
        for reach in ((34, 24, 14, 6) if look > 0.0 else ())
    )
    return (
        f'{rings}<circle cx="{x}" cy="{y}" r="10" fill="{on_screen(min(share, 1.0))}" '
        'stroke="#8a8a8a" stroke-width="1.5"/>'
    )


def by_night(x, y, share, look, *lines, broken=False):
    """Return a lamp on a dark ground with lines of words beside it.

    Parameters
    ----------
    x, y : float
        Upper left corner; it is 290 wide and 96 high [px].
    share, look : float
        As for `lamp` [-].
    *lines : str
        What is said of it.
    broken : bool
        Draw it with a crack [-].
    """
    crack = f'<path d="M{x + 40} {y + 30}l12 14 -6 6 14 18" fill="none" stroke="#fff" '
    crack += 'stroke-width="3"/>'
    letters = "".join(
        f'<text x="{x + 112}" y="{y + 52 + 20 * (place - (len(lines) - 1) / 2):.1f}" '
        f'fill="#e8e8e8" font-size="{SMALL}" style="forced-color-adjust:none">{line}</text>'
        for place, line in enumerate(lines)
    )
    ground = (
        f'<rect x="{x}" y="{y}" width="290" height="96" rx="8" fill="{NIGHT}" stroke="#757575"/>'
    )
    return f"{ground}{lamp(x + 54, y + 48, share, look)}{crack if broken else ''}{letters}"


def pot(x, y, share, *lines):
    """Return a pot that is filled with heat, with lines of words beside it.

    Parameters
    ----------
    x, y : float
        Upper left corner; the pot is 96 wide and 76 high [px].
    share : float
        Of its full heat; more than one runs over its rim [-].
    *lines : str
        What is said of it.
    """
    high = 62 * min(share, 1.15)
    steam = "".join(
        f'<path d="M{x + 28 + 20 * place} {y + 6}q-5 -6 0 -11t0 -11" fill="none" stroke="{HEAT}" '
        f'stroke-width="2.5"/>'
        for place in range(round(3 * min(share, 1.0)))
    )
    body = f"M{x} {y + 8}h96M{x + 6} {y + 8}v56q0 12 12 12h60q12 0 12 -12v-56"
    return (
        f'{steam}<rect x="{x + 8}" y="{y + 74 - high:.1f}" width="80" height="{high:.1f}" '
        f'rx="6" fill="{HEAT}"/><path d="{body}" fill="none" stroke="currentColor" '
        f'stroke-width="2.5"/>' + beside_it(x + 112, y + 44, lines)
    )


def resistor(x, y, warmth, *lines):
    """Return a resistor between its wires, the redder the warmer, with words beside it.

    Parameters
    ----------
    x, y : float
        Left end of its wire; it is 96 wide [px].
    warmth : float
        Of the most that it is to be shown with; beyond one it glows [-].
    *lines : str
        What is said of it.
    """
    glow = ""
    if warmth > 1.0:
        glow = f'<rect x="{x + 12}" y="{y - 17}" width="72" height="34" rx="12" fill="{HEAT}" '
        glow += 'fill-opacity=".35"/>'
    return (
        f'<path d="M{x} {y}h96" stroke="currentColor" stroke-width="2"/>{glow}'
        f'<rect x="{x + 20}" y="{y - 10}" width="56" height="20" style="fill:var('
        '--jp-layout-color0, #fff)"/>'
        f'<rect x="{x + 20}" y="{y - 10}" width="56" height="20" fill="{HEAT}" fill-opacity="'
        f'{min(max(warmth, 0.0), 1.0):.2f}" stroke="currentColor" stroke-width="2"/>'
        + beside_it(x + 112, y, lines)
    )


def distance(x, y, metres, axis, said):
    """Return a way from a light into the room, and how far along it the light is noticed.

    Parameters
    ----------
    x, y : float
        Its upper left corner; it is 290 wide and 54 high [px].
    metres : float
        How far the light is noticed [m].
    axis : Axis
        Of the places that are drawn [m].
    said : str
        What stands above it.
    """

    def place(at):
        return x + 20 + 250 * float(axis.share(np.clip(at, axis.low, axis.high)))

    marks = "".join(
        f'<path d="M{place(at):.1f} {y + 26}v12" stroke="currentColor"/>'
        + words(f"{place(at):.1f}", y + 52, text)
        for at, text in axis.ticks.items()
    )
    return (
        words(x, y + 13, said, "start")
        + f'<path d="M{x + 20} {y + 32}h250" stroke="currentColor"/>{marks}'
        f'<path d="M{x + 20} {y + 32}H{place(metres):.1f}" stroke="{EYE}" stroke-width="9"/>'
    )


def beside_it(x, y, lines):
    """Return lines of words around a height [px]."""
    return "".join(
        words(x, y + 4.5 + 18 * (place - (len(lines) - 1) / 2), line, "start")
        for place, line in enumerate(lines)
    )


def drawing(wide, high, *parts):
    """Return pieces as one drawing of a size that letters can be read at [px]."""
    return (
        f'<svg viewBox="0 0 {wide} {high}" width="{wide}" height="{high}" '
        f'style="display:block;margin:.4rem 0;max-width:100%">{"".join(parts)}</svg>'
    )
