"""How much memory a page of explorers takes: `python tests/bench/explorer_memory.py`.

Starts a kernel, shows six explorers in it, moves their controls 500 times, and reads the kernel's
resident memory after both. (Not its peak: a new process begins with that of the one that made it.)
Exits with 1 when a bar is missed.
"""

import argparse
import os
import platform
import sys
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
NAMES = ("dropper", "waveform", "dimmer", "brightness", "circuits", "touch current")
MOVES, MEGABYTES, GROWTH = 500, 400, 20
SHOW = """
import psutil
from itertools import cycle
from helpers.physics.mains import SUPPLIES
from helpers.pages.explorers import EXPLORERS
from helpers.widgets.explorers import Panel
from helpers.widgets.screen import frame
from IPython.display import display

supply = SUPPLIES["230 V 50 Hz"]
panels, moves = [], []
for name in {names}:
    panel = Panel(EXPLORERS[name], supply)
    display(frame(panel.children(), "cw-bench"))
    panels.append(panel)
    for knob in EXPLORERS[name].open_on(supply)[1]:
        ends = knob.options.values() if hasattr(knob, "options") else (knob.low, knob.high)
        moves += [(panel, knob.key, value) for value in ends]
def megabytes():
    return psutil.Process().memory_info().rss / 2**20
moves = cycle(moves)
print(megabytes())
"""
# A cell for every few moves, so that the waiting sentences are said in between.
MOVE = """
for _ in range({count}):
    panel, key, value = next(moves)
    panel.inputs[key].value = value
print(megabytes())
"""


@contextmanager
def kernel():
    """Yield a function that runs code in a fresh kernel and returns what it prints."""
    from jupyter_client.manager import start_new_kernel

    manager, client = start_new_kernel(
        kernel_name="python3", env=os.environ | {"PYTHONPATH": str(ROOT)}
    )

    def run(code):
        printed = []

        def hear(message):
            content = message["content"]
            if message["msg_type"] == "stream" and content["name"] == "stdout":
                printed.append(content["text"])

        reply = client.execute_interactive(code, output_hook=hear, timeout=120)
        if reply["content"]["status"] != "ok":
            raise RuntimeError("\n".join(reply["content"]["traceback"]))
        return "".join(printed)

    try:
        yield run
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)


def measure(moves=MOVES, step=25):
    """Return the memory after showing and after all moves [MB]."""
    with kernel() as run:
        shown = float(run(SHOW.format(names=NAMES)))
        moved = shown
        for _ in range(moves // step):
            moved = float(run(MOVE.format(count=step)))
    return shown, moved


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--moves", type=int, default=MOVES)
    moves = parser.parse_args().moves
    shown, moved = measure(moves)
    print(f"{datetime.now(UTC):%Y-%m-%d %H:%M} UTC, python {' '.join(sys.argv)}")
    print(f"{platform.platform()}, {os.cpu_count()} cores, Python {platform.python_version()}")
    print(f"kernel with {len(NAMES)} explorers: {shown:.0f} MB, after {moves} moves {moved:.0f} MB")
    missed = moved >= MEGABYTES or moved - shown > GROWTH
    if missed:
        print(f"MISSED: {MEGABYTES} MB or more, or grown by more than {GROWTH} MB")
    return int(missed)


if __name__ == "__main__":
    sys.exit(main())
