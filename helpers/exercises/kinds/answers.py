"""What every kind hands over: an answer as read, a verdict, or the reason why it is unread."""

from dataclasses import dataclass


class NotRead(ValueError):
    """An answer that could not be read; it does not count as a try. The text says what to do."""


@dataclass(frozen=True)
class Answer:
    """An answer as read: a value that can be compared, how it was understood, digits if any.

    `misnamed` is the measure that it was called by, where the question asks for another one.
    """

    value: object
    understood: str
    digits: int = 15
    misnamed: str = ""

    @property
    def given(self):
        """What was given: the same value by another name is another answer."""
        return (self.value, self.misnamed) if self.misnamed else self.value


@dataclass(frozen=True)
class Verdict:
    """What an answer earned (share of the marks), the slip behind it, and what to say.

    `slip` is a key that never changes; `turn` tells it in words of this draw where they differ.
    """

    share: float
    reply: str
    slip: str = ""
    danger: str = ""
    turn: str = ""

    @classmethod
    def partly(cls, share, reply, slip, danger, turn=""):
        """Return a verdict short of right; an answer that would hurt somebody earns nothing."""
        return cls(0.0 if danger else min(share, 0.99), reply, slip, danger, turn)

    @property
    def right(self):
        return self.share == 1.0
