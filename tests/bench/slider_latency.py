"""How soon a picture follows a slider: `python tests/bench/slider_latency.py`.

Opens the dimmer explorer in a real JupyterLab in a real Chromium, beside a slider that changes
nothing but a line of text (the floor: the way to the kernel and back). Presses an arrow key, and
takes the time until the new picture has been painted; text and picture take turns, so that both
meet the same load. Then drags the handle fast and looks which picture stays. Exits with 1 when a
bar is missed.
"""

import argparse
import os
import platform
import sys
import tempfile
from datetime import UTC, datetime
from pathlib import Path
from statistics import median, quantiles

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2]), str(HERE.parents[1] / "browser")]

import explorer_notebook  # noqa: E402
import lab  # noqa: E402

MOVES, DRAG_MOVES, DRAG_GAP_MS = 60, 30, 16
MEDIAN_MS, HIGH_MS, SETTLED_MS = 35.0, 70.0, 150.0
LEAST_PIXELS = (900, 360)
FLOOR = """
import ipywidgets as widgets
from helpers.widgets.screen import frame
slider = widgets.FloatSlider(min=0, max=180, step=1, value=110, readout=False)
text = widgets.HTML("at 110°")
slider.observe(lambda change: setattr(text, "value", f"at {change['new']:g}°"), "value")
frame([slider, text], "cw-floor")
"""
EXPLORER = """
from helpers import explore
explore("dimmer")
"""
# Two frames after a change in the page, its pixels have been painted.
PRESS = """async ([panel, key]) => {
  const handle = document.querySelector(`${panel} .noUi-handle`);
  handle.focus();
  const shown = document.querySelector(panel);
  const next = String((+handle.getAttribute('aria-valuenow')) + (key === 'ArrowRight' ? 1 : -1));
  const wanted = `at ${next}°`;
  return await new Promise((done, failed) => {
    setTimeout(() => failed(new Error(`no picture of ${next} degrees`)), 5000);
    const watch = new MutationObserver(() => {
      const changed = shown.querySelector('[role=img]') || shown;
      if (!changed.textContent.includes(wanted)) return;
      watch.disconnect();
      requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now() - start)));
    });
    watch.observe(shown, {subtree: true, childList: true, characterData: true});
    const start = performance.now();
    handle.dispatchEvent(new KeyboardEvent('keydown', {key, bubbles: true, cancelable: true}));
  });
}"""
WATCH_DRAG = """panel => {
  const shown = document.querySelector(panel);
  window.drag = {moved: 0, drawn: 0, pictures: 0};
  document.addEventListener('pointermove', () => window.drag.moved = performance.now(), true);
  new MutationObserver(records => {
    if (!records.some(record => [...record.addedNodes].some(node => node.nodeName === 'FIGURE')))
      return;
    window.drag.pictures += 1;
    requestAnimationFrame(() => requestAnimationFrame(
      () => window.drag.drawn = performance.now()));
  }).observe(shown, {subtree: true, childList: true});
}"""


def press(page, panel, right):
    """Press an arrow key on a slider; return how long the new pixels took [ms]."""
    return page.evaluate(PRESS, [panel, "ArrowRight" if right else "ArrowLeft"])


def press_by_turns(page, moves):
    """Return the times of the text and of the picture, a move each by turns [ms]."""
    times = {".cw-floor": [], ".cw-e-dimmer": []}
    for move in range(-3, moves):
        for panel, kept in times.items():
            took = press(page, panel, right=move % 20 < 10)
            if move >= 0:
                kept.append(took)
            page.wait_for_timeout(30)
    return times.values()


def drag(page, moves=DRAG_MOVES):
    """Drag the handle fast; return how long after the last move the last picture came [ms],
    how many pictures were shown, and whether the one that stays is the one of the slider."""
    handle = page.locator(".cw-e-dimmer .noUi-handle")
    handle.scroll_into_view_if_needed()
    spot = handle.bounding_box()
    x, y = spot["x"] + spot["width"] / 2, spot["y"] + spot["height"] / 2
    page.evaluate(WATCH_DRAG, ".cw-e-dimmer")
    page.mouse.move(x, y)
    page.mouse.down()
    for move in range(1, moves + 1):
        page.mouse.move(x - 5 * move, y)
        page.wait_for_timeout(DRAG_GAP_MS)
    page.mouse.up()
    page.wait_for_timeout(1000)
    seen = page.evaluate("window.drag")
    angle = float(handle.get_attribute("aria-valuenow"))
    title = page.locator(".cw-e-dimmer [role=img]").text_content()
    said = page.locator(".cw-e-dimmer [role=status]").text_content()
    stays = f"at {angle:g}°" in title and f"at {angle:g}°" in said
    return seen["drawn"] - seen["moved"], seen["pictures"], stays


def measure(moves=MOVES):
    """Return times of text and picture, the drag, and the size of the picture."""
    with tempfile.TemporaryDirectory() as folder, lab.lab(folder) as address:
        explorer_notebook.write_notebook(folder, [FLOOR, EXPLORER])
        with lab.chromium(1440, 1000) as page:
            lab.open_notebook(page, address, explorer_notebook.NAME)
            lab.run_all(page)
            page.locator(".cw-e-dimmer [role=img]").wait_for()
            size = page.locator(".cw-e-dimmer [role=img]").bounding_box()
            text, picture = press_by_turns(page, moves)
            return text, picture, drag(page), (size["width"], size["height"])


def high(times):
    """Return the 95th percentile."""
    return quantiles(times, n=20)[-1]


def misses(text, picture, dragged, size):
    """Return which bars are missed, in words."""
    settled, _, stays = dragged
    bars = {
        f"median above the floor plus {MEDIAN_MS:g} ms": median(picture)
        <= median(text) + MEDIAN_MS,
        f"95th percentile above the floor plus {HIGH_MS:g} ms": high(picture)
        <= high(text) + HIGH_MS,
        f"last picture later than {SETTLED_MS:g} ms": settled <= SETTLED_MS,
        "the picture that stays is not the last position": stays,
        "picture too small": size[0] >= LEAST_PIXELS[0] and size[1] >= LEAST_PIXELS[1],
    }
    return [words for words, kept in bars.items() if not kept]


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--moves", type=int, default=MOVES)
    moves = parser.parse_args().moves
    text, picture, dragged, size = measure(moves)
    print(f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC, python {' '.join(sys.argv)}")
    print(f"{platform.platform()}, {os.cpu_count()} cores, Python {platform.python_version()}")
    print(f"picture {size[0]:g} x {size[1]:g} px, {moves} moves")
    for name, times in (("text only (floor)", text), ("dimmer picture", picture)):
        print(f"{name}: median {median(times):.0f} ms, 95th percentile {high(times):.0f} ms")
    print(
        f"fast drag of {DRAG_MOVES} moves: last picture {dragged[0]:.0f} ms after the last move, "
        f"{dragged[1]} pictures shown, the last position stays: {dragged[2]}"
    )
    missed = misses(text, picture, dragged, size)
    for words in missed:
        print(f"MISSED: {words}")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
