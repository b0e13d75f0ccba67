"""Imports run only down the house; each layer imports with what it may not need blocked."""

import ast
import re
import subprocess
import sys
from pathlib import Path

import pytest

TESTS = Path(__file__).resolve().parent
HELPERS = TESTS.parent / "helpers"
# From the top down. A module may import from its own layer and from those after it.
LAYERS = (
    "__main__",
    "commands",
    "__init__",
    "opening",
    "widgets",
    "authoring",
    "printing",
    "classroom",
    "sheets",
    "pages",
    "exercises",
    "bench",
    "sizing",
    "figures",
    "physics",
    "quantities",
)
FILES = sorted(HELPERS.rglob("*.py"))
NAMES = [path.relative_to(HELPERS.parent).with_suffix("").as_posix() for path in FILES]
MOST_LINES = 250  # of code: docstrings and blank lines not counted, nor the bank


def imports_of(source, package):
    """Return every module that a source imports, also inside functions and by `import_module`."""
    found = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            base = node.module or ""
            if node.level:
                parent = package.split(".")[: len(package.split(".")) - node.level + 1]
                base = ".".join([*parent, base]).rstrip(".")
            found |= {f"{base}.{alias.name}" for alias in node.names}
            found |= {base} - {
                "helpers"
            }  # `from helpers import quantities` asks nothing of the door
        elif isinstance(node, ast.Constant) and re.fullmatch(r"helpers(\.\w+)+", str(node.value)):
            found.add(node.value)  # a module named in text, as in the table of helpers/__init__.py
    return found


def layer_of(module):
    """Return the layer that a module of ours lies in, None for all others."""
    first, *rest = module.split(".")
    if first != "helpers":
        return None
    return rest[0] if rest and rest[0] in LAYERS else "__init__"


def upward(source, module):
    """Return the imports of a module that run up the house."""
    package = module if source is None else module.rpartition(".")[0]
    own = LAYERS.index(layer_of(module))
    ours = [name for name in imports_of(source, package) if layer_of(name)]
    # `from helpers.physics import mains` names "helpers.physics" and "helpers.physics.mains"
    return [name for name in ours if LAYERS.index(layer_of(name)) < own]


def module_name(path):
    parts = path.relative_to(HELPERS.parent).with_suffix("").parts
    return ".".join(parts if parts[-1] != "__init__" or len(parts) == 2 else parts[:-1])


@pytest.mark.parametrize("path", FILES, ids=NAMES)
def test_imports_run_only_down(path):
    module = module_name(path)
    if path.name == "__init__.py" and path.parent != HELPERS:
        module += ".__init__"
    assert upward(path.read_text(encoding="utf-8"), module) == []


UPWARD = {
    "plain": "import helpers.widgets.card",
    "from": "from helpers.widgets import card",
    "inside a function": "def f():\n    from helpers.widgets.card import Card",
    "relative": "from ..widgets import card",
    "by its name in text": "import_module('helpers.widgets.card')",
    "the front door": "from helpers import card",
}


@pytest.mark.parametrize("source", UPWARD.values(), ids=UPWARD)
def test_an_upward_import_is_caught(source):
    assert upward(source, "helpers.exercises.session")
    assert not upward(source.replace("widgets", "physics"), "helpers.exercises.session") or (
        "from helpers import card" in source
    )


def graph():
    """Return which modules of helpers each module imports."""
    known = {module_name(path) for path in FILES}
    edges = {}
    for path in FILES:
        module = module_name(path)
        package = module if path.name == "__init__.py" else module.rpartition(".")[0]
        names = imports_of(path.read_text(encoding="utf-8"), package)
        edges[module] = (names & known) - {module, "helpers", package}
    return edges


def circle(edges):
    """Return the modules of one circle of imports, or nothing."""
    done = set()

    def walk(module, trail):
        if module in trail:
            return [*trail[trail.index(module) :], module]
        if module in done:
            return []
        found = next(filter(None, (walk(n, [*trail, module]) for n in edges.get(module, ()))), [])
        done.add(module)
        return found

    return next(filter(None, (walk(module, []) for module in edges)), [])


def test_no_two_modules_import_each_other():
    edges = graph()
    del edges["helpers.__init__"]  # names its modules as text and imports them at first use
    assert circle(edges) == []


def test_a_circle_is_caught():
    assert circle({"a": {"b"}, "b": {"c"}, "c": {"a"}, "d": set()})
    assert not circle({"a": {"b", "c"}, "b": {"c"}, "c": set()})


def test_only_the_loader_knows_the_files_of_the_bank():
    for module, imported in graph().items():
        lessons = [name for name in imported if name.startswith("helpers.exercises.bank.lesson_")]
        assert lessons == [], module


def test_the_bank_imports_nothing_that_shows_or_keeps():
    allowed = ("exercises.bank.two_resistors", "exercises.kinds", "exercises.question")
    allowed += ("exercises.roads", "physics", "quantities", "sizing")
    for module, imported in graph().items():
        if module.startswith("helpers.exercises.bank.lesson_"):
            for name in imported:
                assert name.removeprefix("helpers.").startswith(allowed), (module, name)


def lines_of_code(source):
    """Return how many lines are neither blank, comment nor docstring, a field's own included."""
    documented = set()
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Expr) and isinstance(getattr(node.value, "value", None), str):
            documented |= set(range(node.lineno, node.end_lineno + 1))
    lines = enumerate(map(str.strip, source.splitlines()), start=1)
    return sum(1 for number, line in lines if line and line[0] != "#" and number not in documented)


TABLES = {"bank", "explorers.py"}  # rows, more with each lesson
NOT_BANK = [path for path in FILES if not TABLES & set(path.parts[-2:])]


@pytest.mark.parametrize(
    "path", NOT_BANK, ids=lambda path: f"limit: {path.parent.name} {path.stem}"
)
def test_a_module_is_short(path):
    lines = lines_of_code(path.read_text(encoding="utf-8"))
    assert lines <= MOST_LINES


def test_lines_of_code_are_counted_without_docstrings_and_blank_lines():
    assert lines_of_code('"""What for.\n\nMore.\n"""\n\nx = 1\n\ndef f():\n    """It."""\n') == 2


SCREEN = ("matplotlib", "ipywidgets", "schemdraw", "IPython")
BLOCKED = {
    "helpers.physics": SCREEN,
    "helpers.quantities": (*SCREEN, "numpy", "nbformat"),
    "helpers.exercises": SCREEN,
    "helpers.bench": SCREEN,
    "helpers.sizing": SCREEN,
    "helpers.pages": SCREEN,
    "helpers.sheets": SCREEN,
    "helpers.classroom": (*SCREEN, "nbformat", "nbclient"),
}


@pytest.mark.parametrize("layer", BLOCKED)
def test_a_layer_imports_without_what_it_may_not_need(layer):
    inside = [m for m in map(module_name, FILES) if m == layer or m.startswith(layer + ".")]
    assert inside and imported(inside, BLOCKED[layer]) == ""


@pytest.mark.parametrize("folder", ["pages", "classroom"])
def test_tests_of_what_needs_no_widgets_import_without_them(folder):
    inside = [path.stem for path in (TESTS / folder).glob("*.py")]
    assert len(inside) > 1 and imported(inside, SCREEN, folders(folder)) == ""


def imported(modules, blocked, folders=()):
    """Import modules in a process of their own with some packages blocked; return what it says."""
    program = (
        f"import sys; sys.path[:0] = {list(folders)!r}\n"
        f"for name in {blocked!r}: sys.modules[name] = None\n"
        f"import importlib\nfor name in {modules!r}: importlib.import_module(name)"
    )
    done = subprocess.run(
        [sys.executable, "-c", program], cwd=HELPERS.parent, capture_output=True, text=True
    )
    return done.stderr


def folders(own):
    """Return where the tests of a folder find what they share, their own first."""
    return [str(TESTS / own), str(TESTS), *map(str, filter(Path.is_dir, TESTS.iterdir()))]


def test_blocking_a_package_works():
    program = "import sys; sys.modules['matplotlib'] = None; import matplotlib"
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True)
    assert done.returncode == 1 and "matplotlib" in done.stderr


@pytest.mark.parametrize("path", FILES, ids=NAMES)
def test_each_file_says_first_what_it_is_for(path):
    assert ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
