"""Pictures: well-formed, the same at every run, named for who cannot see them."""

import re
from xml.etree import ElementTree

import pytest

from helpers.exercises.bank import bank, lessons
from helpers.figures import bands, job
from helpers.pages.pictures import DRAWINGS, draw_picture
from helpers.physics import resistors
from helpers.physics.mains import SUPPLIES


def checked(picture, alternative):
    """Return the picture's tree, after the checks that every picture has to pass."""
    tree = ElementTree.fromstring(picture)
    assert tree.tag in ("svg", "figure") and tree.get("role") == "img"
    title = tree.get("aria-label") or tree.findtext("title")
    assert len(title.split()) >= 3
    assert (tree.findtext("desc") or title) == alternative
    assert not re.search(r"<script|javascript:|\son\w+=|href=", picture)
    return tree


E24_OVER_THE_DECADES = [
    value * 10.0**decade for decade in range(-1, 6) for value in resistors.SERIES["E24"]
]
# IEC 60062: the digits of the colours, as every colour chart has them.
DIGITS = ["black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white"]

PREFIXES = {"": 1.0, "k": 1e3, "M": 1e6, "G": 1e9}


class TestBands:
    @pytest.mark.parametrize("ohms", E24_OVER_THE_DECADES, ids=lambda o: f"property: {o:g} ohm")
    def test_every_e24_value_is_drawn_with_its_bands_from_left_to_right(self, ohms):
        names = resistors.bands(ohms, 5.0)
        svg, said, _ = bands.resistor(names)
        tree = checked(svg, said)
        stripes = [r for r in tree.iter("rect") if r.get("width") == "18"]
        labels = [text.text for text in tree.iter("text")]
        assert labels == list(names)
        assert [stripe.get("fill") for stripe in stripes] == [bands.PAINT[name] for name in names]
        places = [float(stripe.get("x")) for stripe in stripes]
        assert places == sorted(places) and len(set(places)) == len(places)
        assert all(name in said for name in names)

    @pytest.mark.parametrize("ohms", [270.0, 4700.0, 82_000.0], ids=lambda o: f"second way: {o:g}")
    def test_the_bands_drawn_are_read_back_by_hand(self, ohms):
        """Digit, digit, number of zeros: IEC 60062, by the colour chart and nothing else."""
        svg, *_ = bands.resistor(resistors.bands(ohms, 5.0))
        labels = re.findall(r">(\w+)</text>", svg)
        first, second, zeros = (DIGITS.index(name) for name in labels[:3])
        assert (10 * first + second) * 10**zeros == ohms and labels[3] == "gold"

    def test_published_the_key_names_each_colour_with_its_figure_and_zeros(self):
        """IEC 60062; the resistor above it says the same as without a key."""
        names = ("green", "blue", "red", "gold")
        svg, said, _ = bands.with_key(names)
        alone, key = svg.split("</svg>")[:2]
        assert (f"{alone}</svg>", said) == bands.resistor(names)[:2]
        for figure, name in enumerate(DIGITS):
            cell = re.search(rf">{name}</text><text[^>]*>(.*?)</text><text[^>]*>× (.*?)<", key)
            number, _, prefix = cell[2].partition(" ")
            assert float(number) * PREFIXES[prefix] == 10.0**figure
            assert cell[1] == str(figure)
        assert f'fill="{bands.PAINT["gold"]}"' in key

    def test_the_tolerance_band_stands_apart(self):
        for count in (3, 4, 5):
            svg, said, _ = bands.resistor(("red",) * (count - 1) + ("gold",))
            xs = [float(x) for x in re.findall(r'<rect x="(\d+)" y="20" width="18"', svg)]
            gaps = [b - a for a, b in zip(xs, xs[1:], strict=False)]
            assert gaps[-1] == max(gaps) and gaps[-1] > 1.2 * min(gaps)
            assert "set apart, gold" in said

    def test_a_band_to_be_picked_is_an_outline_with_its_place_and_no_band_is_bare(self):
        svg, said, _ = bands.resistor(("red", "", "black", "none"))
        stripes = re.findall(r'width="18" height="60" fill="([^"]*)"( stroke-dasharray)?', svg)
        black, red = bands.PAINT["black"], bands.PAINT["red"]
        assert [fill for fill, _ in stripes] == [red, "none", black]
        assert [bool(dashed) for _, dashed in stripes] == [False, True, False]
        assert re.findall(r">([^<>]+)</text>", svg) == ["red", "band 2", "black", "none"]
        assert said == "A resistor with bands red, not picked, black and, set apart, none."

    def test_no_two_colours_are_painted_alike(self):
        assert len(set(bands.PAINT.values())) == len(bands.PAINT)
        assert set(DIGITS) <= set(bands.PAINT)

    def test_an_unknown_colour_is_refused_with_those_there_are(self):
        with pytest.raises(ValueError, match="'purple' is no colour of the code: black, brown"):
            bands.resistor(("red", "purple", "red", "gold"))

    def test_the_same_bands_give_the_same_text(self):
        names = ("red", "red", "red", "gold")
        assert bands.resistor(names) == bands.resistor(names)


class TestJob:
    def test_every_lesson_that_teaches_a_subject_opens_with_its_part_of_the_job(self):
        assert list(job.TODAY) == [number for number in lessons() if number != "00"]

    @pytest.mark.parametrize("number", job.TODAY)
    def test_only_todays_part_is_in_full_ink(self, number):
        still = job.today(number)
        groups = re.findall(r'<g fill="none"[^>]*>', still.picture)
        pale = [' opacity=".25"' in group for group in groups]
        assert len(pale) == 6 and pale.count(False) == len(job.TODAY[number][0]) > 0
        checked_still = ElementTree.fromstring(still.picture)
        assert job.TODAY[number][1] in checked_still.get("aria-label")

    def test_property_the_more_heat_the_fuller_the_pot_and_the_wider_the_halo(self):
        drawn = [job.knob(SUPPLIES["230 V 50 Hz"], turn).picture for turn in (10.0, 40.0, 90.0)]
        fills = [float(re.search(r'width="80" height="([\d.]+)"', each)[1]) for each in drawn]
        halos = [float(re.search(r'r="([\d.]+)" fill="#b87d00"', each)[1]) for each in drawn]
        assert fills == sorted(fills) and halos == sorted(halos)
        assert len(set(fills)) == len(set(halos)) == 3

    def test_the_file_that_the_readme_shows_is_the_picture_of_today(self, root):
        """`python -c "from helpers.figures import job; print(job.standalone(), end='')"`."""
        text = (root / "lessons" / "the-job.svg").read_text(encoding="utf-8")
        assert text == job.standalone()
        assert ElementTree.fromstring(text).tag.endswith("svg") and "var(" not in text


class TestPicturesOfQuestions:
    questions = [question for question in bank().values() if question.picture]

    @pytest.mark.parametrize("question", questions, ids=lambda q: f"property: {q.id}")
    def test_each_is_drawn_and_said_in_words_for_many_learners(self, question):
        for number in range(30):
            numbers = question.numbers_for(
                f"BENCH-{number:02d}", "wick", SUPPLIES["230 V 50 Hz"], 0
            )
            drawn, line = draw_picture(question.picture(numbers))
            head, _, words = line.text.partition("words: ")
            assert head == "The picture in "
            first, *key = ElementTree.fromstring(f"<div>{drawn}</div>")
            checked(ElementTree.tostring(first, encoding="unicode"), words)
            for tree in key:
                title = tree.findtext("title")
                checked(ElementTree.tostring(tree, encoding="unicode"), title)

    def test_every_drawing_is_used_and_every_picture_has_its_drawing(self):
        supply = SUPPLIES["230 V 50 Hz"]
        used = {
            q.picture(q.numbers_for("BENCH-07", "wick", supply, 0)).drawing for q in self.questions
        }
        assert used == set(DRAWINGS)
