"""Says when somebody changed a question and forgot its edition."""

from dataclasses import replace

import fingerprints
import pytest

from helpers.exercises.bank import bank

HOW = (
    "see “When to raise an edition” in DEVELOPERS.md, then run: "
    "python tests/exercises/fingerprints.py"
)


@pytest.mark.parametrize("question", bank().values(), ids=lambda question: question.id)
def test_a_question_is_as_its_edition_was_recorded(question):
    recorded = fingerprints.recorded().get(question.id)
    assert recorded, f"{question.id} is not recorded: {HOW}"
    edition, marked, worded = recorded
    now = fingerprints.fingerprint(question)
    same = (question.edition, now[0]) == (edition, marked)
    assert same, f"{question.id}: numbers, options or marking have changed: {HOW}"
    assert now[1] == worded, f"{question.id}: its words have changed; still the same? {HOW}"


def test_a_change_of_numbers_options_or_marks_shows_and_one_of_words_shows_apart():
    choice, sum_ = bank()["safe-2"], bank()["ohm-2"]
    options = choice.kind.options
    swapped = (replace(options[0], right=False), replace(options[1], right=True), *options[2:])
    others = [
        (choice, replace(choice, kind=replace(choice.kind, options=swapped))),
        (sum_, replace(sum_, marks=sum_.marks + 1)),
        (sum_, replace(sum_, kind=replace(sum_.kind, exact=lambda n: 1.2 * sum_.kind.right(n)))),
        (sum_, replace(sum_, kind=replace(sum_.kind, within=0.01))),
    ]
    for before, after in others:
        assert fingerprints.fingerprint(before)[0] != fingerprints.fingerprint(after)[0]
    before, after = (fingerprints.fingerprint(q) for q in (sum_, replace(sum_, ask=lambda n: "?")))
    assert before[0] == after[0] and before[1] != after[1]


def test_the_same_edition_with_another_mark_is_refused():
    before = {"ohm-2": [2, "aa", "bb"]}
    assert fingerprints.forgotten(before, {"ohm-2": [2, "ab", "bb"]}) == ["ohm-2"]
    assert fingerprints.forgotten(before, {"ohm-2": [1, "aa", "bb"]}) == ["ohm-2"]
    assert fingerprints.forgotten(before, {"ohm-2": [3, "ab", "bb"]}) == []
    assert fingerprints.forgotten(before, {"ohm-2": [2, "aa", "cc"]}) == []
