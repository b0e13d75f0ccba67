"""What every lesson keeps to: its shape, its size, its cells, and what it must not hold."""

import ast
import builtins
import re
from statistics import median

import pytest
from notebook import (
    LESSONS,
    ROOT,
    code,
    headings,
    lines_of_code,
    prose,
    read,
    sentences,
    sittings,
    source,
    unfolded,
    words,
)

import helpers
from helpers.authoring.every_numbers import every_numbers
from helpers.authoring.solutions import dumps, tidy
from helpers.exercises.bank import bank, lessons
from helpers.pages.own_build import asked_in

ORDER = [
    "Look back",
    "Predict first",
    "Where it goes wrong",
    "Before you build",
    "Recap",
    "Sources",
]
each_lesson = pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)
# Lesson 00 shows how things work and teaches no subject: it is shorter and has nothing to recall.
each_full_lesson = pytest.mark.parametrize(
    "path", [path for path in LESSONS if not path.stem.startswith("00")], ids=lambda path: path.stem
)


def number(path):
    return path.stem[:2]


def test_each_lesson_of_the_bank_has_its_notebook():
    assert [number(path) for path in LESSONS] == list(lessons())


@each_lesson
def test_nothing_that_a_run_leaves_is_stored(path):
    for cell in code(read(path)):
        assert cell["outputs"] == [] and cell["execution_count"] is None, cell["id"]


@each_lesson
def test_a_lesson_is_as_tidy_leaves_it(path):
    assert path.read_text(encoding="utf-8") == dumps(tidy(read(path)))


@each_lesson
def test_the_kernel_is_the_plain_one(path):
    assert read(path)["metadata"]["kernelspec"]["name"] == "python3"


@each_lesson
def test_one_top_heading_and_no_skipped_level(path):
    levels = [level for level, _ in headings(read(path))]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in zip(levels, levels[1:], strict=False))


@each_lesson
def test_the_top_heading_is_number_and_title(path):
    title = lessons()[number(path)].TITLE
    assert headings(read(path))[0] == (1, f"{number(path)} {title}")


@each_lesson
def test_it_begins_with_what_it_teaches_how_long_it_takes_and_its_caution(path):
    first = source(read(path)["cells"][0])
    for words_wanted in ("**You will be able to**", "**Time:**", "**Caution:**"):
        assert words_wanted in first
    caution = first.split("**Caution:**")[1]
    assert "mains" in caution.lower() and "kill" in caution and "local codes" in caution.lower()


@each_lesson
def test_its_sections_come_in_the_order_of_every_lesson(path):
    wanted = ORDER if number(path) != "00" else [name for name in ORDER if name != "Look back"]
    found = [text for level, text in headings(read(path)) if level == 2 and text in ORDER]
    assert found == wanted


@each_full_lesson
def test_look_back_has_three_recall_questions_and_predict_first_one_prediction(path):
    roles = [question.role for question in lessons()[number(path)].QUESTIONS]
    assert roles.count("recall") == (1 if number(path) == "01" else 3)
    assert roles.count("predict") == 1


@each_lesson
def test_the_prediction_stands_under_its_heading(path):
    predict = next(q.id for q in lessons()[number(path)].QUESTIONS if q.role == "predict")
    cells = read(path)["cells"]
    before = cells[: [cell["id"] for cell in cells].index(predict)]
    under = [each for cell in before for each in re.findall(r"^#+ (.*)$", source(cell), re.M)]
    assert under[-1] == "Predict first"


@each_lesson
def test_a_build_comes_up_only_in_lessons_that_have_something_to_say_of_it(path):
    asked = re.findall(r'my_build\("(\d\d)"', "\n".join(map(source, code(read(path)))))
    assert all(asked_in(each) is not None for each in asked)


@each_full_lesson
def test_the_prediction_comes_before_the_idea_and_comes_back(path):
    ids = [cell["id"] for cell in read(path)["cells"]]
    predict = next(q.id for q in lessons()[number(path)].QUESTIONS if q.role == "predict")
    exercises = [q.id for q in lessons()[number(path)].QUESTIONS if q.role == "exercise"]
    assert all(ids.index(predict) < ids.index(exercise) for exercise in exercises)
    last = " ".join(source(cell) for cell in code(read(path))[-2:])
    assert f'predictions("{number(path)}")' in last and f'progress("{number(path)}")' in last


@each_lesson
def test_the_set_up_cell_comes_first_and_opens_this_lesson(path):
    first = code(read(path))[0]
    assert first["id"] == "set-up" and not folded(first)
    form = "\nsettings_form()" if number(path) == "00" else ""  # who answers, before any card
    opens = f'from helpers import open_lesson; open_lesson("{number(path)}")'
    assert source(first) == opens + form


@each_lesson
def test_cards_pictures_and_imports_are_folded_and_nothing_else_is(path):
    """By the notebook's own metadata; a cell with a sum or a number to read stays open."""
    for cell in code(read(path)):
        calls = [getattr(getattr(n, "value", None), "func", None)
                 for n in ast.parse(source(cell)).body]  # fmt: skip
        pictures = {getattr(call, "id", "") for call in calls} <= {"picture", "explore"}
        assert folded(cell) == (cell["id"] in {"imports", *bank()} or pictures), cell["id"]


def folded(cell):
    return cell["metadata"] == {"jupyter": {"source_hidden": True}}


@each_lesson
def test_limit_the_first_card_is_among_the_first_four_cells(path):
    assert any(source(cell).startswith("card(") for cell in read(path)["cells"][:4])


@each_lesson
def test_after_set_up_and_imports_cells_run_in_any_order(path):
    """Names that a cell uses come from these two, from opening the lesson, or from itself."""
    first, *others = code(read(path))
    given = _assigned(source(first)) | set(dir(builtins)) | set(helpers.__all__)
    for cell in others:
        if cell["id"] == "imports":
            given |= _assigned(source(cell))
        used = {
            node.id
            for node in ast.walk(ast.parse(source(cell)))
            if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load)
        }
        assert used <= given | _assigned(source(cell)), cell["id"]


def _assigned(text):
    names = set()
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, (ast.Import, ast.ImportFrom)):
            names |= {(alias.asname or alias.name).split(".")[0] for alias in node.names}
        elif isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
            names.add(node.id)
        elif isinstance(node, (ast.FunctionDef, ast.ClassDef)):
            names.add(node.name)
    return names


@each_lesson
def test_limit_a_cell_has_at_most_eight_lines_and_a_lesson_seventy(path):
    counts = [len(lines_of_code(cell)) for cell in code(read(path))]
    assert max(counts) <= 8
    assert sum(counts) <= 70
    assert median(counts) <= 2


@each_full_lesson
def test_a_lesson_has_one_sitting_or_two_with_a_good_place_to_stop(path):
    notebook = read(path)
    assert 1 <= len(sittings(notebook)) <= 2
    first = source(notebook["cells"][0])
    assert ("two sittings" in first.lower()) == (len(sittings(notebook)) == 2)
    if len(sittings(notebook)) == 2:
        assert "good place to stop" in prose(notebook)


@each_full_lesson
def test_limit_a_sitting_has_at_most_40_cells_that_hold_no_question(path):
    for cells in sittings(read(path)):
        assert len([cell for cell in cells if cell["id"] not in bank()]) <= 40


@each_full_lesson
def test_limit_a_lesson_has_900_words_and_a_sitting_at_most_1500_and_600_folded(path):
    assert len(words(prose(read(path)))) >= 900
    for cells in sittings(read(path)):
        shown, more = unfolded(prose({"cells": cells}))
        assert len(words(shown)) <= 1500
        assert len(words(more)) <= 600


@each_lesson
def test_no_danger_caution_or_step_stands_only_in_folded_text(path):
    _, more = unfolded(prose(read(path)))
    assert not re.search(r"caution|danger|kill|never|\bstep \d", more, re.IGNORECASE)


@each_lesson
def test_limit_sentences_are_short(path):
    lengths = [len(words(sentence)) for sentence in sentences(prose(read(path)))]
    assert median(lengths) <= 18
    assert max(lengths) <= 50


@each_lesson
def test_each_question_of_the_lesson_has_its_cell_and_the_other_way_round(path):
    notebook = read(path)
    asked = {}
    for cell in code(notebook):
        for question_id in re.findall(r'\bcard\("([^"]+)"\)', source(cell)):
            asked[cell["id"]] = question_id
            assert source(cell) == f'card("{question_id}")'
    assert all(cell_id == question_id for cell_id, question_id in asked.items())
    assert list(asked) == [question.id for question in lessons()[number(path)].QUESTIONS]


@each_lesson
def test_what_the_prose_says_can_be_typed_can_be_read(path):
    said = re.findall(r'(?:answer|card|nudge)\("([a-z0-9-]+)"(?:, "([^"]*)")?', prose(read(path)))
    for question_id, typed in said:
        question = bank()[question_id]
        if typed:
            assert question.kind.read(typed, every_numbers(question)[0])
    assert len(said) >= (7 if number(path) == "00" else 0)  # one line for each kind, and more


@each_lesson
def test_cell_ids_are_words_and_stand_once(path):
    ids = [cell["id"] for cell in read(path)["cells"]]
    assert len(set(ids)) == len(ids)
    assert all(re.fullmatch(r"[a-z]+(-[a-z0-9]+)*", cell_id) for cell_id in ids)


@each_lesson
def test_nothing_reaches_for_the_network_or_a_path_of_one_machine(path):
    text = "\n".join(map(source, code(read(path))))
    assert not re.search(r"https?:|urllib|requests|socket|subprocess|!pip|%pip|%%bash", text)
    assert not re.search(r"[\"'](/|~|[A-Za-z]:\\)", text)
    assert "import *" not in text


@each_lesson
def test_no_arithmetic_that_the_helpers_should_own(path):
    for cell in code(read(path)):
        sums = [n for n in ast.walk(ast.parse(source(cell))) if isinstance(n, ast.BinOp)]
        assert len(sums) <= 1, cell["id"]


@each_lesson
def test_every_link_to_a_file_leads_somewhere(path):
    for target in re.findall(r"\]\(([^)#]+)\)", prose(read(path))):
        assert not target.startswith("http"), "a lesson needs no network"
        assert (path.parent / target).is_file(), target


@each_lesson
def test_pictures_in_the_prose_have_alternative_texts(path):
    text = prose(read(path))
    for alternative in re.findall(r"!\[([^\]]*)\]", text):
        assert len(alternative.split()) >= 3
    assert "<img" not in text


@each_lesson
def test_a_lesson_says_what_it_does_not_make_safe(path):
    text = prose(read(path))
    section = re.split(r"^## ", text, flags=re.M)
    before_you_build = next(part for part in section if part.startswith("Before you build"))
    assert re.search(r"local (codes|rules)", before_you_build)


@each_lesson
def test_sources_are_named_or_said_to_be_missing(path):
    last = prose(read(path)).split("## Sources")[1]
    items = re.findall(r"^- (.+)$", last, flags=re.M)
    assert items
    named = r"IEC|IEEE|CIE|EN 50110|textbook|common practice, no source|rules of this course"
    for item in items:
        assert re.search(named, item), item


def test_the_lessons_are_those_that_the_link_to_the_next_one_names():
    for path, after in zip(LESSONS, LESSONS[1:], strict=False):
        if int(number(after)) == int(number(path)) + 1:
            assert after.name in prose(read(path))
    assert all(path.is_relative_to(ROOT) for path in LESSONS)


def test_the_last_lesson_alone_says_that_it_is_the_last():
    said = [path for path in LESSONS if "This is the last lesson." in prose(read(path))]
    assert said == LESSONS[-1:]
