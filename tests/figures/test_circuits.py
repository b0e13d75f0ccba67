"""Circuit drawings: named parts, the live side in words, texts apart, the same each time."""

from collections import Counter
from itertools import combinations
from xml.etree import ElementTree

import pytest

from helpers.figures import circuits
from helpers.figures.words import KINDS, NAMES
from helpers.physics import compared
from helpers.physics.circuits import CIRCUITS

NARROW = 338
"""Width of a picture in a window of 480 px, so that no letter is drawn smaller [px]."""
INDICATORS = [
    (circuits.indicator, given)
    for circuit in NAMES
    for given in ((circuit,), (circuit, 120e3, 2.0), (circuit, 4.75e6, 12.34), (circuit, 1.0, 0.5),
                  (circuit, 39e3, 2.0, (2, 0)), (circuit, 4.75e6, 12.34, (2, 2), 3))
]  # fmt: skip
ALL = [
    *INDICATORS,
    (circuits.capacitor_dropper, (100e-9, 1e3, 1e6)),
    (circuits.neon, ()),
    (circuits.dimmed_heater, ("after",)),
    (circuits.dimmed_heater, ("before",)),
    (circuits.bench_dropper, (5.0, 220.0, 2.0)),
    (circuits.bench_dropper, (23.5, 82e3, 3.25)),
]
every_drawing = pytest.mark.parametrize(
    ("function", "given"), ALL, ids=[f"{f.__name__}-{'-'.join(map(str, g))}" for f, g in ALL]
)


def text_boxes(root):
    """Words with left, right and middle height; a letter is taken as 0.56 of its size wide."""
    for text in root.iter("text"):
        words, size = "".join(text.itertext()), float(text.get("font-size"))
        width, place = 0.56 * size * len(words), float(text.get("x"))
        left = place - {"start": 0.0, "middle": 0.5, "end": 1.0}[text.get("text-anchor")] * width
        yield words, left, left + width, float(text.get("y")) + size


def test_every_circuit_of_the_physics_has_a_name_and_a_drawing():
    assert set(NAMES) == set(CIRCUITS)
    assert tuple(KINDS) == compared.KINDS
    assert len({circuits.indicator(circuit)[0] for circuit in NAMES}) == len(NAMES)


@every_drawing
def test_title_and_description_are_there_for_screen_readers(function, given):
    svg, words, _ = function(*given)
    root = ElementTree.fromstring(svg)
    assert root.get("role") == "img"
    title, description = list(root)[:2]
    assert (title.tag, description.tag) == ("title", "desc")
    assert len(title.text.split()) >= 3 and description.text == words
    assert " id=" not in svg
    assert "max-width:100%" in root.get("style") and "currentColor" in svg
    assert float(root.get("width")) <= NARROW


@every_drawing
def test_texts_lie_apart_and_inside(function, given):
    root = ElementTree.fromstring(function(*given)[0])
    left, top, width, height = map(float, root.get("viewBox").split())
    boxes = list(text_boxes(root))
    for words, start, end, middle in boxes:
        assert left <= start and end <= left + width, f"{words!r} is cut off"
        assert top <= middle - 8 and middle + 8 <= top + height, f"{words!r} is cut off"
    for (words, start, end, middle), (other, from_, to, height_of_other) in combinations(boxes, 2):
        apart = end <= from_ or to <= start or abs(middle - height_of_other) >= 13
        assert apart, f"{words!r} lies over {other!r}"


@every_drawing
def test_drawn_again_it_is_the_same(function, given):
    assert function(*given) == function(*given)


@pytest.mark.parametrize(
    ("function", "given"), [case for case in ALL if case[0] is not circuits.bench_dropper]
)
def test_live_and_neutral_are_named_in_words(function, given):
    svg, words, _ = function(*given)
    drawn = ["".join(text.itertext()) for text in ElementTree.fromstring(svg).iter("text")]
    assert {"live", "neutral"} <= set(drawn)
    assert "live" in words and "neutral" in words


@pytest.mark.parametrize("circuit", NAMES)
def test_values_are_written_when_given_and_only_then(circuit):
    with_values, words, _ = circuits.indicator(circuit, 120e3, 2.0)
    assert "120\u00a0kΩ" in with_values and "2\u00a0V" in with_values
    assert "120\u00a0kΩ" in words and "2\u00a0V" in words
    without, words, _ = circuits.indicator(circuit)
    assert "Ω" not in without + words and "\u00a0V" not in without + words


@pytest.mark.parametrize("string", [(2, 0), (2, 1), (4, 0), (4, 3), (6, 6), (12, 0)])
@pytest.mark.parametrize("circuit", NAMES)
def test_each_resistor_of_a_string_is_drawn_in_its_wire(circuit, string):
    """A box is a path of seven lines between two leads: counted, not asked for."""
    svg, words, _ = circuits.indicator(circuit, 39e3, 2.0, string, 20)
    paths = [path.get("d") for path in ElementTree.fromstring(svg).iter("path")]
    heights = Counter(path.split("L")[1].split(",")[1] for path in paths if path.count("L") == 7)
    assert sorted(heights.values()) == sorted(filter(None, string))
    live, neutral = string
    told = f"{live} × 39\u00a0kΩ in the live wire"
    assert told + f" and {neutral} × 39\u00a0kΩ in the neutral one" * bool(neutral) in words
    test_texts_lie_apart_and_inside(circuits.indicator, (circuit, 39e3, 2.0, string, 20))


# Triangles of diodes and LEDs, and arrowheads of light (two to an LED), counted by hand from the
# circuit that each name stands for. Common practice, no source.
@pytest.mark.parametrize(
    ("circuit", "diodes", "leds"),
    [
        ("resistor_only", 0, 1),
        ("series_diode", 1, 1),
        ("diode_across", 1, 1),
        ("two_leds", 0, 2),
        ("bridge", 4, 1),
    ],
)
def test_each_circuit_has_its_diodes_and_leds(circuit, diodes, leds):
    root = ElementTree.fromstring(circuits.indicator(circuit)[0])
    triangles = [shape for shape in root.iter("polygon") if len(shape.get("points").split()) == 3]
    arrowheads = [path for path in root.iter("path") if "fill:currentColor" in path.get("style")]
    assert len(triangles) == diodes + leds
    assert len(arrowheads) == 2 * leds


@pytest.mark.parametrize(
    "drawn",
    [*map(circuits.indicator, NAMES), circuits.capacitor_dropper(33e-9, 1e3, 1e6), circuits.neon()],
    ids=[*NAMES, "capacitor_dropper", "neon"],
)
def test_earth_is_drawn_and_no_part_of_the_light_is_joined_to_it(drawn):
    texts = ["".join(t.itertext()) for t in ElementTree.fromstring(drawn[0]).iter("text")]
    assert {"live", "neutral", "earth"} <= set(texts)
    assert "no part of the light is joined to it" in drawn[1]


def resistors(drawn):
    """The boxes of resistors: closed lines of five points, a heater's box among them."""
    shapes = ElementTree.fromstring(drawn[0]).iter("path")
    return [path.get("d") for path in shapes if path.get("d").count("L") == 7]


@pytest.mark.parametrize("circuit", NAMES)
def test_every_dropper_is_drawn_as_two_resistors(circuit):
    """A single one fails short and leaves nothing; common practice, no source."""
    plain, _, _ = circuits.neon()
    assert len(resistors(circuits.indicator(circuit))) == len(resistors((plain,))) == 2
    assert "two resistors in series" in circuits.indicator(circuit)[1]


@pytest.mark.parametrize("tap", ["after", "before"])
def test_the_light_beside_the_heater_is_drawn_with_its_parts(tap):
    root = ElementTree.fromstring(circuits.dimmed_heater(tap)[0])
    triangles = [p for p in root.iter("polygon") if len(p.get("points").split()) == 3]
    assert len(triangles) >= 2
    assert "two resistors, a diode and an LED in series" in circuits.dimmed_heater(tap)[1]


def test_a_dropper_has_its_bridge_its_led_and_the_words_for_its_charge():
    svg, words, _ = circuits.capacitor_dropper(100e-9, 1e3, 1e6)
    root = ElementTree.fromstring(svg)
    triangles = [p for p in root.iter("polygon") if len(p.get("points").split()) == 3]
    assert len(triangles) == 5
    for told in ("100\u00a0nF", "1\u00a0kΩ", "two, 1\u00a0MΩ", "stay charged", "fuse"):
        assert told in words


def test_the_tap_says_what_the_light_then_tells():
    assert "heater is supplied" in circuits.dimmed_heater("after")[1]
    assert "mains is present" in circuits.dimmed_heater("before")[1]
    for tap in ("after", "before"):
        assert "ark never means dead" in circuits.dimmed_heater(tap)[1]


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: circuits.indicator("ring"), "circuit was read as 'ring'"),
        (lambda: circuits.dimmed_heater("inside"), "tap was read as 'inside'"),
    ],
    ids=["circuit", "tap"],
)
def test_an_unknown_name_is_refused_in_words(call, message):
    with pytest.raises(ValueError, match=message):
        call()
