"""Puts a notebook of explorers beside the lessons, so that a browser can open it."""

import json
from pathlib import Path

NAME = "explorers.ipynb"


def write_notebook(folder, sources):
    """Write a notebook with these code cells into the served folder of `lab.lab`."""
    cells = [
        {
            "cell_type": "code",
            "id": f"cell-{place}",
            "metadata": {},
            "source": source,
            "execution_count": None,
            "outputs": [],
        }
        for place, source in enumerate(sources)
    ]
    kernel = {"display_name": "Python 3", "language": "python", "name": "python3"}
    notebook = {
        "cells": cells,
        "metadata": {"kernelspec": kernel},
        "nbformat": 4,
        "nbformat_minor": 5,
    }
    (Path(folder) / "work" / NAME).write_text(json.dumps(notebook))


def write_explorers(folder, names):
    """Write a notebook that opens a lesson and shows these explorers, a cell each."""
    opening = 'from helpers import explore, open_lesson\n\nopen_lesson("00")'
    write_notebook(folder, [opening, *(f'explore("{name}")' for name in names)])


def scroll_to(page, place):
    """Bring a cell to the top of the page."""
    page.evaluate(
        "i => window.jupyterapp.shell.currentWidget.content.scrollToItem(i, 'start')", place
    )
