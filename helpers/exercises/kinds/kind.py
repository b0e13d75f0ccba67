"""What every kind of question answers to: nobody outside this folder asks which kind it is."""

from typing import NamedTuple


class ByHand(NamedTuple):
    """How an answer is given on paper.

    `how` says what to do, `ticks` are the lines with a box before them, and `places` are what
    stands before and behind each line to write on.
    """

    how: str
    ticks: list = ()
    places: list = ()


class Kind:
    """How a kind reads, marks and speaks; a kind redefines what differs from the plain case.

    `numbers` are always the personal numbers of one draw, with `shown`, the order of the options.
    Only `helpers/widgets/controls.py`, which gives each kind its controls, knows the kinds apart.

    Attributes
    ----------
    name : str
        How the kind is called in lists and in a card's style.
    between : str
        What stands between the pieces of an answer that is handed over as a list.
    tries : int
        How many tries come before the worked answer.
    longest : int
        How many characters an answer may have, so that its line stays far below what is read.
    most_answers : int
        How many different answers of one learner are marked, in all draws and classes.
    other_answers : str
        What to say beside the model answer where others are as good.
    road : Road, optional
        How the right number comes about; only a sum has one.
    """

    name = ""
    between = ", "
    tries = 3
    longest = 200
    most_answers = 10_000
    other_answers = ""
    road = None

    def worth(self, used):
        """Return what a try is worth after so many others [-]."""
        return 1.0

    def listed(self, numbers):
        """Return what can be chosen or put in order, as it is listed in the bank."""
        return ()

    def arrange(self, numbers, stream):
        """Return the order in which the options of this draw are shown, as indices."""
        return ()

    def read(self, typed, numbers):
        """Return an `Answer`; raise `NotRead`, with what to do, where there is none."""
        raise NotImplementedError

    def mark(self, value, numbers):
        """Return the `Verdict` on a value that was read."""
        raise NotImplementedError

    def verdict_on(self, answer, numbers):
        """Return the `Verdict` on an `Answer`."""
        return self.mark(answer.value, numbers)

    def model(self, numbers):
        """Return the right answer, as it would be typed."""
        raise NotImplementedError

    def example(self, numbers):
        """Return how an answer may look, as typed."""
        raise NotImplementedError

    def example_in_code(self, numbers):
        """Return what stands for an answer in a line of code."""
        return self.example(numbers)

    def hint(self, numbers):
        """Say how to answer."""
        raise NotImplementedError

    def choices(self, numbers):
        """Return the lines between wording and hint: options, or what the bins hold."""
        return []

    def by_hand(self, numbers):
        """Return how an answer is given on paper, as `ByHand`."""
        raise NotImplementedError

    def accepted(self, numbers):
        """Return what is right beside the model answer, for who marks by hand; '' if nothing."""
        return self.other_answers

    def guesses(self, numbers):
        """Return answers, as typed, that somebody may give who is wrong; some may be right."""
        raise NotImplementedError

    def said(self, answer, numbers):
        """Return an `Answer` in words that still say something without the question."""
        return answer.understood

    def workings(self, numbers):
        """Return what a worked answer may speak of by name: `sum`, `right`."""
        return {}

    def code(self, numbers):
        """Return the model answer as a Python expression; '' where there is none."""
        return ""

    def code_that_writes(self, code):
        """Return a line of Python that writes the result of an expression."""
        raise NotImplementedError
