"""Every lesson from top to bottom in a real JupyterLab in a real Chromium, on two supplies.

Run `python tests/bench/lessons_in_browser.py [--shots FOLDER]`; it ends with code 1 if a cell
raises, warns or leaves an explorer or a card without its controls. With a folder it keeps
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
    const source = cell.model.sharedModel.getSource();
    const live = /^(card|explore)\\(/m.test(source);
    if (live && !cell.node.querySelector('.cw-controls')) {
      found.push(cell.model.id + ': has no controls');
    }
  }
  return found;
}"""

SCROLLED = "document.querySelector('.jp-WindowedPanel-outer')"


def lessons():
    """Return the file names of the lessons, in order."""
    return sorted(path.name for path in (lab.ROOT / "lessons").glob("[0-9][0-9]-*.ipynb"))


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
    faults = page.evaluate(FAULTS)
    if supply not in page.locator(".cw-progress").first.text_content():
        faults.append(f"set-up: does not say {supply}")
    return faults, seconds


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
    faults, seconds = [], {}
    for supply, theme in SUPPLIES.items():
        with (
            tempfile.TemporaryDirectory() as folder,
            lab.lab(folder) as address,
            lab.chromium() as page,
        ):
            for name in names:
                found, seconds[name, supply] = run_lesson(page, address, name, supply)
                faults += [f"{name} on {supply}, {fault}" for fault in found]
                if shots:
                    if theme == "dark":
                        page.evaluate(
                            "window.jupyterapp.commands.execute('apputils:change-theme', "
                            "{theme: 'JupyterLab Dark'})"
                        )
                    keep_shots(page, shots, f"{name[:2]}-{theme}")
    return faults, seconds


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--shots", type=Path)
    arguments = parser.parse_args()
    if arguments.shots:
        arguments.shots.mkdir(parents=True, exist_ok=True)
    faults, seconds = run_all(lessons(), arguments.shots)
    print(heading("python tests/bench/lessons_in_browser.py"))
    for (name, supply), took in seconds.items():
        print(f"{name} on {supply}: {took:.1f} s for all cells")
    print("\n".join(faults))
    return verdict(not faults, f"{len(seconds)} runs without an error, a warning or a lost control")


if __name__ == "__main__":
    sys.exit(main())
