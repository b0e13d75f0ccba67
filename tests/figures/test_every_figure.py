"""Each picture: sound at the ends of what it is given, the same each time, no leak.

How drawings lie on the page is looked at in tests/browser/test_pictures.py.
"""

import re
from xml.etree import ElementTree

import pytest
from every_case import CASES

NAMES_OF_CASES = [f"{function.__name__}-{index}" for index, (function, _) in enumerate(CASES)]
ONE_OF_EACH = list({function: (function, given) for function, given in CASES}.values())

every_case = pytest.mark.parametrize(("function", "given"), CASES, ids=NAMES_OF_CASES)
one_of_each = pytest.mark.parametrize(
    ("function", "given"), ONE_OF_EACH, ids=[function.__name__ for function, _ in ONE_OF_EACH]
)


@every_case
def test_words_state_the_finding_and_the_title_has_no_decimals(function, given):
    drawn = function(*given)
    title, words = title_of(drawn.picture), drawn.words
    assert len(title.split()) > 3 and not re.search(r"\d\.\d", title)
    assert drawn.finding.startswith(title.partition(". ")[0]) and drawn.finding.endswith(".")
    assert len(words.split()) > 3 and words.endswith(".")
    assert "nan" not in words.lower() and "inf" not in words.split()


def title_of(picture):
    return ElementTree.fromstring(picture)[0].text


@one_of_each
def test_the_same_arguments_give_the_same_picture_and_words(function, given):
    assert function(*given) == function(*given)


@one_of_each
def test_a_drawing_has_the_ink_and_face_of_the_page_and_a_plotted_one_is_white(function, given):
    picture = function(*given).picture
    assert ("currentColor" in picture) != ("image/png" in picture)
    white = re.search("(fill|background)[:=][^ ;]*#(fff|ffffff)\\b", picture)
    assert bool(white) == ("image/png" in picture)
