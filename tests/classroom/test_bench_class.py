"""A share of tests/bench/class_of_1000.py: the whole bank, parts included, by its own bars."""

LEARNERS = 10
ONCE = 1.0  # seconds that the first page and the first sums of a process take


def test_a_class_keeps_to_its_share_of_the_bar_and_leaves_nothing_to_look_at(
    bench_script, tmp_path
):
    bench = bench_script("class_of_1000")
    bench.build_room(tmp_path, LEARNERS)
    took = bench.mark_once(tmp_path)
    assert took["problems"] == 0 and took["answers"] > LEARNERS * took["questions"]
    assert took["busy"] <= ONCE + LEARNERS * bench.SECONDS / 1000
