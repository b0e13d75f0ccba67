"""Each plotted picture: readable at the ends of what it is given, the same each time, no leak."""

from itertools import combinations
from xml.etree import ElementTree

import numpy as np
import pytest
from matplotlib._pylab_helpers import Gcf
from matplotlib.font_manager import FontProperties, findfont
from matplotlib.ft2font import FT2Font
from matplotlib.transforms import Bbox

from helpers.figures import (
    at_off,
    comparison,
    dimmed,
    heat,
    readings,
    seen,
    settings,
    spread,
    style,
    touch,
    waves,
)
from helpers.figures.words import NAMES
from helpers.physics.mains import SUPPLIES
from helpers.physics.phase_cut import NO_DIMMER, Dimmer

ANGLES = (0.0, 5.0, 90.0, 175.0, 180.0)
DIMMERS = [NO_DIMMER, *(Dimmer(edge, a) for edge in ("leading", "trailing") for a in ANGLES)]
SUPPLY = SUPPLIES["230 V 50 Hz"]
POWERS = np.linspace(0.1, 0.3, 501)


def _all():
    for supply in SUPPLIES.values():
        yield waves.sine, (supply,)
        yield at_off.at_off, (supply,)
        yield waves.chopped, (supply, Dimmer("leading", 90.0))
        yield readings.meters, (supply, Dimmer("trailing", 90.0))
        yield waves.led_current, ("bridge", supply, NO_DIMMER, 100e3)
        yield settings.heat_and_light, ("two_leds", supply, 100e3)
        yield comparison.five_circuits, (supply, NO_DIMMER, 100e3)
    for dimmer in DIMMERS:
        yield waves.chopped, (SUPPLY, dimmer)
        for place in readings.PLACES.values():
            yield readings.meters, (SUPPLY, dimmer, place)
        for circuit in NAMES:
            yield dimmed.at_once, (circuit, SUPPLY, dimmer, 27e3, 90.0)
        yield comparison.five_circuits, (SUPPLY, dimmer, 47e3)
        yield waves.led_current, ("diode_across", SUPPLY, dimmer, 1e6)
    for circuit in NAMES:
        for ohms in (1e3, 100e3, 10e6):
            yield waves.led_current, (circuit, SUPPLY, Dimmer("leading", 120.0), ohms)
            yield settings.heat_and_light, (circuit, SUPPLY, ohms, 3.2)
    for watts in (0.0, 1e-5, 0.3, 20.0):
        for ambient in (-40.0, 25.0, 70.0, 200.0):
            yield heat.rating, (watts, 0.5, ambient)
            yield heat.rating, (watts, 0.5, ambient, "caution")
        for seconds in (0.5, 120.0, 5000.0):
            yield heat.warm_up, (watts, 200.0, seconds, 25.0)
    yield seen.look, ()
    for amps in (1e-5, 0.2e-3, 5e-3):
        for lux, metres, beside in ((1.0, 30.0, 0.0), (300.0, 4.0, 30.0), (50e3, 0.5, 80.0)):
            yield seen.noticed, (amps, "yellow-green", lux, metres, beside)
    for edge in ("leading", "trailing"):
        yield settings.percentages, (edge,)
    choices = ([47e3], (33e3, 100e3, 330e3), [1e3, 2.2e3, 4.7e3, 10e3, 22e3, 47e3, 100e3, 10e6])
    angles = ([0.0], (0.0, 90.0, 150.0), [0, 30, 60, 90, 120, 150, 175, 180])
    for ohms, degrees in zip(choices, angles, strict=True):
        yield settings.brightness, ("series_diode", SUPPLY, ohms, degrees)
    for amps in (0.0, 1e-7, 0.5e-3, 0.03, 10.0, 200.0):
        for seconds in (0.01, 1.0, 10.0, 1e6):
            yield touch.zones, (amps, seconds)
    for limit in (1e-6, 0.1, 0.2, 0.3, 1e3):
        yield spread.histogram, (POWERS, limit, "power in the resistor", "W")
    yield spread.histogram, ([0.25] * 3, 0.25, "power in the resistor", "mW")
    yield spread.histogram, ([0.0], 0.25, "power in the resistor", "W")


CASES = list(_all())
NAMES_OF_CASES = [f"{function.__name__}-{index}" for index, (function, _) in enumerate(CASES)]
ONE_OF_EACH = list({function: (function, given) for function, given in CASES}.values())

every_case = pytest.mark.parametrize(("function", "given"), CASES, ids=NAMES_OF_CASES)
one_of_each = pytest.mark.parametrize(
    ("function", "given"), ONE_OF_EACH, ids=[function.__name__ for function, _ in ONE_OF_EACH]
)


def visible_texts(figure):
    texts = [*figure.texts]
    for axes in figure.axes:
        texts += axes.texts + [axes.title, axes._left_title]
        texts += axes.get_legend().get_texts() if axes.get_legend() else []
        if not axes.axison:
            continue
        for axis in (axes.xaxis, axes.yaxis):
            low, high = sorted(axis.get_view_interval())
            texts.append(axis.label)
            ticks = [*axis.get_major_ticks(), *axis.get_minor_ticks()]
            texts += [tick.label1 for tick in ticks if low <= tick.get_loc() <= high]
    return [text for text in texts if text.get_text().strip() and text.get_visible()]


FACES = {weight: FT2Font(findfont(FontProperties(family="DejaVu Sans", weight=weight)))
         for weight in ("normal", "bold")}  # fmt: skip


def letters_wide(text, size, weight):
    """Width of a text in the font that the drawings name first [px]."""
    face = FACES[weight]
    face.set_size(size, 72)
    face.set_text(text, 0.0)
    return face.get_width_height()[0] / 64.0


def drawn_texts(svg):
    """Words of a drawing, each with the box of its letters."""
    for node in ElementTree.fromstring(svg).iter("{http://www.w3.org/2000/svg}text"):
        text, size = "".join(node.itertext()), float(node.get("font-size"))
        wide = letters_wide(text, size, node.get("font-weight", "normal"))
        start = {"start": 0.0, "middle": 0.5, "end": 1.0}[node.get("text-anchor", "start")]
        left, foot = float(node.get("x")) - start * wide, float(node.get("y"))
        yield text, Bbox([[left, foot - 0.75 * size], [left + wide, foot + 0.22 * size]])


@every_case
def test_words_state_the_finding_and_no_text_hides_another(function, given):
    drawn = function(*given)
    assert_words_begin_with_the_finding(drawn)
    assert_texts_are_apart(drawn.picture)


def assert_texts_are_apart(picture):
    if isinstance(picture, str):
        root = ElementTree.fromstring(picture)
        width, height = float(root.get("width")), float(root.get("height"))
        boxes = [found for found in drawn_texts(picture) if found[0]]
    else:
        picture.canvas.draw()
        width, height = picture.canvas.get_width_height()
        boxes = [(text.get_text(), text.get_window_extent()) for text in visible_texts(picture)]
    assert boxes
    for text, box in boxes:
        inside = box.x0 >= 0 and box.y0 >= 0 and box.x1 <= width and box.y1 <= height
        assert inside, f"{text!r} leaves the canvas: {box.extents.round()}"
    for (text, box), (other, other_box) in combinations(boxes, 2):
        # A pixel of overlap is the empty border of a letter.
        apart = (
            box.x1 <= other_box.x0 + 1
            or other_box.x1 <= box.x0 + 1
            or box.y1 <= other_box.y0 + 1
            or other_box.y1 <= box.y0 + 1
        )
        assert apart, f"{text!r} lies over {other!r}"


def title_of(picture):
    if not isinstance(picture, str):
        return " ".join(picture.texts[0].get_text().split("\n"))
    nodes = ElementTree.fromstring(picture).iter("{http://www.w3.org/2000/svg}text")
    return " ".join(node.text for node in nodes if node.get("font-size") == "15")


def bytes_of(picture):
    return picture.encode() if isinstance(picture, str) else style.png(picture)


def assert_words_begin_with_the_finding(drawn):
    title, words = title_of(drawn.picture), drawn.words
    assert len(title.split()) > 3
    assert drawn.finding.startswith(title.partition(". ")[0]) and drawn.finding.endswith(".")
    assert len(words.split()) > 3 and words.endswith(".")
    assert "nan" not in words.lower() and "inf" not in words.split()


@one_of_each
def test_the_same_arguments_give_the_same_picture_and_words(function, given):
    first, second = function(*given), function(*given)
    assert bytes_of(first.picture) == bytes_of(second.picture)
    assert first[1:] == second[1:]


def test_no_figure_stays_behind():
    for function, given in ONE_OF_EACH:
        bytes_of(function(*given).picture)
    assert not Gcf.figs


@one_of_each
def test_pictures_are_white_and_at_least_900_pixels_wide(function, given):
    picture = function(*given).picture
    if isinstance(picture, str):
        face = ElementTree.fromstring(picture)[0]
        assert face.get("fill") == "#ffffff" and face.get("width") == "920"
        assert float(face.get("height")) >= 240
        return
    picture.canvas.draw()
    pixels = memoryview(picture.canvas.buffer_rgba())
    assert pixels[0, 0, 0] == pixels[0, 0, 1] == pixels[0, 0, 2] == pixels[0, 0, 3] == 255
    height, width, _ = pixels.shape
    assert width == 900 and height >= 240
