"""One look for every picture and for the words about it: a colour and a dash for each meaning.

Each meaning has one colour that stands out from a white face and from a dark one, and a dash, so
that a picture reads the same for colour-blind eyes and on black-and-white paper. Knows no physics
and no question.
"""

from typing import NamedTuple

LINE_WEIGHT, INK = 2.2, "#1a1a1a"


class Look(NamedTuple):
    """How one meaning looks: a colour, and the lengths on and off of its line, none if solid."""

    colour: str
    dash: tuple = ()


#: One colour a meaning, in pictures and prose: what pushes, what lights, what heats, what is seen.
VOLTS, LIGHT, HEAT, EYE, GREY = "#1f7fc0", "#b87d00", "#c8321e", "#0a8268", "#757575"
_LONG, _SHORT, _MIXED = (6, 2), (2.5, 1.5), (7, 1.5, 1, 1.5)
LOOKS = {
    "mains": Look(GREY, (1, 1.4)),
    "volts": Look(VOLTS),
    "peak": Look(VOLTS, _LONG),
    "rms": Look(VOLTS, _SHORT),
    "mean": Look(VOLTS, _MIXED),
    "led": Look(LIGHT),
    "light": Look(LIGHT),
    "led peak": Look(LIGHT, _LONG),
    "led mean": Look(LIGHT, _MIXED),
    "heat": Look(HEAT, (5, 1.2)),
    "eye": Look(EYE, (5, 1.5, 1, 1.5)),
    "eye from afar": Look(EYE, (2, 1)),
    "eye by day": Look(EYE, (9, 1.5)),
    "limit": Look(INK, (9, 3)),
    "held": Look(INK, (4, 1.5, 1, 1.5, 1, 1.5)),
}
"""Peak, rms and mean have a dash each, in the colour of what they are of."""


def underlined():
    """Return style rules that underline a word in a lesson as its line is drawn in a picture.

    Returns
    -------
    css : str
        One rule a meaning, for `<span class="cw-rms">` and its like. In forced colours the
        underline goes and the word stays.

    Examples
    --------
    >>> underlined().count("cw-rms")
    1
    """
    rules = ""
    for meaning, (colour, dash) in LOOKS.items():
        stops, at = [], 0.0
        for place, length in enumerate(dash or (1.0,)):
            ink, start = "transparent" if place % 2 else colour, at
            at += LINE_WEIGHT * length
            stops.append(f"{ink} {start:.1f}px {at:.1f}px")
        rules += (
            f".cw-{meaning.replace(' ', '-')} {{padding-bottom: 2px; background: "
            f"repeating-linear-gradient(90deg, {', '.join(stops)}) 0 100% / 100% 2px no-repeat;}}\n"
        )
    return rules
