"""A page says the same in plain text and in HTML, and escapes all that it is given."""

import json
import re
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from page_words import words

from helpers.exercises.wording import Line
from helpers.pages.page import ANSWER_MEDIA_TYPE, Page

ROLES = (
    *("title", "about", "ask", "heading", "text", "option", "hint", "danger", "caution", "right"),
    *(
        "partly",
        "not-yet",
        "verdict",
        "note",
        "working",
        "within",
        "code",
        "folded",
        "nudge",
        "saved",
    ),
)
LINES = st.lists(
    st.builds(
        Line,
        st.sampled_from(ROLES),
        st.text(st.characters(categories=("L", "N", "P", "S", "Zs")), max_size=40)
        | st.sampled_from(["<b>", "</p>", "&amp;", "`<i>` `b`", "` <b>", '" onload="x', "a & b"]),
    ),
    max_size=8,
)


@settings(deadline=None, max_examples=100)
@given(LINES)
def test_plain_text_and_html_say_the_same(lines):
    page = Page(lines)
    html = words(page.html()).replace("`", "")
    assert html.split() == page.plain().replace("`", "").split()


@settings(deadline=None, max_examples=100)
@given(LINES)
def test_the_html_is_well_formed_and_holds_only_our_own_markup(lines):
    tree = ElementTree.fromstring(f"<page>{Page(lines).html()}</page>")
    assert {element.tag for element in tree.iter()} <= {
        "page", "div", "h3", "p", "ul", "li", "pre", "code", "details", "summary",
        "strong", "b", "span",
    }  # fmt: skip
    ours = {"class", "data-lm-suppress-shortcuts", "open", "data-pips"}
    assert all(set(element.attrib) <= ours for element in tree.iter())


def test_a_folded_line_shows_its_head_and_keeps_the_rest_after_the_picture():
    lines = [Line("text", "Read it."), Line("folded", "In words: <red>"), Line("option", "a) one")]
    html = Page(lines, picture="<svg></svg>").html()
    assert ">In words:</summary> &lt;red&gt;\n</details>" in html
    assert html.index("Read it.") < html.index("<svg>") < html.index("<details") < html.index("a) ")


def test_a_worked_answer_with_its_code_is_one_fold_which_ends_before_what_follows():
    lines = [Line("working", "Worked: so."), Line("within", "As typed"), Line("code", "1 + 1")]
    html = Page([*lines, Line("note", "Go on.")]).html()
    assert html.count("<details") == 1 and ' open="open"' in html
    assert html.index("1 + 1") < html.index("</details>") < html.index("Go on.")
    assert ' open="open"' not in Page([Line("folded", "Worked: so.")]).html()


def test_the_first_sentence_of_a_verdict_stands_out_and_marks_are_pips_and_words():
    html = Page([Line("right", "✓ Right. Read as b.")]).html()
    assert "<strong>✓ Right. </strong>Read as b." in html
    html = Page([Line("about", "ohm-2 · 3 marks")]).html()
    assert '<b data-pips="3"><span>3 marks</span></b>' in html
    assert '<h3 class="cw-title">Exercise 2</h3>' in Page([Line("title", "Exercise 2")]).html()


def test_what_stands_between_backticks_is_code_and_a_lone_one_stays():
    html = Page([Line("note", "use `a < b` now"), Line("note", "a ` alone <b>")]).html()
    assert "use <code>a &lt; b</code> now" in html
    assert "a ` alone &lt;b&gt;" in html


def test_a_picture_stands_before_the_options_and_after_the_question():
    lines = [Line("text", "What is it?"), Line("option", "a) one"), Line("hint", "Choose.")]
    html = Page(lines, picture="<svg></svg>").html()
    assert html.index("What is it?") < html.index("<svg>") < html.index("a) one")


def test_a_page_without_options_or_hint_still_shows_its_picture():
    assert "<svg>" in Page([Line("text", "Look.")], picture="<svg></svg>").html()


def test_answers_are_kept_with_the_output_and_hold_nothing_random_or_dated():
    page = Page([Line("note", "x")], data={"question": "ohm-2", "answers": ["7 mA"]})
    bundles = [page._repr_mimebundle_() for _ in range(2)]
    assert bundles[0] == bundles[1]
    assert bundles[0][ANSWER_MEDIA_TYPE] == {"question": "ohm-2", "answers": ["7 mA"]}
    assert not re.search(r"\d{4}-\d\d-\d\d", json.dumps(bundles[0]))
    assert ANSWER_MEDIA_TYPE not in Page([])._repr_mimebundle_()


@pytest.mark.parametrize("role", ROLES)
def test_every_role_is_a_class_of_the_page(role):
    html = Page([Line(role, "x")]).html()
    assert f"cw-{'options' if role == 'option' else role}" in html
