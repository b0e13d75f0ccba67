"""Options and steps of every lesson: told apart, rightly counted, and warned of where they hurt."""

from itertools import combinations, permutations

from questions import CHOICES, CHOOSE_ALL, LETTERED, ORDERS, of_each

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises import kinds

# --- options and steps


@of_each(LETTERED)
def test_options_can_be_told_apart(question):
    for numbers in every_numbers(question):
        listed = question.kind.listed(numbers)
        assert 2 < len(listed) <= len(kinds.LETTERS)
        assert len({option.key for option in listed}) == len(listed)
        assert len({option.text for option in listed}) == len(listed)


@of_each(CHOICES)
def test_exactly_one_option_of_a_choice_is_right(question):
    for numbers in every_numbers(question):
        listed = question.kind.listed(numbers)
        assert sum(option.right for option in listed) == 1
        assert all(option.reply for option in listed if not option.right)


def test_who_always_takes_the_longest_option_is_mostly_wrong():
    right = []
    for question in CHOICES:
        cases = [question.kind.listed(numbers) for numbers in every_numbers(question)]
        longest = [max(listed, key=lambda option: len(option.text)) for listed in cases]
        right.append(sum(option.right for option in longest) / len(longest))
    assert 0.05 * len(CHOICES) < sum(right) < 0.35 * len(CHOICES), right


@of_each(CHOOSE_ALL)
def test_choose_all_has_right_and_wrong_options_with_replies(question):
    for numbers in every_numbers(question):
        listed = question.kind.listed(numbers)
        assert {option.right for option in listed} == {True, False}
        assert all(option.reply for option in listed)


@of_each(ORDERS)
def test_each_step_of_an_order_says_what_it_waits_for(question):
    for numbers in every_numbers(question):
        assert all(option.reply for option in question.kind.listed(numbers)[1:])


# --- danger


@of_each([q for q in CHOICES if q.danger])
def test_a_dangerous_choice_warns_and_one_can_be_made(question):
    for numbers in every_numbers(question):
        risky = [option for option in question.kind.listed(numbers) if option.danger]
        assert risky
        for option in risky:
            assert question.kind.mark(option.key, numbers).danger == option.danger


@of_each([q for q in CHOOSE_ALL if q.danger])
def test_whatever_is_left_out_of_a_danger_item_warns_and_so_does_a_dangerous_tick(question):
    for numbers in every_numbers(question):
        listed = question.kind.listed(numbers)
        wanted = {option.key for option in listed if option.right}
        for option in listed:
            verdict = question.kind.mark(tuple(wanted ^ {option.key}), numbers)
            assert bool(verdict.danger) == bool(option.danger), option.key
        assert all(option.danger for option in listed if option.right)


def right_texts(question, numbers):
    listed = question.kind.listed(numbers)
    return {option.text for option in listed if option.right or question in ORDERS}


@of_each([q for q in LETTERED if q.danger])
def test_who_remembers_one_case_of_a_danger_item_has_not_answered_the_next(question):
    for one, other in combinations(every_numbers(question), 2):
        if one.supply == other.supply:
            wanted = right_texts(question, other)
            remembered = right_texts(question, one) & wanted
            assert len(remembered) < len(wanted), (one, other)


@of_each(ORDERS)
def test_a_dangerous_step_that_comes_too_early_warns_wherever_it_stands(question):
    """Even when another pair is wrong as well, and the step before it is in its place."""
    numbers = every_numbers(question)[0]
    keys = [option.key for option in question.kind.listed(numbers)]
    risky = [option.key for option in question.kind.listed(numbers) if option.danger]
    assert risky or not question.danger
    for steps in permutations(keys):
        place = {key: steps.index(key) for key in keys}
        early = [
            key
            for key in risky
            if any(place[before] > place[key] for before in keys[: keys.index(key)])
        ]
        assert bool(question.kind.mark(steps, numbers).danger) == bool(early), steps
