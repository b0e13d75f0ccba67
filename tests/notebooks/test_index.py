"""The index: every entry leads to a section that exists and to a question that is asked there."""

import json
import re
from urllib.parse import unquote

import pytest

from helpers.exercises.bank import bank, lesson_of

ENTRY = re.compile(
    r"\| (?P<words>[^|]+) \| \[[^\]]+\]\((?P<file>[^)#]+)#(?P<place>[^)]+)\) \| ?(?P<try>[^|]*)\|"
)
LEAST_ENTRIES, LEAST_PLACES = 40, 25


@pytest.fixture(scope="module")
def entries(root):
    text = (root / "lessons/index.md").read_text(encoding="utf-8")
    return [match.groupdict() for match in ENTRY.finditer(text)]


@pytest.fixture(scope="module")
def places(root):
    """Every heading of every lesson, as JupyterLab names it in a link."""
    found = set()
    for path in (root / "lessons").glob("*.ipynb"):
        cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
        lines = (line for c in cells if c["cell_type"] == "markdown" for line in c["source"])
        for line in lines:
            if heading := re.match(r"#+ (.*\S)", line):
                found.add((path.name, heading[1].replace(" ", "-")))
    return found


def test_limit_enough_entries_to_enough_places(entries):
    assert len(entries) >= LEAST_ENTRIES
    assert len({(entry["file"], entry["place"]) for entry in entries}) >= LEAST_PLACES


def test_property_every_row_of_the_index_is_an_entry(root, entries):
    text = (root / "lessons/index.md").read_text(encoding="utf-8")
    rows = [line for line in text.splitlines() if "](" in line and line.startswith("|")]
    assert len(rows) == len(entries)


def test_property_every_link_leads_to_a_heading(entries, places):
    lost = [e["words"] for e in entries if (e["file"], unquote(e["place"])) not in places]
    assert lost == []


def test_property_every_question_named_is_asked_in_a_lesson(entries):
    named = [entry["try"].strip(" `") for entry in entries if entry["try"].strip()]
    assert [question for question in named if question not in bank()] == []
    assert {lesson_of(question) for question in named} == {"00", "01", "02", "03", "04", "05"}


def test_property_nothing_stands_twice(entries):
    words = [entry["words"] for entry in entries]
    assert len(words) == len(set(words))


def test_property_readme_and_lesson_00_lead_to_the_index(root):
    assert "(lessons/index.md)" in (root / "README.md").read_text(encoding="utf-8")
    assert "(index.md)" in (root / "lessons/00-start-here.ipynb").read_text(encoding="utf-8")
