"""Measure how long packs and their key take for a class, and how much memory; print it, dated.

Run from the repository's root: python tests/bench/paper_speed.py
Ends with status 1 if a bar is missed. Seconds are those of the processor; a browser's own time to
print is not counted.
"""

import resource
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
from measured import heading, verdict

from helpers.exercises.settings import Settings
from helpers.sheets import key, paper

LEARNERS, LESSONS, SECONDS, MEGABYTES = 24, ("03", "04", "08"), 30.0, 300


def taken(pieces, people):
    """Return seconds of the processor, characters, and seconds until the first piece of a page."""
    start, first, size = time.process_time(), None, 0
    for piece in pieces(people, LESSONS):
        first = first or time.process_time() - start
        size += len(piece)
    return time.process_time() - start, size, first


def main():
    print(heading("python tests/bench/paper_speed.py"))
    people = [Settings(f"BENCH-{number:02d}", "wick") for number in range(1, LEARNERS + 1)]
    missed = 0
    for name, pieces in (("packs", paper.pieces), ("key", key.pieces)):
        seconds, size, first = taken(pieces, people)
        whose = f"{name} of {LEARNERS} learners, lessons {', '.join(LESSONS)}"
        made = f"{size / 1e6:.1f} MB, the first piece after {first:.2f} s"
        said = f"{whose}, in {seconds:.1f} s of one core, at most {SECONDS:.0f} s; {made}"
        missed |= verdict(seconds <= SECONDS, said)
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    missed |= verdict(most < MEGABYTES, f"{most:.0f} MB at most, under {MEGABYTES} MB")
    return missed


if __name__ == "__main__":
    sys.exit(main())
