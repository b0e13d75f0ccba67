"""Draws the picture that a question describes: where questions meet figures on the screen."""

from helpers.exercises.wording import Line
from helpers.figures import bands, plain

DRAWINGS = {
    "resistor bands": bands.with_key,
    "waveform": plain.waveform,
    "meter": plain.meter,
    "beam": plain.beam,
    "warm-up": plain.warm_up_curve,
    "residuals": plain.residuals,
}


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
