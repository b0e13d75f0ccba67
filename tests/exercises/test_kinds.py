"""How each kind reads and marks an answer; nothing that is typed is ever evaluated."""

import ast
import re
from dataclasses import replace
from itertools import chain, combinations, permutations
from pathlib import Path
from types import SimpleNamespace

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from learner import BENCH, session_of
from questions import ONE_OF_EACH_KIND

from helpers.exercises import kinds
from helpers.exercises.bank import bank
from helpers.exercises.kinds import Answer, Choice, ChooseAll, NotRead, Option, Order
from helpers.exercises.kinds.kind import Kind
from helpers.exercises.roads import Road
from helpers.exercises.roads.steps.general import given as from_numbers
from helpers.exercises.wording import code_form, question_lines
from helpers.physics.mains import SUPPLIES
from helpers.quantities import write_as

OPTIONS = (
    Option("one", "the first", right=True, reply="Look at the first."),
    Option("two", "the second", reply="Look at the second."),
    Option("three", "the third", right=True, reply="Look at the third.", danger="it burns."),
    Option("four", "the fourth", reply="Look at the fourth.", danger="it bites."),
)
N = SimpleNamespace(shown=(2, 0, 3, 1))  # a: three, b: one, c: four, d: two
CHOICE, ALL, ORDER = Choice(OPTIONS), ChooseAll(OPTIONS), Order(OPTIONS)
KEY = {"a": "three", "b": "one", "c": "four", "d": "two"}


def numbers_of(question):
    supply = SUPPLIES[BENCH.supply]
    return question.numbers_for(BENCH.learner, BENCH.class_word, supply, 0)


@pytest.mark.parametrize(
    "typed, asks",
    [
        ("0.48", "how many mA are 0.48\u00a0A?"),
        ("0.48 mA", "how many mA are 0.48\u00a0A?"),
        ("0.48 µA", "Which prefix did you mean"),
        ("0.48 A", "Right."),
    ],
)
def test_a_number_in_another_unit_than_the_box_is_asked_about_by_that_unit(typed, asks):
    """Second way: 240 V over 500 ohm are 0.48 A."""
    kind, n = bank()["safe-1"].kind, SimpleNamespace(ohms=500.0, supply=SUPPLIES["240 V 50 Hz"])
    assert asks in kind.verdict_on(kind.read(typed, n), n).reply


class TestLetters:
    @pytest.mark.parametrize("typed", ["b", "B", " b ", "(b)", "b)", "b,", "\u00a0b\n"])
    def test_one_letter_is_read(self, typed):
        assert CHOICE.read(typed, N) == Answer("one", "b")

    @pytest.mark.parametrize(
        "typed", ["b, c", "bc", "c b", "C;B", "b and c", "b  AND  c", "(b) (c)", "b>c", "b,c,"]
    )
    def test_several_letters_are_read_in_any_order(self, typed):
        assert ALL.read(typed, N) == Answer(("four", "one"), "b, c")

    @pytest.mark.parametrize(
        "typed", ["c, a, d, b", "cadb", "c a d b", "C>A>D>B", "c; a; d; b", "c, a, d and b"]
    )
    def test_an_order_is_read_as_it_stands(self, typed):
        assert ORDER.read(typed, N) == Answer(("four", "three", "two", "one"), "c, a, d, b")

    @pytest.mark.parametrize("typed", ["none", "None", " NONE "])
    def test_none_is_an_answer_where_all_may_be_chosen(self, typed):
        assert ALL.read(typed, N) == Answer((), "none")
        for kind in (CHOICE, ORDER):
            with pytest.raises(NotRead):
                kind.read(typed, N)

    @pytest.mark.parametrize(
        ("kind", "typed", "words"),
        [
            (CHOICE, "e", "“e” was read, and the options here are a, b, c, d. Choose one"),
            (CHOICE, "120 Ω", "“120 Ω” was read, and the options here are a, b, c, d. Choose one"),
            (CHOICE, "a, b", "2 letters were read"),
            (CHOICE, "1", "options here are a, b, c, d"),
            (CHOICE, "the first", "options here are"),
            (ALL, "a, a", "names an option twice"),
            (ALL, "a, e", "options here are"),
            (ALL, "none, a", "options here are"),
            (ALL, "and", "No letter was read"),
            (ORDER, "a, b, c", "3 of 4 letters read"),
            (ORDER, "a, b, c, c", "names an option twice"),
            (ORDER, "a, b, c, d, e", "options here are"),
            (ORDER, "a " * 500, "options here are"),
        ],
        ids=lambda value: getattr(value, "name", str(value)[:30]),
    )
    def test_what_cannot_be_read_is_said_with_what_to_do(self, kind, typed, words):
        with pytest.raises(NotRead) as refused:
            kind.read(typed, N)
        said = str(refused.value)
        assert words in said and said.endswith(kind.how)
        assert len(said) < 200

    def test_the_letters_stand_for_the_options_as_they_are_shown(self):
        shown = CHOICE.shown(N)
        assert {letter: option.key for letter, option in shown.items()} == KEY


class TestOptionsAsText:
    def test_each_piece_is_what_its_word_says_and_long_lines_go_on(self):
        assert kinds.options("""
            right one: The first: it is
                right.
              reply: So it
              is.
            wrong two: {ohms} − 2
              danger: it burns.
        """) == (
            Option("one", "The first: it is right.", True, reply="So it is."),
            Option("two", "{ohms} − 2", danger="it burns."),
        )

    def test_a_kind_takes_the_text_itself(self):
        text = "right one: One\nwrong two: Two"
        assert Choice(text) == Choice(kinds.options(text))

    @pytest.mark.parametrize(
        "text", ["one: One", "reply: Why?\nwrong one: One", "wrong one", "wrong one:"]
    )
    def test_what_is_no_option_is_refused(self, text):
        with pytest.raises(ValueError, match="an option begins as in"):
            kinds.options(text)


class TestChoice:
    def test_each_option_brings_its_own_verdict(self):
        single = Choice((OPTIONS[0], OPTIONS[1], OPTIONS[3]))
        assert single.mark("one", N).share == 1
        assert (v := single.mark("two", N)).share == 0 and v.slip == "two"
        assert v.reply == "Look at the second." and v.danger == ""
        assert single.mark("four", N).danger == "it bites."


class TestChooseAll:
    def test_second_way_each_right_tick_earns_and_each_wrong_one_takes_back(self):
        """By hand: right ticks less wrong ticks, over the right options; 0 where it would hurt."""
        keys = [option.key for option in OPTIONS]
        subsets = chain.from_iterable(combinations(keys, size) for size in range(5))
        for subset in subsets:
            right = len({"one", "three"} & set(subset))
            wrong = len({"two", "four"} & set(subset))
            verdict = ALL.mark(tuple(sorted(subset)), N)
            hurts = "four" in subset or "three" not in subset
            assert verdict.share == (0 if hurts else max(0, right - wrong) / 2)
            assert verdict.right == (set(subset) == {"one", "three"})

    def test_ticking_all_is_no_way_to_earn(self):
        assert ALL.mark(("four", "one", "three", "two"), N).share == 0
        assert ALL.mark((), N).share == 0

    def test_the_danger_is_spoken_of_first(self):
        verdict = ALL.mark(("four", "one", "two"), N)
        assert (verdict.slip, verdict.danger) == ("ticked: four", "it bites. It burns.")
        left_out = ALL.mark(("one", "two"), N)
        assert (left_out.slip, left_out.danger) == ("left out: three", "it burns.")

    def test_every_mistake_is_answered_dangers_first(self):
        by_key = {option.key: option.reply for option in OPTIONS}
        wanted = [by_key[key] for key in ("four", "three", "two")]
        said = ALL.mark(("four", "one", "two"), N).reply
        assert sorted(wanted, key=said.index) == sorted(wanted[:2], key=said.index) + wanted[2:]

    def test_where_none_fits_none_is_right(self):
        kind = ChooseAll(tuple(o for o in OPTIONS if not o.right))
        numbers = SimpleNamespace(shown=(0, 1))
        assert kind.mark((), numbers).right
        assert kind.model(numbers) == "none"
        assert kind.mark(("two",), numbers).share == 0


class TestOrder:
    def test_second_way_the_share_is_the_neighbours_in_order_over_the_steps(self):
        """By hand, for every order: of n steps, each step that follows its forerunner, over n."""
        right = [option.key for option in OPTIONS]
        for order in permutations(right):
            verdict = ORDER.mark(order, N)
            kept = sum(order.index(a) < order.index(b) for a, b in zip(right, right[1:]))  # noqa: B905
            assert verdict.right == (list(order) == right)
            earned = 1 if list(order) == right else kept / 4
            assert verdict.share == (0 if verdict.danger else earned)

    def test_the_reply_is_that_of_a_step_that_stands_too_early(self):
        for order in permutations([option.key for option in OPTIONS]):
            verdict = ORDER.mark(order, N)
            if not verdict.right:
                early = verdict.slip.removeprefix("too early: ")
                listed = [option.key for option in OPTIONS]
                forerunners = listed[: listed.index(early)]
                assert any(order.index(early) < order.index(step) for step in forerunners)

    def test_a_dangerous_step_that_stands_too_early_is_named_before_another(self):
        """Three, which burns, stands before one; but two is the neighbour that stands too early."""
        verdict = ORDER.mark(("two", "three", "one", "four"), N)
        assert (verdict.slip, verdict.danger) == ("too early: three", "it burns.")

    def test_the_example_is_never_the_right_order(self):
        """All 24 ways to deal four steps, but the right one, which is never dealt."""
        keys = ("first", "second", "third", "fourth")
        kind = Order(tuple(Option(key, key) for key in keys))
        for shown in permutations(range(4)):
            numbers = SimpleNamespace(shown=shown)
            if list(shown) != sorted(shown):
                read = kind.read(kind.example(numbers), numbers)
                assert kind.mark(read.value, numbers).share < 1


class TestParts:
    question = bank()["ohm-14"]
    kind = question.kind
    numbers = numbers_of(question)

    @pytest.mark.parametrize(
        "typed",
        ["1 kΩ; 0.25 W", "1k;0.25", "1000 ohm ; 250 mW", "1k0; 0,25 W", " 1 kΩ;0.25W "],
    )
    def test_values_are_read_as_people_write_them(self, typed):
        assert self.kind.read(typed, self.numbers).value == (1000.0, 0.25)

    @pytest.mark.parametrize(
        ("typed", "words"),
        [
            ("1 kΩ", "“1 kΩ” was read as 1 of 2 parts"),
            ("1 kΩ, 0.25 W", "semicolon"),
            ("1 kΩ; 0.25 W; 5 V", "was read as 3 of 2 parts"),
            ("0.25 W; 1 kΩ", "dropper: "),
            ("1.5 kΩ; 0.25 W", "dropper: 1.5\u00a0kΩ is not in the bin. The bin holds 220"),
            ("1 kΩ; 0.3 W", "power rating: 0.3\u00a0W is not in the bin"),
            ("; ", "dropper: "),
            ("1 kΩ; 1,000 W", "power rating: "),
        ],
        ids=lambda text: text[:30],
    )
    def test_what_cannot_be_read_names_the_part(self, typed, words):
        with pytest.raises(NotRead) as refused:
            self.kind.read(typed, self.numbers)
        assert words in str(refused.value)

    def test_part_marks_add_up_and_are_never_all_while_something_is_missing(self):
        for resistance in self.kind.fields[0].bin:
            for rating in self.kind.fields[1].bin:
                criteria = self.kind.judge((resistance, rating), self.numbers)
                assert sum(c.share for c in criteria) == pytest.approx(1)
                verdict = self.kind.mark((resistance, rating), self.numbers)
                passed = sum(c.share for c in criteria if c.passed)
                hurts = any(c.danger for c in criteria if not c.passed)
                assert verdict.share == pytest.approx(0 if hurts else passed)
                assert verdict.right == all(c.passed for c in criteria)

    def test_a_fault_that_costs_no_marks_still_keeps_an_answer_from_being_right(self):
        advice = kinds.Criterion("tidy", False, 0.0, "The leads are long.")
        sound = kinds.Criterion("sound", True, 1.0, "It holds.")
        kind = kinds.Parts(self.kind.fields, lambda picked, n: [sound, advice], self.kind.best)
        verdict = kind.mark((1000.0, 0.25), self.numbers)
        assert not verdict.right and verdict.share < 1 and verdict.slip == "tidy"

    def test_a_danger_is_spoken_of_before_a_smaller_fault(self):
        verdict = self.kind.mark((10_000.0, 0.125), self.numbers)
        assert verdict.slip == "bright enough" and not verdict.danger
        assert self.kind.mark((220.0, 0.125), self.numbers).danger


HOSTILE = (
    "__import__('os').system('touch /tmp/x')",
    "9**9**9",
    "1e999999999",
    "0x1F",
    "lambda: 0",
    "{0.__class__}",
    "%s%s%s%n",
    "\x00",
    "a" * 100_000,
    "9" * 100_000,
    "(" * 10_000,
    "; " * 5_000,
    "\ud800",
    "١٢٣",
    "𝟙𝟚",
    "NaN",
    "inf",
    "-0",
    "0",
    "1/0",
)


def read_or_refused(question, typed):
    numbers = numbers_of(question)
    try:
        answer = question.kind.read(typed, numbers)
    except NotRead as refused:
        assert 10 < len(str(refused)) < 500
        return
    assert answer.understood
    hash(answer.value)
    verdict = question.kind.mark(answer.value, numbers)
    assert 0 <= verdict.share <= 1


@pytest.mark.parametrize("question", bank().values(), ids=lambda q: f"property: {q.id}")
@settings(deadline=None, max_examples=60)
@given(
    st.text(max_size=80)
    | st.from_regex(r"[ a-hA-H,;and]{1,14}", fullmatch=True)
    | st.from_regex(r"-?[0-9]{0,4}[.,]?[0-9]{0,4} ?[munpkMG]?(A|V|W|Ω|ohm|R)?", fullmatch=True)
)
@example("0")
@example("none")
def test_any_text_is_an_answer_or_is_refused_in_words(question, typed):
    read_or_refused(question, typed)


@pytest.mark.parametrize("typed", HOSTILE, ids=lambda text: ascii(text[:20]))
def test_nothing_that_is_typed_is_evaluated(typed, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with monkeypatch.context() as watched:
        for name in ("eval", "exec", "compile"):
            watched.setattr(f"builtins.{name}", _never(name))
        for question in bank().values():
            read_or_refused(question, typed)
    assert list(tmp_path.iterdir()) == []


def _never(name):
    def refuse(*args, **more):
        raise AssertionError(f"{name} was called with {args!r:.80}")

    return refuse


@settings(deadline=None, max_examples=60)
@given(st.floats(min_value=1, max_value=1e8))
def test_what_was_understood_is_what_is_marked(value):
    """The text under “Read as” names the value that is marked, to six digits."""
    answer = bank()["ohm-3"].kind.read(f"{value:.12e} ohm", numbers_of(bank()["ohm-3"]))
    number, prefix = re.fullmatch(r"([0-9.]+)\xa0([kM]?)Ω", answer.understood).groups()
    shown = float(number) * {"": 1, "k": 1e3, "M": 1e6}[prefix]
    assert shown == pytest.approx(answer.value, rel=5.1e-6) and answer.value == pytest.approx(value)


def test_the_code_form_of_each_kind_is_read_by_that_kind_or_leaves_the_letter_open():
    for question in bank().values():
        numbers = numbers_of(question)
        typed = re.fullmatch(r'answer\("[a-z0-9-]+", "(.*)"\)', code_form(question, numbers))[1]
        if isinstance(question.kind, (kinds.Choice, kinds.ChooseAll)):
            assert typed == "…"
        else:
            assert typed == "…" or question.kind.read(typed, numbers).understood


def test_every_kind_is_met_in_the_bank_and_among_the_questions_of_each_kind():
    met = {type(question.kind) for question in bank().values()}
    assert {kind.__name__ for kind in met} == CLASSES - {"Kind"}
    assert set(ONE_OF_EACH_KIND) - {"picture"} == {kind.name for kind in met}, "questions.py"
    chosen = {name: bank()[question_id] for name, question_id in ONE_OF_EACH_KIND.items()}
    assert any(question.picture for question in chosen.values())
    assert all(question.kind.name == name for name, question in chosen.items() if name != "picture")


class TestMeasures:
    """An rms voltage of 242 V, which is the sine's 342.2 V at the peak (limit: √2 · 242)."""

    numbers = SimpleNamespace(volts=242.0)
    rms = kinds.Amount("voltage", "V", Road(from_numbers("volts")), measure="rms")
    peak = kinds.Amount("voltage", "V", Road(from_numbers("volts")), measure="peak")
    plain = kinds.Amount("voltage", "V", Road(from_numbers("volts")))
    each = kinds.Amount("resistance", "Ω", Road(from_numbers("volts")), measure="each")

    def verdict(self, kind, typed):
        return kind.verdict_on(kind.read(typed, self.numbers), self.numbers)

    @pytest.mark.parametrize(
        "typed",
        ["242", "242 V", "242 V rms", "about 242 Vrms", "V_rms = 242 V", "242 V ± 5 %", "242 V AC"],
    )
    def test_the_right_number_with_the_right_word_or_none_is_simply_right(self, typed):
        assert self.verdict(self.rms, typed) == kinds.Verdict(1.0, "Right.")

    @pytest.mark.parametrize("typed", ["342 V peak", "342.2 Vp", "peak = 342 V", "340 V peak"])
    def test_the_peak_of_the_right_wave_earns_half_and_is_named(self, typed):
        verdict = self.verdict(self.rms, typed)
        assert verdict.share == 0.5 and verdict.slip == "gave the peak, not the rms value"
        assert verdict.reply.startswith("You gave the peak; the question asks for the rms value.")

    def test_the_rms_value_of_the_right_peak_earns_half(self):
        verdict = self.verdict(self.peak, "171 V rms")
        assert verdict.share == 0.5 and "the question asks for the peak" in verdict.reply

    def test_without_a_known_crest_a_peak_earns_nothing_by_its_size(self):
        cut = replace(self.rms, crest=None)
        verdict = self.verdict(cut, "342 V peak")
        assert verdict.share == 0.0 and verdict.reply.startswith("You gave the peak;")

    @pytest.mark.parametrize("word", ["peak", "mean"])
    def test_a_wrong_word_never_makes_a_right_number_wrong_in_silence(self, word):
        verdict = self.verdict(self.rms, f"242 V {word}")
        assert verdict.share == 0.5
        assert f"You gave the {word}; the question asks for the rms value." in verdict.reply
        assert "The number itself fits the rms value." in verdict.reply

    def test_a_wrong_number_with_a_wrong_word_is_explained_as_before(self):
        plain = self.verdict(self.rms, "242000 V")
        named = self.verdict(self.rms, "242000 V peak")
        assert named.reply.endswith(plain.reply) and named.reply != plain.reply
        assert (named.share, named.slip) == (plain.share, plain.slip)

    def test_a_word_is_no_fault_where_the_question_asks_by_none_or_of_another_kind(self):
        assert self.verdict(self.plain, "242 V peak").right
        assert self.verdict(self.rms, "242 V each").right
        assert self.verdict(self.each, "242 Ω each").right
        assert self.verdict(self.each, "242 Ω in total").share == 0.5

    def test_a_danger_of_the_number_typed_is_kept(self):
        danger = replace(self.rms, danger=lambda volts, n: "it burns." if volts > 300 else "")
        verdict = self.verdict(danger, "342 V peak")
        assert verdict.danger == "it burns." and verdict.share == 0.0

    def test_the_same_number_by_another_name_is_another_answer(self):
        wrong, right = (self.rms.read(f"242 V {word}", self.numbers) for word in ("peak", "rms"))
        assert wrong.value == right.value and wrong.given != right.given
        assert right.given == self.rms.read("242", self.numbers).given

    def test_the_word_is_shown_in_what_was_read(self):
        answer = self.rms.read("about 342 V peak", self.numbers)
        assert answer.understood == "about 342\u00a0V peak"


class TestExamples:
    @pytest.mark.parametrize("right", [4.7, 4.6, 33.0, 32.6, 4.74, 0.0])
    @pytest.mark.parametrize("within", [0.03, 0.001])
    def test_the_example_of_a_message_is_in_the_unit_asked_and_never_right(self, right, within):
        numbers = SimpleNamespace(volts=right / 1000)
        kind = kinds.Amount("voltage", "mV", Road(from_numbers("volts")), within=within)
        for typed in ("", "five", "mV", "5 bananas 5", "5 V 5", "=1+1", "9**9"):
            with pytest.raises(NotRead) as refused:
                kind.read(typed, numbers)
            shown = re.search(r"such as ([0-9.]+.mV)", str(refused.value))[1]
            assert not kind.verdict_on(kind.read(shown, numbers), numbers).right

    def test_no_example_in_the_bank_is_right(self):
        for question in bank().values():
            if isinstance(question.kind, kinds.Amount):
                numbers = numbers_of(question)
                with pytest.raises(NotRead) as refused:
                    question.kind.read("five", numbers)
                shown = re.search(r"such as (.+)\.$", str(refused.value))[1]
                answer = question.kind.read(shown, numbers)
                assert not question.kind.verdict_on(answer, numbers).right, question.id

    def test_units_with_a_prefix_are_asked_where_the_number_is_from_a_hundredth_to_a_thousand(self):
        """What the reader relies on where three decimals could be thousands."""
        for question in bank().values():
            kind = question.kind
            if isinstance(kind, kinds.Amount) and kind.unit[:1] in "mkMµn":
                for name in SUPPLIES:
                    supply = SUPPLIES[name]
                    n = question.numbers_for(BENCH.learner, BENCH.class_word, supply, 0)
                    number = abs(float(write_as(kind.right(n), kind.unit, 6).split()[0]))
                    assert 0.01 <= number < 1000, (question.id, name)


EXERCISES = Path(kinds.__file__).parents[1]
HELPERS = EXERCISES.parent
KNOW_KINDS = (EXERCISES / "kinds", EXERCISES / "bank", HELPERS / "widgets" / "controls.py")
OTHERS = [p for p in sorted(HELPERS.rglob("*.py")) if not {p, p.parent} & set(KNOW_KINDS)]
CLASSES = {name for name, each in vars(kinds).items()
           if isinstance(each, type) and issubclass(each, Kind)} | {"Kind"}  # fmt: skip


def asks_for_a_kind(source):
    """Return the lines that name a kind or ask which one it is; a name in an f-string is text."""
    tree, found = ast.parse(source), []
    text = {id(n) for joined in ast.walk(tree) if isinstance(joined, ast.JoinedStr)
            for n in ast.walk(joined)}  # fmt: skip
    for node in ast.walk(tree):
        match node:
            case ast.ImportFrom(module=str(module)) if ".kinds" in module:
                if CLASSES & {alias.name for alias in node.names}:
                    found.append(node.lineno)
            case ast.Attribute(value=ast.Name(id="kinds"), attr=name) if name in CLASSES:
                found.append(node.lineno)
            case ast.Attribute(value=owner, attr="name") if _is_kind(owner):
                found += [node.lineno] * (id(node) not in text)
            case ast.Call(func=ast.Name(id=asked), args=[first, *_]) if _is_kind(first):
                if asked in ("isinstance", "type", "hasattr", "getattr", "vars"):
                    found.append(node.lineno)
    return found


def _is_kind(node):
    return getattr(node, "attr", getattr(node, "id", "")) == "kind"


@pytest.mark.parametrize("path", OTHERS, ids=lambda path: path.relative_to(HELPERS).as_posix())
def test_nobody_else_asks_which_kind_a_question_is(path):
    assert asks_for_a_kind(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize(
    "source",
    [
        "from helpers.exercises.kinds import Amount",
        "from helpers.exercises.kinds.lettered import Choice",
        "x = kinds.Parts",
        "if question.kind.name == 'parts': pass",
        "TABLE[kind.name](kind)",
        "isinstance(question.kind, x)",
        "hasattr(kind, 'shown')",
        "getattr(self.kind, 'road', None)",
        "type(question.kind)",
    ],
)
def test_asking_which_kind_it_is_is_caught(source):
    assert asks_for_a_kind(source) == [1]


def test_what_every_kind_does_is_not_caught():
    source = "from helpers.exercises.kinds import NotRead\nf'cw-{question.kind.name}'\nkind.hint(n)"
    assert asks_for_a_kind(source) == []


@pytest.mark.parametrize("question", bank().values(), ids=lambda q: f"protocol: {q.id}")
def test_a_kind_answers_to_all_of_the_protocol(question):
    """Every method of `Kind` answers for every question; each guess is read or refused."""
    kind, n = question.kind, numbers_of(question)
    answer = kind.read(kind.example(n), n)
    assert answer.understood in kind.said(answer, n)
    assert kind.verdict_on(answer, n) == kind.mark(answer.value, n) or answer.digits != 15
    assert kind.guesses(n) and all(isinstance(typed, str) for typed in kind.guesses(n))
    assert kind.hint(n) and isinstance(kind.code(n), str)
    assert kind.by_hand(n).how and bool(kind.by_hand(n).ticks) != bool(kind.by_hand(n).places)
    assert isinstance(kind.accepted(n), str)
    lines = [line.text for line in question_lines(question, n) if line.role == "option"]
    assert lines == kind.choices(n)


class TestReadOffAPicture:
    """A curve with ticks of 0.2 min: half of one is 6 s, and five times that is 30 s."""

    MEANT = bank()["meter-11"].kind

    @pytest.mark.parametrize(
        ("minutes", "right"),
        [(7.5, True), (7.8, True), (7.0, True), (8.0, True), (6.9, False), (8.1, False)],
        ids=lambda value: f"limit: {value}",
    )
    def test_five_times_half_a_tick_is_right(self, minutes, right):
        n = SimpleNamespace(tau_seconds=90.0)
        assert self.MEANT.mark(60.0 * minutes, n, 2).right == right

    @pytest.mark.parametrize("minutes", [1.4, 1.5, 1.6])
    def test_one_time_constant_is_known_within_the_same_half_tick(self, minutes):
        found = self.MEANT.mark(60.0 * minutes, SimpleNamespace(tau_seconds=90.0), 2)
        assert (found.slip, found.share) == ("gave one time constant", 0.5)


@pytest.mark.parametrize("question_id", ["meter-11", "better-12"])
def test_where_a_unit_takes_no_prefix_none_is_spoken_of(question_id):
    n = session_of().draw(question_id).numbers
    kind = bank()[question_id].kind
    for factor in (1e-3, 0.02, 13.0, 1e3):
        assert "prefix" not in kind.mark(factor * kind.right(n), n).reply


def test_an_example_of_an_angle_is_one_that_a_dimmer_has():
    n = session_of().draw("better-12").numbers
    assert bank()["better-12"].kind.example(n) in ("45 °", "120 °")
