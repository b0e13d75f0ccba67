"""No words of a picture lie on others, on a line or beyond its edge, however wide the page is.

Words stand at an axis, at the end of a line, beside what they are of or in the key. What a browser
makes of it: tests/browser/test_pictures.py.
"""

import pytest
from every_case import CASES
from explorer_states import states
from labels import faults

from helpers.figures import touch
from helpers.figures.chart import Axis, Chart, picture
from helpers.pages.explorers import EXPLORERS
from helpers.physics import hazards
from helpers.physics.mains import SUPPLIES


def faults_of(drawn):
    """What is wrong, and in which of the pictures; what is drawn alike is looked at once."""
    alike = {picture: what for what, picture in drawn}
    return [(what, *fault) for picture, what in alike.items() for fault in faults(picture)]


def test_property_in_every_case():
    assert not faults_of(((f.__name__, given), f(*given).picture) for f, given in CASES)


@pytest.mark.parametrize("supply", ["230 V 50 Hz", "100 V 60 Hz", "120 V 60 Hz"])
def test_property_in_every_state_of_every_explorer(supply):
    drawn = []
    for name, explorer in EXPLORERS.items():
        draw, controls = explorer.open_on(SUPPLIES[supply])
        drawn += [((name, state), draw(**state).picture) for state in states(controls)]
    assert not faults_of(drawn)


def test_limit_zones_of_usual_touches_are_named_inside():
    for amps, seconds in ((0.5e-3, 10.0), (5e-3, 1.0), (30e-3, 0.03), (0.1, 1.0), (0.3, 0.2)):
        drawn = touch.zones(amps, seconds, pot_amps=0.39).picture
        assert all(f">{zone}</text>" in drawn for zone in hazards.ZONES)


def test_words_on_others_on_a_line_on_a_mark_and_beyond_the_edge_are_found():
    axes = Axis(0.0, 10.0, "", {0.0: "0"}), Axis(0.0, 10.0, "", {0.0: "0"})
    chart = Chart(100, *axes)
    chart.line((0.0, 10.0), (0.0, 10.0), "volts")
    chart.mark(2.0, 8.0)
    for at, y, text in ((5.0, 55, "on a line"), (2.0, 24, "on a mark"), (8.0, 60, "one"),
                        (8.0, 64, "two"), (10.0, 90, "far beyond the edge")):  # fmt: skip
        chart.write(at, y, text)
    found = {fault[1:] for fault in faults(picture("Axes", "", chart.html()).picture)}
    assert {("on a line", "a line"), ("on a mark", "a mark"), ("one", "two"),
            ("far beyond the edge", "the edge of the picture")} <= found  # fmt: skip
