"""The notebook for whoever is responsible: what stands in it, and what it must not hold."""

import re
from statistics import median

import pytest
from notebook import ROOT, headings, prose, read, sentences, source, words

from helpers.authoring.solutions import dumps, tidy
from helpers.exercises.bank import bank

PATH = ROOT / "lessons/for-instructors.ipynb"
STAMP = (
    "Plan only. Not permission to build or connect: a competent person checks it first, "
    "under local rules"
)
NAMED = [
    "responsible", "license nobody", "Risk assessment", "electrically skilled person",
    "electrically instructed person", "IEC 60050-195", "EN 50110-1", "proving unit",
    "Two-pole tester", "type A", "IEC 60755", "IEC 61008-1", "test button", "Defibrillator",
    "First aider", "Exits", "cuts the power, and where", "Minors and visitors",
    "thermal cut-out", "Wax fire", "Never water", "EN 50678", "EN 50699", "maker, in effect",
    "IEC 62094-1", "plug-in timer or thermostat", "open nothing", "connect nothing to the mains",
    "low voltage only", "lessons/answers", "nothing is deleted by itself", "Sources",
]  # fmt: skip


@pytest.fixture(scope="module")
def text():
    return prose(read(PATH))


FORMS = ("make_class", "print_paper", "type_back", "mark", "forget")


def test_each_code_cell_is_one_folded_form_and_there_are_no_questions_and_no_solution(text):
    notebook = read(PATH)
    cells = [cell for cell in notebook["cells"] if cell["cell_type"] == "code"]
    for cell, name in zip(cells, FORMS, strict=True):
        assert cell["metadata"]["jupyter"]["source_hidden"] is True
        assert source(cell).endswith(
            f"from helpers.widgets import instructor\n\ninstructor.{name}();"
        )
    assert not {cell["id"] for cell in notebook["cells"]} & set(bank())
    assert not (ROOT / "solutions" / PATH.name).exists()
    assert "card(" not in text


def test_it_is_as_tidy_leaves_it():
    assert PATH.read_text(encoding="utf-8") == dumps(tidy(read(PATH)))


def test_caution_and_stamp_come_before_anything_else(text):
    first = source(read(PATH)["cells"][0])
    assert "**Caution:**" in first and text.count("**Caution:**") == 1
    assert "kill" in first and "Local codes and licensed practice come first" in first
    assert f"**{STAMP}**" in first


@pytest.mark.parametrize("named", NAMED)
def test_what_a_responsible_person_has_to_settle_is_named(text, named):
    assert named in text


def test_limit_short_and_plain(text):
    page, _, forms = text.partition("## A class, without a terminal")
    assert len(words(page)) <= 920 and len(words(forms)) <= 400
    lengths = [len(words(sentence)) for sentence in sentences(text)]
    assert median(lengths) <= 18 and max(lengths) <= 50


def test_one_top_heading_and_no_skipped_level():
    levels = [level for level, _ in headings(read(PATH))]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in zip(levels, levels[1:], strict=False))


def test_pictures_if_any_have_alternative_texts(text):
    assert all(len(said.split()) >= 3 for said in re.findall(r"!\[([^\]]*)\]", text))
    assert "<img" not in text


def test_the_readme_leads_to_it_and_its_command_is_the_readme_s(text):
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert "(lessons/for-instructors.ipynb)" in readme
    (command,) = re.findall(r"^\S+ -m helpers mark .+$", text, flags=re.M)
    assert command in readme
