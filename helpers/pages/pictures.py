"""Draws the picture that a question describes: where questions meet figures on the screen."""

from html import escape

from helpers.exercises.wording import Line
from helpers.figures import bands, plain
from helpers.figures.words import title_of, untitled

DRAWINGS = {
    "resistor bands": bands.with_key,
    "waveform": plain.waveform,
    "meter": plain.meter,
    "beam": plain.beam,
    "warm-up": plain.warm_up_curve,
    "residuals": plain.residuals,
}


def below(drawn):
    """Return the lines below a picture: what it says beyond its title, and the rest folded.

    Parameters
    ----------
    drawn : Drawn

    Returns
    -------
    lines : list of Line
        A title that is seen is only read out.
    """
    seen = f">{escape(title_of(drawn.finding))}</div>" in drawn.picture
    title, rest = untitled(drawn.finding) if seen else ("", drawn.finding)
    details = f"The picture in words: {drawn.details}" if drawn.details else ""
    said = Line("heard", title), Line("hint", rest), Line("folded", details)
    return [line for line in said if line.text]


def draw_picture(picture):
    """Return a picture as inline SVG, and the line that says in words what it shows.

    Parameters
    ----------
    picture : Picture
        A drawing's name and its values.

    Returns
    -------
    svg : str
    words : Line
        The alternative text, folded, since it does half of the reading: for who cannot see the
        picture or tell its colours apart.
    """
    drawn = DRAWINGS[picture.drawing](**picture.values)
    return drawn.picture, Line("folded", f"The picture in words: {drawn.words}")
