"""Builds solutions/ from lessons/: the model answer in each answer cell, run and recorded.

A solution is never written by hand. Reads and writes notebooks as plain JSON.
"""

import json
import re

from helpers.exercises.bank import bank
from helpers.exercises.session import workshop_session

CHECK_TAG = "nbval-check-output"
LESSON_FILES = "[0-9][0-9]-*.ipynb"  # what else lies in lessons/ is read, never answered
TIMEOUT_SECONDS = 60


def solved(lesson, session):
    """Return a lesson with the workshop copy opened and the model answers put in, not yet run.

    Parameters
    ----------
    lesson : dict
        The notebook, as JSON.
    session : Session
        The workshop copy's, for its personal numbers.

    Returns
    -------
    solution : dict
        A new notebook; the lesson is left as it was.
    """
    solution = json.loads(json.dumps(lesson))
    for cell in solution["cells"]:
        if cell["cell_type"] != "code":
            continue
        source = "".join(cell["source"])
        folded = {} if cell["id"] in bank() else _folded(cell)
        if cell["id"] in bank():
            source = f'answer("{cell["id"]}", "{_model(session, cell["id"])}")'
        source = re.sub(
            r'open_lesson\("(\d\d)"\)', r'open_lesson("\1", workshop_copy=True)', source
        )
        cell["source"] = source.splitlines(keepends=True)
        cell["metadata"] = folded | {"tags": [CHECK_TAG]}
    return solution


def _folded(cell):
    """The metadata that hides a cell's code in JupyterLab, if it is hidden."""
    hidden = cell["metadata"].get("jupyter", {}).get("source_hidden")
    return {"jupyter": {"source_hidden": True}} if hidden else {}


def _model(session, question_id):
    question = session.question(question_id)
    numbers = session.draw(question_id).numbers
    if question.role == "predict":
        return next(iter(question.kind.shown(numbers)))
    return question.kind.model(numbers)


def run(notebook, folder):
    """Run a notebook's cells in order and return it with its outputs, as JSON.

    Raises
    ------
    nbclient.exceptions.CellExecutionError
        If a cell raises; the text names the cell.
    """
    import nbformat
    from nbclient import NotebookClient

    node = nbformat.reads(json.dumps(notebook), as_version=4)
    client = NotebookClient(
        node,
        timeout=TIMEOUT_SECONDS,
        record_timing=False,
        coalesce_streams=True,
        resources={"metadata": {"path": str(folder)}},
    )
    client.execute()
    node.metadata.pop("widgets", None)
    node.metadata["language_info"] = {"name": "python"}
    return json.loads(nbformat.writes(node))


def build(root, names=()):
    """Build solutions from lessons.

    Parameters
    ----------
    root : Path
        The project's folder.
    names : sequence of str
        File names of lessons; all of them if empty.

    Returns
    -------
    written : list of Path
    """
    written = []
    for path, lesson in _notebooks(root, names, LESSON_FILES):
        solution = run(solved(lesson, workshop_session()), root / "solutions")
        target = root / "solutions" / path.name
        target.write_text(dumps(solution), encoding="utf-8")
        written.append(target)
    return written


def tidy_lessons(root, names=()):
    """Take outputs and what an editor left behind out of the lessons; return what was changed."""
    changed = []
    for path, lesson in _notebooks(root, names):
        if dumps(tidy(lesson)) != path.read_text(encoding="utf-8"):
            path.write_text(dumps(tidy(lesson)), encoding="utf-8")
            changed.append(path)
    return changed


def _notebooks(root, names, pattern="*.ipynb"):
    """Yield path and notebook of those in lessons/ that are named, or of all."""
    for path in sorted((root / "lessons").glob(pattern)):
        if not names or path.name in names:
            yield path, json.loads(path.read_text(encoding="utf-8"))


def dumps(notebook):
    """Return a notebook's text, the same for the same notebook."""
    return json.dumps(notebook, ensure_ascii=False, indent=1) + "\n"


def tidy(lesson):
    """Return a lesson without outputs, counts and what an editor left behind; folds stay."""
    clean = json.loads(json.dumps(lesson))
    clean["metadata"] = {
        "kernelspec": {
            "display_name": "Python 3 (ipykernel)",
            "language": "python",
            "name": "python3",
        },
        "language_info": {"name": "python"},
    }
    for cell in clean["cells"]:
        cell["metadata"] = _folded(cell)
        cell["source"] = "".join(cell["source"]).splitlines(keepends=True)
        if cell["cell_type"] == "code":
            cell.update(outputs=[], execution_count=None)
    return clean
