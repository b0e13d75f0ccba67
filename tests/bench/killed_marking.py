"""Kill the marking of a room at any moment, and look whether the mark book is torn.

Run `python tests/bench/killed_marking.py` for 100 kills; it ends with code 1 if a bar is missed.
tests/classroom/test_killed_marking.py runs a tenth of it. Writes to a temporary folder.
"""

import argparse
import os
import random
import re
import subprocess
import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).resolve()
ROOT = HERE.parents[2]
sys.path[:0] = [str(HERE.parent), str(ROOT)]

from measured import heading, verdict  # noqa: E402

from helpers.classroom.book_pair import BOOK, BookPair  # noqa: E402
from helpers.classroom.demo_room import write_demo_room  # noqa: E402

KILLS = 100
LONGEST_LIFE = 0.05  # seconds of writing one mark book after another before the kill


def write_for_ever(out):
    """Write mark books without end, each with its own number in every line of both files."""
    pair, number = BookPair(out), 0
    pair.recover()
    while True:
        rows = [f"{os.getpid()}-{number}\n"] * 2000
        pair.write(rows, rows)
        number += 1
        print(number, flush=True)


def torn(out):
    """Return what is amiss in a folder of mark books: lines of two runs, or a pair of two."""
    found, runs = [], {}
    for path in out.iterdir():
        rows = set(path.read_text().split())
        if len(rows) != 1 or not re.fullmatch(rf"{BOOK}(_[-_0-9]+)?\.(csv|html)", path.name):
            found.append(path.name)
        runs.setdefault(path.stem, []).append(rows)
    return found + [stem for stem, both in runs.items() if len(both) != 2 or both[0] != both[1]]


def run(kills, seed=7):
    """Kill so many writers in one folder; return what is amiss and how many were midway."""
    lives, amiss, midway = random.Random(seed), [], 0
    with tempfile.TemporaryDirectory() as name:
        out = Path(name)
        for _ in range(kills):
            writer = subprocess.Popen(
                [sys.executable, str(HERE), "--write", name],
                env={**os.environ, "PYTHONPATH": str(ROOT)},
                stdout=subprocess.PIPE,
            )
            writer.stdout.readline()
            time.sleep(lives.uniform(0, LONGEST_LIFE))
            writer.kill()
            writer.communicate()
            midway += any(not re.match(rf"{BOOK}[_.](?!new|part)", p.name) for p in out.iterdir())
            BookPair(out).recover()
            amiss += torn(out)
            if not (out / f"{BOOK}.csv").exists():
                amiss.append("no mark book")
            for path in out.glob(f"{BOOK}_*"):
                path.unlink()
    return amiss, midway


def run_whole(kills, seed=7):
    """Kill the command itself at any moment; the room is marked once more at the end."""
    lives, amiss = random.Random(seed), []
    with tempfile.TemporaryDirectory() as name:
        room = Path(name) / "room"
        write_demo_room(room)
        words = ["mark", str(room / "hand-ins"), "--roster", str(room / "roster.csv")]
        words += ["--class-word", "wick", "--out", str(room / "marked")]
        command = [sys.executable, "-m", "helpers", *words]
        environment = {**os.environ, "PYTHONPATH": str(ROOT)}
        start = time.perf_counter()
        subprocess.run(command, check=True, env=environment, stdout=subprocess.DEVNULL)
        whole = time.perf_counter() - start
        for _ in range(kills):
            marking = subprocess.Popen(command, env=environment, stdout=subprocess.DEVNULL)
            time.sleep(lives.uniform(0.3, 1.1) * whole)
            marking.kill()
            marking.wait()
            found = {path.suffix for path in (room / "marked").glob(f"{BOOK}*")}
            if found != {".csv", ".html"}:
                amiss.append(f"left {found}")
        subprocess.run(command, check=True, env=environment, stdout=subprocess.DEVNULL)
        kept = {path.suffix: path.stem for path in (room / "marked").glob(f"{BOOK}.*")}
        odd = [
            p.name for p in (room / "marked").iterdir() if ".new." in p.name or ".part." in p.name
        ]
        if set(kept) != {".csv", ".html"} or odd:
            amiss.append(f"ended with {kept} {odd}")
        for path in (room / "marked").glob("*.csv"):
            page = path.with_suffix(".html")
            if not page.exists() or not page.read_text("utf-8").endswith("</html>\n"):
                amiss.append(path.name)
    return amiss


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--write", type=Path, metavar="OUT", help="be the one that is killed")
    parser.add_argument("--kills", type=int, default=KILLS)
    arguments = parser.parse_args()
    if arguments.write is not None:
        return write_for_ever(arguments.write)
    print(heading(f"python tests/bench/killed_marking.py --kills {arguments.kills}"))
    start = time.perf_counter()
    amiss, midway = run(arguments.kills)
    amiss_whole = run_whole(arguments.kills // 5)
    print(
        f"{arguments.kills} kills of who writes mark books, {midway} of them midway, and "
        f"{arguments.kills // 5} of the whole command, in {time.perf_counter() - start:.0f} s"
    )
    missed = verdict(
        not amiss and not amiss_whole, f"nothing torn or lost {(amiss + amiss_whole)[:5]}"
    )
    return missed or verdict(midway > 0, f"{midway} kills hit a change-over (bar: 1 or more)")


if __name__ == "__main__":
    sys.exit(main())
