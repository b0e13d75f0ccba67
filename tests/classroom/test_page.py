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

from helpers.classroom import page as pages
from helpers.classroom.mark_book import MarkBook, lessons_of
from helpers.classroom.page import page
from helpers.classroom.problems import Problem
from helpers.exercises.hand_in import digest
from helpers.exercises.wording import CAUTION

SECTIONS = ("dangerous", "danger", "needs", "difficulty", "slips", "exercises", "lessons")
SECTIONS += ("problems", "handed-in")
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
    """A room with something for every section of the page; each has four wrong currents."""
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
    assert 0 < text.index(CAUTION) < places[0]


def test_the_page_has_landmarks_with_names_of_their_own(full_room):
    full_room.mark()
    text = full_room.page()
    parts = Page(text)
    assert [len(parts.all(tag)) for tag in ("header", "nav", "main", "h1")] == [1, 1, 1, 1]
    assert tuple(section["aria-labelledby"] for section in parts.all("section")) == SECTIONS
    links = re.findall(r'<li><a href="#([\w-]+)">([^<]+)</a>', text)
    assert links == re.findall(r'<h2 id="([\w-]+)">([^<]+)</h2>', text)
    named = [tag["aria-label"] for _, tag in parts.tags if "aria-label" in tag]
    assert len(set(named)) == len(named)


def test_tables_and_pictures_speak_to_who_does_not_see_them(full_room):
    full_room.mark()
    parts = Page(full_room.page())
    assert parts.all("th")
    assert all(head["scope"] in ("row", "col", "colgroup") for head in parts.all("th"))
    assert all("aria-label" in box for box in parts.all("div") if box.get("class") == "scroll")
    assert all(box["tabindex"] == "0" for box in parts.all("div") if box.get("class") == "scroll")


def test_every_state_has_a_sign_of_its_own():
    signs = [sign for _, sign in pages.LOOKS.values()]
    assert len(set(signs)) == len(signs)


def test_on_the_first_page_a_word_stands_beside_each_sign():
    looks = [*pages.DANGER_LOOKS.values(), pages.MANY_CASES, pages.NOT_BEGUN]
    looks.remove(("", "", ""))  # passed: no ink
    assert all(sign and word for _, sign, word in looks)
    assert len({sign for _, sign, _ in looks}) == len({word for *_, word in looks}) == len(looks)


def test_the_grid_holds_a_cell_for_each_learner_and_question(full_room):
    book = full_room.mark()
    grids = section_of(full_room.page(), "exercises").partition("</ul>")[2]
    cells = re.findall(r'<td class="s-(\w+)">', grids)
    assert len(cells) == len(book.rows) * len(book.questions)
    full = [cell for cell in cells if cell == "full"]
    assert len(full) == 6  # touch, ready and parts-1 of two learners


def test_each_section_says_what_it_found(full_room):
    full_room.mark()
    text = text_of(full_room)
    for words in (
        "0 of 2 learners</strong> have passed every lesson",
        "<b>▲ touch</b> answer touch",
        "Danger items not answered: steps<",
        "Short of passing, besides danger items: lesson 01 by 1.6 marks<",
        "worked answer shown: BENCH-01, BENCH-02<",
        "tried, no marks yet: BENCH-01, BENCH-02<",
        'short">0 of 2</td>',
        "<strong>slip not known</strong> 2 of 2 learners, 8 answers: current-1 2/2, current-2 2/2",
        "it is empty",
    ):
        assert words in text


def text_of(room):
    """Return the page without the spans that only style, and without line ends."""
    text = re.sub(r"\s+", " ", re.sub(r"</?span[^>]*>", "", room.page()))
    return re.sub(r" ?(</?(?:li|ul|td|th|tr)[^>]*>) ?", r"\1", text)


def section_of(text, name):
    return text.partition(f'id="{name}"')[2].partition("</section>")[0]


def first_cells(text, section):
    """Return the row heads of a section, in order."""
    heads = re.findall(r'<th scope="row">(?:▲ )?([^<]+)<', section_of(text, section))
    return [head.strip() for head in heads]


def row_of(text, section, learner):
    """Return what stands in a row of a section, behind its head."""
    row = section_of(text, section).partition(f'<th scope="row">{learner}<')[2]
    return row.partition("</tr>")[0]


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
    order = ["BENCH-04", "BENCH-01", "BENCH-02", "BENCH-03"]
    assert first_cells(text, "danger") == first_cells(text, "needs") == order
    assert "1 of 4 learners</strong> have passed every lesson" in text
    cells = {one: row_of(text, "danger", one) for one in order}
    assert cells["BENCH-01"].count("<td></td>") == 3
    assert cells["BENCH-02"].endswith('<td colspan="3" class="s-blank">– nothing handed in</td>')
    assert cells["BENCH-03"].count("<td></td>") == 3
    assert '<td class="s-danger">▲ wrong</td><td class="s-blank">□ open</td>' in cells["BENCH-04"]
    dangerous = row_of(text, "dangerous", "BENCH-04")
    assert '▲ <b class="id">touch</b> chose: It is dark, so touch it.</li></ul></td>' in dangerous
    needs = {one: row_of(text, "needs", one) for one in order}
    assert "✓ passed 01<" in needs["BENCH-01"]
    assert needs["BENCH-01"].endswith("<ul><li>Lessons not begun: 02</li></ul></td>")
    assert "<ul><li>Nothing handed in: ask</li>" in needs["BENCH-02"]
    assert "Short of passing, besides danger items: lesson 01 by 1.6 marks<" in needs["BENCH-03"]
    said = "▲ Danger, talk it through: touch</li>"
    assert f'<ul><li class="first">{said}' in needs["BENCH-04"]
    assert "<li>Danger items not answered: ready, steps</li>" in needs["BENCH-04"]


def burnt(room, name, learner="BENCH-01", draw=0):
    """Return the answer whose slip would burn something, of a question that is no danger item."""
    return f"{room.question(name).kind.slips[2].wrong(room.numbers(name, learner, draw)):.4g} A"


def test_a_dangerous_answer_to_any_question_is_named_first_until_it_is_right(room):
    wrong, other = burnt(room, "current-3"), burnt(room, "current-4")
    lines = [room.line(wrong, "current-3"), room.line(other, "current-4", second=1)]
    room.hand_in(*lines, room.line(room.right("current-4"), "current-4", second=2))
    one_of(room, "BENCH-02", ("touch", "wait"))
    marked = room.run()
    text, said = text_of(room), "Dangerous answers: 1 learner; not right since: 1 (BENCH-01)."
    assert said in marked.summary() and f"<strong>{said}</strong>" in text
    assert first_cells(text, "dangerous") == ["BENCH-01"]
    left, mended = row_of(text, "dangerous", "BENCH-01").split('<td class="words">')[1:]
    assert '▲ <b class="id">current-3</b> ' in left and "current-4" not in left
    assert left.count(": halved it") == mended.count(": halved it") == 1
    assert '<li><b class="id">current-4</b> ' in mended
    talk = row_of(text, "needs", "BENCH-01")
    assert '<ul><li class="first">▲ Danger, talk it through: current-3</li>' in talk
    talk = row_of(text, "needs", "BENCH-02")
    assert "▲ Danger, talk it through: touch (chose: Wait a while.)</li>" in talk


def test_a_danger_is_not_mended_by_a_worked_answer_or_before_it_was_given(room):
    """Shown the worked answer, right before, and right with fresh numbers since."""
    tries = [room.line(f"{n} A", "current-3", second=n) for n in (7, 8)]
    tries.append(room.line(burnt(room, "current-3"), "current-3", second=9))
    again = burnt(room, "current-5", draw=1)
    right = room.line(room.right("current-5"), "current-5", second=10)
    lines = [*tries, right, room.line(again, "current-5", draw=1, second=11)]
    room.hand_in(*lines)
    (row, _) = room.mark().rows
    assert row.mended == []
    room.hand_in(*lines, room.line(room.right("current-3", draw=1), "current-3", draw=1, second=12))
    (row, _) = room.mark().rows
    assert row.mended == ["current-3"]


def test_a_class_without_dangerous_answers_is_told_so(room):
    room.neighbour()
    assert "Dangerous answers: 0 learners; not right since: nobody." in room.run().summary()
    assert first_cells(text_of(room), "dangerous") == []


def test_a_turn_that_comes_back_is_named_to_its_learner(room):
    one_of(room, "BENCH-01", ("choice-1", "wait"), ("choice-2", "wait"), ("choice-3", "ask"))
    room.mark()
    needs = row_of(text_of(room), "needs", "BENCH-01")
    assert (
        "<li>The same slip in more than one question: chose: Wait a while. (2 questions)</li>"
        in needs
    )


def test_who_has_nothing_left_is_told_so(room):
    everything = [(q.id, None) for module in BANK_FILES.values() for q in module.QUESTIONS]
    one_of(room, "BENCH-01", *everything)
    room.mark()
    assert "<ul><li>Nothing left to talk about</li></ul>" in row_of(
        text_of(room), "needs", "BENCH-01"
    )


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
    text = text_of(room)
    assert ("<li>Right only after more than 2 cases, ask why: touch<" in text) == named
    assert ('<td class="s-retried">? ask why</td>' in text) == named
    cell = room.table()["BENCH-01"]["danger items after more than 2 cases"]
    assert cell == ("touch" if named else "")


def test_what_was_handed_in_is_named_with_what_its_receipt_shows(room):
    """Second way: the digest of the file as it lies there."""
    path = room.hand_in(room.line("1 mA"), room.line("2 mA", second=1), name="<a>.jsonl")
    room.mark()
    section = section_of(room.page(), "handed-in")
    section = re.sub(r"\n", "", section)
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
        '<td class="short">1 of 3</td>',
        "chose: Wait a while. (2 of 3)",
        '<td class="short">1 of 2</td>',
        "▲ chose: It is dark, so touch it. (1 of 2)",
        "H 1, worked answer shown: BENCH-02 ○ 1, tried, no marks yet: BENCH-01<",
    ):
        assert words in section_of(text, "difficulty")
    assert slips_told(text) == [
        "chose: It is dark, so touch it.</strong> 2 of 3 learners, 2 answers: ▲ touch 1/2, "
        "choice-1 1/3",
        "chose: Wait a while.</strong> 2 of 3 learners, 2 answers: choice-1 2/3",
        "chose: Ask a neighbour.</strong> 1 of 3 learners, 1 answer: choice-1 1/3",
    ]


def slips_told(text):
    return re.findall(r"<li><strong>(.*?) ?</li>", section_of(text, "slips"))


def test_dangers_come_first_among_the_slips(room):
    """One learner took the dangerous turn, two took another."""
    one_of(room, "BENCH-01", ("touch", "wait"), ("touch", "dark"))
    one_of(room, "BENCH-02", ("touch", "wait"))
    room.mark()
    text = text_of(room)
    assert slips_told(text) == [
        "chose: It is dark, so touch it.</strong> 1 of 2 learners, 1 answer: ▲ touch 1/2",
        "chose: Wait a while.</strong> 2 of 2 learners, 2 answers: touch 2/2",
    ]
    section = section_of(text, "slips")
    assert section.index("▲ Dangerous if built") < section.index("Other slips")


def test_who_was_right_since_needs_no_help(room):
    shown = room.question("choice-1").kind.shown(room.numbers("choice-1"))
    wrong = [letter for letter, option in shown.items() if not option.right]
    lines = [room.line(letter, "choice-1", second=n) for n, letter in enumerate(wrong)]
    room.hand_in(*lines)
    room.mark()
    assert "worked answer shown: BENCH-01<" in text_of(room)
    assert "<li>Worked answer shown, not right since: choice-1</li>" in text_of(room)
    room.hand_in(*lines, room.line(room.right("choice-1", draw=1), "choice-1", draw=1, second=9))
    room.mark()
    assert "worked answer shown: " not in text_of(room)
    assert "<li>Right after help, well done: choice-1</li>" in text_of(room)


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
    book = MarkBook("wick", (), problems=[Problem(text, text, text)])
    shown = "".join(page(book, AT))
    assert [tag for tag, _ in Page(shown).tags].count("td") == 2
    told = re.search(r"<tbody>\s*<tr>(.*?)</tr>", section_of(shown, "problems"), re.DOTALL)[1]
    told = re.sub(r"</?t[hd][^>]*>|\n", "", told)
    assert not re.search(r"[<>\"']", told)
    told = told.replace("\u00a0", " ")  # the blank before a unit, which does not break
    assert told.encode("utf-8").decode("utf-8").isprintable()


def test_on_paper_a_need_without_questions_ends_with_its_full_stop(room):
    """Print sets that stop behind the last of it, so no blank may stand there."""
    room.neighbour()
    room.mark()
    assert "<li><span>Nothing handed in: ask</span></li>" in room.page()
