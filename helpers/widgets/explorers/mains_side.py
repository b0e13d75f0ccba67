"""What explorers share: circuits and droppers to choose, a sentence short enough to hear."""

from helpers.figures.words import MORE, NAMES
from helpers.quantities import write
from helpers.widgets.explorers.knobs import Choice

DROPPER_OHMS = (27e3, 33e3, 39e3, 47e3, 56e3, 68e3, 82e3, 100e3, 120e3)
CIRCUIT = Choice("circuit", "Circuit", {NAMES[key]: key for key in NAMES}, "series_diode")
DROPPER = Choice(
    "ohms", "Dropper", {write(ohms, "resistance"): ohms for ohms in DROPPER_OHMS}, 27e3
)


def in_short(drawn):
    """Return picture and words of a figure without the numbers that only its picture needs."""
    svg, alternative = drawn
    return svg, alternative.partition(MORE)[0]
