"""A supply is one line: the whole bank holds on one that no country has, added to the table.

The tests of the bank are run again on it alone, so that nothing in a question knows the supplies
that are offered today.
"""

from functools import cache

import pytest
import test_bank
import test_bank_options
import test_bank_texts
import test_parts
import test_wrong_answers

from helpers.authoring.every_numbers import every_numbers
from helpers.exercises import settings
from helpers.physics import mains

# Invented: beyond ten per cent on both sides, and no even share of any supply that is offered.
INVENTED = mains.Supply(173.0, 55.0)
RANGE = mains.NationalRange(150.0, 195.0, "invented")

MODULES = (test_bank, test_bank_options, test_bank_texts, test_parts, test_wrong_answers)
CHECKS = (
    test_bank.test_right_answer,
    test_bank.test_simple_answer,
    test_bank.test_code_of_the_model_answer_gives_the_right_answer,
    test_bank.test_limit_three_digits_are_enough,
    test_bank.test_the_example_that_shows_how_to_type_is_read_and_is_never_the_right_answer,
    test_bank.test_each_slip_is_what_its_name_says,
    test_bank.test_no_slip_is_accepted_as_right,
    test_bank.test_every_slip_is_recognised_by_its_own_name,
    test_bank.test_limit_slips_with_different_replies_lie_three_per_cent_apart,
    test_bank.test_there_are_three_cases_to_draw_or_one_for_everybody,
    test_bank_options.test_options_can_be_told_apart,
    test_bank_options.test_exactly_one_option_of_a_choice_is_right,
    test_bank_options.test_choose_all_has_right_and_wrong_options_with_replies,
    test_bank_texts.test_everything_said_is_whole_text,
    test_bank_texts.test_nudges_and_replies_never_hold_the_number,
    test_bank_texts.test_working_ends_at_the_right_answer,
    test_parts.test_parts_are_judged_by_what_they_would_do,
    test_parts.test_each_rule_that_parts_are_judged_by_can_be_missed,
    test_wrong_answers.test_every_single_turn_is_named_alone_or_with_its_twin_or_declared,
)
CASES = [
    pytest.param(check, question, id=f"{check.__name__.removeprefix('test_')}: {question.id}")
    for check in CHECKS
    for question in check.pytestmark[0].args[1]
]


@pytest.fixture(scope="module", autouse=True)
def somewhere_else():
    """Let every question be drawn on the invented supply, and on no other."""
    kept = dict(mains.SUPPLIES)
    with pytest.MonkeyPatch.context() as patch:
        mains.SUPPLIES.clear()
        mains.SUPPLIES[INVENTED.name] = INVENTED
        patch.setitem(mains.NATIONAL, INVENTED.name, RANGE)
        there = cache(every_numbers.__wrapped__)
        for module in MODULES:
            if hasattr(module, "every_numbers"):
                patch.setattr(module, "every_numbers", there)
        patch.setattr(test_bank, "cases", cache(test_bank.cases.__wrapped__))
        yield
    mains.SUPPLIES.clear()
    mains.SUPPLIES.update(kept)  # in their own order, which a patch taken back would turn round


@pytest.mark.parametrize(("check", "question"), CASES)
def test_property_the_bank_holds_on_a_supply_that_was_added(check, question):
    check(question)


def test_property_it_is_offered_by_its_name():
    assert list(settings.SUPPLIES) == [INVENTED.name] == ["173 V 55 Hz"]


def test_limit_its_range_is_its_own():
    ends = (mains.lowest(INVENTED).volts_rms, mains.highest(INVENTED).volts_rms)
    assert ends == RANGE[:2]
