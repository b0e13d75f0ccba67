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
    assert 0 < text.index("no licence to work on mains") < places[0]
    assert "Local rules and licensed practice come first" in text


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
    text = full_room.page()
    for words in (
        "0 of 2 learners</strong> have passed every lesson",
        "<b>▲ touch</b> answer touch",
        "not answered: steps; short by 1.6 marks",
        "Worked answer shown, not right since</th>",
        "BENCH-01, BENCH-02",
        "<td>2 of 2</td><td>0 of 2</td>",
        "no known turn (2 learners)",
        "it is empty",
    ):
        assert words in text


def test_a_class_without_trouble_is_told_so():
    book = MarkBook("wick", lessons_of({"02": BANK_FILES["02"]}))
    text = "".join(page(book, AT))
    for words in (
        "These lessons hold no danger items.",
        "Nobody answered anything wrong.",
        "Nobody is stuck",
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
    room.hand_in(room.line(text, learner=text), name="b.jsonl")
    room.neighbour()
    room.mark()
    assert Page(room.page()).open == []
    assert text not in room.page()
    assert text not in (room.out / "mark-book.csv").read_text("utf-8") or text.isascii()
    assert not re.search(r"<script|<svg onload", room.page())


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
