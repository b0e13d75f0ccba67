"""A hundredth of the hostile files, and each kind of large file at a hundredth of its size."""

import pytest


@pytest.fixture(scope="module")
def hostile(bench_script):
    return bench_script("hostile_hand_ins")


def test_a_thousand_hostile_files_leave_nothing_that_runs_and_cost_no_neighbour_a_mark(hostile):
    assert hostile.run_small(1000, seed=1) == ([], 0)


def test_the_hostile_files_are_read_at_all(hostile, tmp_path):
    """Some become answers of learners, some are named: the bench does not pass by being empty."""
    (tmp_path / "hand-ins").mkdir()
    for name, content in hostile.small_files(200, seed=2):
        (tmp_path / "hand-ins" / name).write_bytes(content)
    book = hostile.mark(tmp_path).book
    assert book.hand_ins > 20
    assert sum(row.answers for row in book.rows) > 100
    assert len(book.problems) > 20


@pytest.mark.parametrize("harm", ["<script>x</script>", "<a href='http:x'>", "<p onclick=x>"])
def test_what_could_run_would_be_found(hostile, harm):
    page = hostile.Harmless()
    page.feed(f"<p>{harm}")
    assert len(page.found) == 1


def test_a_large_file_is_held_to_its_budget(hostile):
    """The one that was slowest; as the bench asks, in a process of its own."""
    name, content = next(hostile.large_files())
    assert name == "newlines"
    assert len(content) == hostile.LARGEST_FILE
    alone, taken = hostile.in_fresh_process(None), hostile.in_fresh_process(content)
    assert taken["busy"] - alone["busy"] < hostile.SECONDS
    assert taken["megabytes"] - alone["megabytes"] < hostile.MEGABYTES
