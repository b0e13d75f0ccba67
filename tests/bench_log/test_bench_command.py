"""The command that holds a bench log against a plan; and a share of the bench of planted faults."""

import importlib.util
import re
from pathlib import Path

import pytest

from helpers.__main__ import main
from helpers.bench import report
from helpers.exercises.wording import STAMP
from helpers.sizing import own
from helpers.sizing.brief import Brief, to_toml

MINE = ["--mine", "series_diode", "47k", "3", "0.6W", "300V"]
BENCH = Path(__file__).resolve().parents[1] / "bench" / "planted_faults.py"


@pytest.fixture
def brief(tmp_path):
    path = tmp_path / "brief.toml"
    path.write_text(to_toml(Brief()), encoding="utf-8")
    return path


@pytest.fixture
def said(brief, tmp_path, capsys):
    """Run the command on readings, as name and text; return code, output and errors."""

    def run(readings, *words):
        log = tmp_path / "log.csv"
        rows = "".join(f'"{name}",{typed}\n' for name, typed in readings.items())
        log.write_text(f"row,reading\n{rows}", encoding="utf-8")
        code = main(["bench", str(brief), "--readings", str(log), *words])
        return code, *capsys.readouterr()

    return run


def test_a_blank_log_says_first_that_it_is_a_plan_and_asks_for_no_row_of_the_mains(brief, capsys):
    assert main(["bench", str(brief), "--blank", *MINE]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert STAMP in lines[0] and "never on the mains" in lines[1]
    assert lines[2].startswith("# Log of: series diode with 3 × 47")
    assert lines[3] == "row,where,with,should be,reading"
    assert not any(line.startswith("setting") for line in lines)


def test_what_agrees_says_so_under_stamp_and_caution_and_names_what_is_missing(said):
    code, out, _ = said({"R1": "47.1k", "R2": "46.8k", "R3": "47.0k"}, *MINE)
    assert code == 0 and out.startswith(STAMP) and out.endswith(f"{STAMP}\n")
    assert "Mains voltage can kill" in out and report.AGREES in out
    assert "Not read yet" in out


def test_what_is_wrong_is_not_to_be_connected(said):
    code, out, _ = said({"R1": "47.1k", "R2": "470k", "R3": "47.0k"}, *MINE)
    assert code == 0 and report.WRONG in out and "1. R2 is ten times its value." in out


def test_a_best_candidate_is_meant_without_mine(said):
    out = said({"leads to metal": "2"})[1]
    assert report.WRONG in out and own.FIRST in " ".join(out.split())


def test_parts_that_were_chosen_in_the_brief_go_before_the_ranking(brief, said):
    parts = "series_diode", 47e3, 3, 0.6, 300.0
    brief.write_text(own.with_parts(brief.read_text("utf-8"), None, parts), encoding="utf-8")
    out = said({"R1": "47.1k", "R2": "470k", "R3": "47.0k"})[1]
    assert own.CHOSEN in " ".join(out.split()) and "1. R2 is ten times its value." in out
    out = said({"R1": "82k"}, "--mine", "bridge", "82k", "2", "0.6W", "300V")[1]
    assert "bridge with 2 × 82" in out and report.AGREES in out


@pytest.mark.parametrize("how", [str, lambda text: text.replace("×", "Ã—").replace("Ω", "Î©")])
def test_a_log_of_another_build_is_not_compared(brief, tmp_path, capsys, how):
    """Also where a spreadsheet has read its letters in another code."""
    log = tmp_path / "log.csv"
    assert main(["bench", str(brief), "--blank", *MINE]) == 0
    filled = re.sub(r"(?m)^(R[123],.*),$", r"\1,47.1k", capsys.readouterr().out)
    log.write_text(how(filled), encoding="utf-8")
    words = ["bench", str(brief), "--readings", str(log)]
    assert main(words) == 2
    error = capsys.readouterr().err
    assert "of another build: series diode with 3 × 47" in error.replace("Ã—", "×")
    assert "on a heater of 90 W on 230 V 50 Hz. The brief gives" in error
    assert "Nothing was compared" in error and "xa0" not in error
    assert main([*words, *MINE]) == 0 and report.AGREES in capsys.readouterr().out


@pytest.mark.parametrize(
    ("readings", "words", "says"),
    [
        ({"R1": "many"}, MINE, "Row R1 was read as many"),
        ({"R4": "47k"}, MINE, "no row R4"),
        ({}, MINE, "No reading is there"),
        (
            {"R1": "47k"},
            ["--mine", "ring", "47k", "3", "0.6W", "300V"],
            "circuit was read as 'ring'",
        ),
        (
            {"R1": "330k"},
            ["--mine", "neon", "330k", "2", "0.6W", "300V"],
            "No bench log is made of a neon lamp",
        ),
    ],
)
def test_what_cannot_be_used_ends_with_code_2(said, readings, words, says):
    code, out, errors = said(readings, *words)
    assert (code, out) == (2, "") and says in errors


def test_a_forbidden_plan_has_nothing_to_measure(brief, capsys):
    brief.write_text('[use]\nconnection = "fixed"\n', encoding="utf-8")
    assert main(["bench", str(brief), "--blank"]) == 2
    assert "no candidate" in capsys.readouterr().err


def test_no_log_is_said(brief, capsys):
    assert main(["bench", str(brief)]) == 2
    assert "--blank" in capsys.readouterr().err


@pytest.fixture(scope="module")
def bench():
    specification = importlib.util.spec_from_file_location("bench_planted_faults", BENCH)
    module = importlib.util.module_from_spec(specification)
    specification.loader.exec_module(module)
    return module


@pytest.mark.parametrize("on_mains", [False, True], ids=["rehearsal", "mains, too"])
def test_property_planted_faults_are_found(bench, on_mains):
    three, first, _ = bench.rates(15, on_mains, 11)
    assert three >= bench.FIRST_THREE and first >= bench.FIRST
    assert bench.alarms(15, on_mains, 12) <= bench.FALSE_ALARMS


def test_property_a_sound_build_is_none_the_worse_for_a_meter_of_three_digits(bench):
    """Without the last place of what was typed each of these alarms."""
    assert bench.alarms(5, False, 14, counts=1000) == 0.0
