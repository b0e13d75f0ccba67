"""The page: danger first, whole in itself, readable without colour, and safe with strange text."""

import hashlib
import os
import re
from base64 import b64encode
from datetime import UTC, datetime
from html.parser import HTMLParser

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from invented_bank import BANK_FILES

from helpers.classroom import page_questions
from helpers.classroom.files import Problem, for_page
from helpers.classroom.mark_book import MarkBook, lessons_of
from helpers.classroom.report import SECTIONS, page
from helpers.exercises.hand_in import digest
from helpers.exercises.wording import CAUTION

AT = datetime(2026, 1, 20, 9, 30, tzinfo=UTC)
EMPTY_TAGS = {"meta", "br"}


class Page(HTMLParser):
    """A page taken apart: its tags with their attributes, and whether each one is closed."""

    def __init__(self, text):
        super().__init__()
        self.tags, self.open = [], []
        self.feed(text)

    def handle_starttag(self, tag, attributes):
        self.tags.append((tag, dict(attributes)))
        if tag not in EMPTY_TAGS:
            self.open.append(tag)

    def handle_startendtag(self, tag, attributes):
        self.tags.append((tag, dict(attributes)))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def all(self, tag):
        return [attributes for name, attributes in self.tags if name == tag]


@pytest.fixture
def full_room(room):
    """A room with something for every section of the page."""
    for learner in ("BENCH-01", "BENCH-02"):
        ids = ("guess", "touch", "ready", "parts-1")
        lines = [room.line(room.right(name, learner), name, learner) for name in ids]
        tries = [room.line(f"{n} W", "current-1", learner, second=n) for n in (1, 2, 3)]
        tries += [room.line(f"{n} A", "current-1", learner, second=n) for n in (4, 5, 6)]
        room.hand_in(
            *lines, *tries, room.line("7 A", "current-2", learner), name=f"{learner}.jsonl"
        )
    room.hand_in(name="empty.jsonl")
    return room


def test_the_page_is_whole_in_itself(full_room):
    full_room.mark()
    text = full_room.page()
    parts = Page(text)
    assert parts.open == []
    assert not re.search(r"https?:|url\(|@import|<script|<link|<img|<iframe| style=| on\w+=", text)
    ids = [attributes["id"] for _, attributes in parts.tags if "id" in attributes]
    assert len(ids) == len(set(ids))
    wanted = {link["href"] for link in parts.all("a")}
    assert wanted <= {f"#{name}" for name in ids}


def test_the_policy_allows_the_style_of_the_page_and_nothing_else(full_room):
    """Second way: the hash of what stands between the tags, as Content Security Policy Level 2
    asks of style-src (from memory).
    """
    full_room.mark()
    text = full_room.page()
    style = re.search(r"<style>(.*?)</style>", text, re.DOTALL)[1]
    digest = b64encode(hashlib.sha256(style.encode()).digest()).decode()
    policy = next(m["content"] for m in Page(text).all("meta") if "http-equiv" in m)
    assert policy == (
        f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
    )


def test_danger_comes_first_and_the_caution_before_all(full_room):
    full_room.mark()
    text = full_room.page()
    places = [text.index(f'id="{name}"') for name in SECTIONS]
    assert places == sorted(places)
    assert next(iter(SECTIONS)) == "danger"
    assert 0 < text.index(CAUTION) < places[0]


def test_tables_and_pictures_speak_to_who_does_not_see_them(full_room):
    full_room.mark()
    parts = Page(full_room.page())
    assert parts.all("th")
    assert all(head["scope"] in ("row", "col") for head in parts.all("th"))
    assert all("aria-label" in box for box in parts.all("div") if box.get("class") == "scroll")
    assert all(box["tabindex"] == "0" for box in parts.all("div") if box.get("class") == "scroll")


def test_every_state_has_a_sign_of_its_own():
    signs = [sign for _, sign in page_questions.LOOKS.values()]
    assert len(set(signs)) == len(signs)


def test_the_grid_holds_a_cell_for_each_learner_and_question(full_room):
    book = full_room.mark()
    grids = "".join(page_questions.marks(book, "Marks")).partition("</ul>")[2]
    cells = re.findall(r'<td class="number s-(\w+)">', grids)
    assert len(cells) == len(book.rows) * len(book.questions)
    full = [cell for cell in cells if cell == "full"]
    assert len(full) == 6  # touch, ready and parts-1 of two learners


def test_each_section_says_what_it_found(full_room):
    full_room.mark()
    text = text_of(full_room)
    for words in (
        "0 of 2 learners</strong> have passed every lesson",
        "<b>▲ touch</b> answer touch",
        "not answered: steps; short by 1.6 marks",
        "worked answer shown: BENCH-01, BENCH-02<",
        "tried, no marks yet: BENCH-01, BENCH-02<",
        'short">2 of 2</td><td class="short">0 of 2</td>',
        "no known turn (2 of 2)",
        "it is empty",
    ):
        assert words in text


def text_of(room):
    """Return the page without the spans that only style."""
    return re.sub(r"</?span[^>]*>", "", room.page())


def section_of(text, name):
    return text.partition(f'id="{name}"')[2].partition("</section>")[0]


def first_cells(text, section):
    """Return the row heads of a section, in order."""
    return re.findall(r'<th scope="row">(?:▲ )?([^<]+)<', section_of(text, section))


def one_of(room, learner, *answers):
    """Hand in answers of one learner, as (question, key of an option or None for a right one)."""
    lines = []
    for second, (name, key) in enumerate(answers):
        kind, numbers = room.question(name).kind, room.numbers(name, learner)
        typed = kind.letters_of([key], numbers) if key else room.right(name, learner)
        lines.append(room.line(typed, name, learner, second=second))
    room.hand_in(*lines, name=f"{learner}.jsonl")


def test_one_row_a_learner_says_who_is_ready(room):
    """BENCH-03 and BENCH-04 stand on no roster; who answered a danger item wrong comes first."""
    everything = [(question.id, None) for question in BANK_FILES["01"].QUESTIONS]
    one_of(room, "BENCH-01", *everything)
    one_of(room, "BENCH-03", *everything[:4])
    one_of(room, "BENCH-04", ("touch", "dark"), ("current-3", None))
    room.mark()
    text = text_of(room)
    assert first_cells(text, "danger") == ["BENCH-04", "BENCH-01", "BENCH-02", "BENCH-03"]
    for words in (
        "1 of 4 learners</strong> have passed every lesson",
        "<td>✓ passed</td><td>not begun</td>",
        "<td>short by 1.6 marks</td><td>not begun</td>",
        "▲ wrong: touch; not answered: ready, steps; short by 1.6 marks</td><td>1</td>",
        '<td colspan="2">nothing handed in</td>',
    ):
        assert words in text


@pytest.mark.parametrize(("wrong", "named"), [(1, False), (2, True), (5, True)])
def test_a_danger_item_that_took_many_cases_is_named_wherever_it_was_passed(room, wrong, named):
    lines = []
    for draw in range(wrong + 1):
        shown = room.question("touch").kind.shown(room.numbers("touch", draw=draw))
        dark = next(letter for letter, option in shown.items() if option.key == "dark")
        typed = dark if draw < wrong else room.right("touch", draw=draw)
        lines.append(room.line(typed, "touch", draw=draw, second=draw))
    room.hand_in(*lines, room.line(room.right("ready"), "ready", second=9))
    room.mark()
    assert ("; after more than 2 cases: touch<" in text_of(room)) == named
    cell = room.table()["BENCH-01"]["danger items after more than 2 cases"]
    assert cell == ("touch" if named else "")


def test_what_was_handed_in_is_named_with_what_its_receipt_shows(room):
    """Second way: the digest of the file as it lies there."""
    path = room.hand_in(room.line("1 mA"), room.line("2 mA", second=1), name="<a>.jsonl")
    room.mark()
    section = section_of(room.page(), "handed-in")
    assert 'BENCH-01</th><td class="words">&lt;a&gt;.jsonl</td><td class="number">2</td>' in (
        section
    )
    assert digest(path.read_bytes()) in section


def test_the_hardest_question_comes_first_with_its_most_common_turn(room):
    """At first: choice-1 wrong, wrong, right; touch right, wrong; choice-2 right."""
    one_of(room, "BENCH-01", ("choice-1", "wait"), ("choice-2", None), ("touch", None))
    one_of(room, "BENCH-02", ("choice-1", "wait"), ("choice-1", "ask"), ("touch", "dark"))
    one_of(room, "BENCH-03", ("choice-1", None), ("choice-1", "dark"))
    room.mark()
    text = text_of(room)
    assert first_cells(text, "difficulty") == ["choice-1", "touch", "choice-2"]
    for words in (
        '<td class="short">3 of 3</td><td class="short">1 of 3</td>',
        "chose: Wait a while. (2 of 3)",
        '<td class="short">2 of 3</td><td class="short">1 of 2</td>',
        "▲ chose: It is dark, so touch it. (1 of 2)",
        "worked answer shown: BENCH-02<br>tried, no marks yet: BENCH-01<",
    ):
        assert words in section_of(text, "difficulty")
    assert first_cells(text, "slips") == ["touch", "choice-1"]


def test_dangers_come_first_among_the_slips_of_a_question(room):
    """One learner took the dangerous turn, two took another."""
    one_of(room, "BENCH-01", ("touch", "wait"), ("touch", "dark"))
    one_of(room, "BENCH-02", ("touch", "wait"))
    room.mark()
    assert (
        "▲ chose: It is dark, so touch it. (1 of 2)<br>chose: Wait a while. (2 of 2)"
    ) in text_of(room)


def test_who_was_right_since_needs_no_help(room):
    shown = room.question("choice-1").kind.shown(room.numbers("choice-1"))
    wrong = [letter for letter, option in shown.items() if not option.right]
    lines = [room.line(letter, "choice-1", second=n) for n, letter in enumerate(wrong)]
    room.hand_in(*lines)
    room.mark()
    assert "worked answer shown: BENCH-01<" in text_of(room)
    room.hand_in(*lines, room.line(room.right("choice-1", draw=1), "choice-1", draw=1, second=9))
    room.mark()
    assert "worked answer shown: " not in text_of(room)


def test_a_class_without_trouble_is_told_so():
    book = MarkBook("wick", lessons_of({"02": BANK_FILES["02"]}))
    text = "".join(page(book, AT))
    for words in (
        "These lessons hold no danger items.",
        "Nobody answered anything wrong.",
        "Everything in the folder was used.",
        "(2026-01-20 09:30 UTC)",
    ):
        assert words in text


HOSTILE = (
    '<script>alert("x")</script>',
    "\"><svg onload='x'>",
    "&lt;b&gt;",
    "\u202etxt.exe",
    "\ud800",
    "\x00\x1b[31m",
)


@pytest.mark.parametrize("text", HOSTILE, ids=ascii)
def test_strange_text_never_stands_raw_in_the_page_or_the_table(room, text):
    lines = [
        room.line(text),
        room.line("1 mA", question=text),
        room.line("1 mA", class_word=text),
        room.line("1 mA", supply=text),
        room.line("1 mA", learner=text),
    ]
    room.hand_in(*lines)
    wrong = room.line("1 mA", learner=text, second=1)
    room.hand_in(room.line(text, learner=text), wrong, name="b.jsonl")
    room.neighbour()
    room.mark()
    assert Page(room.page()).open == []
    assert text not in room.page()
    assert text not in (room.out / "mark-book.csv").read_text("utf-8") or text.isascii()
    assert text.upper() not in room.page()
    assert not re.search(r"<script|<svg onload", room.page(), re.IGNORECASE)


@pytest.mark.skipif(os.name == "nt", reason="this system forbids such names")
def test_a_strange_file_name_is_spelt_out(room):
    (room.hand_ins / "<b>\u202e\x01.txt").write_text("x", encoding="utf-8")
    room.neighbour()
    room.mark()
    assert "&lt;b&gt;\\u202e\\x01.txt" in room.page()


@given(st.text(st.characters(codec=None), max_size=300))
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_property_text_in_the_page_is_only_text(text):
    shown = for_page(text)
    assert not re.search(r"[<>\"']", shown)
    assert shown.encode("utf-8").decode("utf-8").isprintable()
    book = MarkBook("wick", (), problems=[Problem(text, text, text)])
    assert [tag for tag, _ in Page("".join(page(book, AT))).tags].count("td") == 2
