"""Explorer: the colour code, both ways: choose bands and see the value, or type a value."""

from helpers.figures.bands import resistor
from helpers.physics import colour_code, resistors
from helpers.quantities import read, write, write_letter_code
from helpers.widgets.explorers.knobs import Choice, Entry
from helpers.widgets.explorers.panel import Explorer

FIGURES = colour_code.DIGIT_COLOURS
MULTIPLIERS = ("silver", "gold", *FIGURES[:7])
TOLERANCES = ("silver", "gold", "red", "brown")


def bands(first, second, multiplier, tolerance):
    """Show a resistor with four bands and what they say.

    Parameters
    ----------
    first, second : str
        Colours of the two figures.
    multiplier : str
        Colour of the power of ten.
    tolerance : str
        Colour of the tolerance.

    Returns
    -------
    svg : str
    sentence : str
        What the bands say.

    Examples
    --------
    >>> bands("yellow", "violet", "red", "gold")[1].replace("\\xa0", " ")
    'Yellow 4, violet 7, red × 100, gold ± 5 %: 4.7 kΩ, so from 4.47 kΩ to 4.94 kΩ. In letters: \
4K7J. A preferred value of the E12 series.'
    """
    ohms, percent = colour_code.read_bands((first, second, multiplier, tolerance))
    figures = 10 * FIGURES.index(first) + FIGURES.index(second)
    low, high = ohms * (1 - percent / 100), ohms * (1 + percent / 100)
    sentence = (
        f"{first.capitalize()} {FIGURES.index(first)}, {second} {FIGURES.index(second)}, "
        f"{multiplier} × {_plain(ohms / figures)}, {tolerance} ± {write(percent, 'percent')}: "
        f"{write(ohms, 'resistance')}, so from {write(low, 'resistance')} to "
        f"{write(high, 'resistance')}. In letters: {write_letter_code(ohms, percent)}. "
        f"{_series(figures)}"
    )
    return resistor((first, second, multiplier, tolerance))[0], sentence


def _plain(factor):
    """Write a power of ten out, thousands apart."""
    return f"{factor:g}" if factor < 1 else f"{factor:,.0f}".replace(",", "\u00a0")


def _series(figures):
    for name in ("E12", "E24"):
        if figures in resistors.SERIES[name]:
            return f"A preferred value of the {name} series."
    return "Not a preferred value: hardly any shop has it."


def of_value(text):
    """Return the four bands, 5 % tolerance, of a value as a person types it.

    Parameters
    ----------
    text : str
        Such as `4k7` or `330 ohm`.

    Returns
    -------
    state : dict
        Arguments for `bands`.

    Raises
    ------
    ValueError
        If it cannot be read or four bands cannot say it; the message is for who typed it.

    Examples
    --------
    >>> of_value("4k7")["multiplier"]
    'red'
    """
    ohms = read(text, "resistance").value
    names = colour_code.bands(ohms, 5.0)
    if len(names) != 4 or names[2] not in MULTIPLIERS:
        near = write(resistors.nearest(ohms), "resistance")
        raise ValueError(
            f"{write(ohms, 'resistance', 5)} needs more than these four bands can say: two "
            f"figures, from 0.1 Ω to 99 MΩ. The nearest value of the E24 series is {near}."
        )
    return dict(zip(("first", "second", "multiplier", "tolerance"), names, strict=True))


def _open_on(_):
    return bands, (
        _colours("first", "First figure", FIGURES[1:], "yellow"),
        _colours("second", "Second figure", FIGURES, "violet"),
        _colours("multiplier", "Multiplier", MULTIPLIERS, "red"),
        _colours("tolerance", "Tolerance", TOLERANCES, "gold"),
        Entry("Or type a value in Ω, such as 4k7", of_value),
    )


def _colours(key, label, names, start):
    return Choice(key, label, {name: name for name in names}, start)


EXPLORER = Explorer(
    _open_on,
    (
        "Cover the sentence, choose four bands, say the value, then look.",
        "Change the multiplier only. What does each step do to the value?",
        "Write the bands of 68 kΩ and of 330 Ω on paper, then type each value and compare.",
    ),
)
