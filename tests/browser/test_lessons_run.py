"""A fraction of the bench that runs every lesson in the browser: the newest on one supply."""

import lab


def test_a_lesson_runs_from_top_to_bottom_on_another_supply(browser_found, bench_script, tmp_path):
    bench = bench_script("lessons_in_browser")
    with lab.lab(tmp_path) as address, lab.chromium() as page:
        faults, _ = bench.run_lesson(page, address, bench.lessons()[-1], "120 V 60 Hz")
    assert faults == []
