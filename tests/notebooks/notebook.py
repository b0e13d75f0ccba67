"""Reads notebooks as data for the tests of this folder."""

import json
import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
LESSONS = sorted((ROOT / "lessons").glob("[0-9][0-9]-*.ipynb"))
SOLUTIONS = sorted((ROOT / "solutions").glob("*.ipynb"))
PLOTTED = re.compile("data:image/png;base64,[A-Za-z0-9+/=]*")


def read(path):
    return json.loads(path.read_text(encoding="utf-8"))


def source(cell):
    """Return a cell's text as it is read: what underlines a word is no part of it."""
    return re.sub(r"</?span[^>]*>", "", "".join(cell["source"]))


def code(notebook):
    return [cell for cell in notebook["cells"] if cell["cell_type"] == "code"]


def prose(notebook):
    return "\n\n".join(source(c) for c in notebook["cells"] if c["cell_type"] == "markdown")


def sittings(notebook):
    """Return the cells of each sitting: the second one begins with a heading that says so."""
    parts = [[]]
    for cell in notebook["cells"]:
        if cell["cell_type"] == "markdown" and source(cell).startswith("## Second sitting"):
            parts.append([])
        parts[-1].append(cell)
    return parts


FOLDED = re.compile(r"<details>\s*<summary>.*?</summary>(.*?)</details>", re.DOTALL)


def unfolded(text):
    """Return what stands open in a text, and what is folded away in it."""
    return FOLDED.sub(" ", text), "\n\n".join(FOLDED.findall(text))


def headings(notebook):
    """Return (level, text) of every heading, in order."""
    found = re.findall(r"^(#{1,6}) +(.+)$", prose(notebook), flags=re.M)
    return [(len(marks), text.strip()) for marks, text in found]


def lines_of_code(cell):
    return [line for line in source(cell).splitlines() if line.strip()]


def words(text):
    """Return the words of a text as a reader counts them: without code, links' targets, tags."""
    text = re.sub(r"`[^`]*`", " code ", text)
    text = re.sub(r"\]\([^)]*\)", " ", text)
    return re.findall(r"[^\W_][\w'’.,-]*", text)


def sentences(text):
    """Return the sentences of the running prose: no headings, tables or quoted sums."""
    kept = []
    for block in re.split(r"\n\s*\n", re.sub(r"`[^`]*`", "code", text)):
        for line in block.splitlines():
            line = re.sub(r"^\s*(?:[-*]|\d+\.)\s+", "", line)
            if not re.match(r"\s*([#|>])", line):
                kept += re.split(r"(?<=[.?!])\s+(?=[A-Z*“\"(])", line.strip())
    return [sentence for sentence in kept if len(words(sentence)) > 1]


def comparable(notebook):
    """Return what has to be fresh in a solution: ids, types, sources, tags and text outputs."""
    return [
        {
            "id": cell["id"],
            "type": cell["cell_type"],
            "source": "".join(cell["source"]),
            "tags": cell["metadata"].get("tags", []),
            "outputs": [_texts(output) for output in cell.get("outputs", [])],
        }
        for cell in notebook["cells"]
    ]


def _texts(output):
    data = output.get("data", {"text": output.get("text", "")})
    return {kind: _joined(value) for kind, value in data.items()}


def _joined(value):
    """A text as one piece, the bytes of a plotted picture replaced as in tests/sanitize.cfg."""
    text = "".join(value) if isinstance(value, list) else value
    return PLOTTED.sub("PICTURE", text) if isinstance(text, str) else text
