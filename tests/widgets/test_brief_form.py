"""The forms that ask a brief: fields from the one list, errors beside them, results that follow."""

import json
import re

import pytest
from page_words import words
from shown import live_words, screen, thing

from helpers import need_it_be_built
from helpers.exercises.wording import STAMP
from helpers.figures.words import capital
from helpers.pages.own_build import own_brief
from helpers.sizing import stops
from helpers.sizing.brief import FIELDS, Brief
from helpers.sizing.by_field import typed_of
from helpers.sizing.fields import called
from helpers.widgets import brief_form, lesson
from helpers.widgets.sizing_form import SizingForm


def put(form, **texts):
    """Type into fields, as the page hands it over."""
    form.typed.value = json.dumps(json.loads(form.typed.value) | texts)


@pytest.fixture
def sized(session):
    briefs = []
    form = SizingForm(Brief(), changed=briefs.append)
    with screen() as shown:
        form.show()
        yield form, briefs, shown


def test_every_field_of_a_brief_is_asked_once_with_its_words_and_a_place_for_its_error(sized):
    html = sized[0].form.value
    for each in FIELDS:
        assert html.count(f'name="{each.name}"') == 1
        place = re.search(f'name="{each.name}" aria-describedby="([^"]+)"', html)[1]
        assert f'<p id="{place}"' in html
    ids = re.findall(r' id="([^"]+)"', html)
    assert len(ids) == len(set(ids)) and html.count("<label for=") == len(FIELDS)
    assert words(html).count("Need and use") == 1


def test_what_a_beginner_meets_last_is_folded_and_a_yes_says_who_says_so(sized):
    html = sized[0].form.value
    assert "<details><summary>A neon lamp instead" in html
    assert "<details><summary>Parts at hand" in html and "<details open><summary>Need" in html
    assert '<option value="yes" selected>yes: its manual says so</option>' in html


def test_it_opens_with_the_brief_and_its_plan_and_has_called_nobody(sized):
    form, briefs, shown = sized
    assert json.loads(form.typed.value) == typed_of(Brief()) and not briefs
    assert "1. Bridge" in live_words(form) and STAMP in live_words(form)
    assert "1. Bridge" in shown.plain and "Saved copy" in shown.plain


def test_a_change_is_read_shown_kept_in_the_copy_and_handed_over(sized):
    form, briefs, shown = sized
    put(form, heater_power="75 W")
    assert [each.heater_power for each in briefs] == [75.0]
    assert 'power = "75 W"' in live_words(form) and 'power = "75 W"' in shown.plain


def test_what_cannot_be_read_stands_beside_its_field_and_leaves_no_plan_that_is_not_its_own(sized):
    form, briefs, shown = sized
    put(form, heater_power="many", led_colour="red")
    assert "Read as 'many'" in json.loads(form.wrong.value)["heater_power"]
    for said in (live_words(form), shown.plain):
        assert "until this can be read. Watts of the heater: Read as 'many'" in said
        assert "1. Bridge" not in said and STAMP in said
    assert not briefs
    put(form, heater_power="90 W")
    assert json.loads(form.wrong.value) == {} and "1. Bridge" in live_words(form)


def test_a_stop_comes_first_and_nothing_is_sized_under_it(sized):
    form, *_ = sized
    put(form, use_connection="fixed")
    said = live_words(form)
    assert "wall plate" in said and "1. Bridge" not in said
    assert said.index("wall plate") < said.index("Need it be built")


def test_the_example_of_a_setting_follows_the_way_in_which_it_is_given(sized):
    form, *_ = sized
    assert 'placeholder="such as 126°"' in form.form.value
    for given_by, such in (
        ("volts", "115 V"),
        ("heat", "20 %"),
        ("knob", "30 %"),
        ("power", "18 W"),
    ):
        put(form, dimmer_given_by=given_by)
        assert json.loads(form.such.value)["dimmer_lowest"] == such
    put(form, dimmer_given_by="angle", dimmer_edge="trailing")
    assert json.loads(form.such.value) == {"dimmer_lowest": "54°", "dimmer_highest": "180°"}


def test_markup_that_is_typed_stays_text(sized):
    form, *_ = sized
    put(form, heater_power="<script>alert(1)</script>", led_count="</style><b>")
    for widget in (form.page, form.told, form.pulse_of_form):
        assert "<script" not in widget.value and "</style><b>" not in widget.value


def test_a_later_key_calls_off_what_an_earlier_one_began(sized, monkeypatch):
    form, briefs, _ = sized
    waiting = []

    class Handle:
        def __init__(self, action):
            self.action = action

        def cancel(self):
            self.action = lambda: None

    monkeypatch.setattr(
        brief_form, "soon", lambda action, _: waiting.append(Handle(action)) or waiting[-1]
    )
    put(form, heater_power="7")
    put(form, heater_power="75 W")
    for handle in waiting:
        handle.action()
    assert [each.heater_power for each in briefs] == [75.0]


def test_a_form_of_another_learner_shows_nothing(sized):
    form, *_ = sized
    lesson.begin("02", "BENCH-08", "wick", "230 V 50 Hz")
    assert "Another learner is set now" in live_words(form) and "1. Bridge" not in live_words(form)


class TestNeed:
    def test_the_questions_are_those_of_the_stops_and_nothing_is_answered_at_first(self, session):
        with screen() as shown:
            need_it_be_built()
        form = thing("need")
        assert json.loads(form.typed.value) == dict.fromkeys(stops.ASKED, "")
        assert [each.name for each in form.fields] == list(stops.ASKED)
        for each in form.fields:  # what is still open is named as its label is
            named = called(each.name)
            assert f"<b>{capital(named)}</b>" in form.form.value and named in live_words(form)
        assert "Until then no end is named" in live_words(form)
        assert "Where the questions end" not in shown.plain  # the table above says it
        assert "It shows what was typed until then: run the first cell" in shown.plain

    def test_what_is_answered_goes_into_the_build_of_ones_own_and_stands_there_next_time(
        self, session
    ):
        with screen():
            need_it_be_built()
        put(thing("need"), use_connection="plug-in", heater_power="75 W", use_by_others="no")
        brief = own_brief(session)
        assert (brief.use_connection, brief.heater_power, brief.use_by_others) == (
            "plug-in", 75.0, False,
        )  # fmt: skip
        assert "use_trouble" in brief.left_out and "seen_lux" in brief.left_out
        with screen() as shown:
            need_it_be_built()
        assert json.loads(thing("need").typed.value)["heater_power"] == "75 W"
        assert "kept with your own build" in shown.plain

    def test_the_answers_lead_to_an_end(self, session):
        with screen():
            need_it_be_built()
        form = thing("need")
        put(form, use_connection="plug-in", heater_power="90 W", heater_full_power_safe="yes",
            dimmer_edge="leading", dimmer_rated="300 W", use_by_others="yes")  # fmt: skip
        assert "Still open: what goes wrong." in live_words(form)
        put(form, use_trouble="too hot")
        assert "The questions end at a plug-in thermostat".lower() in live_words(form).lower()
        assert "Still open" not in live_words(form)

    def test_the_workshop_copy_shows_the_ends_without_controls(self, session):
        lesson.begin("00", workshop_copy=True)
        with screen() as shown:
            need_it_be_built()
        assert "Still open" in shown.plain and STAMP in shown.plain
        assert "kept with" not in shown.plain
