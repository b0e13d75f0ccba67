"""The index: every entry leads to sections that exist and to a question that is asked.

Where no lesson answers yet, an entry says so and whom to ask, rather than lead astray.
"""

import csv
import json
import re
from pathlib import Path
from urllib.parse import unquote

import pytest

from helpers.authoring.index_page import index_page
from helpers.authoring.solutions import dumps
from helpers.exercises.bank import bank, lesson_of, lessons

ENTRY = re.compile(r"^\| (?P<words>[^|]+) \| (?P<answer>[^|]+) \| ?(?P<try>[^|]*)\|$", flags=re.M)
LINK = re.compile(r"\[[^\]]+\]\(([^)#]+)#([^)]+)\)")
HEAD = "what you see, say or ask"
MISSING = "not in these lessons yet"
# What people bring, in the words that they look for, and what has to stand where these lead.
ASKED = list(csv.DictReader((Path(__file__).parent / "asked.csv").open(encoding="utf-8")))
LEAST_ENTRIES, LEAST_PLACES = 40, 25


@pytest.fixture(scope="module")
def entries(root):
    text = (root / "lessons/index.md").read_text(encoding="utf-8")
    found = [match.groupdict() for match in ENTRY.finditer(text)]
    return [entry for entry in found if entry["words"] != HEAD]


def links(entry):
    return [(file, unquote(place)) for file, place in LINK.findall(entry["answer"])]


@pytest.fixture(scope="module")
def sections(root):
    """Return what stands under every heading of every lesson, by the link that leads to it."""
    found = {}
    for path in (root / "lessons").glob("*.ipynb"):
        open_levels = []
        for cell in json.loads(path.read_text(encoding="utf-8"))["cells"]:
            for line in cell["source"]:
                heading = cell["cell_type"] == "markdown" and re.match(r"(#+) (.*\S)", line)
                if heading:
                    place = (path.name, heading[2].replace(" ", "-"))
                    level = len(heading[1])
                    open_levels = [each for each in open_levels if each[0] < level]
                    open_levels.append((level, place))
                    found[place] = ""
                for _, place in open_levels:
                    found[place] += re.sub(r"</?span[^>]*>", "", line)
    return found


def test_limit_enough_entries_to_enough_places(entries):
    assert len(entries) >= LEAST_ENTRIES
    assert len({link for entry in entries for link in links(entry)}) >= LEAST_PLACES


def test_property_every_row_of_the_index_is_an_entry(root, entries):
    text = (root / "lessons/index.md").read_text(encoding="utf-8")
    rows = [line for line in text.splitlines() if line.startswith("|")]
    assert len(rows) == len(entries) + 2 * text.count(f"| {HEAD} |")


def test_property_every_link_leads_to_a_heading(entries, sections):
    assert [entry["words"] for entry in entries if not set(links(entry)) <= set(sections)] == []


def test_property_an_entry_leads_somewhere_or_says_that_nothing_does(entries):
    for entry in entries:
        assert links(entry) or MISSING in entry["answer"].lower(), entry["words"]


def test_property_what_is_missing_is_said_with_whom_to_ask(entries):
    gaps = [entry for entry in entries if MISSING in entry["answer"]]
    for entry in gaps:
        assert re.search(rf"{MISSING}: ask ", entry["answer"]), entry["words"]


def test_property_every_question_named_is_asked_in_a_lesson(entries):
    named = [entry["try"].strip(" `") for entry in entries if entry["try"].strip()]
    assert [question for question in named if question not in bank()] == []
    assert {lesson_of(question) for question in named} == set(lessons())


def test_property_nothing_stands_twice(entries):
    words = [entry["words"] for entry in entries]
    assert len(words) == len(set(words))


def test_property_readme_and_lesson_00_lead_to_the_index(root):
    assert "(lessons/index.ipynb)" in (root / "README.md").read_text(encoding="utf-8")
    assert "(index.ipynb)" in (root / "lessons/00-start-here.ipynb").read_text(encoding="utf-8")


def test_property_the_page_is_the_text_and_nothing_else(root):
    text = (root / "lessons/index.md").read_text(encoding="utf-8")
    page = (root / "lessons/index.ipynb").read_text(encoding="utf-8")
    assert page == dumps(index_page(text))


@pytest.mark.parametrize("asked", ASKED, ids=lambda asked: asked["looked for"])
def test_property_what_people_look_for_leads_to_what_answers_it(asked, entries, sections):
    wanted = asked["looked for"].lower().split()
    hits = [entry for entry in entries if all(word in entry["words"].lower() for word in wanted)]
    assert hits, "no row holds these words"
    read = [sections[link] for entry in hits for link in links(entry)]
    assert any(asked["stands there"] in text for text in read)
