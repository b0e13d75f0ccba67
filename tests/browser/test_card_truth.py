"""A fraction of tests/bench/card_truth.py: what can be seen is what the log says, step by step."""

import truth

STEPS, SEED = 30, 3


def test_what_is_seen_is_what_the_log_says_whatever_was_done_before(browser_found, tmp_path):
    with truth.walk(SEED, tmp_path) as walked:
        assert walked.compare("start") == []
        for _ in range(STEPS):
            assert walked.step() == []
        assert walked.differences == [] and len(walked.lost) <= 1
        assert set(walked.taken) == set(truth.WEIGHTS)
        page = walked.pages["first"]
        if not walked.answerable("first"):
            walked.do_run_again("first", None)
        assert walked.compare("run again") == []
        page.evaluate("document.querySelector('.cw-c-start-2 .cw-told p').textContent = 'Right.'")
        assert "start-2: told" in walked.faults("first", walked.session())[0]
