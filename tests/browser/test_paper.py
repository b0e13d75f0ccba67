"""What is printed, in a real browser: nothing cut on either paper, and all of it in ink alone.

The rules are those of axe-core, as for the mark book.
"""

import re

import lab
import pytest
from test_mark_book import AXE, JUDGE

from helpers.classroom import mark_book
from helpers.classroom.feedback import write_feedback
from helpers.exercises.settings import Settings
from helpers.sheets import key, paper, start_sheet

PEOPLE = [Settings("BENCH-07", "wick", "230 V 50 Hz"), Settings("BENCH-08", "wick", "120 V 60 Hz")]
#: Two lessons with all kinds, and a resistor, a trace and a meter to be read.
LESSONS = ("01", "02", "03")
MADE = {
    "paper": lambda people=PEOPLE: paper.pieces(people, LESSONS),
    "again": lambda people=PEOPLE: paper.pieces(people, LESSONS, 1),
    "key": lambda people=PEOPLE: key.pieces(people, LESSONS),
    "start sheets": lambda people=PEOPLE: start_sheet.pieces(people, LESSONS),
    "card": start_sheet.card,
    "guide": start_sheet.guide,
}
MILLIMETRES = {"A4": (210, 297), "Letter": (216, 279)}
MARGIN = 12
LOOK = """() => {
  const loud = new Set(), out = [], width = document.documentElement.clientWidth;
  const grey = colour => {
    const parts = (colour.match(/[\\d.]+/g) || []).map(Number);
    return parts.length < 3 || parts[3] === 0 || (parts[0] === parts[1] && parts[1] === parts[2]);
  };
  for (const e of document.querySelectorAll('main, main *')) {
    const look = getComputedStyle(e);
    const shape = e.namespaceURI.endsWith('svg') && !['svg', 'g', 'title'].includes(e.tagName);
    const inks = [look.color, look.backgroundColor, look.borderTopColor];
    for (const ink of shape ? [look.fill, look.stroke] : inks)
      if (!grey(ink)) loud.add(`${e.tagName} ${ink}`);
    const box = e.getBoundingClientRect();
    if (box.right > width + 1 || box.left < -1
        || (!shape && e.scrollWidth > e.clientWidth + 1 && look.overflowX !== 'visible'))
      out.push(e.outerHTML.slice(0, 100));
  }
  return {loud: [...loud], out};
}"""


def pages_of(page, size):
    page.emulate_media(media="print")
    made = page.pdf(prefer_css_page_size=False, print_background=True, format=size)
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", made))


@pytest.fixture(scope="module")
def browser(browser_found):
    with lab.chromium(1280, 900) as page:
        yield page


@pytest.fixture
def shown(request, browser, tmp_path):
    """Show one of `MADE`; yield the browser's page, what it asked for and what it complained of."""
    path, heard = tmp_path / "made.html", []
    path.write_text("".join(MADE[request.param]()), encoding="utf-8")
    browser.on("request", lambda one: one.url == path.as_uri() or heard.append(one.url))
    browser.on("console", lambda said: heard.append(said.text))
    browser.emulate_media(media="screen")
    browser.set_viewport_size({"width": 1280, "height": 900})
    browser.goto(path.as_uri())
    yield browser, heard


@pytest.mark.parametrize("shown", MADE, indirect=True)
def test_it_can_be_read_by_everybody_and_asks_for_nothing(shown):
    page, heard = shown
    page.evaluate(AXE.read_text("utf-8"))
    judged = page.evaluate(JUDGE)
    assert judged["faults"] == [] and judged["contrasts"] > 20
    assert heard == [], "something outside was asked for, or the page's own policy was broken"


@pytest.mark.parametrize("shown", MADE, indirect=True)
@pytest.mark.parametrize("size", MILLIMETRES)
def test_nothing_is_cut_on_paper_and_all_is_in_ink_alone(shown, size):
    page, _ = shown
    page.emulate_media(media="print")
    width, height = ((side - 2 * MARGIN) / 25.4 * 96 for side in MILLIMETRES[size])
    page.set_viewport_size({"width": int(width), "height": int(height)})
    assert page.evaluate(LOOK) == {"loud": [], "out": []}
    page.evaluate("document.querySelector('p').style.cssText = 'width: 50cm; color: red'")
    found = page.evaluate(LOOK)
    assert found["loud"] and found["out"], "a red line beyond the edge would be found"


def counted(browser, path, pieces, size):
    path.write_text("".join(pieces), encoding="utf-8")
    browser.goto(path.as_uri())
    return pages_of(browser, size)


@pytest.mark.parametrize("size", MILLIMETRES)
@pytest.mark.parametrize("name", ["paper", "key", "start sheets"])
def test_each_learner_begins_on_a_fresh_page(browser, tmp_path, name, size):
    """On the front of a sheet with a pack: of two learners alone and together. A key begins with
    what holds for all.
    """
    made, path = MADE[name], tmp_path / "made.html"
    people = PEOPLE[:1], PEOPLE[1:], PEOPLE
    first, second, both = (counted(browser, path, made(who), size) for who in people)
    blank = first % 2 if name == "paper" else 0
    assert both in {first + second + blank, first + second - (name == "key")}
    assert name != "start sheets" or [first, second] == [1, 1]


@pytest.mark.parametrize("size", MILLIMETRES)
@pytest.mark.parametrize("number", ["00", "02"])
def test_a_pack_of_odd_pages_leaves_a_back_empty(browser, tmp_path, number, size):
    """Pinned: no page is spent on room for sums, and no heading parts a page."""
    alone, both = (
        counted(browser, tmp_path / "made.html", paper.pieces(people, [number]), size)
        for people in (PEOPLE[:1], PEOPLE)
    )
    assert [alone, both] == {"00": [1, 3], "02": [3, 7]}[number]


@pytest.mark.parametrize("size", MILLIMETRES)
def test_feedback_of_two_takes_two_pages(browser, tmp_path, size):
    """What is to be looked at again fits below the lessons, and no page is left empty."""
    count = []
    for people in (PEOPLE[:1], PEOPLE):
        book = mark_book.MarkBook("wick", mark_book.lessons_of())
        for who in people:
            row = mark_book.LearnerMarks(who.learner, mark_book.HANDED_IN)
            row.states, row.typed = {"ohm-2": mark_book.NONE}, {"ohm-2": "9 A"}
            book.rows.append(row)
        whole = write_feedback(book, tmp_path)[-1]
        browser.goto(whole.as_uri())
        count.append(pages_of(browser, size))
    assert count == [1, 2]


@pytest.mark.parametrize("size", MILLIMETRES)
@pytest.mark.parametrize(("shown", "most"), [("card", 1), ("guide", 2)], indirect=["shown"])
def test_what_is_to_hang_on_a_wall_is_short(shown, most, size):
    assert pages_of(shown[0], size) <= most
