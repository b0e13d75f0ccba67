"""The package is the one in this repository, and says all that it needs."""

import ast
import os
import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement

import helpers

ROOT = Path(__file__).resolve().parents[1]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
# Names of modules whose distribution is called otherwise, or comes with one that is declared.
COMES_WITH = {
    "jinja2": "jupyterlab",
    "markupsafe": "jupyterlab",
    "jupyter_client": "jupyterlab",
    "IPython": "ipywidgets",
    "nbformat": "nbval",
    "nbclient": "jupyterlab",
    "PIL": "matplotlib",
    "packaging": "pytest",
    "psutil": "ipywidgets",
}


def requirement_names(lines):
    """Return the distributions that a list of requirements names, without ranges and comments."""
    wanted = [line.split("#")[0].strip() for line in lines]
    return {
        re.match(r"[A-Za-z0-9._-]+", line)[0].lower()
        for line in wanted
        if line and not line.startswith("-")
    }


LOCK = (ROOT / "tests/requirements-lock.txt").read_text(encoding="utf-8")
REQUIREMENTS = (ROOT / "requirements.txt").read_text(encoding="utf-8").splitlines()


def third_party(folder):
    """Return the modules that the files of a folder import from neither Python nor the project."""
    own = {path.stem for path in ROOT.rglob("tests/**/*.py")} | {"helpers"}
    own |= {path.parent.name for path in ROOT.rglob("tests/**/__init__.py")}
    found = {}
    for path in (ROOT / folder).rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom) and not node.level:
                names = [node.module]
            for name in (name.split(".")[0] for name in names):
                if name not in sys.stdlib_module_names and name not in own:
                    found.setdefault(name, path.relative_to(ROOT).as_posix())
    return found


def test_helpers_is_the_one_of_this_repository():
    """Another package of this name can be had from the package index."""
    assert Path(helpers.__file__).resolve() == ROOT / "helpers" / "__init__.py"
    assert PROJECT["project"]["name"] != "helpers"
    assert "-e ." in REQUIREMENTS


def test_every_import_of_helpers_is_a_declared_requirement():
    declared = requirement_names(REQUIREMENTS)
    for name, path in third_party("helpers").items():
        assert COMES_WITH.get(name, name).lower() in declared, f"{name}, imported by {path}"


def test_every_import_of_the_tests_is_a_declared_requirement():
    extra = PROJECT["project"]["optional-dependencies"]["tests"]
    declared = requirement_names(REQUIREMENTS) | requirement_names(extra)
    for name, path in third_party("tests").items():
        assert COMES_WITH.get(name, name).lower() in declared, f"{name}, imported by {path}"


def test_what_learners_need_and_what_tests_need_are_declared_once():
    extra = PROJECT["project"]["optional-dependencies"]["tests"]
    assert not requirement_names(REQUIREMENTS) & requirement_names(extra)


def test_each_requirement_is_a_range_and_says_why():
    lines = [line.strip() for line in REQUIREMENTS if line.strip()]
    for before, line in zip(lines, lines[1:], strict=False):
        if not line.startswith("#"):
            assert before.startswith("# ") and len(before) > 10, line
            assert line == "-e ." or re.fullmatch(r"[a-z0-9-]+>=[\d.]+,<\d+", line), line


def locked():
    """Return the entries of the lock file: each with its marker, and its hashes apart."""
    rows = [line for line in LOCK.splitlines() if not line.startswith("#")]
    entries = "\n".join(rows).replace("\\\n", " ").splitlines()
    return [entry.split("--hash=") for entry in entries if entry.strip()]


def test_each_entry_of_the_lock_is_one_version_with_its_hashes():
    for entry, *hashes in locked():
        assert re.fullmatch(r"[a-z0-9-]+==[\w.]+( ; .+)?", entry.strip()), entry
        assert hashes
        assert all(re.fullmatch(r"sha256:[0-9a-f]{64}", each.strip()) for each in hashes), entry


def test_the_lock_names_no_registry():
    assert "//" not in LOCK
    assert not re.search(r"index-url|find-links|file:", LOCK)


@pytest.mark.parametrize("python", ["3.11", "3.12", "3.13"])
def test_the_lock_holds_what_is_declared_once_and_in_range(python):
    held = [Requirement(entry) for entry, *_ in locked()]
    place = {"python_version": python, "python_full_version": f"{python}.9", "extra": ""}
    place |= {"sys_platform": "linux", "os_name": "posix", "platform_system": "Linux"}
    chosen = {}
    for one in held:
        if one.marker is None or one.marker.evaluate(place):
            assert one.name not in chosen
            chosen[one.name] = str(one.specifier).removeprefix("==")
    extra = PROJECT["project"]["optional-dependencies"]["tests"]
    declared = [line for line in [*REQUIREMENTS, *extra] if line.strip() and line[0] not in "#-"]
    for wanted in map(Requirement, declared):
        assert wanted.specifier.contains(chosen[wanted.name]), wanted


def commands_of_the_readme():
    """Return the copyable command lines of README.md."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    blocks = re.findall(r"```(?:sh|powershell)\n(.*?)```", text, flags=re.S)
    return [line.strip() for block in blocks for line in block.splitlines() if line.strip()]


def test_ci_runs_the_readmes_own_test_command():
    script = [line.strip() for line in (ROOT / ".ci/run").read_text(encoding="utf-8").splitlines()]
    last = [line for line in script if line and not line.startswith("#")][-1]
    tests = [line for line in commands_of_the_readme() if " -m pytest" in line]
    assert last in tests
    assert len(tests) == 2  # one line for Linux and macOS, one for Windows


def test_the_first_command_opens_the_lessons_on_each_system():
    first, second = (
        line
        for line in commands_of_the_readme()
        if " -r requirements.txt" in line and "pytest" not in line
    )
    assert first.endswith(".venv/bin/python -m helpers open")
    assert second.endswith(".venv\\Scripts\\python -m helpers open")


def test_each_command_of_the_readme_names_files_that_are_there():
    for line in commands_of_the_readme():
        for path in re.findall(r"[\w./\\-]+\.(?:txt|ipynb|py)\b", line):
            assert (ROOT / path.replace("\\", "/")).is_file(), (line, path)


def test_the_commands_for_windows_do_the_same_as_those_for_linux():
    linux = [line for line in commands_of_the_readme() if line.startswith("python3 -m venv")]
    windows = [line for line in commands_of_the_readme() if line.startswith("py -m venv")]
    for one, other in zip(linux, windows, strict=True):
        said = other.replace("py -m", "python3 -m", 1).replace("; ", " && ")
        assert said.replace("Scripts", "bin").replace("\\", "/") == one


def test_the_package_holds_helpers_and_nothing_else():
    assert PROJECT["tool"]["setuptools"]["packages"]["find"]["include"] == ["helpers", "helpers.*"]
    assert PROJECT["project"]["requires-python"] == ">=3.11"


TOP_LEVEL = {
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "helpers",
    "lessons",
    "pyproject.toml",
    "requirements.txt",
    "solutions",
    "tests",
}


def test_the_top_level_holds_what_a_newcomer_needs_and_nothing_else():
    """What git ignores (answers, `.venv`, a demo room) may lie there too."""
    names = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}
    assert names >= TOP_LEVEL
    if (ROOT / ".git").exists():
        command = ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
        done = subprocess.run(command, cwd=ROOT, capture_output=True, check=True)
        kept = {name.split("/")[0] for name in done.stdout.decode("utf-8").split("\0") if name}
        assert {name for name in kept if not name.startswith(".")} == TOP_LEVEL


def test_tests_keep_their_answers_in_memory():
    """Named in pytest's own options, so that it holds for lessons and for helpers alike."""
    assert PROJECT["tool"]["pytest"]["ini_options"]["addopts"].startswith("-p answers_in_memory ")
    assert os.environ["CANDLE_WORKSHOP_ANSWERS"] == "memory"


def test_the_front_door_opens_and_lists_what_it_has():
    for name in helpers.__all__:
        assert callable(getattr(helpers, name)), name
    with pytest.raises(AttributeError, match="no attribute 'open_lessons'"):
        helpers.open_lessons  # noqa: B018 - asking is the test
