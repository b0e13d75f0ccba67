"""Fractions of the benches of explorers: how soon a picture follows, and what a page weighs."""


def test_the_picture_follows_the_slider_and_the_last_position_stays(browser_found, bench_script):
    """A fraction of tests/bench/slider_latency.py: the median, and what stays after a drag."""
    bench = bench_script("slider_latency")
    text, picture, dragged, size = bench.measure(moves=15)
    assert bench.median(picture) <= bench.median(text) + bench.MEDIAN_MS
    assert dragged[2], "the last position does not stay"
    assert size[0] >= bench.LEAST_PIXELS[0] and size[1] >= bench.LEAST_PIXELS[1]
    slow = [time + 1000 for time in picture]
    assert len(bench.misses(text, slow, (999, 1, False), (90, 36))) == 5


def test_a_page_of_six_explorers_stays_small(bench_script):
    """A fraction of tests/bench/explorer_memory.py."""
    bench = bench_script("explorer_memory")
    shown, moved = bench.measure(moves=50)
    assert shown > 0 and moved < bench.MEGABYTES and moved - shown <= bench.GROWTH
