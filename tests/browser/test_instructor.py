"""The notebook for instructors in a real browser: through by the keyboard, clean for axe-core."""

import lab
import looks
import pytest

NAME = "for-instructors.ipynb"
SAYS = "([form, words]) => document.querySelector(`.cw-${form}`).textContent.includes(words)"


@pytest.fixture(scope="module")
def page(browser_found, tmp_path_factory):
    with lab.lab(tmp_path_factory.mktemp("lab")) as address, lab.chromium(1280, 1000) as page:
        page.set_viewport_size({"width": 1280, "height": looks.TALL})
        lab.open_notebook(page, address, NAME)
        lab.run_all(page)
        page.wait_for_selector(".cw-forget-class input")
        yield page


def press(page, *keys):
    for key in keys:
        page.keyboard.press(key)


def says(page, form, words):
    page.wait_for_function(SAYS, arg=[form, words], timeout=20_000)


def test_a_class_is_made_and_paper_typed_back_by_the_keyboard_alone(page):
    page.locator(".cw-make-class input").first.focus()
    page.keyboard.type("wick")
    press(page, "Tab", "Tab")
    page.keyboard.type("00")
    press(page, "Tab", "Tab", "Enter")
    says(page, "make-class", "Class wick is made")
    page.locator(".cw-type-back select").focus()
    press(page, "Tab")
    page.keyboard.type("BENCH-01")
    press(page, "Tab", "Tab", "Tab")
    for row in ("start-1: 330 kΩ", "start-2: a"):
        page.keyboard.type(row)
        press(page, "Enter")
        says(page, "type-back", "Enter keeps it")
        press(page, "Enter")
        says(page, "type-back", f"Kept: BENCH-01, {row[:7]}")
    press(page, "Tab", "Tab", "Enter")
    says(page, "type-back", "Taken back: BENCH-01, start-2")


def test_a_link_in_the_book_stays_in_the_book(page):
    page.locator(".cw-mark button", has_text="Mark").first.focus()
    press(page, "Enter")
    says(page, "mark", "1 on paper")
    press(page, "Tab", "Enter")
    book = page.frame_locator(".cw-mark iframe")
    book.get_by_role("link", name="Who needs what").click(timeout=5_000)
    book.get_by_role("heading", name="Who needs what").wait_for(timeout=5_000)
    assert "#needs" in book.locator("body").evaluate("body => location.hash")


def test_all_forms_with_their_results_meet_wcag_in_light_and_dark(page):
    for form, button in (("mark", "Mark"), ("forget-class", "List what would go")):
        page.locator(f".cw-{form} button", has_text=button).first.focus()
        press(page, "Enter")
    says(page, "mark", "1 on paper")
    says(page, "forget-class", "would go")
    looks.load_axe(page)
    for theme in looks.THEMES:
        looks.change_theme(page, theme)
        faults, contrasts = looks.judged(page)
        assert not faults, f"in {theme}:\n" + "\n".join(faults)
        assert contrasts >= 40
    assert page.evaluate(looks.LOOKS, [looks.LETTERS, looks.LINE]) == []
