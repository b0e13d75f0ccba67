"""Every state of every kind of card on one loaded page: rules of WCAG, focus, width, names.

The contrast of the focus (3:1, WCAG 2.2, 1.4.11 and 2.4.13) is computed here from the colours that
the browser has used; axe-core judges no focus.
"""

import json
import time
from importlib.resources import files
from types import SimpleNamespace

import lab
import pytest
import truth
from learner import right_answer, wrong_answers
from looks import COLOURS, LEVELS, THEMES, change_theme

from helpers.exercises.bank import bank
from helpers.exercises.session import Session
from helpers.exercises.settings import Settings
from helpers.exercises.store import MemoryStore

KINDS = list(truth.OF_EACH_KIND.values())
MARKED = [question_id for question_id in KINDS if question_id != "ohm-predict"]
WIDTHS = {"480 px": 480, "700 px": 700, "1280 px": 1280, "1280 px at 200 %": 640}
JUDGE = """async asked => {
  const found = await axe.run({include: [...document.querySelectorAll('.cw-controls')]
    .filter(n => n.offsetParent)}, {runOnly: asked});
  return found.violations.flatMap(rule => rule.nodes.map(
    node => `${rule.id}: ${node.target.join(' ')}: ${node.failureSummary}`));
}"""
TOO_WIDE = """() => [...document.querySelectorAll('.cw-controls, .cw-controls *')]
  .filter(n => n.offsetParent && n.getBoundingClientRect().right > innerWidth
    || n.matches('.cw-controls') && n.scrollWidth > n.clientWidth + 1)
  .map(n => n.outerHTML.slice(0, 120))"""
RINGS = """() => {
  const light = colour => { const [r, g, b] = colour.match(/[\\d.]+/g).map(part => part / 255)
      .map(part => part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
    return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
  const ground = node => { const colour = getComputedStyle(node).backgroundColor;
    return /, 0\\)$/.test(colour) && node.parentElement ? ground(node.parentElement) : colour; };
  return [...document.querySelectorAll('.cw-controls :is(input, select, button, summary)')]
    .filter(node => node.offsetParent && !node.disabled).map(node => {
      node.focus({focusVisible: true});
      const ring = getComputedStyle(node), around = ground(node.parentElement);
      const lights = [light(ring.outlineColor), light(around)].sort((one, other) => one - other);
      return {node: node.outerHTML.slice(0, 90), style: ring.outlineStyle,
        width: parseFloat(ring.outlineWidth), colours: [ring.outlineColor, around],
        contrast: (lights[1] + 0.05) / (lights[0] + 0.05)};
    });
}"""


@pytest.fixture(scope="module")
def cards(browser_found, tmp_path_factory):
    """All kinds of card on one page, and the session that the same learner would have here."""
    folder = tmp_path_factory.mktemp("states")
    truth.without_windowing_or_autosave(folder)
    with lab.lab(folder) as address, lab.chromium(1280, 1000) as page:
        truth.write_notebook(folder / "work" / "kinds.ipynb")
        lab.open_notebook(page, address, "kinds.ipynb")
        page.evaluate("window.jupyterapp.commands.execute('application:toggle-left-area')")
        lab.run_all(page)
        page.evaluate((files("axe_playwright_python") / "axe.min.js").read_text("utf-8"))
        page.evaluate("document.body.style.height = '100vh'")  # as in test_accessibility
        kept = json.loads((folder / "answers" / "settings.json").read_text())
        session = Session(Settings(**kept), MemoryStore())
        yield SimpleNamespace(page=page, session=session, address=address)


def card_of(cards, question_id):
    return cards.page.locator(f".cw-c-{question_id}")


def check(cards, question_id, typed, verdict):
    truth.fill(card_of(cards, question_id), bank()[question_id], typed)
    press(cards, question_id, "Check", f".cw-told :is({verdict})")


def press(cards, question_id, button, shown):
    """Press a button with the keyboard; wait for what it shows; the focus stays in the card."""
    card = card_of(cards, question_id)
    card.get_by_role("button", name=button, exact=True).press("Enter")
    card.locator(shown).first.wait_for()
    cards.page.wait_for_timeout(250)
    assert cards.page.evaluate(
        "id => document.activeElement.closest('.cw-c-' + id) !== null", question_id
    ), f"{question_id}: the focus was lost after {button}"


def fresh(cards):
    for question_id in KINDS:
        card_of(cards, question_id).get_by_text("Not answered yet.").wait_for()


def nudge(cards):
    for question_id in MARKED:
        press(cards, question_id, "Nudge", ".cw-nudge")


def not_yet(cards):
    for question_id in MARKED:
        wrong = wrong_answers(cards.session, question_id)[0]
        check(cards, question_id, wrong, ".cw-not-yet, .cw-partly, .cw-danger")
    check(cards, "ohm-predict", "b", ".cw-verdict")
    for sort in (".cw-not-yet", ".cw-danger"):
        assert cards.page.locator(f".cw-told {sort}").first.is_visible()


def partly(cards):
    some = right_answer(cards.session, "ohm-8").split(", ")[0]
    check(cards, "ohm-8", some, ".cw-partly")


def last_nudge(cards):
    press(cards, "ohm-13", "Nudge", "text=Nudge 2 of 2")


def worked(cards):
    for typed in wrong_answers(cards.session, "ohm-2")[1:]:
        check(cards, "ohm-2", typed, ".cw-not-yet")
    assert card_of(cards, "ohm-2").get_by_text("As you would answer it").is_visible()


def another_case(cards):
    for question_id, button in (("start-2", "Another case"), ("ohm-2", "Fresh numbers")):
        press(cards, question_id, button, f"text={button.lower()} 1")
        region = card_of(cards, question_id).locator("[aria-live=polite]")
        assert f"{button.lower()} 1" in region.inner_text()


def right(cards):
    for question_id in MARKED:
        number = 1 if question_id in ("start-2", "ohm-2") else 0
        check(cards, question_id, right_answer(cards.session, question_id, number), ".cw-right")
        folded = card_of(cards, question_id).locator(".cw-told details")
        assert folded.count() == 1 and folded.get_attribute("open") is None


STATES = (fresh, nudge, not_yet, partly, last_nudge, worked, another_case, right)


def test_every_state_of_every_kind_meets_wcag_keeps_the_focus_and_fits(cards):
    page = cards.page
    for state in STATES:
        state(cards)
        faults = page.evaluate(JUDGE, LEVELS)
        assert not faults, f"{state.__name__}:\n" + "\n".join(faults)
    for theme in (*THEMES, "forced colours"):
        if theme == "forced colours":
            page.emulate_media(forced_colors="active")
        else:
            change_theme(page, theme)
        for width, pixels in WIDTHS.items():
            page.set_viewport_size({"width": pixels, "height": 1000})
            page.wait_for_timeout(200)
            assert not page.evaluate(TOO_WIDE), f"{theme}, {width}"
        assert not page.evaluate(JUDGE, COLOURS), theme
        rings = page.evaluate(RINGS)
        assert len(rings) > 40
        for ring in rings:
            assert ring["style"] == "solid" and ring["width"] >= 3, ring
            assert ring["contrast"] >= 3, f"{theme}: {ring}"
    page.emulate_media(forced_colors="none")
    change_theme(page, "JupyterLab Light")


def test_options_have_a_legend_and_radio_buttons_one_stop_of_the_tab_key(cards):
    page = cards.page
    for question_id, role in (("ohm-13", "radio"), ("ohm-8", "checkbox"), ("ohm-9", "button")):
        hint = bank()[question_id].kind.hint(None)
        group = card_of(cards, question_id).get_by_role("group", name=hint, exact=True)
        assert group.get_by_role(role).count() >= 4
    card = card_of(cards, "ohm-13")
    card.get_by_role("radio").first.focus()
    page.keyboard.press("ArrowDown")
    assert card.get_by_role("radio").nth(1).is_checked()
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent.trim()") == "Check"


def test_steps_are_placed_moved_and_taken_back_by_the_keyboard_alone(cards):
    page, card = cards.page, card_of(cards, "ohm-9")
    while card.locator(".cw-placed").count():
        card.locator(".cw-placed").first.click()
    values = "all => all.map(step => step.value)"
    dealt = card.locator(".cw-form button").evaluate_all(values)
    card.locator(".cw-form button").first.focus()
    for letter in dealt:
        assert page.evaluate("document.activeElement.value") == letter
        page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.textContent.trim()") == "Check"
    placed = card.locator(".cw-placed")
    placed.nth(2).focus()
    page.keyboard.press("Alt+ArrowUp")
    assert page.evaluate("document.activeElement.value") == dealt[2]
    assert placed.evaluate_all(values)[:3] == [dealt[0], dealt[2], dealt[1]]
    assert placed.nth(1).inner_text().split()[0] == "2"
    page.keyboard.press("Enter")
    assert placed.evaluate_all(values) == [dealt[0], dealt[1], *dealt[3:]]
    assert page.evaluate("document.activeElement.value") == dealt[2]


def test_a_step_is_dragged_to_another_place(cards):
    card = card_of(cards, "ohm-9")
    while (left := card.locator(".cw-form button:not(.cw-placed)")).count():
        left.first.click()
    placed = card.locator(".cw-placed")
    before = placed.evaluate_all("all => all.map(step => step.value)")
    placed.nth(1).drag_to(placed.nth(3))
    moved = [before[0], *before[2:4], before[1], *before[4:]]
    assert placed.evaluate_all("all => all.map(step => step.value)") == moved


def test_the_first_card_is_four_keys_away_answered_by_enter_and_left_by_escape(cards):
    page = cards.page
    lab.open_notebook(page, cards.address, "00-start-here.ipynb")
    page.evaluate("window.jupyterapp.shell.currentWidget.content.activate()")
    began = time.monotonic()
    for keys in ("Shift+Enter", "Shift+Enter", "Shift+Enter", "Control+Enter"):
        page.keyboard.press(keys)
    card = page.locator(".cw-c-start-predict")
    card.get_by_role("radio").first.wait_for()
    assert time.monotonic() - began <= 3
    page.keyboard.press("Tab")
    page.keyboard.press("Space")
    page.keyboard.press("Enter")
    card.get_by_text("Kept. The lesson comes back").wait_for()
    page.keyboard.press("Escape")
    active = "window.jupyterapp.shell.currentWidget.content.activeCell"
    assert page.evaluate(f"{active}.model.id") == "start-predict"
    assert page.evaluate(f"document.activeElement === {active}.node")
    page.keyboard.press("Shift+Enter")
    page.wait_for_function(f"{active}.model.id === 'the-job'")
