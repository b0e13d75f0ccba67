"""The index as a page: every word of the text, one cell a section, nothing to run."""

from helpers.authoring.index_page import index_page, write_index
from helpers.authoring.solutions import dumps

TEXT = "# Index\n\nWords.\n\n## Heat\n\n| a | b |\n|---|---|\n\n### Warm\n\n## The rest\n\nEnd.\n"


def test_property_each_section_is_a_cell_and_no_word_is_lost():
    cells = index_page(TEXT)["cells"]
    texts = ["".join(cell["source"]) for cell in cells]
    assert [text.split("\n")[0] for text in texts] == ["# Index", "## Heat", "## The rest"]
    assert "\n\n".join(texts) + "\n" == TEXT
    assert {cell["cell_type"] for cell in cells} == {"markdown"}
    assert len({cell["id"] for cell in cells}) == len(cells)


def test_limit_a_text_without_sections_is_one_cell():
    (cell,) = index_page("Words.")["cells"]
    assert cell["source"] == ["Words."]


def test_the_page_is_written_beside_its_text(tmp_path):
    (tmp_path / "index.md").write_text(TEXT, encoding="utf-8")
    assert write_index(tmp_path) == tmp_path / "index.ipynb"
    assert (tmp_path / "index.ipynb").read_text(encoding="utf-8") == dumps(index_page(TEXT))
