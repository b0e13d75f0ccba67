"""What stands below a picture: nothing that is seen in it already."""

from helpers.exercises.wording import Line
from helpers.figures import circuits, waves
from helpers.figures.drawn import Drawn
from helpers.pages.pictures import below
from helpers.physics import mains, phase_cut


def test_property_a_title_that_is_seen_is_only_read_out():
    drawn = waves.chopped(mains.SUPPLIES["120 V 60 Hz"], phase_cut.Dimmer("leading", 60.0))
    heard, told, folded = below(drawn)
    assert [line.role for line in (heard, told, folded)] == ["heard", "hint", "folded"]
    assert f">{heard.text.removesuffix('.')}</div>" in drawn.picture
    assert f"{heard.text} {told.text}" == drawn.finding and folded.text.endswith(drawn.details)


def test_property_what_no_title_says_is_seen_whole():
    drawn = circuits.five()
    assert below(drawn)[0] == Line("hint", drawn.finding)


def test_property_what_a_title_leaves_out_for_its_decimals_is_seen_and_nothing_twice():
    heard, told = below(Drawn(">Off</div>", "Off: it shows 4.2 V."))
    assert (heard, told) == (Line("heard", "Off."), Line("hint", "It shows 4.2 V."))


def test_property_that_all_is_live_is_seen_once_below_the_five():
    told, folded = below(circuits.five())
    assert told.text.count("counts as live") == 1 and "live" not in folded.text
