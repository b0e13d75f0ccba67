"""A stored picture that was plotted on another machine is compared by its words, not its bytes."""

import json
import subprocess
import sys

import pytest
from notebook import ROOT

from helpers.authoring.solutions import CHECK_TAG, dumps, run

CELL = "from IPython.display import HTML, display\ndisplay(HTML('''{}'''))"
IMAGE = '<img alt="{}" src="data:image/png;base64,{}" width="900">'


@pytest.mark.parametrize(
    ("alternative", "passes"), [("half of it is left", True), ("all of it is left", False)]
)
def test_the_run_from_the_projects_folder_compares_words_and_no_bytes(
    tmp_path, alternative, passes
):
    cell = {
        "cell_type": "code", "id": "picture", "metadata": {"tags": [CHECK_TAG]},
        "execution_count": None, "outputs": [],
        "source": CELL.format(IMAGE.format("half of it is left", "AA+/")),
    }  # fmt: skip
    kernel = {"display_name": "Python 3", "language": "python", "name": "python3"}
    made = {"cells": [cell], "metadata": {"kernelspec": kernel}, "nbformat": 4, "nbformat_minor": 5}
    stored = json.loads(json.dumps(run(made, tmp_path)))
    stored["cells"][0]["outputs"][0]["data"]["text/html"] = IMAGE.format(alternative, "BBB=")
    (tmp_path / "stored.ipynb").write_text(dumps(stored), encoding="utf-8")
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider"]
    command += ["-c", "pyproject.toml", "--rootdir", str(ROOT), str(tmp_path / "stored.ipynb")]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    assert (done.returncode == 0) == passes, done.stdout
    assert ("1 passed" if passes else "1 failed") in done.stdout
