"""What cells show in JupyterLab: a lesson from top to bottom, all explorers, and a fault put in."""

import explorer_notebook
import lab
import looks
import pytest

from helpers.pages.explorers import EXPLORERS

FAINT = "ipywidgets.HTML('<p style=\"color: #aaa; background: #fff\">faint</p>')"
SMALL = "ipywidgets.HTML('<svg role=img><text font-size=9>small</text></svg>')"


@pytest.fixture(scope="module")
def served(browser_found, tmp_path_factory):
    folder = tmp_path_factory.mktemp("lab")
    with lab.lab(folder) as address, lab.chromium(1280, 1000) as page:
        yield address, page, folder


def test_a_lesson_runs_on_another_supply_and_can_be_read_by_everybody(served, bench_script):
    """A fraction of tests/bench/lessons_in_browser.py, which runs every lesson."""
    bench = bench_script("lessons_in_browser")
    address, page, _ = served
    faults, _ = bench.run_lesson(page, address, bench.lessons()[-1], "120 V 60 Hz")
    assert faults == []
    assert_a_folded_cell_runs_and_opens(page)
    found, contrasts = bench.seen(page, address, bench.lessons()[-1])
    assert not found, "\n".join(found)
    assert contrasts >= 300, "the contrast of hardly any words was judged"


def test_all_explorers_meet_wcag_in_light_and_dark(served):
    address, page, folder = served
    explorer_notebook.write_explorers(folder, EXPLORERS)
    run(page, address)
    for theme, asked in zip(looks.THEMES, (looks.LEVELS, looks.COLOURS), strict=True):
        looks.change_theme(page, theme)
        faults, contrasts = looks.judged(page, asked=asked)
        assert not faults, f"in {theme}:\n" + "\n".join(faults)
        assert contrasts >= 3 * len(EXPLORERS)
    assert page.evaluate(looks.LOOKS, [looks.LETTERS, looks.LINE]) == []
    assert page.locator(".noUi-handle").count() >= 5


def test_a_fault_that_was_put_in_is_found(served):
    address, page, folder = served
    explorer_notebook.write_notebook(
        folder,
        [
            "import ipywidgets\nfrom helpers.widgets.screen import frame\n"
            f"frame([ipywidgets.FloatSlider(), {FAINT}, {SMALL},"
            " ipywidgets.HTML('<p>' + 'long ' * 60 + '</p>')])"
        ],
    )
    run(page, address)
    faults, _ = looks.judged(page)
    assert {fault.split(":")[0] for fault in faults} >= {"aria-input-field-name", "color-contrast"}
    found = " ".join(page.evaluate(looks.LOOKS, [looks.LETTERS, looks.LINE]))
    for words in ("no words for a picture", "9 px: small", "letters: long", "slider: null 0"):
        assert words in found


def assert_a_folded_cell_runs_and_opens(page):
    cell = "window.jupyterapp.shell.currentWidget.content.widgets.find(c => c.model.id==='imports')"
    assert page.evaluate(f"{cell}.inputHidden")
    before = page.evaluate(f"{cell}.model.executionCount")
    page.evaluate(f"""const book = window.jupyterapp.shell.currentWidget.content;
        book.activeCellIndex = book.widgets.indexOf({cell}); book.activate()""")
    page.keyboard.press("Shift+Enter")
    page.wait_for_function(f"{cell}.model.executionCount > {before}")
    assert page.evaluate(f"{cell}.inputHidden")
    page.locator(".jp-InputPlaceholder", has_text="The tools of this lesson").click()
    page.wait_for_function(f"!{cell}.inputHidden")


def run(page, address):
    page.set_viewport_size({"width": 1280, "height": looks.TALL})
    lab.open_notebook(page, address, explorer_notebook.NAME)
    lab.run_all(page)
    page.locator(".jp-OutputArea-output .widget-html").last.wait_for(state="attached")
    page.wait_for_timeout(1500)
    looks.load_axe(page)
