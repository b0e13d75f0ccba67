"""The picture of a prediction beside its reading."""

import pytest

from helpers.figures import on_bench
from helpers.quantities import read

CASES = [((10.85, 0.49), (11.2, 0.14)), ((9.4, 0.4), (9.36, 0.1)), ((2.2, 0.02), (24.0, 0.3))]


@pytest.mark.parametrize(("predicted", "reading"), CASES)
def test_a_tick_stands_where_its_words_say(predicted, reading, monkeypatch):
    axes = []
    drawn = on_bench.Axis
    monkeypatch.setattr(on_bench, "Axis", lambda *of: axes.append(drawn(*of)) or axes[-1])
    on_bench.agreement(predicted, reading, True)
    across = axes[0]
    assert 3 <= len(across.ticks) <= 8  # limit: room for its words beside each other
    assert all(across.low <= at <= across.high for at in across.ticks)
    for at, words in across.ticks.items():
        assert read(words, "voltage").value == pytest.approx(at, abs=1e-9)  # second way: read back
