"""Colour bands there and back; printed examples stand in tests/published."""

import pytest

from helpers.physics import colour_code, resistors


@pytest.mark.parametrize("tolerance", [20, 10, 5, 2, 1, 0.5, 0.25, 0.1, 0.05, 0.02, 0.01])
@pytest.mark.parametrize("name", ["E24", "E192"])
def test_property_reading_undoes_marking(name, tolerance):
    for figure in resistors.SERIES[name]:
        for power in range(-2, 9):
            ohms = float(f"{figure}e{power - 1 if name == 'E24' else power - 2}")
            if ohms < 0.1 or (tolerance > 2 and ohms < 1.0):
                continue
            if tolerance == 20 and figure % 10 and name == "E192":
                continue  # three figures always carry a tolerance band
            assert colour_code.read_bands(colour_code.bands(ohms, tolerance)) == (ohms, tolerance)


def test_limit_smallest_and_largest_value_that_bands_can_say():
    assert colour_code.bands(0.01, 5.0) == ("brown", "black", "pink", "gold")
    assert colour_code.bands(0.01, 1.0) == ("brown", "black", "pink", "brown")
    assert colour_code.bands(999e9, 5.0) == ("white", "white", "white", "white", "gold")
    assert colour_code.read_bands(["white"] * 3) == (99e9, 20.0)


def test_property_words_are_read_kindly():
    assert colour_code.read_bands([" Gray", "RED", "brown ", "Gold"]) == (820.0, 5.0)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: colour_code.bands(4711.0), "at most three figures. Take a preferred value first"),
        (lambda: colour_code.bands(4700.0, 3.0), "tolerance_percent was read as 3.0 %"),
        (lambda: colour_code.bands(0.0), "A zero-ohm link has one black band"),
        (lambda: colour_code.bands(0.00123), "Mark so extreme a value in letters"),
        (lambda: colour_code.bands(0.0123, 1.0), "Mark so extreme a value in letters"),
        (lambda: colour_code.bands(234.0, 20.0), "leaves no room for 'no band'"),
        (lambda: colour_code.read_bands(["red", "red"]), "2 bands were read"),
        (lambda: colour_code.read_bands(["red"] * 6), "leave a sixth"),
        (lambda: colour_code.read_bands(["gold", "red", "red", "red"]), "the wrong end"),
        (lambda: colour_code.read_bands(["red", "red", "mauve", "gold"]), "multiplier band was"),
        (lambda: colour_code.read_bands(["red", "red", "red", "black"]), "tolerance band was"),
        (lambda: colour_code.read_bands(["black", "red", "red", "gold"]), "start from the other"),
    ],
)
def test_refusal(call, message):
    with pytest.raises(ValueError, match=message):
        call()
