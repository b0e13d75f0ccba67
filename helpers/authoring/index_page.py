"""Makes the index a page: lessons/index.md, cut at its headings, as a notebook to read.

JupyterLab opens a text file as raw text at a double click, a notebook as a page. The text is the
only source; the notebook is never edited. Knows nothing of what an entry says.
"""

import re

from helpers.authoring.solutions import dumps, tidy


def index_page(text):
    """Return the index as a notebook without code, one cell a section.

    Parameters
    ----------
    text : str
        The index, as Markdown.

    Returns
    -------
    notebook : dict
        A notebook, as JSON, tidy.

    Examples
    --------
    >>> [cell["source"] for cell in index_page("# Index\\n\\n## Heat\\n")["cells"]]
    [['# Index'], ['## Heat']]
    """
    parts = re.split(r"^(?=## )", text, flags=re.M)
    cells = [
        {"cell_type": "markdown", "id": f"part-{place}", "metadata": {}, "source": [part.strip()]}
        for place, part in enumerate(parts)
    ]
    return tidy({"cells": cells, "metadata": {}, "nbformat": 4, "nbformat_minor": 5})


def write_index(lessons):
    """Write index.ipynb beside index.md.

    Parameters
    ----------
    lessons : Path
        The folder that holds both.

    Returns
    -------
    path : Path
        What was written.
    """
    path = lessons / "index.ipynb"
    text = (lessons / "index.md").read_text(encoding="utf-8")
    path.write_text(dumps(index_page(text)), encoding="utf-8")
    return path
