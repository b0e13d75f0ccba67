"""A question for the four colour bands that mark a resistor."""

import re

from helpers.exercises.kinds.answers import Answer, NotRead, Verdict
from helpers.exercises.kinds.kind import ByHand, Kind
from helpers.exercises.kinds.parts import Field
from helpers.exercises.roads.steps.colours import COLOURS, NO_BAND, TURNS
from helpers.physics import colour_code
from helpers.quantities import write


class Bands(Kind):
    """The colours of a resistor's four bands, from the left; its numbers hold `ohms`."""

    percent = 5.0
    name = "bands"
    fields = (
        *(Field(f"Band {place}", "", COLOURS) for place in (1, 2, 3)),
        Field("Band 4", "", (*COLOURS, NO_BAND)),
    )

    def right(self, numbers):
        """Return the right colours."""
        return colour_code.bands(numbers.ohms, self.percent)

    def read(self, typed, numbers):
        text = typed.lower().replace("gray", "grey").replace("purple", "violet").strip(" .")
        names = re.split(r"[\s,;./-]+", text)
        names += [NO_BAND] * (len(names) == 3)
        if len(names) != 4:
            raise NotRead(
                f"“{typed[:40]}” was read. {self.hint(numbers)} Such as: {self.example(numbers)}."
            )
        for name, band in zip(names, self.fields, strict=True):
            if name not in band.bin:
                raise NotRead(f"“{typed[:40]}” was read. {band.label} can be {', '.join(COLOURS)}.")
        return Answer(tuple(names), self.between.join(names))

    def mark(self, value, numbers):
        right = self.right(numbers)
        if value == right:
            return Verdict(1.0, "Right.")
        fits = [turn for turn in TURNS if turn.take(right)[:3] == value[:3]]
        turn = min(fits, key=lambda turn: turn.take(right) != value, default=None)
        if not turn:
            return Verdict(0.0, _meaning(value))
        reply = f"{_meaning(value)} This fits if you {turn.name}. {turn.asks}"
        return Verdict.partly(turn.share, reply, turn.name, "")

    def model(self, numbers):
        return self.between.join(self.right(numbers))

    def example(self, numbers):
        """Return bands of another tolerance, so never the answer."""
        return "blue, grey, black, silver"

    def hint(self, numbers):
        return "Pick a colour for each band, from the left; typed, they are four words in order."

    def by_hand(self, numbers):
        places = [(f"{band.label}:", "") for band in self.fields]
        return ByHand("Write the colour of each band, from the left.", places=places)

    def guesses(self, numbers):
        ends = [turn.take(self.right(numbers)) for turn in TURNS]
        return [self.between.join(end) for end in ends if None not in end]

    def code(self, numbers):
        return f"resistors.bands({numbers.ohms}, {self.percent})"

    def code_that_writes(self, code):
        return f'"{self.between}".join({code})'


def _meaning(bands):
    """Say what bands stand for, as somebody reads them who finds the part."""
    try:
        ohms, percent = colour_code.read_bands([name for name in bands if name != NO_BAND])
    except ValueError:
        return "No resistor is marked like that."
    return f"These bands say {write(ohms, 'resistance')} ±\u00a0{write(percent, 'percent')}."
