"""The sheet of a build: written beside the answers, with what is open by name, never a permit."""

import pytest
from learner import right_answer
from shown import screen, thing

from helpers import my_build, my_sheet, open_lesson
from helpers.exercises.bank import bank
from helpers.exercises.wording import STAMP
from helpers.pages.own_build import own_brief
from helpers.physics.mains import SUPPLIES
from helpers.sizing import own
from helpers.sizing.brief import Brief, to_toml
from helpers.widgets import lesson
from helpers.widgets.my_build import keep_whole

DANGERS = [question for question in bank().values() if question.danger]


def written(answers):
    return (answers / "sheet-BENCH-07.html").read_text("utf-8")


def keep(session, **changes):
    session.store.keep_own_brief("BENCH-07", to_toml(Brief(**changes)))


def test_it_lies_beside_the_answers_and_names_what_is_open(session, answers):
    keep(session, heater_power=60.0)
    with screen() as shown:
        my_sheet()
    assert str(answers / "sheet-BENCH-07.html") in shown.plain and STAMP in shown.plain
    assert "60" in written(answers) and STAMP in written(answers)
    assert f"Danger items passed: 0 of {len(DANGERS)}." in shown.plain
    assert all(f"Open: {q.id}: {q.outcome}" in shown.plain for q in DANGERS)


def test_a_danger_item_that_is_passed_is_no_longer_open(session, answers):
    one = DANGERS[0]
    session.answer(one.id, right_answer(session, one.id))
    with screen() as shown:
        my_sheet()
    assert f"Danger items passed: 1 of {len(DANGERS)}." in shown.plain
    assert f"Open: {one.id}:" not in shown.plain


def test_parts_of_the_design_that_was_marked_right_stand_on_it(session, answers):
    brief = Brief(heater_power=60.0)
    keep(session, heater_power=60.0)
    typed = f"bridge; 47 kΩ; 4; 0.6 W; 300 V; volts\n{to_toml(brief)}"
    assert session.answer("own-1", typed).verdict.right
    with screen() as shown:
        my_sheet()
    parts = "bridge; 47000 Ω; 4; 0.6 W; 300 V"
    assert own.CHOSEN in shown.plain and parts in written(answers)
    kept = answers / "build-BENCH-07.toml"
    assert f'parts = "{parts}"' in kept.read_text("utf-8") and str(kept) in shown.plain
    assert not (kept.stat().st_mode | (answers / "sheet-BENCH-07.html").stat().st_mode) & 0o77
    my_build("10", heater_power="40 W")  # they were chosen for the brief as it was
    assert "chosen" not in kept.read_text("utf-8")
    with screen() as shown:
        my_sheet()
    assert own.FIRST in shown.plain


def test_a_brief_that_leaves_the_supply_to_the_settings_is_kept_with_it(session, answers):
    session.store.keep_own_brief("BENCH-07", '[heater]\npower = "60 W"\n')
    with screen():
        my_sheet()
    text = (answers / "build-BENCH-07.toml").read_text("utf-8")
    assert own.planned(text).brief.supply.name == session.supply.name


def test_under_a_stop_there_is_a_sheet_without_parts(session, answers):
    keep(session, use_connection="fixed")
    with screen():
        my_sheet()
    assert "Fixed wiring" in written(answers)


@pytest.mark.parametrize("content", [b"[heater", b"\xc3\x28"])
def test_a_build_that_cannot_be_read_is_said_and_nothing_is_written(session, answers, content):
    answers.mkdir(parents=True, exist_ok=True)
    (answers / "build-BENCH-07.toml").write_bytes(content)
    with screen() as shown:
        my_sheet()
    assert "No sheet was written." in shown.plain and STAMP in shown.plain
    assert not (answers / "sheet-BENCH-07.html").exists()


def test_a_file_that_is_no_sheet_is_left_as_it_is(session, answers):
    answers.mkdir(parents=True, exist_ok=True)
    (answers / "sheet-BENCH-07.html").write_text("mine", "utf-8")
    with screen() as shown:
        my_sheet()
    assert "No sheet was written." in shown.plain and written(answers) == "mine"


def test_the_workshop_copy_writes_nothing(answers):
    with screen() as shown:
        open_lesson("10", workshop_copy=True)
        my_sheet()
    assert "no file was written" in shown.plain and not answers.exists()


def test_lesson_10_sizes_the_build_live_and_keeps_what_is_typed(session, answers):
    keep(session, heater_power=60.0)
    with screen():
        my_build("10")
    assert thing("sizing").brief.heater_power == 60.0
    thing("sizing").changed(Brief(heater_power=40.0))
    assert own_brief(session).heater_power == 40.0


@pytest.mark.parametrize("name", SUPPLIES)
def test_property_what_is_open_in_the_form_stays_open(session, name):
    lesson.begin("10", supply=name)
    session = lesson.current_session()
    begun = own_brief(session)
    keep_whole(session, begun)
    assert session.store.own_brief("BENCH-07") == "" and own_brief(session) == begun
