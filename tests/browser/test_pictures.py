"""Every picture in a real Chromium, as wide as a narrow window and as a wide one.

Its letters are real; on other supplies, and with what lies on lines: tests/figures/test_labels.py.
"""

import lab
import pytest
from every_case import CASES
from explorer_states import states

from helpers.figures import bands, circuits, plain
from helpers.pages.explorers import EXPLORERS
from helpers.physics.mains import SUPPLIES
from helpers.physics.phase_cut import Dimmer

WIDTHS = 338, 920
"""What a window of 480 px leaves for a picture in a lesson, and the widest that there is [px]."""
LEAST = 13
"""Size of letters [px]."""
# Letters overlap if their boxes do, less the room that a line leaves above and below them.
LAID_OUT = """least => [...document.querySelectorAll('[role=img]')].flatMap((picture, number) => {
  const face = picture.parentElement.getBoundingClientRect(), faults = [], words = [];
  const walker = document.createTreeWalker(picture, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode, holder = node.parentElement, range = document.createRange();
    if (!node.data.trim() || holder.closest('title, desc')) continue;
    const scale = holder.getScreenCTM ? holder.getScreenCTM().a : 1;
    const size = parseFloat(getComputedStyle(holder).fontSize) * scale;
    if (size < least - 0.01) faults.push([number, `${size} px`, node.data]);
    range.selectNodeContents(node);
    for (const box of range.getClientRects())
      words.push({text: node.data, left: box.left, right: box.right,
                  top: box.top + 0.2 * box.height, bottom: box.bottom - 0.2 * box.height});
  }
  words.forEach((word, place) => {
    if (word.left < face.left - 0.5 || word.right > face.right + 0.5
        || word.top < face.top || word.bottom > face.bottom)
      faults.push([number, 'clipped', word.text]);
    words.slice(place + 1).forEach(other => {
      if (word.left < other.right && other.left < word.right
          && word.top < other.bottom && other.top < word.bottom)
        faults.push([number, word.text, other.text]);
    });
  });
  return faults;
})"""


def drawings():
    """Yield what is drawn, and the picture."""
    for function, given in CASES:
        yield (function.__name__, given), function(*given).picture
    for degrees in (0.0, 90.0, 180.0):
        given = SUPPLIES["230 V 50 Hz"], Dimmer("leading", degrees)
        yield ("waveform", given), plain.waveform(*given).picture
    yield "meter", plain.meter("-115.28", "V", "AC volts, average-responding").picture
    for names in (("orange",) * 4 + ("violet",), ("yellow", "violet", "silver", "gold")):
        yield names, bands.resistor(names).picture
    for circuit in circuits.NAMES:
        yield circuit, circuits.indicator(circuit, 4.75e6, 12.34).picture
    for tap in ("after", "before"):
        yield tap, circuits.dimmed_heater(tap).picture
    for name, explorer in EXPLORERS.items():
        draw, knobs = explorer.open_on(SUPPLIES["240 V 50 Hz"])
        for state in states(knobs):
            yield (name, state), draw(**state).picture


@pytest.fixture(scope="module")
def drawn():
    """What is drawn alike in several states is looked at once."""
    alike = {picture: what for what, picture in drawings()}
    return [(what, picture) for picture, what in alike.items()]


@pytest.mark.parametrize("width", WIDTHS)
def test_words_can_be_read_are_not_clipped_and_do_not_lie_over_others(browser_found, drawn, width):
    found = []
    with lab.chromium(width + 40, 1000) as page:
        for start in range(0, len(drawn), 100):
            some = drawn[start : start + 100]
            page.set_content(
                "<!doctype html><body style='font: 14px sans-serif'>"
                + "".join(f"<div style='width:{width}px'>{picture}</div>" for _, picture in some)
            )
            found += [(some[at][0], *said) for at, *said in page.evaluate(LAID_OUT, LEAST)]
    assert not found, f"{len(found)} faults:\n" + "\n".join(map(str, found[:40]))


def test_words_that_are_small_clipped_or_over_others_are_found(browser_found):
    with lab.chromium(400, 400) as page:
        page.set_content(
            "<div><svg role=img width=90 height=40 viewBox='0 0 180 80'>"
            "<text x=5 y=20>one</text><text x=9 y=20>two</text><text x=-20 y=70>out</text></svg>"
        )
        found = [fault[1] for fault in page.evaluate(LAID_OUT, LEAST)]
        assert found == ["8 px"] * 3 + ["one", "clipped"]
