"""The colours that mark a resistor, both ways: the colour code of IEC 60062.

Knows colours and figures only; preferred values are in `resistors`.
"""

from math import floor, log10

from helpers.physics import limits

DIGIT_COLOURS = (
    "black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white"
)  # fmt: skip
_DIGITS = {name: digit for digit, name in enumerate(DIGIT_COLOURS)}
_MULTIPLIERS = _DIGITS | {"gold": -1, "silver": -2, "pink": -3}
_TOLERANCES = {
    "silver": 10.0, "gold": 5.0, "red": 2.0, "brown": 1.0, "green": 0.5, "blue": 0.25,
    "violet": 0.1, "orange": 0.05, "yellow": 0.02, "grey": 0.01,
}  # fmt: skip
_TOLERANCE_BANDS = {20.0: ()} | {percent: (name,) for name, percent in _TOLERANCES.items()}


def bands(ohms, tolerance_percent=5.0):
    """Return the colours that mark a resistor.

    Parameters
    ----------
    ohms : float
        Resistance of at most three figures, one at a time [ohm].
    tolerance_percent : float
        20, 10, 5, 2, 1, 0.5, 0.25, 0.1, 0.05, 0.02 or 0.01 [%].

    Returns
    -------
    colours : tuple of str
        Three to five colours, read from the end nearer to the bands [-].

    Raises
    ------
    ValueError
        If no band carries the tolerance, or the value has more than three figures or lies
        outside what the multipliers can say.

    Notes
    -----
    Two figures, multiplier, tolerance; three figures where the value needs them or the tolerance
    is 2 % or closer. 20 % has no tolerance band.

    References
    ----------
    IEC 60062:2016 + A1:2019, colour code. Five bands from 2 % down is common practice.

    Examples
    --------
    >>> bands(4700.0, 5.0)
    ('yellow', 'violet', 'red', 'gold')
    >>> bands(4700.0, 1.0)
    ('yellow', 'violet', 'black', 'brown', 'brown')
    """
    if tolerance_percent not in _TOLERANCE_BANDS:
        allowed = ", ".join(f"{each:g}" for each in _TOLERANCE_BANDS)
        raise ValueError(
            f"tolerance_percent was read as {tolerance_percent!r} %; a band can say {allowed} %."
        )
    ohms = float(limits.positive(ohms, "ohms", "ohm", "A zero-ohm link has one black band."))
    figures, exponent = _figures(ohms, 2 if tolerance_percent > 2 else 3)
    if tolerance_percent == 20 and figures > 99:
        raise ValueError(
            f"ohms was read as {ohms:g} ohm with 20 %; its third figure leaves no room for 'no "
            "band', which is how 20 % is marked. Such parts come in two figures only."
        )
    if exponent not in _MULTIPLIERS.values():
        raise ValueError(
            f"ohms was read as {ohms:g} ohm; the multiplier bands reach from pink, 0.001, to "
            "white, 1000000000. Mark so extreme a value in letters."
        )
    multiplier = next(name for name, power in _MULTIPLIERS.items() if power == exponent)
    digits = tuple(DIGIT_COLOURS[int(digit)] for digit in str(figures))
    return (*digits, multiplier, *_TOLERANCE_BANDS[tolerance_percent])


def _figures(ohms, least):
    """Split a value into whole figures, at least so many, and a power of ten."""
    exponent = floor(log10(ohms) + 1e-12) - 2
    figures = round(scaled(ohms, -exponent))
    if abs(scaled(figures, exponent) / ohms - 1) > 1e-9:
        raise ValueError(
            f"ohms was read as {ohms:.10g} ohm; colour bands carry at most three figures. "
            "Take a preferred value first."
        )
    two_will_do = figures % 10 == 0 and exponent < 9
    if two_will_do and (least == 2 or exponent < -3):
        return figures // 10, exponent + 1
    return figures, exponent


def read_bands(names):
    """Return the resistance and tolerance that colours stand for.

    Parameters
    ----------
    names : sequence of str
        Three, four or five colour names, first band first [-].

    Returns
    -------
    ohms : float
        Resistance [ohm].
    tolerance_percent : float
        Plus or minus; 20 where there is no tolerance band [%].

    Raises
    ------
    ValueError
        If a colour is unknown or stands where it cannot, or the number of bands is wrong.

    Notes
    -----
    The inverse of `bands`. A sixth band, for the temperature coefficient, is left out by the
    reader.

    References
    ----------
    IEC 60062:2016 + A1:2019, colour code.

    Examples
    --------
    >>> read_bands(("yellow", "violet", "red", "gold"))
    (4700.0, 5.0)
    """
    names = [str(name).strip().lower().replace("gray", "grey") for name in names]
    if len(names) not in (3, 4, 5):
        raise ValueError(
            f"{len(names)} bands were read; give three to five, and leave a sixth "
            "(temperature coefficient) out."
        )
    last_figure = 3 if len(names) == 5 else 2
    digits = [_known(name, _DIGITS, "figure") for name in names[:last_figure]]
    if digits[0] == 0:
        raise ValueError("the first band was read as black; start from the other end.")
    multiplier = _known(names[last_figure], _MULTIPLIERS, "multiplier")
    tolerance = _known(names[-1], _TOLERANCES, "tolerance") if len(names) > 3 else 20.0
    return scaled(int("".join(map(str, digits))), multiplier), tolerance


def _known(name, meanings, role):
    if name not in meanings:
        raise ValueError(
            f"a {role} band was read as {name!r}; it must be one of {', '.join(meanings)}. "
            "Is the row read from the wrong end?"
        )
    return meanings[name]


def scaled(figures, exponent):
    """Return figures times a power of ten, for this module and `resistors`.

    Parameters
    ----------
    figures : float
        The number to scale [-].
    exponent : int
        The power of ten [-].

    Returns
    -------
    value : float
        The float that is nearest, as it would be read from text [-].

    Notes
    -----
    ``figures * 10**exponent``.

    Examples
    --------
    >>> scaled(33, -2), 33 * 10.0**-2
    (0.33, 0.33)
    """
    # A division by an exact power keeps 47 / 10 at the float that 4.7 is read as.
    return figures * 10.0**exponent if exponent >= 0 else figures / 10.0**-exponent
