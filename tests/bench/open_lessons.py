"""Lessons opened again and again while the machine is busy: are all controls there?

Run `python tests/bench/open_lessons.py [--times N] [--busy N]`; it ends with code 1 if a control
is lost or JupyterLab shows an error in the place of one. Each opening is a fresh page on a fresh
kernel, run at once; the processes that keep the machine busy do nothing else.
"""

import argparse
import multiprocessing
import os
import sys
import tempfile
from contextlib import contextmanager
from itertools import cycle, islice
from pathlib import Path
from time import perf_counter

HERE = Path(__file__).resolve()
sys.path += [str(HERE.parent), str(HERE.parents[1] / "browser")]

import lab  # noqa: E402
import lessons_in_browser  # noqa: E402
from measured import heading, verdict  # noqa: E402

SHUT = """async () => {
  const context = window.jupyterapp.shell.currentWidget.context.sessionContext;
  await context.shutdown();
}"""


def turn_for_ever():
    while True:
        sum(range(100_000))


@contextmanager
def busy(processes):
    """Keep the machine busy beside."""
    others = [multiprocessing.Process(target=turn_for_ever, daemon=True) for _ in range(processes)]
    for each in others:
        each.start()
    yield
    for each in others:
        each.terminate()


def open_once(page, address, name):
    """Open a lesson on a fresh kernel, run it at once; return its faults."""
    lab.open_notebook(page, address, name)
    lab.run_all(page)
    faults = lessons_in_browser.faults(page)
    page.evaluate(SHUT)
    return [f"{name}, {fault}" for fault in faults]


def open_all(times):
    """Open lessons in turn; return all faults."""
    faults = []
    with tempfile.TemporaryDirectory() as folder, lab.lab(folder) as address:
        for number, name in enumerate(islice(cycle(lessons_in_browser.lessons()), times), start=1):
            with lab.chromium() as page:
                found = open_once(page, address, name)
            for fault in found:
                print(f"opening {number}: {fault}", flush=True)
            faults += found
    return faults


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--times", type=int, default=300)
    parser.add_argument("--busy", type=int, default=os.cpu_count())
    arguments = parser.parse_args()
    start = perf_counter()
    with busy(arguments.busy):
        faults = open_all(arguments.times)
    print(heading(f"python tests/bench/open_lessons.py {' '.join(sys.argv[1:])}".strip()))
    print(f"{arguments.times} openings beside {arguments.busy} busy processes in "
          f"{perf_counter() - start:.0f} s")  # fmt: skip
    return verdict(not faults, f"{len(faults)} controls lost or in error")


if __name__ == "__main__":
    sys.exit(main())
