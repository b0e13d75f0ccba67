"""What every figure returns: a picture, and in words what it says."""

from typing import NamedTuple


class Drawn(NamedTuple):
    """A picture and what it says.

    Parameters
    ----------
    picture : str
        HTML with inline SVG.
    finding : str
        What it shows, dangers first, with the numbers that count; short enough to be heard at
        every move of a slider.
    details : str
        What more can be read off it; '' where nothing can.

    Examples
    --------
    >>> Drawn("<svg></svg>", "It halves.", "From 2 to 1.").words
    'It halves. From 2 to 1.'
    """

    picture: str
    finding: str
    details: str = ""

    @property
    def words(self):
        """Finding and details as one text: the picture's alternative."""
        return f"{self.finding} {self.details}".rstrip()
