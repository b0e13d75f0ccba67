"""The mark book of the invented class in a real browser: nothing clipped, light, dark and on paper.

The rules are those of axe-core, a reference library for WCAG 2.2 (W3C Recommendation, 2023), its
good practice for landmarks included.
"""

import re
from importlib.resources import files
from pathlib import Path
from urllib.parse import urlparse
from urllib.request import url2pathname

import lab
import pytest

from helpers.classroom.demo_room import CLASS_WORD, write_demo_room
from helpers.classroom.marking import mark_folder
from helpers.classroom.wanted import Wanted

AXE = files("axe_playwright_python") / "axe.min.js"
ONE_OF_EACH = """() => document.querySelectorAll('main tbody').forEach(body => {
  const met = new Set();
  [...body.rows].forEach(row => {
    const looks = [...row.querySelectorAll('*')].map(node => node.nodeName + node.className);
    if (looks.every(look => met.has(look))) row.remove();
    looks.forEach(look => met.add(look)); }); })"""
"""Leaves one row of those that look alike: what holds for it in a colour holds for all."""
LOOKS = {
    "light": {"color_scheme": "light"},
    "dark": {"color_scheme": "dark"},
    "forced colours": {"color_scheme": "light", "forced_colors": "active"},
    "print": {"color_scheme": "light", "media": "print"},
}
CLIPPED = """() => [document.documentElement, ...document.querySelectorAll('main *')]
  .filter(e => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).overflowX !== 'visible')
  .map(e => e.outerHTML.slice(0, 100))"""
JUDGE = """async (asked) => {
  const found = await axe.run(asked || {});
  return {faults: found.violations.flatMap(rule => rule.nodes.map(
            node => `${rule.id}: ${node.html.slice(0, 100)}`)),
          contrasts: found.passes.filter(rule => rule.id === 'color-contrast')
            .flatMap(rule => rule.nodes).length};
}"""


@pytest.fixture(scope="module")
def book(browser_found, tmp_path_factory):
    """Yield a browser page with the mark book of the 24 bench codes, and all that it asked for."""
    room = tmp_path_factory.mktemp("room")
    write_demo_room(room)
    where = room / "hand-ins", room / "roster.csv", CLASS_WORD, room / "out"
    marked = mark_folder(Wanted(*where), feedback=room / "out")
    asked = []
    with lab.chromium(1280, 900) as page:
        page.on("request", lambda request: asked.append(request.url))
        page.goto(marked.page.as_uri())
        yield page, asked, marked.page.as_uri()


def test_it_asks_for_nothing_but_itself(book):
    _, asked, address = book
    assert asked == [address]


@pytest.mark.parametrize("width", [1280, 320])
def test_nothing_is_clipped(book, width):
    """At 320 px wide tables scroll in their own box, and the page does not (WCAG 2.2, 1.4.10)."""
    page, _, _ = book
    page.set_viewport_size({"width": width, "height": 900})
    clipped = page.evaluate(CLIPPED)
    page.set_viewport_size({"width": 1280, "height": 900})
    assert [one for one in clipped if width == 1280 or 'class="scroll"' not in one] == []


@pytest.mark.parametrize("look", LOOKS)
def test_it_meets_the_rules_in_every_look(book, look):
    page, _, address = book
    page.goto(address)
    page.emulate_media(**{"media": "screen", "forced_colors": "none"} | LOOKS[look])
    page.evaluate(AXE.read_text("utf-8"))
    if look == "light":
        judged = page.evaluate(JUDGE, {"rules": {"color-contrast": {"enabled": False}}})
        assert judged["faults"] == []
    page.evaluate(ONE_OF_EACH)
    judged = page.evaluate(JUDGE, {})
    assert judged["faults"] == [] and judged["contrasts"] > 200
    page.evaluate("document.querySelector('main').append(document.querySelector('nav li'))")
    judged = page.evaluate(JUDGE, {"runOnly": ["listitem"]})
    assert judged["faults"], "a list item outside a list would be found"


def test_24_learners_fit_on_six_pages(book):
    page, _, address = book
    page.goto(address)
    page.emulate_media(media="print", color_scheme="light", forced_colors="none")
    paper = page.pdf(prefer_css_page_size=True, print_background=True, format="A4")
    assert 1 < len(re.findall(rb"/Type\s*/Page\b(?!s)", paper)) <= 6


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_learner_s_page_meets_the_rules_on_a_narrow_screen(book, scheme):
    page, _, address = book
    folder = Path(url2pathname(urlparse(address).path)).parent
    longest = max(folder.glob("feedback-*.html"), key=lambda path: path.stat().st_size)
    with page.context.browser.new_page(viewport={"width": 320, "height": 900}) as own:
        own.emulate_media(color_scheme=scheme)
        own.goto(longest.as_uri())
        assert own.evaluate("document.documentElement.scrollWidth") <= 320
        own.evaluate(AXE.read_text("utf-8"))
        judged = own.evaluate(JUDGE)
    assert judged["faults"] == [] and judged["contrasts"] > 50
