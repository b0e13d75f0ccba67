"""What becomes of every single wrong turn of a road: named, with its twin, declared, or missed.

For the tests and for the bench that tries many more learners.
"""

NAMED, WITH_TWIN, AS_DECLARED = "named", "named with its twin", "declared"
RIGHT, NOT_NAMED = "marked right", "not named"
MISSES = (RIGHT, NOT_NAMED)

# Wrong turns that end in the accepted band on some supply, each with its reason.
ON_100_V = "ten per cent of 100 V are 10 V, and a per cent of it is a volt; of 110 V hardly more"
WITHIN_BAND = "less than the band away, where the simple and the exact sum lie apart"
DECLARED = {
    ("safe-12", "added the per cent as volts"): ON_100_V,
    ("safe-14", "added the per cent as volts"): ON_100_V,
    ("wave-12", "added the per cent as volts"): ON_100_V,
    ("dim-recall-2", "added the per cent as volts"): ON_100_V,
    ("heat-8", "added the per cent as volts"): WITHIN_BAND,
    ("heat-10", "added the per cent as volts"): ON_100_V,
    ("dim-12", "took the share of the light"): "told under the question's own words",
    ("heat-11", "read the second band one colour off"): "one digit of two is less than the band",
}


def names(verdict):
    return verdict.slip.split(" or ")


def outcomes(question, numbers):
    """Yield each single wrong turn of a question's road and what the card makes of its end.

    Parameters
    ----------
    question : Question
        Its kind is Amount.
    numbers : SimpleNamespace
        The personal numbers.

    Yields
    ------
    wrong : Wrong
    outcome : str
        NAMED, WITH_TWIN, AS_DECLARED, or one of MISSES.
    """
    for wrong in question.kind.road.wrong(numbers):
        verdict = question.kind.mark(wrong.value, numbers)
        if set(wrong.names) & set(names(verdict)):
            yield wrong, NAMED if len(names(verdict)) == 1 else WITH_TWIN
        elif (question.id, *wrong.names) in DECLARED:
            yield wrong, AS_DECLARED
        else:
            yield wrong, RIGHT if verdict.right else NOT_NAMED
