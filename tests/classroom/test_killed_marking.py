"""A tenth of the killing while mark books are written; the whole is in tests/bench."""

import pytest


@pytest.fixture(scope="module")
def killed(bench_script):
    return bench_script("killed_marking")


def test_a_kill_leaves_no_torn_mark_book(killed):
    amiss, _ = killed.run(kills=10)
    assert amiss == []


@pytest.mark.parametrize("pair", [("1\n1\n", "1\n2\n"), ("1\n", "2\n"), ("1\n", None)])
def test_a_torn_mark_book_would_be_found(killed, tmp_path, pair):
    for ending, text in zip((".csv", ".html"), pair, strict=True):
        if text:
            (tmp_path / f"mark-book{ending}").write_text(text)
    assert killed.torn(tmp_path)
