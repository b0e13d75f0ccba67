"""One wave and one linear mode: values, integrals and instants by quadrature and by looking."""

from itertools import pairwise
from math import pi

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from helpers.physics import decays

number = st.floats(-3.0, 3.0)
DECAY = st.tuples(number, st.sampled_from([0.0, 0.1, 1.0, 7.0, 60.0]))
WAVES = st.builds(
    decays.Wave, number, number, number, st.floats(0.0, 6.0),
    st.lists(DECAY, min_size=2, max_size=2),
)  # fmt: skip
many = settings(max_examples=150, deadline=None, derandomize=True)


@many
@given(wave=WAVES, span=st.floats(0.01, pi))
def test_second_way_area_and_slope(wave, span):
    end = wave.start + span
    area = quad(wave.at, wave.start, end, epsabs=1e-12, limit=200)[0]
    assert wave.area(wave.start, end) == pytest.approx(area, abs=1e-9)
    middle = wave.start + 0.5 * span
    step = (wave.at(middle + 1e-6) - wave.at(middle - 1e-6)) / 2e-6
    assert wave.look(middle)[1] == pytest.approx(step, abs=1e-5)


@many
@given(one=WAVES, sizes=st.tuples(number, number), span=st.floats(0.01, pi))
def test_second_way_the_product_of_two_waves(one, sizes, span):
    rates = [rate for _, rate in one.decays]
    two = decays.Wave(0.3, -1.2, 0.7, one.start, list(zip(sizes, rates, strict=True)))
    end = one.start + span
    found = decays.Products(one.start, end, rates).of(one, two)
    expected = quad(lambda a: one.at(a) * two.at(a), one.start, end, epsabs=1e-12, limit=200)[0]
    assert found == pytest.approx(expected, abs=1e-8)


@many
@given(wave=WAVES, span=st.floats(0.01, pi))
def test_second_way_instants_and_extremes_by_looking_closely(wave, span):
    end = wave.start + span
    looks = np.linspace(wave.start, end, 4001)
    values = np.array([wave.at(look) for look in looks])
    found = list(decays.pieces(wave, end))
    turns = [found[0][1], *(high for *_, high in found)]
    assert max(turns) == pytest.approx(values.max(), abs=2e-3)
    assert max(turns) >= values.max() - 1e-9 and min(turns) <= values.min() + 1e-9
    rise = decays.first_rise(wave, end)
    above = np.flatnonzero(values > 1e-3)
    if values[0] < 0.0 and above.size:
        assert rise is not None and rise <= looks[above[0]]
        assert wave.at(rise) == pytest.approx(0.0, abs=1e-9)
    elif values.max() < 0.0:
        assert rise is None
    # By pieces that grow from the start, or a fast decay would be overlooked.
    marks = [wave.start, *(wave.start + span * np.geomspace(1e-3, 1.0, 9))]
    positive = sum(
        quad(lambda a: max(wave.at(a) - 0.4, 0.0), low, high, limit=300)[0]
        for low, high in pairwise(marks)
    )
    assert decays.area_above(0.4, wave, found) == pytest.approx(positive, abs=1e-5)


def test_limit_a_constant_never_rises():
    assert decays.first_rise(decays.Wave(-1.0, 0.0, 0.0, 0.0, []), 1.0) is None
    assert decays.first_rise(decays.Wave(1.0, 0.0, 0.0, 0.5, []), 1.0) == 0.5
