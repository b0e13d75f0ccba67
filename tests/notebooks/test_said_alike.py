"""What several places say is said in the same words everywhere."""

import re

import pytest
from notebook import LESSONS, ROOT, prose, read

from helpers.bench.report import BEFORE, MAINS_READINGS


@pytest.mark.parametrize("number", ["06", "09", "10"])
def test_who_may_read_on_the_mains_is_one_rule_in_lessons_and_bench_log(number):
    path = next(path for path in LESSONS if path.name.startswith(number))
    assert MAINS_READINGS in prose(read(path)) and MAINS_READINGS in BEFORE


@pytest.mark.parametrize("path", sorted((ROOT / "lessons").glob("*.ipynb")), ids=lambda p: p.stem)
def test_commands_begin_as_those_of_the_readme(path):
    begins = re.findall(r"(\S*)python -m helpers", path.read_text("utf-8"))
    assert {each.lstrip('`"(') for each in begins} <= {".venv/bin/", r".venv\\Scripts" + "\\\\"}
