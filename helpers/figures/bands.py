"""A resistor with its colour bands, as inline SVG.

The colours are those of IEC 60062; each band also carries its name, for eyes that cannot tell
them apart and for black-and-white paper.
"""

from html import escape

from helpers.figures.chart import SMALL
from helpers.figures.drawn import Drawn

PAINT = {
    "black": "#1a1a1a", "brown": "#7b3f00", "red": "#d00000", "orange": "#f77f00",
    "yellow": "#ffd60a", "green": "#2a9134", "blue": "#1d4ed8", "violet": "#7b2cbf",
    "grey": "#808080", "white": "#ffffff", "gold": "#c9a227", "silver": "#c0c0c0",
    "pink": "#ff8fab",
}  # fmt: skip

_ZEROS = ("1", "10", "100", "1 k", "10 k", "100 k", "1 M", "10 M", "100 M", "1 G")
KEY = [
    (name, str(figure), zeros)
    for figure, (name, zeros) in enumerate(zip(PAINT, _ZEROS, strict=False))
]
KEY += [("gold", "± 5 %", "0.1"), ("silver", "± 10 %", "0.01")]
"""Each colour with its figure, or its tolerance, and its multiplier (IEC 60062)."""
NO_PAINT = {"": "not picked", "none": "none"}


def resistor(bands, picks=()):
    """Draw a resistor with its bands, read from the left.

    Parameters
    ----------
    bands : sequence of str
        Three to five colour names, tolerance band last; `none` is bare, '' is still to be picked.
    picks : sequence of str, optional
        Controls beside it: a press on a band sets the one in its place to the next colour.

    Returns
    -------
    drawn : Drawn
        With a title for screen readers; the same text for the same bands.

    Raises
    ------
    ValueError
        If a colour is none of the code's.

    References
    ----------
    Colours: IEC 60062. Their shades on screen: common practice, no source.

    Examples
    --------
    >>> resistor(("yellow", "violet", "red", "gold")).finding
    'A resistor with bands yellow, violet, red and, set apart, gold.'
    """
    unknown = [name for name in bands if name not in {**PAINT, **NO_PAINT}]
    if unknown:
        raise ValueError(f"band {unknown[0]!r} is no colour of the code: {', '.join(PAINT)}")
    *value, tolerance = [NO_PAINT.get(name, name) for name in bands]
    alternative = f"A resistor with bands {', '.join(value)} and, set apart, {tolerance}."
    places = [24 + 50 * index for index in range(len(value))] + [260]
    stripes = "".join(map(_stripe, places, bands, range(1, 6), (*picks, *[""] * 5)))
    svg = (
        '<svg viewBox="0 0 310 120" width="310" height="120" style="max-width:100%" role="img" '
        f'stroke="#757575"><title>{escape(alternative)}</title>'
        '<path d="M0 50H310" stroke-width="4"/>'
        '<rect x="8" y="20" width="294" height="60" rx="18" fill="#ead7b7"/>'
        f"{stripes}</svg>"
    )
    return Drawn(svg, alternative)


def with_key(bands):
    """Draw a resistor, and under it all colours with name, figure and multiplier.

    Parameters
    ----------
    bands : sequence of str
        As for `resistor`.

    Returns
    -------
    drawn : Drawn
        What it says is of the resistor alone; the key has a title of its own.

    Examples
    --------
    >>> with_key(("yellow", "violet", "red", "gold")).picture.count("<svg")
    2
    """
    said = [f"{name} {figure} or times {zeros}" for name, figure, zeros in KEY]
    title = f"The colour code: {'; '.join(said)}. As last band gold is 5 %, silver 10 %."
    cells = "".join(
        f'<g transform="translate({77 * (place % 4)} {84 * (place // 4)})">'
        f'<rect x="6" y="4" width="60" height="22" fill="{PAINT[name]}" stroke="#757575"/>'
        f'<text x="36" y="42">{name}</text><text x="36" y="58">{figure}</text>'
        f'<text x="36" y="74">× {zeros}</text></g>'
        for place, (name, figure, zeros) in enumerate(KEY)
    )
    key = (
        '<svg viewBox="0 0 310 252" width="310" height="252" style="max-width:100%" role="img" '
        f'font-family="sans-serif" font-size="{SMALL}" fill="currentColor" text-anchor="middle">'
        f"<title>{title}</title>{cells}</svg>"
    )
    drawn = resistor(bands)
    return drawn._replace(picture=drawn.picture + key)


def _stripe(x, name, place, pick):
    line = "" if name else ' stroke-dasharray="4 3"'
    stripe = f'<rect x="{x}" y="20" width="18" height="60" fill="{PAINT.get(name, "none")}"{line}/>'
    face = (
        f'<rect x="{x - 12}" y="14" width="42" height="72" fill="transparent" stroke="none" '
        f'data-picks="{pick}" style="cursor:pointer"/>'
    )
    return (
        f"{stripe if name != 'none' else ''}"
        f'<text x="{x + 9}" y="102" text-anchor="middle" font-family="sans-serif" '
        f'font-size="{SMALL}" stroke="none" fill="currentColor">{name or f"band {place}"}</text>'
        f"{face if pick else ''}"
    )
