"""Pages from templates: escaped whatever is put in, strict, streamed."""

from itertools import count, islice

import pytest
from jinja2 import DictLoader, UndefinedError
from markupsafe import Markup

from helpers.exercises.refusals import plain
from helpers.pages import templates


@pytest.fixture
def one_template(monkeypatch):
    """Let `templates.page("one", ...)` make a page of a text given in the test."""
    environment = templates._environment().overlay()

    def use(text):
        environment.loader = DictLoader({"one.html": text, "one.css": "p {}"})
        monkeypatch.setattr(templates, "_environment", lambda: environment)
        environment.cache.clear()

    return use


@pytest.mark.parametrize("place", ["<p>{{ text }}</p>", '<p title="{{ text }}"></p>'])
def test_text_is_escaped_and_shows_all_it_holds(one_template, place):
    one_template(place)
    text = "\"><svg onload='x'>\u202e\ud800\x00"
    made = "".join(templates.page("one", text=text))
    safe = "&#34;&gt;&lt;svg onload=&#39;x&#39;&gt;\\u202e\\ud800\\x00"
    assert made == place.replace("{{ text }}", safe)


def test_what_is_too_long_for_a_page_is_cut(one_template):
    one_template("{{ text }}")
    made = "".join(templates.page("one", text="x" * 1000))
    assert made == "x" * templates.LONGEST + "…"


def test_what_a_macro_made_is_not_escaped_again(one_template):
    one_template("{% macro bold(t) %}<b>{{ t }}</b>{% endmacro %}{{ bold(text) }}{{ 7 }}")
    assert "".join(templates.page("one", text="<")) == "<b>&lt;</b>7"
    assert "".join(templates.page("one", text=Markup("<i>"))) == "<b><i></b>7"


def test_what_was_not_handed_over_stops_the_page(one_template):
    one_template("{{ missing }}")
    with pytest.raises(UndefinedError, match="'missing' is undefined"):
        list(templates.page("one"))


def test_a_page_is_made_piece_by_piece(one_template):
    """Its rows never end, and still it begins."""
    one_template("{% for row in rows %}<p>{{ row }}</p>{% endfor %}")
    first = next(iter(templates.page("one", rows=count())))
    assert first.startswith("<p>0</p><p>1</p>")
    assert len(list(islice(templates.page("one", rows=count()), 3))) == 3


def test_a_number_keeps_the_blank_before_its_unit(one_template):
    one_template("{{ text }}{{ part }}")
    part = templates.part("one", text="2.6\u00a0mA", part=1)
    assert part == "2.6\u00a0mA1"
    assert "".join(templates.page("one", text="\u202e", part=part)) == "\\u202e2.6\u00a0mA1"


def test_a_message_shows_the_blank_before_a_unit_as_a_blank_and_other_shapeless_signs_spelt_out():
    assert plain("4 × 22\xa0kΩ\x00") == "4 × 22 kΩ\\x00"
