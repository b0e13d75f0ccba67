"""Our own elements in JupyterLab, by the WCAG 2.2 A and AA rules of axe-core.

The rules come from axe-core, a reference library for the success criteria of WCAG 2.2 (W3C
Recommendation, 2023). JupyterLab's own page is not judged. Nothing of ours is excepted: the handle
of a slider has a name too.
"""

from importlib.resources import files

import explorer_notebook
import lab
import pytest

from helpers.pages.explorers import EXPLORERS

TALL = 2400  # axe-core leaves out what is scrolled away, so every cell has to fit [px]
THEMES = {"JupyterLab Light": "true", "JupyterLab Dark": "false"}
LEVELS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
OURS_IN_CELL = """place => [...window.jupyterapp.shell.currentWidget.content.widgets[place].node
  .querySelectorAll('.cw-page, .cw-controls')]"""
JUDGE = f"""async ([place, levels]) => {{
  const ours = ({OURS_IN_CELL})(place);
  if (!ours.length) return null;
  const found = await axe.run({{include: ours}}, {{runOnly: {{type: 'tag', values: levels}}}});
  return {{faults: found.violations.flatMap(rule => rule.nodes.map(
            node => `${{rule.id}}: ${{node.target.join(' ')}}: ${{node.failureSummary}}`)),
          contrasts: found.passes.filter(rule => rule.id === 'color-contrast').flatMap(
            rule => rule.nodes).filter(node => !node.html.startsWith('<input')).length}};
}}"""


@pytest.fixture
def served(browser_found, tmp_path):
    with lab.lab(tmp_path) as address, lab.chromium(1200, TALL) as page:
        yield address, page, tmp_path


def change_theme(page, theme):
    page.evaluate(
        "theme => window.jupyterapp.commands.execute('apputils:change-theme', {theme})", theme
    )
    page.wait_for_function(
        "light => document.body.dataset.jpThemeLight === light", arg=THEMES[theme]
    )
    page.locator("#jupyterlab-splash").wait_for(state="detached")


def judged(page):
    """Bring each cell into view, because a notebook draws only what can be seen, and judge it."""
    faults, contrasts, cells = [], 0, 0
    number = page.evaluate("window.jupyterapp.shell.currentWidget.content.widgets.length")
    for place in range(number):
        explorer_notebook.scroll_to(page, place)
        result = page.evaluate(JUDGE, [place, LEVELS])
        if result:
            cells += 1
            faults += result["faults"]
            contrasts += result["contrasts"]
    return faults, contrasts, cells


@pytest.mark.parametrize("which", ["lesson with cards", "all explorers", "a fault put in"])
def test_our_elements_meet_wcag_in_light_and_dark(served, which):
    address, page, folder = served
    name = "02-ohms-law.ipynb" if which == "lesson with cards" else explorer_notebook.NAME
    if which == "all explorers":
        explorer_notebook.write_explorers(folder, EXPLORERS)
    if which == "a fault put in":
        faint = "ipywidgets.HTML('<p style=\"color: #aaa; background: #fff\">faint</p>')"
        explorer_notebook.write_notebook(
            folder,
            [
                "import ipywidgets\nfrom helpers.widgets.screen import frame\n"
                f"frame([ipywidgets.FloatSlider(), {faint}])"
            ],
        )
    lab.open_notebook(page, address, name)
    lab.run_all(page)
    page.evaluate((files("axe_playwright_python") / "axe.min.js").read_text("utf-8"))
    # The body of JupyterLab is 0 px high with its overflow hidden, so axe-core takes every text
    # for hidden and judges no contrast at all; a height that changes nothing else cures that.
    page.evaluate("document.body.style.height = '100vh'")
    for theme in THEMES:
        change_theme(page, theme)
        faults, contrasts, cells = judged(page)
        if which == "a fault put in":
            assert {fault.split(":")[0] for fault in faults} >= {
                "aria-input-field-name",
                "color-contrast",
            }
            continue
        assert not faults, f"in {theme}:\n" + "\n".join(faults)
        assert cells >= len(EXPLORERS)
        assert contrasts >= 3 * cells, "the contrast of hardly any words was judged"
