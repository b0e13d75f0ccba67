"""Wrong turns of who puts a value into colour bands: from the right bands to others.

They have the names of those who read bands wrong (`ohms`), where the slip is the same.
"""

from helpers.exercises.roads.road import Turn
from helpers.exercises.roads.steps.ohms import FIRST_OFF, HOW_MANY_ZEROS, SECOND_OFF
from helpers.physics.colour_code import DIGIT_COLOURS

NO_BAND = "none"
COLOURS = (*DIGIT_COLOURS, "gold", "silver")
_SCALE = ("silver", "gold", *DIGIT_COLOURS)  # as multipliers, each ten times the one before


def _moved(place, by):
    """Return what puts another colour at one place, so many further on; nothing past the end."""
    other = {name: _SCALE[at + by] for at, name in enumerate(_SCALE) if 0 <= at + by < len(_SCALE)}
    return lambda bands: (*bands[:place], other.get(bands[place]), *bands[place + 1 :])


_OTHER_END = "began at the other end", "Which band stands apart, and is it read first or last?"
TURNS = (
    Turn("counted one zero too many", HOW_MANY_ZEROS, _moved(2, 1)),
    Turn("counted one zero too few", HOW_MANY_ZEROS, _moved(2, -1)),
    Turn("read the third band as a digit", HOW_MANY_ZEROS,
         lambda bands: (*bands[:2], "black", bands[3]), share=0.0),
    Turn("swapped the first two bands", "From which end do you read?",
         lambda bands: (bands[1], bands[0], *bands[2:])),
    # any other last band counts as silver; a palindrome such as red, violet, red is no other end
    Turn("took the band of another tolerance", "Which colour says the one asked for?",
         lambda bands: (*bands[:3], "silver")),
    Turn("left out the tolerance band", "What does the fourth band say of a resistor?",
         lambda bands: (*bands[:3], NO_BAND)),
    Turn(*_OTHER_END, lambda bands: bands[::-1]),
    Turn(*_OTHER_END, lambda bands: (*bands[2::-1], bands[3])),
    Turn("mixed up a prefix", HOW_MANY_ZEROS, _moved(2, 3)),
    Turn("mixed up a prefix", HOW_MANY_ZEROS, _moved(2, -3)),
    Turn(*FIRST_OFF, _moved(0, 1)), Turn(*FIRST_OFF, _moved(0, -1)),
    Turn(*SECOND_OFF, _moved(1, 1)), Turn(*SECOND_OFF, _moved(1, -1)),
)  # fmt: skip
