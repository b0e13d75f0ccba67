"""Solutions are built from lessons: what goes in, what is compared, and what tidying leaves."""

import json

import pytest
from nbclient.exceptions import CellExecutionError
from notebook import comparable

from helpers.authoring.solutions import (
    CHECK_TAG,
    build,
    dumps,
    run,
    solved,
    tidy,
    tidy_lessons,
)
from helpers.exercises.bank import bank
from helpers.exercises.session import workshop_session


def cell(cell_id, source, kind="code", **more):
    made = {"cell_type": kind, "id": cell_id, "metadata": {}, "source": source.splitlines(True)}
    if kind == "code":
        made |= {"execution_count": None, "outputs": []}
    return made | more


def notebook(*cells):
    return {
        "cells": list(cells),
        "metadata": {
            "kernelspec": {
                "display_name": "Python 3 (ipykernel)", "language": "python", "name": "python3"
            },
            "language_info": {"name": "python"},
        },
        "nbformat": 4,
        "nbformat_minor": 5,
    }  # fmt: skip


LESSON = notebook(
    cell("title", "# 02 Ohm's law", "markdown"),
    cell("set-up", 'from helpers import answer, card, open_lesson\n\nopen_lesson("02")'),
    cell("ohm-2", 'card("ohm-2")'),
    cell("ohm-predict", 'card("ohm-predict")'),
    cell("example", 'print("6 mA")'),
)


@pytest.fixture
def solution():
    return solved(LESSON, workshop_session())


def sources(made):
    return {c["id"]: "".join(c["source"]) for c in made["cells"]}


class TestSolved:
    def test_the_answer_cell_is_the_one_whose_id_is_the_questions(self, solution):
        session = workshop_session()
        model = bank()["ohm-2"].kind.model(session.draw("ohm-2").numbers)
        assert sources(solution)["ohm-2"] == f'answer("ohm-2", "{model}")'
        assert session.answer("ohm-2", model).verdict.right

    def test_a_prediction_is_answered_with_the_first_option(self, solution):
        assert sources(solution)["ohm-predict"] == 'answer("ohm-predict", "a")'

    def test_the_workshop_copy_is_opened(self, solution):
        assert sources(solution)["set-up"].endswith('open_lesson("02", workshop_copy=True)')

    def test_all_else_stays_and_every_code_cell_is_tagged(self, solution):
        assert sources(solution)["example"] == 'print("6 mA")'
        assert sources(solution)["title"] == "# 02 Ohm's law"
        tags = [c["metadata"].get("tags") for c in solution["cells"]]
        assert tags == [None, *[[CHECK_TAG]] * 4]

    def test_an_answer_is_never_folded_and_all_else_as_in_the_lesson(self):
        hidden = {"jupyter": {"source_hidden": True}}
        lesson = json.loads(json.dumps(LESSON))
        for made in lesson["cells"][1:]:
            made["metadata"] = hidden
        made = solved(lesson, workshop_session())["cells"]
        assert [c["metadata"].get("jupyter") for c in made] == [
            None, hidden["jupyter"], None, None, hidden["jupyter"]
        ]  # fmt: skip

    def test_the_lesson_is_left_as_it_was(self):
        before = json.dumps(LESSON)
        solved(LESSON, workshop_session())
        assert json.dumps(LESSON) == before


class TestRun:
    def test_outputs_and_counts_are_stored(self, tmp_path):
        ran = run(notebook(cell("a", "print(6)"), cell("b", "7 * 6")), tmp_path)
        assert [c["execution_count"] for c in ran["cells"]] == [1, 2]
        assert ran["cells"][0]["outputs"][0]["text"] == ["6\n"]
        assert ran["cells"][1]["outputs"][0]["data"]["text/plain"] == ["42"]
        assert ran["metadata"]["language_info"] == {"name": "python"}

    def test_a_cell_that_raises_stops_the_build_and_is_shown(self, tmp_path):
        with pytest.raises(CellExecutionError, match="ZeroDivisionError"):
            run(notebook(cell("a", "1 / 0")), tmp_path)


IMAGE = '<img alt="half" src="data:image/png;base64,{}" width="900">'


class TestComparable:
    """What freshness looks at, and what may differ from machine to machine."""

    made = notebook(
        cell(
            "a", "x", metadata={"tags": [CHECK_TAG]}, execution_count=1,
            outputs=[
                {"output_type": "stream", "name": "stdout", "text": ["one\n", "two\n"]},
                {
                    "output_type": "display_data",
                    "metadata": {},
                    "data": {"text/plain": ["said"], "text/html": [IMAGE.format("AA+/")]},
                },
            ],
        )
    )  # fmt: skip

    def other(self, change):
        made = json.loads(json.dumps(self.made))
        change(made["cells"][0], made)
        return comparable(made) == comparable(self.made)

    @pytest.mark.parametrize(
        "change",
        [
            lambda c, n: c.update(id="b"),
            lambda c, n: c.update(source=["y"]),
            lambda c, n: c["metadata"].update(tags=[]),
            lambda c, n: c["outputs"].pop(),
            lambda c, n: c["outputs"][0].update(text=["one\n"]),
            lambda c, n: c["outputs"][1]["data"].update({"text/plain": ["else"]}),
            lambda c, n: c["outputs"][1]["data"].update({"text/html": ["<img alt='else'>"]}),
            lambda c, n: c["outputs"][1]["data"].update({"application/x+json": {}}),
            lambda c, n: n["cells"].append(cell("more", "")),
        ],
        ids=[
            "id",
            "source",
            "tags",
            "output",
            "stream",
            "text",
            "alternative text",
            "media type",
            "cell",
        ],
    )
    def test_a_change_is_seen(self, change):
        assert not self.other(change)

    @pytest.mark.parametrize(
        "change",
        [
            lambda c, n: c["outputs"][1]["data"].update({"text/html": IMAGE.format("BBB=")}),
            lambda c, n: n["metadata"].update(language_info={"version": "3.13"}),
            lambda c, n: c["outputs"][0].update(text="one\ntwo\n"),
            lambda c, n: c.update(execution_count=7),
        ],
        ids=["PNG", "Python", "lines or text", "count"],
    )
    def test_what_differs_between_machines_is_not(self, change):
        assert self.other(change)


class TestTidy:
    def used(self):
        used = json.loads(json.dumps(LESSON))
        used["metadata"]["widgets"] = {"state": {}}
        used["metadata"]["language_info"]["version"] = "3.13.1"
        used["cells"][2].update(execution_count=4, metadata={"collapsed": True})
        used["cells"][2]["outputs"] = [{"output_type": "stream", "name": "stdout", "text": "x"}]
        return used

    def test_it_takes_out_what_a_run_and_an_editor_leave(self):
        assert tidy(self.used()) == LESSON

    def test_a_fold_stays(self):
        used = self.used()
        used["cells"][2]["metadata"] |= {"jupyter": {"source_hidden": True, "outputs_hidden": True}}
        assert tidy(used)["cells"][2]["metadata"] == {"jupyter": {"source_hidden": True}}

    def test_it_is_done_after_once(self):
        assert tidy(tidy(self.used())) == tidy(self.used())

    def test_the_same_notebook_gives_the_same_text(self):
        assert dumps(LESSON) == dumps(json.loads(dumps(LESSON)))
        assert dumps(LESSON).endswith("}\n")


def test_lessons_are_tidied_and_built_in_a_folder_and_only_those_named(tmp_path):
    for name in ("lessons", "solutions"):
        (tmp_path / name).mkdir()
    for name in ("02-a.ipynb", "03-b.ipynb"):
        used = TestTidy().used()
        (tmp_path / "lessons" / name).write_text(json.dumps(used), encoding="utf-8")
    assert tidy_lessons(tmp_path, ["02-a.ipynb"]) == [tmp_path / "lessons" / "02-a.ipynb"]
    assert tidy_lessons(tmp_path, ["02-a.ipynb"]) == []
    assert build(tmp_path, ["02-a.ipynb"]) == [tmp_path / "solutions" / "02-a.ipynb"]
    built = json.loads((tmp_path / "solutions" / "02-a.ipynb").read_text(encoding="utf-8"))
    assert all(c["outputs"] for c in built["cells"] if c["cell_type"] == "code")
    assert [p.name for p in (tmp_path / "solutions").iterdir()] == ["02-a.ipynb"]
    again = run(solved(LESSON, workshop_session()), tmp_path)
    assert dumps(again) == dumps(built)


def test_what_has_no_number_is_tidied_but_not_answered(tmp_path):
    (tmp_path / "lessons").mkdir()
    path = tmp_path / "lessons" / "for-readers.ipynb"
    path.write_text(json.dumps(LESSON), encoding="utf-8")
    assert tidy_lessons(tmp_path) == [path]
    assert build(tmp_path) == []
