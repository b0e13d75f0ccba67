"""The sizing sheet in a real browser: nothing clipped, read by everybody, whole on both papers.

The rules are those of axe-core, as for the mark book.
"""

import re
import zlib

import lab
import pytest
from test_mark_book import AXE, CLIPPED, JUDGE

from helpers.exercises.wording import STAMP
from helpers.sheets import danger_items, sizing_sheet
from helpers.sizing import verdicts
from helpers.sizing.brief import Brief, from_toml

BEGUN = """
[use]
connection = "plug-in"
by_others = false
trouble = "not seen"
[supply]
volts = "120 V"
hertz = "60 Hz"
[heater]
power = "60 W"
full_power_safe = "yes"
[dimmer]
rated = "300 W"
[box]
touch = "closed window"
"""
PLANS = {
    "workshop": (lambda: verdicts.plan(Brief()), 6),
    "120 V": (lambda: verdicts.plan(Brief(supply_volts=120.0, supply_hertz=60.0)), 6),
    "much left out": (lambda: verdicts.plan(from_toml(BEGUN)), 6),
    "nothing meets it": (lambda: verdicts.plan(Brief(seen_lux=20000.0)), 3),
    "stopped": (lambda: verdicts.plan(Brief(use_connection="fixed")), 3),
    "mine": (lambda: verdicts.mine(Brief(), "series_diode", 47e3, 3, 0.6, 300.0), 6),
}
PAPERS = {"A4": 794, "Letter": 816}
"""Width at 96 px to the inch [px]."""
MARGIN = 91
"""Of both sides together: 12 mm each [px]."""


@pytest.fixture(scope="module", params=PLANS)
def sheet(request, browser_found, tmp_path_factory):
    """Yield a browser page with a sheet, all that it asked for, and how many pages it may take."""
    make, most = PLANS[request.param]
    path, asked = tmp_path_factory.mktemp("sheet") / "sheet.html", []
    sizing_sheet.write_sheet(path, sizing_sheet.pieces(make(), danger_items.danger_items()))
    with lab.chromium(1280, 900) as page:
        page.on("request", lambda request: asked.append(request.url))
        page.goto(path.as_uri())
        yield page, asked, most


def test_it_asks_for_nothing_but_itself(sheet):
    page, asked, _ = sheet
    assert asked == [page.url]


@pytest.mark.parametrize("width", [1280, 320])
def test_nothing_is_clipped(sheet, width):
    """At 320 px wide tables scroll in their own box, and the page does not (WCAG 2.2, 1.4.10)."""
    page, _, _ = sheet
    page.set_viewport_size({"width": width, "height": 900})
    clipped = page.evaluate(CLIPPED)
    page.set_viewport_size({"width": 1280, "height": 900})
    assert [one for one in clipped if width == 1280 or 'class="scroll"' not in one] == []


@pytest.mark.parametrize("media", ["screen", "print"])
def test_it_meets_the_rules(sheet, media):
    page, _, _ = sheet
    page.emulate_media(media=media)
    page.evaluate(AXE.read_text("utf-8"))
    judged = page.evaluate(JUDGE)
    assert judged["faults"] == [] and judged["contrasts"] > 40
    page.emulate_media(media="screen")


@pytest.mark.parametrize("paper", PAPERS)
def test_on_paper_nothing_is_cut_and_each_page_has_the_stamp(sheet, paper):
    page, _, most = sheet
    page.emulate_media(media="print")
    page.set_viewport_size({"width": PAPERS[paper] - MARGIN, "height": 900})
    assert page.evaluate(CLIPPED) == []
    # Set from outside, past the page's own policy, to be found again in what is printed.
    page.evaluate("""() => document.querySelectorAll('.stamp').forEach(
        one => one.style.color = 'rgb(51, 102, 153)')""")
    printed = page.pdf(prefer_css_page_size=True, print_background=True, format=paper)
    page.set_viewport_size({"width": 1280, "height": 900})
    page.emulate_media(media="screen")
    pages = [content for content in streams(printed) if b" Tf" in content]
    count = len(re.findall(rb"/Type\s*/Page\b(?!s)", printed))
    assert 1 < count <= most and len(pages) >= count
    assert sum(colour(content) for content in pages) == count
    assert page.locator(".stamp").first.inner_text() == STAMP


def streams(printed):
    """Yield what stands in a PDF, page by page and more, unpacked."""
    for found in re.finditer(rb"stream\r?\n(.*?)endstream", printed, re.DOTALL):
        try:
            yield zlib.decompress(found[1])
        except zlib.error:
            continue


def colour(content):
    """Whether something is written in the marked colour."""
    return any(
        [round(float(part), 1) for part in found.split()] == [0.2, 0.4, 0.6]
        for found in re.findall(rb"([\d.]+ [\d.]+ [\d.]+) rg", content)
    )


def test_black_ink_on_white_says_it_all(sheet):
    """Every verdict and every item has a word of its own, so that grey paper tells as much."""
    page, _, _ = sheet
    shown = page.evaluate("""() => [...document.querySelectorAll('main *')].map(
        e => getComputedStyle(e).color).filter(c => c !== 'rgb(0, 0, 0)')""")
    assert shown == []
