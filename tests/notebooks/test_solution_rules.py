"""What every solution keeps to, and that each is what its lesson and the bank give today."""

import json
import re

import pytest
from notebook import LESSONS, ROOT, SOLUTIONS, code, comparable, read, source

from helpers.authoring.solutions import CHECK_TAG, dumps, run, solved
from helpers.exercises.bank import bank
from helpers.exercises.session import workshop_session
from helpers.pages.page import ANSWER_MEDIA_TYPE

each_solution = pytest.mark.parametrize("path", SOLUTIONS, ids=lambda path: path.stem)
TEXTS = ("text/plain", "text/html", "text/latex", "image/svg+xml")


def outputs(notebook):
    return [output for cell in code(notebook) for output in cell["outputs"]]


def test_each_lesson_has_its_solution():
    assert [path.name for path in SOLUTIONS] == [path.name for path in LESSONS]


@each_solution
def test_every_code_cell_is_compared_when_the_solution_is_run_as_a_test(path):
    """nbval compares a cell only if it has its tag and a stored execution count."""
    for place, cell in enumerate(code(read(path)), start=1):
        assert cell["metadata"]["tags"] == [CHECK_TAG] == ["nbval-check-output"], cell["id"]
        assert cell["execution_count"] == place, cell["id"]


@each_solution
def test_no_answer_is_folded_away(path):
    for cell in code(read(path)):
        assert cell["id"] not in bank() or set(cell["metadata"]) == {"tags"}, cell["id"]


@each_solution
def test_limit_there_are_at_least_ten_text_outputs_to_compare(path):
    found = outputs(read(path))
    texts = [o for o in found if "text" in o or any(kind in o.get("data", {}) for kind in TEXTS)]
    assert len(texts) >= 10


@each_solution
def test_no_output_is_an_error_a_warning_or_a_widget(path):
    for output in outputs(read(path)):
        assert output["output_type"] in ("display_data", "execute_result", "stream")
        assert output.get("name") != "stderr", output["text"]
        assert not any("widget" in kind for kind in output.get("data", {}))
    assert "widgets" not in read(path)["metadata"]


@each_solution
def test_every_picture_has_an_alternative_text_and_is_small(path):
    for output in outputs(read(path)):
        data = output.get("data", {})
        assert not [kind for kind in data if kind.startswith("image/")]
        html = "".join(data.get("text/html", ""))
        assert len(html) <= 400_000
        for image in re.findall("<img[^>]*>", html):
            assert len(re.search('alt="([^"]*)"', image)[1].split()) >= 3


@each_solution
def test_nothing_stored_is_dated_random_or_of_one_machine(path):
    text = json.dumps([output.get("data", output.get("text")) for output in outputs(read(path))])
    assert not re.search(r"\b20\d\d-\d\d-\d\d|0x[0-9a-f]{6,}|/tmp/|/home/|/Users/", text)
    assert str(ROOT) not in text


@each_solution
def test_the_workshop_copy_answers_everything_right_and_writes_nothing(path):
    notebook = read(path)
    first = code(notebook)[0]
    assert "workshop_copy=True" in source(first)
    shown = "".join("".join(o["data"]["text/plain"]) for o in first["outputs"])
    assert "WORKSHOP" in shown and "230 V 50 Hz" in shown and "memory only" in shown
    for cell in code(notebook):
        if cell["id"] in bank():
            said = "".join("".join(o["data"]["text/plain"]) for o in cell["outputs"])
            marked = bank()[cell["id"]].role != "predict"
            assert ("✓" in said) == marked and "✗" not in said.split("Usual mistakes")[0]


@each_solution
def test_the_answers_are_kept_with_the_outputs_as_data(path):
    for cell in code(read(path)):
        if cell["id"] in bank():
            kept = [o["data"][ANSWER_MEDIA_TYPE] for o in cell["outputs"]
                    if ANSWER_MEDIA_TYPE in o["data"]]  # fmt: skip
            assert [data["question"] for data in kept] == [cell["id"]]
            assert set(kept[0]) == {
                "question", "edition", "learner", "class_word", "supply", "draw", "answers"
            }  # fmt: skip
            assert len(kept[0]["answers"]) == 1


@pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)
def test_a_solution_is_what_its_lesson_and_the_bank_give_today(path, tmp_path):
    stored = read(ROOT / "solutions" / path.name)
    fresh = run(solved(read(path), workshop_session()), tmp_path)
    for one, other in zip(comparable(stored), comparable(fresh), strict=True):
        assert one == other, f"cell {one['id']}: run `python -m helpers build {path.name}`"
    assert dumps(stored) == (ROOT / "solutions" / path.name).read_text(encoding="utf-8")
    assert list(tmp_path.iterdir()) == []
