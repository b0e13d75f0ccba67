"""Mark files that nobody honest hands in: `python tests/bench/hostile_hand_ins.py`.

100,000 small ones, a thousand to a folder: logs changed in every way, junk, strange names, script
and formulas in every field; and one file of each kind that once took minutes or gigabytes, each in
a fresh process beside a run with an honest hand-in alone. Ends with code 1 if a bar is missed.
tests/classroom/test_bench_hostile.py runs a hundredth of it.
"""

import argparse
import csv
import json
import os
import random
import subprocess
import sys
import tempfile
import time
from html.parser import HTMLParser
from pathlib import Path

HERE = Path(__file__).resolve()
ROOT = HERE.parents[2]
sys.path[:0] = [str(HERE.parent), str(ROOT)]

from measured import heading, verdict  # noqa: E402

from helpers.classroom.demo_room import CLASS_WORD, FIRST_EVENING, lines_of  # noqa: E402
from helpers.classroom.learner_rows import MOST_TO_ONE  # noqa: E402
from helpers.classroom.marking import mark_folder  # noqa: E402
from helpers.classroom.spreadsheet import FORMULA_STARTS  # noqa: E402
from helpers.classroom.wanted import Wanted  # noqa: E402
from helpers.exercises.answer_log import LONGEST_LINE  # noqa: E402
from helpers.exercises.bank import bank  # noqa: E402
from helpers.exercises.hand_in import LARGEST_FILE, MOST_LINES  # noqa: E402
from helpers.physics.mains import SUPPLIES  # noqa: E402

FILES, IN_A_FOLDER = 100_000, 1000
SECONDS, MEGABYTES = 5, 100  # above a run with the honest neighbour alone
LEARNERS = tuple(f"BENCH-{number:02d}" for number in range(1, 13))
NEIGHBOUR = "BENCH-00"
TEXTS = (
    "<script>alert(1)</script>", "\"><svg onload='x'>", "</td></table><h1>", "&lt;b&gt;", "-->",
    "javascript:alert(1)", "=1+1", "+1", "-1", "@SUM(A1)", "＝1+1", "＠x", " =1", "\t=1", "\r=1",
    "\x00", "\x1b[31m", "\u202etxt", "\ud800", "\u2028", "x" * 3000, "😀" * 900, "", " ", ";=1;",
    "../../etc", "CON", "bench-01", "BENCH-01 ", "BENCH-99", "WORKSHOP", "wick", "home", "None",
    "9999-12-31T23:59:59.999-23:59", "0001-01-01T00:00:00+23:59", "2026-01-13", "1e999", "nan",
)  # fmt: skip
VALUES = (*TEXTS, 0, 1, -1, 9999, 10**4, 10**300, 1.5, True, None, [], {}, [[]], {"a": {"b": []}})
TAGS = {
    "html", "head", "meta", "title", "style", "body", "a", "header", "h1", "h2", "h3", "p", "div",
    "strong", "nav", "ul", "li", "main", "section", "table", "thead", "tbody", "tr", "th", "td",
    "small", "span", "br", "b", "code",
}  # fmt: skip


def fields_of(learner):
    """Return the fields of an invented log, to be made hostile."""
    return [json.loads(line.text()) for line in lines_of(learner, FIRST_EVENING)]


def small_files(count, seed):
    """Yield the names and the contents of so many small hostile files."""
    chance = random.Random(seed)
    logs = [fields_of(learner) for learner in LEARNERS]
    for number in range(count):
        content = chance.choice(WAYS)(chance, chance.choice(logs))
        yield _name(chance, number), content


def _name(chance, number):
    text = chance.choice((*TEXTS, *LEARNERS)).replace("/", "_").replace("\x00", "_")[:60]
    name = text.encode("utf-8", "replace").decode() if chance.random() < 0.5 else "wick_BENCH"
    return f"{name}{number}{chance.choice(('.jsonl', '.json', '.txt', '', '.csv', '.ipynb'))}"


def _rows(lines):
    return b"".join(json.dumps(line).encode() + b"\n" for line in lines)


def _some(chance, lines):
    first = chance.randrange(len(lines))
    return [dict(line) for line in lines[first : first + chance.randint(1, 12)]]


def _fields(chance, lines):
    """Put strange values into fields; one kind of line all over, or here and there."""
    lines = _some(chance, lines)
    names = chance.sample(sorted(lines[0]), chance.randint(1, 3))
    for line in lines:
        if chance.random() < 0.7:
            line.update({name: chance.choice(VALUES) for name in names})
    return _rows(lines)


def _bytes(chance, lines):
    """Change bytes, cut, double or drop some."""
    content = bytearray(_rows(_some(chance, lines)))
    for _ in range(chance.randint(1, 20)):
        place = chance.randrange(len(content))
        step = chance.randrange(3)
        if step == 0:
            content[place] = chance.randrange(256)
        elif step == 1:
            del content[place : place + chance.randint(1, 9)]
        else:
            content[place:place] = content[place : place + 200]
        content = content or bytearray(b"\n")
    return bytes(content[: chance.randrange(1, len(content) + 1)])


def _order(chance, lines):
    """Shuffle, repeat and mix the lines of two learners, with times and nudges of no honest log."""
    lines = _some(chance, lines) + _some(chance, lines)
    chance.shuffle(lines)
    for line in lines:
        line["nudges"] = chance.randrange(12)
        line["draw"] = chance.choice((0, 0, 1, 2, 9999))
        line["edition"] = chance.choice((0, 1, 1, 2, 9999))
        line["at"] = f"{chance.randint(1, 9999):04d}-01-13T18:00:00.000+00:00"
        line["learner"] = chance.choice((line["learner"], *LEARNERS))
        line["answer"] = chance.choice((line["answer"], *TEXTS))
    return _rows(lines)


def _junk(chance, lines):
    deep = chance.choice((b"[", b'{"a":', b'[{"format":')) * chance.randint(1, 1300)
    return chance.choice(
        (
            chance.randbytes(chance.randrange(2000)),
            deep,
            b'{"format": ' + b"9" * chance.randrange(5000) + b"}",
            b"\n" * chance.randrange(3000),
            b"\xff\xfe" + chance.randbytes(999),
            b"\xfe\xff" + _rows(lines[:2]),
            _rows(lines[:3]).decode().encode("utf-16"),
            b"\xef\xbb\xbf" + _rows(lines[:3]).replace(b"\n", b"\r"),
            json.dumps(lines[:3]).encode(),
            b"learner\n=1+1\n",
        )
    )


WAYS = (_fields, _fields, _bytes, _order, _junk)


def large_files():
    """Yield each kind of large file by its name, with what should make it slow or heavy."""
    line = fields_of(LEARNERS[0])[0]

    def rows(change):
        return b"".join(
            json.dumps(line | {"line": str(n)} | change(n), ensure_ascii=False).encode() + b"\n"
            for n in range(MOST_LINES)
        )

    yield "newlines", b"\n" * LARGEST_FILE
    yield "blanks", b" \n" * (LARGEST_FILE // 2)
    yield "junk", random.Random(1).randbytes(LARGEST_FILE)
    yield "short rows of junk", b"x\n" * (LARGEST_FILE // 2)
    yield "one row", b"x" * LARGEST_FILE
    yield "one row, wide letters", "😀".encode() * (LARGEST_FILE // 4)
    yield "UTF-16", b"\xff\xfe" + "😀\n".encode("utf-16-le") * (LARGEST_FILE // 6)
    yield "deep", (b"[" * (LONGEST_LINE - 1) + b"\n") * (LARGEST_FILE // LONGEST_LINE)
    yield "unknown questions", rows(lambda n: {"question": f"<b>{n}" + "x" * 1500})
    yield "class words", rows(lambda n: {"class_word": f"w{n}"})
    yield "unknown supplies", rows(lambda n: {"supply": f"{n}" + "x" * 1500})
    yield "other learners", rows(lambda n: {"learner": f"L{n}" if n else LEARNERS[0]})
    yield "wide answers", rows(lambda n: {"answer": "😀" + "x" * 1600, "x": ["😀" + "x" * 30] * 2})
    wide = "😀" + "x" * 199
    yield "wide fields", rows(lambda n: dict.fromkeys(("supply", "question", "at"), wide))
    most = dict.fromkeys(("line", "class_word", "supply", "question", "answer", "at"), wide)
    yield "every field wide", rows(lambda n: most | {"follows": wide})
    yield "one question", rows(lambda n: {"answer": f"{n} mA", "question": "ohm-2"})
    yield "draws", rows(lambda n: {"draw": n % 9999, "question": "ohm-2"})
    own = {"question": "own-1", "edition": bank()["own-1"].edition}
    for name, answer in _designs():
        yield f"design, {name}", rows(lambda n, one=answer: own | {"answer": one(n)})
    yield (
        "designs in many classes",
        rows(
            lambda n, one=answer: own | {"answer": one(n), "class_word": f"w{n % 900}", "draw": n}
        ),
    )
    yield "every question, dearest first", rows(_dearest(line["supply"]).__getitem__)


def _designs():
    """Yield designs by name, each a function of the number of its line: all are unlike."""
    parts, none = "bridge; 47 kΩ; 4; 0.6 W; 300 V; volts", "do not build; no parts"
    known = "[use]\nconnection = 'plug-in'\n[dimmer]\nrated = '300 W'\n"
    known += "[heater]\nfull_power_safe = 'yes'\npower = '{} W'\n"
    bins = "[bin]\nseries = '{}'\nsmallest = '{}'\nlargest = '{}'\nmost = {}\n"
    yield "a brief of 1 MB", lambda n: f"{parts}\n# {n}" + "x" * (10**6 if n == 1 else 1500)
    yield "deep", lambda n: f"{parts}\n[[bin.{'a.' * 400}a{n}]]\nb = {'[' * 300}{']' * 300}"
    yield "nan", lambda n: f"{parts}\n[heater]\npower = nan\n[bin]\nmost = {n}"
    yield "a million parts", lambda n: f"{parts}\n" + bins.format("E192", "1 Ω", "9 MΩ", 10**6 + n)
    yield "a million in series", lambda n: f"bridge; 47 kΩ; {10**6 + n}; 0.6 W; 300 V; volts"
    full = bins.format("E24", "1 kΩ", "1 MΩ", 3)
    watts = "{}.{:04d}".format
    yield "the largest bin, parts", lambda n: f"{parts}\n{known.format(watts(50, n))}{full}"
    yield "the largest bin, no parts", lambda n: f"{none}\n{known.format(watts(60, n))}{full}"


def _dearest(supply):
    """Return right answers to as many draws of every question as are marked, parts first."""
    questions = [question for question in bank().values() if question.role != "predict"]
    questions.sort(key=lambda question: question.kind.name != "parts")
    return [
        {
            "question": question.id,
            "draw": draw,
            "answer": question.kind.model(
                question.numbers_for(LEARNERS[0], CLASS_WORD, SUPPLIES[supply], draw)
            ),
        }
        for question in questions
        for draw in range(MOST_TO_ONE)
    ] + [{}] * MOST_LINES


def mark(folder):
    """Mark a folder of hostile files and an honest neighbour; return the marked room."""
    hand_ins, roster = folder / "hand-ins", folder / "roster.csv"
    hand_ins.mkdir(exist_ok=True)
    roster.write_text("learner,also\n" + "\n".join((*LEARNERS, f"{NEIGHBOUR},")) + "\n")
    (hand_ins / "neighbour.jsonl").write_bytes(_rows(fields_of(NEIGHBOUR)))
    return mark_folder(Wanted(hand_ins, roster, CLASS_WORD, folder / "out"))


class Harmless(HTMLParser):
    """Finds what does not belong into a page: other tags, other links, anything that acts."""

    def __init__(self):
        super().__init__()
        self.found = []

    def handle_starttag(self, tag, attributes):
        links = [value for name, value in attributes if name in ("href", "src")]
        acts = [name for name, _ in attributes if name.startswith("on")]
        if tag not in TAGS or acts or any(not link.startswith("#") for link in links):
            self.found.append(self.get_starttag_text())


def harm_in(marked):
    """Return what could run in the two files of a mark book."""
    page = Harmless()
    page.feed(marked.page.read_text(encoding="utf-8"))
    with open(marked.table, encoding="utf-8", newline="") as handle:
        cells = [cell for row in csv.reader(handle) for cell in row]
    return page.found + [cell for cell in cells if cell.lstrip(" ").startswith(FORMULA_STARTS)]


def run_small(count, seed=7):
    """Mark so many small hostile files; return what could run, and how often a neighbour lost."""
    files, alone, harm, lost = small_files(count, seed), None, [], 0
    while True:
        with tempfile.TemporaryDirectory() as name:
            folder = Path(name)
            (folder / "hand-ins").mkdir()
            written = 0
            for file_name, content in files:
                (folder / "hand-ins" / file_name).write_bytes(content)
                written += 1
                if written == IN_A_FOLDER:
                    break
            if not written and alone is not None:
                return harm, lost
            marked = mark(folder)
            row = next(row for row in marked.book.rows if row.learner == NEIGHBOUR)
            alone = alone or _alone()
            lost += marked.book.total(row) != alone
            harm += harm_in(marked)


def _alone():
    """Return the marks of the honest neighbour in a room of their own."""
    with tempfile.TemporaryDirectory() as name:
        book = mark(Path(name)).book
        return book.total(next(row for row in book.rows if row.learner == NEIGHBOUR))


def measured(folder):
    """Mark a folder in this process; return seconds of its own time and the peak of its memory."""
    start, busy = time.perf_counter(), time.process_time()
    marked = mark(folder)
    return {
        "seconds": time.perf_counter() - start,
        "busy": time.process_time() - busy,
        "megabytes": _peak() / 1e6,
        "page": marked.page.stat().st_size / 1e6,
        "harm": harm_in(marked),
    }


def _peak():
    """Return the most memory that this process has held [bytes], where the system tells it."""
    if not os.path.exists("/proc/self/status"):
        return 0
    with open("/proc/self/status", encoding="ascii") as handle:
        return 1024 * next(int(row.split()[1]) for row in handle if row.startswith("VmHWM"))


def in_fresh_process(content):
    """Mark one file beside the honest neighbour, in a process of its own."""
    with tempfile.TemporaryDirectory() as name:
        (Path(name) / "hand-ins").mkdir()
        if content is not None:
            (Path(name) / "hand-ins" / "hostile.jsonl").write_bytes(content)
        command = [sys.executable, str(HERE), "--mark", name]
        environment = {**os.environ, "PYTHONPATH": str(ROOT)}
        done = subprocess.run(command, check=True, capture_output=True, text=True, env=environment)
        return json.loads(done.stdout)


def run_large(only=""):
    """Mark each kind of large file; return its name with what it took above an honest run."""
    alone = in_fresh_process(None)
    for name, content in large_files():
        if only in name:
            taken = in_fresh_process(content)
            for what in ("seconds", "busy", "megabytes"):
                taken[what] -= alone[what]
            yield name, taken


def main():
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--files", type=int, default=FILES)
    parser.add_argument("--large", default="", metavar="WORD", help="only kinds with this word")
    parser.add_argument("--mark", type=Path, help="mark this folder and print what it took")
    arguments = parser.parse_args()
    if arguments.mark:
        print(json.dumps(measured(arguments.mark)))
        return 0
    print(heading(f"python tests/bench/hostile_hand_ins.py --files {arguments.files}"))
    slow, heavy, harm = (0.0, ""), (0.0, ""), []
    for name, taken in run_large(arguments.large):
        print(
            f"  {name}: {taken['seconds']:.1f} s ({taken['busy']:.1f} of the core's own), "
            f"{taken['megabytes']:.0f} MB, a page of {taken['page']:.2f} MB"
        )
        slow = max(slow, (taken["busy"], name))
        heavy = max(heavy, (taken["megabytes"], name))
        harm += taken["harm"]
    missed = verdict(slow[0] <= SECONDS, f"{slow[0]:.1f} s at most, {slow[1]} (bar: {SECONDS})")
    missed += verdict(
        heavy[0] <= MEGABYTES, f"{heavy[0]:.0f} MB at most, {heavy[1]} (bar: {MEGABYTES})"
    )
    start = time.perf_counter()
    found, lost = run_small(arguments.files)
    taken = time.perf_counter() - start
    harm += found
    missed += verdict(
        not harm and not lost,
        f"{arguments.files} small files in {taken:.0f} s without a crash; {len(harm)} things that "
        f"could run in a mark book, {lost} folders in which an honest neighbour lost marks "
        f"(bars: 0) {harm[:3]}",
    )
    return min(1, missed)


if __name__ == "__main__":
    sys.exit(main())
