"""A learner's own build: what is typed is kept, what is open is said, and nothing permits."""

import json
from html import unescape

import pytest
from page_words import words
from shown import live_words, screen, thing

from helpers import my_build, open_lesson
from helpers.exercises.settings import Settings
from helpers.exercises.store import MemoryStore
from helpers.exercises.wording import STAMP
from helpers.figures.words import capital
from helpers.pages.own_build import ASKED_IN, own_brief, own_build_page
from helpers.physics.mains import SUPPLIES
from helpers.sizing.brief import FIELDS, Brief
from helpers.sizing.by_field import typed_of
from helpers.sizing.own import with_typed
from helpers.widgets import lesson


def put(form, **texts):
    """Type into fields, as the page hands it over."""
    form.typed.value = json.dumps(json.loads(form.typed.value) | texts)


SAFE = {
    "use_connection": "plug-in", "heater_full_power_safe": "yes", "dimmer_edge": "leading",
    "box_touch": "closed window", "dimmer_rated": "300 W",
}  # fmt: skip


def held(form):
    return json.loads(form.typed.value)


def kept(answers):
    return (answers / "build-BENCH-07.toml").read_text("utf-8")


def test_each_field_of_a_brief_is_asked_for_in_one_lesson():
    asked = [name for names in ASKED_IN.values() for name in names]
    assert sorted(asked) == sorted(each.name for each in FIELDS)


def test_each_lesson_from_02_on_shows_it_before_its_recap(root):
    for path in sorted((root / "lessons").glob("0[2-8]-*.ipynb")):
        number = path.name[:2]
        cells = [("".join(c["source"])) for c in json.loads(path.read_text("utf-8"))["cells"]]
        recap = next(i for i, text in enumerate(cells) if f'progress("{number}")' in text)
        assert any(f'my_build("{number}")' in text for text in cells[: recap + 1])


@pytest.mark.parametrize("number", ASKED_IN)
@pytest.mark.parametrize("supply", SUPPLIES)
def test_on_every_supply_an_empty_one_says_what_is_open_and_what_stops_it(number, supply):
    store = MemoryStore()
    session = lesson.learner_session(store, "BENCH-07", "wick", supply)[0]
    page = own_build_page(session, number).plain()
    assert f"volts of the supply: {supply.split(' V')[0]} V" in page
    assert page.index("What stops it: fixed wiring.") < page.index("Lesson 02.")
    assert "What stops it: full power. Danger: a dimmer that fails" in page and STAMP in page
    store.keep_own_brief("BENCH-07", with_typed("", SAFE, session.supply))
    page = own_build_page(session, number).plain()
    assert "What stops it" not in page and "So far: " in page and STAMP in page


def test_one_line_of_code_keeps_a_field_and_the_page_follows(session, answers):
    with screen():
        my_build("02")
    first = thing("own-02")
    with screen() as shown:
        my_build("02", heater_power="60 W", use_by_others=False)
    assert kept(answers) == '[heater]\npower = "60 W"\n[use]\nby_others = false\n'
    for text in (shown.plain, live_words(first), live_words(thing("own-02"))):
        assert "watts of the heater: 60 W" in text and "used by others: no" in text
    assert "Kept." in live_words(thing("own-02"))
    assert held(first)["heater_power"] == "60 W"


def test_an_open_lesson_is_meant_where_none_is_named(session):
    with screen() as shown:
        open_lesson("04")
        my_build(box_air="40 °C")
    assert "as far as lesson 04" in shown.plain and "air in the box: 40 °C" in shown.plain


@pytest.mark.parametrize("number", ["00", "01", "99", "<b>"])
def test_a_lesson_that_asks_nothing_says_which_do(session, number):
    with screen() as shown:
        my_build(number)
    assert f"Lesson {number!r} asks nothing" in shown.plain and "02, 03" in shown.plain
    assert "<b>" not in shown.html


@pytest.mark.parametrize("typed", [{"heater_power": "60 volts"}, {"heater_watts": "60 W"},
                                   {"led_colour": "<script>"}])  # fmt: skip
def test_what_cannot_be_used_is_said_and_nothing_is_kept(session, answers, typed):
    with screen() as shown:
        my_build("02", **typed)
    assert "Nothing was changed." in live_words(thing("own-02"))
    assert not (answers / "build-BENCH-07.toml").exists()
    assert "<script" not in shown.html + thing("own-02").page.value


def test_a_file_that_no_longer_reads_is_said_and_left_as_it_is(session, answers):
    answers.mkdir(parents=True, exist_ok=True)
    for content in (b"[heater", b"\xc3\x28", b'[heater]\npower = "6 apples"'):
        (answers / "build-BENCH-07.toml").write_bytes(content)
        with screen() as shown:
            my_build("02", heater_power="60 W")
        assert "Nothing was changed." in shown.plain and STAMP in shown.plain
        assert (answers / "build-BENCH-07.toml").read_bytes() == content


class TestFields:
    @pytest.fixture(params=ASKED_IN)
    def form(self, request, session):
        with screen():
            my_build(request.param)
        return thing(f"own-{request.param}")

    def test_each_has_a_name_and_says_what_is_meant(self, form):
        assert list(held(form)) == [e.name for e in FIELDS if e.name in ASKED_IN[form.number]]
        for each in form.fields:
            about = each.metadata
            assert f"<b>{capital(about['called'])}</b>: {about['says']}" in unescape(
                form.form.value
            )

    def test_what_is_open_is_empty_and_looking_writes_nothing(self, form, answers):
        values = {name: text for name, text in held(form).items() if text}
        on_settings = {"supply_volts": "230 V", "supply_hertz": "50 Hz"}
        assert values == (on_settings if form.number == "02" else {})
        form._read()
        assert not (answers / "build-BENCH-07.toml").exists()

    def test_property_the_workshops_values_come_back_as_they_were_shown(self, form, session):
        session.store.keep_own_brief("BENCH-07", with_typed("", SAFE, session.supply))
        form.follow(session)
        workshops = typed_of(Brief())
        put(form, **{name: workshops[name] for name in held(form)})
        assert "Kept." in live_words(form)
        brief = own_brief(session)
        assert all(name not in brief.left_out for name in held(form))
        shown, form.brief = held(form), Brief(heater_power=1.0)
        form.follow(session)
        assert shown == held(form)

    def test_an_error_leaves_what_was_typed_and_what_was_kept(self, session, answers):
        with screen():
            my_build("04")
        form = thing("own-04")
        put(form, box_air="45 °C")
        assert kept(answers) == '[box]\nair = "45 °C"\n' and "Kept." in live_words(form)
        put(form, box_air="fifty")
        assert "Read as 'fifty'" in json.loads(form.wrong.value)["box_air"]
        assert "air in the box: read as 'fifty'" in live_words(form).lower()
        assert held(form)["box_air"] == "fifty" and "45" in kept(answers)
        put(form, box_air="")
        assert kept(answers) == ""

    def test_limits_of_the_mains_are_held_against_what_is_kept(self, session):
        with screen():
            my_build("02", supply_volts="120 V")
            my_build("03")
        put(thing("own-03"), supply_lowest="110 V")
        assert own_brief(session).supply_lowest == 110.0


def test_whose_led_drops_what_is_said(session):
    """1.9 V is usual of red, 3.1 V of green: the table of usual drops."""
    with screen() as shown:
        my_build("02", **SAFE)
        assert "the workshop's until you name yours, one drops about 1.9 V" in words(shown.html)
        my_build("02", led_colour="green", led_count="2")
    assert "a usual green LED, until yours is measured or read, one drops about 3.1 V" in words(
        shown.html
    )


def test_who_changes_the_supply_takes_the_build_along(session):
    with screen():
        my_build("02", heater_power="60 W")
        lesson.begin("02", supply="120 V 60 Hz")
    form, said = thing("own-02"), live_words(thing("own-02"))
    assert held(form)["supply_volts"] == "120 V"
    assert "volts of the supply: 120 V" in said and "watts of the heater: 60 W" in said


def test_each_learner_has_a_build_of_their_own(session):
    with screen():
        my_build("02", heater_power="60 W")
        lesson.begin("02", learner="BENCH-08")
    assert "60 W" not in live_words(thing("own-02"))
    assert held(thing("own-02"))["heater_power"] == ""


def test_the_workshop_copy_shows_the_workshops_brief_and_keeps_nothing(answers):
    with screen() as shown:
        open_lesson("08", workshop_copy=True)
        my_build("08", heater_power="60 W")
    assert not shown.has_controls and not answers.exists()
    assert (
        "watts of the heater: 90 W" in shown.plain
        and "The workshop copy keeps nothing." in shown.plain
    )
    assert "Open:" not in shown.plain and "break no rule" in shown.plain and STAMP in shown.plain


def test_no_word_of_it_permits():
    session = lesson.workshop_session()
    for number in ASKED_IN:
        page = own_build_page(session, number)
        assert Settings("AB").learner not in page.plain()
        for word in ("approved", "safe to build", "may be built", "permitted", "go ahead"):
            assert word not in page.plain().lower()
