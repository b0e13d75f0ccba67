"""How long after its cell a card appears, in a real JupyterLab in a real Chromium.

Beside it, in the same run, the time of a cell that prints one word: the floor of the round trip.
Usage: python tests/bench/first_card.py
"""

import json
import sys
import tempfile
from pathlib import Path
from statistics import median

HERE = Path(__file__).resolve()
sys.path += [str(HERE.parent), str(HERE.parents[1] / "browser")]

import lab  # noqa: E402
from measured import heading, verdict  # noqa: E402

BAR_SECONDS = 1.0
ROUNDS = 10
TIMED = """async ([index, source, selector]) => {
  const content = window.jupyterapp.shell.currentWidget.content;
  content.activeCellIndex = index;
  const cell = content.activeCell;
  cell.model.sharedModel.setSource(source);
  cell.model.outputs.clear();
  content.scrollToItem(index, 'center');
  await new Promise(done => setTimeout(done, 300));
  const start = performance.now();
  window.jupyterapp.commands.execute('notebook:run-cell');
  while (!cell.node.querySelector(selector)) {
    await new Promise(done => requestAnimationFrame(done));
  }
  return (performance.now() - start) / 1000;
}"""


def measure(rounds=ROUNDS):
    """Return seconds until a card, and until one printed word, for each round."""
    with (
        tempfile.TemporaryDirectory() as folder,
        lab.lab(folder) as address,
        lab.chromium() as page,
    ):
        lab.open_notebook(page, address, "02-ohms-law.ipynb")
        places = page.evaluate(
            "window.jupyterapp.shell.currentWidget.content.widgets.map(cell => cell.model.id)"
        )
        page.evaluate(TIMED, [places.index("set-up"), _source("set-up"), ".cw-progress"])
        cards, words = [], []
        for _ in range(rounds):
            at = places.index("ohm-2")
            cards.append(page.evaluate(TIMED, [at, 'card("ohm-2")', ".cw-c-ohm-2 input"]))
            printed = [at, 'print("word")', ".jp-OutputArea-output pre"]
            words.append(page.evaluate(TIMED, printed))
        return cards, words


def _source(cell_id):
    lesson = json.loads((lab.ROOT / "lessons/02-ohms-law.ipynb").read_text(encoding="utf-8"))
    return next("".join(c["source"]) for c in lesson["cells"] if c["id"] == cell_id)


def main():
    cards, words = measure()
    print(heading("python tests/bench/first_card.py"))
    print(f"one printed word, the floor: median {median(words):.3f} s, slowest {max(words):.3f} s")
    said = f"first card {cards[0]:.3f} s, median {median(cards):.3f} s, slowest {max(cards):.3f} s"
    return verdict(max(cards) <= BAR_SECONDS, f"{said} (bar: {BAR_SECONDS:g})")


if __name__ == "__main__":
    sys.exit(main())
