"""A few values are kept for checks: 150, 180, 220 and 270 kilohm, 165 V, and 220 V as an example.

No worked example, docstring, default or invented data shows them, so that no example is the answer
to a check. A bin may hold them: it is known by standing in code as a row of three numbers or more,
or as what is added to such a row by `+=`. Personal numbers drawn from a bin, and readers' own
results, are not looked at.
"""

import ast
import json
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
FILES = sorted([*(ROOT / "helpers").rglob("*.py"), *(ROOT / "lessons").glob("*.[im][pd]*"),
                *ROOT.glob("*.md")])  # fmt: skip
KEPT_BACK = {150e3, 180e3, 220e3, 270e3}
LEAST_ROW = 3
WRITTEN = re.compile(
    r"\b(?:150|180|220|270)(?:\.0)?(?:\s?(?:k\b|k[Ω ]|kohm|kilo)|e3\b|[_ ]?000(?:\.0)?\b)"
    r"|\b(?:165|220)(?:\.0)?\s?(?:V\b|volts?\b)|Supply\((?:165|220)\b"
)


def in_python(source):
    """Yield each string, and each number that stands in no bin, where it is kept back."""
    nodes = list(ast.walk(ast.parse(source)))
    added = {id(node.value) for node in nodes if isinstance(node, ast.AugAssign)}
    bins = {
        id(number)
        for row in nodes
        if isinstance(row, (ast.Tuple, ast.List))
        and (len(row.elts) >= LEAST_ROW or id(row) in added)
        for number in row.elts
    }
    for node in nodes:
        if not isinstance(node, ast.Constant) or id(node) in bins:
            continue
        if isinstance(node.value, str):
            yield from WRITTEN.findall(node.value)
        elif node.value in KEPT_BACK:
            yield node.value


def in_text(path):
    text = path.read_text(encoding="utf-8")
    if path.suffix == ".ipynb":
        text = "\n".join("".join(cell["source"]) for cell in json.loads(text)["cells"])
    return WRITTEN.findall(text)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_no_example_shows_a_value_that_is_kept_for_checks(path):
    found = in_python(path.read_text("utf-8")) if path.suffix == ".py" else in_text(path)
    assert list(found) == []


@pytest.mark.parametrize(
    "source",
    [
        '"""About 150 kΩ."""',
        '"""\n>>> dropper(230.0, 270e3)\n"""',
        'words = "220 V and 1 mA"',
        'words = "dimmed to 165\u00a0V"',
        '"""\n>>> at(180_000.0)\n"""',
        "def draw(ohms=220e3): pass",
        "pair = (150_000.0, 390_000.0)",
    ],
)
def test_limit_an_example_is_found(source):
    assert list(in_python(source))


@pytest.mark.parametrize(
    "source",
    [
        "BIN = (120e3, 150e3, 180e3)",
        "BIN += (220e3, 270e3)",
        '"""At 150 degrees, and 220 ohm; 1 V at 165 deg."""',
    ],
)
def test_limit_a_bin_or_another_quantity_is_left_alone(source):
    assert list(in_python(source)) == []
