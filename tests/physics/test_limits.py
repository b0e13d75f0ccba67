"""What is refused, and in which words."""

import numpy as np
import pytest

from helpers.physics import limits


@pytest.mark.parametrize(
    ("check", "allowed"),
    [
        (lambda v: limits.finite(v, "volts", "V"), -3.5),
        (lambda v: limits.positive(v, "volts", "V"), 3.5),
        (lambda v: limits.not_negative(v, "volts", "V"), 0.0),
        (lambda v: limits.between(v, "volts", "V", 1.0, 2.0), 2.0),
    ],
    ids=["finite", "positive", "not_negative", "between"],
)
def test_property_numbers_pass_unchanged_in_every_shape(check, allowed):
    assert check(allowed) == allowed
    assert type(check(np.float64(allowed))) is float
    assert check([allowed, allowed]).tolist() == [allowed, allowed]
    assert check(np.empty((0, 2))).shape == (0, 2)
    for wrong in (np.nan, np.inf, -np.inf):
        with pytest.raises(ValueError, match="volts was read as"):
            check(wrong)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: limits.finite("abc", "volts", "V"), "'abc'; it must be a number in V"),
        (lambda: limits.finite(None, "volts", "V"), "it must be a finite number in V"),
        (lambda: limits.positive(0, "volts", "V"), "0 V; it must be above 0 V"),
        (lambda: limits.positive([1.0, -2.0], "volts", "V"), "volts was read as -2 V"),
        (lambda: limits.not_negative(-1e-3, "volts", "V"), "-0.001 V; it must be 0 V or more"),
        (lambda: limits.between(3, "volts", "V", 1, 2, "Hm."), "between 1 and 2 V. Hm."),
        (lambda: limits.one_of("x", "edge", ("a", "b")), "'x'; it must be one of a, b"),
        (lambda: limits.one_of(3, "edge", ("a", "b")), "edge was read as 3; it must be one of"),
    ],
)
def test_refusal_says_what_was_read_and_what_is_wrong(call, message):
    with pytest.raises(ValueError, match=message):
        call()
