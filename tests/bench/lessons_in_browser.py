"""Every lesson from top to bottom in a real JupyterLab in a real Chromium, on two supplies.

Run `python tests/bench/lessons_in_browser.py [--shots FOLDER]`; it ends with code 1 if a cell
raises, warns or leaves an explorer or a card without its controls, or shows something that not
everybody can read: by axe-core and by `tests/browser/looks.py`. With a folder it keeps
screenshots of every page of every lesson, in the light theme and, on the second supply, the dark.
"""

import argparse
import sys
import tempfile
from pathlib import Path
from time import perf_counter

HERE = Path(__file__).resolve()
sys.path += [str(HERE.parent), str(HERE.parents[1] / "browser")]

import lab  # noqa: E402
import looks  # noqa: E402
from measured import heading, verdict  # noqa: E402

SUPPLIES = {"230 V 50 Hz": "light", "120 V 60 Hz": "dark"}
FAULTS = """() => {
  const cells = window.jupyterapp.shell.currentWidget.content.widgets;
  const found = [];
  for (const cell of cells) {
    if (cell.model.type !== 'code') continue;
    if (!cell.model.executionCount) found.push(cell.model.id + ': was not run');
    for (const output of cell.model.outputs.toJSON()) {
      if (output.output_type === 'error') found.push(cell.model.id + ': ' + output.evalue);
      if (output.name === 'stderr') found.push(cell.model.id + ': ' + output.text);
    }
    const source = cell.model.sharedModel.getSource(), boxes = '.cw-controls';
    const of = selector => cell.node.querySelectorAll(selector);
    const live = [...source.matchAll(
      /^(.*; )?(open_lesson|settings_form|card|explore|predictions|progress)\\(/gm)].length;
    if (of(boxes).length < live) found.push(cell.model.id + ': has no controls');
    if (/^card\\(/m.test(source) && !of(`${boxes} :is(input, select)`).length)
      found.push(cell.model.id + ': has nothing to answer with');
    if (of('.jupyter-widgets-error-widget').length) found.push(cell.model.id + ': shows an error');
  }
  return found;
}"""
SETTLED_SECONDS = 20.0

SCROLLED = "document.querySelector('.jp-WindowedPanel-outer')"


def lessons():
    """Return the file names of the lessons, in order."""
    return sorted(path.name for path in (lab.ROOT / "lessons").glob("[0-9][0-9]-*.ipynb"))


def faults(page):
    """Return what is wrong with the lesson on a page, once its controls have had time to come.

    The last cell is done when the kernel says so; on a busy machine the browser is then still
    building the controls that it was told of, for seconds.
    """
    end = perf_counter() + SETTLED_SECONDS
    while (found := page.evaluate(FAULTS)) and perf_counter() < end:
        page.wait_for_timeout(200)
    return found


def run_lesson(page, address, name, supply):
    """Open and run one lesson on one supply; return its faults and the seconds it took.

    The supply is chosen as a learner would in code: in the set-up cell's own call.
    """
    lab.open_notebook(page, address, name)
    page.evaluate("window.jupyterapp.shell.collapseLeft()")
    page.evaluate(
        """supply => {
        const cell = window.jupyterapp.shell.currentWidget.content.widgets
          .find(cell => cell.model.id === 'set-up').model.sharedModel;
        cell.setSource(cell.getSource().replace(
          /open_lesson\\("(\\d\\d)"\\)/, `open_lesson("$1", supply="${supply}")`));
        }""",
        supply,
    )
    start = perf_counter()
    lab.run_all(page)
    seconds = perf_counter() - start
    found = faults(page)
    if supply not in page.locator(".cw-progress").first.text_content():
        found.append(f"set-up: does not say {supply}")
    return found, seconds


def seen(page, address, name):
    """Return what not everybody can read of the open lesson, and the contrasts judged.

    Ends on the lesson's page as it is printed.
    """
    looks.load_axe(page)
    found, contrasts = [], 0
    for theme in looks.THEMES:
        looks.change_theme(page, theme)
        faults, judged = looks.judged(page)
        found += [f"{theme}: {fault}" for fault in faults]
        contrasts += judged
    return found + looks.looked_at(page, address, name), contrasts


def keep_shots(page, folder, prefix):
    """Keep a screenshot of every screenful of the open lesson."""
    page.evaluate(f"{SCROLLED}.scrollTo(0, 0)")
    moved, number = 1, 0
    while moved >= 1:
        page.wait_for_timeout(250)
        page.screenshot(path=str(folder / f"{prefix}-{number:02d}.png"))
        before = page.evaluate(f"{SCROLLED}.scrollTop")
        page.evaluate(f"{SCROLLED}.scrollBy(0, 850)")
        moved, number = page.evaluate(f"{SCROLLED}.scrollTop") - before, number + 1


def run_all(names, shots=None):
    """Run lessons on both supplies; return all faults, and seconds by lesson and supply."""
    found, seconds = [], {}
    for supply, theme in SUPPLIES.items():
        with (
            tempfile.TemporaryDirectory() as folder,
            lab.lab(folder) as address,
            lab.chromium() as page,
        ):
            for name in names:
                wrong, seconds[name, supply] = run_lesson(page, address, name, supply)
                found += [f"{name} on {supply}, {fault}" for fault in wrong]
                if shots:
                    if theme == "dark":
                        page.evaluate(
                            "window.jupyterapp.commands.execute('apputils:change-theme', "
                            "{theme: 'JupyterLab Dark'})"
                        )
                    keep_shots(page, shots, f"{name[:2]}-{theme}")
                if theme == "light":
                    unread, _ = seen(page, address, name)
                    found += [f"{name}, {fault}" for fault in unread]
    return found, seconds


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--shots", type=Path)
    arguments = parser.parse_args()
    if arguments.shots:
        arguments.shots.mkdir(parents=True, exist_ok=True)
    found, seconds = run_all(lessons(), arguments.shots)
    print(heading("python tests/bench/lessons_in_browser.py"))
    for (name, supply), took in seconds.items():
        print(f"{name} on {supply}: {took:.1f} s for all cells")
    print("\n".join(found))
    return verdict(not found, f"{len(seconds)} runs without an error, a warning or a lost control")


if __name__ == "__main__":
    sys.exit(main())
