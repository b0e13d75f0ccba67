"""Each picture: sound at the ends of what it is given, the same each time, no leak.

How drawings lie on the page is looked at in tests/browser/test_pictures.py.
"""

import re
from itertools import combinations
from xml.etree import ElementTree

import pytest
from every_case import CASES
from matplotlib._pylab_helpers import Gcf

from helpers.figures import style

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


@every_case
def test_words_state_the_finding_and_no_plotted_text_hides_another(function, given):
    drawn = function(*given)
    assert_words_begin_with_the_finding(drawn)
    if not isinstance(drawn.picture, str):
        assert_texts_are_apart(drawn.picture)


def assert_texts_are_apart(figure):
    figure.canvas.draw()
    width, height = figure.canvas.get_width_height()
    boxes = [(text.get_text(), text.get_window_extent()) for text in visible_texts(figure)]
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
    return ElementTree.fromstring(picture)[0].text


def text_of(picture):
    return picture if isinstance(picture, str) else style.image(picture, "A picture")


def assert_words_begin_with_the_finding(drawn):
    title, words = title_of(drawn.picture), drawn.words
    assert len(title.split()) > 3
    assert drawn.finding.startswith(title.partition(". ")[0]) and drawn.finding.endswith(".")
    assert len(words.split()) > 3 and words.endswith(".")
    assert "nan" not in words.lower() and "inf" not in words.split()


@one_of_each
def test_the_same_arguments_give_the_same_picture_and_words(function, given):
    first, second = function(*given), function(*given)
    assert text_of(first.picture) == text_of(second.picture)
    assert first[1:] == second[1:]


def test_no_figure_stays_behind():
    for function, given in ONE_OF_EACH:
        text_of(function(*given).picture)
    assert not Gcf.figs


@one_of_each
def test_a_drawing_has_the_ink_and_face_of_the_page_and_a_plotted_picture_is_white(function, given):
    picture = function(*given).picture
    if isinstance(picture, str):
        assert "currentColor" in picture
        assert not re.search("(fill|background)[:=][^ ;]*#(fff|ffffff)\\b", picture)
        return
    picture.canvas.draw()
    pixels = memoryview(picture.canvas.buffer_rgba())
    assert pixels[0, 0, 0] == pixels[0, 0, 1] == pixels[0, 0, 2] == pixels[0, 0, 3] == 255
    assert pixels.shape[1] == 900
